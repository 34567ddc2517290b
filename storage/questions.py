"""Open questions: one row a person and kind, gone when it is closed."""

from typing import Any

from sqlalchemy import Connection, Row, delete, select

from scheduler.ports import Question
from storage.engine import conflict_insert
from storage.memo import Memo
from storage.tables import QuestionRow, table

questions = table(QuestionRow)


class Questions:
    """What a person has not answered yet; `scheduler.ports.Questions` says what is promised."""

    def __init__(self, connection: Connection, memo: Memo) -> None:
        self._connection = connection
        self._memo = memo

    def ask(self, question: Question) -> None:
        self._memo.forget("questions", question.person)
        values = {
            "step": question.step,
            "body": dict(question.body),
            "asked_at": question.asked_at,
            "expires_at": question.expires_at,
            "message_id": question.message_id,
        }
        new = conflict_insert(self._connection, questions).values(
            person=question.person, kind=question.kind, **values
        )
        again = new.on_conflict_do_update(index_elements=["person", "kind"], set_=values)
        self._connection.execute(again)

    def of(self, person: int) -> tuple[Question, ...]:
        return self._memo.get(("questions", person), lambda: self._of(person))

    def _of(self, person: int) -> tuple[Question, ...]:
        query = (
            select(questions)
            .where(questions.c.person == person)
            .order_by(questions.c.asked_at.desc().nulls_last(), questions.c.kind)
        )
        return tuple(_question(row) for row in self._connection.execute(query))

    def close(self, person: int, *kinds: str) -> None:
        self._memo.forget("questions", person)
        answered = (questions.c.person == person, questions.c.kind.in_(kinds))
        self._connection.execute(delete(questions).where(*answered))


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
