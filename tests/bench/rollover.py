"""B9: the start of the day of a whole practice, against writing the same rows and nothing else."""

from __future__ import annotations

import asyncio
import sqlite3
from collections.abc import Iterator, Sequence
from statistics import median
from time import perf_counter
from typing import Any

import psycopg
from sqlalchemy import URL, text

from scheduler.clock import SteppedClock
from storage.engine import SQLITE_PRAGMAS
from tests.bench.bench import ENGINES, Bench, Engine
from tests.bench.figure import Figure
from tests.bench.instant import worker
from tests.bench.practice import MONDAY, Practice, count, micro, open_practice
from tests.bench.raw import dsn

WRITTEN = ("week", "day", "bout", "outbox")
"""Tables in which the start of a day writes rows, in the order of their references."""
PATIENCE_SECONDS = 60.0
"""Of a rollover that takes longer, only what was done by then counts."""
Rows = dict[str, tuple[list[str], list[tuple[Any, ...]]]]


def rolled_over(bench: Bench) -> Iterator[Figure]:
    """Rows a second that `Work.clients` writes when everybody's day begins at once, 100,000 clients.

    Rows are those of weeks, days, bouts and the outbox; that each client's own row is changed too does
    not count. The peer inserts the very same rows into a copy of the database in one transaction:
    executemany on SQLite, COPY on PostgreSQL. After a minute no more clients are begun.
    """
    clients = bench.size(100_000, 300)
    for engine in ENGINES:
        with bench.database(engine) as url:
            practice = open_practice(url, clients, MONDAY, begun=False)
            practice.change("UPDATE client SET wake_at = :now", now=micro(MONDAY))
            done, ours, peers = 0, [], []
            for _ in range(3):
                done, rate, beside = _round(bench, engine, practice)
                ours.append(rate)
                peers.append(beside)
        note = f"{done:,} of {clients:,} clients' days begun in at most a minute; {engine}"
        found = (median(ours), median(peers))
        yield Figure(f"B9 rollover {engine}", *found, "at least", 0.3, "rows/s", note)


def _round(bench: Bench, engine: Engine, practice: Practice) -> tuple[int, float, float]:
    """Clients whose day was begun, and the rows a second of ours and of the peer."""
    with bench.database(engine, practice.url) as url:
        one = practice.at(url)
        taken = asyncio.run(_ours(one))
        rows = _written(one)
        done = count(one, "SELECT count(*) FROM day")
    number = sum(len(each) for _, each in rows.values())
    with bench.database(engine, practice.url) as url:
        beside = _copied(url, rows) if engine == "postgresql" else _inserted(url, rows)
    return done, number / taken, number / beside


async def _ours(practice: Practice) -> float:
    """Seconds until everybody's day has begun."""
    database, store = practice.open()
    work = worker(store, SteppedClock(MONDAY))
    begun = perf_counter()
    while await work.clients() and perf_counter() - begun < PATIENCE_SECONDS:
        pass
    taken = perf_counter() - begun
    await database.close()
    return taken


def _written(practice: Practice) -> Rows:
    """The rows as they rest, by table, with the names of their columns."""
    found: Rows = {}
    database, _ = practice.open()
    with database.engine.connect() as connection:
        for name in WRITTEN:
            rows = connection.execute(text(f"SELECT * FROM {name}"))
            found[name] = ([*rows.keys()], [tuple(row) for row in rows])
    database.close_sync()
    return found


def _inserted(url: URL, rows: Rows) -> float:
    """Seconds in which executemany has written the rows, WAL and FULL."""
    raw = sqlite3.connect(str(url.database), isolation_level=None)
    for pragma in SQLITE_PRAGMAS:
        raw.execute(pragma)
    raw.execute("PRAGMA journal_mode=WAL")
    begun = perf_counter()
    raw.execute("BEGIN IMMEDIATE")
    for name, (columns, values) in rows.items():
        marks = ", ".join("?" for _ in columns)
        raw.executemany(f"INSERT INTO {name} ({_names(columns)}) VALUES ({marks})", values)
    raw.execute("COMMIT")
    taken = perf_counter() - begun
    raw.close()
    return taken


def _copied(url: URL, rows: Rows) -> float:
    """Seconds in which COPY has written the rows."""
    with psycopg.connect(dsn(url)) as raw:
        begun = perf_counter()
        for name, (columns, values) in rows.items():
            with raw.cursor().copy(f"COPY {name} ({_names(columns)}) FROM STDIN") as copy:
                for row in values:
                    copy.write_row(row)
        raw.commit()
        return perf_counter() - begun


def _names(columns: Sequence[str]) -> str:
    return ", ".join(f'"{name}"' for name in columns)
