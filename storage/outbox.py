"""Messages on their way out (R2, R3): due, claimed, sending, and what became of them."""

from datetime import date, datetime, timedelta
from typing import Any

from sqlalchemy import (
    BigInteger,
    ColumnElement,
    Connection,
    Row,
    and_,
    func,
    literal,
    or_,
    select,
    type_coerce,
    update,
)

from scheduler.domain.messages import Lane, Message, as_json, from_json
from scheduler.ports import Book, Claim, Letter, Outgoing, Post
from storage import queue
from storage.columns import EPOCH, MICROSECOND, Instant
from storage.engine import conflict_insert
from storage.queue import outbox

ANY_LANGUAGE = "en"
"""For somebody of whom nothing is known yet."""
NO_CLAIM = {"worker": None, "lease": None, "lease_until": None, "put_back_until": None}


class Outbox:
    """The outbox; `scheduler.ports.Outbox` says what is promised."""

    def __init__(self, connection: Connection, book: Book) -> None:
        self._connection = connection
        self._book = book

    def add(self, outgoing: Outgoing, now: datetime) -> bool:
        due_at = outgoing.due_at or now
        row = {
            "key": outgoing.key,
            "state": Post.DUE,
            "lane": int(outgoing.lane),
            "person": outgoing.person,
            "chat": outgoing.chat,
            "chat_lookup": None if outgoing.chat is None else str(outgoing.chat),
            "payload": as_json(outgoing.message),
            "language": outgoing.language,
            "bout": outgoing.bout,
            "nudge": outgoing.nudge,
            "silent": outgoing.silent,
            "edits": outgoing.edits,
            "own_day": outgoing.own_day,
            "written_at": now,
            "due_at": due_at,
            "ready_at": due_at,
            "attempts": 0,
        }
        new = (
            conflict_insert(self._connection, outbox)
            .values(row)
            .on_conflict_do_nothing(index_elements=["key"])
        )
        return self._connection.execute(new).rowcount == 1

    def cancel_prompts(self, client: int, reason: str) -> None:
        waiting = (outbox.c.person == client, queue.UNSENT, outbox.c.bout.is_not(None))
        dropped = {"state": Post.DROPPED, "reason": reason, **NO_CLAIM}
        self._connection.execute(update(outbox).where(*waiting).values(dropped))

    def cancel_own(self, client: int, reason: str) -> None:
        own = or_(outbox.c.bout.is_not(None), outbox.c.own_day.is_not(None))
        dropped = {"state": Post.DROPPED, "reason": reason, **NO_CLAIM}
        waiting = (outbox.c.person == client, queue.UNSENT, own)
        self._connection.execute(update(outbox).where(*waiting).values(dropped))

    def own_on(self, client: int, day: date) -> int:
        said = select(func.count()).where(
            outbox.c.person == client,
            outbox.c.own_day.is_not(None),
            outbox.c.own_day == day,
            outbox.c.state != Post.DROPPED,
        )
        return int(self._connection.execute(said).scalar_one())

    def said(self, person: int, message_id: int) -> Message:
        mine = (outbox.c.person == person, outbox.c.message_id == message_id)
        query = select(outbox.c.payload).where(*mine).order_by(outbox.c.id.desc()).limit(1)
        payload = self._connection.execute(query).scalar_one_or_none()
        return from_json(payload) if payload else ()

    def claim_due(
        self, now: datetime, worker: str, lease: timedelta, limit: int
    ) -> tuple[Claim, ...]:
        queue.one_at_a_time(self._connection)
        first = self._connection.execute(queue.next_ids(now, self._late(), limit)).scalars()
        rows = self._connection.execute(queue.still_due(first.all())).all()
        if not rows:
            return ()
        claimed = {
            "state": Post.CLAIMED,
            "worker": worker,
            "lease": lease // MICROSECOND,
            "lease_until": now + lease,
            "put_back_until": None,
        }
        mine = (outbox.c.id.in_([row.id for row in rows]), queue.DUE)
        self._connection.execute(update(outbox).where(*mine).values(claimed))
        return tuple(_claim(row, worker) for row in rows)

    def begin(self, claim: Claim, now: datetime) -> bool:
        # A claim may have waited for most of its lease; the request gets a whole one.
        renewed = literal((now - EPOCH) // MICROSECOND, BigInteger) + outbox.c.lease
        mine = _held(claim, Post.CLAIMED) & (outbox.c.lease_until >= now)
        begun = {
            "state": Post.SENDING,
            "attempts": outbox.c.attempts + 1,
            "lease_until": type_coerce(renewed, Instant),
        }
        return self._connection.execute(update(outbox).where(mine).values(begun)).rowcount == 1

    def sent(self, claim: Claim, message_id: int, now: datetime) -> bool:
        return self._close(claim, Post.SENT, accepted_at=now, message_id=message_id)

    def put_back(self, claim: Claim, due_at: datetime) -> bool:
        return self._close(claim, Post.DUE, ready_at=due_at, put_back_until=due_at)

    def unknown(self, claim: Claim, now: datetime) -> bool:
        return self._close(claim, Post.UNKNOWN, unknown_at=now)

    def drop(self, claim: Claim, reason: str) -> bool:
        return self._close(claim, Post.DROPPED, reason=reason)

    def expire_leases(self, now: datetime) -> tuple[Claim, ...]:
        over = outbox.c.lease_until < now
        unbegun = (queue.AT_WORK, outbox.c.state == Post.CLAIMED, over)
        due_again = {"state": Post.DUE, **NO_CLAIM}
        self._connection.execute(update(outbox).where(*unbegun).values(due_again))
        begun = (
            queue.letters()
            .where(queue.AT_WORK, outbox.c.state == Post.SENDING, over)
            .order_by(outbox.c.lane, outbox.c.due_at, outbox.c.id)
        )
        return tuple(_claim(row, row.worker) for row in self._connection.execute(begun))

    def next_due(self, now: datetime) -> datetime | None:
        ready = self._connection.execute(queue.first_ready(now, self._late())).scalar_one_or_none()
        lease = select(func.min(outbox.c.lease_until)).where(queue.AT_WORK)
        ends = self._connection.execute(lease).scalar_one()
        over = None if ends is None else ends + MICROSECOND
        return min((moment for moment in (ready, over) if moment), default=None)

    def waiting(self, now: datetime) -> int:
        count = queue.count_waiting(now, self._late())
        return int(self._connection.execute(count).scalar_one())

    def _late(self) -> timedelta:
        return timedelta(minutes=self._book.practice().late_minutes)

    def _close(self, claim: Claim, state: Post, **facts: Any) -> bool:
        """sending -> `state`, by the worker that sends."""
        values = {"state": state, **NO_CLAIM, **facts}
        closed = update(outbox).where(_held(claim, Post.SENDING)).values(values)
        return self._connection.execute(closed).rowcount == 1


def _held(claim: Claim, state: Post) -> ColumnElement[bool]:
    """The row of a claim, if it is still this worker's and stands where it should."""
    return and_(
        outbox.c.id == claim.letter.outbox_id,
        outbox.c.worker == claim.worker,
        outbox.c.state == state,
    )


def _claim(row: Row[Any], worker: str) -> Claim:
    return Claim(
        letter=_letter(row),
        worker=worker,
        person=row.person,
        lane=Lane(row.lane),
        bout=row.bout,
        nudge=row.nudge,
        attempts=row.attempts,
    )


def _letter(row: Row[Any]) -> Letter:
    return Letter(
        outbox_id=row.id,
        chat=row.account if row.chat is None else row.chat,
        language=row.person_language or row.language or ANY_LANGUAGE,
        role=row.role,
        message=from_json(row.payload),
        silent=row.silent,
        edits=row.edits,
    )
