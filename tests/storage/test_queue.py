"""Which messages leave and in which order, and what two workers do at once. All ours."""

from dataclasses import replace
from datetime import datetime
from typing import Any

from scheduler.domain.messages import Lane, message
from scheduler.domain.people import Person, Role, State
from scheduler.ports import Claim, Outgoing, Tx
from storage.store import SqlStore
from tests.storage.clinic import (
    HOUR,
    JUST_PAST,
    LEASE,
    MINUTE,
    NOW,
    SECOND,
    begin,
    begun,
    claim,
    keys,
    letter,
    one_client,
    prompt,
    put_back,
    sent,
    several,
    write,
)


def waiting(store: SqlStore, now: datetime = NOW) -> int:
    return store.run_sync(lambda tx: tx.outbox.waiting(now))


def next_due(store: SqlStore, now: datetime = NOW) -> datetime | None:
    return store.run_sync(lambda tx: tx.outbox.next_due(now))


def accept(store: SqlStore, claimed: Claim, now: datetime = NOW) -> None:
    begin(store, claimed, now)
    assert sent(store, claimed, now)


def drain(store: SqlStore, now: datetime = NOW) -> list[str]:
    """Send all that is due; the keys in the order in which they left."""
    left: list[str] = []
    while claims := claim(store, now):
        left += keys(claims)
        for each in claims:
            accept(store, each, now)
    return left


def save(store: SqlStore, who: int, **changes: Any) -> None:
    def work(tx: Tx) -> None:
        person = tx.people.get(who)
        assert person
        tx.people.save(replace(person, **changes))

    store.run_sync(work)


# --- order ---------------------------------------------------------------------------------------


def test_lanes_leave_in_their_order_and_within_one_the_oldest_first(store: SqlStore) -> None:
    people = several(store, 7)
    lanes = (Lane.REST, Lane.PROMPT, Lane.ANSWER, Lane.ANSWER, Lane.FLAG, Lane.SAFETY, Lane.ANSWER)
    ages = (9, 9, 1, 2, 0, 0, 1)
    for n, (who, lane, age) in enumerate(zip(people, lanes, ages, strict=True)):
        write(store, letter(str(n), who, lane), now=NOW - age * SECOND)
    assert keys(claim(store, limit=2)) == ["5", "4"]
    assert keys(claim(store)) == ["3", "2", "6", "1", "0"]


def test_one_message_of_a_chat_leaves_at_a_time_in_the_order_they_were_written(
    store: SqlStore,
) -> None:
    who = one_client(store)
    write(store, *(letter(str(n), who) for n in range(4)))
    write(store, letter("safety", who, Lane.SAFETY), letter("rest", who, Lane.REST))
    (first,) = claim(store)
    assert claim(store) == ()
    begin(store, first)
    assert claim(store) == ()
    assert sent(store, first)
    assert keys((first,)) + drain(store) == ["safety", "0", "1", "2", "3", "rest"]


def test_the_roles_of_one_account_share_its_chat(store: SqlStore) -> None:
    who = one_client(store)
    admin = Person(0, Role.ADMIN, "Two Roles", "en", State.READY, account=4711)
    other = store.run_sync(lambda tx: tx.people.add(admin, None)).id
    to_chat = Outgoing("chat", Lane.ANSWER, message("chat"), chat=4711)
    write(store, letter("client", who), letter("admin", other), to_chat)
    assert keys(claim(store)) == ["client"]
    assert claim(store) == ()


def test_a_message_that_was_put_back_keeps_its_place(store: SqlStore) -> None:
    who, other = several(store, 2)
    write(store, letter("first", who))
    mine = begun(store)
    put_back(store, mine, NOW + 5 * SECOND)
    write(store, letter("second", who), letter("rest", who, Lane.REST), now=NOW + SECOND)
    write(store, letter("safety", who, Lane.SAFETY), letter("other", other), now=NOW + SECOND)
    assert drain(store, NOW + 4 * SECOND) == ["safety", "other"]
    assert drain(store, NOW + 5 * SECOND) == ["first", "second", "rest"]


def test_a_prompt_that_is_still_to_come_holds_nothing_up(store: SqlStore) -> None:
    who = one_client(store)
    prompt(store, who, due_at=NOW + HOUR)
    write(store, letter("rest", who, Lane.REST))
    assert drain(store) == ["rest"]


def test_a_chat_goes_on_when_the_lease_of_a_dead_worker_ends(store: SqlStore) -> None:
    who = one_client(store)
    write(store, letter("first", who), letter("second", who))
    begun(store)
    assert claim(store, NOW + LEASE, "two") == ()
    assert keys(claim(store, NOW + LEASE + JUST_PAST, "two")) == ["second"]


# --- who can be reached --------------------------------------------------------------------------


def test_who_has_blocked_the_bot_gets_nothing_until_she_is_back(store: SqlStore) -> None:
    who = one_client(store)
    write(store, letter("k", who))
    save(store, who, blocked=True)
    assert (claim(store), waiting(store), next_due(store)) == ((), 0, None)
    save(store, who, blocked=False)
    assert (waiting(store), next_due(store)) == (1, NOW)
    assert keys(claim(store)) == ["k"]


def test_who_has_not_joined_yet_gets_it_when_she_has(store: SqlStore) -> None:
    who = one_client(store)
    save(store, who, account=None)
    write(store, letter("k", who))
    assert (claim(store), waiting(store), next_due(store)) == ((), 0, None)
    save(store, who, account=99)
    (first,) = claim(store)
    assert first.letter.chat == 99


def test_a_message_follows_a_person_who_moves_to_another_account(store: SqlStore) -> None:
    who = one_client(store)
    write(store, letter("k", who))
    save(store, who, account=2**52, language="en")
    (first,) = claim(store)
    assert (first.letter.chat, first.letter.language) == (2**52, "en")


# --- what waits, and what is next ----------------------------------------------------------------


def test_an_empty_outbox_waits_for_nothing(store: SqlStore) -> None:
    assert (waiting(store), next_due(store)) == (0, None)


def test_what_waits_is_what_is_due_or_on_its_way(store: SqlStore) -> None:
    who, other, third = several(store, 3)
    write(store, letter("a", who), letter("b", who), letter("c", other))
    write(store, letter("later", third, due_at=NOW + HOUR))
    assert waiting(store) == 3
    first, second = claim(store)
    assert waiting(store) == 3
    accept(store, first)
    begin(store, second)
    assert waiting(store) == 2
    assert store.run_sync(lambda tx: tx.outbox.drop(second, "refused"))
    assert (waiting(store), waiting(store, NOW + HOUR)) == (1, 2)


def test_what_was_put_back_does_not_wait_nor_what_is_behind_it(store: SqlStore) -> None:
    who = one_client(store)
    write(store, letter("a", who), letter("b", who))
    first = begun(store)
    again = NOW + 5 * SECOND
    put_back(store, first, again)
    assert (waiting(store), next_due(store)) == (0, again)
    assert waiting(store, again) == 2
    assert keys(claim(store, again)) == ["a"]


def test_the_next_instant_is_that_of_the_earliest_row(store: SqlStore) -> None:
    who, other = several(store, 2)
    write(store, letter("a", who, due_at=NOW + HOUR), letter("b", other, due_at=NOW + MINUTE))
    assert next_due(store) == NOW + MINUTE
    assert next_due(store, NOW + 2 * HOUR) == NOW + MINUTE


def test_a_prompt_that_is_too_late_waits_no_more_and_is_not_next(store: SqlStore) -> None:
    prompt(store, one_client(store))
    on_the_edge = NOW + 20 * MINUTE
    assert (waiting(store, on_the_edge), next_due(store, on_the_edge)) == (1, NOW)
    past = on_the_edge + JUST_PAST
    assert (waiting(store, past), next_due(store, past)) == (0, None)


def test_the_end_of_a_lease_is_an_instant_to_look_at(store: SqlStore) -> None:
    who = one_client(store)
    write(store, letter("a", who), letter("b", who))
    begun(store)
    ends = next_due(store)
    assert ends == NOW + LEASE + JUST_PAST
    assert len(store.run_sync(lambda tx: tx.outbox.expire_leases(ends))) == 1


def test_at_every_instant_told_there_is_something_to_do(store: SqlStore) -> None:
    """Whoever steps from instant to instant would otherwise stand still for ever."""
    people = several(store, 3)
    for n, who in enumerate(people):
        write(store, letter(f"now:{n}", who), letter(f"rest:{n}", who, Lane.REST))
        prompt(store, who, due_at=NOW + n * HOUR)
    refused: list[str] = []
    now, left = NOW, []
    while (due := next_due(store, now)) is not None:
        now = max(now, due)
        claims = claim(store, now)
        assert claims, now
        for each in claims:
            begin(store, each, now)
            (key,) = keys((each,))
            if key in refused:
                assert sent(store, each, now)
                left.append(key)
            else:  # everything is put back once
                refused.append(key)
                again = now + 7 * MINUTE
                assert put_back(store, each, again)
    assert len(left) == 9
    assert waiting(store, now) == 0
