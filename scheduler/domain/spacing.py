"""When the bouts of a day fall and how many reps each has (S1 to S4, S8)."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

from scheduler.domain.hours import Hours, day_hours_in_utc
from scheduler.domain.optimum import Shape, best_times, most_bouts

TAU = timedelta(hours=6)
"""Time constant of the recovery between two bouts. Source: see `recovery`."""


@dataclass(frozen=True, slots=True)
class Placed:
    """A bout: its instant (UTC) and its reps."""

    at: datetime
    reps: int


@dataclass(frozen=True, slots=True)
class DayPlan:
    """The bouts of a day, the reps that did not fit, and the sum of recovery over the gaps (S2)."""

    bouts: tuple[Placed, ...]
    shortfall: int
    recovery: float


def recovery(gap: timedelta, tau: timedelta = TAU) -> float:
    """R(t) = 1 - exp(-t/tau): how far bone answers again to a bout, `gap` after the one before.

    Turner CH, Robling AG. Exerc Sport Sci Rev 2003;31(1):45-50. From animal data.
    """
    return -math.expm1(-(gap / tau))


def even_reps(total: int, bouts: int) -> tuple[int, ...]:
    """`total` reps over so many bouts, as even as possible, the larger first (S1)."""
    each, more = divmod(total, bouts)
    return (each + 1,) * more + (each,) * (bouts - more)


def spread_day(
    *,
    reps: int,
    bout_reps: int,
    bout_max: int,
    day: date,
    hours: Hours,
    zone: ZoneInfo,
    gap: timedelta,
    tau: timedelta = TAU,
    last: datetime | None = None,
    not_before: datetime | None = None,
    offset_minutes: int = 0,
) -> DayPlan:
    """Spread `reps` over what is left of a local day (S1 to S4).

    `last` is the instant of the last bout done: the gap from it holds, and its recovery is in the
    sum. Nothing falls before `not_before`. `offset_minutes` shifts the grid inside the window (S8).
    What does not fit even in bouts of `bout_max` is the shortfall. A dose with negative reps, or
    with `bout_reps` outside 1 to `bout_max`, is a `ValueError`.
    """
    if reps < 0 or not 1 <= bout_reps <= bout_max:
        raise ValueError("Reps must not be negative, and a bout's reps be from 1 to its maximum.")
    start, shape = _shape(
        day=day,
        hours=hours,
        zone=zone,
        gap=gap,
        tau=tau,
        last=last,
        not_before=not_before,
        offset_minutes=offset_minutes,
    )
    wanted = -(-reps // bout_reps)
    times, total = best_times(shape, wanted)
    asked = min(reps, len(times) * bout_max)
    bouts = tuple(
        Placed(start + timedelta(seconds=at), each)
        for at, each in zip(times, even_reps(asked, len(times)) if times else (), strict=True)
    )
    return DayPlan(bouts, reps - asked, total)


def capacity(
    *,
    day: date,
    hours: Hours,
    zone: ZoneInfo,
    gap: timedelta,
    last: datetime | None = None,
    not_before: datetime | None = None,
    offset_minutes: int = 0,
) -> int:
    """The largest number of bouts that fit into what is left of a local day."""
    _, shape = _shape(
        day=day,
        hours=hours,
        zone=zone,
        gap=gap,
        last=last,
        not_before=not_before,
        offset_minutes=offset_minutes,
    )
    return most_bouts(shape)


def latest(
    *,
    day: date,
    hours: Hours,
    zone: ZoneInfo,
    gap: timedelta,
    last: datetime | None = None,
    not_before: datetime | None = None,
) -> datetime | None:
    """The last instant of a local day at which a bout may still fall; `None` if there is none."""
    start, shape = _shape(
        day=day, hours=hours, zone=zone, gap=gap, last=last, not_before=not_before
    )
    ticks = shape.ticks()
    return start + timedelta(seconds=shape.second(ticks[-1])) if ticks else None


def fits(
    reps: int, bout_max: int, *, day: date, hours: Hours, zone: ZoneInfo, gap: timedelta
) -> bool:
    """Whether a whole day has room for so many reps in bouts of at most `bout_max` (S3, C4)."""
    return reps <= bout_max * capacity(day=day, hours=hours, zone=zone, gap=gap)


@dataclass(frozen=True, slots=True)
class Room:
    """What a day has room for, and the nearest values of which each alone makes a dose fit.

    `bouts` fit, with `total` reps. The dose fits with a gap of `gap` minutes, the largest that is
    enough (`None` if none is), or with bouts of `bout` reps (`None` if no bout fits at all).
    """

    bouts: int
    total: int
    gap: int | None
    bout: int | None


def room_for(reps: int, bout_max: int, gap_minutes: int, bouts_at: Callable[[int], int]) -> Room:
    """The room for a dose, where `bouts_at` tells how many bouts fit at a gap in minutes (C4)."""
    bouts = bouts_at(gap_minutes)
    if bouts * bout_max >= reps:
        return Room(bouts, bouts * bout_max, gap_minutes, bout_max)
    smaller = range((gap_minutes - 1) // 5 * 5, 0, -5)  # on a 5-minute grid others do not help
    gap = next((gap for gap in smaller if bouts_at(gap) * bout_max >= reps), None)
    return Room(bouts, bouts * bout_max, gap, -(-reps // bouts) if bouts else None)


def _shape(
    *,
    day: date,
    hours: Hours,
    zone: ZoneInfo,
    gap: timedelta,
    tau: timedelta = TAU,
    last: datetime | None = None,
    not_before: datetime | None = None,
    offset_minutes: int = 0,
) -> tuple[datetime, Shape]:
    """The window's start as an instant, and the day's shape in seconds from it."""
    start, end, quiets = day_hours_in_utc(day, hours, zone)
    return start, Shape(
        end=(end - start).total_seconds(),
        quiet=tuple(((a - start).total_seconds(), (b - start).total_seconds()) for a, b in quiets),
        gap=gap.total_seconds(),
        tau=tau.total_seconds(),
        last=None if last is None else (last - start).total_seconds(),
        earliest=0.0 if not_before is None else max(0.0, (not_before - start).total_seconds()),
        offset=offset_minutes * 60.0,
    )
