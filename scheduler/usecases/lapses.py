"""Clearance that lapses, a review that falls due, a plan that ends: each is told once (C2, C5)."""

from __future__ import annotations

from collections.abc import Collection
from datetime import date, datetime, timedelta
from typing import Any

from scheduler.domain import lapses
from scheduler.domain.breaks import LONGEST, ends_clearance
from scheduler.domain.hours import local_day
from scheduler.domain.messages import Lane, Text, message, text
from scheduler.domain.people import Clearance, Client, State
from scheduler.ports import PlanVersion, Tx
from scheduler.usecases import moments
from scheduler.usecases.flags import raise_flag
from scheduler.usecases.names import clinician_name
from scheduler.usecases.post import tell
from scheduler.usecases.rest import today_of, withdraw_all

A_DAY = timedelta(days=1)
LOOKED_BACK = timedelta(days=LONGEST)
"""How far back breaks are looked at: as far as the longest."""
BY_ITSELF = frozenset({"break", "review"})
"""Why clearance lapses with nobody having just said anything."""


def look(tx: Tx, client: Client, now: datetime) -> None:
    """Carry out what has come by the client's date. Her row is held."""
    person = tx.people.get(client.id)
    version = tx.plans.on(client.id, today_of(client, now))
    if person is None or person.state is not State.READY:
        return
    if version is not None:
        _plan_is_over(tx, client, version, now)
    _by_itself(tx, client, version, now)
    _say_so(tx, client, now)


def _by_itself(tx: Tx, client: Client, version: PlanVersion | None, now: datetime) -> None:
    clearance, today = valid_clearance(tx, client.id), today_of(client, now)
    if clearance is None:
        return
    cleared_on = local_day(clearance.at, client.zone)
    since = max(cleared_on, today - LOOKED_BACK)
    if ends_clearance(tx.pauses.of(client.id, since), since, today):
        lapse(tx, client, "break", now)
    elif version is not None and not lapses.is_over(version.plan, today):
        _review(tx, client, version, cleared_on, now)


def valid_clearance(tx: Tx, client_id: int) -> Clearance | None:
    """The clearance in force."""
    found = tx.plans.clearance(client_id)
    return found if found is not None and found.lapsed_at is None else None


# --- clearance -----------------------------------------------------------------------------------


def lapse(
    tx: Tx, client: Client, because: str, now: datetime, **details: Any
) -> tuple[Text, ...]:  # fmt: skip
    """End the clearance and flag it; what the client is told, nothing if it was not in force."""
    clearance = valid_clearance(tx, client.id)
    if clearance is None:
        return ()
    tx.plans.lapse(client.id, because, now)
    withdraw_all(tx, client, "lapsed")
    before = clearance.ceiling.name.lower()
    tx.book.audit(None, "lapse", client.id, now, before=before, after=because)
    raise_flag(
        tx, client, "lapsed", now, urgent=False, details={"because": because, **details},
        episode=f"lapsed:{clearance.at.isoformat()}",
    )  # fmt: skip
    return (_word(tx, client, because),)


def _word(tx: Tx, client: Client, because: str) -> Text:
    return text("lapsed", because=because, clinician=clinician_name(tx, client))


def _say_so(tx: Tx, client: Client, now: datetime) -> None:
    """Clearance that lapsed by itself: the client is told once, in her hours and not at midnight.

    One who was cleared again before her hours began is told nothing of it.
    """
    clearance = tx.plans.clearance(client.id)
    if clearance is None or clearance.lapsed_at is None or not moments.in_hours(tx, client, now):
        return
    because = clearance.lapsed_because
    if because in BY_ITSELF:
        key = f"lapsed:{client.id}:{clearance.lapsed_at.isoformat()}"
        tell(tx, client.id, key, Lane.REST, (_word(tx, client, because),), now)


def answered_again(
    tx: Tx, client: Client, yes: Collection[str], now: datetime
) -> tuple[Text, ...]:  # fmt: skip
    """A "yes or not sure" that the clinician has not seen ends the clearance, from the first one on."""
    new = sorted({*yes} - {*(client.readiness or ())})
    return lapse(tx, client, "readiness", now, readiness=new) if new else ()


def cleared(tx: Tx, client: Client, before: Clearance | None, by: int, now: datetime) -> None:
    """She has cleared the client again: flags that asked for it are closed, the client is told."""
    _close(tx, client, ("lapsed", "review-due"), "cleared", by, now)
    version = tx.plans.latest(client.id)
    lapsed = before is not None and before.lapsed_at is not None
    if lapsed and version is not None and not tx.health.holds(client.id):
        words = message("cleared-told", clinician=clinician_name(tx, client))
        tell(tx, client.id, f"cleared:{client.id}:{now.isoformat()}", Lane.REST, words, now)


# --- review and end ------------------------------------------------------------------------------


def _review(tx: Tx, client: Client, version: PlanVersion, cleared_on: date, now: datetime) -> None:
    plan, today = version.plan, today_of(client, now)
    if lapses.review_is_overdue(plan, cleared_on, today):
        lapse(tx, client, "review", now)
        return
    episode = f"review-due:{plan.review}"
    if lapses.review_is_due(plan, cleared_on, today) and not tx.flags.had(client.id, episode):
        details = {"until": str(plan.review + lapses.GRACE - A_DAY) if plan.review else ""}
        raise_flag(tx, client, "review-due", now, urgent=False, details=details, episode=episode)


def _plan_is_over(tx: Tx, client: Client, version: PlanVersion, now: datetime) -> None:
    """Both are told once, at the start of the client's hours after the last day (C5)."""
    plan, today = version.plan, today_of(client, now)
    if not lapses.is_over(plan, today) or not moments.in_hours(tx, client, now):
        return
    episode = f"plan-ended:{version.id}"
    if tx.flags.had(client.id, episode):
        return
    day = plan.end.isoformat() if plan.end else ""
    raise_flag(tx, client, "plan-ended", now, urgent=False, details={"until": day}, episode=episode)
    words = message("plan-ended", day=day, clinician=clinician_name(tx, client))
    tell(tx, client.id, f"{episode}:{client.id}", Lane.REST, words, now)


def planned(tx: Tx, client: Client, version: PlanVersion, by: int, now: datetime) -> None:
    """A new version: flags about the end, and about a review that lies ahead again, are closed."""
    today, plan = today_of(client, now), version.plan
    kinds = [] if lapses.is_over(plan, today) else ["plan-ended"]
    if plan.review is None or plan.review > today:
        kinds.append("review-due")
    _close(tx, client, kinds, "planned", by, now)


def _close(
    tx: Tx, client: Client, kinds: Collection[str], outcome: str, by: int, now: datetime
) -> None:
    for flag in tx.flags.of_client(client.id):
        if flag.kind in kinds:
            tx.flags.close(flag.id, outcome, by, "", now)
