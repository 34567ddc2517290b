"""Brings a database to the schema that this code expects.

`python -m storage.migrate "what changes"` writes the next revision from the difference between the
tables and the revisions so far; read it before you keep it. Revisions only add, so that the code
before still runs on the schema after; there are no downgrades, there are backups.
"""

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory

from alembic import command
from alembic.config import Config
from alembic.runtime.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import Connection

from storage.engine import Database, database_url
from storage.keys import Keyring

SCRIPTS = "storage:migrations"
ADVISORY_LOCK = 0x626F7574  # "bout"; any number that no other program uses in the same database


class BrokenReferencesError(Exception):
    """A migration left rows that refer to nothing; it was rolled back. `tables`: where they are."""

    def __init__(self, tables: list[str]) -> None:
        super().__init__(f"The migration would leave broken references in {', '.join(tables)}.")
        self.tables = tables


def upgrade(database: Database) -> None:
    """Applies what is missing, all of it or nothing; harmless when nothing is. Blocks.

    Of several processes that start at once, one migrates, and the others wait and find it done.
    A database that newer code has migrated further is left as it is.
    """
    with _locked(database) as connection:
        if _missing(connection):
            command.upgrade(_config(connection), "head")
            _check_references(connection)


def current(database: Database) -> str | None:
    """The revision that the database is at; None if it is empty."""
    return database.run_sync(_revision)


def needed(database: Database) -> bool:
    """Whether `upgrade` would do anything."""
    return database.run_sync(_missing)


@contextmanager
def _locked(database: Database) -> Iterator[Connection]:
    """A transaction in which the schema may be changed, on a connection for it alone."""
    with database.engine.connect() as connection:
        if database.dialect == "sqlite":
            # Altering copies and drops a table, which must not take along the rows that refer to
            # it. Works outside transactions only, so it goes past SQLAlchemy, which begins one.
            connection.connection.cursor().execute("PRAGMA foreign_keys=OFF")
        with connection.begin():
            if database.dialect == "postgresql":
                connection.exec_driver_sql(f"SELECT pg_advisory_xact_lock({ADVISORY_LOCK})")
            yield connection


def _check_references(connection: Connection) -> None:
    if connection.dialect.name != "sqlite":
        return  # it checks by itself
    broken = connection.exec_driver_sql("PRAGMA foreign_key_check").scalars().all()
    if broken:
        raise BrokenReferencesError(sorted(set(broken)))


def _missing(connection: Connection) -> bool:
    scripts = ScriptDirectory.from_config(_config(connection))
    known = [script.revision for script in scripts.walk_revisions()]
    revision = _revision(connection)
    return bool(known) and revision != known[0] and (revision is None or revision in known)


def _revision(connection: Connection) -> str | None:
    return MigrationContext.configure(connection).get_current_revision()


def _config(connection: Connection) -> Config:
    config = Config(attributes={"connection": connection})
    config.set_main_option("script_location", SCRIPTS)
    config.set_main_option("path_separator", "os")
    return config


def _write_revision(message: str) -> None:
    with TemporaryDirectory() as directory:
        url = database_url(f"sqlite:///{Path(directory) / 'scratch.db'}")
        database = Database(url, Keyring.parse("none"))
        upgrade(database)
        with _locked(database) as connection:
            config = _config(connection)
            scripts = ScriptDirectory.from_config(config)
            number = len(list(scripts.walk_revisions())) + 1
            command.revision(config, message, autogenerate=True, rev_id=f"{number:04}")
        database.close_sync()


if __name__ == "__main__":
    if len(sys.argv) != 2:  # noqa: PLR2004 - the program and the message
        sys.exit('usage: python -m storage.migrate "what changes"')
    _write_revision(sys.argv[1])
