"""A colleague covers: granted and ended by an admin, to a last day, audited; and care that ends (D3, A1).

Ann and Bo are Dana's clients, Gil is Eve's. Instants are arithmetic; the rules are the product's (ours).
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from scheduler.domain.people import State
from scheduler.usecases import caseload
from tests.journeys.desk import Desk
from tests.journeys.mail import mail_of, names_read, trail
from tests.journeys.rooms import ANN, DANA, EVE, GIL, IDS, KIM, MONDAY, Room, at, on_both

pytest_plugins = ("tests.journeys.furniture",)

CLIENTS = {"Ann", "Bo", "Gil"}


async def cover(room: Room, days: int = 0) -> None:
    """Kim lets Eve cover for Dana by taps, from her person screen on."""
    await room.say(KIM, "/people")
    await room.press(KIM, f"a:{IDS[DANA]}")
    await room.press(KIM, f"cv:{IDS[DANA]}")
    await room.press(KIM, f"cvc:{IDS[DANA]}:{IDS[EVE]}")
    await room.press(KIM, f"cvu:{IDS[DANA]}:{IDS[EVE]}:{days}")
    assert room.count(KIM, "cover-kept")


async def sees(room: Room, client: int = ANN) -> bool:
    """Whether Eve can open a client's page now."""
    await room.say(EVE, "/clients")
    await room.forge(EVE, f"c:{IDS[client]}")
    return room.ids(EVE)[0] == "client-page"


@on_both
async def test_a_colleague_sees_the_clients_to_the_last_day_and_not_on_the_next(desk: Desk) -> None:
    assert not await sees(desk)
    await cover(desk, 7)
    assert await sees(desk)
    assert desk.the(EVE, "cover-told").args["until"] == "2027-03-15"
    assert desk.the(DANA, "cover-told").args["yours"] is True
    await desk.step(at(23, 59, day=7))
    assert await sees(desk)
    await desk.step(at(0, 0, day=8))
    assert not await sees(desk)
    assert desk.ids(EVE) == ["not-yours"]


async def test_the_last_day_is_one_of_the_practice_and_not_of_the_client(desk: Desk) -> None:
    """New York is on summer time from 14 March 2027: its 15th ends at 04:00 UTC on the 16th (tz data)."""
    await desk.run(lambda tx: tx.book.put("zone", "America/New_York"))
    await desk.step(at(6))  # 01:00 on the 8th there
    await cover(desk, 7)
    await desk.step(at(3, 59, day=8))
    assert await sees(desk)
    await desk.step(at(4, 0, day=8))
    assert not await sees(desk)


@pytest.mark.parametrize(
    ("days", "until"), [(0, None), (7, date(2027, 3, 15)), (28, date(2027, 4, 5))]
)
async def test_a_button_says_how_long_the_cover_lasts(
    desk: Desk, days: int, until: date | None
) -> None:
    await cover(desk, days)
    (kept,) = await desk.run(lambda tx: tx.staff.covers(IDS[DANA]))
    assert (kept.colleague, kept.until, kept.by) == (IDS[EVE], until, IDS[KIM])


@pytest.mark.parametrize(
    ("said", "until"),
    [
        ("2027-03-20", date(2027, 3, 20)),
        ("20 March", date(2027, 3, 20)),
        ("today", MONDAY),
        ("none", None),
    ],
)
async def test_the_last_day_can_be_typed(desk: Desk, said: str, until: date | None) -> None:
    await desk.forge(KIM, f"cvc:{IDS[DANA]}:{IDS[EVE]}")
    await desk.say(KIM, said)
    assert desk.ids(KIM) == ["cover-kept"]
    (kept,) = await desk.run(lambda tx: tx.staff.covers(IDS[DANA]))
    assert kept.until == until
    await desk.say(KIM, "20 March")
    assert desk.ids(KIM) == ["help-admin"]  # nothing is asked any more


@pytest.mark.parametrize(
    ("said", "answer"), [("2027-03-07", "cover-is-past"), ("soon", "answer-day")]
)
async def test_a_day_that_is_past_or_none_is_asked_for_again(
    desk: Desk, said: str, answer: str
) -> None:
    await desk.forge(KIM, f"cvc:{IDS[DANA]}:{IDS[EVE]}")
    await desk.say(KIM, said)
    assert desk.ids(KIM)[0] == answer
    assert await desk.run(lambda tx: tx.staff.covers(IDS[DANA])) == ()
    await desk.say(KIM, "2027-03-08")
    assert desk.ids(KIM) == ["cover-kept"]


@pytest.mark.parametrize(
    "data",
    [
        f"cvu:{IDS[DANA]}:{IDS[DANA]}:7",
        f"cvu:{IDS[DANA]}:{IDS[ANN]}:7",
        f"cvu:{IDS[ANN]}:{IDS[EVE]}:7",
        f"cvu:{IDS[DANA]}:{IDS[EVE]}:8",
    ],
)
async def test_nobody_but_another_clinician_covers_and_only_for_a_time_that_is_offered(
    desk: Desk, data: str
) -> None:
    await desk.forge(KIM, data)
    assert desk.ids(KIM)[0] in {"no-such-person", "question-over"}
    assert await desk.run(lambda tx: tx.staff.covered_by(IDS[EVE])) == ()


async def test_a_colleague_who_has_not_joined_is_not_offered(desk: Desk) -> None:
    eve = await desk.run(lambda tx: tx.people.get(IDS[EVE]))
    assert eve is not None
    away = replace(eve, state=State.INVITED)
    await desk.run(lambda tx: tx.people.save(away))
    await desk.forge(KIM, f"cv:{IDS[DANA]}")
    assert desk.the(KIM, "cover").args["colleagues"] == []
    await desk.forge(KIM, f"cvu:{IDS[DANA]}:{IDS[EVE]}:7")
    assert desk.ids(KIM) == ["no-such-person"]


@on_both
async def test_an_admin_ends_a_cover_and_both_are_told(desk: Desk) -> None:
    await cover(desk, 7)
    assert await sees(desk)
    await desk.press(KIM, f"cv:{IDS[DANA]}")
    await desk.press(KIM, desk.button(KIM, "cve:"))
    assert desk.ids(KIM) == ["cover-ended", "cover"]
    assert desk.the(KIM, "cover").args["covers"] == []
    assert (desk.count(DANA, "cover-ended"), desk.count(EVE, "cover-ended")) == (1, 1)
    assert not await sees(desk)
    (line,) = await trail(desk, "end-cover")
    assert line[:3] == (IDS[KIM], "end-cover", IDS[DANA])


async def test_a_cover_that_has_ended_is_not_ended_or_audited_again(desk: Desk) -> None:
    await cover(desk, 7)
    await desk.press(KIM, f"cv:{IDS[DANA]}")
    data = desk.button(KIM, "cve:")
    for _ in range(2):
        await desk.forge(KIM, data)
        await desk.later(minutes=1)
    assert desk.ids(KIM) == ["question-over"]
    assert len(await trail(desk, "end-cover")) == 1
    assert desk.count(EVE, "cover-ended") == 1


async def test_granting_again_changes_the_end_of_the_cover(desk: Desk) -> None:
    await cover(desk, 7)
    await cover(desk, 14)
    (kept,) = await desk.run(lambda tx: tx.staff.covers(IDS[DANA]))
    assert kept.until == date(2027, 3, 22)
    lines = await trail(desk, "cover")
    assert [line[3]["after"] for line in lines] == ["2027-03-15", "2027-03-22"]
    assert lines[1][3]["before"] == ["2027-03-15"]
    assert all(line[3]["colleague"] == IDS[EVE] for line in lines)


async def test_the_first_look_at_a_client_each_day_is_audited_and_no_other(desk: Desk) -> None:
    await cover(desk)
    for _ in range(3):
        assert await sees(desk)
    await desk.press(EVE, f"cr:{IDS[ANN]}")
    assert await sees(desk, GIL)  # her own
    assert await trail(desk, "cover-access") == [(IDS[EVE], "cover-access", IDS[ANN], {})]
    await desk.step(at(23, 59))
    assert await sees(desk)
    assert len(await trail(desk, "cover-access")) == 1
    await desk.step(at(0, 0, day=1))
    assert await sees(desk)
    assert len(await trail(desk, "cover-access")) == 2


async def test_covered_clients_come_after_her_own_and_say_whose_they_are(desk: Desk) -> None:
    await cover(desk)
    await desk.say(EVE, "/clients")
    listed = desk.last(EVE)[0].args["clients"]
    assert isinstance(listed, list)
    assert [(each["name"], each["whose"]) for each in listed] == [
        ("Gil", ""),
        ("Ann", "Dana"),
        ("Bo", "Dana"),
    ]
    await desk.say(EVE, "an")
    found = desk.last(EVE)[0].args["clients"]
    assert isinstance(found, list)
    assert [each["name"] for each in found] == ["Ann"]
    await desk.say(DANA, "/clients")
    hers = desk.last(DANA)[0].args["clients"]
    assert isinstance(hers, list)
    assert {each["name"] for each in hers} == {"Ann", "Bo"}  # cover goes one way


@on_both
async def test_a_colleague_stops_and_releases_and_the_client_reads_who_it_was(desk: Desk) -> None:
    await cover(desk)
    await desk.step(at(8, 1))
    assert await sees(desk)
    await desk.press(EVE, f"ch:{IDS[ANN]}")
    assert await desk.holds() == [None]
    assert await sees(desk)
    await desk.press(EVE, f"rel:{IDS[ANN]}")
    await desk.press(EVE, f"rd:{IDS[ANN]}:20")
    await desk.press(EVE, f"rf:{IDS[ANN]}:20:tomorrow")
    assert await desk.holds() == []
    assert desk.the(ANN, "release-told").args["clinician"] == "Eve"
    by = {line[0] for line in await trail(desk, "hold", "release")}
    assert by == {IDS[EVE]}


async def test_a_draft_begun_under_a_cover_is_not_saved_after_it(desk: Desk) -> None:
    await cover(desk, 7)
    assert await sees(desk)
    await desk.press(EVE, f"cp:{IDS[ANN]}")
    await desk.press(EVE, "dp")
    version = await desk.run(lambda tx: tx.plans.latest(IDS[ANN]))
    await desk.step(at(0, 0, day=8))
    await desk.forge(EVE, "ds:0")
    assert desk.ids(EVE) == ["question-over"]
    await desk.say(EVE, "12")
    assert desk.ids(EVE) == ["caseload"]
    assert await desk.run(lambda tx: tx.plans.latest(IDS[ANN])) == version


async def test_an_open_urgent_flag_goes_at_once_to_who_comes_to_cover_for_one_who_is_gone(
    desk: Desk,
) -> None:
    await desk.step(at(8, 1))
    await desk.say(ANN, "pressure in my chest")
    dana = await desk.run(lambda tx: tx.people.get(IDS[DANA]))
    assert dana is not None
    blocked = replace(dana, blocked=True)
    await desk.run(lambda tx: tx.people.save(blocked))
    assert desk.count(EVE, "flag") == 0
    await cover(desk, 7)
    await desk.later(minutes=1)
    assert desk.count(EVE, "flag") == 1


@on_both
async def test_nobody_reads_of_a_person_they_have_no_role_for(desk: Desk) -> None:
    """I9, before, during and after a cover, with everything that leaves taken down."""
    mail = mail_of(desk)
    await desk.step(at(8, 1))
    await desk.say(ANN, "pressure in my chest")
    await sees(desk)
    await desk.say(EVE, "Ann")
    assert names_read(mail, EVE, CLIENTS) == {"Gil"}
    await cover(desk, 7)
    assert await sees(desk)
    assert names_read(mail, EVE, CLIENTS) == CLIENTS
    await desk.press(KIM, f"cv:{IDS[DANA]}")
    await desk.press(KIM, desk.button(KIM, "cve:"))
    mail.clear()
    await sees(desk)
    await desk.forge(EVE, f"w:{IDS[ANN]}")
    await desk.say(EVE, "Ann")
    await desk.step(at(20, 0, day=2))
    assert names_read(mail, EVE, CLIENTS) <= {"Gil"}
    assert names_read(mail, ANN, CLIENTS) == set()
    assert names_read(mail, GIL, CLIENTS | {"Dana"}) == set()


# --- care that has ended -------------------------------------------------------------------------


@pytest.mark.parametrize(
    "verb", ["cr:{0}", "cc:{0}:low", "cp:{0}", "ch:{0}", "rel:{0}", "rd:{0}:20"]
)
async def test_a_clinician_decides_nothing_for_a_client_whose_care_has_ended(
    desk: Desk, verb: str
) -> None:
    await desk.forge(KIM, f"dd:{IDS[ANN]}")
    clearance = await desk.run(lambda tx: tx.plans.clearance(IDS[ANN]))
    await desk.forge(DANA, verb.format(IDS[ANN]))
    assert desk.ids(DANA) == ["not-yours"]
    assert await desk.run(lambda tx: tx.plans.clearance(IDS[ANN])) == clearance


async def test_the_page_of_a_client_whose_care_has_ended_can_still_be_read(desk: Desk) -> None:
    await desk.step(at(8, 1))
    await desk.say(ANN, "pressure in my chest")
    await desk.forge(KIM, f"dd:{IDS[ANN]}")
    await desk.forge(DANA, f"c:{IDS[ANN]}")
    assert desk.last(DANA)[0].args["state"] == "discharged"
    (flag,) = await desk.flags()
    assert desk.buttons(DANA) == [f"fx:{flag.id}", f"tp:{IDS[ANN]}", "cl"]
    await desk.press(DANA, f"fx:{flag.id}")
    await desk.press(DANA, f"fo:{flag.id}:called")
    assert await desk.flags() == ()


async def test_what_she_had_just_said_of_pain_is_not_lost_when_her_care_ends(desk: Desk) -> None:
    await desk.say(ANN, "my hip hurts")
    await desk.forge(KIM, f"dd:{IDS[ANN]}")
    (flag,) = await desk.flags()
    assert (flag.kind, flag.urgent, flag.details["words"]) == (
        "question-open",
        True,
        "my hip hurts",
    )
    assert desk.the(DANA, "flag").args["unanswered"] == "sign"


async def test_ending_care_twice_changes_and_audits_nothing_more(desk: Desk) -> None:
    for _ in range(2):
        await desk.forge(KIM, f"dd:{IDS[ANN]}")
        assert desk.ids(KIM) == ["discharged"]
    assert len(await trail(desk, "discharge")) == 1


async def test_who_has_left_is_not_discharged(desk: Desk) -> None:
    ann = await desk.run(lambda tx: tx.people.get(IDS[ANN]))
    assert ann is not None
    gone = replace(ann, state=State.LEFT)
    await desk.run(lambda tx: tx.people.save(gone))
    await desk.run(lambda tx: caseload.discharge(tx, IDS[KIM], IDS[ANN], desk.now))
    after = await desk.run(lambda tx: tx.people.get(IDS[ANN]))
    assert after is not None
    assert after.state is State.LEFT
    assert await trail(desk, "discharge") == []
    await desk.forge(KIM, f"a:{IDS[ANN]}")
    assert f"d:{IDS[ANN]}" not in desk.buttons(KIM)
