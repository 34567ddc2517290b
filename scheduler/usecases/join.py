"""From an invitation to ready (J1-J6): link, notice and consent, readiness, usual pain, times."""

from __future__ import annotations

import hashlib
import secrets
from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from scheduler.domain import readiness
from scheduler.domain.messages import Argument, Lane, Message, message, text
from scheduler.domain.people import NOTICE_VERSION, Client, Invitation, Person, Role, State
from scheduler.domain.reply import Reply, reply
from scheduler.domain.wall import wall
from scheduler.ports import Question, Tx
from scheduler.usecases import digests, lapses, leaving, moments, notes, reachable, times
from scheduler.usecases.opening import begin_day, still_stands, told_to_wait
from scheduler.usecases.post import tell
from scheduler.usecases.questions import open_question
from scheduler.usecases.rest import today_of
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
    if person is None or person.state is State.DISCHARGED:
        return None, refusal
    others = tx.people.of_account(account)
    if any(other.role is person.role and other.id != person.id for other in others):
        return None, refusal
    if not tx.invitations.use(hashed, now):
        return None, refusal
    moved = _link(tx, person, account, others)
    reachable.take_along(tx, person.account, account)
    if person.state is State.LEFT:
        leaving.come_back(tx, person.id, now)
    tx.book.audit(person.id, "join", person.id, now)
    if moved.role is Role.CLINICIAN:
        digests.schedule(tx, moved.id, now)
    if moved.role is not Role.CLIENT:
        return moved, _welcome_staff(tx, moved)
    with changing(tx, moved.id, now) as client:
        return moved, _first_step(tx, moved, client, now)


def _link(tx: Tx, person: Person, account: int, others: tuple[Person, ...]) -> Person:
    for other in others:
        tx.people.save(replace(other, acting=False))
    state = person.state
    if state in {State.INVITED, State.LEFT}:
        state = State.JOINING if person.role is Role.CLIENT else State.READY
    moved = replace(person, account=account, state=state, acting=True, blocked=False)
    tx.people.save(moved)
    return moved


def _welcome_staff(tx: Tx, person: Person) -> Reply:
    practice = tx.book.practice()
    texts = [text(f"welcome-{person.role.value}", name=person.name, practice=practice.name)]
    if not practice.callable:
        texts.append(text("numbers-missing"))
    return Reply(tuple(texts))


def _first_step(tx: Tx, person: Person, client: Client, now: datetime) -> Reply:
    if person.state is State.READY and client.consent_version == NOTICE_VERSION:
        return Reply((text("moved-over", name=person.name), *still_stands(tx, client, now)))
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
    """The answer to the notice. Without consent nothing is asked; of who has joined the record stays."""
    with changing(tx, client_id, now) as client:
        if not agreed:
            facts = _practice_facts(tx, client)
            if client.joined_at is None:
                return reply("consent-declined", **facts)
            numbers = {key: facts[key] for key in ("phone", "emergency_number")}
            return reply("consent-not-renewed", **numbers)
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
        return times.screen(tx, client_id)
    return reply(f"ask-{step}")


def readiness_answer(
    tx: Tx, client_id: int, question: Question, answer: str, now: datetime
) -> Reply:
    """One answer on a readiness screen: "none", "yes" (then which), a question's key, or "done"."""
    body = {"yes": list(question.body.get("yes", []))}
    kind, _, screen = question.step.partition("-")
    ticked = {answer} & {*readiness.SCREENS[screen]}  # under an older screen too: it is a yes
    if ticked or (kind == "screen" and answer == "yes"):
        body["yes"] = sorted({*body["yes"]} | ticked)
        return _ask(tx, client_id, f"which-{screen}", body, now)
    if kind == "which" and not {*body["yes"]} & {*readiness.SCREENS[screen]}:
        body["yes"].append(f"unsure-{screen}")  # "not sure" without saying which is still a yes
    following = readiness.next_screen(screen)
    told = _new_yes(tx, client_id, body["yes"], now)
    asked = _ask(tx, client_id, f"screen-{following}" if following else "usual-pain", body, now)
    return replace(asked, message=(*told, *asked.message))


def take_out(tx: Tx, client_id: int, question: Question, key: str, now: datetime) -> Reply:
    """One that was ticked on a screen of readiness is no yes after all."""
    yes = [each for each in question.body["yes"] if each != key]
    return _ask(tx, client_id, question.step, {"yes": yes}, now)


def _new_yes(tx: Tx, client_id: int, yes: list[str], now: datetime) -> Message:
    """A new "yes" of somebody who has joined ends her clearance at once, even if she stops here (C2)."""
    with changing(tx, client_id, now) as client:
        if client.joined_at is None:
            return ()
        told = lapses.answered_again(tx, client, yes, now)
        known = tuple(sorted({*(client.readiness or ()), *yes}))
        tx.people.save_client(replace(tx.people.client(client_id), readiness=known))
        return told


def health_again(tx: Tx, client_id: int, now: datetime) -> Reply:
    """The readiness questions once more, for somebody whose health has changed (C2)."""
    open_ = open_question(tx, client_id, "join")
    if tx.people.client(client_id).joined_at is None and open_ is not None:
        return Reply(again(tx, client_id, open_))
    return _ask(tx, client_id, f"screen-{readiness.ORDER[0]}", {"yes": []}, now)


def usual_pain(tx: Tx, client_id: int, question: Question, score: int, now: datetime) -> Reply:
    """The client's usual pain, 0 to 10; with it readiness is complete and goes to the clinician."""
    with changing(tx, client_id, now) as client:
        yes = tuple(question.body.get("yes", []))
        tx.people.save_client(replace(client, readiness=yes, readiness_at=now, usual_pain=score))
        if client.joined_at is None:
            return _ask(tx, client_id, "times", {}, now)
        tx.questions.close(client_id, "join")
        return reply("readiness-kept")


def again(tx: Tx, client_id: int, question: Question) -> Message:
    """The open step of joining once more."""
    step = question.step
    if step == "consent":
        return message("notice", **_practice_facts(tx, tx.people.client(client_id)))
    if step.startswith("which-"):
        chosen = list(question.body.get("yes", []))
        return message("ask-which", screen=step.removeprefix("which-"), chosen=chosen)
    if step in {"times", "times-sure", "times-days"}:
        return times.again(tx, client_id, question)
    return message(f"ask-{step}")


def change_times(tx: Tx, client_id: int, now: datetime) -> Reply:
    """The screen of times for somebody who has joined; before that, the open step of joining."""
    open_ = open_question(tx, client_id, "join")
    if tx.people.client(client_id).joined_at is None and open_ is not None:
        return Reply(again(tx, client_id, open_))
    tx.questions.ask(Question(client_id, "join", "times", asked_at=now))
    return times.screen(tx, client_id)


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
        after = tx.people.client(client_id)
        begun = begin_day(tx, after, now)
        cleared = lapses.valid_clearance(tx, client_id) if first else tx.plans.clearance(client_id)
        if cleared is None:
            return reply("ready-waiting", **_practice_facts(tx, client))
        if wait := told_to_wait(tx, after, now):
            return Reply((wait,))
        if begun is not None and not first:  # her day goes on, and its next time may have moved
            return notes.today(tx, client_id, now)
        return reply("ready", today=begun is not None)


def remind_of_clearance(tx: Tx, client: Client, now: datetime) -> None:
    """Remind the clinician once of a client who has waited for clearance for 2 days (setting; J6)."""
    person = tx.people.get(client.id)
    if person is None or person.state is not State.READY or not waited(tx, client, now):
        return
    before = tx.plans.clearance(client.id)  # one from before she left is none
    if before is None or (client.joined_at is not None and before.at < client.joined_at):
        words = message("clearance-waits", client=client.id, name=person.name)
        key = f"clearance-reminder:{client.id}" + (f":{client.joined_at}" if before else "")
        tell(tx, client.clinician, key, Lane.REST, words, now)


def waited(tx: Tx, client: Client, now: datetime) -> bool:
    """Whether the time to record clearance since joining is over."""
    days = tx.book.practice().clearance_reminder_days
    return client.joined_at is not None and now >= client.joined_at + timedelta(days=days)


def ask_consent_again(tx: Tx, client: Client, now: datetime) -> None:
    """A changed notice asks everybody again, once; until the answer nothing is asked for (J2).

    In her hours, not at midnight; at once where no plan gives her any.
    """
    if client.consent_version in {None, NOTICE_VERSION}:
        return
    if tx.plans.on(client.id, today_of(client, now)) and not moments.in_hours(tx, client, now):
        return
    if any(question.kind == "join" for question in tx.questions.of(client.id)):
        return
    key = f"notice:{client.id}:{NOTICE_VERSION}"
    tell(tx, client.id, key, Lane.REST, ask_consent(tx, client, now), now)


def _tell_clinician(tx: Tx, client: Client, person: Person, now: datetime) -> None:
    words = message(
        "client-ready", client=client.id, name=person.name, readiness=list(client.readiness or ()),
        usual_pain=client.usual_pain, at=wall(now, client.zone),
    )  # fmt: skip
    tell(tx, client.clinician, f"joined:{client.id}:{now.isoformat()}", Lane.REST, words, now)
