"""A day spread over its hours, rule by rule (S1 to S5, S8), on ordinary and clock-change days."""

import math
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, timedelta, tzinfo
from itertools import combinations, pairwise
from random import Random
from zoneinfo import ZoneInfo

import pytest
from dateutil import tz
from hypothesis import given
from hypothesis import strategies as st

from scheduler.domain.hours import Hours, Span, instant
from scheduler.domain.spacing import (
    TAU,
    DayPlan,
    Placed,
    capacity,
    even_reps,
    fits,
    room_for,
    spread_day,
)

MONDAY = date(2027, 3, 8)
NEW_YORK, LORD_HOWE = ZoneInfo("America/New_York"), ZoneInfo("Australia/Lord_Howe")
GRID = timedelta(minutes=5)


@dataclass(frozen=True)
class Case:
    """All that `spread_day` is given; instants are minutes from the window's start."""

    reps: int = 60
    bout_reps: int = 10
    bout_max: int = 10
    day: date = MONDAY
    hours: Hours = field(default=Hours(Span(480, 1200)))
    zone: ZoneInfo = NEW_YORK
    gap: int = 120
    last: float | None = None
    not_before: float | None = None
    offset: int = 0

    def at(self, minutes: float | None) -> datetime | None:
        if minutes is None:
            return None
        return instant(self.day, self.hours.window.start, self.zone) + timedelta(minutes=minutes)

    def spread(self) -> DayPlan:
        return spread_day(
            reps=self.reps,
            bout_reps=self.bout_reps,
            bout_max=self.bout_max,
            day=self.day,
            hours=self.hours,
            zone=self.zone,
            gap=timedelta(minutes=self.gap),
            last=self.at(self.last),
            not_before=self.at(self.not_before),
            offset_minutes=self.offset,
        )

    def room(self) -> int:
        return capacity(
            day=self.day,
            hours=self.hours,
            zone=self.zone,
            gap=timedelta(minutes=self.gap),
            last=self.at(self.last),
            not_before=self.at(self.not_before),
            offset_minutes=self.offset,
        )


@st.composite
def spans(draw: st.DrawFn, least: int = 1) -> Span:
    start = draw(st.integers(0, 1440 - least))
    return Span(start, draw(st.integers(start + least, 1440)))


ZONES = [
    "America/New_York",
    "Australia/Lord_Howe",
    "Europe/Madrid",
    "Asia/Kathmandu",
    "Africa/Cairo",
]
moments = st.none() | st.floats(-300, 1000).map(lambda minutes: round(minutes * 60) / 60)


@st.composite
def cases(draw: st.DrawFn) -> Case:
    bout = draw(st.integers(1, 30))
    return Case(
        reps=draw(st.integers(0, 150)),
        bout_reps=bout,
        bout_max=draw(st.integers(bout, 2 * bout)),
        day=draw(st.dates(date(2026, 1, 1), date(2028, 12, 31))),
        hours=Hours(draw(spans()), tuple(draw(st.lists(spans(), max_size=3)))),
        zone=ZoneInfo(draw(st.sampled_from(ZONES))),
        gap=draw(st.integers(5, 300)),
        last=draw(moments),
        not_before=draw(moments),
        offset=draw(st.integers(0, 60)),
    )


def minutes(plan: DayPlan, zone: ZoneInfo = NEW_YORK) -> list[str]:
    return [bout.at.astimezone(zone).strftime("%H:%M") for bout in plan.bouts]


# --- S1 ------------------------------------------------------------------------------------------


# Source: arithmetic; four bouts of ten make 40 (common practice, no source).
@pytest.mark.parametrize(
    ("total", "bouts", "reps"),
    [
        (40, 4, (10, 10, 10, 10)),
        (25, 3, (9, 8, 8)),
        (11, 2, (6, 5)),
        (2, 3, (1, 1, 0)),
        (7, 1, (7,)),
    ],
)
def test_s1_reps_are_even_and_the_larger_come_first(
    total: int, bouts: int, reps: tuple[int, ...]
) -> None:
    assert even_reps(total, bouts) == reps


@given(cases())
def test_s1_the_number_of_bouts_is_the_total_by_the_bout_rounded_up(case: Case) -> None:
    reps = [bout.reps for bout in case.spread().bouts]
    wanted = math.ceil(case.reps / case.bout_reps)
    assert len(reps) == min(wanted, case.room())
    assert all(1 <= each <= case.bout_max for each in reps)
    assert reps == sorted(reps, reverse=True)
    assert not reps or reps[0] - reps[-1] <= 1


# --- S2 ------------------------------------------------------------------------------------------


@given(cases())
def test_s2_bouts_keep_to_the_window_the_quiet_times_the_grid_and_the_gap(case: Case) -> None:
    plan = case.spread()
    there = case.zone
    start, end = (
        instant(case.day, m, there) for m in (case.hours.window.start, case.hours.window.end)
    )
    for bout in plan.bouts:
        assert start <= bout.at <= end
        assert (bout.at - start - timedelta(minutes=case.offset)) % GRID == timedelta(0)
        for quiet in case.hours.quiet:
            first, last = instant(case.day, quiet.start, there), instant(case.day, quiet.end, there)
            assert not first < bout.at < last
    asked = [bout.at for bout in plan.bouts]
    before = case.at(case.last)
    chain = asked if before is None else [before, *asked]
    if asked:
        assert all(b - a >= timedelta(minutes=case.gap) for a, b in pairwise(chain))
        sums = [1 - math.exp(-((b - a) / TAU)) for a, b in pairwise(chain)]
        assert plan.recovery == pytest.approx(math.fsum(sums), abs=1e-12)
    else:
        assert plan.recovery == 0


@given(cases(), st.data())
def test_s2_no_other_times_that_keep_the_rules_recover_more(
    case: Case, data: st.DataObject
) -> None:
    plan = case.spread()
    asked = [bout.at for bout in plan.bouts]
    free = st.integers(0, 288).map(lambda n: data_start + GRID * n)
    data_start = instant(case.day, case.hours.window.start, case.zone) + timedelta(
        minutes=case.offset
    )
    other = sorted(data.draw(st.lists(free, min_size=len(asked), max_size=len(asked), unique=True)))
    # Half the times are the plan's own, so that near misses are tried too.
    mixed = sorted({data.draw(st.sampled_from(pair)) for pair in zip(asked, other, strict=True)})
    for times in (other, mixed):
        if len(times) == len(asked) and _keeps_the_rules(case, times):
            assert _sum(case, times) <= plan.recovery + 1e-9


def _keeps_the_rules(case: Case, times: list[datetime]) -> bool:
    before, earliest = case.at(case.last), case.at(case.not_before)
    chain = times if before is None else [before, *times]
    end = instant(case.day, case.hours.window.end, case.zone)
    quiet = [
        (instant(case.day, q.start, case.zone), instant(case.day, q.end, case.zone))
        for q in case.hours.quiet
    ]
    return (
        all(b - a >= timedelta(minutes=case.gap) for a, b in pairwise(chain))
        and all(at <= end and (earliest is None or at >= earliest) for at in times)
        and not any(first < at < last for at in times for first, last in quiet)
    )


def _sum(case: Case, times: list[datetime]) -> float:
    before = case.at(case.last)
    chain = times if before is None else [before, *times]
    return math.fsum(1 - math.exp(-((b - a) / TAU)) for a, b in pairwise(chain))


def test_s2_six_bouts_from_eight_to_eight() -> None:
    # Source: arithmetic.
    plan = Case().spread()
    assert minutes(plan) == ["08:00", "10:20", "12:45", "15:10", "17:35", "20:00"]
    assert plan.recovery == pytest.approx(1.648348, abs=5e-7)
    assert [bout.reps for bout in plan.bouts] == [10] * 6
    assert plan.shortfall == 0


def test_s2_the_first_and_last_minute_of_the_window_and_of_a_quiet_time_are_free() -> None:
    hours = Hours(Span(480, 720), (Span(485, 600), Span(600, 715)))
    plan = Case(reps=50, hours=hours, gap=5).spread()
    assert minutes(plan) == ["08:00", "08:05", "10:00", "11:55", "12:00"]
    assert Case(reps=60, hours=hours, gap=5).spread().shortfall == 10
    overlapping = Hours(Span(480, 720), (Span(485, 605), Span(600, 715)))
    assert minutes(Case(reps=60, hours=overlapping, gap=5).spread()) == [
        "08:00",
        "08:05",
        "11:55",
        "12:00",
    ]


def test_s2_a_gap_off_the_grid_waits_for_the_next_place() -> None:
    plan = Case(reps=20, gap=118, last=0, hours=Hours(Span(480, 720))).spread()
    assert minutes(plan) == ["10:00", "12:00"]
    assert Case(reps=20, gap=121, last=0, hours=Hours(Span(480, 720))).spread().shortfall == 10


def test_s2_the_last_bout_counts_to_the_second() -> None:
    second = 1 / 60
    on_the_edge = Case(reps=10, last=0, hours=Hours(Span(480, 600))).spread()
    one_past = Case(reps=10, last=second, hours=Hours(Span(480, 600))).spread()
    assert minutes(on_the_edge) == ["10:00"]
    assert one_past == DayPlan((), 10, 0.0)


def test_s2_equal_sums_go_to_the_earlier_times() -> None:
    # Source: arithmetic. Gaps of 5 and 10 minutes give the same sum in either order.
    hours = Hours(Span(480, 495))
    plan = Case(reps=30, hours=hours, gap=5).spread()
    assert minutes(plan) == ["08:00", "08:05", "08:15"]


# --- S3 ------------------------------------------------------------------------------------------


@given(cases())
def test_s3_as_much_is_asked_as_fits_and_the_rest_is_recorded(case: Case) -> None:
    plan = case.spread()
    asked = sum(bout.reps for bout in plan.bouts)
    assert asked + plan.shortfall == case.reps
    assert asked == min(case.reps, case.room() * case.bout_max)


def test_s3_what_does_not_fit_goes_into_fewer_larger_bouts_up_to_the_maximum() -> None:
    hours = Hours(Span(480, 720))  # room for three
    assert [b.reps for b in Case(bout_max=20, hours=hours).spread().bouts] == [20, 20, 20]
    nineteen = Case(bout_max=19, hours=hours).spread()
    assert [b.reps for b in nineteen.bouts] == [19, 19, 19]
    assert nineteen.shortfall == 3
    assert [b.reps for b in Case(reps=55, bout_max=20, hours=hours).spread().bouts] == [19, 18, 18]


def test_s3_a_day_without_room_asks_nothing() -> None:
    assert Case(not_before=721).spread() == DayPlan((), 60, 0.0)
    filled = Hours(Span(480, 720), (Span(479, 721),))
    assert Case(hours=filled).spread() == DayPlan((), 60, 0.0)


def test_s3_room_is_counted_and_the_nearest_values_fit() -> None:
    hours, day = Hours(Span(480, 1200)), {"day": MONDAY, "zone": NEW_YORK}
    two_hours = timedelta(hours=2)
    assert capacity(hours=hours, gap=two_hours, **day) == 7  # type: ignore[arg-type]
    assert fits(70, 10, hours=hours, gap=two_hours, **day)  # type: ignore[arg-type]
    assert not fits(71, 10, hours=hours, gap=two_hours, **day)  # type: ignore[arg-type]
    room = room_for(100, 10, 120, lambda gap: 720 // gap + 1)
    assert (room.bouts, room.total, room.gap, room.bout) == (7, 70, 80, 15)
    nothing = room_for(100, 10, 120, lambda _: 0)
    assert (nothing.bouts, nothing.total, nothing.gap, nothing.bout) == (0, 0, None, None)


@pytest.mark.parametrize(("reps", "bout", "most"), [(-1, 10, 10), (10, 0, 10), (10, 11, 10)])
def test_s3_a_dose_that_is_none_is_refused(reps: int, bout: int, most: int) -> None:
    with pytest.raises(ValueError, match="Reps must not be negative"):
        Case(reps=reps, bout_reps=bout, bout_max=most).spread()


# --- S4, S5 --------------------------------------------------------------------------------------


@given(cases())
def test_s4_a_bout_done_as_planned_leaves_the_rest_of_the_day_as_it_was(case: Case) -> None:
    plan = case.spread()
    if plan.shortfall or len(plan.bouts) < math.ceil(case.reps / case.bout_reps) or not plan.bouts:
        return
    first, *others = plan.bouts
    later = spread_day(
        reps=case.reps - first.reps,
        bout_reps=case.bout_reps,
        bout_max=case.bout_max,
        day=case.day,
        hours=case.hours,
        zone=case.zone,
        gap=timedelta(minutes=case.gap),
        last=first.at,
        not_before=first.at,
        offset_minutes=case.offset,
    )
    assert list(later.bouts) == others


def test_s4_a_late_bout_moves_the_rest_and_later_keeps_the_gap() -> None:
    # First bout done 20 minutes late: the five left are even over what remains.
    late = Case(reps=50, last=20, not_before=20).spread()
    assert minutes(late) == ["10:40", "13:00", "15:20", "17:40", "20:00"]
    # "Later, at 09:00", with the last bout at 08:00: the gap still holds.
    assert Case(reps=50, last=0, not_before=60).spread().bouts[0].at >= Case().at(120)  # type: ignore[operator]


@given(cases())
def test_s4_nothing_falls_before_the_time_that_was_asked_for(case: Case) -> None:
    earliest = case.at(case.not_before)
    assert earliest is None or all(bout.at >= earliest for bout in case.spread().bouts)


@given(cases())
def test_s5_nothing_is_asked_once_the_total_is_reached(case: Case) -> None:
    reached = Case(**{**case.__dict__, "reps": 0}).spread()
    assert reached == DayPlan((), 0, 0.0)


# --- S8 ------------------------------------------------------------------------------------------


@given(st.integers(1, 60), st.integers(1, 60), st.integers(5, 200))
def test_s8_an_offset_is_a_window_that_starts_so_much_later(
    offset: int, reps: int, gap: int
) -> None:
    shifted = Case(reps=reps, gap=gap, offset=offset).spread()
    started = Case(reps=reps, gap=gap, hours=Hours(Span(480 + offset, 1200))).spread()
    assert shifted == started


# --- Days on which the clock changes -------------------------------------------------------------

# Source: the tz database (2027): New York 14 March and 7 November at 02:00; Lord Howe 3 October and
# 4 April at 02:00, by half an hour.
CHANGES: list[tuple[ZoneInfo, date, int, int]] = [
    (NEW_YORK, date(2027, 3, 14), 7 * 60, 4),
    (NEW_YORK, date(2027, 11, 7), 9 * 60, 5),
    (LORD_HOWE, date(2027, 10, 3), 7 * 60 + 30, 4),
    (LORD_HOWE, date(2027, 4, 4), 8 * 60 + 30, 5),
]


@pytest.mark.parametrize(("zone", "day", "length", "room"), CHANGES)
def test_a_clock_change_never_squeezes_two_bouts(
    zone: ZoneInfo, day: date, length: int, room: int
) -> None:
    hours = Hours(Span(0, 480))
    case = Case(reps=200, bout_reps=40, bout_max=40, day=day, hours=hours, zone=zone)
    plan = case.spread()
    start = instant(day, 0, zone)
    assert case.room() == len(plan.bouts) == room
    assert all(b.at - a.at >= timedelta(hours=2) for a, b in pairwise(plan.bouts))
    assert plan.bouts[0].at == start
    assert plan.bouts[-1].at - start == timedelta(minutes=length)
    assert plan.bouts[-1].at.astimezone(zone).strftime("%H:%M") == "08:00"


def test_a_window_that_the_clock_skips_asks_nothing_and_one_it_moves_keeps_its_minute() -> None:
    spring = date(2027, 3, 14)
    skipped = Case(reps=10, day=spring, hours=Hours(Span(135, 180))).spread()  # 02:15 to 03:00
    assert skipped == DayPlan((), 10, 0.0)
    moved = Case(reps=10, day=spring, hours=Hours(Span(150, 210))).spread()  # 02:30 to 03:30
    assert minutes(moved) == ["03:30"]


def by_trying_all(case: Case) -> DayPlan:
    """The same day with another library's zones, every set of times tried."""
    there = tz.gettz(case.zone.key)

    def wall(minute: int) -> datetime:
        naive = datetime.combine(case.day, datetime.min.time()) + timedelta(minutes=minute)
        return tz.resolve_imaginary(naive.replace(tzinfo=there)).astimezone(UTC)

    grid = [wall(case.hours.window.start) + timedelta(minutes=case.offset)]
    while grid[-1] + GRID <= wall(case.hours.window.end):
        grid.append(grid[-1] + GRID)
    free = [at for at in grid if at <= wall(case.hours.window.end) and _keeps_the_rules(case, [at])]
    free = [at for at in free if _is_shown_in_hours(case, at, there)]
    wanted = math.ceil(case.reps / case.bout_reps)
    for bouts in range(wanted, 0, -1):
        sets = [[*s] for s in combinations(free, bouts) if _keeps_the_rules(case, [*s])]
        if sets:
            best = max(_sum(case, each) for each in sets)
            times = min(each for each in sets if _sum(case, each) >= best - 1e-9)
            asked = min(case.reps, bouts * case.bout_max)
            placed = zip(times, even_reps(asked, bouts), strict=True)
            return DayPlan(tuple(Placed(*p) for p in placed), case.reps - asked, best)
    return DayPlan((), case.reps, 0.0)


def _is_shown_in_hours(case: Case, at: datetime, there: tzinfo | None) -> bool:
    """Whether the clock on the wall agrees, also where it shows an hour for the second time."""
    shown = at.astimezone(there).replace(tzinfo=None)
    minute = (shown - datetime.combine(case.day, datetime.min.time())) / timedelta(minutes=1)
    quiet = any(q.start < minute < q.end for q in case.hours.quiet)
    return minute >= case.hours.window.start and not quiet


ORDINARY: Callable[[Random], tuple[ZoneInfo, date]] = lambda random: (  # noqa: E731
    ZoneInfo(random.choice(ZONES)),
    date(2026, 1, 1) + timedelta(days=random.randrange(1000)),
)


@pytest.mark.parametrize("changes", [False, True])
def test_small_days_equal_trying_every_set_of_times(changes: bool) -> None:
    random = Random(8)
    asked = 0
    for _ in range(250):
        zone, day = random.choice(CHANGES)[:2] if changes else ORDINARY(random)
        start = random.randrange(60, 125) if changes else random.randrange(300, 1300)
        bout = random.randrange(1, 12)
        quiet = [random.randrange(start, start + 80) for _ in range(random.randrange(3))]
        case = Case(
            reps=random.randrange(1, 50),
            bout_reps=bout,
            bout_max=bout + random.randrange(5),
            day=day,
            hours=Hours(
                Span(start, start + random.randrange(10, 75)),
                tuple(Span(at, at + random.randrange(1, 30)) for at in quiet),
            ),
            zone=zone,
            gap=random.choice([5, 10, 15, 18, 30]),
            last=random.choice([None, random.randrange(-2000, 1500) / 60]),
            not_before=random.choice([None, random.randrange(-600, 1800) / 60]),
            offset=random.choice([0, 0, 5, 7]),
        )
        if math.ceil(case.reps / bout) > (4 if changes else 6):  # trying all takes long
            continue
        expected, plan = by_trying_all(case), case.spread()
        assert plan.bouts == expected.bouts, case
        assert plan.shortfall == expected.shortfall
        assert plan.recovery == pytest.approx(expected.recovery, abs=1e-9)
        asked += bool(plan.bouts)
    assert asked > 100
