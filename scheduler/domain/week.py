"""A week held against its plan: which days count, how many are still possible, what is to be planned.

Days are dates in the client's own zone. A week is seven days from the practice's first weekday (W1).
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum

from scheduler.domain.days import is_load
from scheduler.domain.weekdays import WEEK


class Verdict(StrEnum):
    """What a closed impact day came to (Z2)."""

    COUNTED = "counted"
    PARTIAL = "partial"
    MISSED = "missed"
    EXCUSED = "excused"


class Why(StrEnum):
    """Why a day did not count: different things, and shown as such (W5)."""

    NO_ANSWER = "no-answer"
    DECLINED = "declined"
    BREAK = "break"
    HOLD = "hold"
    UNREACHABLE = "unreachable"
    BOT_DOWN = "bot-down"
    NOT_ASKED = "not-asked"
    TRAVEL = "travel"
    CLINICIAN = "clinician"


EXCUSING = frozenset({Why.BREAK, Why.HOLD, Why.BOT_DOWN, Why.NOT_ASKED, Why.TRAVEL})
"""Reasons that take a day out of the denominators (W6). A client who blocked the chat is none of them."""


def week_start(day: date, first_weekday: int) -> date:
    """The first day of the week that a day lies in; `first_weekday` counts from Monday = 0."""
    return day - timedelta(days=(day.weekday() - first_weekday) % WEEK)


def week_label(start: date) -> str:
    """The ISO 8601 name of the week that holds most of these seven days, like `2027-W10`."""
    year, week, _ = (start + timedelta(days=3)).isocalendar()
    return f"{year}-W{week:02}"


def week_named(label: str, first_weekday: int) -> date:
    """The first day of the week that `week_label` names so. ValueError with one clear sentence."""
    year, dash, week = label.partition("-W")
    try:
        middle = date.fromisocalendar(int(year), int(week), 4)
    except ValueError:
        dash = ""
    if not dash or not (len(year) == 4 and len(week) == 2):  # noqa: PLR2004 # digits of year and week
        raise ValueError(f"{label!r} is not a week like 2027-W10.")
    return week_start(middle, first_weekday)


def counts(reps: int, total: int, percent: int) -> bool:
    """Whether a day's reps reach so many percent of its daily total (W1)."""
    return total > 0 and reps * 100 >= total * percent


@dataclass(frozen=True, slots=True)
class Week:
    """What a week's reach looks at (W4).

    `counted` are the days that count already, `loads` the load days of this week and of the days
    before it, both whatever was planned. `open_days` are the days on which impact could still be
    done: not over, not on a break, within the plan's dates. `most` is the plan's maximum.
    """

    counted: frozenset[date]
    loads: frozenset[date]
    open_days: tuple[date, ...]
    rest_days: int
    most: int


def possible(week: Week) -> tuple[date, ...]:
    """The largest set of further impact days this week can still hold, the earliest of such sets (W4).

    A day is free if it keeps the rest from every load day but itself: a day that has begun can still be
    brought to count. Taking the earliest free day again and again is exact: exchanging the first
    day of any other set for it leaves at least as much room behind it.
    """
    chosen: list[date] = []
    for day in sorted(set(week.open_days) - week.counted):
        if len(chosen) + len(week.counted) >= week.most:
            break
        free = apart(day, [*(week.loads - {day}), *chosen], week.rest_days)
        if free:
            chosen.append(day)
    return tuple(chosen)


def apart(day: date, others: Iterable[date], rest_days: int) -> bool:
    """Whether a day has its rest from all others."""
    return all(abs((day - other).days) > rest_days for other in others)


def load_days(reps: Iterable[tuple[date, int, int]]) -> frozenset[date]:
    """The load days among days given with their reps and the daily total in force."""
    return frozenset(day for day, done, total in reps if is_load(done, total))


def make_up(week: Week, planned: Collection[date], after: date) -> date | None:
    """The best later day to make up for one that was not done, or `None` if there is none (W3).

    It keeps the rest from load days and from every day planned, this week's and the next's; of those
    that do, the one farthest from its neighbours, of equals the earliest.
    """
    if len(week.counted) + sum(1 for day in planned if day in week.open_days) >= week.most:
        return None
    others = [*week.loads, *(day for day in planned if day > after)]
    free = [
        day
        for day in week.open_days
        if day > after and day not in planned and apart(day, others, week.rest_days)
    ]
    return min(free, key=lambda day: (-_distance(day, others), day), default=None)


def _distance(day: date, others: Sequence[date]) -> int:
    return min((abs((day - other).days) for other in others), default=WEEK)


def verdict_of(reps: int, total: int, percent: int, why: Why) -> tuple[Verdict, str]:
    """The verdict on a planned day at its close, and why where it did not count (Z2)."""
    if counts(reps, total, percent):
        return Verdict.COUNTED, ""
    if why in EXCUSING:
        return Verdict.EXCUSED, why.value
    return (Verdict.PARTIAL if reps > 0 else Verdict.MISSED), why.value


def missed_in_a_row(judged: Sequence[tuple[date, Verdict]]) -> tuple[date, ...]:
    """The latest days that were missed one after the other, excused ones passed over (W5)."""
    run: list[date] = []
    for day, verdict in sorted(judged, reverse=True):
        if verdict is Verdict.EXCUSED:
            continue
        if verdict is not Verdict.MISSED:
            break
        run.append(day)
    return tuple(reversed(run))
