"""The way to the database: one function, one transaction, one hop to a thread and back.

SQLite is served by one thread with one held connection, PostgreSQL by a few of both. SQLAlchemy
Core is used synchronously inside them: measured against its asyncio layer it takes a third of the
time for a durable answer, and there is nothing to await in the middle of a transaction.
"""

import asyncio
import sqlite3
import time
from collections.abc import Callable, Iterator
from concurrent.futures import Future, ThreadPoolExecutor
from contextlib import contextmanager
from pathlib import Path
from typing import Literal, TypeVar

from sqlalchemy import URL, Connection, Engine, create_engine, make_url
from sqlalchemy.exc import ArgumentError, DBAPIError
from sqlalchemy.pool import NullPool, PoolProxiedConnection

from storage.columns import give_keyring
from storage.keys import Keyring
from storage.sharing import SharedCommits

T = TypeVar("T")

DRIVERS = {
    "sqlite": "sqlite+pysqlite",
    "postgresql": "postgresql+psycopg",
    "postgres": "postgresql+psycopg",
}
POSTGRESQL_THREADS = (
    4  # transactions at once in one process; more gain nothing, measured on 2 cores
)
ATTEMPTS = 5
FIRST_PAUSE_SECONDS = 0.01  # doubled at each further attempt: 150 ms in all
SERIALIZATION_FAILURE, DEADLOCK = "40001", "40P01"  # SQLSTATE: "try the transaction again"
CONNECT_SECONDS = 10
# The row count answers whether a guarded statement was first; without this an INSERT says -1.
OPTIONS = {"preserve_rowcount": True}
SQLITE_WAIT_MILLISECONDS = 10_000  # for another process's transaction, a command's for example
SQLITE_PRAGMAS = (
    f"PRAGMA busy_timeout={SQLITE_WAIT_MILLISECONDS}",
    "PRAGMA synchronous=FULL",
    "PRAGMA foreign_keys=ON",
    "PRAGMA secure_delete=ON",  # what is erased is overwritten with zeros
)
ERASED = "erased"
"""Under this name a connection remembers that it has erased something that must be gone from the file."""
WAL_ATTEMPTS, WAL_PAUSE_SECONDS = 100, 0.02


def database_url(text: str) -> URL:
    """Reads a database URL; the driver in it, if any, is replaced by ours.

    Raises ValueError with one sentence, which does not repeat the URL: it may hold a password.
    """
    try:
        url = make_url(text)
    except (ArgumentError, ValueError):
        raise ValueError("It is not a database URL, like sqlite:///boutwise.db.") from None
    backend = url.drivername.partition("+")[0]
    if backend not in DRIVERS:
        raise ValueError(f"Databases are sqlite and postgresql; there is none called {backend}.")
    if not url.database:
        raise ValueError("The database URL names no database.")
    if backend == "sqlite":
        _check_sqlite(url)
    return url.set(drivername=DRIVERS[backend])


def _check_sqlite(url: URL) -> None:
    if url.host or url.query:
        raise ValueError("An sqlite URL has three slashes and a path, like sqlite:///boutwise.db.")
    if url.database == ":memory:":
        raise ValueError("A database in memory would forget everything; name a file.")


class Database:
    """One database and the threads that talk to it."""

    def __init__(self, url: URL, keyring: Keyring) -> None:
        """`url` comes from `database_url`. Nothing is opened yet."""
        self.dialect: Literal["sqlite", "postgresql"]
        self.dialect = "sqlite" if url.get_backend_name() == "sqlite" else "postgresql"
        self.keyring = keyring
        self.engine = _sqlite_engine(url) if self.dialect == "sqlite" else _postgresql_engine(url)
        give_keyring(self.engine, keyring)
        threads = 1 if self.dialect == "sqlite" else POSTGRESQL_THREADS
        self._threads = ThreadPoolExecutor(threads, thread_name_prefix="database")
        self._shared = SharedCommits(self._transact, self._threads)
        self._held: list[Connection] = []  # open and idle, the warmest last

    def is_there(self) -> bool:
        """Whether an SQLite file is where the URL says; a server's database always may be.

        A missing folder is not looked at here: opening the file says so.
        """
        path = Path(self.engine.url.database or "")
        return self.dialect != "sqlite" or path.exists() or not path.parent.exists()

    async def run(self, work: Callable[[Connection], T], *, alone: bool = False) -> T:
        """Runs `work` in one transaction in a database thread; commits when it returns.

        If it raises, all that it wrote is rolled back and the exception comes out here. `work` may be
        run more than once (a deadlock, a connection found dead, a fault of another with which it would
        have shared a commit on SQLite), so it does nothing but read and write the database, and returns
        values, not cursors. If the awaiting task is cancelled, a transaction that has begun ends as it
        would have, one that has not is never begun. `alone`: it takes long and shares no commit.
        """
        return await asyncio.wrap_future(self._submit(work, alone))

    def run_sync(self, work: Callable[[Connection], T]) -> T:
        """`run` for commands, which have no event loop. Blocks."""
        return self._submit(work, alone=True).result()

    def _submit(self, work: Callable[[Connection], T], alone: bool) -> Future[T]:
        if self.dialect == "sqlite":
            return self._shared.submit(work, alone=alone)
        return self._threads.submit(self._transact, work)

    async def close(self) -> None:
        """Waits for running and waiting transactions to end, then closes the connections."""
        await asyncio.to_thread(self.close_sync)

    def close_sync(self) -> None:
        """`close` for commands."""
        self._threads.shutdown()
        while self._held:
            self._held.pop().close()
        self.engine.dispose()

    def _transact(self, work: Callable[[Connection], T]) -> T:
        """Tries until it is done, or until trying again would be no use or no safe thing."""
        attempt = 1
        while True:
            asked_to_commit = False
            try:
                with self._connection() as connection:
                    with connection.begin():
                        result = work(connection)
                        asked_to_commit = True
                    if connection.info.pop(ERASED, False):
                        _empty_the_side_file(connection)
            except DBAPIError as fault:
                # A connection lost during the commit leaves open whether it happened.
                lost = fault.connection_invalidated and not asked_to_commit
                if attempt == ATTEMPTS or not (lost or _asks_again(fault)):
                    raise
            else:
                return result
            time.sleep(FIRST_PAUSE_SECONDS * 2 ** (attempt - 1))
            attempt += 1

    @contextmanager
    def _connection(self) -> Iterator[Connection]:
        """A held connection if one is idle, else a new one: never more than there are threads."""
        try:
            connection = self._held.pop()
        except IndexError:
            connection = self.engine.connect()
        try:
            yield connection
        except DBAPIError as fault:
            # A commit that failed is not rolled back: the driver would keep its transaction, and the lock.
            if fault.connection_invalidated or _in_transaction(connection):
                connection.close()
            raise
        finally:
            if not connection.closed:
                self._held.append(connection)


def _empty_the_side_file(connection: Connection) -> None:
    """What was erased stays in SQLite's write-ahead file until it is copied and cut off.

    While another process reads, it is left to a later time: the file is cut off when the last one closes it.
    """
    if connection.dialect.name == "sqlite":
        raw = connection.connection.driver_connection
        assert isinstance(raw, sqlite3.Connection)  # noqa: S101 # the dialect says so
        raw.execute("PRAGMA wal_checkpoint(TRUNCATE)")


def _in_transaction(connection: Connection) -> bool:
    """Whether the driver still has a transaction open: psycopg's status is then another than IDLE, 0."""
    raw = connection.connection.driver_connection
    if isinstance(raw, sqlite3.Connection):
        return raw.in_transaction
    return raw is not None and bool(raw.info.transaction_status)


def _asks_again(fault: DBAPIError) -> bool:
    return getattr(fault.orig, "sqlstate", None) in {SERIALIZATION_FAILURE, DEADLOCK}


def _sqlite_engine(url: URL) -> Engine:
    path = Path(str(url.database))

    def connect() -> sqlite3.Connection:
        if not path.exists():
            path.touch(mode=0o600)  # health data; SQLite gives its side files the same mode
        # A held connection moves between threads only when it is closed.
        raw = sqlite3.connect(path, isolation_level=None, check_same_thread=False)
        for pragma in SQLITE_PRAGMAS:
            raw.execute(pragma)
        _write_ahead(raw)
        return raw

    engine = create_engine(
        url, poolclass=NullPool, creator=connect, execution_options=OPTIONS, hide_parameters=True
    )
    # No event listeners here: with any at all, every statement takes half as long again (measured).
    engine.dialect.do_begin = _take_the_write_lock  # type: ignore[method-assign]
    return engine


def _take_the_write_lock(dbapi_connection: PoolProxiedConnection) -> None:
    """Begins a transaction. The driver's own BEGIN takes no lock: two transactions that read and then
    write would lose one of the writes, or fail in the middle.
    """
    dbapi_connection.cursor().execute("BEGIN IMMEDIATE")


def _write_ahead(raw: sqlite3.Connection) -> None:
    """Sets the WAL mode. Two that do so to a new file at once get "locked" without any wait."""
    for attempt in range(1, WAL_ATTEMPTS + 1):
        try:
            raw.execute("PRAGMA journal_mode=WAL")
        except sqlite3.OperationalError as fault:
            if attempt == WAL_ATTEMPTS or fault.sqlite_errorcode != sqlite3.SQLITE_BUSY:
                raise
            time.sleep(WAL_PAUSE_SECONDS)
        else:
            return


def _postgresql_engine(url: URL) -> Engine:
    arguments = {"connect_timeout": CONNECT_SECONDS, "application_name": "boutwise"}
    return create_engine(
        url,
        poolclass=NullPool,
        connect_args=arguments,
        isolation_level="READ COMMITTED",
        execution_options=OPTIONS,
        hide_parameters=True,  # in the texts of faults: a traceback may end on a screen
    )
