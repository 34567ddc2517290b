"""Several processes over one PostgreSQL, and one behind a webhook: real ones, in real time, killed. Ours."""

import asyncio
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from dataclasses import dataclass
from datetime import timedelta
from pathlib import Path

import httpx
from sqlalchemy import URL

from bot.rehearsal import people
from tests.conftest import on_postgresql, on_sqlite
from tests.process.life import PATIENCE, boutwise, free_port
from tests.process.test_running import Clinic, clinic, stopped, words

TAKEN_OVER_WITHIN = timedelta(seconds=20)


@dataclass
class Houses:
    """The clinic with several processes."""

    clinic: Clinic

    async def start(
        self,
        *only: str,
        polls: int = 0,
        settings: dict[str, str] | None = None,
        wait: bool = True,
    ) -> int:
        """Start one more; its place. Returns when it has polled so often, or says that it runs."""
        house = self.clinic
        before = house.heard.polls
        more = {"BOUTWISE_OPS_BIND": "", **(settings or {})}
        arguments = ("--only", *only) if only else ()
        process = await boutwise("run", *arguments, settings=house.settings | more, log=house.log)
        house.started_here.append(process)
        up = words(house.log).count("Boutwise is running.") + 1 if wait and not polls else 0
        await house.heard.until(lambda: house.heard.polls >= before + polls, house.log)
        if up:
            await self.says("Boutwise is running.", up)
        return len(house.started_here) - 1

    async def says(self, line: str, times: int = 1) -> None:
        """Wait until something stands in the log so often; a process tells nobody when it writes."""
        async with asyncio.timeout(PATIENCE):
            while words(self.clinic.log).count(line) < times:  # noqa: ASYNC110 # as said
                await asyncio.sleep(0.05)

    async def kill(self, place: int) -> None:
        process = self.clinic.started_here[place]
        process.kill()
        await process.wait()

    async def help_for(self, account: int, times: int) -> timedelta:
        """How long an answer to a message takes."""
        people.say(self.clinic.world, account, "/help")
        before = self.clinic.world.now()
        await self.clinic.answered(account, "help-client", times)
        return self.clinic.world.now() - before


@asynccontextmanager
async def houses(url: URL, folder: Path) -> AsyncIterator[Houses]:
    async with clinic(url, folder) as house:
        yield Houses(house)


@on_postgresql
async def test_a_second_listener_stands_by_and_takes_over_when_the_first_is_killed(
    database_at: URL, tmp_path: Path
) -> None:
    """The second one does everything else meanwhile."""
    async with houses(database_at, tmp_path) as all_:
        house = all_.clinic
        (writer,) = house.practice.writers
        first = await all_.start("listen", polls=2)
        second = await all_.start()
        await all_.says("standing by: another process listens")
        assert await all_.help_for(writer, 1) < timedelta(seconds=5)
        await all_.kill(first)
        assert await all_.help_for(writer, 2) < TAKEN_OVER_WITHIN
        assert await stopped(house.started_here[second]) == 0
        assert house.ids(writer) == ["help-client"] * 2
        assert "poll failed" not in words(house.log)  # never two at once: the platform says 409


@on_sqlite
async def test_behind_a_webhook_it_answers_and_no_secret_comes_into_the_logs(
    database_at: URL, tmp_path: Path
) -> None:
    async with houses(database_at, tmp_path) as all_:
        house = all_.clinic
        port = free_port()
        url = f"http://127.0.0.1:{port}/updates"
        hook = {
            "BOUTWISE_WEBHOOK_URL": url,
            "BOUTWISE_WEBHOOK_BIND": f"127.0.0.1:{port}",
            "BOUTWISE_WEBHOOK_SECRET": "the-secret_of-the-webhook",
        }
        (writer,) = house.practice.writers
        people.say(house.world, writer, "/help")  # while nobody listens
        place = await all_.start(settings=hook)
        await house.answered(writer, "help-client")
        assert await all_.help_for(writer, 2) < timedelta(seconds=5)
        async with httpx.AsyncClient(trust_env=False) as http:
            assert (await http.post(url, json={"update_id": 1})).status_code == 403
        assert await stopped(house.started_here[place]) == 0
        assert house.heard.polls == 0
        assert words(house.log) == "Boutwise is running.\n"
        assert house.ids(writer) == ["help-client"] * 2
