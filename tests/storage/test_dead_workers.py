"""What a worker leaves that died, or that is slower than its lease: nothing is sent twice (R2). All ours."""

import asyncio
from collections.abc import Callable
from datetime import datetime, timedelta
from typing import TypeVar

import pytest
from sqlalchemy import select

from bot.telegram import work
from scheduler.domain.messages import Lane
from scheduler.ports import Claim, Delivered, Delivery, Letter, Post, Tx
from scheduler.usecases import outbox
from scheduler.usecases.outbox import AGAIN_AFTER, CLAIM_LEASE, COPY_LEASE, REQUEST_LEASE
from storage.engine import Database
from storage.queue import outbox as rows
from storage.store import SqlStore
from tests.storage.clinic import (
    JUST_PAST,
    NOW,
    begin,
    claim,
    ids,
    keys,
    letter,
    one_client,
    prompt,
    sent,
    write,
)

Result = TypeVar("Result")
DATABASE_WAITS = timedelta(seconds=10)
"""For a connection, or on SQLite for another's transaction (`storage.engine`)."""


class Watch:
    """A clock that is moved by hand."""

    def __init__(self) -> None:
        self.at = NOW

    def now(self) -> datetime:
        return self.at


class Counting:
    """A platform that takes everything, and keeps what it took."""

    def __init__(self) -> None:
        self.took: list[str] = []

    async def send(self, letter: Letter) -> Delivery:
        self.took.append(letter.message[0].id)
        return Delivered(len(self.took))


def claims(store: SqlStore, now: datetime, worker: str) -> tuple[Claim, ...]:
    """What a worker gets that also settles what the dead have left."""
    return store.run_sync(lambda tx: outbox.claim_due(tx, now, worker, 20))


def states(database: Database) -> list[Post]:
    query = select(rows.c.state).order_by(rows.c.id)
    return list(database.run_sync(lambda it: it.execute(query).scalars().all()))


def test_what_a_dead_worker_had_claimed_waits_out_one_short_lease(store: SqlStore) -> None:
    bout = prompt(store, one_client(store))
    assert len(claims(store, NOW, "dead")) == 1
    assert claims(store, NOW + CLAIM_LEASE, "other") == ()
    (again,) = claims(store, NOW + CLAIM_LEASE + JUST_PAST, "other")
    assert (again.bout, again.attempts) == (bout, 0)


def test_a_lease_is_longer_than_a_database_may_make_its_worker_wait() -> None:
    assert DATABASE_WAITS < CLAIM_LEASE <= timedelta(seconds=15)
    assert DATABASE_WAITS < work.LEASE <= timedelta(seconds=15)


@pytest.mark.parametrize("taken", [False, True])
async def test_a_worker_slower_than_its_lease_sends_nothing_of_what_it_claimed(
    store: SqlStore, taken: bool
) -> None:
    """Neither where another has the row by now, nor where nobody has looked at it yet."""
    prompt(store, one_client(store))
    clock, platform = Watch(), Counting()
    (mine,) = await asyncio.to_thread(claims, store, NOW, "slow")
    clock.at = NOW + CLAIM_LEASE + JUST_PAST
    if taken:
        (other,) = await asyncio.to_thread(claims, store, clock.at, "other")
        assert await outbox.deliver(store, platform, clock, other) == Delivered(1)
    assert await outbox.deliver(store, platform, clock, mine) is None
    assert len(platform.took) == taken
    assert len(await asyncio.to_thread(claims, store, clock.at, "third")) == (not taken)


async def test_a_claim_begins_on_the_last_instant_of_its_lease_and_has_all_of_the_request_s(
    store: SqlStore,
) -> None:
    prompt(store, one_client(store))
    clock, platform = Watch(), Counting()
    (mine,) = await asyncio.to_thread(claims, store, NOW, "slow")
    clock.at = NOW + CLAIM_LEASE
    assert await outbox.deliver(store, platform, clock, mine) == Delivered(1)


def test_a_prompt_that_a_dead_worker_was_sending_becomes_unknown_one_step_past_the_request_s_lease(
    store: SqlStore, database: Database
) -> None:
    prompt(store, one_client(store))
    (mine,) = claims(store, NOW, "dead")
    begun_at = NOW + CLAIM_LEASE
    assert begin(store, mine, begun_at, REQUEST_LEASE)
    assert claims(store, begun_at + REQUEST_LEASE, "other") == ()
    assert states(database) == [Post.SENDING]
    assert claims(store, begun_at + REQUEST_LEASE + JUST_PAST, "other") == ()
    assert states(database) == [Post.UNKNOWN]
    assert not sent(store, mine)  # should the dead one wake after all


def test_an_answer_that_a_dead_worker_was_sending_is_repeated(store: SqlStore) -> None:
    """It must arrive; a copy is told from a new one by nothing but its words (R2)."""
    write(store, letter("answer", one_client(store)))
    (mine,) = claims(store, NOW, "dead")
    assert begin(store, mine, NOW, REQUEST_LEASE)
    late = NOW + REQUEST_LEASE + JUST_PAST
    assert claims(store, late, "other") == ()
    assert claims(store, late + AGAIN_AFTER - JUST_PAST, "other") == ()
    assert keys(claims(store, late + AGAIN_AFTER, "other")) == ["answer"]


def test_a_whole_batch_begins_within_its_lease_or_not_at_all(store: SqlStore) -> None:
    """Each of a batch is looked at by itself: those that come too late are another's."""
    who = one_client(store)
    for n in range(3):
        write(store, letter(str(n), who, Lane.PROMPT, due_at=NOW - n * JUST_PAST))
    got = []
    for n in range(3):  # one chat sends one at a time
        (mine,) = claims(store, NOW, "slow")
        moment = NOW + CLAIM_LEASE + (n - 1) * JUST_PAST
        got.append(begin(store, mine, moment, REQUEST_LEASE) and sent(store, mine, moment))
    assert got == [True, True, False]


def test_what_a_dead_worker_had_taken_up_of_what_was_said_waits_out_its_lease(
    store: SqlStore,
) -> None:
    def take(worker: str, now: datetime) -> list[int]:
        def work_(tx: Tx) -> list[int]:
            return ids(tx.inbox.claim(now, worker, work.LEASE, 20))

        return store.run_sync(work_)

    store.run_sync(lambda tx: tx.inbox.keep(1, 7, {}, NOW))
    assert take("dead", NOW) == [1]
    assert take("other", NOW + work.LEASE) == []
    assert take("other", NOW + work.LEASE + JUST_PAST) == [1]
    assert not store.run_sync(lambda tx: tx.inbox.finish(1, "dead"))
    assert store.run_sync(lambda tx: tx.inbox.finish(1, "other"))


def test_nothing_is_claimed_for_longer_than_it_is_asked(store: SqlStore) -> None:
    """The edge of a claim is its own lease, not that of an earlier one of the same row."""
    write(store, letter("k", one_client(store)))
    (first,) = claim(store)
    assert begin(store, first)
    assert store.run_sync(lambda tx: tx.outbox.put_back(first, NOW))
    (again,) = claims(store, NOW, "dead")
    assert not begin(store, again, NOW + CLAIM_LEASE + JUST_PAST)


# --- a fault of the database on the way ----------------------------------------------------------


class Shaky:
    """The store, whose n-th transaction fails: before it, or after its commit, which nobody hears."""

    def __init__(self, store: SqlStore, fails: dict[int, str]) -> None:
        self._store, self._fails, self._runs = store, fails, 0

    async def run(self, work_: Callable[[Tx], Result], *, alone: bool = False) -> Result:
        self._runs += 1
        how = self._fails.get(self._runs)
        if how == "before":
            raise ConnectionError
        result = await self._store.run(work_)
        if how == "after":
            raise ConnectionError
        return result

    def run_sync(self, work_: Callable[[Tx], Result]) -> Result:
        return self._store.run_sync(work_)


@pytest.fixture
def at_once(monkeypatch: pytest.MonkeyPatch) -> None:
    """Tries follow one another without a pause."""
    monkeypatch.setattr(outbox, "PAUSES", (0.0,) * len(outbox.PAUSES))


@pytest.mark.parametrize(
    "fails", [{2: "before"}, {2: "after"}, {2: "before", 3: "before", 4: "after"}]
)
async def test_what_was_accepted_is_known_as_sent_though_writing_it_down_failed_at_first(
    store: SqlStore, database: Database, at_once: None, fails: dict[int, str]
) -> None:
    prompt(store, one_client(store))
    clock, platform = Watch(), Counting()
    (mine,) = await asyncio.to_thread(claims, store, NOW, "one")
    assert await outbox.deliver(Shaky(store, fails), platform, clock, mine) == Delivered(1)
    assert (states(database), len(platform.took)) == ([Post.SENT], 1)


async def test_where_it_cannot_be_written_down_at_all_it_becomes_unknown_with_its_lease(
    store: SqlStore, database: Database, at_once: None
) -> None:
    prompt(store, one_client(store))
    clock, platform = Watch(), Counting()
    (mine,) = await asyncio.to_thread(claims, store, NOW, "one")
    with pytest.raises(ConnectionError):
        await outbox.deliver(
            Shaky(store, dict.fromkeys(range(2, 9), "before")), platform, clock, mine
        )
    assert await asyncio.to_thread(claims, store, NOW + REQUEST_LEASE + JUST_PAST, "two") == ()
    assert (states(database), len(platform.took)) == ([Post.UNKNOWN], 1)


class Dying:
    """The worker ends while its request is under way."""

    async def send(self, letter: Letter) -> Delivery:
        raise asyncio.CancelledError(letter.outbox_id)


@pytest.mark.parametrize("lane", [Lane.SAFETY, Lane.FLAG, Lane.ANSWER])
async def test_word_of_pain_waits_half_a_minute_for_a_worker_that_died_while_sending_it(
    store: SqlStore, lane: Lane
) -> None:
    write(store, letter("k", one_client(store), lane))
    clock, past = Watch(), NOW + COPY_LEASE + JUST_PAST
    (mine,) = await asyncio.to_thread(claims, store, NOW, "dies")
    with pytest.raises(asyncio.CancelledError):
        await outbox.deliver(store, Dying(), clock, mine)
    assert await asyncio.to_thread(claims, store, NOW + COPY_LEASE, "two") == ()
    assert await asyncio.to_thread(claims, store, past, "two") == ()  # due again, after a pause
    (again,) = await asyncio.to_thread(claims, store, past + AGAIN_AFTER, "two")
    assert again.letter.outbox_id == mine.letter.outbox_id
    assert timedelta(minutes=1) > COPY_LEASE + AGAIN_AFTER


async def test_what_may_have_begun_to_leave_and_has_not_leaves_at_once(
    store: SqlStore, database: Database, at_once: None
) -> None:
    """The commit of its beginning happened, and its worker did not hear of it."""
    bout = prompt(store, one_client(store))
    clock, platform = Watch(), Counting()
    (mine,) = await asyncio.to_thread(claims, store, NOW, "one")
    with pytest.raises(ConnectionError):
        await outbox.deliver(Shaky(store, {1: "after"}), platform, clock, mine)
    assert platform.took == []
    (again,) = await asyncio.to_thread(claims, store, NOW, "two")
    assert again.bout == bout
    assert await outbox.deliver(store, platform, clock, again) == Delivered(1)
    assert states(database) == [Post.SENT]
