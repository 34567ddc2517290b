"""A stand-in server on loopback, with the chat library itself as its client."""

import asyncio
from collections.abc import AsyncIterator
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from typing import Any

import httpx
import pytest
from telegram import Bot
from telegram.request import HTTPXRequest

from bot.rehearsal.server import create_app
from bot.rehearsal.serving import serving
from bot.rehearsal.world import World

# Loopback needs no proxy and no certificates, whose loading takes longer than most tests.
PLAIN: dict[str, Any] = {"trust_env": False, "verify": False}
MONDAY = datetime(2027, 3, 8, 5, 0, tzinfo=UTC)


@dataclass
class Clock:
    """Stands still until moved."""

    now: datetime = MONDAY

    def __call__(self) -> datetime:
        return self.now

    def move(self, **by: float) -> None:
        self.now += timedelta(**by)


@dataclass
class Stand:
    """A world, its address, and one client of each kind."""

    world: World
    clock: Clock
    url: str
    http: httpx.AsyncClient
    polling: asyncio.Event
    bots: list[Bot] = field(default_factory=list)

    async def bot(self, read_timeout: float = 5) -> Bot:
        """A fresh python-telegram-bot client, as another process would have it."""
        request = HTTPXRequest(
            connection_pool_size=8, read_timeout=read_timeout, httpx_kwargs=PLAIN
        )
        bot = Bot(
            self.world.token,
            base_url=f"{self.url}/bot",
            base_file_url=f"{self.url}/file/bot",
            request=request,
            get_updates_request=HTTPXRequest(httpx_kwargs=PLAIN),
        )
        await bot.initialize()
        self.bots.append(bot)
        return bot

    async def call(self, method: str, **fields: Any) -> httpx.Response:
        """One raw call with a JSON body, for what the client library would never send."""
        return await self.http.post(f"/bot{self.world.token}/{method}", json=fields)

    async def refusal(self, method: str, **fields: Any) -> tuple[int, str]:
        """Status and description of a call that must be refused, in the platform's shape."""
        answer = await self.call(method, **fields)
        body = answer.json()
        assert body["ok"] is False
        assert body["error_code"] == answer.status_code
        return answer.status_code, body["description"]

    async def person(self, name: str = "Ann Invented") -> int:
        """Somebody who has written to the bot."""
        person_id = self.world.add_person(name)
        await self.deed(person_id, "text", text="/start CODE")
        return person_id

    async def deed(self, person_id: int, what: str, **body: Any) -> dict[str, Any]:
        """What a person does; the answer's body."""
        answer = await self.http.post(f"/people/{person_id}/{what}", json=body)
        assert answer.status_code == 200, answer.text
        result: dict[str, Any] = answer.json()
        return result

    async def chat(self, person_id: int) -> list[dict[str, Any]]:
        """What a person sees."""
        answer = await self.http.get(f"/people/{person_id}/chat")
        messages: list[dict[str, Any]] = answer.json()
        return messages


@pytest.fixture
def clock() -> Clock:
    return Clock()


@pytest.fixture
async def stand(clock: Clock, monkeypatch: pytest.MonkeyPatch) -> AsyncIterator[Stand]:
    monkeypatch.setenv("PTB_TIMEDELTA", "true")  # without it the library warns of a coming change
    world = World(clock)
    app = create_app(world, webhook_pause=0.02)
    async with (
        serving(app) as url,
        httpx.AsyncClient(base_url=url, **PLAIN) as http,
    ):
        stand = Stand(world, clock, url, http, app.state.poll.waiting)
        yield stand
        for bot in stand.bots:
            await bot.shutdown()
