"""Step tests."""

from datetime import date, datetime
from typing import Any

from sqlalchemy import Connection, Row, Select, bindparam, select, update

from scheduler.domain.steptest import StepTest
from storage.conflicts import unless_there
from storage.tables import StepTestRow, table

steptests = table(StepTestRow)

ADD = unless_there(steptests, "client", "source", returning=steptests.c.id)
STANDS = steptests.c.taken_back_at.is_(None)
OF_CLIENT = (
    select(steptests)
    .where(steptests.c.client == bindparam("client"), STANDS)
    .order_by(steptests.c.at, steptests.c.id)
)
TAKE_BACK = update(steptests).where(steptests.c.id == bindparam("which"), STANDS)


class StepTests:
    """Step tests; `scheduler.ports.StepTests` says what is promised."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def add(self, test: StepTest, source: str) -> StepTest | None:
        row = {
            "client": test.client,
            "day": test.day,
            "at": test.at,
            "trials": list(test.trials),
            "by": test.by,
            "source": source,
        }
        add = ADD[self._connection.dialect.name]
        number = self._connection.execute(add, row).scalar_one_or_none()
        if number is None:
            return None
        return StepTest(number, test.client, test.day, test.at, test.trials, test.by)

    def of(self, client: int) -> tuple[StepTest, ...]:
        found = self._connection.execute(OF_CLIENT, {"client": client})
        return tuple(step_test_of(row) for row in found)

    def take_back(self, test: int, now: datetime) -> bool:
        done = {"which": test, "taken_back_at": now}
        return self._connection.execute(TAKE_BACK, done).rowcount == 1


def tests_by(last: date) -> Select[Any]:
    """The tests up to a day, of whomever, the oldest first."""
    return (
        select(steptests)
        .where(STANDS, steptests.c.day <= last)
        .order_by(steptests.c.at, steptests.c.id)
    )


def step_test_of(row: Row[Any]) -> StepTest:
    return StepTest(row.id, row.client, row.day, row.at, tuple(row.trials), row.by)
