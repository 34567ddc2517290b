"""What was set aside, and how the store stands, on both engines. All ours."""

from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from scheduler.domain.flags import Flag
from scheduler.domain.messages import Lane
from scheduler.ports import SetAside, Standing, Tx
from storage import aside, standing
from storage.engine import Database
from storage.store import SqlStore
from tests.conftest import on_sqlite
from tests.storage.clinic import (
    HOUR,
    JUST_PAST,
    LEASE,
    MINUTE,
    NOW,
    SECOND,
    begin,
    claim,
    client,
    clinician,
    ids,
    letter,
    one_client,
    prompt,
    put_back,
    take,
    write,
)


def set_aside(store: SqlStore, *updates: tuple[int, int]) -> None:
    """Updates of chats, given as pairs of both numbers, each a second after the one before."""
    for n, (number, chat) in enumerate(updates):

        def work(tx: Tx, number: int = number, chat: int = chat, n: int = n) -> None:
            assert tx.inbox.keep(number, chat, {"n": number}, NOW + n * SECOND)
            tx.inbox.claim(NOW + HOUR, "one", LEASE, 20)
            assert tx.inbox.failed(number, "one", None, "ValueError at heard:1")

        store.run_sync(work)


def test_what_was_set_aside_is_found_with_whose_it_is(store: SqlStore) -> None:
    who = one_client(store)
    set_aside(store, (1, 4711), (2, 99))
    found = store.run_sync(lambda tx: tx.aside.oldest(20))
    assert found == (SetAside(1, who, NOW), SetAside(2, None, NOW + SECOND))
    assert store.run_sync(lambda tx: tx.aside.oldest(1)) == found[:1]
    assert store.run_sync(lambda tx: (tx.aside.get(2), tx.aside.get(3))) == (found[1], None)
    assert store.run_sync(lambda tx: (tx.aside.count(), tx.aside.count(NOW + SECOND))) == (2, 1)


def test_tried_again_it_comes_before_what_its_chat_said_later(store: SqlStore) -> None:
    set_aside(store, (1, 7))
    store.run_sync(lambda tx: tx.inbox.keep(2, 7, {"n": 2}, NOW))
    (later,) = take(store, worker="two")
    assert store.run_sync(lambda tx: tx.aside.again(1, NOW))
    assert not store.run_sync(lambda tx: tx.aside.again(1, NOW))  # it is not set aside any more
    assert take(store) == ()  # not beside the later one, which is being handled
    assert store.run_sync(lambda tx: tx.inbox.finish(later.update_id, "two"))
    store.run_sync(lambda tx: tx.inbox.keep(3, 7, {"n": 3}, NOW))
    (first,) = take(store)
    assert (first.update_id, first.attempts) == (1, 1)  # as if it had never been tried


def test_all_are_tried_again_or_one_rests_for_good(store: SqlStore) -> None:
    set_aside(store, (1, 7), (2, 8), (3, 9))
    assert store.run_sync(lambda tx: (tx.aside.drop(2), tx.aside.drop(2))) == (True, False)
    assert store.run_sync(lambda tx: tx.inbox.finished(2))
    assert store.run_sync(lambda tx: tx.aside.all_again(NOW)) == (1, 3)
    assert store.run_sync(lambda tx: (tx.aside.all_again(NOW), tx.aside.count())) == ((), 0)
    assert ids(take(store)) == [1, 3]


def flag(tx: Tx, who: int, kind: str, *, urgent: bool) -> int:
    hers = tx.people.client(who).clinician
    opened = tx.flags.open(Flag(who, hers, kind, urgent, kind, NOW, {}))
    assert opened
    return opened.id


def test_a_store_tells_how_it_stands_in_numbers(store: SqlStore) -> None:
    """Late is over a minute, and a prompt over the practice's 20 leaves no more."""
    one, two, three, away = store.run_sync(
        lambda tx: [client(tx, clinician(tx, 7000 + n).id, n).id for n in range(4)]
    )
    minute_ago, long_ago = NOW - MINUTE, NOW - 2 * HOUR
    write(
        store,
        letter("safety", one, Lane.SAFETY, due_at=long_ago),
        letter("on time", two, Lane.ANSWER, due_at=minute_ago),
        letter("late", three, Lane.ANSWER, due_at=minute_ago - JUST_PAST),
        letter("tomorrow", one, Lane.REST, due_at=NOW + 24 * HOUR),
        letter("away", away, Lane.FLAG, due_at=long_ago),
    )
    prompt(store, two, 1, NOW - 20 * MINUTE)
    prompt(store, three, 1, NOW - 20 * MINUTE - JUST_PAST)

    def work(tx: Tx) -> Standing:
        person = tx.people.get(away)
        assert person
        tx.people.save(replace(person, blocked=True))
        tx.inbox.keep(1, 7, {}, NOW - 3 * SECOND)
        tx.inbox.keep(2, 8, {}, NOW - SECOND)
        flag(tx, one, "pain", urgent=True)
        flag(tx, one, "silent", urgent=False)
        flag(tx, two, "silent", urgent=False)
        tx.flags.close(flag(tx, two, "fall", urgent=True), "called", one, "", NOW)
        return tx.standing.at(NOW)

    told = store.run_sync(work)
    assert told == Standing(
        due={Lane.SAFETY: 1, Lane.ANSWER: 2, Lane.PROMPT: 1},
        late={Lane.SAFETY: 1, Lane.ANSWER: 1, Lane.PROMPT: 1},
        too_late=1,
        unknown=0,
        dropped={},
        inbox=2,
        inbox_oldest=NOW - 3 * SECOND,
        aside=0,
        flags_urgent=1,
        flags_other=2,
    )


def test_what_was_put_back_is_still_late_and_what_was_lost_is_counted_for_a_day(
    store: SqlStore,
) -> None:
    who = store.run_sync(
        lambda tx: [client(tx, clinician(tx, 7000 + n).id, n).id for n in range(5)]
    )
    due = [NOW - 2 * MINUTE, NOW, NOW, NOW, NOW - timedelta(days=1, seconds=1)]
    write(store, *(letter(str(n), who[n], Lane.REST, due_at=due[n]) for n in range(5)))
    claims = {each.person: each for each in claim(store)}
    for each in claims.values():
        begin(store, each, NOW)
    put_back(store, claims[who[0]], NOW + MINUTE)

    def work(tx: Tx) -> Standing:
        assert tx.outbox.unknown(claims[who[1]], NOW)
        assert tx.outbox.drop(claims[who[2]], "Forbidden: blocked")
        assert tx.outbox.drop(claims[who[4]], "Forbidden: blocked")
        return tx.standing.at(NOW)

    told = store.run_sync(work)
    assert told.late == {Lane.REST: 1}
    assert told.due == {Lane.REST: 2}  # one put back, one on its way
    assert (told.unknown, told.dropped) == (1, {"Forbidden: blocked": 1})


STATEMENTS: dict[str, Any] = {
    "waiting": standing.WAITING,
    "lost": standing.LOST,
    "received": standing.RECEIVED,
    "flags": standing.OPEN,
    "aside": aside.COUNT,
    "oldest": aside.OLDEST,
    "all again": aside.ALL_AGAIN,
}


@on_sqlite
@pytest.mark.parametrize("name", STATEMENTS)
def test_no_look_reads_all_that_is_past(database: Database, name: str) -> None:
    """Every table of past rows is entered by an index (the engine's own plan)."""
    compiled = STATEMENTS[name].compile(database.engine)
    given = dict.fromkeys(compiled.params, 0) | {"attempts": 0}
    plan = database.run_sync(
        lambda it: [
            row[3]
            for row in it.exec_driver_sql(
                f"EXPLAIN QUERY PLAN {compiled}",
                tuple(given[k] for k in compiled.positiontup or ()),
            )
        ]
    )
    for table in ("outbox", "inbox", "flag"):
        scans = [step for step in plan if step.startswith(f"SCAN {table}")]
        assert all(" INDEX ix_" in step or " INDEX uq_flag_open" in step for step in scans), plan
