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
