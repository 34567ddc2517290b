"""Pain, a fall or a sign told in another language than the one somebody has chosen. Pure.

Who is in need says it in the language she thinks in. Only alarms are heard so, never a count or a command,
and only where more of the words are known there: "take care" must not be heard as a Spanish "caer".
"""

import re

from bot.understand import Intent, understand
from bot.understand.tokens import MAX_CHARACTERS, plain
from bot.understand.vocabulary import HEARD, HEARS, vocabulary

_WORD = re.compile(r"[^\W\d_]+")


def found(intent: Intent) -> bool:
    """Whether a text tells of pain, a fall or a sign."""
    return intent.mentions_pain or intent.fall or intent.warning


def read(text: str, language: str) -> Intent:
    """As `understand`; an alarm that only another language finds comes in the place of the rest."""
    own = understand(text, language)
    if found(own):
        return own
    words = _WORD.findall(plain(text[:MAX_CHARACTERS]))
    here = _known(words, HEARS[language])
    others = (each for each in HEARD if each != HEARS[language])
    fitting = (understand(text, each) for each in others if _known(words, each) > here)
    return next((_alarm(intent) for intent in fitting if found(intent)), own)


def _known(words: list[str], language: str) -> int:
    return sum(word in vocabulary(language).known for word in words)


def _alarm(intent: Intent) -> Intent:
    return Intent(
        kind=intent.kind,
        mentions_pain=intent.mentions_pain,
        score=intent.score,
        warning=intent.warning,
        fall=intent.fall,
        emergency=intent.emergency,
        crisis=intent.crisis,
        signs=intent.signs,
    )
