"""The last button of each person that was carried out: one row a person at most."""

from sqlalchemy import Connection, bindparam, delete, select

from scheduler.ports import Tap
from storage.conflicts import replacing
from storage.tables import TapRow, table

taps = table(TapRow)

LAST = select(taps.c.message_id, taps.c.data, taps.c.at).where(taps.c.person == bindparam("person"))
KEEP = replacing(taps)
FORGET = delete(taps).where(taps.c.person == bindparam("person"))


class Taps:
    """What was tapped last; `scheduler.ports.Taps` says what is promised."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def last(self, person: int) -> Tap | None:
        row = self._connection.execute(LAST, {"person": person}).one_or_none()
        return Tap(row.message_id, row.data, row.at) if row else None

    def keep(self, person: int, tap: Tap) -> None:
        row = {"person": person, "message_id": tap.message_id, "data": tap.data, "at": tap.at}
        self._connection.execute(KEEP[self._connection.dialect.name], row)

    def forget(self, person: int) -> None:
        self._connection.execute(FORGET, {"person": person})
