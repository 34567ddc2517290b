"""The days beside today: about midnight, or after a change of zone, their bouts are near (I2, I4, Z3).

A bout counts for its own day, but a body knows no dates: the gap holds in real time.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime, timedelta

from scheduler.domain import days as d
from scheduler.domain.days import Bout, BoutState
from scheduler.ports import Tx


def not_before(tx: Tx, client: int, today: date, gap: timedelta) -> datetime | None:
    """Nothing of today is asked before this instant (UTC), the gap after what a day beside it asked."""
    last = tx.days.last_beside(client, today)
    return last + gap if last else None


def ends_with(tx: Tx, following: Bout) -> None:
    """A prompt of another day that is still open ends when today's next is due (P6)."""
    for bout in tx.days.open_bouts(following.client):
        other = bout.state is BoutState.ASKED and bout.day != following.day
        if other and bout.expires_at > following.due_at:
            tx.days.save_bout(replace(bout, expires_at=following.due_at))


def open_prompt(tx: Tx, client: int, day: date, at: datetime) -> Bout | None:
    """The prompt that waits for its answer at an instant: of this day, or one of a day beside it."""
    found = d.still_open(tx.days.bouts(client, day))
    if found is not None:
        return found
    others = (bout for bout in tx.days.open_bouts(client) if bout.state is BoutState.ASKED)
    return next((b for b in others if b.asked_at and b.asked_at <= at < b.expires_at), None)
