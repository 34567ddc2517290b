"""The house at work: updates handled, clients looked at, messages sent, until nothing is due.

`drain` does all that is due at the clock's instant; the stepped clock calls it instant by instant, in
real time three loops do the same side by side, woken by the bell.
"""

from __future__ import annotations

import asyncio
import traceback
from collections.abc import Callable, Coroutine, Sequence
from dataclasses import replace
from datetime import datetime, timedelta
from functools import partial
from typing import TypeVar

import structlog

from bot.metrics import Measures, Timed
from bot.telegram.handlers import dispatch
from bot.telegram.incoming import incoming
from bot.telegram.sender import TelegramSender
from bot.telegram.unread import unread
from scheduler.ports import Arrived, Claim, Clock, Delivered, Pace, Store, Turn, Tx
from scheduler.usecases import days, digests, flags, outbox, setaside

log = structlog.get_logger()

LEASE = timedelta(seconds=15)
"""How long what one said waits when the worker dies that has taken it up. Longer than a transaction, with the
10 s for which a database may let it wait; one that takes longer is rolled back, for another has the row.
"""
AT_ONCE = 20
"""Updates handled side by side. New ones are claimed when half of them are done: a claim is a transaction."""
SENDS_AT_ONCE = 128
"""Requests under way: at 1,000 messages a second, and a trip there and back of an eighth of a second."""
A_MOMENT = 0.001
"""Seconds; the loop's timers may ring a little early."""
RETRIES = (timedelta(milliseconds=200), timedelta(milliseconds=800), timedelta(seconds=2))
"""Pauses before a failing update is tried again: under 5 s in all, so that pain never waits behind it."""

TAKEN_AT_MOST = 10
"""Times an update is taken up; one that ends its process each time is set aside then."""

Row = TypeVar("Row")


class LostLeaseError(Exception):
    """Another worker has finished this update; what this one did is rolled back."""


class EndsItsWorkerError(Exception):
    """An update was taken up again and again, and its worker never came to an end with it."""


class Work:
    """One worker. `name` is unique among all workers and tells the leases apart.

    Without a pace, for the stepped clock on which time stands still, no message waits for another.
    """

    def __init__(
        self, store: Store, sender: TelegramSender, clock: Clock, pace: Pace | None, name: str
    ) -> None:  # fmt: skip
        self._store, self._sender, self._clock, self._pace = store, sender, clock, pace
        self._name = name
        self.measures = Measures()
        self._timed = Timed(sender, self.measures)
        self.accepted = 0
        """Messages accepted by the platform since this worker started."""
        self._taps: set[asyncio.Task[None]] = set()
        self._updates: set[asyncio.Task[None]] = set()
        self._sends: set[asyncio.Task[None]] = set()
        self._no_place_before = 0.0
        """The loop's second in which the pace has the next place."""

    # --- one batch of each kind; each returns how many there were ---

    async def updates(self) -> int:
        """Handle the oldest waiting update of each chat."""
        return await _together(self._update, await self._next_updates(AT_ONCE))

    async def begin_updates(self, ended: Callable[[], None]) -> int:
        """Begin to handle the oldest waiting update of each chat; a slow one holds up its own chat only.

        `ended` is called when each has ended.
        """
        if len(self._updates) > AT_ONCE // 2:
            return 0
        rows = await self._next_updates(AT_ONCE - len(self._updates))
        for row in rows:
            self._begin(self._updates, self._update_alone(row), ended)
        return len(rows)

    async def _next_updates(self, most: int) -> tuple[Arrived, ...]:
        now = self._clock.now()
        return await self._store.run(lambda tx: tx.inbox.claim(now, self._name, LEASE, most))

    async def clients(self) -> int:
        """Carry out what has fallen due for clients, then digests, then flags."""
        now = self._clock.now()
        found = await self._store.run(partial(_fallen_due, now=now))
        for carry_out, one in found:
            await self._store.run(partial(carry_out, now=now, one=one), alone=carry_out is _digest)
        return len(found)

    async def messages(self) -> int:
        """Send what is due, the urgent lanes first."""
        now = self._clock.now()
        claims = await self._store.run(lambda tx: outbox.claim_due(tx, now, self._name, AT_ONCE))
        return await _together(self._send, claims)

    async def begin_messages(self, look: Callable[[], None]) -> int:
        """Begin to send what may leave in this moment: one slow chat must not hold up a safety message.

        `look` is called when there may be more to begin: one has ended, or the pace has another place.
        """
        now, room = self._clock.now(), SENDS_AT_ONCE - len(self._sends)
        loop = asyncio.get_running_loop()
        if room <= 0 or loop.time() + A_MOMENT < self._no_place_before:
            return 0
        turn = await self._store.run(partial(self._turn, now=now, room=room))
        for claim in turn.claims:
            self._begin(self._sends, self._send_alone(claim), look)
        if moment := turn.no_place_before or turn.held_until:
            when = loop.time() + _seconds(moment - self._clock.now())
            self._no_place_before = when if turn.no_place_before else 0.0
            loop.call_at(when, look)
        return 0 if turn.no_place_before else len(turn.claims)

    def _turn(self, tx: Tx, now: datetime, room: int) -> Turn:
        if self._pace is None:
            return Turn(outbox.claim_due(tx, now, self._name, room))
        return outbox.claim_paced(tx, now, self._name, room, self._pace)

    def _begin(
        self,
        under_way: set[asyncio.Task[None]],
        work: Coroutine[object, object, None],
        ended: Callable[[], None],
    ) -> None:
        task = asyncio.create_task(work)
        under_way.add(task)
        task.add_done_callback(under_way.discard)
        task.add_done_callback(lambda _: ended())

    async def finish(self, within: float) -> None:
        """Wait, at most so many seconds, until what is under way has ended."""
        if under_way := self._updates | self._sends:
            await asyncio.wait(under_way, timeout=within)

    async def drain(self) -> None:
        """Do everything that is due at this instant, and what follows from it at this instant."""
        while await self.updates() or await self.clients() + await self.messages():
            pass  # what people said comes first: it may stop what would else be asked
        if self._taps:
            await asyncio.gather(*self._taps, return_exceptions=True)

    # --- one row ---

    async def _send(self, claim: Claim) -> None:
        if claim.leaves_at is not None:
            await asyncio.sleep(_seconds(claim.leaves_at - self._clock.now()))
        outcome = await outbox.deliver(self._store, self._timed, self._clock, claim)
        if isinstance(outcome, Delivered):
            self.accepted += 1
            self.measures.accepted(claim.lane, self._clock.now() - claim.due_at)

    async def _send_alone(self, claim: Claim) -> None:
        try:
            await self._send(claim)
        except Exception as error:  # noqa: BLE001 # the database is away: the lease ends by itself
            log.error(  # noqa: TRY400 # a traceback may hold texts
                "send failed", outbox=claim.letter.outbox_id, error=type(error).__name__
            )

    async def _update_alone(self, row: Arrived) -> None:
        try:
            await self._update(row)
        except Exception as error:  # noqa: BLE001 # the database is away: the lease ends by itself
            log.error("update not handled", update=row.update_id, error=type(error).__name__)  # noqa: TRY400 # as above

    async def _update(self, row: Arrived) -> None:
        now = self._clock.now()

        def apply(tx: Tx) -> str | None:
            if row.attempts > TAKEN_AT_MOST:
                raise EndsItsWorkerError
            update = incoming(row.payload, row.received_at)
            said_by = None
            if update is not None:
                said_by = dispatch.handle(tx, replace(update, tried_again=row.tried_again), now)
            if not tx.inbox.finish(row.update_id, self._name, said_by):
                raise LostLeaseError
            return update.press_id if update else None

        try:
            press_id = await self._store.run(apply)
        except LostLeaseError:
            return
        except Exception as error:  # noqa: BLE001 # one poisoned update must not stop the others
            await self._failed(row, error, now)
            return
        self.measures.handled(self._clock.now() - row.received_at)
        if press_id:
            self._stop_spinner(press_id)

    def _stop_spinner(self, press_id: str) -> None:
        tap = asyncio.create_task(self._sender.stop_spinner(press_id))
        self._taps.add(tap)
        tap.add_done_callback(self._taps.discard)

    async def _failed(self, row: Arrived, error: Exception, now: datetime) -> None:
        where = traceback.extract_tb(error.__traceback__)[-1]
        reason = f"{type(error).__name__} at {where.name}:{where.lineno}"  # never its words
        log.error("update failed", update=row.update_id, attempt=row.attempts, reason=reason)
        again = RETRIES[row.attempts - 1] if row.attempts <= len(RETRIES) else None
        self.measures.failed()
        whole = unread(row)
        for said in (whole, replace(whole, alarm=False, typed=False)):
            try:
                note = partial(
                    setaside.failed, row=row, update=said, worker=self._name, again=again,
                    reason=reason, now=now,
                )  # fmt: skip
                await self._store.run(note)
            except Exception as worse:  # noqa: BLE001 # what is broken may be the person's own row
                log.error("nobody told", update=row.update_id, error=type(worse).__name__)  # noqa: TRY400 # as above
            else:
                return
        at = now + again if again else None
        await self._store.run(lambda tx: tx.inbox.failed(row.update_id, self._name, at, reason))

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


def _seconds(span: timedelta) -> float:
    return max(0.0, span.total_seconds())


async def _together(
    work: Callable[[Row], Coroutine[object, object, None]], rows: Sequence[Row]
) -> int:
    """Work on rows of different chats side by side."""
    async with asyncio.TaskGroup() as group:
        for row in rows:
            group.create_task(work(row))
    return len(rows)
