"""Versions of plans, and clearances."""

from datetime import date, datetime
from typing import Any

from sqlalchemy import Connection, Row, bindparam, func, insert, select, update

from scheduler.domain import planjson
from scheduler.domain.people import Clearance
from scheduler.domain.plan import Level, Plan
from scheduler.ports import PlanVersion
from storage.memo import Memo
from storage.tables import ClearanceRow, PlanRow, table

plans = table(PlanRow)
clearances = table(ClearanceRow)

VERSIONS = (
    select(plans).where(plans.c.client == bindparam("client")).order_by(plans.c.version.desc())
)
VERSION = select(plans).where(plans.c.id == bindparam("plan"))
ADD = insert(plans).returning(plans.c.id)
NEWEST_CLEARANCE = (
    select(clearances)
    .where(clearances.c.client == bindparam("client"))
    .order_by(clearances.c.id.desc())
    .limit(1)
)
CLEAR = insert(clearances)
LAPSE = update(clearances).where(
    clearances.c.client == bindparam("whose"), clearances.c.lapsed_at.is_(None)
)


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
        number: int = self._connection.execute(ADD, row).scalar_one()
        return PlanVersion(number, client, version, valid_from, plan, by, at)

    def on(self, client: int, day: date) -> PlanVersion | None:
        return next((each for each in self._versions(client) if each.valid_from <= day), None)

    def latest(self, client: int) -> PlanVersion | None:
        return next(iter(self._versions(client)), None)

    def _versions(self, client: int) -> tuple[PlanVersion, ...]:
        """A client's versions, the newest first. There are few, and a rule often asks for several days."""
        return self._memo.get(("plans", client), lambda: self._read(client))

    def _read(self, client: int) -> tuple[PlanVersion, ...]:
        found = self._connection.execute(VERSIONS, {"client": client})
        return tuple(version_of(row) for row in found)

    def version(self, plan: int) -> PlanVersion:
        row = self._connection.execute(VERSION, {"plan": plan}).one_or_none()
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
        self._connection.execute(CLEAR, row)

    def clearance(self, client: int) -> Clearance | None:
        return self._memo.get(("clearance", client), lambda: self._clearance(client))

    def _clearance(self, client: int) -> Clearance | None:
        row = self._connection.execute(NEWEST_CLEARANCE, {"client": client}).one_or_none()
        return clearance_of(row) if row else None

    def lapse(self, client: int, reason: str, now: datetime) -> None:
        self._memo.forget("clearance", client)
        lapsed = {"lapsed_at": now, "lapsed_because": reason}
        self._connection.execute(LAPSE, {"whose": client, **lapsed})


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
