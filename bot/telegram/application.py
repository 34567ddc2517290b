"""The running bot: polling, the bell, the loops, and an orderly end."""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Callable
from datetime import datetime, timedelta

import structlog
from telegram import Bot
from telegram.error import InvalidToken, TelegramError
from telegram.ext import Updater
from telegram.request import HTTPXRequest

from bot.telegram.inbox import InboxQueue
from bot.telegram.pace import NoPace, Pace
from bot.telegram.sender import TelegramSender
from bot.telegram.work import Work
from scheduler.clock import SteppedClock, SystemClock
from scheduler.ports import Store
from scheduler.timetable import bell

log = structlog.get_logger()

UPDATES = ["message", "edited_message", "callback_query", "my_chat_member"]
POLL_SECONDS = 10
"""How long one poll waits at the platform; it answers at once when something comes."""
CATCH_UP_POLLS = 20
"""Polls at the start before anything is sent: 100 updates each, seconds of work at the most."""
CONNECTIONS = 32
"""Requests at once; the transport slows down above this."""
STEPPED = "stepped_clock"
"""Under this name the store keeps the instant of the stepped clock."""
STOP_SECONDS = 10.0
"""How long an orderly end waits for what is under way; the rest is settled when its lease ends."""
BREATH_SECONDS = 1.0
"""Pause after a fault in a loop (the database is away), so that it is not asked in a tight circle."""


def make_bot(token: str, root: str) -> Bot:
    """The library's client for one Bot API server at `root`."""
    return Bot(
        token,
        base_url=f"{root}/bot",
        base_file_url=f"{root}/file/bot",
        request=HTTPXRequest(connection_pool_size=CONNECTIONS, pool_timeout=30),
        get_updates_request=HTTPXRequest(connection_pool_size=2, read_timeout=POLL_SECONDS + 5),
    )


class TokenRefusedError(Exception):
    """The platform does not know the token."""


class NoPlatformError(Exception):
    """The platform does not answer; the argument names the kind of fault."""


async def username(bot: Bot) -> str:
    """The bot's own user name. TokenRefusedError or NoPlatformError where the platform gives none."""
    try:
        return (await bot.get_me()).username or ""
    except InvalidToken as error:
        raise TokenRefusedError from error
    except TelegramError as error:
        raise NoPlatformError(type(error).__name__) from error


class Application:
    """One process of the bot over one store. Made once, run once."""

    def __init__(
        self,
        store: Store,
        clock: SystemClock | SteppedClock,
        bot: Bot,
        pace: Pace,
        worker: str,
    ) -> None:
        self.clock, self._store, self._bot = clock, store, bot
        sender = TelegramSender(bot)
        self.work = Work(store, sender, clock, NoPace() if clock.stepped else pace, worker)
        self._bells = [asyncio.Event() for _ in range(3)]
        self._stepping = asyncio.Lock()
        self._tasks: list[asyncio.Task[None]] = []
        self._inbox = InboxQueue(store, clock, self.ring)
        self._updater = Updater(bot, self._inbox)
        self._timetable = bell(self.ring)
        self._stopping = False
        self._drained = asyncio.Event()

    def ring(self) -> None:
        """Something may be due: every loop looks."""
        for each in self._bells:
            each.set()

    async def start(self) -> None:
        """Begin to receive and to work. TokenRefusedError and NoPlatformError as for `username`."""
        try:
            await self._updater.initialize()
        except InvalidToken as error:
            raise TokenRefusedError from error
        except TelegramError as error:
            raise NoPlatformError(type(error).__name__) from error
        me = await username(self._bot)
        await self._store.run(lambda tx: tx.book.put("bot_username", me))
        await self._catch_up()
        if self.clock.stepped:
            await self._keep_instant()
            self._tasks.append(asyncio.create_task(self._stepped_loop()))
        else:
            batches = (
                self.work.updates,
                self.work.clients,
                lambda: self.work.begin_messages(self.ring),
            )
            for ringing, batch in zip(self._bells, batches, strict=True):
                self._tasks.append(asyncio.create_task(self._loop(ringing, batch)))
            self._timetable.start()
        await self._updater.start_polling(
            timeout=timedelta(seconds=POLL_SECONDS),
            allowed_updates=UPDATES,
            error_callback=_poll_failed,
            bootstrap_retries=-1,
        )
        self.ring()

    async def _catch_up(self) -> None:
        """Handle what people said while the bot was away before anything that fell due is sent (P7).

        What does not fit into so many polls is handled as it comes; so is all if the platform is away.
        """
        offset = None
        try:
            for _ in range(CATCH_UP_POLLS):
                updates = await self._bot.get_updates(
                    offset=offset, timeout=0, allowed_updates=UPDATES
                )
                for update in updates:
                    await self._inbox.put(update)
                if not updates:
                    break
                offset = updates[-1].update_id + 1
        except TelegramError as error:
            _poll_failed(error)
        while await self.work.updates():
            pass

    async def stop(self) -> None:
        """End: no more polls, what is being done is finished, what is due stays in the store."""
        if self._updater.running:
            await self._updater.stop()
        if not self.clock.stepped and self._timetable.running:
            self._timetable.shutdown(wait=False)
        self._stopping = True
        self.ring()
        if self._tasks:
            await asyncio.wait(self._tasks, timeout=STOP_SECONDS)
        await self.work.finish_sending(STOP_SECONDS)
        for task in self._tasks:
            task.cancel()
        await asyncio.gather(*self._tasks, return_exceptions=True)
        await self._updater.shutdown()

    async def _loop(self, ringing: asyncio.Event, batch: Callable[[], Awaitable[int]]) -> None:
        """One kind of work, again and again while there is any, then resting until the bell."""
        while not self._stopping:
            await ringing.wait()
            ringing.clear()
            try:
                while not self._stopping and await batch():
                    self.ring()  # what was done may have made other things due
            except Exception as error:  # noqa: BLE001 # the loop outlives every fault
                log.error("loop failed", error=type(error).__name__)  # noqa: TRY400 # a traceback may hold texts
                await asyncio.sleep(BREATH_SECONDS)
                ringing.set()

    async def _stepped_loop(self) -> None:
        """Under the stepped clock updates are handled as they come, at the instant that stands."""
        ringing = self._bells[0]
        while not self._stopping:
            await ringing.wait()
            ringing.clear()
            async with self._stepping:
                try:
                    await self.work.drain()
                except Exception as error:  # noqa: BLE001 # the loop outlives every fault
                    log.error("loop failed", error=type(error).__name__)  # noqa: TRY400 # as above
            self._drained.set()
            self._drained = asyncio.Event()

    async def step(self, to: datetime) -> datetime | None:
        """Carry out everything due up to `to`, each at its own instant; the next instant after it.

        ValueError if that would go back, or if the clock is the system's.
        """
        clock = self.clock
        if not isinstance(clock, SteppedClock):
            raise TypeError("only the stepped clock is moved")
        async with self._stepping:
            if to < clock.now():
                clock.move(to)  # refuses
            await self.work.drain()
            while (due := await self.work.next_due()) is not None and due <= to:
                clock.move(max(due, clock.now()))
                await self.work.drain()
            clock.move(to)
            await self.work.drain()
            await self._keep_instant()
            return await self.work.next_due()

    async def _keep_instant(self) -> None:
        """Store where the stepped clock stands: a restart goes on from there, never back."""
        now = self.clock.now().isoformat()
        await self._store.run(lambda tx: tx.book.put(STEPPED, now))

    async def handled(self, update_id: int) -> None:
        """Return once an update has been handled and what it said has been accepted or put back."""
        while True:
            next_drain = self._drained  # taken before looking, so that none is slept through
            done = await self._store.run(lambda tx: tx.inbox.finished(update_id))
            if done and await self.work.waiting() == 0:
                return
            await next_drain.wait()


def _poll_failed(error: TelegramError) -> None:
    """The library polls again by itself; only the kind of fault is logged, never its words."""
    log.warning("poll failed", error=type(error).__name__)
