"""The bot is away for 20 minutes, 6 hours, 23 hours, and a backlog waits at the platform (P6, P7, I5, I6).

The backlog is 600 updates, an eighth of that for the shortest and the longest, or as many as
`BOUTWISE_BACKLOG=100000` says. Hours count by the stepped clock; the real time it takes is printed.
"""

import asyncio
from collections import Counter
from datetime import datetime, timedelta
from pathlib import Path
from random import Random

import pytest
from sqlalchemy import URL

from bot.rehearsal import people
from bot.rehearsal.faults import Fault
from tests.conftest import on_sqlite
from tests.journeys.log import Line
from tests.journeys.theatre import Someone
from tests.reliability import truth
from tests.reliability.house import Fragile
from tests.reliability.sizes import BACKLOG

CLIENTS = 20
A_MINUTE = timedelta(minutes=1)
WORDS = ("3", "did 2", "/today", "blue kettle", "yesterday 1", "half")


async def crowd(house: Fragile) -> list[Someone]:
    """Clients who have all been asked at 08:00."""
    everybody = [await house.client(f"Ann{n}#", total=40) for n in range(CLIENTS)]
    await house.robustly(everybody[0].at(8, 1))
    return everybody


async def they_write(
    house: Fragile, everybody: list[Someone], start: datetime, end: datetime, backlog: int
) -> list[Someone]:
    """Everybody writes while the bot is away, evenly over the time; four, last of all, that it hurts."""
    assert house.world is not None
    random, clock = Random(5), [start]
    house.world.now = lambda: clock[0]
    for n in range(backlog - 4):
        clock[0] = start + (end - start) * n / backlog
        who = everybody[n % len(everybody)].facts.account
        people.say(house.world, who, random.choice(WORDS))
    hurt = everybody[-4:]
    for each in hurt:
        people.say(house.world, each.facts.account, "my hip hurts badly, 9 of 10, and sharp")
    return hurt


@pytest.mark.parametrize(
    ("hours", "backlog"), [(1 / 3, BACKLOG // 8), (6, BACKLOG), (23, BACKLOG // 8)]
)
@on_sqlite
async def test_after_an_outage_nothing_is_lost_nothing_floods_and_pain_comes_first(
    database_at: URL, quick_stage: pytest.MonkeyPatch, hours: float, backlog: int
) -> None:
    house = Fragile(database_at, quick_stage)
    everybody = await crowd(house)
    gone = house.stage.now
    await house.close()
    back = gone + timedelta(hours=hours)
    hurt = await they_write(house, everybody, gone, back, backlog)
    before = len(house.lines())
    loop = asyncio.get_running_loop()
    began = loop.time()
    await house.open(back)
    await house.queue.empty.wait()
    await house.robustly(back + A_MINUTE)
    print(f"{hours:.1f} h, {backlog} updates: {loop.time() - began:.1f} s in real time")
    news = house.lines()[before:]
    pain_is_out(house, hurt, news, back + A_MINUTE)
    nobody_is_flooded(everybody, news)
    await house.robustly(everybody[0].at(12, 1, day=1 if hours < 20 else 2))
    every_answer_is_kept_once(house, everybody, backlog)
    await house.close()
    house.check()


def pain_is_out(house: Fragile, hurt: list[Someone], news: list[Line], by: datetime) -> None:
    """The flag is with the clinician, the safety words with the client, before a minute has passed."""
    flagged = {
        flag.args["client"]: line.at
        for line in news
        if line.chat == house.dana and (flag := line.get("flag")) and flag.args["urgent"]
    }
    for each in hurt:
        assert flagged[each.facts.person] <= by
        hers = [line for line in news if line.bot and line.chat == each.facts.account]
        stopped = [n for n, line in enumerate(hers) if any(i.startswith("stop-") for i in line.ids)]
        assert stopped
        assert not any(line.get("prompt") for line in hers[stopped[0] :])
        assert hers[stopped[0]].at <= by


def nobody_is_flooded(everybody: list[Someone], news: list[Line]) -> None:
    """Beside the answers to what she wrote: one word that the bot was away, and one prompt at most."""
    for each in everybody:
        own = Counter(
            id_
            for line in news
            if line.bot and line.chat == each.facts.account
            for id_ in line.ids
            if id_ in {"prompt", "nudge", "away"}
        )
        assert own["away"] <= 1
        assert own["prompt"] <= 1
        assert own["nudge"] == 0


def every_answer_is_kept_once(house: Fragile, everybody: list[Someone], backlog: int) -> None:
    taken = {line.update for line in house.lines() if line.update is not None}
    kept = house.read(truth.updates)
    assert set(kept) == taken
    assert set(kept.values()) == {"done"}
    sources = [row.source for each in everybody for row in each.ledger() if row.voids is None]
    assert len(sources) == len(set(sources))
    numbers = {"3", "did 2"}
    logged = {f"u{each.update}" for each in house.lines() if each.words in numbers and not each.bot}
    open_days = {s for s in logged if s in sources}
    assert (
        len(open_days) > backlog // 20
    )  # what day was over when it was handled is refused, not lost


@pytest.mark.parametrize("kind", ["down", "wrong-token"])
@on_sqlite
async def test_a_platform_that_answers_nothing_for_hours_costs_nobody_an_answer(
    database_at: URL, quick_stage: pytest.MonkeyPatch, kind: str, tmp_path: Path
) -> None:
    """The bot is up, and every call of its fails, polls too."""
    house = Fragile(database_at, quick_stage)
    ann = await house.client(total=40)
    await house.robustly(ann.at(7, 59))
    world = house.stage.world
    world.faults.add(Fault(kind, times=None))  # type: ignore[arg-type]
    await house.robustly(ann.at(14, 3))
    world.faults.clear()
    await house.robustly(ann.at(14, 10))
    await house.deed(lambda: people.say(world, ann.facts.account, "10"))
    await house.robustly(ann.at(12, 1, day=1))
    assert ann.done() == 10
    assert len(ann.texts("away")) <= 1
    assert len(ann.texts("prompt")) <= 3
    await house.close()
    house.check()
