"""The best times of a day against every other way to place them, and against other methods (S2)."""

import math
from itertools import combinations, pairwise
from random import Random

import numpy as np
import pytest
from scipy.optimize import minimize

from scheduler.domain.optimum import (
    GRID_SECONDS,
    TIE,
    Shape,
    best_times,
    best_times_of_all_counts,
    most_bouts,
)

HOUR, MINUTE = 3600.0, 60.0
Times = tuple[float, ...]


def allowed(shape: Shape) -> list[float]:
    """Every second of the grid at which a bout may fall, found one by one."""
    found, at = [], shape.offset
    while at <= shape.end:
        in_quiet = any(start < at < end for start, end in shape.quiet)
        after_last = shape.last is None or at - shape.last >= shape.gap
        if at >= max(0.0, shape.earliest) and after_last and not in_quiet:
            found.append(at)
        at += shape.step
    return found


def recovered(shape: Shape, times: Times) -> float:
    """The sum of recovery over all gaps, the one from the last bout done included."""
    chain = times if shape.last is None else (shape.last, *times)
    return math.fsum(1 - math.exp(-(b - a) / shape.tau) for a, b in pairwise(chain))


def by_trying_all(shape: Shape, bouts: int) -> Times | None:
    """The earliest of the best times among all there are, or `None` if so many do not fit."""
    every = [
        (recovered(shape, times), times)
        for times in combinations(allowed(shape), bouts)
        if all(b - a >= shape.gap for a, b in pairwise(times))
    ]
    if not every:
        return None
    best = max(total for total, _ in every)
    return min(times for total, times in every if total >= best - TIE)


def small_day(random: Random) -> Shape:
    """At most 16 places on the grid, with everything that can be in the way."""
    quiet = []
    for _ in range(random.randrange(3)):
        start = random.randrange(0, 70)
        quiet.append((start * MINUTE, (start + random.randrange(1, 25)) * MINUTE))
    last = random.choice(
        [None, None, random.uniform(-200, 60) * MINUTE, random.randrange(9) * 300.0]
    )
    return Shape(
        end=random.randrange(0, 76) * MINUTE,
        quiet=tuple(quiet),
        gap=random.choice([0, 1, 5, 7, 10, 15, 20, 33]) * MINUTE,
        # Short time constants make many sums equal within the tolerance.
        tau=random.choice([2 * MINUTE, 3 * MINUTE, 10 * MINUTE, HOUR, 6 * HOUR, 24 * HOUR]),
        last=last,
        earliest=random.choice([0.0, 0.0, random.uniform(-10, 50) * MINUTE]),
        offset=random.choice([0, 0, 3, 5, 12]) * MINUTE,
    )


def test_the_times_of_a_small_day_are_the_best_of_all_there_are() -> None:
    random = Random(20270308)
    compared, unfit = 0, 0
    for _ in range(4000):
        shape, bouts = small_day(random), random.randrange(1, 6)
        expected = by_trying_all(shape, bouts)
        times, total = best_times(shape, bouts)
        if expected is None:
            unfit += 1
            assert len(times) == most_bouts(shape) < bouts
            assert len(times) == 0 or by_trying_all(shape, len(times)) == times
            assert by_trying_all(shape, len(times) + 1) is None
        else:
            compared += 1
            assert times == expected, shape
            assert total == pytest.approx(recovered(shape, times), abs=1e-12)
    assert compared > 500
    assert unfit > 100


def textbook(shape: Shape, most: int) -> list[float]:
    """The largest sums for 1, 2, ... bouts by the textbook dynamic programme over all pairs."""
    places = np.array(allowed(shape))
    if not len(places):
        return []
    apart = places[None, :] - places[:, None]
    pairs = np.where(apart >= max(shape.gap, shape.step), 1 - np.exp(-apart / shape.tau), -np.inf)
    led = 0.0 if shape.last is None else 1 - np.exp(-(places - shape.last) / shape.tau)
    rest = np.zeros(len(places))
    sums = []
    for _ in range(most):
        sums.append(float(np.max(led + rest)))
        rest = np.max(pairs + rest[None, :], axis=1)
    return [total for total in sums if total > -math.inf]


def whole_day(random: Random) -> Shape:
    hours = random.randrange(3, 15)
    quiet = []
    for _ in range(random.randrange(4)):
        start = random.uniform(0, hours)
        quiet.append((start * HOUR, (start + random.uniform(0.1, 2)) * HOUR))
    return Shape(
        end=hours * HOUR,
        quiet=tuple(quiet),
        gap=random.choice([0, 5, 30, 45, 60, 90, 117, 120, 180]) * MINUTE,
        tau=random.choice([1, 3, 6, 6, 6, 12, 24]) * HOUR,
        last=random.choice([None, random.uniform(-5, hours) * HOUR]),
        earliest=random.choice([0.0, random.uniform(0, hours) * HOUR]),
        offset=random.choice([0, 5, 17]) * MINUTE,
    )


def test_a_thousand_days_equal_the_textbook_dynamic_programme() -> None:
    random = Random(7)
    lengths = set()
    for _ in range(1000):
        shape = whole_day(random)
        expected = textbook(shape, 8)
        found = best_times_of_all_counts(shape, 8)
        assert [total for _, total in found[1:]] == pytest.approx(expected, abs=1e-12)
        for bouts, (times, total) in enumerate(found):
            assert len(times) == bouts
            assert {*times} <= {*allowed(shape)}
            assert all(b - a >= shape.gap for a, b in pairwise(times))
            assert total == pytest.approx(recovered(shape, times), abs=1e-12)
        lengths.add(len(found))
    assert lengths == {*range(1, 10)}


def continuous(shape: Shape, bouts: int) -> float:
    """The largest sum when bouts need not lie on a grid, by a general optimiser."""
    first = shape.earliest if shape.last is None else max(0.0, shape.last + shape.gap)

    def loss(hours: np.ndarray) -> float:
        chain = np.append(shape.last, hours * HOUR) if shape.last is not None else hours * HOUR
        return -float(np.sum(1 - np.exp(-np.diff(chain) / shape.tau)))

    apart = [
        {"type": "ineq", "fun": lambda hours, n=n: hours[n + 1] - hours[n] - shape.gap / HOUR}
        for n in range(bouts - 1)
    ]
    start = np.linspace(first, shape.end, bouts) / HOUR
    bounds = [(first / HOUR, shape.end / HOUR)] * bouts
    options = {"ftol": 1e-14, "maxiter": 500}
    found = minimize(loss, start, method="SLSQP", bounds=bounds, constraints=apart, options=options)
    assert found.success, found.message
    return -float(found.fun)


@pytest.mark.parametrize("seed", range(30))
def test_the_grid_costs_no_more_than_its_width(seed: int) -> None:
    random = Random(seed)
    shape = Shape(
        end=random.randrange(16, 29) * HOUR / 2,
        quiet=(),
        gap=random.choice([30, 60, 75]) * MINUTE,
        tau=6 * HOUR,
        last=random.choice([None, random.uniform(-2, 2) * HOUR]),
    )
    bouts = random.randrange(2, 6)
    _, total = best_times(shape, bouts)
    best = continuous(shape, bouts)
    assert total <= best + 1e-9
    # At the optimum small changes cancel but for the ends, so each gap loses by the square of a step;
    # the first bout may have to wait up to one step for the grid. R' is at most 1 / tau, R'' its square.
    step = GRID_SECONDS / shape.tau
    assert total >= best - bouts * step**2 - (step if shape.last is not None else 0)


def test_six_bouts_from_eight_to_eight() -> None:
    # Source: arithmetic.
    times, total = best_times(Shape(end=12 * HOUR, quiet=(), gap=2 * HOUR, tau=6 * HOUR), 6)
    assert total == pytest.approx(1.648348, abs=5e-7)
    assert [round(at / MINUTE) for at in times] == [0, 140, 285, 430, 575, 720]


def test_without_a_grid_in_the_way_the_gaps_are_even() -> None:
    # Source: arithmetic; a sum of one concave function of gaps is largest where they are equal.
    times, _ = best_times(Shape(end=10 * HOUR, quiet=(), gap=HOUR, tau=6 * HOUR), 5)
    assert [at / MINUTE for at in times] == [0, 150, 300, 450, 600]


def test_a_finer_grid_is_as_exact() -> None:
    quiet = ((4 * HOUR, 5 * HOUR), (7 * HOUR, 7.5 * HOUR), (10 * HOUR, 10.5 * HOUR))
    shape = Shape(end=12 * HOUR, quiet=quiet, gap=2 * HOUR, tau=6 * HOUR, step=MINUTE)
    found = [total for _, total in best_times_of_all_counts(shape, 6)[1:]]
    assert found == pytest.approx(textbook(shape, 6), abs=1e-12)


def test_the_tolerance_is_given_away_once_not_bout_by_bout() -> None:
    # Source: arithmetic. With this tau a gap of four steps loses exp(-21.2) = 6e-10: within the
    # tolerance once, not twice. So the second bout comes at step 4, the third waits until step 12.
    step = GRID_SECONDS
    shape = Shape(
        end=12 * step,
        quiet=((0, 4 * step), (5 * step, 8 * step), (8 * step, 12 * step)),
        gap=step,
        tau=4 * step / 21.23,
    )
    times, _ = best_times(shape, 3)
    assert times == (0, 4 * step, 12 * step) == by_trying_all(shape, 3)
