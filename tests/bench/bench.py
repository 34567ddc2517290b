"""Where a run of the bench works: its sizes, its folder, its databases."""

from __future__ import annotations

import shutil
import tempfile
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from itertools import count
from pathlib import Path
from typing import Literal

from sqlalchemy import URL

from storage.engine import database_url
from tests.postgres import Server, embedded, migrate

Engine = Literal["sqlite", "postgresql"]
ENGINES: tuple[Engine, ...] = ("sqlite", "postgresql")


class Bench:
    """One run. Every commit of its databases waits for the disk, as in a practice, if there is one
    below `folder`.
    """

    def __init__(self, folder: Path, stack: ExitStack, *, small: bool) -> None:
        self.folder, self.small = folder, small
        self.rounds = 3 if small else 5
        self._stack = stack
        self._server: Server | None = None
        self._files = count(1)

    def size(self, full: int, small: int) -> int:
        """The size of the page, or the one that ends soon."""
        return small if self.small else full

    @property
    def server(self) -> Server:
        """The embedded PostgreSQL server with its own default settings, started when first asked for."""
        if self._server is None:
            self._server = self._stack.enter_context(embedded(str(self.folder)))
        return self._server

    def path(self, name: str) -> Path:
        """A file that is not there yet."""
        return self.folder / f"{next(self._files)}-{name}"

    @contextmanager
    def database(self, engine: Engine, template: URL | None = None) -> Iterator[URL]:
        """A fresh database with the current schema, or a copy of one that nobody is connected to."""
        url = self._create(engine, template)
        try:
            yield url
        finally:
            self._drop(url)

    @contextmanager
    def empty(self) -> Iterator[URL]:
        """A PostgreSQL database without any schema."""
        url = self.server.create("template0")
        try:
            yield url
        finally:
            self._drop(url)

    def _create(self, engine: Engine, template: URL | None) -> URL:
        if engine == "postgresql":
            return self.server.create((template and template.database) or "template_migrated")
        path = self.path("boutwise.db")
        url = database_url(f"sqlite:///{path}")
        if template is None:
            migrate(url)
        else:
            shutil.copyfile(str(template.database), path)
        return url

    def _drop(self, url: URL) -> None:
        if url.get_backend_name() == "postgresql":
            self.server.drop(url)
        else:
            for end in ("", "-wal", "-shm"):
                Path(f"{url.database}{end}").unlink(missing_ok=True)


@contextmanager
def open_bench(*, small: bool, below: str | None = None) -> Iterator[Bench]:
    """A run's place, below a folder or the usual one, until the block ends."""
    made = tempfile.TemporaryDirectory(prefix="boutwise-bench-", dir=below)
    with made as folder, ExitStack() as stack:
        Path(folder).chmod(0o755)  # the database server may run as somebody else
        yield Bench(Path(folder), stack, small=small)
