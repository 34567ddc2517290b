"""What was done beside the impact."""

from datetime import date
from typing import Any

from sqlalchemy import ColumnElement, Connection, Row, Select, bindparam, func, select

from scheduler.ports import CompanionEntry
from storage.conflicts import unless_there
from storage.tables import CompanionEntryRow, table

companions = table(CompanionEntryRow)


def last_of_days(*which: ColumnElement[bool]) -> Select[Any]:
    last = (
        select(func.max(companions.c.id))
        .where(*which)
        .group_by(companions.c.client, companions.c.day, companions.c.companion)
    )
    return select(companions).where(companions.c.id.in_(last)).order_by(companions.c.id)


BETWEEN = last_of_days(
    companions.c.client == bindparam("client"),
    companions.c.day.between(bindparam("first"), bindparam("last")),
)
LOG = unless_there(companions, "client", "source")


class Companions:
    """What was done beside the impact; `scheduler.ports.Companions` says what is promised."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def log(self, entry: CompanionEntry) -> bool:
        row = {
            "client": entry.client,
            "day": entry.day,
            "companion": entry.companion,
            "rounds": entry.rounds,
            "at": entry.at,
            "source": entry.source,
        }
        log = LOG[self._connection.dialect.name]
        return self._connection.execute(log, row).rowcount == 1

    def between(self, client: int, first: date, last: date) -> tuple[CompanionEntry, ...]:
        span = {"client": client, "first": first, "last": last}
        return tuple(companion_of(row) for row in self._connection.execute(BETWEEN, span))


def companion_of(row: Row[Any]) -> CompanionEntry:
    return CompanionEntry(
        client=row.client,
        day=row.day,
        companion=row.companion,
        rounds=row.rounds,
        at=row.at,
        source=row.source,
    )
