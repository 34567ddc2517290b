"""Nothing stands against a client who may be asked, and each thing alone does (C1, C2, C5, I1)."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import pytest

from scheduler.domain.hours import Hours, Span
from scheduler.domain.people import (
    NOTICE_VERSION,
    Clearance,
    Client,
    Hold,
    Person,
    Role,
    State,
)
from scheduler.domain.permission import Bar, Standing, bars
from scheduler.domain.plan import Level, Plan
from scheduler.domain.settings import Practice

TODAY = date(2027, 3, 8)
NOW = datetime(2027, 3, 8, 9, tzinfo=UTC)
A_DAY = timedelta(days=1)
PLAN = Plan(
    "stomp", 40, 10, 10, 2, 2, (0, 3), 1, Hours(Span(480, 1200)), (), TODAY, None, TODAY
)  # its last day is today
MAY = Standing(
    person=Person(1, Role.CLIENT, "Ann", "en", State.READY, 2, account=7),
    client=Client(
        1, 2, ZoneInfo("Europe/Lisbon"), consent_version=NOTICE_VERSION, consent_at=NOW,
        readiness=(), resumes_on=TODAY,
    ),
    practice=Practice(phone="555 0100", emergency_number="112"),
    plan=PLAN,
    clearance=Clearance(1, Level.MODERATE, 2, NOW),
    holds=(Hold(1, 1, "pain", NOW, movement="hop"),),
    questions=frozenset({"fewer", "week", "companion"}),
    today=TODAY,
)  # fmt: skip


def test_who_is_ready_cleared_and_planned_may_be_asked() -> None:
    """A hold of another movement, other questions, and the day she is to go on from stop nothing."""
    assert bars(MAY) == ()


@pytest.mark.parametrize(
    ("part", "change", "bar"),
    [
        ("person", {"state": State.JOINING}, Bar.NOT_READY),
        ("person", {"state": State.LEFT}, Bar.NOT_READY),
        ("person", {"state": State.DISCHARGED}, Bar.NOT_READY),
        ("person", {"account": None}, Bar.NOT_READY),
        ("person", {"blocked": True}, Bar.NOT_READY),
        ("client", {"consent_version": None}, Bar.NO_CONSENT),
        ("client", {"consent_version": NOTICE_VERSION - 1}, Bar.NO_CONSENT),
        ("client", {"readiness": None}, Bar.NO_READINESS),
        ("client", {"resumes_on": TODAY + A_DAY}, Bar.NOT_YET),
        ("client", {"morning_at": NOW}, Bar.QUESTION),  # also before it is asked (H2)
        ("practice", {"phone": ""}, Bar.NO_NUMBERS),
        ("practice", {"emergency_number": ""}, Bar.NO_NUMBERS),
        ("clearance", {"lapsed_at": NOW}, Bar.LAPSED),
        ("clearance", {"ceiling": Level.LOW}, Bar.ABOVE_CEILING),
        ("clearance", {"ceiling": Level.NONE}, Bar.ABOVE_CEILING),
        ("plan", {"movement": "jumping-jack"}, Bar.ABOVE_CEILING),
        ("plan", {"movement": "stepping-jack"}, Bar.ESTIMATE),
        ("plan", {"end": TODAY - A_DAY}, Bar.ENDED),
    ],
)
def test_each_thing_alone_stands_against_a_prompt(
    part: str, change: dict[str, Any], bar: Bar
) -> None:
    changed: dict[str, Any] = {part: replace(getattr(MAY, part), **change)}
    assert bars(replace(MAY, **changed)) == (bar,)


@pytest.mark.parametrize(
    ("change", "bar"),
    [
        ({"plan": None}, Bar.NO_PLAN),
        ({"clearance": None}, Bar.NO_CLEARANCE),
        ({"on_break": True}, Bar.BREAK),
        ({"holds": (Hold(1, 1, "pain", NOW),)}, Bar.HOLD),
        ({"holds": (Hold(1, 1, "pain", NOW, movement="stomp"),)}, Bar.HOLD),
        ({"questions": frozenset({"pain"})}, Bar.QUESTION),
        ({"questions": frozenset({"fall"})}, Bar.QUESTION),
        ({"questions": frozenset({"morning"})}, Bar.QUESTION),
    ],
)
def test_so_does_what_is_missing_or_stops_her(change: dict[str, Any], bar: Bar) -> None:
    assert bars(replace(MAY, **change)) == (bar,)


def test_an_estimate_that_the_clinician_accepted_for_this_client_stands_against_nothing() -> None:
    accepted = replace(MAY.client, estimates_accepted=("stepping-jack",))
    plan = replace(PLAN, movement="stepping-jack")
    assert bars(replace(MAY, client=accepted, plan=plan)) == ()
