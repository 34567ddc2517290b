"""B4: a tick of the bot with millions of past prompts in its store, against one with none."""

from __future__ import annotations

import asyncio
from collections.abc import Iterator
from dataclasses import dataclass
from statistics import median
from time import perf_counter

from sqlalchemy import Connection, Table, text

from bot.telegram.work import Work
from scheduler.clock import SteppedClock
from storage.engine import Database
from storage.tables.base import metadata
from tests.bench.bench import ENGINES, Bench
from tests.bench.figure import Figure
from tests.bench.instant import worker
from tests.bench.practice import MONDAY, Practice, open_practice, wait_until

A_TICK = 20
"""Prompts that fall due in a tick: what the bot takes in one batch."""
BOUTS_A_DAY = 5
A_DAY_IN_MICROSECONDS = 86_400_000_000


def tick(bench: Bench) -> Iterator[Figure]:
    """One look at updates, clients and messages, with 20 prompts due that are sent and marked; and idle.

    The store holds 10,000,000 past prompts (rows of bouts and of the outbox), against none. The past is
    made in SQL, from one prompt that the program wrote.
    """
    clients = bench.size(10_000, 1_000)
    past = bench.size(10_000_000, 200_000)
    for engine in ENGINES:
        with bench.database(engine) as url, bench.database(engine) as beside:
            old = House.open(open_practice(url, clients, MONDAY), past // clients // BOUTS_A_DAY)
            new = House.open(open_practice(beside, clients, MONDAY), 0)
            for name, idle in ((f"B4 past {engine}", False), (f"B4 past {engine} idle", True)):
                found = asyncio.run(_measured(bench.size(101, 9), old, new, idle=idle))
                due = "nothing" if idle else f"{A_TICK} prompts"
                note = f"{past:,} past prompts of {clients:,} clients; {due} due in the tick"
                yield Figure(name, *found, "at most", 1.15, "ms", note)
            old.database.close_sync()
            new.database.close_sync()


async def _measured(times: int, old: House, new: House, *, idle: bool) -> tuple[float, float]:
    """Medians, tick by tick in turns."""
    taken: tuple[list[float], list[float]] = ([], [])
    for _ in range(times + 2):
        for each, house in zip(taken, (old, new), strict=True):
            each.append(await house.tick(idle=idle))
    return median(taken[0][2:]), median(taken[1][2:])


@dataclass(frozen=True, slots=True)
class House:
    """A practice with a worker; the prompts of its first clients fall due again and again."""

    practice: Practice
    database: Database
    work: Work
    newest: range
    """The outbox rows and, by the same numbers, the bouts of the first clients' next prompts."""

    @classmethod
    def open(cls, practice: Practice, days: int) -> House:
        """With so many days of the past behind every client."""
        database, store = practice.open()
        house = cls(practice, database, worker(store, SteppedClock(MONDAY)), range(1, A_TICK + 1))
        if days:
            _fill(database, days)
        if database.dialect == "postgresql":
            with database.engine.connect() as connection:
                connection.execution_options(isolation_level="AUTOCOMMIT")
                connection.execute(text("VACUUM ANALYZE"))
        return house

    async def tick(self, *, idle: bool) -> float:
        """Milliseconds of one tick."""
        if not idle:
            self._due_again()
        begun, before = perf_counter(), self.work.accepted
        await self.work.updates()
        await self.work.clients()
        await self.work.messages()
        taken = 1000 * (perf_counter() - begun)
        if self.work.accepted - before != (0 if idle else A_TICK):
            raise RuntimeError(f"{self.work.accepted - before} prompts left in a tick")
        return taken

    def _due_again(self) -> None:
        first, last = self.newest[0], self.newest[-1]
        self.practice.change(
            "UPDATE outbox SET state = 'due', worker = NULL, lease = NULL, lease_until = NULL,"
            " accepted_at = NULL, message_id = NULL WHERE id BETWEEN :first AND :last",
            "UPDATE bout SET state = 'waiting', asked_at = NULL, nudge_at = NULL, message_id = NULL"
            " WHERE id BETWEEN :first AND :last",
            first=first,
            last=last,
        )
        clients = self.practice.clients[:A_TICK]
        wait_until(self.practice, MONDAY, clients)


def _fill(database: Database, days: int) -> None:
    """So many days of five sent prompts for every client, by copying the first client's prompt."""
    with database.engine.connect() as connection:
        if database.dialect == "sqlite":
            connection.connection.cursor().execute("PRAGMA foreign_keys=OFF")
            connection.connection.cursor().execute("PRAGMA synchronous=OFF")
        with connection.begin():
            if database.dialect == "postgresql":  # references are right by the way they are made
                connection.execute(text("SET LOCAL session_replication_role = replica"))
            _fill_bouts(connection, days)
            _fill_outbox(connection)


def _fill_bouts(connection: Connection, days: int) -> None:
    ago = f"back.d * {A_DAY_IN_MICROSECONDS}"
    sqlite = connection.dialect.name == "sqlite"
    changed = {
        "client": "person.id",
        "day": "date(model.day, '-' || back.d || ' days')" if sqlite else "model.day - back.d",
        "n": "nth.n",
        "state": "'expired'",
        "due_at": f"model.due_at - {ago} + nth.n",
        "expires_at": f"model.expires_at - {ago}",
        "asked_at": f"model.due_at - {ago} + nth.n",
        "message_id": "back.d * 10 + nth.n",
    }
    bouts = metadata.tables["bout"]
    connection.execute(
        text(
            f"INSERT INTO bout ({_columns(bouts)})"
            " WITH RECURSIVE back(d) AS (SELECT 1 UNION ALL SELECT d + 1 FROM back WHERE d < :days),"
            " nth(n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM nth WHERE n < :bouts)"
            f" SELECT {_values(bouts, changed)} FROM back CROSS JOIN person CROSS JOIN nth"
            " JOIN bout AS model ON model.id = 1 WHERE person.role = 'client'"
        ),
        {"days": days, "bouts": BOUTS_A_DAY},
    )


def _fill_outbox(connection: Connection) -> None:
    changed = {
        "key": "'prompt:past:' || old.id",
        "state": "'sent'",
        "person": "old.client",
        "bout": "old.id",
        "due_at": "old.due_at",
        "ready_at": "old.due_at",
        "written_at": "old.due_at",
        "accepted_at": "old.due_at",
        "message_id": "old.message_id",
        "attempts": "1",
    }
    outbox = metadata.tables["outbox"]
    connection.execute(
        text(
            f"INSERT INTO outbox ({_columns(outbox)}) SELECT {_values(outbox, changed)}"
            " FROM bout AS old JOIN outbox AS model ON model.id = 1 WHERE old.state = 'expired'"
        )
    )


def _columns(rows: Table) -> str:
    return ", ".join(f'"{each.name}"' for each in rows.c if each.name != "id")


def _values(rows: Table, changed: dict[str, str]) -> str:
    names = [each.name for each in rows.c if each.name != "id"]
    return ", ".join(changed.get(name, f'model."{name}"') for name in names)
