"""B10: the figures of a digest with many clients, against one grouped query by hand."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable, Iterator
from datetime import timedelta
from time import perf_counter
from typing import Any

import psycopg
from sqlalchemy import Connection, text

from scheduler.usecases import figures
from storage.store import SqlStore
from storage.tables.base import metadata
from tests.bench.bench import ENGINES, Bench
from tests.bench.figure import Figure, in_turns
from tests.bench.practice import MONDAY, Practice, micro, open_practice
from tests.bench.raw import dsn

ENTRIES_A_DAY = 5
A_WEEK = timedelta(weeks=1)
GROUPED = """
SELECT client, count(*), sum(CASE WHEN 100 * done >= 80 * total THEN 1 ELSE 0 END), sum(done),
       sum(CASE WHEN done < total THEN done ELSE total END), sum(total), sum(bouts)
FROM (SELECT ledger.client, ledger.day, sum(ledger.reps) AS done, count(*) AS bouts, day.total
      FROM ledger JOIN day ON day.client = ledger.client AND day.day = ledger.day
      WHERE ledger.day BETWEEN {first} AND {last} AND ledger.voids IS NULL
      GROUP BY ledger.client, ledger.day, day.total) AS days
GROUP BY client
"""


def figures_of_many(bench: Bench) -> Iterator[Figure]:
    """`figures.lines` of a week for 5,000 clients whose store holds 1,000,000 entries.

    The peer groups the week's entries by client in one query: days kept, reps, capped reps, bouts. It
    works out no spread, no cells, no reasons and no companions, and knows neither breaks nor holds.
    """
    clients = bench.size(5_000, 500)
    days = bench.size(1_000_000, 20_000) // clients // ENTRIES_A_DAY
    for engine in ENGINES:
        with bench.database(engine) as url:
            practice = open_practice(url, clients, MONDAY)
            entries = _fill(practice, days)
            database, store = practice.open()
            found = in_turns(bench.rounds, lambda: _ours(store, practice), _peer(practice))  # noqa: B023
            database.close_sync()
            note = f"{clients:,} clients, {entries:,} entries, one week of them; {engine}"
            yield Figure(f"B10 digest {engine}", *found, "at most", 1.3, "ms", note)


def _ours(store: SqlStore, practice: Practice) -> float:
    start = (MONDAY - A_WEEK).date()
    begun = perf_counter()
    found = store.run_sync(
        lambda tx: figures.lines(tx, practice.clients, start, practice.now + A_WEEK)
    )
    taken = 1000 * (perf_counter() - begun)
    if len(found) != len(practice.clients) or any(line["bouts"] != 35 for line in found):
        raise RuntimeError("the figures are not those of the entries")
    return taken


def _peer(practice: Practice) -> Callable[[], float]:
    first, last = (MONDAY - A_WEEK).date(), (MONDAY - timedelta(days=1)).date()
    raw: Any
    if practice.url.get_backend_name() == "sqlite":
        raw = sqlite3.connect(str(practice.url.database))
    else:
        raw = psycopg.connect(dsn(practice.url))
    query = GROUPED.format(first=f"'{first}'", last=f"'{last}'")

    def measure() -> float:
        begun = perf_counter()
        found = raw.execute(query).fetchall()
        taken = 1000 * (perf_counter() - begun)
        if len(found) != len(practice.clients) or any(row[-1] != 35 for row in found):
            raise RuntimeError("the query's figures are not those of the entries")
        return taken

    return measure


def _fill(practice: Practice, days: int) -> int:
    """Give every client so many days before today with five entries each, all judged as kept."""
    database, _ = practice.open()
    sqlite = database.dialect == "sqlite"
    with database.engine.begin() as connection:
        connection.execute(text("UPDATE plan SET valid_from = '2026-01-01'"))
        day = "date(model.day, '-' || back.d || ' days')" if sqlite else "model.day - back.d"
        _fill_days(connection, day, days)
        connection.execute(
            text(
                "INSERT INTO ledger (client, day, reps, at, source)"
                " WITH RECURSIVE nth(n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM nth WHERE n < :most)"
                " SELECT client, day, 10, closed_at - 10000000 * (10 - n), 'past:' || day || ':' || n"
                " FROM day CROSS JOIN nth WHERE closed_at IS NOT NULL"
            ),
            {"most": ENTRIES_A_DAY},
        )
        entries = int(connection.execute(text("SELECT count(*) FROM ledger")).scalar_one())
    if not sqlite:
        with database.engine.connect() as connection:
            connection.execution_options(isolation_level="AUTOCOMMIT")
            connection.execute(text("VACUUM ANALYZE"))
    database.close_sync()
    return entries


def _fill_days(connection: Connection, day: str, days: int) -> None:
    columns = [each.name for each in metadata.tables["day"].c]
    changed = {
        "day": day,
        "closed_at": f"{micro(MONDAY)} - back.d * 86400000000",
        "verdict": "'counted'",
    }
    values = [changed.get(name, f'model."{name}"') for name in columns]
    named = ", ".join(f'"{name}"' for name in columns)
    connection.execute(
        text(
            f"INSERT INTO day ({named})"
            " WITH RECURSIVE back(d) AS (SELECT 1 UNION ALL SELECT d + 1 FROM back WHERE d < :days)"
            f" SELECT {', '.join(values)} FROM day AS model CROSS JOIN back"
        ),
        {"days": days},
    )
