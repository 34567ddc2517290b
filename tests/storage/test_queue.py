"""Which messages leave and in which order, and what two workers do at once. All ours."""

import asyncio
from collections.abc import Callable
from dataclasses import replace
from datetime import datetime
from typing import Any

import pytest
from sqlalchemy import event

from scheduler.domain.messages import Lane, message
from scheduler.domain.people import Person, Role, State
from scheduler.ports import Claim, Outgoing, Tx
from storage.engine import Database
from storage.store import SqlStore
from tests.conftest import on_postgresql
from tests.storage.clinic import (
    HOUR,
    JUST_PAST,
    LEASE,
    MINUTE,
    NOW,
    SECOND,
    begin,
    begun,
    claim,
    client,
    clinician,
    keys,
    letter,
    one_client,
    prompt,
    put_back,
    sent,
    while_open,
    write,
)


def clients(store: SqlStore, number: int) -> list[int]:
    def enrol(tx: Tx) -> list[int]:
        hers = clinician(tx).id
        return [client(tx, hers, 100 + n).id for n in range(number)]

    return store.run_sync(enrol)


def waiting(store: SqlStore, now: datetime = NOW) -> int:
    return store.run_sync(lambda tx: tx.outbox.waiting(now))


def next_due(store: SqlStore, now: datetime = NOW) -> datetime | None:
    return store.run_sync(lambda tx: tx.outbox.next_due(now))


def accept(store: SqlStore, claimed: Claim, now: datetime = NOW) -> None:
    begin(store, claimed, now)
    assert sent(store, claimed, now)


def drain(store: SqlStore, now: datetime = NOW) -> list[str]:
    """Send all that is due; the keys in the order in which they left."""
    left: list[str] = []
    while claims := claim(store, now):
        left += keys(claims)
        for each in claims:
            accept(store, each, now)
    return left


def save(store: SqlStore, who: int, **changes: Any) -> None:
    def work(tx: Tx) -> None:
        person = tx.people.get(who)
        assert person
        tx.people.save(replace(person, **changes))

    store.run_sync(work)


# --- order ---------------------------------------------------------------------------------------


def test_lanes_leave_in_their_order_and_within_one_the_oldest_first(store: SqlStore) -> None:
    people = clients(store, 7)
    lanes = (Lane.REST, Lane.PROMPT, Lane.ANSWER, Lane.ANSWER, Lane.FLAG, Lane.SAFETY, Lane.ANSWER)
    ages = (9, 9, 1, 2, 0, 0, 1)
    for n, (who, lane, age) in enumerate(zip(people, lanes, ages, strict=True)):
        write(store, letter(str(n), who, lane), now=NOW - age * SECOND)
    assert keys(claim(store, limit=2)) == ["5", "4"]
    assert keys(claim(store)) == ["3", "2", "6", "1", "0"]


def test_one_message_of_a_chat_leaves_at_a_time_in_the_order_they_were_written(
    store: SqlStore,
) -> None:
    who = one_client(store)
    write(store, *(letter(str(n), who) for n in range(4)))
    write(store, letter("safety", who, Lane.SAFETY), letter("rest", who, Lane.REST))
    (first,) = claim(store)
    assert claim(store) == ()
    begin(store, first)
    assert claim(store) == ()
    assert sent(store, first)
    assert keys((first,)) + drain(store) == ["safety", "0", "1", "2", "3", "rest"]


def test_the_roles_of_one_account_share_its_chat(store: SqlStore) -> None:
    who = one_client(store)
    admin = Person(0, Role.ADMIN, "Two Roles", "en", State.READY, account=4711)
    other = store.run_sync(lambda tx: tx.people.add(admin, None)).id
    to_chat = Outgoing("chat", Lane.ANSWER, message("chat"), chat=4711)
    write(store, letter("client", who), letter("admin", other), to_chat)
    assert keys(claim(store)) == ["client"]
    assert claim(store) == ()


def test_a_message_that_was_put_back_keeps_its_place(store: SqlStore) -> None:
    who, other = clients(store, 2)
    write(store, letter("first", who))
    mine = begun(store)
    put_back(store, mine, NOW + 5 * SECOND)
    write(store, letter("second", who), letter("rest", who, Lane.REST), now=NOW + SECOND)
    write(store, letter("safety", who, Lane.SAFETY), letter("other", other), now=NOW + SECOND)
    assert drain(store, NOW + 4 * SECOND) == ["safety", "other"]
    assert drain(store, NOW + 5 * SECOND) == ["first", "second", "rest"]


def test_a_prompt_that_is_still_to_come_holds_nothing_up(store: SqlStore) -> None:
    who = one_client(store)
    prompt(store, who, due_at=NOW + HOUR)
    write(store, letter("rest", who, Lane.REST))
    assert drain(store) == ["rest"]


def test_a_chat_goes_on_when_the_lease_of_a_dead_worker_ends(store: SqlStore) -> None:
    who = one_client(store)
    write(store, letter("first", who), letter("second", who))
    begun(store)
    assert claim(store, NOW + LEASE, "two") == ()
    assert keys(claim(store, NOW + LEASE + JUST_PAST, "two")) == ["second"]


# --- who can be reached --------------------------------------------------------------------------


def test_who_has_blocked_the_bot_gets_nothing_until_she_is_back(store: SqlStore) -> None:
    who = one_client(store)
    write(store, letter("k", who))
    save(store, who, blocked=True)
    assert (claim(store), waiting(store), next_due(store)) == ((), 0, None)
    save(store, who, blocked=False)
    assert (waiting(store), next_due(store)) == (1, NOW)
    assert keys(claim(store)) == ["k"]


def test_who_has_not_joined_yet_gets_it_when_she_has(store: SqlStore) -> None:
    who = one_client(store)
    save(store, who, account=None)
    write(store, letter("k", who))
    assert (claim(store), waiting(store), next_due(store)) == ((), 0, None)
    save(store, who, account=99)
    (first,) = claim(store)
    assert first.letter.chat == 99


def test_a_message_follows_a_person_who_moves_to_another_account(store: SqlStore) -> None:
    who = one_client(store)
    write(store, letter("k", who))
    save(store, who, account=2**52, language="en")
    (first,) = claim(store)
    assert (first.letter.chat, first.letter.language) == (2**52, "en")


# --- what waits, and what is next ----------------------------------------------------------------


def test_an_empty_outbox_waits_for_nothing(store: SqlStore) -> None:
    assert (waiting(store), next_due(store)) == (0, None)


def test_what_waits_is_what_is_due_or_on_its_way(store: SqlStore) -> None:
    who, other, third = clients(store, 3)
    write(store, letter("a", who), letter("b", who), letter("c", other))
    write(store, letter("later", third, due_at=NOW + HOUR))
    assert waiting(store) == 3
    first, second = claim(store)
    assert waiting(store) == 3
    accept(store, first)
    begin(store, second)
    assert waiting(store) == 2
    assert store.run_sync(lambda tx: tx.outbox.drop(second, "refused"))
    assert (waiting(store), waiting(store, NOW + HOUR)) == (1, 2)


def test_what_was_put_back_does_not_wait_nor_what_is_behind_it(store: SqlStore) -> None:
    who = one_client(store)
    write(store, letter("a", who), letter("b", who))
    first = begun(store)
    again = NOW + 5 * SECOND
    put_back(store, first, again)
    assert (waiting(store), next_due(store)) == (0, again)
    assert waiting(store, again) == 2
    assert keys(claim(store, again)) == ["a"]


def test_the_next_instant_is_that_of_the_earliest_row(store: SqlStore) -> None:
    who, other = clients(store, 2)
    write(store, letter("a", who, due_at=NOW + HOUR), letter("b", other, due_at=NOW + MINUTE))
    assert next_due(store) == NOW + MINUTE
    assert next_due(store, NOW + 2 * HOUR) == NOW + MINUTE


def test_a_prompt_that_is_too_late_waits_no_more_and_is_not_next(store: SqlStore) -> None:
    prompt(store, one_client(store))
    on_the_edge = NOW + 20 * MINUTE
    assert (waiting(store, on_the_edge), next_due(store, on_the_edge)) == (1, NOW)
    past = on_the_edge + JUST_PAST
    assert (waiting(store, past), next_due(store, past)) == (0, None)


def test_the_end_of_a_lease_is_an_instant_to_look_at(store: SqlStore) -> None:
    who = one_client(store)
    write(store, letter("a", who), letter("b", who))
    begun(store)
    ends = next_due(store)
    assert ends == NOW + LEASE + JUST_PAST
    assert len(store.run_sync(lambda tx: tx.outbox.expire_leases(ends))) == 1


def test_at_every_instant_told_there_is_something_to_do(store: SqlStore) -> None:
    """Whoever steps from instant to instant would otherwise stand still for ever."""
    people = clients(store, 3)
    for n, who in enumerate(people):
        write(store, letter(f"now:{n}", who), letter(f"rest:{n}", who, Lane.REST))
        prompt(store, who, due_at=NOW + n * HOUR)
    refused: list[str] = []
    now, left = NOW, []
    while (due := next_due(store, now)) is not None:
        now = max(now, due)
        claims = claim(store, now)
        assert claims, now
        for each in claims:
            begin(store, each, now)
            (key,) = keys((each,))
            if key in refused:
                assert sent(store, each, now)
                left.append(key)
            else:  # everything is put back once
                refused.append(key)
                again = now + 7 * MINUTE
                assert put_back(store, each, again)
    assert len(left) == 9
    assert waiting(store, now) == 0


# --- two workers ---------------------------------------------------------------------------------


def claims_as(worker: str) -> Callable[[Tx], tuple[Claim, ...]]:
    return lambda tx: tx.outbox.claim_due(NOW, worker, LEASE, 20)


async def test_what_one_worker_is_claiming_no_other_claims(
    store: SqlStore, database: Database
) -> None:
    people = clients(store, 3)
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
    who, other = clients(store, 2)
    prompt(store, who)
    write(store, letter("other", other))

    def cancel(tx: Tx) -> tuple[Claim, ...]:
        tx.people.lock(who)
        tx.outbox.cancel_prompts(who, "hold")
        return ()

    _, claims = await while_open(store, database, cancel, claims_as("two"), without_waiting=True)
    assert keys(claims) == ["other"]


async def test_many_workers_send_every_message_once(store: SqlStore) -> None:
    people = clients(store, 5)
    names = [f"{n}:{who}" for n in range(4) for who in people]
    write(store, *(letter(name, int(name.partition(":")[2])) for name in names))

    async def send(claimed: Claim) -> None:
        assert await store.run(lambda tx: tx.outbox.begin(claimed, NOW))
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
        "expire": lambda tx: tx.outbox.expire_leases(NOW),
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
