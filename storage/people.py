"""Persons, clients and how they join."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from sqlalchemy import Connection, Row, delete, func, insert, literal_column, select, update

from scheduler.domain.people import Client, Invitation, Person, State
from scheduler.domain.planjson import hours_as_json, hours_from_json
from storage.memo import Memo
from storage.tables import ClientRow, GuessRow, InvitationRow, PersonRow, table

persons = table(PersonRow)
clients = table(ClientRow)
invitations = table(InvitationRow)
guesses = table(GuessRow)

STAFF = persons.c.role != literal_column("'client'")
"""Written out, so that the partial index is used (see `storage.tables.base.partial`)."""
ENDED = (State.LEFT, State.DISCHARGED)
GUESSES_COUNT_FOR = timedelta(hours=1)


class People:
    """Everybody in the practice; `scheduler.ports.People` says what is promised."""

    def __init__(self, connection: Connection, memo: Memo) -> None:
        self._connection = connection
        self._memo = memo

    def add(self, person: Person, client: Client | None) -> Person:
        new = insert(persons).values(_person_values(person)).returning(persons.c.id)
        number: int = self._connection.execute(new).scalar_one()
        if client is not None:
            record = {"id": number, **_client_values(client)}
            self._connection.execute(insert(clients).values(record))
        return replace(person, id=number)

    def get(self, person: int) -> Person | None:
        return self._memo.get(("person", person), lambda: self._get(person))

    def _get(self, person: int) -> Person | None:
        row = self._connection.execute(select(persons).where(persons.c.id == person)).one_or_none()
        return person_of(row) if row else None

    def save(self, person: Person) -> None:
        self._memo.forget("person", person.id)
        self._memo.forget("client", person.id)
        change = update(persons).where(persons.c.id == person.id).values(_person_values(person))
        _must_be_one(self._connection.execute(change).rowcount, person.id)

    def of_account(self, account: int) -> tuple[Person, ...]:
        found = (
            select(persons)
            .where(persons.c.account_lookup == str(account))
            .order_by(persons.c.acting.desc(), persons.c.id)
        )
        return _persons(self._connection.execute(found))

    def everyone(self) -> tuple[Person, ...]:
        return _persons(self._connection.execute(select(persons).order_by(persons.c.id)))

    def staff(self) -> tuple[Person, ...]:
        return _persons(
            self._connection.execute(select(persons).where(STAFF).order_by(persons.c.id))
        )

    def caseload(self, clinician: int) -> tuple[Person, ...]:
        hers = (
            select(persons)
            .join(clients, clients.c.id == persons.c.id)
            .where(persons.c.clinician == clinician, persons.c.state.not_in(ENDED))
        )
        found = _persons(self._connection.execute(hers))
        return tuple(sorted(found, key=lambda person: (person.name.casefold(), person.id)))

    def lock(self, client: int) -> Client:
        # Read only when the lock is held: a read that had to wait may see the time before it.
        # The weak lock keeps others from changing the row, not from referring to it.
        held = select(clients.c.id).where(clients.c.id == client).with_for_update(key_share=True)
        self._connection.execute(held)
        self._memo.forget_all()
        return self.client(client)

    def client(self, client: int) -> Client:
        return self._memo.get(("client", client), lambda: self._client(client))

    def _client(self, client: int) -> Client:
        query = (
            select(clients, persons.c.clinician)
            .join(persons, persons.c.id == clients.c.id)
            .where(clients.c.id == client)
        )
        row = self._connection.execute(query).one_or_none()
        if row is None:
            raise LookupError(client)
        return client_of(row)

    def save_client(self, client: Client) -> None:
        self._memo.forget("client", client.id)
        change = update(clients).where(clients.c.id == client.id).values(_client_values(client))
        _must_be_one(self._connection.execute(change).rowcount, client.id)

    def due(self, now: datetime, limit: int) -> tuple[int, ...]:
        fallen_due = (
            select(clients.c.id)
            .where(clients.c.wake_at.is_not(None), clients.c.wake_at <= now)
            .order_by(clients.c.wake_at, clients.c.id)
            .limit(limit)
        )
        return tuple(self._connection.execute(fallen_due).scalars())

    def next_wake(self) -> datetime | None:
        earliest = select(func.min(clients.c.wake_at)).where(clients.c.wake_at.is_not(None))
        found: datetime | None = self._connection.execute(earliest).scalar_one()
        return found


class Invitations:
    """Single-use permissions to join; `scheduler.ports.Invitations` says what is promised."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def add(self, code_hash: str, invitation: Invitation) -> None:
        row = {
            "code_hash": code_hash,
            "person": invitation.person,
            "expires_at": invitation.expires_at,
            "used_at": invitation.used_at,
        }
        self._connection.execute(insert(invitations).values(row))

    def find(self, code_hash: str) -> Invitation | None:
        query = select(invitations).where(invitations.c.code_hash == code_hash)
        row = self._connection.execute(query).one_or_none()
        return Invitation(row.person, row.expires_at, row.used_at) if row else None

    def use(self, code_hash: str, now: datetime) -> bool:
        unused = (
            invitations.c.code_hash == code_hash,
            invitations.c.used_at.is_(None),
            invitations.c.expires_at > now,
        )
        used = update(invitations).where(*unused).values(used_at=now)
        return self._connection.execute(used).rowcount == 1

    def withdraw(self, person: int) -> None:
        unused = (invitations.c.person == person, invitations.c.used_at.is_(None))
        self._connection.execute(delete(invitations).where(*unused))

    def guessed(self, account: int, now: datetime) -> int:
        mine = guesses.c.account_lookup == str(account)
        old = guesses.c.at <= now - GUESSES_COUNT_FOR
        self._connection.execute(delete(guesses).where(mine, old))
        made = insert(guesses).values(account_lookup=str(account), at=now)
        self._connection.execute(made)
        count = select(func.count()).select_from(guesses).where(mine)
        return int(self._connection.execute(count).scalar_one())


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
        wake_at=row.wake_at,
    )
