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
from starlette.types import ASGIApp

from bot.logs import bare_record
from bot.metrics import Exposition
from bot.ops import ops_app
from bot.rehearsal.serving import serving
from bot.settings import LOOPBACK, BadSettingError, Settings
from bot.telegram.application import STEPPED, Application, Platform
from bot.telegram.inbox import Inbox
from bot.telegram.pace import pace_of
from bot.telegram.polling import Poller
from bot.telegram.receiving import Hook, Lease, NoReception, Polling, Reception
from bot.telegram.webhook import webhook_app
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
        self.exposition = Exposition(store, application.clock, application.work.measures)

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
        """See `Exposition.ready`."""
        return await self.exposition.ready()

    async def metrics(self) -> bytes:
        """See `Exposition.page`."""
        return await self.exposition.page()


def iso(at: datetime) -> str:
    """An instant as ISO text in UTC with a `Z`."""
    return at.astimezone(UTC).isoformat().replace("+00:00", "Z")


@asynccontextmanager
async def running(
    settings: Settings, clock: SystemClock | SteppedClock | None = None, only: str | None = None
) -> AsyncIterator[Running]:
    """The bot at work, with its operations server, until the block ends.

    `clock` is given where somebody else reads it too (the rehearsal); else the settings say which.
    `only`: "listen" receives and stores, "work" does all the rest; other processes do what is left.

    BadSettingError where the settings do not fit together; the library's error for a refused token.
    """
    check(settings, only)
    database = open_database(settings)
    store = SqlStore(database)
    clock = clock or clock_of(settings, store)
    shared = database.dialect == "postgresql" and not clock.stepped
    platform = Platform(settings.token, settings.bot_api_url)
    name = f"worker-{secrets.token_hex(8)}"
    application = Application(
        store,
        clock,
        platform.bot,
        pace_of(settings.send_rate),
        name,
        works=only != "listen",
        shared=shared,
    )
    inbox = Inbox(store, clock, time.monotonic, application.ring)
    lease = Lease(store, clock, time.monotonic, name) if shared else None
    house = Running(application, store)
    if not shared:
        store.run_sync(lambda tx: outbox.take_over(tx, application.clock.now()))
    store.run_sync(lambda tx: digests.schedule_all(tx, application.clock.now()))
    try:
        async with _ops(house, settings), _hook(settings, only, platform, inbox):
            await application.start(_reception(settings, only, platform, inbox, lease))
            yield house
    finally:
        await application.stop()
        await database.close()


def check(settings: Settings, only: str | None) -> None:
    """BadSettingError where a bot cannot run with these settings."""
    if not settings.token:
        raise BadSettingError("BOUTWISE_TOKEN is not set: the platform gives one for each bot.")
    if settings.clock_start and settings.ops and settings.ops[0] not in LOOPBACK:
        raise BadSettingError("BOUTWISE_OPS_BIND must be on loopback while the clock is stepped.")
    if only and settings.clock_start:
        raise BadSettingError("--only is not for a stepped clock, which belongs to one process.")
    if only and settings.database.get_backend_name() == "sqlite":
        raise BadSettingError(
            "--only needs PostgreSQL (BOUTWISE_DATABASE_URL): an SQLite file serves one process."
        )


def _reception(
    settings: Settings, only: str | None, platform: Platform, inbox: Inbox, lease: Lease | None
) -> Reception:
    """How this process receives, if it does."""
    if only == "work":
        return NoReception()
    if settings.webhook:
        return Hook(platform.bot, inbox, settings.webhook.url, settings.webhook.secret)
    poller = Poller(platform.bot, inbox)
    return Polling(poller, inbox, platform.renew_polls, lease, time.monotonic)


class NotServedError(Exception):
    """An address of ours cannot be had; the arguments are its setting's name, and why."""


@asynccontextmanager
async def _ops(house: Running, settings: Settings) -> AsyncIterator[None]:
    if settings.ops is None:
        yield
        return
    app = ops_app(house, stepped=settings.clock_start is not None)
    async with _served(app, settings.ops, "BOUTWISE_OPS_BIND"):
        yield


@asynccontextmanager
async def _hook(
    settings: Settings, only: str | None, platform: Platform, inbox: Inbox
) -> AsyncIterator[None]:  # fmt: skip
    hook = settings.webhook
    if hook is None or only == "work":
        yield
        return
    app = webhook_app(hook.path, hook.secret, platform.bot, inbox)
    async with _served(app, hook.bind, "BOUTWISE_WEBHOOK_BIND"):
        yield


@asynccontextmanager
async def _served(app: ASGIApp, bind: tuple[str, int], name: str) -> AsyncIterator[None]:
    host, port = bind
    async with AsyncExitStack() as stack:
        try:
            await stack.enter_async_context(serving(app, host=host, port=port))
        except OSError as error:
            raise NotServedError(name, error.strerror) from error
        yield


def set_up_logging() -> None:
    """One JSON line an event, on standard error, with ids only: never texts, names, scores or tokens.

    The libraries' own loggers are raised to WARNING: at INFO one of them logs the token with each address,
    and at DEBUG another logs the texts.
    """
    logging.setLogRecordFactory(bare_record)  # whatever level an operator sets
    logging.basicConfig(level=logging.WARNING, format="%(levelname)s %(name)s %(message)s")
    for name in ("httpx", "httpcore", "aiohttp", "telegram", "apscheduler"):
        logging.getLogger(name).setLevel(logging.CRITICAL)
    structlog.configure(
        processors=[
            structlog.processors.add_log_level,
            structlog.processors.TimeStamper(fmt="iso", utc=True),
            structlog.processors.JSONRenderer(),
        ],
        logger_factory=structlog.WriteLoggerFactory(file=sys.stderr),
    )
