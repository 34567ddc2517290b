"""Several processes over one PostgreSQL, and one behind a webhook: real ones, in real time, killed. Ours."""

import asyncio
from collections import Counter
from collections.abc import AsyncIterator, Callable
from contextlib import asynccontextmanager
from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import pairwise
from pathlib import Path
from typing import TypeVar

import httpx
from sqlalchemy import URL

from bot.rehearsal import people
from scheduler.clock import SystemClock
from scheduler.domain.messages import Lane, message
from scheduler.ports import Outgoing, Tx
from scheduler.usecases import outbox
from scheduler.usecases.outbox import REQUEST_LEASE
from storage.engine import Database, database_url
from storage.keys import Keyring
from storage.store import SqlStore
from storage.vault import unlock
from tests.conftest import on_postgresql, on_sqlite
from tests.process.life import PATIENCE, boutwise, free_port
from tests.process.test_running import Clinic, clinic, stopped, words

Result = TypeVar("Result")

TAKEN_OVER_WITHIN = timedelta(seconds=20)
RATE = 40
CROWD = 200
SPAN, JITTER = 2.0, 0.25
"""Seconds. From its place in the line to its acceptance a message takes longer or shorter by so much."""


@dataclass
class Houses:
    """The clinic with several processes."""

    clinic: Clinic

    async def start(
        self, *only: str, polls: int = 0, settings: dict[str, str] | None = None
    ) -> int:
        """Start one more; its place. `polls`: return when it has polled so often."""
        house = self.clinic
        before = house.heard.polls
        more = {"BOUTWISE_OPS_BIND": "", **(settings or {})}
        arguments = ("--only", *only) if only else ()
        process = await boutwise("run", *arguments, settings=house.settings | more, log=house.log)
        house.started_here.append(process)
        up = words(house.log).count("Boutwise is running.") + 1 if polls == 0 else 0
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


def in_store(house: Clinic, work: Callable[[Tx], Result]) -> Result:
    """Do something in the store of running processes."""
    database = Database(
        database_url(house.settings["BOUTWISE_DATABASE_URL"]),
        Keyring.parse(house.settings["BOUTWISE_KEY"]),
    )
    unlock(database)
    try:
        return SqlStore(database).run_sync(work)
    finally:
        database.close_sync()


def crowd(house: Clinic) -> list[int]:
    """A message like a prompt, never to be sent twice, to each of a crowd, all due in this moment."""
    accounts = [house.world.add_person(f"Invented {n}") for n in range(CROWD)]
    now = house.world.now()

    def work(tx: Tx) -> None:
        for account in accounts:
            house.world.people[account].started = True
            said = message("help")
            key = f"crowd:{account}"
            tx.outbox.add(Outgoing(key, Lane.PROMPT, said, chat=account, language="qps"), now)

    in_store(house, work)
    return accounts


def accepted(house: Clinic, accounts: list[int]) -> list[datetime]:
    """When each message to the crowd was accepted, in order."""
    return [e.at for e in house.world.log if e.method == "sendMessage" and e.chat_id in accounts]


def after_the_lease(tx: Tx) -> list[str]:
    """What becomes of the rest once the dead worker's lease has run out."""
    later = SystemClock().now() + 2 * REQUEST_LEASE
    return [str(claim.letter.chat) for claim in outbox.claim_due(tx, later, "another", CROWD)]


@on_postgresql
async def test_of_two_workers_one_is_killed_and_nothing_is_doubled_lost_or_too_fast(
    database_at: URL, tmp_path: Path
) -> None:
    async with houses(database_at, tmp_path) as all_:
        house = all_.clinic
        for _ in range(2):
            await all_.start("work", settings={"BOUTWISE_SEND_RATE": str(RATE)})
        accounts = crowd(house)
        await house.heard.until(lambda: len(accepted(house, accounts)) >= CROWD // 3, house.log)
        await all_.kill(0)
        await house.heard.until(lambda: len(accepted(house, accounts)) >= CROWD - 5, house.log)
        assert await stopped(house.started_here[1]) == 0
        times = accepted(house, accounts)
        came = Counter(e.chat_id for e in house.world.log if e.chat_id in accounts)
        assert max(came.values()) == 1
        assert max(b - a for a, b in pairwise(times)) < timedelta(seconds=2)
        assert most_in_a_span(times) <= RATE * (SPAN + JITTER)
        assert (times[-1] - times[0]).total_seconds() > CROWD / RATE * 0.9
        again = in_store(house, after_the_lease)
        unknown = len([who for who in accounts if not came[who] and str(who) not in again])
        assert not [who for who in again if came[int(who)]]
        assert unknown <= 2  # those it was just sending


def most_in_a_span(times: list[datetime]) -> int:
    """The most in any two seconds; two workers that did not know of each other would send twice the rate."""
    span = timedelta(seconds=SPAN)
    return max(sum(start <= at < start + span for at in times) for start in times)


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
