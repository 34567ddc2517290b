"""Times and days in words: from ISO wall-clock times, dates, minutes of the day and weekday numbers.

How they read is the catalogue's: the pieces `part-time`, `part-date` and `part-span`, and the names of
weekdays and months, each with a short form where the language has one for narrow places.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date, datetime
from typing import Any

from bot.words.catalogue import Catalogue
from scheduler.domain.hours import parse_span

Value = str | int | float


def in_line(items: Sequence[str], words: Catalogue) -> str:
    """Several things in one line, the last one joined as the language joins it."""
    *before, last = items
    return words.say("part-and", {"before": ", ".join(before), "last": last}) if before else last


def clock(minute: int, words: Catalogue) -> str:
    """A minute of the day, 0 to 1440, on the clock that the language goes by.

    The catalogue gets the hour of the 24-hour clock (`hour`) and of the 12-hour clock (`hour12`), and the
    minute as a number (`minute`) and in two digits (`minutes`).
    """
    hour, rest = divmod(minute, 60)
    hour %= 24
    said: dict[str, Value] = {
        "hour": hour,
        "hour12": hour % 12 or 12,
        "minute": rest,
        "minutes": f"{rest:02}",
    }
    return words.say("part-time", said)


def time(value: str, words: Catalogue, _: Mapping[str, Any]) -> str:
    """The time of `2027-03-08T14:05`; the reader knows the day."""
    at = datetime.fromisoformat(value)
    return clock(at.hour * 60 + at.minute, words)


def bound(value: str, words: Catalogue, given: Mapping[str, Any]) -> str:
    """The first or last of something: of bouts the time of day, of days the date."""
    return (time if "T" in value else day)(value, words, given)


def week(value: str, _: Catalogue, __: Mapping[str, Any]) -> str:
    """The number of an ISO week, `2027-W03`."""
    return str(int(value.rpartition("W")[2]))


def moment(value: str, words: Catalogue, _: Mapping[str, Any]) -> str:
    """Day and time of `2027-03-08T14:05`."""
    on = date_of(date.fromisoformat(value[:10]), words)
    return words.say("part-moment", {"date": on, "time": time(value, words, {})})


def since(value: str, words: Catalogue, given: Mapping[str, Any]) -> str:
    """A moment, or a day where the time of it does not matter."""
    return (moment if "T" in value else day)(value, words, given)


def date_of(day: date, words: Catalogue) -> str:
    return words.say(
        "part-date",
        {
            "weekday": weekday(day.weekday(), words, {}),
            "number": day.day,
            "month": words.say(f"name-month-{day.month}", {}),
        },
    )


def day(value: str, words: Catalogue, _: Mapping[str, Any]) -> str:
    return date_of(date.fromisoformat(value), words)


def dates(value: Sequence[str], words: Catalogue, given: Mapping[str, Any]) -> str:
    return in_line([day(each, words, given) for each in value], words)


def dated(value: str, words: Catalogue, _: Mapping[str, Any]) -> str:
    """A day with its year: a plan may begin or end in another one."""
    day = date.fromisoformat(value)
    return words.say("part-date-year", {"date": date_of(day, words), "year": str(day.year)})


def edge(value: str | int, words: Catalogue, given: Mapping[str, Any]) -> str:
    """The start or end of a plan (a date) or of its hours (a minute of the day)."""
    return clock(value, words) if isinstance(value, int) else dated(value, words, given)


def span(value: Sequence[int], words: Catalogue, _: Mapping[str, Any]) -> str:
    start, end = (clock(minute, words) for minute in value)
    return words.say("part-span", {"start": start, "end": end})


def typed_span(value: str, words: Catalogue, given: Mapping[str, Any]) -> str:
    """`08:00-20:00`."""
    found = parse_span(value)
    return span([found.start, found.end], words, given)


def spans(value: Sequence[Sequence[int]], words: Catalogue, given: Mapping[str, Any]) -> str:
    return in_line([span(each, words, given) for each in value], words)


def weekday(value: int, words: Catalogue, _: Mapping[str, Any]) -> str:
    return words.say(f"name-weekday-{value}", {})


def weekdays(value: Sequence[int] | int, words: Catalogue, given: Mapping[str, Any]) -> Value:
    """Weekdays by name; of a number of days, the number."""
    if isinstance(value, int):
        return value
    return in_line([weekday(day, words, given) for day in value], words)
