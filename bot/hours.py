"""Hours of a day as people write them in a short answer: "8-20", "from 9 to 5", "de ocho a ocho". Pure.

The words of a language are in its `hear_*.ftl` (the keys `hours-...`); what stands here is common to all.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import time
from functools import cache

from bot.understand.vocabulary import vocabulary

Span = tuple[time, time]

_NEVER = "(?!)"
_WORD = re.compile(r"[^\W\d_]+")
_NOON, _LAST_HOUR, _LAST_MINUTE = 12, 23, 59


@dataclass(frozen=True, slots=True)
class _Written:
    """How hours are written in one language."""

    span: re.Pattern[str]
    """Two clocks, each with hour, minutes, a part of the hour in words, and the half of the day."""
    between: re.Pattern[str]
    apart: re.Pattern[str]
    """What stands between two spans."""
    past: dict[str, int]
    """Minutes by the words that stand for them after an hour."""
    afternoon: frozenset[str]
    night: frozenset[str]


@cache
def _written(language: str) -> _Written:
    lines = vocabulary(language).lines
    past = {
        words: int(minutes)
        for words, _, minutes in (line.rpartition(" = ") for line in lines("hours-past"))
    }
    halves = ["am", "pm", "a. m.", "p. m.", "a.m.", "p.m.", "a.m", "p.m"]
    halves += [*lines("hours-am"), *lines("hours-pm"), *lines("hours-night")]
    clock = (
        rf"(?:(?:{_any(lines('hours-article'))})\s+)?(\d{{1,2}})"
        rf"(?:\s*[:.h]\s*(\d{{2}})|\s+({_any([*past])}))?"
        rf"\s*(?:{_any(lines('hours-unit'))})?\s*({_any(halves)})?"
    )
    start, middle = _any(lines("hours-from")), _any([*lines("hours-to"), "-"])
    joined, within = _any(lines("hours-and")), _any(lines("hours-between"))
    alone = rf"(?!\b(?:{_any([*past])})\b)\b(?:{joined})\b"
    return _Written(
        span=re.compile(rf"\s*(?:(?:{start})\s+)?{clock}\s*(?:{middle})\s*{clock}\s*"),
        between=re.compile(rf"^\s*(?:{within})\s+(.+?)\s+{alone}\s+(.+)$"),
        apart=re.compile(rf"\s*(?:,|;|\n|&|{alone})\s*|(?<=\d)\s+(?=\d{{1,2}}[:.]\d\d\s*-)"),
        past=past,
        afternoon=frozenset(lines("hours-pm")),
        night=frozenset(lines("hours-night")),
    )


def _any(words: list[str] | tuple[str, ...]) -> str:
    """A pattern for any of these, the longest first."""
    longest = sorted(words, key=len, reverse=True)
    return "|".join(r"\s+".join(map(re.escape, each.split())) for each in longest) or _NEVER


def read_span(text: str, language: str) -> Span | None:
    """Two times of one day, the first before the second; `text` is plain (see `tokens.plain`).

    Without am or pm an hour is read on the 24-hour clock, except that "8 to 8" and "9-5" end in
    the afternoon: an end that is not after its start is taken twelve hours later, unless the start
    was on the 24-hour clock ("17:00-9:00").
    """
    how = _written(language)
    found = how.span.fullmatch(how.between.sub(r"\1 - \2", _in_digits(text, language)))
    if found is None:
        return None
    start, end = _clock(how, *found.groups()[:4]), _clock(how, *found.groups()[4:])
    if start is None or end is None:
        return None
    twelve_hour = start.hour <= _NOON or bool(found.group(4))
    if end <= start and twelve_hour and not found.group(8) and end.hour < _NOON:
        end = end.replace(hour=end.hour + _NOON)
    return (start, end) if start < end else None


def parts(text: str, language: str) -> list[str]:
    """The single spans of a text that holds several: "12-13, 15:00-15:30"."""
    return _written(language).apart.split(text)


def _in_digits(text: str, language: str) -> str:
    """`text` with its number words in digits, each by itself: "de ocho a ocho"."""
    numbers = vocabulary(language).numbers
    return _WORD.sub(lambda word: str(numbers.get(word.group(), word.group())), text)


def _clock(
    how: _Written, hour: str, minute: str | None, part: str | None, half: str | None
) -> time | None:
    past = how.past[" ".join(part.split())] if part else 0
    hours, minutes = int(hour), int(minute or past)
    if half:
        if not 1 <= hours <= _NOON:
            return None
        said = " ".join(half.split())
        night = said in how.night
        late = said in how.afternoon or said.startswith("p") or (night and hours != _NOON)
        hours = hours % _NOON + (_NOON if late else 0)
    return time(hours, minutes) if hours <= _LAST_HOUR and minutes <= _LAST_MINUTE else None
