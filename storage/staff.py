"""A clinician's own times, who covers whom, and the digests that were made."""

from dataclasses import replace
from datetime import date, datetime
from typing import Any

from sqlalchemy import ColumnElement, Connection, Row, bindparam, func, insert, select, update

from scheduler.domain.people import Cover, Staff
from storage.conflicts import replacing, unless_there
from storage.tables import CoverRow, DigestRow, StaffRow, table

staff = table(StaffRow)
covers = table(CoverRow)
digests = table(DigestRow)

TIMES = select(staff).where(staff.c.person == bindparam("person"))
SAVE = replacing(staff)
DUE = (
    select(staff.c.person)
    .where(staff.c.wake_at.is_not(None), staff.c.wake_at <= bindparam("now"))
    .order_by(staff.c.wake_at, staff.c.person)
    .limit(bindparam("most"))
)
NEXT_WAKE = select(func.min(staff.c.wake_at)).where(staff.c.wake_at.is_not(None))
KEEP = unless_there(digests, "clinician", "week", returning=digests.c.id)


class Staffing:
    """Clinicians' times and cover; `scheduler.ports.Staffing` says what is promised."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def get(self, person: int) -> Staff:
        row = self._connection.execute(TIMES, {"person": person}).one_or_none()
        if row is None:
            return Staff(person)
        return Staff(row.person, row.digest_weekday, row.digest_hour, row.wake_at)

    def save(self, staff_: Staff) -> None:
        row = {
            "person": staff_.person,
            "digest_weekday": staff_.digest_weekday,
            "digest_hour": staff_.digest_hour,
            "wake_at": staff_.wake_at,
        }
        self._connection.execute(SAVE[self._connection.dialect.name], row)

    def due(self, now: datetime, limit: int) -> tuple[int, ...]:
        return tuple(self._connection.execute(DUE, {"now": now, "most": limit}).scalars())

    def next_wake(self) -> datetime | None:
        found: datetime | None = self._connection.execute(NEXT_WAKE).scalar_one()
        return found

    def cover(self, cover: Cover) -> Cover:
        row = {
            "clinician": cover.clinician,
            "colleague": cover.colleague,
            "until": cover.until,
            "by": cover.by,
            "at": cover.at,
        }
        new = insert(covers).values(row).returning(covers.c.id)
        number: int = self._connection.execute(new).scalar_one()
        return replace(cover, id=number)

    def covers(self, clinician: int) -> tuple[Cover, ...]:
        return self._covers(covers.c.clinician == clinician)

    def covered_by(self, colleague: int) -> tuple[Cover, ...]:
        return self._covers(covers.c.colleague == colleague)

    def cover_of(self, cover: int) -> Cover | None:
        row = self._connection.execute(select(covers).where(covers.c.id == cover)).one_or_none()
        return _cover(row) if row else None

    def end_cover(self, cover: int, now: datetime) -> bool:
        going_on = (covers.c.id == cover, covers.c.ended_at.is_(None))
        ended = update(covers).where(*going_on).values(ended_at=now)
        return self._connection.execute(ended).rowcount == 1

    def _covers(self, which: ColumnElement[bool]) -> tuple[Cover, ...]:
        query = select(covers).where(which, covers.c.ended_at.is_(None)).order_by(covers.c.id)
        return tuple(_cover(row) for row in self._connection.execute(query))


class Digests:
    """Digests as they were made; `scheduler.ports.Digests` says what is promised."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def keep(self, clinician: int, week: date, body: Any, now: datetime) -> int | None:
        row = {"clinician": clinician, "week": week, "made_at": now, "body": body}
        keep = KEEP[self._connection.dialect.name]
        number: int | None = self._connection.execute(keep, row).scalar_one_or_none()
        return number

    def get(self, digest: int) -> tuple[int, date, Any] | None:
        row = self._connection.execute(select(digests).where(digests.c.id == digest)).one_or_none()
        return (row.clinician, row.week, row.body) if row else None

    def of(self, clinician: int, week: date) -> tuple[int, Any] | None:
        which = (digests.c.clinician == clinician, digests.c.week == week)
        row = self._connection.execute(select(digests).where(*which)).one_or_none()
        return (row.id, row.body) if row else None


def _cover(row: Row[Any]) -> Cover:
    return Cover(
        id=row.id,
        clinician=row.clinician,
        colleague=row.colleague,
        until=row.until,
        by=row.by,
        at=row.at,
        ended_at=row.ended_at,
    )
