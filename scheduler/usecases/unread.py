"""A client's update that could not be handled, and may have been about pain, a fall or a sign (H1, H6).

It is taken for the worst that it may have been: nothing more is asked of her, she is asked what is wrong, her
silence is a hold, and her clinician is told at once who it was.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta

from scheduler.domain.messages import Text, text
from scheduler.domain.people import Person, Role, State
from scheduler.domain.permission import STOPPING_QUESTIONS
from scheduler.ports import Question, Tx
from scheduler.usecases.flags import raise_flag
from scheduler.usecases.questions import about_harm, harm_again
from scheduler.usecases.rest import withdraw_all
from scheduler.usecases.wake import changing

KIND = "not-read"
"""Of the flag, and of the hold that follows from silence."""


@dataclass(frozen=True, slots=True)
class Unread:
    """What is known of an update that could not be handled.

    `chat` is the private chat in which somebody waits for an answer, `None` where nobody does. `alarm`: it
    may tell of pain, a fall or a sign, which is so too where it cannot be read at all. `typed`: it has words;
    `words` are hers if they could be read and tell of it.
    """

    chat: int | None
    alarm: bool = False
    typed: bool = False
    words: str = ""


def may_be_hurt(tx: Tx, people: tuple[Person, ...], update: Unread) -> int | None:
    """The client of an account who may have said that something hurts, the acting role first.

    Words in a clinician's role are no client's; words to an open question about pain are an answer to it.
    Before consent nothing about health is asked.
    """
    those = people[:1] if update.typed else people
    found = (each for each in those if each.role is Role.CLIENT and each.state is State.READY)
    client = next((each.id for each in found), None)
    if client is None or tx.people.client(client).consent_at is None:
        return None
    answers = update.typed and any(q.kind in STOPPING_QUESTIONS for q in tx.questions.of(client))
    return client if update.alarm or answers else None


def asks(tx: Tx, client_id: int) -> Text:
    """What she is asked: the question that is open about pain or a fall, or else whether there is a sign."""
    number = tx.book.practice().emergency_number
    question = about_harm(tx, client_id)
    if question is None:
        return text("ask-pain-sign", emergency_number=number, first=True)
    return harm_again(tx, question)


def pause(tx: Tx, client_id: int, update_id: int, words: str, now: datetime) -> None:
    """Take back every prompt, open the question, and put the urgent flag on its way.

    The same day's flag that is still open is enough, unless there are more of her own words.
    """
    with changing(tx, client_id, now) as client:
        withdraw_all(tx, client, "pain")
        if about_harm(tx, client_id) is None:
            expires = now + timedelta(minutes=tx.book.practice().question_minutes)
            body = {"words": words, "unread": True}
            tx.questions.ask(Question(client_id, "pain", "sign", body, now, expires))
        details = {"words": words} if words else {}
        flag = raise_flag(tx, client, KIND, now, urgent=True, details=details)
        if flag is None and words:
            episode = f"{KIND}:{update_id}"
            raise_flag(tx, client, KIND, now, urgent=True, details=details, episode=episode)
