"""Logs hold ids and kinds only: never texts, names, pain scores or tokens (D2). All ours.

What a running bot writes is read in `tests/process/test_running.py`; here, what it could write.
"""

import ast
import io
import logging
from collections.abc import Iterator
from pathlib import Path

import pytest
from sqlalchemy import text
from sqlalchemy.exc import SQLAlchemyError

from bot.logs import bare_record
from storage.engine import Database
from tests.conftest import on_sqlite

ROOT = Path(__file__).parents[2]
CANARY = "xylographer"
LEVELS = {"debug", "info", "warning", "error", "critical", "exception", "log", "msg"}
IDS = {"update", "outbox", "attempt", "client", "person", "worker", "count", "seconds", "pending"}
"""Numbers."""
KINDS = {"error", "reason"}
"""Names of exceptions and places in the source, see `Work._failed`."""


def calls() -> Iterator[tuple[str, ast.Call]]:
    """Every call of a logger in our source, with the place where it stands."""
    for folder in ("bot", "scheduler", "storage"):
        for path in sorted((ROOT / folder).rglob("*.py")):
            for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
                if not isinstance(node, ast.Call) or not isinstance(node.func, ast.Attribute):
                    continue
                on = node.func.value
                name = on.id if isinstance(on, ast.Name) else getattr(on, "attr", "")
                if node.func.attr in LEVELS and name in {"log", "logger", "logging", "_log"}:
                    yield f"{path.relative_to(ROOT)}:{node.lineno}", node


def test_a_log_line_says_a_fixed_event_with_ids_and_kinds() -> None:
    found, faults = 0, []
    for place, call in calls():
        found += 1
        event = call.args[0] if len(call.args) == 1 else None
        if not (isinstance(event, ast.Constant) and isinstance(event.value, str)):
            faults.append(f"{place}: its event is no constant")
        faults += [f"{place}: {each.arg}" for each in call.keywords if each.arg not in IDS | KINDS]
        for each in call.keywords:
            said = ast.unparse(each.value)
            if each.arg == "error" and not said.endswith(".__name__"):
                faults.append(f"{place}: {said} may hold words")
            if each.arg in IDS and isinstance(each.value, ast.JoinedStr):
                faults.append(f"{place}: {said} is no id")
    assert found >= 8
    assert not faults, "\n".join(faults)


@pytest.fixture
def log() -> Iterator[io.StringIO]:
    """What every logger writes at DEBUG, by an operator's own handler, with our records."""
    before, root = logging.getLogRecordFactory(), logging.getLogger()
    written, level = io.StringIO(), root.level
    handler = logging.StreamHandler(written)
    handler.setFormatter(logging.Formatter("%(levelname)s:%(name)s:%(message)s"))
    logging.setLogRecordFactory(bare_record)
    root.addHandler(handler)
    root.setLevel(logging.DEBUG)
    yield written
    root.setLevel(level)
    root.removeHandler(handler)
    logging.setLogRecordFactory(before)


def test_a_library_says_where_it_was_and_what_kind_of_fault_and_no_more(log: io.StringIO) -> None:
    library = logging.getLogger("a.library")
    library.debug("POST /bot%s/sendMessage %s", CANARY, {"text": CANARY})
    try:
        int(CANARY)
    except ValueError:
        library.exception("task with %s failed", CANARY, stack_info=True)
    first, second = log.getvalue().splitlines()
    assert first.startswith("DEBUG:a.library:test_logs:")
    assert second.startswith("ERROR:a.library:test_logs:")
    assert second.endswith(" ValueError")


@on_sqlite
def test_a_fault_of_the_database_does_not_repeat_what_was_to_be_written(
    database: Database,
) -> None:
    """Its traceback may end on the screen of whoever runs a command."""
    with pytest.raises(SQLAlchemyError) as fault:
        database.run_sync(
            lambda it: it.execute(text("INSERT INTO nowhere VALUES (:name)"), {"name": CANARY})
        )
    assert "nowhere" in str(fault.value)
    assert CANARY not in str(fault.value)
