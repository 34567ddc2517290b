"""When a client must be looked at next: one instant on the client's row, found again after every change.

Nothing depends on being woken at the minute: `days.advance` carries out whatever has fallen due by then.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from datetime import datetime, timedelta

from scheduler.domain.days import BoutState
from scheduler.domain.hours import instant, local_day
from scheduler.domain.leaving import erase_at
from scheduler.domain.people import Client
from scheduler.ports import Tx
from scheduler.usecases import silence
from scheduler.usecases.moments import of as of_the_week


@contextmanager
def changing(tx: Tx, client: int, now: datetime) -> Iterator[Client]:
    """Hold the client's row while it changes, and find its next instant at the end.

    LookupError if there is no such client.
    """
    yield tx.people.lock(client)
    after = tx.people.client(client)
    tx.people.save_client(replace(after, wake_at=_next(tx, after, now)))


def _next(tx: Tx, client: Client, now: datetime) -> datetime:
    midnight = instant(local_day(now, client.zone) + timedelta(days=1), 0, client.zone)
    late = timedelta(minutes=tx.book.practice().late_minutes)
    moments = [midnight]
    reminder = timedelta(days=tx.book.practice().clearance_reminder_days)
    if client.joined_at and now < client.joined_at + reminder:
        moments.append(client.joined_at + reminder)
    if client.morning_at:
        moments.append(client.morning_at)
    moments += of_the_week(tx, client, now)
    silent_at = silence.ends_at(tx, client)
    if silent_at is not None and silent_at > now:
        moments.append(silent_at)
    erased_at = erase_at(client, tx.book.practice())
    if erased_at is not None and erased_at > now:
        moments.append(erased_at)
    for bout in tx.days.open_bouts(client.id):
        if bout.state is BoutState.WAITING:
            moments.append(bout.due_at + late + timedelta(seconds=1))
            continue
        moments.append(bout.expires_at)
        if bout.nudge_at and not bout.nudged:
            moments.append(bout.nudge_at)
    moments += [q.expires_at for q in tx.questions.of(client.id) if q.expires_at]
    return min(moments)
