"""What became of a letter, told from what the platform and the network did with it.

Source of the platform's answers: the Bot API's documentation (second-hand, through the stand-in server).
"""

import asyncio
import inspect
from datetime import timedelta
from typing import Any

import httpx
import pytest
from telegram import Bot
from telegram.error import NetworkError, TimedOut
from telegram.request import HTTPXRequest

from bot.rehearsal.faults import Fault
from bot.telegram.sender import LONGEST, MENU_WITHIN, TelegramSender, fitted, outcome
from scheduler.domain.messages import text
from scheduler.domain.people import Role
from scheduler.ports import (
    SEND_WITHIN,
    Delivered,
    Letter,
    Refused,
    TryLater,
    Unknown,
    Unreachable,
)
from scheduler.usecases.outbox import REQUEST_LEASE
from tests.bot.rehearsal.conftest import PLAIN, Stand

WELCOME = (text("nothing-logged"),)
OTHER = (text("help"),)


def letter(chat: int, **more: Any) -> Letter:
    values = {"language": "qps", "role": None, "message": WELCOME, **more}
    return Letter(1, chat, **values)


async def mine(stand: Stand, chat: int) -> list[str]:
    return [each["text"] for each in await stand.chat(chat) if each["from"] == "bot"]


async def test_a_letter_is_delivered_under_the_number_the_platform_gave(stand: Stand) -> None:
    sender, ann = TelegramSender(await stand.bot()), await stand.person()
    told = await sender.send(letter(ann))
    assert isinstance(told, Delivered)
    (message,) = [each for each in await stand.chat(ann) if each["from"] == "bot"]
    assert told.message_id == message["message_id"]
    assert message["text"] == "⟦nothing-logged|{}⟧"


async def test_too_fast_is_tried_later_after_as_long_as_the_platform_says(stand: Stand) -> None:
    sender, ann = TelegramSender(await stand.bot()), await stand.person()
    stand.world.faults.add(Fault("too-fast", retry_after=7))
    assert await sender.send(letter(ann)) == TryLater(timedelta(seconds=7), chat_only=True)
    assert await mine(stand, ann) == []


async def test_who_blocked_the_bot_is_unreachable(stand: Stand) -> None:
    sender, ann = TelegramSender(await stand.bot()), await stand.person()
    await stand.deed(ann, "block", on=True)
    assert isinstance(await sender.send(letter(ann)), Unreachable)
    await stand.deed(ann, "block", on=False)
    assert isinstance(await sender.send(letter(ann)), Delivered)


async def test_who_never_was_or_is_gone_is_unreachable(stand: Stand) -> None:
    sender, ann = TelegramSender(await stand.bot()), await stand.person()
    assert isinstance(await sender.send(letter(4711)), Unreachable)
    gone = "Forbidden: user is deactivated"
    stand.world.faults.add(Fault("refuse", status=403, description=gone))
    assert isinstance(await sender.send(letter(ann)), Unreachable)


async def test_what_the_platform_never_takes_is_refused(stand: Stand) -> None:
    sender, ann = TelegramSender(await stand.bot()), await stand.person()
    stand.world.faults.add(Fault("refuse", description="Bad Request: text must be non-empty"))
    assert await sender.send(letter(ann)) == Refused("Text must be non-empty")


async def test_a_line_cut_after_the_request_left_leaves_its_fate_unknown(stand: Stand) -> None:
    sender, ann = TelegramSender(await stand.bot()), await stand.person()
    for kind, there in (("drop-before", 0), ("drop-after", 1)):
        stand.world.faults.add(Fault(kind))  # type: ignore[arg-type]
        assert isinstance(await sender.send(letter(ann)), Unknown)
        assert len(await mine(stand, ann)) == there


async def test_an_answer_that_does_not_come_leaves_its_fate_unknown(stand: Stand) -> None:
    sender, ann = TelegramSender(await stand.bot(read_timeout=0.05)), await stand.person()
    stand.world.faults.add(Fault("late"))
    assert isinstance(await sender.send(letter(ann)), Unknown)
    assert len(await mine(stand, ann)) == 1


async def test_a_server_at_odds_with_itself_leaves_its_fate_unknown(stand: Stand) -> None:
    sender, ann = TelegramSender(await stand.bot()), await stand.person()
    stand.world.faults.add(Fault("server-error", status=502))
    assert isinstance(await sender.send(letter(ann)), Unknown)


async def test_where_nobody_listens_nothing_has_arrived_and_everything_waits(
    stand: Stand,
) -> None:
    bot = stranger(stand, stand.world.token, "http://127.0.0.1:1")
    told = await TelegramSender(bot).send(letter(1))
    assert isinstance(told, TryLater)
    assert not told.chat_only
    assert timedelta() < told.after <= timedelta(seconds=5)
    await bot.request.shutdown()


async def test_a_token_that_is_no_longer_good_loses_nothing(stand: Stand) -> None:
    ann = await stand.person()
    bot = stranger(stand, "1:not-the-token-of-anybody-at-all-0000", stand.url)
    told = await TelegramSender(bot).send(letter(ann))
    assert told == TryLater(timedelta(minutes=1), chat_only=False)
    await bot.request.shutdown()


def stranger(stand: Stand, token: str, root: str) -> Bot:
    """A client that has not asked the platform who it is."""
    return Bot(token, base_url=f"{root}/bot", request=HTTPXRequest(httpx_kwargs=PLAIN))


@pytest.mark.parametrize(
    ("cause", "safe"),
    [
        (httpx.ConnectError("x"), True),
        (httpx.ConnectTimeout("x"), True),
        (httpx.PoolTimeout("x"), True),
        (httpx.ReadTimeout("x"), False),
        (httpx.WriteTimeout("x"), False),
        (httpx.ReadError("x"), False),
        (httpx.WriteError("x"), False),
        (httpx.RemoteProtocolError("x"), False),
        (None, False),
    ],
)
@pytest.mark.parametrize("kind", [NetworkError, TimedOut])
def test_only_a_request_that_never_left_may_be_repeated(
    kind: type[NetworkError], cause: Exception | None, safe: bool
) -> None:
    # Source: httpx's documentation of its exceptions (memory).
    error = kind("x")
    error.__cause__ = cause
    assert isinstance(outcome(error), TryLater if safe else Unknown)


async def test_a_letter_that_replaces_another_changes_it_in_place(stand: Stand) -> None:
    sender, ann = TelegramSender(await stand.bot()), await stand.person()
    first = await sender.send(letter(ann))
    assert isinstance(first, Delivered)
    again = await sender.send(letter(ann, message=OTHER, edits=first.message_id))
    assert again == first
    (only,) = await mine(stand, ann)
    assert only.startswith("⟦help|")


async def test_one_that_reads_so_already_counts_as_delivered(stand: Stand) -> None:
    sender, ann = TelegramSender(await stand.bot()), await stand.person()
    first = await sender.send(letter(ann))
    assert isinstance(first, Delivered)
    assert await sender.send(letter(ann, edits=first.message_id)) == first
    assert len(await mine(stand, ann)) == 1


@pytest.mark.parametrize(
    "why",
    [
        "Bad Request: message to edit not found",
        "Bad Request: message can't be edited",
        "Bad Request: there is no text in the message to edit",
    ],
)
async def test_one_that_can_no_longer_be_changed_is_sent_anew(stand: Stand, why: str) -> None:
    sender, ann = TelegramSender(await stand.bot()), await stand.person()
    first = await sender.send(letter(ann))
    assert isinstance(first, Delivered)
    stand.world.faults.add(Fault("refuse", "editMessageText", description=why))
    again = await sender.send(letter(ann, message=OTHER, edits=first.message_id))
    assert isinstance(again, Delivered)
    assert again.message_id != first.message_id
    assert len(await mine(stand, ann)) == 2


async def test_one_whose_first_is_gone_from_the_chat_is_sent_anew(stand: Stand) -> None:
    sender, ann = TelegramSender(await stand.bot()), await stand.person()
    assert isinstance(await sender.send(letter(ann, edits=999_999)), Delivered)
    assert len(await mine(stand, ann)) == 1


async def test_a_change_that_is_refused_or_too_fast_is_not_sent_as_a_second_message(
    stand: Stand,
) -> None:
    sender, ann = TelegramSender(await stand.bot()), await stand.person()
    first = await sender.send(letter(ann))
    assert isinstance(first, Delivered)
    changed = letter(ann, message=OTHER, edits=first.message_id)
    stand.world.faults.add(Fault("refuse", "editMessageText"))
    assert isinstance(await sender.send(changed), Refused)
    stand.world.faults.add(Fault("too-fast", "editMessageText", retry_after=3))
    assert await sender.send(changed) == TryLater(timedelta(seconds=3))
    stand.world.faults.add(Fault("drop-after", "editMessageText"))
    assert isinstance(await sender.send(changed), Unknown)
    assert len(await mine(stand, ann)) == 1


async def test_a_menu_that_cannot_be_shown_does_not_undo_the_letter(stand: Stand) -> None:
    sender, kim = TelegramSender(await stand.bot()), await stand.person()
    stand.world.faults.add(Fault("refuse", "setMyCommands"))
    told = await sender.send(letter(kim, role=Role.ADMIN, message=(text("welcome-admin"),)))
    assert isinstance(told, Delivered)
    assert stand.world.faults.known[-1].hits == 1


async def test_a_tap_that_is_too_old_to_be_answered_changes_nothing(stand: Stand) -> None:
    await TelegramSender(await stand.bot()).stop_spinner("long-ago")


async def test_a_letter_waits_for_the_platform_and_holds_up_no_other(stand: Stand) -> None:
    sender = TelegramSender(await stand.bot())
    ann, bo = await stand.person("Ann Invented"), await stand.person("Bo Invented")
    fault = stand.world.faults.add(Fault("delay", "sendMessage", ann))
    slow = asyncio.create_task(sender.send(letter(ann)))
    await asyncio.wait_for(fault.reached.wait(), 5)
    assert isinstance(await sender.send(letter(bo)), Delivered)
    assert not slow.done()
    fault.released.set()
    assert isinstance(await slow, Delivered)


async def test_a_send_ends_however_long_the_platform_takes(stand: Stand) -> None:
    """A change that is not answered, and a message in its place: more requests, and still one limit."""
    sender = TelegramSender(await stand.bot(), timedelta(seconds=0.1))
    ann = await stand.person()
    stand.world.faults.add(Fault("delay", "sendMessage", ann))
    assert await sender.send(letter(ann, edits=4711)) == Unknown("it took too long")


def test_the_lease_of_a_request_is_longer_than_any_send() -> None:
    assert (
        inspect.signature(TelegramSender).parameters["within"].default <= SEND_WITHIN - MENU_WITHIN
    )
    assert SEND_WITHIN + timedelta(seconds=15) <= REQUEST_LEASE


@pytest.mark.parametrize(
    ("said", "fits"),
    [
        ("a" * LONGEST, "a" * LONGEST),
        ("a" * (LONGEST + 1), "a" * (LONGEST - 1) + "…"),
        ("🙂" * (LONGEST // 2), "🙂" * (LONGEST // 2)),
        ("🙂" * (LONGEST // 2) + "a", "🙂" * (LONGEST // 2 - 1) + "…"),
    ],
)
def test_a_text_is_cut_to_what_one_message_holds_between_characters(said: str, fits: str) -> None:
    # Source: arithmetic; a smiley is two units of UTF-16.
    assert fitted(said) == fits
    assert len(fitted(said).encode("utf-16-le")) <= 2 * LONGEST
