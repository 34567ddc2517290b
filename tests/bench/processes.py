"""Bots as processes of their own, started and ended by the bench."""

from __future__ import annotations

import asyncio
import sys
from asyncio.subprocess import DEVNULL, Process
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path
from time import perf_counter

from tests.bench.bench import Bench
from tests.bench.chatserver import TOKEN, ChatServer
from tests.bench.practice import Practice
from tests.process.life import BARE, ROOT, free_port

FASTEST = 1000
"""Messages a second: the most that the platform takes from anybody."""
ENDS_WITHIN = 30.0


class Bot:
    """A process, and when it was started."""

    def __init__(self, process: Process, begun: float, log: Path) -> None:
        self.process, self.begun, self._log = process, begun, log

    async def kill(self) -> None:
        """SIGKILL, if it is still there."""
        if self.process.returncode is None:
            self.process.kill()
        await self.process.wait()

    def peak_memory(self) -> float:
        """The most memory it has used so far, in MB, as the kernel counts it."""
        status = Path(f"/proc/{self.process.pid}/status").read_text(encoding="utf-8")
        (line,) = (each for each in status.splitlines() if each.startswith("VmHWM:"))
        return int(line.split()[1]) / 1024

    def words(self) -> str:
        """What it has written on its standard streams."""
        return self._log.read_text(encoding="utf-8", errors="replace")


def settings(practice: Practice, server: ChatServer, rate: float = FASTEST) -> dict[str, str]:
    """The environment of `boutwise run`."""
    return {
        "BOUTWISE_DATABASE_URL": practice.url.render_as_string(hide_password=False),
        "BOUTWISE_KEY": practice.key,
        "BOUTWISE_TOKEN": TOKEN,
        "BOUTWISE_BOT_API_URL": server.root,
        "BOUTWISE_OPS_BIND": f"127.0.0.1:{free_port()}",
        "BOUTWISE_SEND_RATE": str(rate),
    }


@asynccontextmanager
async def program(
    bench: Bench, *words: str, environment: dict[str, str] | None = None
) -> AsyncIterator[Bot]:
    """`python WORDS` until the block ends."""
    log = bench.path("bot.log")
    with log.open("ab") as told:
        begun = perf_counter()
        process = await asyncio.create_subprocess_exec(
            sys.executable, *words, cwd=ROOT, env=BARE | (environment or {}),
            stdin=DEVNULL, stdout=told, stderr=told,
        )  # fmt: skip
    bot = Bot(process, begun, log)
    try:
        yield bot
    finally:
        if process.returncode is None:
            process.terminate()
        try:
            await asyncio.wait_for(process.wait(), ENDS_WITHIN)
        except TimeoutError:
            await bot.kill()


@asynccontextmanager
async def running(
    bench: Bench, practice: Practice, server: ChatServer, *words: str, rate: float = FASTEST
) -> AsyncIterator[Bot]:
    """`boutwise run WORDS`, polling, until the block ends."""
    polls = len(server.polls)
    environment = settings(practice, server, rate)
    async with program(bench, "-m", "bot", "run", *words, environment=environment) as bot:
        # The first poll asks what was missed, the second waits for what comes.
        await _up(server, bot, polls + 2)
        yield bot


@asynccontextmanager
async def empty_bot(bench: Bench, server: ChatServer) -> AsyncIterator[Bot]:
    """The library's default bot, polling, until the block ends."""
    polls = len(server.polls)
    async with program(bench, "-m", "tests.bench.emptybot", server.root) as bot:
        await _up(server, bot, polls + 1)
        yield bot


async def _up(server: ChatServer, bot: Bot, polls: int) -> None:
    ended = asyncio.create_task(bot.process.wait())
    polled = asyncio.create_task(server.until(lambda: len(server.polls) >= polls))
    await asyncio.wait({ended, polled}, return_when=asyncio.FIRST_COMPLETED)
    ended.cancel()
    if not polled.done():
        polled.cancel()
        raise RuntimeError(f"the bot has ended: {bot.words()[-2000:]}")
