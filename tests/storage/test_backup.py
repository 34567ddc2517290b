"""A backup holds what the database held, and is put back whole or not at all. All ours.

In the suite a few corruptions are tried; `BOUTWISE_CORRUPTIONS=1000` tries so many.
"""

import errno
import os
import sqlite3
import stat
from collections.abc import Iterator
from contextlib import closing
from datetime import timedelta
from pathlib import Path
from random import Random
from threading import Event, Thread
from typing import Any

import pytest
from sqlalchemy import URL, select

from storage import backup
from storage.backup import BadBackupError, Head
from storage.engine import Database
from storage.keys import Keyring, new_key
from storage.store import SqlStore
from storage.tables import metadata
from storage.vault import unlock
from tests.conftest import on_sqlite
from tests.reliability.sizes import asked_for
from tests.storage.clinic import NOW, client, clinician, day_of, letter

CORRUPTIONS = int(asked_for("BOUTWISE_CORRUPTIONS", "60"))
HEAD = Head(NOW, NOW + timedelta(days=30), "0008")
CANARY = "xanthochroid"
Rows = dict[str, list[Any]]


@pytest.fixture(name="path")
def path_fixture(database_at: URL, database: Database) -> Path:
    """The file of a database with a client in it, which stays open."""
    store = SqlStore(database)

    def furnish(tx: Any) -> None:
        ann = client(tx, clinician(tx).id, name=CANARY)
        day_of(tx, ann.id)
        tx.outbox.add(letter("hello", ann.id), NOW)

    store.run_sync(furnish)
    return Path(database_at.database or "")


@pytest.fixture(name="kept")
def kept_fixture(path: Path, tmp_path: Path) -> Path:
    """A backup of it."""
    file = tmp_path / "kept.backup"
    backup.write(path, file, HEAD)
    return file


def as_it_is(_: Path) -> None:
    """Nothing is done to a copy before it is in its place."""


def rows_of(path: Path) -> Rows:
    """Every row as it rests."""
    with closing(sqlite3.connect(path)) as connection:
        names = [table.name for table in metadata.sorted_tables]
        return {name: connection.execute(f'SELECT * FROM "{name}"').fetchall() for name in names}


def left(folder: Path) -> set[str]:
    return {each.name for each in folder.iterdir()}


@on_sqlite
def test_what_is_restored_is_what_was_there(path: Path, kept: Path, tmp_path: Path) -> None:
    back = tmp_path / "back.db"
    assert backup.restore(kept, back, as_it_is) == HEAD
    assert rows_of(back) == rows_of(path)
    assert any(rows_of(back).values())
    assert backup.read_head(kept) == HEAD
    assert left(tmp_path) >= {"kept.backup", "back.db"}
    assert not [name for name in left(tmp_path) if name.startswith((".backup", ".restore"))]


@on_sqlite
def test_its_owner_alone_can_read_it_and_nothing_is_written_over(
    path: Path, kept: Path, tmp_path: Path
) -> None:
    assert stat.S_IMODE(kept.stat().st_mode) == 0o600
    before = kept.read_bytes()
    with pytest.raises(FileExistsError):
        backup.write(path, kept, HEAD)
    assert kept.read_bytes() == before
    back = tmp_path / "back.db"
    backup.restore(kept, back, as_it_is)
    assert stat.S_IMODE(back.stat().st_mode) == 0o600
    before = back.read_bytes()
    with pytest.raises(FileExistsError):
        backup.restore(kept, back, as_it_is)
    assert back.read_bytes() == before


@on_sqlite
def test_a_copy_made_while_others_write_is_of_one_moment(path: Path, tmp_path: Path) -> None:
    with closing(sqlite3.connect(path)) as connection:
        connection.execute("CREATE TABLE pair (id INTEGER PRIMARY KEY, n INTEGER)")
        connection.executemany("INSERT INTO pair VALUES (?, 0)", [(1,), (100_000,)])
        connection.commit()
    written, stop = Event(), Event()

    def write() -> None:
        with closing(sqlite3.connect(path)) as mine:
            while not stop.is_set():
                mine.execute("UPDATE pair SET n = n + 1")  # both, in one transaction
                mine.execute("INSERT INTO pair (n) SELECT n FROM pair WHERE id = 1")
                mine.commit()
                written.set()

    writer = Thread(target=write)
    writer.start()
    try:
        assert written.wait(10)
        moments = []
        for number in range(5):
            file, back = tmp_path / f"{number}.backup", tmp_path / f"{number}.db"
            backup.write(path, file, HEAD)
            backup.restore(file, back, as_it_is)
            with closing(sqlite3.connect(back)) as connection:
                pair = connection.execute("SELECT n FROM pair WHERE id IN (1, 100000)").fetchall()
            assert pair[0] == pair[1]
            moments.append(pair[0][0])
    finally:
        stop.set()
        writer.join()
    assert moments == sorted(moments)
    assert moments[-1] > 0


@on_sqlite
def test_what_was_erased_before_is_not_in_it(
    database: Database, path: Path, tmp_path: Path
) -> None:
    store = SqlStore(database)
    (ann,) = store.run_sync(
        lambda tx: [p for p in tx.people.everyone() if p.role.value == "client"]
    )
    store.run_sync(lambda tx: tx.archive.erase(ann.id))
    file, back = tmp_path / "kept.backup", tmp_path / "back.db"
    backup.write(path, file, HEAD)
    backup.restore(file, back, as_it_is)
    assert CANARY.encode() not in back.read_bytes()
    assert rows_of(back)["client"] == []


def damaged(whole: bytes, random: Random) -> Iterator[bytes]:
    """Bits turned, bytes lost, put in, doubled, and ends cut off, wherever it falls."""
    for _ in range(CORRUPTIONS):
        at, much = random.randrange(len(whole)), random.randrange(1, 64)
        yield random.choice(
            [
                whole[:at] + bytes([whole[at] ^ (1 << random.randrange(8))]) + whole[at + 1 :],
                whole[:at] + random.randbytes(much) + whole[at + much :],
                whole[:at] + whole[at + much :],
                whole[:at] + random.randbytes(much) + whole[at:],
                whole[:at] + whole[at : at + much] + whole[at:],
                whole[:at],
                whole + random.randbytes(much),
            ]
        )


@on_sqlite
def test_a_damaged_file_is_refused_or_gives_what_was_there(kept: Path, tmp_path: Path) -> None:
    whole, random = kept.read_bytes(), Random(4)
    truth = tmp_path / "truth.db"
    backup.restore(kept, truth, as_it_is)
    refused, head = 0, whole.index(b"\n")
    # As many again in the first line, which is short and would else be met seldom.
    for number, content in enumerate(
        [*damaged(whole, random), *(each + whole[head:] for each in damaged(whole[:head], random))]
    ):
        file, back = tmp_path / "damaged.backup", tmp_path / f"{number}.db"
        file.write_bytes(content)
        try:
            found = backup.restore(file, back, as_it_is)
        except BadBackupError:
            assert not back.exists()
            refused += 1
        else:
            assert (found, rows_of(back)) == (HEAD, rows_of(truth))
            back.unlink()
    assert refused > CORRUPTIONS  # nearly all: a few change nothing


@on_sqlite
def test_a_database_that_was_damaged_when_it_was_copied_is_not_served(
    kept: Path, tmp_path: Path
) -> None:
    broken = tmp_path / "broken.db"
    backup.restore(kept, broken, as_it_is)
    with closing(sqlite3.connect(broken)) as connection:
        connection.execute("PRAGMA foreign_keys = OFF")
        connection.execute("UPDATE client SET id = 99")
        connection.commit()
    file, back = tmp_path / "broken.backup", tmp_path / "back.db"
    backup.write(broken, file, HEAD)
    with pytest.raises(BadBackupError, match="was so when it was copied"):
        backup.restore(file, back, as_it_is)
    assert not back.exists()


@pytest.mark.parametrize(
    "content", [b"", b"\n", b"{}\n", b"[1]\n", b"SQLite format 3\0", b"{" * 9000]
)
def test_what_is_no_backup_is_called_so(tmp_path: Path, content: bytes) -> None:
    file = tmp_path / "other"
    file.write_bytes(content)
    with pytest.raises(BadBackupError, match="no backup of Boutwise"):
        backup.read_head(file)


@on_sqlite
def test_if_preparing_fails_nothing_is_put_there(kept: Path, tmp_path: Path) -> None:
    def fail(copy: Path) -> None:
        assert copy.exists()
        raise RuntimeError("not this one")

    before = left(tmp_path)
    with pytest.raises(RuntimeError, match="not this one"):
        backup.restore(kept, tmp_path / "back.db", fail)
    assert left(tmp_path) == before


@on_sqlite
@pytest.mark.parametrize("side", ["-wal", "-shm", "-journal"])
def test_where_a_side_file_of_another_database_was_left_nothing_is_put(
    path: Path, kept: Path, tmp_path: Path, side: str
) -> None:
    """SQLite plays such a file into whatever lies beside it (sqlite.org/howtocorrupt.html, 1.4, memory)."""
    place = tmp_path / "back.db"
    beside = tmp_path / f"back.db{side}"
    with closing(sqlite3.connect(path)) as running:
        running.execute("INSERT INTO setting VALUES ('name', 'written after the backup')")
        running.commit()
        beside.write_bytes(Path(f"{path}-wal").read_bytes())
    before = left(tmp_path)
    with pytest.raises(FileExistsError) as told:
        backup.restore(kept, place, as_it_is)
    assert told.value.filename == str(beside)
    assert left(tmp_path) == before


@on_sqlite
def test_a_folder_that_knows_no_second_names_does_too(
    path: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A memory stick's file system has no links: link(2) says EPERM of it (its manual page)."""

    def refused(*_: object) -> None:
        raise PermissionError(errno.EPERM, os.strerror(errno.EPERM), "made", None, "place")

    monkeypatch.setattr("storage.backup.os.link", refused)
    file, back = tmp_path / "kept.backup", tmp_path / "back.db"
    backup.write(path, file, HEAD)
    backup.restore(file, back, as_it_is)
    assert rows_of(back) == rows_of(path)
    assert stat.S_IMODE(back.stat().st_mode) == stat.S_IMODE(file.stat().st_mode) == 0o600
    before = file.read_bytes()
    with pytest.raises(FileExistsError):
        backup.write(path, file, HEAD)
    assert file.read_bytes() == before

    def interrupted(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("storage.backup.Path.replace", interrupted)
    before_that = left(tmp_path)
    with pytest.raises(KeyboardInterrupt):
        backup.write(path, tmp_path / "other.backup", HEAD)
    assert left(tmp_path) == before_that


@on_sqlite
def test_a_sealed_database_stays_sealed(tmp_path: Path, database_at: URL) -> None:
    sealed = Database(database_at, Keyring.parse(new_key()))
    unlock(sealed)
    store = SqlStore(sealed)
    store.run_sync(lambda tx: client(tx, clinician(tx).id, name=CANARY))
    file, back = tmp_path / "kept.backup", tmp_path / "back.db"
    backup.write(Path(database_at.database or ""), file, HEAD)
    backup.restore(file, back, as_it_is)
    assert CANARY.encode() not in back.read_bytes()
    again = Database(database_at.set(database=str(back)), sealed.keyring)
    unlock(again)
    names = again.run_sync(
        lambda c: c.execute(select(metadata.tables["person"].c.name)).scalars().all()
    )
    assert CANARY in names
    again.close_sync()
    sealed.close_sync()
