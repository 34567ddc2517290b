"""The practice gives an exercise a picture or clip of its own, and clients see it on the card (C7)."""

from typing import Any

from bot.rehearsal import people
from tests.conftest import briefly
from tests.journeys.log import taken_apart
from tests.journeys.theatre import Theatre


def sent(theatre: Theatre, who: int) -> list[tuple[str, str]]:
    """What came into a chat as a picture or clip: the method, and the file's id."""
    assert theatre.world is not None
    chat = theatre.world.chats[who].messages
    return [(m.file.kind, m.file.file_id) for m in chat if m.file and m.sender is None]


async def gives(theatre: Theatre, who: int, kind: str, caption: str = "") -> None:
    stage = theatre.stage
    name = "invented.mp4" if kind == "video" else "invented.png"
    await stage.heard(people.send_file(stage.world, who, kind, name, caption=caption))


def ids(theatre: Theatre, who: int) -> list[str]:
    return [each.id for each in taken_apart(theatre.stage.last(who))]


@briefly
async def test_a_clinicians_clip_is_what_the_client_sees(theatre: Theatre) -> None:
    await theatre.client(total=20, movement="stomp")
    stage, dana = theatre.stage, theatre.dana
    await stage.say(dana, "/cards")
    await stage.press(dana, "hp:stomp")
    assert ids(theatre, dana) == ["own-card"]
    await gives(theatre, dana, "video")
    assert ids(theatre, dana) == ["own-card-kept"]
    kind, file_id = sent(theatre, dana)[-1]
    assert kind == "video"
    bo = await theatre.client("Bo", total=20, movement="stomp", shows_cards=True)
    await bo.until(8)
    assert sent(theatre, bo.facts.account) == [("video", file_id)]
    card = bo.heard()[0].get("how-to")
    assert card is not None
    assert card.args == {"exercise": "stomp"}  # and every word of the card stands below it


@briefly
async def test_an_admins_photo_with_the_name_below_it_is_kept_and_can_be_taken_back(
    theatre: Theatre,
) -> None:
    ann = await theatre.client(total=20, movement="stomp")
    await gives(theatre, theatre.kim, "photo", caption="Stomps")
    assert ids(theatre, theatre.kim) == ["own-card-kept"]
    own = sent(theatre, theatre.kim)[-1][1]
    await ann.say("how")
    assert sent(theatre, ann.facts.account)[-1] == ("photo", own)
    await theatre.stage.press(theatre.kim, "gx:stomp")
    await ann.say("how")
    assert sent(theatre, ann.facts.account)[-1][1] != own


@briefly
async def test_a_file_that_nobody_asked_for_is_kept_nowhere(theatre: Theatre) -> None:
    await theatre.client(total=20, movement="stomp")
    stage, dana = theatre.stage, theatre.dana
    await gives(theatre, dana, "photo")
    assert ids(theatre, dana) == ["cannot-see-files"]
    await stage.say(dana, "/cards")
    await stage.press(dana, "hp:stomp")
    await gives(theatre, dana, "document")
    assert ids(theatre, dana) == ["own-card-wrong-kind"]


@briefly
async def test_a_picture_that_the_platform_has_forgotten_gives_way_to_the_drawing(
    theatre: Theatre,
) -> None:
    ann = await theatre.client(total=20, movement="stomp")
    await gives(theatre, theatre.kim, "photo", caption="stomps")
    own: Any = sent(theatre, theatre.kim)[-1][1]
    del theatre.stage.world.files[own]
    assert (await ann.say("how")).ids == ("how-to-asked",)
    assert len(sent(theatre, ann.facts.account)) == 1
