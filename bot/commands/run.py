"""`boutwise run`: the bot."""

from __future__ import annotations

import argparse
import asyncio
import signal
import sys
from typing import Any

from bot import settings
from bot.settings import BadSettingError
from bot.telegram.application import NoPlatformError, TokenRefusedError
from bot.wiring import NotServedError, running, set_up_logging


def add(subparsers: Any) -> None:
    """Add the command's parser."""
    parser = subparsers.add_parser("run", help="the bot")
    parser.add_argument(
        "--only",
        choices=("listen", "work"),
        help="of several processes over one PostgreSQL: receive and store, or do all the rest",
    )


def run(args: argparse.Namespace) -> int:
    """Run until the process is told to stop."""
    set_up_logging()
    try:
        return asyncio.run(_serve(args.only))
    except TokenRefusedError:
        raise BadSettingError("BOUTWISE_TOKEN is refused by the platform.") from None
    except NoPlatformError as error:
        print(
            f"boutwise run: the platform cannot be reached ({error}).",
            file=sys.stderr,
        )
        return 1
    except NotServedError as error:
        name, why = error.args
        print(f"boutwise run: {name} cannot be served ({why}).", file=sys.stderr)
        return 1


async def _serve(only: str | None) -> int:
    stop = asyncio.Event()
    loop = asyncio.get_running_loop()
    for each in (signal.SIGTERM, signal.SIGINT):
        loop.add_signal_handler(each, stop.set)
    async with running(settings.read(), only=only):
        print("Boutwise is running.", file=sys.stderr)
        await stop.wait()
    return 0
