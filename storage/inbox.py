"""Updates of the platform, from their arrival until their effects are committed (R1)."""

from datetime import datetime, timedelta
from typing import Any

from sqlalchemy import (
    ColumnElement,
    Connection,
    FromClause,
    and_,
    bindparam,
    exists,
    func,
    literal_column,
    or_,
    select,
    update,
)

from scheduler.ports import Arrived
from storage.columns import MICROSECOND
from storage.conflicts import unless_there
from storage.tables import Arrival, InboxRow, table

inbox = table(InboxRow)
other = inbox.alias("other")


def _unfinished(rows: FromClause) -> ColumnElement[bool]:
    """Written out, so that the partial index is used (see `storage.tables.base.partial`)."""
    return rows.c.state.in_([literal_column("'waiting'"), literal_column("'claimed'")])


OTHERS_OF_ITS_CHAT = and_(_unfinished(other), other.c.chat == inbox.c.chat)
NEWER_OF_ITS_CHAT = (OTHERS_OF_ITS_CHAT, other.c.update_id > inbox.c.update_id)
OLDEST_OF_ITS_CHAT = and_(
    _unfinished(inbox),
    ~exists().where(OTHERS_OF_ITS_CHAT, other.c.update_id < inbox.c.update_id),
)

KEEP = unless_there(inbox, "update_id")
MAY_BE_TRIED = or_(
    and_(inbox.c.state == Arrival.WAITING, inbox.c.retry_at <= bindparam("now")),
    and_(inbox.c.state == Arrival.CLAIMED, inbox.c.lease_until < bindparam("now")),
)
# An older update that arrives late must not start beside a newer one that is being handled.
BESIDE_ANOTHER = exists().where(
    *NEWER_OF_ITS_CHAT, other.c.state == Arrival.CLAIMED, other.c.lease_until >= bindparam("now")
)
TO_CLAIM = (
    select(inbox)
    .where(OLDEST_OF_ITS_CHAT, ~BESIDE_ANOTHER, MAY_BE_TRIED)
    .order_by(inbox.c.received_at, inbox.c.update_id)
    .limit(bindparam("most"))
    .with_for_update(of=inbox, skip_locked=True)
)
CLAIM = (
    update(inbox)
    .where(inbox.c.update_id.in_(bindparam("these", expanding=True)))
    .values(state=Arrival.CLAIMED, attempts=inbox.c.attempts + 1)
)
CLOSE = update(inbox).where(
    inbox.c.update_id == bindparam("which"),
    inbox.c.worker == bindparam("holder"),
    inbox.c.state == Arrival.CLAIMED,
)
MOVE = update(inbox).where(
    inbox.c.chat == bindparam("before"), inbox.c.state.in_([Arrival.DONE, Arrival.ASIDE])
)
STATE = select(inbox.c.state).where(inbox.c.update_id == bindparam("update_id"))
FIRST_READY = select(func.min(inbox.c.retry_at)).where(
    OLDEST_OF_ITS_CHAT,
    inbox.c.state == Arrival.WAITING,
    ~exists().where(*NEWER_OF_ITS_CHAT, other.c.state == Arrival.CLAIMED),
)
FIRST_LEASE = select(func.min(inbox.c.lease_until)).where(
    _unfinished(inbox), inbox.c.state == Arrival.CLAIMED
)
NEXT = select(FIRST_READY.scalar_subquery(), FIRST_LEASE.scalar_subquery())


class Inbox:
    """Updates in the order of each chat; `scheduler.ports.Inbox` says what is promised."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def keep(self, update_id: int, chat: int, payload: Any, now: datetime) -> bool:
        row = {
            "update_id": update_id,
            "chat": str(chat),
            "payload": payload,
            "received_at": now,
            "state": Arrival.WAITING,
            "attempts": 0,
            "retry_at": now,
        }
        keep = KEEP[self._connection.dialect.name]
        return self._connection.execute(keep, row).rowcount == 1

    def claim(
        self, now: datetime, worker: str, lease: timedelta, limit: int
    ) -> tuple[Arrived, ...]:
        rows = self._connection.execute(TO_CLAIM, {"now": now, "most": limit}).all()
        if rows:
            these = [row.update_id for row in rows]
            claimed = {"these": these, "worker": worker, "lease_until": now + lease}
            self._connection.execute(CLAIM, claimed)
        return tuple(
            Arrived(
                row.update_id,
                row.payload,
                row.received_at,
                row.attempts + 1,
                row.reason is not None,
            )
            for row in rows
        )

    def release(self) -> int:
        free = {"state": Arrival.WAITING, "worker": None, "lease_until": None}
        claimed = (_unfinished(inbox), inbox.c.state == Arrival.CLAIMED)
        return self._connection.execute(update(inbox).where(*claimed).values(free)).rowcount

    def finish(self, update_id: int, worker: str, said_by: int | None = None) -> bool:
        done = {
            "state": Arrival.DONE,
            "worker": None,
            "lease_until": None,
            "said_by": said_by,
        }
        return self._close(update_id, worker, done)

    def failed(self, update_id: int, worker: str, retry_at: datetime | None, reason: str) -> bool:
        values: dict[str, Any] = {
            "state": Arrival.ASIDE,
            "worker": None,
            "lease_until": None,
            "reason": reason,
        }
        if retry_at is not None:
            values |= {"state": Arrival.WAITING, "retry_at": retry_at}
        return self._close(update_id, worker, values)

    def moved(self, before: int, after: int) -> None:
        self._connection.execute(MOVE, {"before": str(before), "chat": str(after)})

    def finished(self, update_id: int) -> bool:
        found = self._connection.execute(STATE, {"update_id": update_id})
        return found.scalar_one_or_none() in {Arrival.DONE, Arrival.ASIDE}

    def next_due(self) -> datetime | None:
        ready, ends = self._connection.execute(NEXT).one()
        over = None if ends is None else ends + MICROSECOND
        return min((moment for moment in (ready, over) if moment), default=None)

    def unfinished(self) -> int:
        count = select(func.count()).select_from(inbox).where(_unfinished(inbox))
        return int(self._connection.execute(count).scalar_one())

    def _close(self, update_id: int, worker: str, values: dict[str, Any]) -> bool:
        mine = {"which": update_id, "holder": worker, **values}
        return self._connection.execute(CLOSE, mine).rowcount == 1
