"""How long a break is, and when it ends the clearance: rule C2 of the specification (read)."""

from datetime import UTC, date, datetime, timedelta

import pytest

from scheduler.domain.breaks import ends_clearance, last_day, most_days
from scheduler.domain.people import Pause

FIRST = date(2027, 3, 8)


def pause(days: int | None, reason: str = "travel", after: int = 0) -> Pause:
    """A break of so many days that begins `after` days after the first."""
    first = FIRST + timedelta(days=after)
    last = None if days is None else first + timedelta(days=days - 1)
    return Pause(1, 7, first, last, reason, 7, datetime(2027, 3, 8, 12, tzinfo=UTC))


def day(number: int) -> date:
    """The n-th day from the first, which is 1."""
    return FIRST + timedelta(days=number - 1)


def test_the_first_day_is_the_day_it_begins_on() -> None:
    assert last_day(FIRST, "today") == FIRST
    assert last_day(FIRST, "14") == date(2027, 3, 21)  # 8 + 13 (arithmetic)
    assert last_day(FIRST, "unsure") is None


@pytest.mark.parametrize(("on", "ends"), [(13, False), (14, True)])
def test_the_14th_day_of_a_break_ends_the_clearance(on: int, ends: bool) -> None:
    assert most_days([pause(None)], FIRST, day(on)) == on
    assert ends_clearance([pause(None)], FIRST, day(on)) is ends


@pytest.mark.parametrize(("on", "ends"), [(7, False), (8, True)])
def test_the_8th_day_of_a_break_for_illness_does(on: int, ends: bool) -> None:
    assert ends_clearance([pause(None, "illness")], FIRST, day(on)) is ends
    assert ends_clearance([pause(None)], FIRST, day(on)) is False


@pytest.mark.parametrize(("days", "ends"), [(13, False), (14, True)])
def test_a_break_that_is_over_counts_as_it_was_on_whichever_day_it_is_looked_at(
    days: int, ends: bool
) -> None:
    assert ends_clearance([pause(days)], FIRST, day(40)) is ends


@pytest.mark.parametrize(("on", "ends"), [(22, False), (23, True)])
def test_days_before_the_clearance_do_not_count_its_own_day_does(on: int, ends: bool) -> None:
    cleared = day(10)
    assert ends_clearance([pause(None)], cleared, day(on)) is ends  # 10..23 are 14 (arithmetic)


@pytest.mark.parametrize("before", [day(-30), FIRST])
def test_a_clearance_long_before_the_break_changes_nothing(before: date) -> None:
    assert not ends_clearance([pause(13)], before, day(13))
    assert ends_clearance([pause(14)], before, day(14))


def test_one_break_after_another_counts_on_unless_a_day_lies_between() -> None:
    assert ends_clearance([pause(10), pause(4, after=10)], FIRST, day(14))
    assert most_days([pause(9), pause(5, after=10)], FIRST, day(14)) == 9
    assert not ends_clearance([pause(13), pause(13, after=14)], FIRST, day(27))


def test_an_illness_after_travel_counts_as_illness_from_its_own_first_day() -> None:
    both = [pause(5), pause(None, "illness", after=5)]
    assert not ends_clearance(both, FIRST, day(12))
    assert ends_clearance(both, FIRST, day(13))


def test_a_break_ended_on_its_first_day_has_no_day() -> None:
    assert most_days([pause(0)], FIRST, day(3)) == 0
