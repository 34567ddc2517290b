"""What a clinician prescribes, and what is refused with the nearest values that work (C3, C4)."""

from dataclasses import replace
from datetime import date, timedelta
from itertools import pairwise
from typing import Any
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scheduler.domain.hours import Hours, Span
from scheduler.domain.plan import (
    BOUNDS,
    MOVEMENTS,
    Fault,
    Level,
    Plan,
    check_plan,
    first_impact_day,
    hours_on,
    suggest_days,
    within,
)

ZONE = ZoneInfo("America/New_York")
MONDAY = date(2027, 3, 8)
DAY = timedelta(days=1)
# Common practice, no source: four bouts of ten make 40, two days a week.
PLAN = Plan(
    movement="small-jump",
    daily_total=40,
    bout_reps=10,
    bout_max=10,
    days_min=2,
    days_max=2,
    weekdays=(0, 3),
    rest_days=1,
    hours=Hours(Span(480, 1200)),
    weekday_hours=(),
    start=MONDAY,
    review=MONDAY + 56 * DAY,
    end=MONDAY + 84 * DAY,
)


def faults(
    plan: Plan = PLAN,
    client_hours: Hours | None = None,
    ceiling: Level | None = Level.HIGH,
    force: float | None = None,
    accepted: bool = False,
    **changes: Any,
) -> list[tuple[str, str, tuple[Any, ...]]]:
    found = check_plan(
        replace(plan, **changes),
        client_hours=client_hours,
        zone=ZONE,
        ceiling=ceiling,
        ceiling_force=force,
        estimate_accepted=accepted,
    )
    return [(fault.field, fault.reason, fault.values) for fault in found]


def args(plan: Plan) -> dict[str, Any]:
    (fault,) = check_plan(plan, client_hours=None, zone=ZONE, ceiling=None)
    return dict(fault.args)


# --- movements -----------------------------------------------------------------------------------


# Source: the published ranges in body weights; the level limits 2.0 and 4.0 are ours.
@pytest.mark.parametrize(
    ("key", "level", "lowest", "highest"),
    [
        ("marching", Level.LOW, 1.2, 1.4),  # walking second-hand; step class PMC2465063, read
        ("stepping-jack", Level.LOW, 1.5, 1.5),  # an estimate, ours
        ("stomp", Level.MODERATE, 2.89, 3.08),  # Ryan 2021, read
        ("firm-heel-drop", Level.HIGH, 4.9, 4.9),  # IJSTS 2021, read
        ("gentle-heel-drop", Level.LOW, 2.0, 2.0),  # an estimate, ours
        ("small-jump", Level.MODERATE, 3.0, 4.0),  # Bassey 1998, read
        ("hop", Level.HIGH, 2.5, 2.8),  # Bailey 2010, memory; the level ours
        ("jumping-jack", Level.HIGH, 3.9, 5.4),  # Clissold 2019, read
    ],
)
def test_every_movement_has_its_published_force_and_its_level(
    key: str, level: Level, lowest: float, highest: float
) -> None:
    movement = MOVEMENTS[key]
    assert movement.key == key
    assert movement.level is level
    assert lowest <= movement.peak_force <= highest
    assert movement.source


def test_only_the_two_without_a_published_value_are_estimates() -> None:
    estimates = {key for key, each in MOVEMENTS.items() if each.estimate}
    assert estimates == {"stepping-jack", "gentle-heel-drop"}
    assert len(MOVEMENTS) == 8


def test_one_legged_movements_are_counted_on_each_side() -> None:
    assert {key for key, each in MOVEMENTS.items() if each.per_side} == {"stomp", "hop"}


# --- hours ---------------------------------------------------------------------------------------


def test_a_weekday_may_have_its_own_hours() -> None:
    thursday = Hours(Span(600, 1200))
    plan = replace(PLAN, weekday_hours=((3, thursday),))
    assert hours_on(plan, MONDAY) == plan.hours
    assert hours_on(plan, MONDAY + 3 * DAY) == hours_on(plan, MONDAY + 10 * DAY) == thursday


# --- the check -----------------------------------------------------------------------------------


def test_a_usual_plan_is_accepted() -> None:
    assert faults() == []


@pytest.mark.parametrize("field", BOUNDS)
def test_a_number_is_taken_on_its_bounds_and_refused_one_past_them(field: str) -> None:
    low, high = BOUNDS[field]

    def told(value: int) -> list[tuple[str, str, tuple[Any, ...]]]:
        changed: dict[str, Any] = {field: value}
        return faults(replace(PLAN, **changed))

    for value, nearest in ((low - 1, low), (high + 1, high)):
        assert (field, "out-of-bounds", (nearest,)) in told(value)
    for value in (low, high):
        assert "out-of-bounds" not in {reason for _, reason, _ in told(value)}


def test_a_maximum_below_the_bout_is_refused() -> None:
    assert faults(bout_max=9) == [("bout_max", "below-bout", (10,))]


def test_too_many_reps_are_refused_with_the_nearest_values_that_each_alone_fit() -> None:
    # Source: arithmetic. Seven bouts fit into twelve hours with two hours between.
    assert faults(daily_total=70) == []
    plan = replace(PLAN, daily_total=71)
    assert faults(plan) == [("daily_total", "too-many-reps", (70,))]
    assert args(plan) == {"bouts": 7, "total": 70, "gap": 100, "bout": 11}
    assert faults(plan, daily_total=70) == []
    assert faults(plan, gap_minutes=100) == []
    assert faults(plan, gap_minutes=105) != []
    assert faults(plan, bout_max=11) == []


@given(
    st.integers(1, 500),
    st.integers(1, 40),
    st.integers(5, 720),
    st.integers(0, 1000),
    st.integers(30, 439),
)
def test_every_value_that_is_offered_for_too_many_reps_makes_the_plan_fit(
    total: int, bout: int, gap: int, start: int, length: int
) -> None:
    hours = Hours(Span(start, start + length), (Span(start + 7, start + 29),))
    plan = replace(
        PLAN, daily_total=total, bout_reps=bout, bout_max=bout, gap_minutes=gap, hours=hours
    )
    for fault in check_plan(plan, client_hours=None, zone=ZONE, ceiling=None):
        assert fault.reason == "too-many-reps"
        offered = dict(fault.args)
        assert faults(plan, daily_total=offered["total"]) == []
        assert faults(plan, daily_total=int(str(offered["total"])) + 1) != []
        assert faults(plan, bout_max=offered["bout"]) == []
        if offered["gap"] is not None:
            assert faults(plan, gap_minutes=offered["gap"]) == []
            assert faults(plan, gap_minutes=int(str(offered["gap"])) + 5) != []


def test_the_shortest_day_decides_what_fits() -> None:
    short = ((3, Hours(Span(480, 720))),)
    assert faults(weekday_hours=short) == [("daily_total", "too-many-reps", (30,))]
    assert faults(weekday_hours=((4, Hours(Span(480, 720))),)) == []  # not one of the plan's days
    assert faults(weekdays=(), weekday_hours=((4, Hours(Span(480, 720))),)) != []


def test_a_clock_change_in_the_first_week_does_not_refuse_a_plan() -> None:
    night = Hours(Span(0, 360))  # six hours, five of them on the night of 14 March 2027
    assert faults(weekdays=(0, 6), rest_days=0, hours=night) == []


def test_the_clients_own_hours_count_too() -> None:
    assert faults(client_hours=Hours(Span(840, 1320))) == []
    assert faults(client_hours=Hours(Span(845, 1320))) == [("daily_total", "too-many-reps", (30,))]
    apart = Hours(Span(1200, 1320))
    assert faults(client_hours=apart) == [("window", "no-common-hours", ("20:00-22:00",))]
    quiet = Hours(Span(0, 1440), (Span(479, 1201),))
    assert faults(client_hours=quiet) == [("window", "no-common-hours", ())]


@pytest.mark.parametrize(
    ("weekdays", "rest", "nearest"),
    [
        ((0, 1), 1, (0, 3)),
        ((0, 6), 1, (0, 3)),  # Sunday to Monday
        ((0, 2, 6), 1, (0, 2, 4)),
        ((0, 3), 3, None),  # three rest days between: Monday, Friday; from Friday only two
        ((0, 2), 0, "fits"),
        ((0, 2), 1, "fits"),
        ((0, 2), 2, (0, 3)),
    ],
)
def test_weekdays_that_break_the_rest_rule_are_refused_week_ends_included(
    weekdays: tuple[int, ...], rest: int, nearest: Any
) -> None:
    count = len(weekdays)
    found = faults(weekdays=weekdays, rest_days=rest, days_min=count, days_max=count)
    if nearest == "fits":
        assert found == []
    elif nearest is None:
        assert [reason for _, reason, _ in found] == ["no-room-for-rest"] * 2 + ["too-close"]
    else:
        assert found == [("weekdays", "too-close", nearest)]


def test_days_a_week_are_what_the_rest_rule_leaves_room_for() -> None:
    assert faults(weekdays=(), days_min=2, days_max=3) == []
    assert faults(weekdays=(), days_min=2, days_max=4) == [("days_max", "no-room-for-rest", (3,))]
    assert faults(weekdays=(), days_min=7, days_max=7, rest_days=0) == []
    assert faults(weekdays=(), days_min=1, days_max=1, rest_days=6) == []
    assert faults(weekdays=(), days_min=3, days_max=2) == [("days_max", "below-minimum", (3,))]


def test_as_many_weekdays_are_named_as_days_are_planned() -> None:
    assert faults(weekdays=(0,)) == [("weekdays", "not-as-many-as-days", (0, 3))]
    three = faults(weekdays=(0, 2, 4))
    assert three == [("weekdays", "not-as-many-as-days", (0, 4))]
    assert faults(weekdays=(0, 2, 4), days_max=3) == []


@pytest.mark.parametrize("weekdays", [(0, 0), (0, 7), (-1, 3)])
def test_weekdays_that_are_none_are_refused(weekdays: tuple[int, ...]) -> None:
    assert [(field, reason) for field, reason, _ in faults(weekdays=weekdays)] == [
        ("weekdays", "not-weekdays")
    ]


def test_dates_come_in_order() -> None:
    assert faults(review=None, end=None) == faults(review=MONDAY, end=MONDAY) == []
    assert faults(end=MONDAY - DAY, review=None) == [("end", "before-start", (MONDAY,))]
    assert faults(review=MONDAY - DAY) == [("review", "before-start", (MONDAY,))]
    end = MONDAY + 10 * DAY
    assert faults(review=end + DAY, end=end) == [("review", "after-end", (end,))]


# --- clearance -----------------------------------------------------------------------------------


# Source: ours: low up to 2.0, moderate up to 4.0 body weights, high above.
@pytest.mark.parametrize(
    ("ceiling", "allowed"),
    [
        (Level.NONE, set()),
        (Level.LOW, {"marching", "stepping-jack", "gentle-heel-drop"}),
        (Level.MODERATE, {"marching", "stepping-jack", "gentle-heel-drop", "stomp", "small-jump"}),
        (Level.HIGH, {*MOVEMENTS}),
    ],
)
def test_a_movement_above_the_ceiling_is_refused_and_those_below_are_named(
    ceiling: Level, allowed: set[str]
) -> None:
    for key in MOVEMENTS:
        found = faults(movement=key, ceiling=ceiling, accepted=True)
        if key in allowed:
            assert found == []
        else:
            ((field, reason, values),) = found
            assert (field, reason) == ("movement", "above-ceiling")
            assert {*values} == allowed


def test_a_ceiling_in_force_is_kept_on_the_edge_and_one_past_it() -> None:
    assert faults(ceiling=Level.HIGH, force=4.0) == []
    ((_, reason, values),) = faults(ceiling=Level.HIGH, force=3.9)
    assert reason == "above-ceiling"
    assert values == ("hop", "stomp", "gentle-heel-drop", "stepping-jack", "marching")
    # A hop lands with less than a small jump, but its level is above a moderate ceiling.
    assert not within(MOVEMENTS["hop"], Level.MODERATE)


def test_an_estimated_force_needs_the_clinicians_yes() -> None:
    found = faults(movement="stepping-jack")
    assert found == [("movement", "estimate-not-accepted", ("marching",))]
    assert faults(movement="stepping-jack", accepted=True) == []


def test_a_movement_nobody_knows_is_refused() -> None:
    assert faults(movement="trampoline") == [("movement", "unknown-movement", tuple(MOVEMENTS))]


def test_the_movement_that_is_checked_is_the_practices_own() -> None:
    heavier = replace(MOVEMENTS["small-jump"], peak_force=4.1)
    found = check_plan(PLAN, client_hours=None, zone=ZONE, ceiling=Level.MODERATE, movement=heavier)
    assert [fault.reason for fault in found] == ["above-ceiling"]
    assert dict(found[0].args) == {
        "ceiling": "moderate", "level": "moderate", "force": 4.1, "most_force": 4.0,
    }  # fmt: skip


def test_every_fault_is_told_at_once() -> None:
    plan = replace(PLAN, movement="hop", daily_total=400, bout_max=5, review=None, end=MONDAY - DAY)
    found = faults(plan, ceiling=Level.LOW)
    assert [field for field, _, _ in found] == ["movement", "end", "bout_max", "daily_total"]
    assert Fault("end", "before-start") == Fault("end", "before-start", (), ())


# --- impact days ---------------------------------------------------------------------------------


def test_the_first_impact_day_is_the_first_of_the_weekdays_from_the_start() -> None:
    assert first_impact_day(PLAN, MONDAY - 30 * DAY) == MONDAY
    assert first_impact_day(PLAN, MONDAY) == MONDAY
    assert first_impact_day(PLAN, MONDAY + DAY) == MONDAY + 3 * DAY
    assert first_impact_day(PLAN, MONDAY + 4 * DAY) == MONDAY + 7 * DAY
    assert first_impact_day(replace(PLAN, end=MONDAY), MONDAY + DAY) == MONDAY + 3 * DAY


def test_a_flexible_plan_begins_on_the_first_day_suggested() -> None:
    flexible = replace(PLAN, weekdays=())
    assert first_impact_day(flexible, MONDAY) == MONDAY
    assert first_impact_day(flexible, MONDAY + 6 * DAY) == MONDAY + 6 * DAY


def test_days_are_suggested_with_rest_from_the_week_before() -> None:
    flexible = replace(PLAN, weekdays=(), start=MONDAY - 14 * DAY)
    assert suggest_days(flexible, MONDAY, MONDAY) == (MONDAY, MONDAY + 3 * DAY)
    sunday = (MONDAY - DAY,)
    assert suggest_days(flexible, MONDAY, MONDAY, sunday) == (MONDAY + DAY, MONDAY + 4 * DAY)
    assert suggest_days(flexible, MONDAY, MONDAY, count=3) == (
        MONDAY,
        MONDAY + 2 * DAY,
        MONDAY + 4 * DAY,
    )
    assert suggest_days(PLAN, MONDAY, MONDAY, sunday) == (MONDAY + 3 * DAY,)
    assert suggest_days(replace(flexible, end=MONDAY - DAY), MONDAY, MONDAY) == ()


@given(
    st.integers(0, 6),
    st.integers(1, 7),
    st.lists(st.integers(-7, 6), max_size=3),
    st.integers(0, 6),
    st.sets(st.integers(0, 6)),
)
def test_suggested_days_keep_the_rest_rule_whatever_was_done(
    rest: int, count: int, loads: list[int], earliest: int, weekdays: set[int]
) -> None:
    plan = replace(PLAN, weekdays=tuple(weekdays), rest_days=rest, start=MONDAY - 30 * DAY)
    done = tuple(MONDAY + load * DAY for load in loads)
    days = suggest_days(plan, MONDAY, MONDAY + earliest * DAY, done, count)
    assert all(MONDAY + earliest * DAY <= day < MONDAY + 7 * DAY for day in days)
    assert all((b - a).days > rest for a, b in pairwise(days))
    assert all(abs((day - load).days) > rest for day in days for load in done)
    if weekdays:
        assert {day.weekday() for day in days} <= weekdays
    else:
        assert len(days) <= count
