"""The house at work: updates handled, clients looked at, messages sent, until nothing is due.

`drain` does all that is due at the clock's instant; the stepped clock calls it instant by instant, in
real time three loops do the same side by side, woken by the bell.
"""

from __future__ import annotations

import asyncio
import traceback
from collections.abc import Callable, Coroutine, Sequence
from datetime import datetime, timedelta
from functools import partial
from typing import TypeVar

import structlog

from bot.telegram.handlers import dispatch
from bot.telegram.incoming import incoming
from bot.telegram.pace import Pace
from bot.telegram.sender import TelegramSender
from scheduler.ports import Arrived, Claim, Clock, Delivered, Store, Tx
from scheduler.usecases import days, digests, flags, outbox, setaside

log = structlog.get_logger()

LEASE = timedelta(seconds=30)
"""Longer than the longest transaction: a row claimed for longer belongs to a worker that died."""
AT_ONCE = 20
RETRIES = (timedelta(milliseconds=200), timedelta(milliseconds=800), timedelta(seconds=2))
"""Pauses before a failing update is tried again: under 5 s in all, so that pain never waits behind it."""

Row = TypeVar("Row")


class LostLeaseError(Exception):
    """Another worker has finished this update; what this one did is rolled back."""


class Work:
    """One worker. `name` is unique among all workers and tells the leases apart."""

    def __init__(
        self, store: Store, sender: TelegramSender, clock: Clock, pace: Pace, name: str
    ) -> None:  # fmt: skip
        self._store, self._sender, self._clock, self._pace = store, sender, clock, pace
        self._name = name
        self.accepted = 0
        """Messages accepted by the platform since this worker started."""
        self._taps: set[asyncio.Task[None]] = set()
        self._sends: set[asyncio.Task[None]] = set()

    # --- one batch of each kind; each returns how many there were ---

    async def updates(self) -> int:
        """Handle the oldest waiting update of each chat."""
        now = self._clock.now()
        rows = await self._store.run(lambda tx: tx.inbox.claim(now, self._name, LEASE, AT_ONCE))
        return await _together(self._update, rows)

    async def clients(self) -> int:
        """Carry out what has fallen due for clients, then digests, then flags."""
        now = self._clock.now()
        found = await self._store.run(partial(_fallen_due, now=now))
        for carry_out, one in found:
            await self._store.run(partial(carry_out, now=now, one=one))
        return len(found)

    async def messages(self) -> int:
        """Send what is due, the urgent lanes first."""
        now = self._clock.now()
        claims = await self._store.run(lambda tx: outbox.claim_due(tx, now, self._name, AT_ONCE))
        return await _together(self._send, claims)

    async def begin_messages(self, ended: Callable[[], None]) -> int:
        """Begin to send what is due without waiting: one slow chat must not hold up a safety message.

        `ended` is called when each has ended. At most `AT_ONCE` are under way.
        """
        now, room = self._clock.now(), AT_ONCE - len(self._sends)
        if room <= 0:
            return 0
        claims = await self._store.run(lambda tx: outbox.claim_due(tx, now, self._name, room))
        for claim in claims:
            sending = asyncio.create_task(self._send_alone(claim))
            self._sends.add(sending)
            sending.add_done_callback(self._sends.discard)
            sending.add_done_callback(lambda _: ended())
        return len(claims)

    async def finish_sending(self, within: float) -> None:
        """Wait, at most so many seconds, until what is under way has been accepted or refused."""
        if self._sends:
            await asyncio.wait(self._sends, timeout=within)

    async def drain(self) -> None:
        """Do everything that is due at this instant, and what follows from it at this instant."""
        while await self.updates() or await self.clients() + await self.messages():
            pass  # what people said comes first: it may stop what would else be asked
        if self._taps:
            await asyncio.gather(*self._taps, return_exceptions=True)

    # --- one row ---

    async def _send(self, claim: Claim) -> None:
        await self._pace.wait(claim.letter.chat)
        outcome = await outbox.deliver(self._store, self._sender, self._clock, claim)
        self.accepted += isinstance(outcome, Delivered)

    async def _send_alone(self, claim: Claim) -> None:
        try:
            await self._send(claim)
        except Exception as error:  # noqa: BLE001 # the database is away: the lease ends by itself
            log.error(  # noqa: TRY400 # a traceback may hold texts
                "send failed", outbox=claim.letter.outbox_id, error=type(error).__name__
            )

    async def _update(self, row: Arrived) -> None:
        now = self._clock.now()
        update = incoming(row.payload, row.received_at)

        def apply(tx: Tx) -> None:
            if update is not None:
                dispatch.handle(tx, update, now)
            if not tx.inbox.finish(row.update_id, self._name):
                raise LostLeaseError

        try:
            await self._store.run(apply)
        except LostLeaseError:
            return
        except Exception as error:  # noqa: BLE001 # one poisoned update must not stop the others
            await self._failed(row, error, now)
            return
        if update is not None and update.press_id:
            self._stop_spinner(update.press_id)

    def _stop_spinner(self, press_id: str) -> None:
        tap = asyncio.create_task(self._sender.stop_spinner(press_id))
        self._taps.add(tap)
        tap.add_done_callback(self._taps.discard)

    async def _failed(self, row: Arrived, error: Exception, now: datetime) -> None:
        where = traceback.extract_tb(error.__traceback__)[-1]
        reason = f"{type(error).__name__} at {where.name}:{where.lineno}"  # never its words
        log.error("update failed", update=row.update_id, attempt=row.attempts, reason=reason)
        again = RETRIES[row.attempts - 1] if row.attempts <= len(RETRIES) else None
        await self._store.run(lambda tx: setaside.failed(tx, row, self._name, again, reason, now))

    async def next_due(self) -> datetime | None:
        """The next instant at which something falls due, `None` if nothing ever does."""

        now = self._clock.now()

        def earliest(tx: Tx) -> datetime | None:
            moments = (
                tx.people.next_wake(),
                tx.staff.next_wake(),
                tx.flags.next_due(),
                tx.outbox.next_due(now),
                tx.inbox.next_due(),
            )
            return min((moment for moment in moments if moment), default=None)

        return await self._store.run(earliest)

    async def waiting(self) -> int:
        """Messages due by now that have not been accepted or put back."""
        now = self._clock.now()
        return await self._store.run(lambda tx: tx.outbox.waiting(now))


def _fallen_due(tx: Tx, now: datetime) -> list[tuple[Callable[..., None], int]]:
    """What to carry out, each with the client, clinician or flag that it is about."""
    return [
        *((_advance, client) for client in days.due(tx, now)),
        *((_digest, clinician) for clinician in digests.due(tx, now)),
        *((_flag, flag.id) for flag in flags.due(tx, now)),
    ]


def _advance(tx: Tx, now: datetime, one: int) -> None:
    days.advance(tx, one, now)


def _digest(tx: Tx, now: datetime, one: int) -> None:
    digests.make(tx, one, now)


def _flag(tx: Tx, now: datetime, one: int) -> None:
    flags.look(tx, one, now)


async def _together(
    work: Callable[[Row], Coroutine[object, object, None]], rows: Sequence[Row]
) -> int:
    """Work on rows of different chats side by side."""
    async with asyncio.TaskGroup() as group:
        for row in rows:
            group.create_task(work(row))
    return len(rows)
