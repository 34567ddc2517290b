"""What one transaction has read about a client already, so that its rules need not ask again.

Rules of one event look at the same few rows dozens of times. Whoever writes such a row forgets what was
read of it, or puts the row that was written in its place where reading would give exactly that; whoever
has waited for a lock forgets everything, as it may be older than the lock.
"""

from collections.abc import Callable, Hashable
from typing import Any, TypeVar

Value = TypeVar("Value")


class Memo:
    """Values by what they are, of one transaction."""

    def __init__(self) -> None:
        self._known: dict[tuple[Hashable, ...], Any] = {}

    def get(self, key: tuple[Hashable, ...], read: Callable[[], Value]) -> Value:
        """The value as it was read or written last, read now if it was not."""
        if key not in self._known:
            self._known[key] = read()
        value: Value = self._known[key]
        return value

    def known(self, *key: Hashable) -> Any:
        """The value as it was read or written last; `None` if it was not, or if there was none."""
        return self._known.get(key)

    def put(self, key: tuple[Hashable, ...], value: object) -> None:
        """The value was written just now, and reading it would give the same."""
        self._known[key] = value

    def forget(self, *key: Hashable) -> None:
        """One value was written; it is read anew when it is asked for."""
        self._known.pop(key, None)

    def forget_all(self) -> None:
        """A lock was waited for: what was read before it may be old."""
        self._known.clear()
