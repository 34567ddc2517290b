"""What a clinician taps to correct a day that was judged."""

from __future__ import annotations

from datetime import date

from bot.telegram.handlers.act import Act, Press
from scheduler.domain.reply import Reply, reply
from scheduler.usecases import caseload, verdicts


def days(act: Act) -> Reply:
    client = caseload.owned(act.tx, act.who.id, act.number(0), act.now)
    return verdicts.days(act.tx, client) if client else reply("not-yours")


def ask(act: Act) -> Reply:
    client = caseload.owned(act.tx, act.who.id, act.number(0), act.now)
    if client is None:
        return reply("not-yours")
    day = _day(act.args[1])
    return verdicts.ask(act.tx, client, day) if day else reply("question-over")


def correct(act: Act) -> Reply:
    client = caseload.owned(act.tx, act.who.id, act.number(0), act.now)
    if client is None:
        return reply("not-yours")
    day = _day(act.args[1])
    if day is None:
        return reply("question-over")
    return verdicts.correct(act.tx, act.who.id, client.id, day, act.args[2], act.now)


def _day(word: str) -> date | None:
    try:
        return date.fromisoformat(word)
    except ValueError:
        return None


PRESSES: dict[str, Press] = {"jl": days, "jd": ask, "jv": correct}
