"""The rules of a week: reach against every subset of days, make-ups, verdicts, names (W1, W3-W5, Z2)."""

from datetime import date, timedelta
from itertools import combinations

import pytest
from dateutil import rrule
from hypothesis import given
from hypothesis import strategies as st

from scheduler.domain import week as w
from scheduler.domain.week import Verdict, Week, Why

MONDAY = date(2027, 3, 8)
WEEK = [MONDAY + timedelta(days=n) for n in range(7)]


def by_brute_force(week: Week) -> int:
    """The largest of all subsets of the open days that keep the rule; arithmetic, nothing clever."""
    best = 0
    room = week.most - len(week.counted)
    free = [day for day in week.open_days if day not in week.counted]
    for size in range(len(free) + 1):
        for days in combinations(free, size):
            rested = all(
                abs((a - b).days) > week.rest_days for a, b in combinations(days, 2)
            ) and all(
                abs((day - load).days) > week.rest_days
                for day in days
                for load in week.loads
                if load != day
            )
            if rested and size <= room:
                best = max(best, size)
    return best


@st.composite
def weeks(draw: st.DrawFn) -> Week:
    loads = draw(st.frozensets(st.sampled_from([MONDAY + timedelta(days=n) for n in range(-6, 7)])))
    counted = frozenset(day for day in loads if day >= MONDAY and draw(st.booleans()))
    open_days = tuple(day for day in WEEK if draw(st.booleans()))
    return Week(counted, loads, open_days, draw(st.integers(0, 6)), draw(st.integers(1, 7)))


@given(weeks())
def test_the_reach_is_the_best_of_all_subsets_of_days(week: Week) -> None:
    days = w.possible(week)
    assert len(days) == by_brute_force(week)
    assert set(days) <= set(week.open_days) - week.counted


def test_the_reach_of_every_small_week_is_exact() -> None:
    """All open days, every choice of one load day, every rest and maximum: no chance involved."""
    for mask in range(128):
        open_days = tuple(day for n, day in enumerate(WEEK) if mask >> n & 1)
        for load in [None, *WEEK]:
            for rest in range(4):
                loads = frozenset({load} if load else ())
                week = Week(frozenset(), loads, open_days, rest, 7)
                assert len(w.possible(week)) == by_brute_force(week)


@pytest.mark.parametrize(("reps", "counts"), [(31, False), (32, True), (40, True), (0, False)])
def test_a_day_counts_from_eighty_percent_of_its_total(reps: int, counts: bool) -> None:
    assert w.counts(reps, 40, 80) is counts  # W1; 80 % of 40 is 32, arithmetic


@pytest.mark.parametrize(
    ("reps", "why", "verdict"),
    [
        (32, Why.HOLD, (Verdict.COUNTED, "")),
        (31, Why.NO_ANSWER, (Verdict.PARTIAL, "no-answer")),
        (0, Why.DECLINED, (Verdict.MISSED, "declined")),
        (0, Why.UNREACHABLE, (Verdict.MISSED, "unreachable")),
        (10, Why.BREAK, (Verdict.EXCUSED, "break")),
        (0, Why.BOT_DOWN, (Verdict.EXCUSED, "bot-down")),
    ],
)
def test_a_closed_day_is_counted_partial_missed_or_excused(
    reps: int, why: Why, verdict: tuple[Verdict, str]
) -> None:
    assert w.verdict_of(reps, 40, 80, why) == verdict


@pytest.mark.parametrize("first", range(7))
def test_a_week_begins_on_the_practices_weekday(first: int) -> None:
    for day in WEEK:
        start = w.week_start(day, first)
        assert start.weekday() == first
        assert 0 <= (day - start).days < 7


def test_the_name_of_a_week_is_that_of_iso_8601() -> None:
    """Against dateutil, which counts ISO weeks by code of its own."""
    for start in (MONDAY, date(2026, 12, 28), date(2027, 12, 27), date(2021, 1, 4)):
        week = int(w.week_label(start)[6:])
        year = int(w.week_label(start)[:4])
        (monday, *_) = rrule.rrule(
            rrule.YEARLY, byweekno=week, byweekday=0, dtstart=start - timedelta(days=10), count=1
        )
        assert monday.date() == start
        assert w.week_named(f"{year}-W{week:02}", 0) == start
    assert w.week_label(MONDAY) == "2027-W10"
    assert w.week_label(date(2027, 3, 7)) == "2027-W10"  # a week from Sunday holds six days of it


@pytest.mark.parametrize("label", ["2027-10", "2027-W54", "W10", "2027-W1", "x", "2027-W00"])
def test_what_is_no_week_is_refused_with_an_example(label: str) -> None:
    with pytest.raises(ValueError, match="is not a week like 2027-W10"):
        w.week_named(label, 0)


def test_a_made_up_day_keeps_its_rest_from_all_that_is_planned() -> None:
    """Tuesday touches Wednesday, Sunday next Monday; of Friday and Saturday the earlier is offered."""
    planned = [WEEK[0], WEEK[2], MONDAY + timedelta(days=7)]
    week = Week(frozenset(), frozenset(), tuple(WEEK[1:]), 1, 2)
    assert w.make_up(week, planned, MONDAY) == WEEK[4]
    loaded = Week(frozenset(), frozenset({WEEK[3]}), tuple(WEEK[1:]), 1, 3)
    assert w.make_up(loaded, planned, MONDAY) == WEEK[5]


def test_the_best_made_up_day_is_the_farthest_from_its_neighbours_then_the_earliest() -> None:
    week = Week(frozenset(), frozenset(), tuple(WEEK[1:]), 0, 7)
    assert w.make_up(week, [MONDAY, WEEK[6]], MONDAY) == WEEK[1]
    assert w.make_up(week, [MONDAY, WEEK[1]], MONDAY) == WEEK[6]


def test_no_day_is_made_up_beyond_the_maximum() -> None:
    counted = frozenset({WEEK[2], WEEK[4]})
    week = Week(counted, counted, (WEEK[6],), 0, 2)
    assert w.make_up(week, [MONDAY], MONDAY) is None


def test_missed_days_in_a_row_pass_over_excused_ones_and_end_at_any_other() -> None:
    judged = [
        (WEEK[0], Verdict.MISSED),
        (WEEK[1], Verdict.PARTIAL),
        (WEEK[2], Verdict.MISSED),
        (WEEK[3], Verdict.EXCUSED),
        (WEEK[4], Verdict.MISSED),
    ]
    assert w.missed_in_a_row(judged) == (WEEK[2], WEEK[4])
    assert w.missed_in_a_row([*judged, (WEEK[5], Verdict.COUNTED)]) == ()
