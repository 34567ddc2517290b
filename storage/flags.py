"""What hurts, what is stopped, and what a clinician should know."""

from dataclasses import replace
from datetime import date, datetime
from typing import Any

from sqlalchemy import Connection, Row, bindparam, func, insert, select, update

from scheduler.domain.flags import Flag
from scheduler.domain.people import Hold
from storage.conflicts import unless_there
from storage.memo import Memo
from storage.tables import FlagRow, HoldRow, ReportRow, table

reports = table(ReportRow)
holds = table(HoldRow)
flags = table(FlagRow)

ALL_EXERCISE = ""
"""The `movement` of a hold that stops everything."""

REPORT = insert(reports).returning(reports.c.id)
REPORTS = (
    select(reports.c.kind, reports.c.day, reports.c.at, reports.c.body)
    .where(reports.c.client == bindparam("client"), reports.c.day >= bindparam("since"))
    .order_by(reports.c.at, reports.c.id)
)
HOLD = unless_there(holds)
HOLDS = (
    select(holds)
    .where(holds.c.client == bindparam("client"))
    .order_by(holds.c.opened_at, holds.c.id)
)
RELEASE = update(holds).where(holds.c.client == bindparam("whose"), holds.c.released_at.is_(None))

OPEN = unless_there(flags, returning=flags.c.id)
FLAG = select(flags).where(flags.c.id == bindparam("flag"))
OPEN_FLAGS = (
    select(flags)
    .where(flags.c.client == bindparam("client"), flags.c.closed_at.is_(None))
    .order_by(flags.c.opened_at, flags.c.id)
)
CLOSE = (
    update(flags)
    .where(flags.c.id == bindparam("which"), flags.c.closed_at.is_(None))
    .returning(flags.c.client)
)
CLOSE_EPISODE = (
    update(flags)
    .where(
        flags.c.client == bindparam("whose"),
        flags.c.episode == bindparam("which"),
        flags.c.closed_at.is_(None),
    )
    .returning(flags.c.id)
)
HAD = (
    select(flags.c.id)
    .where(flags.c.client == bindparam("client"), flags.c.episode == bindparam("episode"))
    .limit(1)
)
POSTPONE = update(flags).where(flags.c.id == bindparam("which")).returning(flags.c.client)
FALLEN_DUE = (flags.c.due_at.is_not(None), flags.c.due_at <= bindparam("now"))
DUE = (
    select(flags)
    .where(*FALLEN_DUE)
    .order_by(flags.c.urgent.desc(), flags.c.due_at, flags.c.id)
    .limit(bindparam("most"))
)
DUE_OF = (
    select(flags)
    .where(flags.c.clinician == bindparam("clinician"), ~flags.c.urgent, *FALLEN_DUE)
    .order_by(flags.c.id)
)
NEXT_DUE = select(func.min(flags.c.due_at)).where(flags.c.due_at.is_not(None))


class Health:
    """Reports and holds; `scheduler.ports.Health` says what is promised."""

    def __init__(self, connection: Connection, memo: Memo) -> None:
        self._connection = connection
        self._memo = memo

    def report(self, client: int, kind: str, day: date, at: datetime, body: Any) -> int:
        row = {"client": client, "kind": kind, "day": day, "at": at, "body": body}
        number: int = self._connection.execute(REPORT, row).scalar_one()
        return number

    def reports(self, client: int, since: date) -> tuple[tuple[str, date, datetime, Any], ...]:
        found = self._connection.execute(REPORTS, {"client": client, "since": since})
        return tuple((r.kind, r.day, r.at, r.body) for r in found)

    def hold(self, client: int, reason: str, movement: str | None, now: datetime) -> bool:
        self._memo.forget("holds", client)
        row = {
            "client": client,
            "reason": reason,
            "movement": movement or ALL_EXERCISE,
            "opened_at": now,
        }
        hold = HOLD[self._connection.dialect.name]
        return self._connection.execute(hold, row).rowcount == 1

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
        found = self._connection.execute(HOLDS, {"client": client})
        return tuple(hold_of(row) for row in found)

    def release(self, client: int, by: int, now: datetime) -> int:
        self._memo.forget("holds", client)
        released = {"whose": client, "released_at": now, "released_by": by}
        return self._connection.execute(RELEASE, released).rowcount


class Flags:
    """Flags by episode; `scheduler.ports.Flags` says what is promised."""

    def __init__(self, connection: Connection, memo: Memo) -> None:
        self._connection = connection
        self._memo = memo

    def open(self, flag: Flag) -> Flag | None:
        self._memo.forget("flags", flag.client)
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
        new = OPEN[self._connection.dialect.name]
        number = self._connection.execute(new, row).scalar_one_or_none()
        return None if number is None else replace(flag, id=number)

    def get(self, flag: int) -> Flag | None:
        row = self._connection.execute(FLAG, {"flag": flag}).one_or_none()
        return flag_of(row) if row else None

    def of_client(self, client: int) -> tuple[Flag, ...]:
        return self._memo.get(("flags", client), lambda: self._of_client(client))

    def _of_client(self, client: int) -> tuple[Flag, ...]:
        found = self._connection.execute(OPEN_FLAGS, {"client": client})
        return tuple(flag_of(row) for row in found)

    def close(self, flag: int, outcome: str, by: int, note: str, now: datetime) -> bool:
        closed = {"which": flag, "note": note, **_closed(outcome, by, now)}
        return self._changed(self._connection.execute(CLOSE, closed).scalar_one_or_none())

    def close_episode(
        self, client: int, episode: str, outcome: str, by: int, now: datetime
    ) -> int | None:
        closed = {"whose": client, "which": episode, **_closed(outcome, by, now)}
        number: int | None = self._connection.execute(CLOSE_EPISODE, closed).scalar_one_or_none()
        if number is not None:
            self._memo.forget("flags", client)
        return number

    def had(self, client: int, episode: str) -> bool:
        found = self._connection.execute(HAD, {"client": client, "episode": episode})
        return found.first() is not None

    def between(self, client: int, since: datetime, until: datetime) -> tuple[Flag, ...]:
        opened = (flags.c.opened_at >= since, flags.c.opened_at < until)
        query = select(flags).where(flags.c.client == client, *opened).order_by(flags.c.id)
        return tuple(flag_of(row) for row in self._connection.execute(query))

    def postpone(self, flag: int, due_at: datetime | None, step: int) -> None:
        values = {"which": flag, "due_at": due_at, "step": step}
        self._changed(self._connection.execute(POSTPONE, values).scalar_one_or_none())

    def _changed(self, client: int | None) -> bool:
        """A flag of this client was written, or none was."""
        if client is not None:
            self._memo.forget("flags", client)
        return client is not None

    def due(self, now: datetime, limit: int) -> tuple[Flag, ...]:
        found = self._connection.execute(DUE, {"now": now, "most": limit})
        return tuple(flag_of(row) for row in found)

    def due_of(self, clinician: int, now: datetime) -> tuple[Flag, ...]:
        found = self._connection.execute(DUE_OF, {"clinician": clinician, "now": now})
        return tuple(flag_of(row) for row in found)

    def next_due(self) -> datetime | None:
        found: datetime | None = self._connection.execute(NEXT_DUE).scalar_one()
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
