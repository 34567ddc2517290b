"""Breaks: exercise stopped for a while by the client or her clinician, for travel, illness or another reason.

A break begins on the day it is asked for and lasts to the end of its last day, or until somebody ends it.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime, timedelta

from scheduler.domain.breaks import LENGTHS, LONGEST, REASONS, ends_clearance, last_day
from scheduler.domain.hours import local_day
from scheduler.domain.messages import Lane, Message, message, text
from scheduler.domain.people import Client, Pause, State
from scheduler.domain.reply import Reply, reply
from scheduler.ports import Question, Tx
from scheduler.usecases import lapses, moments
from scheduler.usecases.flags import raise_flag
from scheduler.usecases.names import clinician_name, name_of
from scheduler.usecases.opening import begin_day
from scheduler.usecases.post import tell
from scheduler.usecases.rest import bars, gather, on_break, stopped, today_of, withdraw_all
from scheduler.usecases.wake import changing

A_DAY = timedelta(days=1)
LOOKED_BACK = timedelta(days=LONGEST)


# --- asked for by the client ---------------------------------------------------------------------


def ask(
    tx: Tx, client_id: int, now: datetime, last: date | None = None, *, unsure: bool = False
) -> Reply:
    """A client wants a break: why. One who is on a break sees until when. A length said first is kept."""
    with changing(tx, client_id, now) as client:
        going_on = on_break(tx, client_id, today_of(client, now))
        if going_on is not None:
            done = gather(tx, client, today_of(client, now)).done
            return reply("break-on", until=_iso(going_on.last), done=done)
        body = {"last": _iso(last), "unsure": unsure}
        tx.questions.ask(Question(client_id, "break", "reason", body, asked_at=now))
        return reply("ask-break-reason")


def wish(
    tx: Tx, client_id: int, reason: str | None, last: date | None, unsure: bool, now: datetime
) -> Reply:
    """A break in the client's own words: what they leave open is asked."""
    if reason is None:
        return ask(tx, client_id, now, last, unsure=unsure)
    if last is None and not unsure:
        return because(tx, client_id, reason, now)
    with changing(tx, client_id, now) as client:
        return _start(tx, client, reason, last, now)


def because(tx: Tx, client_id: int, reason: str, now: datetime) -> Reply:
    """The reason is known; ask how long, if that was not said before."""
    with changing(tx, client_id, now) as client:
        if reason not in REASONS:
            return reply("question-over")
        before = _question(tx, client_id)
        said = before.body if before and before.step == "reason" else {}
        if said.get("last") or said.get("unsure"):
            last = date.fromisoformat(said["last"]) if said["last"] else None
            return _start(tx, client, reason, last, now)
        tx.questions.ask(Question(client_id, "break", "length", {"reason": reason}, now))
        return reply("ask-break-length")


def lasts(tx: Tx, client_id: int, last: date | None, now: datetime) -> Reply:
    """The last day is known, or that nobody knows it (`None`): the break begins."""
    with changing(tx, client_id, now) as client:
        question = _question(tx, client_id)
        if question is None or question.step != "length":
            return reply("question-over")
        return _start(tx, client, str(question.body["reason"]), last, now)


def lasts_for(tx: Tx, client_id: int, length: str, now: datetime) -> Reply:
    """The same by a button: one of `LENGTHS`."""
    today = today_of(tx.people.client(client_id), now)
    return lasts(tx, client_id, last_day(today, length), now)


def not_now(tx: Tx, client_id: int, now: datetime) -> Reply:
    """No break after all."""
    with changing(tx, client_id, now):
        if _question(tx, client_id) is None:
            return reply("question-over")
        tx.questions.close(client_id, "break")
        return reply("break-not-now")


def _question(tx: Tx, client_id: int) -> Question | None:
    return next((each for each in tx.questions.of(client_id) if each.kind == "break"), None)


def _start(tx: Tx, client: Client, reason: str, last: date | None, now: datetime) -> Reply:
    today = today_of(client, now)
    if last is not None and not today <= last <= today + timedelta(days=LONGEST - 1):
        tx.questions.ask(Question(client.id, "break", "length", {"reason": reason}, now))
        return Reply((text("break-too-far"), text("ask-break-length")))
    pause = begin(tx, client, reason, last, client.id, now)
    details = {"away": reason, "until": _iso(last)}
    raise_flag(
        tx, client, "break", now, urgent=False, details=details, episode=_episode(pause)
    )  # fmt: skip
    return reply(
        "break-started",
        until=_iso(last),
        done=gather(tx, client, today).done,
        clinician=clinician_name(tx, client),
        too_long=_too_long(tx, client, last),
    )


def _too_long(tx: Tx, client: Client, last: date | None) -> bool:
    """Whether the clearance will have lapsed by the last day of a break that was begun (C2)."""
    clearance = lapses.valid_clearance(tx, client.id)
    if clearance is None or last is None:
        return False
    since = local_day(clearance.at, client.zone)
    return ends_clearance(tx.pauses.of(client.id, since), since, last)


def back(tx: Tx, client_id: int, now: datetime) -> Reply:
    """The client is back before her break was over."""
    with changing(tx, client_id, now) as client:
        if not end(tx, client, client_id, now):
            return reply("no-break")
        asked, still = _from_now_on(tx, client, now)
        return Reply((text("break-over", today=asked), *still))


# --- begun and ended -----------------------------------------------------------------------------


def begin(tx: Tx, client: Client, reason: str, last: date | None, by: int, now: datetime) -> Pause:
    """A break from today on; one that goes on already is taken over. Nothing that was asked stays open."""
    today = today_of(client, now)
    going_on = on_break(tx, client.id, today)
    if going_on is not None:
        _close(tx, client, going_on, today - A_DAY, by, now)
    pause = tx.pauses.add(Pause(0, client.id, today, last, reason, by, now))
    withdraw_all(tx, client, "break")
    tx.questions.close(client.id, "break", "fewer", "make-up")
    after = {"reason": reason, "first": today.isoformat(), "last": _iso(last)}
    tx.book.audit(by, "break", client.id, now, after=after)
    return pause


def end(tx: Tx, client: Client, by: int, now: datetime) -> bool:
    """End the break that goes on; today is worked out again by the rules. False if there is none."""
    today = today_of(client, now)
    pause = on_break(tx, client.id, today)
    if pause is None:
        return False
    _close(tx, client, pause, today - A_DAY, by, now)
    tx.book.audit(by, "break-end", client.id, now, before=_iso(pause.last))
    _ask_of_the_pain(tx, client, now)
    lapses.look(tx, client, now)  # a break that became too long meanwhile
    begin_day(tx, tx.people.client(client.id), now)
    return True


def _close(tx: Tx, client: Client, pause: Pause, last: date, by: int, now: datetime) -> None:
    tx.pauses.end(pause.id, last, now)
    tx.flags.close_episode(client.id, _episode(pause), "over", by, now)


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
        _episode(pause)
        for pause in tx.pauses.of(client.id, today - LOOKED_BACK)
        if pause.last is not None and pause.last < today
    }
    for flag in tx.flags.of_client(client.id):
        if flag.episode in episodes:
            tx.flags.close(flag.id, "over", client.id, "", now)


def _goes_on(tx: Tx, client: Client, now: datetime) -> bool:
    """Whether bouts are asked for today."""
    return any(bout.day == today_of(client, now) for bout in tx.days.open_bouts(client.id))


def _from_now_on(tx: Tx, client: Client, now: datetime) -> tuple[bool | None, Message]:
    """Whether bouts are asked for today. While something else stands against them: `None`, and that."""
    found = bars(tx, gather(tx, tx.people.client(client.id), today_of(client, now)))
    return (None, (stopped(found),)) if found else (_goes_on(tx, client, now), ())


def _episode(pause: Pause) -> str:
    return f"break:{pause.id}"


def _iso(day: date | None) -> str | None:
    return day.isoformat() if day else None


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
        words = message("break-by-clinician", clinician=clinician, until=_iso(last))
        _tell(tx, client, f"break:{pause.id}", words, now)
        return reply(
            "client-on-break",
            client=client_id,
            name=name_of(tx, client_id),
            until=_iso(last),
            too_long=_too_long(tx, client, last),
        )


def end_for(tx: Tx, by: int, client_id: int, now: datetime) -> Reply:
    """The clinician ends a break; the client is told."""
    with changing(tx, client_id, now) as client:
        pause = on_break(tx, client_id, today_of(client, now))
        if pause is None or not end(tx, client, by, now):
            return reply("client-no-break", client=client_id, name=name_of(tx, client_id))
        asked, still = _from_now_on(tx, client, now)
        clinician = clinician_name(tx, client)
        over = text("break-ended-by-clinician", clinician=clinician, today=asked)
        _tell(tx, client, f"break-over:{pause.id}", (over, *still), now)
        return reply("client-break-over", client=client_id, name=name_of(tx, client_id))


def _tell(tx: Tx, client: Client, key: str, words: Message, now: datetime) -> None:
    person = tx.people.get(client.id)
    if person is not None and person.state is State.READY and client.consent_at is not None:
        tell(tx, client.id, key, Lane.REST, words, now)
