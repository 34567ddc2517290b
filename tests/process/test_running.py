"""`boutwise run` as a practice has it: a process of its own, real time, ended by a service manager. Ours."""

import asyncio
import signal
import sys
from asyncio.subprocess import Process
from collections.abc import AsyncIterator, Callable
from contextlib import asynccontextmanager
from dataclasses import dataclass, field
from datetime import timedelta
from pathlib import Path

import httpx
from sqlalchemy import URL
from starlette.types import ASGIApp, Receive, Scope, Send

from bot.rehearsal import people
from bot.rehearsal.faults import Fault
from bot.rehearsal.server import create_app
from bot.rehearsal.serving import serving
from bot.rehearsal.world import World
from scheduler.clock import SystemClock
from scheduler.domain.people import Role
from scheduler.ports import Tx
from scheduler.usecases import join
from storage.engine import Database
from storage.keys import Keyring, new_key
from storage.store import SqlStore
from storage.vault import unlock
from tests.conftest import on_sqlite
from tests.process.crowd import settings_of
from tests.process.life import BARE, PATIENCE, ROOT, boutwise, free_port
from tests.process.practice import Practice, open_practice, texts

CANARY = "xylographer"
"""A word that no log line has by chance."""
STOPS_WITHIN = 5.0
"""Seconds. Service managers kill after some ten (common practice)."""
LOUD = """
import logging, sys
logging.basicConfig(level=logging.DEBUG)
from bot.cli import main
from bot.commands import run
quiet = run.set_up_logging
def loud():
    quiet()
    for name in ("asyncio", "httpx", "httpcore", "telegram", "sqlalchemy", "psycopg", "uvicorn"):
        logging.getLogger(name).setLevel(logging.DEBUG)
run.set_up_logging = loud
sys.exit(main(["run"]))
"""


class Heard:
    """An ASGI application before the stand-in's; says when the bot has asked something of it."""

    def __init__(self, app: ASGIApp) -> None:
        self._app = app
        self._asked = asyncio.Condition()
        self.polls = 0

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope.get("path", "").endswith("/getUpdates"):
            self.polls += 1
            await self._tell()
        await self._app(scope, receive, send)
        await self._tell()

    async def _tell(self) -> None:
        async with self._asked:
            self._asked.notify_all()

    async def until(self, true: Callable[[], object], log: Path) -> None:
        """Wait for something that a request of the bot brings about."""
        try:
            async with asyncio.timeout(PATIENCE), self._asked:
                await self._asked.wait_for(true)
        except TimeoutError:
            raise AssertionError(words(log)[-3000:]) from None


def words(log: Path) -> str:
    """What a bot has written on its standard streams."""
    return log.read_text(encoding="utf-8")


@dataclass(frozen=True, slots=True)
class Clinic:
    """A practice whose bot is not running yet."""

    world: World
    practice: Practice
    settings: dict[str, str]
    heard: Heard
    log: Path
    ops: str
    invitation: str
    """The code for somebody with the canary for a name."""
    started_here: list[Process] = field(default_factory=list)

    def ids(self, account: int) -> list[str]:
        """The texts that the bot has sent into a chat, in order, edits included."""
        said = [e.text for e in self.world.log if e.who == "bot" and e.chat_id == account]
        return [id_ for each in said for id_, _ in texts(each)]

    async def answered(self, account: int, id_: str, times: int = 1) -> None:
        await self.heard.until(lambda: self.ids(account).count(id_) >= times, self.log)

    async def started(self, *, loud: bool = False) -> Process:
        """`boutwise run`, up and polling; `loud` with the libraries' logs at DEBUG, those we silence too."""
        polls = self.heard.polls
        if loud:
            with self.log.open("ab") as told:
                process = await asyncio.create_subprocess_exec(
                    sys.executable, "-c", LOUD, cwd=ROOT, env=BARE | self.settings,
                    stdout=told, stderr=told,
                )  # fmt: skip
        else:
            process = await boutwise("run", settings=self.settings, log=self.log)
        self.started_here.append(process)
        # The first poll asks what was missed, the second waits for what comes.
        await self.heard.until(lambda: self.heard.polls >= polls + 2, self.log)
        return process


@asynccontextmanager
async def clinic(url: URL, folder: Path) -> AsyncIterator[Clinic]:
    """A clinician and two clients; the bot and the people read the real clock."""
    clock, key, port = SystemClock(), new_key(), free_port()
    world = World(clock.now)
    practice = open_practice(
        url, key, world, clock.now() - timedelta(hours=12), writers=1, pressers=0, hurt=1
    )
    heard = Heard(create_app(world))
    async with serving(heard) as address:
        settings = settings_of(url, key, world.token, address, port)
        code = _invited(url, key, practice.ids[practice.clinician])
        ops = f"http://127.0.0.1:{port}"
        house = Clinic(world, practice, settings, heard, folder / "bot.log", ops, code)
        try:
            yield house
        finally:
            for process in house.started_here:
                if process.returncode is None:
                    process.kill()
                    await process.wait()


def _invited(url: URL, key: str, clinician: int) -> str:
    database = Database(url, Keyring.parse(key))
    unlock(database)
    now = SystemClock().now()

    def work(tx: Tx) -> str:
        person = join.enrol(tx, None, Role.CLIENT, CANARY, "qps", clinician, now)
        return join.invite(tx, None, person.id, now)

    code = SqlStore(database).run_sync(work)
    database.close_sync()
    return code


async def stopped(process: Process) -> int:
    """Its exit code after SIGTERM; fails if it takes longer than a service manager may wait."""
    process.send_signal(signal.SIGTERM)
    return await asyncio.wait_for(process.wait(), STOPS_WITHIN)


async def test_it_answers_a_message_in_real_time_and_ends_when_told_to(
    database_at: URL, tmp_path: Path
) -> None:
    async with clinic(database_at, tmp_path) as house:
        process = await house.started()
        (writer,) = house.practice.writers
        people.say(house.world, writer, "/help")
        await house.answered(writer, "help-client")
        async with httpx.AsyncClient(base_url=house.ops, trust_env=False) as http:
            assert (await http.get("/readyz")).json() == {"ready": True}
            assert (await http.get("/clock")).status_code == 404
        assert await stopped(process) == 0
        assert words(house.log) == "Boutwise is running.\n"
        assert house.ids(writer) == ["help-client"]


@on_sqlite
async def test_started_again_it_answers_what_was_said_meanwhile_and_nothing_twice(
    database_at: URL, tmp_path: Path
) -> None:
    async with clinic(database_at, tmp_path) as house:
        (writer,) = house.practice.writers
        for round_ in (1, 2):
            people.say(house.world, writer, "/help")
            process = await house.started()
            await house.answered(writer, "help-client", round_)
            assert await stopped(process) == 0
        assert house.ids(writer) == ["help-client", "help-client"]


@on_sqlite
async def test_while_the_platform_is_slow_to_answer_it_still_ends_in_time(
    database_at: URL, tmp_path: Path
) -> None:
    async with clinic(database_at, tmp_path) as house:
        process = await house.started()
        (writer,) = house.practice.writers
        fault = house.world.faults.add(Fault("late", "sendMessage", writer, seconds=1))
        people.say(house.world, writer, "/help")
        await asyncio.wait_for(fault.reached.wait(), PATIENCE)
        assert await stopped(process) == 0
        assert house.ids(writer) == ["help-client"]


@on_sqlite
async def test_a_port_that_is_taken_and_a_token_that_is_refused_end_it_with_one_line(
    database_at: URL, tmp_path: Path
) -> None:
    async with clinic(database_at, tmp_path) as house, serving(house.heard) as taken:
        busy = {**house.settings, "BOUTWISE_OPS_BIND": taken.removeprefix("http://")}
        assert await ended(busy, house.log) == 1
        unknown = {**house.settings, "BOUTWISE_TOKEN": f"1:{CANARY}"}
        assert await ended(unknown, house.log) == 2
        gone = {**house.settings, "BOUTWISE_BOT_API_URL": "http://127.0.0.1:1"}
        assert await ended(gone, house.log) == 1
        port, token, platform = words(house.log).splitlines()
        assert "BOUTWISE_OPS_BIND cannot be served" in port
        assert "BOUTWISE_TOKEN is refused" in token
        assert "the platform cannot be reached" in platform
        assert CANARY not in token


async def ended(settings: dict[str, str], log: Path) -> int:
    process = await boutwise("run", settings=settings, log=log)
    return await asyncio.wait_for(process.wait(), PATIENCE)


async def test_nothing_that_people_say_or_are_called_and_no_secret_comes_into_the_logs(
    database_at: URL, tmp_path: Path
) -> None:
    """Through every path: a name, a free text, words about pain, a note, a file's name, and faults."""
    async with clinic(database_at, tmp_path) as house:
        world, practice = house.world, house.practice
        (writer,), (hurt,), dana = practice.writers, practice.hurt, practice.clinician
        process = await house.started(loud=True)
        await joins(house)
        people.say(world, writer, f"{CANARY} and nothing else")
        await house.answered(writer, "not-understood")
        people.say(world, hurt, f"my hip hurts, says the {CANARY}, 8 of 10")
        await house.answered(dana, "flag")
        await notes(house, dana, practice.ids[writer])
        await through_faults(house, writer)
        assert await stopped(process) == 0
        told = words(house.log)
    assert "DEBUG:telegram" in told  # it was loud
    assert "poll failed" in told
    assert CANARY not in told
    for secret in (world.token, world.token.partition(":")[2], house.settings["BOUTWISE_KEY"]):
        assert secret not in told
    assert house.invitation not in told


async def joins(house: Clinic) -> None:
    """Somebody with the canary for a name opens her invitation."""
    account = house.world.add_person(CANARY)
    people.say(house.world, account, f"/start {house.invitation}")
    await house.answered(account, "notice")


async def notes(house: Clinic, dana: int, client: int) -> None:
    """The clinician writes a note into a plan, and searches for somebody."""
    message = next(m for m in reversed(house.world.chats[dana].messages) if m.sender is None)
    people.forge(house.world, dana, message.message_id, f"cp:{client}")
    await house.answered(dana, "plan-card")
    people.forge(house.world, dana, message.message_id, "df:note")
    await house.answered(dana, "ask-plan-note")
    people.say(house.world, dana, f"mind the {CANARY}")
    await house.answered(dana, "plan-card", 2)
    assert CANARY in next(e.text for e in reversed(house.world.log) if "plan-card" in e.text)


async def through_faults(house: Clinic, writer: int) -> None:
    """The platform refuses, cuts the line and fails while it says the canary itself."""
    description = f"Bad Request: {CANARY}"
    house.world.faults.add(Fault("refuse", "sendMessage", writer, description=description))
    house.world.faults.add(Fault("drop-after", "sendMessage", writer))
    failing = house.world.faults.add(Fault("server-error", "getUpdates", status=502))
    for _ in range(3):
        people.say(house.world, writer, f"again the {CANARY}")
    people.send_file(house.world, writer, "document", f"{CANARY}.pdf")
    await house.answered(writer, "cannot-see-files")
    await house.heard.until(lambda: failing.hits, house.log)
