"""Stopping everything, telling the clinician at once, and starting again only on her word (H3, H4, H6)."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime, timedelta
from typing import Any

from scheduler.domain.messages import Argument, Lane, message, text
from scheduler.domain.pain import SIGNS, Urgency
from scheduler.domain.people import Client, State
from scheduler.domain.plan import MOVEMENTS, Plan
from scheduler.domain.reply import Reply, reply
from scheduler.ports import Question, Tx
from scheduler.usecases import plans, taps, weekplan
from scheduler.usecases.flags import raise_flag
from scheduler.usecases.lapses import valid_clearance
from scheduler.usecases.names import clinician_name, name_of
from scheduler.usecases.opening import go_on
from scheduler.usecases.post import tell
from scheduler.usecases.rest import today_of, withdraw_all
from scheduler.usecases.wake import changing

STOP_TEXTS = {
    Urgency.CONTACT: "stop-contact",
    Urgency.CONTACT_TODAY: "stop-today",
    Urgency.URGENT_CARE: "stop-urgent-care",
    Urgency.EMERGENCY: "stop-emergency",
    Urgency.CRISIS: "stop-crisis",
}


def stop(  # the facts of one stop, all named
    tx: Tx,
    client: Client,
    now: datetime,
    *,
    reason: str,
    sign: str | None = None,
    details: dict[str, Any],
) -> Reply:
    """Hold the impact from this transaction on, and put the flag and the client's message on their way.

    The caller holds the client's row. A sign of a leak stops the plan's movement only. The reply is the
    client's safety message; it says whom to call and never what is wrong.
    """
    urgency = SIGNS[sign] if sign else Urgency.CONTACT_TODAY
    if reason == "fall" or urgency is Urgency.LOG:  # what is little by itself is not after a fall
        urgency = max(urgency, Urgency.CONTACT_TODAY)
    movement = None
    if urgency is Urgency.MOVEMENT:
        version = tx.plans.on(client.id, today_of(client, now))
        movement = version.plan.movement if version else None
    tx.health.hold(client.id, reason, movement, now)
    withdraw_all(tx, client, "hold")
    tx.questions.close(client.id, "pain", "confirm", "fewer", "morning")
    if urgency is not Urgency.MOVEMENT:  # a leak leaves it open whether a fall has hurt her
        tx.questions.close(client.id, "fall")
    about = {**details, "sign": sign, "movement": movement}
    raise_flag(tx, client, reason, now, urgent=urgency is not Urgency.MOVEMENT, details=about)
    return _stop_message(tx, client, urgency, details)


def _stop_message(tx: Tx, client: Client, urgency: Urgency, details: dict[str, Any]) -> Reply:
    practice = tx.book.practice()
    args: dict[str, Argument] = {
        "clinician": clinician_name(tx, client),
        "phone": practice.phone,
        "emergency_number": practice.emergency_number,
        "crisis_line": practice.crisis_line,
        "answer_hours": practice.answer_hours,
    }
    if urgency is Urgency.MOVEMENT:
        return Reply((text("stop-leak", **args),), Lane.SAFETY, in_place=False)
    texts = [text(STOP_TEXTS[urgency], **args)]
    score = details.get("score")
    if score is not None and urgency is Urgency.CONTACT_TODAY:
        texts.insert(0, text("you-said-score", score=score))
    if "unanswered" in details:
        texts.insert(0, text("no-answer-so-stopped"))
    return Reply(tuple(texts), Lane.SAFETY, in_place=False)


def stop_by_clinician(tx: Tx, clinician: int, client_id: int, now: datetime) -> Reply:
    """The clinician stops everything herself (K5). The client is told at once, by the safety lane."""
    with changing(tx, client_id, now) as client:
        person = tx.people.get(client_id)
        name = person.name if person else ""
        if not tx.health.hold(client_id, "clinician", None, now):
            return reply("client-held", client=client_id, name=name)
        withdraw_all(tx, client, "hold")
        tx.book.audit(clinician, "hold", client_id, now)
        practice = tx.book.practice()
        tell(
            tx,
            client_id,
            f"held:{client_id}:{now.isoformat()}",
            Lane.SAFETY,
            message(
                "held-by-clinician",
                clinician=clinician_name(tx, client),
                phone=practice.phone,
                emergency_number=practice.emergency_number,
            ),
            now,
        )
        return reply("client-held", client=client_id, name=name)


def ask_release_day(tx: Tx, by: int, client_id: int, total: int, now: datetime) -> Reply:
    """The dose is chosen; ask from which day. The question stays open where the dose cannot be."""
    person, version = tx.people.get(client_id), tx.plans.latest(client_id)
    if person is None or version is None:
        return reply("release-no-plan")
    if not 1 <= total <= version.plan.daily_total:
        return reply("release-too-much", total=version.plan.daily_total)
    tx.questions.ask(
        Question(by, "release", "day", {"client": client_id, "total": total}, asked_at=now)
    )
    movement = MOVEMENTS[version.plan.movement]
    return reply(
        "ask-release-day",
        client=client_id,
        name=person.name,
        total=total,
        movement=movement.key,
        per_side=movement.per_side,
    )


def release(
    tx: Tx, by: int, client_id: int, now: datetime, *, daily_total: int | None, tomorrow: bool
) -> Reply:
    """Release the client's holds at a dose: as before (`None`) or a new, smaller or equal, daily total.

    Impact goes on today or, more carefully, tomorrow. Raising the dose is a change of plan, no release.
    """
    with changing(tx, client_id, now) as client:
        version = tx.plans.latest(client_id)
        first = today_of(client, now) + timedelta(days=1 if tomorrow else 0)
        if not tx.health.holds(client_id):
            return reply("release-nothing")
        if version is None:
            return reply("release-no-plan")
        plan = version.plan
        if daily_total is not None and not 1 <= daily_total <= plan.daily_total:
            return reply("release-too-much", total=plan.daily_total)
        total = daily_total or plan.daily_total
        after = replace(
            plan,
            daily_total=total,
            bout_reps=min(plan.bout_reps, total),
            bout_max=min(plan.bout_max, total),
        )
        if after != plan:
            plans.keep_version(tx, client_id, after, first, by, now)
            _lower_today(tx, client_id, first, total)
        tx.health.release(client_id, by, now)
        # What stopped her once must stop her again, also by the same button at once.
        taps.meant_anew(tx, (client_id, *(person.id for person in tx.people.staff())))
        tx.questions.close(client_id, "morning")
        tx.questions.close(by, "release")
        tx.book.audit(by, "release", client_id, now, before=plan.daily_total, after=total)
        tx.people.save_client(replace(tx.people.client(client_id), resumes_on=first))
        person = tx.people.get(client_id)
        cleared = valid_clearance(tx, client_id) is not None
        go_on(tx, tx.people.client(client_id), now)
        if person and person.state is State.READY and cleared:
            _tell_released(tx, client, by, after, first, now)
        return reply(
            "released" if cleared else "released-not-cleared",
            client=client_id,
            name=person.name if person else "",
            total=total,
            movement=plan.movement,
            per_side=MOVEMENTS[plan.movement].per_side,
            day=first.isoformat(),
        )


def _lower_today(tx: Tx, client_id: int, first: date, total: int) -> None:
    """A day that has begun goes on at the lower dose if it is released for today."""
    day = tx.days.get(client_id, first)
    if day is not None:
        tx.days.save(replace(day, total=min(day.total, total)))


def _tell_released(tx: Tx, client: Client, by: int, plan: Plan, first: date, now: datetime) -> None:
    """Tell the client who released, the dose, and when bouts are asked next, which is seldom on `first`.

    Today only if there is still room for a bout; no day where nobody knows when her break ends.
    """
    today = today_of(client, now)
    asked_today = any(bout.day == today for bout in tx.days.open_bouts(client.id))
    tomorrow = max(first, today + timedelta(days=1))
    day = today if asked_today else weekplan.first_asked(tx, client, tomorrow)
    tell(
        tx,
        client.id,
        f"release:{client.id}:{now.isoformat()}",
        Lane.SAFETY,
        message(
            "release-told",
            clinician=name_of(tx, by),
            total=plan.daily_total,
            bout_reps=plan.bout_reps,
            movement=plan.movement,
            per_side=MOVEMENTS[plan.movement].per_side,
            day=day.isoformat() if day else None,
        ),
        now,
    )
