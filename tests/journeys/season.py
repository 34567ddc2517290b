"""An invented practice through a season: all at work but the network, everybody with a habit.

Behaviour comes from a seeded generator, so that every run is the same. Nobody here is real.
"""

from __future__ import annotations

import heapq
from collections import defaultdict
from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import UTC, date, datetime, time, timedelta
from itertools import count
from random import Random
from typing import Any, TypeVar
from zoneinfo import ZoneInfo

from sqlalchemy import select

from bot.telegram.handlers import dispatch
from bot.telegram.incoming import Incoming
from bot.telegram.sender import TelegramSender
from bot.telegram.work import Work
from bot.words import render
from scheduler.clock import SteppedClock
from scheduler.domain import hours as h
from scheduler.domain.people import NOTICE_VERSION, Clearance, Client, Person, Role, State
from scheduler.domain.plan import Level, Plan
from scheduler.ports import Delivered, Delivery, Letter, Tx
from scheduler.usecases import days, digests
from storage.engine import Database
from storage.store import SqlStore, SqlTx
from storage.tables import EntryRow, table
from tests.journeys.facts import Facts, Hours, Row
from tests.journeys.log import Line, Said

ZONES = (
    *("Europe/Lisbon", "America/New_York", "Pacific/Auckland", "Asia/Kathmandu"),
    *("America/Santiago", "Australia/Lord_Howe", "Africa/Casablanca", "Pacific/Honolulu"),
)
"""Clocks go forward and back between March and May 2027, once by half an hour; two never change."""
FIRST_DAY = date(2027, 3, 1)
WEEKS = 13
NUMBERS = {"name": "Alder Lane (invented)", "phone": "555 0100", "emergency_number": "112"}
A_DAY = timedelta(days=1)
Result = TypeVar("Result")


@dataclass(frozen=True)
class Habit:
    """How likely somebody is, at each prompt, to do what; what is left is silence."""

    all: float
    fewer: float = 0.0
    later: float = 0.0
    skip: float = 0.0
    hurts: float = 0.0
    extra: float = 0.0
    """Once a day: reps without any prompt."""
    slow: int = 20
    """Minutes until the answer, at most."""


HABITS = (
    Habit(0.97),
    Habit(0.75, fewer=0.1, later=0.1, slow=100),
    Habit(0.4, skip=0.2, fewer=0.1, slow=45),
    Habit(0.8, hurts=0.03, extra=0.1),
    Habit(0.25, later=0.1, extra=0.2, slow=150),
)


class OneThread(SqlStore):
    """The store with its transactions in the caller's thread: half the time goes into changing threads."""

    async def run(self, work: Callable[[Tx], Result], *, alone: bool = False) -> Result:
        return self._database._transact(lambda connection: work(SqlTx(connection)))


class Season(TelegramSender):
    """The practice, its log, and what is still to happen. It is its own platform: it takes all."""

    def __init__(self, store: SqlStore, *, clients: int, clinicians: int, seed: int) -> None:
        start = datetime.combine(FIRST_DAY, time(), tzinfo=UTC) - A_DAY
        self.store, self.clock = store, SteppedClock(start)
        self.work = Work(store, self, self.clock, None, "season")
        self.lines: list[Line] = []
        self.facts: dict[int, Facts] = {}
        self.may_read: dict[int, set[str]] = {}
        self._habits: dict[int, Habit] = {}
        self._random = Random(seed)
        self._numbers = count(1)
        self._updates = count(1)
        self._coming: list[tuple[datetime, int, Callable[[], Incoming]]] = []
        store.run_sync(lambda tx: self._open(tx, clients, clinicians))

    # --- who is there ---

    def _open(self, tx: Tx, clients: int, clinicians: int) -> None:
        for name, value in NUMBERS.items():
            tx.book.put(name, value)
        staff = [self._staff(tx, f"Dana{n}#") for n in range(clinicians)]
        for n in range(clients):
            self._client(tx, n, staff[n % clinicians])
        digests.schedule_all(tx, self.clock.now())

    def _staff(self, tx: Tx, name: str) -> Person:
        account = 1000 + len(self.may_read)
        self.may_read[account] = {name}
        person = Person(0, Role.CLINICIAN, name, "qps", State.READY, account=account)
        return tx.people.add(person, None)

    def _client(self, tx: Tx, n: int, clinician: Person) -> None:
        now, zone, name = self.clock.now(), ZONES[n % len(ZONES)], f"Ann{n}#"
        account, plan = 2000 + n, self._plan(n)
        person = Person(0, Role.CLIENT, name, "qps", State.READY, clinician.id, account)
        record = Client(
            0, clinician.id, ZoneInfo(zone), consent_version=NOTICE_VERSION, consent_at=now,
            readiness=(), readiness_at=now, usual_pain=1, joined_at=now,
        )  # fmt: skip
        kept = tx.people.add(person, record).id
        tx.plans.clear(Clearance(kept, Level.MODERATE, clinician.id, now))
        tx.plans.add(kept, plan, plan.start, clinician.id, now)
        days.advance(tx, kept, now)
        assert clinician.account is not None
        hours = Hours(
            now, zone, _minutes(plan.hours.window), tuple(map(_minutes, plan.hours.quiet))
        )
        self.facts[account] = Facts(
            name, account, kept, clinician.account, plan.daily_total, plan.bout_reps,
            plan.bout_max, timedelta(minutes=plan.gap_minutes),
            plan.weekdays or tuple(range(7)), plan.rest_days, [hours], now,
        )  # fmt: skip
        self._habits[account] = HABITS[n % len(HABITS)]
        self.may_read[account] = {name, clinician.name}
        self.may_read[clinician.account].add(name)
        self._mornings(account, plan)

    def _plan(self, n: int) -> Plan:
        """Days fixed or flexible, bouts two or three, a quiet time or none; some begin late or end soon."""
        weekdays = ((0, 3), (1, 4), (), (2, 5), (0, 4))[n % 5]
        bouts, quiet = (2, 2, 3, 2, 2)[n % 5], (h.parse_span("12:00-13:00"),) if n % 2 else ()
        later, end = 42 if n % 4 == 3 else 0, FIRST_DAY + 41 * A_DAY if n % 4 == 2 else None
        hours = h.Hours(h.parse_span(("08:00-20:00", "09:30-18:00")[n % 2]), quiet)
        return Plan(
            "marching", 10 * bouts, 10, 20 if n % 4 else 10, 2, max(2, len(weekdays)), weekdays, 1,
            hours, (), FIRST_DAY + later * A_DAY, None, end, 120,
        )  # fmt: skip

    def _mornings(self, account: int, plan: Plan) -> None:
        """What people do without being asked, on days that chance picks: reps, a break, a question."""
        zone, habit = ZoneInfo(self.facts[account].hours[0].zone), self._habits[account]
        for n in range(WEEKS * 7):
            hour, minute = self._random.randint(8, 21), self._random.randint(0, 59)
            at = datetime.combine(FIRST_DAY + n * A_DAY, time(hour, minute), tzinfo=zone)
            if self._random.random() < habit.extra:
                self._say(at.astimezone(UTC), account, f"did {self._random.randint(1, 9)}")
            elif self._random.random() < 1 / 200:
                self._say(at.astimezone(UTC), account, "I am away for 4 days")
            elif self._random.random() < 1 / 60:
                self._say(at.astimezone(UTC), account, self._random.choice(("/today", "undo")))

    # --- what they say ---

    def _say(self, at: datetime, account: int, text: str, reply_to: int | None = None) -> None:
        self._will(at, lambda: self._words(account, text, reply_to))

    def _press(self, at: datetime, account: int, data: str, message_id: int) -> None:
        self._will(at, lambda: self._tap(account, data, message_id))

    def _will(self, at: datetime, deed: Callable[[], Incoming]) -> None:
        heapq.heappush(self._coming, (at, next(self._numbers), deed))

    def _words(self, account: int, text: str, reply_to: int | None) -> Incoming:
        base = self._incoming("text", account, next(self._numbers))
        return replace(base, text=text, reply_to=reply_to)

    def _tap(self, account: int, data: str, message_id: int) -> Incoming:
        return replace(self._incoming("press", account, message_id), data=data)

    def _incoming(self, kind: str, account: int, message_id: int) -> Incoming:
        return Incoming(
            next(self._updates), kind, account, account, private=True, at=self.clock.now(),
            message_id=message_id,
        )  # fmt: skip

    async def _happens(self, deed: Callable[[], Incoming]) -> None:
        incoming = deed()
        self.lines.append(
            Line(
                len(self.lines), self.clock.now(), False, incoming.chat, incoming.message_id or 0,
                (), incoming.text, update=incoming.update_id, data=incoming.data,
                reply_to=incoming.reply_to,
            )
        )  # fmt: skip
        now = self.clock.now()
        await self.store.run(lambda tx: dispatch.handle(tx, incoming, now))
        await self._drain()

    async def _drain(self) -> None:
        """All that is due now. Nothing waits in the inbox: what people say is handed in at once."""
        while await self.work.clients() + await self.work.messages():
            pass

    # --- what they get ---

    async def send(self, letter: Letter) -> Delivery:
        """The platform takes it, and whoever reads it may answer some minutes later."""
        message_id = letter.edits or next(self._numbers)
        said = tuple(Said(each.id, dict(each.args)) for each in letter.message)
        self.lines.append(
            Line(
                len(self.lines), self.clock.now(), True, letter.chat, message_id, said,
                render(letter.message, "qps"), silent=letter.silent, edit=letter.edits is not None,
            )
        )  # fmt: skip
        for each in said:
            self._answer(letter.chat, message_id, each)
        return Delivered(message_id)

    async def stop_spinner(self, press_id: str) -> None:
        """Nothing turns here."""

    def _answer(self, chat: int, message_id: int, said: Said) -> None:
        facts = self.facts.get(chat)
        after = self.clock.now() + timedelta(minutes=self._random.randint(1, 30))
        if facts is None:
            self._clinician(chat, message_id, said)
        elif said.id == "prompt":
            self._to_a_prompt(chat, message_id, said.args)
        elif said.id == "make-up" and self._random.random() < 0.7:
            yes = self._random.random() < 0.7
            self._press(after, chat, f"mu:{int(yes)}", message_id)
        elif said.id == "make-up-kept":
            facts.made_up.add(date.fromisoformat(said.args["day"]))
        elif said.id == "ask-week" and self._random.random() < 0.6:
            self._press(after, chat, "wq:none", message_id)
        elif said.id == "week-days" and self._random.random() < 0.5:
            self._press(after, chat, "wk:keep", message_id)

    def _to_a_prompt(self, chat: int, message_id: int, args: dict[str, Any]) -> None:
        habit, chance, bout = self._habits[chat], self._random.random(), args["bout"]
        at = self.clock.now() + timedelta(seconds=self._random.randint(20, 60 * habit.slow))
        deeds: tuple[tuple[float, Callable[[], None]], ...] = (
            (habit.all, lambda: self._press(at, chat, f"all:{bout}", message_id)),
            (habit.fewer, lambda: self._say(at, chat, f"{args['reps'] // 2}", message_id)),
            (habit.later, lambda: self._say(at, chat, "in 40 min")),
            (habit.skip, lambda: self._press(at, chat, f"skp:{bout}", message_id)),
            (habit.hurts, lambda: self._say(at, chat, "my hip hurts, 8 of 10")),
        )
        for likely, deed in deeds:
            chance -= likely
            if chance < 0:
                deed()
                return

    def _clinician(self, chat: int, message_id: int, said: Said) -> None:
        """She releases the next day, to the same dose, from the day after."""
        if said.id != "flag" or not said.args["urgent"]:
            return
        client = said.args["client"]
        total = next(f.total for f in self.facts.values() if f.person == client)
        at = self.clock.now() + timedelta(hours=self._random.randint(12, 40))
        self._press(at, chat, f"rd:{client}:{total}", message_id)
        self._press(at + timedelta(seconds=30), chat, f"rf:{client}:{total}:tomorrow", message_id)

    # --- the days ---

    async def play(self, until: datetime) -> None:
        """Everything that falls due and everything that is said, each at its own instant."""
        while True:
            said = self._coming[0][0] if self._coming else until
            due = await self.work.next_due()
            at = min(said, due or until)
            if at >= until:
                return
            self.clock.move(max(at, self.clock.now()))
            if at == said:
                await self._happens(heapq.heappop(self._coming)[2])
            else:
                await self._drain()

    def by_chat(self) -> dict[int, list[Line]]:
        """The log, chat by chat."""
        found: dict[int, list[Line]] = defaultdict(list)
        for line in self.lines:
            found[line.chat].append(line)
        return found


def ledgers(database: Database) -> dict[int, list[Row]]:
    """Every line of the ledger by client, as it rests."""
    rows = table(EntryRow)
    query = select(rows).order_by(rows.c.id)
    found: dict[int, list[Row]] = defaultdict(list)
    for r in database.run_sync(lambda connection: list(connection.execute(query))):
        found[r.client].append(Row(r.id, r.day, r.reps, r.at, r.source, r.bout, r.voids))
    return found


def _minutes(span: h.Span) -> tuple[int, int]:
    return span.start, span.end
