"""A clinician writes a plan by taps and short answers, and sees the first day before it is saved (C3, C4)."""

from __future__ import annotations

from math import exp, log

import pytest

from tests.journeys.desk import Desk
from tests.journeys.planning import (
    GILS,
    Answers,
    audited,
    draft_for_gil,
    fault,
    fill,
    latest,
    plan_of,
)
from tests.journeys.rooms import EVE, GIL, IDS, Whole, at, on_both

pytest_plugins = ("tests.journeys.furniture",)


# --- the straight way ----------------------------------------------------------------------------


@on_both
async def test_a_plan_is_written_by_taps_and_short_answers_and_seen_before_it_is_saved(
    whole: Whole,
) -> None:
    await whole.say(EVE, "/clients")
    for button in (f"c:{GILS}", f"cr:{GILS}", f"cc:{GILS}:moderate", f"cp:{GILS}"):
        await whole.press(EVE, button)
    await whole.press(EVE, "df:movement")
    await whole.press(EVE, "dv:movement:stomp")
    await fill(whole, EVE, [
        ("daily_total", "30"), ("bout_reps", "ten"), ("weekdays", "Tue, Fri"), ("window", "9 to 18"),
        ("note", "Hold the rail"),
    ])  # fmt: skip
    await whole.press(EVE, "dp")
    assert whole.ids(EVE) == ["plan-first-day", "dose-table", "plan-save"]
    assert await latest(whole) is None  # seen, not yet saved

    first = whole.last(EVE)[0].args
    # Arithmetic: the sum of 1 - exp(-gap/tau) is concave, so two gaps share nine hours evenly.
    assert first["bouts"] == [
        {"at": f"2027-03-09T{wall}", "reps": 10} for wall in ("09:00", "13:30", "18:00")
    ]
    assert (first["day"], first["movement"], first["per_side"]) == ("2027-03-09", "stomp", True)

    await whole.press(EVE, "ds:0")
    saved = whole.the(EVE, "plan-saved").args
    assert (saved["version"], saved["day"]) == (1, "2027-03-09")
    plan = await plan_of(whole, GILS)
    assert (plan.movement, plan.daily_total, plan.bout_reps, plan.bout_max) == ("stomp", 30, 10, 10)
    assert (plan.weekdays, plan.days_min, plan.days_max) == ((1, 4), 2, 2)
    told = whole.the(GIL, "plan-told").args
    assert (told["total"], told["bout_reps"], told["note"]) == (30, 10, "Hold the rail")
    assert (told["clinician"], told["days"], told["window"]) == ("Eve", [1, 4], [540, 1080])

    await whole.step(at(23, 0))
    assert whole.count(GIL, "prompt") == 0  # Monday is no day of his
    await whole.step(at(9, 0, day=1))
    assert whole.the(GIL, "prompt").args["reps"] == 10


async def test_the_dose_table_under_the_first_day_is_the_published_formula(desk: Desk) -> None:
    """Turner and Robling 2003, Exerc Sport Sci Rev 31(1):45-50 (second-hand): force times ln(reps + 1),
    later bouts times 1 - exp(-hours/6); marching lands with 1.4 body weights."""
    await draft_for_gil(desk)
    await desk.press(EVE, "dp")
    rows = desk.the(EVE, "dose-table").args["rows"]
    assert isinstance(rows, list)
    found = {row["bouts"]: row for row in rows}
    assert {1, 2, 4} <= found.keys()
    for bouts in (1, 2, 4):
        gap = 12 / (bouts - 1) if bouts > 1 else 0.0
        later = (bouts - 1) * (1 - exp(-gap / 6))
        index = 1.4 * log(40 / bouts + 1) * (1 + later)
        assert found[bouts]["most"] == 40 // bouts
        assert found[bouts]["gap_minutes"] == round(gap * 60)
        assert found[bouts]["index"] == pytest.approx(index, abs=0.051)
        assert found[bouts]["against_one_go"] == pytest.approx(index / (1.4 * log(41)), abs=0.006)


# --- what cannot be carried out ------------------------------------------------------------------

TWICE = [("weekdays", "Mon, Thu")]
REFUSED: list[tuple[Answers, str, str, list[object], tuple[str, str]]] = [
    # 08:00 to 20:00 holds 7 bouts 2 h apart: 7 x 10 reps; 10 bouts fit 80 min apart; ceil(100/7) = 15.
    ([("daily_total", "71")], "daily_total", "too-many-reps", [70], ("daily_total", "70")),
    ([("daily_total", "100")], "daily_total", "too-many-reps", [70], ("gap_minutes", "80")),
    ([("daily_total", "100")], "daily_total", "too-many-reps", [70], ("bout_max", "15")),
    ([("weekdays", "Mon, Tue")], "weekdays", "too-close", [0, 3], ("weekdays", "Mon, Thu")),
    ([("weekdays", "Mon, Sun")], "weekdays", "too-close", [0, 3], ("weekdays", "Mon, Thu")),
    ([*TWICE, ("days_max", "4")], "days_max", "no-room-for-rest", [3], ("days_max", "3")),
    ([*TWICE, ("days_min", "3")], "days_max", "below-minimum", [3], ("days_max", "3")),
    ([("bout_max", "9")], "bout_max", "below-bout", [10], ("bout_max", "10")),
    ([("end", "2027-03-07")], "end", "before-start", ["2027-03-08"], ("end", "2027-03-08")),
    (
        [("end", "12 May"), ("review", "13 May")], "review", "after-end",
        ["2027-05-12"], ("review", "2027-05-12"),
    ),
]  # fmt: skip


@pytest.mark.parametrize(("answers", "field", "reason", "values", "fix"), REFUSED)
async def test_a_plan_that_cannot_be_carried_out_names_field_reason_and_what_would_work(
    desk: Desk,
    answers: Answers,
    field: str,
    reason: str,
    values: list[object],
    fix: tuple[str, str],
) -> None:
    await draft_for_gil(desk)
    await fill(desk, EVE, [("review", "none"), *answers])
    await desk.press(EVE, "dp")
    said = [each for each in desk.last(EVE) if each.id == f"fault-{reason}"]
    assert [(each.args["field"], each.args["values"]) for each in said] == [(field, values)]
    assert desk.last(EVE)[-1].id == "plan-card"
    assert not any(data.startswith("ds:") for data in desk.buttons(EVE))
    await desk.forge(EVE, "ds:0")
    assert desk.ids(EVE) == ["question-over"]
    assert await latest(desk) is None
    assert await desk.question(EVE) == ("plan", "card")

    await desk.forge(EVE, "dc")
    await fill(desk, EVE, [fix])
    await desk.press(EVE, "dp")
    while desk.ids(EVE)[-1] == "plan-card":  # another rule, with its own value that works
        offered = desk.last(EVE)[0].args
        await fill(desk, EVE, [(str(offered["field"]), said_as(offered["values"]))])
        await desk.press(EVE, "dp")
    await desk.press(EVE, "ds:0")
    assert await latest(desk) is not None


def said_as(values: object) -> str:
    """A value that was offered, as she types it."""
    assert isinstance(values, list)
    names = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
    return ", ".join(names[v] for v in values) if len(values) > 1 else str(values[0])


async def test_above_the_ceiling_is_refused_with_the_hardest_that_is_allowed_first(
    desk: Desk,
) -> None:
    await draft_for_gil(desk)
    await fill(desk, EVE, [("movement", "hop")])
    await desk.press(EVE, "dp")
    refused = fault(desk, EVE).args
    assert (refused["field"], refused["ceiling"], refused["level"]) == (
        "movement",
        "moderate",
        "high",
    )
    offered = refused["values"]
    assert isinstance(offered, list)
    assert offered[0] == "small-jump"
    assert not {"hop", "jumping-jack", "firm-heel-drop"} & {*offered}
    await fill(desk, EVE, [("movement", "small jump")])
    await desk.press(EVE, "dp")
    await desk.press(EVE, "ds:0")
    assert (await plan_of(desk, GILS)).movement == "small-jump"


async def test_the_question_about_the_movement_offers_none_above_the_ceiling(desk: Desk) -> None:
    await draft_for_gil(desk, "low")
    await desk.press(EVE, "df:movement")
    shown = {data.rpartition(":")[2] for data in desk.buttons(EVE) if data.startswith("dv:")}
    assert shown == {"marching", "stepping-jack", "gentle-heel-drop"}


async def test_hours_that_the_client_does_not_have_are_refused_with_his_own(desk: Desk) -> None:
    await desk.say(GIL, "/times")
    await desk.press(GIL, "t:window")
    await desk.say(GIL, "8 to 20")
    await draft_for_gil(desk)
    await fill(desk, EVE, [("window", "20:05-22:00")])
    await desk.press(EVE, "dp")
    refused = fault(desk, EVE)
    assert (refused.id, refused.args["values"]) == ("fault-no-common-hours", ["08:00-20:00"])
    await fill(desk, EVE, [("window", "08:00-20:00")])
    await desk.press(EVE, "dp")
    await desk.press(EVE, "ds:0")
    assert (await plan_of(desk, GILS)).daily_total == 40


async def test_a_movement_without_a_published_force_needs_her_yes_once(desk: Desk) -> None:
    await draft_for_gil(desk)
    await fill(desk, EVE, [("movement", "stepping jack")])
    await desk.press(EVE, "dp")
    assert desk.ids(EVE) == ["plan-first-day", "dose-table", "plan-estimate", "plan-save"]
    assert desk.last(EVE)[2].args == {"movement": "stepping-jack", "force": 1.5}
    assert desk.buttons(EVE) == ["ds:1", "dc", "dx"]
    await desk.forge(EVE, "ds:0")  # saved without the yes: asked again, nothing kept
    assert "plan-estimate" in desk.ids(EVE)
    assert await latest(desk) is None
    await desk.press(EVE, "ds:1")
    assert (await plan_of(desk, GILS)).movement == "stepping-jack"
    assert [(row.who, row.about) for row in await audited(desk, "accept-estimate")] == [
        (IDS[EVE], GILS)
    ]

    await desk.forge(EVE, f"cp:{GILS}")
    await desk.press(EVE, "dp")
    assert desk.ids(EVE) == ["plan-first-day", "dose-table", "plan-save"]
