"""kill -9 while the bot answers and while it sends: no answer lost or doubled, no prompt doubled.

What the platform has accepted is the truth on the outside; the store of the dead bot is held against it.
By default 50 places an engine; `BOUTWISE_KILLS=1000` asks for as many.
"""

import os
from collections import Counter, defaultdict
from datetime import date
from itertools import groupby
from pathlib import Path
from random import Random

import pytest
from sqlalchemy import URL

from tests.process.crowd import Crowd, crowd
from tests.process.practice import Kept, kept, texts
from tests.process.road import Place, When

KILLS = int(os.environ.get("BOUTWISE_KILLS", "50"))  # noqa: TID251 # a switch of the test run
LAST_CALL = 24
"""A life's first calls are its start; about as many again come with one round of answers."""


def places(random: Random, count: int) -> list[Place]:
    """Where the bot dies. A third of the moments lie beside a request: inside transactions, mostly."""
    whens: list[When] = ["before", "after", "later"]
    return [
        Place(random.randint(1, LAST_CALL), random.choice(whens), random.uniform(0, 0.08))
        for _ in range(count)
    ]


async def test_no_answer_is_lost_or_doubled_and_no_prompt_doubled_by_kill_9(
    database_at: URL, tmp_path: Path
) -> None:
    random = Random(20270308)
    async with crowd(database_at, tmp_path, random, writers=4, pressers=3, hurt=8) as (all_, key):
        for number, place in enumerate(places(random, KILLS)):
            await all_.begin(place)
            if number % 6 == 5:
                all_.somebody_is_hurt()
            while not all_.life.over:
                await all_.round()
            assert await all_.life.died() == -9, all_.life.words()
        await all_.begin()
        await all_.settle()
        assert await all_.life.stop() == 0, all_.life.words()
        assert len(all_.road.hits) == KILLS
        assert {"sendMessage", "editMessageText", "getUpdates"} <= {m for m, _ in all_.road.hits}
    held_against(all_, kept(database_at, key))


def held_against(crowd: Crowd, store: Kept) -> None:
    """What the people and the platform know, and what is in the store."""
    assert Counter(store.updates.values()) == {"done": len(updates_of(crowd))}
    assert set(store.updates) == updates_of(crowd)
    assert store.ledger == expected_ledger(crowd)
    assert set(store.answers.values()) == {"sent"}
    every_answer_is_acknowledged_in_order(crowd)
    no_prompt_came_twice(crowd, store)
    whoever_is_hurt_is_told_and_flagged(crowd, store)


def updates_of(crowd: Crowd) -> set[int]:
    """Every update that the platform took from anybody."""
    return {entry.update.update_id for entry in crowd.world.log if entry.update is not None}


def expected_ledger(crowd: Crowd) -> Counter[tuple[int, str, int]]:
    """One entry for everything written, and one for each prompt that was pressed."""
    ids = crowd.practice.ids
    written = [(ids[who], f"u{u}", reps) for u, (who, reps) in crowd.written.items()]
    asked = {bout: reps for _, bout, reps in prompts(crowd)}
    pressed = [
        (ids[who], f"u{updates[0]}", asked[bout])
        for (who, bout), updates in crowd.pressed.items()
    ]  # fmt: skip
    return Counter(written + pressed)


def prompts(crowd: Crowd) -> list[tuple[int, int, int]]:
    """Chat, bout and reps of every prompt that the platform accepted, in order."""
    found = []
    for entry in crowd.world.log:
        for id_, args in texts(entry.text) if entry.method == "sendMessage" else ():
            if id_ == "prompt":
                assert args["done"] + args["reps"] <= args["total"]  # I3
                assert entry.chat_id is not None
                found.append((entry.chat_id, args["bout"], args["reps"]))
    return found


def every_answer_is_acknowledged_in_order(crowd: Crowd) -> None:
    """A writer reads her running sum after each number, perhaps twice, never out of order."""
    sums: dict[int, list[int]] = defaultdict(list)
    days: dict[int, date] = {}
    for entry in crowd.world.log:
        if entry.update is None or entry.update.update_id not in crowd.written:
            continue
        writer, reps = crowd.written[entry.update.update_id]
        same_day = days.get(writer) == entry.at.date()  # Lisbon's date is UTC's in March
        days[writer] = entry.at.date()
        sums[writer].append(reps + (sums[writer][-1] if same_day else 0))
    for writer in crowd.practice.writers:
        read = [
            args["done"]
            for entry in crowd.world.log
            if entry.method == "sendMessage" and entry.chat_id == writer
            for id_, args in texts(entry.text)
            if id_ == "logged"
        ]
        assert [value for value, _ in groupby(read)] == sums[writer]
    for (presser, _), updates in crowd.pressed.items():
        assert updates, presser


def no_prompt_came_twice(crowd: Crowd, store: Kept) -> None:
    """What the store calls sent came once, of what it does not know at most one did, of the rest none."""
    came = Counter(bout for _, bout, _ in prompts(crowd))
    assert max(came.values()) == 1
    unknown = 0
    for bout, states in store.prompts.items():
        assert len(states) == 1
        if states == ["unknown"]:
            unknown += 1
        else:
            assert came[bout] == (states == ["sent"]), (bout, states)
    assert unknown <= len(crowd.road.hits)
    assert came.keys() <= store.prompts.keys()


def whoever_is_hurt_is_told_and_flagged(crowd: Crowd, store: Kept) -> None:
    """The safety message and the flag arrive, and nothing is asked of her after them (I6)."""
    said = {
        entry.chat_id: place
        for place, entry in enumerate(crowd.world.log)
        if entry.update is not None and "hurts" in entry.text
    }
    assert said
    assert store.flags == dict.fromkeys((crowd.practice.ids[who] for who in said if who), 1)
    for who in said:
        hers = [e for e in crowd.world.log if e.chat_id == who and e.method == "sendMessage"]
        ids = [[id_ for id_, _ in texts(entry.text)] for entry in hers]
        told = next(place for place, each in enumerate(ids) if "stop-today" in each)
        assert not any("prompt" in each for each in ids[told:])
    flagged = [
        args["client"]
        for entry in crowd.world.log
        if entry.chat_id == crowd.practice.clinician and entry.who == "bot"
        for id_, args in texts(entry.text)
        if id_ == "flag" and args["urgent"]
    ]
    assert set(flagged) == {crowd.practice.ids[who] for who in said if who}


@pytest.mark.parametrize("count", [1, 200])
def test_the_places_are_the_same_at_every_run(count: int) -> None:
    assert places(Random(7), count) == places(Random(7), count)
    assert len(places(Random(7), count)) == count
