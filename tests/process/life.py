"""Lives of the bot: the real process, started, driven from outside, ended by a signal, started again."""

import asyncio
import json
import os
import signal
import socket
import sys
from asyncio.subprocess import PIPE, Process
from collections.abc import AsyncIterator, Coroutine
from contextlib import asynccontextmanager
from datetime import datetime
from pathlib import Path
from typing import Any

import httpx

from tests.process.road import Place, Road

PATIENCE = 30.0
"""Seconds that only a failing test waits in full."""
ROOT = Path(__file__).parents[2]
# The library warns of a coming change of its own otherwise.
BARE = {"PATH": "/usr/bin:/bin", "PTB_TIMEDELTA": "true"}


def free_port() -> int:
    """A loopback port that was free a moment ago."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port: int = probe.getsockname()[1]
        return port


async def boutwise(*words: str, settings: dict[str, str], log: Path) -> Process:
    """`python -m bot WORDS` in a process of its own, with these settings and nothing else."""
    with log.open("ab") as told:
        return await asyncio.create_subprocess_exec(
            sys.executable, "-m", "bot", *words, cwd=ROOT, env=BARE | settings, stdout=told, stderr=told
        )  # fmt: skip


class Nursery:
    """The other side of `tests.process.nursery`."""

    def __init__(self, process: Process) -> None:
        self._process = process

    async def start(self, settings: dict[str, str], log: Path) -> int:
        """A new bot; its process number."""
        assert self._process.stdin is not None
        asked = json.dumps({"settings": settings, "log": str(log)})
        self._process.stdin.write(f"{asked}\n".encode())
        await self._process.stdin.drain()
        return await self._number()

    async def ended(self) -> int:
        """Its exit code, once it has ended; negative for a signal."""
        return await self._number()

    async def _number(self) -> int:
        assert self._process.stdout is not None
        return int(await self._process.stdout.readline())


@asynccontextmanager
async def nursery() -> AsyncIterator[Nursery]:
    """A nursery until the block ends."""
    process = await asyncio.create_subprocess_exec(
        sys.executable, "-m", "tests.process.nursery", cwd=ROOT, env=BARE, stdin=PIPE, stdout=PIPE
    )
    try:
        yield Nursery(process)
    finally:
        assert process.stdin is not None
        process.stdin.close()
        await asyncio.wait_for(process.wait(), PATIENCE)


class Life:
    """One bot at a time, over one database; `settings` are its environment."""

    def __init__(
        self, nursery: Nursery, road: Road, settings: dict[str, str], ops: int, log: Path
    ) -> None:
        self._nursery, self._road = nursery, road
        self._settings, self._log = settings, log
        self._ops = f"http://127.0.0.1:{ops}"
        self._number = 0
        self._told = False
        self._end: asyncio.Task[int] | None = None

    @property
    def over(self) -> bool:
        """Whether it has been killed, or has ended."""
        return self._told or self._end is None or self._end.done()

    async def begin(self, place: Place | None = None) -> None:
        """Start it, and return when it listens and is ready, or has died at `place` before that."""
        self._told = False
        self._road.begin(place, self.kill)
        self._number = await self._nursery.start(self._settings, self._log)
        self._end = asyncio.create_task(self._nursery.ended())
        await self.until(self._road.polled.wait())
        if not self.over:
            await self.ask("GET", "/readyz")

    def kill(self) -> None:
        """SIGKILL: nothing of it runs any more."""
        if not self.over:
            self._told = True
            os.kill(self._number, signal.SIGKILL)

    async def until(self, wait: Coroutine[Any, Any, object]) -> None:
        """Wait for something, or for the end of this life."""
        assert self._end is not None
        waiting = asyncio.ensure_future(wait)
        done, _ = await asyncio.wait(
            {waiting, self._end}, timeout=PATIENCE, return_when=asyncio.FIRST_COMPLETED
        )
        waiting.cancel()
        assert done, f"nothing happened for {PATIENCE} s: {self.words()}"

    async def ask(self, method: str, path: str, body: object = None) -> dict[str, Any]:
        """Ask its operations server; nothing is answered if it dies meanwhile."""
        try:
            async with httpx.AsyncClient(timeout=PATIENCE, trust_env=False) as http:
                answer = await http.request(method, f"{self._ops}{path}", json=body)
        except httpx.TransportError:
            assert await self.died() == -signal.SIGKILL, self.words()
            return {}
        assert answer.status_code == 200, (answer.status_code, answer.text)
        told: dict[str, Any] = answer.json()
        return told

    async def step(self, to: datetime) -> bool:
        """Move its clock; False if it died meanwhile."""
        return bool(await self.ask("POST", "/clock", {"to": to.isoformat()}))

    async def died(self) -> int:
        """Its exit code, once it is dead."""
        assert self._end is not None
        return await asyncio.wait_for(asyncio.shield(self._end), PATIENCE)

    async def stop(self) -> int:
        """SIGTERM, as a service manager ends it; its exit code."""
        os.kill(self._number, signal.SIGTERM)
        return await self.died()

    def words(self) -> str:
        """The last of what it has written on its standard streams."""
        return self._log.read_text(encoding="utf-8", errors="replace")[-3000:]
