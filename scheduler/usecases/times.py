"""A client's own times within the plan: zone, window, quiet times (J4, C3)."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import replace
from datetime import datetime
from zoneinfo import ZoneInfo, available_timezones

from scheduler.domain.days import BoutState
from scheduler.domain.hours import Hours, Span, parse_span
from scheduler.domain.messages import Argument, Message, message, text
from scheduler.domain.plan import MOVEMENTS, Plan, check_plan
from scheduler.domain.reply import Reply, reply
from scheduler.domain.settings import Practice
from scheduler.domain.wall import wall
from scheduler.domain.week import Why
from scheduler.domain.weekdays import WEEK, rested
from scheduler.ports import Question, Tx
from scheduler.usecases import moments, weekplan
from scheduler.usecases.opening import begin_day
from scheduler.usecases.rest import Running, gather, replan, today_of
from scheduler.usecases.wake import changing


def screen(tx: Tx, client_id: int) -> Reply:
    client = tx.people.client(client_id)
    hours = client.hours or default_hours(tx, client_id, tx.book.practice())
    own = flexible(tx, client_id) is not None
    return reply(
        "ask-times",
        zone=client.zone.key,
        **hours_args(hours),
        days=list(client.days) if own else [],
        flexible=own,
    )


def flexible(tx: Tx, client_id: int) -> Plan | None:
    """The client's plan if it leaves the days to her."""
    version = tx.plans.latest(client_id)
    return version.plan if version and not version.plan.weekdays else None


def hours_args(hours: Hours) -> dict[str, Argument]:
    """Window and quiet times as arguments: minutes of the day, `[[start, end], ...]`."""
    return {
        "window": [hours.window.start, hours.window.end],
        "quiet": [[each.start, each.end] for each in hours.quiet],
    }


def default_hours(tx: Tx, client_id: int, practice: Practice) -> Hours:
    """The plan's hours, else the practice's."""
    version = tx.plans.latest(client_id)
    return version.plan.hours if version else Hours(parse_span(practice.window), ())


def ask_time_field(tx: Tx, client_id: int, field: str, now: datetime) -> Reply:
    """Ask for the zone, the window, the quiet times or, in a flexible plan, the days; the screen follows."""
    if field == "days":
        own = flexible(tx, client_id) is not None
        days = tx.people.client(client_id).days
        return _ask_days(tx, client_id, days, now) if own else screen(tx, client_id)
    tx.questions.ask(Question(client_id, "join", f"times-{field}", asked_at=now))
    return reply(f"ask-times-{field}")


def _ask_days(tx: Tx, client_id: int, days: Collection[int], now: datetime) -> Reply:
    body = {"days": sorted(days)}
    tx.questions.ask(Question(client_id, "join", "times-days", body, asked_at=now))
    return reply("ask-times-days", days=body["days"])


def tick_day(tx: Tx, client_id: int, day: int, now: datetime, *, chosen: bool) -> Reply:
    """A weekday is put in or taken out on the screen of days; "that is all" keeps them."""
    ticked = _ticked(tx, client_id)
    if ticked is None or not 0 <= day < WEEK:
        return reply("question-over")
    return _ask_days(tx, client_id, ticked | {day} if chosen else ticked - {day}, now)


def keep_ticked(tx: Tx, client_id: int, now: datetime) -> Reply:
    """The days on the screen are all."""
    ticked = _ticked(tx, client_id)
    if ticked is None:
        return reply("question-over")
    return set_days(tx, client_id, tuple(sorted(ticked)), now)


def _ticked(tx: Tx, client_id: int) -> set[int] | None:
    asked = next((q for q in tx.questions.of(client_id) if q.step == "times-days"), None)
    return set(asked.body["days"]) if asked else None


def asks_zone(tx: Tx, client_id: int) -> bool:
    """Whether her times, or her zone, are what is being asked."""
    steps = {"times", "times-zone", "times-sure"}
    return any(q.kind == "join" and q.step in steps for q in tx.questions.of(client_id))


def propose_zone(tx: Tx, client_id: int, zone: str, now: datetime) -> Reply:
    """Ask whether the zone of a shared place is hers; at sea, or where none is known, ask for a city."""
    if not zone:
        ask_time_field(tx, client_id, "zone", now)
        return reply("answer-zone", suggestions=[])
    asked = Question(
        client_id,
        "join",
        "times-sure",
        {"zone": zone, "at": wall(now, ZoneInfo(zone))},
        asked_at=now,
    )
    tx.questions.ask(asked)
    return Reply(again(tx, client_id, asked), in_place=False)


def again(tx: Tx, client_id: int, question: Question) -> Message:
    """The screen of times once more, or whether a zone is hers, with its time by which she can tell."""
    if question.step == "times":
        return screen(tx, client_id).message
    if question.step == "times-days":
        return message("ask-times-days", days=question.body["days"])
    return message("ask-zone-sure", zone=question.body["zone"], at=question.body["at"])


def _proposed(tx: Tx, client_id: int) -> Question | None:
    return next((q for q in tx.questions.of(client_id) if q.step == "times-sure"), None)


def zone_sure(tx: Tx, client_id: int, yes: bool, now: datetime) -> Reply:
    """Her answer in words about the zone of her last place: it is kept, or asked for in words."""
    asked = _proposed(tx, client_id)
    if asked is None:
        return reply("question-over")
    if not yes:
        return ask_time_field(tx, client_id, "zone", now)
    return set_time_field(tx, client_id, "zone", ZoneInfo(asked.body["zone"]), now)


def zone_is(tx: Tx, client_id: int, zone: str, now: datetime) -> Reply:
    """A tap on the zone of a place of hers, perhaps not the last one: that zone is kept (J4)."""
    if not asks_zone(tx, client_id) or zone not in available_timezones():
        return reply("question-over")
    return set_time_field(tx, client_id, "zone", ZoneInfo(zone), now)


def zone_is_not(tx: Tx, client_id: int, zone: str, now: datetime) -> Reply:
    """No to the zone of a place. If she has shared another since, that one is still asked about."""
    asked = _proposed(tx, client_id)
    if asked is None:
        return reply("question-over")
    if asked.body["zone"] != zone:
        return Reply(again(tx, client_id, asked))
    return ask_time_field(tx, client_id, "zone", now)


def set_time_answer(tx: Tx, client_id: int, field: str, value: object, now: datetime) -> Reply:
    """A zone, a window or quiet times as answered, made into the client's own hours."""
    if isinstance(value, bool):
        return zone_sure(tx, client_id, value, now)
    if isinstance(value, ZoneInfo):
        return set_time_field(tx, client_id, "zone", value, now)
    client = tx.people.client(client_id)
    hours = client.hours or default_hours(tx, client_id, tx.book.practice())
    if isinstance(value, Span):
        return set_time_field(tx, client_id, field, replace(hours, window=value), now)
    if field == "days":
        named = value if isinstance(value, tuple) else None
        return set_days(tx, client_id, named, now) if named else keep_ticked(tx, client_id, now)
    if isinstance(value, tuple):
        return set_time_field(tx, client_id, field, replace(hours, quiet=value), now)
    return screen(tx, client_id)


def set_time_field(
    tx: Tx, client_id: int, field: str, value: ZoneInfo | Hours, now: datetime
) -> Reply:  # fmt: skip
    """Keep the client's own zone or hours, if the plan can still be carried out within them (C3)."""
    with changing(tx, client_id, now) as client:
        zone = value if isinstance(value, ZoneInfo) else client.zone
        hours = client.hours if isinstance(value, ZoneInfo) else value
        after = replace(client, zone=zone, hours=hours)
        version = tx.plans.latest(client_id)
        if version is not None:
            faults = check_plan(
                version.plan,
                client_hours=after.hours,
                zone=after.zone,
                ceiling=None,
                estimate_accepted=True,
                movement=MOVEMENTS[version.plan.movement],
            )
            if faults:
                return Reply((text("times-do-not-fit"), *screen(tx, client_id).message))
        tx.people.save_client(after)
        tx.book.audit(client_id, f"times-{field}", client_id, now)
        over = moments.day_over(tx, after, now)
        weekplan.skipped(tx, client, today_of(client, now), over, Why.TRAVEL)
        running = gather(tx, after, today_of(after, now))
        _leave_other_days(tx, running)
        if running.day is not None:
            replan(tx, running, now)
        else:
            begin_day(tx, after, now)
    tx.questions.ask(Question(client_id, "join", "times", asked_at=now))
    return screen(tx, client_id)


def set_days(tx: Tx, client_id: int, days: tuple[int, ...], now: datetime) -> Reply:
    """Her own weekdays in a flexible plan, if it allows them; days of this week that have begun stay (J4)."""
    with changing(tx, client_id, now) as client:
        plan = flexible(tx, client_id)
        if plan is None:
            return screen(tx, client_id)
        fault = None
        if not plan.days_min <= len(days) <= plan.days_max:
            fault = weekplan.wrong_count(plan.days_min, plan.days_max)
        elif not rested(days, plan.rest_days):
            fault = text("days-rest", rest_days=plan.rest_days)
        if fault is not None:
            return Reply((fault, *_ask_days(tx, client_id, days, now).message))
        after = replace(client, days=days)
        tx.people.save_client(after)
        tx.book.audit(client_id, "times-days", client_id, now)
        weekplan.again(tx, after, today_of(after, now))
        begin_day(tx, after, now)
    tx.questions.ask(Question(client_id, "join", "times", asked_at=now))
    return screen(tx, client_id)


def _leave_other_days(tx: Tx, running: Running) -> None:
    """Take back what waits for a day that is not today by the new clock: it would never be asked (Z3)."""
    for bout in tx.days.open_bouts(running.client.id):
        if bout.state is BoutState.WAITING and bout.day != running.today:
            tx.outbox.cancel_prompts(running.client.id, "another day")
            tx.days.save_bout(replace(bout, state=BoutState.WITHDRAWN))
