"""Updates reach the bot by long poll or webhook, and come again until they are confirmed."""

import asyncio
import json
from collections.abc import Awaitable, Callable
from dataclasses import dataclass, field
from datetime import timedelta
from typing import Any

import pytest
from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route
from telegram import Update
from telegram.error import BadRequest, Conflict

from bot.rehearsal.serving import serving

from .conftest import Stand


async def test_updates_come_again_until_a_later_one_is_asked_for(stand: Stand) -> None:
    bot, ann = await stand.bot(), await stand.person()
    first = (await bot.get_updates())[0].update_id
    assert [each.update_id for each in await bot.get_updates()] == [first]
    second = (await stand.deed(ann, "text", text="12"))["update_id"]
    assert [each.update_id for each in await bot.get_updates(offset=first)] == [first, second]
    assert [each.update_id for each in await bot.get_updates(offset=first + 1)] == [second]
    assert [each.update_id for each in await bot.get_updates()] == [second]
    assert await bot.get_updates(offset=second + 1) == ()
    assert await bot.get_updates() == ()


async def test_what_a_killed_bot_had_fetched_comes_to_the_next_one(stand: Stand) -> None:
    first, ann = await stand.bot(), await stand.person()
    fetched = await first.get_updates()
    second = await stand.bot()
    assert [each.to_dict() for each in await second.get_updates()] == [
        each.to_dict() for each in fetched
    ]
    assert fetched[0].message is not None
    assert fetched[0].message.chat_id == ann
    assert [entity.type for entity in fetched[0].message.entities] == ["bot_command"]


async def test_a_negative_offset_keeps_only_the_last(stand: Stand) -> None:
    bot, ann = await stand.bot(), await stand.person()
    last = [(await stand.deed(ann, "text", text=str(n)))["update_id"] for n in range(3)][-1]
    assert [each.update_id for each in await bot.get_updates(offset=-1)] == [last]
    assert [each.update_id for each in await bot.get_updates()] == [last]


async def test_a_long_poll_ends_with_the_first_update(stand: Stand) -> None:
    bot, ann = await stand.bot(), stand.world.add_person("Ann Invented")
    poll = asyncio.create_task(bot.get_updates(timeout=30))
    await asyncio.wait_for(stand.polling.wait(), 5)
    update_id = (await stand.deed(ann, "text", text="hello"))["update_id"]
    assert [each.update_id for each in await poll] == [update_id]


async def test_a_long_poll_without_news_ends_empty(stand: Stand) -> None:
    answer = await stand.call("getUpdates", timeout=0)
    assert answer.json() == {"ok": True, "result": []}


async def test_a_second_poller_ends_the_first_with_a_conflict(stand: Stand) -> None:
    first, second = await stand.bot(), await stand.bot()
    poll = asyncio.create_task(first.get_updates(timeout=30))
    await asyncio.wait_for(stand.polling.wait(), 5)
    goes_on = asyncio.create_task(second.get_updates(timeout=30))
    with pytest.raises(Conflict, match="terminated by other getUpdates request"):
        await poll
    ann = stand.world.add_person("Ann Invented")
    update_id = (await stand.deed(ann, "text", text="hello"))["update_id"]
    assert [each.update_id for each in await goes_on] == [update_id]


async def test_only_the_kinds_asked_for_are_queued(stand: Stand) -> None:
    bot, ann = await stand.bot(), await stand.person()
    await bot.get_updates(offset=-1, allowed_updates=["callback_query"])
    deed = await stand.deed(ann, "text", text="unheard")
    assert deed["update_id"] is None
    with pytest.raises(BadRequest, match="Unknown kind of update"):
        await bot.get_updates(allowed_updates=["everything"])
    await bot.get_updates(allowed_updates=[])
    assert (await stand.deed(ann, "text", text="heard"))["update_id"] is not None


# How long the platform keeps updates: design notes of the project (messages read, presses
# second-hand).
@pytest.mark.parametrize(
    ("what", "life"),
    [("text", timedelta(hours=24)), ("press", timedelta(seconds=150))],
)
async def test_what_a_bot_does_not_fetch_in_time_is_lost(
    stand: Stand, what: str, life: timedelta
) -> None:
    ann = await stand.person()
    markup = {"inline_keyboard": [[{"text": "Skip", "callback_data": "s"}]]}
    sent = (await stand.call("sendMessage", chat_id=ann, text="x", reply_markup=markup)).json()
    await stand.call("getUpdates", offset=2)
    bodies = {
        "text": {"text": "12"},
        "press": {"message_id": sent["result"]["message_id"], "button": "Skip"},
    }
    await stand.deed(ann, what, **bodies[what])
    stand.clock.now += life
    assert len((await stand.call("getUpdates")).json()["result"]) == 1
    stand.clock.now += timedelta(seconds=1)
    assert (await stand.call("getUpdates")).json()["result"] == []


async def test_an_update_can_be_delivered_twice(stand: Stand) -> None:
    bot, ann = await stand.bot(), await stand.person()
    update_id = (await stand.deed(ann, "text", text="12"))["update_id"]
    await bot.get_updates(offset=update_id + 1)
    answer = await stand.http.post("/updates/repeat", json={"update_id": update_id})
    assert answer.json()["update_id"] == update_id
    assert [each.update_id for each in await bot.get_updates()] == [update_id]
    assert (await stand.http.post("/updates/repeat", json={"update_id": 99})).status_code == 404


@dataclass
class Receiver:
    """A webhook that answers with the given status and remembers what it got."""

    statuses: list[int] = field(default_factory=list)
    got: asyncio.Queue[tuple[str | None, dict[str, Any]]] = field(default_factory=asyncio.Queue)

    async def __call__(self, request: Request) -> Response:
        secret = request.headers.get("X-Telegram-Bot-Api-Secret-Token")
        self.got.put_nowait((secret, json.loads(await request.body())))
        return Response(status_code=self.statuses.pop(0) if self.statuses else 200)


async def test_a_webhook_gets_each_update_with_the_secret_until_it_says_ok(stand: Stand) -> None:
    receiver = Receiver([500])
    bot, ann = await stand.bot(), await stand.person()
    app = Starlette(routes=[Route("/hook", as_endpoint(receiver), methods=["POST"])])
    async with serving(app) as url:
        await bot.set_webhook(f"{url}/hook", secret_token="s-3_cret")
        first = await asyncio.wait_for(receiver.got.get(), 5)
        again = await asyncio.wait_for(receiver.got.get(), 5)
        assert first == again
        assert first[0] == "s-3_cret"
        read = Update.de_json(first[1], bot)
        assert read.message is not None
        assert read.message.text == "/start CODE"
        await stand.deed(ann, "text", text="12")
        assert (await asyncio.wait_for(receiver.got.get(), 5))[1]["message"]["text"] == "12"
        info = await bot.get_webhook_info()
        assert (info.url, info.last_error_date) == (f"{url}/hook", stand.clock.now)
        assert info.last_error_message is not None
        assert "500" in info.last_error_message
        with pytest.raises(Conflict, match="while webhook is active"):
            await bot.get_updates()
        await bot.delete_webhook()
        assert (await bot.get_webhook_info()).url == ""
        assert await bot.get_updates() == ()


async def test_a_webhook_that_is_away_gets_everything_when_it_is_back(stand: Stand) -> None:
    receiver = Receiver()
    bot, ann = await stand.bot(), await stand.person()
    app = Starlette(routes=[Route("/hook", as_endpoint(receiver), methods=["POST"])])
    async with serving(app) as url:
        port = int(url.rpartition(":")[2])
    await bot.set_webhook(f"{url}/hook")
    await stand.deed(ann, "text", text="12")
    async with serving(app, port=port):
        texts = [
            (await asyncio.wait_for(receiver.got.get(), 5))[1]["message"]["text"] for _ in range(2)
        ]
    assert texts == ["/start CODE", "12"]


async def test_setting_or_deleting_a_webhook_can_drop_what_waits(stand: Stand) -> None:
    bot = await stand.bot()
    await stand.person()
    await bot.delete_webhook(drop_pending_updates=True)
    assert await bot.get_updates() == ()


@pytest.mark.parametrize(
    ("fields", "reason"),
    [
        ({"url": "https://example.org/hook"}, "posts to loopback addresses only"),
        ({"url": "ftp://127.0.0.1/"}, "posts to loopback addresses only"),
        ({"url": "http://127.0.0.1:1/", "secret_token": "a b"}, "unallowed characters"),
        ({"url": "http://127.0.0.1:1/", "max_connections": 101}, "max_connections"),
    ],
)
async def test_a_webhook_the_stand_in_will_not_post_to_is_refused(
    stand: Stand, fields: dict[str, Any], reason: str
) -> None:
    code, description = await stand.refusal("setWebhook", **fields)
    assert code == 400
    assert reason in description


def as_endpoint(receiver: Receiver) -> Callable[[Request], Awaitable[Response]]:
    async def endpoint(request: Request) -> Response:
        return await receiver(request)

    return endpoint
