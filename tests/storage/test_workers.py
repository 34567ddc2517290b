"""What two workers do at once, and what the past costs them, on both engines. All ours."""

import asyncio
from collections.abc import Callable
from datetime import datetime, timedelta
from typing import Any

import pytest
from sqlalchemy import event

from scheduler.clock import SteppedClock
from scheduler.domain.messages import Lane
from scheduler.ports import Claim, Delivery, Letter, TryLater, Tx
from scheduler.usecases import outbox
from storage.engine import Database
from storage.store import SqlStore
from tests.conftest import on_postgresql
from tests.storage.clinic import (
    JUST_PAST,
    LEASE,
    NOW,
    SECOND,
    keys,
    letter,
    one_client,
    prompt,
    several,
    while_open,
    write,
)

# --- two workers ---------------------------------------------------------------------------------


def claims_as(worker: str) -> Callable[[Tx], tuple[Claim, ...]]:
    return lambda tx: tx.outbox.claim_due(NOW, worker, LEASE, 20)


async def test_what_one_worker_is_claiming_no_other_claims(
    store: SqlStore, database: Database
) -> None:
    people = several(store, 3)
    write(store, *(letter(str(n), who) for n, who in enumerate(people)))
    first, second = await while_open(store, database, claims_as("one"), claims_as("two"))
    assert (keys(first), second) == (["0", "1", "2"], ())


async def test_of_one_chat_two_workers_never_claim_two_rows(
    store: SqlStore, database: Database
) -> None:
    """The second sees a moment ago, when the urgent message was not there yet."""
    who = one_client(store)
    write(store, letter("answer", who))

    def write_and_claim(tx: Tx) -> tuple[Claim, ...]:
        tx.outbox.add(letter("safety", who, Lane.SAFETY), NOW)
        return tx.outbox.claim_due(NOW, "one", LEASE, 20)

    first, second = await while_open(store, database, write_and_claim, claims_as("two"))
    assert (keys(first), second) == (["safety"], ())


@on_postgresql
async def test_a_client_who_is_just_being_changed_holds_up_no_other(
    store: SqlStore, database: Database
) -> None:
    who, other = several(store, 2)
    prompt(store, who)
    write(store, letter("other", other))

    def cancel(tx: Tx) -> tuple[Claim, ...]:
        tx.people.lock(who)
        tx.outbox.cancel_prompts(who, "hold")
        return ()

    _, claims = await while_open(store, database, cancel, claims_as("two"), without_waiting=True)
    assert keys(claims) == ["other"]


async def test_many_workers_send_every_message_once(store: SqlStore) -> None:
    people = several(store, 5)
    names = [f"{n}:{who}" for n in range(4) for who in people]
    write(store, *(letter(name, int(name.partition(":")[2])) for name in names))

    async def send(claimed: Claim) -> None:
        assert await store.run(lambda tx: tx.outbox.begin(claimed, NOW, LEASE))
        assert await store.run(lambda tx: tx.outbox.sent(claimed, 1, NOW))

    async def work(worker: str) -> list[str]:
        left: list[str] = []
        while await store.run(lambda tx: tx.outbox.waiting(NOW)):
            claims = await store.run(lambda tx: tx.outbox.claim_due(NOW, worker, LEASE, 3))
            for each in claims:
                await send(each)
            left += keys(claims)
        return left

    left = await asyncio.gather(*(work(str(n)) for n in range(4)))
    assert sorted(key for keys_ in left for key in keys_) == sorted(names)


async def test_too_fast_in_one_chat_is_known_to_every_worker_and_the_other_chats_go_on(
    store: SqlStore,
) -> None:
    """What the platform told one of them is in the store: nobody asks it again before the time (R3)."""
    ann, bo = several(store, 2)
    prompt(store, ann)
    clock, wait = SteppedClock(NOW), 10 * SECOND  # shorter than a claim's lease
    (mine,) = await store.run(lambda tx: outbox.claim_due(tx, NOW, "one", 20))
    assert await outbox.deliver(store, TooFast(wait), clock, mine) == TryLater(wait)
    rest = [letter("hers", ann, Lane.REST), letter("his", bo, Lane.REST)]
    await store.run(lambda tx: [tx.outbox.add(each, NOW) for each in rest])

    async def claimed(worker: str, at: datetime) -> list[str]:
        return keys(await store.run(lambda tx: outbox.claim_due(tx, at, worker, 20)))

    assert await claimed("two", NOW) == ["his"]
    for worker in ("one", "three", "four"):
        assert await claimed(worker, NOW + wait - JUST_PAST) == []
    assert await claimed("two", NOW + wait) == [f"prompt:{mine.bout}"]


class TooFast:
    """A platform that wants one chat left alone for so long."""

    def __init__(self, wait: timedelta) -> None:
        self._wait = wait

    async def send(self, letter: Letter) -> Delivery:
        return TryLater(self._wait)


# --- millions of past rows -----------------------------------------------------------------------


def rows_looked_at(database: Database, work: Callable[[], object]) -> list[str]:
    """The lines of the engine's plans that go to the outbox, for every statement of `work`."""
    statements: list[tuple[str, Any]] = []

    def keep(*call: Any) -> None:
        statements.append((call[2], call[3]))

    event.listen(database.engine, "before_cursor_execute", keep)
    work()
    event.remove(database.engine, "before_cursor_execute", keep)
    explain = "EXPLAIN QUERY PLAN " if database.dialect == "sqlite" else "EXPLAIN "

    def plans(connection: Any) -> list[str]:
        if database.dialect == "postgresql":  # it would rather read a small table from end to end
            connection.exec_driver_sql("SET LOCAL enable_seqscan = off")
            connection.exec_driver_sql("SET LOCAL enable_bitmapscan = off")  # names no index
        lines: list[str] = []
        for statement, parameters in statements:
            if "outbox" in statement and not statement.startswith("INSERT"):
                found = connection.exec_driver_sql(explain + statement, parameters)
                lines += [str(row[-1]) for row in found]
        return lines

    return [line for line in database.run_sync(plans) if "outbox" in line]


@pytest.mark.parametrize("question", ["claim", "expire", "waiting", "next_due", "cancel"])
def test_what_is_past_is_never_looked_at(
    store: SqlStore, database: Database, question: str
) -> None:
    questions: dict[str, Callable[[Tx], object]] = {
        "claim": lambda tx: tx.outbox.claim_due(NOW, "one", LEASE, 20),
        "expire": lambda tx: (
            tx.outbox.claim_due(NOW, "one", LEASE, 20),  # without an end nothing more is looked at
            tx.outbox.expire_leases(NOW + 2 * LEASE),
        ),
        "waiting": lambda tx: tx.outbox.waiting(NOW),
        "next_due": lambda tx: tx.outbox.next_due(NOW),
        "cancel": lambda tx: tx.outbox.cancel_prompts(1, "hold"),
    }
    write(store, letter("k", one_client(store)))
    lines = rows_looked_at(database, lambda: store.run_sync(questions[question]))
    assert lines
    reads = [line for line in lines if "SCAN" in line.upper() or "SEARCH" in line]
    assert reads
    if question in {"claim", "waiting", "next_due"}:
        assert any("ix_outbox_put_back" in line for line in reads)
    for line in reads:
        assert "Seq Scan" not in line
        assert "ix_outbox" in line or "pk_outbox" in line or "INTEGER PRIMARY KEY" in line, line
