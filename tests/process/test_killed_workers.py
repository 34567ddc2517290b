"""Four workers over one PostgreSQL, one killed every few seconds: nothing doubled or lost, no gap. Ours.

By default 5 kills; `BOUTWISE_WORKER_KILLS=200` asks for as many. What the stand-in has accepted is the truth
on the outside; the store is held against it.
"""

import asyncio
import os
import signal
from collections import Counter
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from pathlib import Path
from random import Random

from sqlalchemy import URL

from bot.rehearsal import people
from bot.rehearsal.faults import Fault
from scheduler.ports import Claim, Post
from scheduler.usecases.outbox import CLAIM_LEASE
from tests.conftest import on_postgresql
from tests.process.flock import Books, Flock, Told, after_the_leases
from tests.process.life import PATIENCE
from tests.process.practice import kept, texts
from tests.process.test_several import Houses, houses

KILLS = int(os.environ.get("BOUTWISE_WORKER_KILLS", "5"))  # noqa: TID251 # a switch of the test run
WORKERS = 4
RATE = 40
TRIP = 0.3
"""Seconds from a request to its answer: some eight prompts are under way at any moment."""
JOIN_EVERY, JOINING, WAITING = 0.2, 5, 100
"""Seconds, and how many more are asked then: 25 a second; where a machine is slow only so many wait."""
KILL_EVERY = 2.0
SAY_EVERY = 5
"""After so many turns of the crowd the writer says a number."""
BACKLOG = 150
"""Due in one moment at the beginning, so that the rate has something to hold back."""
SPAN, JITTER = 3.0, 1.5
"""Seconds. From its place in the line to its acceptance a message takes longer or shorter by so much, where a
processor is shared by six processes; four workers that know nothing of each other would send all at once.
"""
NO_GAP = timedelta(seconds=60)


@dataclass
class Siege:
    """Prompts flow, answers are written, workers die."""

    all_: Houses
    flock: Flock
    random: Random
    places: list[int] = field(default_factory=list)
    """The process of each of the four."""
    in_flight: set[int] = field(default_factory=set)
    """Bouts that a killed worker may have been sending."""
    written: list[int] = field(default_factory=list)
    kills: int = 0

    async def begin(self) -> None:
        house = self.all_.clinic
        await self.all_.start("listen", polls=2)
        for _ in range(WORKERS):
            self.places.append(await self.worker())
        await self.all_.says("Boutwise is running.", 1 + WORKERS)
        house.world.faults.add(Fault("delay", "sendMessage", times=None, seconds=TRIP))

    async def worker(self) -> int:
        """One more, not waited for."""
        return await self.all_.start("work", settings={"BOUTWISE_SEND_RATE": str(RATE)}, wait=False)

    async def kill_one(self) -> None:
        """SIGKILL wherever it is, the longest-lived first, so that each has worked; another comes."""
        victim = self.kills % WORKERS
        await self.all_.kill(self.places[victim])
        self.in_flight |= await self.flock.books.under_way()
        self.places[victim] = await self.worker()
        self.kills += 1

    async def kill_again_and_again(self) -> None:
        """The next one when the one before is back: on a slow machine nobody would be at work else."""
        for _ in range(KILLS):
            await asyncio.sleep(KILL_EVERY * self.random.uniform(0.5, 1.5))
            await self.all_.says("Boutwise is running.", 1 + WORKERS + self.kills)
            await self.kill_one()

    async def crowd(self, killing: asyncio.Task[None]) -> None:
        """Somebody is always due, and the writer says a number now and then."""
        await self.flock.join(BACKLOG)
        turn = 0
        while not killing.done():
            if self.flock.waiting() < WAITING:
                await self.flock.join(JOINING)
            if turn % SAY_EVERY == 0:
                self.write()
            turn += 1
            await asyncio.sleep(JOIN_EVERY)

    def write(self) -> None:
        world, (writer,) = self.all_.clinic.world, self.all_.clinic.practice.writers
        (deed,) = people.say(world, writer, "2")
        assert deed.update_id is not None
        self.written.append(deed.update_id)

    async def settled(self) -> None:
        """All that can still be accepted has been: what the dead had claimed waits out its short lease."""
        async with asyncio.timeout(CLAIM_LEASE.total_seconds() + NO_GAP.total_seconds()):
            while not await self._nothing_waits():  # noqa: ASYNC110 # a process tells nobody
                await asyncio.sleep(0.2)

    async def _nothing_waits(self) -> bool:
        """An answer that a dead worker was sending is not waited for: its lease is a minute."""
        waits = {Post.DUE, Post.CLAIMED} & set((await self.flock.books.states()).values())
        return not waits and not await self.flock.books.do(lambda tx: tx.inbox.unfinished())

    async def end(self) -> None:
        """SIGTERM to those that live: what they are at is finished. One may not yet have begun to listen."""
        alive = [each for each in self.all_.clinic.started_here if each.returncode is None]
        for process in alive:
            process.send_signal(signal.SIGTERM)
        ends = [await asyncio.wait_for(process.wait(), PATIENCE) for process in alive]
        assert set(ends) <= {0, -signal.SIGTERM}


@asynccontextmanager
async def siege(url: URL, folder: Path) -> AsyncIterator[Siege]:
    async with houses(url, folder) as all_:
        books = Books(all_.clinic)
        try:
            yield Siege(all_, Flock(all_.clinic, books), Random(20270308))
        finally:
            await books.close()


@on_postgresql
async def test_of_four_workers_one_is_killed_again_and_again_and_nothing_is_doubled_or_lost(
    database_at: URL, tmp_path: Path
) -> None:
    async with siege(database_at, tmp_path) as it:
        await it.begin()
        killing = asyncio.create_task(it.kill_again_and_again())
        await it.crowd(killing)
        await killing
        await it.settled()
        await it.end()
        told = it.flock.told()
        again = await it.flock.books.do(after_the_leases)
        assert not [claim.bout for claim in again if claim.bout is not None]
        unknown = await every_prompt_came_once_or_is_unknown(it, told)
        every_number_counts_once(it, database_at, again)
        print(figures(it, told, unknown))
    assert it.kills == KILLS
    assert told.longest_gap() < NO_GAP
    assert told.slowest() < NO_GAP
    assert told.most_in(SPAN) <= RATE * (SPAN + JITTER)


async def every_prompt_came_once_or_is_unknown(it: Siege, told: Told) -> int:
    """What the store calls sent came once, what it does not know at most once and is not sent again."""
    states = await it.flock.books.states()
    assert set(states) == set(told.due)
    assert not told.doubled
    unknown = {bout for bout, state in states.items() if state is Post.UNKNOWN}
    lost = [b for b, state in states.items() if b not in unknown and not told.came[b]]
    assert not lost
    assert {states[bout] for bout in set(states) - unknown} == {Post.SENT}
    assert unknown <= it.in_flight  # those that a killed worker was just sending, and no others
    return len(unknown)


def every_number_counts_once(it: Siege, url: URL, again: list[Claim]) -> None:
    """One entry for each number written, whoever died over it, and each is answered or will be `again`."""
    house = it.all_.clinic
    (writer,) = house.practice.writers
    store = kept(url, house.settings["BOUTWISE_KEY"])
    hers = house.practice.ids[writer]
    assert store.ledger == Counter({(hers, f"u{update}", 2): 1 for update in it.written})
    sums = [
        args["done"]
        for entry in house.world.log
        if entry.method == "sendMessage" and entry.chat_id == writer
        for id_, args in texts(entry.text)
        if id_ == "logged"
    ]
    sums += [
        said.args["done"] for each in again for said in each.letter.message if said.id == "logged"
    ]
    assert sorted(set(sums)) == [2 * n for n in range(1, len(it.written) + 1)]
    assert sums == sorted(sums)


def figures(it: Siege, told: Told, unknown: int) -> str:
    """What was measured, for whoever runs the full size with -s."""
    return (
        f"kills {it.kills}, prompts {len(told.due)}, unknown {unknown},"
        f" doubled {len(told.doubled)}, numbers {len(it.written)},"
        f" longest gap {told.longest_gap().total_seconds():.1f} s,"
        f" slowest prompt {told.slowest().total_seconds():.1f} s"
    )


def test_a_gap_is_counted_only_while_something_is_due() -> None:
    start = datetime.fromisoformat("2027-03-08T09:00:00+00:00")
    second = timedelta(seconds=1)
    due = {1: start, 2: start, 3: start + 100 * second}
    came = [(1, start + second), (2, start + 8 * second), (3, start + 102 * second)]
    told = Told(due, Counter({1: 1, 2: 1, 3: 1}), came)
    assert told.longest_gap() == 7 * second
    assert told.slowest() == 8 * second
    assert told.most_in(7) == 1
    assert told.most_in(7.5) == 2
