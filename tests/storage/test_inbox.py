"""Updates from their arrival to their end, on both engines. All ours."""

from datetime import datetime

import pytest

from scheduler.ports import Arrived, Tx
from storage.engine import Database
from storage.store import SqlStore
from tests.conftest import on_postgresql
from tests.storage.clinic import (
    HOUR,
    JUST_PAST,
    LARGE,
    LEASE,
    NOW,
    SECOND,
    ids,
    take,
    while_open,
)


def keep(store: SqlStore, *updates: tuple[int, int], now: datetime = NOW) -> None:
    """Updates of chats, given as pairs of both numbers."""
    kept = store.run_sync(
        lambda tx: [tx.inbox.keep(number, chat, {"n": number}, now) for number, chat in updates]
    )
    assert all(kept)


def finish(store: SqlStore, number: int, worker: str = "one") -> bool:
    return store.run_sync(lambda tx: tx.inbox.finish(number, worker))


def failed(store: SqlStore, number: int, retry_at: datetime | None, worker: str = "one") -> None:
    store.run_sync(lambda tx: tx.inbox.failed(number, worker, retry_at, "ValueError"))


def finished(store: SqlStore, number: int) -> bool:
    return store.run_sync(lambda tx: tx.inbox.finished(number))


def unfinished(store: SqlStore) -> int:
    return store.run_sync(lambda tx: tx.inbox.unfinished())


def next_due(store: SqlStore) -> datetime | None:
    return store.run_sync(lambda tx: tx.inbox.next_due())


def test_an_update_comes_back_as_it_arrived(store: SqlStore) -> None:
    payload = {"message": {"text": "did 12 «ay»", "chat": {"id": LARGE}}, "update_id": LARGE}
    assert store.run_sync(lambda tx: tx.inbox.keep(LARGE, -LARGE, payload, NOW))
    assert take(store) == (Arrived(LARGE, payload, NOW, 1),)


def test_an_update_delivered_twice_is_there_once(store: SqlStore) -> None:
    keep(store, (1, 7))
    assert not store.run_sync(lambda tx: tx.inbox.keep(1, 7, {"other": 1}, NOW))
    take(store)
    assert finish(store, 1)
    assert not store.run_sync(lambda tx: tx.inbox.keep(1, 7, {"other": 1}, NOW))
    assert take(store, NOW + HOUR) == ()


def test_updates_of_one_chat_are_handled_one_after_the_other(store: SqlStore) -> None:
    keep(store, (3, 7), (2, 7), (1, 8))
    assert sorted(ids(take(store))) == [1, 2]
    assert take(store) == ()
    assert finish(store, 2)
    assert ids(take(store)) == [3]


def test_the_longest_waiting_chats_come_first(store: SqlStore) -> None:
    keep(store, (2, 7))
    keep(store, (1, 8), now=NOW + SECOND)
    keep(store, (3, 9), now=NOW + SECOND)
    assert ids(take(store, NOW + SECOND, limit=2)) == [2, 1]


def test_an_older_update_that_arrives_late_waits_for_the_one_being_handled(
    store: SqlStore,
) -> None:
    keep(store, (2, 7))
    take(store)
    keep(store, (1, 7))
    assert take(store, NOW + LEASE, "two") == ()
    assert next_due(store) == NOW + LEASE + JUST_PAST
    assert finish(store, 2)
    assert ids(take(store)) == [1]


def test_an_update_is_finished_once_and_by_its_worker(store: SqlStore) -> None:
    keep(store, (1, 7))
    assert not finish(store, 1)  # nobody has claimed it
    take(store)
    assert not finish(store, 1, "two")
    assert (finished(store, 1), unfinished(store)) == (False, 1)
    assert finish(store, 1)
    assert (finished(store, 1), unfinished(store)) == (True, 0)
    assert not finish(store, 1)
    assert not finished(store, 2)


def test_an_update_of_a_dead_worker_is_handled_by_another(store: SqlStore) -> None:
    keep(store, (1, 7), (2, 7))
    take(store)
    assert next_due(store) == NOW + LEASE + JUST_PAST
    assert take(store, NOW + LEASE, "two") == ()
    (again,) = take(store, NOW + LEASE + JUST_PAST, "two")
    assert (again.update_id, again.attempts) == (1, 2)
    assert not finish(store, 1)  # the first was slow, not dead: its effects are not kept
    assert finish(store, 1, "two")


def test_what_a_worker_without_a_lease_has_done_is_not_kept(store: SqlStore) -> None:
    class LostLeaseError(Exception):
        pass

    def apply(tx: Tx) -> None:
        tx.book.put("phone", "+34 000")
        if not tx.inbox.finish(1, "one"):
            raise LostLeaseError

    keep(store, (1, 7))
    take(store)
    take(store, NOW + LEASE + JUST_PAST, "two")
    with pytest.raises(LostLeaseError):
        store.run_sync(apply)
    assert store.run_sync(lambda tx: tx.book.read("phone")) is None


def test_a_failed_update_is_tried_again_at_its_time_and_its_chat_waits(store: SqlStore) -> None:
    keep(store, (1, 7), (2, 7), (3, 8))
    take(store)
    failed(store, 1, NOW + 2 * SECOND)
    assert finish(store, 3)
    assert take(store, NOW + 2 * SECOND - JUST_PAST) == ()
    assert (next_due(store), unfinished(store)) == (NOW + 2 * SECOND, 2)
    (again,) = take(store, NOW + 2 * SECOND)
    assert (again.update_id, again.attempts) == (1, 2)


def test_an_update_set_aside_lets_the_others_go_on(store: SqlStore) -> None:
    keep(store, (1, 7), (2, 7))
    take(store)
    failed(store, 1, None)
    assert (finished(store, 1), unfinished(store)) == (True, 1)
    assert ids(take(store)) == [2]
    assert not finish(store, 1)


def test_a_failure_told_by_a_worker_without_the_lease_changes_nothing(store: SqlStore) -> None:
    keep(store, (1, 7))
    take(store)
    failed(store, 1, None, "two")
    assert finish(store, 1)


def test_an_empty_inbox_waits_for_nothing(store: SqlStore) -> None:
    assert (next_due(store), unfinished(store), take(store)) == (None, 0, ())


def test_what_waits_behind_another_is_not_next(store: SqlStore) -> None:
    keep(store, (1, 7), (2, 7))
    assert next_due(store) == NOW
    take(store)
    failed(store, 1, NOW + SECOND)
    keep(store, (3, 7))
    assert next_due(store) == NOW + SECOND


async def test_what_one_worker_is_claiming_no_other_claims(
    store: SqlStore, database: Database
) -> None:
    keep(store, (1, 7), (2, 7), (3, 8))
    first, second = await while_open(
        store,
        database,
        lambda tx: tx.inbox.claim(NOW, "one", LEASE, 20),
        lambda tx: tx.inbox.claim(NOW, "two", LEASE, 20),
    )
    assert (ids(first), second) == ([1, 3], ())


async def test_while_an_update_is_being_finished_the_next_of_its_chat_waits(
    store: SqlStore, database: Database
) -> None:
    keep(store, (1, 7), (2, 7))
    take(store)

    def finish_it(tx: Tx) -> tuple[Arrived, ...]:
        assert tx.inbox.finish(1, "one")
        return ()

    _, claimed = await while_open(
        store, database, finish_it, lambda tx: tx.inbox.claim(NOW, "two", LEASE, 20)
    )
    # SQLite lets the second look only when the first has ended.
    assert ids(claimed) == ([2] if database.dialect == "sqlite" else [])
    assert ids(claimed) + ids(take(store)) == [2]


@on_postgresql
async def test_a_worker_that_is_claiming_holds_up_no_other(
    store: SqlStore, database: Database
) -> None:
    keep(store, (1, 7), (2, 8))
    first, second = await while_open(
        store,
        database,
        lambda tx: tx.inbox.claim(NOW, "one", LEASE, 1),
        lambda tx: tx.inbox.claim(NOW, "two", LEASE, 20),
        without_waiting=True,
    )
    assert (ids(first), ids(second)) == ([1], [2])
