"""People, their accounts and invitations, on both engines. All ours."""

import asyncio
from dataclasses import replace
from datetime import UTC, date, datetime
from zoneinfo import ZoneInfo

import pytest
from sqlalchemy.exc import IntegrityError

from scheduler.domain.hours import Hours, Span
from scheduler.domain.people import Client, Invitation, Person, Role, State
from scheduler.ports import Tx
from storage.engine import Database
from storage.store import SqlStore
from tests.storage.clinic import (
    HOUR,
    JUST_PAST,
    LARGE,
    NOW,
    SECOND,
    client,
    clinician,
    one_client,
    while_open,
)

CODE = "c0de" * 16


def test_a_person_comes_back_as_she_was_kept(store: SqlStore) -> None:
    hers = store.run_sync(clinician)
    person = Person(0, Role.CLIENT, "Zoë “Z”", "es", State.JOINING, hers.id, LARGE, False, True)
    record = Client(0, hers.id, ZoneInfo("America/New_York"))
    kept = store.run_sync(lambda tx: tx.people.add(person, record))
    assert kept == replace(person, id=kept.id)
    assert store.run_sync(lambda tx: tx.people.get(kept.id)) == kept
    expected = replace(record, id=kept.id)
    assert store.run_sync(lambda tx: tx.people.client(kept.id)) == expected


def test_a_clients_record_comes_back_as_it_was_kept(store: SqlStore) -> None:
    who = one_client(store)
    record = Client(
        id=who,
        clinician=store.run_sync(lambda tx: tx.people.client(who).clinician),
        zone=ZoneInfo("Asia/Kathmandu"),
        hours=Hours(Span(0, 1440), (Span(600, 660), Span(720, 780))),
        days=(0, 2, 4),
        consent_version=1,
        consent_at=NOW,
        readiness=(),
        readiness_at=NOW + JUST_PAST,
        usual_pain=0,
        joined_at=NOW,
        phone="+34 000 000 000",
        estimates_accepted=("stomp",),
        morning_at=NOW + HOUR,
        resumes_on=date(2027, 3, 15),
        wake_at=NOW + SECOND,
    )
    store.run_sync(lambda tx: tx.people.save_client(record))
    assert store.run_sync(lambda tx: tx.people.client(who)) == record
    assert store.run_sync(lambda tx: tx.people.lock(who)) == record


def test_who_is_not_there_is_not_there(store: SqlStore) -> None:
    assert store.run_sync(lambda tx: tx.people.get(99)) is None
    hers = store.run_sync(clinician)

    def lock_a_clinician(tx: Tx) -> Client:
        return tx.people.lock(hers.id)

    with pytest.raises(LookupError):
        store.run_sync(lock_a_clinician)
    with pytest.raises(LookupError):
        store.run_sync(lambda tx: tx.people.save(replace(hers, id=99)))
    record = Client(99, hers.id, ZoneInfo("UTC"))
    with pytest.raises(LookupError):
        store.run_sync(lambda tx: tx.people.save_client(record))


def test_a_client_who_is_moved_has_one_clinician_and_not_two(store: SqlStore) -> None:
    who = one_client(store)
    other = store.run_sync(lambda tx: clinician(tx, 7002, "Dr. Other"))

    def move(tx: Tx) -> None:
        before = tx.people.client(who)
        person = tx.people.get(who)
        assert person
        tx.people.save(replace(person, clinician=other.id))
        tx.people.save_client(replace(before, usual_pain=2))  # read before the move

    store.run_sync(move)
    assert store.run_sync(lambda tx: tx.people.client(who)).clinician == other.id
    assert [p.id for p in store.run_sync(lambda tx: tx.people.caseload(other.id))] == [who]


def test_of_the_roles_of_one_account_the_acting_one_comes_first(store: SqlStore) -> None:
    def enrol(tx: Tx) -> list[int]:
        roles = (Role.CLINICIAN, Role.ADMIN)
        people = [Person(0, role, "Two Roles", "en", State.READY, account=LARGE) for role in roles]
        return [tx.people.add(replace(p, acting=p.role is Role.ADMIN), None).id for p in people]

    as_clinician, as_admin = store.run_sync(enrol)
    store.run_sync(lambda tx: clinician(tx, LARGE - 1))
    found = store.run_sync(lambda tx: tx.people.of_account(LARGE))
    assert [p.id for p in found] == [as_admin, as_clinician]


def test_one_account_has_one_person_of_a_role(store: SqlStore) -> None:
    store.run_sync(clinician)
    with pytest.raises(IntegrityError):
        store.run_sync(clinician)
    store.run_sync(lambda tx: clinician(tx, None))
    store.run_sync(lambda tx: clinician(tx, None))  # not joined yet, as many as there are


def test_a_person_who_moves_to_a_new_account_leaves_the_old_one(store: SqlStore) -> None:
    hers = store.run_sync(clinician)
    store.run_sync(lambda tx: tx.people.save(replace(hers, account=LARGE)))
    assert store.run_sync(lambda tx: tx.people.of_account(7001)) == ()
    assert store.run_sync(lambda tx: tx.people.of_account(LARGE)) == (replace(hers, account=LARGE),)
    store.run_sync(clinician)  # the old account is free


def test_a_caseload_is_hers_by_name_without_those_who_have_gone(store: SqlStore) -> None:
    def enrol(tx: Tx) -> int:
        hers, other = clinician(tx), clinician(tx, 7002)
        for number, name in enumerate(("beta", "Álpha", "Alpha", "gamma", "delta")):
            person = client(tx, hers.id, number, name)
            gone = {"gamma": State.LEFT, "delta": State.DISCHARGED}
            tx.people.save(replace(person, state=gone.get(name, person.state)))
        client(tx, other.id, 99, "Not Hers")
        return hers.id

    hers = store.run_sync(enrol)
    found = store.run_sync(lambda tx: tx.people.caseload(hers))
    assert [person.name for person in found] == ["Alpha", "beta", "Álpha"]


def test_clients_fall_due_at_their_instant_the_longest_waiting_first(store: SqlStore) -> None:
    def enrol(tx: Tx) -> list[int]:
        hers = clinician(tx).id
        clients = [client(tx, hers, number).id for number in range(4)]
        wakes = (NOW, NOW - SECOND, NOW + JUST_PAST, None)
        for who, wake_at in zip(clients, wakes, strict=True):
            tx.people.save_client(replace(tx.people.client(who), wake_at=wake_at))
        return clients

    assert store.run_sync(lambda tx: tx.people.next_wake()) is None
    first, second, third, _ = store.run_sync(enrol)
    assert store.run_sync(lambda tx: tx.people.due(NOW, 9)) == (second, first)
    assert store.run_sync(lambda tx: tx.people.due(NOW, 1)) == (second,)
    assert store.run_sync(lambda tx: tx.people.due(NOW + JUST_PAST, 9)) == (second, first, third)
    assert store.run_sync(lambda tx: tx.people.next_wake()) == NOW - SECOND


async def test_of_two_who_change_a_client_the_second_sees_what_the_first_has_done(
    store: SqlStore, database: Database
) -> None:
    who = one_client(store)

    def add_a_movement(tx: Tx) -> int:
        record = tx.people.lock(who)
        accepted = (*record.estimates_accepted, "hop")
        tx.people.save_client(replace(record, estimates_accepted=accepted))
        return len(accepted)

    assert await while_open(store, database, add_a_movement, add_a_movement) == (1, 2)


async def test_a_second_change_sees_a_client_moved_by_the_first(
    store: SqlStore, database: Database
) -> None:
    who = one_client(store)
    other = store.run_sync(lambda tx: clinician(tx, 7002)).id

    def move(tx: Tx) -> int:
        tx.people.lock(who)
        person = tx.people.get(who)
        assert person
        tx.people.save(replace(person, clinician=other))
        return other

    seen = await while_open(store, database, move, lambda tx: tx.people.lock(who).clinician)
    assert seen == (other, other)


# --- invitations ---------------------------------------------------------------------------------


def invited(store: SqlStore) -> int:
    def work(tx: Tx) -> int:
        who = client(tx, clinician(tx).id, None).id
        tx.invitations.add(CODE, Invitation(who, NOW + HOUR))
        return who

    return store.run_sync(work)


def test_an_invitation_is_used_once(store: SqlStore) -> None:
    who = invited(store)
    assert store.run_sync(lambda tx: tx.invitations.use(CODE, NOW))
    assert not store.run_sync(lambda tx: tx.invitations.use(CODE, NOW))
    found = store.run_sync(lambda tx: tx.invitations.find(CODE))
    assert found == Invitation(who, NOW + HOUR, NOW)


def test_an_invitation_ends_at_its_instant(store: SqlStore) -> None:
    invited(store)
    assert not store.run_sync(lambda tx: tx.invitations.use(CODE, NOW + HOUR))
    assert store.run_sync(lambda tx: tx.invitations.use(CODE, NOW + HOUR - JUST_PAST))


def test_a_code_that_nobody_made_opens_nothing(store: SqlStore) -> None:
    assert store.run_sync(lambda tx: tx.invitations.find(CODE)) is None
    assert not store.run_sync(lambda tx: tx.invitations.use(CODE, NOW))


def test_a_withdrawn_invitation_is_of_no_use_and_a_used_one_is_remembered(store: SqlStore) -> None:
    who = invited(store)
    other = "0ther" * 8
    store.run_sync(lambda tx: tx.invitations.use(CODE, NOW))
    store.run_sync(lambda tx: tx.invitations.add(other, Invitation(who, NOW + HOUR)))
    store.run_sync(lambda tx: tx.invitations.withdraw(who))
    assert not store.run_sync(lambda tx: tx.invitations.use(other, NOW))
    assert store.run_sync(lambda tx: tx.invitations.find(CODE)) is not None


async def test_of_two_who_use_one_invitation_at_once_one_joins(
    store: SqlStore, database: Database
) -> None:
    invited(store)
    used = await while_open(
        store,
        database,
        lambda tx: tx.invitations.use(CODE, NOW),
        lambda tx: tx.invitations.use(CODE, NOW + SECOND),
    )
    assert used == (True, False)


async def test_of_many_who_use_one_invitation_at_once_one_joins(store: SqlStore) -> None:
    invited(store)
    tries = [store.run(lambda tx: tx.invitations.use(CODE, NOW)) for _ in range(8)]
    assert sorted(await asyncio.gather(*tries)) == [False] * 7 + [True]


def test_guesses_are_counted_by_account_and_forgotten_after_an_hour(store: SqlStore) -> None:
    def guess(at: datetime, account: int = LARGE) -> int:
        return store.run_sync(lambda tx: tx.invitations.guessed(account, at))

    assert [guess(NOW), guess(NOW + SECOND), guess(NOW + SECOND, 4711)] == [1, 2, 1]
    assert guess(NOW + HOUR - JUST_PAST) == 3
    assert guess(NOW + HOUR) == 3  # the first is an hour old
    assert guess(datetime(2027, 3, 9, tzinfo=UTC)) == 1
