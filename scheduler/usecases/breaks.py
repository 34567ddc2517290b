"""Breaks: exercise stopped for a while by the client or her clinician, for travel, illness or another reason.

A break begins today or on a later day, and lasts to the end of its last day or until somebody ends it. How a
client asks for one is in `wishes`.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime, timedelta

from scheduler.domain.breaks import LENGTHS, LONGEST, REASONS, ends_clearance, last_day
from scheduler.domain.hours import local_day
from scheduler.domain.messages import Lane, Message, message, text
from scheduler.domain.people import Client, Pause, State
from scheduler.domain.reply import Reply, reply
from scheduler.domain.wall import iso
from scheduler.ports import Tx
from scheduler.usecases import lapses, moments
from scheduler.usecases.names import clinician_name, name_of
from scheduler.usecases.opening import go_on
from scheduler.usecases.post import tell
from scheduler.usecases.rest import bars, gather, on_break, stopped, today_of, withdraw_all
from scheduler.usecases.wake import changing

A_DAY = timedelta(days=1)
LOOKED_BACK = timedelta(days=LONGEST)


# --- begun and ended -----------------------------------------------------------------------------


def begin(  # the facts of one break
    tx: Tx,
    client: Client,
    reason: str,
    last: date | None,
    by: int,
    now: datetime,
    first: date | None = None,
) -> Pause:
    """A break from today or from a later day on.

    From today: one that goes on already is taken over, and nothing that was asked stays open. Until a later
    `first` all goes on as planned. Breaks ahead on days that this one names are taken over by it.
    """
    today = today_of(client, now)
    first = first or today
    if first == today:
        for going_on in _all_on(tx, client, today):
            _close(tx, client, going_on, today - A_DAY, by, now)
        withdraw_all(tx, client, "break")
        tx.questions.close(client.id, "break", "fewer", "make-up")
    tx.questions.close(client.id, "break")
    _take_over(tx, client, first, last, by, now)
    pause = tx.pauses.add(Pause(0, client.id, first, last, reason, by, now))
    after = {"reason": reason, "first": first.isoformat(), "last": iso(last)}
    tx.book.audit(by, "break", client.id, now, after=after)
    return pause


def _take_over(
    tx: Tx, client: Client, first: date, last: date | None, by: int, now: datetime
) -> None:  # fmt: skip
    """What was said last counts, but a break without an end takes no later one: she may be back before it."""
    today = today_of(client, now)
    end = last or (first if first == today else date.max)
    for pause in ahead(tx, client, today):
        if pause.first <= end and (pause.last is None or pause.last >= first):
            _close(tx, client, pause, pause.first - A_DAY, by, now)


def ahead(tx: Tx, client: Client, today: date) -> tuple[Pause, ...]:
    """Breaks that were asked for and have not begun."""
    later = (pause for pause in tx.pauses.of(client.id, today) if pause.first > today)
    return tuple(pause for pause in later if pause.covers(pause.first))


def _all_on(tx: Tx, client: Client, today: date) -> tuple[Pause, ...]:
    return tuple(pause for pause in tx.pauses.of(client.id, today) if pause.covers(today))


def end(tx: Tx, client: Client, by: int, now: datetime) -> bool:
    """End the break that goes on; today is worked out again by the rules. False if there is none."""
    today = today_of(client, now)
    going_on = _all_on(tx, client, today)
    for pause in going_on:
        _close(tx, client, pause, today - A_DAY, by, now)
        tx.book.audit(by, "break-end", client.id, now, before=iso(pause.last))
    if not going_on:
        return False
    _ask_of_the_pain(tx, client, now)
    lapses.look(tx, client, now)  # a break that became too long meanwhile
    go_on(tx, tx.people.client(client.id), now)
    return True


def cancel(tx: Tx, client: Client, pause: Pause, by: int, now: datetime) -> None:
    """Take a break back that has not begun."""
    _close(tx, client, pause, pause.first - A_DAY, by, now)
    tx.book.audit(by, "break-end", client.id, now, before=iso(pause.last))


def _close(tx: Tx, client: Client, pause: Pause, last: date, by: int, now: datetime) -> None:
    tx.pauses.end(pause.id, last, now)
    tx.flags.close_episode(client.id, episode(pause), "over", by, now)


def _ask_of_the_pain(tx: Tx, client: Client, now: datetime) -> None:
    """A question about pain that waited for the end of the break comes before any impact (H2)."""
    after = tx.people.client(client.id)
    if after.morning_at is None:
        return
    hours = moments.window(tx, client, today_of(client, now))
    at = max(now, hours[0]) if hours else now
    tx.people.save_client(replace(after, morning_at=min(after.morning_at, at)))


def over(tx: Tx, client: Client, now: datetime) -> None:
    """A break whose last day has passed is over by itself, and its flag with it."""
    today = today_of(client, now)
    episodes = {
        episode(pause)
        for pause in tx.pauses.of(client.id, today - LOOKED_BACK)
        if pause.last is not None and pause.last < today
    }
    for flag in tx.flags.of_client(client.id) if episodes else ():
        if flag.episode in episodes:
            tx.flags.close(flag.id, "over", client.id, "", now)


def _goes_on(tx: Tx, client: Client, now: datetime) -> bool:
    """Whether bouts are asked for today."""
    return any(bout.day == today_of(client, now) for bout in tx.days.open_bouts(client.id))


def from_now_on(tx: Tx, client: Client, now: datetime) -> tuple[bool | None, Message]:
    """Whether bouts are asked for today. While something else stands against them: `None`, and that."""
    found = bars(tx, gather(tx, tx.people.client(client.id), today_of(client, now)))
    return (None, (stopped(found),)) if found else (_goes_on(tx, client, now), ())


def episode(pause: Pause) -> str:
    """The flag's: a break is told to the clinician once."""
    return f"break:{pause.id}"


def too_long(tx: Tx, client: Client, last: date | None) -> bool:
    """Whether the clearance will have lapsed by the last day of a break that was begun (C2)."""
    clearance = lapses.valid_clearance(tx, client.id)
    if clearance is None or last is None:
        return False
    since = local_day(clearance.at, client.zone)
    return ends_clearance(tx.pauses.of(client.id, since), since, last)


# --- the clinician's -----------------------------------------------------------------------------


def ask_for(tx: Tx, client_id: int) -> Reply:
    """The clinician wants to give a client a break: why."""
    return reply("ask-client-break-reason", client=client_id, name=name_of(tx, client_id))


def ask_how_long_for(tx: Tx, client_id: int, reason: str) -> Reply:
    """The reason is tapped; how long."""
    if reason not in REASONS:
        return reply("question-over")
    name = name_of(tx, client_id)
    return reply("ask-client-break-length", client=client_id, name=name, away=reason)


def begin_for(
    tx: Tx, by: int, client_id: int, reason: str, length: str, now: datetime
) -> Reply:  # fmt: skip
    """The clinician's break begins today; the client is told (K5)."""
    if reason not in REASONS or length not in LENGTHS:
        return reply("question-over")
    with changing(tx, client_id, now) as client:
        last = last_day(today_of(client, now), length)
        pause = begin(tx, client, reason, last, by, now)
        clinician = clinician_name(tx, client)
        words = message("break-by-clinician", clinician=clinician, until=iso(last))
        _tell(tx, client, f"break:{pause.id}", words, now)
        return reply(
            "client-on-break",
            client=client_id,
            name=name_of(tx, client_id),
            until=iso(last),
            too_long=too_long(tx, client, last),
        )


def end_for(tx: Tx, by: int, client_id: int, now: datetime) -> Reply:
    """The clinician ends a break; the client is told."""
    with changing(tx, client_id, now) as client:
        pause = on_break(tx, client_id, today_of(client, now))
        if pause is None or not end(tx, client, by, now):
            return reply("client-no-break", client=client_id, name=name_of(tx, client_id))
        asked, still = from_now_on(tx, client, now)
        clinician = clinician_name(tx, client)
        over = text("break-ended-by-clinician", clinician=clinician, today=asked)
        _tell(tx, client, f"break-over:{pause.id}", (over, *still), now)
        return reply("client-break-over", client=client_id, name=name_of(tx, client_id))


def _tell(tx: Tx, client: Client, key: str, words: Message, now: datetime) -> None:
    person = tx.people.get(client.id)
    if person is not None and person.state is State.READY and client.consent_at is not None:
        tell(tx, client.id, key, Lane.REST, words, now)
