"""What is typed by somebody who has not agreed to the notice yet (J2)."""

from __future__ import annotations

from datetime import datetime

from bot import dialogue
from bot.telegram.handlers import alarms
from bot.telegram.incoming import Incoming
from bot.understand import Intent, any_language
from scheduler.domain.messages import text
from scheduler.domain.pain import SIGNS, Urgency
from scheduler.domain.people import Person
from scheduler.domain.reply import Reply
from scheduler.ports import Tx
from scheduler.usecases import holds, join, notes
from scheduler.usecases.questions import open_question


def heard(tx: Tx, who: Person, intent: Intent, update: Incoming, now: datetime) -> Reply:
    """Nothing about health is asked or kept, save what cannot wait until tomorrow; whom to call is said."""
    sign = alarms.sign(intent, update.text, who.language)
    if sign is not None and SIGNS[sign] >= Urgency.URGENT_CARE:
        details = {"words": notes.shortened(update.text), "sign": sign}
        client = tx.people.lock(who.id)
        return holds.stop(tx, client, now, reason="pain", sign=sign, details=details)
    client = tx.people.client(who.id)
    if any_language.found(intent):
        practice = tx.book.practice()
        numbers = {"phone": practice.phone, "emergency_number": practice.emergency_number}
        told = text("hurts-before-consent", **numbers)
        return Reply((told, *join.ask_consent(tx, client, now)))
    agreed = dialogue.agrees(update.text, who.language)
    if agreed is not None and open_question(tx, who.id, "join") is not None:
        return join.consent(tx, who.id, agreed, now)
    return Reply(join.ask_consent(tx, client, now))
