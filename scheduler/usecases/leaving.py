"""A client who leaves: the record is closed at once, everything stops, and she can come back (D1)."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any

from scheduler.domain.hours import local_day
from scheduler.domain.leaving import ERASED_AFTER, GONE
from scheduler.domain.messages import Argument
from scheduler.domain.people import Client, Person, State
from scheduler.domain.permission import STOPPING_QUESTIONS
from scheduler.domain.reply import Reply, reply
from scheduler.ports import Question, Tx
from scheduler.usecases.flags import raise_flag
from scheduler.usecases.lapses import valid_clearance
from scheduler.usecases.names import clinician_name
from scheduler.usecases.questions import standing
from scheduler.usecases.rest import withdraw_all
from scheduler.usecases.wake import changing

STANDS = timedelta(minutes=30)
"""So long a typed yes or no answers the question whether to leave."""
ASKED = (
    *sorted(STOPPING_QUESTIONS),
    *("join", "fewer", "confirm", "pass", "reply", "leave", "steptest"),
    *("break", "week", "make-up", "weekly", "companion"),
)
"""Questions to a client; none of them is asked of one who is gone."""


# --- asked twice ---------------------------------------------------------------------------------


def ask(tx: Tx, client_id: int, now: datetime) -> Reply:
    """What leaving means; nothing has changed yet."""
    with changing(tx, client_id, now) as client:
        tx.questions.ask(Question(client_id, "leave", "ask", {}, now))
        return Reply(reply("ask-leave", **_facts(tx, client)).message, in_place=False)


def _facts(tx: Tx, client: Client) -> dict[str, Argument]:
    return {
        "clinician": clinician_name(tx, client),
        "erased": tx.book.practice().erase_left == "yes",
        "days": ERASED_AFTER.days,
    }


def answer(tx: Tx, client_id: int, yes: bool, step: str, now: datetime) -> Reply:
    """A tap or a word under one of the two screens; the second yes is the end."""
    with changing(tx, client_id, now) as client:
        question = open_question(tx, client_id, now)
        if question is not None and question.step == "sure" and step == "ask" and yes:
            return reply("ask-leave-sure")  # a double tap under the first screen
        if question is None or question.step != step:
            return reply("question-over")
        if not yes:
            tx.questions.close(client_id, "leave")
            return reply("leave-not")
        if step == "ask":
            tx.questions.ask(Question(client_id, "leave", "sure", {}, now))
            return reply("ask-leave-sure")
        return _leave(tx, client, now)


def open_question(tx: Tx, client_id: int, now: datetime) -> Question | None:
    """The open question whether to leave, while it stands."""
    return standing(tx, client_id, "leave", STANDS, now)


def _leave(tx: Tx, client: Client, now: datetime) -> Reply:
    """Close the record. An open question about pain or a fall, or a hold, makes the flag an urgent one."""
    person = tx.people.get(client.id)
    if person is None or person.state in GONE:
        return reply("question-over")
    open_ = [each for each in tx.questions.of(client.id) if each.kind in STOPPING_QUESTIONS]
    urgent = bool(open_ or tx.health.holds(client.id))
    details = _left_open(tx, client, State.LEFT, now)
    close(tx, client, person, State.LEFT)
    tx.people.save_client(replace(tx.people.client(client.id), left_at=now))
    tx.book.audit(client.id, "leave", client.id, now, before=person.state.value)
    raise_flag(tx, client, "left", now, urgent=urgent, details=details, episode="left")
    practice = tx.book.practice()
    return reply(
        "left",
        phone=practice.phone,
        emergency_number=practice.emergency_number,
        **_facts(tx, client),
    )


def _left_open(tx: Tx, client: Client, state: State, now: datetime) -> dict[str, Any]:
    """What she said of pain or a fall is kept and told, in her own words too, though nobody asks on (H3)."""
    details: dict[str, Any] = {}
    for question in tx.questions.of(client.id):
        if question.kind not in {"pain", "fall"}:
            continue
        body = {key: value for key, value in question.body.items() if key != "unread"}
        body["unanswered"] = question.step
        day = local_day(now, client.zone)
        tx.health.report(client.id, question.kind, day, now, {**body, "outcome": state.value})
        words = (body.get("words"), details.get("words"))
        details = {**body, **details, "words": " / ".join(each for each in words if each)}
    return {key: value for key, value in details.items() if value not in (None, "")}


def discharge(tx: Tx, client: Client, person: Person, now: datetime) -> None:
    """Her care here ends. Her clinician is told at once of a question about pain or a fall that was open."""
    details = _left_open(tx, client, State.DISCHARGED, now)
    close(tx, client, person, State.DISCHARGED)
    if details:
        raise_flag(tx, client, "question-open", now, urgent=True, details=details)


def close(tx: Tx, client: Client, person: Person, state: State) -> None:
    """Nothing more is asked of or sent to a client; her other roles on the account speak from now on."""
    withdraw_all(tx, client, state.value)
    tx.outbox.cancel_rest(client.id, state.value)
    tx.questions.close(client.id, *ASKED)
    tx.invitations.withdraw(client.id)
    tx.people.save_client(replace(tx.people.client(client.id), morning_at=None))
    others = [
        each
        for each in tx.people.of_account(person.account or 0)
        if each.id != person.id and each.state not in GONE
    ]
    hand_over = person.acting and bool(others)
    tx.people.save(replace(person, state=state, acting=person.acting and not hand_over))
    if hand_over:
        tx.people.save(replace(others[0], acting=True))


# --- and back ------------------------------------------------------------------------------------


def come_back(tx: Tx, client_id: int, now: datetime) -> None:
    """Somebody who left joins by a new invitation: consent, readiness and clearance begin anew."""
    with changing(tx, client_id, now) as client:
        if valid_clearance(tx, client_id) is not None:
            tx.plans.lapse(client_id, "readiness", now)
        anew = replace(
            client, consent_version=None, consent_at=None, readiness=None, readiness_at=None,
            joined_at=None, left_at=None, step_home=False,
        )  # fmt: skip
        tx.people.save_client(anew)
        for flag in tx.flags.of_client(client_id):
            if flag.kind == "left":
                tx.flags.close(flag.id, "back", client_id, "", now)
