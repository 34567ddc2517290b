"""Breaks: asked for, kept, over by themselves or before; what they do to prompts and clearance (C2, I1)."""

from datetime import date

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
    await whole.step(at(8, 5))
    assert whole.count(ANN, "prompt") == 2
