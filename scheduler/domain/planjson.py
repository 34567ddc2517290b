"""A plan as a JSON value and back: the form in which it rests, and in which a draft waits.

Fields are only ever added, each with a default, so that every older form can still be read.
"""

from __future__ import annotations

from dataclasses import asdict
from datetime import date
from typing import Any

from scheduler.domain.companions import Companion
from scheduler.domain.hours import Hours, Span
from scheduler.domain.plan import Plan


def hours_as_json(hours: Hours) -> dict[str, Any]:
    """Minutes of the day: `{"window": [480, 1200], "quiet": [[720, 780]]}`."""
    return {
        "window": [hours.window.start, hours.window.end],
        "quiet": [[span.start, span.end] for span in hours.quiet],
    }


def hours_from_json(value: dict[str, Any]) -> Hours:
    """The hours back from their JSON form."""
    quiet = tuple(Span(start, end) for start, end in value.get("quiet", []))
    return Hours(Span(*value["window"]), quiet)


def as_json(plan: Plan) -> dict[str, Any]:
    """Every field of the plan; days as ISO dates, weekdays as numbers from Monday = 0."""
    return {
        "movement": plan.movement,
        "daily_total": plan.daily_total,
        "bout_reps": plan.bout_reps,
        "bout_max": plan.bout_max,
        "days_min": plan.days_min,
        "days_max": plan.days_max,
        "weekdays": list(plan.weekdays),
        "rest_days": plan.rest_days,
        "hours": hours_as_json(plan.hours),
        "weekday_hours": [[day, hours_as_json(hours)] for day, hours in plan.weekday_hours],
        "gap_minutes": plan.gap_minutes,
        "start": plan.start.isoformat(),
        "review": plan.review.isoformat() if plan.review else None,
        "end": plan.end.isoformat() if plan.end else None,
        "note": plan.note,
        "companions": [
            {**asdict(each), "weekdays": list(each.weekdays)} for each in plan.companions
        ],
    }


def from_json(value: dict[str, Any]) -> Plan:
    """The plan back from its JSON form."""
    return Plan(
        movement=value["movement"],
        daily_total=value["daily_total"],
        bout_reps=value["bout_reps"],
        bout_max=value["bout_max"],
        days_min=value["days_min"],
        days_max=value["days_max"],
        weekdays=tuple(value["weekdays"]),
        rest_days=value["rest_days"],
        hours=hours_from_json(value["hours"]),
        weekday_hours=tuple(
            (day, hours_from_json(hours)) for day, hours in value.get("weekday_hours", [])
        ),
        gap_minutes=value["gap_minutes"],
        start=date.fromisoformat(value["start"]),
        review=_date(value.get("review")),
        end=_date(value.get("end")),
        note=value.get("note", ""),
        companions=tuple(
            Companion(**{**each, "weekdays": tuple(each["weekdays"])})
            for each in value.get("companions", [])
        ),
    )


def _date(value: str | None) -> date | None:
    return date.fromisoformat(value) if value else None
