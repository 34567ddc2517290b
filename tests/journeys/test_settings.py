"""Settings as an admin types them, as they are kept, and as they read (A1, A3). The forms are ours."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from bot.words import render
from scheduler.domain.messages import text
from scheduler.domain.settings import NAMES, WEEKDAY_NAMES, Practice
from scheduler.usecases import practice
from tests.journeys.desk import Desk
from tests.journeys.mail import trail
from tests.journeys.rooms import DANA, EVE, IDS, KIM, Room, at, on_both

pytest_plugins = ("tests.journeys.furniture",)


async def typed(room: Room, name: str, said: str) -> None:
    await room.say(KIM, "/settings")
    await room.press(KIM, f"s:{name}")
    await room.say(KIM, said)


async def kept(room: Room) -> Practice:
    return await room.run(lambda tx: tx.book.practice())


@pytest.mark.parametrize(
    ("name", "said", "value"),
    [
        ("week_start", "sunday", "sunday"),
        ("week_start", "Sun", "sunday"),
        ("week_start", " MON ", "monday"),
        ("week_start", "on Saturday", "saturday"),
        ("work_hours", "9-5", "09:00-17:00"),
        ("work_hours", "8:30 to 16:00", "08:30-16:00"),
        ("work_hours", "8am-1pm", "08:00-13:00"),
        ("work_days", "Mon, Tue and Wed", "mon tue wed"),
        ("work_days", "fri monday", "mon fri"),
        ("work_days", "every day", "mon tue wed thu fri sat sun"),
        ("files_in_chat", "Yes", "yes"),
        ("files_in_chat", "NO.", "no"),
        ("zone", "berlin", "Europe/Berlin"),
        ("window", "7 am to 9 pm", "07:00-21:00"),
        ("silent_days", "ten", "10"),
    ],
)
async def test_a_setting_is_read_from_words_and_kept_in_one_form(
    desk: Desk, name: str, said: str, value: str
) -> None:
    before = str(getattr(await kept(desk), name))
    await typed(desk, name, said)
    assert desk.ids(KIM) == ["setting-kept"]
    assert str(getattr(await kept(desk), name)) == value
    (*_, line) = await trail(desk, "setting")
    assert line == (IDS[KIM], "setting", None, {"setting": name, "before": before, "after": value})


@pytest.mark.parametrize(
    ("name", "said", "answer"),
    [
        ("week_start", "someday", "setting-bad-week-start"),
        ("week_start", "Mon, Tue", "setting-bad-week-start"),
        ("week_start", "every day", "setting-bad-week-start"),
        ("week_start", "flexible", "setting-bad-week-start"),
        ("work_hours", "17:00-09:00", "setting-bad-work-hours"),
        ("work_hours", "9", "setting-bad-work-hours"),
        ("work_hours", "always", "setting-bad-work-hours"),
        ("work_days", "flexible", "setting-bad-work-days"),
        ("work_days", "weekdays only", "setting-bad-work-days"),
        ("work_days", "Mon Xyz", "setting-bad-work-days"),
        ("files_in_chat", "maybe", "setting-bad-files-in-chat"),
        ("files_in_chat", "yes and no", "setting-bad-files-in-chat"),
        ("zone", "Nowhere", "setting-bad-zone"),
        ("window", "late", "setting-bad-window"),
        ("silent_days", "1", "setting-out-of-bounds"),
        ("silent_days", "31", "setting-out-of-bounds"),
        ("phone", "none", "setting-bad-number"),
    ],
)
async def test_what_does_not_fit_is_refused_in_one_sentence_and_asked_for_again(
    desk: Desk, name: str, said: str, answer: str
) -> None:
    before = await kept(desk)
    await typed(desk, name, said)
    assert desk.ids(KIM) == [answer]
    assert render(desk.last(KIM), "en").count("\n") == 0
    assert await kept(desk) == before
    assert await desk.question(KIM) == ("setting", name)


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("week_start", "mon"),
        ("week_start", ""),
        ("work_days", ""),
        ("work_days", "tue mon"),
        ("work_days", "mon mon"),
        ("work_hours", ""),
        ("files_in_chat", "true"),
    ],
)
async def test_only_the_one_form_is_ever_kept(desk: Desk, name: str, value: str) -> None:
    before = await kept(desk)
    await desk.run(lambda tx: practice.set_setting(tx, IDS[KIM], name, value, desk.now))
    assert await kept(desk) == before


def test_every_default_is_in_the_form_that_is_kept() -> None:
    assert Practice().week_start in WEEKDAY_NAMES
    assert Practice().working_days == (0, 1, 2, 3, 4)
    assert Practice().files_in_chat in {"yes", "no"}


@pytest.mark.parametrize(
    ("name", "value", "read"),
    [
        ("work_days", "mon tue", "Working days: Mon, Tue"),
        ("week_start", "sunday", "Week starts on: Sun"),
        ("files_in_chat", "yes", "Files in chat: yes"),
        ("work_hours", "09:00-17:00", "Working hours: 09:00-17:00"),
        ("silent_days", 10, "Flag after silence of: 10 days"),
    ],
)
def test_a_setting_reads_in_words(name: str, value: str | int, read: str) -> None:
    rows = text("settings", settings=[{"name": name, "value": value}])
    assert render((rows,), "en").splitlines()[-1] == read
    noted = text("setting-kept", setting=name, value=str(value))
    assert read in render((noted,), "en")


async def test_the_list_shows_every_setting(desk: Desk) -> None:
    await desk.say(KIM, "/settings")
    assert len(render(desk.last(KIM), "en").splitlines()) == 1 + len(NAMES)


@on_both
async def test_another_zone_moves_every_clinicians_digest(desk: Desk) -> None:
    """At 09:00 on Monday in Lisbon it is 04:00 in New York; 08:00 there is 13:00 UTC (tz data)."""
    await desk.step(at(9, 0))
    before = await desk.run(lambda tx: [tx.staff.get(IDS[who]).wake_at for who in (DANA, EVE)])
    assert before == [datetime(2027, 3, 15, 8, tzinfo=UTC)] * 2
    await typed(desk, "zone", "New York")
    after = await desk.run(lambda tx: [tx.staff.get(IDS[who]).wake_at for who in (DANA, EVE)])
    assert after == [datetime(2027, 3, 8, 13, tzinfo=UTC)] * 2


async def test_the_latest_question_is_the_one_that_words_answer(desk: Desk) -> None:
    await desk.forge(KIM, f"cvc:{IDS[DANA]}:{IDS[EVE]}")
    await desk.later(minutes=1)
    await desk.forge(KIM, "s:work_days")
    await desk.say(KIM, "Fri")
    assert (await kept(desk)).work_days == "fri"
    assert await desk.run(lambda tx: tx.staff.covers(IDS[DANA])) == ()
