"""An invented practice for the bot to work in, and what is found in its store when the bot is gone."""

import json
import re
from collections import Counter
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any
from zoneinfo import ZoneInfo

from sqlalchemy import URL, Connection, select

from bot.rehearsal.world import World
from scheduler.domain.hours import Hours, Span
from scheduler.domain.people import NOTICE_VERSION, Clearance, Client, Person, Role, State
from scheduler.domain.plan import Level, Plan
from scheduler.ports import Tx
from scheduler.usecases.cards import EXERCISES
from scheduler.usecases.wake import changing
from storage.engine import Database
from storage.keys import Keyring
from storage.migrate import upgrade
from storage.store import SqlStore
from storage.tables import EntryRow, FlagRow, InboxRow, OutboxRow, table
from storage.vault import unlock

ZONE = ZoneInfo("Europe/Lisbon")
FIRST_DAY = date(2027, 3, 8)
# Small bouts and short gaps, every day: as many prompts as a day can hold. Not a dose for anybody.
PLAN = Plan(
    movement="stomp",
    daily_total=130,
    bout_reps=10,
    bout_max=10,
    days_min=7,
    days_max=7,
    weekdays=(0, 1, 2, 3, 4, 5, 6),
    rest_days=0,
    hours=Hours(Span(480, 1200)),
    weekday_hours=(),
    start=FIRST_DAY,
    review=None,
    end=None,
    gap_minutes=60,
)
TEXT = re.compile(r"⟦([a-z0-9-]+)\|(\{.*?\})⟧")


def texts(said: str) -> list[tuple[str, dict[str, Any]]]:
    """A message in the pseudo-locale taken apart: ids and their arguments."""
    return [(id_, json.loads(args)) for id_, args in TEXT.findall(said)]


@dataclass(frozen=True, slots=True)
class Practice:
    """Accounts by what their people do."""

    clinician: int
    writers: tuple[int, ...]
    pressers: tuple[int, ...]
    hurt: tuple[int, ...]
    ids: dict[int, int]
    """Our person ids by account."""

    @property
    def clients(self) -> tuple[int, ...]:
        return (*self.writers, *self.pressers, *self.hurt)


def open_practice(
    url: URL, key: str, world: World, now: datetime, *, writers: int, pressers: int, hurt: int
) -> Practice:  # fmt: skip
    """A clinician and her clients, cleared, with a plan, on accounts of the stand-in."""
    database = Database(url, Keyring.parse(key))
    upgrade(database)
    unlock(database)
    accounts = [_account(world, f"Invented {n}") for n in range(1 + writers + pressers + hurt)]
    clinician, *clients = accounts
    ids = SqlStore(database).run_sync(lambda tx: _enrol(tx, clinician, clients, now))
    database.close_sync()
    return Practice(
        clinician,
        tuple(clients[:writers]),
        tuple(clients[writers : writers + pressers]),
        tuple(clients[writers + pressers :]),
        ids,
    )


def _account(world: World, name: str) -> int:
    account = world.add_person(name)
    world.people[account].started = True
    return account


def _enrol(tx: Tx, clinician: int, clients: list[int], now: datetime) -> dict[int, int]:
    tx.book.put("phone", "555 0100")
    tx.book.put("emergency_number", "112")
    hers = Person(0, Role.CLINICIAN, "Dr. Example", "qps", State.READY, account=clinician)
    ids = {clinician: tx.people.add(hers, None).id}
    for account in clients:
        person = Person(0, Role.CLIENT, "Demo", "qps", State.READY, ids[clinician], account)
        record = Client(
            id=0,
            clinician=ids[clinician],
            zone=ZONE,
            consent_version=NOTICE_VERSION,
            consent_at=now,
            readiness=(),
            readiness_at=now,
            usual_pain=0,
            joined_at=now,
            cards=EXERCISES,
        )
        ids[account] = client = tx.people.add(person, record).id
        tx.plans.clear(Clearance(client, Level.HIGH, ids[clinician], now))
        tx.plans.add(client, PLAN, FIRST_DAY, ids[clinician], now)
        with changing(tx, client, now):
            pass
    return ids


@dataclass(frozen=True, slots=True)
class Kept:
    """What the store holds at the end."""

    ledger: Counter[tuple[int, str, int]]
    """(client, source, reps) with how often it is there."""
    updates: dict[int, str]
    """Where each update stands."""
    answers: dict[str, str]
    """Where each answer stands, by its key."""
    prompts: dict[int, list[str]]
    """Where the messages of each bout stand, nudges left out."""
    flags: Counter[int]
    """Open flags of a hold, by client."""


def kept(url: URL, key: str) -> Kept:
    """Read the store of a bot that has ended."""
    database = Database(url, Keyring.parse(key))
    unlock(database)
    found = database.run_sync(_read)
    database.close_sync()
    return found


def _read(connection: Connection) -> Kept:
    ledger, inbox = table(EntryRow), table(InboxRow)
    outbox, flag = table(OutboxRow), table(FlagRow)
    entries = connection.execute(select(ledger.c.client, ledger.c.source, ledger.c.reps)).all()
    arrived = connection.execute(select(inbox.c.update_id, inbox.c.state)).all()
    post = connection.execute(
        select(outbox.c.key, outbox.c.state, outbox.c.bout, outbox.c.nudge).order_by(outbox.c.id)
    ).all()
    urgent = connection.execute(select(flag.c.client).where(flag.c.urgent)).all()
    prompts: dict[int, list[str]] = {}
    for row in post:
        if row.bout is not None and not row.nudge:
            prompts.setdefault(row.bout, []).append(row.state)
    return Kept(
        Counter((row.client, row.source, row.reps) for row in entries),
        {row.update_id: row.state for row in arrived},
        {row.key: row.state for row in post if row.key.startswith("answer:")},
        prompts,
        Counter(row.client for row in urgent),
    )
