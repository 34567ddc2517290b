"""Guesses what a word that is not in the vocabulary was meant to be. Pure.

Careful where it could invent something: the first letter must be right unless two letters are
merely swapped, short words are not guessed at, and only one candidate may be near.
"""

import re
from collections.abc import Collection, Iterator

# Swapped letters, and a key beside the right one, are put right from this length on, any letter off
# from that one. Below, too many good words lie one letter apart ("night" and "eight").
SWAP_FROM, SLIP_FROM = 4, 6
# The rows of a phone's keyboard, as they lie below one another (common practice, no source).
_ROWS = ("qwertyuiop", "asdfghjkl", "zxcvbnm")
# The shortest word looked for in words run together.
PART_FROM = 3
# No word of ours is longer; what is longer is not compared with ours.
MAX_WORD = 24
_DOUBLE = re.compile(r"(.)\1")
_LONG_RUN = re.compile(r"(.)\1{2,}")


class Guesser:
    """Knows one vocabulary's words: `known` ones, `innocent` ones that are never guessed."""

    def __init__(
        self,
        known: Collection[str],
        innocent: Collection[str],
        telling: Collection[str],
        numbers: Collection[str],
    ) -> None:
        """`telling` words and `numbers` mean something by themselves: only they are guessed at."""
        self._known, self._numbers = known, numbers
        self._swappable = {w for w in known if len(w) >= SWAP_FROM and w not in innocent}
        self._telling = {w for w in telling if len(w) >= SWAP_FROM and w not in innocent}
        words = {w for w in known if len(w) >= PART_FROM}
        self._parts = words.difference(innocent, numbers)
        self._neighbours: dict[str, list[str]] = {}
        self._beside: dict[str, set[str]] = {}
        for target in self._telling:
            if len(target) < SLIP_FROM:
                for slip in _keys_beside(target):
                    self._beside.setdefault(slip, set()).add(target)
        for target in {*telling, *numbers}.difference(innocent):
            if len(target) >= SLIP_FROM:
                for key in {target, *_shortened(target)}:
                    self._neighbours.setdefault(key, []).append(target)

    def guess(self, word: str) -> tuple[str, ...]:
        """What an unknown `word` was probably meant to be: itself, another, or two."""
        for squeezed in _squeezed(word):
            if squeezed in self._known:
                return (squeezed,)
        if (single := _DOUBLE.sub(r"\1", word)) in self._telling:
            return (single,)
        if len(word) > MAX_WORD:
            return (word,)
        near = self._swapped(word) or self._slipped(word)
        return (near,) if near is not None else self._split(word) or (word,)

    def _swapped(self, word: str) -> str | None:
        """The known word that two neighbouring letters the other way round make."""
        if len(word) < SWAP_FROM:
            return None
        swaps = (word[:i] + word[i + 1] + word[i] + word[i + 2 :] for i in range(len(word) - 1))
        return next((w for w in swaps if w in self._swappable), None)

    def _slipped(self, word: str) -> str | None:
        """The one known word that is one letter off, if there is exactly one."""
        beside = self._beside.get(word, ())
        if len(beside) == 1:
            return next(iter(beside))
        if len(word) < SLIP_FROM - 1:
            return None
        near = {
            target
            for key in {word, *_shortened(word)}
            for target in self._neighbours.get(key, ())
            if target[0] == word[0] and _one_off(word, target)
        }
        return near.pop() if len(near) == 1 else None

    def _split(self, word: str) -> tuple[str, ...] | None:
        """Words run together, where one of them matters: "kneehurts", "twentyfive"."""
        for i in range(PART_FROM, len(word) - PART_FROM + 1):
            left, right = word[:i], word[i:]
            if left in self._numbers and right in self._numbers:
                return (left, right)
            if self._telling & {left, right} and self._parts >= {left, right}:
                return (left, right)
        return None


def _squeezed(word: str) -> Iterator[str]:
    """`word` with letters typed three times or more cut to two, then to one: "owwww"."""
    return (_LONG_RUN.sub(kept, word) for kept in (r"\1\1", r"\1"))


def _keys_beside(word: str) -> Iterator[str]:
    """`word` with each letter but the first in turn replaced by those of the keys beside its own."""
    for i, letter in enumerate(word[1:], start=1):
        for key in _beside(letter):
            yield word[:i] + key + word[i + 1 :]


def _beside(letter: str) -> str:
    """The letters of the keys that touch that of `letter`."""
    row = next((n for n, keys in enumerate(_ROWS) if letter in keys), None)
    if row is None:
        return ""
    at = _ROWS[row].index(letter)
    same = _ROWS[row][max(at - 1, 0) : at] + _ROWS[row][at + 1 : at + 2]
    above = _ROWS[row - 1][at : at + 2] if row else ""
    below = _ROWS[row + 1][max(at - 1, 0) : at + 1] if row + 1 < len(_ROWS) else ""
    return same + above + below


def _shortened(word: str) -> Iterator[str]:
    """`word` with each of its letters left out in turn."""
    return (word[:i] + word[i + 1 :] for i in range(len(word)))


def _one_off(a: str, b: str) -> bool:
    """Whether one letter changed, missing or too much turns `a` into `b`."""
    if len(a) == len(b):
        return sum(x != y for x, y in zip(a, b, strict=True)) == 1
    shorter, longer = sorted((a, b), key=len)
    return len(longer) - len(shorter) == 1 and shorter in _shortened(longer)
