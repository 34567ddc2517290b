"""What a clinician sees of people: her caseload, one client (K1); how care ends; the switch of roles."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from datetime import datetime, timedelta

from scheduler.domain.flags import Flag
from scheduler.domain.hours import local_day
from scheduler.domain.leaving import GONE
from scheduler.domain.messages import Argument, Text, text
from scheduler.domain.people import Client, Person, Role
from scheduler.domain.plan import MOVEMENTS, Plan
from scheduler.domain.reply import Reply, reply
from scheduler.domain.wall import wall
from scheduler.domain.weekdays import WEEK
from scheduler.ports import ClientWeek, PlanVersion, Question, Tx
from scheduler.usecases import cover, digests, drafts, figures, leaving, stepcare
from scheduler.usecases.pages import on_page, place
from scheduler.usecases.rest import gather, on_break, today_of, unit
from scheduler.usecases.wake import changing
from scheduler.usecases.weekplan import start_of

PAIN_DAYS = timedelta(days=13)
"""How far back a client's page goes with pain: 14 days with today."""


def owned(
    tx: Tx, clinician: int, client_id: int, now: datetime, *, gone: bool = False
) -> Client | None:
    """The client if this clinician is responsible for her, else `None`: said as if there were none (D3).

    A colleague who covers her clinician today is; the first time a day is audited. A client who left or
    was discharged is there only to be looked at, and to close her flags: with `gone`.
    """
    person = tx.people.get(client_id)
    if person is None or person.role is not Role.CLIENT or person.clinician is None:
        return None
    if person.state in GONE and not gone:
        return None
    if person.clinician != clinician:
        if not cover.covers(tx, clinician, person.clinician, now):
            return None
        cover.looked(tx, clinician, client_id, now)
    return tx.people.client(client_id)


# --- the list ------------------------------------------------------------------------------------


def caseload(tx: Tx, clinician: int, now: datetime, part: str = "", page: int = 0) -> Reply:
    """Her clients, those who need her first, then those whom she covers; `part` narrows by name."""
    whose = {clinician: ""} | cover.covered(tx, clinician, now)
    rows = [row for each, name in whose.items() for row in _clients(tx, each, name, part, now)]
    return reply(
        "caseload",
        count=len(rows),
        need=sum(bool(row["reasons"]) for row in rows),
        searched=bool(part),
        clients=on_page(rows, page),
        **place(rows, page),
    )


def _clients(
    tx: Tx, clinician: int, whose: str, part: str, now: datetime
) -> list[Mapping[str, Argument]]:
    """One clinician's clients in the order in which they need her, whatever their number in a few queries."""
    wanted = part.casefold()
    these = [p.id for p in tx.people.caseload(clinician) if wanted in p.name.casefold()]
    today = local_day(now, cover.practice_zone(tx))
    weeks = tx.weeks.of_clients(these, today - timedelta(days=WEEK - 1), today)
    return [_row(each, whose) for each in sorted(weeks, key=_need)]


def _need(of: ClientWeek) -> tuple[int, str, int]:
    """Urgent open flags, a hold, other flags and reasons, none; then by name."""
    held = any(hold.released_at is None for hold in of.holds)
    place = 0 if any(f.urgent for f in of.flags) else 1 if held else 2 if _reasons(of) else 3
    return place, of.person.name.casefold(), of.person.id


def _reasons(of: ClientWeek) -> list[Argument]:
    return [*figures.reasons(of)]


def _row(of: ClientWeek, whose: str) -> Mapping[str, Argument]:
    return {
        "id": of.person.id,
        "name": of.person.name,
        "state": of.person.state.value,
        "flags": len(of.flags),
        "reasons": _reasons(of),
        "whose": whose,
    }


# --- one client ----------------------------------------------------------------------------------


def page(tx: Tx, clinician: int, client_id: int, now: datetime) -> Reply:
    """One client: where she stands, how to reach her, open flags, plan, week, pain, last contact."""
    client = owned(tx, clinician, client_id, now, gone=True)
    person = tx.people.get(client_id)
    if client is None or person is None:
        return reply("not-yours")
    version = tx.plans.latest(client_id)
    flags = tuple(sorted(tx.flags.of_client(client_id), key=lambda flag: not flag.urgent))
    return Reply((*_page(tx, client, person, version, flags, now),))


def _page(
    tx: Tx,
    client: Client,
    person: Person,
    version: PlanVersion | None,
    flags: tuple[Flag, ...],
    now: datetime,
) -> Iterator[Text]:
    """What needs her comes first: whether all is stopped, then the open flags."""
    yield _head(tx, client, person, version, flags, now)
    yield from (_flag(each, client) for each in flags)
    if pause := on_break(tx, client.id, today_of(client, now)):
        yield text("client-break", away=pause.reason, until=str(pause.last) if pause.last else None)
    if version:
        yield _plan(version.plan, client)
        start = start_of(tx, today_of(client, now))
        week = [digests.row(each) for each in figures.lines(tx, [client.id], start, now)]
        yield text("client-week", digest_rows=week)
    yield _pain(tx, client, now)
    if tested := stepcare.summary(tx, client):
        yield tested
    heard = wall(client.heard_at, client.zone) if client.heard_at else None
    yield text("client-heard", since=heard, zone=client.zone.key)


def _flag(flag: Flag, client: Client) -> Text:
    return text(
        "client-flag",
        flag=flag.id,
        kind=flag.kind,
        urgent=flag.urgent,
        since=wall(flag.opened_at, client.zone),
        words=flag.details.get("words", ""),
    )


def _plan(plan: Plan, client: Client) -> Text:
    return text(
        "client-plan",
        movement=plan.movement,
        total=plan.daily_total,
        bout_reps=plan.bout_reps,
        per_side=MOVEMENTS[plan.movement].per_side,
        days=list(plan.weekdays or client.days),
        beside=drafts.beside(plan),
    )


def _pain(tx: Tx, client: Client, now: datetime) -> Text:
    since = today_of(client, now) - PAIN_DAYS
    scores: list[Argument] = [
        {"day": day.isoformat(), "score": body["score"]}
        for _, day, _, body in tx.health.reports(client.id, since)
        if isinstance(body.get("score"), int)
    ]
    return text("client-pain", scores=scores)


def _head(
    tx: Tx,
    client: Client,
    person: Person,
    version: PlanVersion | None,
    flags: tuple[Flag, ...],
    now: datetime,
) -> Text:
    running = gather(tx, client, local_day(now, client.zone))
    clearance = tx.plans.clearance(client.id)
    valid = clearance is not None and clearance.lapsed_at is None
    return text(
        "client-page",
        client=client.id,
        name=person.name,
        state=person.state.value,
        phone=client.phone,
        ceiling=clearance.ceiling.name.lower() if clearance and valid else None,
        held=bool(tx.health.holds(client.id)),
        paused=on_break(tx, client.id, running.today) is not None,
        done=running.done,
        total=running.day.total if running.day else None,
        plan=version.version if version else None,
        open_flags=[flag.id for flag in flags],
        **unit(version.plan if version else None),
    )


def readiness(tx: Tx, clinician: int, client_id: int, now: datetime) -> Reply:
    """The client's answers, with the choice of a ceiling below them (C1)."""
    client = owned(tx, clinician, client_id, now)
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


def ask_release(tx: Tx, clinician: int, client_id: int, now: datetime) -> Reply:
    """Ask at which dose to go on (H4)."""
    if owned(tx, clinician, client_id, now) is None:
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


# --- people --------------------------------------------------------------------------------------


def discharge(tx: Tx, by: int, client_id: int, now: datetime) -> Reply:
    """End a client's care here: everything stops, the record stays. Once it has ended nothing changes."""
    person = tx.people.get(client_id)
    if person is None or person.role is not Role.CLIENT:
        return reply("no-such-client")
    with changing(tx, client_id, now) as client:
        person = tx.people.get(client_id) or person  # as it is now that the row is held
        if person.state not in GONE:
            leaving.discharge(tx, client, person, now)
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
