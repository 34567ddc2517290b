"""Updates by webhook: from the platform only, and confirmed only once they are kept.

Source of the secret's header and of the repeats: the Bot API's page on setWebhook (read).
"""

import asyncio
import json
import time
from collections.abc import AsyncIterator
from typing import Any, cast

import httpx
import pytest
from sqlalchemy.exc import OperationalError
from telegram import Bot

from bot.rehearsal.serving import serving
from bot.telegram.inbox import Inbox
from bot.telegram.polling import UPDATES
from bot.telegram.receiving import Hook
from bot.telegram.webhook import LARGEST, SECRET_HEADER, webhook_app
from scheduler.clock import SteppedClock
from scheduler.ports import Store
from storage.store import SqlStore
from tests.bot.rehearsal.conftest import MONDAY, PLAIN, Stand
from tests.conftest import on_sqlite

SECRET = "s3cret_-"
HEADERS = {SECRET_HEADER: SECRET, "content-type": "application/json"}
PEOPLE = {"id": 5, "is_bot": False, "first_name": "Ann"}
MESSAGE = {
    "message_id": 1, "date": 1, "chat": {"id": 5, "type": "private"}, "from": PEOPLE, "text": "12",
}  # fmt: skip


class Away:
    """A store whose database is away while told so."""

    def __init__(self, store: SqlStore) -> None:
        self._store, self.away = store, False

    async def run(self, work: Any) -> Any:
        if self.away:
            raise OperationalError("", {}, Exception())
        return await self._store.run(work)


class Door:
    """The webhook's server, and what rings behind it."""

    def __init__(self, store: Away, bot: Bot) -> None:
        self.store, self.bot = store, bot
        self.rung = asyncio.Event()
        self.inbox = Inbox(
            cast("Store", store), SteppedClock(MONDAY), time.monotonic, self.rung.set
        )
        self.app = webhook_app("/hook", SECRET, bot, self.inbox)
        self.url = ""

    async def post(self, body: Any, **more: Any) -> int:
        """The status of one call."""
        content = body if isinstance(body, bytes) else json.dumps(body).encode()
        async with httpx.AsyncClient(**PLAIN) as http:
            headers = {**HEADERS, **more}
            answer = await http.post(f"{self.url}/hook", content=content, headers=headers)
        assert answer.content == b""
        return answer.status_code

    async def kept(self) -> int:
        return await self.store.run(lambda tx: tx.inbox.unfinished())  # type: ignore[no-any-return]


@pytest.fixture
async def door(stand: Stand, store: SqlStore) -> AsyncIterator[Door]:
    door = Door(Away(store), await stand.bot())
    async with serving(door.app) as door.url:
        yield door


def update(number: int, **content: Any) -> dict[str, Any]:
    return {"update_id": number, **(content or {"message": MESSAGE})}


async def test_an_update_is_kept_once_however_often_it_comes(door: Door) -> None:
    assert [await door.post(update(7)), await door.post(update(7))] == [200, 200]
    assert await door.kept() == 1
    assert door.rung.is_set()
    assert door.inbox.heard_at is not None


@on_sqlite
@pytest.mark.parametrize("given", ["", "s3cret", "S3CRET_-", "s3cret_-x", "é"])
async def test_who_does_not_know_the_secret_is_refused(door: Door, given: str) -> None:
    assert await door.post(update(7), **{SECRET_HEADER: given.encode()}) == 403
    assert await door.kept() == 0


@on_sqlite
async def test_without_the_secrets_header_it_is_refused_before_anything_is_read(door: Door) -> None:
    async with httpx.AsyncClient(base_url=door.url, **PLAIN) as http:
        assert (await http.post("/hook", content=b"x" * 100)).status_code == 403
        assert (await http.post("/hook", json=update(7))).status_code == 403
    assert await door.kept() == 0


@on_sqlite
async def test_only_posts_at_its_path_are_taken(door: Door) -> None:
    async with httpx.AsyncClient(base_url=door.url, headers=HEADERS, **PLAIN) as http:
        for method in ("GET", "PUT", "DELETE", "PATCH", "OPTIONS"):
            assert (await http.request(method, "/hook")).status_code == 405
        for path in ("/", "/hook/", "/hook2", "/healthz"):
            assert (await http.post(path, json=update(7))).status_code in {404, 307}, path
    assert await door.kept() == 0


@on_sqlite
@pytest.mark.parametrize(
    ("kind", "status"),
    [
        ("application/json", 200),
        ("application/json; charset=utf-8", 200),
        ("text/plain", 415),
        ("application/x-www-form-urlencoded", 415),
        ("", 415),
    ],
)
async def test_only_json_is_taken(door: Door, kind: str, status: int) -> None:
    assert await door.post(update(7), **{"content-type": kind}) == status


@on_sqlite
@pytest.mark.parametrize(
    "body",
    [
        b"",
        b"{",
        b"\xff\xfe",
        b"[" * 100_000,
        b'{"a":' * 100_000,
        b"[]",
        b"12",
        b"null",
        {},
        {"update_id": "7"},
        {"update_id": None},
        {"update_id": True},
        {"update_id": -1},
        {"update_id": 2**63},
        {"update_id": 1.5},
        {"update_id": 7, "message": 12},
        {"update_id": 7, "message": {"text": "no chat, no date"}},
    ],
)
async def test_what_is_no_update_is_refused(door: Door, body: Any) -> None:
    assert await door.post(body) == 400
    assert await door.kept() == 0


@on_sqlite
async def test_a_kind_of_update_that_nobody_knows_yet_is_kept(door: Door) -> None:
    assert await door.post(update(2**63 - 1, something_new={"a": 1})) == 200
    assert await door.kept() == 1


@on_sqlite
async def test_the_largest_body_is_taken_and_one_byte_more_is_not(door: Door) -> None:
    body = json.dumps(update(7)).encode()
    assert await door.post(body + b" " * (LARGEST - len(body))) == 200
    assert await door.post(body + b" " * (LARGEST - len(body) + 1)) == 413


@on_sqlite
async def test_ten_megabytes_are_refused_before_they_have_come(door: Door) -> None:
    """By the length that is told, and without one as soon as it is too much."""
    host, _, port = door.url.removeprefix("http://").rpartition(":")
    head = f"POST /hook HTTP/1.1\r\nhost: x\r\n{SECRET_HEADER}: {SECRET}\r\n"
    head += "content-type: application/json\r\n"
    for more, most in (("content-length: 10000000", 0), ("transfer-encoding: chunked", 40)):
        reader, writer = await asyncio.open_connection(host, int(port))
        writer.write(f"{head}{more}\r\n\r\n".encode())
        for _ in range(most):  # of 100,000 bytes each
            writer.write(b"186a0\r\n" + b"1" * 100_000 + b"\r\n")
        assert b" 413 " in await asyncio.wait_for(reader.readline(), 10)
        writer.close()


async def test_while_the_database_is_away_nothing_is_confirmed(door: Door) -> None:
    door.store.away = True
    assert await door.post(update(7)) == 503
    door.store.away = False
    assert await door.kept() == 0
    assert await door.post(update(7)) == 200


def hook_of(door: Door) -> Hook:
    return Hook(door.bot, door.inbox, f"{door.url}/hook", SECRET)


async def test_the_platform_posts_what_people_say_until_it_is_kept(
    stand: Stand, door: Door
) -> None:
    """The stand-in repeats, as the platform does, whatever is not answered with 2xx."""
    hook = hook_of(door)
    door.store.away = True
    opening = asyncio.create_task(hook.open())
    ann = await stand.person()
    await stand.deed(ann, "text", text="12")
    door.store.away = False
    await asyncio.wait_for(opening, 10)
    assert await door.kept() == 2  # "/start CODE" and "12"
    assert stand.world.webhook is not None
    assert stand.world.webhook.secret == SECRET
    assert stand.world.updates.allowed == sorted(UPDATES)


@on_sqlite
async def test_a_webhook_that_leads_elsewhere_or_fails_is_set_again(
    stand: Stand, door: Door
) -> None:
    hook = hook_of(door)
    await hook.look()
    assert stand.world.webhook is not None  # there was none
    await door.bot.set_webhook("http://127.0.0.1:1/elsewhere")
    await hook.look()
    assert stand.world.webhook.url == f"{door.url}/hook"
    stand.world.webhook.error_at, stand.world.webhook.error = stand.clock(), "Connection refused"
    door.store.away = True
    await stand.person()  # what she says cannot be kept
    failing = stand.world.webhook
    await hook.look()
    assert stand.world.webhook is not failing
    door.store.away = False
