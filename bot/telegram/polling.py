"""Receiving by long polls, one after the other, of one process at a time."""

from __future__ import annotations

import asyncio
import contextlib

import structlog
from telegram import Bot
from telegram.error import Conflict, RetryAfter, TelegramError

from bot.telegram.inbox import Inbox

log = structlog.get_logger()

UPDATES = ["message", "edited_message", "callback_query", "my_chat_member"]
"""The kinds of update that the bot asks for."""
POLL_SECONDS = 10
"""How long one poll waits at the platform; it answers at once when something comes."""
SLACK_SECONDS = 20.0
"""A poll that takes so much longer than it waits is given up, however its answer trickles in."""
CATCH_UP_POLLS = 20
"""Polls at the start before anything is sent: 100 updates each, seconds of work at the most."""
FIRST_PAUSE, LONGEST_PAUSE = 0.5, 15.0
"""Seconds after a fault, doubled with each one more in a row."""


class Poller:
    """Polls until it is cancelled. What it has confirmed is in the inbox."""

    def __init__(self, bot: Bot, inbox: Inbox) -> None:
        self._bot, self._inbox = bot, inbox
        self._offset: int | None = None
        self._no_webhook = False

    async def catch_up(self) -> None:
        """Store what was said while the bot was away, as far as so many polls go; a fault ends it."""
        try:
            for _ in range(CATCH_UP_POLLS):
                if not await self._poll(0):
                    return
        except (TelegramError, TimeoutError) as error:
            _failed(error)

    async def run(self) -> None:
        """Poll, and after a fault poll again."""
        pause = FIRST_PAUSE
        while True:
            try:
                await self._poll(POLL_SECONDS)
                pause = FIRST_PAUSE
            except (TelegramError, TimeoutError) as error:
                _failed(error)
                self._no_webhook = self._no_webhook and not isinstance(error, Conflict)
                await asyncio.sleep(_told(error) or pause)
                pause = min(2 * pause, LONGEST_PAUSE)

    async def _poll(self, seconds: int) -> int:
        """One poll; how many updates it brought, all committed."""
        if not self._no_webhook:
            await self._bot.delete_webhook()
            self._no_webhook = True
        async with asyncio.timeout(seconds + SLACK_SECONDS):
            updates = await self._bot.get_updates(
                offset=self._offset, timeout=seconds, allowed_updates=UPDATES
            )
        if updates:
            await self._inbox.keep(updates)
            self._offset = updates[-1].update_id + 1
        await self._inbox.heard()
        return len(updates)


def _told(error: Exception) -> float | None:
    """Seconds that the platform asks to wait for, a minute at most."""
    if not isinstance(error, RetryAfter):
        return None
    wait = error.retry_after
    return min(60.0, wait if isinstance(wait, int) else wait.total_seconds())


def _failed(error: Exception) -> None:
    """Only the kind of fault is logged, never its words."""
    log.warning("poll failed", error=type(error).__name__)


async def ended(task: asyncio.Task[None], within: float) -> None:
    """Cancel a task and wait until it has ended, at most so many seconds."""
    task.cancel()
    with contextlib.suppress(asyncio.CancelledError):
        await asyncio.wait({task}, timeout=within)
