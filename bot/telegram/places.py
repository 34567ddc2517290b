"""A shared location becomes a time zone at the door, and is never stored (J4).

An update is kept before it is handled (R1), so its coordinates are replaced before that: what rests is the
name of the zone and nothing of the place. Of a contact, and of who wrote what is passed on, only that it is
there is kept: they are people who never spoke to us.
"""

from __future__ import annotations

from typing import Any
from zoneinfo import available_timezones

AT_SEA = "Etc/"
"""Zones of the open sea have no clock that anybody goes by."""
FARTHEST = {"latitude": 90.0, "longitude": 180.0}
"""Degrees."""
OF_A_PLACE = frozenset({"venue", "proximity_alert_triggered"})
"""Other parts of a message that name a place or how far it is."""
OF_OTHERS = frozenset({"contact", "forward_origin", "external_reply", "users_shared"})
"""Parts of a message with names or numbers of somebody else."""


def zone_at(latitude: float, longitude: float) -> str:
    """The IANA time zone of a place in degrees; empty at sea, or where there is no such place."""
    for given, farthest in zip((latitude, longitude), FARTHEST.values(), strict=True):
        if not -farthest <= given <= farthest:
            return ""
    import tzfpy  # noqa: PLC0415 # its map takes 20 MB: loaded when somebody shares a place

    name = tzfpy.get_tz(longitude, latitude)
    return name if name in available_timezones() and not name.startswith(AT_SEA) else ""


def without_places(payload: Any) -> Any:
    """An update without other people, and with every place in it made into its zone.

    Of answered and forwarded messages too.
    """
    if isinstance(payload, list):
        return [without_places(each) for each in payload]
    if not isinstance(payload, dict):
        return payload
    if FARTHEST.keys() <= payload.keys():
        return {"zone": _zone(payload["latitude"], payload["longitude"])}
    kept = {key: value for key, value in payload.items() if key not in OF_A_PLACE}
    return {key: {} if key in OF_OTHERS else without_places(value) for key, value in kept.items()}


def _zone(latitude: object, longitude: object) -> str:
    if isinstance(latitude, int | float) and isinstance(longitude, int | float):
        return zone_at(latitude, longitude)
    return ""
