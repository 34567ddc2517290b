"""Days of a week with rest between them, week ends included. Monday is 0."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from datetime import date, timedelta
from itertools import combinations, pairwise

WEEK = 7


def most_days(rest_days: int) -> int:
    """How many days every week can have with so many rest days after each, without end."""
    return WEEK // (rest_days + 1)


def rested(weekdays: Collection[int], rest_days: int) -> bool:
    """Whether the same days week after week keep the rest rule, from Sunday to Monday too."""
    return min(_distances(weekdays)) > rest_days


def _distances(weekdays: Collection[int]) -> list[int]:
    """Days from each weekday to the next, and from the last to the first of the week after."""
    days = sorted(weekdays)
    return [after - before for before, after in pairwise([*days, days[0] + WEEK])]


def nearest_weekdays(own: Collection[int], count: int, rest_days: int) -> tuple[int, ...]:
    """Weekdays that keep the rest rule: `count` or as many as can be, most of one's own kept."""
    count = min(count, most_days(rest_days))
    sets = [days for days in combinations(range(WEEK), count) if rested(days, rest_days)]
    return min(sets, key=lambda days: (-len({*own} & {*days}), -min(_distances(days)), days))


def best_spaced(open_days: Sequence[date], count: int, rest_days: int) -> tuple[date, ...]:
    """So many of the open days of a week, or as many as the rest rule leaves room for, spaced best.

    Best is the largest smallest distance, next week's same days included; then the most even; then
    the earliest.
    """
    for size in range(min(count, len(open_days)), 0, -1):
        apart = [
            days
            for days in combinations(open_days, size)
            if all((after - before).days > rest_days for before, after in pairwise(days))
        ]
        if apart:
            return min(apart, key=_unevenness)
    return ()


def _unevenness(days: tuple[date, ...]) -> tuple[int, int, tuple[date, ...]]:
    again = days[0] + timedelta(weeks=1)
    distances = [(after - before).days for before, after in pairwise([*days, again])]
    return -min(distances), sum(each * each for each in distances), days
