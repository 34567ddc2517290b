"""Updates that were set aside; few rows of many, found by an index of their own (R1)."""

from collections.abc import Iterator
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, Select, bindparam, func, literal_column, select, update

from scheduler.ports import SetAside
from storage.tables import Arrival, InboxRow, PersonRow, table

inbox = table(InboxRow)
persons = table(PersonRow)

ASIDE = inbox.c.state == literal_column("'aside'")
"""Written out, so that the partial index is used (see `storage.tables.base.partial`)."""
WHOSE = (
    select(persons.c.id)
    .where(persons.c.account_lookup == inbox.c.chat)
    .order_by(persons.c.acting.desc(), persons.c.id)
    .limit(1)
    .scalar_subquery()
)
"""A private chat is found by the same hash as its person's account."""
ROWS = select(inbox.c.update_id, inbox.c.received_at, WHOSE.label("person")).where(ASIDE)

COUNT = select(func.count()).select_from(inbox).where(ASIDE)
COUNT_SINCE = COUNT.where(inbox.c.received_at >= bindparam("since"))
OLDEST = ROWS.order_by(inbox.c.received_at, inbox.c.update_id).limit(bindparam("most"))
ONE = ROWS.where(inbox.c.update_id == bindparam("which"))
WAITING = {"state": Arrival.WAITING, "attempts": 0}
"""What it failed of stays with it: it is known as one that is tried again."""
AGAIN = (
    update(inbox).where(ASIDE, inbox.c.update_id == bindparam("which")).values(**WAITING)
)  # fmt: skip
ALL_AGAIN = update(inbox).where(ASIDE).values(**WAITING).returning(inbox.c.update_id)
DROP = (
    update(inbox)
    .where(ASIDE, inbox.c.update_id == bindparam("which"))
    .values(state=Arrival.DONE)
)  # fmt: skip
"""What it failed of stays with it."""


class Aside:
    """What was set aside; `scheduler.ports.Aside` says what is promised."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def count(self, since: datetime | None = None) -> int:
        if since is None:
            return int(self._connection.execute(COUNT).scalar_one())
        return int(self._connection.execute(COUNT_SINCE, {"since": since}).scalar_one())

    def oldest(self, limit: int) -> tuple[SetAside, ...]:
        return tuple(self._rows(OLDEST, {"most": limit}))

    def get(self, update_id: int) -> SetAside | None:
        return next(self._rows(ONE, {"which": update_id}), None)

    def again(self, update_id: int, now: datetime) -> bool:
        put_back = self._connection.execute(AGAIN, {"which": update_id, "retry_at": now})
        return put_back.rowcount == 1

    def all_again(self, now: datetime) -> tuple[int, ...]:
        put_back = self._connection.execute(ALL_AGAIN, {"retry_at": now})
        return tuple(sorted(put_back.scalars()))

    def drop(self, update_id: int) -> bool:
        return self._connection.execute(DROP, {"which": update_id}).rowcount == 1

    def _rows(self, which: Select[Any], given: dict[str, int]) -> Iterator[SetAside]:
        for row in self._connection.execute(which, given):
            yield SetAside(row.update_id, row.person, row.received_at)
