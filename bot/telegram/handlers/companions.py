"""What a client taps or types about a companion exercise (C6)."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime, timedelta

from bot import companions as said_of
from bot.companions import Named
from bot.telegram.handlers.act import Act, Press
from bot.telegram.handlers.since import week_asked_since
from bot.telegram.incoming import Incoming
from bot.understand import Intent
from scheduler.domain.messages import Message
from scheduler.domain.people import Person
from scheduler.domain.reply import Reply, reply
from scheduler.ports import Tx
from scheduler.usecases import companions
from scheduler.usecases.companions import Did
from scheduler.usecases.questions import open_question
from scheduler.usecases.rest import today_of

NEARLY = 0.2
"""A count short of a whole round by so much of it is still that round: a day counts from 80 % too (W1)."""


def did(act: Act) -> Reply:
    key, day, rounds = act.args
    try:
        on = date.fromisoformat(day)
    except ValueError:
        return reply("question-over")
    return companions.log(act.tx, act.who.id, _said(act.update, key, int(rounds), on), act.now)


def _said(update: Incoming, key: str, rounds: int | None, day: date | None) -> Did:
    """What was done, with the update as its unique source."""
    return Did(key, f"u{update.update_id}", update.at, rounds, day, update.tried_again)


PRESSES: dict[str, Press] = {"cd": did}


def about(
    tx: Tx, who: Person, named: Named, intent: Intent, update: Incoming, now: datetime
) -> Reply | None:
    """Words that name a companion: so many rounds, a count, none, or all of it.

    `None` where they do not say whether it was done: nothing is logged by a guess.
    """
    if named.doubtful:
        return None
    meant = _meant(tx, who, named, intent, update)
    if (named.none and not intent.denies) or intent.kind == "skip":
        return companions.log(tx, who.id, _with(meant, 0), now)
    if not (named.bare or named.rounds is not None or intent.kind == "log"):
        return None
    return _done(tx, who, named, meant, now)


def beside(
    tx: Tx, who: Person, named: Named, intent: Intent, update: Incoming, now: datetime
) -> Message:
    """What was done, said beside pain, a fall or a sign: only where a count or "all" says so."""
    counted = named.rounds is not None or named.number is not None or intent.all
    if named.doubtful or not counted:
        return ()
    noted = _done(tx, who, named, _meant(tx, who, named, intent, update), now)
    return tuple(each for each in noted.message if each.id == "companion-noted")


def _meant(tx: Tx, who: Person, named: Named, intent: Intent, update: Incoming) -> Did:
    today = today_of(tx.people.client(who.id), update.at)
    day = today - timedelta(days=1) if intent.day == "yesterday" else None
    return _said(update, named.key, named.rounds, day)


def _done(tx: Tx, who: Person, named: Named, meant: Did, now: datetime) -> Reply:
    planned = companions.planned(tx, who.id, named.key, now)
    if planned is None or named.rounds is not None or named.number is None:
        return companions.log(tx, who.id, meant, now)
    rounds = int(named.number / planned.amount + NEARLY)
    if planned.unit == "hold" or rounds == 0:
        return companions.ask_rounds(tx, who.id, meant, now)
    return companions.log(tx, who.id, _with(meant, rounds), now)


def _with(meant: Did, rounds: int) -> Did:
    return replace(meant, rounds=rounds)


def answered(tx: Tx, who: Person, intent: Intent, update: Incoming, now: datetime) -> Reply | None:
    """Words without a name that answer the question about a companion, while no bout is open."""
    question = open_question(tx, who.id, "companion")
    if question is None or any(b.asked_at for b in tx.days.open_bouts(who.id)):
        return None
    rounds = _rounds(intent, update.text, who.language)
    if rounds is False or (not rounds and week_asked_since(tx, question)):
        return None  # "none" and "all" are no answers to an exercise where a week was asked about since
    day = date.fromisoformat(str(question.body["day"]))
    return companions.log(tx, who.id, _said(update, str(question.body["key"]), rounds, day), now)


def _rounds(intent: Intent, text: str, language: str) -> int | bool | None:
    """Rounds, `None` for all of them; False where the words answer nothing."""
    said = said_of.rounds(text, language)
    if said is not None:
        return 0 if said.none else said.rounds
    if intent.kind == "skip":
        return 0
    return None if intent.kind == "log" and intent.all else False
