"""Days of the week with rest between them."""

from datetime import date, timedelta
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scheduler.domain.weekdays import best_spaced, most_days, nearest_weekdays, rested

MONDAY = date(2027, 3, 8)
WEEK = [MONDAY + timedelta(days=n) for n in range(7)]


# Source: arithmetic over 52 weeks of the same days.
@pytest.mark.parametrize("rest", range(7))
@given(weekdays=st.sets(st.integers(0, 6), min_size=1))
def test_weekdays_keep_the_rest_rule_if_a_year_of_them_does(weekdays: set[int], rest: int) -> None:
    year = [
        each
        for each in (MONDAY + timedelta(days=n) for n in range(364))
        if each.weekday() in weekdays
    ]
    kept = all((b - a).days - 1 >= rest for a, b in pairwise(year))
    assert rested(weekdays, rest) == kept
    if kept:
        assert len(weekdays) <= most_days(rest)


@given(st.sets(st.integers(0, 6), min_size=1), st.integers(1, 7), st.integers(0, 6))
def test_the_nearest_weekdays_are_as_many_as_can_be_and_rested(
    own: set[int], count: int, rest: int
) -> None:
    nearest = nearest_weekdays(own, count, rest)
    assert len(nearest) == min(count, most_days(rest))
    assert rested(nearest, rest)


def test_the_nearest_weekdays_keep_most_of_ones_own() -> None:
    assert nearest_weekdays((0, 1, 3), 3, 1) == (0, 3, 5)
    assert nearest_weekdays((0, 2, 6), 3, 1) == (0, 2, 4)
    assert nearest_weekdays((0, 1, 2, 3), 4, 1) == (0, 2, 4)


@pytest.mark.parametrize(
    ("count", "rest", "days"),
    [
        (1, 0, [0]), (2, 1, [0, 3]), (3, 1, [0, 2, 4]), (3, 0, [0, 2, 4]), (4, 0, [0, 1, 3, 5]),
        (7, 0, [0, 1, 2, 3, 4, 5, 6]), (9, 3, [0, 4]),
    ],
)  # fmt: skip
def test_days_of_a_free_week_are_spaced_best(count: int, rest: int, days: list[int]) -> None:
    found = best_spaced(WEEK, count, rest)
    assert {(b - a).days for a, b in pairwise(found)} == {b - a for a, b in pairwise(days)}
    assert found[0] == MONDAY


def test_what_is_left_of_a_week_is_spaced_as_well_as_it_can_be() -> None:
    assert best_spaced(WEEK[3:], 2, 1) == (WEEK[3], WEEK[6])
    assert best_spaced(WEEK[5:], 2, 1) == (WEEK[5],)
    assert best_spaced([], 2, 1) == ()
