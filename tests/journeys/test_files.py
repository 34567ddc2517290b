"""What a client sends that is no text of hers: one short answer each, and a way to say that it hurts (P3)."""

from collections.abc import Callable
from typing import Any

import pytest
from sqlalchemy import select

from bot.rehearsal import people
from bot.rehearsal.people import Deed
from storage.tables import InboxRow, table
from tests.conftest import briefly
from tests.journeys.log import Line
from tests.journeys.rooms import ANN, Whole
from tests.journeys.theatre import Someone, Theatre

pytest_plugins = ("tests.journeys.furniture",)


async def did(who: Someone, deed: Callable[..., Deed], *args: Any, **more: Any) -> Line:
    """Something she does that is neither words nor a tap; the answer."""
    stage = who.theatre.stage
    await stage.heard(deed(stage.world, who.facts.account, *args, **more))
    return who.heard()[-1]


@pytest.mark.parametrize("kind", ["photo", "voice", "video", "sticker", "animation", "document"])
@briefly
async def test_a_file_logs_nothing_and_offers_to_say_that_something_hurts(
    theatre: Theatre, kind: str
) -> None:
    ann = await theatre.client(total=20)
    await ann.until(8)
    answer = await did(ann, people.send_file, kind, f"invented.{kind}")
    assert answer.ids == ("cannot-see-files", "file-hurts")
    assert answer.texts[0].args == {"file": kind, "emergency_number": "112"}
    assert ann.done() == 0
    assert (await ann.press("hurt")).ids == ("ask-pain-sign",)


@briefly
async def test_the_words_below_a_picture_are_read_and_she_is_told_that_they_alone_were(
    theatre: Theatre,
) -> None:
    ann = await theatre.client(total=20)
    await ann.until(8)
    answer = await did(ann, people.send_file, "photo", "invented.png", caption="did 10")
    assert answer.ids == ("logged", "only-words-read")
    assert ann.done() == 10
    answer = await did(ann, people.send_file, "photo", "invented.png", caption="my calf is swollen")
    assert answer.ids[-1] == "only-words-read"
    assert answer.get("stop-urgent-care") is not None


async def test_several_pictures_at_once_get_one_answer(whole: Whole) -> None:
    world = whole.stage.world
    for _ in range(3):
        await whole.stage.heard(people.send_file(world, ANN, "photo", "a.png", album="one"))
    assert whole.count(ANN, "cannot-see-files") == 1


@briefly
async def test_words_passed_on_from_somebody_else_are_no_answer_of_hers(theatre: Theatre) -> None:
    ann = await theatre.client(total=20)
    await ann.until(8)
    answer = await did(ann, people.forward, "12", "Bo")
    assert answer.ids == ("forwarded",)
    assert answer.texts[0].args == {"asks": False}
    assert ann.done() == 0
    answer = await did(ann, people.forward, "I did 10 but my hip hurts", "Bo")
    assert answer.ids == ("forwarded", "ask-pain-sign")
    assert ann.done() == 0
    again = await did(ann, people.forward, "none of these", "Bo")
    assert again.ids == ("forwarded", "ask-pain-sign")  # only she can answer it
    await ann.press("oops")
    assert len(ann.texts("mistake-noted")) == 1


@briefly
async def test_words_of_self_harm_are_taken_as_hers_whoever_wrote_them(theatre: Theatre) -> None:
    ann = await theatre.client(total=20)
    assert (await did(ann, people.forward, "I want to kill myself", "Bo")).ids == ("stop-crisis",)


@briefly
async def test_a_contact_or_a_place_is_kept_nowhere(theatre: Theatre) -> None:
    ann = await theatre.client(total=20)
    contact = await did(ann, people.share_contact, "555 0123")
    place = await did(ann, people.share_location, 52.52, 13.40)
    assert [line.texts[0].args["file"] for line in (contact, place)] == ["contact", "location"]
    rows = table(InboxRow)

    def kept(tx: Any) -> str:
        return str(tx.inbox._connection.execute(select(rows.c.payload)).scalars().all())

    payloads = await theatre.stage.house.store.run(kept)
    assert "Europe/Berlin" in payloads  # the zone stands where the coordinates were
    assert "52.5" not in payloads


@briefly
async def test_her_zone_is_found_by_her_place_and_kept_when_she_says_so(theatre: Theatre) -> None:
    ann = await theatre.client(total=20)
    await ann.until(6)
    await ann.say("/times")
    await ann.press("t:zone")
    answer = await did(ann, people.share_location, 52.52, 13.40)
    assert answer.ids == ("ask-zone-sure",)
    # Berlin is an hour ahead of Lisbon (the zone data)
    assert answer.texts[0].args == {"zone": "Europe/Berlin", "at": "2027-03-08T07:00"}
    kept = await ann.press("zs:Europe/Berlin")
    ann.moved("Europe/Berlin")
    assert kept.ids == ("ask-times",)
    assert kept.texts[0].args["zone"] == "Europe/Berlin"


@briefly
async def test_a_zone_that_is_not_hers_is_asked_for_in_words(theatre: Theatre) -> None:
    ann = await theatre.client(total=20)
    await ann.say("/times")
    assert (await did(ann, people.share_location, 52.52, 13.40)).ids == ("ask-zone-sure",)
    assert (await ann.say("no")).ids == ("ask-times-zone",)
    # the middle of the Atlantic (from memory)
    assert (await did(ann, people.share_location, 30.0, -40.0)).ids == ("answer-zone",)
    await did(ann, people.share_location, 52.52, 13.40)
    assert (await ann.say("Madrid")).texts[0].args["zone"] == "Europe/Madrid"
    ann.moved("Europe/Madrid")


@briefly
async def test_of_two_places_the_one_that_is_tapped_is_hers(theatre: Theatre) -> None:
    ann = await theatre.client(total=20)
    await ann.until(6)
    await ann.say("/times")
    for place in ((52.52, 13.40), (40.42, -3.70)):  # Berlin, then Madrid (from memory)
        assert (await did(ann, people.share_location, *place)).ids == ("ask-zone-sure",)
    first, second = ann.texts("ask-zone-sure")
    answer = await ann.press("zn:Europe/Berlin", first.message_id)
    assert answer.texts[0].args["zone"] == "Europe/Madrid"  # the other is still asked about
    await ann.press("zs:Europe/Madrid", second.message_id)
    ann.moved("Europe/Madrid")
    assert zone_of(ann) == "Europe/Madrid"


@briefly
async def test_the_first_of_two_places_keeps_its_own_zone(theatre: Theatre) -> None:
    ann = await theatre.client(total=20)
    await ann.until(6)
    await ann.say("/times")
    for place in ((52.52, 13.40), (40.42, -3.70)):
        await did(ann, people.share_location, *place)
    first, second = ann.texts("ask-zone-sure")
    kept = await ann.press("zs:Europe/Berlin", first.message_id)
    ann.moved("Europe/Berlin")
    assert (kept.ids, zone_of(ann)) == (("ask-times",), "Europe/Berlin")
    await ann.press("t:keep")
    over = await ann.press("zs:Europe/Madrid", second.message_id)
    assert (over.ids, zone_of(ann)) == (("question-over",), "Europe/Berlin")


@briefly
async def test_a_button_of_before_means_the_last_place(theatre: Theatre) -> None:
    ann = await theatre.client(total=20)
    await ann.until(6)
    await ann.say("/times")
    await did(ann, people.share_location, 52.52, 13.40)
    world, account = theatre.stage.world, ann.facts.account
    latest = ann.heard()[-1].message_id
    await theatre.stage.heard(people.forge(world, account, latest, "zs:1"))
    ann.moved("Europe/Berlin")
    assert zone_of(ann) == "Europe/Berlin"


def zone_of(someone: Someone) -> str:
    return someone.theatre.stage.house.store.run_sync(
        lambda tx: tx.people.client(someone.facts.person).zone.key
    )
