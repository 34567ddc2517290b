"""Impact days and their prompts."""

from dataclasses import replace
from datetime import date, datetime
from typing import Any

from sqlalchemy import ColumnElement, Connection, Row, func, insert, literal_column, select, update

from scheduler.domain.days import Bout, BoutState, Day
from scheduler.domain.spacing import Placed
from storage.engine import conflict_insert
from storage.memo import Memo
from storage.tables import BoutRow, DayRow, table

days = table(DayRow)
bouts = table(BoutRow)

OPEN = bouts.c.state.in_([literal_column("'waiting'"), literal_column("'asked'")])
"""Written out, so that the partial index is used (see `storage.tables.base.partial`)."""
TAKEN_BACK = (BoutState.WITHDRAWN, BoutState.LATER)


class Days:
    """Days and bouts of clients; `scheduler.ports.Days` says what is promised."""

    def __init__(self, connection: Connection, memo: Memo) -> None:
        self._connection = connection
        self._memo = memo

    def get(self, client: int, day: date) -> Day | None:
        return self._memo.get(("day", client, day), lambda: self._get(client, day))

    def _get(self, client: int, day: date) -> Day | None:
        query = select(days).where(days.c.client == client, days.c.day == day)
        row = self._connection.execute(query).one_or_none()
        return day_of(row) if row else None

    def save(self, day: Day) -> None:
        self._memo.forget("day", day.client, day.day)
        values = {
            "plan": day.plan,
            "total": day.total,
            "planned": [[each.at.isoformat(), each.reps] for each in day.planned],
            "nudges": day.nudges,
            "away_told": day.away_told,
            "shortfall": day.shortfall,
            "closed_at": day.closed_at,
            "verdict": day.verdict,
            "why": day.why,
        }
        new = conflict_insert(self._connection, days).values(
            client=day.client, day=day.day, **values
        )
        again = new.on_conflict_do_update(index_elements=["client", "day"], set_=values)
        self._connection.execute(again)

    def bouts(self, client: int, day: date) -> tuple[Bout, ...]:
        return self._memo.get(
            ("bouts", client, day),
            lambda: self._read(bouts.c.client == client, bouts.c.day == day),
        )

    def bout(self, bout: int) -> Bout | None:
        return next(iter(self._read(bouts.c.id == bout)), None)

    def add_bout(self, bout: Bout) -> Bout:
        self._forget_bouts(bout)
        new = insert(bouts).values(_bout_values(bout)).returning(bouts.c.id)
        number: int = self._connection.execute(new).scalar_one()
        return replace(bout, id=number)

    def save_bout(self, bout: Bout) -> None:
        self._forget_bouts(bout)
        change = update(bouts).where(bouts.c.id == bout.id).values(_bout_values(bout))
        if self._connection.execute(change).rowcount != 1:
            raise LookupError(bout.id)

    def _forget_bouts(self, bout: Bout) -> None:
        self._memo.forget("bouts", bout.client, bout.day)
        self._memo.forget("open bouts", bout.client)

    def open_bouts(self, client: int) -> tuple[Bout, ...]:
        return self._memo.get(
            ("open bouts", client), lambda: self._read(bouts.c.client == client, OPEN)
        )

    def bout_of_message(self, client: int, message_id: int) -> Bout | None:
        found = self._read(bouts.c.client == client, bouts.c.message_id == message_id)
        return max(found, key=lambda bout: bout.id, default=None)  # another account counts anew

    def between(self, client: int, first: date, last: date) -> tuple[Day, ...]:
        query = select(days).where(days.c.client == client, days.c.day.between(first, last))
        found = self._connection.execute(query.order_by(days.c.day))
        return tuple(day_of(row) for row in found)

    def judged(self, client: int, last: int) -> tuple[Day, ...]:
        closed = (
            select(days)
            .where(days.c.client == client, days.c.closed_at.is_not(None))
            .order_by(days.c.day.desc())
            .limit(last)
        )
        return tuple(day_of(row) for row in self._connection.execute(closed))

    def last_prompt_at(self, client: int, day: date) -> datetime | None:
        latest = select(func.max(bouts.c.asked_at)).where(
            bouts.c.client == client, bouts.c.day == day, bouts.c.state.not_in(TAKEN_BACK)
        )
        found: datetime | None = self._connection.execute(latest).scalar_one()
        return found

    def _read(self, *which: ColumnElement[bool]) -> tuple[Bout, ...]:
        query = select(bouts).where(*which).order_by(bouts.c.day, bouts.c.n)
        return tuple(_bout(row) for row in self._connection.execute(query))


def day_of(row: Row[Any]) -> Day:
    return Day(
        client=row.client,
        day=row.day,
        plan=row.plan,
        total=row.total,
        planned=tuple(Placed(datetime.fromisoformat(at), reps) for at, reps in row.planned),
        nudges=row.nudges,
        away_told=row.away_told,
        shortfall=row.shortfall,
        closed_at=row.closed_at,
        verdict=row.verdict,
        why=row.why,
    )


def _bout_values(bout: Bout) -> dict[str, Any]:
    return {
        "client": bout.client,
        "day": bout.day,
        "n": bout.n,
        "reps": bout.reps,
        "due_at": bout.due_at,
        "expires_at": bout.expires_at,
        "state": bout.state,
        "asked_at": bout.asked_at,
        "nudge_at": bout.nudge_at,
        "nudged": bout.nudged,
        "laters": bout.laters,
        "not_before": bout.not_before,
        "message_id": bout.message_id,
    }


def _bout(row: Row[Any]) -> Bout:
    return Bout(
        id=row.id,
        client=row.client,
        day=row.day,
        n=row.n,
        reps=row.reps,
        due_at=row.due_at,
        expires_at=row.expires_at,
        state=row.state,
        asked_at=row.asked_at,
        nudge_at=row.nudge_at,
        nudged=row.nudged,
        laters=row.laters,
        not_before=row.not_before,
        message_id=row.message_id,
    )
