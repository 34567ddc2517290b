"""Bouts that are not done now: skipped, or put off to later (S4, P10)."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

from scheduler.domain import days as d
from scheduler.domain.days import Bout, BoutState
from scheduler.domain.people import Client
from scheduler.domain.reply import Reply, reply
from scheduler.domain.spacing import latest
from scheduler.domain.windows import without_midnight
from scheduler.ports import Tx
from scheduler.usecases import beside
from scheduler.usecases.bouts import as_it_stands, what_next
from scheduler.usecases.rest import (
    Running,
    amount,
    closes_at,
    earliest,
    gather,
    hours_of,
    replan,
    today_of,
)
from scheduler.usecases.wake import changing

LATER_WITHOUT_TIME = timedelta(minutes=30)


def skip(tx: Tx, client_id: int, at: datetime, now: datetime, bout_id: int | None = None) -> Reply:
    """The bout's reps are dropped ("declined") and the rest of the day worked out again (S4).

    Of a prompt that has expired too, while its day is open: she did answer (W5).
    """
    with changing(tx, client_id, now) as client:
        running, bout = _open_or_named(tx, client, at, bout_id)
        if bout is None or bout.state not in {BoutState.ASKED, BoutState.EXPIRED}:
            return _not_open(tx, running, bout, now)
        if now >= closes_at(client, bout.day, running.practice):
            return reply("day-over", day=bout.day.isoformat())
        tx.days.save_bout(replace(bout, state=BoutState.SKIPPED))
        tx.questions.close(client_id, "fewer", "confirm")
        return what_next(tx, gather(tx, client, bout.day), "skipped", now, bout.reps)


def _open_or_named(
    tx: Tx, client: Client, at: datetime, bout_id: int | None
) -> tuple[Running, Bout | None]:
    named = tx.days.bout(bout_id) if bout_id is not None else None
    if named is not None and named.client == client.id:
        return gather(tx, client, named.day), named
    today = today_of(client, at)
    bout = beside.open_prompt(tx, client.id, today, at)
    return gather(tx, client, bout.day if bout else today), bout


def _not_open(tx: Tx, running: Running, bout: Bout | None, now: datetime) -> Reply:
    today = today_of(running.client, now)
    if bout and now >= closes_at(running.client, running.today, running.practice):
        return reply("day-over", day=running.today.isoformat())
    if bout and bout.state is BoutState.DONE:
        return as_it_stands(running, "already-logged")
    if running.today != today:  # a button of yesterday's; what is said is about today
        running = gather(tx, running.client, today)
    return as_it_stands(running, "nothing-open")


def later(  # what was said, and when
    tx: Tx, client_id: int, at: datetime, now: datetime, until: datetime | None, bout_id: int | None
) -> Reply:
    """Put a bout off, at most three times: nothing before `until`, the gap still holds (P10).

    Without a prompt open the next one is meant. What no longer fits today is not put off: the reply
    names the latest time that works and the prompt stays open.
    """
    with changing(tx, client_id, now) as client:
        running, bout = _open_or_named(tx, client, at, bout_id)
        bout = bout or d.waiting(running.bouts)
        if bout is None or bout.state not in {BoutState.ASKED, BoutState.WAITING}:
            return _not_open(tx, running, bout, now)
        if bout.laters >= d.LATERS_PER_BOUT:
            return reply("later-no-more", bout=bout.id)
        wanted = max(until or now + LATER_WITHOUT_TIME, now)
        tx.days.save_bout(replace(bout, state=BoutState.LATER))  # withdrawn: no gap counts from it
        last = _last_today(tx, running, now)
        if last is None or wanted > last:
            tx.days.save_bout(bout)
            next_ = running.wall(last) if last else None
            return reply("later-too-late", bout=bout.id, next=next_)
        following = replan(tx, running, now, laters=bout.laters + 1, asked_for=wanted)
        return reply(
            "put-off",
            next=running.wall(following.due_at) if following else None,
            **amount(running, following.reps if following else bout.reps),
        )


def _last_today(tx: Tx, running: Running, now: datetime) -> datetime | None:
    """The last time ahead at which a bout fits, if the day is today: by a new zone's clock it may not be."""
    hours, plan = without_midnight(hours_of(running)), running.plan
    if hours is None or plan is None or running.today != today_of(running.client, now):
        return None
    found = latest(
        day=running.today,
        hours=hours,
        zone=running.client.zone,
        gap=timedelta(minutes=plan.gap_minutes),
        last=max((entry.at for entry in running.entries), default=None),
        not_before=earliest(tx, running, now),
    )
    return found if found and found > now else None
