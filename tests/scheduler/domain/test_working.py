"""A practice's working hours (H6). Wall clocks are checked against dateutil's reading of the same zones."""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from dateutil import tz
from hypothesis import given
from hypothesis import strategies as st

from scheduler.domain.hours import Span
from scheduler.domain.working import Working

MON_TO_FRI = (0, 1, 2, 3, 4)
NINE_TO_FIVE = Span(540, 1020)
A_SECOND, A_MINUTE = timedelta(seconds=1), timedelta(minutes=1)
ZONES = ("Europe/Lisbon", "America/New_York", "Australia/Lord_Howe", "Asia/Kathmandu", "UTC")


def working(
    zone: str = "Europe/Lisbon",
    hours: Span = NINE_TO_FIVE,
    weekdays: tuple[int, ...] = MON_TO_FRI,
) -> Working:
    return Working(ZoneInfo(zone), hours, weekdays)


def at(zone: str, year: int, month: int, day: int, hour: int, minute: int = 0) -> datetime:
    """An instant by the wall clock of a zone, worked out by dateutil (UTC)."""
    return datetime(year, month, day, hour, minute, tzinfo=tz.gettz(zone)).astimezone(UTC)


def lisbon(day: int, hour: int, minute: int = 0) -> datetime:
    """March 2027: the 8th is a Monday, the clocks go forward on Sunday the 28th at 01:00 UTC."""
    return at("Europe/Lisbon", 2027, 3, day, hour, minute)


# --- edges ---------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("now", "is_open"),
    [
        (lisbon(8, 9) - A_SECOND, False),
        (lisbon(8, 9), True),
        (lisbon(8, 17) - A_SECOND, True),
        (lisbon(8, 17), False),
        (lisbon(12, 16, 59), True),
        (lisbon(13, 12), False),
        (lisbon(14, 12), False),
    ],
)  # arithmetic
def test_the_practice_is_open_from_its_first_minute_to_before_its_last(
    now: datetime, is_open: bool
) -> None:
    assert working().is_open(now) is is_open


@pytest.mark.parametrize(
    ("now", "start"),
    [
        (lisbon(8, 9) - A_SECOND, lisbon(8, 9)),
        (lisbon(8, 9), lisbon(9, 9)),
        (lisbon(8, 20), lisbon(9, 9)),
        (lisbon(9, 0), lisbon(9, 9)),
        (lisbon(12, 9), lisbon(15, 9)),
        (lisbon(13, 0), lisbon(15, 9)),
        (lisbon(14, 23, 59), lisbon(15, 9)),
    ],
)  # arithmetic
def test_the_next_start_is_after_now_and_skips_the_days_off(now: datetime, start: datetime) -> None:
    assert working().next_start(now) == start


def test_with_one_working_day_the_next_start_is_a_week_away() -> None:
    only_monday = working(weekdays=(0,))
    assert only_monday.next_start(lisbon(8, 9)) == lisbon(15, 9)
    assert only_monday.next_start(lisbon(8, 9) - A_SECOND) == lisbon(8, 9)


def test_within_working_hours_it_is_now_and_outside_it_is_their_next_start() -> None:
    assert working().from_now(lisbon(8, 10)) == lisbon(8, 10)
    assert working().from_now(lisbon(8, 17)) == lisbon(9, 9)
    assert working().from_now(lisbon(12, 17)) == lisbon(15, 9)


def test_a_practice_that_works_round_the_clock_is_always_open() -> None:
    always = working(hours=Span(0, 1440), weekdays=tuple(range(7)))
    for hour in range(24):
        assert always.is_open(lisbon(8, hour))
    assert always.next_start(lisbon(8, 0)) == lisbon(9, 0)


def test_working_hours_without_a_weekday_are_a_bug_and_said_so() -> None:
    with pytest.raises(ValueError, match=r"^Working hours need a weekday\.$"):
        working(weekdays=()).next_start(lisbon(8, 9))


def test_the_weekday_is_the_practices_not_that_of_utc() -> None:
    kathmandu = working("Asia/Kathmandu", Span(0, 60), (0,))  # UTC+5:45, no clock changes (tz data)
    sunday_evening = datetime(2027, 3, 7, 18, 15, tzinfo=UTC)
    assert kathmandu.is_open(sunday_evening)
    assert not kathmandu.is_open(sunday_evening - A_SECOND)


# --- clock changes -------------------------------------------------------------------------------


def test_hours_begin_at_nine_by_the_wall_clock_on_both_sides_of_spring() -> None:
    """Lisbon is UTC until 28 March 2027, 01:00 UTC, then UTC+1 (arithmetic with tz data)."""
    every_day = working(weekdays=tuple(range(7)))
    assert every_day.next_start(lisbon(27, 8)) == datetime(2027, 3, 27, 9, tzinfo=UTC)
    assert every_day.next_start(lisbon(27, 9)) == datetime(2027, 3, 28, 8, tzinfo=UTC)
    assert every_day.next_start(lisbon(28, 9)) == datetime(2027, 3, 29, 8, tzinfo=UTC)


def test_hours_begin_at_nine_by_the_wall_clock_on_both_sides_of_autumn() -> None:
    """Lisbon goes back to UTC on 31 October 2027, 01:00 UTC (arithmetic with tz data)."""
    every_day = working(weekdays=tuple(range(7)))
    saturday = datetime(2027, 10, 30, 8, tzinfo=UTC)
    assert every_day.next_start(saturday - A_SECOND) == saturday
    assert every_day.next_start(saturday) == datetime(2027, 10, 31, 9, tzinfo=UTC)


def test_a_start_that_the_spring_skips_moves_forward_by_the_hour() -> None:
    """New York skips 02:00 to 03:00 on 14 March 2027; 02:30 is read as 03:30, 07:30 UTC (RFC 5545)."""
    night = working("America/New_York", Span(150, 300), (6,))
    start = datetime(2027, 3, 14, 7, 30, tzinfo=UTC)
    assert night.next_start(start - timedelta(days=1)) == start
    assert not night.is_open(start - A_SECOND)
    assert night.is_open(start)


def test_a_start_that_comes_twice_in_autumn_is_the_first() -> None:
    """New York has 01:00 to 02:00 twice on 7 November 2027; the first 01:30 is 05:30 UTC (RFC 5545)."""
    night = working("America/New_York", Span(90, 180), (6,))
    start = datetime(2027, 11, 7, 5, 30, tzinfo=UTC)
    assert night.next_start(start - A_MINUTE) == start
    assert night.is_open(start)
    assert night.is_open(start + timedelta(hours=1))  # the second 01:30
    assert not night.is_open(datetime(2027, 11, 7, 8, 0, tzinfo=UTC))  # 03:00


def wall_clock(zone: str, now: datetime) -> datetime:
    local = now.astimezone(tz.gettz(zone))
    return local.replace(tzinfo=None)


@given(
    st.sampled_from(ZONES),
    st.integers(0, 2 * 366 * 24 * 60),
    st.sets(st.integers(0, 6), min_size=1),
)
def test_open_and_next_start_agree_with_the_wall_clock_of_dateutil(
    zone: str, minutes: int, weekdays: set[int]
) -> None:
    """From 2026 on, every minute of two years in five zones; 9 to 5 is never skipped or doubled there."""
    now = datetime(2026, 1, 1, tzinfo=UTC) + timedelta(minutes=minutes)
    practice = working(zone, NINE_TO_FIVE, tuple(sorted(weekdays)))
    local = wall_clock(zone, now)
    expected = local.weekday() in weekdays and 9 * 60 <= local.hour * 60 + local.minute < 17 * 60
    assert practice.is_open(now) is expected
    start = practice.next_start(now)
    there = wall_clock(zone, start)
    assert (there.hour, there.minute, there.second) == (9, 0, 0)
    assert there.weekday() in weekdays
    assert start > now
    days_between = (there.date() - local.date()).days
    passed = [local.date() + timedelta(days=n) for n in range(days_between)]
    skipped = [day for day in passed if day.weekday() in weekdays and day != local.date()]
    assert skipped == []  # no working day lies between
    if days_between and local.weekday() in weekdays:
        assert local.hour >= 9
