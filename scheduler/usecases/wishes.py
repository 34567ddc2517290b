"""How a client asks for a break: what she leaves open is asked, then it is kept and her clinician told."""

from __future__ import annotations

from dataclasses import asdict, replace
from datetime import date, datetime, timedelta
from typing import Any

from scheduler.domain.breaks import LONGEST, REASONS, Wish, last_day
from scheduler.domain.messages import Message, text
from scheduler.domain.people import Client
from scheduler.domain.reply import Reply, reply
from scheduler.domain.wall import iso
from scheduler.ports import Question, Tx
from scheduler.usecases import breaks
from scheduler.usecases.flags import raise_flag
from scheduler.usecases.names import clinician_name
from scheduler.usecases.questions import open_question
from scheduler.usecases.rest import gather, on_break, today_of
from scheduler.usecases.wake import changing

A_DAY = timedelta(days=1)


def ask(tx: Tx, client_id: int, now: datetime) -> Reply:
    """A client opens the screen of breaks: the one that goes on, the next one ahead, or why she wants one."""
    with changing(tx, client_id, now) as client:
        later = breaks.ahead(tx, client, today_of(client, now))
        if later and on_break(tx, client_id, today_of(client, now)) is None:
            day, until = later[0].first.isoformat(), iso(later[0].last)
            return reply("break-ahead", day=day, until=until, pause=later[0].id)
        return _carry_on(tx, client, Wish(), now)


def another(tx: Tx, client_id: int, now: datetime) -> Reply:
    """A break beside one that lies ahead."""
    return wish(tx, client_id, Wish(), now)


def wish(tx: Tx, client_id: int, said: Wish, now: datetime) -> Reply:
    """A break in the client's own words."""
    with changing(tx, client_id, now) as client:
        return _carry_on(tx, client, said, now)


def because(tx: Tx, client_id: int, reason: str, now: datetime) -> Reply:
    """The reason is known; what was said before is kept."""
    with changing(tx, client_id, now) as client:
        if reason not in REASONS:
            return reply("question-over")
        before = open_question(tx, client_id, "break")
        said = said_so_far(before) if before and before.step == "reason" else Wish()
        return _carry_on(tx, client, replace(said, reason=reason), now)


def more(tx: Tx, client_id: int, said: Wish, now: datetime) -> Reply:
    """An answer to why, from when or how long, beside what was said before."""
    with changing(tx, client_id, now) as client:
        question = open_question(tx, client_id, "break")
        if question is None:
            return reply("question-over")
        before = said_so_far(question)
        merged = replace(
            before,
            reason=said.reason or before.reason,
            first=said.first or before.first,
            later=said.later if said.first or said.later else before.later,
        )
        if said.says_how_long:
            merged = replace(merged, last=said.last, days=said.days, unsure=said.unsure)
        return _carry_on(tx, client, merged, now)


def lasts_for(tx: Tx, client_id: int, length: str, now: datetime) -> Reply:
    """How long, by a button: one of `LENGTHS`."""
    with changing(tx, client_id, now) as client:
        question = open_question(tx, client_id, "break")
        if question is None or question.step != "length":
            return reply("question-over")
        said = said_so_far(question)
        last = last_day(said.first or today_of(client, now), length)
        return _carry_on(tx, client, replace(said, last=last, days=None, unsure=last is None), now)


def not_now(tx: Tx, client_id: int, now: datetime) -> Reply:
    """No break after all."""
    with changing(tx, client_id, now):
        if open_question(tx, client_id, "break") is None:
            return reply("question-over")
        tx.questions.close(client_id, "break")
        return reply("break-not-now")


def cancel(tx: Tx, client_id: int, pause_id: int | None, now: datetime) -> Reply:
    """A break that has not begun is off; without an id the next one."""
    with changing(tx, client_id, now) as client:
        later = breaks.ahead(tx, client, today_of(client, now))
        pause = next((each for each in later if pause_id in {None, each.id}), None)
        if pause is None:
            return reply("question-over")
        breaks.cancel(tx, client, pause, client_id, now)
        return reply("break-cancelled", day=pause.first.isoformat())


def back(tx: Tx, client_id: int, now: datetime) -> Reply:
    """The client is back before her break was over."""
    with changing(tx, client_id, now) as client:
        if not breaks.end(tx, client, client_id, now):
            return reply("no-break")
        asked, still = breaks.from_now_on(tx, client, now)
        return Reply((text("break-over", today=asked), *still))


# --- what is still open --------------------------------------------------------------------------


def _carry_on(tx: Tx, client: Client, said: Wish, now: datetime) -> Reply:
    """Ask for the first thing that is open; where nothing is, the break is kept."""
    today = today_of(client, now)
    going_on = on_break(tx, client.id, today)
    if said.reason is None and going_on is not None and said.first is None and not said.later:
        done = gather(tx, client, today).done
        return reply("break-on", until=iso(going_on.last), done=done)
    if said.reason is None:
        _ask(tx, client, "reason", said, now)
        return reply("ask-break-reason")
    if said.later:
        _ask(tx, client, "first", said, now)
        return reply("ask-break-first")
    if not said.says_how_long:
        return _ask_length(tx, client, said, now)
    return _keep_if_near(tx, client, said, now)


def _keep_if_near(tx: Tx, client: Client, said: Wish, now: datetime) -> Reply:
    today = today_of(client, now)
    first, last = said.dates(today)
    if first < today:  # it was asked about yesterday
        _ask(tx, client, "first", replace(said, first=None, later=True), now)
        return reply("ask-break-first")
    far = today + timedelta(days=LONGEST - 1)
    if first > far or (last is not None and not first <= last <= first + (LONGEST - 1) * A_DAY):
        asked = _ask_length(tx, client, replace(said, last=None, days=None, unsure=False), now)
        return Reply((text("break-too-far"), *asked.message))
    return _keep(tx, client, str(said.reason), first, last, now)


def _ask_length(tx: Tx, client: Client, said: Wish, now: datetime) -> Reply:
    _ask(tx, client, "length", said, now)
    return Reply(_length_from(said.first))


def _keep(
    tx: Tx, client: Client, reason: str, first: date, last: date | None, now: datetime
) -> Reply:
    today = today_of(client, now)
    pause = breaks.begin(tx, client, reason, last, client.id, now, first)
    details: dict[str, Any] = {"away": reason, "until": iso(last)}
    if first > today:
        details["begins"] = first.isoformat()
    raise_flag(
        tx, client, "break", now, urgent=False, details=details, episode=breaks.episode(pause)
    )  # fmt: skip
    clinician, too_long = clinician_name(tx, client), breaks.too_long(tx, client, last)
    if first > today:
        return reply(
            "break-planned", day=first.isoformat(), until=iso(last), pause=pause.id,
            clinician=clinician, too_long=too_long,
        )  # fmt: skip
    return reply(
        "break-started",
        until=iso(last),
        done=gather(tx, client, today).done,
        clinician=clinician,
        too_long=too_long,
    )


# --- the question --------------------------------------------------------------------------------


def asked_again(question: Question) -> Message:
    """The words of an open question once more."""
    if question.step == "length":
        return _length_from(said_so_far(question).first)
    return (text("ask-break-reason" if question.step == "reason" else "ask-break-first"),)


def _length_from(first: date | None) -> Message:
    if first is None:
        return (text("ask-break-length"),)
    return (text("ask-break-length-from", day=first.isoformat()),)


def said_so_far(question: Question) -> Wish:
    """What was said of the break before the open question."""
    body = question.body
    first, last = (date.fromisoformat(body[n]) if body.get(n) else None for n in ("first", "last"))
    rest = {name: body.get(name) for name in ("reason", "days")}
    return Wish(
        **rest, first=first, last=last,
        unsure=bool(body.get("unsure")), later=bool(body.get("later")),
    )  # fmt: skip


def _ask(tx: Tx, client: Client, step: str, said: Wish, now: datetime) -> None:
    body = {**asdict(said), "first": iso(said.first), "last": iso(said.last)}
    tx.questions.ask(Question(client.id, "break", step, body, now))
