"""One client's record over a period, for the practice's own files (K6)."""

from __future__ import annotations

from datetime import date, datetime, timedelta
from typing import Any

from scheduler.domain import week as w
from scheduler.domain.hours import instant, local_day
from scheduler.domain.people import Person
from scheduler.domain.plan import MOVEMENTS, Plan
from scheduler.domain.steptest import judge, seconds
from scheduler.domain.wall import wall
from scheduler.domain.weekdays import WEEK
from scheduler.ports import ClientWeek, Tx
from scheduler.usecases import figures
from scheduler.usecases.names import clinician_name

A_DAY = timedelta(days=1)


def record(tx: Tx, person: Person, first: date, last: date, now: datetime) -> dict[str, Any]:
    """Everything a page about one client shows, for whole weeks from the first day's to the last day's."""
    practice = tx.book.practice()
    start = w.week_start(first, practice.first_weekday)
    (whole,) = tx.weeks.of_clients([person.id], start, last)
    zone = whole.client.zone
    plan = figures.plan_on(whole, last)
    cleared = whole.clearance is not None and whole.clearance.lapsed_at is None
    return {
        "practice": practice.name,
        "clinician": clinician_name(tx, whole.client),
        "zone": zone.key,
        "made_at": wall(now, zone),
        "from": first.isoformat(),
        "to": last.isoformat(),
        "name": person.name,
        "plan": plan_facts(plan) if plan else None,
        "ceiling": whole.clearance.ceiling.name.lower() if whole.clearance and cleared else None,
        "weeks": [*_weeks(tx, person.id, start, last, now)],
        "pain": [*_pain(whole, first)],
        "falls": [*_falls(whole, first)],
        "flags": [*_flags(tx, whole, first, last)],
        "holds": [*_holds(whole)],
        "steps": [*_steps(tx, whole, first)],
    }


def plan_facts(plan: Plan) -> dict[str, Any]:
    """What a page says of a plan: weekdays from Monday = 0, the window and the gap in minutes, ISO days."""
    return {
        "movement": plan.movement,
        "per_side": MOVEMENTS[plan.movement].per_side,
        "total": plan.daily_total,
        "bout_reps": plan.bout_reps,
        "bout_max": plan.bout_max,
        "days_min": plan.days_min,
        "days_max": plan.days_max,
        "weekdays": list(plan.weekdays),
        "window": [plan.hours.window.start, plan.hours.window.end],
        "gap": plan.gap_minutes,
        "start": plan.start.isoformat(),
        "review": plan.review.isoformat() if plan.review else None,
        "end": plan.end.isoformat() if plan.end else None,
        "note": plan.note,
    }


def _weeks(tx: Tx, client: int, start: date, last: date, now: datetime) -> list[dict[str, Any]]:
    found: list[dict[str, Any]] = []
    while start <= last:
        (line,) = figures.lines(tx, [client], start, now)
        found.append({"label": w.week_label(start), "first": start.isoformat(), **line})
        start += timedelta(days=WEEK)
    return found


def _pain(whole: ClientWeek, first: date) -> list[dict[str, Any]]:
    return [
        {"day": day.isoformat(), "score": body["score"], "place": body.get("place")}
        for _, day, _, body in whole.reports
        if day >= first and isinstance(body.get("score"), int)
    ]


def _falls(whole: ClientWeek, first: date) -> list[dict[str, Any]]:
    return [
        {"day": day.isoformat(), "injury": body.get("injured")}
        for kind, day, _, body in whole.reports
        if kind == "fall" and day >= first
    ]


def _steps(tx: Tx, whole: ClientWeek, first: date) -> list[dict[str, Any]]:
    """Each step test of the period, judged beside all that came before it."""
    practice = tx.book.practice()
    cutoff, percent = practice.step_cutoff_hundredths, practice.step_slower_percent
    found = []
    for number, test in enumerate(whole.steps):
        verdict = judge(test.trials, whole.steps[:number], cutoff, percent)
        if test.day >= first:
            step = {"best": seconds(test.best), "slower": verdict.slower}
            said = {"id": test.id, "day": test.day.isoformat(), "positive": verdict.positive}
            found.append({**said, **step})
    return found


def _flags(tx: Tx, whole: ClientWeek, first: date, last: date) -> list[dict[str, Any]]:
    zone = whole.client.zone
    since, until = instant(first, 0, zone), instant(last + A_DAY, 0, zone)
    return [
        {
            "id": flag.id,
            "kind": flag.kind,
            "opened": local_day(flag.opened_at, zone).isoformat(),
            "closed": local_day(flag.closed_at, zone).isoformat() if flag.closed_at else None,
            "outcome": flag.outcome,
        }
        for flag in tx.flags.between(whole.client.id, since, until)
    ]


def _holds(whole: ClientWeek) -> list[dict[str, Any]]:
    zone = whole.client.zone
    return [
        {
            "from": local_day(hold.opened_at, zone).isoformat(),
            "to": local_day(hold.released_at, zone).isoformat() if hold.released_at else None,
        }
        for hold in whole.holds
    ]
