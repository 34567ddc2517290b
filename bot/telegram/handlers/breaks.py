"""What a client taps or types about a break, and what her clinician taps (K5)."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime

from bot import away, dialogue
from bot.answers import Unclear
from bot.telegram.handlers.act import Act, Press
from bot.understand import Intent
from scheduler.domain.breaks import LENGTHS, Wish, last_day
from scheduler.domain.messages import text
from scheduler.domain.people import Person
from scheduler.domain.reply import Reply, reply
from scheduler.ports import Question, Tx
from scheduler.usecases import breaks, caseload, wishes
from scheduler.usecases.questions import open_question
from scheduler.usecases.rest import on_break, today_of


def reason(act: Act) -> Reply:
    if open_question(act.tx, act.who.id, "break") is None:
        return reply("question-over")
    return wishes.because(act.tx, act.who.id, act.args[0], act.now)


def length(act: Act) -> Reply:
    if act.args[0] not in LENGTHS:
        return reply("question-over")
    return wishes.lasts_for(act.tx, act.who.id, act.args[0], act.now)


def no_break(act: Act) -> Reply:
    return wishes.not_now(act.tx, act.who.id, act.now)


def change(act: Act) -> Reply:
    """Another length for the break that goes on."""
    today = today_of(act.tx.people.client(act.who.id), act.now)
    going_on = on_break(act.tx, act.who.id, today)
    if going_on is None:
        return reply("question-over")
    return wishes.because(act.tx, act.who.id, going_on.reason, act.now)


def back(act: Act) -> Reply:
    today = today_of(act.tx.people.client(act.who.id), act.now)
    if on_break(act.tx, act.who.id, today) is None:
        return reply("question-over")
    return wishes.back(act.tx, act.who.id, act.now)


PRESSES: dict[str, Press] = {
    "br": reason,
    "bl": length,
    "bn": no_break,
    "bm": change,
    "bb": back,
    "bx": lambda act: wishes.cancel(act.tx, act.who.id, act.number(0), act.now),
    "bs": lambda act: wishes.another(act.tx, act.who.id, act.now),
}


# --- typed ---------------------------------------------------------------------------------------


def wish(tx: Tx, who: Person, said: str, now: datetime) -> Reply:
    """A break in her own words."""
    today = today_of(tx.people.client(who.id), now)
    if away.says_back(said, who.language):
        return wishes.back(tx, who.id, now)
    return wishes.wish(tx, who.id, away.away(said, today, who.language), now)


def answered(tx: Tx, who: Person, intent: Intent, said: str, now: datetime) -> Reply | None:
    """What typed words say about a break: that it is over or off, or an answer; `None` if neither."""
    today = today_of(tx.people.client(who.id), now)
    if away.says_back(said, who.language) and on_break(tx, who.id, today):
        return wishes.back(tx, who.id, now)
    question = _asked_today(tx, who, today)
    if away.says_none(said, who.language):
        return _none(tx, who, question, today, now)
    if question is None:
        return None
    answer = _read(question, said, today, who.language)
    return wishes.more(tx, who.id, answer, now) if answer else _again(intent, question)


def _asked_today(tx: Tx, who: Person, today: date) -> Question | None:
    """The open question about a break; one of another day waits for its buttons only."""
    question = open_question(tx, who.id, "break")
    asked_at = question.asked_at if question else None
    over = asked_at is not None and today_of(tx.people.client(who.id), asked_at) != today
    return None if over else question


def _none(
    tx: Tx, who: Person, question: Question | None, today: date, now: datetime
) -> Reply | None:  # fmt: skip
    """She wants no break: the question is over, or the break that has not begun is off."""
    if question is not None:
        return wishes.not_now(tx, who.id, now)
    if breaks.ahead(tx, tx.people.client(who.id), today):
        return wishes.cancel(tx, who.id, None, now)
    return None


def _read(question: Question, said: str, today: date, language: str) -> Wish | None:
    """What the words say that answers the open question, and beside it; `None` if they do not answer it."""
    before = wishes.said_so_far(question)
    if question.step == "reason":
        return _reason(said, today, language)
    if question.step == "length":
        return _length(before, said, today, language)
    meant = away.away(said, today, language)
    only_today = meant.last == today
    first = meant.first or (today if only_today else away.typed_day(said, today, language))
    if first is None:
        return None
    last = None if only_today else meant.last
    return replace(meant, reason=None, first=first, last=last, later=False)


def _reason(said: str, today: date, language: str) -> Wish | None:
    chosen = dialogue.break_reason(said, language)
    meant = away.away(said, today, language)
    why = meant.reason if isinstance(chosen, Unclear) else chosen
    return replace(meant, reason=why) if why else None


def _length(before: Wish, said: str, today: date, language: str) -> Wish | None:
    chosen = dialogue.break_length(said, language)
    first = before.first or today
    if not isinstance(chosen, Unclear):
        last = last_day(first, chosen)
        return Wish(last=last, unsure=last is None)
    meant = replace(away.away(said, today, language, first), reason=None)
    if meant.says_how_long:
        return meant
    last = away.typed_day(said, first, language)
    if last is not None:
        return Wish(last=last)
    return meant if meant.first or meant.later else None


def _again(intent: Intent, question: Question) -> Reply | None:
    """Words that answer nothing: those that mean something else are left to it."""
    if intent.kind != "unknown":
        return None
    return Reply((text("answer-choice"), *wishes.asked_again(question)))


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
