"""B1 and B2: claim and durably mark prompts, with a sender that is done at once."""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import datetime
from functools import partial
from time import perf_counter

import procrastinate
from sqlalchemy import text

from scheduler.clock import SteppedClock
from scheduler.ports import Claim
from scheduler.usecases import outbox
from storage.engine import Database
from storage.store import SqlStore
from tests.bench import raw
from tests.bench.bench import Bench, Engine
from tests.bench.figure import Figure, in_turns_async
from tests.bench.instant import InstantSender
from tests.bench.practice import MONDAY, Practice, open_practice, wait_until

Drain = Callable[[], Awaitable[int]]
WORKER = "bench"


@dataclass(frozen=True, slots=True)
class Due:
    """A practice of which every client's next prompt is due, again and again."""

    practice: Practice
    database: Database
    store: SqlStore
    clock: SteppedClock

    def again(self) -> None:
        """Put everything back as it was before the prompts left."""
        self.practice.change(
            "UPDATE outbox SET state = 'due', worker = NULL, lease = NULL, lease_until = NULL,"
            " accepted_at = NULL, message_id = NULL, attempts = 0 WHERE bout IS NOT NULL",
            "UPDATE bout SET state = 'waiting', asked_at = NULL, nudge_at = NULL, message_id = NULL",
        )
        wait_until(self.practice, MONDAY)
        if self.database.dialect == "postgresql":
            with self.database.engine.connect() as connection:
                connection.execution_options(isolation_level="AUTOCOMMIT")
                connection.execute(text("VACUUM ANALYZE outbox, bout, client"))

    def claim(self, now: datetime) -> Awaitable[tuple[Claim, ...]]:
        return self.store.run(lambda tx: outbox.claim_due(tx, now, WORKER, raw.BATCH))

    async def one_by_one(self) -> int:
        """Ours: a batch is claimed, each message is sent and marked before the next."""
        done = 0
        while claims := await self.claim(MONDAY):
            for claim in claims:
                await outbox.deliver(self.store, InstantSender(), self.clock, claim)
            done += len(claims)
        return done

    async def together(self) -> int:
        """Ours: the messages of a batch are sent side by side, as the running bot does."""
        done = 0
        while claims := await self.claim(MONDAY):
            sends = (
                outbox.deliver(self.store, InstantSender(), self.clock, each) for each in claims
            )
            await asyncio.gather(*sends)
            done += len(claims)
        return done

    async def timed(self, drain: Drain) -> float:
        """Messages a second."""
        self.again()
        begun = perf_counter()
        done = await drain()
        taken = perf_counter() - begun
        if done != len(self.practice.clients):
            raise RuntimeError(f"{done} of {len(self.practice.clients)} prompts left")
        return done / taken


@contextmanager
def due(bench: Bench, engine: Engine) -> Iterator[Due]:
    """So many prompts due on a Monday morning."""
    with bench.database(engine) as url:
        practice = open_practice(url, bench.size(5_000, 200), MONDAY)
        database, store = practice.open()
        try:
            yield Due(practice, database, store, SteppedClock(MONDAY))
        finally:
            database.close_sync()


def _measured(bench: Bench, one: Due, ours: Drain, peer: Drain) -> tuple[float, float]:
    return asyncio.run(
        in_turns_async(bench.rounds, lambda: one.timed(ours), lambda: one.timed(peer))
    )


def on_postgresql(bench: Bench) -> Iterator[Figure]:
    """`outbox.claim_due` in batches of 100 and `outbox.deliver` one by one, against raw asyncpg.

    The raw loop makes the same three commits: of the claim, of each message before it leaves, and of
    each when it was accepted. In "B1 postgresql" it changes nothing but outbox rows, which is less than
    the use case does; in "B1 postgresql same rows" it also changes the rows of the bout and the client.
    """
    with due(bench, "postgresql") as one:
        for name, same in (("B1 postgresql", False), ("B1 postgresql same rows", True)):
            peer = partial(raw.drain_postgresql, one.practice.url, MONDAY, same_rows=same)
            found = _measured(bench, one, one.one_by_one, peer)
            rows = "outbox, bout and client rows" if same else "outbox rows only"
            note = f"{len(one.practice.clients)} prompts, one by one; raw asyncpg changes {rows}"
            yield Figure(name, *found, "at least", 0.4, "prompts/s", note)


def shared(bench: Bench) -> Iterator[Figure]:
    """Messages of a batch sent side by side, against asyncpg with one commit for the marks of a batch.

    Raw: three commits for 100 messages. It changes outbox rows only.
    """
    with due(bench, "postgresql") as one:
        peer = partial(raw.drain_shared, one.practice.url, MONDAY)
        found = _measured(bench, one, one.together, peer)
        note = f"{len(one.practice.clients)} prompts, 100 at once; raw: three commits for 100"
        yield Figure("B1 shared", *found, "at least", 0.6, "prompts/s", note)


def beside_procrastinate(bench: Bench) -> Iterator[Figure]:
    """The same one by one, against procrastinate's worker with jobs that do nothing, one at a time."""
    with due(bench, "postgresql") as one, bench.empty() as url:
        jobs = bench.size(1_000, 100)

        async def both() -> tuple[float, float]:
            connector = procrastinate.PsycopgConnector(conninfo=raw.dsn(url))
            app = procrastinate.App(connector=connector)
            job = app.task(name="nothing")(_nothing)
            async with app.open_async():
                await app.schema_manager.apply_schema_async()
                return await in_turns_async(
                    bench.rounds, lambda: one.timed(one.one_by_one), lambda: _worked(app, job, jobs)
                )

        found = asyncio.run(both())
        note = f"ours {len(one.practice.clients)} prompts, peer {jobs} jobs, each one by one"
        yield Figure("B1 procrastinate", *found, "at least", 5, "messages/s", note)


async def _nothing() -> None:
    """A job."""


async def _worked(app: procrastinate.App, job: procrastinate.tasks.Task, jobs: int) -> float:  # type: ignore[type-arg]
    await job.batch_defer_async(*({} for _ in range(jobs)))
    begun = perf_counter()
    await app.run_worker_async(
        wait=False, concurrency=1, listen_notify=False, install_signal_handlers=False
    )
    return jobs / (perf_counter() - begun)


def on_sqlite(bench: Bench) -> Iterator[Figure]:
    """As B1 on SQLite with WAL and FULL, against the sqlite3 module by hand with the same commits."""
    with due(bench, "sqlite") as one:
        for name, same in (("B2 sqlite", False), ("B2 sqlite same rows", True)):

            async def peer(same: bool = same) -> int:
                return raw.drain_sqlite(one.practice.url, MONDAY, same_rows=same)

            found = _measured(bench, one, one.one_by_one, peer)
            rows = "outbox, bout and client rows" if same else "outbox rows only"
            note = f"{len(one.practice.clients)} prompts, one by one; raw sqlite3 changes {rows}"
            yield Figure(name, *found, "at least", 0.3, "prompts/s", note)
