"""Two workers at one PostgreSQL: what one is claiming the other has not, and what that rests on (R2).

"Two workers drain 100 rows" passes without any guard. Here the first claim stands in an open transaction
while the second is made. Then the guards are taken out one by one, and the same scene must fail: a scene that
cannot fail shows nothing. `tests.storage.test_workers` has the scenes of both engines.
"""

from collections.abc import Callable

import pytest
from sqlalchemy import Connection

from scheduler.domain.messages import Lane
from scheduler.ports import Arrived, Claim, Tx
from storage import inbox, queue
from storage.engine import Database
from storage.store import SqlStore
from tests.conftest import on_postgresql
from tests.storage.clinic import (
    LEASE,
    NOW,
    ids,
    keys,
    letter,
    one_client,
    several,
    while_open,
    write,
)


def claims_as(worker: str) -> Callable[[Tx], tuple[Claim, ...]]:
    return lambda tx: tx.outbox.claim_due(NOW, worker, LEASE, 20)


def takes_as(worker: str) -> Callable[[Tx], tuple[Arrived, ...]]:
    return lambda tx: tx.inbox.claim(NOW, worker, LEASE, 20)


async def two_claims(
    store: SqlStore, database: Database, *, waiting: bool
) -> tuple[list[str], ...]:
    """What each of two workers claims of three chats, the second while the first is not committed."""
    people = several(store, 3)
    write(store, *(letter(str(n), who) for n, who in enumerate(people)))
    pair = await while_open(
        store, database, claims_as("one"), claims_as("two"), without_waiting=not waiting
    )
    return tuple(keys(each) for each in pair)


async def urgent_beside(store: SqlStore, database: Database) -> tuple[list[str], ...]:
    """One chat: the first worker writes and claims an urgent row, which the second does not see yet."""
    who = one_client(store)
    write(store, letter("answer", who))

    def write_and_claim(tx: Tx) -> tuple[Claim, ...]:
        tx.outbox.add(letter("safety", who, Lane.SAFETY), NOW)
        return tx.outbox.claim_due(NOW, "one", LEASE, 20)

    pair = await while_open(store, database, write_and_claim, claims_as("two"))
    return tuple(keys(each) for each in pair)


def not_in_turn(connection: Connection) -> None:
    """Stands where `one_at_a_time` was: everybody chooses at once."""


@on_postgresql
async def test_the_second_worker_has_nothing_of_what_the_first_is_claiming(
    store: SqlStore, database: Database
) -> None:
    assert await two_claims(store, database, waiting=True) == (["0", "1", "2"], [])


@on_postgresql
async def test_locked_rows_are_passed_over_without_waiting_even_out_of_turn(
    store: SqlStore, database: Database, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(queue, "one_at_a_time", not_in_turn)
    assert await two_claims(store, database, waiting=False) == (["0", "1", "2"], [])


@on_postgresql
async def test_without_skip_locked_the_second_worker_would_wait_for_the_first(
    store: SqlStore, database: Database, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(queue, "one_at_a_time", not_in_turn)
    monkeypatch.setattr(queue, "STILL_DUE", queue.STILL_DUE.with_for_update(of=queue.outbox))
    with pytest.raises(AssertionError):
        await two_claims(store, database, waiting=False)


@on_postgresql
async def test_without_locks_both_workers_would_claim_every_row(
    store: SqlStore, database: Database, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(queue, "one_at_a_time", not_in_turn)
    monkeypatch.setattr(queue, "STILL_DUE", unlocked())
    assert await two_claims(store, database, waiting=True) == (["0", "1", "2"], ["0", "1", "2"])


@on_postgresql
async def test_out_of_turn_two_rows_of_one_chat_would_leave_at_once(
    store: SqlStore, database: Database, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(queue, "one_at_a_time", not_in_turn)
    assert await urgent_beside(store, database) == (["safety"], ["answer"])


@on_postgresql
async def test_in_turn_of_one_chat_one_row_leaves(store: SqlStore, database: Database) -> None:
    assert await urgent_beside(store, database) == (["safety"], [])


def unlocked() -> object:
    """The statement that takes the rows, without any lock."""
    free = queue.STILL_DUE._clone()
    free._for_update_arg = None
    return free


# --- updates -------------------------------------------------------------------------------------


async def two_take(store: SqlStore, database: Database) -> tuple[list[int], ...]:
    """Updates 1 and 2 of one chat, 3 of another; the second worker must not even wait."""
    for update, chat in ((1, 7), (2, 7), (3, 8)):
        store.run_sync(lambda tx, u=update, c=chat: tx.inbox.keep(u, c, {}, NOW))  # type: ignore[misc]
    pair = await while_open(store, database, takes_as("one"), takes_as("two"), without_waiting=True)
    return tuple(ids(each) for each in pair)


@on_postgresql
async def test_an_update_that_one_worker_is_taking_no_other_takes_nor_the_next_of_its_chat(
    store: SqlStore, database: Database
) -> None:
    assert await two_take(store, database) == ([1, 3], [])


@on_postgresql
async def test_without_skip_locked_a_worker_would_wait_for_the_updates_of_another(
    store: SqlStore, database: Database, monkeypatch: pytest.MonkeyPatch
) -> None:
    waits = inbox.TO_CLAIM.with_for_update(of=inbox.inbox)
    monkeypatch.setattr(inbox, "TO_CLAIM", waits)
    with pytest.raises(AssertionError):
        await two_take(store, database)
