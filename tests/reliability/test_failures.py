"""A scripted day in which the n-th statement, or the n-th call of the platform, goes wrong (I1-I9, R1, R2).

By default a seeded sample of places on each engine; `BOUTWISE_FAILURES=100` takes so many, `=all` every
place there is, for n = 1, 2, ... until the day ends without having met the fault.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import timedelta
from functools import partial
from random import Random

import pytest
from sqlalchemy import URL

from bot.rehearsal import people
from bot.rehearsal.faults import Fault, FaultKind
from bot.rehearsal.world import World
from scheduler.usecases.outbox import CLAIM_LEASE
from tests.journeys.theatre import Someone
from tests.reliability import truth
from tests.reliability.breaking import HOWS, How, Trouble
from tests.reliability.house import Fragile, shown
from tests.reliability.sizes import FAILURES

CALLS: tuple[FaultKind, ...] = ("refuse", "server-error", "drop-before", "drop-after", "too-fast")
PAIN = ("p:sign:none", "p:place:hip", "p:score:8")  # which holds at once
A_SECOND, A_MINUTE = timedelta(seconds=1), timedelta(minutes=1)


@dataclass(frozen=True)
class Place:
    """The n-th statement or commit (`how` of `breaking`), or the n-th call (a fault of the stand-in)."""

    n: int
    how: str

    @property
    def in_database(self) -> bool:
        return self.how in HOWS


class Day:
    """What Ann and Dana do. Ann answers what she sees, and writes where she sees nothing."""

    def __init__(self, house: Fragile, ann: Someone) -> None:
        self.house, self.ann = house, ann
        self.said: list[int] = []
        """Reps that she has told, in order; the platform took every one of them."""

    async def play(self) -> None:
        await self.at(8, 5)
        await self.did(10)
        await self.at(12, 25)
        await self.puts_off()
        await self.at(13, 20)
        await self.writes("7", 7)
        await self.changes_it_to(6)
        await self.at(16, 10)
        await self.hurts()
        await self.at(16, 15)
        await self.is_released()
        await self.at(20, 10)
        await self.did(10)
        await self.at(12, 1, day=1)
        await self.house.deed(lambda: people.say(self.world, self.who, "yesterday 5"))
        await self.house.robustly(self.house.stage.now + 2 * A_MINUTE)

    @property
    def world(self) -> World:
        return self.house.stage.world

    @property
    def who(self) -> int:
        return self.ann.facts.account

    async def at(self, hour: int, minute: int, *, day: int = 0) -> None:
        await self.house.robustly(self.ann.at(hour, minute, day=day))

    async def did(self, reps: int) -> None:
        """She taps "all" under a prompt of this hour, or writes the number."""
        asked = [
            said for line in self.ann.texts("prompt") for said in line.texts if "bout" in said.args
        ]
        fresh = self.ann.texts("prompt")
        now = self.house.stage.now
        if fresh and now - fresh[-1].at < 15 * A_MINUTE and asked[-1].args["reps"] == reps:
            data, message = f"all:{asked[-1].args['bout']}", fresh[-1].message_id
            await self.house.deed(lambda: people.press(self.world, self.who, message, data))
            self.said.append(reps)
        else:
            await self.writes(str(reps), reps)

    async def writes(self, words: str, reps: int) -> None:
        await self.house.deed(lambda: people.say(self.world, self.who, words))
        self.said.append(reps)

    async def changes_it_to(self, reps: int) -> None:
        await self.house.deed(lambda: people.edit(self.world, self.who, None, str(reps)))
        self.said[-1] = reps

    async def puts_off(self) -> None:
        await self.house.deed(lambda: people.say(self.world, self.who, "in 30 minutes"))

    async def hurts(self) -> None:
        """Each question is seen, whatever became of its first sending, and answered by a button."""
        await self.house.deed(lambda: people.say(self.world, self.who, "my hip hurts"))
        for data in PAIN:
            if shown(self.ann, data) is None:  # claimed, and nobody knows: it waits out that lease
                await self.house.robustly(self.house.stage.now + CLAIM_LEASE + 5 * A_SECOND)
            message = shown(self.ann, data)
            assert message is not None, f"nothing asks for {data}"
            await self.house.deed(partial(people.press, self.world, self.who, message, data))

    async def is_released(self) -> None:
        """Dana has the flag, and releases from today on."""
        client, dana = self.ann.facts.person, self.house.dana
        flags = [line for line in self.house.lines() if line.chat == dana and line.get("flag")]
        assert flags, "the flag did not arrive"
        for data in (f"rd:{client}:40", f"rf:{client}:40:today"):
            await self.house.deed(
                partial(people.forge, self.world, dana, flags[-1].message_id, data)
            )


async def played(url: URL, patch: pytest.MonkeyPatch, place: Place) -> Fragile:
    """The day with one fault in it, checked to the end."""
    house = Fragile(url, patch)
    ann = await house.client(total=40)
    world = house.stage.world
    if place.in_database:
        how: How = place.how  # type: ignore[assignment]
        house.arm(Trouble(place.n, how))
        world.faults.add(Fault("refuse", nth=10_000))  # only counts
    else:
        kind: FaultKind = place.how  # type: ignore[assignment]
        world.faults.add(Fault(kind, nth=place.n))
    day = Day(house, ann)
    try:
        await day.play()
        nothing_said_is_lost(house, day)
    finally:
        await house.close()
    house.check()
    return house


def nothing_said_is_lost(house: Fragile, day: Day) -> None:
    taken = {line.update for line in house.lines() if line.update is not None}
    kept = house.read(truth.updates)
    assert set(kept) == taken
    assert set(kept.values()) == {"done"}
    rows = day.ann.ledger()
    void = {row.voids for row in rows}
    assert [r.reps for r in rows if r.voids is None and r.id not in void] == day.said
    open_ = {
        key: state
        for key, state, _ in house.read(truth.letters).values()
        if state in {"claimed", "sending"}
    }
    assert not open_
    must = ("answer:", "flag:", "safety")
    lost = [
        row
        for row in house.read(truth.letters).values()
        if row[0].startswith(must) and row[1] != "sent"
    ]
    assert not lost
    assert any(id_.startswith("stop-") for line in day.ann.heard() for id_ in line.ids)


def sample(places: int, hows: tuple[str, ...], seed: int) -> Iterator[Place]:
    """Which places fail: all, or as many as asked for, spread over the day and over the ways to fail."""
    if FAILURES == "all":
        yield from (Place(n, how) for n in range(1, places + 1) for how in hows)
        return
    random, wanted = Random(seed), int(FAILURES)
    for number in range(wanted):
        first, last = places * number // wanted + 1, max(1, places * (number + 1) // wanted)
        yield Place(random.randint(min(first, last), last), hows[number % len(hows)])


async def test_the_day_keeps_every_promise_whichever_statement_fails(
    fresh: Callable[[], URL], quick_stage: pytest.MonkeyPatch
) -> None:
    clean = await counted(fresh())
    await each_place(fresh, sample(clean.trouble.count, HOWS, 7))


async def test_the_day_keeps_every_promise_whichever_call_of_the_platform_fails(
    fresh: Callable[[], URL], quick_stage: pytest.MonkeyPatch
) -> None:
    clean = await counted(fresh())
    assert clean.world is not None
    await each_place(fresh, sample(clean.world.faults.known[0].seen, CALLS, 8))


async def counted(url: URL) -> Fragile:
    """The day in which nothing fails, with its places counted."""
    with pytest.MonkeyPatch.context() as patch:
        house = await played(url, patch, Place(0, "error"))
    assert len(house.opened) == 1
    assert house.trouble.count > 100
    return house


async def each_place(fresh: Callable[[], URL], places: Iterator[Place]) -> None:
    """Every place is tried; at the end it is said which of them broke what."""
    broken = []
    for place in places:
        with pytest.MonkeyPatch.context() as patch:
            try:
                await played(fresh(), patch, place)
            except Exception as fault:  # noqa: BLE001 # told below, with its place
                broken.append(f"{place}: {type(fault).__name__}: {fault}")
    assert not broken, "\n\n".join(broken)
