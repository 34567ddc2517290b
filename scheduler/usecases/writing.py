"""Words between a clinician and a client, and back (K5). The words are in no log and in no audit line."""

from __future__ import annotations

from datetime import datetime, timedelta

from scheduler.domain.messages import Lane, message
from scheduler.domain.people import Client, Person, Role, State
from scheduler.domain.reply import Reply, reply
from scheduler.ports import Question, Tx
from scheduler.usecases import caseload, cover, flags
from scheduler.usecases.post import tell
from scheduler.usecases.wake import changing

LONGEST = 500
"""Characters of one message: what a client reads on one screen."""
STANDS = timedelta(minutes=30)
"""So long after a button the next words are the message; later ones may mean something else again."""
THERE = frozenset({State.JOINING, State.READY})


# --- to a client ---------------------------------------------------------------------------------


def ask(tx: Tx, clinician: int, client_id: int, now: datetime) -> Reply:
    """Ask for the words, if they can reach her."""
    client = caseload.owned(tx, clinician, client_id, now, gone=True)
    person = tx.people.get(client_id)
    if client is None or person is None:
        return reply("not-yours")
    if refusal := _cannot(client, person):
        return refusal
    tx.questions.ask(Question(clinician, "write", "words", {"client": client_id}, asked_at=now))
    return Reply(message("ask-words", client=client_id, name=person.name), in_place=False)


def _cannot(client: Client, person: Person) -> Reply | None:
    """Why nothing can be written to her: she left, is not in the chat yet, or has blocked it (R4)."""
    there = person.state in THERE and person.account is not None and client.consent_at is not None
    if there and not person.blocked:
        return None
    words = message(
        "write-blocked" if there else "write-not-there",
        client=client.id,
        name=person.name,
        phone=client.phone,
    )
    return Reply(words, in_place=False)


def send(
    tx: Tx, clinician: Person, question: Question, said: str, source: str, now: datetime
) -> Reply:
    """Send her the words; `source` names the update they came in, so that they go once."""
    client_id = int(question.body["client"])
    client = caseload.owned(tx, clinician.id, client_id, now, gone=True)
    person = tx.people.get(client_id)
    if client is None or person is None:
        tx.questions.close(clinician.id, "write")
        return reply("not-yours")
    if len(said) > LONGEST:
        return reply("words-too-long", longest=LONGEST)
    tx.questions.close(clinician.id, "write")
    if refusal := _cannot(client, person):
        return refusal
    words = message(
        "from-clinician",
        name=clinician.name,
        writer=clinician.id,
        words=said,
        answer_hours=tx.book.practice().answer_hours,
    )
    tell(tx, client_id, f"from-clinician:{source}", Lane.ANSWER, words, now)
    tx.book.audit(clinician.id, "write", client_id, now)
    return reply("words-sent", client=client_id, name=person.name)


# --- and back ------------------------------------------------------------------------------------


def ask_reply(tx: Tx, client_id: int, writer: int, now: datetime) -> Reply:
    """Her next words are her answer; asked below the clinician's message, which stays as it is."""
    practice = tx.book.practice()
    with changing(tx, client_id, now) as client:
        reader = _reader(tx, client, writer, now)
        tx.questions.ask(Question(client_id, "reply", "words", {"to": writer}, asked_at=now))
    words = message(
        "ask-reply",
        clinician=reader.name if reader else "",
        answer_hours=practice.answer_hours,
        emergency_number=practice.emergency_number,
    )
    return Reply(words, in_place=False)


def awaited(tx: Tx, client_id: int, reply_to: int | None, now: datetime) -> int | None:
    """Whose message her words answer: the one she replies to in the chat, or where she tapped "Reply"."""
    shown = tx.outbox.said(client_id, reply_to) if reply_to is not None else ()
    for each in shown:
        if each.id == "from-clinician":
            return int(str(each.args["writer"]))
    if shown and shown[0].id != "ask-reply":
        return None  # her words are about that message
    for question in tx.questions.of(client_id):
        if question.kind == "reply" and question.asked_at is not None:
            return int(question.body["to"]) if now < question.asked_at + STANDS else None
    return None


def answer(tx: Tx, client_id: int, writer: int, said: str, source: str, now: datetime) -> Reply:
    """Pass her answer on: to her clinician, and to the colleague who wrote, while he covers."""
    with changing(tx, client_id, now) as client:
        tx.questions.close(client_id, "reply")
        person, reader = tx.people.get(client_id), _reader(tx, client, writer, now)
        words = message(
            "from-client",
            client=client_id,
            name=person.name if person else "",
            words=said[:LONGEST],
            phone=client.phone,
        )
        for each in _readers(tx, client, writer, now):
            tell(tx, each, f"from-client:{client_id}:{source}:{each}", Lane.FLAG, words, now)
        return reply("reply-sent", clinician=reader.name if reader else "")


def _reader(tx: Tx, client: Client, writer: int, now: datetime) -> Person | None:
    """Whose name she is told: the writer's while he may read it, else her clinician's."""
    hers = writer == client.clinician or cover.covers(tx, writer, client.clinician, now)
    person = tx.people.get(writer if hers else client.clinician)
    return person if person is not None and person.role is Role.CLINICIAN else None


def _readers(tx: Tx, client: Client, writer: int, now: datetime) -> set[int]:
    clinician = tx.people.get(client.clinician)
    readers = {client.clinician}
    if writer != client.clinician and cover.covers(tx, writer, client.clinician, now):
        readers.add(writer)
    if clinician is None or clinician.account is None or clinician.blocked:
        readers |= {each.id for each in flags.covering(tx, client.clinician, now)}
    return readers
