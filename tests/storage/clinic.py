"""An invented practice to fill a store with, and short ways to say what tests say often."""

import asyncio
from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from threading import Event
from typing import TypeVar
from zoneinfo import ZoneInfo

from scheduler.domain.days import Bout, Day
from scheduler.domain.hours import Hours, Span
from scheduler.domain.messages import Lane, message
from scheduler.domain.people import Client, Person, Role, State
from scheduler.domain.plan import Plan
from scheduler.domain.spacing import Placed
from scheduler.ports import Arrived, Claim, Outgoing, PlanVersion, Tx
from storage.engine import Database
from storage.store import SqlStore

Result = TypeVar("Result")

NOW = datetime(2027, 3, 8, 9, 0, 0, 123456, tzinfo=UTC)
TODAY = date(2027, 3, 8)
SECOND, MINUTE, HOUR = timedelta(seconds=1), timedelta(minutes=1), timedelta(hours=1)
JUST_PAST = timedelta(microseconds=1)
LEASE = 60 * SECOND
PATIENCE_SECONDS = 10  # only ever waited in full by a failing test
LARGE = 2**52  # the platform's ids have at most 52 significant bits (its documentation, memory)

PLAN = Plan(
    movement="stepping-jack",
    daily_total=40,
    bout_reps=10,
    bout_max=12,
    days_min=2,
    days_max=2,
    weekdays=(0, 3),
    rest_days=1,
    hours=Hours(Span(480, 1200), (Span(720, 780),)),
    weekday_hours=((3, Hours(Span(540, 1140))),),
    gap_minutes=120,
    start=TODAY,
    review=date(2027, 4, 19),
    end=None,
    note="beside the kitchen counter",
)


def clinician(tx: Tx, account: int | None = 7001, name: str = "Dr. Example") -> Person:
    person = Person(0, Role.CLINICIAN, name, "en", State.READY, account=account)
    return tx.people.add(person, None)


def client(tx: Tx, hers: int, account: int | None = 4711, name: str = "Demo Client") -> Person:
    person = Person(0, Role.CLIENT, name, "es", State.READY, clinician=hers, account=account)
    record = Client(id=0, clinician=hers, zone=ZoneInfo("Europe/Madrid"))
    return tx.people.add(person, record)


def one_client(store: SqlStore) -> int:
    return store.run_sync(lambda tx: client(tx, clinician(tx).id).id)


def planned(tx: Tx, who: int, plan: Plan = PLAN, valid_from: date = TODAY) -> PlanVersion:
    hers = tx.people.client(who).clinician
    return tx.plans.add(who, plan, valid_from, hers, NOW)


def day_of(tx: Tx, who: int, day: date = TODAY) -> Day:
    version = planned(tx, who)
    kept = Day(who, day, version.id, 40, (Placed(NOW, 20), Placed(NOW + 2 * HOUR, 20)))
    tx.days.save(kept)
    return kept


def bout_of(tx: Tx, who: int, n: int = 1, day: date = TODAY, due_at: datetime = NOW) -> Bout:
    bout = Bout(0, who, day, n, 10, due_at, due_at + HOUR)
    return tx.days.add_bout(bout)


def several(store: SqlStore, number: int) -> list[int]:
    def enrol(tx: Tx) -> list[int]:
        hers = clinician(tx).id
        return [client(tx, hers, 100 + n).id for n in range(number)]

    return store.run_sync(enrol)


# --- outbox and inbox ----------------------------------------------------------------------------


def letter(key: str, to: int, lane: Lane = Lane.ANSWER, **more: object) -> Outgoing:
    return replace(Outgoing(key, lane, message(key), person=to), **more)  # type: ignore[arg-type]


def write(store: SqlStore, *letters: Outgoing, now: datetime = NOW) -> None:
    added = store.run_sync(lambda tx: [tx.outbox.add(each, now) for each in letters])
    assert all(added)


def prompt(store: SqlStore, who: int, n: int = 1, due_at: datetime = NOW, **more: object) -> int:
    """A waiting prompt and its message; the bout's id."""

    def work(tx: Tx) -> int:
        bout = bout_of(tx, who, n, due_at=due_at)
        asked = letter(f"prompt:{bout.id}", who, Lane.PROMPT, bout=bout.id, due_at=due_at, **more)
        assert tx.outbox.add(asked, NOW)
        return bout.id

    return store.run_sync(work)


def claim(
    store: SqlStore, now: datetime = NOW, worker: str = "one", limit: int = 20
) -> tuple[Claim, ...]:
    return store.run_sync(lambda tx: tx.outbox.claim_due(now, worker, LEASE, limit))


def keys(claims: tuple[Claim, ...]) -> list[str]:
    """What was claimed, by the ids of the texts, which tests make the same as the keys."""
    return [each.letter.message[0].id for each in claims]


def begin(store: SqlStore, one: Claim, now: datetime = NOW, lease: timedelta = LEASE) -> bool:
    return store.run_sync(lambda tx: tx.outbox.begin(one, now, lease))


def sent(store: SqlStore, one: Claim, now: datetime = NOW, message_id: int = 1) -> bool:
    return store.run_sync(lambda tx: tx.outbox.sent(one, message_id, now))


def put_back(store: SqlStore, one: Claim, due_at: datetime) -> bool:
    return store.run_sync(lambda tx: tx.outbox.put_back(one, due_at))


def begun(store: SqlStore, now: datetime = NOW, worker: str = "one") -> Claim:
    """The first row that is due, claimed and in sending."""
    (first, *_) = claim(store, now, worker)
    assert begin(store, first, now)
    return first


def take(
    store: SqlStore, now: datetime = NOW, worker: str = "one", limit: int = 20
) -> tuple[Arrived, ...]:
    return store.run_sync(lambda tx: tx.inbox.claim(now, worker, LEASE, limit))


def ids(updates: tuple[Arrived, ...]) -> list[int]:
    return [each.update_id for each in updates]


# --- two at once ---------------------------------------------------------------------------------


async def while_open(
    store: SqlStore,
    database: Database,
    first: Callable[[Tx], Result],
    second: Callable[[Tx], Result],
    *,
    without_waiting: bool = False,
) -> tuple[Result, Result]:
    """Run `second` while the transaction in which `first` was done is still open, then end both.

    `without_waiting`: `second` must come to its own end first. PostgreSQL only.
    """
    done, end = Event(), Event()

    def stay_open(tx: Tx) -> Result:
        result = first(tx)
        done.set()
        assert end.wait(PATIENCE_SECONDS)
        return result

    one = asyncio.create_task(store.run(stay_open))
    assert await asyncio.to_thread(done.wait, PATIENCE_SECONDS)
    two = asyncio.create_task(store.run(second))
    try:
        await _waits_or_is_done(database, two)
        assert two.done() or not without_waiting
    finally:
        end.set()
        await asyncio.wait([one, two])
    return one.result(), two.result()


async def _waits_or_is_done(database: Database, task: asyncio.Task[Result]) -> None:
    """On SQLite it waits for its only thread; on PostgreSQL the server says who waits for a lock."""
    query = (
        "SELECT count(*) FROM pg_stat_activity"
        " WHERE datname = current_database() AND wait_event_type = 'Lock'"
    )
    while database.dialect == "postgresql" and not task.done():
        if await database.run(lambda it: it.exec_driver_sql(query).scalar_one()):
            return
