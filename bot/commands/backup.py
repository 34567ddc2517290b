"""`boutwise backup`: a copy of the embedded database in one file, while the bot runs."""

from __future__ import annotations

import argparse
from datetime import timedelta
from pathlib import Path
from typing import Any

from bot import settings
from bot.settings import BadSettingError, Settings
from bot.wiring import command_clock
from storage import backup, migrate
from storage.engine import Database
from storage.store import SqlStore


def add(subparsers: Any) -> None:
    """Add the command's parser."""
    parser = subparsers.add_parser(
        "backup", help="a copy of the embedded database in one file, while the bot runs"
    )
    parser.add_argument("file", type=Path, metavar="FILE", help="where it goes; no file is there")


def run(args: argparse.Namespace) -> int:
    """Write the file, readable for its owner only, and say until when it may be put back.

    The database is copied as it is: before `migrate` too.
    """
    given = settings.read()
    path = embedded(given)
    if not path.exists():
        raise BadSettingError(f"there is no database at {path}: see BOUTWISE_DATABASE_URL.")
    head = _head(given)
    try:
        backup.write(path, args.file, head)
    except FileExistsError:
        raise BadSettingError(f"{args.file} is there already: name a new file.") from None
    print(args.file)
    print(f"It expires on {head.expires_at.date()}: delete it then.")
    return 0


def embedded(given: Settings) -> Path:
    """Where the embedded database is. BadSettingError for a server's, which has tools of its own."""
    if given.database.get_backend_name() != "sqlite":
        raise BadSettingError(
            "this is for the embedded database; a PostgreSQL server is backed up with pg_dump."
        )
    return Path(given.database.database or "")


def _head(given: Settings) -> backup.Head:
    database = Database(given.database, given.keyring())
    try:
        schema = migrate.current(database)
        if schema is None:
            raise BadSettingError("the database is empty: run `boutwise migrate` first.")
        store = SqlStore(database)
        now = command_clock(store).now()
        kept = store.run_sync(lambda tx: tx.book.practice()).backup_days
    finally:
        database.close_sync()
    return backup.Head(now, now + timedelta(days=kept), schema)
