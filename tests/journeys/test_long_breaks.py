"""Long breaks whatever happens meanwhile: the bot away, cleared on the way, an honest word (C2, Z1)."""

import pytest

from scheduler.domain.flags import Flag
from scheduler.domain.plan import Level
from scheduler.ports import Tx
from scheduler.usecases import plans
from tests.conftest import briefly
from tests.journeys.rooms import ANN, DANA, IDS, Whole, at
from tests.journeys.theatre import Someone, Theatre

pytest_plugins = ("tests.journeys.furniture",)

EVERY_DAY = tuple(range(7))


async def flags(who: Someone, kind: str = "lapsed") -> list[Flag]:
    """The client's open flags of a kind."""
    run = who.theatre.stage.house.store.run
    found = await run(lambda tx: tx.flags.of_client(who.facts.person))
    return [flag for flag in found if flag.kind == kind]


async def on_holiday(theatre: Theatre, days: int, why: str = "travelling") -> Someone:
    """A client with two bouts on every day, on a break of so many days from her first one."""
    ann = await theatre.client(total=20, weekdays=EVERY_DAY, days_min=7)
    await ann.until(7)
    await ann.say(f"{why} for {days} days")
    return ann


async def cleared(theatre: Theatre, who: Someone) -> None:
    """The clinician clears the client again."""
    stage, dana = theatre.stage, theatre.stage.ids["Dana"]

    def work(tx: Tx) -> None:
        plans.clear(tx, dana, who.facts.person, Level.MODERATE, stage.now)

    await stage.house.store.run(work)


@pytest.mark.parametrize(
    ("why", "days", "kept"),
    [
        ("travelling", 13, True),
        ("travelling", 14, False),
        ("I am ill", 7, True),
        ("I am ill", 8, False),
    ],
)
@briefly
async def test_a_bot_away_while_the_break_became_too_long_still_ends_the_clearance(
    theatre: Theatre, why: str, days: int, kept: bool
) -> None:
    ann = await on_holiday(theatre, days, why)
    await ann.until(9, day=5)
    await theatre.close()
    await theatre.open(ann.at(9, day=days + 1))
    await ann.until(21, day=days + 1)
    assert bool(ann.prompted()) is kept
    assert bool(await flags(ann)) is not kept
    assert len(ann.texts("lapsed")) == int(not kept)


@briefly
async def test_words_that_end_a_long_break_bring_no_bout_though_the_bot_was_away(
    theatre: Theatre,
) -> None:
    ann = await on_holiday(theatre, 20)
    await ann.until(9, day=5)
    await theatre.close()
    theatre.meanwhile(ann, "I'm back", ann.at(10, day=15))
    await theatre.open(ann.at(10, 1, day=15))
    await theatre.all_heard()
    await ann.until(21, day=15)
    assert not ann.prompted()
    assert await flags(ann)


@briefly
async def test_cleared_on_the_way_a_client_is_asked_again_after_her_long_break(
    theatre: Theatre,
) -> None:
    ann = await on_holiday(theatre, 20)
    await ann.until(9, day=15)
    assert await flags(ann)
    await cleared(theatre, ann)
    await ann.until(7, day=20)
    assert not ann.prompted()
    assert not await flags(ann)
    await ann.until(9, day=20)
    assert len(ann.prompted()) == 1


@briefly
async def test_cleared_before_her_hours_begin_she_is_not_told_that_she_is_not(
    theatre: Theatre,
) -> None:
    ann = await on_holiday(theatre, 20)
    await ann.until(6, day=13)
    assert await flags(ann)
    await cleared(theatre, ann)
    await ann.until(12, day=13)
    assert not ann.texts("lapsed")


@briefly
async def test_told_in_her_hours_and_once_that_clearance_has_lapsed(theatre: Theatre) -> None:
    ann = await on_holiday(theatre, 20)
    await ann.until(7, 59, 59, day=13)
    assert not ann.texts("lapsed")
    await ann.until(21, day=16)
    assert ann.times("lapsed") == ["08:00"]


@pytest.mark.parametrize(
    ("why", "days", "too_long"),
    [
        ("travelling", 13, False),
        ("travelling", 14, True),
        ("I am ill", 7, False),
        ("I am ill", 8, True),
    ],
)
@briefly
async def test_a_break_that_will_end_the_clearance_says_so_at_its_start(
    theatre: Theatre, why: str, days: int, too_long: bool
) -> None:
    ann = await on_holiday(theatre, days, why)
    started = ann.texts("break-started")[-1].get("break-started")
    assert started is not None
    assert started.args["too_long"] is too_long


async def test_back_while_on_hold_she_is_promised_no_bout(whole: Whole) -> None:
    await whole.say(DANA, "/clients")
    await whole.forge(DANA, f"ch:{IDS[ANN]}")
    await whole.say(ANN, "on holiday for 3 days")
    await whole.step(at(10, day=1))
    await whole.say(ANN, "I'm back")
    assert whole.ids(ANN) == ["break-over", "stopped-for-now"]
    assert whole.last(ANN)[0].args["today"] is None


@pytest.mark.parametrize(("length", "told"), [("3 days", "2027-03-11"), ("4 days", "2027-03-15")])
async def test_a_release_during_a_break_names_the_day_on_which_bouts_are_asked_again(
    whole: Whole, length: str, told: str
) -> None:
    """Her days are Monday and Thursday."""
    await whole.say(ANN, f"on holiday for {length}")
    await whole.say(DANA, "/clients")
    await whole.forge(DANA, f"ch:{IDS[ANN]}")
    await whole.forge(DANA, f"rel:{IDS[ANN]}")
    await whole.press(DANA, f"rd:{IDS[ANN]}:20")
    await whole.press(DANA, f"rf:{IDS[ANN]}:20:today")
    assert whole.the(ANN, "release-told").args["day"] == told
    days = 3 if told.endswith("11") else 7
    await whole.step(at(7, 59, day=days))
    assert whole.count(ANN, "prompt") == 0
    await whole.step(at(8, 5, day=days))
    assert whole.count(ANN, "prompt") == 1


async def test_a_release_in_a_break_without_an_end_names_no_day(whole: Whole) -> None:
    await whole.say(ANN, "I am ill, not sure how long")
    await whole.say(DANA, "/clients")
    await whole.forge(DANA, f"ch:{IDS[ANN]}")
    await whole.forge(DANA, f"rel:{IDS[ANN]}")
    await whole.press(DANA, f"rd:{IDS[ANN]}:20")
    await whole.press(DANA, f"rf:{IDS[ANN]}:20:today")
    assert whole.the(ANN, "release-told").args["day"] is None


@briefly
async def test_back_after_a_break_too_long_she_is_promised_no_bout(theatre: Theatre) -> None:
    ann = await on_holiday(theatre, 20)
    await ann.until(9, day=13)
    assert (await ann.say("I'm back")).ids == ("break-over", "stopped-for-now")
    await ann.until(21, day=15)
    assert not ann.prompted()


async def test_a_clinician_is_told_that_the_break_she_gives_ends_clearance(whole: Whole) -> None:
    await whole.say(DANA, "/clients")
    for length, too_long in (("7", False), ("14", True)):
        await whole.forge(DANA, f"kl:{IDS[ANN]}:travel:{length}")
        assert whole.last(DANA)[0].args["too_long"] is too_long
    await whole.forge(DANA, f"kl:{IDS[ANN]}:illness:7")
    assert whole.last(DANA)[0].args["too_long"] is False
