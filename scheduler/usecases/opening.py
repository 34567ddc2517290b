"""The start of a client's impact day."""

from __future__ import annotations

from datetime import datetime, timedelta

from scheduler.domain import days as d
from scheduler.domain.days import Day
from scheduler.domain.messages import Message, Text, message
from scheduler.domain.people import Client
from scheduler.domain.permission import Bar
from scheduler.ports import Tx
from scheduler.usecases import beside, weekplan
from scheduler.usecases.questions import about_harm, harm_again, open_question
from scheduler.usecases.rest import Running, bars, gather, replan, spread, stopped, today_of

WAITS = frozenset({Bar.HOLD, Bar.BREAK, Bar.QUESTION, Bar.LAPSED})
"""While one of these stands nobody is told of bouts to come."""


def go_on(tx: Tx, client: Client, now: datetime) -> Day | None:
    """Begin the day, or go on with it, after a break or a hold was ended.

    She may have acted on a prompt before it was withdrawn: nothing is asked sooner than the minimum gap
    after the last one that reached her, whatever became of it.
    """
    running = gather(tx, client, today_of(client, now))
    asked = [bout.asked_at for bout in running.bouts if bout.asked_at is not None]
    gap = timedelta(minutes=running.plan.gap_minutes if running.plan else 0)
    return begin_day(tx, client, now, max(asked) + gap if asked else None)


def keep_the_gap(tx: Tx, client: Client, now: datetime) -> None:
    """What was answered just now counts for another day: today's next bout is the gap away from it (I2)."""
    running = gather(tx, client, today_of(client, now))
    if running.day is None or running.plan is None:
        return
    gap = timedelta(minutes=running.plan.gap_minutes)
    near = beside.not_before(tx, client.id, running.today, gap)
    waiting = d.waiting(running.bouts)
    if waiting is None or (near is not None and waiting.due_at < near):
        replan(tx, running, now)


def begin_day(
    tx: Tx, client: Client, now: datetime, not_before: datetime | None = None
) -> Day | None:
    """Plan today if it is an impact day and nothing stands against it; the day's row, old or new.

    Nothing of it is asked before `not_before`, also where the day is worked out again.
    """
    running = gather(tx, client, today_of(client, now))
    if running.day is None and not _is_impact_day(tx, running):
        return None
    if running.day is None:
        if running.plan is None or running.version is None or bars(tx, running):
            return None
        planned = spread(tx, running, running.plan.daily_total, now)
        if planned is None or not planned.bouts:
            return None
        tx.days.save(
            Day(
                client=client.id,
                day=running.today,
                plan=running.version.id,
                total=running.plan.daily_total,
                planned=planned.bouts,
            )
        )
    if not d.waiting(running.bouts) and not d.still_open(running.bouts):
        replan(tx, running, now, asked_for=not_before)
    return tx.days.get(client.id, running.today)


def told_to_wait(tx: Tx, client: Client, now: datetime) -> Text | None:
    """What is said in the place of bouts to come while something stops them; `None` if nothing does."""
    found = bars(tx, gather(tx, client, today_of(client, now)))
    return stopped(found) if WAITS & {*found} else None


def still_stands(tx: Tx, client: Client, now: datetime) -> Message:
    """What stops her bouts, for a new chat of hers: it was asked or said in the old one.

    When silence becomes a hold is not put off by that (H1).
    """
    if harm := about_harm(tx, client.id):
        return (harm_again(tx, harm),)
    if open_question(tx, client.id, "morning"):
        return message("ask-morning")
    wait = told_to_wait(tx, client, now)
    return (wait,) if wait else ()


def _is_impact_day(tx: Tx, running: Running) -> bool:
    """A chosen day of the plan, within its dates, with its rest kept (load days count, planned or not)."""
    plan, today = running.plan, running.today
    if plan is None or today < plan.start or (plan.end is not None and today > plan.end):
        return False
    if not weekplan.is_planned(tx, running.client, today):
        return False
    if not weekplan.within_maximum(tx, running.client, today):
        return False
    resumes = running.client.resumes_on
    if resumes is not None and today < resumes:
        return False
    return weekplan.rested(tx, running)
