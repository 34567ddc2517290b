"""The language in which somebody is written to."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

from scheduler.domain.people import Person, Role
from scheduler.domain.reply import Reply, reply
from scheduler.ports import Tx


def choose(tx: Tx, who: Person, language: str, now: datetime) -> Reply:
    """Write to somebody in this language from now on, in every role of the account.

    `language` is one that the bot speaks: the caller knows which. Messages that wait in the outbox are
    put into words when they leave, so they are in it too.
    """
    mine = tx.people.of_account(who.account) if who.account is not None else (who,)
    for each in mine:
        if each.role is Role.CLIENT:
            tx.people.lock(each.id)
        if each.language != language:
            tx.people.save(replace(each, language=language))
            tx.book.audit(who.id, "language", each.id, now, before=each.language, after=language)
    return reply("language-kept", language=language)
