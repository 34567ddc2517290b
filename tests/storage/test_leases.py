"""What only one process may do at a time, on both engines. All ours."""

from scheduler.ports import Tx
from storage.engine import Database
from storage.store import SqlStore
from tests.conftest import on_postgresql
from tests.storage.clinic import JUST_PAST, NOW, SECOND, while_open

LENGTH = 12 * SECOND


def take(store: SqlStore, holder: str, now: object = NOW, name: str = "listener") -> bool:
    return store.run_sync(lambda tx: tx.leases.take(name, holder, now, LENGTH))  # type: ignore[arg-type]


def test_a_lease_is_one_holders_until_it_has_run_out(store: SqlStore) -> None:
    assert take(store, "one")
    assert not take(store, "two", NOW + LENGTH)
    assert take(store, "two", NOW + LENGTH + JUST_PAST)
    assert not take(store, "one", NOW + LENGTH + JUST_PAST)


def test_its_holder_renews_it_and_another_waits_from_then(store: SqlStore) -> None:
    assert take(store, "one")
    assert take(store, "one", NOW + 3 * SECOND)
    assert not take(store, "two", NOW + LENGTH + JUST_PAST)
    assert take(store, "two", NOW + LENGTH + 3 * SECOND + JUST_PAST)


def test_given_back_it_is_free_at_once_and_only_its_holder_can_do_that(store: SqlStore) -> None:
    assert take(store, "one")
    store.run_sync(lambda tx: tx.leases.give_back("listener", "two"))
    assert not take(store, "two")
    store.run_sync(lambda tx: tx.leases.give_back("listener", "one"))
    assert take(store, "two")


def test_leases_of_other_names_are_independent(store: SqlStore) -> None:
    assert take(store, "one")
    assert take(store, "two", name="something else")


@on_postgresql
async def test_of_two_who_take_it_at_once_one_gets_it(store: SqlStore, database: Database) -> None:
    def as_holder(holder: str):  # type: ignore[no-untyped-def]
        def work(tx: Tx) -> bool:
            return tx.leases.take("listener", holder, NOW, LENGTH)

        return work

    first, second = await while_open(store, database, as_holder("one"), as_holder("two"))
    assert (first, second) == (True, False)
