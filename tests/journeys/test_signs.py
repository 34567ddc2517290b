"""Warning signs, tapped and typed: what to do now, what stops, and what the clinician is told (H1, H3, H7).

The signs and what they ask are the project's table of warning signs (general first aid and clinical
teaching, memory; groin and thigh: Bubbear 2016, doi:10.5041/RMMJ.10259, read).
"""

from __future__ import annotations

import pytest

from scheduler.usecases import holds, join
from tests.journeys.desk import Desk
from tests.journeys.rooms import (
    ANN,
    BO,
    CRISIS,
    DANA,
    EMERGENCY,
    IDS,
    JOINING,
    KIM,
    PHONE,
    Room,
    Whole,
    at,
    on_both,
)

pytest_plugins = ("tests.journeys.furniture",)

TAPPED = {
    "chest": "stop-emergency",
    "breath": "stop-emergency",
    "faint": "stop-emergency",
    "one-side-weak": "stop-emergency",
    "face-speech": "stop-emergency",
    "head-knock": "stop-emergency",
    "no-weight": "stop-emergency",
    "back-weak-legs": "stop-emergency",
    "sudden-back": "stop-today",
    "groin-thigh": "stop-contact",
    "foot-shin-spot": "stop-contact",
    "calf": "stop-urgent-care",
    "dizzy": "stop-today",
    "eye": "stop-urgent-care",
}
TYPED = {
    "chest pain": ("chest", "stop-emergency"),
    "I have pressure on my chest": ("chest", "stop-emergency"),
    "I fainted": ("faint", "stop-emergency"),
    "it is hard to breathe": ("breath", "stop-emergency"),
    "one side of me is weak": ("one-side-weak", "stop-emergency"),
    "I fell and hit my head": ("head-knock", "stop-emergency"),
    "I cannot put weight on my leg": ("no-weight", "stop-emergency"),
    "back pain and my legs are weak": ("back-weak-legs", "stop-emergency"),
    "numb between my legs": ("back-weak-legs", "stop-emergency"),
    "I suddenly can't hold my bladder and my back hurts": ("back-weak-legs", "stop-emergency"),
    "sudden new back pain": ("sudden-back", "stop-today"),
    "new ache in my groin": ("groin-thigh", "stop-contact"),
    "my thigh aches, it is new": ("groin-thigh", "stop-contact"),
    "one spot on my shin hurts more each bout": ("foot-shin-spot", "stop-contact"),
    "my calf is swollen and warm": ("calf", "stop-urgent-care"),
    "I am dizzy": ("dizzy", "stop-today"),
    "my heart is racing": ("dizzy", "stop-today"),
    "I see flashes in one eye": ("eye", "stop-urgent-care"),
    "there are floaters in my eye": ("eye", "stop-urgent-care"),
    "my face is drooping": ("face-speech", "stop-emergency"),
    "my speech is slurred": ("face-speech", "stop-emergency"),
    "help, I can't get up": ("cannot-get-up", "stop-emergency"),
    "I want to kill myself": ("self-harm", "stop-crisis"),
    "I don't want to live any more": ("self-harm", "stop-crisis"),
}


async def prompted(room: Room) -> None:
    await room.step(at(8, 0))
    assert "prompt" in room.ids(ANN)


async def stopped(room: Room, sign: str, said: str) -> None:
    """Everything is held, she was told what to do, and the urgent flag has its number and phone."""
    assert room.ids(ANN)[-1] == said
    stop = room.last(ANN)[-1].args
    assert (stop["phone"], stop["emergency_number"]) == (PHONE, EMERGENCY)
    assert await room.holds() == [None]
    assert await room.question() is None
    flag = room.the(DANA, "flag").args
    assert (flag["urgent"], flag["sign"], flag["phone"]) == (True, sign, "555 0142")
    assert isinstance(flag["flag"], int)
    assert not await room.run(lambda tx: tx.days.open_bouts(IDS[ANN]))


@pytest.mark.parametrize("sign", TAPPED)
async def test_a_tapped_sign_says_what_to_do_and_stops_everything(desk: Desk, sign: str) -> None:
    await prompted(desk)
    await desk.press(ANN, "hurt")
    await desk.press(ANN, f"p:sign:{sign}")
    await stopped(desk, sign, TAPPED[sign])


@pytest.mark.parametrize("words", TYPED)
async def test_a_typed_sign_does_the_same_with_her_own_words(desk: Desk, words: str) -> None:
    sign, said = TYPED[words]
    await prompted(desk)
    await desk.say(ANN, words)
    await stopped(desk, sign, said)
    assert words in str(desk.the(DANA, "flag").args["words"])


@on_both
async def test_an_emergency_in_the_whole_program_is_answered_within_the_same_second(
    whole: Whole,
) -> None:
    await prompted(whole)
    before = whole.now
    await whole.say(ANN, "chest pain")
    assert whole.now == before
    await stopped(whole, "chest", "stop-emergency")
    told = len(whole.chat(ANN))
    await whole.step(at(23, 0, day=3))
    assert len(whole.chat(ANN)) == told


@pytest.mark.parametrize("words", ["chest pain", "my calf is swollen and warm", "I am dizzy"])
@pytest.mark.parametrize("steps", [(), ("sign:none",), ("sign:none", "place:knee", "score:2")])
async def test_a_sign_typed_at_any_step_of_the_questions_stops_everything(
    desk: Desk, words: str, steps: tuple[str, ...]
) -> None:
    sign, said = TYPED[words]
    await prompted(desk)
    await desk.press(ANN, "hurt")
    for step in steps:
        await desk.press(ANN, f"p:{step}")
    await desk.say(ANN, words)
    await stopped(desk, sign, said)


@pytest.mark.parametrize("by", ["tap", "text"])
async def test_sore_muscles_are_only_noted(desk: Desk, by: str) -> None:
    await prompted(desk)
    if by == "tap":
        await desk.press(ANN, "hurt")
        await desk.press(ANN, "p:sign:sore")
    else:
        await desk.say(ANN, "my muscles are sore")
    assert desk.count(ANN, "pain-noted") == 1
    assert await desk.holds() == []
    assert await desk.flags() == ()
    assert [kind for kind, _ in await desk.reports()] == ["pain"]
    assert await desk.run(lambda tx: tx.days.open_bouts(IDS[ANN]))


@pytest.mark.parametrize("by", ["tap", "text"])
async def test_a_leak_stops_that_movement_only_and_is_no_emergency(desk: Desk, by: str) -> None:
    await prompted(desk)
    if by == "tap":
        await desk.press(ANN, "hurt")
        await desk.press(ANN, "p:sign:leak")
    else:
        await desk.say(ANN, "I leak urine when I jump")
    assert desk.ids(ANN) == ["stop-leak"]
    assert await desk.holds() == ["stomp"]
    await desk.step(at(9))  # not urgent: it comes in the working hours
    flag = desk.the(DANA, "flag").args
    assert (flag["urgent"], flag["sign"], flag["movement"]) == (False, "leak", "stomp")
    assert not await desk.run(lambda tx: tx.days.open_bouts(IDS[ANN]))


async def test_a_fall_told_with_a_leak_is_asked_about(desk: Desk) -> None:
    await desk.step(at(8, 0))
    await desk.say(ANN, "I fell and I leak when I jump")
    assert desk.ids(ANN) == ["stop-leak", "ask-fall-sign"]
    assert await desk.holds() == ["stomp"]
    await desk.later(minutes=15)  # nobody answers (H5)
    assert None in await desk.holds()
    assert "fall" in [flag.kind for flag in await desk.flags() if flag.urgent]


@pytest.mark.parametrize(
    ("said", "asked"),
    [
        ("my hip hurts and I leak urine", ["stop-leak", "ask-pain-sign"]),
        ("I leak when I jump and my hip hurts 4", ["stop-leak", "ask-pain-sign"]),
        ("my hip hurts 8 and I leak urine", ["stop-leak", "you-said-score", "stop-today"]),
    ],
)
async def test_pain_told_with_a_leak_goes_the_way_of_pain(
    desk: Desk, said: str, asked: list[str]
) -> None:
    """A leak stops its movement only (H1); 6 of 10 stops everything (H2)."""
    await desk.step(at(8, 0))
    await desk.say(ANN, said)
    assert desk.ids(ANN) == asked
    assert (None in await desk.holds()) == ("stop-today" in asked)
    await desk.later(minutes=15)
    assert None in await desk.holds()


async def test_a_leak_among_the_signs_takes_back_no_pain_that_was_told(desk: Desk) -> None:
    await desk.step(at(8, 0))
    await desk.say(ANN, "my hip hurts 4")
    await desk.press(ANN, "p:sign:leak")
    assert desk.ids(ANN) == ["stop-leak", "ask-pain-place"]
    assert await desk.holds() == ["stomp"]
    for answer in ("p:place:hip", "p:when:during", "p:new:1"):  # new pain in the hip (H2)
        await desk.press(ANN, answer)
    assert None in await desk.holds()


async def test_after_a_leak_another_sign_is_still_a_hold_of_everything(desk: Desk) -> None:
    await prompted(desk)
    await desk.say(ANN, "I leak urine when I jump")
    await desk.later(minutes=10)
    await desk.say(ANN, "chest pain")
    assert desk.ids(ANN) == ["stop-emergency"]
    assert set(await desk.holds()) == {"stomp", None}
    await desk.step(at(9))
    assert desk.count(DANA, "flag") == 2


async def test_self_harm_gets_the_crisis_line_beside_any_other_sign(desk: Desk) -> None:
    await prompted(desk)
    await desk.say(ANN, "I want to die, my chest hurts")
    assert desk.ids(ANN)[-1] == "stop-crisis"
    stop = desk.last(ANN)[-1].args
    assert (stop["crisis_line"], stop["emergency_number"]) == (CRISIS, EMERGENCY)
    assert desk.the(DANA, "flag").args["sign"] == "self-harm"


@pytest.mark.parametrize("words", ["no chest pain today", "I am not dizzy", "my knees are fine"])
async def test_a_denied_sign_stops_nothing(desk: Desk, words: str) -> None:
    await prompted(desk)
    await desk.say(ANN, words)
    assert await desk.holds() == []
    assert await desk.flags() == ()


async def test_help_as_a_command_is_no_emergency(desk: Desk) -> None:
    await prompted(desk)
    await desk.say(ANN, "help")
    assert desk.ids(ANN) == ["help-client"]
    assert await desk.holds() == []


@pytest.mark.parametrize("words", ["chest pain", "help, I can't get up", "I want to kill myself"])
async def test_before_consent_an_emergency_is_still_answered_and_flagged(
    desk: Desk, words: str
) -> None:
    sign, said = TYPED[words]
    await invited(desk)
    await desk.say(BO, words)
    assert desk.ids(BO)[-1] == said
    flag = desk.the(DANA, "flag").args
    assert (flag["urgent"], flag["sign"], flag["name"]) == (True, sign, "Bo")
    assert await desk.holds(BO) == [None]
    assert await desk.run(lambda tx: tx.people.client(IDS[BO]).consent_at) is None


@pytest.mark.parametrize("words", ["/hurts", "my knee hurts", "sore muscles", "/today", "/undo"])
async def test_before_consent_nothing_about_health_is_asked(desk: Desk, words: str) -> None:
    await invited(desk)
    await desk.say(BO, words)
    assert desk.ids(BO) in (["notice"], ["hurts-before-consent", "notice"])
    assert await desk.question(BO) == ("join", "consent")


@pytest.mark.parametrize("data", ["hurt", "fell", "p:sign:chest", "m:9", "u:3", "t:keep", "all:1"])
async def test_before_consent_a_forged_button_asks_nothing_about_health(
    desk: Desk, data: str
) -> None:
    await invited(desk)
    await desk.forge(BO, data)
    assert desk.ids(BO) in (["notice"], ["question-over"])
    assert await desk.question(BO) == ("join", "consent")


async def invited(room: Room) -> None:
    """Bo has opened his link and reads the notice."""
    code = await room.run(lambda tx: join.invite(tx, None, IDS[BO], room.now))
    await room.say(BO, f"/start {code}")
    assert room.ids(BO) == ["notice"]


async def test_a_hold_from_before_consent_stands_after_joining(desk: Desk) -> None:
    await invited(desk)
    await desk.say(BO, "chest pain")
    for button in JOINING:
        await desk.press(BO, button)
    assert await desk.holds(BO) == [None]


async def test_without_a_clinician_in_chat_the_admin_gets_number_and_urgency_but_no_words(
    desk: Desk,
) -> None:
    await prompted(desk)
    await block(desk, DANA)
    await desk.say(ANN, "chest pain, please help")
    told = desk.the(KIM, "flag-admin").args
    assert set(told) == {"flag", "name", "urgent"}
    assert told["urgent"] is True
    assert desk.count(DANA, "flag") == 0


async def block(room: Desk, who: int) -> None:
    await room.update(
        {
            "my_chat_member": {
                "from": {"id": who, "is_bot": False, "language_code": "en"},
                "chat": {"id": who, "type": "private"},
                "date": int(room.now.timestamp()),
                "new_chat_member": {"status": "kicked"},
            }
        }
    )


async def test_the_same_sign_twice_on_a_day_is_one_flag_and_two_answers(desk: Desk) -> None:
    await prompted(desk)
    await desk.say(ANN, "chest pain")
    await desk.later(minutes=1)
    await desk.say(ANN, "chest pain again")
    assert desk.count(ANN, "stop-emergency") == 2
    assert desk.count(DANA, "flag") == 1
    assert len(await desk.flags()) == 1


async def test_a_worse_sign_on_the_screen_that_stays_is_taken_after_a_lesser_one(
    desk: Desk,
) -> None:
    """Signs are taken at any time, and an old button does the right thing (P2, P9)."""
    await prompted(desk)
    await desk.press(ANN, "hurt")
    screen = desk.chat(ANN)[-1][0]
    await desk.press_on(ANN, screen, "p:sign:leak")
    await desk.press_on(ANN, screen, "p:sign:chest")
    assert desk.ids(ANN) == ["stop-emergency"]
    assert await desk.holds() == ["stomp", None]


@pytest.mark.parametrize(
    ("asked", "data", "told"),
    [
        ("hurt", "p:sign:chest", "stop-emergency"),
        ("hurt", "p:score:6", "stop-today"),
        ("hurt", "m:6", "stop-today"),
        ("fell", "f:sign:head-knock", "stop-emergency"),
        ("fell", "f:injured:1", "stop-today"),
    ],
)
async def test_an_old_button_that_means_a_hold_is_taken_also_right_after_a_release(
    desk: Desk, asked: str, data: str, told: str
) -> None:
    await prompted(desk)
    await desk.forge(ANN, asked)
    screen = desk.chat(ANN)[-1][0]
    for _ in range(2):
        await desk.press_on(ANN, screen, data)
        assert told in desk.ids(ANN)
        assert await desk.holds() == [None]
        await desk.run(
            lambda tx: holds.release(
                tx, IDS[DANA], IDS[ANN], desk.now, daily_total=None, tomorrow=True
            )
        )


@pytest.mark.parametrize(
    "data",
    ["p:sign:none", "p:sign:sore", "p:score:5", "m:5", "p:new:1", "f:sign:none", "f:injured:0"],
)
async def test_an_old_button_that_means_no_hold_by_itself_is_over(desk: Desk, data: str) -> None:
    await prompted(desk)
    await desk.forge(ANN, data)
    assert desk.ids(ANN) == ["question-over"]
    assert await desk.holds() == []


async def test_an_old_screen_of_a_morning_answers_no_question_about_pain_with_less(
    desk: Desk,
) -> None:
    await prompted(desk)
    await desk.press(ANN, "hurt")
    await desk.press(ANN, "p:sign:none")
    await desk.press(ANN, "p:place:knee")
    await desk.press_on(ANN, 1, "m:0")
    assert await desk.question() == ("pain", "score")


async def test_a_sign_named_by_somebody_who_blocked_and_came_back_is_taken(desk: Desk) -> None:
    await prompted(desk)
    await block(desk, ANN)
    await desk.say(ANN, "chest pain")
    assert desk.ids(ANN) == ["stop-emergency"]
    assert await desk.holds() == [None]
