"""`boutwise migrate`: bring the database to the current schema."""

from __future__ import annotations

import argparse
from typing import Any

from bot import settings
from storage import migrate
from storage.engine import Database


def add(subparsers: Any) -> None:
    """Add the command's parser."""
    parser = subparsers.add_parser("migrate", help="bring the database to the current schema")
    parser.add_argument("--check", action="store_true", help="only say whether anything is missing")


def run(args: argparse.Namespace) -> int:
    """Exit 0 when the schema is current, 1 when `--check` finds that it is not."""
    given = settings.read()
    database = Database(given.database, given.keyring())
    try:
        missing = not database.is_there() or migrate.needed(database)  # looking makes no file
        if args.check:
            print(
                "The schema is behind; run `boutwise migrate`."
                if missing
                else "The schema is current."
            )
            return 1 if missing else 0
        migrate.upgrade(database)
        print("The schema is current now." if missing else "The schema was current.")
    finally:
        database.close_sync()
    return 0
