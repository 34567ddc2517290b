"""Companion exercises: prescribed beside the impact, in units of their own, never mixed with it (C6)."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date, timedelta
from types import MappingProxyType

from scheduler.domain.weekdays import WEEK, best_spaced

REPS, HOLD = "reps", "hold"
A_MONDAY = date(2001, 1, 1)
"""Any Monday: weekdays are worked out on the days of its week."""


@dataclass(frozen=True, slots=True)
class Companion:
    """One companion of a plan: so much a round, so many rounds, on these weekdays (Monday = 0).

    `unit` is "reps" or "hold"; `amount` counts reps, or the seconds of one hold.
    """

    key: str
    unit: str
    amount: int
    rounds: int
    weekdays: tuple[int, ...]

    @property
    def days(self) -> int:
        """Days a week."""
        return len(self.weekdays)


BOUNDS: Mapping[str, tuple[int, int]] = MappingProxyType(
    {"reps": (1, 50), "hold": (1, 60), "rounds": (1, 10), "days": (1, 7)}
)
"""Smallest and largest value (ours): reps a round, seconds of a hold, rounds, days a week."""


def spaced(days: int) -> tuple[int, ...]:
    """The weekdays that are spaced best for so many days a week, from Monday on."""
    week = [A_MONDAY + timedelta(days=n) for n in range(WEEK)]
    return tuple(day.weekday() for day in best_spaced(week, days, 0))


CATALOGUE: Mapping[str, Companion] = MappingProxyType(
    {
        each.key: each
        for each in (
            Companion("back-raise", REPS, 10, 1, spaced(3)),
            Companion("hover-hold", HOLD, 2, 3, spaced(2)),
        )
    }
)
"""A prone upper-back raise, and a hands-and-knees hover hold, for a start 2 s of the usual 2 to 10 s.

Common practice, no source (`evidence.md`, Dose).
"""


def changed(
    companion: Companion, amount: int | None, rounds: int | None, days: int | None
) -> Companion:
    """The companion with what is given changed."""
    after = replace(companion, amount=amount or companion.amount, rounds=rounds or companion.rounds)
    return after if days is None else replace(after, weekdays=spaced(days))


def with_one(companions: tuple[Companion, ...], one: Companion) -> tuple[Companion, ...]:
    """The companions of a plan with one put in, or put in place of the same exercise."""
    kept = tuple(each for each in companions if each.key != one.key)
    return tuple(sorted((*kept, one), key=lambda each: list(CATALOGUE).index(each.key)))


def toggled(companions: tuple[Companion, ...], key: str) -> tuple[Companion, ...]:
    """With the usual form of one put in, or that one taken out."""
    kept = tuple(each for each in companions if each.key != key)
    return kept if len(kept) < len(companions) else with_one(companions, CATALOGUE[key])


def out_of_bounds(companion: Companion) -> str | None:
    """The name of the bound that a companion breaks, `None` if it keeps them all."""
    values = {companion.unit: companion.amount, "rounds": companion.rounds, "days": companion.days}
    broken = (n for n, v in values.items() if not BOUNDS[n][0] <= v <= BOUNDS[n][1])
    return next(broken, None)
