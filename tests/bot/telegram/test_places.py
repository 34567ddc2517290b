"""A shared place becomes a time zone, and nothing of the place is kept (J4)."""

import pytest

from bot.telegram.incoming import incoming
from bot.telegram.places import without_places, zone_at
from tests.bot.telegram.test_incoming import NOW, message

CITIES = [
    ("Lisbon", 38.72, -9.14, "Europe/Lisbon"),
    ("Madrid", 40.42, -3.70, "Europe/Madrid"),
    ("Santa Cruz de Tenerife", 28.47, -16.25, "Atlantic/Canary"),
    ("New York", 40.71, -74.01, "America/New_York"),
    ("Phoenix", 33.45, -112.07, "America/Phoenix"),
    ("Mexico City", 19.43, -99.13, "America/Mexico_City"),
    ("Buenos Aires", -34.61, -58.38, "America/Argentina/Buenos_Aires"),
    ("Kathmandu", 27.72, 85.32, "Asia/Kathmandu"),
    ("Sydney", -33.87, 151.21, "Australia/Sydney"),
    ("Apia", -13.83, -171.77, "Pacific/Apia"),
]
"""Coordinates and zones of cities: general geography, from memory."""


@pytest.mark.parametrize(("city", "latitude", "longitude", "zone"), CITIES)
def test_a_place_in_a_city_has_the_zone_of_the_city(
    city: str, latitude: float, longitude: float, zone: str
) -> None:
    assert zone_at(latitude, longitude) == zone, city


# The middle of the Atlantic, the North Pole, and two places that there are not (from memory).
@pytest.mark.parametrize(
    ("latitude", "longitude"), [(30.0, -40.0), (90.0, 0.0), (91.0, 0.0), (0.0, 180.5)]
)
def test_a_place_at_sea_or_nowhere_has_none(latitude: float, longitude: float) -> None:
    assert zone_at(latitude, longitude) == ""


def test_what_is_kept_of_a_place_is_its_zone() -> None:
    place = {"latitude": 38.7223, "longitude": -9.1393, "horizontal_accuracy": 12.0}
    venue = {"location": place, "title": "Home", "address": "Alder Lane 1"}
    said = message(location=place, venue=venue, reply_to_message=message(location=place))
    kept = without_places({"update_id": 1, "message": said})
    assert kept["message"]["location"] == {"zone": "Europe/Lisbon"}
    shown = str(kept)
    assert [each for each in ("38.7", "-9.1", "12.0", "Home", "Alder") if each in shown] == []
    found = incoming(kept, NOW)
    assert found is not None
    assert (found.kind, found.file, found.zone) == ("file", "location", "Europe/Lisbon")


def test_of_other_people_nothing_is_kept_but_that_they_were_shown() -> None:
    friend = {"first_name": "Flo", "phone_number": "555 0177", "vcard": "FN:Flo"}
    origin = {"type": "user", "sender_user": {"id": 9, "first_name": "Flo"}}
    for more, file in (({"contact": friend}, "contact"), ({"text": "my knee hurts"}, "")):
        kept = without_places({"update_id": 1, "message": message(forward_origin=origin, **more)})
        assert "Flo" not in str(kept)
        assert "0177" not in str(kept)
        found = incoming(kept, NOW)
        assert found is not None
        assert (found.file, found.forwarded) == (file, True)


def test_what_is_no_place_is_kept_as_it_came() -> None:
    update = {"update_id": 1, "message": message(text="10", entities=[{"type": "bold"}])}
    assert without_places(update) == update


def test_a_place_that_is_no_number_has_no_zone() -> None:
    assert without_places({"latitude": "x", "longitude": None}) == {"zone": ""}
