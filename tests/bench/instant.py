"""A worker of the bot without a network: every message is taken at once."""

from __future__ import annotations

from bot.telegram.sender import TelegramSender
from bot.telegram.work import Work
from scheduler.clock import SteppedClock, SystemClock
from scheduler.ports import Delivered, Letter
from storage.store import SqlStore


class InstantSender(TelegramSender):
    """Takes every message at once. Words are not looked up, nothing is written to anybody."""

    def __init__(self) -> None:  # it has no client of the platform
        pass

    async def send(self, letter: Letter) -> Delivered:
        return Delivered(letter.outbox_id)

    async def stop_spinner(self, press_id: str) -> None:
        pass


def worker(store: SqlStore, clock: SteppedClock | SystemClock) -> Work:
    """A worker that sends as fast as it can."""
    return Work(store, InstantSender(), clock, None, "bench")
