"""Closing a flag: with an outcome, never by being seen (H6)."""

from __future__ import annotations

from datetime import datetime

from scheduler.domain.flags import OUTCOMES, Flag
from scheduler.domain.messages import text
from scheduler.domain.reply import Reply, reply
from scheduler.ports import Question, Tx
from scheduler.usecases.caseload import owned

NOTE = "note"
"""The outcome that is told in words of the clinician's own."""
LONGEST_NOTE = 500


def ask_outcome(tx: Tx, clinician: int, flag_id: int, now: datetime) -> Reply:
    """Ask how a flag ended."""
    flag = _hers(tx, clinician, flag_id, now)
    if flag is None:
        return reply("not-yours")
    if flag.closed_at is not None:
        return reply("flag-closed-before", flag=flag_id)
    return Reply((text("ask-outcome", flag=flag_id),), in_place=False)


def choose(tx: Tx, clinician: int, flag_id: int, outcome: str, now: datetime) -> Reply:
    """Close a flag with its outcome; a note asks for its words before."""
    flag = _hers(tx, clinician, flag_id, now)
    if flag is None or outcome not in OUTCOMES:
        return reply("not-yours")
    if flag.closed_at is not None:
        return reply("flag-closed-before", flag=flag_id)
    if outcome == NOTE:
        tx.questions.ask(Question(clinician, NOTE, "words", {"flag": flag_id}, asked_at=now))
        return reply("ask-flag-note", flag=flag_id)
    return _close(tx, clinician, flag, outcome, "", now)


def note(tx: Tx, clinician: int, question: Question, said: str, now: datetime) -> Reply:
    """The words of a note: kept with the flag for the practice, never sent to the client."""
    flag = _hers(tx, clinician, int(question.body["flag"]), now)
    if flag is None:
        tx.questions.close(clinician, NOTE)
        return reply("not-yours")
    if len(said) > LONGEST_NOTE:
        return reply("words-too-long", longest=LONGEST_NOTE)
    return _close(tx, clinician, flag, NOTE, said, now)


def _hers(tx: Tx, clinician: int, flag_id: int, now: datetime) -> Flag | None:
    flag = tx.flags.get(flag_id)
    if flag is None or owned(tx, clinician, flag.client, now, gone=True) is None:
        return None
    return flag


def _close(tx: Tx, clinician: int, flag: Flag, outcome: str, words: str, now: datetime) -> Reply:
    tx.questions.close(clinician, NOTE)
    if not tx.flags.close(flag.id, outcome, clinician, words, now):
        return reply("flag-closed-before", flag=flag.id)
    tx.book.audit(clinician, "close-flag", flag.client, now, flag=flag.id, after=outcome)
    return reply("flag-closed", flag=flag.id, outcome=outcome, client=flag.client)
