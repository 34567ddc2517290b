"""Updates are committed before they are confirmed to the platform, then handled from the store (R1)."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import structlog
from sqlalchemy.exc import SQLAlchemyError
from telegram import Update
from telegram.error import TelegramError

from bot.telegram.places import without_places
from scheduler.clock import SteppedClock, SystemClock
from scheduler.ports import Store, Tx
from scheduler.usecases import receipts

log = structlog.get_logger()

NOTED_EVERY = 60.0
"""Seconds; that the platform was heard is kept at most so often."""


class NotKeptError(TelegramError):
    """Updates could not be stored; the platform keeps them and sends them again."""


class Inbox:
    """What receives puts updates here; they are committed when `keep` returns."""

    def __init__(
        self,
        store: Store,
        clock: SystemClock | SteppedClock,
        monotonic: Callable[[], float],
        ring: Callable[[], None],
    ) -> None:
        self._store, self._clock, self._ring = store, clock, ring
        self._monotonic = monotonic
        self.heard_at: float | None = None
        """Monotonic seconds of the last time the platform was heard."""
        self._noted_at: float | None = None

    async def keep(self, updates: Sequence[Update]) -> None:
        """Commit updates, all in one transaction. The same update again changes nothing.

        NotKeptError where the database cannot; then nothing of them is kept.
        """
        now = self._clock.now()
        rows = [(each.update_id, _chat(each), without_places(each.to_dict())) for each in updates]

        def work(tx: Tx) -> None:
            for update_id, chat, payload in rows:
                tx.inbox.keep(update_id, chat, payload, now)

        try:
            await self._store.run(work)
        except SQLAlchemyError as error:
            log.error("updates not kept", count=len(rows), error=type(error).__name__)  # noqa: TRY400 # a traceback may hold texts
            raise NotKeptError("the updates could not be stored") from error
        self._ring()

    async def heard(self) -> None:
        """The platform has just answered a poll or called the webhook (R5).

        Under the stepped clock only the first time counts here: afterwards time goes by in jumps.
        """
        self.heard_at = at = self._monotonic()
        first = self._noted_at is None
        if not first and (self._clock.stepped or at - (self._noted_at or 0.0) < NOTED_EVERY):
            return
        now = self._clock.now()
        try:
            await self._store.run(lambda tx: receipts.note(tx, now))
        except SQLAlchemyError as error:
            log.error("receipt not noted", error=type(error).__name__)  # noqa: TRY400 # as above
            return
        self._noted_at = at
        self._ring()


def _chat(update: Update) -> int:
    return update.effective_chat.id if update.effective_chat else 0
