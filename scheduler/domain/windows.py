"""The hours of one day in which bouts may fall: the plan's, and the client's own within them."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from scheduler.domain.hours import DAY, Hours, Span, common
from scheduler.domain.people import Client
from scheduler.domain.plan import Plan, hours_on


def common_hours(plan: Plan, client: Client, day: date) -> Hours | None:
    """The hours that a plan and the client's own wishes have in common on a day."""
    planned = hours_on(plan, day)
    return common(planned, client.hours) if client.hours else planned


def without_midnight(hours: Hours | None) -> Hours | None:
    """Midnight ends a window, but it is a minute of the next day: a bout there would count for that."""
    if hours is None or hours.window.end < DAY or hours.window.start == DAY - 1:
        return hours
    return replace(hours, window=Span(hours.window.start, DAY - 1))
