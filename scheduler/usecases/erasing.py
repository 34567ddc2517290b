"""Erasing a client's record: by an admin, or by itself some days after she left (D1)."""

from __future__ import annotations

from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from scheduler.domain.hours import local_day
from scheduler.domain.leaving import erase_at
from scheduler.domain.people import Role, State
from scheduler.domain.reply import Reply, reply
from scheduler.ports import Tx


def ask(tx: Tx, person_id: int) -> Reply:
    """Ask once more: nothing brings it back."""
    found = tx.people.get(person_id)
    if found is None or found.role is not Role.CLIENT:
        return reply("no-such-person")
    return reply("ask-erase", person=found.id, name=found.name)


def erase(tx: Tx, by: int | None, client_id: int, now: datetime) -> Reply:
    """Remove every row about a client, and her mention in what others were sent.

    The audit trail keeps who did what and when to her number, which is never given again, and no values.
    What the chat platform and backups hold is out of reach, and is said to be.
    """
    found = tx.people.get(client_id)
    if found is None or found.role is not Role.CLIENT:
        return reply("no-such-person")
    tx.people.lock(client_id)
    tx.archive.erase(client_id)
    tx.book.audit(by, "erase", client_id, now)
    practice = tx.book.practice()
    until = local_day(now, ZoneInfo(practice.zone)) + timedelta(days=practice.backup_days)
    return reply("erased", person=client_id, until=until.isoformat())


def fallen_due(tx: Tx, client_id: int, now: datetime) -> bool:
    """Erase the record of a client who left, once its time has come; whether it is gone."""
    person = tx.people.get(client_id)
    if person is None:
        return True  # erased since she was found due
    if person.state is not State.LEFT:
        return False
    moment = erase_at(tx.people.client(client_id), tx.book.practice())
    if moment is None or now < moment:
        return False
    erase(tx, None, client_id, now)
    return True
