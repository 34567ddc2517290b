"""Weeks as they were planned, and all of several clients' weeks at once."""

from collections import defaultdict
from collections.abc import Callable, Iterable, Mapping, Sequence
from datetime import UTC, date, datetime, time, timedelta
from typing import Any, TypeVar

from sqlalchemy import (
    ColumnElement,
    Connection,
    Row,
    Select,
    bindparam,
    or_,
    select,
)

from scheduler.ports import ClientWeek, WeekPlan
from storage.bouts import STANDS, entries, entry_of
from storage.breaks import pause_of, pauses, pauses_since
from storage.companions import companion_of, companions, last_of_days
from storage.conflicts import replacing
from storage.days import day_of, days
from storage.flags import flag_of, flags, hold_of, holds, reports
from storage.memo import Memo
from storage.people import client_of, clients, person_of, persons
from storage.plans import clearance_of, clearances, plans, version_of
from storage.steptests import step_test_of, steptests, tests_by
from storage.tables import WeekRow, table

weeks = table(WeekRow)

WEEK = timedelta(days=7)
A_DAY = timedelta(days=1)
AT_ONCE = 500
"""Clients of one query: an IN list that both engines take."""

WEEK_OF = select(weeks).where(
    weeks.c.client == bindparam("client"), weeks.c.start == bindparam("start")
)
SAVE = replacing(weeks)

Value = TypeVar("Value")


class Weeks:
    """What is planned for weeks; `scheduler.ports.Weeks` says what is promised."""

    def __init__(self, connection: Connection, memo: Memo) -> None:
        self._connection = connection
        self._memo = memo

    def get(self, client: int, start: date) -> WeekPlan | None:
        return self._memo.get(("week", client, start), lambda: self._get(client, start))

    def _get(self, client: int, start: date) -> WeekPlan | None:
        which = {"client": client, "start": start}
        row = self._connection.execute(WEEK_OF, which).one_or_none()
        return _week(row) if row else None

    def save(self, week: WeekPlan) -> None:
        if week == self._memo.known("week", week.client, week.start):
            return
        row = {
            "client": week.client,
            "start": week.start,
            "since": week.since,
            "days": [day.isoformat() for day in week.days],
            "chosen": week.chosen,
            "made_up": [
                [day.isoformat(), instead.isoformat() if instead else None]
                for day, instead in week.made_up
            ],
            "looked_at": week.looked_at,
        }
        self._connection.execute(SAVE[self._connection.dialect.name], row)
        self._memo.put(("week", week.client, week.start), week)

    def of_clients(self, clients: Sequence[int], first: date, last: date) -> tuple[ClientWeek, ...]:
        found: list[ClientWeek] = []
        for place in range(0, len(clients), AT_ONCE):
            found += _several(self._connection, clients[place : place + AT_ONCE], first, last)
        return tuple(found)


def _several(
    connection: Connection, these: Sequence[int], first: date, last: date
) -> Iterable[ClientWeek]:
    read = _Reader(connection, these)
    queries = {**_about_clients(last), **_about_days(first, last)}
    found = {name: read.by(*query) for name, query in queries.items()}
    for client in these:
        rows: dict[str, Any] = {name: tuple(each[client]) for name, each in found.items()}
        newest = {name: next(iter(rows[name][-1:]), None) for name in ONE_OF}
        yield ClientWeek(**(rows | newest))


ONE_OF = ("person", "client", "clearance")
"""Fields that hold one value, the newest."""
Query = tuple[ColumnElement[int], Callable[[Row[Any]], Any], Select[Any]]
"""Whose a row is, the value it becomes, and the rows; by the field of `ClientWeek` that they fill."""


def _about_clients(last: date) -> dict[str, Query]:
    record = select(clients, persons.c.clinician).join(persons, persons.c.id == clients.c.id)
    versions = select(plans).where(plans.c.valid_from <= last).order_by(plans.c.version.desc())
    open_flags = select(flags).where(flags.c.closed_at.is_(None))
    return {
        "person": (persons.c.id, person_of, select(persons)),
        "client": (clients.c.id, client_of, record),
        "clearance": (
            clearances.c.client,
            clearance_of,
            select(clearances).order_by(clearances.c.id),
        ),
        "plans": (plans.c.client, version_of, versions),
        "flags": (flags.c.client, flag_of, open_flags.order_by(flags.c.opened_at, flags.c.id)),
    }


def _about_days(first: date, last: date) -> dict[str, Query]:
    # A zone may be up to 14 hours ahead of UTC: a hold released a day before may have been open.
    since = datetime.combine(first, time.min, UTC) - A_DAY
    planned = select(weeks).where(weeks.c.start.between(first - WEEK + A_DAY, last))
    began = select(days).where(days.c.day.between(first, last))
    done = select(entries).where(entries.c.day.between(first, last), *STANDS)
    said = select(reports).where(reports.c.day.between(first, last))
    held = select(holds).where(or_(holds.c.released_at.is_(None), holds.c.released_at >= since))
    beside = last_of_days(companions.c.day.between(first, last))
    return {
        "weeks": (weeks.c.client, _week, planned.order_by(weeks.c.start)),
        "days": (days.c.client, day_of, began.order_by(days.c.day)),
        "entries": (entries.c.client, entry_of, done.order_by(entries.c.at, entries.c.id)),
        "companions": (companions.c.client, companion_of, beside),
        "reports": (reports.c.client, _report, said.order_by(reports.c.at, reports.c.id)),
        "holds": (holds.c.client, hold_of, held.order_by(holds.c.opened_at)),
        "pauses": (pauses.c.client, pause_of, pauses_since(first)),
        "steps": (steptests.c.client, step_test_of, tests_by(last)),
    }


def _report(row: Row[Any]) -> tuple[str, date, datetime, Any]:
    return row.kind, row.day, row.at, row.body


class _Reader:
    """Reads rows of several clients and sorts them by client."""

    def __init__(self, connection: Connection, these: Sequence[int]) -> None:
        self._connection, self._these = connection, list(these)

    def by(
        self, owner: ColumnElement[int], value: Callable[[Row[Any]], Value], query: Select[Any]
    ) -> Mapping[int, list[Value]]:
        mine = query.add_columns(owner.label("owner")).where(
            owner.in_(bindparam("these", self._these, expanding=True))
        )
        found: dict[int, list[Value]] = defaultdict(list)
        for row in self._connection.execute(mine):
            found[row.owner].append(value(row))
        return found


def _week(row: Row[Any]) -> WeekPlan:
    return WeekPlan(
        client=row.client,
        start=row.start,
        since=row.since,
        days=tuple(date.fromisoformat(day) for day in row.days),
        chosen=row.chosen,
        made_up=tuple(
            (date.fromisoformat(day), date.fromisoformat(instead) if instead else None)
            for day, instead in row.made_up
        ),
        looked_at=row.looked_at,
    )
