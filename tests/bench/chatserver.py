"""A chat server as thin as can be: it hands out updates, and takes every message after a trip.

Half of the trip passes before a request is seen, half before its answer is. Nothing is checked: the
stand-in of `bot/rehearsal` is strict, but too slow to tell how fast a bot is.
"""

from __future__ import annotations

import asyncio
import json
from collections.abc import AsyncIterator, Callable
from contextlib import asynccontextmanager
from time import perf_counter
from typing import Any
from urllib.parse import parse_qs

from scheduler.clock import SystemClock

TOKEN = "7000000001:bench-token-not-a-secret"
ME = {"id": 7_000_000_001, "is_bot": True, "first_name": "Bench", "username": "bench_bot"}
MOST_UPDATES = 100
PATIENCE = 600.0
"""Seconds that only a bot that has failed makes anybody wait."""


def update_of(number: int, account: int, text: str) -> dict[str, Any]:
    """An update of somebody who writes in a private chat just now."""
    sender = {"id": account, "is_bot": False, "first_name": "Demo", "language_code": "en"}
    chat = {"id": account, "type": "private", "first_name": "Demo"}
    date = int(SystemClock().now().timestamp())
    said = {"message_id": number, "date": date, "from": sender, "chat": chat, "text": text}
    return {"update_id": number, "message": said}


class ChatServer:
    """What a bot has done so far, with the moments in seconds of `perf_counter`."""

    def __init__(self, trip: float) -> None:
        """`trip` is the time there and back in seconds; it may be changed at any time."""
        self.trip = trip
        self.root = ""
        self.polls: list[float] = []
        self.sent: list[tuple[int, float]] = []
        """The chat of each message, and when it was accepted."""
        self.chats: set[int] = set()
        """Those in which a message was accepted."""
        self._updates: list[dict[str, Any]] = []
        self._next_update, self._next_message = 1, 1
        self._changed = asyncio.Condition()

    # --- what people do ---

    async def say(self, account: int, text: str) -> None:
        """Somebody writes to the bot."""
        await self.say_all([account], text)

    async def say_all(self, accounts: list[int], text: str) -> None:
        """Everybody writes in the same moment."""
        self._updates += [self._update(account, text) for account in accounts]
        await self._tell()

    def _update(self, account: int, text: str) -> dict[str, Any]:
        number, self._next_update = self._next_update, self._next_update + 1
        return update_of(number, account, text)

    # --- what is waited for ---

    async def until(self, true: Callable[[], object]) -> None:
        """Wait for something that a request of the bot brings about."""
        async with asyncio.timeout(PATIENCE), self._changed:
            await self._changed.wait_for(true)

    async def sent_to(self, count: int) -> None:
        """Wait until so many messages have been accepted."""
        await self.until(lambda: len(self.sent) >= count)

    async def _tell(self) -> None:
        async with self._changed:
            self._changed.notify_all()

    # --- what the bot asks ---

    async def answer(self, method: str, body: bytes) -> object:
        """The result of a call."""
        await self._half()
        match method.lower():
            case "getupdates":
                result: object = await self._poll(_form(body))
            case "sendmessage" | "editmessagetext":
                result = self._message(_form(body))
            case "getme":
                result = ME
            case _:
                result = True
        await self._half()
        if isinstance(result, dict) and "chat" in result:
            self.sent.append((result["chat"]["id"], perf_counter()))
            self.chats.add(result["chat"]["id"])
        await self._tell()
        return result

    async def _half(self) -> None:
        if self.trip:
            await asyncio.sleep(self.trip / 2)

    def _message(self, form: dict[str, Any]) -> dict[str, Any]:
        number, self._next_message = self._next_message, self._next_message + 1
        chat = {"id": int(form["chat_id"]), "type": "private"}
        return {"message_id": number, "date": 1_800_000_000, "chat": chat, "text": "."}

    async def _poll(self, form: dict[str, Any]) -> list[dict[str, Any]]:
        self.polls.append(perf_counter())
        offset, wait = int(form.get("offset") or 0), float(form.get("timeout") or 0)
        self._updates = [each for each in self._updates if each["update_id"] >= offset]
        await self._tell()
        try:
            async with asyncio.timeout(wait), self._changed:
                await self._changed.wait_for(lambda: self._updates)
        except TimeoutError:
            return []
        return self._updates[:MOST_UPDATES]


def _form(body: bytes) -> dict[str, Any]:
    """A request's values, from a form or from JSON."""
    if body.startswith(b"{"):
        found: dict[str, Any] = json.loads(body)
        return found
    return {name: values[0] for name, values in parse_qs(body.decode()).items()}


class _Connection(asyncio.Protocol):
    """HTTP/1.1 as far as bots' libraries use it: a body with a length, the connection kept."""

    def __init__(self, server: ChatServer) -> None:
        self._server, self._data = server, b""
        self._transport: asyncio.Transport | None = None
        self._tasks: set[asyncio.Task[None]] = set()

    def connection_made(self, transport: asyncio.BaseTransport) -> None:
        assert isinstance(transport, asyncio.Transport)
        self._transport = transport

    def data_received(self, data: bytes) -> None:
        self._data += data
        while b"\r\n\r\n" in self._data:
            head, _, rest = self._data.partition(b"\r\n\r\n")
            length = _length(head)
            if len(rest) < length:
                return
            self._data = rest[length:]
            task = asyncio.create_task(self._respond(head, rest[:length]))
            self._tasks.add(task)
            task.add_done_callback(self._tasks.discard)

    def connection_lost(self, _: Exception | None) -> None:
        for task in self._tasks:
            task.cancel()

    async def _respond(self, head: bytes, body: bytes) -> None:
        path, _, query = head.split(b" ", 2)[1].decode().partition("?")
        found = await self._server.answer(path.rpartition("/")[2], body or query.encode())
        content = json.dumps({"ok": True, "result": found}).encode()
        if self._transport is not None:
            self._transport.write(
                b"HTTP/1.1 200 OK\r\nContent-Type: application/json\r\nContent-Length: "
                b"%d\r\n\r\n%b" % (len(content), content)
            )


def _length(head: bytes) -> int:
    for line in head.lower().split(b"\r\n")[1:]:
        if line.startswith(b"content-length:"):
            return int(line.partition(b":")[2])
    return 0


@asynccontextmanager
async def chat_server(trip: float = 0.0) -> AsyncIterator[ChatServer]:
    """A chat server on loopback, at `root`, until the block ends."""
    served = ChatServer(trip)
    listener = await asyncio.get_running_loop().create_server(
        lambda: _Connection(served), "127.0.0.1", 0, backlog=1024
    )
    port = listener.sockets[0].getsockname()[1]
    served.root = f"http://127.0.0.1:{port}"
    try:
        yield served
    finally:
        listener.close()
