"""What an admin taps and types about cover (D3)."""

from __future__ import annotations

from bot import answers, dialogue
from bot.answers import Unclear
from bot.telegram.handlers.act import Act, Press
from scheduler.domain.reply import Reply, reply
from scheduler.ports import Question
from scheduler.usecases import cover


def screen(act: Act) -> Reply:
    act.tx.questions.close(act.who.id, "cover")
    return cover.screen(act.tx, act.number(0), act.now)


def colleague(act: Act) -> Reply:
    return cover.ask_until(act.tx, act.who.id, act.number(0), act.number(1), act.now)


def until(act: Act) -> Reply:
    days = act.number(2)
    if days not in {0, *cover.LENGTHS}:
        return reply("question-over")
    last = cover.last_day(act.tx, days, act.now)
    return cover.grant(act.tx, act.who.id, act.number(0), act.number(1), last, act.now)


def end(act: Act) -> Reply:
    return cover.end(act.tx, act.who.id, act.number(0), act.now)


PRESSES: dict[str, Press] = {"cv": screen, "cvc": colleague, "cvu": until, "cve": end}


def answered(act: Act, question: Question) -> Reply:
    """A typed last day: a date, a weekday, or "none" for no end."""
    clinician, other = int(question.body["clinician"]), int(question.body["colleague"])
    today = cover.practice_day(act.tx, act.now)
    day = answers.day(act.update.text, today, act.who.language)
    if isinstance(day, Unclear):
        again = cover.ask_until(act.tx, act.who.id, clinician, other, act.now)
        return Reply((*dialogue.unclear(day), *again.message))
    return cover.grant(act.tx, act.who.id, clinician, other, day, act.now)
