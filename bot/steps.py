"""The times of a step test in typed words: "14.8 and 15.2", "first 14,8 second void", "lost balance". Pure.

Only a text of which every word is known here is taken for times: one more word, of pain or of a fall, and
it is read like any other text.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from dataclasses import dataclass

from bot.understand.counts import WORST_PAIN
from bot.understand.tokens import Token, tokenise
from bot.understand.vocabulary import Vocabulary, vocabulary
from scheduler.domain.steptest import SECOND, TRIALS, Trial

LONGEST_TEXT = 120
"""Characters; a longer text is no short answer."""
DECIMALS = 2
BETWEEN = frozenset(",.;:/&-+\n")
"""Marks that may stand beside times."""


@dataclass(frozen=True, slots=True)
class Times:
    """The trials that a text tells of, one or both. `sure`: it can hardly mean anything else."""

    trials: tuple[Trial, ...]
    sure: bool


@dataclass(frozen=True, slots=True)
class _Part:
    """What stands at one place: a trial, which of the two comes next, or nothing that counts."""

    after: int
    trial: Trial = None
    is_trial: bool = False
    place: int | None = None
    plain: bool = False
    doubtful: bool = False
    copies: int = 1


def times(text: str, language: str = "en", left: int = TRIALS) -> Times | None:
    """The trials in the order of the test; `None` where a text is not about them alone.

    `left` is how many have not been told yet.
    """
    heard = vocabulary(language)
    tokens = tokenise(text, heard) if len(text) <= LONGEST_TEXT else []
    parts = [*_parts(tokens, heard)] if tokens else []
    if not parts or parts[-1].after < 0 or _is_score(tokens):
        return None
    told = [part for part in parts if part.is_trial]
    if len(told) == 1 and told[0].doubtful and left > 1:
        return None  # "14,15" is one time or two
    trials = _in_order(parts)
    if trials is None or len(trials) > left:
        return None
    return Times(trials, len(trials) == TRIALS or not told[0].plain)


def _is_score(tokens: list[Token]) -> bool:
    """Whether something is "of ten", as pain is: "6/10" is no two times."""
    pairs = itertools.pairwise(tokens)
    return any(mark.text == "/" and after.value == WORST_PAIN for mark, after in pairs)


def _in_order(parts: list[_Part]) -> tuple[Trial, ...] | None:
    """Each trial in its place: the one that was named before it, else the first that is free."""
    places: dict[int, Trial] = {}
    named: int | None = None
    for part in parts:
        if part.place is not None:
            named = part.place
        for _ in range(part.copies if part.is_trial else 0):
            free = next((n for n in range(TRIALS) if n not in places), None)
            place = free if named is None else named
            if place is None or place in places:
                return None
            places[place], named = part.trial, None
    return tuple(places[n] for n in sorted(places)) or None


def _parts(tokens: list[Token], heard: Vocabulary) -> Iterator[_Part]:
    """The text from part to part; the last one has no `after` where a word is not understood."""
    voids = {match.start: match.end for match in heard.pick(tokens, {"step-void"})}
    at = 0
    while at < len(tokens):
        part = _part(tokens, at, voids, heard)
        yield part
        if part.after < 0:
            return
        at = part.after


def _part(tokens: list[Token], at: int, voids: dict[int, int], heard: Vocabulary) -> _Part:
    token = tokens[at]
    if at in voids:
        before = tokens[at - 1] if at else None
        both = before and (before.value == TRIALS or before.text in heard.words("step-both"))
        return _Part(voids[at], is_trial=True, copies=TRIALS if both else 1)
    if token.value == TRIALS and at + 1 in voids:
        return _Part(at + 1)  # "two voids"
    if token.doubtful:
        return _Part(at + 1)  # "the first one"
    if token.value is not None:
        return _ordinal(tokens, at, heard) or _time(tokens, at, heard)
    for place, key in enumerate(("step-first", "step-second")):
        if token.text in heard.words(key):
            return _Part(at + 1, place=place)
    between = token.text in BETWEEN and (at > 0 or token.text != "-")
    known = between or token.text in heard.words("step-filler")
    return _Part(at + 1 if known or token.text in heard.words("step-both") else -1)


def _ordinal(tokens: list[Token], at: int, heard: Vocabulary) -> _Part | None:
    """A number with letters at its end names a trial: "1st", "2a"."""
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    value = tokens[at].value
    letters = after is not None and after.glued and after.text in heard.words("step-ordinal")
    if not letters or value not in {1, 2}:
        return None
    return _Part(at + 2, place=value - 1)


def _time(tokens: list[Token], at: int, heard: Vocabulary) -> _Part:
    """A number with up to two digits after a point or comma, or after the word for it."""
    whole = tokens[at].value or 0
    mark = tokens[at + 1] if at + 1 < len(tokens) else None
    after = tokens[at + 2] if at + 2 < len(tokens) else None
    if mark is not None and after is not None and after.value is not None:
        glued = mark.text in {".", ","} and mark.glued and after.glued and after.digits
        if glued and len(after.text) <= DECIMALS:
            parts = int(after.text.ljust(DECIMALS, "0"))
            doubtful = mark.text == "," and len(after.text) == DECIMALS
            return _Part(at + 3, whole * SECOND + parts, is_trial=True, doubtful=doubtful)
        if glued:
            return _Part(-1)
        if mark.text in heard.words("step-point") and after.value < SECOND:
            parts = after.value * 10 if after.value < SECOND // 10 else after.value
            return _Part(at + 3, whole * SECOND + parts, is_trial=True)
    return _Part(at + 1, whole * SECOND, is_trial=True, plain=True)
