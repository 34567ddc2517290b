"""The best times for the bouts of a day, on a grid, exactly (S2).

The sum of recovery is a sum of one concave function of each gap. So the best next bout never moves
earlier when the bout before it moves later, and each layer of the dynamic programme is solved by
divide and conquer over its rows instead of trying every pair. Places that are not allowed are left
out of the rows, never marked: a marker such as minus infinity would break the order of the rows.
"""

from __future__ import annotations

import math
from bisect import bisect_left, bisect_right
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from operator import add

TIE = 1e-9
"""Sums of recovery this close are equal: the order in which floats are added must not decide."""
SHAPES_KEPT = 4096
"""Days of equal shape share one computation; a result is a few hundred bytes."""
GRID_SECONDS = 300.0


@dataclass(frozen=True, slots=True)
class Shape:
    """Where bouts may fall on a day, without its date. Seconds, counted from the window's start.

    `quiet` holds pairs; a bout may fall on either end of one, not between. `earliest` is the first
    second for a bout, the gap after `last` aside; `last` is when the last bout was done, if any.
    """

    end: float
    quiet: tuple[tuple[float, float], ...]
    gap: float
    tau: float
    last: float | None = None
    earliest: float = 0.0
    offset: float = 0.0
    step: float = GRID_SECONDS

    def ticks(self) -> list[int]:
        """The places on the grid where the first or any later bout may fall, in order."""
        earliest = self.earliest if self.last is None else max(self.earliest, self.last + self.gap)
        first = max(0, math.ceil((earliest - self.offset) / self.step))
        ticks = list(range(first, math.floor((self.end - self.offset) / self.step) + 1))
        for start, end in self.quiet:
            after = bisect_right(ticks, (start - self.offset) / self.step)
            del ticks[after : bisect_left(ticks, (end - self.offset) / self.step)]
        return ticks

    def second(self, tick: int) -> float:
        """A place on the grid in seconds from the window's start."""
        return self.offset + tick * self.step

    @property
    def apart(self) -> int:
        """The minimum gap between two bouts on the grid; two bouts never share a place."""
        return max(1, math.ceil(self.gap / self.step))


@lru_cache(maxsize=SHAPES_KEPT)
def most_bouts(shape: Shape) -> int:
    """The largest number of bouts that fit: each as early as it can be."""
    count, free_from, apart = 0, 0, shape.apart
    for tick in shape.ticks():
        if tick >= free_from:
            count, free_from = count + 1, tick + apart
    return count


@lru_cache(maxsize=SHAPES_KEPT)
def best_times(shape: Shape, wanted: int) -> tuple[tuple[float, ...], float]:
    """The best times for `wanted` bouts, or for as many as fit, and their sum of recovery.

    Seconds from the window's start. Of all times whose sum is within `TIE` of the largest, the
    earliest, first bout first.
    """
    day = _Optimum(shape, wanted)
    return day.times(min(wanted, day.most))


def best_times_of_all_counts(shape: Shape, most: int) -> list[tuple[tuple[float, ...], float]]:
    """The same for 0, 1, 2, ... bouts, up to `most` or as many as fit. Not cached."""
    day = _Optimum(shape, most)
    return [day.times(bouts) for bouts in range(day.most + 1)]


@lru_cache(maxsize=64)
def _recovered(step: float, tau: float) -> tuple[float, ...]:
    """R after 0, 1, 2, ... steps of the grid, for a day of up to 48 hours."""
    return tuple(-math.expm1(-step * n / tau) for n in range(math.ceil(2 * 86_400 / step) + 1))


class _Optimum:
    """The best sums of a day, for every number of bouts up to `most`.

    `layers[n][row]` is the largest sum of recovery over `n` further bouts after one at
    `ticks[row]`, for the rows after which `n` bouts fit. `led[row]` is the recovery before a first
    bout there, since the last one done, which need not be on the grid, or else since the first of
    the day. With none before it that one is best, and earliest, on the first place of all: `fixed`.
    """

    def __init__(self, shape: Shape, most: int) -> None:
        self.shape = shape
        self.recovered = _recovered(shape.step, shape.tau)
        ticks, apart = shape.ticks(), shape.apart
        self.fixed: tuple[int, ...] = ()
        if shape.last is not None:
            since = [shape.second(tick) - shape.last for tick in ticks]
            self.led = [-math.expm1(-seconds / shape.tau) for seconds in since]
        elif ticks and most > 0:
            self.fixed = (ticks[0],)
            ticks = ticks[bisect_left(ticks, ticks[0] + apart) :]
            self.led = [self.recovered[tick - self.fixed[0]] for tick in ticks]
        self.ticks = ticks
        self.nearest = [bisect_left(ticks, tick + apart) for tick in ticks]
        self.layers: list[list[float]] = []
        while ticks and len(self.layers) < most - len(self.fixed):
            rows = self._one_more(self.layers)
            if not rows:
                break
            self.layers.append(rows)
        self.most = len(self.fixed) + len(self.layers)

    def _one_more(self, layers: list[list[float]]) -> list[float]:
        """The layer before those there are."""
        if not layers:
            return [0.0] * len(self.ticks)
        if len(layers) > 1:
            return self._layer_before(layers[-1])
        rows, end = bisect_left(self.nearest, len(self.ticks)), self.ticks[-1]
        # One bout more: the later the better.
        return [self.recovered[end - tick] for tick in self.ticks[:rows]]

    def _layer_before(self, after: list[float]) -> list[float]:
        """Put one more bout before the bouts of a layer.

        Rows are taken in halves, quarters, ... of all: between two rows that are known, the best
        next bout lies between theirs. No row's range begins before its own nearest place, and none
        is empty, as both only move later from row to row.
        """
        ticks, recovered, nearest = self.ticks, self.recovered, self.nearest
        end = len(after)
        rows = bisect_left(nearest, end)  # later ones have no room for a next bout
        values, chosen = [0.0] * rows, [0] * rows
        stride = 1 << rows.bit_length()
        while stride := stride >> 1:
            for row in range(stride - 1, rows, 2 * stride):
                low = nearest[row]
                if row >= stride and chosen[row - stride] > low:
                    low = chosen[row - stride]
                high = chosen[row + stride] + 1 if row + stride < rows else end
                tick, best, where = ticks[row], -1.0, low
                for following in range(low, high):
                    value = recovered[ticks[following] - tick] + after[following]
                    if value > best:
                        best, where = value, following
                values[row], chosen[row] = best, where
        return values

    def times(self, bouts: int) -> tuple[tuple[float, ...], float]:
        """The earliest of the best times for so many bouts, and their sum of recovery.

        Each bout is the earliest with which the largest sum can still be reached. What an earlier
        bout gives away of the tolerance is gone for the later ones: the whole sum stays within it.
        """
        if bouts == 0:
            return (), 0.0
        rows = self._rows(bouts - len(self.fixed))
        ticks = (*self.fixed, *(self.ticks[row] for row in rows))
        total = self.led[rows[0]] if rows else 0.0
        total += sum(self.recovered[self.ticks[b] - self.ticks[a]] for a, b in pairwise(rows))
        return tuple(self.shape.second(tick) for tick in ticks), total

    def _rows(self, bouts: int) -> list[int]:
        ticks, recovered = self.ticks, self.recovered
        picked: list[int] = []
        slack = TIE
        for left in reversed(range(bouts)):
            layer = self.layers[left]
            if picked:
                before = picked[-1]
                tick, low, best = ticks[before], self.nearest[before], self.layers[left + 1][before]
                sums = (recovered[ticks[n] - tick] + layer[n] for n in range(low, len(layer)))
            else:
                low, best = 0, max(map(add, self.led, layer))
                sums = (led + rest for led, rest in zip(self.led, layer, strict=False))
            step, lost = _first_within(sums, best, slack)
            slack = max(0.0, slack - lost)
            picked.append(low + step)
        return picked


def _first_within(values: Iterable[float], best: float, slack: float) -> tuple[int, float]:
    """The first value at most `slack` below the best of them, and how far below it is."""
    least = best - slack
    return next((n, best - value) for n, value in enumerate(values) if value >= least)
