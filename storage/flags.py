"""What hurts, what is stopped, and what a clinician should know."""

from dataclasses import replace
from datetime import date, datetime
from typing import Any

from sqlalchemy import Connection, Row, insert, select, update

from scheduler.domain.flags import Flag
from scheduler.domain.people import Hold
from storage.engine import conflict_insert
from storage.tables import FlagRow, HoldRow, ReportRow, table

reports = table(ReportRow)
holds = table(HoldRow)
flags = table(FlagRow)

ALL_EXERCISE = ""
"""The `movement` of a hold that stops everything."""


class Health:
    """Reports and holds; `scheduler.ports.Health` says what is promised."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def report(self, client: int, kind: str, day: date, at: datetime, body: Any) -> int:
        row = {"client": client, "kind": kind, "day": day, "at": at, "body": body}
        new = insert(reports).values(row).returning(reports.c.id)
        number: int = self._connection.execute(new).scalar_one()
        return number

    def reports(self, client: int, since: date) -> tuple[tuple[str, date, datetime, Any], ...]:
        query = (
            select(reports.c.kind, reports.c.day, reports.c.at, reports.c.body)
            .where(reports.c.client == client, reports.c.day >= since)
            .order_by(reports.c.at, reports.c.id)
        )
        return tuple((r.kind, r.day, r.at, r.body) for r in self._connection.execute(query))

    def hold(self, client: int, reason: str, movement: str | None, now: datetime) -> bool:
        row = {
            "client": client,
            "reason": reason,
            "movement": movement or ALL_EXERCISE,
            "opened_at": now,
        }
        new = conflict_insert(self._connection, holds).values(row).on_conflict_do_nothing()
        return self._connection.execute(new).rowcount == 1

    def holds(self, client: int) -> tuple[Hold, ...]:
        query = (
            select(holds)
            .where(holds.c.client == client, holds.c.released_at.is_(None))
            .order_by(holds.c.opened_at, holds.c.id)
        )
        return tuple(_hold(row) for row in self._connection.execute(query))

    def release(self, client: int, by: int, now: datetime) -> int:
        open_ = (holds.c.client == client, holds.c.released_at.is_(None))
        released = update(holds).where(*open_).values(released_at=now, released_by=by)
        return self._connection.execute(released).rowcount


class Flags:
    """Flags by episode; `scheduler.ports.Flags` says what is promised."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def open(self, flag: Flag) -> Flag | None:
        row = {
            "client": flag.client,
            "clinician": flag.clinician,
            "kind": flag.kind,
            "urgent": flag.urgent,
            "episode": flag.episode,
            "opened_at": flag.opened_at,
            "details": dict(flag.details),
            "closed_at": flag.closed_at,
            "outcome": flag.outcome,
            "note": "",
        }
        new = (
            conflict_insert(self._connection, flags)
            .values(row)
            .on_conflict_do_nothing()
            .returning(flags.c.id)
        )
        number = self._connection.execute(new).scalar_one_or_none()
        return None if number is None else replace(flag, id=number)

    def get(self, flag: int) -> Flag | None:
        row = self._connection.execute(select(flags).where(flags.c.id == flag)).one_or_none()
        return _flag(row) if row else None

    def of_client(self, client: int) -> tuple[Flag, ...]:
        query = (
            select(flags)
            .where(flags.c.client == client, flags.c.closed_at.is_(None))
            .order_by(flags.c.opened_at, flags.c.id)
        )
        return tuple(_flag(row) for row in self._connection.execute(query))

    def close(self, flag: int, outcome: str, by: int, note: str, now: datetime) -> bool:
        open_ = (flags.c.id == flag, flags.c.closed_at.is_(None))
        closed = {"closed_at": now, "closed_by": by, "outcome": outcome, "note": note}
        return self._connection.execute(update(flags).where(*open_).values(closed)).rowcount == 1


def _hold(row: Row[Any]) -> Hold:
    return Hold(
        id=row.id,
        client=row.client,
        reason=row.reason,
        opened_at=row.opened_at,
        movement=row.movement or None,
        released_at=row.released_at,
    )


def _flag(row: Row[Any]) -> Flag:
    return Flag(
        client=row.client,
        clinician=row.clinician,
        kind=row.kind,
        urgent=row.urgent,
        episode=row.episode,
        opened_at=row.opened_at,
        details=row.details,
        id=row.id,
        closed_at=row.closed_at,
        outcome=row.outcome,
    )
