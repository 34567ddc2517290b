"""How an exercise is done: a card that comes once before its first prompt, and on asking (C7).

A card is a message of the bot's own accord: it takes one of the two that P6 leaves beside the bouts, and
waits for another day where there is none. It leaves right before its prompt and is withdrawn with it.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import replace
from datetime import date, datetime
from typing import TYPE_CHECKING, Any

from scheduler.domain.companions import CATALOGUE
from scheduler.domain.days import Bout
from scheduler.domain.messages import Lane, Message, message
from scheduler.domain.people import Client
from scheduler.domain.plan import MOVEMENTS
from scheduler.ports import Claim, Outgoing, Tx

if TYPE_CHECKING:
    from scheduler.usecases.rest import Running

EXERCISES: tuple[str, ...] = (*MOVEMENTS, *CATALOGUE)
"""Every exercise that has a card."""
KINDS = ("photo", "video", "animation")
"""What a practice can give in the place of the drawing, as the platform names it."""


def picture(tx: Tx, exercise: str) -> dict[str, str] | None:
    """The practice's own picture or clip of an exercise: its kind, and the platform's id of the file."""
    kept = tx.book.read(f"card:{exercise}")
    found: Any = json.loads(kept) if kept else None
    return found if isinstance(found, dict) else None


def keep_picture(
    tx: Tx, by: int, exercise: str, found: Mapping[str, str] | None, now: datetime
) -> None:
    """Keep the practice's own picture of an exercise; `None` goes back to the drawing."""
    tx.book.put(f"card:{exercise}", json.dumps(dict(found)) if found else "")
    kind = found["kind"] if found else "drawing"
    tx.book.audit(by, "card", None, now, after={"exercise": exercise, "kind": kind})


def _card(tx: Tx, exercise: str) -> Message:
    """A card that comes by itself. "picture" `None`: our own drawing."""
    return message("how-to", exercise=exercise, picture=picture(tx, exercise))


def of(said: Message) -> str | None:
    """The exercise of a card that comes by itself; `None` for any other message."""
    first = said[0] if said else None
    return str(first.args["exercise"]) if first is not None and first.id == "how-to" else None


def before_bout(tx: Tx, running: Running, bout: Bout, room: int, now: datetime) -> None:
    """Put the card of a movement before its first prompt, where `room` is left for a message (P6)."""
    movement = running.plan.movement if running.plan else ""
    if room > 0 and _is_new(running.client, movement):
        card, client = _card(tx, movement), running.client.id
        row = Outgoing(f"card:{bout.id}", Lane.PROMPT, card, client, own_day=running.today)
        tx.outbox.add(replace(row, due_at=bout.due_at, bout=bout.id, nudge=True), now)


def before_companion(
    tx: Tx, client: Client, exercise: str, day: date, room: int, now: datetime
) -> None:
    """The same before a companion is asked for the first time."""
    if room > 0 and _is_new(client, exercise):
        key, card = f"card:{client.id}:{exercise}:{day}", _card(tx, exercise)
        tx.outbox.add(Outgoing(key, Lane.REST, card, person=client.id, own_day=day), now)


def _is_new(client: Client, exercise: str) -> bool:
    return exercise in EXERCISES and exercise not in client.cards


def shown(tx: Tx, claim: Claim) -> None:
    """The platform has accepted a message: if it was a card, it does not come by itself again."""
    exercise = of(claim.letter.message)
    if exercise is not None and claim.person is not None:
        mark_shown(tx, claim.person, exercise)


def mark_shown(tx: Tx, client_id: int, exercise: str) -> None:
    """From now on the card of this exercise comes on asking only."""
    client = tx.people.lock(client_id)
    if exercise not in client.cards:
        tx.people.save_client(replace(client, cards=(*client.cards, exercise)))
