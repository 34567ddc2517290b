"""Messages on their way out (R2, R3): due, claimed, sending, and what became of them."""

from dataclasses import replace
from datetime import date, datetime, timedelta
from typing import Any

from sqlalchemy import Connection, Row, Update, bindparam, func, or_, select, update

from scheduler.domain.messages import Lane, Message, as_json, from_json
from scheduler.ports import Book, Claim, Letter, Outgoing, Pace, Post, Turn
from storage import queue
from storage.columns import MICROSECOND
from storage.conflicts import unless_there
from storage.departures import ONE_CHAT, Departures
from storage.queue import outbox

ANY_LANGUAGE = "en"
"""For somebody of whom nothing is known yet."""
NO_CLAIM = {"worker": None, "lease_until": None, "put_back_until": None}

ADD = unless_there(outbox, "key")
CANCEL_PROMPTS = update(outbox).where(
    outbox.c.person == bindparam("whose"), queue.UNSENT, outbox.c.bout.is_not(None)
)
CANCEL = update(outbox).where(outbox.c.key == bindparam("which"), queue.UNSENT)
OWN = (
    outbox.c.person == bindparam("whose"),
    or_(outbox.c.bout.is_not(None), outbox.c.own_day.is_not(None)),
)
REST = (outbox.c.person == bindparam("whose"), outbox.c.lane == Lane.REST)
CANCEL_OWN = update(outbox).where(*OWN, queue.UNSENT)
CANCEL_REST = update(outbox).where(*REST, queue.UNSENT)
UNDER_WAY = (queue.AT_WORK, outbox.c.state == Post.SENDING)
STOP_OWN = update(outbox).where(*OWN, *UNDER_WAY)
STOP_REST = update(outbox).where(*REST, *UNDER_WAY)
"""What is being sent may still arrive, but with a reason on its row it is not put back to be sent again."""
OWN_ON = select(func.count()).where(
    outbox.c.person == bindparam("person"),
    outbox.c.own_day.is_not(None),
    outbox.c.own_day == bindparam("day"),
    outbox.c.state != Post.DROPPED,
)
SAID = (
    select(outbox.c.payload)
    .where(outbox.c.person == bindparam("person"), outbox.c.message_id == bindparam("message"))
    .order_by(outbox.c.id.desc())
    .limit(1)
)
CLAIM = update(outbox).where(outbox.c.id.in_(bindparam("these", expanding=True)), queue.DUE)
OF_CLAIM = (
    outbox.c.id == bindparam("which"),
    outbox.c.worker == bindparam("holder"),
    outbox.c.state == bindparam("stands"),
)
"""The row of a claim, if it is still this worker's and stands where it should."""
STOPPED = update(outbox).where(*OF_CLAIM, outbox.c.reason.is_not(None))
BEGIN = (
    update(outbox)
    .where(*OF_CLAIM, outbox.c.lease_until >= bindparam("now"))
    .values(state=Post.SENDING, attempts=outbox.c.attempts + 1)
)
"""A claim whose lease has ended does not begin, whoever has the row now: another may be about to take it."""
CLOSE = update(outbox).where(*OF_CLAIM)
DUE_AGAIN = update(outbox).where(queue.AT_WORK, outbox.c.state == Post.CLAIMED, queue.OVER)
LOST = queue.LETTERS.where(queue.AT_WORK, outbox.c.state == Post.SENDING, queue.OVER).order_by(
    *queue.ORDER
)


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
        add = ADD[self._connection.dialect.name]
        return self._connection.execute(add, row).rowcount == 1

    def cancel_prompts(self, client: int, reason: str) -> None:
        dropped = {"state": Post.DROPPED, "reason": reason, **NO_CLAIM}
        self._connection.execute(CANCEL_PROMPTS, {"whose": client, **dropped})

    def cancel(self, key: str, reason: str) -> None:
        dropped = {"state": Post.DROPPED, "reason": reason, **NO_CLAIM}
        self._connection.execute(CANCEL, {"which": key, **dropped})

    def cancel_own(self, client: int, reason: str) -> None:
        self._cancel_all(CANCEL_OWN, STOP_OWN, client, reason)

    def cancel_rest(self, person: int, reason: str) -> None:
        self._cancel_all(CANCEL_REST, STOP_REST, person, reason)

    def _cancel_all(self, cancel: Update, stop: Update, whose: int, reason: str) -> None:
        """Before and after: another worker may put one back, or begin to send one, at this moment."""
        dropped = {"state": Post.DROPPED, "reason": reason, **NO_CLAIM}
        self._connection.execute(stop, {"whose": whose, "reason": reason})
        self._connection.execute(cancel, {"whose": whose, **dropped})
        self._connection.execute(stop, {"whose": whose, "reason": reason})

    def own_on(self, client: int, day: date) -> int:
        said = self._connection.execute(OWN_ON, {"person": client, "day": day})
        return int(said.scalar_one())

    def said(self, person: int, message_id: int) -> Message:
        found = self._connection.execute(SAID, {"person": person, "message": message_id})
        payload = found.scalar_one_or_none()
        return from_json(payload) if payload else ()

    def claim_due(
        self, now: datetime, worker: str, lease: timedelta, limit: int
    ) -> tuple[Claim, ...]:
        if self._connection.execute(queue.ANY_READY, {"now": now}).first() is None:
            return ()
        queue.one_at_a_time(self._connection)
        return self._claim_next(now, worker, lease, limit)

    def claim_paced(
        self, now: datetime, worker: str, lease: timedelta, limit: int, pace: Pace
    ) -> Turn:
        if self._connection.execute(queue.ANY_READY, {"now": now}).first() is None:
            return Turn(())
        queue.one_at_a_time(self._connection)
        departures = Departures(self._connection, pace, now)
        places = departures.free(limit)
        if not places:
            return Turn((), departures.next_at())
        claims = self._claim_next(now, worker, lease, len(places))
        if claims:
            departures.take([claim.letter.chat for claim in claims], places)
        placed = tuple(
            replace(claim, leaves_at=at) for claim, at in zip(claims, places, strict=False)
        )
        if len(claims) < len(places):
            return Turn(placed, None, departures.held_until(self._moments(now)["oldest"]))
        return Turn(placed, departures.next_at() if len(places) < limit else None)

    def _claim_next(
        self, now: datetime, worker: str, lease: timedelta, limit: int
    ) -> tuple[Claim, ...]:
        moments = {**self._moments(now), "lately": now - ONE_CHAT, "most": limit}
        first = self._connection.execute(queue.NEXT_IDS, moments).scalars().all()
        rows = self._connection.execute(queue.STILL_DUE, {"these": first}).all() if first else ()
        if not rows:
            return ()
        claimed = {
            "these": [row.id for row in rows],
            "state": Post.CLAIMED,
            "worker": worker,
            "lease_until": now + lease,
            "put_back_until": None,
        }
        self._connection.execute(CLAIM, claimed)
        return tuple(_claim(row, worker) for row in rows)

    def begin(self, claim: Claim, now: datetime, lease: timedelta) -> bool:
        moment = {"now": now, "lease_until": now + lease}
        begun = self._connection.execute(BEGIN, _of_claim(claim, Post.CLAIMED) | moment)
        return begun.rowcount == 1

    def sent(self, claim: Claim, message_id: int, now: datetime) -> bool:
        return self._close(claim, Post.SENT, accepted_at=now, message_id=message_id, reason=None)

    def put_back(self, claim: Claim, due_at: datetime) -> bool:
        stopped = {"state": Post.DROPPED, **NO_CLAIM}
        if self._connection.execute(STOPPED, _of_claim(claim, Post.SENDING) | stopped).rowcount:
            return False
        return self._close(claim, Post.DUE, ready_at=due_at, put_back_until=due_at)

    def unknown(self, claim: Claim, now: datetime) -> bool:
        return self._close(claim, Post.UNKNOWN, unknown_at=now, reason=None)

    def drop(self, claim: Claim, reason: str) -> bool:
        return self._close(claim, Post.DROPPED, reason=reason)

    def expire_leases(self, now: datetime) -> tuple[Claim, ...]:
        if self._connection.execute(queue.ANY_OVER, {"now": now}).first() is None:
            return ()
        self._connection.execute(DUE_AGAIN, {"now": now, "state": Post.DUE, **NO_CLAIM})
        lost = self._connection.execute(LOST, {"now": now})
        return tuple(_claim(row, row.worker) for row in lost)

    def next_due(self, now: datetime) -> datetime | None:
        ready, ends = self._connection.execute(queue.NEXT, self._moments(now)).one()
        over = None if ends is None else ends + MICROSECOND
        return min((moment for moment in (ready, over) if moment), default=None)

    def waiting(self, now: datetime) -> int:
        count = self._connection.execute(queue.COUNT_WAITING, self._moments(now))
        return int(count.scalar_one())

    def _moments(self, now: datetime) -> dict[str, Any]:
        late = timedelta(minutes=self._book.practice().late_minutes)
        return {"now": now, "oldest": now - late}

    def _close(self, claim: Claim, state: Post, **facts: Any) -> bool:
        """sending -> `state`, by the worker that sends."""
        values = {"state": state, **NO_CLAIM, **facts}
        closed = self._connection.execute(CLOSE, _of_claim(claim, Post.SENDING) | values)
        return closed.rowcount == 1


def _of_claim(claim: Claim, stands: Post) -> dict[str, Any]:
    return {"which": claim.letter.outbox_id, "holder": claim.worker, "stands": stands}


def _claim(row: Row[Any], worker: str) -> Claim:
    return Claim(
        letter=_letter(row),
        worker=worker,
        person=row.person,
        lane=Lane(row.lane),
        bout=row.bout,
        nudge=row.nudge,
        attempts=row.attempts,
        due_at=row.due_at,
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
