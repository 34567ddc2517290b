"""The peers that talk SQL by hand: a loop over the outbox with nothing around it, on either engine."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable, Sequence
from datetime import datetime, timedelta
from typing import Any

import asyncpg  # type: ignore[import-untyped]
from sqlalchemy import URL

from storage.engine import SQLITE_PRAGMAS
from tests.bench.practice import micro

BATCH = 100
"""Messages of one claim."""
LEASE = timedelta(seconds=60)
CLAIM = (
    "UPDATE outbox SET state = 'claimed', worker = 'raw', lease_until = ?1 WHERE id IN ("
    "SELECT id FROM outbox WHERE state = 'due' AND ready_at <= ?2 ORDER BY ready_at LIMIT ?3{lock})"
    " RETURNING id, person, bout, payload"
)
BEGIN = (
    "UPDATE outbox SET state = 'sending', attempts = attempts + 1, lease_until = ?2"
    " WHERE id = ?1 AND worker = 'raw' AND state = 'claimed'"
)
SENT = (
    "UPDATE outbox SET state = 'sent', accepted_at = ?2, message_id = ?3, worker = NULL,"
    " lease_until = NULL WHERE id = ?1 AND worker = 'raw' AND state = 'sending'"
)
BOUT_ASKED = "UPDATE bout SET state = 'asked', asked_at = ?2 WHERE id = ?1 AND state = 'waiting'"
BOUT_OPEN = "UPDATE bout SET message_id = ?3, nudge_at = ?2, expires_at = ?2 WHERE id = ?1"
WAKE = "UPDATE client SET wake_at = ?2 WHERE id = ?1"
ALL_BEGIN = (
    "UPDATE outbox SET state = 'sending', attempts = attempts + 1, lease_until = $2"
    " WHERE id = ANY($1::int[]) AND worker = 'raw' AND state = 'claimed'"
)
ALL_SENT = (
    "UPDATE outbox SET state = 'sent', accepted_at = $3, message_id = found.message, worker = NULL,"
    " lease_until = NULL FROM unnest($1::int[], $2::bigint[]) AS found(number, message)"
    " WHERE id = found.number AND worker = 'raw' AND state = 'sending'"
)


def steps(row: Sequence[Any], now: int, *, same_rows: bool) -> list[list[tuple[str, list[int]]]]:
    """The two commits of one message: it is about to leave, and it was accepted.

    With `same_rows` the prompt's own row and the client's are changed too, as the program does.
    """
    number, person, bout, _ = row
    begin, sent = [(BEGIN, [number, now])], [(SENT, [number, now, number])]
    if same_rows:
        begin += [(BOUT_ASKED, [bout, now]), (WAKE, [person, now])]
        sent += [(BOUT_OPEN, [bout, now, number]), (WAKE, [person, now])]
    return [begin, sent]


def drain_sqlite(url: URL, at: datetime, *, same_rows: bool) -> int:
    """Claim and mark everything that is due, one by one, WAL and FULL; how many there were."""
    raw = sqlite3.connect(str(url.database), isolation_level=None)
    for pragma in SQLITE_PRAGMAS:
        raw.execute(pragma)
    now, done = micro(at), 0
    while rows := raw.execute(CLAIM.format(lock=""), [micro(at + LEASE), now, BATCH]).fetchall():
        for row in rows:
            for commit in steps(row, now, same_rows=same_rows):
                raw.execute("BEGIN IMMEDIATE")
                for statement, values in commit:
                    raw.execute(statement, values)
                raw.execute("COMMIT")
        done += len(rows)
    raw.close()
    return done


async def drain_postgresql(url: URL, at: datetime, *, same_rows: bool) -> int:
    """`drain_sqlite` by one asyncpg connection."""
    now, done = micro(at), 0
    raw = await asyncpg.connect(dsn(url))
    while rows := await _claimed(raw, at):
        for row in rows:
            for commit in steps(tuple(row), now, same_rows=same_rows):
                await _commit(raw, commit)
        done += len(rows)
    await raw.close()
    return done


async def drain_shared(url: URL, at: datetime) -> int:
    """Claim and mark everything that is due, the marks of a batch in one commit each."""
    now, done = micro(at), 0
    raw = await asyncpg.connect(dsn(url))
    while rows := await _claimed(raw, at):
        numbers = [row["id"] for row in rows]
        await raw.execute(ALL_BEGIN, numbers, now)
        await raw.execute(ALL_SENT, numbers, numbers, now)
        done += len(rows)
    await raw.close()
    return done


async def _claimed(raw: Any, at: datetime) -> list[Any]:
    claim = _dollars(CLAIM.format(lock=" FOR UPDATE SKIP LOCKED"))
    found: list[Any] = await raw.fetch(claim, micro(at + LEASE), micro(at), BATCH)
    return found


async def _commit(raw: Any, statements: Iterable[tuple[str, list[int]]]) -> None:
    these = [(_dollars(statement), values) for statement, values in statements]
    if len(these) == 1:  # a statement alone is its own transaction
        await raw.execute(these[0][0], *these[0][1])
        return
    async with raw.transaction():
        for statement, values in these:
            await raw.execute(statement, *values)


_KNOWN: dict[str, str] = {}


def _dollars(statement: str) -> str:
    """The same with the placeholders of PostgreSQL."""
    return _KNOWN.setdefault(statement, statement.replace("?", "$"))


def dsn(url: URL) -> str:
    """The address as PostgreSQL's own libraries read it."""
    return url.set(drivername="postgresql").render_as_string(hide_password=False)
