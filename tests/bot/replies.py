"""Generated replies: what a client might type about a bout, with what it can mean at most.

Sentences are of our own. Digits are of every script that has any (Unicode Character Database, by way of
`unicodedata`). Round the sentence comes what phones add: capitals, marks, emoji, invisible characters,
a slip of the thumb.
"""

from __future__ import annotations

import sys
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from random import Random

from bot.understand import Intent

ZEROS = tuple(
    chr(point)
    for point in range(sys.maxunicode + 1)
    if unicodedata.category(chr(point)) == "Nd" and unicodedata.digit(chr(point)) == 0
)
"""The zero of every script with decimal digits; the nine after it are the others."""
CALLS_FOR_HELP = {112}
"""An emergency number (ITU-T E.161.1, memory): beside words of pain it may mean that she needs help."""
COUNTABLE = [n for n in range(1, 501) if n not in CALLS_FOR_HELP]
ASCII_TOO = 0.5
"""Half of all replies are typed in the digits of the languages' own keyboards."""
SLIPS = 0.1

# What stands for a number: {n} a count, {a} {b} two of them, {s} a score, {h} an hour, {m} minutes,
# {x} a number that is no count of a bout, {p} a telephone number.
COUNTS = {
    "en": (
        *("{n}", "did {n}", "{n} done", "I did {n} reps", "done {n} of them", "just did {n}"),
        *("ok {n}", "only {n} today", "{n} heel drops", "finished {n}", "managed {n}", "{n} jacks"),
        *("that was {n}", "I have done {n}", "{n} stomps done", "all good, {n}"),
    ),
    "es": (
        *("{n}", "hice {n}", "{n} hechas", "he hecho {n}", "llevo {n}", "ya hice {n}"),
        *("vale {n}", "solo {n} hoy", "{n} repeticiones", "acabo de hacer {n}", "fueron {n}"),
        *("hice {n} veces", "listo, {n}"),
    ),
}
SUMS = {
    "en": ("{a} + {b}", "did {a} and {b}", "{a} plus {b}", "{a} and then {b}"),
    "es": ("{a} + {b}", "hice {a} y {b}", "{a} más {b}", "{a} y luego {b}"),
}
SIDES = {
    "en": ("{n} each side", "{n} per side", "did {n} on each leg", "{n} each leg"),
    "es": ("{n} por lado", "{n} cada lado", "{n} con cada pierna", "hice {n} de cada lado"),
}
YESTERDAY = {
    "en": ("yesterday {n}", "did {n} yesterday", "{n} yesterday"),
    "es": ("ayer {n}", "hice {n} ayer", "ayer hice {n}"),
}
NO_COUNT = {
    "en": (
        *("{a}-{b}", "{a} to {b}", "between {a} and {b}", "{a} or {b}", "at {h}:{m}", "in {m} min"),
        *("in {m} minutes", "later, in {m} min", "{p}", "call me on {p}", "{x}", "did {x}"),
        *("not {n}", "I did not do {n}", "tomorrow {n}", "I will do {n} later", "{n}?"),
    ),
    "es": (
        *("{a}-{b}", "de {a} a {b}", "entre {a} y {b}", "{a} o {b}", "a las {h}:{m}", "en {m} min"),
        *("en {m} minutos", "dentro de {m} min", "{p}", "llame al {p}", "{x}", "hice {x}"),
        *("no {n}", "no hice {n}", "mañana {n}", "haré {n} luego", "¿{n}?"),
    ),
}
PAIN = {
    "en": (
        "my hip hurts {s}",
        "pain {s}",
        "pain {s} of 10",
        "hurts, {s}/10",
        "back pain {s} out of 10",
    ),
    "es": (
        "me duele {s}",
        "dolor {s}",
        "dolor {s} de 10",
        "me duele la cadera {s}",
        "duele {s}/10",
    ),
}
WITH_PAIN = {
    "en": (
        *("did {n}, my hip hurts", "{n} but it hurts", "did {n} and have pain in my back"),
        *("{n} done, chest pain", "{n} then I felt dizzy", "did {n} and fell", "{n}, I fell"),
    ),
    "es": (
        *("hice {n}, me duele la cadera", "{n} pero duele", "hice {n} y tengo dolor de espalda"),
        *("{n} hechas, dolor en el pecho", "{n} y me mareé", "hice {n} y me caí", "{n}, me caí"),
    ),
}
WITHOUT_PAIN = {
    "en": ("did {n}, no pain", "{n}, nothing hurts", "{n} without pain", "no pain today, did {n}"),
    "es": (
        "hice {n}, sin dolor",
        "{n}, no me duele nada",
        "{n} sin dolor",
        "hoy sin dolor, hice {n}",
    ),
}
BEFORE = ("", "", "", " ", "\u200e", "\u200f", "ok ", "... ", "\n")
AFTER = (
    "",
    "",
    "",
    ".",
    "!",
    " ",
    "\u200f",
    " \U0001f44d",
    "\U0001f44d\U0001f3fd",
    " ;-)",
    "\n\n",
    " ok",
)


@dataclass(frozen=True, slots=True)
class Generated:
    """One reply, and what it can mean at most: `reps` if it counts anything at all."""

    kind: str
    text: str
    language: str
    reps: int | None

    def faults(self, heard: Intent) -> Iterator[str]:
        """What must never be: a wrong count, or a mention of pain that is missed or made up."""
        if heard.reps not in {None, self.reps}:
            yield f"counts {heard.reps}, not {self.reps}"
        if (heard.all or heard.half) and self.reps is None:
            yield "counts a bout"
        hurts = self.kind in {"pain", "with pain"}
        if hurts and not (heard.mentions_pain or heard.warning or heard.fall):
            yield "misses what hurts"
        if self.kind == "without pain" and (heard.mentions_pain or heard.warning or heard.fall):
            yield "hears pain where there is none"


GROUPS = (
    ("count", COUNTS, 40),
    ("sum", SUMS, 8),
    ("side", SIDES, 8),
    ("yesterday", YESTERDAY, 6),
    ("no count", NO_COUNT, 18),
    ("pain", PAIN, 6),
    ("with pain", WITH_PAIN, 8),
    ("without pain", WITHOUT_PAIN, 6),
)
"""Kinds of replies with their sentences and how many of a hundred."""


def replies(seed: int, many: int) -> Iterator[Generated]:
    """So many replies, the same for the same seed."""
    random = Random(seed)
    weights = [weight for _, _, weight in GROUPS]
    for kind, sentences, _ in random.choices(GROUPS, weights, k=many):
        language = random.choice(("en", "es"))
        yield _reply(random, kind, language, random.choice(sentences[language]))


def _reply(random: Random, kind: str, language: str, sentence: str) -> Generated:
    zero = "0" if random.random() < ASCII_TOO else random.choice(ZEROS)
    n = random.choice(COUNTABLE)
    a, b = random.randint(1, 250), random.randint(1, 250)
    numbers = {
        "n": n,
        "a": a,
        "b": b,
        "s": random.randint(1, 10),
        "h": random.randint(0, 23),
        "m": random.randint(10, 59),
        "x": random.choice((0, random.randint(501, 10**9))),
        "p": random.randint(10**8, 10**11),
    }
    typed = {name: _in_script(number, zero) for name, number in numbers.items()}
    words = _slipped(random, sentence) if random.random() < SLIPS else sentence
    words = random.choice((str, str, str.capitalize, str.upper))(words).replace("{N}", "{n}")
    for name in numbers:
        words = words.replace(f"{{{name.upper()}}}", f"{{{name}}}")
    said = random.choice(BEFORE) + words.format(**typed) + random.choice(AFTER)
    reps = {"sum": a + b, "pain": None, "no count": None}.get(kind, n)
    return Generated(kind, said, language, reps)


def _in_script(number: int, zero: str) -> str:
    return "".join(chr(ord(zero) + int(digit)) for digit in str(number))


def _slipped(random: Random, sentence: str) -> str:
    """Two neighbouring letters of a word of five or more change places; numbers and short words stay.

    Not the first: who denies or reports pain is mostly told by it.
    """
    words = sentence.split(" ")
    long = [at for at, word in enumerate(words) if len(word) > 4 and word.isalpha()]
    if not long:
        return sentence
    at = random.choice(long)
    place = random.randrange(1, len(words[at]) - 2)
    word = words[at]
    words[at] = word[:place] + word[place + 1] + word[place] + word[place + 2 :]
    return " ".join(words)
