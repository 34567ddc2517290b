"""No more than the send rate over all chats, and one message a second to one chat (R3)."""

from __future__ import annotations

import asyncio
from collections.abc import Callable

ONE_CHAT_SECONDS = 1.0
FORGET_AFTER = 10_000
"""Chats remembered before those whose second is over are forgotten."""


class Pace:
    """Lets a send begin when it may. `monotonic` reads seconds that only go forward."""

    def __init__(self, rate: float, monotonic: Callable[[], float]) -> None:
        """`rate` is messages a second over all chats."""
        self._between = 1.0 / rate
        self._monotonic = monotonic
        self._next = 0.0
        self._chats: dict[int, float] = {}

    async def wait(self, chat: int) -> None:
        """Return when a message to `chat` may leave. Each call takes one place in the line."""
        now = self._monotonic()
        at = max(now, self._next, self._chats.get(chat, 0.0))
        self._next = max(now, self._next) + self._between
        self._chats[chat] = at + ONE_CHAT_SECONDS
        if len(self._chats) > FORGET_AFTER:
            self._chats = {each: free for each, free in self._chats.items() if free > now}
        if at > now:
            await asyncio.sleep(at - now)


class NoPace(Pace):
    """For the stepped clock: time stands still, so nothing waits."""

    def __init__(self) -> None:
        super().__init__(1.0, lambda: 0.0)

    async def wait(self, chat: int) -> None:
        """Return at once."""
