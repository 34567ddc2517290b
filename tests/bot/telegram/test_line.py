"""Our own line to the platform: only the cause of a fault tells whether a message may have arrived (R2)."""

import asyncio
from collections.abc import AsyncIterator
from datetime import timedelta

import pytest
from telegram import Bot

from bot.rehearsal.faults import Fault
from bot.telegram.application import Platform, username
from bot.telegram.line import _proxy
from bot.telegram.sender import TelegramSender
from scheduler.domain.messages import text
from scheduler.ports import Delivered, Letter, TryLater, Unknown
from tests.bot.rehearsal.conftest import Stand

NOT_SENT = TryLater(timedelta(seconds=2), chat_only=False)


@pytest.fixture
async def bot(stand: Stand) -> AsyncIterator[Bot]:
    bot = Platform(stand.world.token, stand.url).bot
    await bot.initialize()
    yield bot
    await bot.shutdown()


def letter(chat: int) -> Letter:
    return Letter(1, chat, "qps", None, (text("help"),))


async def texts(stand: Stand, chat: int) -> list[str]:
    return [each["text"] for each in await stand.chat(chat) if each["from"] == "bot"]


async def test_what_never_reached_the_platform_is_tried_later() -> None:
    bot = Platform("1:a", "http://127.0.0.1:1").bot  # nobody listens on port 1
    await bot.request.initialize()
    assert await TelegramSender(bot).send(letter(1)) == NOT_SENT
    await bot.request.shutdown()


async def test_a_name_that_leads_nowhere_was_not_reached_either() -> None:
    bot = Platform("1:a", "http://nowhere.invalid").bot
    await bot.request.initialize()
    assert await TelegramSender(bot).send(letter(1)) == NOT_SENT
    await bot.request.shutdown()


@pytest.mark.parametrize(
    ("left_out", "used"), [("", True), ("elsewhere.invalid", True), ("*", False)]
)
async def test_the_proxy_of_the_environment_is_used_but_for_what_it_leaves_out(
    stand: Stand, monkeypatch: pytest.MonkeyPatch, left_out: str, used: bool
) -> None:
    asked: list[bytes] = []

    async def proxy(reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
        asked.append(await reader.readuntil(b"\r\n"))
        writer.write(b"HTTP/1.1 502 Bad Gateway\r\nContent-Length: 0\r\nConnection: close\r\n\r\n")
        await writer.drain()
        writer.close()

    server = await asyncio.start_server(proxy, "127.0.0.1", 0)
    async with server:
        port = server.sockets[0].getsockname()[1]
        monkeypatch.setenv("http_proxy", f"http://127.0.0.1:{port}")
        monkeypatch.setenv("no_proxy", left_out)
        _proxy.cache_clear()
        bot = Platform(stand.world.token, stand.url).bot
        await bot.request.initialize()
        ann = await stand.person()
        sent = await TelegramSender(bot).send(letter(ann))
        await bot.request.shutdown()
    _proxy.cache_clear()
    assert isinstance(sent, Unknown if used else Delivered)
    # RFC 9112, 3.2.2: to a proxy the whole address is asked for (from memory)
    assert [line.startswith(f"POST {stand.url}/bot".encode()) for line in asked] == [True] * used


@pytest.mark.parametrize("kind", ["drop-before", "drop-after"])
async def test_a_line_that_is_cut_after_sending_leaves_it_open(
    stand: Stand, bot: Bot, kind: str
) -> None:
    """On a new connection, and on one that has been used before."""
    ann = await stand.person()
    for _ in range(2):
        stand.world.faults.add(Fault(kind))  # type: ignore[arg-type]
        assert isinstance(await TelegramSender(bot).send(letter(ann)), Unknown)
        assert isinstance(await TelegramSender(bot).send(letter(ann)), Delivered)
    arrived = 2 if kind == "drop-before" else 4
    assert len(await texts(stand, ann)) == arrived  # nothing was sent twice by itself


async def test_an_answer_that_takes_too_long_leaves_it_open(
    stand: Stand, bot: Bot, monkeypatch: pytest.MonkeyPatch
) -> None:
    ann = await stand.person()
    fault = stand.world.faults.add(Fault("late"))
    sending = asyncio.create_task(bot.send_message(ann, "x", read_timeout=0.01))
    await fault.reached.wait()
    with pytest.raises(Exception, match="Timed out"):
        await sending
    assert await texts(stand, ann) == ["x"]


async def test_a_page_of_html_instead_of_an_answer_leaves_it_open(stand: Stand, bot: Bot) -> None:
    ann = await stand.person()
    stand.world.faults.add(Fault("server-error", status=502))
    assert isinstance(await TelegramSender(bot).send(letter(ann)), Unknown)


async def test_many_at_once_all_arrive_and_pictures_too(stand: Stand, bot: Bot) -> None:
    people = [await stand.person(f"Invented {n}") for n in range(40)]
    await asyncio.gather(*(bot.send_message(who, "ñ & ü") for who in people))
    assert [await texts(stand, who) for who in people] == [["ñ & ü"]] * 40
    await bot.send_document(people[0], b"a,b\n", caption="a file", filename="week.csv")
    assert (await texts(stand, people[0]))[-1] == "a file"


async def test_a_line_made_anew_goes_on(stand: Stand) -> None:
    platform = Platform(stand.world.token, stand.url)
    await username(platform.bot)
    await stand.person()
    for _ in range(2):
        assert len(await platform.bot.get_updates()) == 1
        await platform.renew_polls()
    await platform.bot.shutdown()
