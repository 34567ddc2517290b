"""When messages leave, over all processes of a store (R3).

A place is an instant at which one message may leave; two places are at least the pace's `between` apart.
They are handed out inside the claiming transaction, of which there is one at a time, and only for the
moment ahead: what is more urgent and comes later gets the next one. A place that went by a moment ago,
for the worker woke up late, is still given, if no more than the rate have left in the last second.
"""

from collections.abc import Iterable
from datetime import datetime, timedelta

from sqlalchemy import Connection, bindparam, case, delete, func, insert, or_, select

from scheduler.ports import Pace
from storage.queue import ADDRESSED, CHAT, COULD_LEAVE, READY, departures

ONE_CHAT = timedelta(seconds=1.05)
"""From one message of a chat to the next: a second, and some time for one to be slower on its way."""
SECOND = timedelta(seconds=1)
LATE = timedelta(milliseconds=150)
"""How long ago a place may be that is still given. What catches up is in the way of answers no longer."""
IMPOSSIBLE = timedelta(seconds=10)
"""Nothing leaves so far ahead of the moment: the clock was set back."""

FORGET = delete(departures).where(
    or_(departures.c.leaves_at < bindparam("old"), departures.c.leaves_at > bindparam("impossible"))
)
LINE = select(
    func.max(departures.c.place),
    func.sum(case((departures.c.leaves_at > bindparam("since"), 1), else_=0)),
)
"""The last place of the line, and how many leave in the last second."""
LEAVE = insert(departures)
HELD = select(func.min(departures.c.leaves_at)).where(
    departures.c.leaves_at > bindparam("lately"),
    departures.c.chat.in_(select(CHAT).select_from(ADDRESSED).where(*COULD_LEAVE, READY)),
)
"""The departure before the first message that waits for nothing but its chat's second."""


class Departures:
    """Places for the messages of one claiming transaction."""

    def __init__(self, connection: Connection, pace: Pace, now: datetime) -> None:
        self._connection, self._pace, self._now = connection, pace, now
        old = now - max(ONE_CHAT, 2 * pace.between)
        moments = {"old": old, "impossible": now + pace.ahead + IMPOSSIBLE}
        connection.execute(FORGET, moments)
        in_a_second = max(1, round(SECOND / pace.between))
        since = now + pace.ahead - in_a_second * pace.between
        last, lately = connection.execute(LINE, {"since": since}).one()
        after = None if last is None else last + pace.between
        self._next: datetime = now if after is None or after < now - LATE else after
        self._room = in_a_second - (lately or 0)

    def free(self, most: int) -> list[datetime]:
        """The places of the moment, at most so many."""
        end = self._now + self._pace.ahead
        if self._next > end:
            return []
        count = min(most, self._room, 1 + (end - self._next) // self._pace.between)
        return [self._next + n * self._pace.between for n in range(count)]

    def take(self, chats: Iterable[int], places: list[datetime]) -> None:
        """These places are taken by messages to these chats."""
        rows = [
            {"chat": str(chat), "leaves_at": max(at, self._now), "place": at}
            for chat, at in zip(chats, places, strict=False)
        ]
        self._connection.execute(LEAVE, rows)
        self._next = places[len(rows) - 1] + self._pace.between
        self._room -= len(rows)

    def next_at(self) -> datetime:
        """When the next place can be handed out."""
        at = self._next - self._pace.ahead
        return at if self._room > 0 else max(at, self._now + self._pace.between)

    def held_until(self, oldest: datetime) -> datetime | None:
        """When a message that waits for nothing but its chat's second may leave."""
        moments = {"now": self._now, "oldest": oldest, "lately": self._now - ONE_CHAT}
        before: datetime | None = self._connection.execute(HELD, moments).scalar_one()
        return None if before is None else before + ONE_CHAT
