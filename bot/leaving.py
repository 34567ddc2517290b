"""A client who wants to leave for good, in typed words. Pure."""

from __future__ import annotations

from bot.understand.tokens import tokenise
from bot.understand.vocabulary import vocabulary

LONGEST_TEXT = 200
"""Characters; in a longer text the wish would not be a plain one."""


def wants_to_leave(text: str, language: str = "en") -> bool:
    """Whether a text asks to leave, or to have one's data erased: it only ever leads to a question."""
    heard = vocabulary(language)
    tokens = tokenise(text, heard) if len(text) <= LONGEST_TEXT else []
    return bool(heard.find(tokens, {"leave"})) and not heard.find(tokens, {"not-leave"})
