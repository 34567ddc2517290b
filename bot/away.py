"""A break in a client's own words: why, and how long. Pure.

"on holiday till Sunday" says both, "I am ill" only why, "5 days" only how long.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta

from bot import answers
from bot.answers import Unclear
from bot.understand.tokens import Token, tokenise
from bot.understand.vocabulary import Vocabulary, vocabulary

LONGEST_TEXT = 200
"""Characters; a longer text is no short answer."""
MOST_DAYS = 366
UNITS = {"away-day": 1, "away-week": 7}
"""Words for a stretch of time, and its days."""


@dataclass(frozen=True, slots=True)
class Away:
    """What was said: a reason of `domain.breaks`, the last day of the break, or that nobody knows it yet."""

    reason: str | None = None
    last: date | None = None
    unsure: bool = False

    @property
    def says_how_long(self) -> bool:
        return self.last is not None or self.unsure


def away(text: str, today: date, language: str = "en") -> Away:
    """What a text says about a break that begins today; days are counted with today as the first."""
    heard = vocabulary(language)
    tokens = tokenise(text, heard) if len(text) <= LONGEST_TEXT else []
    words = {token.text for token in tokens}
    reasons = [why for why in ("illness", "travel") if words & heard.words(f"away-{why}")]
    reason = reasons[0] if reasons else None
    last = _last(tokens, today, heard, language)
    unsure = last is None and bool(words & heard.words("away-unsure"))
    return Away(reason, last, unsure)


def says_back(text: str, language: str = "en") -> bool:
    """Whether a client says that her break is over: "I'm back"."""
    heard = vocabulary(language)
    tokens = tokenise(text, heard) if len(text) <= LONGEST_TEXT else []
    return bool(heard.find(tokens, {"away-back"}))


def _last(tokens: list[Token], today: date, heard: Vocabulary, language: str) -> date | None:
    words = [token.text for token in tokens]
    until = next((n for n, word in enumerate(words) if word in heard.words("away-until")), None)
    if until is not None:
        return _named(" ".join(words[until + 1 :]), today, language)
    if set(words) & heard.words("away-later"):
        return None  # it does not begin today: how long is asked
    if (days := _days(tokens, heard)) is not None:
        return today + timedelta(days=days - 1)
    return today if set(words) & heard.words("away-today") else None


def _named(text: str, today: date, language: str) -> date | None:
    """A day by name or date; `None` for what is none, or for one that has passed."""
    named = answers.day(text, today, language)
    return None if isinstance(named, Unclear) or named is None or named < today else named


def typed_last(text: str, today: date, language: str = "en") -> date | None:
    """The last day as the whole answer to "how long": also a bare date or weekday."""
    return _named(text, today, language)


def _days(tokens: list[Token], heard: Vocabulary) -> int | None:
    """Days of "5 days", "two weeks", "a week"; `None` where no such number is named, or two are."""
    counts: list[int] = []
    for place, token in enumerate(tokens):
        size = next((n for key, n in UNITS.items() if token.text in heard.words(key)), 0)
        before = tokens[place - 1] if place else None
        if not size or before is None:
            continue
        if before.value is not None:
            counts.append(before.value * size)
        elif before.text in heard.words("away-one"):
            counts.append(size)
    return counts[0] if len(counts) == 1 and 1 <= counts[0] <= MOST_DAYS else None
