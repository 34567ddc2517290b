"""What staff see and do about people: the caseload, one client, flags, the practice's settings, roles."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from scheduler.domain.flags import OUTCOMES
from scheduler.domain.hours import local_day, parse_span
from scheduler.domain.messages import Argument, text
from scheduler.domain.people import Client, Person, Role, State
from scheduler.domain.plan import MOVEMENTS
from scheduler.domain.reply import Reply, reply
from scheduler.domain.settings import BOUNDS, NAMES, Practice, from_rows
from scheduler.domain.wall import wall
from scheduler.ports import Question, Tx
from scheduler.usecases.rest import gather, unit, withdraw_all
from scheduler.usecases.wake import changing

LONGEST_SETTING = 100
"""Characters of a setting's text: it stands within sentences to clients."""
SHOWN = 20
"""Clients on one screen of buttons; the rest is reached by typing a name."""


def owned(tx: Tx, clinician: int, client_id: int) -> Client | None:
    """The client if this clinician is responsible for her, else `None`: said as if there were none (D3)."""
    person = tx.people.get(client_id)
    if person is None or person.role is not Role.CLIENT or person.clinician != clinician:
        return None
    return tx.people.client(client_id)


def caseload(tx: Tx, clinician: int, part: str = "") -> Reply:
    """The clinician's clients by name, those with open flags first; `part` narrows by name."""
    everyone = [p for p in tx.people.caseload(clinician) if part.casefold() in p.name.casefold()]
    rows = []
    for person in everyone:
        flags = tx.flags.of_client(person.id)
        rows.append(
            (not any(f.urgent for f in flags), not flags, person.name.casefold(), person, flags)
        )
    rows.sort(key=lambda row: row[:3])
    return reply(
        "caseload",
        count=len(rows),
        clients=[
            {"id": person.id, "name": person.name, "state": person.state.value, "flags": len(flags)}
            for *_, person, flags in rows[:SHOWN]
        ],
    )


def page(tx: Tx, clinician: int, client_id: int, now: datetime) -> Reply:
    """One client: where she stands, today, the plan, open flags, how to reach her."""
    client = owned(tx, clinician, client_id)
    person = tx.people.get(client_id)
    if client is None or person is None:
        return reply("not-yours")
    running = gather(tx, client, local_day(now, client.zone))
    clearance = tx.plans.clearance(client_id)
    version = tx.plans.latest(client_id)
    valid = clearance is not None and clearance.lapsed_at is None
    texts = [
        text(
            "client-page",
            client=client_id,
            name=person.name,
            state=person.state.value,
            phone=client.phone,
            ceiling=clearance.ceiling.name.lower() if clearance and valid else None,
            held=bool(tx.health.holds(client_id)),
            done=running.done,
            total=running.day.total if running.day else None,
            plan=version.version if version else None,
            **unit(version.plan if version else None),
        )
    ]
    if version:
        plan = version.plan
        texts.append(
            text(
                "client-plan",
                movement=plan.movement,
                total=plan.daily_total,
                bout_reps=plan.bout_reps,
                per_side=MOVEMENTS[plan.movement].per_side,
                days=list(plan.weekdays or client.days),
            )
        )
    texts += [
        text("client-flag", flag=flag.id, kind=flag.kind, since=wall(flag.opened_at, client.zone))
        for flag in tx.flags.of_client(client_id)
    ]
    return Reply(tuple(texts))


def readiness(tx: Tx, clinician: int, client_id: int) -> Reply:
    """The client's answers, with the choice of a ceiling below them (C1)."""
    client = owned(tx, clinician, client_id)
    person = tx.people.get(client_id)
    if client is None or person is None:
        return reply("not-yours")
    if client.readiness is None:
        return reply("clear-not-answered", name=person.name)
    return reply(
        "ask-ceiling",
        client=client_id,
        name=person.name,
        readiness=list(client.readiness),
        usual_pain=client.usual_pain,
    )


# --- flags ---------------------------------------------------------------------------------------


def ask_outcome(tx: Tx, clinician: int, flag_id: int) -> Reply:
    """Ask how a flag ended: it is closed with an outcome, never by being seen (H6)."""
    flag = tx.flags.get(flag_id)
    if flag is None or owned(tx, clinician, flag.client) is None:
        return reply("not-yours")
    if flag.closed_at is not None:
        return reply("flag-closed-before", flag=flag_id)
    return Reply((text("ask-outcome", flag=flag_id),), in_place=False)


def close_flag(
    tx: Tx, clinician: int, flag_id: int, outcome: str, now: datetime, note: str = ""
) -> Reply:
    """Close a flag with its outcome."""
    flag = tx.flags.get(flag_id)
    if flag is None or owned(tx, clinician, flag.client) is None or outcome not in OUTCOMES:
        return reply("not-yours")
    if not tx.flags.close(flag_id, outcome, clinician, note, now):
        return reply("flag-closed-before", flag=flag_id)
    tx.book.audit(clinician, "close-flag", flag.client, now, flag=flag_id, after=outcome)
    return reply("flag-closed", flag=flag_id, outcome=outcome, client=flag.client)


def ask_release(tx: Tx, clinician: int, client_id: int, now: datetime) -> Reply:
    """Ask at which dose to go on (H4)."""
    if owned(tx, clinician, client_id) is None:
        return reply("not-yours")
    version = tx.plans.latest(client_id)
    person = tx.people.get(client_id)
    if not tx.health.holds(client_id):
        return reply("release-nothing")
    if version is None:
        return reply("release-no-plan")
    tx.questions.ask(Question(clinician, "release", "dose", {"client": client_id}, asked_at=now))
    plan = version.plan
    return reply(
        "ask-release",
        client=client_id,
        name=person.name if person else "",
        total=plan.daily_total,
        bout_reps=plan.bout_reps,
        half=max(1, plan.daily_total // 2),
        movement=plan.movement,
        per_side=MOVEMENTS[plan.movement].per_side,
    )


# --- the practice --------------------------------------------------------------------------------


def settings(tx: Tx) -> Reply:
    """Every practice setting with its value, for an admin."""
    practice = tx.book.practice()
    values: list[Argument] = [{"name": n, "value": getattr(practice, n)} for n in NAMES]
    return reply("settings", settings=values)


def set_setting(tx: Tx, by: int, name: str, value: str, now: datetime) -> Reply:
    """Change one setting within its bounds."""
    practice = tx.book.practice()
    if name not in NAMES:
        return reply("setting-unknown", name=name)
    if name in BOUNDS:
        low, high = BOUNDS[name]
        if not value.strip().isdecimal() or not low <= int(value) <= high:
            return reply("setting-out-of-bounds", setting=name, low=low, high=high)
        after = from_rows({**_texts(practice), name: value})
        if after.pain_carry_on >= after.pain_hold:
            return reply("setting-pain-order", setting=name)
        value = str(int(value))
    if len(value) > LONGEST_SETTING:
        return reply("setting-too-long", setting=name, longest=LONGEST_SETTING)
    fault = _text_fault(name, value)
    if fault:
        return reply(fault, setting=name)
    tx.book.put(name, value)
    tx.questions.close(by, "setting")
    tx.book.audit(
        by, "setting", None, now, setting=name, before=str(getattr(practice, name)), after=value
    )
    return reply("setting-kept", setting=name, value=value)


def _texts(practice: Practice) -> dict[str, str]:
    return {name: str(getattr(practice, name)) for name in NAMES}


def _text_fault(name: str, value: str) -> str | None:
    try:
        if name == "zone":
            ZoneInfo(value)
        if name == "window":
            parse_span(value)
    except (ValueError, KeyError, OSError):
        return f"setting-bad-{name}"
    if name in {"phone", "emergency_number", "crisis_line"} and not any(c.isdigit() for c in value):
        return "setting-bad-number"
    return None


def people(tx: Tx) -> tuple[Person, ...]:
    """Everybody in the practice: id, role, name, state, clinician. No health data."""
    return tx.people.everyone()


def discharge(tx: Tx, by: int, client_id: int, now: datetime) -> Reply:
    """End a client's care here: everything stops, the record stays."""
    person = tx.people.get(client_id)
    if person is None or person.role is not Role.CLIENT:
        return reply("no-such-client")
    with changing(tx, client_id, now) as client:
        withdraw_all(tx, client, "discharged")
        tx.questions.close(client_id, "pain", "fall", "morning", "join", "fewer", "confirm")
        tx.people.save(replace(person, state=State.DISCHARGED))
        tx.book.audit(by, "discharge", client_id, now, before=person.state.value)
    return reply("discharged", name=person.name)


def act_as(tx: Tx, person: Person, role: Role) -> Reply:
    """The visible switch between the roles of one account."""
    mine = tx.people.of_account(person.account or 0)
    chosen = next((p for p in mine if p.role is role), None)
    if chosen is None:
        return reply("role-not-yours", roles=[p.role.value for p in mine])
    for each in mine:
        tx.people.save(replace(each, acting=each.id == chosen.id))
    return reply("acting-as", role=role.value)


def clients_waiting_for_clearance(tx: Tx, now: datetime, older: timedelta) -> tuple[Any, ...]:
    """Clients who are ready and wait for clearance longer than `older` (J6)."""
    return tuple(
        person
        for person in tx.people.everyone()
        if person.role is Role.CLIENT
        and person.state is State.READY
        and tx.plans.clearance(person.id) is None
        and (tx.people.client(person.id).joined_at or now) <= now - older
    )
