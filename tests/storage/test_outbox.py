"""One message from due to its end, on both engines. All ours."""

from dataclasses import replace
from datetime import date, timedelta

import pytest
from sqlalchemy import select
from sqlalchemy.exc import IntegrityError

from scheduler.domain.messages import Lane, message, text
from scheduler.domain.people import Role
from scheduler.ports import Claim, Letter, Outgoing, Post, Tx
from storage.engine import Database
from storage.queue import outbox
from storage.store import SqlStore
from tests.storage.clinic import (
    HOUR,
    JUST_PAST,
    LARGE,
    LEASE,
    MINUTE,
    NOW,
    SECOND,
    begin,
    begun,
    claim,
    client,
    clinician,
    keys,
    letter,
    one_client,
    prompt,
    put_back,
    sent,
    while_open,
    write,
)


def state(database: Database, key: str) -> tuple[Post, str | None]:
    query = select(outbox.c.state, outbox.c.reason).where(outbox.c.key == key)
    row = database.run_sync(lambda it: it.execute(query).one())
    return row.state, row.reason


def test_a_claim_carries_all_that_the_sender_needs(store: SqlStore) -> None:
    who = one_client(store)
    said = (text("flag", words="«ay»", score=7, days=[1, 2]), text("safety"))
    outgoing = Outgoing("k", Lane.FLAG, said, person=who, silent=True, edits=LARGE, language="de")
    write(store, outgoing)
    (first,) = claim(store)
    expected = Letter(first.letter.outbox_id, 4711, "es", Role.CLIENT, said, True, LARGE)
    assert first == Claim(expected, "one", who, Lane.FLAG, None, False, 0, NOW)


def test_a_prompts_claim_names_its_bout(store: SqlStore) -> None:
    bout = prompt(store, one_client(store), nudge=True)
    (first,) = claim(store)
    assert (first.bout, first.nudge, first.lane) == (bout, True, Lane.PROMPT)


@pytest.mark.parametrize(("language", "spoken"), [("es", "es"), (None, "en")])
def test_somebody_unknown_is_answered_in_her_chat(
    store: SqlStore, language: str | None, spoken: str
) -> None:
    said = message("invitation-refused")
    write(store, Outgoing("k", Lane.ANSWER, said, chat=LARGE, language=language))
    (first,) = claim(store)
    expected = Letter(first.letter.outbox_id, LARGE, spoken, None, said)
    assert (first.letter, first.person) == (expected, None)


@pytest.mark.parametrize("nobody", [True, False])
def test_a_message_goes_to_a_person_or_to_a_chat(store: SqlStore, nobody: bool) -> None:
    who = one_client(store)
    outgoing = Outgoing("k", Lane.REST, message("k"))
    if not nobody:
        outgoing = replace(outgoing, person=who, chat=4711)
    with pytest.raises(IntegrityError):
        store.run_sync(lambda tx: tx.outbox.add(outgoing, NOW))


def test_the_same_key_again_changes_nothing(store: SqlStore) -> None:
    who = one_client(store)
    write(store, letter("k", who))
    again = replace(letter("k", who, Lane.SAFETY), message=message("other"))
    assert not store.run_sync(lambda tx: tx.outbox.add(again, NOW))
    (first,) = claim(store)
    assert (keys((first,)), first.lane) == (["k"], Lane.ANSWER)


def test_a_message_is_not_claimed_before_it_is_due(store: SqlStore) -> None:
    write(store, letter("k", one_client(store), due_at=NOW + HOUR))
    assert claim(store, NOW + HOUR - JUST_PAST) == ()
    assert keys(claim(store, NOW + HOUR)) == ["k"]


def test_what_is_accepted_is_sent_once(store: SqlStore, database: Database) -> None:
    write(store, letter("k", one_client(store)))
    first = begun(store)
    assert state(database, "k")[0] is Post.SENDING
    assert sent(store, first, NOW + SECOND, LARGE)
    assert not sent(store, first, NOW + SECOND)
    query = select(outbox.c.accepted_at, outbox.c.message_id, outbox.c.state)
    row = database.run_sync(lambda it: it.execute(query).one())
    assert tuple(row) == (NOW + SECOND, LARGE, Post.SENT)
    assert claim(store, NOW + HOUR) == ()


def test_a_claim_of_somebody_else_closes_nothing(store: SqlStore, database: Database) -> None:
    write(store, letter("k", one_client(store)))
    (mine,) = claim(store)
    other = replace(mine, worker="other")
    assert not begin(store, other)
    assert begin(store, mine)

    def close(tx: Tx) -> list[bool]:
        return [
            tx.outbox.sent(other, 1, NOW),
            tx.outbox.put_back(other, NOW),
            tx.outbox.unknown(other, NOW),
            tx.outbox.drop(other, "not mine"),
        ]

    assert store.run_sync(close) == [False] * 4
    assert state(database, "k") == (Post.SENDING, None)


def test_what_has_not_begun_is_not_closed_and_begins_once(store: SqlStore) -> None:
    write(store, letter("k", one_client(store)))
    (mine,) = claim(store)
    assert not sent(store, mine)
    assert begin(store, mine)
    assert not begin(store, mine)


def test_a_refused_message_is_dropped_with_its_reason(store: SqlStore, database: Database) -> None:
    write(store, letter("k", one_client(store)))
    first = begun(store)
    assert store.run_sync(lambda tx: tx.outbox.drop(first, "too \0long"))
    assert state(database, "k") == (Post.DROPPED, "too long")
    assert claim(store, NOW + HOUR) == ()


def test_a_message_of_unknown_fate_is_not_sent_again(store: SqlStore, database: Database) -> None:
    write(store, letter("k", one_client(store)))
    first = begun(store)
    assert store.run_sync(lambda tx: tx.outbox.unknown(first, NOW))
    assert state(database, "k") == (Post.UNKNOWN, None)
    assert claim(store, NOW + HOUR) == ()


def test_what_is_put_back_is_tried_again_at_its_time(store: SqlStore) -> None:
    write(store, letter("k", one_client(store)))
    first = begun(store)
    assert put_back(store, first, NOW + 5 * SECOND)
    assert claim(store, NOW + 5 * SECOND - JUST_PAST) == ()
    (again,) = claim(store, NOW + 5 * SECOND, "two")
    assert (first.attempts, again.attempts, again.worker) == (0, 1, "two")
    assert not sent(store, first)


# --- leases --------------------------------------------------------------------------------------


def test_a_claim_ends_with_its_lease(store: SqlStore) -> None:
    write(store, letter("k", one_client(store)))
    (mine,) = claim(store)
    late = NOW + LEASE + JUST_PAST
    assert not begin(store, mine, late)
    assert claim(store, late, "two") == ()  # until leases are looked at
    assert store.run_sync(lambda tx: tx.outbox.expire_leases(NOW + LEASE)) == ()
    assert claim(store, NOW + LEASE, "two") == ()
    assert store.run_sync(lambda tx: tx.outbox.expire_leases(late)) == ()
    (other,) = claim(store, late, "two")
    assert not begin(store, mine, late)
    assert begin(store, other, late)


def test_a_claim_can_begin_on_the_last_instant_of_its_lease(store: SqlStore) -> None:
    write(store, letter("k", one_client(store)))
    (mine,) = claim(store)
    assert begin(store, mine, NOW + LEASE)


def test_a_request_has_a_lease_of_its_own_however_late_it_begins(store: SqlStore) -> None:
    write(store, letter("k", one_client(store)))
    (mine,) = claim(store)
    start, request = NOW + LEASE - SECOND, 3 * LEASE
    assert begin(store, mine, start, request)
    assert store.run_sync(lambda tx: tx.outbox.expire_leases(start + request)) == ()
    assert sent(store, mine, start + request)


def test_a_request_is_lost_one_step_past_its_lease(store: SqlStore) -> None:
    write(store, letter("k", one_client(store)))
    (mine,) = claim(store)
    assert begin(store, mine, NOW, SECOND)  # shorter than the claim's, which counts no more
    lost = store.run_sync(lambda tx: tx.outbox.expire_leases(NOW + SECOND + JUST_PAST))
    assert keys(lost) == ["k"]


def test_what_a_dead_worker_was_sending_is_handed_out_to_be_settled(
    store: SqlStore, database: Database
) -> None:
    who = one_client(store)
    write(store, letter("k", who))
    mine = begun(store)
    late = NOW + LEASE + JUST_PAST
    (lost,) = store.run_sync(lambda tx: tx.outbox.expire_leases(late))
    assert lost == replace(mine, attempts=1)
    assert state(database, "k")[0] is Post.SENDING
    assert store.run_sync(lambda tx: tx.outbox.unknown(lost, late))
    assert store.run_sync(lambda tx: tx.outbox.expire_leases(late)) == ()


# --- a hold, or an answer, on the way ------------------------------------------------------------


def test_cancelled_prompts_are_dropped_with_the_reason_and_nothing_else_is(
    store: SqlStore, database: Database
) -> None:
    who = one_client(store)
    other = store.run_sync(lambda tx: client(tx, clinician(tx, 7002).id, 99).id)
    bouts = [prompt(store, who, 1), prompt(store, who, 2, NOW + HOUR, nudge=True)]
    bouts.append(prompt(store, other))
    write(store, letter("safety", who, Lane.SAFETY))
    store.run_sync(lambda tx: tx.outbox.cancel_prompts(who, "hold"))
    found = [state(database, f"prompt:{bout}") for bout in bouts]
    assert found == [(Post.DROPPED, "hold"), (Post.DROPPED, "hold"), (Post.DUE, None)]
    assert sorted(keys(claim(store))) == [f"prompt:{bouts[2]}", "safety"]


def test_a_prompt_that_was_claimed_does_not_begin_after_a_hold(store: SqlStore) -> None:
    who = one_client(store)
    prompt(store, who)
    (mine,) = claim(store)
    store.run_sync(lambda tx: tx.outbox.cancel_prompts(who, "hold"))
    assert not begin(store, mine)


def test_a_prompt_that_has_begun_is_not_cancelled(store: SqlStore, database: Database) -> None:
    who = one_client(store)
    bout = prompt(store, who)
    mine = begun(store)
    store.run_sync(lambda tx: tx.outbox.cancel_prompts(who, "hold"))
    assert state(database, f"prompt:{bout}")[0] is Post.SENDING
    assert sent(store, mine)


@pytest.mark.parametrize("own_day", [NOW.date(), None])
def test_what_is_being_sent_when_a_hold_comes_is_not_sent_again(
    store: SqlStore, database: Database, own_day: date | None
) -> None:
    who = one_client(store)
    write(store, letter("companion", who, Lane.REST, own_day=own_day))
    mine = begun(store)

    def stop(tx: Tx) -> None:
        if own_day:
            tx.outbox.cancel_own(who, "hold")
        else:
            tx.outbox.cancel_rest(who, "left")

    store.run_sync(stop)
    assert not put_back(store, mine, NOW + SECOND)
    assert state(database, "companion") == (Post.DROPPED, "hold" if own_day else "left")


def test_what_is_accepted_in_spite_of_a_hold_was_sent(store: SqlStore, database: Database) -> None:
    who = one_client(store)
    write(store, letter("companion", who, Lane.REST, own_day=NOW.date()))
    mine = begun(store)
    store.run_sync(lambda tx: tx.outbox.cancel_own(who, "hold"))
    assert sent(store, mine)
    assert state(database, "companion") == (Post.SENT, None)


async def test_a_send_that_begins_while_a_hold_is_committed_is_refused(
    store: SqlStore, database: Database
) -> None:
    who = one_client(store)
    prompt(store, who)
    (mine,) = claim(store)
    _, began = await while_open(
        store,
        database,
        lambda tx: tx.outbox.cancel_prompts(who, "hold"),
        lambda tx: tx.outbox.begin(mine, NOW, LEASE),
    )
    assert not began


# --- prompts that are too late -------------------------------------------------------------------


def test_a_prompt_leaves_until_the_practices_limit_and_not_after(store: SqlStore) -> None:
    prompt(store, one_client(store))
    assert claim(store, NOW + 20 * MINUTE + JUST_PAST) == ()
    store.run_sync(lambda tx: tx.book.put("late_minutes", "30"))
    assert claim(store, NOW + 30 * MINUTE + JUST_PAST) == ()
    assert len(claim(store, NOW + 30 * MINUTE)) == 1


def test_other_messages_are_never_too_late(store: SqlStore) -> None:
    write(store, letter("k", one_client(store)))
    assert keys(claim(store, NOW + timedelta(days=30))) == ["k"]


def test_a_prompt_that_was_put_back_is_as_late_as_it_would_have_been(store: SqlStore) -> None:
    prompt(store, one_client(store))
    first = begun(store)
    put_back(store, first, NOW + 20 * MINUTE)
    assert claim(store, NOW + 20 * MINUTE + JUST_PAST) == ()
    assert len(claim(store, NOW + 20 * MINUTE)) == 1
