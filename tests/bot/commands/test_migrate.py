"""`boutwise migrate`: on an empty, an older, a current and a newer database. All ours."""

from collections.abc import Callable
from pathlib import Path

import pytest
from alembic import command
from sqlalchemy import URL

from storage import migrate
from storage.engine import Database
from storage.keys import Keyring
from tests.bot.commands.conftest import Boutwise, plain

FIRST = "0001"


def change(url: URL, work: Callable[[Database], object]) -> None:
    database = Database(url, Keyring.parse("none"))
    work(database)
    database.close_sync()


def first_revision_only(database: Database) -> None:
    with migrate._locked(database) as connection:
        command.upgrade(migrate._config(connection), FIRST)


def at(url: URL) -> str | None:
    found: list[str | None] = []
    change(url, lambda database: found.append(migrate.current(database)))
    return found[0]


def test_an_empty_database_is_behind_until_it_is_migrated(
    boutwise: Boutwise, empty_at: URL
) -> None:
    url = plain(empty_at)
    for _ in range(2):  # looking changes nothing
        told = boutwise("migrate", "--check", DATABASE_URL=url)
        assert (told.code, told.err) == (1, "")
        assert told.out == "The schema is behind; run `boutwise migrate`.\n"
    assert at(empty_at) is None
    told = boutwise("migrate", DATABASE_URL=url)
    assert (told.code, told.out, told.err) == (0, "The schema is current now.\n", "")
    told = boutwise("migrate", "--check", DATABASE_URL=url)
    assert (told.code, told.out, told.err) == (0, "The schema is current.\n", "")


def test_an_older_database_is_behind_and_keeps_what_is_in_it(
    boutwise: Boutwise, empty_at: URL
) -> None:
    url = plain(empty_at)
    change(empty_at, first_revision_only)
    assert boutwise("migrate", "--check", DATABASE_URL=url).code == 1
    assert at(empty_at) == FIRST
    assert boutwise("migrate", DATABASE_URL=url).out == "The schema is current now.\n"
    assert boutwise("migrate", "--check", DATABASE_URL=url).code == 0


def test_a_current_database_is_left_as_it_is(boutwise: Boutwise, database_at: URL) -> None:
    url = plain(database_at)
    before = at(database_at)
    told = boutwise("migrate", DATABASE_URL=url)
    assert (told.code, told.out) == (0, "The schema was current.\n")
    assert at(database_at) == before


def test_a_database_of_a_newer_program_is_not_taken_back(
    boutwise: Boutwise, database_at: URL
) -> None:
    def newer(database: Database) -> None:
        database.run_sync(
            lambda it: it.exec_driver_sql("UPDATE alembic_version SET version_num = '9999'")
        )

    change(database_at, newer)
    assert boutwise("migrate", "--check", DATABASE_URL=plain(database_at)).code == 0
    assert boutwise("migrate", DATABASE_URL=plain(database_at)).code == 0
    assert at(database_at) == "9999"


def test_a_migration_that_would_break_references_is_told_in_one_line(
    boutwise: Boutwise, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    def broken(_: Database) -> None:
        raise migrate.BrokenReferencesError(["entry"])

    monkeypatch.setattr("storage.migrate.upgrade", broken)
    told = boutwise("migrate")
    assert (told.code, told.out) == (1, "")
    assert told.faults == [
        "boutwise migrate: The migration would leave broken references in entry."
    ]


def test_looking_makes_no_file(boutwise: Boutwise, tmp_path: Path) -> None:
    path = tmp_path / "none.db"
    url = f"sqlite:///{path}"
    assert boutwise("migrate", "--check", DATABASE_URL=url).code == 1
    assert "the schema is behind" in boutwise("doctor", DATABASE_URL=url).out
    assert not path.exists()
