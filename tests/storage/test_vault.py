"""Unlocking, and what a rotation of keys leaves as it was. All ours."""

import shutil
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest
from sqlalchemy import URL, Text, func, select, type_coerce

from storage.engine import Database, database_url
from storage.keys import Keyring, WrongKeyError
from storage.tables import Secret, table
from storage.vault import unlock

OLD, NEW = "O" * 42 + "A", "N" * 42 + "A"
secret = table(Secret)


def lookup_with(url: URL, keys: str) -> str:
    """What a program started with these keys would look for, to find the person 4711."""
    database = Database(url, Keyring.parse(keys))
    try:
        unlock(database)
        return database.keyring.lookup("4711")
    finally:
        database.close_sync()


def at_rest(url: URL) -> str:
    database = Database(url, Keyring.parse("none"))
    query = select(type_coerce(secret.c.value, Text))
    text: str = database.run_sync(lambda connection: connection.execute(query).scalar_one())
    database.close_sync()
    return text


def test_people_are_found_after_every_rotation(database_at: URL) -> None:
    history = ["none", OLD, f"{NEW},{OLD}", NEW]
    assert len({lookup_with(database_at, keys) for keys in history}) == 1


def test_a_program_not_yet_restarted_with_the_new_key_goes_on_finding(database_at: URL) -> None:
    before = Database(database_at, Keyring.parse(OLD))
    unlock(before)
    assert lookup_with(database_at, f"{NEW},{OLD}") == before.keyring.lookup("4711")
    before.close_sync()


def test_the_secret_moves_under_the_newest_key(database_at: URL) -> None:
    lookup_with(database_at, "none")
    assert at_rest(database_at).startswith("plain:")
    lookup_with(database_at, OLD)
    assert Keyring.parse(OLD).is_current(at_rest(database_at))
    lookup_with(database_at, f"{NEW},{OLD}")
    assert Keyring.parse(NEW).is_current(at_rest(database_at))


@pytest.mark.parametrize("keys", ["none", NEW])
def test_a_database_of_other_keys_is_refused_at_start_and_left_as_it_was(
    database_at: URL, keys: str
) -> None:
    lookup_with(database_at, OLD)
    before = at_rest(database_at)
    with pytest.raises(WrongKeyError):
        lookup_with(database_at, keys)
    assert at_rest(database_at) == before


def test_two_databases_have_two_secrets(
    database: Database, sqlite_template: Path, tmp_path: Path
) -> None:
    shutil.copyfile(sqlite_template, tmp_path / "other.db")
    other = database_url(f"sqlite:///{tmp_path / 'other.db'}")
    assert database.keyring.lookup("4711") != lookup_with(other, OLD)


def test_two_programs_that_start_at_once_agree(database_at: URL) -> None:
    with ThreadPoolExecutor(4) as threads:
        found = set(threads.map(lambda _: lookup_with(database_at, OLD), range(8)))
    assert len(found) == 1
    database = Database(database_at, Keyring.parse(OLD))
    count = select(func.count()).select_from(secret)
    assert database.run_sync(lambda connection: connection.execute(count).scalar_one()) == 1
    database.close_sync()
