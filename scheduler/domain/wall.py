"""Instants as a person's own wall-clock time, and days, in the form that messages carry."""

from __future__ import annotations

from datetime import date, datetime
from zoneinfo import ZoneInfo


def wall(at: datetime, zone: ZoneInfo) -> str:
    """ISO wall-clock time to the minute in a zone: `2027-03-08T14:05`."""
    return at.astimezone(zone).replace(tzinfo=None).isoformat(timespec="minutes")


def iso(day: date | None) -> str | None:
    """An ISO date, `2027-03-08`; `None` stays `None`."""
    return day.isoformat() if day else None
