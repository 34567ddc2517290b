"""The open questions of a person: looked up, and asked again."""

from __future__ import annotations

from datetime import datetime, timedelta

from scheduler.domain.messages import Text, text
from scheduler.ports import Question, Tx

OF_HARM = frozenset({"pain", "fall"})
"""Kinds of questions that stop everything until they are answered."""


def open_question(tx: Tx, person: int, kind: str) -> Question | None:
    """The open question of a kind, if there is one."""
    return next((q for q in tx.questions.of(person) if q.kind == kind), None)


def standing(tx: Tx, person: int, kind: str, stands: timedelta, now: datetime) -> Question | None:
    """The open question of a kind that was asked less than `stands` ago: later, typed words mean another."""
    asked = open_question(tx, person, kind)
    recent = asked is not None and asked.asked_at is not None and now < asked.asked_at + stands
    return asked if recent else None


def about_harm(tx: Tx, person: int) -> Question | None:
    """The open question about pain or a fall, if there is one."""
    return next((q for q in tx.questions.of(person) if q.kind in OF_HARM), None)


def harm_again(tx: Tx, question: Question) -> Text:
    """An open question about pain or a fall once more."""
    number = tx.book.practice().emergency_number
    step = question.step.replace("_", "-")
    return text(f"ask-{question.kind}-{step}", emergency_number=number, first=False)
