"""Versions of plans, and clearances."""

from datetime import date, datetime
from typing import Any

from sqlalchemy import Connection, Row, func, insert, select, update

from scheduler.domain import planjson
from scheduler.domain.people import Clearance
from scheduler.domain.plan import Level, Plan
from scheduler.ports import PlanVersion
from storage.memo import Memo
from storage.tables import ClearanceRow, PlanRow, table

plans = table(PlanRow)
clearances = table(ClearanceRow)


class Plans:
    """What clinicians prescribe and allow; `scheduler.ports.Plans` says what is promised."""

    def __init__(self, connection: Connection, memo: Memo) -> None:
        self._connection = connection
        self._memo = memo

    def add(self, client: int, plan: Plan, valid_from: date, by: int, at: datetime) -> PlanVersion:
        self._memo.forget("plans", client)
        last = select(func.max(plans.c.version)).where(plans.c.client == client)
        version = (self._connection.execute(last).scalar_one() or 0) + 1
        row = {
            "client": client,
            "version": version,
            "valid_from": valid_from,
            "body": planjson.as_json(plan),
            "by": by,
            "at": at,
        }
        new = insert(plans).values(row).returning(plans.c.id)
        number: int = self._connection.execute(new).scalar_one()
        return PlanVersion(number, client, version, valid_from, plan, by, at)

    def on(self, client: int, day: date) -> PlanVersion | None:
        return next((each for each in self._versions(client) if each.valid_from <= day), None)

    def latest(self, client: int) -> PlanVersion | None:
        return next(iter(self._versions(client)), None)

    def _versions(self, client: int) -> tuple[PlanVersion, ...]:
        """A client's versions, the newest first. There are few, and a rule often asks for several days."""
        return self._memo.get(("plans", client), lambda: self._read(client))

    def _read(self, client: int) -> tuple[PlanVersion, ...]:
        query = select(plans).where(plans.c.client == client).order_by(plans.c.version.desc())
        return tuple(version_of(row) for row in self._connection.execute(query))

    def version(self, plan: int) -> PlanVersion:
        row = self._connection.execute(select(plans).where(plans.c.id == plan)).one_or_none()
        if row is None:
            raise LookupError(plan)
        return version_of(row)

    def clear(self, clearance: Clearance) -> None:
        self._memo.forget("clearance", clearance.client)
        row = {
            "client": clearance.client,
            "ceiling": int(clearance.ceiling),
            "by": clearance.by,
            "at": clearance.at,
            "lapsed_at": clearance.lapsed_at,
            "lapsed_because": clearance.lapsed_because,
        }
        self._connection.execute(insert(clearances).values(row))

    def clearance(self, client: int) -> Clearance | None:
        return self._memo.get(("clearance", client), lambda: self._clearance(client))

    def _clearance(self, client: int) -> Clearance | None:
        newest = (
            select(clearances)
            .where(clearances.c.client == client)
            .order_by(clearances.c.id.desc())
            .limit(1)
        )
        row = self._connection.execute(newest).one_or_none()
        return clearance_of(row) if row else None

    def lapse(self, client: int, reason: str, now: datetime) -> None:
        self._memo.forget("clearance", client)
        valid = (clearances.c.client == client, clearances.c.lapsed_at.is_(None))
        lapsed = {"lapsed_at": now, "lapsed_because": reason}
        self._connection.execute(update(clearances).where(*valid).values(lapsed))


def version_of(row: Row[Any]) -> PlanVersion:
    return PlanVersion(
        id=row.id,
        client=row.client,
        version=row.version,
        valid_from=row.valid_from,
        plan=planjson.from_json(row.body),
        by=row.by,
        at=row.at,
    )


def clearance_of(row: Row[Any]) -> Clearance:
    return Clearance(
        client=row.client,
        ceiling=Level(row.ceiling),
        by=row.by,
        at=row.at,
        lapsed_at=row.lapsed_at,
        lapsed_because=row.lapsed_because,
    )
