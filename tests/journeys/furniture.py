"""An invented practice, furnished by taps once for each engine, and copied for every test."""

from __future__ import annotations

import asyncio
import shutil
from collections.abc import AsyncIterator, Iterator
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pytest
from sqlalchemy import URL

from bot.rehearsal.stage import stage
from scheduler.domain.people import Role
from scheduler.ports import Tx
from scheduler.usecases import join
from storage.engine import Database, database_url
from storage.keys import Keyring
from storage.store import SqlStore
from storage.vault import unlock
from tests.conftest import MEMORY
from tests.journeys.desk import Desk
from tests.journeys.rooms import (
    ANN,
    BO,
    CLINICIAN_OF,
    CRISIS,
    EMERGENCY,
    GIL,
    IDS,
    JOINING,
    KIM,
    NAMES,
    PHONE,
    ROLES,
    START,
    UPDATES,
    ZONE,
    Room,
    Whole,
)

PRACTICE = {
    "name": "Alder Lane (invented)",
    "phone": PHONE,
    "emergency_number": EMERGENCY,
    "crisis_line": CRISIS,
    "answer_hours": "Mon to Fri, 9 to 5",
    "zone": ZONE.key,
}
CLIENT_PHONES = {ANN: "555 0142", GIL: "555 0143"}


async def enrol(room: Room, who: int) -> str:
    """Enrol somebody in the practice; the code of the invitation."""

    def work(tx: Tx) -> str:
        owner = IDS[CLINICIAN_OF[who]] if who in CLINICIAN_OF else None
        role = ROLES.get(who, Role.CLIENT)
        person = join.enrol(tx, None, role, NAMES[who], "qps", owner, room.now)
        assert person.id == IDS[who]
        return join.invite(tx, None, person.id, room.now)

    return await room.run(work)


async def furnish(room: Room) -> None:
    """Open the practice. Ann is ready, cleared and has a plan from today on; Gil is ready; Bo is invited."""
    for who in NAMES:
        code = await enrol(room, who)
        if who is not BO:
            await room.say(who, f"/start {code}")
        if who == KIM:
            for name, value in PRACTICE.items():
                await room.say(KIM, "/settings")
                await room.press(KIM, f"s:{name}")
                await room.say(KIM, value)
        if who in {ANN, GIL}:
            for button in JOINING:
                await room.press(who, button)
    await prescribe(room, ANN)
    await room.run(_phones)


def _phones(tx: Tx) -> None:
    """Clients' numbers are kept by the practice, not asked in chat (J4)."""
    for who, number in CLIENT_PHONES.items():
        tx.people.save_client(replace(tx.people.client(IDS[who]), phone=number))


async def prescribe(room: Room, client: int) -> None:
    """Clearance up to moderate, and 40 stomps in bouts of 10 on Monday and Thursday."""
    clinician = CLINICIAN_OF[client]
    await room.press(clinician, f"cr:{IDS[client]}")
    await room.press(clinician, f"cc:{IDS[client]}:moderate")
    await room.press(clinician, f"cp:{IDS[client]}")
    await room.press(clinician, "df:movement")
    await room.press(clinician, "dv:movement:stomp")
    await room.press(clinician, "dp")
    await room.press(clinician, "ds:0")


_templates: dict[str, Any] = {}
"""One furnished database for each engine and test process."""


def _open(url: URL) -> Database:
    database = Database(url, Keyring.parse("none"))
    unlock(database)
    return database


def _furnish(url: URL) -> None:
    database = _open(url)
    try:
        asyncio.run(furnish(Desk(SqlStore(database))))
    finally:
        database.close_sync()


@pytest.fixture(name="kept", scope="session")
def kept_fixture(sqlite_template: Path) -> Iterator[Kept]:
    """One database object whose file is replaced before every test: SQL is compiled once, not each time."""
    with TemporaryDirectory(prefix="boutwise-", dir=MEMORY) as scratch:
        template = Path(scratch) / "template.db"
        shutil.copyfile(sqlite_template, template)
        _furnish(database_url(f"sqlite:///{template}"))
        kept = Kept(template, Path(scratch) / "practice.db")
        yield kept
        kept.database.close_sync()


class Kept:
    """A furnished SQLite file, and a database over a copy of it."""

    def __init__(self, template: Path, path: Path) -> None:
        self.template, self.path = template, path
        shutil.copyfile(template, path)
        self.database = _open(database_url(f"sqlite:///{path}"))

    def fresh(self) -> Database:
        """The database as furnished, whatever the last test did."""
        while self.database._held:
            self.database._held.pop().close()
        self.database.engine.dispose()
        for end in ("", "-wal", "-shm"):
            Path(f"{self.path}{end}").unlink(missing_ok=True)
        shutil.copyfile(self.template, self.path)
        return self.database


@pytest.fixture(name="engine", params=["sqlite"])
def engine_fixture(request: pytest.FixtureRequest) -> str:
    """The database engine; `on_both` asks for both."""
    return str(request.param)


@pytest.fixture(name="furnished_database")
def database_fixture(request: pytest.FixtureRequest, engine: str) -> Iterator[Database]:
    """A furnished database, opened."""
    if engine == "sqlite":
        kept: Kept = request.getfixturevalue("kept")
        yield kept.fresh()
        return
    with _on_server(request) as url:
        database = _open(url)
        yield database
        database.close_sync()


@pytest.fixture(name="furnished_url")
def url_fixture(request: pytest.FixtureRequest, engine: str) -> Iterator[str]:
    """The URL of a furnished database."""
    if engine == "sqlite":
        kept: Kept = request.getfixturevalue("kept")
        with TemporaryDirectory(prefix="boutwise-", dir=MEMORY) as scratch:
            path = Path(scratch) / "practice.db"
            shutil.copyfile(kept.template, path)
            yield f"sqlite:///{path}"
        return
    with _on_server(request) as url:
        yield url.render_as_string(hide_password=False)


@contextmanager
def _on_server(request: pytest.FixtureRequest) -> Iterator[URL]:
    """The URL of a furnished database on the embedded PostgreSQL server."""
    server = request.getfixturevalue("server")
    if "postgresql" not in _templates:
        template: URL = server.create()
        _furnish(template)
        _templates["postgresql"] = template.database
    url: URL = server.create(_templates["postgresql"])
    yield url
    server.drop(url)


@pytest.fixture(name="desk")
async def desk_fixture(furnished_database: Database) -> Desk:
    """A furnished practice on Monday at 05:00, without the network."""
    return Desk(SqlStore(furnished_database), updates=UPDATES)


@pytest.fixture(name="whole")
async def whole_fixture(furnished_url: str, loopback: None) -> AsyncIterator[Whole]:
    """A furnished practice on Monday at 05:00, with everything running."""
    async with stage(furnished_url, START, world_start=UPDATES) as behind:
        for who, name in NAMES.items():
            assert behind.world.add_person(name) == who
            behind.world.people[who].started = who != BO
        yield Whole(behind)
