"""Companion exercises in typed words: what a client did, and what a clinician prescribes. Pure.

A text that names a companion is about it: its number is never taken for reps of the impact, and "back" in
the name of an exercise is no pain. What is said beside the name is read for pain like any other text.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from bot import answers
from bot.answers import Unclear
from bot.understand.tokens import Token, tokenise
from bot.understand.vocabulary import Vocabulary, vocabulary
from scheduler.domain.companions import (
    A_MONDAY,
    BOUNDS,
    CATALOGUE,
    Companion,
    changed,
    out_of_bounds,
)

LONGEST_TEXT = 200
"""Characters; a longer text is no short answer."""


@dataclass(frozen=True, slots=True)
class Named:
    """A text about a companion: its key, the text without its name, and what was counted.

    `rounds` and `number` (of what nobody said) are `None` where they were not said; `none`: it was not done.
    `bare`: nothing but its name was said. `doubtful`: a number stands apart from the name ("12 and my back
    raise"), or it is asked something.
    """

    key: str
    rest: str
    rounds: int | None = None
    number: int | None = None
    none: bool = False
    bare: bool = False
    doubtful: bool = False


def named(text: str, language: str = "en") -> Named | None:
    """The companion that a text names; `None` if it names none, or more than one."""
    heard = vocabulary(language)
    tokens = tokenise(text, heard) if len(text) <= LONGEST_TEXT else []
    found = heard.pick(tokens, {f"companion-{key}" for key in CATALOGUE})
    keys = {match.group.removeprefix("companion-") for match in found}
    if len(keys) != 1:
        return None
    inside = {n for match in found for n in range(match.start, match.end)}
    rest = [token for n, token in enumerate(tokens) if n not in inside]
    links = heard.words("companion-link")
    return replace(
        _said(keys.pop(), rest, heard),
        bare=all(token.text in links or not token.is_word for token in rest),
        doubtful=_apart(tokens, inside, heard) or any(token.text == "?" for token in rest),
    )


def _apart(tokens: list[Token], inside: set[int], heard: Vocabulary) -> bool:
    """Whether a number without a unit of a companion's is not right beside the name."""
    links = heard.words("companion-link") | heard.words("companion-rep")
    for place, token in enumerate(tokens):
        if token.value is None or _unit(tokens, place, heard) not in {"", "reps"}:
            continue
        after = next((n for n in range(place + 1, len(tokens)) if tokens[n].text not in links), -1)
        before = next((n for n in range(place - 1, -1, -1) if tokens[n].text not in links), -1)
        if not {after, before} & inside:
            return True
    return False


def _said(key: str, rest: list[Token], heard: Vocabulary) -> Named:
    numbers = _numbers(rest, heard)
    none = any(token.text in heard.words("companion-none") for token in rest)
    words = " ".join(token.text for token in rest)
    return Named(key, words, numbers.get("rounds"), numbers.get(""), none)


def rounds(text: str, language: str = "en") -> Named | None:
    """What a text without a name says about rounds: "2 rounds", "not today"; `None` if nothing."""
    heard = vocabulary(language)
    tokens = tokenise(text, heard) if len(text) <= LONGEST_TEXT else []
    said = _said("", tokens, heard)
    return said if said.rounds is not None or said.none else None


def read(
    text: str, companions: tuple[Companion, ...], language: str = "en"
) -> Companion | Unclear | None:  # fmt: skip
    """The answer to "which exercises": one of them with its numbers, or `None` for none at all."""
    none = answers.day(text, A_MONDAY, language) is None
    return None if none else prescribed(text, companions, language)


def prescribed(
    text: str, companions: tuple[Companion, ...], language: str = "en"
) -> Companion | Unclear:  # fmt: skip
    """A companion as a clinician types it: "hover hold 5 s, 3 rounds, 2 days".

    What is not said stays as in `companions`, or as usual.
    """
    about = named(text, language)
    if about is None:
        return Unclear("answer-choice", {"options": tuple(CATALOGUE)})
    heard = vocabulary(language)
    said = _numbers(tokenise(about.rest, heard), heard)
    before = next((each for each in companions if each.key == about.key), CATALOGUE[about.key])
    amount = said.get(before.unit, said.get(""))
    low, high = BOUNDS["days"]
    if not low <= said.get("days", low) <= high:
        return Unclear("answer-number", {"low": low, "high": high})
    after = changed(before, amount, said.get("rounds"), said.get("days"))
    wrong = out_of_bounds(after)
    if wrong is not None or 0 in said.values():
        low, high = BOUNDS[wrong or before.unit]
        return Unclear("answer-number", {"low": low, "high": high})
    return after


UNITS = {
    "companion-round": "rounds",
    "companion-second": "hold",
    "companion-rep": "reps",
    "away-day": "days",
}
"""Words for what is counted, and what they count; a number without one counts under ""."""


def _numbers(tokens: list[Token], heard: Vocabulary) -> dict[str, int]:
    found: dict[str, int] = {}
    for place, token in enumerate(tokens):
        if token.value is None:
            continue
        found.setdefault(_unit(tokens, place, heard), token.value)
    return found


def _unit(tokens: list[Token], place: int, heard: Vocabulary) -> str:
    """What the number at a place counts, by the word after it."""
    after = tokens[place + 1].text if place + 1 < len(tokens) else ""
    return next((name for key, name in UNITS.items() if after in heard.words(key)), "")
