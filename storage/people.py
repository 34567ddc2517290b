"""Persons and clients."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime
from typing import Any
from zoneinfo import ZoneInfo

from sqlalchemy import Connection, Row, bindparam, func, insert, literal_column, select, update

from scheduler.domain.people import Client, Person, State
from scheduler.domain.planjson import hours_as_json, hours_from_json
from scheduler.ports import GoneError
from storage.columns import Day, Instant
from storage.memo import Memo
from storage.tables import ClientRow, PersonRow, table

persons = table(PersonRow)
clients = table(ClientRow)

STAFF = persons.c.role != literal_column("'client'")
"""Written out, so that the partial index is used (see `storage.tables.base.partial`)."""
ENDED = (State.LEFT, State.DISCHARGED)

ADD_PERSON = insert(persons).returning(persons.c.id)
ADD_CLIENT = insert(clients)
SAVE_PERSON = update(persons).where(persons.c.id == bindparam("which"))
SAVE_CLIENT = update(clients).where(clients.c.id == bindparam("which"))
PERSON = select(persons).where(persons.c.id == bindparam("person"))
CLIENT = (
    select(clients, *(each for each in persons.c if each.name != "id"))
    .join(persons, persons.c.id == clients.c.id)
    .where(clients.c.id == bindparam("client"))
)
HELD = (
    select(clients.c.id).where(clients.c.id == bindparam("client")).with_for_update(key_share=True)
)
"""The weak lock keeps others from changing the row, not from referring to it."""
OF_ACCOUNT = (
    select(persons)
    .where(persons.c.account_lookup == bindparam("account"))
    .order_by(persons.c.acting.desc(), persons.c.id)
)
CASELOAD = (
    select(persons)
    .join(clients, clients.c.id == persons.c.id)
    .where(persons.c.clinician == bindparam("clinician"), persons.c.state.not_in(ENDED))
)
DUE = (
    select(clients.c.id)
    .where(clients.c.wake_at.is_not(None), clients.c.wake_at <= bindparam("now"))
    .order_by(clients.c.wake_at, clients.c.id)
    .limit(bindparam("most"))
)
NEXT_WAKE = select(func.min(clients.c.wake_at)).where(clients.c.wake_at.is_not(None))

READ_AS_WRITTEN = {each.name for each in clients.c if isinstance(each.type, Instant | Day)}
"""Columns of a client that come back just as they went in; sealed text may be mended on its way."""


class People:
    """Everybody in the practice; `scheduler.ports.People` says what is promised."""

    def __init__(self, connection: Connection, memo: Memo) -> None:
        self._connection = connection
        self._memo = memo

    def add(self, person: Person, client: Client | None) -> Person:
        number: int = self._connection.execute(ADD_PERSON, _person_values(person)).scalar_one()
        if client is not None:
            self._connection.execute(ADD_CLIENT, {"id": number, **_client_values(client)})
        return replace(person, id=number)

    def get(self, person: int) -> Person | None:
        return self._memo.get(("person", person), lambda: self._get(person))

    def _get(self, person: int) -> Person | None:
        row = self._connection.execute(PERSON, {"person": person}).one_or_none()
        return person_of(row) if row else None

    def save(self, person: Person) -> None:
        self._memo.forget("person", person.id)
        self._memo.forget("client", person.id)
        values = {"which": person.id, **_person_values(person)}
        _must_be_one(self._connection.execute(SAVE_PERSON, values).rowcount, person.id)

    def of_account(self, account: int) -> tuple[Person, ...]:
        return _persons(self._connection.execute(OF_ACCOUNT, {"account": str(account)}))

    def everyone(self) -> tuple[Person, ...]:
        return _persons(self._connection.execute(select(persons).order_by(persons.c.id)))

    def staff(self) -> tuple[Person, ...]:
        return _persons(
            self._connection.execute(select(persons).where(STAFF).order_by(persons.c.id))
        )

    def caseload(self, clinician: int) -> tuple[Person, ...]:
        found = _persons(self._connection.execute(CASELOAD, {"clinician": clinician}))
        return tuple(sorted(found, key=lambda person: (person.name.casefold(), person.id)))

    def lock(self, client: int) -> Client:
        # A transaction on SQLite holds the one write lock from its beginning (see `storage.engine`).
        if self._connection.dialect.name == "postgresql":
            # Read only when the lock is held: a read that had to wait may see the time before it.
            self._connection.execute(HELD, {"client": client})
            self._memo.forget_all()
        return self.client(client)

    def client(self, client: int) -> Client:
        return self._memo.get(("client", client), lambda: self._client(client))

    def _client(self, client: int) -> Client:
        row = self._connection.execute(CLIENT, {"client": client}).one_or_none()
        if row is None:
            raise GoneError(client)
        self._memo.put(("person", client), person_of(row))  # who is asked for with most clients
        return client_of(row)

    def save_client(self, client: Client) -> None:
        before: Client | None = self._memo.known("client", client.id)
        changed = _client_values(client)
        if before is not None:  # most events change an instant or nothing
            old = _client_values(before)
            changed = {name: value for name, value in changed.items() if value != old[name]}
        if not changed:
            return
        self._memo.forget("client", client.id)
        values = {"which": client.id, **changed}
        _must_be_one(self._connection.execute(SAVE_CLIENT, values).rowcount, client.id)
        if before is not None and changed.keys() <= READ_AS_WRITTEN:
            self._memo.put(("client", client.id), replace(client, clinician=before.clinician))

    def due(self, now: datetime, limit: int) -> tuple[int, ...]:
        return tuple(self._connection.execute(DUE, {"now": now, "most": limit}).scalars())

    def next_wake(self) -> datetime | None:
        found: datetime | None = self._connection.execute(NEXT_WAKE).scalar_one()
        return found


def _must_be_one(changed: int, number: int) -> None:
    if changed != 1:
        raise LookupError(number)


def _person_values(person: Person) -> dict[str, Any]:
    return {
        "role": person.role,
        "account_lookup": None if person.account is None else str(person.account),
        "account": person.account,
        "name": person.name,
        "language": person.language,
        "state": person.state,
        "clinician": person.clinician,
        "acting": person.acting,
        "blocked": person.blocked,
    }


def _persons(rows: Iterable[Row[Any]]) -> tuple[Person, ...]:
    return tuple(person_of(row) for row in rows)


def person_of(row: Row[Any]) -> Person:
    return Person(
        id=row.id,
        role=row.role,
        name=row.name,
        language=row.language,
        state=row.state,
        clinician=row.clinician,
        account=row.account,
        acting=row.acting,
        blocked=row.blocked,
    )


def _client_values(client: Client) -> dict[str, Any]:
    """Without the clinician: she is kept once, with the person."""
    return {
        "zone": client.zone.key,
        "hours": hours_as_json(client.hours) if client.hours else None,
        "days": list(client.days),
        "consent_version": client.consent_version,
        "consent_at": client.consent_at,
        "readiness": None if client.readiness is None else list(client.readiness),
        "readiness_at": client.readiness_at,
        "usual_pain": client.usual_pain,
        "joined_at": client.joined_at,
        "phone": client.phone,
        "estimates_accepted": list(client.estimates_accepted),
        "morning_at": client.morning_at,
        "resumes_on": client.resumes_on,
        "heard_at": client.heard_at,
        "judged_to": client.judged_to,
        "cards": list(client.cards),
        "step_home": client.step_home,
        "stepped_on": client.stepped_on,
        "left_at": client.left_at,
        "wake_at": client.wake_at,
    }


def client_of(row: Row[Any]) -> Client:
    return Client(
        id=row.id,
        clinician=row.clinician,
        zone=ZoneInfo(row.zone),
        hours=hours_from_json(row.hours) if row.hours else None,
        days=tuple(row.days),
        consent_version=row.consent_version,
        consent_at=row.consent_at,
        readiness=None if row.readiness is None else tuple(row.readiness),
        readiness_at=row.readiness_at,
        usual_pain=row.usual_pain,
        joined_at=row.joined_at,
        phone=row.phone,
        estimates_accepted=tuple(row.estimates_accepted),
        morning_at=row.morning_at,
        resumes_on=row.resumes_on,
        heard_at=row.heard_at,
        judged_to=row.judged_to,
        cards=tuple(row.cards or ()),
        step_home=row.step_home,
        stepped_on=row.stepped_on,
        left_at=row.left_at,
        wake_at=row.wake_at,
    )
