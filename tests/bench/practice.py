"""A large invented practice: one client enrolled by the program itself, then copied row by row in SQL."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from sqlalchemy import URL, Connection, Table, insert, select, text

from scheduler.clock import SystemClock
from scheduler.domain.hours import Hours, Span
from scheduler.domain.people import NOTICE_VERSION, Clearance, Client, Person, Role, State
from scheduler.domain.plan import Level
from scheduler.ports import Tx
from scheduler.usecases import days
from scheduler.usecases.cards import EXERCISES
from scheduler.usecases.wake import changing
from storage.columns import EPOCH, MICROSECOND
from storage.engine import Database
from storage.keys import Keyring, new_key
from storage.store import SqlStore
from storage.tables import PersonRow, table
from storage.tables.base import metadata
from storage.vault import unlock
from tests.process.practice import PLAN as DAILY

FIRST_ACCOUNT = 5_000_000_000
"""Past 32 bits, as real ones are. The clinician's; those of her clients follow."""
MORNING = 9
"""The hour of the day in the practice's zone at which a bench begins."""
LATER = timedelta(hours=6)
PERSONS = table(PersonRow)
# Not a dose for anybody: a day with five bouts, every day, in hours that are long enough for any run.
PLAN = replace(DAILY, daily_total=50, hours=Hours(Span(360, 1380)), gap_minutes=120)


@dataclass(frozen=True, slots=True)
class Practice:
    """Where it is kept, and who is in it. `clients` are person ids, from the first to the last."""

    url: URL
    key: str
    zone: ZoneInfo
    now: datetime
    """The instant up to which everything has been carried out."""
    clinician: int
    clients: range

    def account(self, client: int) -> int:
        """The platform's id of a client, which is her chat's too."""
        return FIRST_ACCOUNT + client

    def open(self) -> tuple[Database, SqlStore]:
        """The practice's store, to be closed by the caller."""
        database = Database(self.url, Keyring.parse(self.key))
        unlock(database)
        return database, SqlStore(database)

    def change(self, *statements: str, **values: Any) -> None:
        """Change rows behind the program's back: SQL, in one transaction."""
        database, _ = self.open()
        with database.engine.begin() as connection:
            for statement in statements:
                used = {name: each for name, each in values.items() if f":{name}" in statement}
                connection.execute(text(statement), used)
        database.close_sync()

    def at(self, url: URL) -> Practice:
        """The same in a copy of its database."""
        return replace(self, url=url)


def micro(at: datetime) -> int:
    """An instant as it rests in the database."""
    return (at - EPOCH) // MICROSECOND


def zone_of_morning(now: datetime) -> ZoneInfo:
    """A zone in which it is the hour of `MORNING` or a little later."""
    east = MORNING - now.hour
    east += 24 if east < -12 else 0
    return ZoneInfo(f"Etc/GMT{-east:+d}" if east else "Etc/GMT")


def open_practice(
    url: URL,
    clients: int,
    now: datetime | None = None,
    *,
    begun: bool = True,
    key: str | None = None,
) -> Practice:
    """Fill an empty database with a clinician and so many clients, cleared, with a plan.

    With `begun` their day has begun by `now`, the present instant unless told otherwise, and the next
    prompt of each waits for some hours more. `now` is in the morning of everybody's zone.
    """
    now = now or SystemClock().now()
    zone, key = zone_of_morning(now), key or new_key()
    practice = Practice(url, key, zone, now, 0, range(0))
    database, store = practice.open()
    model = store.run_sync(lambda tx: _enrol(tx, zone, now - timedelta(hours=12)))
    if begun:
        store.run_sync(lambda tx: days.advance(tx, model, now))
    with database.engine.begin() as connection:
        _multiply(connection, model, clients - 1)
    database.close_sync()
    practice = replace(practice, clinician=model - 1, clients=range(model, model + clients))
    if begun:
        wait_until(practice, now + LATER)
    return practice


def _enrol(tx: Tx, zone: ZoneInfo, then: datetime) -> int:
    tx.book.put("phone", "555 0100")
    tx.book.put("emergency_number", "112")
    tx.book.put("zone", zone.key)
    hers = Person(0, Role.CLINICIAN, "Dr. Example", "en", State.READY, account=FIRST_ACCOUNT)
    clinician = tx.people.add(hers, None).id
    person = Person(0, Role.CLIENT, "Demo", "en", State.READY, clinician, FIRST_ACCOUNT)
    record = Client(
        id=0,
        clinician=clinician,
        zone=zone,
        consent_version=NOTICE_VERSION,
        consent_at=then,
        readiness=(),
        readiness_at=then,
        usual_pain=0,
        joined_at=then,
        cards=EXERCISES,
    )
    client = tx.people.add(person, record).id
    person = replace(person, id=client, account=FIRST_ACCOUNT + client)
    tx.people.save(person)
    tx.plans.clear(Clearance(client, Level.HIGH, clinician, then))
    first_day = (then + timedelta(hours=12)).astimezone(zone).date()
    tx.plans.add(client, replace(PLAN, start=first_day), first_day, clinician, then)
    with changing(tx, client, then):
        pass
    return client


def _multiply(connection: Connection, model: int, more: int) -> None:
    """Give `more` people, whose ids follow the model's, the same rows that the model has."""
    first = dict(connection.execute(select(PERSONS).where(PERSONS.c.id == model)).one()._mapping)
    people = [
        first | {"id": one, "account": FIRST_ACCOUNT + one, "account_lookup": str(FIRST_ACCOUNT + one)}
        for one in range(model + 1, model + more + 1)
    ]  # fmt: skip
    if not people:
        return
    connection.execute(insert(PERSONS), people)
    if connection.dialect.name == "postgresql":
        connection.exec_driver_sql(
            "SELECT setval(pg_get_serial_sequence('person', 'id'), max(id)) FROM person"
        )
    copies: dict[str, dict[str, str]] = {
        "client": {"id": "person.id"},
        "plan": {"client": "person.id"},
        "clearance": {"client": "person.id"},
        "week": {"client": "person.id"},
        "day": {"client": "person.id", "plan": "(SELECT id FROM plan WHERE client = person.id)"},
        "bout": {"client": "person.id"},
        "outbox": {
            "person": "person.id",
            "bout": "(SELECT id FROM bout WHERE client = person.id)",
            "key": "'prompt-of:' || person.id",
        },
    }
    for name, changed in copies.items():
        _copy(connection, metadata.tables[name], model, changed)


def _copy(connection: Connection, rows: Table, model: int, changed: dict[str, str]) -> None:
    """Copy the model's rows of a table for everybody after her; numbers of rows are given anew."""
    whose = next(name for name in ("client", "person", "id") if name in changed)
    columns = [each.name for each in rows.c if each.name != "id" or "id" in changed]
    values = [changed.get(name, f'model."{name}"') for name in columns]
    named = ", ".join(f'"{name}"' for name in columns)
    connection.execute(
        text(
            f"INSERT INTO {rows.name} ({named}) SELECT {', '.join(values)}"
            f" FROM {rows.name} AS model JOIN person ON person.id > :model"
            f' WHERE model."{whose}" = :model'
        ),
        {"model": model},
    )


def wait_until(practice: Practice, due: datetime, clients: range | None = None) -> None:
    """Let the waiting prompts fall due at an instant, and nothing else about these clients before it."""
    these = clients or practice.clients
    practice.change(
        "UPDATE bout SET due_at = :due, expires_at = :over WHERE state = 'waiting'"
        " AND client BETWEEN :first AND :last",
        "UPDATE outbox SET due_at = :due, ready_at = :due WHERE state = 'due' AND bout IS NOT NULL"
        " AND person BETWEEN :first AND :last",
        "UPDATE client SET wake_at = :over WHERE id BETWEEN :first AND :last",
        due=micro(due),
        over=micro(due + timedelta(hours=2)),
        first=these[0],
        last=these[-1],
    )


def count(practice: Practice, statement: str, **values: Any) -> int:
    """One number out of the database."""
    database, _ = practice.open()
    with database.engine.connect() as connection:
        found = int(connection.execute(text(statement), values).scalar_one())
    database.close_sync()
    return found


MONDAY = datetime(2027, 3, 8, MORNING, tzinfo=UTC)
"""A fixed instant for what reads no real clock: a Monday morning."""
