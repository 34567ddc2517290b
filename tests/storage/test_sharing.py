"""Transactions that share a commit on SQLite. Source: lang_transaction.html of SQLite, second-hand."""

import asyncio
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any

import pytest
from sqlalchemy import Connection, event, text

from storage import sharing
from storage.engine import Database, database_url
from storage.keys import Keyring

PATIENCE_SECONDS = 10  # only ever waited in full by a failing test


@pytest.fixture
def notes(tmp_path: Any) -> Iterator[Database]:
    database = Database(database_url(f"sqlite:///{tmp_path / 'notes.db'}"), Keyring.parse("none"))
    database.run_sync(lambda c: c.execute(text("CREATE TABLE note (words TEXT UNIQUE)")).close())
    yield database
    database.close_sync()


def note(words: str) -> Callable[[Connection], str]:
    def work(connection: Connection) -> str:
        connection.execute(text("INSERT INTO note VALUES (:words)"), {"words": words})
        return words

    return work


def failing(words: str) -> Callable[[Connection], str]:
    def work(connection: Connection) -> str:
        note(words)(connection)
        raise LookupError(words)

    return work


def all_notes(connection: Connection) -> list[str]:
    return list(connection.execute(text("SELECT words FROM note ORDER BY rowid")).scalars())


@contextmanager
def counted(database: Database) -> Iterator[list[int]]:
    commits: list[int] = []

    def count(_: Connection) -> None:
        commits.append(1)

    event.listen(database.engine, "commit", count)
    yield commits
    event.remove(database.engine, "commit", count)


async def while_one_runs(
    database: Database, *works: Callable[[Connection], Any], alone: bool = False
) -> list[Any]:
    """What becomes of `works` that come while another transaction is under way, which is well again."""
    go_on = threading.Event()
    first = asyncio.create_task(database.run(lambda _: go_on.wait(PATIENCE_SECONDS), alone=True))
    others = [asyncio.create_task(database.run(work, alone=alone)) for work in works]
    await asyncio.sleep(0)  # lets the tasks reach the queue; no time passes
    go_on.set()
    assert await first
    return await asyncio.gather(*others, return_exceptions=True)


@pytest.fixture
def patient(monkeypatch: pytest.MonkeyPatch) -> None:
    """However slow the machine is, those that wait are let in."""
    monkeypatch.setattr(sharing, "NO_MORE_AFTER", float(PATIENCE_SECONDS))


@pytest.mark.usefixtures("patient")
async def test_those_that_wait_together_are_committed_together_and_in_order(
    notes: Database,
) -> None:
    with counted(notes) as commits:
        words = [f"{n}" for n in range(10)]
        assert await while_one_runs(notes, *map(note, words)) == words
    assert len(commits) == 2
    assert await notes.run(all_notes) == words


@pytest.mark.usefixtures("patient")
async def test_nobody_is_answered_before_the_commit(notes: Database) -> None:
    answered: list[str] = []
    before: list[list[str]] = []

    def at_commit(_: Connection) -> None:
        before.append(list(answered))

    async def told(words: str) -> None:
        answered.append(await notes.run(note(words)))

    event.listen(notes.engine, "commit", at_commit)
    await asyncio.gather(*(told(f"{n}") for n in range(5)))
    event.remove(notes.engine, "commit", at_commit)
    assert sorted(answered) == ["0", "1", "2", "3", "4"]
    for seen, later in zip(before, [*before[1:], answered], strict=True):
        assert len(seen) < len(later)


@pytest.mark.usefixtures("patient")
async def test_a_fault_of_one_takes_back_nothing_of_the_others(notes: Database) -> None:
    found = await while_one_runs(notes, note("a"), failing("b"), note("c"), note("a"))
    assert found[0] == "a"
    assert isinstance(found[1], LookupError)
    assert found[2] == "c"
    assert isinstance(found[3], Exception)  # the same note again is refused by the database
    assert await notes.run(all_notes) == ["a", "c"]


@pytest.mark.usefixtures("patient")
async def test_a_worker_that_dies_in_the_middle_leaves_nothing_of_any(notes: Database) -> None:
    class EndError(BaseException):
        """The end of the process."""

    def dies(_: Connection) -> None:
        raise EndError

    found = await while_one_runs(notes, note("a"), dies, note("b"))
    assert [type(each) for each in found[:2]] == [EndError, EndError]
    assert "a" not in await notes.run(all_notes)


async def test_what_takes_long_shares_no_commit(notes: Database) -> None:
    with counted(notes) as commits:
        assert await while_one_runs(notes, note("a"), note("b"), alone=True) == ["a", "b"]
    assert len(commits) == 3


async def test_no_more_share_a_commit_than_fit_into_its_time(
    notes: Database, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sharing, "NO_MORE_AFTER", 0.0)
    with counted(notes) as commits:
        await while_one_runs(notes, note("a"), note("b"))
    assert len(commits) == 3


@pytest.mark.usefixtures("patient")
async def test_no_more_share_a_commit_than_its_number(
    notes: Database, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sharing, "AT_MOST", 2)
    with counted(notes) as commits:
        await while_one_runs(notes, note("a"), note("b"), note("c"))
    assert len(commits) == 3
