"""`boutwise backup` and `restore`: who runs them, and what they are told. All ours."""

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import timedelta
from pathlib import Path
from resource import RLIMIT_FSIZE, getrlimit, setrlimit
from typing import Any

import pytest
from sqlalchemy import URL

from scheduler.clock import SystemClock
from storage import backup
from storage.engine import Database
from storage.keys import Keyring, new_key
from storage.store import SqlStore
from storage.vault import unlock
from tests.bot.commands.conftest import Boutwise, plain
from tests.conftest import POSTGRESQL, on_sqlite
from tests.storage.clinic import LEASE, client, clinician

KEY = new_key()


@pytest.fixture(name="practice")
def practice_fixture(database_at: URL) -> URL:
    """A sealed database with a clinician and a client; backups of it expire after 2 days."""

    def furnish(tx: Any) -> None:
        client(tx, clinician(tx).id)
        tx.book.put("backup_days", "2")

    database = Database(database_at, Keyring.parse(KEY))
    unlock(database)
    SqlStore(database).run_sync(furnish)
    database.close_sync()
    return database_at


@on_sqlite
def test_a_backup_comes_back_and_staff_are_told_what_is_lost(
    boutwise: Boutwise, practice: URL, tmp_path: Path
) -> None:
    file, back = tmp_path / "kept.backup", tmp_path / "back.db"
    told = boutwise("backup", str(file), KEY=KEY, DATABASE_URL=plain(practice))
    until = SystemClock().now() + timedelta(days=2)
    assert (told.code, told.err) == (0, "")
    assert told.out.splitlines() == [str(file), f"It expires on {until.date()}: delete it then."]
    told = boutwise("restore", str(file), KEY=KEY, DATABASE_URL=f"sqlite:///{back}")
    assert (told.code, told.err) == (0, "")
    assert told.out.startswith(f"{back} is as it was at 20")
    database = Database(practice.set(database=str(back)), Keyring.parse(KEY))
    unlock(database)
    store, now = SqlStore(database), SystemClock().now()
    claims = store.run_sync(lambda tx: tx.outbox.claim_due(now, "test", LEASE, 9))
    database.close_sync()
    assert [[text.id for text in each.letter.message] for each in claims] == [["records-restored"]]
    # The same place again: what is there is not touched.
    told = boutwise("restore", str(file), KEY=KEY, DATABASE_URL=f"sqlite:///{back}")
    assert (told.code, told.faults) == (
        2,
        [f"boutwise restore: {back} is there already: a backup goes where none is."],
    )
    back.rename(tmp_path / "away.db")
    side = tmp_path / "back.db-wal"
    side.touch()
    told = boutwise("restore", str(file), KEY=KEY, DATABASE_URL=f"sqlite:///{back}")
    assert told.code == 2
    assert told.err.startswith(f"boutwise restore: {side} is there already")


@on_sqlite
def test_with_another_key_nothing_is_restored(
    boutwise: Boutwise, practice: URL, tmp_path: Path
) -> None:
    file, back = tmp_path / "kept.backup", tmp_path / "back.db"
    boutwise("backup", str(file), KEY=KEY, DATABASE_URL=plain(practice))
    told = boutwise("restore", str(file), KEY=new_key(), DATABASE_URL=f"sqlite:///{back}")
    assert told.code == 2
    assert told.faults[0].startswith("boutwise restore: BOUTWISE_KEY cannot be used")
    assert [each.name for each in tmp_path.iterdir() if "back.db" in each.name] == []


@on_sqlite
@pytest.mark.parametrize(("seconds", "code"), [(-1, 2), (0, 2), (60, 0)])
def test_an_expired_backup_is_restored_only_when_that_is_asked_for(
    boutwise: Boutwise, practice: URL, tmp_path: Path, seconds: int, code: int
) -> None:
    file, back = tmp_path / "old.backup", tmp_path / "back.db"
    now = SystemClock().now()
    head = backup.Head(now - timedelta(days=9), now + timedelta(seconds=seconds), "0008")
    backup.write(Path(practice.database or ""), file, head)
    told = boutwise("restore", str(file), KEY=KEY, DATABASE_URL=f"sqlite:///{back}")
    assert told.code == code
    assert back.exists() == (code == 0)
    if code:
        assert f"expired on {head.expires_at.date()}" in told.err
        asked = ("restore", str(file), "--expired")
        assert boutwise(*asked, KEY=KEY, DATABASE_URL=f"sqlite:///{back}").code == 0


@on_sqlite
def test_bad_input_is_told_in_one_line(boutwise: Boutwise, practice: URL, tmp_path: Path) -> None:
    there, other = tmp_path / "there", tmp_path / "other.db"
    there.write_bytes(b"not a backup")
    cases = [
        (("backup", str(there)), plain(practice), "is there already: name a new file."),
        (("backup", str(tmp_path / "a")), f"sqlite:///{other}", "there is no database at"),
        (("restore", str(tmp_path / "none")), f"sqlite:///{other}", "there is no file"),
        (("restore", str(there)), f"sqlite:///{other}", "This is no backup of Boutwise"),
    ]
    for words, url, said in cases:
        told = boutwise(*words, KEY=KEY, DATABASE_URL=url)
        assert (told.code, len(told.faults)) == (2, 1)
        assert said in told.err
    assert there.read_bytes() == b"not a backup"
    assert not other.exists()


@contextmanager
def full(after: int) -> Iterator[None]:
    """No file may grow beyond so many bytes, as on a disk that is full."""
    soft, hard = getrlimit(RLIMIT_FSIZE)
    setrlimit(RLIMIT_FSIZE, (after, hard))
    try:
        yield
    finally:
        setrlimit(RLIMIT_FSIZE, (soft, hard))


@on_sqlite
def test_a_full_disk_is_told_in_one_line_and_nothing_is_left(
    boutwise: Boutwise, practice: URL, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    file = tmp_path / "kept.backup"
    boutwise("backup", str(file), KEY=KEY, DATABASE_URL=plain(practice))
    before = set(tmp_path.iterdir())
    head = backup.read_head(file)
    monkeypatch.setattr(
        "bot.commands.backup._head", lambda _: head
    )  # it writes beside the database
    with full(after=50_000):
        for words, url in (("backup", plain(practice)), ("restore", f"sqlite:///{tmp_path}/b.db")):
            name = str(tmp_path / "other.backup" if words == "backup" else file)
            told = boutwise(words, name, KEY=KEY, DATABASE_URL=url)
            assert (told.code, len(told.faults)) == (1, 1)
            assert told.err.startswith(f"boutwise {words}: ")
    assert set(tmp_path.iterdir()) == before


@on_sqlite
def test_a_folder_that_is_not_there_is_named_as_it_was_given(
    boutwise: Boutwise, practice: URL, tmp_path: Path
) -> None:
    told = boutwise("backup", "none/kept.backup", KEY=KEY, DATABASE_URL=plain(practice))
    assert (told.code, told.faults) == (1, ["boutwise backup: none: No such file or directory."])
    boutwise("backup", "kept.backup", KEY=KEY, DATABASE_URL=plain(practice))
    told = boutwise("restore", "kept.backup", KEY=KEY, DATABASE_URL="sqlite:///none/b.db")
    assert (told.code, told.faults) == (1, ["boutwise restore: none: No such file or directory."])


@on_sqlite
def test_a_database_that_cannot_be_read_is_not_copied(
    boutwise: Boutwise, practice: URL, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = Path(practice.database or "")
    head = backup.Head(SystemClock().now(), SystemClock().now(), "0008")
    monkeypatch.setattr("bot.commands.backup._head", lambda _: head)  # only later is it met
    whole = path.read_bytes()
    path.write_bytes(whole[:4096] + b"\xff" * 8192 + whole[12288:])
    told = boutwise("backup", str(tmp_path / "a"), KEY=KEY, DATABASE_URL=plain(practice))
    assert told.code == 1
    assert told.err.startswith("boutwise backup: the database cannot be copied: ")
    assert not (tmp_path / "a").exists()


@pytest.mark.parametrize("database_at", [POSTGRESQL], indirect=True)
@pytest.mark.parametrize("command", ["backup", "restore"])
def test_a_server_is_left_to_its_own_tools(
    boutwise: Boutwise, database_at: URL, tmp_path: Path, command: str
) -> None:
    told = boutwise(command, str(tmp_path / "x"), DATABASE_URL=plain(database_at))
    assert told.code == 2
    assert "pg_dump" in told.err
