"""A fall: stop, ask, hold where something is hurt or nothing is answered, and always a flag (H5)."""

from __future__ import annotations

from datetime import timedelta

import pytest

from bot.words import label
from scheduler.domain.messages import text
from tests.journeys.desk import Desk
from tests.journeys.rooms import ANN, DANA, IDS, Room, Whole, at, on_both

pytest_plugins = ("tests.journeys.furniture",)

HARMLESS = {
    "sign": "none",
    "injured": "0",
    "new_pain": "0",
    "when": "today",
    "doing": "walking",
}
LABELS = {
    "sign:none": "no-sign",
    "injured:0": "no",
    "injured:1": "yes",
    "new_pain:0": "no",
    "new_pain:1": "yes",
}


async def prompted(room: Room) -> None:
    await room.step(at(8, 0))
    assert "prompt" in room.ids(ANN)


async def told(room: Room, *, typed: bool, **answers: str) -> None:
    """She says that she fell; every question that comes is answered by tap or in the button's words."""
    await room.say(ANN, "I fell")
    given = {**HARMLESS, **answers}
    while (asked := await room.question()) is not None and asked[0] == "fall":
        step = asked[1]
        assert room.ids(ANN)[-1] == f"ask-fall-{step.replace('_', '-')}"
        if typed:
            await room.say(ANN, in_words(step, given[step]))
        else:
            await room.press(ANN, f"f:{step}:{given[step]}")
        assert await room.question() != asked, f"{step} was not taken: {room.last(ANN)}"


def in_words(step: str, value: str) -> str:
    prefix = {"when": "fall"}.get(step, step)
    return label(text(f"button-{LABELS.get(f'{step}:{value}', f'{prefix}-{value}')}"), "en")


async def goes_on(room: Room) -> bool:
    return bool(await room.run(lambda tx: tx.days.open_bouts(IDS[ANN])))


@pytest.mark.parametrize("typed", [False, True])
async def test_a_fall_without_harm_is_flagged_and_the_day_goes_on(desk: Desk, typed: bool) -> None:
    await prompted(desk)
    await told(desk, typed=typed)
    assert desk.count(ANN, "fall-noted") == 1
    assert await desk.holds() == []
    assert await goes_on(desk)
    await desk.step(at(9))
    flag = desk.the(DANA, "flag").args  # not urgent: it came in the working hours
    assert (flag["kind"], flag["urgent"], flag["doing"]) == ("fall", False, "walking")


@pytest.mark.parametrize("typed", [False, True])
@pytest.mark.parametrize(
    ("answers", "said"),
    [
        ({"sign": "head-knock"}, "stop-emergency"),
        ({"sign": "no-weight"}, "stop-emergency"),
        ({"sign": "cannot-get-up"}, "stop-emergency"),
        ({"injured": "1"}, "stop-today"),
        ({"new_pain": "1"}, "stop-today"),
    ],
)
async def test_injury_new_pain_or_a_sign_is_a_hold_at_once(
    desk: Desk, answers: dict[str, str], said: str, typed: bool
) -> None:
    await prompted(desk)
    await told(desk, typed=typed, **answers)
    assert desk.ids(ANN)[-1] == said
    assert await desk.holds() == [None]
    flag = desk.the(DANA, "flag").args
    assert (flag["kind"], flag["urgent"], flag["phone"]) == ("fall", True, "555 0142")
    assert [kind for kind, _ in await desk.reports()] == ["fall"]
    assert not await goes_on(desk)


@pytest.mark.parametrize("when", ["today", "yesterday", "earlier"])
@pytest.mark.parametrize("doing", ["exercise", "walking", "stairs", "getting-up", "other"])
async def test_when_and_what_she_was_doing_are_kept(desk: Desk, when: str, doing: str) -> None:
    await told(desk, typed=True, when=when, doing=doing)
    ((kind, body),) = await desk.reports()
    assert (kind, body["when"], body["doing"]) == ("fall", when, doing)


@on_both
async def test_prompts_stop_until_a_fall_is_answered_and_silence_is_a_hold(whole: Whole) -> None:
    await prompted(whole)
    await whole.say(ANN, "I fell in the garden")
    assert await whole.run(lambda tx: tx.days.open_bouts(IDS[ANN])) == ()
    await whole.step(at(8, 15) - timedelta(seconds=1))
    assert await whole.holds() == []
    await whole.step(at(8, 15))
    assert await whole.holds() == [None]
    assert whole.ids(ANN)[0] == "no-answer-so-stopped"
    flag = whole.the(DANA, "flag").args
    assert (flag["kind"], flag["urgent"], flag["unanswered"]) == ("fall", True, "sign")
    assert "garden" in str(flag["words"])


async def test_a_sign_typed_with_the_fall_is_kept_as_a_fall(desk: Desk) -> None:
    await prompted(desk)
    await desk.say(ANN, "I fell and hit my head")
    assert desk.ids(ANN)[-1] == "stop-emergency"
    assert [kind for kind, _ in await desk.reports()] == ["fall"]
    assert desk.the(DANA, "flag").args["kind"] == "fall"


async def test_a_sign_named_while_the_fall_is_asked_about_is_kept_as_a_fall(desk: Desk) -> None:
    await prompted(desk)
    await desk.say(ANN, "I fell")
    await desk.say(ANN, "I hit my head")
    assert desk.ids(ANN)[-1] == "stop-emergency"
    assert [kind for kind, _ in await desk.reports()] == ["fall"]
    assert desk.the(DANA, "flag").args["kind"] == "fall"


async def test_a_fall_told_within_the_pain_questions_gets_its_own_answers(desk: Desk) -> None:
    """The question asked last is the one that "no" answers."""
    await prompted(desk)
    await desk.press(ANN, "hurt")
    for step in ("sign:none", "place:knee", "score:1", "when:during"):
        await desk.press(ANN, f"p:{step}")
    assert await desk.question() == ("pain", "new")
    await desk.later(minutes=1)
    await desk.say(ANN, "and I fell")
    assert desk.ids(ANN)[-1] == "ask-fall-sign"
    await desk.say(ANN, "no")
    assert await desk.question() == ("fall", "injured")


async def test_a_number_beside_a_fall_is_logged(desk: Desk) -> None:
    await prompted(desk)
    await desk.say(ANN, "did 6 then I fell")
    assert await desk.reps() == [6]
    assert desk.ids(ANN) == ["noted", "ask-fall-sign"]


async def test_two_questions_left_open_are_both_told_to_the_clinician(desk: Desk) -> None:
    await prompted(desk)
    await desk.press(ANN, "hurt")
    await desk.later(minutes=1)
    await desk.say(ANN, "I fell")
    await desk.step(at(8, 30))
    assert await desk.holds() == [None]
    assert await desk.question() is None
    kinds = {kind for kind, _ in await desk.reports()}
    assert kinds == {"pain", "fall"}
    assert desk.the(DANA, "flag").args["kind"] == "fall"
    assert desk.count(ANN, "no-answer-so-stopped") == 1


@pytest.mark.parametrize("words", ["I fell asleep on the sofa", "night fell", "no falls this week"])
async def test_other_falling_is_no_fall(desk: Desk, words: str) -> None:
    await prompted(desk)
    await desk.say(ANN, words)
    assert await desk.question() in (None, ("pass", "yes-no"))
    assert await desk.flags() == ()


async def test_a_fall_on_a_rest_day_at_night_is_asked_about(desk: Desk) -> None:
    await desk.step(at(23, 0, day=1))
    await told(desk, typed=False, injured="1")
    assert await desk.holds() == [None]


async def test_an_edit_does_not_take_a_fall_back(desk: Desk) -> None:
    await prompted(desk)
    await desk.say(ANN, "I fell")
    await desk.edit(ANN, "10")
    assert await desk.question() == ("fall", "sign")


async def test_the_button_under_words_not_understood_asks_about_the_fall(desk: Desk) -> None:
    await prompted(desk)
    await desk.say(ANN, "blorp blorp")
    await desk.press(ANN, "fell")
    assert desk.ids(ANN) == ["ask-fall-sign"]


@pytest.mark.parametrize("words", ["my shoulder is sore", "my legs are sore"])
async def test_what_is_little_by_itself_stops_everything_after_a_fall(
    desk: Desk, words: str
) -> None:
    """New pain after a fall is a hold (H5), whatever it would be without one."""
    await desk.say(ANN, "I fell")
    await desk.say(ANN, words)
    assert "stop-today" in desk.ids(ANN)
    assert await desk.holds() == [None]
    assert [flag.kind for flag in await desk.flags() if flag.urgent] == ["fall"]


async def test_a_leak_told_after_a_fall_leaves_the_questions_about_the_fall_open(
    desk: Desk,
) -> None:
    await desk.say(ANN, "I fell")
    await desk.say(ANN, "I leaked urine")
    assert desk.ids(ANN) == ["stop-leak"]
    assert await desk.question() is not None
    await desk.later(minutes=16)  # nobody answers (H5)
    assert None in await desk.holds()
    assert "fall" in [flag.kind for flag in await desk.flags() if flag.urgent]
