"""The stand-in misbehaves as told, over a real connection."""

import asyncio
import logging
from datetime import timedelta
from typing import Any

import httpx
import pytest
from telegram.error import BadRequest, Forbidden, InvalidToken, NetworkError, RetryAfter, TimedOut

from bot.rehearsal import people
from bot.rehearsal.faults import Fault

from .conftest import Stand


def texts(chat: list[dict[str, Any]]) -> list[str]:
    return [message["text"] for message in chat if message["from"] == "bot"]


async def test_a_call_is_refused_as_told_and_nothing_is_accepted(stand: Stand) -> None:
    bot, ann = await stand.bot(), await stand.person()
    stand.world.faults.add(Fault("refuse", status=400, description="Bad Request: on demand"))
    with pytest.raises(BadRequest, match="On demand"):
        await bot.send_message(ann, "first")
    await bot.send_message(ann, "second")
    assert texts(await stand.chat(ann)) == ["second"]


async def test_too_fast_says_how_long_to_wait(stand: Stand) -> None:
    bot, ann = await stand.bot(), await stand.person()
    stand.world.faults.add(Fault("too-fast", retry_after=7))
    with pytest.raises(RetryAfter) as fault:
        await bot.send_message(ann, "first")
    assert fault.value.retry_after == timedelta(seconds=7)


async def test_a_chat_seems_blocked_until_the_fault_is_removed(stand: Stand) -> None:
    bot, ann, bo = await stand.bot(), await stand.person(), await stand.person("Bo Invented")
    stand.world.faults.add(Fault("blocked", chat_id=ann, times=None))
    for _ in range(2):
        with pytest.raises(Forbidden, match="bot was blocked by the user"):
            await bot.send_message(ann, "x")
    await bot.send_message(bo, "x")
    stand.world.faults.clear()
    await bot.send_message(ann, "x")


async def test_only_the_nth_call_of_the_method_goes_wrong(stand: Stand) -> None:
    bot, ann = await stand.bot(), await stand.person()
    fault = stand.world.faults.add(Fault("refuse", method="sendMessage", nth=3, times=2))
    taken = []
    for number in range(6):
        await bot.get_chat(ann)
        try:
            await bot.send_message(ann, str(number))
            taken.append(number)
        except BadRequest:
            pass
    assert taken == [0, 1, 4, 5]
    assert (fault.seen, fault.hits, fault.spent) == (4, 2, True)


async def test_polls_are_counted_only_where_they_are_named(stand: Stand) -> None:
    bot, _ = await stand.bot(), await stand.person()
    stand.world.faults.add(Fault("refuse"))
    assert await bot.get_updates()
    stand.world.faults.add(Fault("server-error", method="getUpdates"))
    with pytest.raises(NetworkError, match="Bad Gateway"):
        await bot.get_updates()
    assert await bot.get_updates()


async def test_a_connection_dropped_before_leaves_nothing_behind(
    stand: Stand, caplog: pytest.LogCaptureFixture
) -> None:
    ann = await stand.person()
    stand.world.faults.add(Fault("drop-before", method="sendMessage"))
    with caplog.at_level(logging.INFO), pytest.raises(httpx.RemoteProtocolError):
        await stand.call("sendMessage", chat_id=ann, text="lost")
    assert texts(await stand.chat(ann)) == []
    assert not [each for each in caplog.records if each.name.startswith(("uvicorn", "asyncio"))]


async def test_a_connection_dropped_after_leaves_the_message_behind(
    stand: Stand, caplog: pytest.LogCaptureFixture
) -> None:
    bot, ann = await stand.bot(), await stand.person()
    stand.world.faults.add(Fault("drop-after", method="sendMessage"))
    with caplog.at_level(logging.INFO), pytest.raises(NetworkError, match="RemoteProtocolError"):
        await bot.send_message(ann, "accepted")
    assert texts(await stand.chat(ann)) == ["accepted"]
    assert not [each for each in caplog.records if each.name.startswith(("uvicorn", "asyncio"))]
    await bot.send_message(ann, "the next goes through")


async def test_a_server_error_answers_with_a_page_of_html(stand: Stand) -> None:
    ann = await stand.person()
    stand.world.faults.add(Fault("server-error", status=502))
    answer = await stand.call("sendMessage", chat_id=ann, text="x")
    assert answer.status_code == 502
    assert answer.headers["content-type"].startswith("text/html")
    assert texts(await stand.chat(ann)) == []


async def test_a_delayed_call_is_accepted_when_it_is_released(stand: Stand) -> None:
    bot, ann = await stand.bot(), await stand.person()
    fault = stand.world.faults.add(Fault("delay", method="sendMessage"))
    sending = asyncio.create_task(bot.send_message(ann, "late"))
    await asyncio.wait_for(fault.reached.wait(), 5)
    assert texts(await stand.chat(ann)) == []
    await bot.get_chat(ann)
    fault.released.set()
    await sending
    assert texts(await stand.chat(ann)) == ["late"]


async def test_a_late_answer_times_out_though_the_message_was_accepted(stand: Stand) -> None:
    bot, ann = await stand.bot(read_timeout=0.05), await stand.person()
    stand.world.faults.add(Fault("late", method="sendMessage"))
    with pytest.raises(TimedOut):
        await bot.send_message(ann, "accepted")
    assert texts(await stand.chat(ann)) == ["accepted"]


async def test_a_delay_of_so_many_seconds_ends_by_itself(stand: Stand) -> None:
    bot, ann = await stand.bot(), await stand.person()
    stand.world.faults.add(Fault("delay", seconds=0.01))
    await bot.send_message(ann, "late")
    assert texts(await stand.chat(ann)) == ["late"]


async def test_a_platform_that_is_down_or_knows_the_token_no_more_answers_nothing_at_all(
    stand: Stand,
) -> None:
    bot, ann = await stand.bot(), await stand.person()
    for kind, error in (("down", NetworkError), ("wrong-token", InvalidToken)):
        stand.world.faults.add(Fault(kind, times=None))  # type: ignore[arg-type]
        with pytest.raises(error):
            await bot.get_updates()
        with pytest.raises(error):
            await bot.send_message(ann, "lost")
        stand.world.faults.clear()
    assert texts(await stand.chat(ann)) == []
    assert await bot.get_updates()


async def test_updates_come_again_or_in_the_wrong_order_until_they_are_confirmed(
    stand: Stand,
) -> None:
    bot, ann = await stand.bot(), await stand.person()
    first = [each.update_id for each in await bot.get_updates()]
    for words in ("a", "b", "c"):
        people.say(stand.world, ann, words)
    stand.world.faults.add(Fault("swap"))
    got = [each.update_id for each in await bot.get_updates(offset=first[-1] + 1)]
    assert got == [first[-1] + n for n in (2, 1, 3)]
    stand.world.faults.add(Fault("again"))
    people.say(stand.world, ann, "d")
    again = [each.update_id for each in await bot.get_updates(offset=got[-1] + 1)]
    assert again == [*sorted(got), got[-1] + 1]
    assert len(await bot.get_updates(offset=again[-1] + 1)) == 0


async def test_faults_can_be_given_over_http(stand: Stand) -> None:
    ann = await stand.person()
    given = {"kind": "too-fast", "method": "sendMessage", "chat_id": ann, "retry_after": 3}
    listed = (await stand.http.post("/faults", json=given)).json()
    assert [(each["kind"], each["hits"]) for each in listed] == [("too-fast", 0)]
    answer = await stand.call("sendMessage", chat_id=ann, text="x")
    assert answer.json()["parameters"] == {"retry_after": 3}
    assert answer.status_code == 429
    assert (await stand.http.get("/faults")).json()[0]["hits"] == 1
    await stand.http.post("/faults", json={"kind": "late", "method": "sendMessage"})
    held = asyncio.create_task(stand.call("sendMessage", chat_id=ann, text="x"))
    await asyncio.wait_for(stand.world.faults.known[-1].reached.wait(), 5)
    assert (await stand.http.post("/faults/release")).is_success
    assert (await held).is_success
    assert (await stand.http.delete("/faults")).json() == []


@pytest.mark.parametrize(
    "given",
    [
        {"kind": "explode"},
        {},
        {"kind": "refuse", "nth": 0},
        {"kind": "refuse", "nth": "1"},
        {"kind": "refuse", "colour": "red"},
    ],
)
async def test_a_fault_that_means_nothing_is_refused_with_one_line(
    stand: Stand, given: dict[str, Any]
) -> None:
    answer = await stand.http.post("/faults", json=given)
    assert answer.status_code == 400
    assert "\n" not in answer.json()["error"]
    assert stand.world.faults.known == []
