"""The osteogenic index against worked and published values (S6, S7)."""

import math
from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scheduler.domain.hours import Span
from scheduler.domain.index import (
    bout_index,
    day_index,
    dose_table,
    merged,
    recovery,
    spread_of_day,
)

MIDNIGHT = datetime(2027, 3, 8, tzinfo=UTC)
Bouts = list[tuple[datetime, int]]


def day(*bouts: tuple[float, int]) -> Bouts:
    """Bouts as (hour of the day, reps)."""
    return [(MIDNIGHT + timedelta(hours=hour), reps) for hour, reps in bouts]


# Source: arithmetic, from R(t) = 1 - exp(-t / 6 h) (Turner and Robling 2003, memory).
@pytest.mark.parametrize(
    ("hours", "expected"),
    [
        (0.5, 0.0800), (1, 0.1535), (2, 0.2835), (3, 0.3935), (4, 0.4866), (6, 0.6321),
        (8, 0.7364), (12, 0.8647), (24, 0.9817),
    ],
)  # fmt: skip
def test_recovery_between_two_bouts(hours: float, expected: float) -> None:
    assert recovery(timedelta(hours=hours)) == pytest.approx(expected, abs=5e-5)


# Source: arithmetic, from OI = I ln(N + 1) (PMC2465063, second-hand).
@pytest.mark.parametrize(
    ("reps", "expected"), [(10, 7.1937), (20, 9.1336), (50, 11.7955), (60, 12.3326), (120, 14.3874)]
)
def test_one_bout_at_three_body_weights(reps: int, expected: float) -> None:
    assert bout_index(3, reps) == pytest.approx(expected, abs=5e-5)


# Source: arithmetic.
@pytest.mark.parametrize(
    ("force", "bouts", "expected"),
    [
        (2, day((8, 40)), 7.4271),
        (2, day((8, 20), (16, 20)), 10.5730),
        (2, day((8, 10), (11, 10), (14, 10), (17, 10)), 10.4568),
        (2, day((8, 10), (9, 10), (10, 10), (11, 10)), 7.0045),
        (3.5, day((8, 20), (12, 20), (16, 20)), 21.0257),
        (3.5, day((8, 20), (10.5, 10), (18, 15)), 20.4395),
    ],
)
def test_one_day_of_bouts(force: float, bouts: Bouts, expected: float) -> None:
    assert day_index(bouts, force) == pytest.approx(expected, abs=5e-5)
    assert day_index(bouts[::-1], force) == day_index(bouts, force)


def test_a_week_is_the_sum_of_its_days() -> None:
    # Source: arithmetic; that a week is a sum: memory.
    week = 3 * day_index(day((8, 20), (12, 20), (16, 20)), 3.5)
    assert week == pytest.approx(63.0771, abs=2e-4)


def test_two_bouts_eight_hours_apart_against_all_at_once() -> None:
    # Source: arithmetic.
    ratio = day_index(day((8, 60), (16, 60)), 3) / bout_index(3, 120)
    assert ratio == pytest.approx(1.4884, abs=5e-5)


def test_ten_jumps_on_five_days_give_the_published_weekly_index() -> None:
    # Source: Kishimoto 2012, J Sports Sci Med 11:31-38 (read): 52.6 a week, so I = 4.387.
    assert 5 * day_index(day((8, 10)), 4.387) == pytest.approx(52.6, abs=0.05)


def test_a_step_class_gives_the_published_index() -> None:
    # Source: PMC2465063 (read): I = 1.40, N = 4194.1; reported 12.0 +/- 0.8.
    index = bout_index(1.40, 4194)
    assert index == pytest.approx(11.678, abs=5e-4)
    assert abs(index - 12.0) <= 0.8


def test_a_dose_split_over_twelve_hours_against_one_go() -> None:
    # Source: arithmetic.
    table = dose_table(total=60, window=Span(480, 1200), peak_force=1)[:6]
    assert [round(row.against_one_go, 3) for row in table] == [1, 1.558, 1.677, 1.659, 1.606, 1.545]
    assert [row.gap_minutes for row in table] == [0, 720, 360, 240, 180, 144]
    assert [row.bouts for row in table] == [1, 2, 3, 4, 5, 6]
    assert table[3].reps == (15, 15, 15, 15)


@given(st.integers(1, 500), st.integers(1, 1440), st.floats(0.5, 10), st.integers(1, 40))
def test_a_dose_table_is_whole_reps_even_gaps_and_the_days_own_index(
    total: int, length: int, force: float, up_to: int
) -> None:
    table = dose_table(total=total, window=Span(0, length), peak_force=force, up_to=up_to)
    assert len(table) == min(total, up_to, length // 30 + 1)
    for row in table:
        assert sum(row.reps) == total
        assert max(row.reps) - min(row.reps) <= 1
        gap = timedelta(minutes=row.gap_minutes)
        bouts = [(MIDNIGHT + n * gap, reps) for n, reps in enumerate(row.reps)]
        assert row.index == pytest.approx(day_index(bouts, force), rel=1e-6)
        assert row.against_one_go == pytest.approx(row.index / (force * math.log(total + 1)))


def test_bouts_less_than_half_an_hour_apart_count_as_one() -> None:
    apart = merged(day((8, 10), (8.5, 10)))
    together = merged(day((8, 10), (8 + 29.99 / 60, 10)))
    assert [reps for _, reps in apart] == [10, 10]
    assert together == ((MIDNIGHT + timedelta(hours=8), 20),)
    # "Less than half an hour" is from the start of the bout: the third is a bout of its own.
    assert [reps for _, reps in merged(day((8, 1), (8.4, 2), (8.8, 4)))] == [3, 4]


PLANNED = [MIDNIGHT + timedelta(minutes=minute) for minute in (480, 620, 765, 910, 1055, 1200)]
DONE = day((8, 10), (9, 10), (12, 10), (15, 10), (19, 10), (19.25, 10))


# Source: arithmetic.
@pytest.mark.parametrize(("most", "expected"), [(10, 0.7630), (20, 0.9035)])
def test_the_spread_of_a_day_that_was_done_another_way(most: int, expected: float) -> None:
    assert spread_of_day(DONE, PLANNED, most) == pytest.approx(expected, abs=5e-5)


def test_a_day_done_as_planned_is_spread_fully_and_one_done_in_one_go_not_at_all() -> None:
    assert spread_of_day([(at, 10) for at in PLANNED], PLANNED, 10) == 1
    assert spread_of_day(day((8, 60)), PLANNED, 60) == 0
    assert spread_of_day(day((8, 60)), PLANNED, 10) == 0


def test_the_spread_is_a_dash_where_there_is_nothing_to_spread() -> None:
    assert spread_of_day(DONE, PLANNED[:1], 10) is None
    assert spread_of_day(DONE, [], 10) is None
    assert spread_of_day([], PLANNED, 10) is None
    # Four bouts an hour apart are worth less than all at once (7.0045 against 7.4271 above).
    hourly = [at for at, _ in day((8, 0), (9, 0), (10, 0), (11, 0))]
    assert spread_of_day(day((8, 10), (9, 10), (10, 10), (11, 10)), hourly, 10) is None


@given(
    st.lists(st.tuples(st.integers(0, 1439), st.integers(1, 60)), max_size=10),
    st.lists(st.integers(0, 288), max_size=8, unique=True),
    st.integers(1, 60),
)
def test_the_spread_of_any_day_lies_between_nothing_and_all(
    done: list[tuple[int, int]], planned: list[int], most: int
) -> None:
    bouts = [(MIDNIGHT + timedelta(minutes=minute), reps) for minute, reps in done]
    times = [MIDNIGHT + timedelta(minutes=5 * tick) for tick in planned]
    spread = spread_of_day(bouts, times, most)
    assert spread is None or 0 <= spread <= 1
