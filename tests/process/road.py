"""The stand-in chat server in the test's own process, and the road to it, on which the bot is killed."""

import asyncio
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any, Literal

from starlette.types import ASGIApp, Message, Receive, Scope, Send

from bot.rehearsal.serving import Dropped
from bot.rehearsal.updates import Update, Updates
from bot.rehearsal.world import World

When = Literal["before", "after", "later"]


@dataclass(frozen=True, slots=True)
class Place:
    """Where the bot dies: at its `call`-th request to the platform, counted from its start.

    before: nothing is accepted; after: accepted, never answered; later: so many seconds after it came.
    """

    call: int
    when: When
    seconds: float = 0.0


class Waiting(Updates):
    """The platform's queue of updates; `empty` is set while the bot has confirmed all of them."""

    def __init__(self, first_id: int) -> None:
        super().__init__(first_id)
        self.empty = asyncio.Event()
        self.empty.set()

    def add(self, kind: str, content: Mapping[str, Any], at: datetime) -> Update | None:
        self.empty.clear()
        return super().add(kind, content, at)

    def repeat(self, update: Update) -> None:
        self.empty.clear()
        super().repeat(update)

    def take(self, now: datetime, offset: int, limit: int) -> list[Update]:
        found = super().take(now, offset, limit)
        if not len(self):
            self.empty.set()
        return found


class Road:
    """An ASGI application before the stand-in's: counts the bot's requests and ends it at a place."""

    def __init__(self, app: ASGIApp) -> None:
        self._app = app
        self._calls = 0
        self._place: Place | None = None
        self._kill: Callable[[], None] = lambda: None
        self.polled = asyncio.Event()
        self.hits: list[tuple[str, When]] = []
        """Methods at which it was killed, and when."""

    def begin(self, place: Place | None, kill: Callable[[], None]) -> None:
        """A new life begins; `kill` ends it at `place`, if there is one."""
        self._calls, self._place, self._kill = 0, place, kill
        self.polled.clear()

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] != "http" or not scope["path"].startswith("/bot"):
            await self._app(scope, receive, send)
            return
        method = scope["path"].rpartition("/")[2]
        self._calls += 1
        place = self._place
        if place is None or self._calls != place.call:
            if method == "getUpdates":
                self.polled.set()
            await self._app(scope, receive, send)
            return
        self.hits.append((method, place.when))
        if place.when == "later":
            asyncio.get_running_loop().call_later(place.seconds, self._kill)
            await self._app(scope, receive, send)
            return
        if place.when == "after":
            await self._app(scope, receive, _unheard)
        self._kill()
        await Dropped()(scope, receive, send)


async def _unheard(message: Message) -> None:
    """The answer to a bot that is dead."""


def new_world(now: Callable[[], datetime]) -> tuple[World, Waiting]:
    """The stand-in's world, with a queue that says when everything is confirmed."""
    world = World(now)
    world.updates = queue = Waiting(1)
    return world, queue
