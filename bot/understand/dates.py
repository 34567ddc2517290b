"""Days that a text names: "tomorrow", "Friday", "the 20th", "12 March". Pure.

Which day is meant depends on the day it is said; what it is for (the first day of a break, the last) is the
reader's to find out.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date, timedelta

from bot.understand.tokens import Token
from bot.understand.vocabulary import Vocabulary

_WEEK, _MONTHS = range(7), range(1, 13)
_LONGEST_MONTH = 31
_YEARS = range(2000, 2200)
_TWO_MONTHS = 62


@dataclass(frozen=True, slots=True)
class NamedDay:
    """A day named by the tokens from `start` to `end` (not included).

    One of: `offset` in days from today; `weekday` (Monday 0); `number` of a month, with or without the
    `month` and the `year`.
    """

    start: int
    end: int
    offset: int | None = None
    weekday: int | None = None
    number: int | None = None
    month: int | None = None
    year: int | None = None

    def on(self, today: date, base: date) -> date | None:
        """The date: counted from `today`, the weekday after `base`, the first such date from `base` on."""
        if self.offset is not None:
            return today + timedelta(days=self.offset)
        if self.weekday is not None:
            return base + timedelta(days=(self.weekday - base.weekday() - 1) % 7 + 1)
        if self.month is None:
            near = (base + timedelta(days=n) for n in range(_TWO_MONTHS))
            return next((day for day in near if day.day == self.number), None)
        years = (self.year,) if self.year else range(base.year, base.year + 9)
        dates = (_date(year, self.month, self.number or 0) for year in years)
        return next((day for day in dates if day is not None and day >= base), None)


def find_days(tokens: list[Token], heard: Vocabulary) -> list[NamedDay]:
    """All days that are named, in the order of the text. "15 to 20 March" names two days of March."""
    found: list[NamedDay] = []
    at = 0
    while at < len(tokens):
        day = _dated(tokens, at, heard) or _word(tokens, at, heard)
        if day is not None:
            if found and found[-1].weekday is not None and found[-1].end == day.start:
                day = replace(day, start=found.pop().start)  # "Friday the 12th"
            found += _of_its_month(found, day, tokens, heard)
        at = day.end if day else at + 1
    return found


def numbers_of_days(tokens: list[Token], heard: Vocabulary) -> frozenset[int]:
    """Places of the numbers that say when or how long, and so count nothing: "the 20th", "10 days"."""
    named = {n for day in find_days(tokens, heard) for n in range(day.start, day.end)}
    spans = {n for n, _, _ in stretches(tokens, heard)}
    return frozenset(n for n in named | spans if tokens[n].value is not None)


UNITS = {"away-day": 1, "away-week": 7, "away-fortnight": 14}
"""Words for a stretch of time, and its days."""


def stretches(tokens: list[Token], heard: Vocabulary) -> Iterator[tuple[int, int, int]]:
    """Stretches of time as (place of the number, place after the unit, days): "10 days", "a week"."""
    for place in range(len(tokens)):
        count = _count(tokens[place], heard)
        unit = place + 1
        if count and unit < len(tokens) and tokens[unit].text in heard.words("away-of"):
            unit += 1  # a couple of days
        if count is None or unit >= len(tokens):
            continue
        size = next((n for key, n in UNITS.items() if tokens[unit].text in heard.words(key)), 0)
        if size:
            yield place, unit + 1, count * size


def month_of(word: str, heard: Vocabulary) -> int | None:
    """The number of the month that a word names."""
    return next((n for n in _MONTHS if word in heard.words(f"month-{n}")), None)


def _count(token: Token, heard: Vocabulary) -> int | None:
    if token.value is not None:
        return token.value
    if token.text in heard.words("away-two"):
        return 2
    return 1 if token.text in heard.words("away-one") else None


def _of_its_month(
    before: list[NamedDay], day: NamedDay, tokens: list[Token], heard: Vocabulary
) -> list[NamedDay]:
    """`day`, and in front of it the day that "15 to" before "20 March" names; the month counts for both."""
    link = day.start - 1
    while link > 0 and tokens[link].text in heard.words("away-skip"):
        link -= 1
    joins = heard.words("away-span") | heard.words("away-until")
    if day.month is None or link < 1 or tokens[link].text not in joins:
        return [day]
    if before and before[-1].end == link and before[-1].number and before[-1].month is None:
        before[-1] = replace(before[-1], month=day.month)
        return [day]
    value = tokens[link - 1].value
    if value is None or not 1 <= value <= _LONGEST_MONTH or (before and before[-1].end == link):
        return [day]
    return [NamedDay(link - 1, link, number=value, month=day.month, year=day.year), day]


def _word(tokens: list[Token], at: int, heard: Vocabulary) -> NamedDay | None:
    """A day named by one word."""
    word = tokens[at].text
    if word in heard.words("day-today"):
        return NamedDay(at, at + 1, offset=0)
    if word in heard.words("day-tomorrow"):
        return NamedDay(at, at + 1, offset=1)
    before = tokens[at - 1].text if at else ""
    leads = ("away-until", "away-from", "away-return", "away-skip", "away-span")
    led = before not in heard.words("away-the") and any(before in heard.words(k) for k in leads)
    doubtful = word in heard.words("away-doubt") and not led
    if doubtful or word in heard.words("away-no-day"):
        return None
    weekday = next((n for n in _WEEK if word in heard.words(f"weekday-{n}")), None)
    return None if weekday is None else NamedDay(at, at + 1, weekday=weekday)


def _dated(tokens: list[Token], at: int, heard: Vocabulary) -> NamedDay | None:
    """A date from this token on: "20th", "the 20th of March", "12 March 2027", "March 12"."""

    def word(place: int) -> str:
        return tokens[place].text if place < len(tokens) else ""

    def value(place: int, within: range = range(1, _LONGEST_MONTH + 1)) -> int | None:
        found = tokens[place].value if place < len(tokens) else None
        return found if found in within else None

    month, number, place = month_of(word(at), heard), None, at
    if month is not None:
        place += 1 + (word(at + 1) in heard.words("away-the"))
        number, place = value(place), place + 1
        place += word(place) in heard.words("away-ordinal")
    else:
        article = word(at) in heard.words("away-the")
        number, place = value(at + article), at + article + 1
        ordinal = word(place) in heard.words("away-ordinal")
        place += ordinal
        link = word(place) in heard.words("away-of")
        month = month_of(word(place + link), heard)
        if month is not None:
            place += link + 1
        elif not ordinal and not (article and not tokens_go_on(tokens, place)):
            return None
    if number is None:
        return None
    year = value(place, _YEARS) if month is not None else None
    return NamedDay(at, place + (year is not None), number=number, month=month, year=year)


def tokens_go_on(tokens: list[Token], place: int) -> bool:
    """Whether a word follows that could say what was counted: "the 10 reps"."""
    return place < len(tokens) and tokens[place].is_word


def _date(year: int, month: int, number: int) -> date | None:
    try:
        return date(year, month, number)
    except ValueError:
        return None
