"""What a clinician prescribes: movements, plans, and whether a plan can be carried out (C3, C4)."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date, timedelta
from types import MappingProxyType
from zoneinfo import ZoneInfo

from scheduler.domain.companions import Companion
from scheduler.domain.hours import Hours, common, format_minute
from scheduler.domain.movement import (
    FORCE_LIMITS,
    MOVEMENTS,
    Level,
    Movement,
    hardness,
    within,
)
from scheduler.domain.spacing import capacity, room_for
from scheduler.domain.weekdays import WEEK, best_spaced, most_days, nearest_weekdays, rested

__all__ = [
    "BOUNDS",
    "FORCE_LIMITS",
    "MOVEMENTS",
    "Fault",
    "Level",
    "Movement",
    "Plan",
    "check_plan",
    "first_impact_day",
    "hours_on",
    "suggest_days",
    "within",
]


@dataclass(frozen=True, slots=True)
class Plan:
    """A prescription (C3). Days are local dates; Monday is weekday 0; no weekdays: flexible days.

    `rest_days` lie between two load days, week ends included. `weekday_hours` are exceptions from
    `hours`. `bout_max` is the hard maximum of a bout, `gap_minutes` the minimum between two.
    """

    movement: str
    daily_total: int
    bout_reps: int
    bout_max: int
    days_min: int
    days_max: int
    weekdays: tuple[int, ...]
    rest_days: int
    hours: Hours
    weekday_hours: tuple[tuple[int, Hours], ...]
    start: date
    review: date | None
    end: date | None
    gap_minutes: int = 120
    note: str = ""
    companions: tuple[Companion, ...] = ()


Value = str | int | float | date


@dataclass(frozen=True, slots=True)
class Fault:
    """Why a plan is refused: the field, a stable reason, its numbers, the nearest values that work.

    For weekdays `values` is one set that works, for movements all there are to choose from.
    """

    field: str
    reason: str
    values: tuple[Value, ...] = ()
    args: tuple[tuple[str, Value | None], ...] = ()


BOUNDS: Mapping[str, tuple[int, int]] = MappingProxyType(
    {
        "daily_total": (1, 500),
        "bout_reps": (1, 500),
        "bout_max": (1, 500),
        "days_min": (1, 7),
        "days_max": (1, 7),
        "rest_days": (0, 6),
        "gap_minutes": (5, 720),
    }
)
"""Smallest and largest value of each number of a plan (ours): reps, days, minutes."""


def hours_on(plan: Plan, day: date) -> Hours:
    """The plan's hours on a local date."""
    return dict(plan.weekday_hours).get(day.weekday(), plan.hours)


def suggest_days(
    plan: Plan,
    week_start: date,
    earliest_day: date,
    load_days: tuple[date, ...] = (),
    count: int | None = None,
) -> tuple[date, ...]:
    """The impact days of a week: a plan's fixed weekdays, or the days that are spaced best (W2).

    `count` days, by default the plan's minimum, or as many as the rest rule leaves room for; none
    before `earliest_day`, outside the plan's dates or too near one of `load_days` of any week.
    """
    rest = plan.rest_days
    week = [week_start + timedelta(days=offset) for offset in range(WEEK)]
    open_days = [
        day
        for day in week
        if max(earliest_day, plan.start) <= day <= (plan.end or date.max)
        and all(abs((day - load).days) > rest for load in load_days)
        and (not plan.weekdays or day.weekday() in plan.weekdays)
    ]
    wanted = len(open_days) if plan.weekdays else plan.days_min if count is None else count
    return best_spaced(open_days, wanted, rest)


def first_impact_day(plan: Plan, today: date) -> date:
    """The first impact day from today and the plan's start on; in a flexible plan as suggested.

    The plan's end date is not looked at.
    """
    earliest = max(today, plan.start)
    monday = earliest - timedelta(days=earliest.weekday())
    endless = replace(plan, end=None)
    this_week = suggest_days(endless, monday, earliest)
    # The rest of this week may have no day; a whole week always has one.
    return (this_week or suggest_days(endless, monday + timedelta(weeks=1), earliest))[0]


# --- the check -----------------------------------------------------------------------------------


def check_plan(
    plan: Plan,
    *,
    client_hours: Hours | None,
    zone: ZoneInfo,
    ceiling: Level | None,
    ceiling_force: float | None = None,
    estimate_accepted: bool = False,
    movement: Movement | None = None,
) -> tuple[Fault, ...]:
    """Everything that keeps a plan from being carried out, or nothing (C4).

    `client_hours` are the client's own; what both have in common counts. With `ceiling` `None`
    clearance is not looked at, nor whether an estimate is accepted. `movement` is by default the
    plan's key in `MOVEMENTS`. While a number is out of bounds the rules that need it wait.
    """
    faults = [*_movement(plan, movement, ceiling, ceiling_force, estimate_accepted)]
    faults += _dates(plan)
    bad = [*_bounds(plan)]
    faults += bad or [*_reps(plan), *_days(plan), *_room(plan, client_hours, zone)]
    return tuple(faults)


def _movement(
    plan: Plan,
    movement: Movement | None,
    ceiling: Level | None,
    force: float | None,
    accepted: bool,
) -> Iterator[Fault]:
    movement = movement or MOVEMENTS.get(plan.movement)
    if movement is None:
        yield Fault("movement", "unknown-movement", tuple(MOVEMENTS))
    elif ceiling is not None and not within(movement, ceiling, force):
        most = FORCE_LIMITS[ceiling] if force is None else force
        allowed = [each for each in MOVEMENTS.values() if within(each, ceiling, force)]
        yield Fault(
            "movement",
            "above-ceiling",
            tuple(each.key for each in sorted(allowed, key=hardness, reverse=True)),
            (
                ("ceiling", ceiling.name.lower()),
                ("level", movement.level.name.lower()),
                ("force", movement.peak_force),
                ("most_force", None if most == float("inf") else most),
            ),
        )
    elif ceiling is not None and movement.estimate and not accepted:
        known = [each for each in MOVEMENTS.values() if not each.estimate]
        gentler = [each.key for each in known if hardness(each) <= hardness(movement)]
        yield Fault(
            "movement", "estimate-not-accepted", tuple(gentler), (("force", movement.peak_force),)
        )


def _dates(plan: Plan) -> Iterator[Fault]:
    """Start, then review, then end; two of them may be the same day."""
    start = plan.start.isoformat()
    if plan.end is not None and plan.end < plan.start:
        yield Fault("end", "before-start", (plan.start,), (("start", start),))
    if plan.review is not None and plan.review < plan.start:
        yield Fault("review", "before-start", (plan.start,), (("start", start),))
    elif plan.review is not None and plan.end is not None and plan.review > plan.end:
        yield Fault("review", "after-end", (plan.end,), (("end", plan.end.isoformat()),))


def _bounds(plan: Plan) -> Iterator[Fault]:
    for field, (low, high) in BOUNDS.items():
        value = getattr(plan, field)
        if not low <= value <= high:
            nearest = min(max(value, low), high)
            yield Fault(field, "out-of-bounds", (nearest,), (("low", low), ("high", high)))
    named = [*plan.weekdays, *(day for day, _ in plan.weekday_hours)]
    if any(not 0 <= day < WEEK for day in named) or len({*plan.weekdays}) < len(plan.weekdays):
        right = sorted({day for day in plan.weekdays if 0 <= day < WEEK})
        yield Fault("weekdays", "not-weekdays", tuple(right))


def _reps(plan: Plan) -> Iterator[Fault]:
    if plan.bout_max < plan.bout_reps:
        yield Fault("bout_max", "below-bout", (plan.bout_reps,), (("bout", plan.bout_reps),))


def _days(plan: Plan) -> Iterator[Fault]:
    """Days a week against the rest between them; weeks follow on each other, Sunday on Monday."""
    most = most_days(plan.rest_days)
    rest = (("rest_days", plan.rest_days),)
    if plan.days_max < plan.days_min:
        yield Fault("days_max", "below-minimum", (plan.days_min,), (("days_min", plan.days_min),))
    for field in ("days_min", "days_max"):
        if getattr(plan, field) > most:
            yield Fault(field, "no-room-for-rest", (most,), rest)
    count = len(plan.weekdays)
    if count and not plan.days_min <= count <= plan.days_max:
        nearest = min(max(count, plan.days_min), plan.days_max)
        yield Fault(
            "weekdays",
            "not-as-many-as-days",
            nearest_weekdays(plan.weekdays, nearest, plan.rest_days),
            (("count", count), ("days_min", plan.days_min), ("days_max", plan.days_max)),
        )
    elif count and not rested(plan.weekdays, plan.rest_days):
        yield Fault(
            "weekdays", "too-close", nearest_weekdays(plan.weekdays, count, plan.rest_days), rest
        )


def _room(plan: Plan, client_hours: Hours | None, zone: ZoneInfo) -> Iterator[Fault]:
    """Whether the daily total fits, in bouts of the maximum, on every weekday it can fall on."""
    days: list[tuple[date, Hours]] = []
    for day in (plan.start + timedelta(days=offset) for offset in range(WEEK)):
        if plan.weekdays and day.weekday() not in plan.weekdays:
            continue
        hours = hours_on(plan, day)
        both = common(hours, client_hours) if client_hours else hours
        if both is None or not _bouts(day, both, zone, plan.gap_minutes):
            span = hours.window
            args = (("weekday", day.weekday()), ("start", span.start), ("end", span.end))
            yield Fault("window", "no-common-hours", _other_window(both, client_hours), args)
            return
        days.append((day, both))
    room = room_for(
        plan.daily_total,
        max(plan.bout_reps, plan.bout_max),
        plan.gap_minutes,
        lambda gap: min(_bouts(day, hours, zone, gap) for day, hours in days),
    )
    if room.total < plan.daily_total:
        numbers = (("bouts", room.bouts), ("total", room.total), ("gap", room.gap))
        yield Fault("daily_total", "too-many-reps", (room.total,), (*numbers, ("bout", room.bout)))


def _other_window(both: Hours | None, client_hours: Hours | None) -> tuple[str, ...]:
    """The client's own window, where the plan's has no hour of it."""
    if both is not None or client_hours is None:
        return ()
    window = client_hours.window
    return (f"{format_minute(window.start)}-{format_minute(window.end)}",)


def _bouts(day: date, hours: Hours, zone: ZoneInfo, gap: int) -> int:
    """Bouts that fit on such a weekday. Of two weeks the better, as a clock change shortens one."""
    days = (day, day + timedelta(weeks=1))
    each = timedelta(minutes=gap)
    return max(capacity(day=one, hours=hours, zone=zone, gap=each) for one in days)
