"""A client asks how an exercise is done (C7)."""

from __future__ import annotations

from datetime import datetime

from scheduler.domain.messages import text
from scheduler.domain.permission import Bar
from scheduler.domain.reply import Reply, reply
from scheduler.ports import Tx
from scheduler.usecases import cards
from scheduler.usecases.names import clinician_name
from scheduler.usecases.rest import bars, gather, stopped, today_of
from scheduler.usecases.wake import changing

WAITS = frozenset({Bar.HOLD, Bar.BREAK, Bar.QUESTION, Bar.NO_CLEARANCE, Bar.LAPSED, Bar.NO_PLAN})
"""While one of these stands, the card says beside it that nothing is to be done now."""


def show(tx: Tx, client_id: int, now: datetime, exercise: str | None = None) -> Reply:
    """The card of an exercise of her plan, by default of its movement; the others are one tap away.

    Only her own exercises: what nobody prescribed to her is not explained to her.
    """
    with changing(tx, client_id, now) as client:
        running = gather(tx, client, today_of(client, now))
        latest = tx.plans.latest(client_id)
        plan = running.plan or (latest.plan if latest else None)
        if plan is None:
            return reply("week-no-plan", clinician=clinician_name(tx, client))
        own = [plan.movement, *(each.key for each in plan.companions)]
        wanted = exercise or plan.movement
        if wanted not in own:
            return reply("question-over")
        cards.mark_shown(tx, client_id, wanted)
        for bout in running.bouts:
            tx.outbox.cancel(f"card:{bout.id}", "asked for")
        others = [each for each in own if each != wanted]
        card = text(
            "how-to-asked", exercise=wanted, picture=cards.picture(tx, wanted), others=others
        )
        found = bars(tx, running)
        texts = (card, stopped(found)) if WAITS & {*found} else (card,)
        return Reply(texts, in_place=False)
