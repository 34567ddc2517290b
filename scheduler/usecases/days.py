"""What falls due for a client by itself: the start of a day, silence, a nudge, a question left open.

`advance` does all of it in one transaction, in the order of time, however late it is called.
"""

from __future__ import annotations

from contextlib import suppress
from dataclasses import replace
from datetime import datetime, timedelta

from scheduler.domain import days as d
from scheduler.domain.days import Bout, BoutState
from scheduler.domain.hours import day_hours_in_utc
from scheduler.domain.leaving import GONE
from scheduler.domain.messages import Lane, message
from scheduler.domain.people import Client
from scheduler.ports import Claim, GoneError, Outgoing, Tx
from scheduler.usecases import (
    breaks,
    cards,
    companions,
    erasing,
    join,
    judging,
    lapses,
    mornings,
    pain,
    reach,
    silence,
    steptests,
)
from scheduler.usecases.opening import begin_day
from scheduler.usecases.post import tell
from scheduler.usecases.rest import (
    Running,
    amount,
    bars,
    bouts_to_come,
    gather,
    hours_of,
    replan,
    today_of,
    withdraw_waiting,
)
from scheduler.usecases.wake import changing

A_MINUTE = timedelta(minutes=1)
"""Hours are minutes of the wall clock: the last one of a window is free to its end."""
BATCH = 50
"""Clients looked at between two looks at the bell: small, so that answers wait little."""


def due(tx: Tx, now: datetime) -> tuple[int, ...]:
    """Clients about whom something has fallen due, the longest waiting first."""
    return tx.people.due(now, BATCH)


def advance(tx: Tx, client_id: int, now: datetime) -> None:
    """Carry out everything that has fallen due for one client by `now` (UTC): nothing once she is gone.

    The record of one who left may fall due to be erased.
    """
    if erasing.fallen_due(tx, client_id, now):
        return
    with changing(tx, client_id, now) as client:
        person = tx.people.get(client_id)
        if person is None or person.state in GONE:
            return
        pain.questions_left_open(tx, client, now)
        for bout in tx.days.open_bouts(client.id):
            _bout_due(tx, client, bout, now)
        pain.morning_check(tx, client, now)
        join.ask_consent_again(tx, client, now)
        join.remind_of_clearance(tx, client, now)
        breaks.over(tx, client, now)
        lapses.look(tx, client, now)
        judging.close_days(tx, client, now)
        begin_day(tx, client, now)
        reach.look(tx, client, now)
        silence.look(tx, client, now)
        mornings.offers_over(tx, client, now)
        mornings.ask(tx, tx.people.client(client_id), now)
        companions.ask(tx, tx.people.client(client_id), now)
        steptests.look(tx, tx.people.client(client_id), now)


def _bout_due(tx: Tx, client: Client, bout: Bout, now: datetime) -> None:
    running = gather(tx, client, bout.day)
    if bout.state is BoutState.WAITING:
        late = timedelta(minutes=running.practice.late_minutes)
        if now > bout.due_at + late:
            _was_away(tx, running, now)
    elif now >= bout.expires_at:
        _no_answer(tx, running, bout, now)
    elif bout.nudge_at and now >= bout.nudge_at and not bout.nudged:
        _nudge(tx, running, bout, now)


def _no_answer(tx: Tx, running: Running, bout: Bout, now: datetime) -> None:
    """The prompt expires: its reps are not asked again, the rest is worked out from that moment (S4)."""
    tx.days.save_bout(replace(bout, state=BoutState.EXPIRED))
    tx.outbox.cancel_prompts(running.client.id, "expired")
    late = timedelta(minutes=running.practice.late_minutes)
    moment = bout.expires_at if now - bout.expires_at <= late else now
    following = _replan_today(tx, running, now, moment)
    if bout.message_id is not None:
        _say_quietly(tx, running, bout, following, now)


def _replan_today(tx: Tx, running: Running, now: datetime, moment: datetime) -> Bout | None:
    if running.today != today_of(running.client, now):
        return None
    return replan(tx, running, now, not_before=moment)


def _say_quietly(
    tx: Tx, running: Running, bout: Bout, following: Bout | None, now: datetime
) -> None:
    """Write on the old prompt itself that no answer came and what is next; nothing rings."""
    ahead = following if following and following.due_at > now else None  # one due now is asked now
    following_at = running.wall(ahead.due_at) if ahead else None
    tx.outbox.add(
        Outgoing(
            key=f"expired:{bout.id}",
            lane=Lane.REST,
            message=message(
                "no-answer", bout=bout.id, next=following_at, **amount(running, bout.reps)
            ),
            person=running.client.id,
            edits=bout.message_id,
            silent=True,
        ),
        now,
    )


def _nudge(tx: Tx, running: Running, bout: Bout, now: datetime) -> None:
    """One silent reminder halfway to expiry, where the day has room for it (P6)."""
    tx.days.save_bout(replace(bout, nudged=True))
    if running.day is None or not _may_nudge(tx, running, now) or bars(tx, running):
        return
    tx.days.save(replace(running.day, nudges=running.day.nudges + 1))
    tx.outbox.add(
        Outgoing(
            key=f"nudge:{bout.id}",
            lane=Lane.PROMPT,
            message=message("nudge", bout=bout.id, **amount(running, bout.reps)),
            person=running.client.id,
            due_at=now,
            bout=bout.id,
            nudge=True,
            silent=True,
        ),
        now,
    )


def _may_nudge(tx: Tx, running: Running, now: datetime) -> bool:
    day = running.day
    if day is None or day.nudges >= d.NUDGES_PER_DAY or d.silent_in_a_row(running.bouts) >= 2:  # noqa: PLR2004 # two silent prompts in a row end the nudges of a day (P6)
        return False
    others = tx.outbox.own_on(running.client.id, running.today)
    if day.nudges + others >= d.SPARE_MESSAGES:
        return False  # also where she did a bout unasked, so that fewer are asked than were planned
    reserved = bouts_to_come(tx, running, now) + mornings.to_come(tx, running, now)
    reserved += companions.to_come(tx, running, now)
    return d.messages_left(day, running.bouts, others) > reserved


def _was_away(tx: Tx, running: Running, now: datetime) -> None:
    """A prompt that is too late is not sent; the day goes on from now and says so once (P7)."""
    withdraw_waiting(tx, running)
    if running.day is None or running.today != today_of(running.client, now):
        return
    following = replan(tx, running, now)
    if running.day.away_told or bars(tx, running):
        return
    day = tx.days.get(running.client.id, running.today) or running.day
    tx.days.save(replace(day, away_told=True))
    words = message("away", next=running.wall(following.due_at) if following else None)
    key = f"away:{running.client.id}:{running.today}"
    tell(tx, running.client.id, key, Lane.REST, words, now)


def begins(tx: Tx, claim: Claim, now: datetime, lease: timedelta) -> bool:
    """Commit that a message is about to leave; False if it was dropped meanwhile (a hold, an answer).

    `lease` is how long its request may take before the row counts as a dead worker's.
    From here on its prompt counts as asked, whatever becomes of the request: it may reach the phone. When
    she is looked at next is left to the outcome, which follows; where none does, the instant that stands,
    at which the prompt would have been too late, is soon enough.
    """
    card = cards.of(claim.letter.message)
    if claim.bout is None or claim.person is None or (claim.nudge and card is None):
        return tx.outbox.begin(claim, now, lease)
    try:
        client = tx.people.lock(claim.person)
    except GoneError:
        return False  # erased meanwhile, and the message with her
    bout = tx.days.bout(claim.bout)
    if bout is not None and _hours_are_over(tx, client, bout, now):
        with changing(tx, client.id, now):
            _was_away(tx, gather(tx, client, bout.day), now)
        return False
    if not tx.outbox.begin(claim, now, lease):
        return False
    if bout is not None and bout.state is BoutState.WAITING and card is None:
        tx.days.save_bout(replace(bout, state=BoutState.ASKED, asked_at=now))
    return True


def _hours_are_over(tx: Tx, client: Client, bout: Bout, now: datetime) -> bool:
    """Whether a prompt that was held up would now fall outside the hours it was worked out for (I1)."""
    if bout.state is not BoutState.WAITING or now < bout.due_at + A_MINUTE:
        return False
    hours = hours_of(gather(tx, client, bout.day))
    if hours is None:
        return True
    _, end, quiets = day_hours_in_utc(bout.day, hours, client.zone)
    return now >= end + A_MINUTE or any(a + A_MINUTE <= now < b for a, b in quiets)


def accepted(tx: Tx, claim: Claim, message_id: int, now: datetime) -> None:
    """The platform has accepted a message; gaps and the nudge of a prompt count from now (R2)."""
    if claim.bout is None or claim.nudge or claim.person is None:
        if tx.outbox.sent(claim, message_id, now):
            cards.shown(tx, claim)
        return
    with suppress(GoneError), changing(tx, claim.person, now) as client:
        bout = tx.days.bout(claim.bout)
        if tx.outbox.sent(claim, message_id, now) and bout is not None:
            tx.days.save_bout(_opened(tx, client, replace(bout, message_id=message_id), now))


def _opened(tx: Tx, client: Client, bout: Bout, now: datetime) -> Bout:
    if bout.state is not BoutState.ASKED:  # answered or withdrawn while it was on its way
        return replace(bout, asked_at=now)
    plan = tx.plans.on(client.id, bout.day)
    gap = timedelta(minutes=plan.plan.gap_minutes if plan else 0)
    last = bout.expires_at == bout.due_at + d.LAST_PROMPT_OPEN
    expires = bout.expires_at if last else max(bout.expires_at, now + gap)
    nudge_at = now + (expires - now) / 2
    return replace(bout, asked_at=now, expires_at=expires, nudge_at=nudge_at)


def fate_unknown(tx: Tx, claim: Claim, now: datetime) -> None:
    """The connection ended while a prompt was sent: it stays asked, and is never sent again (R2)."""
    tx.outbox.unknown(claim, now)


def not_accepted(
    tx: Tx, claim: Claim, again_at: datetime | None, reason: str, now: datetime
) -> None:
    """The platform certainly did not take the message: put it back until `again_at`, or drop it.

    A prompt that was answered or withdrawn while it was on its way (a hold) does not leave again (I6).
    """
    if claim.person is None or claim.bout is None:
        _settle(tx, claim, again_at, reason)
        return
    card = cards.of(claim.letter.message)  # its prompt is still to come
    stands = BoutState.WAITING if card else BoutState.ASKED
    with suppress(GoneError), changing(tx, claim.person, now):
        bout = tx.days.bout(claim.bout)
        if bout is None or bout.state is not stands:
            _settle(tx, claim, None, reason or "withdrawn")
        elif _settle(tx, claim, again_at, reason) and not claim.nudge:
            state = BoutState.WAITING if again_at else BoutState.WITHDRAWN
            tx.days.save_bout(replace(bout, state=state, asked_at=None))


def _settle(tx: Tx, claim: Claim, again_at: datetime | None, reason: str) -> bool:
    return tx.outbox.put_back(claim, again_at) if again_at else tx.outbox.drop(claim, reason)
