"""The only module that knows which store, sender and clock are in use."""

from __future__ import annotations

import logging
import secrets
import sys
import time
from collections.abc import AsyncIterator, Iterator
from contextlib import AsyncExitStack, asynccontextmanager, contextmanager
from datetime import UTC, datetime

import structlog
from sqlalchemy.exc import SQLAlchemyError

from bot.ops import ops_app
from bot.rehearsal.serving import serving
from bot.settings import BadSettingError, Settings
from bot.telegram.application import STEPPED, Application, make_bot
from bot.telegram.pace import Pace
from scheduler.clock import SteppedClock, SystemClock
from scheduler.usecases import digests, outbox
from storage import migrate, vault
from storage.engine import Database
from storage.store import SqlStore


def open_database(settings: Settings) -> Database:
    """The database of these settings, brought to the current schema and unlocked with its keys."""
    database = Database(settings.database, settings.keyring())
    migrate.upgrade(database)
    vault.unlock(database)
    return database


@contextmanager
def store_for_command(settings: Settings) -> Iterator[SqlStore]:
    """The store for a command that ends by itself."""
    database = open_database(settings)
    try:
        yield SqlStore(database)
    finally:
        database.close_sync()


def clock_of(settings: Settings, store: SqlStore) -> SystemClock | SteppedClock:
    """The clock these settings ask for. A stepped one goes on from its last stored instant."""
    if settings.clock_start is None:
        return SystemClock()
    stored = store.run_sync(lambda tx: tx.book.read(STEPPED))
    last = datetime.fromisoformat(stored) if stored else settings.clock_start
    return SteppedClock(max(last, settings.clock_start))


def command_clock(store: SqlStore) -> SystemClock | SteppedClock:
    """The clock for a command: a database that was driven by a stepped clock goes on by it."""
    stored = store.run_sync(lambda tx: tx.book.read(STEPPED))
    return SteppedClock(datetime.fromisoformat(stored)) if stored else SystemClock()


class Running:
    """A running bot with its handles for operations."""

    def __init__(self, application: Application, store: SqlStore) -> None:
        self.application, self.store = application, store

    async def step(self, to: datetime) -> datetime | None:
        """See `Application.step`."""
        return await self.application.step(to)

    async def handled(self, update_id: int) -> None:
        """See `Application.handled`."""
        await self.application.handled(update_id)

    async def look(self) -> dict[str, object]:
        """The time, the messages waiting by now and the next instant at which something falls due."""
        due = await self.application.work.next_due()
        now = self.application.clock.now()
        return {
            "now": iso(now),
            "waiting": await self.application.work.waiting(),
            "next_due": iso(max(due, now)) if due else None,
        }

    async def sent(self) -> int:
        """Messages accepted by the platform since the start."""
        return self.application.work.accepted

    async def ready(self) -> bool:
        """Whether the database answers."""
        try:
            await self.store.run(lambda tx: tx.inbox.unfinished())
        except (SQLAlchemyError, OSError):
            return False
        return True


def iso(at: datetime) -> str:
    """An instant as ISO text in UTC with a `Z`."""
    return at.astimezone(UTC).isoformat().replace("+00:00", "Z")


@asynccontextmanager
async def running(
    settings: Settings, clock: SystemClock | SteppedClock | None = None
) -> AsyncIterator[Running]:
    """The bot at work, with its operations server, until the block ends.

    `clock` is given where somebody else reads it too (the rehearsal); else the settings say which.

    BadSettingError where the settings do not fit together; the library's error for a refused token.
    """
    if not settings.token:
        raise BadSettingError("BOUTWISE_TOKEN is not set: the platform gives one for each bot.")
    if (
        settings.clock_start
        and settings.ops
        and settings.ops[0] not in {"127.0.0.1", "::1", "localhost"}
    ):
        raise BadSettingError("BOUTWISE_OPS_BIND must be on loopback while the clock is stepped.")
    database = open_database(settings)
    store = SqlStore(database)
    application = Application(
        store,
        clock or clock_of(settings, store),
        make_bot(settings.token, settings.bot_api_url),
        Pace(settings.send_rate, time.monotonic),
        f"worker-{secrets.token_hex(8)}",
    )
    house = Running(application, store)
    if database.dialect == "sqlite" or application.clock.stepped:
        store.run_sync(lambda tx: outbox.take_over(tx, application.clock.now()))
    store.run_sync(lambda tx: digests.schedule_all(tx, application.clock.now()))
    try:
        async with _ops(house, settings):
            await application.start()
            yield house
    finally:
        await application.stop()
        await database.close()


class NotServedError(Exception):
    """The address of the operations server cannot be had; the argument says why."""


@asynccontextmanager
async def _ops(house: Running, settings: Settings) -> AsyncIterator[None]:
    if settings.ops is None:
        yield
        return
    host, port = settings.ops
    app = ops_app(house, stepped=settings.clock_start is not None)
    async with AsyncExitStack() as stack:
        try:
            await stack.enter_async_context(serving(app, host=host, port=port))
        except OSError as error:
            raise NotServedError(error.strerror) from error
        yield


def set_up_logging() -> None:
    """One JSON line an event, on standard error, with ids only: never texts, names, scores or tokens.

    The libraries' own loggers are raised to WARNING: at INFO one of them logs the token with each address,
    and at DEBUG another logs the texts.
    """
    logging.basicConfig(level=logging.WARNING, format="%(levelname)s %(name)s")
    for name in ("httpx", "httpcore", "telegram", "apscheduler"):
        logging.getLogger(name).setLevel(logging.CRITICAL)
    structlog.configure(
        processors=[
            structlog.processors.add_log_level,
            structlog.processors.TimeStamper(fmt="iso", utc=True),
            structlog.processors.JSONRenderer(),
        ],
        logger_factory=structlog.WriteLoggerFactory(file=sys.stderr),
    )
