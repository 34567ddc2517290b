"""What a bot on a stage needs of the environment."""

import shutil
import tempfile
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from sqlalchemy import URL

from storage.engine import database_url
from tests.conftest import ENGINES, MEMORY


@pytest.fixture
def quick_stage(monkeypatch: pytest.MonkeyPatch, loopback: None) -> pytest.MonkeyPatch:
    """For what a test changes of the program, on a stage that needs nothing of the network."""
    return monkeypatch


@pytest.fixture(params=ENGINES)
def fresh(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[Callable[[], URL]]:
    """Makes fresh databases with the current schema, as many as are asked for, on each engine in turn."""
    made: list[URL] = []
    with tempfile.TemporaryDirectory(prefix="boutwise-", dir=MEMORY) as folder:

        def make() -> URL:
            if request.param == "sqlite":
                path = Path(folder) / f"{len(made)}.db"
                shutil.copyfile(request.getfixturevalue("sqlite_template"), path)
                made.append(database_url(f"sqlite:///{path}"))
            else:
                made.append(request.getfixturevalue("server").create())
            return made[-1]

        yield make
    if request.param == "postgresql":
        for url in made:
            request.getfixturevalue("server").drop(url)
