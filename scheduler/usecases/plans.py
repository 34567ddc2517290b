"""A clinician's prescription: clearance, a draft by buttons and short answers, preview, versions (C1-C5)."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime, timedelta

from scheduler.domain import planjson
from scheduler.domain.hours import local_day
from scheduler.domain.messages import Lane, text
from scheduler.domain.people import Clearance, Client, State
from scheduler.domain.plan import (
    MOVEMENTS,
    Level,
    Plan,
    first_impact_day,
    suggest_days,
)
from scheduler.domain.reply import Reply, reply
from scheduler.ports import PlanVersion, Question, Tx
from scheduler.usecases import lapses, weekplan
from scheduler.usecases.drafts import beside, check, needs_yes, preview
from scheduler.usecases.names import clinician_name
from scheduler.usecases.opening import begin_day, told_to_wait
from scheduler.usecases.post import tell
from scheduler.usecases.rest import bars, gather, withdraw_all
from scheduler.usecases.wake import changing

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
        lapses.cleared(tx, client, before, by, now)
        if bars(tx, gather(tx, client, local_day(now, client.zone))):
            withdraw_all(tx, client, "clearance")  # what was on its way is not permitted any more
        begin_day(tx, client, now)
        has_plan = tx.plans.latest(client_id) is not None
        return reply(
            "cleared", client=client_id, name=name, ceiling=ceiling.name.lower(), plan=has_plan
        )


# --- the draft -----------------------------------------------------------------------------------


# --- preview and save ----------------------------------------------------------------------------


def save(tx: Tx, question: Question, accept_estimate: bool, now: datetime) -> Reply:
    """Keep the draft as the plan's next version. It is checked again: nothing shown earlier is trusted."""
    by, client_id = question.person, int(question.body["client"])
    with changing(tx, client_id, now) as client:
        plan = planjson.from_json(question.body["draft"])
        estimated = needs_yes(client, plan)
        if check(tx, client, plan) or (estimated and not accept_estimate):
            return preview(tx, question)
        if estimated:
            tx.book.audit(by, "accept-estimate", client_id, now, after=plan.movement)
        after = _with_days(replace(client, estimates_accepted=_accepted(client, plan)), plan)
        tx.people.save_client(after)
        version = keep_version(tx, client_id, plan, _valid_from(tx, after, plan, now), by, now)
        weekplan.again(tx, after, version.valid_from)
        lapses.planned(tx, after, version, by, now)
        tx.questions.close(by, "plan")
        _tell_client(tx, after, version, now)
        begin_day(tx, after, now)
        return _saved(tx, after, version)


def _accepted(client: Client, plan: Plan) -> tuple[str, ...]:
    new = (plan.movement,) if needs_yes(client, plan) else ()
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
    if person is None or person.state is not State.READY:
        return
    plan = version.plan
    told = text(
        "plan-told",
        clinician=clinician_name(tx, client),
        total=plan.daily_total,
        bout_reps=plan.bout_reps,
        movement=plan.movement,
        per_side=MOVEMENTS[plan.movement].per_side,
        days=list(plan.weekdays or client.days),
        window=[plan.hours.window.start, plan.hours.window.end],
        day=first_impact_day(plan, version.valid_from).isoformat(),
        note=plan.note,
        beside=beside(plan),
    )
    wait = told_to_wait(tx, client, now)  # a plan is no release (H4)
    tell(tx, client.id, f"plan:{version.id}", Lane.REST, (told, wait) if wait else (told,), now)
