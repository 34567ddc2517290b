"""The movement that a clinician's short answer names. Pure."""

from __future__ import annotations

from bot.answers import Unclear
from bot.choices import label, pick
from scheduler.domain.messages import text as catalogue
from scheduler.domain.plan import MOVEMENTS


def named(text: str, language: str) -> str | Unclear:
    """The movement that is meant: its number in the list, or its name in the language or as a key."""
    names = [
        (key, label(catalogue("button-exercise", exercise=key), language)) for key in MOVEMENTS
    ]
    found = pick(text, names)
    if not isinstance(found, Unclear):
        return found
    spaced = text.replace("-", " ") if any(c.isalpha() for c in text) else text
    by_key = pick(spaced, [(key, key.replace("-", " ")) for key in MOVEMENTS])
    return found if isinstance(by_key, Unclear) else by_key
