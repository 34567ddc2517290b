"""What was asked of a client last: a short answer is one to that."""

from __future__ import annotations

from scheduler.domain.days import BoutState
from scheduler.ports import Question, Tx


def asked_since(tx: Tx, question: Question) -> bool:
    """Whether anything else, a bout too, was asked of her since an open question."""
    if tx.questions.of(question.person)[0].kind != question.kind:
        return True
    return any(
        bout.state is BoutState.ASKED and bout.asked_at and bout.asked_at > question.asked_at
        for bout in tx.days.open_bouts(question.person)
        if question.asked_at is not None
    )


OF_A_WEEK = frozenset({"week", "make-up", "weekly"})


def latest_of_week(tx: Tx, person: int) -> Question | None:
    """The latest open question about a week or a day of it."""
    return next((each for each in tx.questions.of(person) if each.kind in OF_A_WEEK), None)


def week_asked_since(tx: Tx, question: Question) -> bool:
    """Whether she was asked about a week, or a day of it, since an open question."""
    latest = latest_of_week(tx, question.person)
    if latest is None or latest.asked_at is None or question.asked_at is None:
        return False
    return latest.asked_at > question.asked_at
