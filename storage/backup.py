"""A backup of the embedded database: one file, made while the bot runs, and put back into an empty place.

The file is a line of JSON, the head, and the database, compressed. The head says when the copy was made,
until when it may be put back, the schema it is at, and the SHA-256 of the rest. Nothing of a file is used
before all of it was read and found to be what was written. What rests encrypted stays so; the key is in it
nowhere.
"""

from __future__ import annotations

import errno
import hashlib
import json
import os
import sqlite3
import zlib
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any, BinaryIO

FORMAT, VERSION = "boutwise-backup", 1
AT_ONCE = 1 << 20
LONGEST_HEAD = 4096
OWNER_ONLY = 0o600
HASH = "sha256"
SIDES = ("", "-wal", "-shm", "-journal")
"""The endings of a database's file and of those that SQLite keeps beside it."""


class BadBackupError(Exception):
    """A file that is no backup, or is damaged. The text is one clear sentence."""


class NotCopiedError(Exception):
    """A database that cannot be copied. The text is one clear sentence."""


@dataclass(frozen=True, slots=True)
class Head:
    """What a backup says of itself. Instants are aware and in UTC; `schema` is the database's revision."""

    made_at: datetime
    expires_at: datetime
    schema: str


def write(database: Path, out: Path, head: Head) -> None:
    """Copy a database, which may be in use, into a new file that only its owner can read.

    FileExistsError if there is one: a backup is never written over. NotCopiedError if SQLite cannot copy it,
    OSError with the folder where that is at fault. A copy that fails leaves no file.
    """
    with _beside(out, ".backup-") as folder:
        copy, whole = folder / "copy.db", folder / "whole"
        try:
            with closing(sqlite3.connect(database)) as connection:
                # One reading transaction: writers go on, and what was erased is not copied along.
                connection.execute("VACUUM INTO ?", [str(copy)])
        except sqlite3.Error as error:
            raise NotCopiedError(f"the database cannot be copied: {error}.") from error
        _pack(copy, whole, head)
        _verify(whole)
        _put(whole, out)
    _keep_entry(out.parent)


def read_head(file: Path) -> Head:
    """What a backup says of itself, once all of it was found to be what was written."""
    return _verify(file)


def restore(file: Path, database: Path, prepare: Callable[[Path], None]) -> Head:
    """Put the database of a backup where none is. FileExistsError names what is there.

    So it does where a side file of another database was left: SQLite would play that one's writes into this.

    BadBackupError if the file is damaged in any place, or its database is. `prepare` is given the database
    before it is in its place, and leaves it closed; if it raises, nothing was put there.
    """
    head = _verify(file)
    for side in SIDES:
        if (there := database.with_name(database.name + side)).exists():
            raise FileExistsError(errno.EEXIST, os.strerror(errno.EEXIST), str(there))
    with _beside(database, ".restore-") as folder:
        copy = folder / "copy.db"
        with _private(copy) as out:
            for part in _unpacked(file):
                out.write(part)
        _check_database(copy)
        prepare(copy)
        _put(copy, database)
    _keep_entry(database.parent)
    return head


# --- the file ------------------------------------------------------------------------------------


def _pack(copy: Path, whole: Path, head: Head) -> None:
    digest, packer = hashlib.new(HASH), zlib.compressobj()
    packed = whole.with_suffix(".packed")
    with copy.open("rb") as source, _private(packed) as out:
        for part in _parts(source):
            out.write(_counted(packer.compress(part), digest))
        out.write(_counted(packer.flush(), digest))
    with packed.open("rb") as source, _private(whole) as out:
        out.write(_first_line(head, digest.hexdigest()))
        for part in _parts(source):
            out.write(part)


def _counted(part: bytes, digest: Any) -> bytes:
    digest.update(part)
    return part


def _first_line(head: Head, digest: str) -> bytes:
    """The head, with a hash of its own."""
    said = {
        "format": FORMAT,
        "version": VERSION,
        "made_at": head.made_at.isoformat(),
        "expires_at": head.expires_at.isoformat(),
        "schema": head.schema,
        HASH: digest,
    }
    return json.dumps({**said, "head": _hash(said)}).encode() + b"\n"


def _hash(said: dict[str, Any]) -> str:
    return hashlib.new(HASH, json.dumps(said, sort_keys=True).encode()).hexdigest()


def _verify(file: Path) -> Head:
    """The head of a file that is whole. BadBackupError says what is wrong."""
    with file.open("rb") as source:
        said = _said(source.readline(LONGEST_HEAD))
        digest = hashlib.new(HASH)
        for part in _parts(source):
            digest.update(part)
    if digest.hexdigest() != said[HASH]:
        raise BadBackupError("The backup is damaged: its content is not what was written.")
    return Head(
        datetime.fromisoformat(said["made_at"]),
        datetime.fromisoformat(said["expires_at"]),
        str(said["schema"]),
    )


def _said(line: bytes) -> dict[str, Any]:
    try:
        said = json.loads(line)
    except ValueError:
        said = None
    if not isinstance(said, dict) or said.get("format") != FORMAT or not line.endswith(b"\n"):
        raise BadBackupError("This is no backup of Boutwise, or its first line is damaged.")
    if said.pop("head", None) != _hash(said):
        raise BadBackupError("The backup is damaged: its first line is not what was written.")
    if said["version"] != VERSION:
        raise BadBackupError(
            "The backup was written by a newer version: use that one to restore it."
        )
    return said


def _unpacked(file: Path) -> Iterator[bytes]:
    unpacker = zlib.decompressobj()
    with file.open("rb") as source:
        source.readline(LONGEST_HEAD)
        for part in _parts(source):
            yield unpacker.decompress(part)
        yield unpacker.flush()


def _parts(source: BinaryIO) -> Iterator[bytes]:
    while part := source.read(AT_ONCE):
        yield part


@contextmanager
def _beside(place: Path, prefix: str) -> Iterator[Path]:
    """A folder to work in, on the disk of `place`. What the disk refuses is told of the folder of `place`."""
    try:
        with TemporaryDirectory(dir=place.parent, prefix=prefix) as name:
            yield Path(name)
    except FileExistsError:
        raise
    except OSError as error:
        raise OSError(error.errno, error.strerror, str(place.parent)) from error


def _put(made: Path, place: Path) -> None:
    """Give a finished file of the same folder's disk its place. FileExistsError if something is there."""
    try:
        os.link(made, place)
    except FileExistsError:
        raise
    except (
        OSError
    ):  # no file has a second name there, as on a memory stick: the place is held empty first
        with _private(place):
            pass
        try:
            made.replace(place)
        except BaseException:
            place.unlink()
            raise


@contextmanager
def _private(path: Path) -> Iterator[BinaryIO]:
    """A new file for nobody but its owner, on the disk when this ends."""
    descriptor = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, OWNER_ONLY)
    with os.fdopen(descriptor, "wb") as file:
        yield file
        file.flush()
        os.fsync(file.fileno())


def _keep_entry(folder: Path) -> None:
    """The name of a new file is on the disk too."""
    descriptor = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(descriptor)
    finally:
        os.close(descriptor)


def _check_database(path: Path) -> None:
    with closing(sqlite3.connect(path)) as connection:
        try:
            sound = connection.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
            sound = sound and not connection.execute("PRAGMA foreign_key_check").fetchall()
        except sqlite3.DatabaseError:
            sound = False
    if not sound:
        raise BadBackupError("The database in the backup is damaged: it was so when it was copied.")
