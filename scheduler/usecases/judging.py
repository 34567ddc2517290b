"""The close of a day: judged once, by what is stored, whenever that is looked at (Z2, W5)."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime, timedelta

from scheduler.domain import week as w
from scheduler.domain.days import BoutState, Day
from scheduler.domain.flags import Flag
from scheduler.domain.hours import instant
from scheduler.domain.people import Client
from scheduler.domain.week import Verdict, Why
from scheduler.ports import Tx
from scheduler.usecases import reachable, weekplan
from scheduler.usecases.flags import raise_flag
from scheduler.usecases.rest import Running, bars, closes_at, gather, on_break, today_of

A_DAY = timedelta(days=1)
LOOKED_BACK = 14
"""Closed days that are looked at for a row of missed ones: more than any limit of them."""


def close_days(tx: Tx, client: Client, now: datetime) -> None:
    """Judge every day that has closed and was not judged, in order. The client's row is held."""
    if client.judged_to is None:
        first = today_of(client, now) - A_DAY
        tx.people.save_client(replace(tx.people.client(client.id), judged_to=first))
        return
    practice, day = tx.book.practice(), client.judged_to + A_DAY
    while now >= closes_at(client, day, practice):
        _close(tx, client, day, now)
        tx.people.save_client(replace(tx.people.client(client.id), judged_to=day))
        day += A_DAY


def _close(tx: Tx, client: Client, day: date, now: datetime) -> None:
    running = gather(tx, client, day)
    if running.version is None:
        return
    planned = weekplan.is_planned(tx, client, day)
    total = running.day.total if running.day else running.version.plan.daily_total
    reached = w.counts(running.done, total, running.practice.count_percent)
    if not planned and not reached:
        return
    why = why_not(tx, running, now)
    verdict, said = w.verdict_of(running.done, total, running.practice.count_percent, why)
    row = running.day or Day(client.id, day, running.version.id, total, ())
    tx.days.save(replace(row, closed_at=now, verdict=verdict.value, why=said))
    if running.day is not None:
        _close_bouts(tx, client, day)
    _missed(tx, client, verdict, now)


def _close_bouts(tx: Tx, client: Client, day: date) -> None:
    """A day that is judged has no prompt open or waiting any more."""
    for bout in tx.days.open_bouts(client.id):
        if bout.day == day:
            state = BoutState.EXPIRED if bout.asked_at else BoutState.WITHDRAWN
            tx.days.save_bout(replace(bout, state=state))


def why_not(  # noqa: PLR0911 # one a reason, the first that holds
    tx: Tx, running: Running, now: datetime
) -> Why:
    """Why a planned day did not count, if it did not (W5)."""
    client, day, row = running.client, running.today, running.day
    if on_break(tx, client.id, day):
        return Why.BREAK
    if held_on(tx, client, day, running.plan.movement if running.plan else None):
        return Why.HOLD
    if row is not None and row.why:
        return Why(row.why)
    if running.person.blocked and today_of(client, reachable.lost_since(tx, client.id, now)) <= day:
        return Why.UNREACHABLE
    asked = [bout for bout in running.bouts if bout.asked_at is not None]
    if row is None and (bars(tx, running) or not weekplan.rested(tx, running)):
        return Why.NOT_ASKED
    if (row is not None and row.away_told) or not asked:
        return Why.BOT_DOWN
    states = {bout.state for bout in asked}
    silent = BoutState.EXPIRED in states
    return Why.DECLINED if BoutState.SKIPPED in states and not silent else Why.NO_ANSWER


def held_on(tx: Tx, client: Client, day: date, movement: str | None) -> bool:
    """Whether a hold of all exercise or of this movement was open at some time of a local day."""
    start, end = (instant(each, 0, client.zone) for each in (day, day + A_DAY))
    holds = tx.health.holds_since(client.id, start)
    return any(hold.stopped(movement, start, end) for hold in holds)


def _missed(tx: Tx, client: Client, verdict: Verdict, now: datetime) -> None:
    """Missed days in a row raise a flag once an episode; it closes when a day counts again (W5)."""
    if verdict is Verdict.COUNTED:
        for flag in _of_missed_days(tx, client):
            tx.flags.close(flag.id, "restored", client.id, "", now)
        return
    _flag_missed(tx, client, now)


def corrected(tx: Tx, client: Client, day: date, verdict: Verdict, now: datetime) -> None:
    """The same for a day whose verdict was corrected: a flag ends that named it, or that it comes after."""
    for flag in _of_missed_days(tx, client):
        days = flag.details["days"]
        no_row = day.isoformat() in days and verdict is not Verdict.MISSED
        if no_row or (verdict is Verdict.COUNTED and day.isoformat() > days[-1]):
            tx.flags.close(flag.id, "restored", client.id, "", now)
    _flag_missed(tx, client, now)


def _of_missed_days(tx: Tx, client: Client) -> list[Flag]:
    return [flag for flag in tx.flags.of_client(client.id) if flag.kind == "missed-days"]


def _flag_missed(tx: Tx, client: Client, now: datetime) -> None:
    judged = tx.days.judged(client.id, LOOKED_BACK)
    run = w.missed_in_a_row([(day.day, Verdict(day.verdict)) for day in judged])
    if len(run) < tx.book.practice().missed_limit:
        return
    episode = f"missed-days:{run[0]}"
    if tx.flags.had(client.id, episode):
        return
    whys = {day.day: day.why for day in judged}
    details = {"days": [day.isoformat() for day in run], "whys": [whys[day] for day in run]}
    raise_flag(tx, client, "missed-days", now, urgent=False, details=details, episode=episode)
