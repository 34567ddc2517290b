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
_A_SECOND = timedelta(seconds=1)

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


def instant(day: date, minute: int, zone: ZoneInfo, *, fold: int = 0) -> datetime:
    """The instant of a wall-clock minute, in UTC.

    A time that a clock change skips moves forward by as much as the clock does; one that comes
    twice means the first. Both are what `fold=0` stands for (PEP 495; so too RFC 5545 3.3.5).
    """
    midnight = datetime.combine(day, time.min, tzinfo=zone)
    return (midnight + timedelta(minutes=minute)).replace(fold=fold).astimezone(UTC)


def local_day(now: datetime, zone: ZoneInfo) -> date:
    """The date in a zone at an instant."""
    return now.astimezone(zone).date()


def day_hours_in_utc(
    day: date, hours: Hours, zone: ZoneInfo
) -> tuple[datetime, datetime, tuple[tuple[datetime, datetime], ...]]:
    """A day's window start, window end and quiet times as instants.

    Where a clock change skips the whole window the end can come before the start: nothing fits. On such a
    day whatever the clock shows is kept too: a quiet time whose start is skipped begins with the change,
    and what is shown a second time and is before the window, or in a quiet time, is quiet again.
    """
    quiets = [(instant(day, q.start, zone), instant(day, q.end, zone)) for q in hours.quiet]
    start, end = instant(day, hours.window.start, zone), instant(day, hours.window.end, zone)
    length = timedelta(minutes=hours.window.end - hours.window.start)
    if end - start != length or start != instant(day, hours.window.start, zone, fold=1):
        quiets = [(_begins(day, q, zone), instant(day, q.end, zone)) for q in hours.quiet]
        before = [Span(0, hours.window.start)] if hours.window.start else []
        for span in (*before, *hours.quiet):
            quiets += _second_time(day, span, zone)
    return start, end, tuple(quiets)


def _begins(day: date, span: Span, zone: ZoneInfo) -> datetime:
    """When a quiet time begins: with the clock change that skips its start but not its end, if one does."""
    at, end = instant(day, span.start, zone), instant(day, span.end, zone)
    sooner = instant(day, span.start, zone, fold=1)
    whole = instant(day, span.end, zone, fold=1) < end
    return at if whole or sooner >= at else _last_before_change(sooner, at, zone)


def _second_time(day: date, span: Span, zone: ZoneInfo) -> list[tuple[datetime, datetime]]:
    """A span as the clock shows it the second time; nothing where its end comes once."""
    first, second = instant(day, span.end, zone), instant(day, span.end, zone, fold=1)
    if second <= first:
        return []
    back = _last_before_change(first, second, zone)
    begins = max(back, instant(day, span.start, zone, fold=1))
    return [(begins, second)] if second - begins > _A_SECOND else []


def _last_before_change(before: datetime, after: datetime, zone: ZoneInfo) -> datetime:
    """The last moment before the clock change between two instants, to a second."""
    old = before.astimezone(zone).utcoffset()
    while after - before > _A_SECOND:
        middle = before + (after - before) / 2
        changed = middle.astimezone(zone).utcoffset() != old
        before, after = (before, middle) if changed else (middle, after)
    return before
