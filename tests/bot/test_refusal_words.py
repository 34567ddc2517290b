"""A plan that cannot be carried out is refused with the field, the reason and what would work (C4)."""

from dataclasses import replace
from datetime import date
from typing import Any
from zoneinfo import ZoneInfo

import pytest

from bot.words import render
from scheduler.domain.hours import Hours, Span
from scheduler.domain.plan import Level, Plan, check_plan
from scheduler.usecases.drafts import fault_text
from tests.bot.said import fault_reasons

GOOD = Plan(
    "stomp", 40, 10, 10, 2, 2, (0, 3), 1, Hours(Span(480, 1200)), (), date(2027, 3, 8), None, None
)
EVENING = Hours(Span(1260, 1320))
REFUSED: list[tuple[str, dict[str, Any], dict[str, Any], str]] = [
    (
        "unknown-movement", {"movement": "cartwheel"}, {},
        "Movement: not known. What would work: marching steps, ",
    ),
    (
        "above-ceiling", {"movement": "hop"}, {},
        "Movement: High impact with 2.6 body weights is above the clearance: Moderate impact, up to 4.",
    ),
    (
        "above-ceiling", {"movement": "stomp"}, {"ceiling": Level.LOW},
        "Movement: Moderate impact with 2.9 body weights is above the clearance: Low impact, up to 2.",
    ),
    (
        "estimate-not-accepted", {"movement": "stepping-jack"}, {"estimate_accepted": False},
        "Movement: its force of 1.5 body weights is an estimate that you have not accepted.",
    ),
    (
        "before-start", {"end": date(2027, 3, 1)}, {},
        "End: comes before the start, Mon 8 March 2027. What would work: Mon 8 March 2027.",
    ),
    (
        "after-end", {"review": date(2027, 9, 1), "end": date(2027, 8, 1)}, {},
        "Review: comes after the end, Sun 1 August 2027. What would work: Sun 1 August 2027.",
    ),
    ("out-of-bounds", {"gap_minutes": 1}, {}, "Gap: can be 5 to 720. What would work: 5."),
    ("below-bout", {"bout_max": 5}, {}, "Most a bout: is below the 10 reps of a bout. What would work: 10."),
    ("not-weekdays", {"weekdays": (0, 0)}, {}, "Weekdays: a day is named twice or is no weekday."),
    ("too-close", {"weekdays": (0, 1)}, {}, "Weekdays: too close for 1 rest day between load days, "),
    ("below-minimum", {"days_max": 1}, {}, "Most days: is below the minimum of 2. What would work: 2."),
    (
        "no-room-for-rest", {"days_max": 7}, {},
        "Most days: too many for 1 rest day between load days. What would work: 3.",
    ),
    (
        "not-as-many-as-days", {"weekdays": (0,)}, {},
        "Weekdays: 1 chosen, but the plan says 2 to 2 a week. What would work: Mon, Thu.",
    ),
    (
        "no-common-hours", {}, {"client_hours": EVENING},
        "Hours: on Mon no bout fits within 8 am to 8 pm and the client's own hours.",
    ),
    (
        "too-many-reps", {"daily_total": 400}, {},
        "Daily total: only 7 bouts fit in a day. Any one of these would work:\n- daily total 70\n",
    ),
]  # fmt: skip


@pytest.mark.parametrize(("reason", "change", "given", "words"), REFUSED)
def test_a_refused_plan_says_the_field_the_reason_and_what_would_work(
    reason: str, change: dict[str, Any], given: dict[str, Any], words: str
) -> None:
    usual: dict[str, Any] = {
        "ceiling": Level.MODERATE,
        "estimate_accepted": True,
        "client_hours": None,
    }
    faults = check_plan(
        replace(GOOD, **change), zone=ZoneInfo("Europe/Berlin"), **{**usual, **given}
    )
    shown = {fault.reason: render((fault_text(fault),), "en") for fault in faults}
    assert shown[reason].startswith(words)


def test_hours_that_would_work_read_like_hours() -> None:
    faults = check_plan(
        GOOD, client_hours=EVENING, zone=ZoneInfo("Europe/Berlin"), ceiling=Level.MODERATE
    )
    assert render((fault_text(faults[0]),), "en").endswith("What would work: 9 pm to 10 pm.")


def test_every_reason_of_a_refusal_is_tried_above() -> None:
    assert {reason for reason, *_ in REFUSED} == fault_reasons()
