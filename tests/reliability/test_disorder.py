"""The platform delivers twice and in the wrong order; nothing is lost, doubled or out of turn (R1, I5).

A press and a message of one person may overtake each other at the platform. Where both are there, the lower
number goes first. `BOUTWISE_DISORDER` is how many shuffles are tried.
"""

from random import Random

import pytest
from sqlalchemy import URL

from bot.rehearsal import people
from bot.rehearsal.faults import Fault
from scheduler.ports import Arrived, Tx
from storage.store import SqlStore
from tests.conftest import on_sqlite
from tests.reliability import truth
from tests.reliability.house import Fragile
from tests.reliability.sizes import DISORDER
from tests.storage.clinic import LEASE, NOW


@on_sqlite
@pytest.mark.parametrize("kind", ["again", "swap", "both"])
async def test_updates_that_come_twice_or_swapped_are_each_answered_once(
    database_at: URL, quick_stage: pytest.MonkeyPatch, kind: str
) -> None:
    """Three people write and press while the bot is down; their updates come in disorder when it is back."""
    house = Fragile(database_at, quick_stage)
    everybody = [await house.client(f"Ann{n}#", total=40) for n in range(3)]
    await house.robustly(everybody[0].at(8, 5))
    bouts = {each: each.prompted()[-1].args["bout"] for each in everybody}
    now = house.stage.now
    await house.close()
    world = house.world
    assert world is not None
    for each in everybody:  # neighbours of one chat, then of different chats
        people.forge(
            world, each.facts.account, each.texts("prompt")[-1].message_id, f"all:{bouts[each]}"
        )
        people.say(world, each.facts.account, "5")
    for words in ("4", "undo", "3"):
        for each in everybody:
            people.say(world, each.facts.account, words)
    for one in ("again", "swap") if kind == "both" else (kind,):
        world.faults.add(Fault(one, times=None))
    await house.open(now)
    await house.queue.empty.wait()
    await house.robustly(everybody[0].at(8, 6))
    world.faults.clear()
    await house.robustly(everybody[0].at(12, 1, day=1))
    for each in everybody:
        standing = {row.voids for row in each.ledger()}
        rows = [row for row in each.ledger() if row.voids is None and row.id not in standing]
        assert sorted(row.reps for row in rows) == [3, 5, 10]
    assert set(house.read(truth.updates).values()) == {"done"}
    await house.close()
    house.check()


@pytest.mark.parametrize("seed", range(DISORDER))
def test_of_what_is_there_the_lower_number_of_a_chat_goes_first(store: SqlStore, seed: int) -> None:
    """Batches arrive shuffled, with copies; after each a worker takes what it may, and finishes it."""
    random = Random(seed)
    updates = [(n, random.randrange(4)) for n in range(1, 81)]
    handled: list[int] = []
    known: dict[int, int] = {}
    left = [*updates]
    while left or len(handled) < len(updates):
        batch, left = left[:10], left[10:]
        copies = random.sample(updates[: 80 - len(left)], 3)
        for update, chat in random.sample(batch + copies, len(batch) + 3):
            kept = store.run_sync(lambda tx, u=update, c=chat: tx.inbox.keep(u, c, {}, NOW))  # type: ignore[misc]
            assert kept == (update not in known)
            known[update] = chat
        taken = [each.update_id for each in store.run_sync(take)]
        for update in taken:
            waiting = [u for u, c in known.items() if c == known[update] and u not in handled]
            assert update == min(waiting)
        assert len({known[update] for update in taken}) == len(taken)
        for update in taken:
            assert store.run_sync(lambda tx, u=update: tx.inbox.finish(u, "one"))  # type: ignore[misc]
        handled += taken
    assert sorted(handled) == [update for update, _ in updates]


def take(tx: Tx) -> tuple[Arrived, ...]:
    return tx.inbox.claim(NOW, "one", LEASE, 20)
