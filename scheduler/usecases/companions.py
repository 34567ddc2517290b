"""Companion exercises of the plan: asked for once on their days, logged at any time (C6).

They follow the same bars as the impact, but for a hold of one movement; their ledger is one of its own.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime, timedelta

from scheduler.domain.companions import BOUNDS, Companion
from scheduler.domain.messages import Lane, message, text
from scheduler.domain.people import Client
from scheduler.domain.permission import Bar
from scheduler.domain.reply import Reply, reply
from scheduler.ports import CompanionEntry, Outgoing, Question, Tx
from scheduler.usecases import cards, moments, mornings
from scheduler.usecases.rest import (
    Running,
    bars,
    bouts_to_come,
    gather,
    is_over,
    messages_left,
    stopped,
    today_of,
)
from scheduler.usecases.wake import changing


@dataclass(frozen=True, slots=True)
class Did:
    """What a client said she did of a companion; `rounds` `None`: all of them. `day` `None`: today.

    `source` names the update: the same one again changes nothing.
    """

    key: str
    source: str
    at: datetime
    rounds: int | None = None
    day: date | None = None
    tried_again: bool = False


# --- asked ---------------------------------------------------------------------------------------


def ask(tx: Tx, client: Client, now: datetime) -> None:
    """Ask for today's companions in the middle of the day's hours, if the day has room for it (P6)."""
    running = gather(tx, client, today_of(client, now))
    moment = moments.middle(tx, client, running.today)
    late = timedelta(minutes=running.practice.late_minutes)
    if moment is None or not moment <= now <= moment + late or not _may_ask(tx, running):
        return
    for companion in _to_do(tx, running):
        reserved = bouts_to_come(tx, running, now) + mornings.to_come(tx, running, now)
        room = messages_left(tx, running) - reserved
        if room > 0:
            cards.before_companion(tx, client, companion.key, running.today, room - 1, now)
            _ask(tx, running, companion, now)


def _ask(tx: Tx, running: Running, companion: Companion, now: datetime) -> None:
    client, day = running.client.id, running.today
    words = message(
        "ask-companion",
        companion=companion.key,
        measure=companion.unit,
        amount=companion.amount,
        rounds=companion.rounds,
        day=day.isoformat(),
    )
    key = f"companion:{client}:{companion.key}:{day}"
    if tx.outbox.add(Outgoing(key, Lane.REST, words, person=client, own_day=day), now):
        body = {"key": companion.key, "day": day.isoformat()}
        tx.questions.ask(Question(client, "companion", "rounds", body, now))


def to_come(tx: Tx, running: Running, now: datetime) -> int:
    """Companions that are still to be asked for today: nudges leave room for them (P6).

    A nudge of the same minute comes first in the order of work, and must leave that room too.
    """
    moment = moments.middle(tx, running.client, running.today)
    late = timedelta(minutes=running.practice.late_minutes)
    if moment is None or now > moment + late or (now >= moment and _asked(tx, running)):
        return 0
    return len(_to_do(tx, running))


def _asked(tx: Tx, running: Running) -> bool:
    day = running.today.isoformat()
    questions = tx.questions.of(running.client.id)
    return any(each.kind == "companion" and each.body.get("day") == day for each in questions)


def _to_do(tx: Tx, running: Running) -> tuple[Companion, ...]:
    """The companions of today of which nothing has been said yet."""
    plan, today = running.plan, running.today
    if plan is None or today < plan.start:
        return ()
    said = {each.companion for each in tx.companions.between(running.client.id, today, today)}
    todays = (each for each in plan.companions if today.weekday() in each.weekdays)
    return tuple(each for each in todays if each.key not in said)


def _may_ask(tx: Tx, running: Running) -> bool:
    found = {*bars(tx, running)}
    if all(hold.movement is not None for hold in tx.health.holds(running.client.id)):
        found.discard(Bar.HOLD)  # one movement of the impact is stopped, and nothing else
    return not found


# --- done ----------------------------------------------------------------------------------------


def log(tx: Tx, client_id: int, did: Did, now: datetime) -> Reply:
    """Keep what was done of a companion; of a day the last word counts. Refused once the day is over."""
    with changing(tx, client_id, now) as client:
        today = today_of(client, did.at)
        day = did.day or today
        running = gather(tx, client, day)
        companion = _of_plan(running, did.key)
        if companion is None:
            return reply("companion-not-planned", companion=did.key)
        if day > today:
            return reply("question-over")
        if is_over(client, day, running.practice, did.at, now if did.tried_again else None):
            return reply("day-over", day=day.isoformat())
        rounds = companion.rounds if did.rounds is None else did.rounds
        if not 0 <= rounds <= BOUNDS["rounds"][1]:
            return reply("answer-number", low=0, high=BOUNDS["rounds"][1])
        tx.companions.log(CompanionEntry(client_id, day, did.key, rounds, did.at, did.source))
        _close_question(tx, client_id, did.key)
        noted = text(
            "companion-noted", companion=did.key, done=rounds, rounds=companion.rounds,
            day=None if day == today else day.isoformat(),
        )  # fmt: skip
        found = bars(tx, running)
        return Reply((noted, stopped(found)) if Bar.HOLD in found and rounds else (noted,))


def ask_rounds(tx: Tx, client_id: int, did: Did, now: datetime) -> Reply:
    """A number that is no whole round: how many rounds it was."""
    with changing(tx, client_id, now) as client:
        day = (did.day or today_of(client, did.at)).isoformat()
        tx.questions.ask(
            Question(client_id, "companion", "rounds", {"key": did.key, "day": day}, now)
        )
        return reply("ask-companion-rounds", companion=did.key)


def planned(tx: Tx, client_id: int, key: str, now: datetime) -> Companion | None:
    """The companion of the client's plan today; `None` if it is not in it."""
    client = tx.people.client(client_id)
    return _of_plan(gather(tx, client, today_of(client, now)), key)


def _of_plan(running: Running, key: str) -> Companion | None:
    plan = running.plan
    return next((each for each in plan.companions if each.key == key), None) if plan else None


def _close_question(tx: Tx, client_id: int, key: str) -> None:
    for question in tx.questions.of(client_id):
        if question.kind == "companion" and question.body.get("key") == key:
            tx.questions.close(client_id, "companion")
