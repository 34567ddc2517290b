"""A bot that no longer receives notices it, mends it, and says when answers may be lost (R5)."""

import asyncio
import time
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager, suppress
from datetime import timedelta
from functools import partial
from typing import Any

import pytest
from sqlalchemy import URL

from bot.rehearsal.faults import Fault
from bot.telegram import polling, receiving
from bot.telegram.application import Platform
from bot.telegram.inbox import Inbox
from bot.telegram.polling import Poller
from bot.telegram.receiving import LEASE, LISTENER, Lease, Polling
from scheduler.clock import SteppedClock
from scheduler.ports import Tx
from scheduler.usecases import receipts
from storage.store import SqlStore
from tests.bot.rehearsal.conftest import MONDAY, Stand
from tests.conftest import briefly, on_sqlite
from tests.journeys.theatre import Theatre
from tests.storage.clinic import clinician

PATIENCE = 15.0
"""Seconds that only a failing test waits in full; less than a poll is given before it is given up."""
DAY = timedelta(hours=24)
A_LITTLE = timedelta(microseconds=1)


class Ear:
    """A bot that only receives."""

    def __init__(self, stand: Stand, store: SqlStore, lease: bool = False) -> None:
        self.stand, self.store, self.clock = stand, store, SteppedClock(MONDAY)
        self.platform = Platform(stand.world.token, stand.url)
        self.kept = asyncio.Event()
        self.inbox = Inbox(store, self.clock, time.monotonic, self.kept.set)
        self.renewed = 0
        self.polling = Polling(
            Poller(self.platform.bot, self.inbox),
            self.inbox,
            self._renew,
            Lease(store, self.clock, time.monotonic, "one") if lease else None,
            time.monotonic,
        )

    async def _renew(self) -> None:
        self.renewed += 1
        await self.platform.renew_polls()

    async def waiting(self) -> int:
        return await self.store.run(lambda tx: tx.inbox.unfinished())

    async def has(self, count: int) -> None:
        """Return when so many updates are kept."""
        async with asyncio.timeout(PATIENCE):
            while await self.waiting() < count:
                self.kept.clear()
                if await self.waiting() < count:
                    await self.kept.wait()


@asynccontextmanager
async def listening(ear: Ear) -> AsyncIterator[Ear]:
    await ear.platform.bot.initialize()
    running = asyncio.create_task(ear.polling.run())
    try:
        yield ear
    finally:
        running.cancel()
        with suppress(asyncio.CancelledError):
            await running
        await ear.polling.close()
        await ear.platform.bot.shutdown()


@pytest.fixture
def impatient(monkeypatch: pytest.MonkeyPatch) -> None:
    """A minute of silence and the pauses after faults are fractions of a second here."""
    monkeypatch.setattr(receiving, "QUIET_SECONDS", 0.3)
    monkeypatch.setattr(receiving, "LOOK_SECONDS", 0.05)
    monkeypatch.setattr(polling, "FIRST_PAUSE", 0.01)
    monkeypatch.setattr(polling, "LONGEST_PAUSE", 0.05)


def test_the_connection_is_made_anew_within_two_minutes_of_the_last_good_poll() -> None:
    """Arithmetic. A good poll waits for 10 s at most, and a listener that died is followed within 20 s."""
    quiet, look = receiving.QUIET_SECONDS, receiving.LOOK_SECONDS
    assert quiet + look + receiving.END_SECONDS < 120
    assert quiet > polling.POLL_SECONDS * 3
    assert LEASE.total_seconds() + look < 20


impatiently = pytest.mark.usefixtures("impatient")


@on_sqlite
@impatiently
async def test_a_poll_that_is_never_answered_is_noticed_and_replaced(
    stand: Stand, store: SqlStore
) -> None:
    stand.world.faults.add(Fault("delay", "getUpdates"))  # for ever
    async with listening(Ear(stand, store)) as ear:
        await stand.person()
        await ear.has(1)
        assert ear.renewed >= 1


@on_sqlite
@impatiently
@pytest.mark.parametrize(
    "fault",
    [
        {"kind": "drop-before"},
        {"kind": "drop-after"},
        {"kind": "server-error", "status": 502},
        {"kind": "refuse", "status": 401, "description": "Unauthorized"},
        {"kind": "refuse", "status": 409, "description": "Conflict: another one"},
        {"kind": "refuse", "status": 500, "description": "Internal Server Error"},
    ],
    ids=lambda fault: f"{fault['kind']}-{fault.get('status', '')}",
)
async def test_whatever_goes_wrong_with_polls_they_go_on(
    stand: Stand, store: SqlStore, fault: dict[str, Any]
) -> None:
    struck = stand.world.faults.add(Fault(method="getUpdates", times=4, **fault))
    async with listening(Ear(stand, store)) as ear:
        await stand.person()
        await ear.has(1)
    assert struck.hits == 4


@on_sqlite
@impatiently
async def test_a_webhook_left_over_is_taken_away_and_nothing_that_waits_is_lost(
    stand: Stand, store: SqlStore
) -> None:
    bot = await stand.bot()
    await bot.set_webhook("http://127.0.0.1:1/hook")
    await stand.person()
    async with listening(Ear(stand, store)) as ear:
        await ear.has(1)
    assert stand.world.webhook is None


@impatiently
async def test_who_loses_the_lease_stops_polling_and_polls_again_when_it_is_free(
    stand: Stand, store: SqlStore, monkeypatch: pytest.MonkeyPatch
) -> None:
    async with listening(Ear(stand, store, lease=True)) as ear:
        await asyncio.wait_for(stand.polling.wait(), PATIENCE)
        stopped = asyncio.Event()
        monkeypatch.setattr(stand.polling, "clear", stopped.set)

        def rob(tx: Tx) -> None:
            tx.leases.give_back(LISTENER, "one")
            assert tx.leases.take(LISTENER, "another", ear.clock.now(), LEASE)

        await store.run(rob)
        await asyncio.wait_for(stopped.wait(), PATIENCE)
        await stand.person()
        assert await ear.waiting() == 0
        ear.clock.move(MONDAY + LEASE + A_LITTLE)
        await ear.has(1)


async def told(store: SqlStore) -> list[str]:
    """Texts that are on their way."""

    def work(tx: Tx) -> list[str]:
        claims = tx.outbox.claim_due(MONDAY + 30 * DAY, "w", DAY, 100)
        return [claim.letter.message[0].id for claim in claims]

    return await store.run(work)


@pytest.mark.parametrize(("away", "messages"), [(DAY, 0), (DAY + A_LITTLE, 1)])
async def test_after_more_than_a_day_away_clinicians_are_told_once_that_answers_may_be_lost(
    store: SqlStore, away: timedelta, messages: int
) -> None:
    """Updates are kept at the platform for 24 hours (the Bot API's page on getting updates, second-hand)."""
    for moment in (MONDAY, MONDAY + away, MONDAY + away + A_LITTLE):
        await store.run(partial(receipts.note, now=moment))
        if moment == MONDAY:
            await store.run(clinician)
    assert await told(store) == ["answers-lost"] * messages


@pytest.fixture
async def theatre(database_at: URL, loopback: None) -> AsyncIterator[Theatre]:
    """A practice on the stepped clock."""
    theatre = Theatre(database_at)
    yield theatre
    await theatre.close()
    theatre.check()


@briefly
async def test_a_clinician_reads_it_when_the_bot_is_back_and_not_because_days_went_by(
    theatre: Theatre,
) -> None:
    ann = await theatre.client()
    await ann.until(8, day=3)
    assert not lost(theatre)
    await theatre.close()
    await theatre.open(ann.at(7, day=4))
    assert not lost(theatre)
    await theatre.close()
    await theatre.open(ann.at(7, 1, day=5))
    (args,) = lost(theatre)
    assert args == {"since": "2027-03-12T07:00"}


def lost(theatre: Theatre) -> list[Any]:
    """Arguments of what the clinician has read about answers that may be lost."""
    hers = [line for line in theatre.lines() if line.chat == theatre.dana]
    return [each.args for line in hers for each in line.texts if each.id == "answers-lost"]
