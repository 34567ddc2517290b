"""The ledger: what was done. Lines are only ever added; a correction is a line that voids another."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import UTC, date, datetime
from typing import Any

from sqlalchemy import (
    ColumnElement,
    Connection,
    Executable,
    Row,
    Select,
    bindparam,
    exists,
    func,
    literal,
    select,
)

from scheduler.domain.days import Entry
from storage.columns import Instant
from storage.conflicts import INSERTS, unless_there
from storage.memo import Memo
from storage.tables import EntryRow, table

entries = table(EntryRow)
corrections = entries.alias("correction")

STANDS = (
    entries.c.voids.is_(None),
    ~exists().where(corrections.c.voids == entries.c.id),
)
"""A line stands if it is no correction and none voids it."""


def _standing(*which: ColumnElement[bool]) -> Select[Any]:
    return select(entries).where(*which, *STANDS).order_by(entries.c.at, entries.c.id)


OF_DAY = _standing(entries.c.client == bindparam("client"), entries.c.day == bindparam("day"))
OF_MESSAGE = _standing(
    entries.c.client == bindparam("client"), entries.c.message_id == bindparam("message")
)
SUMS = (
    select(entries.c.day, func.sum(entries.c.reps))
    .where(
        entries.c.client == bindparam("client"),
        entries.c.day.between(bindparam("first"), bindparam("last")),
        *STANDS,
    )
    .group_by(entries.c.day)
    .order_by(entries.c.day)
)
LOG = unless_there(entries, "client", "source", returning=entries.c.id)


class Ledger:
    """Reps by client and day; `scheduler.ports.Ledger` says what is promised."""

    def __init__(self, connection: Connection, memo: Memo) -> None:
        self._connection = connection
        self._memo = memo

    def log(self, entry: Entry) -> Entry | None:
        row = {
            "client": entry.client,
            "day": entry.day,
            "reps": entry.reps,
            "at": entry.at,
            "source": entry.source,
            "bout": entry.bout,
            "message_id": entry.message_id,
        }
        log = LOG[self._connection.dialect.name]
        number = self._connection.execute(log, row).scalar_one_or_none()
        if number is None:
            return None
        kept = replace(entry, id=number, at=entry.at.astimezone(UTC))
        self._remember(kept)
        return kept

    def _remember(self, entry: Entry) -> None:
        """Puts an entry that was written where a read would find it now."""
        key = ("ledger", entry.client, entry.day)
        known: tuple[Entry, ...] | None = self._memo.known(*key)
        if known is not None:
            self._memo.put(key, tuple(sorted((*known, entry), key=lambda each: (each.at, each.id))))

    def void(self, entry: int, source: str, at: datetime) -> bool:
        self._memo.forget_all()  # whose entry and of which day is known to the database only
        line = select(
            entries.c.client,
            entries.c.day,
            literal(0),
            literal(at, Instant),
            literal(source),
            entries.c.id,
        ).where(entries.c.id == entry, entries.c.voids.is_(None))
        correction = (
            INSERTS[self._connection.dialect.name](entries)
            .from_select(["client", "day", "reps", "at", "source", "voids"], line)
            .on_conflict_do_nothing()
        )
        return self._connection.execute(correction).rowcount == 1

    def day(self, client: int, day: date) -> tuple[Entry, ...]:
        return self._memo.get(
            ("ledger", client, day), lambda: self._read(OF_DAY, client=client, day=day)
        )

    def between(self, client: int, first: date, last: date) -> Mapping[date, int]:
        span = {"client": client, "first": first, "last": last}
        return {day: int(reps) for day, reps in self._connection.execute(SUMS, span)}

    def of_message(self, client: int, message_id: int) -> tuple[Entry, ...]:
        return self._read(OF_MESSAGE, client=client, message=message_id)

    def latest(self, client: int, day: date) -> Entry | None:
        lines = self.day(client, day)
        return max(lines, key=lambda line: line.id, default=None)

    def _read(self, query: Executable, **values: Any) -> tuple[Entry, ...]:
        return tuple(entry_of(row) for row in self._connection.execute(query, values))


def entry_of(row: Row[Any]) -> Entry:
    return Entry(
        id=row.id,
        client=row.client,
        day=row.day,
        reps=row.reps,
        at=row.at,
        source=row.source,
        bout=row.bout,
        message_id=row.message_id,
    )
