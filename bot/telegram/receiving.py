"""Who receives, and that it goes on: the lease among pollers, the webhook's registration, the watchdog."""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Callable
from datetime import datetime, timedelta
from typing import Protocol

import structlog
from sqlalchemy.exc import SQLAlchemyError
from telegram import Bot, WebhookInfo
from telegram.error import TelegramError

from bot.telegram.inbox import Inbox
from bot.telegram.polling import UPDATES, Poller, ended
from scheduler.ports import Clock, Store

log = structlog.get_logger()

LISTENER = "listener"
LEASE = timedelta(seconds=12)
"""A listener that died is followed by another within this and a look: about 15 s."""
LOOK_SECONDS = 3.0
"""How often the lease is renewed, or asked for, and the watchdog looks."""
ASK_SECONDS = 3.0
"""How long the database may take to answer for the lease."""
QUIET_SECONDS = 60.0
"""After so long without a good poll the connection is made anew: half of what R5 allows."""
END_SECONDS = 2.0
CHECK_SECONDS = 60.0
"""How often the platform is asked what it thinks of our webhook."""
ALLOWED_AT_ONCE = 40
"""Webhook calls side by side, the platform's own default."""
WAIT_PENDING = 20
"""Looks at the start, half a second apart, at whether the platform has posted what it had kept."""

Renew = Callable[[], Awaitable[None]]


class Reception(Protocol):
    """How updates come in."""

    async def open(self) -> None:
        """Receive what has waited, as far as that goes; called before anything is sent (P7)."""
        ...

    async def run(self) -> None:
        """Receive, whatever happens, until cancelled."""
        ...

    async def close(self) -> None:
        """Leave it to others at once; after `run` has ended."""
        ...


class NoReception:
    """A process that works on what others receive."""

    async def open(self) -> None:
        """Nothing to wait for."""

    async def run(self) -> None:
        """Nothing to do."""

    async def close(self) -> None:
        """Nothing to leave."""


class Lease:
    """The right to poll, which only one process of a store has. `holder` is its name, unique among all."""

    def __init__(
        self, store: Store, clock: Clock, monotonic: Callable[[], float], holder: str
    ) -> None:  # fmt: skip
        self._store, self._clock, self._monotonic = store, clock, monotonic
        self._holder = holder
        self._mine_until = monotonic()

    async def mine(self) -> bool:
        """Take or renew it. While the database does not answer, what is held runs on to its end."""
        asked_at, now = self._monotonic(), self._clock.now()
        try:
            async with asyncio.timeout(ASK_SECONDS):
                taken = await self._store.run(
                    lambda tx: tx.leases.take(LISTENER, self._holder, now, LEASE)
                )
        except (SQLAlchemyError, TimeoutError) as error:
            log.warning("lease not renewed", error=type(error).__name__)
            return self._monotonic() + LOOK_SECONDS < self._mine_until
        self._mine_until = asked_at + (LEASE.total_seconds() if taken else 0.0)
        return taken

    async def give_back(self) -> None:
        """Let another take it at once."""
        try:
            async with asyncio.timeout(ASK_SECONDS):
                await self._store.run(lambda tx: tx.leases.give_back(LISTENER, self._holder))
        except (SQLAlchemyError, TimeoutError) as error:
            log.warning("lease not given back", error=type(error).__name__)


class Polling:
    """Long polls, under a lease where several processes may poll, watched over by a dog."""

    def __init__(
        self,
        poller: Poller,
        inbox: Inbox,
        renew: Renew,
        lease: Lease | None,
        monotonic: Callable[[], float],
    ) -> None:
        """`renew` makes the connection anew; without a lease this is the sole process of its store."""
        self._poller, self._inbox, self._renew, self._lease = poller, inbox, renew, lease
        self._monotonic = monotonic
        self._task: asyncio.Task[None] | None = None
        self._standing_by = False
        self._since = 0.0
        """Monotonic seconds from which the watchdog counts where no poll was good since."""

    async def open(self) -> None:
        """Store what was said while no process listened, if it is for this one to listen."""
        if self._lease is None or await self._lease.mine():
            await self._poller.catch_up()

    async def run(self) -> None:
        """Poll while that is this process's right; made anew when nothing good has come for a minute."""
        try:
            while True:
                if self._lease is not None and not await self._lease.mine():
                    await self._stand_by()
                elif self._task is None or self._task.done():
                    self._begin()
                elif self._quiet() > QUIET_SECONDS:
                    log.warning("nothing heard, connecting anew", seconds=round(self._quiet()))
                    await self._stop()
                    await self._renew()
                    self._begin()
                await self._pause()
        finally:
            await self._stop()

    async def close(self) -> None:
        """Give the lease back."""
        if self._lease is not None:
            await self._lease.give_back()

    def _begin(self) -> None:
        self._since = self._monotonic()
        self._task = asyncio.create_task(self._poller.run())
        if self._standing_by:
            log.warning("took over listening")
            self._standing_by = False

    def _quiet(self) -> float:
        """Seconds without a good poll."""
        return self._monotonic() - max(self._since, self._inbox.heard_at or self._since)

    async def _pause(self) -> None:
        """Until the next look; a poller that ended by a bug is met at once."""
        if self._task is None:
            await asyncio.sleep(LOOK_SECONDS)
            return
        await asyncio.wait({self._task}, timeout=LOOK_SECONDS)
        if self._task.done():
            log.error("poller ended", error=type(self._task.exception()).__name__)
            await asyncio.sleep(LOOK_SECONDS)

    async def _stand_by(self) -> None:
        await self._stop()
        if not self._standing_by:
            log.warning("standing by: another process listens")
            self._standing_by = True

    async def _stop(self) -> None:
        task, self._task = self._task, None
        if task is not None:
            await ended(task, END_SECONDS)


class Hook:
    """The webhook's registration at the platform: made at the start, looked at every minute, mended."""

    def __init__(self, bot: Bot, inbox: Inbox, url: str, secret: str) -> None:
        self._bot, self._inbox, self._url, self._secret = bot, inbox, url, secret
        self._last_fault: datetime | None = None

    async def open(self) -> None:
        """Register, and wait some seconds for what the platform has kept for us."""
        try:
            await self._register()
            for _ in range(WAIT_PENDING):
                if not (await self._bot.get_webhook_info()).pending_update_count:
                    return
                await asyncio.sleep(0.5)
        except TelegramError as error:
            log.warning("webhook not set", error=type(error).__name__)

    async def run(self) -> None:
        """Look every minute whether the platform reaches us; register again where it does not."""
        while True:
            try:
                await self.look()
            except (TelegramError, TimeoutError) as error:
                log.warning("webhook not checked", error=type(error).__name__)
            await asyncio.sleep(CHECK_SECONDS)

    async def close(self) -> None:
        """It stays registered: the platform keeps what comes until somebody listens there again."""

    async def look(self) -> None:
        """Ask the platform how it fares with the webhook; mend what is not as it should be."""
        info = await self._bot.get_webhook_info()
        if info.url != self._url or self._failing(info):
            log.warning("webhook is set again", pending=info.pending_update_count)
            await self._register()
            return
        if not info.pending_update_count:
            await self._inbox.heard()

    def _failing(self, info: WebhookInfo) -> bool:
        """Whether a call has failed since the last look, and something waits for the next."""
        fault, before = info.last_error_date, self._last_fault
        self._last_fault = fault
        return fault is not None and fault != before and bool(info.pending_update_count)

    async def _register(self) -> None:
        await self._bot.set_webhook(
            self._url,
            secret_token=self._secret,
            allowed_updates=UPDATES,
            max_connections=ALLOWED_AT_ONCE,
        )
