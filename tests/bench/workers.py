"""B13: several workers over one PostgreSQL, against one."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator, Iterator
from contextlib import AsyncExitStack, asynccontextmanager
from statistics import median

from tests.bench.answers import TRIP
from tests.bench.bench import Bench
from tests.bench.chatserver import ChatServer, chat_server
from tests.bench.figure import Figure
from tests.bench.leaving import fall_due
from tests.bench.practice import Practice, open_practice
from tests.bench.processes import program, running, settings

READY_POLL_SECONDS = 0.1
GOALS = ((2, 1.8), (4, 3.0))


def several(bench: Bench) -> Iterator[Figure]:
    """Prompts a second that leave with two and four `run --only work`, against one, at a trip of 50 ms.

    One `run --only listen` receives meanwhile. The send rate is 1,000 a second over all workers, which
    caps what can be reached. Each turn has processes of its own, so none is run first to warm up.
    """
    prompts = bench.size(5_000, 300)
    rates: dict[int, list[float]] = {1: [], 2: [], 4: []}
    for _ in range(3):
        for workers, found in rates.items():
            found.append(asyncio.run(_rate(bench, workers, prompts)))
    alone = median(rates[1])
    for workers, goal in GOALS:
        note = f"{prompts} prompts due in one instant; the rate caps it at 1,000/s; PostgreSQL"
        many = median(rates[workers])
        yield Figure(f"B13 workers {workers}", many, alone, "at least", goal, "prompts/s", note)


async def _rate(bench: Bench, workers: int, prompts: int) -> float:
    """Prompts a second from the instant at which all fall due until the last was accepted."""
    with bench.database("postgresql") as url:
        practice = open_practice(url, prompts)
        async with chat_server(TRIP) as server, house(bench, practice, server, workers):
            begun = await fall_due(practice, practice.clients)
            await server.sent_to(prompts)
            return prompts / (server.sent[-1][1] - begun)


@asynccontextmanager
async def house(
    bench: Bench, practice: Practice, server: ChatServer, workers: int
) -> AsyncIterator[None]:
    """One process that listens and so many that work, all up."""
    async with AsyncExitStack() as stack:
        await stack.enter_async_context(running(bench, practice, server, "--only", "listen"))
        bots = []
        for _ in range(workers):
            words = ("-m", "bot", "run", "--only", "work")
            one = program(bench, *words, environment=settings(practice, server))
            bots.append(await stack.enter_async_context(one))
        for bot in bots:
            while "running" not in bot.words():
                if bot.process.returncode is not None:
                    raise RuntimeError(f"a worker has ended: {bot.words()[-2000:]}")
                await asyncio.sleep(READY_POLL_SECONDS)
        yield
