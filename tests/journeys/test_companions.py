"""Companion exercises: prescribed, asked once on their days, logged in units of their own (C6, H3, P6)."""

from dataclasses import replace
from typing import Any

import pytest

from bot.rehearsal import people
from scheduler.domain.companions import CATALOGUE, Companion
from scheduler.ports import Tx
from scheduler.usecases.figures import lines
from tests.conftest import briefly
from tests.journeys.planning import plan_of
from tests.journeys.rooms import ANN, DANA, IDS, Whole
from tests.journeys.theatre import MONDAY, Someone, Theatre

pytest_plugins = ("tests.journeys.furniture",)

BACK, HOVER = CATALOGUE["back-raise"], CATALOGUE["hover-hold"]
ANNS = IDS[ANN]
COUNTED = ("prompt", "nudge", "ask-companion", "ask-week")


async def with_companions(theatre: Theatre, *companions: Companion, **more: Any) -> Someone:
    """A client with two bouts on Mondays and these exercises beside them."""
    ann = await theatre.client(total=20, **more)
    dana = theatre.stage.ids["Dana"]

    def work(tx: Tx) -> None:
        version = tx.plans.latest(ann.facts.person)
        assert version is not None
        plan = replace(version.plan, companions=companions)
        tx.plans.add(ann.facts.person, plan, MONDAY, dana, theatre.stage.now)

    await theatre.stage.house.store.run(work)
    await ann.until(5, 1)
    await ann.say("/today")  # the day is looked at anew
    return ann


async def week(who: Someone) -> Any:
    """The companions of her line of the digest."""
    now = who.theatre.stage.now

    def work(tx: Tx) -> Any:
        return lines(tx, [who.facts.person], MONDAY, now)[0]["companions"]

    return await who.theatre.stage.house.store.run(work)


async def forged(who: Someone, data: str) -> None:
    """A press on a button that her phone still shows, though the message reads otherwise by now."""
    stage = who.theatre.stage
    latest = who.heard()[-1].message_id
    await stage.heard(people.forge(stage.world, who.facts.account, latest, data))


def asked(who: Someone) -> list[tuple[int, str]]:
    """Day of the journey and clock at which she was asked for a companion."""
    days = [(who.facts.day(line.at) - who.first_day).days for line in who.texts("ask-companion")]
    return list(zip(days, who.times("ask-companion"), strict=True))


async def test_it_is_asked_once_on_its_days_in_the_middle_of_her_hours(theatre: Theatre) -> None:
    ann = await with_companions(theatre, BACK)
    await ann.until(21, day=6)
    assert asked(ann) == [(0, "14:00"), (2, "14:00"), (4, "14:00")]
    said = ann.texts("ask-companion")[0].get("ask-companion")
    assert said is not None
    assert (said.args["amount"], said.args["measure"], said.args["rounds"]) == (10, "reps", 1)


@briefly
async def test_a_quiet_time_in_the_middle_of_the_day_is_kept(theatre: Theatre) -> None:
    ann = await with_companions(theatre, BACK, quiet="13:00-15:00")
    await ann.until(21)
    assert asked(ann) == [(0, "15:00")]


async def test_one_tap_logs_it_and_the_impact_stays_as_it_is(theatre: Theatre) -> None:
    ann = await with_companions(theatre, HOVER)
    await ann.until(14)
    await ann.press("cd:hover-hold:2027-03-08:2")
    assert ann.texts("companion-noted")[-1].get("companion-noted").args["done"] == 2  # type: ignore[union-attr]
    assert await week(ann) == [{"name": "hover-hold", "done": 0, "days": 2}]  # 2 of 3 are 67 %
    await forged(ann, "cd:hover-hold:2027-03-08:3")
    assert await week(ann) == [{"name": "hover-hold", "done": 1, "days": 2}]
    assert ann.ledger() == []


@pytest.mark.parametrize(
    ("words", "done"),
    [
        ("did my back raise", 1),
        ("10 back raises", 1),
        ("8 back raises", 1),
        ("no back raise today", 0),
        ("skip the back raise", 0),
    ],
)
@briefly
async def test_it_is_logged_in_words_at_any_time_and_then_not_asked(
    theatre: Theatre, words: str, done: int
) -> None:
    ann = await with_companions(theatre, BACK)
    await ann.until(9)
    noted = (await ann.say(words)).get("companion-noted")
    assert noted is not None
    assert noted.args["done"] == done
    assert await week(ann) == [{"name": "back-raise", "done": done, "days": 3}]
    assert ann.ledger() == []
    await ann.until(21)
    assert not ann.texts("ask-companion")


@briefly
async def test_a_count_short_of_a_round_is_asked_about(theatre: Theatre) -> None:
    ann = await with_companions(theatre, BACK)
    await ann.until(9)
    assert (await ann.say("7 back raises")).ids == ("ask-companion-rounds",)
    assert await week(ann) == [{"name": "back-raise", "done": 0, "days": 3}]


@briefly
async def test_pain_beside_the_name_of_an_exercise_is_pain(theatre: Theatre) -> None:
    ann = await with_companions(theatre, BACK)
    await ann.until(9)
    assert (await ann.say("the back raise hurts")).ids == ("ask-pain-sign",)
    await ann.press("p:sign:none")
    await ann.say("knee")
    await ann.say("1")


@briefly
async def test_what_is_not_in_the_plan_is_not_logged(theatre: Theatre) -> None:
    ann = await with_companions(theatre, BACK)
    await ann.until(9)
    assert (await ann.say("did my hover hold")).ids == ("companion-not-planned",)


async def test_a_hold_stops_companions_too(theatre: Theatre) -> None:
    ann = await with_companions(theatre, BACK)
    await ann.until(9)
    await ann.say("chest pain")
    await ann.until(21, day=2)
    assert not ann.texts("ask-companion")


@briefly
async def test_a_break_stops_companions_too(theatre: Theatre) -> None:
    ann = await with_companions(theatre, BACK)
    await ann.until(9)
    await ann.say("travelling for 2 days")
    await ann.until(21, day=2)
    assert asked(ann) == [(2, "14:00")]


@briefly
async def test_days_on_a_break_or_a_hold_are_none_on_which_it_was_due(theatre: Theatre) -> None:
    """It is due on Monday, Wednesday and Friday; a day on which it was done counts all the same."""
    ann = await with_companions(theatre, BACK)
    await ann.until(9)
    await ann.say("travelling for 3 days")
    assert await week(ann) == [{"name": "back-raise", "done": 0, "days": 1}]
    await ann.say("did my back raise")
    assert await week(ann) == [{"name": "back-raise", "done": 1, "days": 2}]
    await ann.until(9, day=4)
    await ann.say("chest pain")
    assert await week(ann) == [{"name": "back-raise", "done": 1, "days": 1}]


@briefly
async def test_on_a_full_day_nudges_give_way_first_then_companions_and_never_a_bout(
    theatre: Theatre,
) -> None:
    """Planned bouts and two more are all that come of its own accord (P6).

    Two companions take the two, so no nudge is left; with the week's question on its last evening beside
    them, one companion gives way too. Nobody answers: a silent day asks all its bouts.
    """
    every = tuple(range(7))
    both = (replace(BACK, weekdays=every), replace(HOVER, weekdays=every))
    ann = await with_companions(theatre, *both, weekdays=(0, 6), days_min=2)
    await ann.until(21, day=6)
    for day, companions, question in ((0, 2, 0), (6, 1, 1)):
        said = [line for line in ann.heard() if (ann.facts.day(line.at) - MONDAY).days == day]
        count = [sum(bool(line.get(id_)) for line in said) for id_ in COUNTED]
        assert count == [2, 0, companions, question], day


@briefly
async def test_a_movement_that_is_stopped_stops_no_companion(theatre: Theatre) -> None:
    ann = await with_companions(theatre, BACK)
    await ann.until(9)
    await ann.say("I leak when I jump")
    await ann.until(21)
    assert asked(ann) == [(0, "14:00")]


@briefly
async def test_a_day_that_is_closed_takes_none_any_more(theatre: Theatre) -> None:
    ann = await with_companions(theatre, BACK)
    await ann.until(11, 59, day=1)
    assert (await ann.press("cd:back-raise:2027-03-08:1")).ids[0] == "companion-noted"
    await ann.until(12, day=1)
    await forged(ann, "cd:back-raise:2027-03-08:0")
    assert ann.heard()[-1].ids == ("day-over",)
    assert await week(ann) == [{"name": "back-raise", "done": 1, "days": 3}]


async def test_a_clinician_prescribes_by_taps_and_words_and_the_client_is_told(
    whole: Whole,
) -> None:
    await whole.say(DANA, "/clients")
    await whole.press(DANA, f"c:{ANNS}")
    await whole.press(DANA, f"cp:{ANNS}")
    await whole.press(DANA, "df:companions")
    await whole.press(DANA, "dv:companions:back-raise")
    await whole.press(DANA, "df:companions")
    await whole.say(DANA, "hover hold 5 s, 3 rounds, 2 days")
    (card,) = whole.last(DANA)
    names = [(each["companion"], each["amount"]) for each in _rows(card.args["beside"])]
    assert names == [("back-raise", 10), ("hover-hold", 5)]
    await whole.press(DANA, "dp")
    assert "plan-beside" in whole.ids(DANA)
    await whole.press(DANA, "ds:0")
    plan = await plan_of(whole, ANNS)
    assert plan.companions == (BACK, replace(HOVER, amount=5))
    assert len(_rows(whole.texts(ANN)[-1].args["beside"])) == 2


async def test_one_can_be_taken_out_again_and_numbers_out_of_bounds_are_refused(
    whole: Whole,
) -> None:
    await whole.say(DANA, "/clients")
    await whole.press(DANA, f"c:{ANNS}")
    await whole.press(DANA, f"cp:{ANNS}")
    for _ in range(2):
        await whole.press(DANA, "df:companions")
        await whole.press(DANA, "dv:companions:back-raise")
    assert whole.last(DANA)[0].args["beside"] == []
    await whole.press(DANA, "df:companions")
    await whole.say(DANA, "hover hold 61 s")
    assert whole.ids(DANA) == ["answer-number", "ask-plan-companions"]
    await whole.say(DANA, "hover hold 60 s")
    assert whole.ids(DANA) == ["plan-card"]


def _rows(value: Any) -> list[dict[str, Any]]:
    assert isinstance(value, list)
    return value


@pytest.mark.parametrize(("second", "times"), [(0, [(0, "14:20")]), (1, [])])
@briefly
async def test_it_is_not_asked_more_than_twenty_minutes_late(
    theatre: Theatre, second: int, times: list[tuple[int, str]]
) -> None:
    ann = await with_companions(theatre, BACK)
    await ann.until(9)
    await theatre.close()
    await theatre.open(ann.at(14, 20, second))
    await ann.until(21)
    assert asked(ann) == times
