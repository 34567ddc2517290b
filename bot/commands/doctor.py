"""`boutwise doctor`: checks settings, database, schema, token, time zone data and clock; says what to do."""

from __future__ import annotations

import argparse
import asyncio
import math
from collections.abc import Callable
from datetime import datetime
from typing import Any
from zoneinfo import ZoneInfo

from sqlalchemy.exc import SQLAlchemyError

from bot import settings
from bot.settings import BadSettingError, Settings
from bot.telegram.application import NoPlatformError, TokenRefusedError, make_bot, username
from scheduler.clock import SystemClock
from scheduler.domain.people import Role, State
from scheduler.ports import Tx
from storage import migrate, vault
from storage.engine import Database
from storage.keys import WrongKeyError
from storage.store import SqlStore

OLDEST_ZONES = datetime(2026, 1, 1)  # noqa: DTZ001 # compared as a year only


def add(subparsers: Any) -> None:
    """Add the command's parser."""
    subparsers.add_parser("doctor", help="check everything and say what to do")


def run(_: argparse.Namespace) -> int:
    """One line a check; exit 1 if something must be done."""
    given = settings.read()
    checks: tuple[Callable[[Settings], list[str]], ...] = (_database, _zones, _token)
    wrong = 0
    for check in checks:
        for line in check(given):
            print(line)
            wrong += not line.startswith("ok")
    print("Nothing to do." if not wrong else f"To do: {wrong}.")
    return 1 if wrong else 0


def _database(given: Settings) -> list[str]:
    try:
        database = Database(given.database, given.keyring())
    except BadSettingError as error:
        return [f"to do: {error}"]
    try:
        if not database.is_there() or migrate.needed(database):
            return ["to do: the schema is behind; run `boutwise migrate`"]
        vault.unlock(database)
        return [
            f"ok: database ({database.dialect}), schema current",
            *_practice(SqlStore(database), given.send_rate),
        ]
    except WrongKeyError:
        return [
            "to do: BOUTWISE_KEY is not the key of this database; give the one it was made with"
        ]
    except (SQLAlchemyError, OSError) as error:
        return [
            f"to do: the database does not answer ({type(error).__name__}); see BOUTWISE_DATABASE_URL"
        ]
    finally:
        database.close_sync()


def _practice(store: SqlStore, rate: float) -> list[str]:
    def look(tx: Tx) -> list[str]:
        practice, everyone = tx.book.practice(), tx.people.everyone()
        lines = []
        if not practice.callable:
            lines.append(
                "to do: nobody is prompted until an admin sets practice phone and emergency number"
                " (in chat: /settings)"
            )
        if not any(p.role is Role.ADMIN and p.state is State.READY for p in everyone):
            lines.append(
                "to do: no admin has joined; run `boutwise invite --role admin --name NAME`"
            )
        clients = sum(p.role is Role.CLIENT and p.state is State.READY for p in everyone)
        wanted = math.ceil(clients / rate / 60)
        if wanted > 1 and practice.spread_minutes < wanted:
            lines.append(
                f"to do: {clients} clients may be due in one minute; set spread_minutes to about"
                f" {wanted} (in chat: /settings)"
            )
        return [*lines, f"ok: {clients} clients", f"ok: {tx.inbox.unfinished()} updates waiting"]

    return store.run_sync(look)


def _zones(_: Settings) -> list[str]:
    try:
        ZoneInfo("Pacific/Auckland")
    except (KeyError, OSError):
        return ["to do: there is no time zone data; install the package tzdata"]
    now = SystemClock().now()
    if now.year < OLDEST_ZONES.year:
        return [f"to do: the machine's clock says {now.date()}; set it right"]
    return ["ok: time zone data", f"ok: clock {now.isoformat(timespec='seconds')}"]


def _token(given: Settings) -> list[str]:
    if not given.token:
        return ["to do: BOUTWISE_TOKEN is not set"]

    async def ask() -> str:
        bot = make_bot(given.token, given.bot_api_url)
        try:
            return f"ok: token of @{await username(bot)}"
        finally:
            await bot.shutdown()

    try:
        return [asyncio.run(ask())]
    except TokenRefusedError:
        return ["to do: BOUTWISE_TOKEN is refused by the platform"]
    except NoPlatformError as error:
        return [f"to do: the platform does not answer ({error}); see BOUTWISE_BOT_API_URL"]
