"""From an invitation to ready (J1-J6): link, notice and consent, readiness, usual pain, times."""

from __future__ import annotations

import hashlib
import secrets
from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from scheduler.domain import readiness
from scheduler.domain.hours import Hours, Span, parse_span
from scheduler.domain.messages import Argument, Lane, Message, message, text
from scheduler.domain.people import NOTICE_VERSION, Client, Invitation, Person, Role, State
from scheduler.domain.plan import MOVEMENTS, check_plan
from scheduler.domain.reply import Reply, reply
from scheduler.domain.settings import Practice
from scheduler.domain.wall import wall
from scheduler.ports import Outgoing, Question, Tx
from scheduler.usecases.opening import begin_day
from scheduler.usecases.rest import gather, replan, today_of
from scheduler.usecases.wake import changing

CODE_BYTES = 24
"""192 random bits: an invitation cannot be guessed (J1 asks for 128)."""
GUESSES_AN_HOUR = 5
"""Wrong codes from one account after which the hour's next ones are not even looked up."""


def code_hash(code: str) -> str:
    """What is stored of an invitation code. The code has 192 bits, so a plain hash cannot be reversed."""
    return hashlib.sha256(code.encode()).hexdigest()


def enrol(
    tx: Tx, by: int | None, role: Role, name: str, language: str, clinician: int | None, now: datetime
) -> Person:  # fmt: skip
    """A new person in the practice, not yet joined. A client belongs to a clinician (ValueError if not)."""
    if role is Role.CLIENT and clinician is None:
        raise ValueError("a client needs a clinician")
    practice = tx.book.practice()
    person = Person(0, role, name, language, State.INVITED, clinician)
    client = None
    if role is Role.CLIENT and clinician is not None:
        client = Client(id=0, clinician=clinician, zone=ZoneInfo(practice.zone))
    kept = tx.people.add(person, client)
    tx.book.audit(by, "enrol", kept.id, now, after={"role": role.value})
    return kept


def invite(tx: Tx, by: int | None, person: int, now: datetime) -> str:
    """A fresh single-use code for a person; earlier unused ones end. Only its hash is kept."""
    days = tx.book.practice().invitation_days
    code = secrets.token_urlsafe(CODE_BYTES)
    tx.invitations.withdraw(person)
    tx.invitations.add(code_hash(code), Invitation(person, now + timedelta(days=days)))
    tx.book.audit(by, "invite", person, now)
    return code


def redeem(tx: Tx, account: int, code: str, now: datetime) -> tuple[Person | None, Reply]:
    """Join by a code, or move to a new account. Every wrong, used or expired code gets the same refusal."""
    refusal = reply("invitation-refused")
    if tx.invitations.guessed(account, now) > GUESSES_AN_HOUR:
        return None, refusal
    hashed = code_hash(code)
    invitation = tx.invitations.find(hashed)
    person = tx.people.get(invitation.person) if invitation else None
    if person is None or person.state in {State.LEFT, State.DISCHARGED}:
        return None, refusal
    others = tx.people.of_account(account)
    if any(other.role is person.role and other.id != person.id for other in others):
        return None, refusal
    if not tx.invitations.use(hashed, now):
        return None, refusal
    moved = _link(tx, person, account, others)
    tx.book.audit(person.id, "join", person.id, now)
    if moved.role is not Role.CLIENT:
        return moved, _welcome_staff(tx, moved)
    with changing(tx, moved.id, now) as client:
        return moved, _first_step(tx, moved, client, now)


def _link(tx: Tx, person: Person, account: int, others: tuple[Person, ...]) -> Person:
    for other in others:
        tx.people.save(replace(other, acting=False))
    state = person.state
    if state is State.INVITED:
        state = State.JOINING if person.role is Role.CLIENT else State.READY
    moved = replace(person, account=account, state=state, acting=True, blocked=False)
    tx.people.save(moved)
    return moved


def _welcome_staff(tx: Tx, person: Person) -> Reply:
    practice = tx.book.practice()
    ready = practice.callable
    texts = [text(f"welcome-{person.role.value}", name=person.name, practice=practice.name)]
    if not ready:
        texts.append(text("numbers-missing"))
    return Reply(tuple(texts))


def _first_step(tx: Tx, person: Person, client: Client, now: datetime) -> Reply:
    if person.state is State.READY and client.consent_version == NOTICE_VERSION:
        return reply("moved-over", name=person.name)
    return Reply(ask_consent(tx, client, now))


def ask_consent(tx: Tx, client: Client, now: datetime) -> Message:
    """Open the consent question; nothing about health is asked or sent before its answer (J2)."""
    tx.questions.ask(Question(client.id, "join", "consent", asked_at=now))
    return message("notice", **_practice_facts(tx, client))


def _practice_facts(tx: Tx, client: Client) -> dict[str, Argument]:
    practice = tx.book.practice()
    clinician = tx.people.get(client.clinician)
    return {
        "practice": practice.name,
        "phone": practice.phone,
        "emergency_number": practice.emergency_number,
        "clinician": clinician.name if clinician else "",
    }


def consent(tx: Tx, client_id: int, agreed: bool, now: datetime) -> Reply:
    """The answer to the notice. Without consent the chat stays quiet and nothing is asked."""
    with changing(tx, client_id, now) as client:
        if not agreed:
            return reply("consent-declined", **_practice_facts(tx, client))
        tx.people.save_client(replace(client, consent_version=NOTICE_VERSION, consent_at=now))
        tx.book.audit(client_id, "consent", client_id, now, after=NOTICE_VERSION)
        if client.joined_at is not None:
            tx.questions.close(client_id, "join")
            return reply("consent-kept")
        return _ask(tx, client_id, f"screen-{readiness.ORDER[0]}", {"yes": []}, now)


def _ask(tx: Tx, client_id: int, step: str, body: dict[str, Any], now: datetime) -> Reply:
    tx.questions.ask(Question(client_id, "join", step, body, asked_at=now))
    if step.startswith("which-"):
        screen = step.removeprefix("which-")
        return reply("ask-which", screen=screen, chosen=list(body["yes"]))
    if step == "times":
        return _times(tx, client_id)
    return reply(f"ask-{step}")


def readiness_answer(
    tx: Tx, client_id: int, question: Question, answer: str, now: datetime
) -> Reply:
    """One answer on a readiness screen: "none", "yes" (then which), a question's key, or "done"."""
    body = {"yes": list(question.body.get("yes", []))}
    kind, _, screen = question.step.partition("-")
    if kind == "screen" and answer == "yes":
        return _ask(tx, client_id, f"which-{screen}", body, now)
    if kind == "which" and answer in readiness.SCREENS[screen]:
        body["yes"] = sorted({*body["yes"]} ^ {answer})
        return _ask(tx, client_id, question.step, body, now)
    if kind == "which" and not {*body["yes"]} & {*readiness.SCREENS[screen]}:
        body["yes"].append(
            f"unsure-{screen}"
        )  # "yes or not sure" without saying which is still a yes
    following = readiness.next_screen(screen)
    return _ask(tx, client_id, f"screen-{following}" if following else "usual-pain", body, now)


def usual_pain(tx: Tx, client_id: int, question: Question, score: int, now: datetime) -> Reply:
    """The client's usual pain, 0 to 10; with it readiness is complete and goes to the clinician."""
    with changing(tx, client_id, now) as client:
        yes = tuple(question.body.get("yes", []))
        answered = replace(client, readiness=yes, readiness_at=now, usual_pain=score)
        tx.people.save_client(answered)
        if client.joined_at is None:
            return _ask(tx, client_id, "times", {}, now)
        tx.questions.close(client_id, "join")
        return reply("readiness-kept")


def _times(tx: Tx, client_id: int) -> Reply:
    client = tx.people.client(client_id)
    hours = client.hours or default_hours(tx, client_id, tx.book.practice())
    version = tx.plans.latest(client_id)
    return reply(
        "ask-times",
        zone=client.zone.key,
        **hours_args(hours),
        days=list(client.days) if version and not version.plan.weekdays else [],
        flexible=bool(version and not version.plan.weekdays),
    )


def hours_args(hours: Hours) -> dict[str, Argument]:
    """Window and quiet times as arguments: minutes of the day, `[[start, end], ...]`."""
    return {
        "window": [hours.window.start, hours.window.end],
        "quiet": [[each.start, each.end] for each in hours.quiet],
    }


def default_hours(tx: Tx, client_id: int, practice: Practice) -> Hours:
    """The plan's hours, else the practice's."""
    version = tx.plans.latest(client_id)
    return version.plan.hours if version else Hours(parse_span(practice.window), ())


def ask_time_field(tx: Tx, client_id: int, field: str, now: datetime) -> Reply:
    """Ask for the zone, the window or the quiet times; the screen of times follows the answer."""
    tx.questions.ask(Question(client_id, "join", f"times-{field}", asked_at=now))
    return reply(f"ask-times-{field}")


def again(tx: Tx, client_id: int, question: Question) -> Message:
    """The open step of joining once more."""
    step = question.step
    if step == "consent":
        return message("notice", **_practice_facts(tx, tx.people.client(client_id)))
    if step.startswith("which-"):
        chosen = list(question.body.get("yes", []))
        return message("ask-which", screen=step.removeprefix("which-"), chosen=chosen)
    return _times(tx, client_id).message if step == "times" else message(f"ask-{step}")


def change_times(tx: Tx, client_id: int, now: datetime) -> Reply:
    """The screen of times for somebody who has joined; before that, the open step of joining."""
    open_ = next((q for q in tx.questions.of(client_id) if q.kind == "join"), None)
    if tx.people.client(client_id).joined_at is None and open_ is not None:
        return Reply(again(tx, client_id, open_))
    tx.questions.ask(Question(client_id, "join", "times", asked_at=now))
    return _times(tx, client_id)


def set_time_answer(tx: Tx, client_id: int, field: str, value: object, now: datetime) -> Reply:
    """A zone, a window or quiet times as answered, made into the client's own hours."""
    if isinstance(value, ZoneInfo):
        return set_time_field(tx, client_id, field, value, now)
    client = tx.people.client(client_id)
    hours = client.hours or default_hours(tx, client_id, tx.book.practice())
    if isinstance(value, Span):
        return set_time_field(tx, client_id, field, replace(hours, window=value), now)
    if isinstance(value, tuple):
        return set_time_field(tx, client_id, field, replace(hours, quiet=value), now)
    return _times(tx, client_id)


def set_time_field(
    tx: Tx, client_id: int, field: str, value: ZoneInfo | Hours, now: datetime
) -> Reply:  # fmt: skip
    """Keep the client's own zone or hours, if the plan can still be carried out within them (C3)."""
    with changing(tx, client_id, now) as client:
        zone = value if isinstance(value, ZoneInfo) else client.zone
        hours = client.hours if isinstance(value, ZoneInfo) else value
        after = replace(client, zone=zone, hours=hours)
        version = tx.plans.latest(client_id)
        if version is not None:
            faults = check_plan(
                version.plan,
                client_hours=after.hours,
                zone=after.zone,
                ceiling=None,
                estimate_accepted=True,
                movement=MOVEMENTS[version.plan.movement],
            )
            if faults:
                return Reply((text("times-do-not-fit"), *_times(tx, client_id).message))
        tx.people.save_client(after)
        tx.book.audit(client_id, f"times-{field}", client_id, now)
        running = gather(tx, after, today_of(after, now))
        if running.day is not None:
            replan(tx, running, now)
        else:
            begin_day(tx, after, now)
    tx.questions.ask(Question(client_id, "join", "times", asked_at=now))
    return _times(tx, client_id)


def finish(tx: Tx, client_id: int, now: datetime) -> Reply:
    """ "Keep these times": the client is ready; the clinician is told and the client told what is next."""
    with changing(tx, client_id, now) as client:
        person = tx.people.get(client_id)
        if person is None or client.readiness is None:
            return reply("question-over")
        tx.questions.close(client_id, "join")
        first = client.joined_at is None
        if first:
            tx.people.save(replace(person, state=State.READY))
            tx.people.save_client(replace(client, joined_at=now))
            _tell_clinician(tx, client, person, now)
        begun = begin_day(tx, tx.people.client(client_id), now)
        clearance = tx.plans.clearance(client_id)
        if clearance is None:
            return reply("ready-waiting", **_practice_facts(tx, client))
        return reply("ready", today=begun is not None)


def _tell_clinician(tx: Tx, client: Client, person: Person, now: datetime) -> None:
    tx.outbox.add(
        Outgoing(
            key=f"joined:{client.id}",
            lane=Lane.REST,
            message=message(
                "client-ready",
                client=client.id,
                name=person.name,
                readiness=list(client.readiness or ()),
                usual_pain=client.usual_pain,
                at=wall(now, client.zone),
            ),
            person=client.clinician,
        ),
        now,
    )
