"""A client's week as one line of a digest: the same values that are shown, drawn and written to files.

Everything is read for all clients at once and worked out by pure functions (W6, K3).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date, datetime, timedelta

from scheduler.domain import week as w
from scheduler.domain.days import Day
from scheduler.domain.digest import OPEN, Kept, figures
from scheduler.domain.hours import instant, local_day
from scheduler.domain.messages import Argument
from scheduler.domain.people import State
from scheduler.domain.plan import MOVEMENTS, Plan
from scheduler.domain.settings import Practice
from scheduler.domain.steptest import judge, seconds
from scheduler.domain.weekdays import WEEK
from scheduler.ports import ClientWeek, Tx

A_DAY = timedelta(days=1)
PAIN_FLAGS = frozenset({"pain", "question-open", "not-read"})
"""Flags that a hold beside them says already."""

Line = dict[str, Argument]


def lines(tx: Tx, clients: Sequence[int], start: date, now: datetime) -> tuple[Line, ...]:
    """The lines of these clients for the week that begins on `start`, as it stands, in their order."""
    found = tx.weeks.of_clients(clients, start, start + timedelta(days=WEEK - 1))
    practice = tx.book.practice()
    return tuple(line(each, start, practice, now) for each in found)


def line(of: ClientWeek, start: date, practice: Practice, now: datetime) -> Line:
    """One client's week; the fields are those that pictures and files name."""
    today = local_day(now, of.client.zone)
    kept = kept_days(of, start)
    plan = plan_on(of, min(today, start + timedelta(days=WEEK - 1)))
    numbers = figures(
        kept,
        needed=min(plan.days_min, len(_keepable(of, kept, today))) if plan else 0,
        percent=practice.count_percent,
        tau=practice.tau,
        today=today,
    )
    by_day = {each.day: each for each in kept}
    week = [start + timedelta(days=n) for n in range(WEEK)]
    return {
        "client": of.person.id,
        "name": of.person.name,
        "movement": plan.movement if plan else "",
        "per_side": bool(plan and MOVEMENTS[plan.movement].per_side),
        "days": numbers.days,
        "needed": numbers.days_needed,
        "reps": numbers.reps,
        "reps_capped": numbers.reps_capped,
        "prescribed": numbers.reps_prescribed,
        "bouts": numbers.bouts,
        "bouts_planned": numbers.bouts_planned,
        "spread": numbers.spread,
        "pain": worst_pain(of),
        "flags": len(of.flags),
        "urgent": sum(flag.urgent for flag in of.flags),
        "weekly": _weekly(of),
        "excused": numbers.excused,
        "open": numbers.still_open,
        "companions": [*_companions(of, start, plan, practice, today)],
        "cells": [_cell(of, day, by_day.get(day), practice, today) for day in week],
        "reasons": [*reasons(of)],
        "step": _step(of, practice),
    }


def _step(of: ClientWeek, practice: Practice) -> Argument:
    """The last step test by the end of the week: day, better time in seconds, how it screened (T3)."""
    if not of.steps:
        return None
    last, before = of.steps[-1], of.steps[:-1]
    verdict = judge(
        last.trials, before, practice.step_cutoff_hundredths, practice.step_slower_percent
    )
    return {
        "day": last.day.isoformat(),
        "best": seconds(last.best),
        "positive": verdict.positive,
        "slower": verdict.slower,
    }


def _companions(
    of: ClientWeek, start: date, plan: Plan | None, practice: Practice, today: date
) -> Iterator[Argument]:
    """Each companion with the days on which it was done, so far as a day counts, of those it was due on.

    Days on a break or a hold leave the denominator like those of the impact (W6), unless it was done.
    """
    for each in plan.companions if plan else ():
        done = {
            entry.day
            for entry in of.companions
            if entry.companion == each.key
            and start <= entry.day < start + timedelta(days=WEEK)
            and w.counts(entry.rounds, each.rounds, practice.count_percent)
        }
        days = (start + timedelta(days=n) for n in range(WEEK))
        due = [day for day in days if day.weekday() in each.weekdays]
        excused = [day for day in due if day not in done and _stopped(of, day, today)]
        yield {"name": each.key, "done": len(done), "days": len(due) - len(excused)}


def _stopped(of: ClientWeek, day: date, today: date) -> bool:
    """Whether all exercise was stopped on a day: a hold of one movement stops no companion."""
    return _paused(of, day) or (day <= today and held(of, day, None))


def plan_on(of: ClientWeek, day: date) -> Plan | None:
    """The plan in force on a day; versions come newest first."""
    return next((each.plan for each in of.plans if each.valid_from <= day), None)


def kept_days(of: ClientWeek, start: date) -> tuple[Kept, ...]:
    """The seven days with what was planned and what the ledger says, those without a plan left out."""
    began = {day.day: day for day in of.days}
    planned = {day for week in of.weeks if week.start == start for day in week.days}
    days = (start + timedelta(days=n) for n in range(WEEK))
    found = (_kept(of, day, began.get(day), day in planned) for day in days)
    return tuple(each for each in found if each is not None)


def _kept(of: ClientWeek, day: date, row: Day | None, planned: bool) -> Kept | None:
    plan = plan_on(of, day)
    if plan is None:
        return None
    return Kept(
        day=day,
        plan=plan,
        total=row.total if row else plan.daily_total,
        planned=planned or bool(row and row.planned),
        verdict=row.verdict if row else "",
        why=row.why if row else "",
        planned_at=tuple(each.at for each in row.planned) if row else (),
        bouts=tuple((entry.at, entry.reps) for entry in of.entries if entry.day == day),
    )


def _keepable(of: ClientWeek, kept: tuple[Kept, ...], today: date) -> tuple[date, ...]:
    """The planned days that were not excused: days on a break or a hold leave the denominator (W6)."""
    return tuple(each.day for each in kept if each.planned and not _excused(of, each, today))


def _excused(of: ClientWeek, kept: Kept, today: date) -> bool:
    """As judged; an open day by the breaks and holds of now."""
    if kept.verdict:
        return kept.excused
    stopped = kept.day <= today and held(of, kept.day, kept.plan.movement)
    return stopped or _paused(of, kept.day)


def _paused(of: ClientWeek, day: date) -> bool:
    return any(pause.covers(day) for pause in of.pauses)


def held(of: ClientWeek, day: date, movement: str | None) -> bool:
    """Whether a hold of all exercise, or of this movement, was open on the client's local day."""
    start, end = (instant(each, 0, of.client.zone) for each in (day, day + A_DAY))
    return any(hold.stopped(movement, start, end) for hold in of.holds)


def _cell(
    of: ClientWeek, day: date, kept: Kept | None, practice: Practice, today: date
) -> Argument:
    state, why = _state(of, day, kept, practice, today)
    done = kept.done if kept else 0
    total = kept.total if kept else 0
    return {"day": day.isoformat(), "state": state, "why": why, "done": done, "total": total}


def _state(  # one a state
    of: ClientWeek, day: date, kept: Kept | None, practice: Practice, today: date
) -> tuple[str, str]:
    if kept is None:
        return ("extra" if any(entry.day == day for entry in of.entries) else "rest"), ""
    if kept.verdict:
        return kept.verdict, kept.why
    if kept.planned and day > today:
        paused = _paused(of, day)
        return ("excused", "break") if paused else ("ahead", "")
    if kept.planned or w.counts(kept.done, kept.total, practice.count_percent):
        return OPEN, ""
    return ("extra" if kept.done else "rest"), ""


def worst_pain(of: ClientWeek) -> int | None:
    """The highest score the client gave within the span."""
    scores = [body.get("score") for _, _, _, body in of.reports]
    return max((score for score in scores if isinstance(score, int)), default=None)


def _weekly(of: ClientWeek) -> Argument:
    """What the client said to the week's question; `None` where nothing came: that is not "no" (W8)."""
    answers = [body for kind, _, _, body in of.reports if kind == "weekly"]
    return list(answers[-1]["said"]) if answers else None


def reasons(of: ClientWeek) -> Iterator[Argument]:
    """Why the client needs her clinician: holds, then open flags, the urgent first."""
    holds = [hold for hold in of.holds if hold.released_at is None]
    if holds:
        first = min(hold.opened_at for hold in holds)
        reason: dict[str, Argument] = {"kind": "hold", "since": _local(of, first)}
        if (pain := worst_pain(of)) is not None:
            reason["pain"] = pain
        yield reason
    told = PAIN_FLAGS if holds else frozenset()
    for flag in sorted(of.flags, key=lambda flag: (not flag.urgent, flag.opened_at)):
        if flag.kind not in told:
            yield {"kind": flag.kind, "since": _local(of, flag.opened_at), "flag": flag.id}
    cleared = of.clearance is not None and of.clearance.lapsed_at is None
    if of.person.state is State.READY and not cleared and not holds:
        yield {"kind": "no-clearance"}


def _local(of: ClientWeek, at: datetime) -> str:
    return local_day(at, of.client.zone).isoformat()
