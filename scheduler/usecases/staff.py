"""Setting up the practice in chat: who is in it, invitations, settings (A1). No health data pass here."""

from __future__ import annotations

from datetime import datetime

from scheduler.domain.leaving import GONE
from scheduler.domain.messages import Argument
from scheduler.domain.people import Person, Role, State
from scheduler.domain.reply import Reply, reply
from scheduler.domain.settings import BOUNDS, DECIMALS
from scheduler.ports import Question, Tx
from scheduler.usecases import join
from scheduler.usecases.pages import on_page, place
from scheduler.usecases.questions import open_question

LONGEST_NAME = 60


def ask_setting(tx: Tx, who: Person, name: str, now: datetime) -> Reply:
    """Ask for a setting's new value, showing the present one and its bounds."""
    tx.questions.close(who.id, "invite")
    tx.questions.ask(Question(who.id, "setting", name, asked_at=now))
    low, high = {**BOUNDS, **DECIMALS}.get(name, (None, None))
    present = getattr(tx.book.practice(), name)
    return reply("ask-setting", setting=name, value=str(present), low=low, high=high)


def people(tx: Tx, part: str = "", page: int = 0) -> Reply:
    """Everybody in the practice with role and state, page by page; `part` narrows by name."""
    wanted = part.casefold()
    rows: list[Argument] = [
        {"id": each.id, "name": each.name, "role": each.role.value, "state": each.state.value}
        for each in sorted(tx.people.everyone(), key=_order)
        if wanted in each.name.casefold()
    ]
    shown = on_page(rows, page)
    return reply("people", people=shown, count=len(rows), searched=bool(part), **place(rows, page))


def _order(person: Person) -> tuple[bool, bool, str, str]:
    """The few who work here, then the many clients, then who is gone; by role and name."""
    gone, client = person.state in GONE, person.role is Role.CLIENT
    return gone, client, person.role.value, person.name.casefold()


def person(tx: Tx, person_id: int) -> Reply:
    """One person: role, state, clinician."""
    found = tx.people.get(person_id)
    if found is None:
        return reply("no-such-person")
    clinician = tx.people.get(found.clinician) if found.clinician else None
    return reply(
        "person",
        person=found.id,
        name=found.name,
        role=found.role.value,
        state=found.state.value,
        clinician=clinician.name if clinician else None,
    )


def ask_client_name(tx: Tx, who: Person, now: datetime) -> Reply:
    """A clinician invites a client of her own."""
    tx.questions.ask(
        Question(who.id, "invite", "name", {"role": "client", "clinician": who.id}, asked_at=now)
    )
    return reply("ask-invite-name", role="client")


def ask_invite_name(tx: Tx, who: Person, role: Role, now: datetime) -> Reply:
    """An admin invites somebody: the name first, for a client then the clinician."""
    tx.questions.close(who.id, "setting")
    tx.questions.ask(Question(who.id, "invite", "name", {"role": role.value}, asked_at=now))
    return reply("ask-invite-name", role=role.value)


def invite_answer(tx: Tx, who: Person, question: Question, said: str, now: datetime) -> Reply:
    """The typed name of somebody to invite."""
    name = _name(said)
    role = Role(question.body["role"])
    if question.step != "name":
        return _ask_clinician(tx, who, str(question.body["name"]), now)
    if not 1 <= len(name) <= LONGEST_NAME:
        return reply("invite-name-length", longest=LONGEST_NAME)
    clinician = question.body.get("clinician")
    if role is Role.CLIENT and clinician is None:
        return _ask_clinician(tx, who, name, now)
    return _invite(tx, who, role, name, clinician, now)


def _name(said: str) -> str:
    """A name as typed, without what cannot be seen; empty where no letter or digit is left."""
    seen = "".join(c if c.isprintable() else " " for c in said)
    return " ".join(seen.split()) if any(c.isalnum() for c in seen) else ""


def _ask_clinician(tx: Tx, who: Person, name: str, now: datetime) -> Reply:
    clinicians: list[Argument] = [
        {"id": each.id, "name": each.name}
        for each in tx.people.everyone()
        if each.role is Role.CLINICIAN and each.state is not State.LEFT
    ]
    if not clinicians:
        tx.questions.close(who.id, "invite")
        return reply("invite-no-clinician")
    body = {"role": "client", "name": name}
    tx.questions.ask(Question(who.id, "invite", "clinician", body, asked_at=now))
    return reply("ask-invite-clinician", name=name, clinicians=clinicians)


def invite_for(tx: Tx, who: Person, clinician: int, now: datetime) -> Reply:
    """The clinician of a client to be invited has been tapped."""
    question = open_question(tx, who.id, "invite")
    chosen = tx.people.get(clinician)
    if question is None or question.step != "clinician":
        return reply("question-over")
    if chosen is None or chosen.role is not Role.CLINICIAN:
        return reply("no-such-person")
    return _invite(tx, who, Role.CLIENT, str(question.body["name"]), clinician, now)


def _invite(
    tx: Tx, who: Person, role: Role, name: str, clinician: int | None, now: datetime
) -> Reply:  # fmt: skip
    tx.questions.close(who.id, "invite")
    person = join.enrol(tx, who.id, role, name, who.language, clinician, now)
    return _link(tx, who, person, now)


def invite_again(tx: Tx, who: Person, person_id: int, now: datetime) -> Reply:
    """A fresh link: for a lost one, or to move somebody to a new phone or account (J1)."""
    found = tx.people.get(person_id)
    if found is None or found.state is State.DISCHARGED:
        return reply("no-such-person")
    return _link(tx, who, found, now)


def _link(tx: Tx, who: Person, person: Person, now: datetime) -> Reply:
    code = join.invite(tx, who.id, person.id, now)
    bot = tx.book.read("bot_username")
    link = f"https://t.me/{bot}?start={code}" if bot else f"/start {code}"
    return reply(
        "invitation",
        name=person.name,
        role=person.role.value,
        link=link,
        days=tx.book.practice().invitation_days,
    )


def ask_discharge(tx: Tx, person_id: int) -> Reply:
    """Ask once more before a client's care here ends."""
    found = tx.people.get(person_id)
    if found is None or found.role is not Role.CLIENT:
        return reply("no-such-person")
    return reply("ask-discharge", person=found.id, name=found.name)
