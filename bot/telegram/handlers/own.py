"""What a client taps or types about her own data, and to leave (D1)."""

from __future__ import annotations

from datetime import datetime

from bot import answers, leaving
from bot.answers import Unclear
from bot.telegram.handlers.act import Press
from bot.telegram.incoming import Incoming
from bot.understand import Intent, any_language
from scheduler.domain.people import Person
from scheduler.domain.reply import Reply
from scheduler.ports import Tx
from scheduler.usecases import archive
from scheduler.usecases import leaving as left


def _answer(step: str, yes: bool) -> Press:
    return lambda act: left.answer(act.tx, act.who.id, yes, step, act.now)


LEAVING: dict[str, Press] = {
    "lv": _answer("ask", yes=True),
    "lx": _answer("ask", yes=False),
    "lvy": _answer("sure", yes=True),
    "lvx": _answer("sure", yes=False),
}
DATA: dict[str, Press] = {
    "mf": lambda act: archive.files(act.tx, act.who, act.now, f"u{act.update.update_id}")
}
PRESSES: dict[str, Press] = {**LEAVING, **DATA}
"""These need no consent: whoever never agreed may see what there is, and go."""
COMMANDS: dict[str, Press] = {
    "data": lambda act: archive.about(act.tx, act.who.id),
    "leave": lambda act: left.ask(act.tx, act.who.id, act.now),
}


def typed(
    tx: Tx, who: Person, intent: Intent, update: Incoming, now: datetime
) -> Reply | None:  # fmt: skip
    """The wish to leave, or a yes or no to the question about it; `None` for all other words.

    Where the same words tell of pain, a fall or a sign, that comes first.
    """
    if update.kind == "edit" or any_language.found(intent):
        return None
    if leaving.wants_to_leave(update.text, who.language):
        return left.ask(tx, who.id, now)
    question = left.open_question(tx, who.id, now)
    asked = tx.questions.of(who.id)
    if question is None or asked[0].kind != question.kind:
        return None  # something else was asked since
    said = answers.yes_no(update.text, who.language)
    if isinstance(said, Unclear):
        return None
    return left.answer(tx, who.id, said, question.step, now)
