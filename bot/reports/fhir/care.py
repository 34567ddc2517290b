"""What is prescribed: each version of the plan as a CarePlan with its goal and its exercises."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta
from typing import Any

from bot.reports.fhir.bundle import (
    DAYS,
    REPETITIONS,
    ROUNDS,
    SECONDS,
    SNOMED,
    Bundle,
    Resource,
    concept,
    note,
    period,
    quantity,
)
from bot.reports.fhir.people import CLINICIAN, GONE
from bot.reports.plans import of_plan
from scheduler.domain import planjson
from scheduler.domain.companions import REPS, Companion
from scheduler.domain.messages import text
from scheduler.domain.plan import MOVEMENTS, Plan

IMPACT = "impact"
A_DAY = timedelta(days=1)
WEEKDAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
EXERCISE = concept(SNOMED, "229065009", "Exercise therapy")


def write(to: Bundle) -> None:
    """Every version, the oldest first; each takes the place of the one before."""
    versions = in_order(to)
    for number, row in enumerate(versions):
        # A later version may begin before the one that it replaces would have.
        over = min((after["valid_from"] for after in versions[number + 1 :]), default=None)
        before = versions[number - 1] if number else None
        _version(to, row, before, over)


def in_order(to: Bundle) -> list[Resource]:
    """The versions of the plan, the oldest first."""
    return sorted(to.record["plans"], key=lambda row: int(row["version"]))


def in_force(versions: Sequence[Resource], day: str) -> Resource | None:
    """The version by which a day is judged: the newest that has begun (`scheduler.ports.Plans.on`)."""
    return next((row for row in reversed(versions) if row["valid_from"] <= day), None)


def request(to: Bundle, row: Resource | None, exercise: str = IMPACT) -> list[Resource]:
    """The reference to the request for an exercise by a version, if there is one."""
    return [to.to("ServiceRequest", f"{row['id']}-{exercise}")] if row else []


def _version(to: Bundle, row: Resource, before: Resource | None, over: str | None) -> None:
    """`over`: the first day of what came after it."""
    plan, key = planjson.from_json(row["body"]), row["id"]
    status, runs = _status(to, plan, over), _runs(plan, row, over)
    exercises = [_impact(to, plan, row, status, runs)]
    exercises += [_companion(to, each, row, status, runs) for each in plan.companions]
    to.add(
        "CarePlan", key, status=status, intent="plan", category=[EXERCISE],
        title=f"Version {row['version']}", description=to.words(*of_plan(plan)),
        subject=to.client, period=runs, created=row["at"], author=_author(to),
        replaces=[to.to("CarePlan", before["id"])] if before else [],
        goal=[_goal(to, plan, row, status, runs)],
        activity=[{"reference": each} for each in exercises],
        note=note(to.words(text("report-caution"))),
    )  # fmt: skip


def _author(to: Bundle) -> Resource | None:
    return to.to("Practitioner", CLINICIAN) if to.record["person"]["clinician"] else None


def _status(to: Bundle, plan: Plan, over: str | None) -> str:
    """By the day on which the record was made, in her zone."""
    today = to.day(to.record["made_at"])
    if plan.end is not None and to.is_past(plan.end.isoformat()):
        return "completed"
    if to.record["person"]["state"] in GONE or (over and over <= today):
        return "revoked"
    stopped = {hold["movement"] for hold in to.record["holds"] if not hold["released_at"]}
    return "on-hold" if stopped & {"", plan.movement} else "active"


def _runs(plan: Plan, row: Resource, over: str | None) -> Resource:
    """From its first day to its end, or to the day before the next version; at least one day."""
    ends = [plan.end.isoformat()] if plan.end else []
    if over:
        ends.append((date.fromisoformat(over) - A_DAY).isoformat())
    return period(row["valid_from"], max(min(ends), row["valid_from"]) if ends else None)


def _goal(to: Bundle, plan: Plan, row: Resource, status: str, runs: Resource) -> Resource:
    """The days a week and the daily total."""
    lifecycle = {"revoked": "cancelled"}.get(status, status)
    days = to.local("days-per-week", display="impact days a week, at least")
    total = to.local("daily-total", display="repetitions an impact day")
    return to.add(
        "Goal", row["id"], lifecycleStatus=lifecycle, subject=to.client, startDate=runs["start"],
        description={"text": to.words(*of_plan(plan)[:2])},
        target=[
            {"measure": days, "detailQuantity": quantity(plan.days_min, DAYS)},
            {"measure": total, "detailQuantity": quantity(plan.daily_total, REPETITIONS)},
        ],
    )  # fmt: skip


def _impact(to: Bundle, plan: Plan, row: Resource, status: str, runs: Resource) -> Resource:
    movement = MOVEMENTS[plan.movement]
    details = [to.local("per-side", display="repetitions count on each side")]
    return to.add(
        "ServiceRequest", f"{row['id']}-{IMPACT}", **_order(to, row, status),
        code=to.local(plan.movement, "movement"),
        orderDetail=details if movement.per_side else [],
        quantityQuantity=quantity(plan.daily_total, REPETITIONS),
        occurrenceTiming=_timing(runs, plan.days_min, plan.days_max, plan.weekdays),
        patientInstruction=plan.note, note=note(to.words(*of_plan(plan)[:1])),
    )  # fmt: skip


def _companion(
    to: Bundle, companion: Companion, row: Resource, status: str, runs: Resource
) -> Resource:
    """A round of a hold is so many seconds; of reps, so many of them."""
    unit = REPETITIONS if companion.unit == REPS else SECONDS
    rounds = quantity(companion.rounds, ROUNDS)
    amount = quantity(companion.amount, unit)
    said = f"{rounds['value']} rounds of {amount['value']} {amount['unit']}"
    return to.add(
        "ServiceRequest", f"{row['id']}-{companion.key}", **_order(to, row, status),
        code=to.local(companion.key, "companion"), quantityQuantity=rounds,
        occurrenceTiming=_timing(runs, companion.days, companion.days, companion.weekdays),
        note=note(said),
    )  # fmt: skip


def _order(to: Bundle, row: Resource, status: str) -> dict[str, Any]:
    return {
        "status": status,
        "intent": "order",
        "category": [EXERCISE],
        "subject": to.client,
        "authoredOn": row["at"],
        "requester": _author(to),
    }


def _timing(runs: Resource, least: int, most: int, weekdays: Sequence[int]) -> Resource:
    """So many days a week; which, where they are fixed."""
    repeat: Resource = {"boundsPeriod": runs, "frequency": least, "period": 1, "periodUnit": "wk"}
    if most > least:
        repeat["frequencyMax"] = most
    if weekdays:
        repeat["dayOfWeek"] = [WEEKDAYS[day] for day in weekdays]
    return {"repeat": repeat}
