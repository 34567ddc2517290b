"""May this client be asked for impact at all? (C1, C2, I1)"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from scheduler.domain.hours import local_day
from scheduler.domain.lapses import is_over
from scheduler.domain.people import NOTICE_VERSION, Clearance, Client, Hold, Person, State
from scheduler.domain.plan import MOVEMENTS, Plan, within
from scheduler.domain.settings import Practice


class Bar(StrEnum):
    """A reason why no impact prompt may be sent."""

    NOT_READY = "not-ready"
    NO_CONSENT = "no-consent"
    NO_READINESS = "no-readiness"
    NO_CLEARANCE = "no-clearance"
    LAPSED = "lapsed"
    NO_NUMBERS = "no-numbers"
    NO_PLAN = "no-plan"
    ENDED = "ended"
    ABOVE_CEILING = "above-ceiling"
    ESTIMATE = "estimate"
    HOLD = "hold"
    BREAK = "break"
    NOT_YET = "not-yet"
    QUESTION = "question"


STOPPING_QUESTIONS = frozenset({"pain", "fall", "morning"})
"""While one of these is open nothing is asked for."""


@dataclass(frozen=True, slots=True)
class Standing:
    """All that is looked at before a client is asked for a bout."""

    person: Person
    client: Client
    practice: Practice
    plan: Plan | None
    clearance: Clearance | None
    holds: tuple[Hold, ...]
    questions: frozenset[str]
    today: date
    on_break: bool = False


def bars(standing: Standing) -> tuple[Bar, ...]:
    """Every reason against a prompt; none means that the client may be asked."""
    found = [*_joining(standing), *_clinical(standing), *_stopped(standing)]
    return tuple(found)


def _joining(standing: Standing) -> list[Bar]:
    client = standing.client
    found = []
    person = standing.person
    if person.state is not State.READY or person.account is None or person.blocked:
        found.append(Bar.NOT_READY)
    if client.consent_version != NOTICE_VERSION:
        found.append(Bar.NO_CONSENT)
    if client.readiness is None:
        found.append(Bar.NO_READINESS)
    if not standing.practice.callable:
        found.append(Bar.NO_NUMBERS)
    return found


def _clinical(standing: Standing) -> list[Bar]:
    clearance, plan = standing.clearance, standing.plan
    found = []
    if clearance is None:
        found.append(Bar.NO_CLEARANCE)
    elif clearance.lapsed_at is not None:
        found.append(Bar.LAPSED)
    if plan is None:
        return [*found, Bar.NO_PLAN]
    if is_over(plan, standing.today):
        found.append(Bar.ENDED)
    movement = MOVEMENTS[plan.movement]
    if clearance and not within(movement, clearance.ceiling):
        found.append(Bar.ABOVE_CEILING)
    if movement.estimate and movement.key not in standing.client.estimates_accepted:
        found.append(Bar.ESTIMATE)
    return found


def _stopped(standing: Standing) -> list[Bar]:
    movement = standing.plan.movement if standing.plan else None
    found = []
    if any(hold.movement in {None, movement} for hold in standing.holds):
        found.append(Bar.HOLD)
    if standing.on_break:
        found.append(Bar.BREAK)
    resumes = standing.client.resumes_on
    if resumes is not None and standing.today < resumes:
        found.append(Bar.NOT_YET)
    morning = standing.client.morning_at
    to_be_asked = morning and local_day(morning, standing.client.zone) <= standing.today
    if standing.questions & STOPPING_QUESTIONS or to_be_asked:
        found.append(Bar.QUESTION)
    return found
