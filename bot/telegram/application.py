"""The running bot: receiving, the bell, the loops, and an orderly end."""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Callable
from datetime import datetime
from urllib.parse import urlsplit

import httpx
import structlog
from telegram import Bot
from telegram.error import InvalidToken, TelegramError

from bot.telegram.line import Line
from bot.telegram.receiving import Reception
from bot.telegram.sender import TelegramSender
from bot.telegram.work import Work
from scheduler.clock import SteppedClock, SystemClock
from scheduler.ports import Pace, Store, Tx
from scheduler.timetable import bell
from scheduler.usecases import receipts

log = structlog.get_logger()

CONNECTIONS = 128
"""Requests at once; as many as are sent at once (`Work`)."""
STEPPED = "stepped_clock"
"""Under this name the store keeps the instant of the stepped clock."""
STOP_SECONDS = 10.0
"""How long an orderly end waits for what is under way; the rest is settled when its lease ends."""
BREATH_SECONDS = 1.0
"""Pause after a fault in a loop (the database is away), so that it is not asked in a tight circle."""
LOOK_SECONDS = 0.1
"""How often a worker looks for updates that other processes have received."""


class Platform:
    """The library's client for one Bot API server, and its connections."""

    def __init__(self, token: str, root: str) -> None:
        """`root` is the server's address, such as https://api.telegram.org."""
        trust = httpx.create_ssl_context() if urlsplit(root).scheme == "https" else None
        self._polls = Line(2, trust)
        self.bot = Bot(
            token,
            base_url=f"{root}/bot",
            base_file_url=f"{root}/file/bot",
            request=Line(CONNECTIONS, trust),
            get_updates_request=self._polls,
        )

    async def renew_polls(self) -> None:
        """Make the connection for polls anew."""
        await self._polls.renew()


def make_bot(token: str, root: str) -> Bot:
    """The library's client for one Bot API server at `root`."""
    return Platform(token, root).bot


class TokenRefusedError(Exception):
    """The platform does not know the token."""


class NoPlatformError(Exception):
    """The platform does not answer; the argument names the kind of fault."""


async def username(bot: Bot) -> str:
    """The bot's own user name. TokenRefusedError or NoPlatformError where the platform gives none."""
    try:
        await bot.initialize()
    except InvalidToken as error:
        raise TokenRefusedError from error
    except TelegramError as error:
        raise NoPlatformError(type(error).__name__) from error
    return bot.username


class Application:
    """One process of the bot over one store. Made once, run once."""

    def __init__(
        self,
        store: Store,
        clock: SystemClock | SteppedClock,
        bot: Bot,
        pace: Pace,
        worker: str,
        *,
        works: bool = True,
        shared: bool = False,
    ) -> None:
        """`works`: it handles and sends, not only receives; `shared`: other processes may do so too."""
        self.clock, self._store, self._bot = clock, store, bot
        sender = TelegramSender(bot)
        self.work = Work(store, sender, clock, None if clock.stepped else pace, worker)
        self._works, self._shared = works, shared
        self._updates, self._clients, self._messages = (asyncio.Event() for _ in range(3))
        self._stepping = asyncio.Lock()
        self._tasks: list[asyncio.Task[None]] = []
        self._receiving: asyncio.Task[None] | None = None
        self._reception: Reception | None = None
        self._timetable = bell(self.ring)
        self._stopping = False
        self._drained = asyncio.Event()

    def ring(self) -> None:
        """Something may be due: every loop looks."""
        for each in (self._updates, self._clients, self._messages):
            each.set()

    async def start(self, reception: Reception) -> None:
        """Begin to receive and to work. TokenRefusedError and NoPlatformError as for `username`."""
        me = await username(self._bot)
        await self._store.run(lambda tx: tx.book.put("bot_username", me))
        self._reception = reception
        await reception.open()
        if self._works:
            await self._begin_work()
        self._receiving = asyncio.create_task(_unending(reception.run))
        self.ring()

    async def _begin_work(self) -> None:
        """What people said while the bot was away is handled before anything due is sent (P7)."""
        while await self.work.updates():
            pass
        if self.clock.stepped:
            await self._keep_instant()
            self._tasks.append(asyncio.create_task(self._stepped_loop()))
            return
        batches = (
            (self._updates, lambda: self.work.begin_updates(self.ring)),
            (self._clients, self.work.clients),
            (self._messages, lambda: self.work.begin_messages(self._messages.set)),
        )
        for ringing, batch in batches:
            self._tasks.append(asyncio.create_task(self._loop(ringing, batch)))
        if self._shared:
            self._tasks.append(asyncio.create_task(self._look_often()))
        self._timetable.start()

    async def stop(self) -> None:
        """End: nothing more is received, what is being done is finished, what is due stays in the store."""
        if self._receiving is not None:
            self._receiving.cancel()
            await asyncio.gather(self._receiving, return_exceptions=True)
        if self._reception is not None:
            await self._reception.close()
        if not self.clock.stepped and self._timetable.running:
            self._timetable.shutdown(wait=False)
        self._stopping = True
        self.ring()
        if self._tasks:
            await asyncio.wait(self._tasks, timeout=STOP_SECONDS)
        await self.work.finish(STOP_SECONDS)
        for task in self._tasks:
            task.cancel()
        await asyncio.gather(*self._tasks, return_exceptions=True)
        await self._bot.shutdown()

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

    async def _look_often(self) -> None:
        while not self._stopping:
            await asyncio.sleep(LOOK_SECONDS)
            self._updates.set()

    async def _stepped_loop(self) -> None:
        """Under the stepped clock updates are handled as they come, at the instant that stands."""
        ringing = self._updates
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
            await self._keep_instant(receipts.RECEIVED)
            return await self.work.next_due()

    async def _keep_instant(self, *also: str) -> None:
        """Store where the stepped clock stands: a restart goes on from there, never back.

        After a step the platform counts as heard until then: time went by in a jump, with the bot up.
        """
        now = self.clock.now().isoformat()

        def keep(tx: Tx) -> None:
            for name in (STEPPED, *also):
                tx.book.put(name, now)

        await self._store.run(keep)

    async def handled(self, update_id: int) -> None:
        """Return once an update has been handled and what it said has been accepted or put back."""
        while True:
            next_drain = self._drained  # taken before looking, so that none is slept through
            done = await self._store.run(lambda tx: tx.inbox.finished(update_id))
            if done and await self.work.waiting() == 0:
                return
            await next_drain.wait()


async def _unending(run: Callable[[], Awaitable[None]]) -> None:
    """Receiving goes on whatever happens; a reception that has nothing to do returns."""
    while True:
        try:
            await run()
        except Exception as error:  # noqa: BLE001 # as the loops
            log.error("receiving failed", error=type(error).__name__)  # noqa: TRY400 # as above
            await asyncio.sleep(BREATH_SECONDS)
        else:
            return
