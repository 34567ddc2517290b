"""Pictures and files on their way to a chat, over the stand-in server and the real client library."""

import csv
import io
from collections.abc import Callable
from datetime import timedelta
from typing import Any

import pytest

from bot.rehearsal.faults import Fault
from bot.rehearsal.markup import units
from bot.rehearsal.media import picture_size
from bot.telegram import attachments
from bot.telegram.attachments import LONGEST_CAPTION, attachment
from bot.telegram.sender import TelegramSender
from bot.words import PSEUDO, render
from scheduler.domain.messages import Message, as_json, from_json, message, text
from scheduler.ports import Delivered, Letter, Refused, TryLater, Unknown, Unreachable
from tests.bot import weeks
from tests.bot.rehearsal.conftest import Stand, clock, stand

__all__ = ["clock", "stand"]  # fixtures of the stand-in

DIGEST = weeks.crowd(6, 2)
PICTURE = message("digest-picture", digest=DIGEST)
FILE = message("digest-file", digest=DIGEST)
WEEK = message("week-picture", line=weeks.line())


def letter(chat: int, said: Message, **changed: Any) -> Letter:
    return Letter(1, chat, changed.pop("language", "en"), None, said, **changed)


async def test_a_digest_reaches_the_chat_as_a_picture_with_words_below_it(stand: Stand) -> None:
    dana = await stand.person("Dana Invented")
    sender = TelegramSender(await stand.bot())
    outcome = await sender.send(letter(dana, PICTURE, silent=True))
    shown = (await stand.chat(dana))[-1]
    assert outcome == Delivered(shown["message_id"])
    assert shown["silent"] is True
    assert shown["text"].startswith("Week 10, Mon 8 March to Sun 14 March.\n6 clients, 2 need you.")
    (file,) = shown["files"]
    assert (file["kind"], file["name"], file["mime"]) == (
        "photo",
        "digest-2027-W10.png",
        "image/png",
    )
    got = await stand.http.get(f"/people/{dana}/files/{file['file_id']}")
    assert picture_size(got.content)[0] == 1080


async def test_a_digest_reaches_the_chat_as_a_file_with_a_plain_name(stand: Stand) -> None:
    dana = await stand.person("Dana Invented")
    sender = TelegramSender(await stand.bot())
    assert isinstance(await sender.send(letter(dana, FILE)), Delivered)
    (file,) = (await stand.chat(dana))[-1]["files"]
    assert (file["kind"], file["name"]) == ("document", "digest-2027-W10.csv")
    got = await stand.http.get(f"/people/{dana}/files/{file['file_id']}")
    rows = list(csv.DictReader(io.StringIO(got.content.decode("utf-8-sig"))))
    assert [row["name"] for row in rows] == [line["name"] for line in DIGEST["lines"]]


async def test_a_client_gets_her_own_week_as_a_picture(stand: Stand) -> None:
    ann = await stand.person()
    sender = TelegramSender(await stand.bot())
    assert isinstance(await sender.send(letter(ann, WEEK)), Delivered)
    shown = (await stand.chat(ann))[-1]
    assert shown["files"][0]["name"] == "week-2027-03-08.png"
    assert shown["text"] == "Your week, Mon 8 March to Sun 14 March.\nDays done: 2 of 3."


async def test_words_of_the_same_message_stand_below_the_picture(stand: Stand) -> None:
    ann = await stand.person()
    sender = TelegramSender(await stand.bot())
    await sender.send(letter(ann, (*WEEK, text("day-done"))))
    assert (await stand.chat(ann))[-1]["text"].endswith("That is all for today.")


@pytest.mark.parametrize("said", [PICTURE, FILE, WEEK])
async def test_an_answer_to_a_tap_is_a_new_message_and_the_old_one_stays(
    stand: Stand, said: Message
) -> None:
    ann = await stand.person()
    sender = TelegramSender(await stand.bot())
    before = await sender.send(letter(ann, message("day-done")))
    assert isinstance(before, Delivered)
    after = await sender.send(letter(ann, said, edits=before.message_id))
    assert isinstance(after, Delivered)
    assert after.message_id != before.message_id
    old, new = (await stand.chat(ann))[-2:]
    assert (old["text"], old["edited"]) == ("That is all for today.", False)
    assert len(new["files"]) == 1


async def test_words_that_answer_a_tap_below_a_picture_come_as_a_new_message(stand: Stand) -> None:
    ann = await stand.person()
    sender = TelegramSender(await stand.bot())
    picture = await sender.send(letter(ann, WEEK))
    assert isinstance(picture, Delivered)
    words = await sender.send(letter(ann, message("day-done"), edits=picture.message_id))
    assert isinstance(words, Delivered)
    assert words.message_id != picture.message_id
    assert (await stand.chat(ann))[-1]["text"] == "That is all for today."


# --- what becomes of it --------------------------------------------------------------------------


async def test_a_picture_for_a_chat_that_blocked_the_bot_is_unreachable(stand: Stand) -> None:
    ann = await stand.person()
    await stand.deed(ann, "block", on=True)
    sender = TelegramSender(await stand.bot())
    assert isinstance(await sender.send(letter(ann, WEEK)), Unreachable)


async def test_a_picture_for_a_chat_that_nobody_knows_is_unreachable(stand: Stand) -> None:
    sender = TelegramSender(await stand.bot())
    assert isinstance(await sender.send(letter(4_000_000_000, WEEK)), Unreachable)


@pytest.mark.parametrize("said", [PICTURE, FILE])
async def test_a_file_that_the_platform_does_not_take_now_is_tried_again(
    stand: Stand, said: Message
) -> None:
    ann = await stand.person()
    method = "sendPhoto" if said is PICTURE else "sendDocument"
    stand.world.faults.add(Fault("too-fast", method=method, retry_after=3))
    sender = TelegramSender(await stand.bot())
    assert await sender.send(letter(ann, said)) == TryLater(timedelta(seconds=3))


async def test_a_picture_whose_acceptance_is_not_heard_has_an_unknown_fate(stand: Stand) -> None:
    ann = await stand.person()
    stand.world.faults.add(Fault("drop-after", method="sendPhoto"))
    sender = TelegramSender(await stand.bot())
    assert isinstance(await sender.send(letter(ann, WEEK)), Unknown)


async def test_a_picture_that_the_platform_refuses_is_refused(
    stand: Stand, monkeypatch: pytest.MonkeyPatch
) -> None:
    ann = await stand.person()
    monkeypatch.setattr(attachments, "week_picture", lambda *_: b"no picture")
    sender = TelegramSender(await stand.bot())
    assert isinstance(await sender.send(letter(ann, WEEK)), Refused)


# --- captions ------------------------------------------------------------------------------------


@pytest.mark.parametrize("language", ["en", PSEUDO])
def test_the_caption_of_500_clients_fits_and_holds_no_client(language: str) -> None:
    crowd = weeks.crowd(500, 40)
    for line in crowd["lines"]:
        line["name"] = "Zoltan"
    for id_ in ("digest-picture", "digest-file"):
        attached = attachment(message(id_, digest=crowd))
        assert attached is not None
        caption = render(attached.caption, language)
        assert 0 < units(caption) <= LONGEST_CAPTION
        assert "Zoltan" not in caption
        assert "500" in caption


def test_the_pseudo_locale_says_the_facts_of_a_caption() -> None:
    attached = attachment(PICTURE)
    assert attached is not None
    assert render(attached.caption, PSEUDO) == (
        '⟦digest-picture|{"count": 6, "first": "2027-03-08", "last": "2027-03-14", "need": 2, '
        '"week": "2027-W10"}⟧'
    )


@pytest.mark.parametrize("said", [(), message("day-done"), (text("day-done"), *WEEK)])
def test_a_message_that_begins_with_words_is_words(said: Message) -> None:
    assert attachment(said) is None


def test_a_picture_survives_the_way_through_the_outbox() -> None:
    kept: Callable[[Message], Message] = lambda said: from_json(as_json(said))  # noqa: E731
    one, two = attachment(PICTURE), attachment(kept(PICTURE))
    assert one is not None
    assert two is not None
    assert one.content("en") == two.content("en")
