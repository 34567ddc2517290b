"""The four square step test: the better time counts, over the cut-off is screen positive (T1, T3)."""

from datetime import UTC, date, datetime

import pytest

from scheduler.domain.steptest import StepTest, Trial, better, due_on, is_time, judge

CUTOFF = 1500
"""15 s: common practice, and from memory for Dite W, Temple VA. Arch Phys Med Rehabil 2002;83:1566-71."""


def test_of(*trials: Trial) -> StepTest:
    return StepTest(1, 7, date(2027, 3, 8), datetime(2027, 3, 8, 9, tzinfo=UTC), trials, 2)


test_of.__test__ = False  # type: ignore[attr-defined]


@pytest.mark.parametrize(
    ("trials", "best", "positive"),
    [
        ((1620, 1480), 1480, False),  # 16.2 and 14.8 -> 14.8, negative
        ((1500, None), 1500, False),  # 15.0 -> negative
        ((1501, None), 1501, True),  # 15.01 and void -> 15.01, positive
        ((None, 1501), 1501, True),
        ((1501, 1500), 1500, False),
        ((None, None), None, True),  # void and void -> could not complete, positive, no time
    ],
)  # cases of the evidence: two trials, the better counts (a rehabilitation measures database, read)
def test_the_better_of_two_trials_counts_and_over_the_cut_off_is_screen_positive(
    trials: tuple[Trial, Trial], best: Trial, positive: bool
) -> None:
    assert better(trials) == best
    assert judge(trials, (), CUTOFF, 20).positive is positive


@pytest.mark.parametrize(
    ("cutoff", "on"),
    [(1200, 1200), (2400, 2400), (968, 968)],
)  # vestibular 12 s, lower-limb prosthesis 24 s, Parkinson 9.68 s (read): hence a setting
def test_another_group_has_another_cut_off_and_only_over_it_is_positive(
    cutoff: int, on: int
) -> None:
    assert not judge((on, None), (), cutoff, 20).positive
    assert judge((on + 1, None), (), cutoff, 20).positive


@pytest.mark.parametrize(
    ("now", "slower"), [(1200, False), (1201, True), (1000, False), (900, False)]
)  # more than 20 % over a best of 10.00 s: ours
def test_slower_than_the_own_best_by_more_than_a_fifth_is_flagged(now: int, slower: bool) -> None:
    verdict = judge((now, None), (test_of(1300, 1100), test_of(1000, None)), CUTOFF, 20)
    assert (verdict.slower, verdict.flagged, verdict.best_before) == (slower, slower, 1000)


def test_a_best_with_hundredths_is_compared_exactly() -> None:
    before = (test_of(1233, 1240),)  # 12.33 s and a fifth are 14.796 s (arithmetic)
    assert not judge((1479, None), before, CUTOFF, 20).slower
    assert judge((1480, None), before, CUTOFF, 20).slower


def test_a_first_test_is_slower_than_nothing_and_one_without_time_is_no_best() -> None:
    assert judge((1400, 1450), (), CUTOFF, 20).best_before is None
    assert not judge((1400, 1450), (test_of(None, None),), CUTOFF, 20).flagged


def test_no_time_at_all_is_positive_and_not_slower_too() -> None:
    verdict = judge((None, None), (test_of(1000, None),), CUTOFF, 20)
    assert (verdict.positive, verdict.slower, verdict.best_before) == (True, False, 1000)


@pytest.mark.parametrize(
    ("trial", "fits"),
    [(199, False), (200, True), (30_000, True), (30_001, False), (None, True)],
)  # 2 to 300 s: ours
def test_a_time_that_nobody_has_is_a_slip(trial: Trial, fits: bool) -> None:
    assert is_time(trial) is fits


def test_a_retest_is_due_six_weeks_after_the_last_over_a_clock_change_too() -> None:
    assert due_on(date(2027, 3, 8), 6) == date(2027, 4, 19)  # the calendar: arithmetic
