"""Updates are committed before they are confirmed to the platform, then handled from the store (R1)."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from typing import Any

import structlog
from sqlalchemy.exc import SQLAlchemyError
from telegram import Update
from telegram.error import TelegramError

from scheduler.ports import Clock, Store

log = structlog.get_logger()


class NotKeptError(TelegramError):
    """An update could not be stored; the platform keeps it and sends it again."""


class InboxQueue(asyncio.Queue[Any]):
    """What the library's Updater puts updates into: `put` returns once the update is committed.

    The Updater confirms updates to the platform only after `put` has returned. A database fault is raised
    as the library's own error, because any other one ends its polling without a word.
    """

    def __init__(self, store: Store, clock: Clock, ring: Callable[[], None]) -> None:
        super().__init__()
        self._store, self._clock, self._ring = store, clock, ring

    async def put(self, item: object) -> None:
        """Commit one update. The same update again changes nothing."""
        if not isinstance(item, Update):
            return
        payload = item.to_dict()
        chat = item.effective_chat.id if item.effective_chat else 0
        now = self._clock.now()
        try:
            await self._store.run(lambda tx: tx.inbox.keep(item.update_id, chat, payload, now))
        except SQLAlchemyError as error:
            log.error("update not kept", update=item.update_id, error=type(error).__name__)  # noqa: TRY400 # a traceback may hold texts
            raise NotKeptError("the update could not be stored") from error
        self._ring()
