"""Breaks."""

from datetime import date, datetime
from typing import Any

from sqlalchemy import Connection, Row, Select, bindparam, insert, or_, select, update

from scheduler.domain.people import Pause
from storage.memo import Memo
from storage.tables import PauseRow, table

pauses = table(PauseRow)

ADD = insert(pauses).returning(pauses)
END = update(pauses).where(pauses.c.id == bindparam("which")).returning(pauses.c.client)
OF_CLIENT = (
    select(pauses)
    .where(pauses.c.client == bindparam("client"))
    .order_by(pauses.c.first, pauses.c.id)
)


class Pauses:
    """Breaks; `scheduler.ports.Pauses` says what is promised."""

    def __init__(self, connection: Connection, memo: Memo) -> None:
        self._connection = connection
        self._memo = memo

    def add(self, pause: Pause) -> Pause:
        self._memo.forget("pauses", pause.client)
        row = {
            "client": pause.client,
            "first": pause.first,
            "last": pause.last,
            "reason": pause.reason,
            "by": pause.by,
            "at": pause.at,
        }
        return pause_of(self._connection.execute(ADD, row).one())

    def end(self, pause: int, last: date, now: datetime) -> None:
        values = {"which": pause, "last": last, "ended_at": now}
        client = self._connection.execute(END, values).scalar_one()
        self._memo.forget("pauses", client)

    def of(self, client: int, since: date) -> tuple[Pause, ...]:
        known = self._memo.get(("pauses", client), lambda: self._all(client))
        return tuple(pause for pause in known if pause.last is None or pause.last >= since)

    def _all(self, client: int) -> tuple[Pause, ...]:
        found = self._connection.execute(OF_CLIENT, {"client": client})
        return tuple(pause_of(row) for row in found)


def pauses_since(since: date) -> Select[Any]:
    goes_on = or_(pauses.c.last.is_(None), pauses.c.last >= since)
    return select(pauses).where(goes_on).order_by(pauses.c.first, pauses.c.id)


def pause_of(row: Row[Any]) -> Pause:
    return Pause(
        id=row.id,
        client=row.client,
        first=row.first,
        last=row.last,
        reason=row.reason,
        by=row.by,
        at=row.at,
        ended_at=row.ended_at,
    )
