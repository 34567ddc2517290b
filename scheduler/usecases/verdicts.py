"""The clinician's correction of a day that was judged: the only thing that changes a verdict (Z2)."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime

from scheduler.domain.days import Day
from scheduler.domain.messages import Argument, Lane
from scheduler.domain.people import Client
from scheduler.domain.reply import Reply, reply
from scheduler.domain.week import Verdict, Why
from scheduler.ports import Tx
from scheduler.usecases import judging, reach
from scheduler.usecases.names import name_of
from scheduler.usecases.post import tell
from scheduler.usecases.rest import gather, unit
from scheduler.usecases.wake import changing

SHOWN = 10
"""Closed days to choose from: what fits a phone, and more than a month at two days a week."""
CHOICES = ("counted", "excused", "not")


def days(tx: Tx, client: Client) -> Reply:
    """The latest closed days, the newest first."""
    judged = tx.days.judged(client.id, SHOWN)
    closed: list[Argument] = [
        {"day": each.day.isoformat(), "cell": each.verdict} for each in judged
    ]
    name = name_of(tx, client.id)
    return reply("judged-days", client=client.id, name=name, closed=closed)


def ask(tx: Tx, client: Client, day: date) -> Reply:
    """What one day came to, and as what it should count."""
    row = _judged(tx, client.id, day)
    if row is None:
        return reply("question-over")
    running = gather(tx, client, day)
    return reply(
        "ask-verdict", client=client.id, name=name_of(tx, client.id), day=day.isoformat(),
        cell=row.verdict, why=row.why or None, done=running.done, total=row.total,
        per_side=unit(running.plan)["per_side"],
    )  # fmt: skip


def correct(tx: Tx, by: int, client_id: int, day: date, choice: str, now: datetime) -> Reply:
    """Judge a closed day anew. The ledger stays as it is; what follows is looked at again."""
    with changing(tx, client_id, now) as client:
        row = _judged(tx, client_id, day)
        if row is None or choice not in CHOICES:
            return reply("question-over")
        verdict = _verdict(choice, gather(tx, client, day).done)
        why = "" if verdict is Verdict.COUNTED else Why.CLINICIAN.value
        tx.days.save(replace(row, verdict=verdict.value, why=why))
        on = day.isoformat()
        tx.book.audit(
            by, "verdict", client_id, now, day=on, before=row.verdict, after=verdict.value
        )
        judging.corrected(tx, client, day, verdict, now)
        free = reach.after_log(tx, client, day, now)
        if free:
            tell(tx, client_id, f"verdict:{client_id}:{now.isoformat()}", Lane.REST, free, now)
        name = name_of(tx, client_id)
        return reply("verdict-kept", client=client_id, name=name, day=on, cell=verdict.value)


def _judged(tx: Tx, client_id: int, day: date) -> Day | None:
    row = tx.days.get(client_id, day)
    return row if row is not None and row.verdict else None


def _verdict(choice: str, done: int) -> Verdict:
    if choice == "not":
        return Verdict.PARTIAL if done else Verdict.MISSED
    return Verdict(choice)
