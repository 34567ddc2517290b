"""`boutwise restore`: put a backup into an empty place."""

from __future__ import annotations

import argparse
from dataclasses import replace
from pathlib import Path
from typing import Any

from bot import settings
from bot.commands.backup import embedded
from bot.settings import BadSettingError, Settings
from bot.wiring import command_clock, store_for_command
from scheduler.clock import SystemClock
from scheduler.usecases import receipts
from storage import backup
from storage.backup import Head


def add(subparsers: Any) -> None:
    """Add the command's parser."""
    parser = subparsers.add_parser("restore", help="put a backup into an empty place")
    parser.add_argument("file", type=Path, metavar="FILE", help="what `backup` wrote")
    parser.add_argument(
        "--expired", action="store_true", help="also one that may hold what was erased long since"
    )


def run(args: argparse.Namespace) -> int:
    """The database of the backup, at the current schema; staff are told when the bot runs next."""
    given = settings.read()
    path = embedded(given)
    if not args.file.is_file():
        raise BadSettingError(f"there is no file {args.file}.")
    head = backup.read_head(args.file)
    if head.expires_at <= SystemClock().now() and not args.expired:
        raise BadSettingError(
            f"{args.file} expired on {head.expires_at.date()}: what was erased since may be in it."
            " --expired restores it all the same."
        )
    try:
        backup.restore(args.file, path, lambda copy: _prepare(given, copy, head))
    except FileExistsError as error:
        there = (
            error.filename2 or error.filename
        )  # a name given to a file made before is its second
        raise BadSettingError(f"{there} is there already: a backup goes where none is.") from None
    made_at = head.made_at.isoformat(timespec="seconds")
    print(
        f"{path} is as it was at {made_at}. Stop every bot of this practice before `boutwise run`."
    )
    print("Erase again who was erased since. Clinicians and admins are told what is lost.")
    return 0


def _prepare(given: Settings, copy: Path, head: Head) -> None:
    """Opens it with our key, brings it to the current schema, and leaves word in it for the staff."""
    there = replace(given, database=given.database.set(database=str(copy)))
    with store_for_command(there) as store:
        now = command_clock(store).now()
        store.run_sync(lambda tx: receipts.restored(tx, head.made_at, max(now, head.made_at)))
