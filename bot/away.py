"""A break in a client's own words: why, from when, and how long. Pure.

"on holiday till Sunday" says why and how long, "I am ill" only why, "5 days" only how long, "away from Friday
till Monday" also that it begins later. What could be two things is left open, to be asked.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta
from itertools import pairwise

from bot import answers
from bot.answers import Unclear
from bot.understand.dates import NamedDay, find_days, month_of, stretches
from bot.understand.tokens import Token, tokenise
from bot.understand.vocabulary import Vocabulary, vocabulary
from scheduler.domain.breaks import Wish

LONGEST_TEXT = 200
"""Characters; a longer text is no short answer."""
MOST_DAYS = 366
A_DAY = timedelta(days=1)
SATURDAY, SUNDAY = 5, 6


def away(text: str, today: date, language: str = "en", base: date | None = None) -> Wish:
    """What a text says about a break; days are counted with its first one.

    `base` is its first day where that is known already: "till Sunday" is the Sunday after it.
    """
    heard = vocabulary(language)
    tokens = tokenise(text, heard) if len(text) <= LONGEST_TEXT else []
    words = {token.text for token in tokens}
    reasons = [why for why in ("illness", "travel") if words & heard.words(f"away-{why}")]
    span = _span(tokens, today, base or today, heard)
    days, starts = _days(tokens, heard)
    first = span.first or (today + starts * A_DAY if starts else None)
    last = span.last
    if last is not None and last < (first or base or today):
        last = None
    return Wish(
        reason=reasons[0] if reasons else None,
        first=first if first != today else None,
        last=last,
        days=days if last is None else None,
        unsure=last is None and days is None and bool(words & heard.words("away-unsure")),
        later=first is None and (span.unclear or _later(tokens, heard)),
    )


def says_back(text: str, language: str = "en") -> bool:
    """Whether a client says that her break is over: "I'm back"."""
    return _says(text, "break-over", language)


def says_none(text: str, language: str = "en") -> bool:
    """Whether a client says that she wants no break: "no break", "cancel my holiday"."""
    return _says(text, "break-none", language)


def _says(text: str, key: str, language: str) -> bool:
    heard = vocabulary(language)
    tokens = tokenise(text, heard) if len(text) <= LONGEST_TEXT else []
    return bool(heard.find(tokens, {key}))


def typed_day(text: str, today: date, language: str = "en") -> date | None:
    """A day as the whole answer to a question: also a bare date or weekday; `None` if it has passed."""
    named = answers.day(text, today, language)
    return None if isinstance(named, Unclear) or named is None or named < today else named


# --- from when, till when ------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Span:
    """What the named days say; `unclear`: a first day was named, but it could be two."""

    first: date | None = None
    last: date | None = None
    unclear: bool = False


def _span(tokens: list[Token], today: date, base: date, heard: Vocabulary) -> _Span:
    firsts: list[NamedDay] = []
    last: NamedDay | None = None
    less = 0
    unclear = False
    previous: NamedDay | None = None
    for day in find_days(tokens, heard):
        role = _role(day, previous, tokens, heard)
        previous = day
        if role == "first":
            firsts.append(day)
        elif role in {"last", "back"}:
            last, less = day, int(role == "back")
        unclear = unclear or role == "unclear"
    begins = _begins(firsts, today, heard, tokens)
    if begins is None or unclear:
        return _Span(unclear=True)
    first = begins[0] if begins else None
    if first is None and last is None and _weekend(tokens, heard):
        saturday = today + (SATURDAY - today.weekday()) * A_DAY
        return _Span(max(today, saturday), saturday + A_DAY)
    ends = last.on(today, first or base) if last else None
    if ends is not None:
        return _Span(first, ends - less * A_DAY)
    only_today = begins == [today] and len(firsts) == 1 and not _led_by(firsts[0], tokens, heard)
    run = begins[-1] if len(begins) > 1 or only_today else None
    return _Span(first, run)


def _begins(
    firsts: list[NamedDay], today: date, heard: Vocabulary, tokens: list[Token]
) -> list[date] | None:
    """The days on which it could begin, one after the other; `None` where they are not one stretch."""
    days: list[date] = []
    for each in firsts:
        day = each.on(today, today)
        after = tokens[each.end].text if each.end < len(tokens) else ""
        near = {after, *(token.text for token in tokens[max(0, each.start - 2) : each.start])}
        if day is None or each.weekday == today.weekday() or near & heard.words("away-week"):
            return None  # "Monday" said on a Monday; "Friday week", "a week on Friday"
        days.append(day)
    days = sorted(set(days))
    whole = all(b - a == A_DAY for a, b in pairwise(days))
    return days if whole else None


def _role(
    day: NamedDay, previous: NamedDay | None, tokens: list[Token], heard: Vocabulary
) -> str:  # fmt: skip
    """What a named day is: "first", "last", "back" (the day after the last), "past" or "unclear"."""
    at = day.start - 1
    skipped: set[str] = set()
    while at >= 0 and tokens[at].text in heard.words("away-skip"):
        skipped.add(tokens[at].text)
        at -= 1
    word = tokens[at].text if at >= 0 else ""
    if word in heard.words("away-later"):
        before = tokens[at - 1].text if at else ""
        return (
            "open" if before in heard.words("away-until") else "unclear"
        )  # "next Friday" is two days
    if word in heard.words("away-past"):
        return "past"
    if word in heard.words("away-until"):
        return "last"
    if word in heard.words("away-return"):
        return "back"
    if previous is not None and previous.end == at and word in heard.words("away-span"):
        return "last"
    return "first"


def _led_by(day: NamedDay, tokens: list[Token], heard: Vocabulary) -> bool:
    return day.start > 0 and tokens[day.start - 1].text in heard.words("away-from")


def _weekend(tokens: list[Token], heard: Vocabulary) -> bool:
    """Whether the coming weekend is named, and no other."""
    places = [n for n, token in enumerate(tokens) if token.text in heard.words("away-weekend")]
    others = heard.words("away-later") | heard.words("away-until") | heard.words("away-past")
    return bool(places) and not any(tokens[n - 1].text in others for n in places if n)


def _later(tokens: list[Token], heard: Vocabulary) -> bool:
    """Whether it begins on a later day that is not named: "next week", "soon", "in March"."""
    for place, token in enumerate(tokens):
        before = tokens[place - 1].text if place else ""
        after = tokens[place + 1] if place + 1 < len(tokens) else None
        if token.text in heard.words("away-later") and before not in heard.words("away-until"):
            counted = after and (after.value is not None or after.text in heard.words("away-some"))
            if not counted:  # "the next 3 days" begin today
                return True
        if month_of(token.text, heard) and before in heard.words("away-in"):
            return True
        if token.text in heard.words("away-from") and after and after.value is not None:
            return True  # "from 12/3": the order differs between countries
    return False


def _days(tokens: list[Token], heard: Vocabulary) -> tuple[int | None, int | None]:
    """Days of "5 days", "two weeks", "a week", and days until "in 2 days"; `None` where not one is named."""
    counts: list[int] = []
    starts: list[int] = []
    past = any(token.text in heard.words("away-past") for token in tokens)
    for place, _, stretch in stretches(tokens, heard):
        before = tokens[place - 1].text if place else ""
        (starts if before in heard.words("away-in") else counts).append(stretch)
    days = counts[0] if len(counts) == 1 and 1 <= counts[0] <= MOST_DAYS and not past else None
    return days, starts[0] if len(starts) == 1 and 1 <= starts[0] <= MOST_DAYS else None
