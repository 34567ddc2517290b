"""What is typed for somebody to read: to a client and back (K5), and the words of a flag's note (H6)."""

from __future__ import annotations

from datetime import datetime

from bot.telegram.handlers.act import Act, Press
from bot.telegram.incoming import Incoming
from scheduler.domain.people import Person
from scheduler.domain.reply import Reply
from scheduler.ports import Tx
from scheduler.usecases import closing, writing


def write(act: Act) -> Reply:
    return writing.ask(act.tx, act.who.id, act.number(0), act.now)


def close_flag(act: Act) -> Reply:
    return closing.ask_outcome(act.tx, act.who.id, act.number(0), act.now)


def flag_outcome(act: Act) -> Reply:
    return closing.choose(act.tx, act.who.id, act.number(0), act.args[1], act.now)


def reply_to(act: Act) -> Reply:
    return writing.ask_reply(act.tx, act.who.id, act.number(0), act.now)


OF_CLINICIAN: dict[str, Press] = {"w": write, "fx": close_flag, "fo": flag_outcome}
OF_CLIENT: dict[str, Press] = {"re": reply_to}


def on_to_something_else(press: Press) -> Press:
    """A press that ends the waiting for words: only the very next text is sent to a client."""

    def ended(act: Act) -> Reply:
        put_down(act)
        return press(act)

    return ended


def put_down(act: Act) -> None:
    """What is typed from now on is no message, no note and no time of a test."""
    act.tx.questions.close(act.who.id, "write", "note", "steptest")


def typed(act: Act) -> Reply | None:
    """A clinician's words, if they are a message to a client or a flag's note."""
    source = f"u{act.update.update_id}"
    for question in act.tx.questions.of(act.who.id):
        if question.kind not in {"write", "note"}:
            continue
        if question.asked_at is None or act.now >= question.asked_at + writing.STANDS:
            act.tx.questions.close(act.who.id, "write", "note")
            return None
        if question.kind == "note":
            return closing.note(act.tx, act.who.id, question, act.update.text, act.now)
        return writing.send(act.tx, act.who, question, act.update.text, source, act.now)
    return None


def answered(tx: Tx, who: Person, update: Incoming, pressing: bool, now: datetime) -> Reply | None:
    """Pass a client's words on if they answer a clinician's message; `None` if they do not.

    `pressing`: a question about pain or a fall is open, and only a reply in the chat goes past it.
    """
    if update.reply_to is None and (pressing or update.kind == "edit"):
        return None
    writer = writing.awaited(tx, who.id, update.reply_to, now)
    if writer is None:
        return None
    return writing.answer(tx, who.id, writer, update.text, f"u{update.update_id}", now)
