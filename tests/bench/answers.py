"""B5: a durable answer, from an update to the message that was accepted."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator, Iterator
from contextlib import AsyncExitStack, asynccontextmanager
from statistics import median
from time import perf_counter

from bot.telegram.handlers import dispatch
from bot.telegram.incoming import incoming
from bot.telegram.work import LEASE
from scheduler.ports import Tx
from storage.store import SqlStore
from tests.bench.bench import Bench
from tests.bench.chatserver import ChatServer, chat_server, update_of
from tests.bench.figure import Figure, in_turns_async, share
from tests.bench.practice import Practice, open_practice
from tests.bench.processes import empty_bot, running
from tests.bench.rawanswer import RawHandler

TRIP = 0.050
WARMING = 10
"""Answers that are not counted."""
SAID = "3"
"""Reps, as a client writes them when nobody asked: logged, and the rest of the day worked out anew."""


class Crowd:
    """Clients who write once each: nobody is answered twice within a second."""

    def __init__(self, server: ChatServer, accounts: list[int]) -> None:
        self._server, self._accounts = server, iter(accounts)

    async def replies_a_second(self, count: int) -> float:
        """So many write in one moment; replies a second until the last was accepted."""
        before = len(self._server.sent)
        begun = perf_counter()
        await self._server.say_all([next(self._accounts) for _ in range(count)], SAID)
        await self._server.sent_to(before + count)
        return count / (self._server.sent[-1][1] - begun)

    async def reply_times(self, count: int, between: float) -> list[float]:
        """One after the other writes; milliseconds until each was answered."""
        begun: dict[int, float] = {}
        before = len(self._server.sent)
        start = perf_counter()
        for number in range(count):
            await asyncio.sleep(max(0.0, start + number * between - perf_counter()))
            account = next(self._accounts)
            begun[account] = perf_counter()
            await self._server.say(account, SAID)
        await self._server.until(lambda: begun.keys() <= self._server.chats)
        answered = [(chat, at) for chat, at in self._server.sent[before:] if chat in begun]
        return [1000 * (at - begun[chat]) for chat, at in answered]


@asynccontextmanager
async def crowd(
    bench: Bench, trip: float, clients: int, rate: float = 1000
) -> AsyncIterator[tuple[ChatServer, Crowd, Practice]]:
    """The real bot at work on SQLite, for clients whose day has begun."""
    async with AsyncExitStack() as stack:
        url = stack.enter_context(bench.database("sqlite"))
        practice = open_practice(url, clients)
        server = await stack.enter_async_context(chat_server(trip))
        await stack.enter_async_context(running(bench, practice, server, rate=rate))
        yield server, Crowd(server, [practice.account(each) for each in practice.clients]), practice


def at_a_slow_network(bench: Bench) -> Iterator[Figure]:
    """Replies a second at a round trip of 50 ms, against the library's default bot that echoes.

    Ours is `boutwise run` on SQLite with FULL, each reply a logged number: inbox, ledger, the rest of the
    day, outbox. So many clients write in the same moment.
    """
    ours_at_once, peers = bench.size(2_000, 150), bench.size(100, 20)

    async def both() -> tuple[float, float]:
        async with AsyncExitStack() as stack:
            clients = ours_at_once * (bench.rounds + 1)
            _, ours, _ = await stack.enter_async_context(crowd(bench, TRIP, clients))
            server = await stack.enter_async_context(chat_server(TRIP))
            await stack.enter_async_context(empty_bot(bench, server))
            theirs = Crowd(server, [*range(1, peers * (bench.rounds + 1) + 1)])
            return await in_turns_async(
                bench.rounds,
                lambda: ours.replies_a_second(ours_at_once),
                lambda: theirs.replies_a_second(peers),
            )

    found = asyncio.run(both())
    note = f"ours {ours_at_once} clients at once on SQLite at a send rate of 1,000/s; peer {peers}"
    yield Figure("B5 answers", *found, "at least", 25, "replies/s", note)


def at_a_fast_network(bench: Bench) -> Iterator[Figure]:
    """The slowest but one in a hundred of the answers to 200 updates a second, without any trip."""
    updates = bench.size(4_000, 200)

    async def measure() -> float:
        async with crowd(bench, 0.0, updates + 100) as (_, clients, _):
            await clients.reply_times(100, 1 / 200)
            return share(await clients.reply_times(updates, 1 / 200), 0.99)

    note = f"{updates} updates at 200/s over loopback on SQLite; the peer is the limit itself"
    yield Figure("B5 p99", asyncio.run(measure()), 50, "at most", 1, "ms", note)


def handler(bench: Bench) -> Iterator[Figure]:
    """The handler's transaction, against one on a raw connection that changes the same rows.

    Ours: `dispatch.handle` and the mark on the inbox row, in `Store.run`, as the running bot does it.
    Raw: sqlite3 by hand, with what to write known beforehand: nothing is read or worked out.
    """
    clients = bench.size(4_000, 200)
    with bench.database("sqlite") as url:
        practice = open_practice(url, clients)
        found = asyncio.run(_handled(practice))
    note = f"medians of {clients // 2} answers each, in turns; SQLite, FULL; raw only writes"
    yield Figure("B5 handler", *found, "at most", 5, "ms", note)


async def _handled(practice: Practice) -> tuple[float, float]:
    """Every other client's answer is ours."""
    database, store = practice.open()
    peer = RawHandler(practice)
    ours: list[float] = []
    peers: list[float] = []
    for client in practice.clients[::2]:
        ours.append(await _answered(store, practice, client))
        peers.append(peer.answer(client + 1))
    peer.close()
    database.close_sync()
    return median(ours[WARMING:]), median(peers[WARMING:])


async def _answered(store: SqlStore, practice: Practice, client: int) -> float:
    """Milliseconds of the handler's transaction; the update is stored and claimed before."""
    account, now = practice.account(client), practice.now
    payload = update_of(client, account, SAID)
    await store.run(lambda tx: tx.inbox.keep(client, account, payload, now))
    (row,) = await store.run(lambda tx: tx.inbox.claim(now, "bench", LEASE, 1))

    def apply(tx: Tx) -> None:
        update = incoming(row.payload, row.received_at)
        if update is not None:
            dispatch.handle(tx, update, now)
        if not tx.inbox.finish(row.update_id, "bench"):
            raise RuntimeError("the update was not ours")

    begun = perf_counter()
    await store.run(apply)
    return 1000 * (perf_counter() - begun)
