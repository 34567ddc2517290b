"""What is tapped and typed about the step test: by a client at home, and by her clinician (T1)."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

from bot import answers, steps
from bot.telegram.handlers.act import Act, Press
from bot.telegram.handlers.since import asked_since
from bot.telegram.incoming import Incoming
from bot.understand import any_language
from scheduler.domain.people import Client, Person
from scheduler.domain.permission import STOPPING_QUESTIONS
from scheduler.domain.reply import Reply, reply
from scheduler.ports import Question, Tx
from scheduler.usecases import caseload, stepcare, steptests
from scheduler.usecases.steptests import Timed

CHOICES = frozenset({"0", "1"})
OF_REPS = frozenset({"confirm", "fewer"})


def _source(update: Incoming) -> str:
    return f"u{update.update_id}"


# --- a client's ----------------------------------------------------------------------------------


def start(act: Act) -> Reply:
    return replace(steptests.start(act.tx, act.who.id, act.now), in_place=False)


OF_CLIENT: dict[str, Press] = {
    "st": start,
    "sg": lambda act: steptests.ready(act.tx, act.who.id, act.now),
    "sn": lambda act: steptests.not_now(act.tx, act.who.id, act.now),
    "sb": lambda act: steptests.take_back(act.tx, act.who.id, act.number(0), act.now),
}


def answered(
    tx: Tx, who: Person, question: Question | None, update: Incoming, now: datetime
) -> Reply | None:
    """Words that answer the open question about the test; `None` if they are about anything else.

    They come before words of a fall are looked for, as a lost balance is a result here; a text that says
    one word more is no answer. `question` is the open one that presses most.
    """
    asked = steptests.open_question(tx, who.id, now)
    if asked is None or update.kind == "edit" or _comes_first(question, asked):
        return None
    said = steps.times(update.text, who.language, steptests.left(asked))
    since = asked_since(tx, asked)
    harm = any_language.found(any_language.read(update.text, who.language))
    if asked.step == "ready":
        return None if harm else _is_ready(tx, who, said, "" if since else update.text, now)
    if said is None or (not said.sure and since):
        return None  # a bare number answers what was asked for since
    if harm and (since or steptests.stands_against(tx, who.id, now)):
        return None  # a lost balance is no void trial where no test is done
    timed = Timed(said.trials, _source(update), update.at)
    return steptests.answer(tx, who.id, timed, now)


def _comes_first(question: Question | None, asked: Question) -> bool:
    """Whether another question is answered before the one about the test: pain, or a number asked since."""
    if question is None or question.kind not in {*STOPPING_QUESTIONS, *OF_REPS}:
        return False
    since = question.asked_at and asked.asked_at and question.asked_at > asked.asked_at
    return question.kind in STOPPING_QUESTIONS or bool(since)


def _is_ready(
    tx: Tx, who: Person, said: steps.Times | None, text: str, now: datetime
) -> Reply | None:  # fmt: skip
    """Yes or no to whether somebody is with her; times come after that."""
    agreed = answers.yes_no(text, who.language)
    if agreed is True:
        return steptests.ready(tx, who.id, now)
    if agreed is False:
        return steptests.not_now(tx, who.id, now)
    return reply("ask-step-ready") if said is not None and said.sure else None


def unclear(tx: Tx, who: Person, now: datetime) -> Reply | None:
    """Words that mean nothing else while times are awaited: what would be taken."""
    awaited = steptests.awaited(tx, who.id, now)
    return reply("step-unclear") if awaited else None


# --- a clinician's -------------------------------------------------------------------------------


def _hers(act: Act, *, gone: bool = False) -> Client | None:
    return caseload.owned(act.tx, act.who.id, act.number(0), act.now, gone=gone)


def page(act: Act) -> Reply:
    client = _hers(act, gone=True)
    return stepcare.page(act.tx, client) if client else reply("not-yours")


def log(act: Act) -> Reply:
    client = _hers(act)
    return stepcare.ask(act.tx, act.who.id, client, act.now) if client else reply("not-yours")


def no_time(act: Act) -> Reply:
    client = _hers(act)
    if client is None:
        return reply("not-yours")
    return stepcare.no_time(act.tx, act.who.id, client.id, _source(act.update), act.now)


def home(act: Act) -> Reply:
    client = _hers(act)
    if client is None:
        return reply("not-yours")
    if act.args[1] not in CHOICES:
        return reply("question-over")
    return stepcare.allow(act.tx, act.who.id, client.id, act.args[1] == "1", act.now)


def take_back(act: Act) -> Reply:
    client = _hers(act)
    if client is None:
        return reply("not-yours")
    return stepcare.take_back(act.tx, act.who.id, client.id, act.number(1), act.now)


OF_CLINICIAN: dict[str, Press] = {
    "tp": page,
    "tl": log,
    "th": home,
    "tb": take_back,
}

ANSWERS: dict[str, Press] = {"tv": no_time}
"""Answers to the open question about a test: these do not put it down."""


def typed(act: Act) -> Reply | None:
    """A clinician's times of a test, while they are awaited; what is no time is asked again."""
    question = steptests.awaited(act.tx, act.who.id, act.now)
    if question is None:
        return None
    client = caseload.owned(act.tx, act.who.id, int(question.body["client"]), act.now)
    if client is None:
        act.tx.questions.close(act.who.id, "steptest")
        return reply("not-yours")
    said = steps.times(act.update.text, act.who.language, steptests.left(question))
    if said is None:
        return reply("step-unclear")
    timed = Timed(said.trials, _source(act.update), act.now)
    return stepcare.answer(act.tx, question, timed, act.now)
