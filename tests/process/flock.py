"""Prompts for a crowd that never ends, written into the store of running workers, and what became of them."""

from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import TypeVar
from zoneinfo import ZoneInfo

from sqlalchemy import select

from scheduler.clock import SystemClock
from scheduler.domain.days import Bout
from scheduler.domain.messages import Lane, text
from scheduler.domain.people import Client, Person, Role, State
from scheduler.ports import Claim, Outgoing, Post, Tx
from scheduler.usecases import outbox
from scheduler.usecases.outbox import AGAIN_AFTER, REQUEST_LEASE
from storage.engine import Database, database_url
from storage.keys import Keyring
from storage.queue import outbox as rows
from storage.store import SqlStore
from storage.vault import unlock
from tests.process.practice import texts
from tests.process.test_running import Clinic

Result = TypeVar("Result")
UNDER_WAY = select(rows.c.bout).where(rows.c.state == Post.SENDING, rows.c.bout.is_not(None))
STATES = select(rows.c.bout, rows.c.state).where(rows.c.bout.is_not(None))
ZONE = ZoneInfo("Europe/Lisbon")


class Books:
    """The store of the running processes, opened once more beside them."""

    def __init__(self, house: Clinic) -> None:
        self._database = Database(
            database_url(house.settings["BOUTWISE_DATABASE_URL"]),
            Keyring.parse(house.settings["BOUTWISE_KEY"]),
        )
        unlock(self._database)
        self._store = SqlStore(self._database)

    async def do(self, work: Callable[[Tx], Result]) -> Result:
        return await self._store.run(work)

    async def under_way(self) -> set[int]:
        """Bouts whose prompts are being sent, or were when their worker died."""
        found = await self._database.run(lambda it: it.execute(UNDER_WAY).scalars().all())
        return {bout for bout in found if bout is not None}

    async def states(self) -> dict[int, Post]:
        """Where the prompt of each bout stands."""
        found = await self._database.run(lambda it: it.execute(STATES).all())
        return {row.bout: row.state for row in found}

    async def close(self) -> None:
        await self._database.close()


@dataclass
class Flock:
    """Clients who are asked for one bout each; none of them has a plan, so nothing else is asked of them."""

    house: Clinic
    books: Books
    due: dict[int, datetime] = field(default_factory=dict)
    """When each prompt fell due, by its bout."""

    async def join(self, count: int) -> None:
        """So many more, each with a prompt that is due now."""
        world, now = self.house.world, self.house.world.now()
        accounts = [world.add_person("Invented") for _ in range(count)]
        for account in accounts:
            world.people[account].started = True
        clinician = self.house.practice.ids[self.house.practice.clinician]
        bouts = await self.books.do(lambda tx: [_asked(tx, clinician, a, now) for a in accounts])
        self.due |= dict.fromkeys(bouts, now)

    def accepted(self) -> list[tuple[int, datetime]]:
        """The bout of each prompt that the platform accepted, and when, in order."""
        return [
            (args["bout"], entry.at)
            for entry in self.house.world.log
            if entry.method == "sendMessage"
            for id_, args in texts(entry.text)
            if id_ == "prompt"
        ]

    def waiting(self) -> int:
        """How many of them have not been asked yet; those of unknown fate count."""
        log, others = self.house.world.log, self.house.practice.ids
        sent = (each for each in log if each.method == "sendMessage" and each.chat_id not in others)
        return len(self.due) - sum(1 for _ in sent)

    def told(self) -> "Told":
        """What the platform knows of them by now."""
        accepted = self.accepted()
        return Told(dict(self.due), Counter(bout for bout, _ in accepted), accepted)


def _asked(tx: Tx, clinician: int, account: int, now: datetime) -> int:
    person = Person(0, Role.CLIENT, "Demo", "qps", State.READY, clinician, account)
    client = tx.people.add(person, Client(id=0, clinician=clinician, zone=ZONE)).id
    day = now.astimezone(ZONE).date()
    bout = tx.days.add_bout(Bout(0, client, day, 1, 10, now, now + timedelta(hours=12))).id
    asked = text(
        "prompt", bout=bout, done=0, reps=10, total=40, movement="marching", per_side=False
    )
    key = f"prompt:{bout}"
    tx.outbox.add(Outgoing(key, Lane.PROMPT, (asked,), client, due_at=now, bout=bout), now)
    return bout


@dataclass(frozen=True)
class Told:
    """What the outside has seen of the prompts."""

    due: dict[int, datetime]
    came: Counter[int]
    accepted: list[tuple[int, datetime]]

    @property
    def doubled(self) -> list[int]:
        return [bout for bout, times in self.came.items() if times > 1]

    @property
    def times(self) -> list[datetime]:
        return [at for _, at in self.accepted]

    def longest_gap(self) -> timedelta:
        """The longest time in which something was due and nothing was accepted."""
        moments = sorted([(at, 1) for at in self.due.values()] + [(at, -1) for at in self.times])
        longest, waiting, since = timedelta(0), 0, moments[0][0]
        for at, change in moments:
            if waiting > 0 and change < 0:
                longest = max(longest, at - since)
            if change < 0 or waiting == 0:
                since = at
            waiting += change
        return longest

    def slowest(self) -> timedelta:
        """The longest that a prompt took from due to accepted."""
        return max(at - self.due[bout] for bout, at in self.accepted)

    def most_in(self, seconds: float) -> int:
        """The most that were accepted in a span of so many seconds."""
        span = timedelta(seconds=seconds)
        return max(sum(start <= at < start + span for at in self.times) for start in self.times)


def after_the_leases(tx: Tx) -> list[Claim]:
    """What others would send once every dead worker's lease has run out, in order."""
    later = SystemClock().now() + 2 * REQUEST_LEASE
    found: list[Claim] = []
    for moment in (later, later + AGAIN_AFTER):  # the second for what is repeated
        while claims := outbox.claim_due(tx, moment, "another", 1000):
            for claim in claims:  # of a chat the next one has its turn only then
                assert tx.outbox.begin(claim, moment, REQUEST_LEASE)
                assert tx.outbox.sent(claim, 1, moment)
            found += claims
    return found
