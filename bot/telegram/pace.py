"""No more than the send rate over all chats, and one message a second to one chat (R3)."""

from __future__ import annotations

import asyncio
from bisect import insort
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
        self._leaving: list[float] = []
        """When messages leave, oldest first; those so long ago that they are in nobody's way are gone."""
        self._chats: dict[int, float] = {}

    async def wait(self, chat: int) -> None:
        """Return when a message to `chat` may leave. Each call takes one place in the line."""
        now = self._monotonic()
        at = self._place(now, max(now, self._chats.get(chat, now)))
        self._chats[chat] = at + ONE_CHAT_SECONDS
        if len(self._chats) > FORGET_AFTER:
            self._chats = {each: free for each, free in self._chats.items() if free > now}
        if at > now:
            await asyncio.sleep(at - now)

    def _place(self, now: float, at: float) -> float:
        """The first free place from `at` on, taken. One that waits for its chat holds up no other."""
        self._leaving = [each for each in self._leaving if each > now - self._between]
        for taken in self._leaving:
            if at + self._between <= taken:
                break
            at = max(at, taken + self._between)
        insort(self._leaving, at)
        return at


class NoPace(Pace):
    """For the stepped clock: time stands still, so nothing waits."""

    def __init__(self) -> None:
        super().__init__(1.0, lambda: 0.0)

    async def wait(self, chat: int) -> None:
        """Return at once."""
