"""Impact days and their prompts."""

from collections.abc import Hashable
from dataclasses import replace
from datetime import date, datetime, timedelta
from typing import Any

from sqlalchemy import (
    ColumnElement,
    Connection,
    Executable,
    FromClause,
    Row,
    Select,
    bindparam,
    func,
    insert,
    literal_column,
    select,
    update,
)

from scheduler.domain.days import Bout, BoutState, Day
from scheduler.domain.spacing import Placed
from storage.bouts import STANDS, entries
from storage.conflicts import replacing
from storage.memo import Memo
from storage.tables import BoutRow, DayRow, table

days = table(DayRow)
bouts = table(BoutRow)

OPEN = bouts.c.state.in_([literal_column("'waiting'"), literal_column("'asked'")])
"""Written out, so that the partial index is used (see `storage.tables.base.partial`)."""
OPEN_STATES = (BoutState.WAITING, BoutState.ASKED)
TAKEN_BACK = (BoutState.WITHDRAWN, BoutState.LATER)

DAY = select(days).where(days.c.client == bindparam("client"), days.c.day == bindparam("day"))
BETWEEN = (
    select(days)
    .where(
        days.c.client == bindparam("client"),
        days.c.day.between(bindparam("first"), bindparam("last")),
    )
    .order_by(days.c.day)
)
JUDGED = (
    select(days)
    .where(days.c.client == bindparam("client"), days.c.closed_at.is_not(None))
    .order_by(days.c.day.desc())
    .limit(bindparam("last"))
)
SAVE_DAY = replacing(days)


def _bouts(*which: ColumnElement[bool]) -> Select[Any]:
    return select(bouts).where(*which).order_by(bouts.c.day, bouts.c.n)


BOUT = _bouts(bouts.c.id == bindparam("bout"))
BOUTS_OF_DAY = _bouts(bouts.c.client == bindparam("client"), bouts.c.day == bindparam("day"))
OPEN_BOUTS = _bouts(bouts.c.client == bindparam("client"), OPEN)
BOUTS_OF_MESSAGE = _bouts(
    bouts.c.client == bindparam("client"), bouts.c.message_id == bindparam("message")
)
NEAR = timedelta(days=2)
"""Two zones are at most 26 hours apart: what happens at one instant has dates that differ by two at most."""


def _near(rows: FromClause) -> tuple[ColumnElement[bool], ...]:
    near = rows.c.day.between(bindparam("first"), bindparam("last"))
    return rows.c.client == bindparam("client"), near, rows.c.day != bindparam("day")


KEPT = bouts.c.state.not_in([literal_column(f"'{state}'") for state in TAKEN_BACK])
LAST_BESIDE = select(
    select(func.max(bouts.c.asked_at)).where(*_near(bouts), KEPT).scalar_subquery(),
    select(func.max(entries.c.at)).where(*_near(entries), *STANDS).scalar_subquery(),
)
ADD_BOUT = insert(bouts).returning(bouts.c.id)
SAVE_BOUT = update(bouts).where(bouts.c.id == bindparam("which"))


class Days:
    """Days and bouts of clients; `scheduler.ports.Days` says what is promised."""

    def __init__(self, connection: Connection, memo: Memo) -> None:
        self._connection = connection
        self._memo = memo

    def get(self, client: int, day: date) -> Day | None:
        return self._memo.get(("day", client, day), lambda: self._get(client, day))

    def _get(self, client: int, day: date) -> Day | None:
        row = self._connection.execute(DAY, {"client": client, "day": day}).one_or_none()
        return day_of(row) if row else None

    def save(self, day: Day) -> None:
        if day == self._memo.known("day", day.client, day.day):
            return
        row = {
            "client": day.client,
            "day": day.day,
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
        self._connection.execute(SAVE_DAY[self._connection.dialect.name], row)
        self._memo.put(("day", day.client, day.day), day)

    def bouts(self, client: int, day: date) -> tuple[Bout, ...]:
        return self._memo.get(
            ("bouts", client, day),
            lambda: self._read(BOUTS_OF_DAY, client=client, day=day),
        )

    def bout(self, bout: int) -> Bout | None:
        return next(iter(self._read(BOUT, bout=bout)), None)

    def add_bout(self, bout: Bout) -> Bout:
        number: int = self._connection.execute(ADD_BOUT, _bout_values(bout)).scalar_one()
        kept = replace(bout, id=number)
        self._remember(kept)
        return kept

    def save_bout(self, bout: Bout) -> None:
        values = {"which": bout.id, **_bout_values(bout)}
        if self._connection.execute(SAVE_BOUT, values).rowcount != 1:
            raise LookupError(bout.id)
        self._remember(bout)

    def _remember(self, bout: Bout) -> None:
        """Puts a bout that was written where a read would find it now. Its client and day never change."""
        self._put(("bouts", bout.client, bout.day), bout, belongs=True)
        self._put(("open bouts", bout.client), bout, belongs=bout.state in OPEN_STATES)

    def _put(self, key: tuple[Hashable, ...], bout: Bout, *, belongs: bool) -> None:
        known: tuple[Bout, ...] | None = self._memo.known(*key)
        if known is not None:
            others = [each for each in known if each.id != bout.id]
            now = [*others, bout] if belongs else others
            self._memo.put(key, tuple(sorted(now, key=lambda each: (each.day, each.n))))

    def open_bouts(self, client: int) -> tuple[Bout, ...]:
        return self._memo.get(("open bouts", client), lambda: self._read(OPEN_BOUTS, client=client))

    def bout_of_message(self, client: int, message_id: int) -> Bout | None:
        found = self._read(BOUTS_OF_MESSAGE, client=client, message=message_id)
        return max(found, key=lambda bout: bout.id, default=None)  # another account counts anew

    def between(self, client: int, first: date, last: date) -> tuple[Day, ...]:
        span = {"client": client, "first": first, "last": last}
        return tuple(day_of(row) for row in self._connection.execute(BETWEEN, span))

    def judged(self, client: int, last: int) -> tuple[Day, ...]:
        closed = self._connection.execute(JUDGED, {"client": client, "last": last})
        return tuple(day_of(row) for row in closed)

    def last_prompt_at(self, client: int, day: date) -> datetime | None:
        asked = (each.asked_at for each in self.bouts(client, day) if each.state not in TAKEN_BACK)
        return max((at for at in asked if at), default=None)

    def last_beside(self, client: int, day: date) -> datetime | None:
        span = {"client": client, "day": day, "first": day - NEAR, "last": day + NEAR}
        return max(
            (at for at in self._connection.execute(LAST_BESIDE, span).one() if at), default=None
        )

    def _read(self, query: Executable, **values: Any) -> tuple[Bout, ...]:
        return tuple(_bout(row) for row in self._connection.execute(query, values))


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
