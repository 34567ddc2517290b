"""The osteogenic index: a theoretical figure, from animal data, with no validated target (S6, S7).

It informs the dose table and measures how well a day was spread. It never chooses a bout size.
Source: Turner CH, Robling AG. Exerc Sport Sci Rev 2003;31(1):45-50. It defines two bouts; using the
time since the bout before for the third and later, and merging bouts less than half an hour apart,
is ours (no difference between 0 and 0.5 h: Robling AG, Burr DB, Turner CH. J Exp Biol
2001;204:3389-3399).
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from scheduler.domain.hours import Span
from scheduler.domain.spacing import TAU, even_reps, recovery

__all__ = [
    "Split",
    "bout_index",
    "day_index",
    "dose_table",
    "merged",
    "recovery",
    "spread_of_day",
]

ONE_BOUT = timedelta(minutes=30)
"""Bouts closer than this count as one."""
ROWS = 12
"""Ways to split a dose that a table shows unless more are asked for (ours)."""


@dataclass(frozen=True, slots=True)
class Split:
    """One way to split a daily total: a row of the dose table.

    `gap_minutes` is exactly even over the window, 0 for one bout. `index` is the day's osteogenic
    index (body weights), `against_one_go` the same as a multiple of doing the total at once.
    """

    bouts: int
    reps: tuple[int, ...]
    gap_minutes: float
    index: float
    against_one_go: float


def bout_index(peak_force: float, reps: int) -> float:
    """OI of one bout: I * ln(N + 1), I in body weights, N loading cycles."""
    return peak_force * math.log(reps + 1)


def merged(bouts: Iterable[tuple[datetime, int]]) -> tuple[tuple[datetime, int], ...]:
    """Bouts in order of time; those less than half an hour after one's start are a part of it."""
    found: list[tuple[datetime, int]] = []
    for at, reps in sorted(bouts):
        if found and at - found[-1][0] < ONE_BOUT:
            found[-1] = (found[-1][0], found[-1][1] + reps)
        else:
            found.append((at, reps))
    return tuple(found)


def day_index(
    bouts: Iterable[tuple[datetime, int]],
    peak_force: float = 1.0,
    tau: timedelta = TAU,
    bout_max: int | None = None,
) -> float:
    """OI of a day: each bout after the first is multiplied by the recovery since the one before.

    `bouts` are instants (UTC) with reps, in any order. Reps above `bout_max` a bout are left out.
    """
    total, before = 0.0, None
    for at, reps in merged(bouts):
        counted = reps if bout_max is None else min(reps, bout_max)
        share = 1.0 if before is None else recovery(at - before, tau)
        total += share * bout_index(peak_force, counted)
        before = at
    return total


def dose_table(
    *,
    total: int,
    window: Span,
    peak_force: float = 1.0,
    tau: timedelta = TAU,
    up_to: int = ROWS,
) -> tuple[Split, ...]:
    """Ways to split a daily total evenly over a window (S6), from one bout to at most `up_to`.

    Bouts less than half an hour apart would count as one, so there are no rows for them.
    """
    minutes = window.end - window.start
    most = min(total, up_to, minutes // int(ONE_BOUT.total_seconds() // 60) + 1)
    at_once = bout_index(peak_force, total)
    rows = []
    for bouts in range(1, most + 1):
        reps = even_reps(total, bouts)
        gap = minutes / (bouts - 1) if bouts > 1 else 0.0
        first, *others = (bout_index(peak_force, each) for each in reps)
        index = first + recovery(timedelta(minutes=gap), tau) * sum(others)
        rows.append(Split(bouts, reps, gap, index, index / at_once))
    return tuple(rows)


def spread_of_day(
    done: Sequence[tuple[datetime, int]],
    planned: Sequence[datetime],
    bout_max: int,
    tau: timedelta = TAU,
) -> float | None:
    """How well a day was spread (S7): 1 as planned, 0 all in one go; `None` where a dash is shown.

    `done` are instants (UTC) with reps; `planned` the instants at which the day's bouts were
    planned before it began. The movement's peak force would cancel out.
    """
    total = sum(reps for _, reps in done)
    if len(planned) < 2:  # noqa: PLR2004 # one bout cannot be spread
        return None
    at_once = bout_index(1.0, total)
    as_planned = zip(sorted(planned), even_reps(total, len(planned)), strict=True)
    best = day_index(as_planned, tau=tau) - at_once
    if best <= 0:
        return None
    return min(1.0, max(0.0, (day_index(done, tau=tau, bout_max=bout_max) - at_once) / best))
