"""How the store stands now, in numbers: each found by a partial index over the few rows that matter."""

from datetime import datetime, timedelta

from sqlalchemy import Connection, bindparam, func, literal_column, select, union_all

from scheduler.domain.messages import Lane
from scheduler.ports import Book, Post, Standing
from scheduler.ports.standing import LATE, LOST_WITHIN
from storage import queue
from storage.aside import COUNT as COUNT_ASIDE
from storage.inbox import inbox
from storage.queue import outbox
from storage.tables import FlagRow, table

flags = table(FlagRow)

_FACTS = (outbox.c.lane, outbox.c.due_at, outbox.c.bout.is_not(None).label("prompt"))
_WAITING = union_all(
    select(*_FACTS).select_from(queue.ADDRESSED).where(queue.DUE, queue.REACHABLE, queue.READY),
    select(*_FACTS)
    .select_from(queue.ADDRESSED)
    .where(
        queue.DUE,
        queue.REACHABLE,
        outbox.c.put_back_until.is_not(None),
        outbox.c.ready_at > bindparam("now"),
    ),
    select(*_FACTS).where(queue.AT_WORK),
).subquery()
"""What should have left by now: ready, put back for a while, or on its way."""
_TOO_LATE = _WAITING.c.prompt & (_WAITING.c.due_at < bindparam("oldest"))
WAITING = (
    select(
        _WAITING.c.lane,
        func.count().filter(~_TOO_LATE).label("due"),
        func.count().filter(~_TOO_LATE, _WAITING.c.due_at < bindparam("late")).label("late"),
        func.count().filter(_TOO_LATE).label("too_late"),
    )
    .where(_WAITING.c.due_at <= bindparam("now"))
    .group_by(_WAITING.c.lane)
)
LOST = (
    select(outbox.c.state, outbox.c.reason, func.count().label("number"))
    .where(
        outbox.c.state.in_([literal_column("'unknown'"), literal_column("'dropped'")]),
        outbox.c.due_at >= bindparam("since"),
    )
    .group_by(outbox.c.state, outbox.c.reason)
)
RECEIVED = select(
    func.count().label("number"), func.min(inbox.c.received_at).label("oldest")
).where(inbox.c.state.in_([literal_column("'waiting'"), literal_column("'claimed'")]))
OPEN = (
    select(flags.c.urgent, func.count().label("number"))
    .where(flags.c.closed_at.is_(None))
    .group_by(flags.c.urgent)
)


class Standings:
    """Everything in a few numbers; `scheduler.ports.Standings` says what is promised."""

    def __init__(self, connection: Connection, book: Book) -> None:
        self._connection, self._book = connection, book

    def at(self, now: datetime) -> Standing:
        oldest = now - timedelta(minutes=self._book.practice().late_minutes)
        moments = {"now": now, "late": now - LATE, "oldest": oldest}
        waiting = self._connection.execute(WAITING, moments).all()
        unknown, dropped = self._lost(now)
        received = self._connection.execute(RECEIVED).one()
        flags_open = {row.urgent: row.number for row in self._connection.execute(OPEN)}
        return Standing(
            due={Lane(row.lane): row.due for row in waiting},
            late={Lane(row.lane): row.late for row in waiting},
            too_late=sum(row.too_late for row in waiting),
            unknown=unknown,
            dropped=dropped,
            inbox=received.number,
            inbox_oldest=received.oldest,
            aside=int(self._connection.execute(COUNT_ASIDE).scalar_one()),
            flags_urgent=flags_open.get(True, 0),
            flags_other=flags_open.get(False, 0),
        )

    def _lost(self, now: datetime) -> tuple[int, dict[str, int]]:
        unknown, dropped = 0, {}
        for row in self._connection.execute(LOST, {"since": now - LOST_WITHIN}):
            if row.state is Post.UNKNOWN:
                unknown += row.number
            else:
                dropped[row.reason or ""] = row.number
        return unknown, dropped
