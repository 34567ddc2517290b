"""What was asked, what was done, and how the days and weeks came out."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from bot.reports.fhir.bundle import (
    DAYS,
    LOINC,
    PERCENT,
    REPETITIONS,
    ROUNDS,
    SECONDS,
    TERMS,
    Bundle,
    Resource,
    concept,
    note,
    period,
    quantity,
)
from bot.reports.fhir.care import in_force, in_order, request
from scheduler.domain.days import BoutState
from scheduler.domain.messages import text
from scheduler.domain.steptest import better, seconds

ACTIVITY = [concept(f"{TERMS}observation-category", "activity", "Activity")]
EXAM = [concept(f"{TERMS}observation-category", "exam", "Exam")]
EXERCISE = concept(LOINC, "73985-4", "Exercise activity")
ABSENT = f"{TERMS}data-absent-reason"
NOT_DONE = concept(ABSENT, "not-performed", "Not Performed")
NO_FIGURE = concept(ABSENT, "not-applicable", "Not Applicable")
ASKED: dict[str, str] = {
    BoutState.WAITING: "requested",
    BoutState.ASKED: "in-progress",
    BoutState.DONE: "completed",
    BoutState.SKIPPED: "rejected",
    BoutState.EXPIRED: "failed",
    BoutState.LATER: "cancelled",
    BoutState.WITHDRAWN: "cancelled",
}
"""The state of a bout that was asked, as that of a Task. Declined is rejected; no answer is failed."""


def write(to: Bundle) -> None:
    """Bouts asked and done, companions, days, step tests; weeks, where the record has them."""
    record = to.record
    versions = in_order(to)
    plans = {row["id"]: row for row in versions}
    movements = {row["id"]: row["body"]["movement"] for row in versions}
    taken_back = {row["voids"] for row in record["bouts_done"] if row["voids"] is not None}
    entries = [row for row in record["bouts_done"] if row["voids"] is None]
    days = {row["day"]: plans.get(row["plan"]) for row in record["days"]}
    for row in entries:
        plan = days.get(row["day"]) or in_force(versions, row["day"])
        movement = movements[plan["id"]] if plan else ""
        _bout(to, row, plan, movement, standing=row["id"] not in taken_back)
    for row in record["bouts_asked"]:
        plan = days.get(row["day"]) or in_force(versions, row["day"])
        _asked(to, row, plan, [e for e in entries if e["bout"] == row["id"]])
    for row in record["companions"]:
        _companion(to, row, in_force(versions, row["day"]))
    for row in record["days"]:
        _day(to, row, plans.get(row["plan"]))
    judged = {each["id"]: each for each in record.get("page", {}).get("steps", ())}
    for row in record["step_tests"]:
        _step_test(to, row, judged.get(row["id"]))
    for week in record.get("page", {}).get("weeks", ()):
        _week(to, week)


def _bout(
    to: Bundle, row: Resource, plan: Resource | None, movement: str, *, standing: bool
) -> None:
    """One line of the ledger. One that was taken back or corrected stays, as entered in error."""
    to.add(
        "Observation", f"bout-{row['id']}", status="final" if standing else "entered-in-error",
        category=ACTIVITY, code=to.local("bout", display="repetitions of impact in one bout"),
        subject=to.client, performer=[to.client], basedOn=request(to, plan),
        effectiveDateTime=to.when(row["day"], row["at"]), issued=row["at"],
        valueQuantity=quantity(row["reps"], REPETITIONS),
        component=[_movement(to, movement)] if movement else [],
    )  # fmt: skip


def _movement(to: Bundle, movement: str) -> Resource:
    return {"code": EXERCISE, "valueCodeableConcept": to.local(movement, "movement")}


def _asked(to: Bundle, row: Resource, plan: Resource | None, done: list[Resource]) -> None:
    reps = to.local("bout", display="repetitions of impact in one bout")
    to.add(
        "Task", f"bout-{row['id']}", basedOn=request(to, plan), status=ASKED[row["state"]],
        businessStatus=to.local(row["state"], display=f"bout {row['state']}"), intent="order",
        code=reps, **{"for": to.client}, owner=to.client,
        executionPeriod=period(row["asked_at"] or row["due_at"], row["expires_at"]),
        input=[{"type": reps, "valueQuantity": quantity(row["reps"], REPETITIONS)}],
        output=[
            {"type": reps, "valueReference": to.to("Observation", f"bout-{each['id']}")}
            for each in done
        ],
    )  # fmt: skip


def _companion(to: Bundle, row: Resource, plan: Resource | None) -> None:
    keys = {each["key"] for each in plan["body"].get("companions", [])} if plan else set()
    to.add(
        "Observation", f"companion-{row['id']}", status="final", category=ACTIVITY,
        code=to.local(row["companion"], "companion"), subject=to.client, performer=[to.client],
        basedOn=request(to, plan, row["companion"]) if row["companion"] in keys else [],
        effectiveDateTime=to.when(row["day"], row["at"]), issued=row["at"],
        valueQuantity=quantity(row["rounds"], ROUNDS),
    )  # fmt: skip


def _day(to: Bundle, row: Resource, plan: Resource | None) -> None:
    """An impact day: what was prescribed, and how it was judged once it had closed."""
    total = to.local("daily-total", display="repetitions an impact day")
    to.add(
        "Observation", f"day-{row['day']}", category=ACTIVITY, subject=to.client,
        status="final" if row["closed_at"] else "preliminary",
        code=to.local("impact-day", display="an impact day"), basedOn=request(to, plan),
        effectiveDateTime=row["day"], issued=row["closed_at"],
        valueCodeableConcept=to.local(row["verdict"], "cell") if row["verdict"] else None,
        component=[{"code": total, "valueQuantity": quantity(row["total"], REPETITIONS)}],
        note=note(to.named("why", row["why"]) if row["why"] else ""),
    )  # fmt: skip


def _step_test(to: Bundle, row: Resource, judged: Resource | None) -> None:
    """Both trials and the better time. Screen positive is said as such, and says nothing certain."""
    to.add(
        "Observation", f"step-test-{row['id']}", category=EXAM, subject=to.client,
        status="entered-in-error" if row["taken_back_at"] else "final",
        code=to.local("step-test", display="four square step test, the better of two trials"),
        effectiveDateTime=to.when(row["day"], row["at"]), issued=row["at"],
        **_time(seconds(better(row["trials"]))), interpretation=[*_screened(to, judged or {})],
        component=[
            {"code": to.local(f"trial-{n}", display=f"trial {n}"), **_time(seconds(trial))}
            for n, trial in enumerate(row["trials"], start=1)
        ],
    )  # fmt: skip


def _screened(to: Bundle, judged: Resource) -> Iterator[Resource]:
    if judged.get("positive"):
        yield to.local("screen-positive", display="screen positive")
    if judged.get("slower"):
        yield to.local("slower", display="slower than the best before by more than the limit")


def _time(value: float | None) -> dict[str, Any]:
    """A void trial has no time."""
    return (
        {"dataAbsentReason": NOT_DONE}
        if value is None
        else {"valueQuantity": quantity(value, SECONDS)}
    )


def _week(to: Bundle, week: Resource) -> None:
    """The four figures of a week (W6); a spread has none where fewer than two bouts were planned."""
    end = week["cells"][-1]["day"]
    to.add(
        "Observation", f"week-{week['first']}", category=ACTIVITY, subject=to.client,
        status="preliminary" if week["open"] else "final",
        code=to.local("week", display="a week against the plan"),
        effectivePeriod=period(week["first"], end), component=[*_figures(to, week)],
        note=note(to.words(text("report-theory"))),
    )  # fmt: skip


def _figures(to: Bundle, week: Resource) -> Iterator[Resource]:
    shares = (
        ("days", "days counted of the plan's minimum", week["days"], week["needed"]),
        ("reps", "repetitions done of those prescribed", week["reps"], week["prescribed"]),
        (
            "reps-capped",
            "the same, each day at most its total",
            week["reps_capped"],
            week["prescribed"],
        ),
        ("bouts", "bouts logged of those planned", week["bouts"], week["bouts_planned"]),
    )
    for code, display, done, planned in shares:
        yield {"code": to.local(f"week-{code}", display=display), **_share(done, planned)}
    spread = to.local("week-spread", display="how well bouts were spread; theoretical, no target")
    yield {"code": spread, **_percent(week["spread"])}
    excused = to.local("week-excused", display="days that are in no figure")
    yield {"code": excused, "valueQuantity": quantity(week["excused"], DAYS)}


def _share(done: int, planned: int) -> dict[str, Any]:
    if not planned:
        return {"dataAbsentReason": NO_FIGURE}
    return {"valueRatio": {"numerator": {"value": done}, "denominator": {"value": planned}}}


def _percent(share: float | None) -> dict[str, Any]:
    if share is None:
        return {"dataAbsentReason": NO_FIGURE}
    return {"valueQuantity": quantity(round(share * 100, 1), PERCENT)}
