"""When something last came from the platform, and word to clinicians after a long time without (R5)."""

from __future__ import annotations

from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from scheduler.domain.messages import Lane, message
from scheduler.domain.people import Role
from scheduler.domain.wall import wall
from scheduler.ports import Tx
from scheduler.usecases.post import tell

RECEIVED = "last_receipt"
"""Under this name the book keeps the instant of the last good poll or webhook call."""
KEPT_THERE = timedelta(hours=24)
"""The platform keeps what nobody fetches for so long (the Bot API's page on getting updates)."""


def note(tx: Tx, now: datetime) -> None:
    """The platform has been heard just now. After more than a day without, clinicians are told once."""
    last = heard_at(tx)
    if last is not None and now - last > KEPT_THERE:
        _tell(tx, last, now)
    if last is None or now > last:
        tx.book.put(RECEIVED, now.isoformat())


def heard_at(tx: Tx) -> datetime | None:
    """When any process of this store last heard the platform, to the minute; `None` before the first time."""
    kept = tx.book.read(RECEIVED)
    return datetime.fromisoformat(kept) if kept else None


def restored(tx: Tx, made_at: datetime, now: datetime) -> None:
    """The records were put back from a copy of `made_at`: clinicians and admins are told what that means."""
    since = wall(made_at, ZoneInfo(tx.book.practice().zone))
    for person in tx.people.staff():
        key = f"restored:{now.isoformat()}:{person.id}"
        tell(tx, person.id, key, Lane.FLAG, message("records-restored", since=since), now)
    tx.book.audit(None, "restore", None, now, before=made_at.isoformat())
    tx.book.put(RECEIVED, now.isoformat())


def _tell(tx: Tx, last: datetime, now: datetime) -> None:
    words = message("answers-lost", since=wall(last, ZoneInfo(tx.book.practice().zone)))
    for person in tx.people.staff():
        if person.role is Role.CLINICIAN and person.account is not None:
            key = f"answers-lost:{last.isoformat()}:{person.id}"
            tell(tx, person.id, key, Lane.FLAG, words, now)
