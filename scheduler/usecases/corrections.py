"""Corrections of what was logged, while its day is open: undo, and an edited message (P5, P9)."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

from scheduler.domain.days import BoutState, Entry
from scheduler.domain.reply import Reply, reply
from scheduler.ports import Tx
from scheduler.usecases.bouts import Said, as_it_stands, is_odd, keep, reps_meant, what_next
from scheduler.usecases.rest import (
    Running,
    bars,
    closes_at,
    gather,
    is_over,
    today_of,
)
from scheduler.usecases.wake import changing


def undo(
    tx: Tx, client_id: int, source: str, at: datetime, now: datetime, tried_again: bool = False
) -> Reply:
    """Void the last reps entry of the days that are still open: the one that was logged last (P9)."""
    with changing(tx, client_id, now) as client:
        today = today_of(client, at)
        handled_at = now if tried_again else None
        found = []
        for day in (today - timedelta(days=1), today):
            running, entry = gather(tx, client, day), tx.ledger.latest(client_id, day)
            if entry and not is_over(client, day, running.practice, at, handled_at):
                found.append((entry, running))
        if not found:
            return reply("undo-nothing")
        last, its_day = max(found, key=lambda each: each[0].id)
        return _void(tx, its_day, last, source, now)


def _void(tx: Tx, running: Running, entry: Entry, source: str, now: datetime) -> Reply:
    tx.ledger.void(entry.id, source, now)
    if entry.bout is not None:
        _reopen(tx, running, entry.bout, now)
    after = gather(tx, running.client, running.today)
    return what_next(tx, after, "undone", now, entry.reps)


def _reopen(tx: Tx, running: Running, bout_id: int, now: datetime) -> None:
    """An answer taken back leaves its prompt open if its time is not up, else unanswered."""
    bout = tx.days.bout(bout_id)
    if bout is None or bout.state is not BoutState.DONE:
        return
    newest = bout.n >= max(b.n for b in running.bouts if b.asked_at is not None)
    reopened = newest and now < bout.expires_at and not bars(tx, running)
    state = BoutState.ASKED if reopened else BoutState.EXPIRED
    tx.days.save_bout(replace(bout, state=state))


def edited(tx: Tx, client_id: int, said: Said, now: datetime) -> Reply | None:
    """An edited message replaces the reps it logged, while its day is open (P5).

    `None` if that message logged nothing: then it is read like a new one. Pain is never taken back here.
    """
    if said.message_id is None:
        return None
    with changing(tx, client_id, now) as client:
        before = tx.ledger.of_message(client_id, said.message_id)
        if not before:
            return None
        entry = before[-1]
        running = gather(tx, client, entry.day)
        if now >= closes_at(client, entry.day, running.practice):
            return reply("day-over", day=entry.day.isoformat())
        bout = tx.days.bout(entry.bout) if entry.bout is not None else None
        counted = said.reps is not None or said.all or said.half
        reps = reps_meant(running, bout, said) if counted else None
        other_day = said.yesterday and entry.day == today_of(client, said.at)
        if reps is None or other_day or is_odd(running, bout, reps):
            return as_it_stands(running, "edit-kept")
        if reps == entry.reps:
            return as_it_stands(running, "already-logged")
        tx.ledger.void(entry.id, f"{said.source}:void", now)
        after = gather(tx, client, entry.day)
        again = replace(said, at=entry.at)
        return keep(tx, after, again, bout, reps, now)
