"""What hurts, what is stopped, and what a clinician should know."""

from dataclasses import replace
from datetime import date, datetime
from typing import Any

from sqlalchemy import Connection, Row, func, insert, select, update

from scheduler.domain.flags import Flag
from scheduler.domain.people import Hold
from storage.engine import conflict_insert
from storage.memo import Memo
from storage.tables import FlagRow, HoldRow, ReportRow, table

reports = table(ReportRow)
holds = table(HoldRow)
flags = table(FlagRow)

ALL_EXERCISE = ""
"""The `movement` of a hold that stops everything."""


class Health:
    """Reports and holds; `scheduler.ports.Health` says what is promised."""

    def __init__(self, connection: Connection, memo: Memo) -> None:
        self._connection = connection
        self._memo = memo

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
        self._memo.forget("holds", client)
        row = {
            "client": client,
            "reason": reason,
            "movement": movement or ALL_EXERCISE,
            "opened_at": now,
        }
        new = conflict_insert(self._connection, holds).values(row).on_conflict_do_nothing()
        return self._connection.execute(new).rowcount == 1

    def holds(self, client: int) -> tuple[Hold, ...]:
        return tuple(hold for hold in self._holds(client) if hold.released_at is None)

    def holds_since(self, client: int, since: datetime) -> tuple[Hold, ...]:
        return tuple(
            hold
            for hold in self._holds(client)
            if hold.released_at is None or hold.released_at >= since
        )

    def _holds(self, client: int) -> tuple[Hold, ...]:
        """Every hold that a client ever had: few."""
        return self._memo.get(("holds", client), lambda: self._read_holds(client))

    def _read_holds(self, client: int) -> tuple[Hold, ...]:
        hers = select(holds).where(holds.c.client == client)
        query = hers.order_by(holds.c.opened_at, holds.c.id)
        return tuple(hold_of(row) for row in self._connection.execute(query))

    def release(self, client: int, by: int, now: datetime) -> int:
        self._memo.forget("holds", client)
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
            "due_at": flag.due_at,
            "step": flag.step,
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
        return flag_of(row) if row else None

    def of_client(self, client: int) -> tuple[Flag, ...]:
        query = (
            select(flags)
            .where(flags.c.client == client, flags.c.closed_at.is_(None))
            .order_by(flags.c.opened_at, flags.c.id)
        )
        return tuple(flag_of(row) for row in self._connection.execute(query))

    def close(self, flag: int, outcome: str, by: int, note: str, now: datetime) -> bool:
        open_ = (flags.c.id == flag, flags.c.closed_at.is_(None))
        closed = _closed(outcome, by, now) | {"note": note}
        return self._connection.execute(update(flags).where(*open_).values(closed)).rowcount == 1

    def close_episode(
        self, client: int, episode: str, outcome: str, by: int, now: datetime
    ) -> int | None:
        open_ = (
            flags.c.client == client,
            flags.c.episode == episode,
            flags.c.closed_at.is_(None),
        )
        closed = update(flags).where(*open_).values(_closed(outcome, by, now))
        number: int | None = self._connection.execute(
            closed.returning(flags.c.id)
        ).scalar_one_or_none()
        return number

    def had(self, client: int, episode: str) -> bool:
        any_ = select(flags.c.id).where(flags.c.client == client, flags.c.episode == episode)
        return self._connection.execute(any_.limit(1)).first() is not None

    def between(self, client: int, since: datetime, until: datetime) -> tuple[Flag, ...]:
        opened = (flags.c.opened_at >= since, flags.c.opened_at < until)
        query = select(flags).where(flags.c.client == client, *opened).order_by(flags.c.id)
        return tuple(flag_of(row) for row in self._connection.execute(query))

    def postpone(self, flag: int, due_at: datetime | None, step: int) -> None:
        change = update(flags).where(flags.c.id == flag).values(due_at=due_at, step=step)
        self._connection.execute(change)

    def due(self, now: datetime, limit: int) -> tuple[Flag, ...]:
        fallen_due = (
            select(flags)
            .where(flags.c.due_at.is_not(None), flags.c.due_at <= now)
            .order_by(flags.c.urgent.desc(), flags.c.due_at, flags.c.id)
            .limit(limit)
        )
        return tuple(flag_of(row) for row in self._connection.execute(fallen_due))

    def due_of(self, clinician: int, now: datetime) -> tuple[Flag, ...]:
        fallen_due = (flags.c.due_at.is_not(None), flags.c.due_at <= now)
        hers = (flags.c.clinician == clinician, ~flags.c.urgent, *fallen_due)
        query = select(flags).where(*hers).order_by(flags.c.id)
        return tuple(flag_of(row) for row in self._connection.execute(query))

    def next_due(self) -> datetime | None:
        earliest = select(func.min(flags.c.due_at)).where(flags.c.due_at.is_not(None))
        found: datetime | None = self._connection.execute(earliest).scalar_one()
        return found


def _closed(outcome: str, by: int, now: datetime) -> dict[str, Any]:
    """Closed for good: nothing more falls due about it."""
    return {"closed_at": now, "closed_by": by, "outcome": outcome, "due_at": None}


def hold_of(row: Row[Any]) -> Hold:
    return Hold(
        id=row.id,
        client=row.client,
        reason=row.reason,
        opened_at=row.opened_at,
        movement=row.movement or None,
        released_at=row.released_at,
    )


def flag_of(row: Row[Any]) -> Flag:
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
        due_at=row.due_at,
        step=row.step,
    )
