"""Versions of plans and clearances, on both engines. All ours."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from scheduler.domain.people import Clearance
from scheduler.domain.plan import Level
from scheduler.ports import PlanVersion, Tx
from storage.engine import Database
from storage.store import SqlStore
from tests.storage.clinic import HOUR, NOW, PLAN, TODAY, one_client, planned, while_open

DAY = timedelta(days=1)


def in_force(store: SqlStore, who: int, day: date) -> int | None:
    version = store.run_sync(lambda tx: tx.plans.on(who, day))
    return version.version if version else None


def test_a_plan_comes_back_as_it_was_prescribed(store: SqlStore) -> None:
    who = one_client(store)
    kept = store.run_sync(lambda tx: planned(tx, who))
    hers = store.run_sync(lambda tx: tx.people.client(who).clinician)
    assert kept == PlanVersion(kept.id, who, 1, TODAY, PLAN, hers, NOW)
    assert store.run_sync(lambda tx: tx.plans.version(kept.id)) == kept
    assert store.run_sync(lambda tx: tx.plans.latest(who)) == kept
    with pytest.raises(LookupError):
        store.run_sync(lambda tx: tx.plans.version(kept.id + 1))


def test_a_version_is_in_force_from_its_day_on(store: SqlStore) -> None:
    who = one_client(store)
    store.run_sync(lambda tx: planned(tx, who))
    store.run_sync(lambda tx: planned(tx, who, replace(PLAN, daily_total=50), TODAY + 7 * DAY))
    days = (TODAY - DAY, TODAY, TODAY + 6 * DAY, TODAY + 7 * DAY)
    assert [in_force(store, who, day) for day in days] == [None, 1, 1, 2]
    latest = store.run_sync(lambda tx: tx.plans.latest(who))
    assert latest
    assert (latest.version, latest.plan.daily_total) == (2, 50)


def test_a_smaller_dose_prescribed_last_is_not_undone_by_an_older_version(store: SqlStore) -> None:
    who = one_client(store)
    store.run_sync(lambda tx: planned(tx, who, replace(PLAN, daily_total=60), TODAY + 7 * DAY))
    store.run_sync(lambda tx: planned(tx, who, replace(PLAN, daily_total=20), TODAY))
    assert [in_force(store, who, TODAY + n * DAY) for n in (0, 7, 8)] == [2, 2, 2]


def test_two_versions_of_one_day_are_the_later_one(store: SqlStore) -> None:
    who = one_client(store)
    store.run_sync(lambda tx: planned(tx, who))
    store.run_sync(lambda tx: planned(tx, who, replace(PLAN, daily_total=30)))
    assert in_force(store, who, TODAY) == 2


def test_versions_are_counted_for_each_client_alone(store: SqlStore) -> None:
    who = one_client(store)
    other = store.run_sync(
        lambda tx: (
            tx.people.add(replace(tx.people.everyone()[1], account=99), tx.people.client(who)).id
        )
    )
    versions = [store.run_sync(lambda tx: planned(tx, who)).version for _ in range(2)]
    assert [*versions, store.run_sync(lambda tx: planned(tx, other)).version] == [1, 2, 1]
    assert store.run_sync(lambda tx: tx.plans.latest(99)) is None


async def test_two_versions_kept_at_once_are_two(store: SqlStore, database: Database) -> None:
    who = one_client(store)

    def prescribe(tx: Tx) -> int:
        tx.people.lock(who)
        return planned(tx, who).version

    assert await while_open(store, database, prescribe, prescribe) == (1, 2)


def test_the_newest_clearance_counts_lapsed_or_not(store: SqlStore) -> None:
    who = one_client(store)
    hers = store.run_sync(lambda tx: tx.people.client(who).clinician)
    assert store.run_sync(lambda tx: tx.plans.clearance(who)) is None
    first = Clearance(who, Level.LOW, hers, NOW)
    store.run_sync(lambda tx: tx.plans.clear(first))
    assert store.run_sync(lambda tx: tx.plans.clearance(who)) == first
    store.run_sync(lambda tx: tx.plans.lapse(who, "readiness", NOW + HOUR))
    lapsed = replace(first, lapsed_at=NOW + HOUR, lapsed_because="readiness")
    assert store.run_sync(lambda tx: tx.plans.clearance(who)) == lapsed
    store.run_sync(lambda tx: tx.plans.lapse(who, "again", NOW + 2 * HOUR))
    assert store.run_sync(lambda tx: tx.plans.clearance(who)) == lapsed
    second = Clearance(who, Level.HIGH, hers, NOW)  # the same instant: the one kept last
    store.run_sync(lambda tx: tx.plans.clear(second))
    found = store.run_sync(lambda tx: tx.plans.clearance(who))
    assert found == second
    assert found
    assert found.ceiling is Level.HIGH
