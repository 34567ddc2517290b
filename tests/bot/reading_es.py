"""How easy a Spanish text reads: Fernández-Huerta and INFLESZ, over syllables counted by the spelling.

Fernández-Huerta = 206.84 - 60 syllables/word - 1.02 words/sentence (Fernández Huerta J. Medidas sencillas de
lecturabilidad. Consigna 1959;214:29-32, with the second term put right by Law G, 2011; second-hand, from
legible.es). Bands: from 90 very easy, from 80 easy, from 70 rather easy, from 60 normal (the same page).
INFLESZ = 206.835 - 62.3 syllables/word - words/sentence (Szigriszt-Pazos F, 1993; second-hand, the same).
Bands: over 80 very easy, from 65 quite easy, from 55 normal (Barrio-Cantalejo IM and others, An Sist Sanit
Navar 2008;31:135-152; memory).

Numerals count as they are read aloud, a telephone number digit by digit. A sentence ends at a full stop, a
question mark or a line's end; a colon ends none.
"""

import re

from tests.bot.reading import Counted

_ONES = (
    "cero", "uno", "dos", "tres", "cuatro", "cinco", "seis", "siete", "ocho", "nueve", "diez", "once",
    "doce", "trece", "catorce", "quince", "dieciséis", "diecisiete", "dieciocho", "diecinueve", "veinte",
    "veintiuno", "veintidós", "veintitrés", "veinticuatro", "veinticinco", "veintiséis", "veintisiete",
    "veintiocho", "veintinueve",
)  # fmt: skip
_TENS = ["treinta", "cuarenta", "cincuenta", "sesenta", "setenta", "ochenta", "noventa"]
_TOKEN = re.compile(r"[0-9]+|[^\W\d_]+")
_NUCLEUS = re.compile(
    r"[íú]"  # a weak vowel with an accent stands alone: dí-a
    r"|[iuü]?[aeoáéó][iuüy]?(?![íú])"  # a strong one with the weak ones beside it: cui-da, bai-le
    r"|[iuü]?[aeoáéó]"
    r"|[iuü]+(?:y(?![aeiouáéíóúü]))?"  # two weak ones are one: ciu-dad, muy
    r"|y(?![aeiouáéíóúü])"  # the word y
)


class Reading(Counted):
    """Spanish."""

    @property
    def fernandez_huerta(self) -> float:
        return 206.84 - 60 * self.syllables / self.words - 1.02 * self.words / self.sentences

    @property
    def inflesz(self) -> float:
        return 206.835 - 62.3 * self.syllables / self.words - self.words / self.sentences


def reading(text: str) -> Reading:
    """Count a text."""
    sentences = [part for part in re.split(r"[.?](?=\s|$)|\n", text) if _TOKEN.search(part)]
    words = [word for part in sentences for token in _TOKEN.findall(part) for word in _aloud(token)]
    return Reading(len(words), len(sentences), sum(syllables(word) for word in words))


def _aloud(token: str) -> list[str]:
    """A numeral as words: up to 99 as a number, else digit by digit."""
    if not token.isdecimal():
        return [token]
    if len(token) > 2:
        return [_ONES[int(digit)] for digit in token]
    number = int(token)
    if number < len(_ONES):
        return [_ONES[number]]
    return [_TENS[number // 10 - 3], *(["y", _ONES[number % 10]] if number % 10 else [])]


def syllables(word: str) -> int:
    """Vowel groups by the rules of Spanish spelling; at least one.

    Two strong vowels, or a weak one with an accent beside a strong one, are two syllables; other groups are
    one. An h between vowels changes nothing; the u of que, qui, gue and gui is not heard (Ortografía de la
    lengua española, RAE 2010; memory).
    """
    heard = re.sub(r"qu|gu(?=[eiéí])", "g", word.lower()).replace("h", "")
    return max(1, len(_NUCLEUS.findall(heard)))
