"""B6 and B7: many prompts that fall due in one instant, and what people notice of it meanwhile."""

from __future__ import annotations

import asyncio
from collections import Counter
from collections.abc import AsyncIterator, Iterator
from contextlib import asynccontextmanager
from datetime import timedelta
from statistics import median
from time import perf_counter

from scheduler.clock import SystemClock
from tests.bench.answers import TRIP, Crowd
from tests.bench.bench import ENGINES, Bench, Engine
from tests.bench.chatserver import ChatServer, chat_server
from tests.bench.figure import Figure
from tests.bench.practice import Practice, count, open_practice, wait_until
from tests.bench.processes import FASTEST, running

SOON = timedelta(seconds=1.5)
"""Time for the prompts' new instant to be written before it comes."""
ORDINARY = 30
"""Messages a second that the platform takes from a bot that does not pay."""
LIMIT = 250
UNFINISHED = (
    "SELECT count(*) FROM outbox WHERE bout IS NOT NULL AND state IN ('due', 'claimed', 'sending')"
)
"""Prompts that are not settled."""


async def fall_due(practice: Practice, clients: range) -> float:
    """Let these clients' prompts fall due in one instant soon; that instant, as `perf_counter` has it."""
    due = SystemClock().now() + SOON
    await asyncio.to_thread(wait_until, practice, due, clients)
    return perf_counter() + (due - SystemClock().now()).total_seconds()


def acknowledged(bench: Bench) -> Iterator[Figure]:
    """Milliseconds until a client's text is answered while 1,000 prompts leave at 30 a second, and idle.

    The trip is 50 ms. A text is answered by a message of its own, which has to find its place among the
    prompts; to stop the turning of a tapped button takes none.
    """
    prompts = bench.size(1_000, 45)
    texts, rounds = bench.size(150, 9), 3

    async def measure() -> tuple[list[float], list[float]]:
        clients = (rounds + 1) * (prompts + 2 * texts)
        busy, idle = [], []
        async with house(bench, clients, ORDINARY) as (server, practice):
            writers = practice.clients[(rounds + 1) * prompts :]
            crowd = Crowd(server, [practice.account(each) for each in writers])
            between = 0.9 * prompts / ORDINARY / texts
            for number in range(rounds + 1):
                calm = await crowd.reply_times(texts, between)
                begun = await fall_due(practice, practice.clients[number * prompts :][:prompts])
                await asyncio.sleep(begun - perf_counter())
                before = len(server.sent)
                full = await crowd.reply_times(texts, between)
                await server.sent_to(before + prompts + texts)
                if number:  # the first was to warm up
                    idle += calm
                    busy += full
        return busy, idle

    busy, idle = asyncio.run(measure())
    note = f"{len(busy)} texts while {prompts} prompts leave at {ORDINARY}/s, three times; SQLite"
    yield Figure("B6 acknowledged median", median(busy), median(idle), "at most", 1.5, "ms", note)
    note = f"the slowest of them; idle: {max(idle):.0f} ms; the peer is the limit itself"
    yield Figure("B6 acknowledged worst", max(busy), LIMIT, "at most", 1, "ms", note)


@asynccontextmanager
async def house(
    bench: Bench, clients: int, rate: float, engine: Engine = "sqlite"
) -> AsyncIterator[tuple[ChatServer, Practice]]:
    """The real bot at work at a trip of 50 ms, with a prompt waiting for every client."""
    with bench.database(engine) as url:
        practice = open_practice(url, clients)
        async with chat_server(TRIP) as server, running(bench, practice, server, rate=rate):
            yield server, practice


def last_of_many(bench: Bench) -> Iterator[Figure]:
    """Seconds until the last of 10,000 prompts, due in one instant, was accepted, against N / rate.

    The trip is 50 ms, every mark is durable. At 30 a second that takes 333 s, so it is done once; at
    1,000 a second it is done three times, for 10,000 clients each time. Then, how many came twice.
    """
    twice = 0
    for engine in ENGINES:
        for rate, clients, rounds in (
            (ORDINARY, bench.size(10_000, 150), 1),
            (FASTEST, bench.size(10_000, 300), 3),
        ):
            if rate == ORDINARY and engine != "sqlite":
                continue
            taken, doubled = asyncio.run(_lasts(bench, engine, clients, rate, rounds))
            twice += doubled
            note = f"{clients} prompts on {engine}, {rounds} x, 50 ms trip; the peer is N / rate"
            name = f"B7 last {engine} {rate}/s"
            yield Figure(name, median(taken), clients / rate, "at most", 1.05, "s", note)
    yield Figure("B7 last doubled", twice, 0, "at most", 0, "prompts", "over all of these")


async def _lasts(
    bench: Bench, engine: Engine, clients: int, rate: int, rounds: int
) -> tuple[list[float], int]:
    taken = []
    async with house(bench, clients * rounds, rate, engine) as (server, practice):
        for number in range(rounds):
            these = practice.clients[number * clients :][:clients]
            begun = await fall_due(practice, these)
            await server.sent_to((number + 1) * clients)
            taken.append(server.sent[-1][1] - begun)
        return taken, _doubled(server)


def _doubled(server: ChatServer) -> int:
    """Messages that were accepted once more in the same chat."""
    return sum(times - 1 for times in Counter(chat for chat, _ in server.sent).values())


def killed(bench: Bench) -> Iterator[Figure]:
    """SIGKILL in the middle of many prompts at 1,000 a second, and a new start.

    Lost is what did not come and was not being sent when the bot died, or came twice.
    """
    prompts = bench.size(10_000, 300)
    for engine in ENGINES:
        lost, doubled, unknown = asyncio.run(_after_kill(bench, engine, prompts))
        note = f"{prompts} prompts, killed when half had come; {unknown} were being sent"
        yield Figure(f"B7 killed {engine} lost", lost, 0, "at most", 0, "prompts", note)
        yield Figure(f"B7 killed {engine} doubled", doubled, 0, "at most", 0, "prompts", note)


async def _settled(practice: Practice) -> None:
    """Return when every prompt has been sent, or given up."""
    while await asyncio.to_thread(count, practice, UNFINISHED):  # noqa: ASYNC110 # another process's doing
        await asyncio.sleep(0.2)


async def _after_kill(bench: Bench, engine: Engine, prompts: int) -> tuple[int, int, int]:
    with bench.database(engine) as url:
        practice = open_practice(url, prompts)
        async with chat_server(TRIP) as server:
            async with running(bench, practice, server) as bot:
                await fall_due(practice, practice.clients)
                await server.sent_to(prompts // 2)
                await bot.kill()
            async with running(bench, practice, server):
                await _settled(practice)
            unknown = count(practice, "SELECT count(*) FROM outbox WHERE state = 'unknown'")
            told = count(practice, "SELECT count(*) FROM outbox WHERE state = 'sent' AND bout > 0")
            return prompts - told - unknown, _doubled(server), unknown
