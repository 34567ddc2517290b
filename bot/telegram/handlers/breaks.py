"""What a client taps or types about a break, and what her clinician taps (K5)."""

from __future__ import annotations

from datetime import datetime

from bot import away, dialogue
from bot.answers import Unclear
from bot.telegram.handlers.act import Act, Press
from bot.understand import Intent
from scheduler.domain.breaks import LENGTHS
from scheduler.domain.messages import text
from scheduler.domain.people import Person
from scheduler.domain.reply import Reply, reply
from scheduler.ports import Question, Tx
from scheduler.usecases import breaks, caseload, pain
from scheduler.usecases.rest import on_break, today_of


def reason(act: Act) -> Reply:
    if pain.open_question(act.tx, act.who.id, "break") is None:
        return reply("question-over")
    return breaks.because(act.tx, act.who.id, act.args[0], act.now)


def length(act: Act) -> Reply:
    if act.args[0] not in LENGTHS:
        return reply("question-over")
    return breaks.lasts_for(act.tx, act.who.id, act.args[0], act.now)


def no_break(act: Act) -> Reply:
    return breaks.not_now(act.tx, act.who.id, act.now)


def change(act: Act) -> Reply:
    """Another length for the break that goes on."""
    today = today_of(act.tx.people.client(act.who.id), act.now)
    going_on = on_break(act.tx, act.who.id, today)
    if going_on is None:
        return reply("question-over")
    return breaks.because(act.tx, act.who.id, going_on.reason, act.now)


def back(act: Act) -> Reply:
    today = today_of(act.tx.people.client(act.who.id), act.now)
    if on_break(act.tx, act.who.id, today) is None:
        return reply("question-over")
    return breaks.back(act.tx, act.who.id, act.now)


PRESSES: dict[str, Press] = {
    "br": reason,
    "bl": length,
    "bn": no_break,
    "bm": change,
    "bb": back,
}


# --- typed ---------------------------------------------------------------------------------------


def wish(tx: Tx, who: Person, said: str, now: datetime) -> Reply:
    """A break in her own words."""
    today = today_of(tx.people.client(who.id), now)
    if away.says_back(said, who.language):
        return breaks.back(tx, who.id, now)
    meant = away.away(said, today, who.language)
    return breaks.wish(tx, who.id, meant.reason, meant.last, meant.unsure, now)


def answered(tx: Tx, who: Person, intent: Intent, said: str, now: datetime) -> Reply | None:
    """What typed words say about a break: that it is over, or an answer; `None` if neither."""
    client = tx.people.client(who.id)
    today = today_of(client, now)
    if away.says_back(said, who.language) and on_break(tx, who.id, today):
        return breaks.back(tx, who.id, now)
    question = pain.open_question(tx, who.id, "break")
    if question is None or (question.asked_at and today_of(client, question.asked_at) != today):
        return None
    if question.step == "reason":
        return _reason(tx, who, question, intent, said, now)
    chosen = dialogue.break_length(said, who.language)
    if not isinstance(chosen, Unclear):
        return breaks.lasts_for(tx, who.id, chosen, now)
    meant = away.away(said, today, who.language)
    last = meant.last or away.typed_last(said, today, who.language)
    if last is not None or meant.unsure:
        return breaks.lasts(tx, who.id, last, now)
    return _again(intent, question)


def _reason(
    tx: Tx, who: Person, question: Question, intent: Intent, said: str, now: datetime
) -> Reply | None:  # fmt: skip
    chosen = dialogue.break_reason(said, who.language)
    meant = away.away(said, today_of(tx.people.client(who.id), now), who.language)
    why = meant.reason if isinstance(chosen, Unclear) else chosen
    if why is None:
        return _again(intent, question)
    return breaks.wish(tx, who.id, why, meant.last, meant.unsure, now)


def _again(intent: Intent, question: Question) -> Reply | None:
    """Words that answer nothing: those that mean something else are left to it."""
    if intent.kind != "unknown":
        return None
    asked = text("ask-break-reason" if question.step == "reason" else "ask-break-length")
    return Reply((text("answer-choice"), asked))


# --- the clinician's -----------------------------------------------------------------------------


def _hers(press: Press) -> Press:
    def guarded(act: Act) -> Reply:
        if caseload.owned(act.tx, act.who.id, act.number(0), act.now) is None:
            return reply("not-yours")
        return press(act)

    return guarded


def ask_for(act: Act) -> Reply:
    return breaks.ask_for(act.tx, act.number(0))


def how_long_for(act: Act) -> Reply:
    return breaks.ask_how_long_for(act.tx, act.number(0), act.args[1])


def begin_for(act: Act) -> Reply:
    return breaks.begin_for(act.tx, act.who.id, act.number(0), act.args[1], act.args[2], act.now)


def end_for(act: Act) -> Reply:
    return breaks.end_for(act.tx, act.who.id, act.number(0), act.now)


OF_CLINICIAN: dict[str, Press] = {
    "kb": _hers(ask_for),
    "kr": _hers(how_long_for),
    "kl": _hers(begin_for),
    "ke": _hers(end_for),
}
