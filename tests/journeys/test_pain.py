"""Something hurts: every edge, by tap and in words, that day and the next morning (H1-H4, P3, I1, I6)."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest

from bot.words import label
from scheduler.domain.messages import text
from scheduler.domain.pain import BONE_PLACES, PLACES
from scheduler.ports import Tx
from scheduler.usecases import join
from tests.journeys.desk import Desk
from tests.journeys.rooms import (
    ANN,
    BO,
    DANA,
    IDS,
    JOINING,
    MONDAY,
    PHONE,
    Room,
    Whole,
    at,
    on_both,
)

pytest_plugins = ("tests.journeys.furniture",)

# Scale edges: 0-10 numeric rating, whole numbers; zones 0-2, 3-5, 6-10 (Silbernagel 2007, read in
# abstract; edges from memory). Next morning: usual + 2, or 3 where usual is unknown (ours).
EDGES = {0: "pain-noted", 2: "pain-noted", 3: "pain-caution", 5: "pain-caution"}
HOLDS = (6, 10)
KNOWN_KNEE = {"sign": "none", "place": "knee", "when": "during", "new": "0", "sharper": "0"}
WORDS = {"none": "no-sign", "new:1": "new", "new:0": "known", "sharper:1": "sharper"} | {
    "sharper:0": "as-usual"
}
THURSDAY = MONDAY + timedelta(days=3)


async def prompted(room: Room) -> None:
    """Ann's first bout is asked at 08:00."""
    await room.step(at(8, 0))
    assert "prompt" in room.ids(ANN)


async def tapped(room: Room, **answers: str) -> None:
    """Something hurts; every question that comes is answered with a tap."""
    await room.press(ANN, "hurt")
    await _answered(room, answers, typed=False)


async def typed(room: Room, **answers: str) -> None:
    """The same in words only: each answer is what its button says."""
    await room.say(ANN, "it hurts")
    await _answered(room, answers, typed=True)


async def _answered(room: Room, answers: dict[str, str], *, typed: bool) -> None:
    given = {**KNOWN_KNEE, **answers}
    while (asked := await room.question()) is not None and asked[0] == "pain":
        step = asked[1]
        assert room.ids(ANN)[-1] == f"ask-pain-{step}"
        if typed:
            await room.say(ANN, in_words(step, given[step]))
        else:
            await room.press(ANN, f"p:{step}:{given[step]}")
        assert await room.question() != asked, f"{step} was not taken: {room.last(ANN)}"


def in_words(step: str, value: str) -> str:
    """What the button for a value says in English."""
    if step == "score":
        return value
    known = WORDS.get(value) or WORDS.get(f"{step}:{value}") or f"{step}-{value}"
    return label(text(f"button-{known}"), "en")


async def goes_on(room: Room) -> bool:
    """Whether a bout is asked or waits to be."""
    return bool(await room.run(lambda tx: tx.days.open_bouts(IDS[ANN])))


async def still_asked(room: Room, since: int) -> int:
    """Prompts and nudges that Ann got after her first `since` messages."""
    return sum(
        each.id in {"prompt", "nudge"} for _, said in room.chat(ANN)[since:] for each in said
    )


# --- the edges -----------------------------------------------------------------------------------


@pytest.mark.parametrize("way", [tapped, typed])
@pytest.mark.parametrize("score", EDGES)
async def test_up_to_five_of_a_known_pain_the_day_goes_on_as_prescribed(
    desk: Desk, score: int, way: object
) -> None:
    await prompted(desk)
    await way(desk, score=str(score))  # type: ignore[operator]
    assert desk.count(ANN, EDGES[score]) == 1
    assert await desk.holds() == []
    assert await desk.flags() == ()
    assert await goes_on(desk)


@pytest.mark.parametrize("way", [tapped, typed])
@pytest.mark.parametrize("score", HOLDS)
async def test_from_six_on_everything_stops_and_the_clinician_is_told_at_once(
    desk: Desk, score: int, way: object
) -> None:
    await prompted(desk)
    await way(desk, score=str(score))  # type: ignore[operator]
    assert desk.ids(ANN) == ["you-said-score", "stop-today"]
    stopped = desk.the(ANN, "stop-today").args
    assert (stopped["phone"], stopped["emergency_number"]) == (PHONE, "112")
    assert await desk.holds() == [None]
    flag = desk.the(DANA, "flag").args
    assert (flag["urgent"], flag["score"], flag["place"]) == (True, score, "knee")
    assert flag["phone"] == "555 0142"
    told = len(desk.chat(ANN))
    await desk.step(at(23, 0, day=7))
    assert len(desk.chat(ANN)) == told
    assert await desk.reps() == []


@on_both
@pytest.mark.parametrize("score", [5, 6])
async def test_five_goes_on_and_six_stops_in_the_whole_program(whole: Whole, score: int) -> None:
    await prompted(whole)
    await tapped(whole, score=str(score))
    held = score == 6
    assert await whole.holds() == ([None] if held else [])
    assert whole.count(DANA, "flag") == held
    before = len(whole.chat(ANN))
    await whole.step(at(20, 30))
    assert (await still_asked(whole, since=before) == 0) == held


@pytest.mark.parametrize("said", ["11", "-1", "100", "5.5", "a lot", "🙂"])
async def test_a_score_outside_the_scale_is_refused_and_the_question_stays(
    desk: Desk, said: str
) -> None:
    await prompted(desk)
    await desk.press(ANN, "hurt")
    await desk.press(ANN, "p:sign:none")
    await desk.press(ANN, "p:place:knee")
    await desk.say(ANN, said)
    assert desk.ids(ANN) == ["answer-score", "ask-pain-score"]
    assert await desk.question() == ("pain", "score")
    assert await desk.reps() == []
    await desk.say(ANN, "7")
    assert await desk.holds() == [None]


@pytest.mark.parametrize("said", ["5/10", "5 out of 10", "five", "about 5", "5."])
async def test_five_of_ten_is_five(desk: Desk, said: str) -> None:
    await prompted(desk)
    await desk.press(ANN, "hurt")
    await desk.press(ANN, "p:sign:none")
    await desk.press(ANN, "p:place:knee")
    await desk.say(ANN, said)
    await _answered(desk, {}, typed=False)
    assert desk.count(ANN, "pain-caution") == 1
    assert (await desk.reports())[0][1]["score"] == 5


@pytest.mark.parametrize("way", [tapped, typed])
@pytest.mark.parametrize("place", PLACES)
async def test_new_pain_in_a_bone_place_stops_at_any_score(
    desk: Desk, place: str, way: object
) -> None:
    """Back, hip, groin, thigh, shin, foot (H2); not the knee and not elsewhere."""
    await prompted(desk)
    await way(desk, place=place, score="1", new="1")  # type: ignore[operator]
    assert await desk.holds() == ([None] if place in BONE_PLACES else [])


@pytest.mark.parametrize("way", [tapped, typed])
async def test_sharper_than_usual_stops_at_any_score(desk: Desk, way: object) -> None:
    await prompted(desk)
    await way(desk, score="0", sharper="1")  # type: ignore[operator]
    assert await desk.holds() == [None]
    assert desk.the(DANA, "flag").args["sharper"] is True


@pytest.mark.parametrize("said", ["new", "It is new", "yes"])
async def test_new_can_be_said_in_a_word(desk: Desk, said: str) -> None:
    await prompted(desk)
    await desk.press(ANN, "hurt")
    for step, value in (("sign", "none"), ("place", "hip"), ("score", "1"), ("when", "during")):
        await desk.press(ANN, f"p:{step}:{value}")
    await desk.say(ANN, said)
    assert await desk.holds() == [None]


async def test_her_own_words_reach_the_clinician(desk: Desk) -> None:
    await prompted(desk)
    await desk.say(ANN, "my knee hurts on the stairs")
    await _answered(desk, {"score": "8"}, typed=False)
    assert "my knee hurts on the stairs" in str(desk.the(DANA, "flag").args["words"])


async def test_soreness_named_later_does_not_take_back_what_was_said(desk: Desk) -> None:
    await prompted(desk)
    await desk.press(ANN, "hurt")
    for step, value in (("sign", "none"), ("place", "hip"), ("score", "5")):
        await desk.press(ANN, f"p:{step}:{value}")
    await desk.say(ANN, "sore again")
    assert await desk.question() == ("pain", "when")


@pytest.mark.parametrize("score", [3, 5])
async def test_sore_with_a_score_of_caution_is_asked_about_next_morning(
    desk: Desk, score: int
) -> None:
    await prompted(desk)
    await desk.say(ANN, f"muscles sore {score}/10")
    assert desk.count(ANN, "pain-caution") == 1


# --- the next morning ----------------------------------------------------------------------------


async def with_usual(room: Room, usual: int | None) -> None:
    def work(tx: Tx) -> None:
        tx.people.save_client(replace(tx.people.client(IDS[ANN]), usual_pain=usual))

    await room.run(work)


async def cautioned_the_day_before(room: Room) -> None:
    """On Wednesday, a rest day, Ann reports 4 of 10; Thursday is an impact day."""
    await room.step(at(21, 0))
    await room.step(at(10, 0, day=2))
    await room.say(ANN, "it hurts")
    await _answered(room, {"score": "4"}, typed=False)
    assert room.count(ANN, "pain-caution") == 1


@pytest.mark.parametrize("by", ["tap", "text"])
@pytest.mark.parametrize(
    ("usual", "score", "held"),
    [(4, 5, False), (4, 6, True), (None, 2, False), (None, 3, True), (0, 1, False), (0, 2, True)],
)
async def test_next_morning_two_above_usual_stops_or_three_where_usual_is_unknown(
    desk: Desk, usual: int | None, score: int, held: bool, by: str
) -> None:
    await with_usual(desk, usual)
    await cautioned_the_day_before(desk)
    await desk.step(at(8, 0, day=3))
    assert desk.ids(ANN) == ["ask-morning"]
    if by == "tap":
        await desk.press(ANN, f"m:{score}")
    else:
        await desk.say(ANN, str(score))
    assert await desk.holds() == ([None] if held else [])
    assert desk.count(DANA, "flag") == held
    assert await goes_on(desk) != held


@on_both
async def test_without_the_mornings_answer_no_bout_is_asked_until_it_comes(whole: Whole) -> None:
    await cautioned_the_day_before(whole)
    before = len(whole.chat(ANN))
    await whole.step(at(15, 0, day=3))
    assert whole.ids(ANN) == ["ask-morning"]
    assert await still_asked(whole, since=before) == 0
    await whole.say(ANN, "1")
    await whole.step(at(20, 30, day=3))
    assert await still_asked(whole, since=before) > 0


async def test_an_unanswered_morning_keeps_the_next_days_quiet_too(desk: Desk) -> None:
    await cautioned_the_day_before(desk)
    before = len(desk.chat(ANN))
    await desk.step(at(23, 0, day=10))
    assert await still_asked(desk, since=before) == 0
    assert await desk.question() == ("morning", "score")


@pytest.mark.parametrize("said", ["11", "-1", "7.5", "999"])
async def test_a_bare_number_off_the_scale_is_no_bout_while_the_morning_is_asked(
    desk: Desk, said: str
) -> None:
    await cautioned_the_day_before(desk)
    await desk.step(at(8, 0, day=3))
    await desk.say(ANN, said)
    assert desk.ids(ANN) == ["answer-score", "ask-morning"]
    assert await desk.reps(THURSDAY) == []
    assert await desk.question() == ("morning", "score")
    await desk.say(ANN, "1")
    assert await desk.question() is None


async def test_a_score_in_the_morning_is_not_taken_for_last_nights_how_many(desk: Desk) -> None:
    """An older "how many" left open must not swallow the pain of this morning."""
    await desk.step(at(17, 0))
    await tapped(desk, score="4")
    await desk.step(at(19, 0))
    await desk.press(ANN, desk.button(ANN, "few:"))
    assert desk.ids(ANN) == ["ask-reps"]
    await desk.step(at(8, 30, day=1))
    assert desk.ids(ANN) == ["ask-morning"]
    await desk.say(ANN, "7")
    assert await desk.holds() == [None]
    assert 7 not in await desk.reps()


async def test_a_hold_before_the_morning_takes_its_question_away(desk: Desk) -> None:
    await cautioned_the_day_before(desk)
    await desk.step(at(11, 0, day=2))
    await desk.say(ANN, "it hurts")
    await _answered(desk, {"score": "9"}, typed=False)
    before = len(desk.chat(ANN))
    await desk.step(at(23, 0, day=3))
    assert len(desk.chat(ANN)) == before


@pytest.mark.parametrize(("score", "held"), [(4, False), (5, True)])
async def test_a_score_that_is_told_otherwise_is_the_mornings_answer_too(
    desk: Desk, score: int, held: bool
) -> None:
    """Usual is 3: 5 is two above it (H2). "Go on" is not said while nothing would be asked."""
    await with_usual(desk, 3)
    await cautioned_the_day_before(desk)
    await desk.step(at(8, 5, day=3))
    await desk.say(ANN, "my knee hurts")
    await _answered(desk, {"score": str(score)}, typed=False)
    assert await desk.holds() == ([None] if held else [])
    assert await desk.question() is None
    assert "ask-morning" not in desk.ids(ANN)
    assert await goes_on(desk) != held


async def test_three_in_the_morning_is_too_much_for_who_usually_has_one(desk: Desk) -> None:
    await with_usual(desk, 1)
    await cautioned_the_day_before(desk)
    await desk.step(at(8, 0, day=3))
    await desk.say(ANN, "my knee hurts 3")
    assert await desk.holds() == [None]
    assert desk.ids(ANN) == ["you-said-score", "stop-today"]


async def test_what_gives_no_score_leaves_the_mornings_question_and_asks_it_again(
    desk: Desk,
) -> None:
    await cautioned_the_day_before(desk)
    await desk.step(at(8, 0, day=3))
    await desk.say(ANN, "/hurts")
    await desk.press(ANN, "oops")
    assert desk.ids(ANN) == ["mistake-noted", "ask-morning"]
    await desk.press(ANN, "m:1")
    assert await desk.question() is None
    assert await goes_on(desk)


@pytest.mark.parametrize("said", ["no pain", "it does not hurt"])
async def test_no_pain_in_words_is_followed_by_the_mornings_question_and_its_zero(
    desk: Desk, said: str
) -> None:
    """Nothing is asked before its number (H2): "OK" alone would leave her waiting all day."""
    await cautioned_the_day_before(desk)
    await desk.step(at(8, 0, day=3))
    await desk.say(ANN, said)
    assert desk.ids(ANN) == ["no-pain-noted", "ask-morning"]
    await desk.press(ANN, "m:0")
    assert await goes_on(desk)


# --- pain beside a number, again and again, taken back -----------------------------------------


@pytest.mark.parametrize("said", ["did 7, knee hurts", "7 done but my knee hurts"])
async def test_a_number_beside_pain_is_logged_and_the_question_follows(
    desk: Desk, said: str
) -> None:
    await prompted(desk)
    await desk.say(ANN, said)
    assert await desk.reps() == [7]
    assert desk.ids(ANN) == ["noted", "ask-pain-sign"]
    assert await desk.question() == ("pain", "sign")


@on_both
async def test_tapped_by_mistake_puts_the_day_back(whole: Whole) -> None:
    await prompted(whole)
    await whole.press(ANN, "hurt")
    await whole.step(at(8, 5))
    await whole.press(ANN, "oops")
    assert whole.count(ANN, "mistake-noted") == 1
    assert await whole.holds() == []
    assert await whole.reports() == []
    await whole.step(at(8, 30))
    await whole.press(ANN, whole.button(ANN, "all:"))
    assert await whole.reps() == [10]
    while whole.now < at(20, 30):
        await whole.later(minutes=15)
        if "prompt" in whole.ids(ANN):
            await whole.press(ANN, whole.button(ANN, "all:"))
    assert sum(await whole.reps()) == 40


async def test_a_mistake_can_be_typed_too(desk: Desk) -> None:
    await prompted(desk)
    await desk.press(ANN, "hurt")
    await desk.say(ANN, "I tapped this by mistake")
    assert desk.count(ANN, "mistake-noted") == 1
    assert await desk.question() is None


async def test_once_something_is_said_it_is_no_mistake_any_more(desk: Desk) -> None:
    await prompted(desk)
    await desk.say(ANN, "my hip hurts")
    assert "oops" in desk.buttons(ANN)
    await desk.press(ANN, "oops")
    assert desk.ids(ANN) == ["mistake-too-late", "ask-pain-sign"]
    assert await desk.question() == ("pain", "sign")


@on_both
async def test_a_question_left_open_for_fifteen_minutes_is_a_hold(whole: Whole) -> None:
    await prompted(whole)
    await whole.press(ANN, "hurt")
    await whole.step(at(8, 15) - timedelta(seconds=1))
    assert await whole.holds() == []
    assert whole.count(DANA, "flag") == 0
    await whole.step(at(8, 15))
    assert await whole.holds() == [None]
    assert whole.ids(ANN) == ["no-answer-so-stopped", "stop-today"]
    flag = whole.the(DANA, "flag").args
    assert (flag["urgent"], flag["unanswered"]) == (True, "sign")


async def test_each_answer_gives_fifteen_more_minutes(desk: Desk) -> None:
    await prompted(desk)
    await desk.press(ANN, "hurt")
    await desk.step(at(8, 14))
    await desk.press(ANN, "p:sign:none")
    await desk.step(at(8, 28))
    assert await desk.holds() == []
    await desk.step(at(8, 29))
    assert await desk.holds() == [None]


async def test_saying_again_and_again_that_it_hurts_does_not_put_the_clinician_off(
    desk: Desk,
) -> None:
    await prompted(desk)
    for minute in range(0, 15, 3):
        await desk.step(at(8, minute))
        await desk.say(ANN, "it hurts")
    await desk.step(at(8, 15))
    assert await desk.holds() == [None]
    assert desk.count(DANA, "flag") == 1


async def test_nonsense_does_not_keep_the_question_from_becoming_a_hold(desk: Desk) -> None:
    await prompted(desk)
    await desk.press(ANN, "hurt")
    await desk.step(at(8, 10))
    await desk.say(ANN, "qwrt zzzp")
    assert desk.ids(ANN) == ["answer-choice", "ask-pain-sign"]
    await desk.step(at(8, 15))
    assert await desk.holds() == [None]


# --- during a hold, at night, on a rest day, before a plan ---------------------------------------


async def held(room: Room) -> None:
    await prompted(room)
    await tapped(room, score="7")
    assert await room.holds() == [None]


@pytest.mark.parametrize("score", [1, 4])
async def test_during_a_hold_a_small_pain_never_says_go_on(desk: Desk, score: int) -> None:
    await held(desk)
    await desk.later(hours=1)
    await desk.say(ANN, "it hurts")
    await _answered(desk, {"score": str(score)}, typed=False)
    assert not {"pain-noted", "pain-caution"} & {each.id for each in desk.last(ANN)}
    assert "noted-on-hold" in desk.ids(ANN)
    assert await desk.holds() == [None]
    before = len(desk.chat(ANN))
    await desk.step(at(23, 0, day=4))
    assert await still_asked(desk, since=before) == 0


async def test_a_new_warning_sign_during_a_hold_is_told_at_once(desk: Desk) -> None:
    await held(desk)
    await desk.later(hours=1)
    await desk.say(ANN, "now my chest hurts")
    assert desk.ids(ANN) == ["stop-emergency"]
    assert [flag.details.get("sign") for flag in await desk.flags()] == [None, "chest"]
    assert desk.count(DANA, "flag") == 2
    assert await desk.holds() == [None]


@on_both
async def test_pain_at_two_in_the_night_is_a_hold_and_a_flag_at_once(whole: Whole) -> None:
    await whole.step(at(21, 0))
    await whole.step(at(2, 0, day=1))
    await whole.say(ANN, "bad pain in my hip 8/10")
    assert await whole.holds() == [None]
    assert whole.the(DANA, "flag").args["score"] == 8
    assert whole.now == at(2, 0, day=1)


async def test_pain_before_there_is_any_plan_is_a_hold(desk: Desk) -> None:
    await bo_joins(desk)
    await desk.say(BO, "it hurts")
    for button in ("p:sign:none", "p:place:hip", "p:score:7"):
        await desk.press(BO, button)
    assert await desk.holds(BO) == [None]
    assert desk.ids(BO) == ["you-said-score", "stop-today"]
    assert desk.the(DANA, "flag").args["name"] == "Bo"


async def bo_joins(room: Desk) -> None:
    code = await room.run(lambda tx: join.invite(tx, None, IDS[BO], room.now))
    await room.say(BO, f"/start {code}")
    for button in JOINING:
        await room.press(BO, button)


# --- edits ---------------------------------------------------------------------------------------


async def test_an_edit_that_adds_pain_is_pain_and_the_number_is_not_logged_twice(
    desk: Desk,
) -> None:
    await prompted(desk)
    await desk.say(ANN, "10")
    await desk.edit(ANN, "10, my knee hurts")
    assert await desk.reps() == [10]
    assert await desk.question() == ("pain", "sign")
    assert desk.ids(ANN) == ["ask-pain-sign"]


async def test_an_edit_never_takes_pain_back(desk: Desk) -> None:
    await prompted(desk)
    await desk.say(ANN, "my hip hurts 7/10")
    assert await desk.holds() == [None]
    await desk.edit(ANN, "all fine, did 10")
    assert await desk.holds() == [None]
    assert desk.count(DANA, "flag") == 1
    before = len(desk.chat(ANN))
    await desk.step(at(23, 0, day=3))
    assert await still_asked(desk, since=before) == 0


async def test_an_edit_does_not_close_an_open_pain_question(desk: Desk) -> None:
    await prompted(desk)
    await desk.say(ANN, "my hip hurts")
    await desk.edit(ANN, "10")
    assert await desk.question() == ("pain", "sign")
    assert await desk.holds() == []
    await desk.step(at(8, 15))
    assert await desk.holds() == [None]


@pytest.mark.parametrize("said", ["1", "2", "10", "16"])
async def test_a_bare_number_never_picks_a_warning_sign(desk: Desk, said: str) -> None:
    """The signs are not numbered on the screen: 1 is not "none", 2 is no chest pain."""
    await prompted(desk)
    await desk.press(ANN, "hurt")
    await desk.say(ANN, said)
    assert await desk.question() == ("pain", "sign")
    assert desk.ids(ANN)[-1] == "ask-pain-sign"
    assert await desk.holds() == []
