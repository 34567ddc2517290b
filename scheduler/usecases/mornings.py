"""What is asked about a week, once each: which days, a day made up, and how the week was (W2, W3, W8).

All of it is of the bot's own accord: it stays away on a hold or a break, and where the day has no room
for another message (P6).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, datetime, timedelta
from itertools import pairwise

from scheduler.domain import week as w
from scheduler.domain.hours import instant
from scheduler.domain.messages import Lane, Message, Text, message, text
from scheduler.domain.people import Client
from scheduler.domain.reply import Reply, reply
from scheduler.domain.weekdays import WEEK
from scheduler.ports import Outgoing, Question, Tx, WeekPlan
from scheduler.usecases import moments, pain, weekplan
from scheduler.usecases.judging import held_on
from scheduler.usecases.opening import begin_day
from scheduler.usecases.questions import open_question
from scheduler.usecases.rest import (
    Running,
    bars,
    bouts_to_come,
    gather,
    messages_left,
    on_break,
    today_of,
    unit,
)
from scheduler.usecases.wake import changing

A_DAY = timedelta(days=1)
SAID = ("pain", "fall", "leak")
"""What the weekly question asks about."""


def ask(tx: Tx, client: Client, now: datetime) -> None:
    """Ask what falls due today: in the morning about days, on a week's last evening about the week."""
    today = today_of(client, now)
    running = gather(tx, client, today)
    hours = moments.window(tx, client, today)
    planned = weekplan.ensure(tx, client, today)
    if hours is None or planned is None or bars(tx, running) or not hours[0] <= now < hours[1]:
        return
    if today == planned.start and running.plan and not running.plan.weekdays:
        _ask_days(tx, running, planned, now)
    _offer(tx, running, planned, now)
    evening = moments.evening(tx, client, today, hours[1])
    if evening is not None and now >= evening:
        _ask_week(tx, running, planned, now)


def to_come(tx: Tx, running: Running, now: datetime) -> int:
    """Messages of today that nudges leave room for: the question about the week on its last evening."""
    hours = moments.window(tx, running.client, running.today)
    evening = moments.evening(tx, running.client, running.today, hours[1]) if hours else None
    return int(evening is not None and now <= evening)


def _say(tx: Tx, running: Running, key: str, words: Message, now: datetime) -> bool:
    """Say it if it was not said and the day has room for it beside its bouts (P6)."""
    if messages_left(tx, running) <= bouts_to_come(tx, running, now):
        return False
    return tx.outbox.add(
        Outgoing(
            key=f"{key}:{running.client.id}",
            lane=Lane.REST,
            message=words,
            person=running.client.id,
            own_day=running.today,
        ),
        now,
    )


# --- which days (W2) -----------------------------------------------------------------------------


def _ask_days(tx: Tx, running: Running, planned: WeekPlan, now: datetime) -> None:
    days = [day.isoformat() for day in planned.days]
    if not planned.chosen and days:
        words = message("week-days", dates=days)
        if _say(tx, running, f"week-days:{planned.start}", words, now):
            body = {"start": planned.start.isoformat(), "days": days}
            tx.questions.ask(Question(running.client.id, "week", "days", body, now))


def keep_days(tx: Tx, client_id: int, now: datetime) -> Reply:
    """The suggestion stands, or what was chosen on the screen."""
    with changing(tx, client_id, now) as client:
        question = open_question(tx, client_id, "week")
        if question is None:
            return reply("question-over")
        days = tuple(date.fromisoformat(day) for day in question.body["days"])
        return choose_days(tx, client, date.fromisoformat(question.body["start"]), days, now)


def change_days(
    tx: Tx, client_id: int, now: datetime, day: date | None = None, *, chosen: bool = True
) -> Reply:
    """Show the days of the week to choose from; a day that is named is put in, or else taken out."""
    with changing(tx, client_id, now):
        question = open_question(tx, client_id, "week")
        if question is None:
            return reply("question-over")
        start = date.fromisoformat(question.body["start"])
        days = {date.fromisoformat(each) for each in question.body["days"]}
        if day is not None and 0 <= (day - start).days < WEEK:
            days = days | {day} if chosen else days - {day}
        body = {**question.body, "days": [each.isoformat() for each in sorted(days)]}
        tx.questions.ask(replace(question, body=body))
        return Reply((_choices(start, sorted(days)),))


def days_by_name(tx: Tx, client_id: int, weekdays: tuple[int, ...], now: datetime) -> Reply:
    """The days named in words ("Mon, Thu") are chosen."""
    with changing(tx, client_id, now) as client:
        question = open_question(tx, client_id, "week")
        if question is None:
            return reply("question-over")
        start = date.fromisoformat(question.body["start"])
        week = (start + timedelta(days=n) for n in range(WEEK))
        days = tuple(day for day in week if day.weekday() in weekdays)
        return choose_days(tx, client, start, days, now)


def _choices(start: date, chosen: Sequence[date]) -> Text:
    week = [(start + timedelta(days=n)).isoformat() for n in range(WEEK)]
    return text("choose-days", choices=week, dates=[day.isoformat() for day in chosen])


def choose_days(
    tx: Tx, client: Client, start: date, days: tuple[date, ...], now: datetime
) -> Reply:
    """Plan the week on these days, if the plan allows them; days that have begun stay."""
    planned = weekplan.ensure(tx, client, start)
    today = today_of(client, now)
    found = weekplan.standing(tx, client, planned, today - A_DAY) if planned else None
    if planned is None or found is None or today >= start + timedelta(days=WEEK):
        tx.questions.close(client.id, "week")
        return reply("question-over")
    begun = {day for day in planned.days if day < today or tx.days.get(client.id, day)}
    wanted = tuple(sorted({*begun, *(day for day in days if day >= today)}))
    fault = _fault(found, wanted)
    if fault is not None:
        return Reply((fault, _choices(start, wanted)))
    tx.weeks.save(replace(planned, days=wanted, chosen=True))
    tx.questions.close(client.id, "week")
    begin_day(tx, client, now)
    return reply("week-days-kept", dates=[day.isoformat() for day in wanted])


def _fault(found: weekplan.Standing, wanted: tuple[date, ...]) -> Text | None:
    """Why the days chosen do not go, with what would."""
    rest, most, least = found.plan.rest_days, found.plan.days_max, min(found.needed, found.reach)
    if not least <= len(wanted) <= most:
        return weekplan.wrong_count(least, most)
    close = any((after - before).days <= rest for before, after in pairwise(wanted))
    loads = [day for day in found.week.loads if day not in wanted]
    if close or any(not w.apart(day, loads, rest) for day in wanted):
        return text("days-rest", rest_days=rest)
    return None


# --- a day made up (W3) --------------------------------------------------------------------------


def _offer(tx: Tx, running: Running, planned: WeekPlan, now: datetime) -> None:
    """The morning after a planned day below the threshold: offer the best other day, or leave it."""
    client, yesterday = running.client, running.today - A_DAY
    settled = {day for day, _ in planned.made_up}
    if yesterday not in planned.days or yesterday in settled or on_break(tx, client.id, yesterday):
        return
    found = weekplan.standing(tx, client, planned, yesterday)
    if found is None or yesterday in found.week.counted:
        return
    if held_on(tx, client, yesterday, found.plan.movement):
        return
    done = sum(entry.reps for entry in tx.ledger.day(client.id, yesterday))
    day = w.make_up(found.week, _planned_days(tx, running, planned), yesterday)
    sides = unit(running.plan)["per_side"]
    if day is None:
        if found.reach < found.needed:
            left = [each.isoformat() for each in planned.days if each > yesterday]
            words = message("week-no-room", needed=found.needed, dates=left)
            _say(tx, running, f"week-no-room:{planned.start}", words, now)
        return
    words = message(
        "make-up",
        day=yesterday.isoformat(),
        instead=day.isoformat(),
        done=done,
        per_side=sides,
        today=day == running.today,
    )
    if _say(tx, running, f"make-up:{yesterday}", words, now):
        end = instant(day, 0, client.zone)
        body = {"day": yesterday.isoformat(), "instead": day.isoformat()}
        expires = end if end > now else instant(day + A_DAY, 0, client.zone)
        tx.questions.ask(Question(client.id, "make-up", "yes-no", body, now, expires))


def _planned_days(tx: Tx, running: Running, planned: WeekPlan) -> tuple[date, ...]:
    """This week's planned days and, as far as the rest rule reaches, the next week's."""
    following = planned.start + timedelta(days=WEEK)
    if running.version is None or running.plan is None:
        return planned.days
    ahead = weekplan.suggestion(tx, running.client, running.version, following, following)
    near = (day for day in ahead if (day - following).days < running.plan.rest_days)
    return (*planned.days, *near)


def make_up(tx: Tx, client_id: int, yes: bool, now: datetime) -> Reply:
    """The answer to an offer: the day is planned, or the one before is final (W3)."""
    with changing(tx, client_id, now) as client:
        question = open_question(tx, client_id, "make-up")
        if question is None:
            return reply("question-over")
        tx.questions.close(client_id, "make-up")
        day, instead = (date.fromisoformat(question.body[key]) for key in ("day", "instead"))
        planned = weekplan.ensure(tx, client, day)
        if planned is None or day in {made for made, _ in planned.made_up}:
            return reply("question-over")
        found = weekplan.standing(tx, client, planned, moments.day_over(tx, client, now))
        others = [each for each in planned.days if each > day]
        if yes and (found is None or not _still_free(found, instead, others)):
            return reply("make-up-too-late", day=instead.isoformat())
        days = tuple(sorted({*planned.days, instead})) if yes else planned.days
        pair = (day, instead if yes else None)
        tx.weeks.save(replace(planned, days=days, made_up=(*planned.made_up, pair)))
        if not yes:
            return reply("make-up-declined")
        begin_day(tx, client, now)
        today = instead == today_of(client, now)
        return reply("make-up-kept", day=instead.isoformat(), today=today)


def _still_free(found: weekplan.Standing, instead: date, others: list[date]) -> bool:
    within = len(found.week.counted) < found.plan.days_max
    free = w.apart(instead, [*found.week.loads, *others], found.plan.rest_days)
    return within and free and instead in found.week.open_days


def offers_over(tx: Tx, client: Client, now: datetime) -> None:
    """An offer of a day that has come without an answer is over; no answer changes nothing."""
    for question in tx.questions.of(client.id):
        over = question.expires_at is not None and now >= question.expires_at
        if question.kind == "make-up" and over:
            tx.questions.close(client.id, "make-up")


# --- how the week was (W8) -----------------------------------------------------------------------


def _ask_week(tx: Tx, running: Running, planned: WeekPlan, now: datetime) -> None:
    words = message("ask-week")
    if _say(tx, running, f"ask-week:{planned.start}", words, now):
        body = {"day": running.today.isoformat()}
        tx.questions.ask(Question(running.client.id, "weekly", "week", body, now))


def weekly(tx: Tx, client_id: int, said: str, now: datetime) -> Reply:
    """The one tap: nothing, or what there was. Pain and falls are asked about as whenever they come."""
    with changing(tx, client_id, now) as client:
        question = open_question(tx, client_id, "weekly")
        if question is None or said not in {*SAID, "none"}:
            return reply("question-over")
        tx.questions.close(client_id, "weekly")
        day = date.fromisoformat(question.body["day"])
        tx.health.report(client.id, "weekly", day, now, {"said": [] if said == "none" else [said]})
    if said == "fall":
        return pain.fell(tx, client_id, now)
    if said == "none":
        return reply("week-thanks")
    return pain.hurts(tx, client_id, now, sign="leak" if said == "leak" else None)
