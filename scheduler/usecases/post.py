"""Putting a message on its way, in the transaction of the fact that causes it (R2)."""

from __future__ import annotations

from datetime import datetime

from scheduler.domain.messages import Lane, Message
from scheduler.domain.people import Role
from scheduler.ports import Outgoing, Tx


def tell(tx: Tx, person: int, key: str, lane: Lane, message: Message, now: datetime) -> None:
    """Put a message to a person into the outbox; the same `key` again changes nothing."""
    tx.outbox.add(Outgoing(key=key, lane=lane, message=message, person=person), now)


def tell_admins(
    tx: Tx, key: str, lane: Lane, message: Message, now: datetime, but: int | None = None
) -> None:
    """The same to every admin who has an account, each with a key of their own."""
    for person in tx.people.staff():
        if person.role is Role.ADMIN and person.account is not None and person.id != but:
            tell(tx, person.id, f"{key}:{person.id}", lane, message, now)
