"""Whether a week can still be kept: looked at when a day's hours end, and after every late log (W4)."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime

from scheduler.domain.messages import Text, text
from scheduler.domain.people import Client
from scheduler.ports import Tx
from scheduler.usecases import moments, weekplan
from scheduler.usecases.flags import raise_flag
from scheduler.usecases.judging import held_on
from scheduler.usecases.rest import on_break


def look(tx: Tx, client: Client, now: datetime) -> None:
    """Raise the flag once the minimum is out of reach, at the end of the day that made it so."""
    over = moments.day_over(tx, client, now)
    planned = tx.weeks.get(client.id, weekplan.start_of(tx, over))
    if planned is None or over < planned.since or (planned.looked_at or date.min) >= over:
        return
    tx.weeks.save(replace(planned, looked_at=over))
    found = weekplan.standing(tx, client, planned, over)
    if found is not None:
        _flag(tx, client, found, over, now)


def _flag(tx: Tx, client: Client, found: weekplan.Standing, over: date, now: datetime) -> None:
    stopped = on_break(tx, client.id, over) or held_on(tx, client, over, found.plan.movement)
    if found.reach >= found.needed or stopped:
        return  # a break or a hold is known to her already, and says so itself
    start = found.planned.start
    details = {
        "counted": len(found.week.counted),
        "possible": len(found.possible),
        "needed": found.needed,
        "week": start.isoformat(),
    }
    episode = f"week-out-of-reach:{start}"
    raise_flag(tx, client, "week-out-of-reach", now, urgent=False, details=details, episode=episode)


def after_log(tx: Tx, client: Client, day: date, now: datetime) -> tuple[Text, ...]:
    """A log or a correction has changed a day: the week may be in reach again, or a made-up day not needed.

    Returns what the client should know beside the answer.
    """
    planned = tx.weeks.get(client.id, weekplan.start_of(tx, day))
    if planned is None:
        return ()
    over = moments.day_over(tx, client, now)
    found = weekplan.standing(tx, client, planned, over)
    if found is None:
        return ()
    if planned.looked_at is not None and planned.looked_at >= over:
        _flag(tx, client, found, over, now)
    if found.reach >= found.needed:
        episode = f"week-out-of-reach:{planned.start}"
        tx.flags.close_episode(client.id, episode, "restored", client.id, now)
    return _not_needed(tx, client, found, day)


def _not_needed(tx: Tx, client: Client, found: weekplan.Standing, day: date) -> tuple[Text, ...]:
    """A late log made the day count after all: the day agreed on instead is free again."""
    instead = next((on for made, on in found.planned.made_up if made == day and on), None)
    if instead is None or day not in found.week.counted:
        return ()
    if tx.days.get(client.id, instead) is not None or instead not in found.planned.days:
        return ()  # it has begun, or is settled already
    days = tuple(each for each in found.planned.days if each != instead)
    made_up = tuple((a, None if a == day else b) for a, b in found.planned.made_up)
    tx.weeks.save(replace(found.planned, days=days, made_up=made_up))
    return (text("made-up-not-needed", day=instead.isoformat()),)
