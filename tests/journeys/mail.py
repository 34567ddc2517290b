"""Everything that leaves a desk, and whether its reader may know of whom it speaks (I9)."""

from __future__ import annotations

import json
import re
from typing import Any

from sqlalchemy import select

from scheduler.domain.messages import Message, as_json
from scheduler.ports import Letter, Tx
from storage.tables import AuditRow, table
from tests.journeys.desk import Desk

Mail = list[tuple[int, Message]]


def mail_of(desk: Desk) -> Mail:
    """Chats and messages in the order in which they leave from now on, edits included."""
    sent: Mail = []

    async def note(letter: Letter) -> None:
        sent.append((letter.chat, letter.message))

    desk.sender.before = note
    return sent


def names_read(mail: Mail, who: int, names: set[str]) -> set[str]:
    """Which of these names stand in what a person was sent."""
    words = " ".join(json.dumps(as_json(said)) for chat, said in mail if chat == who)
    return {name for name in names if re.search(rf"\b{name}\b", words)}


async def trail(desk: Desk, *actions: str) -> list[tuple[int | None, str, int | None, Any]]:
    """The lines of the audit trail with these actions: who, action, about whom, what changed."""

    def read(tx: Tx) -> list[tuple[int | None, str, int | None, Any]]:
        rows, book = table(AuditRow), tx.book
        connection: Any = book._connection  # type: ignore[attr-defined]
        query = select(rows).where(rows.c.action.in_(actions)).order_by(rows.c.id)
        return [(r.who, r.action, r.about, r.change) for r in connection.execute(query)]

    return await desk.run(read)
