"""The store under test is the real one: what asks for `database` runs on both engines."""

import os
import shutil
import tempfile
from collections.abc import Iterator
from contextlib import ExitStack
from pathlib import Path
from typing import NoReturn

import pytest
from hypothesis import settings
from sqlalchemy import URL, make_url

from storage.engine import Database, database_url
from storage.keys import Keyring, new_key
from storage.store import SqlStore
from storage.vault import unlock
from tests.postgres import NoServerError, Server, embedded, migrate

# The same examples at every run, however slow the machine; `--hypothesis-profile=default` draws others.
settings.register_profile("suite", deadline=None, derandomize=True)
settings.load_profile("suite")

POSTGRESQL = pytest.param("postgresql", marks=pytest.mark.postgres)
ENGINES = ["sqlite", POSTGRESQL]
# For what only one engine has a notion of: `@on_postgresql` over a test that takes `database`.
on_sqlite = pytest.mark.parametrize("database_at", ["sqlite"], indirect=True)
BOTH = os.environ.get("BOUTWISE_JOURNEYS") == "both"  # noqa: TID251 # a switch of the test run
# For journeys whose rules do not differ by engine: on SQLite, unless BOUTWISE_JOURNEYS=both asks for more.
briefly = pytest.mark.usefixtures("tmp_path") if BOTH else on_sqlite
on_postgresql = pytest.mark.parametrize("database_at", [POSTGRESQL], indirect=True)
# Test data need not survive a power cut. Durability itself is asserted where it matters.
FASTER_SERVER = ["fsync = off", "full_page_writes = off", "deadlock_timeout = '50ms'"]

MEMORY = "/dev/shm" if os.access("/dev/shm", os.W_OK) else None  # else the usual place
"""Where test databases lie: their thousands of commits wait for no disk."""


@pytest.fixture(scope="session")
def server() -> Iterator[Server]:
    """An embedded PostgreSQL server, one for each test process that needs it."""
    with ExitStack() as stack:
        try:
            running = stack.enter_context(embedded(MEMORY, FASTER_SERVER))
        except NoServerError as fault:
            _without_postgresql(
                f"PostgreSQL is not tested: its embedded server does not start: {fault}"
            )
        yield running


def _without_postgresql(reason: str) -> NoReturn:
    required = os.environ.get("BOUTWISE_REQUIRE", "")  # noqa: TID251 - a switch of the test run
    if "postgres" in required.split(","):
        pytest.fail(reason)
    pytest.skip(reason)


@pytest.fixture(scope="session")
def sqlite_template(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("sqlite") / "migrated.db"
    migrate(make_url(f"sqlite+pysqlite:///{path}"))
    return path


@pytest.fixture(params=ENGINES)
def database_at(request: pytest.FixtureRequest) -> Iterator[URL]:
    """The URL of a fresh database with the current schema, on each engine in turn."""
    if request.param == "sqlite":
        with tempfile.TemporaryDirectory(prefix="boutwise-", dir=MEMORY) as folder:
            path = Path(folder) / "boutwise.db"
            shutil.copyfile(request.getfixturevalue("sqlite_template"), path)
            yield database_url(f"sqlite:///{path}")
    else:
        server: Server = request.getfixturevalue("server")
        url = server.create()
        yield url
        server.drop(url)


@pytest.fixture(params=ENGINES)
def empty_at(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[URL]:
    """The URL of a database without any schema, on each engine in turn."""
    if request.param == "sqlite":
        yield database_url(f"sqlite:///{tmp_path / 'empty.db'}")
    else:
        server: Server = request.getfixturevalue("server")
        url = server.create("template0")
        yield url
        server.drop(url)


@pytest.fixture
def database(database_at: URL) -> Iterator[Database]:
    """A fresh, unlocked database with the current schema and a key, on each engine in turn."""
    database = Database(database_at, Keyring.parse(new_key()))
    unlock(database)
    yield database
    database.close_sync()


@pytest.fixture
def loopback(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """The environment in which the bot talks to a stand-in server in the test's own process."""
    monkeypatch.setenv("PTB_TIMEDELTA", "true")  # without it the library warns of a coming change
    # Loopback needs no certificates; loading the usual ones takes longer than a journey's day.
    monkeypatch.delenv("SSL_CERT_FILE", raising=False)
    monkeypatch.setenv("SSL_CERT_DIR", str(tmp_path))


@pytest.fixture
def store(database: Database) -> SqlStore:
    """A fresh store, on each engine in turn."""
    return SqlStore(database)
