"""A practice that is open, on a stage that can go dark and come back, and the people in it."""

from contextlib import AsyncExitStack
from datetime import UTC, date, datetime, time, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from sqlalchemy import URL, select

from bot.rehearsal import people
from bot.rehearsal.faults import Fault, FaultKind
from bot.rehearsal.stage import Stage, stage
from bot.rehearsal.world import World
from scheduler.domain import hours as h
from scheduler.domain.people import NOTICE_VERSION, Clearance, Client, Person, Role, State
from scheduler.domain.plan import Level, Plan
from scheduler.ports import Tx
from scheduler.usecases import cards, days
from storage.engine import Database
from storage.keys import Keyring
from storage.tables import EntryRow, table
from tests.journeys.everyone import strangers, twice
from tests.journeys.facts import Facts, Hours, Row
from tests.journeys.invariants import Replay
from tests.journeys.log import Line, Said, lines

MONDAY = date(2027, 3, 8)
LISBON = "Europe/Lisbon"
NUMBERS = {"name": "Alder Lane (invented)", "phone": "555 0100", "emergency_number": "112"}


class Theatre:
    """Opens at `at`, with admin Kim and clinician Dana. Everybody in it is invented."""

    def __init__(self, url: URL) -> None:
        self.url = url
        self.world: World | None = None
        self.clients: list[Someone] = []
        self.may_read: dict[int, set[str]] = {}
        self.kim = self.dana = 0
        self._stack = AsyncExitStack()
        self._stage: Stage | None = None
        self._books: Database | None = None

    @property
    def stage(self) -> Stage:
        assert self._stage is not None, "the theatre is dark"
        return self._stage

    async def open(self, at: datetime, *, practice: bool = True) -> None:
        """The bot comes up at an instant, for the first time or again, in the same world.

        `practice` false leaves the setting up to the journey itself.
        """
        first = self.world is None
        url = self.url.render_as_string(hide_password=False)
        self._stage = await self._stack.enter_async_context(stage(url, at, world=self.world))
        self.world = self._stage.world
        if first and practice:
            await self._practice()
        await self._stage.step(at)

    async def close(self) -> None:
        """The bot goes down. What people say meanwhile waits at the platform."""
        self._stage = None
        await self._stack.aclose()

    def meanwhile(self, who: "Someone", text: str, at: datetime) -> None:
        """Somebody writes while the bot is down; the words wait at the platform."""
        assert self.world is not None
        assert self._stage is None
        self.world.now = lambda: at
        people.say(self.world, who.facts.account, text)

    async def all_heard(self) -> None:
        """Wait until the bot has handled everything that people did."""
        for line in self.lines():
            if line.update is not None:
                await self.stage.house.handled(line.update)

    async def _practice(self) -> None:
        self.kim, self.dana = self.account("Kim"), self.account("Dana")

        def work(tx: Tx) -> None:
            for name, value in NUMBERS.items():
                tx.book.put(name, value)
            for role, name, account in (
                (Role.ADMIN, "Kim", self.kim),
                (Role.CLINICIAN, "Dana", self.dana),
            ):
                kept = tx.people.add(
                    Person(0, role, name, "qps", State.READY, account=account), None
                )
                self.stage.ids[name] = kept.id

        await self.stage.house.store.run(work)
        self.may_read[self.kim] = {"Kim", "Dana"}
        self.may_read[self.dana] = {"Dana"}

    def account(self, name: str) -> int:
        """Somebody who has written to the bot before."""
        assert self.world is not None
        account = self.world.add_person(name)
        self.world.people[account].started = True
        return account

    async def client(
        self,
        name: str = "Ann",
        *,
        zone: str = LISBON,
        day: date = MONDAY,
        total: int = 40,
        bout: int = 10,
        bout_max: int | None = None,
        gap: int = 120,
        window: str = "08:00-20:00",
        quiet: str = "",
        movement: str = "marching",
        weekdays: tuple[int, ...] | None = None,
        rest_days: int = 0,
        days_min: int | None = None,
        days_max: int | None = None,
        language: str = "qps",
        shows_cards: bool = False,
    ) -> "Someone":
        """A client who is ready and cleared, at 05:00 of her first day, with a plan for that weekday.

        Written in one transaction: how one joins is a journey of its own. She has seen every how-to card,
        unless `shows_cards`.
        """
        five = datetime.combine(day, time(5), tzinfo=ZoneInfo(zone)).astimezone(UTC)
        if self._stage is None:
            await self.open(five)
        now = self.stage.now
        chosen = (day.weekday(),) if weekdays is None else weekdays
        hours = h.Hours(h.parse_span(window), tuple(h.parse_span(q) for q in quiet.split()))
        plan = Plan(
            movement, total, bout, bout_max or bout, days_min or len(chosen),
            days_max or days_min or len(chosen), chosen, rest_days,
            hours, (), day - timedelta(days=7), None, None, gap,
        )  # fmt: skip
        account = self.account(name)
        dana = self.stage.ids["Dana"]

        def work(tx: Tx) -> int:
            person = Person(0, Role.CLIENT, name, language, State.READY, dana, account)
            record = Client(
                0, dana, ZoneInfo(zone), consent_version=NOTICE_VERSION, consent_at=now,
                readiness=(), readiness_at=now, usual_pain=1, joined_at=now,
                cards=() if shows_cards else cards.EXERCISES,
            )  # fmt: skip
            kept = tx.people.add(person, record).id
            tx.plans.clear(Clearance(kept, Level.MODERATE, dana, now))
            tx.plans.add(kept, plan, plan.start, dana, now)
            days.advance(tx, kept, now)
            return kept

        person = await self.stage.house.store.run(work)
        self.stage.ids[name] = person
        facts = Facts(
            name, account, person, self.dana, total, bout, bout_max or bout,
            timedelta(minutes=gap), chosen or tuple(range(7)), rest_days,
            [Hours(now, zone, _minutes(hours.window), tuple(map(_minutes, hours.quiet)))], now,
        )  # fmt: skip
        return self.knows(facts, day)

    def knows(self, facts: Facts, day: date) -> "Someone":
        """Take a client into the checks of the journey."""
        someone = Someone(self, facts, day)
        self.clients.append(someone)
        self.may_read[facts.account] = {facts.name, "Dana"}
        self.may_read[self.dana].add(facts.name)
        self.may_read[self.kim].add(facts.name)
        return someone

    # --- the log and its check ---

    def lines(self) -> list[Line]:
        assert self.world is not None
        return lines(self.world)

    def ledger(self, person: int) -> list[Row]:
        """Every line of one client's ledger, as it rests."""
        rows = table(EntryRow)
        query = select(rows).where(rows.c.client == person).order_by(rows.c.id)
        if self._books is None:
            self._books = Database(self.url, Keyring.parse("none"))
        return self._books.run_sync(
            lambda connection: [
                Row(r.id, r.day, r.reps, r.at, r.source, r.bout, r.voids)
                for r in connection.execute(query)
            ]
        )

    def check(self) -> None:
        """I1 to I9 over everything that was said; after it the books are closed."""
        log = self.lines()
        faults = [*strangers(log, self.may_read), *twice(log)]
        for client in self.clients:
            faults += Replay(client.facts, log, self.ledger(client.facts.person)).run()
        if self._books is not None:
            self._books.close_sync()
        assert not faults, "\n".join(faults)


class Someone:
    """A client on the stage. Times are by her wall clock, on the n-th day of the journey from 0."""

    def __init__(self, theatre: Theatre, facts: Facts, day: date) -> None:
        self.theatre, self.facts, self.first_day = theatre, facts, day

    # --- what she does ---

    def at(self, hour: int, minute: int = 0, second: int = 0, *, day: int = 0) -> datetime:
        """An instant by her wall clock as it stands now (UTC)."""
        zone = ZoneInfo(self.facts.hours[-1].zone)
        date_ = self.first_day + timedelta(days=day)
        return datetime.combine(date_, time(hour, minute, second), tzinfo=zone).astimezone(UTC)

    async def until(self, hour: int, minute: int = 0, second: int = 0, *, day: int = 0) -> None:
        await self.theatre.stage.step(self.at(hour, minute, second, day=day))

    async def next(self, limit: datetime) -> None:
        """Until something falls due, at the latest until `limit`."""
        stage = self.theatre.stage
        due = await stage.house.step(stage.now)
        await stage.step(min(due or limit, limit))

    async def say(self, text: str, reply_to: int | None = None) -> Line:
        """Her words; the answer."""
        await self.theatre.stage.say(self.facts.account, text, reply_to)
        return self.heard()[-1]

    async def edit(self, text: str, message_id: int | None = None) -> Line:
        await self.theatre.stage.edit(self.facts.account, text, message_id)
        return self.heard()[-1]

    async def press(self, button: str, message_id: int | None = None) -> Line:
        """Tap a button by its data; the answer."""
        await self.theatre.stage.press(self.facts.account, button, message_id)
        return self.heard()[-1]

    async def tap(self, verb: str, bout: int | None = None) -> Line:
        """Tap `all`, `few`, `lat` or `skp` under her latest prompt, or under that of an earlier bout."""
        return await self.press(f"{verb}:{bout or self.prompted()[-1].args['bout']}")

    async def said_twice(self) -> None:
        """The platform delivers her latest update once more."""
        latest = [line for line in self.chat() if not line.bot][-1]
        assert latest.update is not None
        await self.theatre.stage.heard(people.repeat(self.theatre.stage.world, latest.update))

    def trouble(self, kind: FaultKind, method: str = "sendMessage", **more: Any) -> Fault:
        """The next call into her chat goes wrong."""
        fault = Fault(kind, method, self.facts.account, **more)
        return self.theatre.stage.world.faults.add(fault)

    def moved(self, zone: str | None = None, window: str = "") -> None:
        """Tell the checker that her hours are others from now on."""
        last = self.facts.hours[-1]
        span = _minutes(h.parse_span(window)) if window else last.window
        now = self.theatre.stage.now
        self.facts.hours.append(Hours(now, zone or last.zone, span, last.quiet))

    # --- what she sees ---

    def chat(self) -> list[Line]:
        return [line for line in self.theatre.lines() if line.chat == self.facts.account]

    def heard(self) -> list[Line]:
        """Everything that the bot wrote to her, edits included."""
        return [line for line in self.chat() if line.bot]

    def texts(self, id_: str) -> list[Line]:
        return [line for line in self.heard() if line.get(id_)]

    def prompted(self) -> list[Said]:
        return [said for line in self.heard() if (said := line.get("prompt"))]

    def times(self, id_: str = "prompt") -> list[str]:
        """When she was asked, by her wall clock: `08:00`, with seconds where there are any."""
        walls = [self.facts.hours_at(each.at).local(each.at) for each in self.texts(id_)]
        return [f"{wall:%H:%M}" if not wall.second else f"{wall:%H:%M:%S}" for wall in walls]

    def asked(self) -> list[int]:
        """The reps of each prompt."""
        return [said.args["reps"] for said in self.prompted()]

    def done(self, day: int = 0) -> int:
        """Reps of a day that stand in the ledger."""
        rows = self.ledger()
        void = {row.voids for row in rows}
        date_ = self.first_day + timedelta(days=day)
        return sum(
            row.reps
            for row in rows
            if row.voids is None and row.id not in void and row.day == date_
        )

    def ledger(self) -> list[Row]:
        return self.theatre.ledger(self.facts.person)


def _minutes(span: h.Span) -> tuple[int, int]:
    return span.start, span.end
