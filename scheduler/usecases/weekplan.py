"""The impact days planned for a client's week: suggested, chosen by her, made up (W2, W3).

A week is a row from its first day on, so that a day that has passed is judged by what was planned then.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date, timedelta

from scheduler.domain import week as w
from scheduler.domain.breaks import LONGEST
from scheduler.domain.days import Day
from scheduler.domain.messages import Text, text
from scheduler.domain.people import Client
from scheduler.domain.plan import Plan, suggest_days
from scheduler.domain.weekdays import WEEK
from scheduler.ports import PlanVersion, Tx, WeekPlan
from scheduler.usecases.rest import Running, on_break

A_DAY = timedelta(days=1)
A_WEEK = timedelta(days=7)


@dataclass(frozen=True, slots=True)
class Standing:
    """A client's week as it stands: what is planned, and what its reach looks at from a day on (W4)."""

    plan: Plan
    planned: WeekPlan
    week: w.Week

    @property
    def possible(self) -> tuple[date, ...]:
        return w.possible(self.week)

    @property
    def reach(self) -> int:
        """Impact days that count or still can."""
        return len(self.week.counted) + len(self.possible)

    @property
    def needed(self) -> int:
        """The plan's minimum, or less where the week began for the client too late to hold it."""
        start = self.planned.start
        days = tuple(start + timedelta(days=n) for n in range(WEEK))
        within = tuple(
            day for day in days if day >= self.planned.since and _in_dates(self.plan, day)
        )
        whole = w.Week(frozenset(), frozenset(), within, self.plan.rest_days, self.plan.days_max)
        return min(self.plan.days_min, len(w.possible(whole)))


def start_of(tx: Tx, day: date) -> date:
    """The first day of the week that a day lies in (W1)."""
    return w.week_start(day, tx.book.practice().first_weekday)


def ensure(tx: Tx, client: Client, day: date) -> WeekPlan | None:
    """The client's week around a day, planned now if it was not yet; `None` while nothing is prescribed."""
    start = start_of(tx, day)
    known = tx.weeks.get(client.id, start)
    version = tx.plans.on(client.id, day)
    if known is not None or version is None or tx.plans.clearance(client.id) is None:
        return known
    before = tx.weeks.get(client.id, start - A_WEEK)
    since = start if before is not None else max(start, day)
    planned = WeekPlan(client.id, start, since, suggestion(tx, client, version, start, since))
    tx.weeks.save(planned)
    return planned


def suggestion(
    tx: Tx, client: Client, version: PlanVersion, start: date, earliest: date
) -> tuple[date, ...]:
    """The days that are suggested for a week from `earliest` on: her own weekdays if they fit (W2)."""
    plan = version.plan
    loads = _loads(tx, client, plan, start - timedelta(days=plan.rest_days), earliest - A_DAY)
    own = [
        day
        for day in (start + timedelta(days=n) for n in range(WEEK))
        if day.weekday() in client.days and day >= earliest and _in_dates(plan, day)
    ]
    fits = all(
        w.apart(day, [*loads, *(other for other in own if other != day)], plan.rest_days)
        for day in own
    )
    if not plan.weekdays and own and fits:
        return tuple(own)
    return suggest_days(plan, start, earliest, tuple(loads), len(own) or None)


def _in_dates(plan: Plan, day: date) -> bool:
    return plan.start <= day and (plan.end is None or day <= plan.end)


def _loads(tx: Tx, client: Client, plan: Plan, first: date, last: date) -> frozenset[date]:
    done = tx.ledger.between(client.id, first, last)
    return w.load_days((day, reps, plan.daily_total) for day, reps in done.items())


def rested(tx: Tx, running: Running) -> bool:
    """Whether the days before this one leave it its rest: load days count, planned or not (W3)."""
    plan, day = running.plan, running.today
    first = day - timedelta(days=plan.rest_days if plan else 0)
    return plan is None or not _loads(tx, running.client, plan, first, day - A_DAY)


def again(tx: Tx, client: Client, first: date) -> None:
    """A new prescription: the week's days from `first` on are suggested anew.

    Days before it stay, and so does a day whose bouts have begun.
    """
    start = start_of(tx, first)
    known, version = tx.weeks.get(client.id, start), tx.plans.on(client.id, first)
    if known is None or version is None:
        return
    kept = [day for day in known.days if day < first or tx.days.get(client.id, day) is not None]
    new = [
        day
        for day in suggestion(tx, client, version, start, first)
        if w.apart(day, kept, version.plan.rest_days)
    ]
    tx.weeks.save(replace(known, days=tuple(sorted({*kept, *new}))))


def wrong_count(least: int, most: int) -> Text:
    """What to say where so many days were named that the plan does not allow it."""
    return text("days-count", least=least, most=most, exact=least == most)


def is_planned(tx: Tx, client: Client, day: date) -> bool:
    """Whether a day is one of the impact days planned for its week."""
    planned = ensure(tx, client, day)
    return planned is not None and day in planned.days


def first_asked(tx: Tx, client: Client, first: date) -> date | None:
    """The first day from `first` on that is planned and not on a break, with its rest kept, as things stand.

    `None` where there is none: the plan ends before it, or nobody knows when a break ends.
    """
    for day in (first + timedelta(days=n) for n in range(LONGEST)):
        version = tx.plans.on(client.id, day)
        if version is None or not _in_dates(version.plan, day) or on_break(tx, client.id, day):
            continue
        start = start_of(tx, day)
        known = tx.weeks.get(client.id, start)
        days = known.days if known else suggestion(tx, client, version, start, start)
        before = day - timedelta(days=version.plan.rest_days)
        if day in days and not _loads(tx, client, version.plan, before, day - A_DAY):
            return day
    return None


def standing(tx: Tx, client: Client, planned: WeekPlan, over: date) -> Standing | None:
    """How the week stands once the day `over` has ended; `None` where no plan is in force."""
    last = planned.start + timedelta(days=WEEK - 1)
    version = tx.plans.on(client.id, min(max(over, planned.start), last))
    if version is None:
        return None
    plan, percent = version.plan, tx.book.practice().count_percent
    began = {day.day: day for day in tx.days.between(client.id, planned.start, last)}
    done = tx.ledger.between(client.id, planned.start - timedelta(days=plan.rest_days), last)
    pauses = tx.pauses.of(client.id, planned.start)
    loads = [
        (day, reps, began[day].total if day in began else plan.daily_total)
        for day, reps in done.items()
    ]
    reached = {day for day, reps, total in loads if w.counts(reps, total, percent)}
    counted = frozenset(
        day
        for day in {*reached, *began}
        if day >= planned.start and _counted(began.get(day), day in reached)
    )
    ahead = (over + timedelta(days=n) for n in range(1, (last - over).days + 1))
    open_days = tuple(
        day
        for day in ahead
        if day >= planned.start
        and _in_dates(plan, day)
        and not any(pause.covers(day) for pause in pauses)
    )
    week = w.Week(counted, w.load_days(loads), open_days, plan.rest_days, plan.days_max)
    return Standing(plan, planned, week)


def _counted(row: Day | None, reached: bool) -> bool:
    """As judged, which the clinician may have corrected; an open day by its reps."""
    return row.verdict == w.Verdict.COUNTED if row is not None and row.verdict else reached


def within_maximum(tx: Tx, client: Client, day: date) -> bool:
    """Whether the plan's maximum of days a week leaves room for one more on this day (C3)."""
    planned = ensure(tx, client, day)
    found = standing(tx, client, planned, day - A_DAY) if planned else None
    return found is None or len(found.week.counted - {day}) < found.plan.days_max


def skipped(tx: Tx, client: Client, before: date, over: date, why: w.Why) -> None:
    """Planned days after `before` up to `over` on which nothing could be asked, and why (Z3, R4)."""
    for n in range(1, (over - before).days + 1):
        day = before + timedelta(days=n)
        version, row = tx.plans.on(client.id, day), tx.days.get(client.id, day)
        if version is None or not is_planned(tx, client, day):
            continue
        if row is None:
            row = Day(client.id, day, version.id, version.plan.daily_total, ())
        elif row.why or why is w.Why.TRAVEL:
            continue  # it is known, or it had begun by the clock that she had then
        tx.days.save(replace(row, why=why.value))
