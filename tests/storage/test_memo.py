"""What a transaction remembers of what it wrote is what the next one reads (`storage.memo`; ours)."""

from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta

import pytest

from scheduler.domain.days import BoutState
from scheduler.domain.flags import Flag
from scheduler.ports import Tx, WeekPlan
from storage.engine import Database
from storage.store import SqlStore
from tests.conftest import on_postgresql
from tests.storage.clinic import (
    HOUR,
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

TOMORROW = TODAY + timedelta(days=1)


def all_of(tx: Tx, who: int) -> list[object]:
    """Everything that is remembered of what was read about a client."""
    return [
        tx.people.client(who),
        tx.people.get(who),
        tx.days.get(who, TODAY),
        tx.days.bouts(who, TODAY),
        tx.days.bouts(who, TOMORROW),
        tx.days.open_bouts(who),
        tx.days.last_prompt_at(who, TODAY),
        tx.weeks.get(who, TODAY),
        tx.flags.of_client(who),
    ]


def morning(tx: Tx, who: int) -> None:
    """A client's instants and days, of which most events change one or none."""
    record = replace(tx.people.client(who), wake_at=NOW + MINUTE, resumes_on=TOMORROW)
    tx.people.save_client(record)
    tx.people.save_client(replace(tx.people.client(who), heard_at=NOW, judged_to=TODAY))
    tx.people.save_client(tx.people.client(who))


def mended(tx: Tx, who: int) -> None:
    """Half a character and a NUL, which no database keeps; and a clinician, who is not kept here."""
    record = tx.people.client(who)
    odd = replace(record, phone="555 \0\ud83d", days=(0, 3), clinician=record.clinician + 1000)
    tx.people.save_client(odd)
    tx.people.save_client(replace(odd, wake_at=NOW))


def moved_to_a_colleague(tx: Tx, who: int) -> None:
    person = tx.people.get(who)
    assert person is not None
    colleague = clinician(tx, account=7002, name="Dr. Sample").id
    tx.people.save(replace(person, clinician=colleague, name="Demo \0Client"))
    assert tx.people.client(who).clinician == colleague


def day_and_bouts(tx: Tx, who: int) -> None:
    kept = day_of(tx, who)
    later = bout_of(tx, who, n=2, due_at=NOW + 2 * HOUR)
    first = bout_of(tx, who, n=1)
    next_day = bout_of(tx, who, n=1, day=TOMORROW, due_at=NOW + 24 * HOUR)
    assert tx.days.bouts(who, TODAY) == (first, later)
    assert tx.days.open_bouts(who) == (first, later, next_day)
    asked = replace(first, state=BoutState.ASKED, asked_at=NOW, message_id=5)
    tx.days.save_bout(asked)
    tx.days.save_bout(replace(later, state=BoutState.WITHDRAWN, asked_at=NOW + HOUR))
    assert tx.days.open_bouts(who) == (asked, next_day)
    tx.days.save_bout(replace(asked, state=BoutState.DONE))
    tx.days.save(replace(kept, nudges=1))
    tx.days.save(replace(kept, nudges=1, closed_at=NOW, verdict="full", why="done"))


def week(tx: Tx, who: int) -> None:
    plan = WeekPlan(who, TODAY, TODAY, (TODAY,))
    tx.weeks.save(plan)
    tx.weeks.save(replace(plan, days=(), made_up=((TODAY, TOMORROW), (TOMORROW, None))))


def flags(tx: Tx, who: int) -> None:
    hers = tx.people.client(who).clinician
    flag = Flag(who, hers, "silent", urgent=False, episode="silence:1", opened_at=NOW, details={})
    one = tx.flags.open(replace(flag, due_at=NOW))
    two = tx.flags.open(replace(flag, episode="silence:2"))
    three = tx.flags.open(replace(flag, episode="silence:3"))
    assert one
    assert two
    assert three
    assert len(tx.flags.of_client(who)) == 3
    tx.flags.postpone(one.id, NOW + HOUR, 1)
    assert tx.flags.of_client(who)[0].step == 1
    assert tx.flags.close(two.id, "seen", hers, "", NOW)
    assert not tx.flags.close(two.id, "seen", hers, "", NOW)
    assert len(tx.flags.of_client(who)) == 2
    assert tx.flags.close_episode(who, "silence:3", "over", hers, NOW) == three.id


@pytest.mark.parametrize(
    "write", [morning, mended, moved_to_a_colleague, day_and_bouts, week, flags]
)
def test_what_was_written_is_remembered_as_the_next_transaction_reads_it(
    store: SqlStore, write: Callable[[Tx, int], None]
) -> None:
    who = one_client(store)

    def change(tx: Tx) -> tuple[list[object], list[object]]:
        before = all_of(tx, who)
        write(tx, who)
        return before, all_of(tx, who)

    before, remembered = store.run_sync(change)
    assert remembered != before
    assert remembered == store.run_sync(lambda tx: all_of(tx, who))


def test_a_record_that_was_never_read_is_written_in_full(store: SqlStore) -> None:
    who = one_client(store)
    record = store.run_sync(lambda tx: tx.people.client(who))
    changed = replace(record, phone="555 0100", wake_at=NOW)
    store.run_sync(lambda tx: tx.people.save_client(changed))
    assert store.run_sync(lambda tx: tx.people.client(who)) == changed


@on_postgresql
async def test_who_waited_for_a_client_writes_over_what_the_other_left(
    store: SqlStore, database: Database
) -> None:
    who = one_client(store)

    def heard(tx: Tx) -> None:
        tx.people.save_client(replace(tx.people.lock(who), heard_at=NOW))

    def set_back(tx: Tx) -> None:
        known = tx.people.client(who)  # read before the lock: nothing heard yet
        tx.people.lock(who)
        tx.people.save_client(known)

    await while_open(store, database, heard, set_back)
    assert store.run_sync(lambda tx: tx.people.client(who).heard_at) is None


def test_a_client_that_is_not_there_is_not_saved(store: SqlStore) -> None:
    record = store.run_sync(lambda tx: tx.people.client(client(tx, clinician(tx).id).id))
    with pytest.raises(LookupError):
        store.run_sync(lambda tx: tx.people.save_client(replace(record, id=record.id + 1)))
