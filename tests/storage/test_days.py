"""Days, prompts and the ledger, on both engines. All ours."""

from dataclasses import replace
from datetime import date, timedelta

import pytest
from sqlalchemy.exc import IntegrityError

from scheduler.domain.days import Bout, BoutState, Entry
from scheduler.ports import Tx
from storage.engine import Database
from storage.store import SqlStore
from tests.storage.clinic import (
    HOUR,
    LARGE,
    MINUTE,
    NOW,
    TODAY,
    bout_of,
    client,
    clinician,
    day_of,
    one_client,
    while_open,
)

YESTERDAY, TOMORROW = TODAY - timedelta(days=1), TODAY + timedelta(days=1)


def entry(who: int, source: str = "u1", reps: int = 10, day: date = TODAY, **more: object) -> Entry:
    return replace(Entry(0, who, day, reps, NOW, source), **more)  # type: ignore[arg-type]


def log(store: SqlStore, *lines: Entry) -> list[int]:
    kept = store.run_sync(lambda tx: [tx.ledger.log(line) for line in lines])
    assert all(kept)
    return [line.id for line in kept if line]


def void(store: SqlStore, number: int, source: str = "u9") -> bool:
    return store.run_sync(lambda tx: tx.ledger.void(number, source, NOW))


def sources(lines: tuple[Entry, ...]) -> list[str]:
    return [line.source for line in lines]


# --- days and prompts ----------------------------------------------------------------------------


def test_a_day_comes_back_as_it_was_planned_and_is_replaced_whole(store: SqlStore) -> None:
    who = one_client(store)
    kept = store.run_sync(lambda tx: day_of(tx, who))
    assert store.run_sync(lambda tx: tx.days.get(who, TODAY)) == kept
    assert store.run_sync(lambda tx: tx.days.get(who, TOMORROW)) is None
    changed = replace(
        kept, planned=(), total=44, nudges=2, away_told=True, shortfall=4, closed_at=NOW
    )
    store.run_sync(lambda tx: tx.days.save(changed))
    assert store.run_sync(lambda tx: tx.days.get(who, TODAY)) == changed


def test_a_prompt_comes_back_as_it_was_kept(store: SqlStore) -> None:
    who = one_client(store)
    kept = store.run_sync(lambda tx: bout_of(tx, who))
    assert store.run_sync(lambda tx: tx.days.bout(kept.id)) == kept
    changed = replace(
        kept,
        reps=12,
        state=BoutState.ASKED,
        asked_at=NOW,
        nudge_at=NOW + MINUTE,
        nudged=True,
        laters=3,
        not_before=NOW,
        message_id=LARGE,
    )
    store.run_sync(lambda tx: tx.days.save_bout(changed))
    assert store.run_sync(lambda tx: tx.days.bout(kept.id)) == changed
    assert store.run_sync(lambda tx: tx.days.bouts(who, TODAY)) == (changed,)
    assert store.run_sync(lambda tx: tx.days.bout(99)) is None
    with pytest.raises(LookupError):
        store.run_sync(lambda tx: tx.days.save_bout(replace(changed, id=99)))


def test_the_nth_prompt_of_a_day_is_there_once(store: SqlStore) -> None:
    who = one_client(store)
    store.run_sync(lambda tx: bout_of(tx, who))
    with pytest.raises(IntegrityError):
        store.run_sync(lambda tx: bout_of(tx, who))


def test_the_prompts_of_a_day_come_in_their_order(store: SqlStore) -> None:
    who = one_client(store)

    def ask(tx: Tx) -> None:
        for n in (2, 10, 1):
            bout_of(tx, who, n)
        bout_of(tx, who, 1, TOMORROW)

    store.run_sync(ask)
    found = store.run_sync(lambda tx: tx.days.bouts(who, TODAY))
    assert [bout.n for bout in found] == [1, 2, 10]


def test_open_prompts_are_those_that_wait_or_were_asked_on_any_day(store: SqlStore) -> None:
    who = one_client(store)

    def ask(tx: Tx) -> None:
        for n, state in enumerate(BoutState, start=1):
            bout = bout_of(tx, who, n, YESTERDAY if state is BoutState.ASKED else TODAY)
            tx.days.save_bout(replace(bout, state=state))
        bout_of(tx, client(tx, clinician(tx, 7002).id, 99).id)

    store.run_sync(ask)
    found = store.run_sync(lambda tx: tx.days.open_bouts(who))
    assert [bout.state for bout in found] == [BoutState.ASKED, BoutState.WAITING]


@pytest.mark.parametrize(
    ("states", "last"),
    [
        ((), None),
        ((BoutState.WAITING,), None),
        ((BoutState.DONE, BoutState.ASKED), 2),
        ((BoutState.DONE, BoutState.WITHDRAWN), 1),
        ((BoutState.EXPIRED, BoutState.LATER), 1),
        ((BoutState.WITHDRAWN,), None),
    ],
)
def test_gaps_count_from_the_last_prompt_that_was_not_taken_back(
    store: SqlStore, states: tuple[BoutState, ...], last: int | None
) -> None:
    who = one_client(store)

    def ask(tx: Tx) -> None:
        for n, state in enumerate(states, start=1):
            asked_at = None if state is BoutState.WAITING else NOW + n * HOUR
            tx.days.save_bout(replace(bout_of(tx, who, n), state=state, asked_at=asked_at))

    store.run_sync(ask)
    found = store.run_sync(lambda tx: tx.days.last_prompt_at(who, TODAY))
    assert found == (None if last is None else NOW + last * HOUR)


def test_a_reply_finds_the_prompt_it_replies_to(store: SqlStore) -> None:
    who = one_client(store)

    def ask(tx: Tx) -> list[Bout]:
        other = client(tx, clinician(tx, 7002).id, 99).id
        people = ((who, 1), (who, 2), (other, 1))
        kept = [replace(bout_of(tx, each, n), message_id=LARGE) for each, n in people]
        for bout in kept:
            tx.days.save_bout(bout)
        return kept

    _, newer, _ = store.run_sync(ask)
    assert store.run_sync(lambda tx: tx.days.bout_of_message(who, LARGE)) == newer
    assert store.run_sync(lambda tx: tx.days.bout_of_message(who, LARGE - 1)) is None


# --- the ledger ----------------------------------------------------------------------------------


def test_an_entry_comes_back_as_it_was_logged(store: SqlStore) -> None:
    who = one_client(store)
    bout = store.run_sync(lambda tx: bout_of(tx, who)).id
    line = entry(who, bout=bout, message_id=LARGE)
    (number,) = log(store, line)
    assert store.run_sync(lambda tx: tx.ledger.day(who, TODAY)) == (replace(line, id=number),)


def test_the_same_answer_twice_is_one_entry(store: SqlStore) -> None:
    who = one_client(store)
    log(store, entry(who))
    assert store.run_sync(lambda tx: tx.ledger.log(entry(who, reps=12))) is None
    found = store.run_sync(lambda tx: tx.ledger.day(who, TODAY))
    assert [line.reps for line in found] == [10]


async def test_the_same_answer_by_two_workers_at_once_is_one_entry(
    store: SqlStore, database: Database
) -> None:
    who = one_client(store)
    first, second = await while_open(
        store,
        database,
        lambda tx: tx.ledger.log(entry(who)),
        lambda tx: tx.ledger.log(entry(who)),
    )
    assert first
    assert second is None


def test_the_same_source_of_two_clients_is_two_entries(store: SqlStore) -> None:
    who = one_client(store)
    other = store.run_sync(lambda tx: client(tx, clinician(tx, 7002).id, 99).id)
    log(store, entry(who), entry(other))


def test_a_voided_entry_counts_nowhere_and_is_voided_once(store: SqlStore) -> None:
    who = one_client(store)
    (number,) = log(store, entry(who, message_id=5))
    assert void(store, number)
    assert not void(store, number, "u10")
    assert store.run_sync(lambda tx: tx.ledger.day(who, TODAY)) == ()
    assert store.run_sync(lambda tx: tx.ledger.between(who, TODAY, TODAY)) == {}
    assert store.run_sync(lambda tx: tx.ledger.of_message(who, 5)) == ()
    assert store.run_sync(lambda tx: tx.ledger.latest(who, TODAY)) is None


def test_one_undo_delivered_twice_voids_one_entry(store: SqlStore) -> None:
    who = one_client(store)
    first, second = log(store, entry(who, "u1"), entry(who, "u2"))
    assert void(store, second, "undo")
    assert not void(store, first, "undo")
    assert sources(store.run_sync(lambda tx: tx.ledger.day(who, TODAY))) == ["u1"]


def test_a_correction_cannot_be_voided_nor_what_is_not_there(
    store: SqlStore, database: Database
) -> None:
    who = one_client(store)
    (number,) = log(store, entry(who))
    assert void(store, number)
    query = "SELECT id FROM ledger WHERE voids IS NOT NULL"
    correction = database.run_sync(lambda it: it.exec_driver_sql(query).scalar_one())
    assert not void(store, correction, "u10")
    assert not void(store, 99, "u11")


async def test_two_who_void_an_entry_at_once_void_it_once(
    store: SqlStore, database: Database
) -> None:
    who = one_client(store)
    (number,) = log(store, entry(who))
    voided = await while_open(
        store,
        database,
        lambda tx: tx.ledger.void(number, "a", NOW),
        lambda tx: tx.ledger.void(number, "b", NOW),
    )
    assert voided == (True, False)


def test_voiding_adds_a_line_and_changes_none(store: SqlStore, database: Database) -> None:
    who = one_client(store)
    (number,) = log(store, entry(who))
    query = f"SELECT * FROM ledger WHERE id = {number}"
    before = database.run_sync(lambda it: it.exec_driver_sql(query).all())
    void(store, number)
    assert database.run_sync(lambda it: it.exec_driver_sql(query).all()) == before
    count = "SELECT count(*), sum(reps) FROM ledger"
    assert database.run_sync(lambda it: it.exec_driver_sql(count).one()) == (2, 10)


def test_entries_of_a_day_come_oldest_first_and_the_latest_is_the_one_logged_last(
    store: SqlStore,
) -> None:
    who = one_client(store)
    log(store, entry(who, "b", at=NOW + HOUR), entry(who, "c", day=TOMORROW), entry(who, "a"))
    assert sources(store.run_sync(lambda tx: tx.ledger.day(who, TODAY))) == ["a", "b"]
    latest = store.run_sync(lambda tx: tx.ledger.latest(who, TODAY))
    assert latest
    assert latest.source == "a"


def test_sums_of_days_count_what_stands_from_the_first_day_to_the_last(store: SqlStore) -> None:
    who = one_client(store)
    days = (YESTERDAY, TODAY, TODAY, TODAY, TOMORROW)
    lines = [entry(who, f"u{n}", 10 + n, day) for n, day in enumerate(days)]
    numbers = log(store, *lines)
    void(store, numbers[1])
    sums = store.run_sync(lambda tx: tx.ledger.between(who, YESTERDAY, TODAY))
    assert sums == {YESTERDAY: 10, TODAY: 25}
    assert store.run_sync(lambda tx: tx.ledger.between(who, TODAY, YESTERDAY)) == {}


def test_an_edited_message_finds_what_it_logged(store: SqlStore) -> None:
    who = one_client(store)
    log(store, entry(who, "u1", message_id=5), entry(who, "u2", message_id=6), entry(who, "u3"))
    assert sources(store.run_sync(lambda tx: tx.ledger.of_message(who, 5))) == ["u1"]
