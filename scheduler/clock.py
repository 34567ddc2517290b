"""The only reader of the time of day.

Everything else is handed `now`, an aware UTC datetime. The stepped clock stands still until it is moved.
"""

from __future__ import annotations

from datetime import UTC, datetime


class SystemClock:
    """The machine's clock, in UTC."""

    stepped = False

    def now(self) -> datetime:
        """The present instant; aware, UTC."""
        return datetime.now(UTC)  # noqa: TID251 # the one home of this call


class SteppedClock:
    """A clock that somebody moves: for rehearsals and tests."""

    stepped = True

    def __init__(self, start: datetime) -> None:
        """`start` is aware; ValueError if it has no zone."""
        if start.tzinfo is None:
            raise ValueError(
                "The stepped clock starts at an instant with a zone, such as ...T05:00:00Z."
            )
        self._now = start.astimezone(UTC)

    def now(self) -> datetime:
        """The instant at which the clock stands."""
        return self._now

    def move(self, to: datetime) -> None:
        """Stand at `to` from now on. ValueError if that would go back."""
        if to < self._now:
            raise ValueError(f"The clock stands at {self._now.isoformat()} and does not go back.")
        self._now = to.astimezone(UTC)
