"""When a review falls due and clearance lapses: rules C2 and C5 of the specification (read)."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from scheduler.domain.hours import Hours, Span
from scheduler.domain.lapses import is_over, review_is_due, review_is_overdue
from scheduler.domain.plan import Plan

REVIEW = date(2027, 5, 3)
CLEARED = date(2027, 3, 8)
PLAN = Plan(
    "stomp", 40, 10, 10, 2, 3, (0, 3), 1, Hours(Span(480, 1200)), (), CLEARED, REVIEW, REVIEW
)


@pytest.mark.parametrize(
    ("after", "due", "overdue"),
    [(-1, False, False), (0, True, False), (6, True, False), (7, True, True), (8, True, True)],
)
def test_a_review_is_due_on_its_day_and_overdue_on_the_7th_after_it(
    after: int, due: bool, overdue: bool
) -> None:
    today = REVIEW + timedelta(days=after)
    assert review_is_due(PLAN, CLEARED, today) is due
    assert review_is_overdue(PLAN, CLEARED, today) is overdue


def test_a_clearance_on_the_day_of_the_review_is_the_review() -> None:
    late = REVIEW + timedelta(days=30)
    assert not review_is_due(PLAN, REVIEW, late)
    assert review_is_due(PLAN, REVIEW - timedelta(days=1), late)


def test_a_plan_without_dates_is_never_due_nor_over() -> None:
    endless = replace(PLAN, review=None, end=None)
    assert not review_is_due(endless, CLEARED, date(2040, 1, 1))
    assert not is_over(endless, date(2040, 1, 1))


def test_a_plan_is_over_the_day_after_its_last() -> None:
    assert not is_over(PLAN, REVIEW)
    assert is_over(PLAN, REVIEW + timedelta(days=1))
