"""How fast messages leave over all workers of a store (R3). Ours, and arithmetic beside numbers."""

from datetime import datetime, timedelta
from itertools import count, pairwise

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from scheduler.domain.messages import Lane, message
from scheduler.ports import Claim, Outgoing, Pace, Turn, Tx
from storage.departures import LATE, ONE_CHAT
from storage.engine import Database
from storage.store import SqlStore
from tests.conftest import on_postgresql, on_sqlite
from tests.storage.clinic import LEASE, NOW, SECOND, while_open

AHEAD = timedelta(milliseconds=15)
A_LITTLE = timedelta(microseconds=1)
KEYS = count(1)


def at_rate(rate: float) -> Pace:
    return Pace(SECOND / rate, AHEAD)


def write(store: SqlStore, *chats: int, lane: Lane = Lane.REST) -> None:
    """A message into each of these chats."""

    def work(tx: Tx) -> None:
        for chat in chats:
            key = f"k{next(KEYS)}"
            tx.outbox.add(Outgoing(key=key, lane=lane, message=message("help"), chat=chat), NOW)

    store.run_sync(work)


def turn(store: SqlStore, pace: Pace, now: datetime, worker: str = "one", most: int = 20) -> Turn:
    """One claim; what is claimed has been sent at once."""

    def work(tx: Tx) -> Turn:
        got = tx.outbox.claim_paced(now, worker, LEASE, most, pace)
        for claim in got.claims:
            assert tx.outbox.begin(claim, now, LEASE)
            assert tx.outbox.sent(claim, 1, now)
        return got

    return store.run_sync(work)


def left(claims: tuple[Claim, ...]) -> list[tuple[int, float]]:
    """Chat and second after NOW in which each leaves."""
    assert all(claim.leaves_at for claim in claims)
    return [(c.letter.chat, round((c.leaves_at - NOW) / SECOND, 6)) for c in claims if c.leaves_at]


def all_of(store: SqlStore, pace: Pace, workers: int = 1) -> list[tuple[int, float]]:
    """Workers claim in turn, each when it was told to look again, until nothing is due."""
    now, found = NOW, []
    for n in range(1000):
        got = turn(store, pace, now, str(n % workers))
        found += left(got.claims)
        again = got.no_place_before or got.held_until
        if again is None:
            return found
        now = max(now, again)
    raise AssertionError("there is no end to it")


def test_the_first_message_leaves_at_once_and_the_others_at_the_rate(store: SqlStore) -> None:
    write(store, *range(50))
    times = [at for _, at in all_of(store, at_rate(25), workers=3)]
    assert times == pytest.approx([n / 25 for n in range(50)])


def test_places_are_given_for_the_moment_ahead_only(store: SqlStore) -> None:
    write(store, *range(50))
    got = turn(store, at_rate(1000), NOW)
    assert [at for _, at in left(got.claims)] == [n / 1000 for n in range(16)]  # 0 to 15 ms
    assert got.no_place_before == NOW + timedelta(milliseconds=16) - AHEAD


def test_what_is_more_urgent_and_comes_later_gets_the_next_place(store: SqlStore) -> None:
    write(store, *range(50))
    got = turn(store, at_rate(30), NOW)
    write(store, 77, lane=Lane.SAFETY)
    assert got.no_place_before is not None
    (claim,) = turn(store, at_rate(30), got.no_place_before).claims
    ((chat, at),) = left((claim,))
    assert chat == 77
    assert at == pytest.approx(1 / 30, abs=1e-6)


def test_two_messages_of_one_chat_leave_a_second_apart_and_hold_up_no_other(
    store: SqlStore,
) -> None:
    write(store, 1, 1, 1, 2)
    found = all_of(store, at_rate(25), workers=2)
    assert found == [(1, 0), (2, 0.04), (1, ONE_CHAT / SECOND), (1, 2 * ONE_CHAT / SECOND)]


def test_after_a_pause_no_places_have_been_saved_up(store: SqlStore) -> None:
    pace = at_rate(2)
    write(store, 1)
    turn(store, pace, NOW)
    write(store, 2, 3)
    later = NOW + 60 * SECOND
    got = turn(store, pace, later)
    assert left(got.claims) == [(2, 60)]
    assert got.no_place_before == later + SECOND / 2 - AHEAD


@pytest.mark.parametrize(("late", "at"), [(LATE, 0.04), (LATE + A_LITTLE, 0.190001)])
def test_a_worker_that_wakes_up_a_little_late_does_not_lower_the_rate(
    store: SqlStore, late: timedelta, at: float
) -> None:
    write(store, 1)
    turn(store, at_rate(25), NOW)
    write(store, 2)
    got = turn(store, at_rate(25), NOW + SECOND / 25 + late)
    assert left(got.claims) == [(2, at)]


def test_who_catches_up_still_lets_no_more_leave_in_a_second_than_the_rate(
    store: SqlStore,
) -> None:
    """A worker that wakes up every 0.1 s, and once a second late by half of one."""
    pace, now, effective = at_rate(20), NOW, []
    write(store, *range(200))
    for n in range(100):
        now += SECOND / (2 if n % 10 == 0 else 10)
        effective += [max(now, NOW + at * SECOND) for _, at in left(turn(store, pace, now).claims)]
    fastest = max(sum(start <= at < start + SECOND for at in effective) for start in effective)
    assert 19 <= fastest <= 20  # never more, and about as many where it was not late


def test_a_rate_below_one_a_second_is_kept(store: SqlStore) -> None:
    write(store, 1, 1, 2)
    assert all_of(store, at_rate(0.5)) == [(1, 0), (1, 2), (2, 4)]


def test_a_clock_that_was_set_back_stops_nothing(store: SqlStore) -> None:
    write(store, 1, 2)
    turn(store, at_rate(25), NOW + timedelta(hours=1), most=1)
    assert left(turn(store, at_rate(25), NOW, most=1).claims) == [(2, 0)]


def test_departures_are_forgotten_after_seconds(store: SqlStore, database: Database) -> None:
    write(store, *range(20))
    all_of(store, at_rate(1000))
    write(store, 99)
    turn(store, at_rate(1000), NOW + 5 * SECOND)
    kept = database.run_sync(
        lambda c: c.exec_driver_sql("SELECT count(*) FROM departure").scalar_one()
    )
    assert kept == 1


@on_postgresql
async def test_two_workers_never_get_the_same_place(store: SqlStore, database: Database) -> None:
    write(store, *range(10))

    def claim(worker: str):  # type: ignore[no-untyped-def]
        return lambda tx: tx.outbox.claim_paced(NOW, worker, LEASE, 2, at_rate(1000))

    first, second = await while_open(store, database, claim("one"), claim("two"))
    assert [at for _, at in left(first.claims + second.claims)] == [0, 0.001, 0.002, 0.003]


@on_sqlite
@settings(
    max_examples=30, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(
    st.sampled_from([0.5, 3.0, 25.0, 1000.0]),
    st.lists(st.tuples(st.floats(0, 2), st.integers(1, 5)), min_size=1, max_size=25),
)
def test_whoever_writes_whenever_neither_rate_is_exceeded(
    store: SqlStore, rate: float, writing: list[tuple[float, int]]
) -> None:
    hour = timedelta(hours=next(KEYS))  # what another example has sent is long gone
    now, places = NOW + hour, []
    leaves: list[tuple[int, float]] = []  # a place that has just gone by is left at once
    for pause, chat in [*writing, *[(0.05, 0)] * 200]:
        now += timedelta(seconds=pause)
        if chat:
            write(store, chat)
        got = turn(store, at_rate(rate), now, str(chat))
        found = left(got.claims)
        places += [at for _, at in found]
        leaves += [(chat, max(at, (now - NOW) / SECOND)) for chat, at in found]
    everyone = sorted(places)
    assert all(b - a >= 1 / rate - 1e-5 for a, b in pairwise(everyone))
    for who in {chat for chat, _ in leaves}:
        hers = sorted(at for chat, at in leaves if chat == who)
        assert all(b - a >= 1 for a, b in pairwise(hers))
