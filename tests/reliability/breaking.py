"""A database that fails at a given place, the way the driver would tell it."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable
from dataclasses import dataclass, field
from threading import Lock
from typing import Any, Literal, get_args

import psycopg
from sqlalchemy import Dialect

from storage.engine import Database

How = Literal[
    "error",  # the statement or the commit fails, the connection stays
    "lost",  # the connection is gone before the statement or the commit arrives
    "lost-after",  # the same for a statement; a commit has happened, and its answer is lost
    "kill",  # the process dies there: it does nothing more to the database
]
HOWS: tuple[How, ...] = get_args(How)


@dataclass
class Trouble:
    """Counts statements and commits from when it is armed; the `nth` goes wrong. 0 only counts.

    `died` is called in a thread of the database when the process dies.
    """

    nth: int = 0
    how: How = "error"
    died: Callable[[], None] = lambda: None
    armed: bool = False
    count: int = field(default=0, init=False)
    fired: bool = field(default=False, init=False)
    dead: bool = field(default=False, init=False)
    _lock: Lock = field(default_factory=Lock, init=False)

    def set(self, nth: int = 0, how: How = "error", *, armed: bool = False) -> None:
        """Begin anew: nothing has gone wrong yet."""
        self.nth, self.how, self.armed = nth, how, armed
        self.count, self.fired, self.dead = 0, False, False

    def strikes(self) -> bool:
        """Count one place; whether it goes wrong."""
        with self._lock:
            self.count += self.armed
            if not self.armed or self.fired or self.count != self.nth:
                return False
            self.fired, self.dead = True, self.how == "kill"
        if self.dead:
            self.died()
        return True


def install(database: Database, trouble: Trouble) -> None:
    """Every statement and commit of this database passes through `trouble` from now on.

    The dialect's own calls of the driver are wrapped, so that its errors are told apart as always.
    """
    dialect = database.engine.dialect
    for name in ("do_execute", "do_executemany", "do_execute_no_params"):
        setattr(dialect, name, _breaking(getattr(dialect, name), dialect, trouble))
    _break_commits(dialect, trouble)


def _breaking(call: Callable[..., None], dialect: Dialect, trouble: Trouble) -> Callable[..., None]:
    def statement(cursor: Any, *rest: Any, **more: Any) -> None:
        if trouble.dead:
            raise _error(dialect)
        if trouble.strikes():
            _strike(cursor.connection, dialect, trouble)
        call(cursor, *rest, **more)

    return statement


def _break_commits(dialect: Dialect, trouble: Trouble) -> None:
    commit = dialect.do_commit

    def broken(connection: Any) -> None:
        if trouble.dead:
            raise _error(dialect)
        if trouble.strikes():
            if trouble.how == "lost-after":
                commit(connection)
            _strike(connection.driver_connection, dialect, trouble)
        commit(connection)

    setattr(dialect, "do_commit", broken)  # noqa: B010 # an attribute of this dialect only


def _strike(connection: Any, dialect: Dialect, trouble: Trouble) -> None:
    """Raise, or close the driver's connection so that the driver itself does at the next call."""
    if trouble.how in {"error", "kill"}:
        raise _error(dialect)
    connection.close()


def _error(dialect: Dialect) -> Exception:
    words = "the database has gone away"
    if dialect.name == "sqlite":
        return sqlite3.OperationalError(words)
    return psycopg.OperationalError(words)
