"""The instants of a client's day at which something about her week falls due."""

from __future__ import annotations

from datetime import date, datetime, timedelta

from scheduler.domain import steptest
from scheduler.domain.hours import day_hours_in_utc, instant
from scheduler.domain.people import Client
from scheduler.domain.weekdays import WEEK
from scheduler.domain.windows import common_hours
from scheduler.ports import Tx
from scheduler.usecases import weekplan
from scheduler.usecases.rest import closes_at, today_of

A_DAY = timedelta(days=1)
EVENING = 18 * 60
"""Minute of the last day of a week at which the week's question is asked, at the latest."""


def window(tx: Tx, client: Client, day: date) -> tuple[datetime, datetime] | None:
    """When a day's hours begin and end (UTC); `None` where plan and client have none in common."""
    version = tx.plans.on(client.id, day)
    hours = common_hours(version.plan, client, day) if version else None
    if hours is None:
        return None
    start, end, _ = day_hours_in_utc(day, hours, client.zone)
    return start, end


def in_hours(tx: Tx, client: Client, now: datetime) -> bool:
    """Whether it is a time at which she may be written to; never while she has no hours."""
    hours = window(tx, client, today_of(client, now))
    return hours is not None and hours[0] <= now < hours[1]


def day_over(tx: Tx, client: Client, now: datetime) -> date:
    """The last local day whose hours have ended: no impact can be planned on it any more."""
    today = today_of(client, now)
    hours = window(tx, client, today)
    return today if hours is not None and now >= hours[1] else today - A_DAY


def evening(tx: Tx, client: Client, day: date, end: datetime) -> datetime | None:
    """When the weekly question is asked: on a week's last day at 18:00, or a minute before its hours `end`.

    `None` on every other day.
    """
    if day != weekplan.start_of(tx, day) + timedelta(days=WEEK - 1):
        return None
    return min(instant(day, EVENING, client.zone), end - timedelta(minutes=1))


def middle(tx: Tx, client: Client, day: date) -> datetime | None:
    """When companions are asked for: the middle of a day's hours, or the end of the quiet time there.

    `None` where no companion is prescribed for that day, or no hour is left for it.
    """
    version = tx.plans.on(client.id, day)
    if version is None:
        return None
    if not any(day.weekday() in each.weekdays for each in version.plan.companions):
        return None
    return halfway(tx, client, day)


def halfway(tx: Tx, client: Client, day: date) -> datetime | None:
    """The middle of a day's hours (UTC), or the end of the quiet time there; `None` without hours."""
    version = tx.plans.on(client.id, day)
    hours = common_hours(version.plan, client, day) if version else None
    if hours is None:
        return None
    start, end, quiets = day_hours_in_utc(day, hours, client.zone)
    minutes = (end - start) // timedelta(minutes=1) // 2
    moment = start + timedelta(minutes=minutes - minutes % 5)
    for begins, ends in sorted(quiets):
        if begins < moment < ends:
            moment = ends
    return moment if moment <= end else None


def _retest_is_asked(tx: Tx, client: Client, today: date) -> bool:
    """Whether the step test may be asked for at home today."""
    if client.stepped_on is None or not client.step_home:
        return False
    due = steptest.due_on(client.stepped_on, tx.book.practice().step_weeks)
    return due <= today < due + steptest.GRACE


def of(tx: Tx, client: Client, now: datetime) -> list[datetime]:
    """Today's hours, a week's last evening, and the close of the next day to be judged."""
    today = today_of(client, now)
    found = []
    if client.judged_to is not None:
        found.append(closes_at(client, client.judged_to + A_DAY, tx.book.practice()))
    hours = window(tx, client, today)
    if hours is not None:
        found += hours
        if asks := evening(tx, client, today, hours[1]):
            found.append(asks)
    companions_at = middle(tx, client, today)
    if companions_at is not None:
        found.append(companions_at)
    if _retest_is_asked(tx, client, today) and (retest_at := halfway(tx, client, today)):
        found.append(retest_at)
    return [moment for moment in found if moment > now]
