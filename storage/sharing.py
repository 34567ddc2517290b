"""Transactions of a single thread that share a commit.

SQLite has one writer at a time, and every commit waits for the disk. While one transaction runs, others
wait; those that wait then are carried out in one, one after the other, and committed together. Nobody is
answered before that commit. If anything fails, nothing of it is kept and each is run again alone.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Iterator
from concurrent.futures import Future, ThreadPoolExecutor
from dataclasses import dataclass
from time import perf_counter
from typing import Any, TypeVar

from sqlalchemy import Connection

T = TypeVar("T")

AT_MOST = 32
"""Transactions in one commit."""
NO_MORE_AFTER = 0.010
"""Seconds: the first in line waits for the last, and a commit takes 1 to 10 ms on common disks."""


@dataclass(frozen=True, slots=True)
class _Waiting:
    work: Callable[[Connection], Any]
    future: Future[Any]
    alone: bool


class SharedCommits:
    """Runs transactions in one thread, in the order they come."""

    def __init__(
        self, transact: Callable[[Callable[[Connection], Any]], Any], pool: ThreadPoolExecutor
    ) -> None:
        """`transact` runs one transaction; `pool` has one thread."""
        self._transact, self._pool = transact, pool
        self._queue: deque[_Waiting] = deque()

    def submit(self, work: Callable[[Connection], T], *, alone: bool) -> Future[T]:
        """The result of `work` once it is committed. `alone`: it takes long, nobody shall wait for it."""
        future: Future[T] = Future()
        self._queue.append(_Waiting(work, future, alone))
        self._pool.submit(self._serve)
        return future

    def _serve(self) -> None:
        """One commit; nothing, if those that were waiting have been served with another."""
        first = self._next(after=None)
        if first is None:
            return
        taken = [first]

        def together(connection: Connection) -> list[Any]:
            begun = perf_counter()
            results = [one.work(connection) for one in taken]
            results.extend(one.work(connection) for one in self._others(taken, begun))
            return results

        try:
            results = self._transact(together)
        except Exception as fault:  # noqa: BLE001 # whoever waits for it is given it
            self._apart(taken, fault)
        except BaseException as fault:  # noqa: BLE001 # the thread ends: so do all who wait
            for one in taken:
                one.future.set_exception(fault)
        else:
            for one, result in zip(taken, results, strict=True):
                one.future.set_result(result)

    def _others(self, taken: list[_Waiting], begun: float) -> Iterator[_Waiting]:
        while len(taken) < AT_MOST and perf_counter() - begun < NO_MORE_AFTER:
            one = self._next(after=taken[-1])
            if one is None:
                return
            taken.append(one)
            yield one

    def _next(self, after: _Waiting | None) -> _Waiting | None:
        """The next that still waits, if it may share a commit with the one before it."""
        while self._queue:
            if after is not None and (after.alone or self._queue[0].alone):
                return None
            one = self._queue.popleft()
            if one.future.set_running_or_notify_cancel():
                return one
        return None

    def _apart(self, taken: list[_Waiting], fault: Exception) -> None:
        """One of several has failed: each by itself. A single one has had its tries."""
        if len(taken) == 1:
            taken[0].future.set_exception(fault)
            return
        for one in taken:
            try:
                result = self._transact(one.work)
            except BaseException as own:  # noqa: BLE001 # as above
                one.future.set_exception(own)
            else:
                one.future.set_result(result)
