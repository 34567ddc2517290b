"""The draft of a plan: one card, a tap and a short answer a field, and a preview before it is saved (C4)."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime, timedelta
from typing import Any

from scheduler.domain import index, planjson
from scheduler.domain.companions import Companion, toggled, with_one
from scheduler.domain.hours import Hours, Span, common, local_day, parse_span
from scheduler.domain.messages import Argument, Text, text
from scheduler.domain.people import Client
from scheduler.domain.plan import (
    MOVEMENTS,
    Fault,
    Plan,
    check_plan,
    first_impact_day,
    hours_on,
    within,
)
from scheduler.domain.reply import Reply, reply
from scheduler.domain.spacing import spread_day
from scheduler.domain.wall import wall
from scheduler.ports import Question, Tx

FIELDS: tuple[str, ...] = (
    "movement",
    "daily_total",
    "bout_reps",
    "bout_max",
    "weekdays",
    "days_min",
    "days_max",
    "rest_days",
    "window",
    "quiet",
    "gap_minutes",
    "start",
    "review",
    "end",
    "note",
    "companions",
)
"""What the card of a draft shows, in its order; each can be changed by one tap and one short answer."""


FEW_BOUTS = 6
"""Rows of the dose table that a phone shows at a glance; the split she chose is shown besides."""
REVIEW_AFTER = timedelta(weeks=8)
"""The review date a new draft proposes (ours); the clinician may change it."""


def draft(tx: Tx, by: int, client_id: int, now: datetime) -> Reply:
    """Open a draft: the client's latest plan, or the most careful common dose to start from."""
    client = tx.people.client(client_id)
    version = tx.plans.latest(client_id)
    today = local_day(now, client.zone)
    plan = version.plan if version else _careful_start(today, tx.book.practice().window)
    if plan.start < today:
        plan = replace(plan, start=today)
    body = {"client": client_id, "draft": planjson.as_json(plan)}
    return _card(tx, Question(by, "plan", "card", body, now))


def _careful_start(today: date, window: str) -> Plan:
    """Common practice, no source: 40 a day in bouts of 10, two days a week; low impact."""
    return Plan(
        movement="stepping-jack",
        daily_total=40,
        bout_reps=10,
        bout_max=10,
        days_min=2,
        days_max=2,
        weekdays=(0, 3),
        rest_days=1,
        hours=Hours(parse_span(window), ()),
        weekday_hours=(),
        gap_minutes=120,
        start=today,
        review=today + REVIEW_AFTER,
        end=None,
        note="",
    )


def _card(tx: Tx, question: Question, *above: Text) -> Reply:
    tx.questions.ask(replace(question, step="card"))
    return Reply((*above, text("plan-card", **_card_args(tx, question))))


def _card_args(tx: Tx, question: Question) -> dict[str, Argument]:
    client = int(question.body["client"])
    person = tx.people.get(client)
    plan = plan_of(question)
    args = planjson.as_json(plan)
    del args["hours"], args["weekday_hours"], args["companions"]
    return {
        **args,
        "client": client,
        "name": person.name if person else "",
        "per_side": MOVEMENTS[plan.movement].per_side,
        "window": [plan.hours.window.start, plan.hours.window.end],
        "quiet": [[span.start, span.end] for span in plan.hours.quiet],
        "beside": beside(plan),
    }


def plan_of(question: Question) -> Plan:
    """The plan as drafted so far."""
    return planjson.from_json(question.body["draft"])


def card(tx: Tx, question: Question) -> Reply:
    """The draft's card again."""
    return _card(tx, question)


def ask_field(tx: Tx, question: Question, field: str) -> Reply:
    """Ask for one field of the draft."""
    if field not in FIELDS:
        return card(tx, question)
    tx.questions.ask(replace(question, step=field))
    client = int(question.body["client"])
    if field == "companions":
        return reply("ask-plan-companions", movements=[], beside=beside(plan_of(question)))
    clearance = tx.plans.clearance(client)
    ceiling = clearance.ceiling if clearance and clearance.lapsed_at is None else None
    return reply(
        f"ask-plan-{field.replace('_', '-')}",
        movements=[
            key for key, each in MOVEMENTS.items() if ceiling is None or within(each, ceiling)
        ]
        if field == "movement"
        else [],
    )


def set_field(tx: Tx, question: Question, value: Any) -> Reply:
    """Keep one answer in the draft (`question.step` is the field) and show the card again."""
    plan = plan_of(question)
    after = _with(plan, question.step, value)
    body = {**question.body, "draft": planjson.as_json(after)}
    return _card(tx, replace(question, body=body))


def _with(plan: Plan, field: str, value: Any) -> Plan:
    if field == "window":
        return replace(plan, hours=replace(plan.hours, window=value))
    if field == "quiet":
        return replace(plan, hours=replace(plan.hours, quiet=tuple(value)))
    if field == "bout_reps":  # the maximum is the bout unless she chose another (C3)
        same = plan.bout_max == plan.bout_reps
        return replace(plan, bout_reps=value, bout_max=value if same else max(plan.bout_max, value))
    if field == "companions":
        return replace(plan, companions=_companions(plan, value))
    if field == "weekdays" and value:
        return replace(plan, weekdays=tuple(value), days_min=len(value), days_max=len(value))
    return replace(plan, **{field: value})


def _companions(plan: Plan, value: str | Companion | None) -> tuple[Companion, ...]:
    """None at all, one put in or taken out by its key, or one with values of its own."""
    if value is None:
        return ()
    if isinstance(value, Companion):
        return with_one(plan.companions, value)
    return toggled(plan.companions, value)


def beside(plan: Plan) -> list[Argument]:
    """The companions of a plan, as an argument of a text."""
    return [
        {
            "companion": each.key,
            "measure": each.unit,
            "amount": each.amount,
            "rounds": each.rounds,
            "weekdays": list(each.weekdays),
        }
        for each in plan.companions
    ]


def check(tx: Tx, client: Client, plan: Plan) -> tuple[Fault, ...]:
    """Why the plan cannot be carried out for this client, with the nearest values that would work (C4)."""
    clearance = tx.plans.clearance(client.id)
    valid = clearance is not None and clearance.lapsed_at is None
    return check_plan(
        plan,
        client_hours=client.hours,
        zone=client.zone,
        ceiling=clearance.ceiling if clearance and valid else None,
        estimate_accepted=True,  # her yes is asked on the preview itself
        movement=MOVEMENTS[plan.movement],
    )


def preview(tx: Tx, question: Question) -> Reply:
    """The first impact day with times and reps, and the dose table (S6); or the faults, one a line."""
    client = tx.people.client(int(question.body["client"]))
    plan = plan_of(question)
    faults = check(tx, client, plan)
    if faults:
        return _card(tx, question, *(fault_text(fault) for fault in faults))
    tx.questions.ask(replace(question, step="preview"))
    movement, estimated = MOVEMENTS[plan.movement], needs_yes(client, plan)
    texts = [_first_day(tx, client, plan), dose_text(plan, _hours(plan, client, plan.start), tx)]
    if plan.companions:
        texts.append(text("plan-beside", beside=beside(plan)))
    if estimated:
        texts.append(text("plan-estimate", movement=movement.key, force=movement.peak_force))
    texts.append(text("plan-save", client=client.id, estimate=estimated))
    return Reply(tuple(texts))


def fault_text(fault: Fault) -> Text:
    """A fault as a text: field, reason and the nearest values that work."""
    args: dict[str, Argument] = {key: _plain(value) for key, value in fault.args}
    values: list[Argument] = [_plain(value) for value in fault.values]
    return text(f"fault-{fault.reason}", field=fault.field, values=values, **args)


def _plain(value: Any) -> Argument:
    return value.isoformat() if isinstance(value, date) else value


def _hours(plan: Plan, client: Client, day: date) -> Hours:
    planned = hours_on(plan, day)
    both = common(planned, client.hours) if client.hours else planned
    return both or planned


def _first_day(tx: Tx, client: Client, plan: Plan) -> Text:
    day = first_impact_day(plan, plan.start)
    rest = spread_day(
        reps=plan.daily_total,
        bout_reps=plan.bout_reps,
        bout_max=plan.bout_max,
        day=day,
        hours=_hours(plan, client, day),
        zone=client.zone,
        gap=timedelta(minutes=plan.gap_minutes),
        tau=tx.book.practice().tau,
    )
    return text(
        "plan-first-day",
        day=day.isoformat(),
        bouts=[{"at": wall(each.at, client.zone), "reps": each.reps} for each in rest.bouts],
        movement=plan.movement,
        per_side=MOVEMENTS[plan.movement].per_side,
    )


def dose_text(plan: Plan, hours: Hours, tx: Tx) -> Text:
    """The dose table of the plan's total and window: theoretical, from animal data, not a target (S6)."""
    movement = MOVEMENTS[plan.movement]
    chosen = -(-plan.daily_total // plan.bout_reps)
    rows = index.dose_table(
        total=plan.daily_total,
        window=Span(hours.window.start, hours.window.end),
        peak_force=movement.peak_force,
        tau=tx.book.practice().tau,
    )
    return text(
        "dose-table",
        rows=[
            {
                "bouts": row.bouts,
                "most": max(row.reps),
                "gap_minutes": round(row.gap_minutes),
                "index": round(row.index, 1),
                "against_one_go": round(row.against_one_go, 2),
            }
            for row in rows
            if row.bouts <= FEW_BOUTS or row.bouts == chosen
        ],
    )


def needs_yes(client: Client, plan: Plan) -> bool:
    """Whether the movement's force is an estimate that she has not yet accepted for this client (C1)."""
    return MOVEMENTS[plan.movement].estimate and plan.movement not in client.estimates_accepted
