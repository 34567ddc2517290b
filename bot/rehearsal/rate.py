"""The platform's "too fast", for runs in real time. A stepped clock stands still: off there."""

import math
from collections.abc import Callable

PER_CHAT = 1.0  # messages a second into one chat (the platform's page of frequent questions)
OVERALL = 30.0  # messages a second over all chats (same page)


class RateRule:
    """Two leaky buckets: one for each chat, one over all.

    Args:
        monotonic: seconds that never go back, of the real clock.
        burst: messages one chat may get at once before its pace holds.
    """

    def __init__(self, monotonic: Callable[[], float], burst: int = 1) -> None:
        self._monotonic = monotonic
        self._burst = burst
        self._free_at: dict[int, float] = {}
        self._all_free_at = -math.inf

    def wait(self, chat_id: int) -> int | None:
        """Count one message; whole seconds to wait if it is too fast, and then not counted."""
        now = self._monotonic()
        chat_free = max(self._free_at.get(chat_id, now), now)
        all_free = max(self._all_free_at, now)
        late = max(chat_free - now - (self._burst - 1) / PER_CHAT, all_free - now - 1.0)
        if late > 0:
            return math.ceil(late)
        self._free_at[chat_id] = chat_free + 1 / PER_CHAT
        self._all_free_at = all_free + 1 / OVERALL
        return None
