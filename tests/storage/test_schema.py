"""The tables as the migrations make them. All ours; the engines' catalogues second-hand."""

from collections.abc import Iterator

import pytest
from sqlalchemy import URL, Connection, select

from storage.engine import Database
from storage.keys import Keyring
from storage.store import SqlStore
from storage.tables import metadata
from tests.storage.clinic import clinician

CATALOGUE = {
    "sqlite": "SELECT name, sql FROM sqlite_master WHERE type = 'index' AND sql IS NOT NULL",
    "postgresql": "SELECT indexname, indexdef FROM pg_indexes WHERE schemaname = 'public'",
}
CONSTRAINTS = (
    "SELECT conrelid::regclass::text || '.' || conname, pg_get_constraintdef(oid)"
    " FROM pg_constraint WHERE connamespace = 'public'::regnamespace"
)


@pytest.fixture
def declared(empty_at: URL) -> Iterator[Database]:
    """A database made from the tables of the code, without any migration."""
    database = Database(empty_at, Keyring.parse("none"))
    database.run_sync(metadata.create_all)
    yield database
    database.close_sync()


@pytest.fixture
def migrated(request: pytest.FixtureRequest, declared: Database) -> Iterator[Database]:
    """Beside it, one on the same engine that the migrations made."""
    if declared.dialect == "sqlite":
        url = declared.engine.url.set(database=str(request.getfixturevalue("sqlite_template")))
    else:
        url = request.getfixturevalue("server").create()
    database = Database(url, Keyring.parse("none"))
    yield database
    database.close_sync()


def definitions(database: Database) -> dict[str, str]:
    """Indexes with their conditions, which Alembic does not compare, and PostgreSQL's constraints."""

    def work(connection: Connection) -> dict[str, str]:
        found = connection.exec_driver_sql(CATALOGUE[database.dialect]).all()
        if database.dialect == "postgresql":
            found = [*found, *connection.exec_driver_sql(CONSTRAINTS)]
        return {name: text for name, text in found if "alembic" not in name}

    return database.run_sync(work)


def test_the_migrations_make_the_indexes_and_constraints_that_the_code_declares(
    declared: Database, migrated: Database
) -> None:
    expected = definitions(declared)
    assert any(" WHERE " in text for text in expected.values())
    assert definitions(migrated) == expected


def test_ids_of_erased_rows_are_not_given_out_again(store: SqlStore, database: Database) -> None:
    """Old buttons and the audit trail name people, plans, bouts and flags by their numbers."""
    number = store.run_sync(lambda tx: clinician(tx).id)
    database.run_sync(lambda it: it.exec_driver_sql("DELETE FROM person"))
    assert store.run_sync(lambda tx: clinician(tx).id) > number


@pytest.mark.parametrize("name", sorted(metadata.tables))
def test_every_table_can_be_read(database: Database, name: str) -> None:
    table = metadata.tables[name]
    database.run_sync(lambda it: it.execute(select(table).limit(1)).all())


async def test_what_a_use_case_has_written_is_undone_if_it_raises(store: SqlStore) -> None:
    class PainError(Exception):
        pass

    def work(tx: object) -> None:
        clinician(tx)  # type: ignore[arg-type]
        raise PainError

    with pytest.raises(PainError):
        await store.run(work)
    assert await store.run(lambda tx: tx.people.everyone()) == ()


async def test_what_a_use_case_returns_is_kept_and_handed_out(store: SqlStore) -> None:
    person = await store.run(clinician)
    assert await store.run(lambda tx: tx.people.everyone()) == (person,)
    assert store.run_sync(lambda tx: tx.people.everyone()) == (person,)
