"""Words that a client typed behind a command: a count is logged, of anything else she is told (P3).

Words of harm were looked for before (`dispatch`).
"""

from __future__ import annotations

from dataclasses import replace

from bot.telegram.handlers import client
from bot.telegram.handlers.act import Act
from bot.understand import any_language, understand
from scheduler.domain.messages import text
from scheduler.domain.people import Person, Role
from scheduler.domain.reply import Reply

PASSED_OVER = frozenset({"today", "help", "start"})
"""Commands without numbers: a count behind them is a report. "/week 12" or "/times 8" may mean another."""
LONGEST_COUNT = 12
"""Characters; a single word that is longer may be the code of an invitation."""


def is_code(mine: tuple[Person, ...], words: str) -> bool:
    """Whether the words behind /start are an invitation: one word, and no count or harm of a client's."""
    if len(words.split()) != 1:
        return False
    of_client = bool(mine) and mine[0].role is Role.CLIENT
    if not of_client or len(words) > LONGEST_COUNT:
        return True
    language = mine[0].language
    harm = any_language.found(any_language.read(words, language))
    return not harm and not _is_count(words, language)


def _is_count(words: str, language: str) -> bool:
    return understand(words, language).kind == "log"


def command(act: Act, name: str, words: str) -> Reply | None:
    """Carry out a command that has `words` behind it; `None` where there is no such command."""
    if name in PASSED_OVER and _is_count(words, act.who.language):
        return client.heard(replace(act, update=replace(act.update, text=words)))
    answer = client.command(act, name)
    if answer is None:
        return None
    return replace(answer, message=(*answer.message, text("only-command-read")))
