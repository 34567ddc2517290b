"""The schema and its way there, on both engines. All ours."""

import logging
import shutil
import subprocess
import sys
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import ExitStack
from pathlib import Path
from typing import IO

import pytest
from alembic.autogenerate import compare_metadata
from alembic.runtime.migration import MigrationContext
from sqlalchemy import URL, Connection, inspect
from sqlalchemy.exc import DBAPIError

import storage
from storage import migrate
from storage.engine import Database
from storage.keys import Keyring
from storage.migrate import BrokenReferencesError, current, needed, upgrade
from storage.tables import metadata
from storage.vault import unlock
from tests.conftest import POSTGRESQL

MIGRATIONS = Path(storage.__file__).parent / "migrations"
REVISION = """
import sqlalchemy as sa
from alembic import op

revision, down_revision = {revision!r}, {before!r}


def upgrade() -> None:
    {body}
"""
PARENT_AND_CHILD = """op.create_table("parent", sa.Column("id", sa.Integer, primary_key=True))
    reference = sa.ForeignKey("parent.id", name="fk_child_parent", ondelete="CASCADE")
    op.create_table(
        "child",
        sa.Column("id", sa.Integer, primary_key=True),
        sa.Column("parent", sa.Integer, reference, nullable=False),
    )
    op.execute("INSERT INTO parent VALUES (1)")
    op.execute("INSERT INTO child VALUES (1, 1)")"""
STARTING = """
import sys
from storage import migrate
from storage.engine import Database, database_url
from storage.keys import Keyring

database = Database(database_url(sys.argv[1]), Keyring.parse("none"))
migrate.SCRIPTS = sys.argv[2]
print("ready", flush=True)
sys.stdin.read()
migrate.upgrade(database)
print("at", migrate.current(database), flush=True)
database.close_sync()
"""
REBUILD_PARENT = """with op.batch_alter_table("parent", recreate="auto") as parent:
        parent.add_column(sa.Column("name", sa.Text))
        parent.alter_column("id", type_=sa.BigInteger)"""


@pytest.fixture
def empty(empty_at: URL) -> Iterator[Database]:
    database = Database(empty_at, Keyring.parse("none"))
    yield database
    database.close_sync()


@pytest.fixture
def story(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> "Story":
    """Migrations of the test's own, beside none."""
    scripts = tmp_path / "scripts"
    shutil.copytree(MIGRATIONS, scripts, ignore=shutil.ignore_patterns("0*", "__pycache__"))
    monkeypatch.setattr(migrate, "SCRIPTS", str(scripts))
    return Story(scripts / "versions")


class Story:
    def __init__(self, directory: Path) -> None:
        self.directory = directory
        self.last: str | None = None

    def goes_on(self, revision: str, body: str) -> None:
        text = REVISION.format(revision=revision, before=self.last, body=body)
        (self.directory / f"{revision}.py").write_text(text)
        self.last = revision

    def forgets(self, revision: str) -> None:
        (self.directory / f"{revision}.py").unlink()


def tables(database: Database) -> set[str]:
    return set(database.run_sync(lambda connection: inspect(connection).get_table_names()))


def count(database: Database, name: str) -> int:
    query = f"SELECT count(*) FROM {name}"
    number: int = database.run_sync(lambda it: it.exec_driver_sql(query).scalar_one())
    return number


def test_an_empty_database_is_brought_to_the_newest_schema(empty: Database) -> None:
    assert needed(empty)
    assert current(empty) is None
    upgrade(empty)
    assert not needed(empty)
    assert current(empty) is not None
    unlock(empty)


def test_upgrading_twice_is_harmless(empty: Database) -> None:
    upgrade(empty)
    unlock(empty)
    before = empty.run_sync(lambda it: it.exec_driver_sql("SELECT * FROM secret").all())
    upgrade(empty)
    assert empty.run_sync(lambda it: it.exec_driver_sql("SELECT * FROM secret").all()) == before


def test_the_migrations_lead_to_the_tables_that_the_code_declares(database: Database) -> None:
    def differences(connection: Connection) -> list[object]:
        return list(compare_metadata(MigrationContext.configure(connection), metadata))

    assert database.run_sync(differences) == []


def test_of_several_that_start_at_once_one_migrates(
    empty: Database, empty_at: URL, story: Story
) -> None:
    story.goes_on("1", 'op.create_table("one", sa.Column("id", sa.Integer))')
    story.goes_on("2", 'op.execute("INSERT INTO one VALUES (1)")')
    url = empty_at.render_as_string(hide_password=False)
    command = [sys.executable, "-c", STARTING, url, migrate.SCRIPTS]
    with ExitStack() as running:
        programs = [
            running.enter_context(
                subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)
            )
            for _ in range(3)
        ]
        assert [_line(program.stdout) for program in programs] == ["ready"] * 3
        for program in programs:
            assert program.stdin is not None
            program.stdin.close()  # all together now
        assert [_line(program.stdout) for program in programs] == ["at 2"] * 3
    assert [program.returncode for program in programs] == [0] * 3
    assert count(empty, "one") == 1


def _line(stream: IO[str] | None) -> str:
    assert stream is not None
    return stream.readline().strip()


@pytest.mark.parametrize("empty_at", [POSTGRESQL], indirect=True)
def test_who_comes_second_waits_for_the_one_who_migrates(empty: Database) -> None:
    """On SQLite the write lock sees to it; PostgreSQL would let both create the first table."""
    waiting = "SELECT count(*) FROM pg_locks WHERE locktype = 'advisory' AND NOT granted"
    with ThreadPoolExecutor(1) as threads:
        with migrate._locked(empty) as first:
            second = threads.submit(upgrade, empty)
            while not second.done() and not first.exec_driver_sql(waiting).scalar_one():
                pass
            assert not second.done()
        second.result()
    assert not needed(empty)


def test_a_migration_that_fails_leaves_nothing_behind(empty: Database, story: Story) -> None:
    story.goes_on("1", 'op.create_table("one", sa.Column("id", sa.Integer))')
    story.goes_on("2", 'op.execute("INSERT INTO nowhere VALUES (1)")')
    with pytest.raises(DBAPIError):
        upgrade(empty)
    assert tables(empty) == set()
    assert current(empty) is None


def test_rebuilding_a_table_keeps_the_rows_that_refer_to_it(empty: Database, story: Story) -> None:
    story.goes_on("1", PARENT_AND_CHILD)
    story.goes_on("2", REBUILD_PARENT)
    upgrade(empty)
    assert (count(empty, "parent"), count(empty, "child")) == (1, 1)


def test_after_a_migration_references_are_checked_again(empty: Database, story: Story) -> None:
    story.goes_on("1", PARENT_AND_CHILD)
    upgrade(empty)
    with pytest.raises(DBAPIError):
        empty.run_sync(lambda it: it.exec_driver_sql("INSERT INTO child VALUES (2, 7)"))


def test_a_migration_that_breaks_a_reference_is_undone(empty: Database, story: Story) -> None:
    story.goes_on("1", PARENT_AND_CHILD)
    upgrade(empty)
    story.goes_on("2", 'op.execute("INSERT INTO child VALUES (2, 7)")')
    with pytest.raises((BrokenReferencesError, DBAPIError), match="child"):
        upgrade(empty)
    assert current(empty) == "1"
    assert count(empty, "child") == 1


def test_code_of_yesterday_leaves_the_schema_of_today_alone(empty: Database, story: Story) -> None:
    story.goes_on("1", 'op.create_table("one", sa.Column("id", sa.Integer))')
    story.goes_on("2", 'op.add_column("one", sa.Column("name", sa.Text))')
    upgrade(empty)
    story.forgets("2")
    assert not needed(empty)
    upgrade(empty)
    assert current(empty) == "2"


def test_a_program_without_migrations_needs_none(empty: Database, story: Story) -> None:
    assert not needed(empty)
    upgrade(empty)
    assert current(empty) is None


def test_migrating_leaves_the_logs_as_they_were_set_up(empty: Database) -> None:
    root = logging.getLogger()
    before = (root.level, list(root.handlers), logging.getLogger("alembic").level)
    upgrade(empty)
    assert (root.level, list(root.handlers), logging.getLogger("alembic").level) == before


def test_a_revision_is_written_from_what_the_tables_have_more(
    story: Story, capsys: pytest.CaptureFixture[str]
) -> None:
    migrate._write_revision("the first tables")
    (written,) = story.directory.glob("0*.py")
    text = written.read_text()
    assert written.name == "0001_the_first_tables.py"
    assert "op.create_table('secret'" in text
    assert "sa.Column('value', sa.Text(), nullable=False)" in text  # not our own column type
    assert "storage" not in text


def test_the_command_that_writes_revisions_says_how_it_is_used() -> None:
    command = [sys.executable, "-m", "storage.migrate"]
    result = subprocess.run(command, capture_output=True, text=True, check=False)
    assert (result.returncode, result.stdout) == (1, "")
    assert result.stderr == 'usage: python -m storage.migrate "what changes"\n'
