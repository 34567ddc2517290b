"""`boutwise rehearse`: the real bot against a stand-in chat server, with invented people."""

from __future__ import annotations

import argparse
import asyncio
import signal
import sys
import tempfile
from pathlib import Path
from typing import Any

from bot import settings
from bot.rehearsal import story
from bot.rehearsal.stage import stage
from bot.rehearsal.transcript import report
from bot.wiring import set_up_logging

PORT = 8085


def add(subparsers: Any) -> None:
    """Add the command's parser."""
    parser = subparsers.add_parser("rehearse", help="the real bot with invented people")
    parser.add_argument("--port", type=int, default=PORT, help=f"of the page, {PORT} by default")
    parser.add_argument("--once", action="store_true", help="play the opening day, print it, end")
    parser.add_argument("--keep", metavar="DIR", help="leave the database there as rehearsal.db")


def run(args: argparse.Namespace) -> int:
    """Serve the page until stopped, or play once."""
    set_up_logging()
    if not 0 <= args.port <= 65535:  # noqa: PLR2004 # the largest port
        raise settings.BadSettingError("--port must be from 0 to 65535")
    with tempfile.TemporaryDirectory() as scratch:
        folder = Path(args.keep or scratch)
        folder.mkdir(parents=True, exist_ok=True)
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
    return 0


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
