"""An invented practice on a wire: updates through the inbox, the real work, and a sender with moods."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from typing import Any, Literal
from zoneinfo import ZoneInfo

from sqlalchemy import select

from bot.telegram.buttons import rows
from bot.telegram.sender import TelegramSender
from bot.telegram.work import Work
from bot.words import render
from scheduler.clock import SteppedClock
from scheduler.domain import hours as h
from scheduler.domain.people import NOTICE_VERSION, Clearance, Client, Person, Role, State
from scheduler.domain.plan import Level, Plan
from scheduler.ports import Delivered, Delivery, Letter, Refused, TryLater, Tx, Unknown
from scheduler.usecases import days, digests, outbox
from storage.engine import Database
from storage.store import SqlStore
from storage.tables import ClientRow, EntryRow, table
from tests.journeys.everyone import strangers, twice
from tests.journeys.facts import Facts, Hours, Row
from tests.journeys.log import Line, Said
from tests.reliability import truth
from tests.reliability.breaking import Trouble

Fate = Literal["unknown-taken", "unknown-lost", "too-fast", "refused", "die-before", "die-after"]
START = datetime(2027, 3, 8, 0, 30, tzinfo=UTC)
DAY_ONE = date(2027, 3, 8)
DANA, KIM, FIRST_CLIENT = 1001, 1002, 2001
NUMBERS = {"name": "Alder Lane (invented)", "phone": "555 0100", "emergency_number": "112"}
SPARE = timedelta(seconds=1)


class DiedError(BaseException):
    """The process ends here: nothing of it runs any more."""


@dataclass
class Prescribed:
    """A client as enrolled: reps, minutes and days of the plan, and her zone."""

    zone: str = "Europe/Lisbon"
    total: int = 40
    gap: int = 120
    window: str = "08:00-20:00"
    quiet: tuple[str, ...] = ()
    weekdays: tuple[int, ...] = tuple(range(7))
    rest_days: int = 0
    bout_max: int = 10


class Practice(TelegramSender):
    """Its own platform: `fates` are what becomes of the next sends, first to last."""

    def __init__(self, database: Database, trouble: Trouble) -> None:
        self.database, self.store, self.trouble = database, SqlStore(database), trouble
        self.clock = SteppedClock(START)
        self.fates: list[Fate] = []
        self.lines: list[Line] = []
        self.owners: dict[int, int] = {}
        self.facts: dict[int, Facts] = {}
        self.may_read: dict[int, set[str]] = {DANA: {"Dana#"}, KIM: {"Kim#", "Dana#"}}
        self.prompts: dict[int, list[tuple[int, int]]] = defaultdict(list)
        """Message and bout of every prompt that a client has seen."""
        self.buttons: dict[int, dict[int, list[str]]] = defaultdict(dict)
        """The buttons of each message in a chat as it reads now."""
        self.mine: dict[int, int] = {}
        self.payloads: list[tuple[int, int, dict[str, Any]]] = []
        self.lives = self._messages = self._updates = 0
        self.store.run_sync(self._open)
        self.work = self._life()

    @property
    def now(self) -> datetime:
        return self.clock.now()

    def _life(self) -> Work:
        self.lives += 1
        return Work(self.store, self, self.clock, None, f"life-{self.lives}")

    # --- who is there ---

    def _open(self, tx: Tx) -> None:
        for name, value in NUMBERS.items():
            tx.book.put(name, value)
        people = ((Role.CLINICIAN, "Dana#", DANA), (Role.ADMIN, "Kim#", KIM))
        for role, name, account in people:
            tx.people.add(Person(0, role, name, "qps", State.READY, account=account), None)
        digests.schedule_all(tx, self.now)

    def enrol(self, asked: Prescribed) -> int:
        """A client who is ready and cleared, with a plan in force from today on; her account."""
        account = FIRST_CLIENT + len(self.facts)
        name, now = f"Ann{account}#", self.now
        today = now.astimezone(ZoneInfo(asked.zone)).date()
        window, quiet = h.parse_span(asked.window), tuple(map(h.parse_span, asked.quiet))
        most = len(asked.weekdays) or 3
        plan = Plan(
            "marching", asked.total, 10, asked.bout_max, 1, most, asked.weekdays, asked.rest_days,
            h.Hours(window, quiet), (), today - timedelta(days=7), None, None, asked.gap,
        )  # fmt: skip

        def work(tx: Tx) -> int:
            person = Person(0, Role.CLIENT, name, "qps", State.READY, 1, account)
            record = Client(
                0, 1, ZoneInfo(asked.zone), consent_version=NOTICE_VERSION, consent_at=now,
                readiness=(), readiness_at=now, usual_pain=1, joined_at=now,
            )  # fmt: skip
            kept = tx.people.add(person, record).id
            tx.plans.clear(Clearance(kept, Level.MODERATE, 1, now))
            tx.plans.add(kept, plan, plan.start, 1, now)
            days.advance(tx, kept, now)
            return kept

        hours = Hours(
            now, asked.zone, (window.start, window.end), tuple((q.start, q.end) for q in quiet)
        )
        self.facts[account] = Facts(
            name, account, self.store.run_sync(work), DANA, asked.total, 10, asked.bout_max,
            timedelta(minutes=asked.gap), asked.weekdays or tuple(range(7)), asked.rest_days,
            [hours], now,
        )  # fmt: skip
        self.may_read[account] = {name, "Dana#"}
        self.may_read[DANA].add(name)
        self.may_read[KIM].add(name)
        return account

    # --- what people do ---

    async def say(self, who: int, text: str, reply_to: int | None = None) -> None:
        self._messages += 1
        self.mine[who] = self._messages
        answers = {"reply_to_message": {"message_id": reply_to}} if reply_to else {}
        await self._message(who, "message", text, **answers)

    async def edit(self, who: int, text: str) -> None:
        if who in self.mine:
            await self._message(who, "edited_message", text)

    async def _message(self, who: int, kind: str, text: str, **more: Any) -> None:
        said = {"message_id": self.mine[who], "date": int(self.now.timestamp()), "text": text}
        await self._update(who, {kind: {**said, **self._from(who), **more}}, self.mine[who])

    async def press(self, who: int, message_id: int, data: str) -> None:
        whose = self._from(who)
        message = {"message_id": message_id, "chat": whose["chat"]}
        pressed = {
            "id": f"p{self._updates}",
            "from": whose["from"],
            "message": message,
            "data": data,
        }
        await self._update(who, {"callback_query": pressed}, message_id)

    def _from(self, who: int) -> dict[str, Any]:
        sender = {"id": who, "is_bot": False, "first_name": "Invented", "language_code": "en"}
        return {"from": sender, "chat": {"id": who, "type": "private"}}

    async def _update(self, who: int, content: dict[str, Any], message_id: int) -> None:
        self._updates += 1
        number = self._updates
        press = content.get("callback_query", {})
        said = content.get("message") or content.get("edited_message") or {}
        self.lines.append(
            Line(
                len(self.lines), self.now, False, who, message_id, (), said.get("text", ""),
                update=number, data=press.get("data", ""), edit="edited_message" in content,
                reply_to=said.get("reply_to_message", {}).get("message_id"),
            )
        )  # fmt: skip
        self.payloads.append((number, who, {"update_id": number, **content}))
        await self.arrives(number)

    async def arrives(self, number: int) -> None:
        """The platform delivers an update, for the first time or again, until the bot has stored it."""
        _, who, payload = self.payloads[number - 1]
        now = self.now
        while True:
            try:
                await self.store.run(lambda tx: tx.inbox.keep(number, who, payload, now))
            except Exception:  # noqa: BLE001 # struck: the platform keeps it and delivers it again
                assert self.trouble.fired
                self._mended()
            else:
                break
        await self.drain()

    # --- what they get ---

    async def send(self, letter: Letter) -> Delivery:
        fate = self.fates.pop(0) if self.fates else None
        match fate:
            case "die-before":
                raise DiedError
            case "unknown-lost":
                return Unknown("cut off before")
            case "too-fast":
                return TryLater(timedelta(seconds=30))
            case "refused":
                return Refused("on demand")
        message_id = self._accept(letter)
        if fate == "die-after":
            raise DiedError
        return Unknown("cut off after") if fate == "unknown-taken" else Delivered(message_id)

    def _accept(self, letter: Letter) -> int:
        self._learn_zones()
        self._messages += letter.edits is None
        message_id = letter.edits or self._messages
        said = tuple(Said(each.id, dict(each.args)) for each in letter.message)
        line = Line(
            len(self.lines), self.now, True, letter.chat, message_id, said,
            render(letter.message, "qps"), silent=letter.silent, edit=letter.edits is not None,
        )  # fmt: skip
        self.lines.append(line)
        self.owners[line.n] = letter.outbox_id
        self.buttons[letter.chat][message_id] = [
            b.data for row in rows(letter.message) for b in row
        ]
        for each in said:
            self._note(letter.chat, message_id, each)
        return message_id

    def _note(self, chat: int, message_id: int, said: Said) -> None:
        facts = self.facts.get(chat)
        if facts is None:
            return
        if said.id == "prompt":
            self.prompts[chat].append((message_id, said.args["bout"]))
        elif said.id == "make-up-kept":
            facts.made_up.add(date.fromisoformat(said.args["day"]))

    async def stop_spinner(self, press_id: str) -> None:
        """Nothing turns here."""

    # --- time, and the end of lives ---

    async def drain(self) -> None:
        """All that is due now, by whichever life is left to do it."""
        while True:
            try:
                await self.work.drain()
            except BaseException as fault:  # struck, or dead
                if not (self.trouble.fired or _died(fault)):
                    raise
                self._mended()
            else:
                self._learn_zones()
                return

    def _learn_zones(self) -> None:
        """Where each client is now: what tells her of a change may be lost, and the change is not."""
        armed, self.trouble.armed = self.trouble.armed, False
        of = {facts.person: facts for facts in self.facts.values()}
        rows_ = table(ClientRow)
        query = select(rows_.c.id, rows_.c.zone)
        for person, zone in self.database.run_sync(lambda c: list(c.execute(query))):
            last = of[person].hours[-1] if person in of else None
            if last is not None and last.zone != zone:
                of[person].hours.append(Hours(self.now, zone, last.window, last.quiet))
        self.trouble.armed = armed

    def _mended(self) -> None:
        """After an error the same process goes on, after a death another; the database is back."""
        if self.trouble.dead or self.trouble.how == "error":
            self.work = self._life()
        self.trouble.set()

    def crash(self) -> None:
        """The worker is dropped as it is; another comes, and the leases must run out."""
        self.work = self._life()

    async def restart(self) -> None:
        """The only process of a store starts again: it takes over at once."""
        self.work = self._life()
        now = self.now
        await self.store.run(lambda tx: outbox.take_over(tx, now))

    async def step(self, to: datetime) -> None:
        await self.drain()
        while (due := await self._next_due()) is not None and due <= to:
            self.clock.move(max(due, self.now))
            await self.drain()
        self.clock.move(max(to, self.now))
        await self.drain()

    async def _next_due(self) -> datetime | None:
        while True:
            try:
                return await self.work.next_due()
            except Exception:  # noqa: BLE001 # struck
                assert self.trouble.fired
                self._mended()

    # --- the truth ---

    def faults(self) -> list[str]:
        """I1 to I9 over everything that was said and done."""
        read = self.database.run_sync
        answers, unheard, ledger = read(truth.answers), read(truth.unheard), self._ledger()
        seen: set[int] = set()
        own = []
        for line in self.lines:
            row = self.owners.get(line.n)
            if row is None or row not in seen:
                own.append(line)
            seen |= {row} if row is not None else set()
        found = [*strangers(self.lines, self.may_read), *twice(own)]
        for facts in self.facts.values():
            facts.unheard |= unheard.get(facts.person, set())
            rows_ = ledger[facts.person]
            found += truth.Exact(facts, self.lines, rows_, self.owners, answers).run()
        return found + self._left_over()

    def _left_over(self) -> list[str]:
        """Updates that were not handled, and messages that must arrive and did not."""
        read = self.database.run_sync
        kept = read(truth.updates)
        found = [f"R1: update {n} is {state}" for n, state in kept.items() if state != "done"]
        if len(kept) != self._updates:
            found.append(f"R1: {self._updates} updates were taken, {len(kept)} are stored")
        for key, state, reason in read(truth.letters).values():
            must = key.startswith(("answer:", "flag:", "safety"))
            if state in {"claimed", "sending"} or (must and state in {"unknown", "dropped"}):
                found.append(f"R2: {key} is {state} {reason}")
        return found

    def _ledger(self) -> dict[int, list[Row]]:
        entries = table(EntryRow)
        found: dict[int, list[Row]] = defaultdict(list)
        query = entries.select().order_by(entries.c.id)
        for r in self.database.run_sync(lambda connection: list(connection.execute(query))):
            found[r.client].append(Row(r.id, r.day, r.reps, r.at, r.source, r.bout, r.voids))
        return found


def _died(fault: BaseException) -> bool:
    """Whether a death is among what came out of a group of tasks."""
    if isinstance(fault, BaseExceptionGroup):
        return any(_died(each) for each in fault.exceptions)
    return isinstance(fault, DiedError)
