"""A plan in words, the same on a page and in a bundle."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from scheduler.domain.messages import Text, text
from scheduler.domain.plan import Plan
from scheduler.usecases.records import plan_facts


def of_plan(plan: Plan) -> tuple[Text, Text, Text]:
    """The dose, the days, the dates."""
    return of_facts(plan_facts(plan))


def of_facts(plan: Mapping[str, Any]) -> tuple[Text, Text, Text]:
    """The same of a plan as `scheduler.usecases.records` puts it."""
    amount = {k: plan[k] for k in ("total", "movement", "per_side", "bout_reps", "bout_max")}
    days = {k: plan[k] for k in ("days_min", "days_max", "weekdays", "window")}
    dates = {k: plan[k] for k in ("start", "review", "end")}
    return (
        text("report-dose", **amount),
        text("report-days", gap_minutes=plan["gap"], **days),
        text("report-dates", **dates),
    )
