"""A message on its way out (R2): claim, mark sending, send outside any transaction, mark its fate."""

from __future__ import annotations

import asyncio
from datetime import datetime, timedelta

from scheduler.domain.messages import Lane
from scheduler.ports import (
    SEND_WITHIN,
    Claim,
    Clock,
    Delivered,
    Delivery,
    Pace,
    Refused,
    Sender,
    Store,
    TryLater,
    Turn,
    Tx,
    Unknown,
    Unreachable,
)
from scheduler.usecases import days, reachable

CLAIM_LEASE = timedelta(seconds=12)
"""How long the claims of a worker that died keep others waiting.

Between a claim and its beginning lay at most 0.2 s at 25 messages a second and 1.1 s at 1,000 (measured, four
workers on two busy processors). It is longer than the 10 s for which a database may let us wait for a
connection. A worker that is slower loses the claim and sends nothing.
"""
REQUEST_LEASE = SEND_WITHIN + timedelta(seconds=15)
"""Longer than a request, the transaction that begins it and the one that keeps its outcome: a row that is
longer in sending belongs to a worker that died."""
COPY_LEASE = timedelta(seconds=30)
"""The same for what is repeated until accepted: word of pain does not wait a minute for a worker that died. A
request that takes longer is followed by a copy."""
PAUSES = (0.1, 0.5, 2.0)
"""Seconds before the outcome of a request is written down again: well within its lease."""
AGAIN_AFTER = timedelta(seconds=2)
"""Pause before a message of unknown fate that must arrive is repeated."""
REPEATED = frozenset({Lane.SAFETY, Lane.FLAG, Lane.ANSWER})
"""Lanes whose messages are repeated until accepted; all others leave once at most."""
REFUSALS = 5
"""How often the platform may refuse such a message before it is dropped: a minute in all."""


async def deliver(store: Store, sender: Sender, clock: Clock, claim: Claim) -> Delivery | None:
    """Send one claimed message and keep what became of it; `None` if it was dropped before it left."""
    if not await _begins(store, clock, claim):
        return None
    try:
        outcome = await sender.send(claim.letter)
    except Exception as error:  # noqa: BLE001 # a bug in one message's words must not stop the others
        outcome = Refused(f"bug: {type(error).__name__}")
    await _kept(store, clock, claim, outcome)
    return outcome


async def _begins(store: Store, clock: Clock, claim: Claim) -> bool:
    """Commit that it leaves. Where that fails, it does not, also if the commit has happened unheard."""
    try:
        lease = COPY_LEASE if _is_repeated(claim) else REQUEST_LEASE
        return await store.run(lambda tx: days.begins(tx, claim, clock.now(), lease))
    except Exception:
        await _kept(store, clock, claim, TryLater(timedelta(0), chat_only=False))
        raise


async def _kept(store: Store, clock: Clock, claim: Claim, outcome: Delivery) -> None:
    """Keep what became of it; tried again, for a fault of the database must not make it unknown.

    If it was kept and only that was not heard, the guards make the next try change nothing.
    """
    for pause in (*PAUSES, None):
        try:
            await store.run(lambda tx: keep_outcome(tx, claim, outcome, clock.now()))
        except Exception:
            if pause is None:
                raise
            await asyncio.sleep(pause)
        else:
            return


def claim_due(tx: Tx, now: datetime, worker: str, limit: int) -> tuple[Claim, ...]:
    """The next messages of this worker, urgent lanes first; rows of dead workers are settled before."""
    _settle_lost(tx, now)
    return tx.outbox.claim_due(now, worker, CLAIM_LEASE, limit)


def claim_paced(tx: Tx, now: datetime, worker: str, limit: int, pace: Pace) -> Turn:
    """`claim_due` at the pace that all workers of the store keep together (R3)."""
    _settle_lost(tx, now)
    return tx.outbox.claim_paced(now, worker, CLAIM_LEASE, limit, pace)


def _settle_lost(tx: Tx, now: datetime) -> None:
    for lost in tx.outbox.expire_leases(now):
        keep_outcome(tx, lost, Unknown("the worker stopped while sending"), now)


def take_over(tx: Tx, now: datetime) -> None:
    """Settle what a process that died has left, without waiting for its leases to end.

    Only for the sole process of a store: one on SQLite, or on the stepped clock, which stands still.
    """
    tx.inbox.release()
    for lost in tx.outbox.expire_leases(now + 2 * REQUEST_LEASE):
        _unknown(tx, lost, now, timedelta(0))


def keep_outcome(tx: Tx, claim: Claim, outcome: Delivery, now: datetime) -> None:
    """Close a row by what the platform answered. Guarded by the lease: a row lost meanwhile stays."""
    match outcome:
        case Delivered(message_id):
            days.accepted(tx, claim, message_id, now)
        case TryLater(after):
            days.not_accepted(tx, claim, now + after, "", now)
        case Refused(reason):
            days.not_accepted(tx, claim, _in_spite_of_refusal(claim, now), reason, now)
        case Unreachable(reason):
            days.not_accepted(tx, claim, None, reason, now)
            reachable.lost(tx, claim.person, now)
        case Unknown():
            _unknown(tx, claim, now, AGAIN_AFTER)


def _is_repeated(claim: Claim) -> bool:
    return claim.bout is None and claim.lane in REPEATED


def _in_spite_of_refusal(claim: Claim, now: datetime) -> datetime | None:
    """When a refused message that must arrive is tried again: after 2, 4, 8 ... seconds, if at all."""
    if not _is_repeated(claim) or claim.attempts >= REFUSALS:
        return None
    times: int = 2**claim.attempts
    return now + AGAIN_AFTER * times


def _unknown(tx: Tx, claim: Claim, now: datetime, pause: timedelta) -> None:
    """A prompt of unknown fate is never repeated; what must arrive is, until it is accepted."""
    if _is_repeated(claim):
        tx.outbox.put_back(claim, now + pause)
    else:
        tx.outbox.unknown(claim, now)
