"""Hours of a local day, and what they are as instants in a zone (Z1).

A minute counts from local midnight, 0 to 1440; 1440 is the next midnight. Instants are aware UTC
datetimes, so that differences between them are real elapsed time.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

DAY = 1440
"""Minutes of a day on the wall clock."""

_TIME = re.compile(r"([0-9]{1,2}):([0-9]{2})")


@dataclass(frozen=True, slots=True, order=True)
class Span:
    """A stretch of the local day, in minutes: `0 <= start < end <= 1440`, else `ValueError`."""

    start: int
    end: int

    def __post_init__(self) -> None:
        if not 0 <= self.start < self.end <= DAY:
            raise ValueError("A span starts before it ends, within one day from 00:00 to 24:00.")


@dataclass(frozen=True, slots=True)
class Hours:
    """When bouts may fall: from the first to the last minute of the window, both included, and not
    strictly inside a quiet time. The start and end minute of a quiet time are free."""

    window: Span
    quiet: tuple[Span, ...] = ()


def parse_minute(text: str) -> int:
    """`08:00` as a minute of the day; `24:00` is the last. `ValueError` says what was expected."""
    found = _TIME.fullmatch(text.strip())
    if found is None:
        raise ValueError(f"{text!r} is not a time of day like 08:00.")
    hour, minute = int(found[1]), int(found[2])
    if minute >= 60 or hour * 60 + minute > DAY:  # noqa: PLR2004 # minutes of an hour
        raise ValueError(f"{text!r} is not a time of day from 00:00 to 24:00.")
    return hour * 60 + minute


def parse_span(text: str) -> Span:
    """`08:00-20:00` as a span. `ValueError` with one clear sentence."""
    start, dash, end = text.partition("-")
    if not dash:
        raise ValueError(f"{text!r} is not a span of hours like 08:00-20:00.")
    first, last = parse_minute(start), parse_minute(end)
    if first >= last:
        raise ValueError(f"{text!r} does not end after it starts.")
    return Span(first, last)


def format_minute(minute: int) -> str:
    """A minute of the day as `08:00`; 1440 is `24:00`."""
    return f"{minute // 60:02}:{minute % 60:02}"


def common(a: Hours, b: Hours) -> Hours | None:
    """What two sets of hours have in common: both windows, and both quiet times kept (C3).

    `None` if the windows share less than a minute. Quiet times are not joined: where two meet, the
    minute between them stays free, as it is of each alone.
    """
    start = max(a.window.start, b.window.start)
    end = min(a.window.end, b.window.end)
    if start >= end:
        return None
    return Hours(Span(start, end), tuple(sorted({*a.quiet, *b.quiet})))


def instant(day: date, minute: int, zone: ZoneInfo) -> datetime:
    """The instant of a wall-clock minute, in UTC.

    A time that a clock change skips moves forward by as much as the clock does; one that comes
    twice means the first. Both are what `fold=0` stands for (PEP 495; so too RFC 5545 3.3.5).
    """
    midnight = datetime.combine(day, time.min, tzinfo=zone)
    return (midnight + timedelta(minutes=minute)).astimezone(UTC)


def local_day(now: datetime, zone: ZoneInfo) -> date:
    """The date in a zone at an instant."""
    return now.astimezone(zone).date()


def day_hours_in_utc(
    day: date, hours: Hours, zone: ZoneInfo
) -> tuple[datetime, datetime, tuple[tuple[datetime, datetime], ...]]:
    """A day's window start, window end and quiet times as instants.

    Where a clock change skips the whole window the end can come before the start: nothing fits.
    """
    quiets = tuple((instant(day, q.start, zone), instant(day, q.end, zone)) for q in hours.quiet)
    start, end = instant(day, hours.window.start, zone), instant(day, hours.window.end, zone)
    return start, end, quiets
