"""The queue of updates that the bot has not confirmed yet."""

from collections import deque
from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import islice
from typing import Any

# How long the platform keeps what a bot does not fetch. Messages: 24 h (the Bot API's page on
# getting updates). Button presses: about 150 s (measured by others, second-hand).
MESSAGE_LIFE = timedelta(hours=24)
PRESS_LIFE = timedelta(seconds=150)
# Left out unless asked for (the Bot API's page on getUpdates).
LEFT_OUT = frozenset({"chat_member", "message_reaction", "message_reaction_count"})


@dataclass(frozen=True, slots=True)
class Update:
    """One update as queued. `kind` is its field's name; `at` the instant it came about."""

    update_id: int
    kind: str
    content: Mapping[str, Any]
    at: datetime

    def as_json(self) -> dict[str, Any]:
        return {"update_id": self.update_id, self.kind: self.content}

    def gone_by(self, now: datetime) -> bool:
        life = PRESS_LIFE if self.kind == "callback_query" else MESSAGE_LIFE
        return now - self.at > life


class Updates:
    """Updates wait here until the bot confirms them by asking for a later one."""

    def __init__(self, first_id: int) -> None:
        self._next_id = first_id
        self._waiting: deque[Update] = deque()
        self._allowed: frozenset[str] | None = None
        self.listeners: list[Callable[[], None]] = []

    def __len__(self) -> int:
        return len(self._waiting)

    @property
    def allowed(self) -> list[str] | None:
        """The kinds asked for; None for the platform's default."""
        return None if self._allowed is None else sorted(self._allowed)

    def allow(self, kinds: Collection[str]) -> None:
        """Queue only these kinds from now on; an empty list is the platform's default."""
        self._allowed = frozenset(kinds) or None

    def add(self, kind: str, content: Mapping[str, Any], at: datetime) -> Update | None:
        """Queue an update; None if the bot has not asked for this kind."""
        unwanted = kind in LEFT_OUT if self._allowed is None else kind not in self._allowed
        if unwanted:
            return None
        update = Update(self._next_id, kind, content, at)
        self._next_id += 1
        self._queue(update)
        return update

    def repeat(self, update: Update) -> None:
        """Queue an update once more under its old number, as the platform may."""
        self._queue(update)

    def take(self, now: datetime, offset: int, limit: int) -> list[Update]:
        """Up to `limit` updates, oldest first; `offset` confirms all those below it.

        A negative offset keeps only that many of the last. What is too old is gone.
        """
        surplus = len(self._waiting) + offset if offset < 0 else 0
        while self._waiting and (surplus > 0 or self._waiting[0].update_id < offset):
            self._waiting.popleft()
            surplus -= 1
        # The shortest life is looked at first: a long queue is not gone through at every poll.
        if self._waiting and now - self._waiting[0].at > PRESS_LIFE:
            self._waiting = deque(each for each in self._waiting if not each.gone_by(now))
        return list(islice(self._waiting, limit))

    def forget_all(self) -> None:
        self._waiting.clear()

    def wake(self) -> None:
        """Tell those who wait that there is something new to look at."""
        for listener in self.listeners:
            listener()

    def _queue(self, update: Update) -> None:
        self._waiting.append(update)
        self.wake()
