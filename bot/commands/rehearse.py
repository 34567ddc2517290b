"""`boutwise rehearse`: the real bot against a stand-in chat server, with invented people."""

from __future__ import annotations

import argparse
import asyncio
import signal
import sys
import tempfile
from datetime import timedelta
from functools import partial
from pathlib import Path
from typing import Any

from bot import reports, settings
from bot.commands.digest import write
from bot.rehearsal import story
from bot.rehearsal.stage import stage
from bot.rehearsal.transcript import report
from bot.wiring import set_up_logging
from scheduler.ports import Tx
from scheduler.usecases import digests, records

PORT = 8085
OUT = Path("rehearsal")
"""Where `--once` leaves the week's files, in the folder it is called in."""


def add(subparsers: Any) -> None:
    """Add the command's parser."""
    parser = subparsers.add_parser("rehearse", help="the real bot with invented people")
    parser.add_argument("--port", type=int, default=PORT, help=f"of the page, {PORT} by default")
    parser.add_argument("--once", action="store_true", help="play the opening week, print it, end")
    parser.add_argument("--keep", metavar="DIR", help="leave the database there as rehearsal.db")


def run(args: argparse.Namespace) -> int:
    """Serve the page until stopped, or play once."""
    set_up_logging()
    if not 0 <= args.port <= 65535:  # noqa: PLR2004 # the largest port
        raise settings.BadSettingError("--port must be from 0 to 65535")
    with tempfile.TemporaryDirectory() as scratch:
        folder = Path(args.keep or scratch)
        try:
            folder.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise settings.BadSettingError(f"--keep {folder}: {error.strerror}") from error
        database = folder / "rehearsal.db"
        if database.exists():
            raise settings.BadSettingError(f"{database} is there already; name another --keep DIR")
        url = f"sqlite:///{database.resolve()}"
        try:
            return asyncio.run(_once(url) if args.once else _serve(url, args.port))
        except OSError as error:
            print(
                f"boutwise rehearse: the port cannot be served ({error.strerror})", file=sys.stderr
            )
            return 1


async def _once(url: str) -> int:
    async with stage(url, story.START) as theatre:
        who = await story.set_up(theatre)
        await story.play(theatre, who)
        for line in report(theatre.world, who):
            print(line)
        digest, language, record = await theatre.house.store.run(partial(_files, theatre.ids))
    written = [*write(digest, language, OUT), OUT / "bo.pdf"]
    written[-1].write_bytes(reports.client_pdf(record, language))
    print("\nWritten, with invented data:", *written, sep="\n  ")
    return 0


def _files(ids: dict[str, int], tx: Tx) -> tuple[dict[str, Any], str, dict[str, Any]]:
    """Dana's digest as it was sent, her language, and Bo's record of that week."""
    dana, bo = tx.people.get(ids["Dana"]), tx.people.get(ids["Bo"])
    assert dana is not None  # noqa: S101 # the story has enrolled them
    assert bo is not None  # noqa: S101
    first, end = story.START, story.at(9, day=15)
    digest = digests.of_week(tx, dana, first.date(), end)
    last = (end - timedelta(days=1)).date()
    return digest, dana.language, records.record(tx, bo, first.date(), last, end)


async def _serve(url: str, port: int) -> int:
    stop = asyncio.Event()
    for each in (signal.SIGTERM, signal.SIGINT):
        asyncio.get_running_loop().add_signal_handler(each, stop.set)
    given = settings.read(KEY="none")
    ops = f"{given.ops[0]}:{given.ops[1]}" if given.ops else ""
    start = given.clock_start or story.START
    async with stage(url, start, port=port, ops=ops) as theatre:
        await story.set_up(theatre)
        print(f"The rehearsal page: {theatre.address}/", flush=True)
        print("Everybody on it is invented. Stop with Ctrl-C.", flush=True)
        await stop.wait()
    return 0
