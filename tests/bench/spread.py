"""B8: the exact plan of a day, against the textbook dynamic programme in the same language."""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Callable, Iterator
from dataclasses import replace
from random import Random
from statistics import median
from time import perf_counter

from scheduler.domain.optimum import Shape, best_times, best_times_of_all_counts
from tests.bench.bench import Bench
from tests.bench.figure import Figure, in_turns

HOUR, MINUTE = 3600.0, 60.0
QUIET = ((4 * HOUR, 5 * HOUR), (7 * HOUR, 7.5 * HOUR), (10 * HOUR, 10.5 * HOUR))
A_DAY = Shape(end=12 * HOUR, quiet=QUIET, gap=2 * HOUR, tau=6 * HOUR)
MOST = 7
"""No more bouts fit into a day of twelve hours, two apart."""
TIE = 1e-9


def textbook(shape: Shape, most: int) -> list[tuple[tuple[float, ...], float]]:
    """The best times of 1, 2, ... bouts with their sums: every later place tried after every place.

    Plain Python as one would write it: recovery looked up in a table, the choices kept to go along
    afterwards. Ties may go to other times than ours, as sums of floats do.
    """
    ticks = shape.ticks()
    if not ticks:
        return []
    recovered = [-math.expm1(-shape.step * n / shape.tau) for n in range(ticks[-1] - ticks[0] + 1)]
    led = [0.0] * len(ticks)
    if shape.last is not None:
        led = [-math.expm1((shape.last - shape.second(tick)) / shape.tau) for tick in ticks]
    rest = [0.0] * len(ticks)
    chosen: list[list[int]] = []
    found: list[tuple[tuple[float, ...], float]] = []
    while rest and len(found) < most:
        total, first = max((a + b, -row) for row, (a, b) in enumerate(zip(led, rest, strict=False)))
        found.append((_along(shape, ticks, chosen, -first), total))
        rest, choices = _one_more(ticks, shape.apart, recovered, rest)
        chosen.append(choices)
    return found


def _one_more(
    ticks: list[int], apart: int, recovered: list[float], rest: list[float]
) -> tuple[list[float], list[int]]:
    """The best sums with one bout more, by its place, and the place after it."""
    sums, choices = [], []
    for tick in ticks:
        first = bisect_left(ticks, tick + apart)
        if first >= len(rest):
            break
        best, where = -1.0, first
        for row in range(first, len(rest)):
            total = recovered[ticks[row] - tick] + rest[row]
            if total > best:
                best, where = total, row
        sums.append(best)
        choices.append(where)
    return sums, choices


def _along(shape: Shape, ticks: list[int], chosen: list[list[int]], row: int) -> tuple[float, ...]:
    """The times of the bouts from a first one on, place by place."""
    times = [shape.second(ticks[row])]
    for choices in reversed(chosen):
        row = choices[row]
        times.append(shape.second(ticks[row]))
    return tuple(times)


def timed(work: Callable[[], object], times: int) -> Callable[[], float]:
    """Milliseconds of one call, the median of so many."""

    def measure() -> float:
        taken = []
        for _ in range(times):
            begun = perf_counter()
            work()
            taken.append(1000 * (perf_counter() - begun))
        return median(taken)

    return measure


def exact(bench: Bench) -> Iterator[Figure]:
    """One exact plan for all bout counts, three quiet times, not cached, on both grids.

    Both give the times and the sum for every count.
    """
    for grid, goal in ((5, 1 / 8), (1, 1 / 35)):
        shape = replace(A_DAY, step=grid * MINUTE)
        times = bench.size(20, 3)
        ours, peer = in_turns(
            bench.rounds,
            timed(lambda shape=shape: best_times_of_all_counts(shape, MOST), times),  # type: ignore[misc]
            timed(lambda shape=shape: textbook(shape, MOST), times),  # type: ignore[misc]
        )
        yield Figure(
            f"B8 plan {grid}-minute grid", ours, peer, "at most", goal, "ms",
            "textbook: every pair of places, in plain Python; both give times and sums of all counts",
        )  # fmt: skip


def some_day(random: Random) -> Shape:
    """A day with three quiet times, anywhere, of any length."""
    hours = random.randrange(6, 15)
    quiet = []
    for _ in range(3):
        start = random.uniform(0, hours)
        quiet.append((start * HOUR, (start + random.uniform(0.1, 2)) * HOUR))
    return Shape(
        end=hours * HOUR,
        quiet=tuple(quiet),
        gap=random.choice([30, 45, 60, 90, 117, 120, 180]) * MINUTE,
        tau=random.choice([3, 6, 6, 6, 12]) * HOUR,
        last=random.choice([None, random.uniform(-5, hours / 2) * HOUR]),
        offset=random.choice([0, 5, 17]) * MINUTE,
        step=random.choice([5, 5, 5, 1]) * MINUTE,
    )


def equal(bench: Bench) -> Iterator[Figure]:
    """Days of 1,000 random ones whose largest sums differ from the textbook's for any bout count."""
    random, days = Random(8), bench.size(1000, 50)
    different = 0
    for _ in range(days):
        shape = some_day(random)
        expected = [total for _, total in textbook(shape, 8)]
        found = [total for _, total in best_times_of_all_counts(shape, 8)][1:]
        same = len(found) == len(expected)
        different += not same or any(
            abs(a - b) > TIE for a, b in zip(found, expected, strict=False)
        )
    yield Figure(
        "B8 equal", different, 0, "at most", 0, "days", f"of {days} random days; tolerance {TIE}"
    )


def cached(bench: Bench) -> Iterator[Figure]:
    """A day whose shape was met before, its times looked up, against the textbook's on the 5-minute grid."""
    shapes = iter(lambda: replace(A_DAY), None)
    per_turn = bench.size(20_000, 2_000)

    def ours() -> float:
        these = [next(shapes) for _ in range(per_turn)]  # equal, but other objects
        begun = perf_counter()
        for shape in these:
            best_times(shape, MOST)
        return 1000 * (perf_counter() - begun) / per_turn

    peer = timed(lambda: textbook(A_DAY, MOST), bench.size(20, 3))
    taken, beside = in_turns(bench.rounds, ours, peer)
    yield Figure(
        "B8 cached", taken, beside, "at most", 1 / 500, "ms",
        "best_times of an equal shape; the shape itself is made beforehand",
    )  # fmt: skip
