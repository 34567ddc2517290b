"""A client from whom nothing comes although bouts are asked for (H8)."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

from scheduler.domain.hours import instant, local_day
from scheduler.domain.people import Client
from scheduler.domain.permission import Bar
from scheduler.domain.settings import BOUNDS
from scheduler.ports import Tx
from scheduler.usecases.flags import raise_flag
from scheduler.usecases.rest import bars, gather, today_of

FIRST_FLAG = timedelta(days=BOUNDS["silent_days"][0])
"""No setting has a silence flagged earlier."""


def ends_at(tx: Tx, client: Client) -> datetime | None:
    """When silence becomes a flag; `None` before the client has joined."""
    last = client.heard_at or client.joined_at
    if last is None:
        return None
    silent = timedelta(days=tx.book.practice().silent_days)
    for pause in tx.pauses.of(client.id, local_day(last, client.zone)):
        if pause.first > local_day(last + silent, client.zone):
            break  # it begins after the flag
        if pause.last is not None and pause.last >= pause.first:  # nobody is asked on a break
            last = max(last, instant(pause.last + timedelta(days=1), 0, client.zone))
    for hold in tx.health.holds_since(client.id, last):  # nor on a hold
        last = max(last, hold.released_at or last)
    return last + silent


def look(tx: Tx, client: Client, now: datetime) -> None:
    """Flag a client of whom nothing came for so long, once an episode. The client's row is held."""
    moment = ends_at(tx, client)
    if moment is None or now < moment or tx.flags.had(client.id, _episode(client)):
        return
    running = gather(tx, client, today_of(client, now))
    if running.plan is None or not running.plan.start <= running.today:
        return
    if running.plan.end is not None and running.today > running.plan.end:
        return
    if {*bars(tx, running)} - {Bar.NO_CONSENT}:
        return  # nobody asks her now; what stands against it is known, a notice without an answer is not
    days = tx.book.practice().silent_days
    raise_flag(
        tx, client, "silent", now, urgent=False, details={"silent_days": days},
        episode=_episode(client),
    )  # fmt: skip


def heard(tx: Tx, client_id: int, now: datetime) -> None:
    """Something came from the client: the silence is over, and a flag about it with it."""
    client = tx.people.lock(client_id)
    last = client.heard_at or client.joined_at
    if last is None or now - last >= FIRST_FLAG:
        tx.flags.close_episode(client_id, _episode(client), "heard", client_id, now)
    tx.people.save_client(replace(client, heard_at=now))


def _episode(client: Client) -> str:
    last = client.heard_at or client.joined_at
    return f"silent:{last.isoformat() if last else ''}"
