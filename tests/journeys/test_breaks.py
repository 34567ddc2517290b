"""Breaks: asked for, kept, over by themselves or before; what they do to prompts and clearance (C2, I1)."""

from datetime import date, timedelta

import pytest

from scheduler.domain.flags import Flag
from scheduler.domain.people import Pause
from tests.conftest import briefly
from tests.journeys.rooms import ANN, DANA, IDS, Whole, at
from tests.journeys.theatre import MONDAY, Someone, Theatre

pytest_plugins = ("tests.journeys.furniture",)

EVERY_DAY = tuple(range(7))


async def flags(who: Someone, kind: str = "break") -> list[Flag]:
    """The client's open flags of a kind."""
    run = who.theatre.stage.house.store.run
    found = await run(lambda tx: tx.flags.of_client(who.facts.person))
    return [flag for flag in found if flag.kind == kind]


async def pauses(who: Someone) -> tuple[Pause, ...]:
    run = who.theatre.stage.house.store.run
    return await run(lambda tx: tx.pauses.of(who.facts.person, date.min))


async def daily(theatre: Theatre) -> Someone:
    """A client with two bouts on every day of the week."""
    return await theatre.client(total=20, weekdays=EVERY_DAY, days_min=7)


def days_asked(who: Someone) -> list[int]:
    """The days of the journey, from 0, on which she was asked for a bout."""
    asked = {who.facts.day(line.at) for line in who.texts("prompt")}
    return sorted((day - who.first_day).days for day in asked)


async def test_a_break_over_a_weekend_asks_nothing_and_is_over_by_itself(theatre: Theatre) -> None:
    ann = await daily(theatre)
    await ann.until(7, day=5)
    await ann.say("/break")
    assert (await ann.press("br:travel")).ids == ("ask-break-length",)
    said = (await ann.say("till Sunday")).get("break-started")
    assert said is not None
    assert said.args["until"] == "2027-03-14"
    (flag,) = await flags(ann)
    assert not flag.urgent
    assert flag.details == {"away": "travel", "until": "2027-03-14"}
    await ann.until(21, day=6)
    assert days_asked(ann) == [0, 1, 2, 3, 4]
    await ann.until(21, day=7)
    assert days_asked(ann) == [0, 1, 2, 3, 4, 7]
    assert not await flags(ann)


@briefly
async def test_a_break_in_words_needs_no_tap_where_both_are_said(theatre: Theatre) -> None:
    ann = await daily(theatre)
    await ann.until(7)
    said = (await ann.say("on holiday till Thursday")).get("break-started")
    assert said is not None
    assert said.args["until"] == "2027-03-11"
    (pause,) = await pauses(ann)
    assert (pause.reason, pause.first, pause.last) == ("travel", MONDAY, date(2027, 3, 11))


async def test_a_prompt_that_is_open_is_withdrawn_and_what_was_done_stays(theatre: Theatre) -> None:
    ann = await daily(theatre)
    await ann.until(8)
    await ann.tap("all")
    await ann.until(20)
    assert len(ann.prompted()) == 2
    await ann.say("/break")
    await ann.press("br:other")
    started = (await ann.press("bl:today")).get("break-started")
    assert started is not None
    assert started.args["done"] == 10
    assert (await ann.say("8")).ids[0] == "logged"
    assert ann.done() == 18
    await ann.until(8, day=1)
    assert days_asked(ann) == [0, 1]


async def test_a_break_ended_early_works_the_day_out_again(theatre: Theatre) -> None:
    ann = await daily(theatre)
    await ann.until(7)
    await ann.say("I am ill")
    await ann.press("bl:7")
    await ann.until(10, day=2)
    assert not ann.prompted()
    await ann.say("I'm back")
    over = ann.texts("break-over")[-1].get("break-over")
    assert over is not None
    assert over.args["today"] is True
    await ann.until(21, day=2)
    assert ann.times()[0] == "10:00"
    assert days_asked(ann) == [2]
    assert not await flags(ann)


@briefly
async def test_a_break_of_unknown_length_goes_on_until_she_is_back(theatre: Theatre) -> None:
    ann = await daily(theatre)
    await ann.until(7)
    await ann.say("I need a break")
    await ann.press("br:other")
    await ann.press("bl:unsure")
    (flag,) = await flags(ann)
    assert flag.details["until"] is None
    await ann.until(7, day=10)
    assert not ann.prompted()
    await ann.say("/back")
    await ann.until(8, day=10)
    assert days_asked(ann) == [10]


@briefly
async def test_pain_beside_a_wish_for_a_break_goes_the_way_of_pain(theatre: Theatre) -> None:
    ann = await daily(theatre)
    await ann.until(7)
    assert (await ann.say("break, my hip hurts")).ids == ("ask-pain-sign",)
    await ann.press("oops")
    assert not await pauses(ann)


@briefly
async def test_a_prompt_on_its_way_when_the_break_begins_is_not_sent_again(
    theatre: Theatre,
) -> None:
    ann = await daily(theatre)
    await ann.until(7, 59)
    ann.trouble("too-fast", retry_after=120)
    await ann.until(8)
    await ann.say("on holiday for 3 days")
    await ann.until(20, day=2)
    assert not ann.prompted()
    await ann.until(20, day=3)
    assert days_asked(ann) == [3]


@pytest.mark.parametrize(("length", "kept"), [("13 days", True), ("14 days", False)])
async def test_a_break_of_13_days_keeps_the_clearance_one_of_14_ends_it(
    theatre: Theatre, length: str, kept: bool
) -> None:
    ann = await daily(theatre)
    await ann.until(7)
    await ann.say("travelling")
    await ann.say(length)
    await ann.until(21, day=14)
    assert bool(ann.prompted()) is kept
    assert bool(await flags(ann, "lapsed")) is not kept
    assert len(ann.texts("lapsed")) == (0 if kept else 1)


@pytest.mark.parametrize(("length", "kept"), [("7 days", True), ("8 days", False)])
@briefly
async def test_a_break_for_illness_of_7_days_keeps_the_clearance_one_of_8_ends_it(
    theatre: Theatre, length: str, kept: bool
) -> None:
    ann = await daily(theatre)
    await ann.until(7)
    await ann.say("I have the flu")
    await ann.say(length)
    await ann.until(21, day=8)
    assert bool(ann.prompted()) is kept
    assert bool(await flags(ann, "lapsed")) is not kept


@briefly
async def test_days_really_on_a_break_count_not_those_that_were_wished(theatre: Theatre) -> None:
    ann = await daily(theatre)
    await ann.until(7)
    await ann.say("travelling for 20 days")
    await ann.until(9, day=12)
    await ann.say("/back")
    await ann.until(21, day=14)
    assert not await flags(ann, "lapsed")
    assert days_asked(ann) == [12, 13, 14]


@briefly
async def test_a_break_renewed_without_a_day_between_counts_on(theatre: Theatre) -> None:
    ann = await daily(theatre)
    await ann.until(7)
    await ann.say("travelling for 10 days")
    await ann.until(9, day=9)
    await ann.say("/break")
    await ann.press("bm")
    await ann.say("5 days")
    await ann.until(21, day=14)
    assert len(await flags(ann, "lapsed")) == 1
    assert not ann.prompted()


async def test_a_clinician_gives_a_break_and_ends_it_and_the_client_is_told(whole: Whole) -> None:
    await whole.step(at(8, 1))
    await whole.say(DANA, "/clients")
    await whole.press(DANA, f"c:{IDS[ANN]}")
    for start in ("kb:", "kr:", "kl:"):
        await whole.press(DANA, whole.button(DANA, start))
    told = whole.the(ANN, "break-by-clinician")
    assert told.args["until"] == MONDAY.isoformat()
    assert (await whole.run(lambda tx: tx.days.open_bouts(IDS[ANN]))) == ()
    await whole.forge(DANA, f"ke:{IDS[ANN]}")
    assert whole.the(ANN, "break-ended-by-clinician").args["today"] is True
    await whole.step(at(9, 59))
    assert whole.count(ANN, "prompt") == 1  # the gap of two hours from the prompt at eight holds
    await whole.step(at(10))
    assert whole.count(ANN, "prompt") == 2


# --- words that are no break ---------------------------------------------------------------------


@pytest.mark.parametrize(
    ("words", "answer"),
    [
        ("I had a bone break", "ask-pain-sign"),
        ("broken toe, need a break", "ask-pain-sign"),
        ("down with the flu and dizzy", "stop-today"),
    ],
)
@briefly
async def test_a_broken_bone_and_a_sign_beside_illness_never_start_a_break(
    theatre: Theatre, words: str, answer: str
) -> None:
    ann = await daily(theatre)
    await ann.until(7)
    assert answer in (await ann.say(words)).ids
    assert not await pauses(ann)
    await ann.until(8, 30)
    assert not ann.prompted()
    assert await flags(ann, "pain" if answer == "stop-today" else "question-open")


@briefly
async def test_who_wants_no_break_is_asked_nothing_about_one(theatre: Theatre) -> None:
    ann = await daily(theatre)
    await ann.until(7)
    for words in ("I don't need a break", "lunch break", "give me a break"):
        assert (await ann.say(words)).ids == ("not-understood",), words
    await ann.say("/break")
    assert (await ann.say("I don't need a break")).ids == ("break-not-now",)
    await ann.until(8)
    assert len(ann.prompted()) == 1


# --- a break that begins later -------------------------------------------------------------------


async def verdicts(who: Someone) -> dict[int, tuple[str, str]]:
    """The judged days of the journey with verdict and why."""
    run = who.theatre.stage.house.store.run
    judged = await run(lambda tx: tx.days.judged(who.facts.person, 14))
    return {(day.day - who.first_day).days: (day.verdict, day.why) for day in judged}


async def test_a_break_from_friday_leaves_the_days_before_it_and_is_over_by_itself(
    theatre: Theatre,
) -> None:
    ann = await daily(theatre)
    await ann.until(8)
    told = (await ann.say("going away on Friday for 3 days")).get("break-planned")
    assert told is not None
    assert (told.args["day"], told.args["until"]) == ("2027-03-12", "2027-03-14")
    assert told.args["too_long"] is False
    (flag,) = await flags(ann)
    assert flag.details == {"away": "travel", "begins": "2027-03-12", "until": "2027-03-14"}
    assert (await ann.tap("all")).ids[0] == "logged"  # the open prompt stays
    await ann.until(21, day=6)
    assert days_asked(ann) == [0, 1, 2, 3]
    assert await flags(ann)
    await ann.until(13, day=7)
    assert days_asked(ann) == [0, 1, 2, 3, 7]
    assert not await flags(ann)
    judged = await verdicts(ann)
    assert {n: judged[n] for n in (4, 5, 6)} == dict.fromkeys((4, 5, 6), ("excused", "break"))
    assert judged[3][1] == "no-answer"


@briefly
async def test_a_start_that_could_be_two_days_is_asked_back_step_by_step(theatre: Theatre) -> None:
    ann = await daily(theatre)
    await ann.until(7)
    assert (await ann.say("away next week")).ids == ("ask-break-first",)
    assert (await ann.say("purple")).ids == ("answer-choice", "ask-break-first")
    asked = (await ann.say("the 15th")).get("ask-break-length-from")
    assert asked is not None
    assert asked.args["day"] == "2027-03-15"
    assert not await pauses(ann)
    told = (await ann.say("till Sunday")).get("break-planned")
    assert told is not None
    assert (told.args["day"], told.args["until"]) == ("2027-03-15", "2027-03-21")
    assert (await ann.say("/break")).ids == ("break-ahead",)
    assert (await ann.press("bs")).ids == ("ask-break-reason",)
    assert (await ann.say("travel from Friday, 2 days")).ids == ("break-planned",)
    found = [(pause.first, pause.last) for pause in await pauses(ann)]
    assert found == [(date(2027, 3, 12), date(2027, 3, 13)), (date(2027, 3, 15), date(2027, 3, 21))]


@pytest.mark.parametrize("how", ["press", "words"])
@briefly
async def test_a_break_that_has_not_begun_can_be_called_off(theatre: Theatre, how: str) -> None:
    ann = await daily(theatre)
    await ann.until(7)
    told = (await ann.say("away tomorrow and Wednesday")).get("break-planned")
    assert told is not None
    button = f"bx:{told.args['pause']}"
    off = await (ann.press(button) if how == "press" else ann.say("cancel my trip"))
    assert off.ids == ("break-cancelled",)
    assert not await flags(ann)
    await ann.until(9, day=1)
    assert days_asked(ann) == [0, 1]
    assert (await ann.say("cancel my trip")).ids == ("not-understood",)


@briefly
async def test_what_was_said_last_of_the_same_days_counts(theatre: Theatre) -> None:
    ann = await daily(theatre)
    await ann.until(7)
    await ann.say("away from Thursday till Saturday")
    await ann.say("away from Friday till Sunday")
    await ann.until(7, day=2)
    await ann.say("I am ill")
    await ann.press("bl:unsure")  # no end: the holiday stays
    await ann.until(7, day=3)
    await ann.say("I'm back")
    await ann.until(21, day=7)
    assert days_asked(ann) == [0, 1, 3, 7]


@pytest.mark.parametrize(
    ("why", "days", "kept"),
    [("travel", 13, True), ("travel", 14, False), ("illness", 7, True), ("illness", 8, False)],
)
@briefly
async def test_a_later_break_counts_from_its_own_first_day(
    theatre: Theatre, why: str, days: int, kept: bool
) -> None:
    # 14 days, and over 7 for illness: rule C2 of the specification (read)
    ann = await daily(theatre)
    await ann.until(7)
    await ann.say(f"break from Wednesday for {days} days")
    told = (await ann.press(f"br:{why}")).get("break-planned")
    assert told is not None
    assert told.args["too_long"] is not kept
    await ann.until(21, day=days)  # the day before its last
    assert not await flags(ann, "lapsed")
    await ann.until(21, day=days + 2)
    assert bool(await flags(ann, "lapsed")) is not kept
    assert days_asked(ann) == [0, 1, *([days + 2] if kept else [])]


@briefly
async def test_a_break_far_ahead_does_not_hide_that_nothing_comes_from_her(
    theatre: Theatre,
) -> None:
    # 7 days without a word: rule H8 (read)
    ann = await daily(theatre)
    await ann.until(7)
    await ann.say("on holiday from 20 March till 23 March")
    await ann.until(7, day=7)
    assert len(await flags(ann, "silent")) == 1


# --- begun and ended on one day, and flown through -----------------------------------------------


@briefly
async def test_back_on_the_same_day_she_is_not_asked_again_before_the_gap_is_over(
    theatre: Theatre,
) -> None:
    """She may have acted on the prompt that was withdrawn; the gap of two hours counts from it."""
    ann = await theatre.client(total=60, weekdays=EVERY_DAY, days_min=7)  # a day without slack
    await ann.until(8, 1)
    await ann.say("travelling for 2 days")
    await ann.until(8, 10)
    assert "break-over" in (await ann.say("I'm back")).ids
    await ann.say("/times")
    await ann.press("t:window")
    await ann.say("8:00-20:00")  # the day is worked out again, and the gap stays
    await ann.press("t:keep")
    await ann.until(20)
    assert ann.times()[:2] == ["08:00", "10:00"]


@briefly
async def test_a_flight_in_a_break_moves_its_end_to_her_new_midnight_and_judges_no_day_twice(
    theatre: Theatre,
) -> None:
    ann = await daily(theatre)
    await ann.until(7)
    await ann.say("on holiday till Sunday")
    await ann.until(12, day=4)
    await ann.say("/times")
    await ann.press("t:zone")
    assert (await ann.say("Honolulu")).ids[-1] == "ask-times"
    ann.moved("Pacific/Honolulu")
    await ann.press("t:keep")
    lisbon_monday = ann.at(7, 59, day=7) - timedelta(hours=10)
    await theatre.stage.step(lisbon_monday)
    assert not ann.prompted()  # it is Sunday evening where she is
    await ann.until(13, day=8)
    assert days_asked(ann) == [7, 8]
    assert ann.times()[0] == "08:00"
    judged = await verdicts(ann)
    assert {n: why for n, (_, why) in judged.items() if n < 7} == dict.fromkeys(range(7), "break")
