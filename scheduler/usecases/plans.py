"""A clinician's prescription: clearance, a draft by buttons and short answers, preview, versions (C1-C5)."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime, timedelta
from typing import Any

from scheduler.domain import index, planjson
from scheduler.domain.hours import Hours, Span, common, local_day, parse_span
from scheduler.domain.messages import Argument, Lane, Text, message, text
from scheduler.domain.people import Clearance, Client, State
from scheduler.domain.plan import (
    MOVEMENTS,
    Fault,
    Level,
    Plan,
    check_plan,
    first_impact_day,
    hours_on,
    suggest_days,
    within,
)
from scheduler.domain.reply import Reply, reply
from scheduler.domain.spacing import spread_day
from scheduler.domain.wall import wall
from scheduler.ports import Outgoing, PlanVersion, Question, Tx
from scheduler.usecases.opening import begin_day
from scheduler.usecases.wake import changing

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
)
"""What the card of a draft shows, in its order; each can be changed by one tap and one short answer."""

REVIEW_AFTER = timedelta(weeks=8)
"""The review date a new draft proposes (ours); the clinician may change it."""


# --- clearance -----------------------------------------------------------------------------------


def clear(tx: Tx, by: int, client_id: int, ceiling: Level, now: datetime) -> Reply:
    """Record the clinician's permission for impact up to a ceiling, after she has the answers (C1)."""
    with changing(tx, client_id, now) as client:
        person = tx.people.get(client_id)
        name = person.name if person else ""
        if client.readiness is None:
            return reply("clear-not-answered", name=name)
        before = tx.plans.clearance(client_id)
        tx.plans.clear(Clearance(client_id, ceiling, by, now))
        tx.book.audit(
            by,
            "clear",
            client_id,
            now,
            before=before.ceiling.name.lower() if before else None,
            after=ceiling.name.lower(),
        )
        begin_day(tx, client, now)
        has_plan = tx.plans.latest(client_id) is not None
        return reply(
            "cleared", client=client_id, name=name, ceiling=ceiling.name.lower(), plan=has_plan
        )


# --- the draft -----------------------------------------------------------------------------------


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
    plan = planjson.from_json(question.body["draft"])
    args = dict(question.body["draft"])
    del args["hours"], args["weekday_hours"]
    return {
        **args,
        "client": client,
        "name": person.name if person else "",
        "per_side": MOVEMENTS[plan.movement].per_side,
        "window": [plan.hours.window.start, plan.hours.window.end],
        "quiet": [[span.start, span.end] for span in plan.hours.quiet],
    }


def card(tx: Tx, question: Question) -> Reply:
    """The draft's card again."""
    return _card(tx, question)


def ask_field(tx: Tx, question: Question, field: str) -> Reply:
    """Ask for one field of the draft."""
    if field not in FIELDS:
        return card(tx, question)
    tx.questions.ask(replace(question, step=field))
    client = int(question.body["client"])
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
    plan = planjson.from_json(question.body["draft"])
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
    if field == "weekdays" and value:
        return replace(plan, weekdays=tuple(value), days_min=len(value), days_max=len(value))
    return replace(plan, **{field: value})


# --- preview and save ----------------------------------------------------------------------------


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
    plan = planjson.from_json(question.body["draft"])
    faults = check(tx, client, plan)
    if faults:
        return _card(tx, question, *(fault_text(fault) for fault in faults))
    tx.questions.ask(replace(question, step="preview"))
    movement, needs_yes = MOVEMENTS[plan.movement], _needs_yes(client, plan)
    texts = [_first_day(tx, client, plan), dose_text(plan, _hours(plan, client, plan.start), tx)]
    if needs_yes:
        texts.append(text("plan-estimate", movement=movement.key, force=movement.peak_force))
    texts.append(text("plan-save", client=client.id, estimate=needs_yes))
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
            for row in rows[:6]
        ],
    )


def save(tx: Tx, question: Question, accept_estimate: bool, now: datetime) -> Reply:
    """Keep the draft as the plan's next version. It is checked again: nothing shown earlier is trusted."""
    by, client_id = question.person, int(question.body["client"])
    with changing(tx, client_id, now) as client:
        plan = planjson.from_json(question.body["draft"])
        needs_yes = _needs_yes(client, plan)
        if check(tx, client, plan) or (needs_yes and not accept_estimate):
            return preview(tx, question)
        if needs_yes:
            tx.book.audit(by, "accept-estimate", client_id, now, after=plan.movement)
        after = _with_days(replace(client, estimates_accepted=_accepted(client, plan)), plan)
        tx.people.save_client(after)
        version = keep_version(tx, client_id, plan, _valid_from(tx, after, plan, now), by, now)
        tx.questions.close(by, "plan")
        _tell_client(tx, after, version, now)
        begin_day(tx, after, now)
        return _saved(tx, after, version)


def _needs_yes(client: Client, plan: Plan) -> bool:
    """Whether the movement's force is an estimate that she has not yet accepted for this client (C1)."""
    return MOVEMENTS[plan.movement].estimate and plan.movement not in client.estimates_accepted


def _accepted(client: Client, plan: Plan) -> tuple[str, ...]:
    new = (plan.movement,) if _needs_yes(client, plan) else ()
    return (*client.estimates_accepted, *new)


def _with_days(client: Client, plan: Plan) -> Client:
    """In a flexible plan without days of the client's own the best spaced ones stand (W2)."""
    if plan.weekdays or client.days:
        return client
    monday = plan.start - timedelta(days=plan.start.weekday())
    whole_week = max(plan.start, monday + timedelta(weeks=1))
    picked = suggest_days(plan, monday + timedelta(weeks=1), whole_week)
    return replace(client, days=tuple(sorted({day.weekday() for day in picked})))


def _valid_from(tx: Tx, client: Client, plan: Plan, now: datetime) -> date:
    """Today, unless today already runs by the version before: a day is judged by one version only."""
    today = local_day(now, client.zone)
    begun = tx.days.get(client.id, today) is not None
    return max(plan.start, today + timedelta(days=1) if begun else today)


def keep_version(
    tx: Tx, client: int, plan: Plan, valid_from: date, by: int, now: datetime
) -> PlanVersion:
    """Append a version and its line in the audit trail (C5)."""
    before = tx.plans.latest(client)
    version = tx.plans.add(client, plan, valid_from, by, now)
    tx.book.audit(
        by,
        "plan",
        client,
        now,
        before=planjson.as_json(before.plan) if before else None,
        after=planjson.as_json(plan),
    )
    return version


def _saved(tx: Tx, client: Client, version: PlanVersion) -> Reply:
    person = tx.people.get(client.id)
    clearance = tx.plans.clearance(client.id)
    return reply(
        "plan-saved",
        client=client.id,
        name=person.name if person else "",
        version=version.version,
        day=first_impact_day(version.plan, version.valid_from).isoformat(),
        cleared=clearance is not None and clearance.lapsed_at is None,
        joined=client.joined_at is not None,
    )


def _tell_client(tx: Tx, client: Client, version: PlanVersion, now: datetime) -> None:
    person = tx.people.get(client.id)
    clinician = tx.people.get(client.clinician)
    if person is None or person.state is not State.READY:
        return
    plan = version.plan
    tx.outbox.add(
        Outgoing(
            key=f"plan:{version.id}",
            lane=Lane.REST,
            message=message(
                "plan-told",
                clinician=clinician.name if clinician else "",
                total=plan.daily_total,
                bout_reps=plan.bout_reps,
                movement=plan.movement,
                per_side=MOVEMENTS[plan.movement].per_side,
                days=list(plan.weekdays or client.days),
                window=[plan.hours.window.start, plan.hours.window.end],
                day=first_impact_day(plan, version.valid_from).isoformat(),
                note=plan.note,
            ),
            person=client.id,
        ),
        now,
    )
