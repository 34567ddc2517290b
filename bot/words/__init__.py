"""Messages in words: catalogue ids and their arguments in, plain text out. Pure but for reading a file.

Wording is in `bot/text/<language>.ftl`; how an argument becomes words is in `bot/words/formats.py`.
Texts are sent without a parse mode, so nothing is escaped and markup in a name stays what was typed.
"""

from __future__ import annotations

from itertools import pairwise

from bot.words.catalogue import LANGUAGES, Catalogue, MissingText, catalogue
from bot.words.formats import arguments, is_nothing
from bot.words.pseudo import PSEUDO, pseudo
from scheduler.domain.messages import Message, Text

__all__ = ["LANGUAGES", "LONGEST_LABEL", "PSEUDO", "MissingText", "label", "render"]

DEFAULT = "en"
LONGEST_LABEL = 32
"""Characters of a button's label: about what a phone shows of one button a row."""
DETAILS: tuple[str, ...] = (
    "urgent", "movement", "sign", "score", "place", "when", "new", "sharper",
    "injured", "new_pain", "doing", "unanswered", "reps", "done", "away", "because", "readiness", "begins",
    "until", "screened", "trials", "best_before", "stepped",
    "words", "phone",
)  # fmt: skip
"""What a flag may carry, in the order of its lines. Each has a piece of its own, `part-flag-...`."""


def render(message: Message, language: str) -> str:
    """A message as plain text. MissingText if the catalogue lacks an id or the message an argument.

    Texts follow one another on lines of their own, set off by a blank line where one has several lines.
    """
    if language == PSEUDO:
        return "".join(pseudo(each) for each in message)
    words = catalogue(_spoken(language))
    said = [part for part in (_text(words, each) for each in message) if part]
    joined = said[0] if said else ""
    for before, after in pairwise(said):
        joined += ("\n\n" if "\n" in before or "\n" in after else "\n") + after
    return joined


def label(text: Text, language: str) -> str:
    """The label of a button, at most `LONGEST_LABEL` characters; MissingText as for `render`."""
    if language == PSEUDO:
        return pseudo(text)
    said = _say(catalogue(_spoken(language)), text)
    return said if len(said) <= LONGEST_LABEL else said[: LONGEST_LABEL - 1].rstrip() + "…"


def _spoken(language: str) -> str:
    return language if language in LANGUAGES else DEFAULT


def _text(words: Catalogue, text: Text) -> str:
    if text.id != "flag":
        return _say(words, text)
    lines = [Text(f"part-flag-{name.replace('_', '-')}", text.args) for name in _known(text)]
    return "\n".join(filter(None, (_say(words, each) for each in (text, *lines))))


def _known(flag: Text) -> list[str]:
    return [name for name in DETAILS if not is_nothing(flag.args.get(name))]


def _say(words: Catalogue, text: Text) -> str:
    return words.say(text.id, arguments(text.args, words)).strip()
