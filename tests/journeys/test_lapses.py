"""Clearance that lapses, a review that falls due, a plan that ends: on its day, once, told to both (C2)."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from scheduler.domain.flags import Flag
from scheduler.ports import Tx
from tests.conftest import briefly
from tests.journeys.rooms import ANN, DANA, IDS, Whole, at, on_both
from tests.journeys.theatre import MONDAY, Someone, Theatre

pytest_plugins = ("tests.journeys.furniture",)

EVERY_DAY = tuple(range(7))
ANNS = IDS[ANN]


async def flags(who: Someone) -> dict[str, Flag]:
    """The client's open flags by kind."""
    run = who.theatre.stage.house.store.run
    found = await run(lambda tx: tx.flags.of_client(who.facts.person))
    return {flag.kind: flag for flag in found}


async def daily(theatre: Theatre, review: date | None = None, end: date | None = None) -> Someone:
    """A client with two bouts on every day of the week, whose plan has these dates."""
    ann = await theatre.client(total=20, weekdays=EVERY_DAY, days_min=7)
    dana = theatre.stage.ids["Dana"]

    def work(tx: Tx) -> None:
        version = tx.plans.latest(ann.facts.person)
        assert version is not None
        plan = replace(version.plan, review=review, end=end)
        tx.plans.add(ann.facts.person, plan, MONDAY, dana, theatre.stage.now)

    await theatre.stage.house.store.run(work)
    return ann


def days_asked(who: Someone) -> list[int]:
    asked = {who.facts.day(line.at) for line in who.texts("prompt")}
    return sorted((day - who.first_day).days for day in asked)


# --- the review date -----------------------------------------------------------------------------


@pytest.mark.parametrize(("day", "lapsed"), [(6, False), (7, True), (8, True)])
@briefly
async def test_clearance_lapses_on_the_7th_day_after_the_review_date(
    theatre: Theatre, day: int, lapsed: bool
) -> None:
    ann = await daily(theatre, review=MONDAY + timedelta(days=1))
    await ann.until(23, day=0)
    assert "review-due" not in await flags(ann)
    await ann.until(0, 1, day=1)
    assert "review-due" in await flags(ann)
    await ann.until(23, day=1 + day)
    assert ("lapsed" in await flags(ann)) is lapsed
    assert len(ann.texts("lapsed")) == int(lapsed)
    assert days_asked(ann)[-1] == min(1 + day, 7)
    if lapsed:
        assert ann.times("lapsed") == ["08:00"]


async def test_the_review_is_done_by_clearing_again(theatre: Theatre) -> None:
    ann = await daily(theatre, review=MONDAY + timedelta(days=1))
    await ann.until(9, day=3)
    for button in ("c:{}", "cr:{}", "cc:{}:low"):
        await theatre.stage.press(theatre.dana, button.format(ann.facts.person))
    assert "review-due" not in await flags(ann)
    await ann.until(23, day=10)
    assert not ann.texts("lapsed")
    assert days_asked(ann)[-1] == 10


# --- the end of a plan ---------------------------------------------------------------------------


@briefly
async def test_after_its_last_day_a_plan_asks_nothing_and_both_are_told_once(
    theatre: Theatre,
) -> None:
    ann = await daily(theatre, end=MONDAY + timedelta(days=2))
    await ann.until(7, 59, 59, day=3)
    assert not ann.texts("plan-ended")
    await ann.until(8, day=3)
    assert "plan-ended" in await flags(ann)
    await ann.until(23, day=12)
    assert ann.times("plan-ended") == ["08:00"]
    assert days_asked(ann) == [0, 1, 2]


# --- readiness and injury ------------------------------------------------------------------------


@on_both
async def test_a_new_yes_ends_the_clearance_at_once_and_the_clinician_sees_it(whole: Whole) -> None:
    await whole.step(at(8, 1))
    await whole.say(ANN, "/health")
    assert whole.ids(ANN) == ["ask-screen-bones"]
    for button in ("r:bones:yes", "r:bones:height", "r:bones:done"):
        await whole.press(ANN, button)
    assert whole.ids(ANN) == ["lapsed", "ask-screen-heart"]
    (flag,) = [each for each in await whole.flags() if each.kind == "lapsed"]
    assert flag.details == {"because": "readiness", "readiness": ["height"]}
    assert await whole.run(lambda tx: tx.days.open_bouts(ANNS)) == ()
    await whole.press(ANN, "r:heart:none")
    await whole.press(ANN, "r:else:none")
    await whole.press(ANN, "u:1")
    assert whole.ids(ANN) == ["readiness-kept"]
    await whole.step(at(21))
    assert whole.count(ANN, "prompt") == 1


@on_both
async def test_cleared_again_the_client_is_told_and_asked_again(whole: Whole) -> None:
    await whole.say(ANN, "/health")
    for button in ("r:bones:yes", "r:bones:height", "r:bones:done"):
        await whole.press(ANN, button)
    await whole.step(at(9))
    assert whole.count(ANN, "prompt") == 0
    await whole.forge(DANA, f"cr:{ANNS}")
    await whole.press(DANA, f"cc:{ANNS}:moderate")
    assert whole.the(ANN, "cleared-told")
    assert not await whole.flags()
    await whole.step(at(9, 1))
    assert whole.count(ANN, "prompt") == 1


async def test_the_same_answers_again_change_nothing(whole: Whole) -> None:
    await whole.step(at(8, 1))
    await whole.say(ANN, "/health")
    for button in ("r:bones:none", "r:heart:none", "r:else:none", "u:1"):
        await whole.press(ANN, button)
    assert whole.ids(ANN) == ["readiness-kept"]
    assert not await whole.flags()
    assert len(await whole.run(lambda tx: tx.days.open_bouts(ANNS))) == 1


async def test_a_number_of_reps_is_logged_though_the_health_questions_are_open(
    whole: Whole,
) -> None:
    await whole.step(at(8, 1))
    await whole.say(ANN, "/health")
    await whole.say(ANN, "10")
    assert whole.ids(ANN)[0] == "logged"
    assert await whole.reps() == [10]


async def test_a_fall_with_injury_ends_the_clearance_so_a_release_alone_asks_nothing(
    whole: Whole,
) -> None:
    await whole.step(at(8, 1))
    await whole.say(ANN, "I fell")
    await whole.press(ANN, "f:sign:none")
    await whole.press(ANN, "f:injured:1")
    assert whole.ids(ANN) == ["stop-today"]
    assert {flag.kind for flag in await whole.flags()} == {"fall", "lapsed"}
    for button in (f"rel:{ANNS}", f"rd:{ANNS}:40", f"rf:{ANNS}:40:today"):
        await whole.forge(DANA, button)
    assert whole.ids(DANA) == ["released-not-cleared"]
    assert whole.count(ANN, "release-told") == 0
    await whole.step(at(12))
    assert whole.count(ANN, "prompt") == 1
    await whole.press(DANA, f"cr:{ANNS}")
    await whole.press(DANA, f"cc:{ANNS}:moderate")
    await whole.step(at(12, 1))
    assert whole.count(ANN, "cleared-told") == 1
    assert whole.count(ANN, "prompt") == 2


async def test_a_fall_without_injury_keeps_the_clearance(whole: Whole) -> None:
    await whole.step(at(8, 1))
    await whole.say(ANN, "I fell")
    for button in ("f:sign:none", "f:injured:0", "f:new_pain:0", "f:when:today", "f:doing:walking"):
        await whole.press(ANN, button)
    assert {flag.kind for flag in await whole.flags()} == {"fall"}
    clearance = await whole.run(lambda tx: tx.plans.clearance(ANNS))
    assert clearance is not None
    assert clearance.lapsed_at is None
