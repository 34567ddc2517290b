"""What an update that cannot be handled may have told of: pain, a fall or a sign is never waited with (H1).

Nothing here trusts the update, or the code that it may have broken: what fails counts as a yes.
"""

from __future__ import annotations

from bot.telegram.incoming import Incoming, answer_chat, incoming
from bot.understand import HEARS, understand
from bot.understand.any_language import found
from scheduler.ports import Arrived
from scheduler.usecases.notes import shortened
from scheduler.usecases.unread import Unread

OF_PAIN = frozenset({"hurt", "fell", "p", "f", "m", "wq"})
"""Verbs of the buttons with which a client says that something hurts, or answers what is asked about it."""
NO_PAIN = "wq:none"


def unread(row: Arrived) -> Unread:
    """Who waits for an answer to it, and whether it may be about pain."""
    try:
        chat = answer_chat(row.payload)
    except Exception:  # noqa: BLE001 # not even an object
        chat = None
    if chat is None:
        return Unread(None)
    try:
        update = incoming(row.payload, row.received_at)
        return Unread(chat) if update is None else _read(update, chat)
    except Exception:  # noqa: BLE001 # it may be the very fault for which it was set aside
        return Unread(chat, alarm=True)


def _read(update: Incoming, chat: int) -> Unread:
    if update.kind == "press":
        alarm = update.data.partition(":")[0] in OF_PAIN and update.data != NO_PAIN
        return Unread(chat, alarm=alarm)
    alarm = any(_hurts(update.text, language) for language in HEARS)
    words = shortened(update.text)
    return Unread(chat, alarm=alarm, typed=bool(update.text), words=words if alarm else "")


def _hurts(said: str, language: str) -> bool:
    intent = understand(said, language)
    return found(intent) or intent.emergency or intent.crisis
