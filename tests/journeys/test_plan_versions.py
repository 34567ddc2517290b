"""What happens to a plan afterwards: other hours, a new version, the audit trail (C3, C5)."""

from __future__ import annotations

from datetime import date

import pytest

from tests.journeys.desk import Desk
from tests.journeys.planning import (
    ANNS,
    THURSDAY,
    TUESDAY,
    audited,
    draft_for_gil,
    fault,
    fill,
    latest,
)
from tests.journeys.rooms import ANN, DANA, EVE, GIL, IDS, MONDAY, Room, at, on_both

pytest_plugins = ("tests.journeys.furniture",)


@pytest.mark.parametrize(("hours", "fits"), [("8:00-14:00", True), ("8:00-13:55", False)])
async def test_hours_of_her_own_are_taken_only_while_the_plan_fits_in_them(
    desk: Desk, hours: str, fits: bool
) -> None:
    """Arithmetic: four bouts two hours apart take six hours, and not five minutes less."""
    await desk.say(ANN, "/times")
    await desk.press(ANN, "t:window")
    await desk.say(ANN, hours)
    assert desk.ids(ANN) == ["ask-times"] if fits else ["times-do-not-fit", "ask-times"]
    client = await desk.run(lambda tx: tx.people.client(ANNS))
    assert (client.hours is not None) is fits
    await desk.step(at(23, 0))
    bouts = await desk.run(lambda tx: tx.days.bouts(ANNS, MONDAY))
    asked = [bout.asked_at for bout in bouts if bout.asked_at is not None]
    assert (len(asked), max(asked)) == (4, at(14 if fits else 20, 0))


async def test_hours_changed_after_the_preview_are_looked_at_again_before_it_is_saved(
    desk: Desk,
) -> None:
    await draft_for_gil(desk)
    await desk.press(EVE, "dp")
    await desk.say(GIL, "/times")
    await desk.press(GIL, "t:window")
    await desk.say(GIL, "8 to 13")
    await desk.press(EVE, "ds:0")
    assert fault(desk, EVE).id == "fault-too-many-reps"
    assert await latest(desk) is None


@on_both
async def test_a_new_version_while_the_day_runs_is_in_force_from_tomorrow(desk: Desk) -> None:
    await desk.step(at(8, 0))
    await desk.press(ANN, desk.button(ANN, "all:"))
    await desk.forge(DANA, f"cp:{ANNS}")
    await fill(desk, DANA, [("daily_total", "20")])
    await desk.press(DANA, "dp")
    await desk.press(DANA, "ds:0")
    version = await latest(desk, ANNS)
    assert version is not None
    assert (version.version, version.valid_from) == (2, TUESDAY)
    assert await total_on(desk, MONDAY) == 40
    for hour in (12, 16, 20):
        await desk.step(at(hour, 0))
        await desk.press(ANN, desk.button(ANN, "all:"))
    assert sum(await desk.reps()) == 40
    await desk.step(at(8, 0, day=3))
    assert await total_on(desk, THURSDAY) == 20


async def total_on(room: Room, day: date) -> int:
    found = await room.run(lambda tx: tx.days.get(ANNS, day))
    assert found is not None
    return found.total


async def test_the_audit_trail_has_who_when_before_and_after(desk: Desk) -> None:
    await desk.forge(DANA, f"cc:{ANNS}:high")
    await desk.forge(DANA, f"cp:{ANNS}")
    await fill(desk, DANA, [("daily_total", "20")])
    await desk.press(DANA, "dp")
    await desk.press(DANA, "ds:0")
    first, second = await audited(desk, "plan")
    assert first.change["before"] is None
    assert second.change["before"] == first.change["after"]
    assert second.change["before"]["daily_total"] == 40
    assert second.change["after"]["daily_total"] == 20
    assert (second.who, second.about, second.at) == (IDS[DANA], ANNS, desk.now)
    cleared = (await audited(desk, "clear"))[-1]
    assert (cleared.who, cleared.about) == (IDS[DANA], ANNS)
    assert (cleared.change["before"], cleared.change["after"]) == ("moderate", "high")


async def test_a_new_plan_told_during_a_hold_is_told_as_no_release(desk: Desk) -> None:
    await desk.say(ANN, "chest pain")
    await desk.forge(DANA, f"cp:{ANNS}")
    await fill(desk, DANA, [("daily_total", "20")])
    await desk.press(DANA, "dp")
    await desk.press(DANA, desk.button(DANA, "ds:"))
    assert desk.ids(ANN) == ["plan-told", "stopped-for-now"]
    await desk.step(at(23, 0))
    assert desk.count(ANN, "prompt") == 0
