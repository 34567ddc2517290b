"""Weeks, breaks, companions, and all of several clients' weeks at once."""

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
    func,
    insert,
    or_,
    select,
    update,
)

from scheduler.domain.people import Pause
from scheduler.ports import ClientWeek, CompanionEntry, WeekPlan
from storage.bouts import STANDS, entries, entry_of
from storage.days import day_of, days
from storage.engine import conflict_insert
from storage.flags import flag_of, flags, hold_of, holds, reports
from storage.memo import Memo
from storage.people import client_of, clients, person_of, persons
from storage.plans import clearance_of, clearances, plans, version_of
from storage.tables import CompanionEntryRow, PauseRow, WeekRow, table

weeks = table(WeekRow)
pauses = table(PauseRow)
companions = table(CompanionEntryRow)

WEEK = timedelta(days=7)
A_DAY = timedelta(days=1)
AT_ONCE = 500
"""Clients of one query: an IN list that both engines take."""

Value = TypeVar("Value")


class Weeks:
    """What is planned for weeks; `scheduler.ports.Weeks` says what is promised."""

    def __init__(self, connection: Connection, memo: Memo) -> None:
        self._connection = connection
        self._memo = memo

    def get(self, client: int, start: date) -> WeekPlan | None:
        return self._memo.get(("week", client, start), lambda: self._get(client, start))

    def _get(self, client: int, start: date) -> WeekPlan | None:
        query = select(weeks).where(weeks.c.client == client, weeks.c.start == start)
        row = self._connection.execute(query).one_or_none()
        return _week(row) if row else None

    def save(self, week: WeekPlan) -> None:
        self._memo.forget("week", week.client, week.start)
        values = {
            "since": week.since,
            "days": [day.isoformat() for day in week.days],
            "chosen": week.chosen,
            "made_up": [
                [day.isoformat(), instead.isoformat() if instead else None]
                for day, instead in week.made_up
            ],
            "looked_at": week.looked_at,
        }
        new = conflict_insert(self._connection, weeks).values(
            client=week.client, start=week.start, **values
        )
        again = new.on_conflict_do_update(index_elements=["client", "start"], set_=values)
        self._connection.execute(again)

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
    beside = _last_of_days(companions.c.day.between(first, last))
    return {
        "weeks": (weeks.c.client, _week, planned.order_by(weeks.c.start)),
        "days": (days.c.client, day_of, began.order_by(days.c.day)),
        "entries": (entries.c.client, entry_of, done.order_by(entries.c.at, entries.c.id)),
        "companions": (companions.c.client, companion_of, beside),
        "reports": (reports.c.client, _report, said.order_by(reports.c.at, reports.c.id)),
        "holds": (holds.c.client, hold_of, held.order_by(holds.c.opened_at)),
        "pauses": (pauses.c.client, pause_of, _pauses_since(first)),
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


class Pauses:
    """Breaks; `scheduler.ports.Pauses` says what is promised."""

    def __init__(self, connection: Connection, memo: Memo) -> None:
        self._connection = connection
        self._memo = memo

    def add(self, pause: Pause) -> Pause:
        self._memo.forget("pauses", pause.client)
        row = {
            "client": pause.client,
            "first": pause.first,
            "last": pause.last,
            "reason": pause.reason,
            "by": pause.by,
            "at": pause.at,
        }
        new = insert(pauses).values(row).returning(pauses)
        return pause_of(self._connection.execute(new).one())

    def end(self, pause: int, last: date, now: datetime) -> None:
        change = update(pauses).where(pauses.c.id == pause).values(last=last, ended_at=now)
        client = self._connection.execute(change.returning(pauses.c.client)).scalar_one()
        self._memo.forget("pauses", client)

    def of(self, client: int, since: date) -> tuple[Pause, ...]:
        known = self._memo.get(("pauses", client), lambda: self._all(client))
        return tuple(pause for pause in known if pause.last is None or pause.last >= since)

    def _all(self, client: int) -> tuple[Pause, ...]:
        hers = select(pauses).where(pauses.c.client == client).order_by(pauses.c.first, pauses.c.id)
        return tuple(pause_of(row) for row in self._connection.execute(hers))


class Companions:
    """What was done beside the impact; `scheduler.ports.Companions` says what is promised."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def log(self, entry: CompanionEntry) -> bool:
        row = {
            "client": entry.client,
            "day": entry.day,
            "companion": entry.companion,
            "rounds": entry.rounds,
            "at": entry.at,
            "source": entry.source,
        }
        new = conflict_insert(self._connection, companions).values(row)
        once = new.on_conflict_do_nothing(index_elements=["client", "source"])
        return self._connection.execute(once).rowcount == 1

    def between(self, client: int, first: date, last: date) -> tuple[CompanionEntry, ...]:
        within = (companions.c.client == client, companions.c.day.between(first, last))
        return tuple(companion_of(row) for row in self._connection.execute(_last_of_days(*within)))


def _last_of_days(*which: ColumnElement[bool]) -> Select[Any]:
    last = (
        select(func.max(companions.c.id))
        .where(*which)
        .group_by(companions.c.client, companions.c.day, companions.c.companion)
    )
    return select(companions).where(companions.c.id.in_(last)).order_by(companions.c.id)


def _pauses_since(since: date) -> Select[Any]:
    goes_on = or_(pauses.c.last.is_(None), pauses.c.last >= since)
    return select(pauses).where(goes_on).order_by(pauses.c.first, pauses.c.id)


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


def pause_of(row: Row[Any]) -> Pause:
    return Pause(
        id=row.id,
        client=row.client,
        first=row.first,
        last=row.last,
        reason=row.reason,
        by=row.by,
        at=row.at,
        ended_at=row.ended_at,
    )


def companion_of(row: Row[Any]) -> CompanionEntry:
    return CompanionEntry(
        client=row.client,
        day=row.day,
        companion=row.companion,
        rounds=row.rounds,
        at=row.at,
        source=row.source,
    )
