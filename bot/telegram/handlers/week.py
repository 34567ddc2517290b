"""What a client taps or types about a week: which days, a day made up, how it was (W2, W3, W8)."""

from __future__ import annotations

from datetime import date, datetime

from bot import weekly
from bot.answers import Unclear
from bot.telegram.handlers.act import Act, Press
from scheduler.domain.people import Person
from scheduler.domain.reply import Reply, reply
from scheduler.ports import Tx
from scheduler.usecases import mornings


def days(act: Act) -> Reply:
    match act.args[0]:
        case "keep":
            return mornings.keep_days(act.tx, act.who.id, act.now)
        case "change":
            return mornings.change_days(act.tx, act.who.id, None, act.now)
        case _:
            return reply("question-over")


def day(act: Act) -> Reply:
    try:
        chosen = date.fromisoformat(act.args[0])
    except ValueError:
        return reply("question-over")
    return mornings.change_days(act.tx, act.who.id, chosen, act.now)


def made_up(act: Act) -> Reply:
    return mornings.make_up(act.tx, act.who.id, act.args[0] == "1", act.now)


def week(act: Act) -> Reply:
    return mornings.weekly(act.tx, act.who.id, act.args[0], act.now)


PRESSES: dict[str, Press] = {"wk": days, "wd": day, "mu": made_up, "wq": week}


def answered(tx: Tx, who: Person, said: str, now: datetime) -> Reply | None:
    """What typed words answer to the latest of these questions; `None` if they answer none."""
    kinds = {"week", "make-up", "weekly"}
    question = next((each for each in tx.questions.of(who.id) if each.kind in kinds), None)
    value = weekly.read(question, said, who.language) if question else Unclear("answer-choice")
    if question is None or isinstance(value, Unclear):
        return None
    if question.kind == "make-up":
        return mornings.make_up(tx, who.id, value is True, now)
    if question.kind == "weekly":
        return mornings.weekly(tx, who.id, str(value), now)
    if isinstance(value, tuple):
        return mornings.days_by_name(tx, who.id, value, now)
    return mornings.keep_days(tx, who.id, now)
