"""A theatre whose bot may be struck by anything, and is brought back the way a service manager does."""

from __future__ import annotations

import asyncio
from collections.abc import Callable, Coroutine
from datetime import datetime, timedelta
from itertools import count
from typing import Any, TypeVar

import pytest
from sqlalchemy import URL, Connection
from sqlalchemy.exc import SQLAlchemyError

import bot.wiring
from bot.rehearsal.faults import Fault
from bot.rehearsal.people import Deed
from bot.telegram.sender import TelegramSender
from scheduler.ports import Delivery, Letter
from storage.engine import Database
from storage.keys import Keyring
from tests.journeys.everyone import strangers, twice
from tests.journeys.log import BOT_METHODS
from tests.journeys.theatre import Someone, Theatre
from tests.process.road import Waiting, new_world
from tests.reliability import truth
from tests.reliability.breaking import Trouble, install

Result = TypeVar("Result")
A_SECOND = timedelta(seconds=1)
PATIENCE = 30.0
"""Seconds of real time that only a failing test waits in full."""


class Fragile(Theatre):
    """`trouble` goes through every database of a bot on this stage; `owners` are the rows of its lines."""

    def __init__(self, url: URL, patch: pytest.MonkeyPatch) -> None:
        super().__init__(url)
        self.trouble = Trouble()
        self.queue = Waiting(1)
        self.opened: list[datetime] = []
        self.owners: dict[int, int] = {}
        self._gone = asyncio.Event()
        self._truth: Database | None = None
        opens, send = bot.wiring.open_database, TelegramSender.send

        def opened(settings: Any) -> Database:
            database = opens(settings)
            install(database, self.trouble)
            return database

        async def sent(sender: TelegramSender, letter: Letter) -> Delivery:
            world, start = self.world, len(self.world.log) if self.world else 0
            try:
                return await send(sender, letter)
            finally:
                for n, entry in enumerate(world.log[start:] if world else (), start):
                    if entry.chat_id == letter.chat and entry.method in BOT_METHODS:
                        self.owners[n] = letter.outbox_id

        patch.setattr(bot.wiring, "open_database", opened)
        patch.setattr(TelegramSender, "send", sent)

    async def open(self, at: datetime, *, practice: bool = True) -> None:
        if self.world is None:
            self.world, self.queue = new_world(lambda: at)
            await super().open(at)
            await self._practice()
        else:
            await super().open(at)
        self.opened.append(at)

    # --- struck ---

    def arm(self, trouble: Trouble) -> None:
        """From now on places count."""
        loop = asyncio.get_running_loop()
        self.trouble.died = lambda: self._cut_off(loop)
        self.trouble.set(trouble.nth, trouble.how, armed=True)

    def _cut_off(self, loop: asyncio.AbstractEventLoop) -> None:
        """A dead process asks nothing of the platform either."""
        assert self.world is not None
        self.world.faults.add(Fault("down", times=None))
        loop.call_soon_threadsafe(self._gone.set)

    async def back(self, at: datetime) -> None:
        """What died is put away, and a new process is started on the same world and store."""
        try:
            await self.close()
        except Exception:  # noqa: BLE001 # a dead process ends in no orderly way
            await self._stack.aclose()
        assert self.world is not None
        self.world.faults.clear()
        self.trouble.dead = False
        self._gone.clear()
        while self._stage is None:
            try:
                await self.open(at)
            except SQLAlchemyError:
                await self._stack.aclose()
                self._stage = None

    async def robustly(self, to: datetime) -> None:
        """Move the clock, again after an error, and after a death with a new process."""
        for _ in count():
            now = self.stage.now if self._stage else to
            try:
                await self.stage.step(max(to, now))
            except Exception:  # noqa: BLE001 # any: it was struck
                assert self.trouble.fired
            if self.trouble.dead or self._stage is None:
                await self.back(now)
            elif self.stage.now >= to:
                return

    async def deed(self, act: Callable[[], Deed | list[Deed]]) -> None:
        """Somebody does something; the bot handles it and answers, whatever strikes meanwhile."""
        deeds = act()
        for each in deeds if isinstance(deeds, list) else [deeds]:
            if each.update_id is not None:
                await self._fetched()
                while self.read(truth.updates).get(each.update_id) not in {"done", "aside"}:
                    await self.robustly(self.stage.now + A_SECOND)
        await self.robustly(self.stage.now + 5 * A_SECOND)

    async def _fetched(self) -> None:
        while not self.queue.empty.is_set():
            await _first(self.queue.empty.wait(), self._gone.wait())
            if self.trouble.dead:
                await self.back(self.stage.now)

    # --- the truth ---

    def read(self, work: Callable[[Connection], Result]) -> Result:
        """Look into the store past the bot."""
        if self._truth is None:
            self._truth = Database(self.url, Keyring.parse("none"))
        return self._truth.run_sync(work)

    def faults(self) -> list[str]:
        """I1 to I9, with the outbox's own word for which answer is whose."""
        log = self.lines()
        found = [*strangers(log, self.may_read), *self._twice(log)]
        answers, unheard = self.read(truth.answers), self.read(truth.unheard)
        for client in self.clients:
            facts = client.facts
            facts.unheard |= unheard.get(facts.person, set())
            ledger = self.ledger(facts.person)
            found += truth.Exact(facts, log, ledger, self.owners, answers, self.opened).run()
        return found

    def _twice(self, log: list[Any]) -> list[str]:
        """A copy of a row is known by its number and is no second flag."""
        first: set[int] = set()
        own = []
        for line in log:
            row = self.owners.get(line.n) if line.bot else None
            if row is None or row not in first:
                own.append(line)
            if row is not None:
                first.add(row)
        return twice(own)

    def check(self) -> None:
        faults = self.faults()
        for each in (self._truth, self._books):
            if each is not None:
                each.close_sync()
        assert not faults, "\n".join(faults)


def shown(someone: Someone, start: str) -> int | None:
    """The message of the latest button in her chat whose data begin so."""
    for message in reversed(someone.theatre.stage.messages(someone.facts.account)):
        for row in (message.markup or {}).get("inline_keyboard", []):
            if any(str(each.get("callback_data", "")).startswith(start) for each in row):
                return message.message_id
    return None


async def _first(*waits: Coroutine[Any, Any, object]) -> None:
    tasks = [asyncio.ensure_future(wait) for wait in waits]
    done, _ = await asyncio.wait(tasks, timeout=PATIENCE, return_when=asyncio.FIRST_COMPLETED)
    for task in tasks:
        task.cancel()
    assert done, "the bot does not fetch its updates"
