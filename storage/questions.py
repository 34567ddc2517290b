"""Open questions: one row a person and kind, gone when it is closed."""

from typing import Any

from sqlalchemy import Connection, Row, bindparam, delete, select

from scheduler.ports import Question
from storage.conflicts import replacing
from storage.memo import Memo
from storage.tables import QuestionRow, table

questions = table(QuestionRow)

OF_PERSON = (
    select(questions)
    .where(questions.c.person == bindparam("person"))
    .order_by(questions.c.asked_at.desc().nulls_last(), questions.c.kind)
)
ASK = replacing(questions)
CLOSE = delete(questions).where(
    questions.c.person == bindparam("person"),
    questions.c.kind.in_(bindparam("kinds", expanding=True)),
)


class Questions:
    """What a person has not answered yet; `scheduler.ports.Questions` says what is promised."""

    def __init__(self, connection: Connection, memo: Memo) -> None:
        self._connection = connection
        self._memo = memo

    def ask(self, question: Question) -> None:
        self._memo.forget("questions", question.person)
        row = {
            "person": question.person,
            "kind": question.kind,
            "step": question.step,
            "body": dict(question.body),
            "asked_at": question.asked_at,
            "expires_at": question.expires_at,
            "message_id": question.message_id,
        }
        self._connection.execute(ASK[self._connection.dialect.name], row)

    def of(self, person: int) -> tuple[Question, ...]:
        return self._memo.get(("questions", person), lambda: self._of(person))

    def _of(self, person: int) -> tuple[Question, ...]:
        found = self._connection.execute(OF_PERSON, {"person": person})
        return tuple(_question(row) for row in found)

    def close(self, person: int, *kinds: str) -> None:
        known: tuple[Question, ...] | None = self._memo.known("questions", person)
        if known is not None and not any(each.kind in kinds for each in known):
            return  # mostly there is none
        self._memo.forget("questions", person)
        self._connection.execute(CLOSE, {"person": person, "kinds": kinds})


def _question(row: Row[Any]) -> Question:
    return Question(
        person=row.person,
        kind=row.kind,
        step=row.step,
        body=row.body,
        asked_at=row.asked_at,
        expires_at=row.expires_at,
        message_id=row.message_id,
    )
