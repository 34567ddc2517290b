"""One slow, failing or flooding chat, and all the others (R1). All ours; the store is the real one."""

import asyncio
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from threading import Event, Lock
from typing import Any

import pytest
from telegram import Bot

from bot.telegram.handlers import dispatch
from bot.telegram.incoming import Incoming
from bot.telegram.sender import TelegramSender
from bot.telegram.work import AT_ONCE, RETRIES, Work
from scheduler.clock import SteppedClock, SystemClock
from scheduler.ports import Tx
from storage.store import SqlStore
from tests.conftest import on_postgresql

NOON = datetime(2027, 3, 8, 12, tzinfo=UTC)
ANN, BO = 101, 102
PATIENCE = 10.0
"""Seconds that only a failing test waits in full."""


class Desk:
    """Stands where the handlers are: notes in which order updates come, and does as it is told."""

    def __init__(self, patch: pytest.MonkeyPatch) -> None:
        self.begun: list[int] = []
        self.done: list[int] = []
        self.broken: set[int] = set()
        self.slow: dict[int, Event] = {}
        self._lock = Lock()
        patch.setattr(dispatch, "handle", self._handle)

    def _handle(self, tx: Tx, update: Incoming, now: datetime) -> None:
        with self._lock:
            self.begun.append(update.update_id)
        if update.update_id in self.slow:
            assert self.slow[update.update_id].wait(PATIENCE)
        if update.update_id in self.broken:
            raise ValueError
        with self._lock:
            self.done.append(update.update_id)


@pytest.fixture
def desk(monkeypatch: pytest.MonkeyPatch) -> Desk:
    return Desk(monkeypatch)


def payload(update: int, account: int, at: datetime) -> dict[str, Any]:
    chat = {"id": account, "type": "private"}
    said = {
        "message_id": update,
        "date": int(at.timestamp()),
        "chat": chat,
        "from": {"id": account},
    }
    return {"update_id": update, "message": {**said, "text": "hello"}}


async def arrive(store: SqlStore, at: datetime, **updates: int) -> None:
    """Updates by number (`u1`), each with whose it is."""

    def work(tx: Tx) -> None:
        for name, account in updates.items():
            number = int(name[1:])
            assert tx.inbox.keep(number, account, payload(number, account, at), at)

    await store.run(work)


def worker(store: SqlStore, clock: SystemClock | SteppedClock, name: str = "one") -> Work:
    return Work(store, TelegramSender(Bot("1:nobody-is-called")), clock, None, name)


async def until(work: Work, look: asyncio.Event, true: Callable[[], bool]) -> None:
    """Begin what there is, again and again, as the loop does; `look` is set when one has ended."""
    async with asyncio.timeout(PATIENCE):
        while not true():
            if not await work.begin_updates(look.set) and not true():
                await look.wait()
                look.clear()


@on_postgresql
async def test_one_who_takes_long_holds_up_her_own_chat_only(store: SqlStore, desk: Desk) -> None:
    clock, look = SystemClock(), asyncio.Event()
    one, two = worker(store, clock), worker(store, clock, "two")
    desk.slow[1] = Event()
    await arrive(store, clock.now(), u1=ANN, u2=ANN, u3=BO, u4=BO, u5=BO)
    await until(one, look, lambda: desk.done == [3, 4, 5])
    assert await two.updates() == 0  # what she said next is nobody else's turn either
    assert desk.begun.count(2) == 0
    desk.slow[1].set()
    await until(one, look, lambda: desk.done == [3, 4, 5, 1, 2])


@on_postgresql
async def test_several_at_once_are_answered_side_by_side(store: SqlStore, desk: Desk) -> None:
    """Three chats wait in the middle of their transactions; a fourth is answered meanwhile."""
    clock, look = SystemClock(), asyncio.Event()
    work = worker(store, clock)
    desk.slow = {n: Event() for n in (1, 2, 3)}
    await arrive(store, clock.now(), u1=201, u2=202, u3=203, u4=204)
    await until(work, look, lambda: desk.done == [4])
    for event in desk.slow.values():
        event.set()
    await until(work, look, lambda: sorted(desk.done) == [1, 2, 3, 4])


async def test_one_that_is_tried_again_holds_up_its_own_chat_only(
    store: SqlStore, desk: Desk
) -> None:
    clock = SteppedClock(NOON)
    work = worker(store, clock)
    desk.broken = {1}
    await arrive(store, NOON, u1=ANN, u2=ANN, u3=BO, u4=BO)
    assert (await work.updates(), await work.updates(), await work.updates()) == (2, 1, 0)
    assert desk.done == [3, 4]
    for pause in RETRIES:
        clock.move(clock.now() + pause - timedelta(microseconds=1))
        assert await work.updates() == 0
        clock.move(clock.now() + timedelta(microseconds=1))
        assert await work.updates() == 1
    assert desk.begun.count(1) == 1 + len(RETRIES)
    assert await work.updates() == 1  # it was set aside: her next one has its turn
    assert desk.done == [3, 4, 2]
    assert clock.now() - NOON < timedelta(seconds=5)


async def test_a_flood_by_one_person_does_not_put_another_off(store: SqlStore, desk: Desk) -> None:
    clock = SteppedClock(NOON)
    work = worker(store, clock)
    flood = {f"u{n}": ANN for n in range(1, 10 * AT_ONCE)}
    last = 10 * AT_ONCE
    await arrive(store, NOON, **flood, **{f"u{last}": BO})
    assert await work.updates() == 2
    assert sorted(desk.done) == [1, last]
    await arrive(store, NOON, **{f"u{last + 1}": BO})
    assert await work.updates() == 2
    assert desk.done[2:] in ([2, last + 1], [last + 1, 2])
