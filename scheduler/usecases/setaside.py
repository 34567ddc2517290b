"""An update that cannot be handled: tried again, then set aside until an admin decides (R1).

Whoever sent it is told, and so are the admins: who it was and when, never the words.
"""

from __future__ import annotations

from datetime import datetime, timedelta

from scheduler.domain.messages import Argument, Lane, message
from scheduler.domain.people import Role
from scheduler.domain.reply import Reply, reply
from scheduler.domain.wall import wall
from scheduler.ports import Arrived, Outgoing, SetAside, Tx
from scheduler.usecases import unread
from scheduler.usecases.cover import practice_zone
from scheduler.usecases.names import name_of
from scheduler.usecases.post import tell, tell_admins
from scheduler.usecases.unread import Unread

SHOWN = 20
"""Updates on one screen of buttons, the oldest first."""
LATELY = timedelta(hours=1)
EACH_UP_TO = 5
"""So many within `LATELY` are announced one by one; then the 8th, the 16th ...: a fault in every message of
a practice must not bury its admins."""


# --- when it fails -------------------------------------------------------------------------------


def failed(  # one failure's facts
    tx: Tx,
    row: Arrived,
    update: Unread,
    worker: str,
    again: timedelta | None,
    reason: str,
    now: datetime,
) -> None:
    """Note a failure. After the last try the chat's next updates go on, and people are told.

    A client whose update may have been about pain is asked for nothing more, and her clinician told at once.
    """
    kept = tx.inbox.failed(row.update_id, worker, now + again if again else None, reason)
    if again or not kept:
        return
    if update.chat is not None:
        _tell_sender(tx, row.update_id, update, now)
    lately = tx.aside.count(now - LATELY)
    if lately <= EACH_UP_TO or lately & (lately - 1) == 0:
        words = message("set-aside", update=row.update_id, waiting=tx.aside.count())
        tell_admins(tx, f"aside:{row.update_id}:{now.isoformat()}", Lane.FLAG, words, now)


def _tell_sender(tx: Tx, update_id: int, update: Unread, now: datetime) -> None:
    """Say once that nothing was noted, and whom to call: what she wrote may have been about pain."""
    people = tx.people.of_account(update.chat) if update.chat is not None else ()
    who = next(iter(people), None)
    practice = tx.book.practice()
    call = {"phone": practice.phone, "emergency_number": practice.emergency_number}
    key = f"not-handled:{update_id}"
    if (client := unread.may_be_hurt(tx, people, update)) is not None:
        words = (*message("not-handled-paused", **call), unread.asks(tx, client))
        if tx.outbox.add(Outgoing(key, Lane.SAFETY, words, client), now):
            unread.pause(tx, client, update_id, update.words, now)
    elif who is None:
        tx.outbox.add(Outgoing(key, Lane.ANSWER, message("not-handled-now"), chat=update.chat), now)
    elif who.role is Role.CLIENT:
        tell(tx, who.id, key, Lane.SAFETY, message("not-handled", **call), now)
    else:
        tell(tx, who.id, key, Lane.ANSWER, message("not-handled-now"), now)


# --- an admin's screens --------------------------------------------------------------------------


def screen(tx: Tx) -> Reply:
    """How many are set aside, since when, and whose, oldest first."""
    rows = tx.aside.oldest(SHOWN)
    updates: list[Argument] = [
        {"update": row.update_id, "name": _name(tx, row), "since": _since(tx, row)} for row in rows
    ]
    since = _since(tx, rows[0]) if rows else None
    return reply("aside", count=tx.aside.count(), since=since, updates=updates)


def card(tx: Tx, update_id: int) -> Reply:
    """One of them: whose it is, when it came, and whether she has written since."""
    row = tx.aside.get(update_id)
    if row is None:
        return reply("aside-over")
    return reply(
        "aside-one",
        update=update_id,
        name=_name(tx, row),
        since=_since(tx, row),
        wrote_since=_wrote_since(tx, row),
    )


def ask_drop(tx: Tx, update_id: int) -> Reply:
    """Ask once more: what is dropped has no effect for ever."""
    row = tx.aside.get(update_id)
    if row is None:
        return reply("aside-over")
    return reply("ask-drop", update=update_id, name=_name(tx, row), since=_since(tx, row))


def again(tx: Tx, by: int, update_id: int, now: datetime) -> Reply:
    """Have one tried again in its chat's order. Its effects are judged by its own time, as ever."""
    row = tx.aside.get(update_id)
    if row is None or not tx.aside.again(update_id, now):
        return reply("aside-over")
    tx.book.audit(by, "aside-again", row.person, now, update=update_id)
    return reply("aside-again", count=1)


def all_again(tx: Tx, by: int, now: datetime) -> Reply:
    """Have all tried again, after a repair; each chat's in their order."""
    numbers = tx.aside.all_again(now)
    if not numbers:
        return reply("aside-over")
    tx.book.audit(by, "aside-all-again", None, now, updates=list(numbers))
    return reply("aside-again", count=len(numbers))


def drop(tx: Tx, by: int, update_id: int, now: datetime) -> Reply:
    """Let one rest: it is never applied."""
    row = tx.aside.get(update_id)
    if row is None or not tx.aside.drop(update_id):
        return reply("aside-over")
    tx.book.audit(by, "aside-drop", row.person, now, update=update_id)
    return reply("aside-dropped", update=update_id)


def _name(tx: Tx, row: SetAside) -> str | None:
    return None if row.person is None else name_of(tx, row.person)


def _since(tx: Tx, row: SetAside) -> str:
    """When it came, by the practice's wall clock."""
    return wall(row.received_at, practice_zone(tx))


def _wrote_since(tx: Tx, row: SetAside) -> bool:
    """Whether a client was heard after it: what she sent once more would count twice."""
    person = tx.people.get(row.person) if row.person is not None else None
    if person is None or person.role is not Role.CLIENT:
        return False
    heard_at = tx.people.client(person.id).heard_at
    return heard_at is not None and heard_at > row.received_at
