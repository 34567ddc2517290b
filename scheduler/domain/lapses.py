"""When a clinician's permission ends by itself, and when a plan is over (C2, C5). Days are local dates."""

from __future__ import annotations

from datetime import date, timedelta

from scheduler.domain.plan import Plan

REASONS: tuple[str, ...] = ("readiness", "injury", "break", "review")
"""Why clearance lapses (C2)."""
GRACE = timedelta(days=7)
"""So many days after the review date clearance lapses if nobody has reviewed."""


def review_is_due(plan: Plan, cleared: date, today: date) -> bool:
    """Whether the review date has come; a clearance recorded on it or later is the review."""
    return plan.review is not None and cleared < plan.review <= today


def review_is_overdue(plan: Plan, cleared: date, today: date) -> bool:
    """Whether the review date has passed by 7 days: on the 7th day after it."""
    return review_is_due(plan, cleared, today - GRACE)


def is_over(plan: Plan, today: date) -> bool:
    """Whether the plan's last day has passed."""
    return plan.end is not None and today > plan.end
