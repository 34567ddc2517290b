"""Days on which clocks change, and clients who change their zone.

Changes as in the IANA time zone database (read): New York 2027-03-14 and 2027-11-07 at 02:00, Sydney
2027-10-03 at 02:00 forward and 2027-04-04 at 03:00 back. Expected instants: arithmetic.
"""

from datetime import UTC, date, datetime, timedelta

import pytest

from tests.conftest import briefly
from tests.journeys.optimum import best, minute
from tests.journeys.theatre import Someone, Theatre

SHORT_NORTH = ("America/New_York", date(2027, 3, 13))
LONG_NORTH = ("America/New_York", date(2027, 11, 6))
SHORT_SOUTH = ("Australia/Sydney", date(2027, 10, 2))
LONG_SOUTH = ("Australia/Sydney", date(2027, 4, 3))


async def on_the_change(theatre: Theatre, zone: str, eve: date, **plan: object) -> Someone:
    """A client enrolled on the eve, whose impact day is the day of the change."""
    weekday = (eve.weekday() + 1) % 7
    return await theatre.client(zone=zone, day=eve, weekdays=(weekday,), **plan)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("where", "half", "middle"),
    [
        (SHORT_NORTH, 2.5, "03:30"),  # from 00:00 to 06:00 five hours pass
        (SHORT_SOUTH, 2.5, "03:30"),
        (LONG_NORTH, 3.5, "02:30"),  # seven hours pass
        (LONG_SOUTH, 3.5, "02:30"),  # the second 02:30 of that night
    ],
)
@briefly
async def test_gaps_are_real_time_when_the_clock_changes_inside_the_window(
    theatre: Theatre, where: tuple[str, date], half: float, middle: str
) -> None:
    ann = await on_the_change(theatre, *where, total=30, window="00:00-06:00", gap=60)
    midnight = ann.at(0, day=1)
    instants = [midnight + timedelta(hours=half * n) for n in range(3)]
    for at in instants:
        await theatre.stage.step(at)
        await ann.tap("all")
    await ann.until(8, day=1)
    assert [line.at for line in ann.texts("prompt")] == instants
    assert ann.times() == ["00:00", middle, "06:00"]


@pytest.mark.parametrize(
    ("where", "start"),
    [
        (SHORT_NORTH, datetime(2027, 3, 14, 7, 30, tzinfo=UTC)),  # 02:30 is skipped: 03:30 EDT
        (LONG_NORTH, datetime(2027, 11, 7, 7, 30, tzinfo=UTC)),  # 02:30 EST comes once
        (SHORT_SOUTH, datetime(2027, 10, 2, 16, 30, tzinfo=UTC)),  # 03:30 AEDT
        (
            LONG_SOUTH,
            datetime(2027, 4, 3, 15, 30, tzinfo=UTC),
        ),  # 02:30 comes twice: the first, AEDT
    ],
)
@briefly
async def test_a_window_that_starts_in_the_change_starts_then_and_its_day_closes_at_noon(
    theatre: Theatre, where: tuple[str, date], start: datetime
) -> None:
    ann = await on_the_change(theatre, *where, total=20, window="02:30-12:00")
    await ann.until(12, day=1)
    assert [line.at for line in ann.texts("prompt")] == [start, ann.at(12, day=1)]
    await ann.until(11, 59, 59, day=2)
    assert (await ann.say("yesterday 9")).ids == ("logged",)
    await ann.until(12, day=2)
    assert (await ann.say("yesterday 9")).ids == ("day-over",)
    assert ann.done(1) == 9


async def change_zone(ann: Someone, city: str, zone: str) -> None:
    """Through the screen of times, as a client does."""
    await ann.say("/times")
    await ann.press("t:zone")
    ann.moved(zone)
    answer = await ann.say(city)
    assert answer.get("ask-times")
    assert answer.texts[-1].args["zone"] == zone
    await ann.press("t:keep")


@briefly
async def test_flying_west_the_rest_of_the_day_follows_the_new_clock(theatre: Theatre) -> None:
    ann = await theatre.client(total=30)
    await ann.until(8)
    await ann.tap("all")
    await ann.until(10)  # 05:00 in New York, where it was 03:00 at the first bout
    await change_zone(ann, "New York", "America/New_York")
    for at in best("08:00-20:00", 2, last=minute("03:00")):
        await ann.until(*map(int, at.split(":")))
        await ann.tap("all")
    assert ann.times() == ["08:00", *best("08:00-20:00", 2, last=minute("03:00"))]
    assert ann.done() == 30


@briefly
async def test_flying_east_past_the_window_asks_nothing_more_that_day(theatre: Theatre) -> None:
    ann = await theatre.client(total=30)
    await ann.until(8)
    await ann.tap("all")
    await ann.until(9)  # 22:00 in Auckland
    await change_zone(ann, "Auckland", "Pacific/Auckland")
    await ann.until(23, 59, day=1)
    assert len(ann.prompted()) == 1
    assert ann.done() == 10


@briefly
async def test_a_prompt_that_is_open_is_not_asked_again_in_the_new_zone(theatre: Theatre) -> None:
    ann = await theatre.client(total=20)
    await ann.until(8, 5)
    await change_zone(ann, "Madrid", "Europe/Madrid")
    await ann.until(19, 59)
    assert len(ann.prompted()) == 1
    await ann.tap("all")
    await ann.until(23)
    assert len(ann.prompted()) == 1  # the second was due while the first was open


@briefly
async def test_flying_east_over_midnight_begins_the_next_day_once(theatre: Theatre) -> None:
    ann = await theatre.client(total=20, weekdays=(0, 1))
    await ann.until(13)
    await ann.say("10")
    await ann.until(14)
    await change_zone(ann, "Auckland", "Pacific/Auckland")  # 03:00 on Tuesday there
    await ann.until(8, day=1)
    await ann.tap("all")
    await ann.until(20, day=1)
    await ann.tap("all")
    assert ann.times() == ["08:00", "08:00", "20:00"]
    assert (ann.done(), ann.done(1)) == (10, 20)


@briefly
async def test_flying_west_over_midnight_does_not_ask_for_a_day_that_was_done(
    theatre: Theatre,
) -> None:
    ann = await theatre.client(total=20, zone="Pacific/Auckland", weekdays=(0, 1))
    for hour in (8, 20):
        await ann.until(hour)
        await ann.tap("all")
    await ann.until(8, day=1)
    await ann.tap("all")
    await ann.until(8, 10, day=1)
    await change_zone(ann, "Honolulu", "Pacific/Honolulu")  # 09:00 on Monday there
    await ann.until(23)
    assert ann.done() == 20
    assert len(ann.prompted()) == 3
    await ann.until(20, day=1)
    assert ann.done(1) == 10
    assert len(ann.prompted()) == 4  # Tuesday goes on where it was left


@briefly
async def test_flying_back_to_yesterday_a_number_means_the_prompt_that_is_open_and_both_days_go_on(
    theatre: Theatre,
) -> None:
    ann = await theatre.client(total=20, zone="Pacific/Auckland", weekdays=(0, 1), gap=120)
    await ann.until(8)
    await ann.tap("all")
    await ann.until(20)
    await ann.say("5")  # five of Monday's are left, and no time for them
    await ann.until(8, 10, day=1)  # asked for Tuesday's first, which stays open
    await change_zone(ann, "Honolulu", "Pacific/Honolulu")  # 09:10 on Monday there
    await ann.say("did 10")  # what is open is meant
    assert (ann.done(), ann.done(1)) == (15, 10)
    await ann.until(20)
    assert ann.times() == ["08:00", "20:00", "08:00", "20:00"]
    await ann.say("5")
    await ann.until(20, day=1)
    await ann.tap("all")
    assert (ann.done(), ann.done(1)) == (20, 20)


@briefly
async def test_in_hours_round_the_clock_the_gap_holds_over_midnight(theatre: Theatre) -> None:
    """Monday's last bout is at 23:55; Tuesday's window begins at midnight."""
    ann = await theatre.client(total=20, bout=10, window="00:00-24:00", weekdays=(0, 1), gap=120)
    await ann.until(23, 58)
    await ann.tap("all")
    await ann.until(1, 57, day=1)
    assert ann.times() == ["05:00", "23:55"]
    await ann.until(1, 58, day=1)
    await ann.until(2, 5, day=1)
    assert ann.times() == ["05:00", "23:55", "02:00"]  # on the grid of five minutes


@briefly
async def test_a_new_window_in_the_middle_of_the_day_holds_from_now(theatre: Theatre) -> None:
    ann = await theatre.client(total=30)
    await ann.until(8)
    await ann.tap("all")
    await ann.until(9)
    await ann.say("/times")
    await ann.press("t:window")
    ann.moved(window="10:00-18:00")
    await ann.say("10:00-18:00")
    await ann.press("t:keep")
    await ann.until(18)
    assert ann.times()[1:] == best("10:00-18:00", 2, last=minute("08:00"))[: len(ann.times()) - 1]
    assert "18:00" in ann.times()
