"""What a client taps or types about a week: which days, a day made up, how it was (W2, W3, W8)."""

from __future__ import annotations

from datetime import date, datetime

from bot import answers, weekly
from bot.answers import Unclear
from bot.telegram.handlers.act import Act, Press
from bot.telegram.handlers.since import asked_since, latest_of_week
from bot.understand import Intent, understand
from scheduler.domain.people import Person
from scheduler.domain.reply import Reply, reply
from scheduler.ports import Tx
from scheduler.usecases import mornings, times


def days(act: Act) -> Reply:
    match act.args[0]:
        case "keep":
            return mornings.keep_days(act.tx, act.who.id, act.now)
        case "change":
            return mornings.change_days(act.tx, act.who.id, act.now)
        case _:
            return reply("question-over")


def _day(*, chosen: bool) -> Press:
    """A day is put in by one button and taken out by another: a double tap takes nothing back."""

    def press(act: Act) -> Reply:
        try:
            day = date.fromisoformat(act.args[0])
        except ValueError:
            return reply("question-over")
        return mornings.change_days(act.tx, act.who.id, act.now, day, chosen=chosen)

    return press


def _own_day(*, chosen: bool) -> Press:
    """The same of the weekdays that suit her best in any week."""
    return lambda act: times.tick_day(act.tx, act.who.id, act.number(0), act.now, chosen=chosen)


def made_up(act: Act) -> Reply:
    return mornings.make_up(act.tx, act.who.id, act.args[0] == "1", act.now)


def week(act: Act) -> Reply:
    return mornings.weekly(act.tx, act.who.id, act.args[0], act.now)


def _which(said: str, language: str) -> Reply | None:
    """A plain yes to pain, a fall or a leak says not which: it is asked, and is no answer about reps.

    Nor does "no falls" say that there was no pain.
    """
    half = understand(said, language).denies or answers.yes_no(said, language) is True
    return reply("ask-week") if half else None


def _bare(said: str, language: str) -> bool:
    """Whether a text is a yes, a no or a none, which is about what was asked last: often a bout."""
    plain = not isinstance(answers.yes_no(said, language), Unclear)
    return plain or answers.says_none(said, language)


PRESSES: dict[str, Press] = {
    "wk": days,
    "wd": _day(chosen=True),
    "wo": _day(chosen=False),
    "td": _own_day(chosen=True),
    "to": _own_day(chosen=False),
    "tk": lambda act: times.keep_ticked(act.tx, act.who.id, act.now),
    "mu": made_up,
    "wq": week,
}


def is_declined(tx: Tx, who: Person, intent: Intent) -> bool:
    """Whether "no thanks" is about a day that was offered: no bout is open that it could skip."""
    offered = latest_of_week(tx, who.id)
    if intent.kind != "skip" or offered is None or offered.kind != "make-up":
        return False
    return not any(bout.asked_at for bout in tx.days.open_bouts(who.id))


def answered(tx: Tx, who: Person, said: str, now: datetime) -> Reply | None:
    """What typed words answer to the latest of these questions; `None` if they answer none."""
    question = latest_of_week(tx, who.id)
    if question is None or (_bare(said, who.language) and asked_since(tx, question)):
        return None
    value = weekly.read(question, said, who.language)
    if isinstance(value, Unclear):
        return _which(said, who.language) if question.kind == "weekly" else None
    if question.kind == "make-up":
        return mornings.make_up(tx, who.id, value is True, now)
    if question.kind == "weekly":
        return mornings.weekly(tx, who.id, str(value), now)
    if isinstance(value, tuple):
        return mornings.days_by_name(tx, who.id, value, now)
    return mornings.keep_days(tx, who.id, now)
