"""The caseload at a glance, and one client's page (K1). The order and the page's size are ours."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta
from typing import Any
from zlib import crc32

import pytest
from sqlalchemy import event

from bot.words import render
from scheduler.domain.flags import Flag
from scheduler.domain.people import Client, Person, Role, State
from scheduler.ports import Tx
from scheduler.usecases import caseload, flags
from scheduler.usecases.pages import PAGE
from storage.engine import Database
from tests.journeys.desk import Desk
from tests.journeys.mail import mail_of, names_read
from tests.journeys.rooms import ANN, DANA, EVE, GIL, IDS, KIM, ZONE, Room, at, on_both

pytest_plugins = ("tests.journeys.furniture",)


def add(tx: Tx, name: str, at_: Any, **changed: Any) -> int:
    """One more client of Dana's, ready and not cleared."""
    person = Person(0, Role.CLIENT, name, "qps", State.READY, IDS[DANA], crc32(name.encode()))
    record = replace(Client(0, IDS[DANA], ZONE, consent_at=at_, joined_at=at_), **changed)
    return tx.people.add(person, record).id


def flag(tx: Tx, client: int, kind: str, now: Any, *, urgent: bool = False) -> Flag | None:
    return flags.raise_flag(tx, tx.people.client(client), kind, now, urgent=urgent, details={})


def listed(room: Room, who: int = DANA) -> list[Any]:
    rows = room.last(who)[0].args["clients"]
    assert isinstance(rows, list)
    return rows


def reasons(row: Any) -> list[str]:
    return [each["kind"] for each in row["reasons"]]


# --- the list ------------------------------------------------------------------------------------


@on_both
async def test_those_who_need_her_come_first_urgent_then_held_then_flagged_then_by_name(
    desk: Desk,
) -> None:
    def work(tx: Tx) -> None:
        now = desk.now
        flag(tx, add(tx, "Zoe", now), "pain", now, urgent=True)
        flag(tx, add(tx, "Cai", now), "fall", now, urgent=True)
        tx.health.hold(add(tx, "Yan", now), "clinician", None, now)
        flag(tx, add(tx, "Xia", now), "silent", now)

    await desk.run(work)
    await desk.say(DANA, "/clients")
    assert [row["name"] for row in listed(desk)] == ["Cai", "Zoe", "Yan", "Xia", "Ann", "Bo"]
    assert [reasons(row) for row in listed(desk)] == [
        ["fall", "no-clearance"],
        ["pain", "no-clearance"],
        ["hold"],
        ["silent", "no-clearance"],
        [],
        [],
    ]
    head = desk.last(DANA)[0].args
    assert (head["count"], head["need"], head["pages"]) == (6, 4, 1)


async def test_the_reasons_read_in_words(desk: Desk) -> None:
    await desk.step(at(8, 1))
    await desk.say(ANN, "bad pain in my hip 8/10")
    await desk.say(DANA, "/clients")
    words = render(desk.last(DANA), "en")
    assert "Ann: on hold since Mon 8 March, pain 8" in words
    assert words.splitlines()[-1] == "Bo"


@on_both
async def test_a_released_hold_and_a_closed_flag_are_no_reasons(desk: Desk) -> None:
    await desk.say(ANN, "pressure in my chest")
    (open_,) = await desk.flags()

    def work(tx: Tx) -> None:
        tx.health.release(IDS[ANN], IDS[DANA], desk.now)
        tx.flags.close(open_.id, "called", IDS[DANA], "", desk.now)

    await desk.run(work)
    await desk.say(DANA, "/clients")
    assert [(row["name"], reasons(row)) for row in listed(desk)] == [("Ann", []), ("Bo", [])]


def many(count: int, now: Any) -> Callable[[Tx], None]:
    def work(tx: Tx) -> None:
        for number in range(count):
            add(tx, f"Client {number:03}", now)

    return work


@on_both
async def test_five_hundred_clients_are_paged_by_twelve_and_each_is_on_one_page(
    desk: Desk,
) -> None:
    await desk.run(many(498, desk.now))
    await desk.say(DANA, "/clients")
    head = desk.last(DANA)[0].args
    assert (head["count"], head["pages"]) == (500, 42)  # 500 / 12, rounded up (arithmetic)
    seen = []
    for page in range(42):
        if page:
            await desk.press(DANA, f"cn:{page}")
        assert len(listed(desk)) <= PAGE
        seen += [row["id"] for row in listed(desk)]
    assert len(seen) == len(set(seen)) == 500
    assert "cn:42" not in desk.buttons(DANA)
    await desk.press(DANA, "cn:40")
    assert desk.last(DANA)[0].args["page"] == 41
    await desk.forge(DANA, "cn:999")
    assert desk.last(DANA)[0].args["page"] == 42


async def test_an_admin_of_fifty_clients_sees_who_works_there_first_and_reaches_everybody(
    desk: Desk,
) -> None:
    await desk.run(many(50, desk.now))
    await desk.say(KIM, "/people")
    head: Any = desk.last(KIM)[0].args
    seen: list[tuple[str, str]] = []
    for page in range(head["pages"]):
        if page:
            await desk.press(KIM, f"an:{page}")
        shown: Any = desk.last(KIM)[0].args["people"]
        seen += [(row["role"], row["name"]) for row in shown]
    assert len(seen) == len(set(seen)) == head["count"]
    roles = [role for role, _ in seen]
    assert roles == sorted(roles, key=["admin", "clinician", "client"].index)
    await desk.say(KIM, "client 04")
    found: Any = desk.last(KIM)[0].args
    assert [row["name"] for row in found["people"]] == [f"Client {n:03}" for n in range(40, 50)]
    await desk.say(KIM, "nobody of that name")
    assert desk.ids(KIM) == ["help-admin"]


async def test_five_hundred_clients_take_as_many_queries_as_five(
    desk: Desk, furnished_database: Database
) -> None:
    asked: list[str] = []

    @event.listens_for(furnished_database.engine, "before_cursor_execute")
    def note(_: Any, __: Any, statement: str, *___: Any) -> None:
        asked.append(statement)

    async def queries() -> int:
        asked.clear()
        await desk.run(lambda tx: caseload.caseload(tx, IDS[DANA], desk.now))
        return len(asked)

    try:
        few = await queries()
        await desk.run(many(498, desk.now))
        assert await queries() == few
        assert few > 5
    finally:
        event.remove(furnished_database.engine, "before_cursor_execute", note)


async def test_a_part_of_a_name_finds_and_many_hits_ask_for_more_of_it(desk: Desk) -> None:
    await desk.run(many(30, desk.now))
    await desk.say(DANA, "ent 00")
    assert desk.last(DANA)[0].args["count"] == 10
    await desk.say(DANA, "client")
    head = desk.last(DANA)[0].args
    assert (head["count"], head["searched"], len(listed(desk))) == (30, True, 12)
    assert not [data for data in desk.buttons(DANA) if data.startswith("cn:")]
    assert "Send more of the name." in render(desk.last(DANA), "en")
    await desk.say(DANA, "Quentin")
    assert desk.last(DANA)[0].args["count"] == 0


async def test_one_clinicians_list_names_nobody_elses_client(desk: Desk) -> None:
    mail = mail_of(desk)
    for words in ("/clients", "Gil", "a", "/digest"):
        await desk.say(DANA, words)
    assert names_read(mail, DANA, {"Ann", "Bo", "Gil"}) == {"Ann", "Bo"}
    await desk.say(EVE, "/clients")
    await desk.say(EVE, "a")
    assert names_read(mail, EVE, {"Ann", "Bo", "Gil"}) == {"Gil"}


# --- one client ----------------------------------------------------------------------------------


async def opened(room: Room) -> dict[str, Any]:
    """The page's texts by id, the first of each."""
    await room.say(DANA, "/clients")
    await room.press(DANA, f"c:{IDS[ANN]}")
    return {each.id: each.args for each in reversed(room.last(DANA))}


@on_both
async def test_the_page_shows_plan_week_pain_contact_phone_and_flags(desk: Desk) -> None:
    await desk.step(at(8, 1))
    await desk.press(ANN, desk.button(ANN, "all:"))
    await desk.step(at(9, 0))
    await desk.say(ANN, "bad pain in my hip 8/10")
    page = await opened(desk)
    assert (page["client-page"]["phone"], page["client-page"]["held"]) == ("555 0142", True)
    assert page["client-plan"]["total"] == 40
    (week,) = page["client-week"]["digest_rows"]
    assert (week["name"], week["bouts"], week["pain"]) == ("Ann", 1, 8)
    assert page["client-pain"]["scores"] == [{"day": "2027-03-08", "score": 8}]
    assert page["client-heard"]["since"] == "2027-03-08T09:00"
    assert page["client-flag"]["words"] == "bad pain in my hip 8/10"
    (open_,) = await desk.flags()
    assert page["client-page"]["open_flags"] == [open_.id]
    assert f"fx:{open_.id}" in desk.buttons(DANA)
    words = render(desk.last(DANA), "en")
    for part in ("Pain (0 to 10), last 14 days: Mon 8 March: 8", "Last contact: Mon 8 March, 9 am"):
        assert part in words


async def test_open_flags_are_the_first_thing_on_the_page_and_urgent_ones_before_others(
    desk: Desk,
) -> None:
    def two(tx: Tx) -> None:
        flag(tx, IDS[ANN], "silent", desk.now)
        flag(tx, IDS[ANN], "fall", desk.now, urgent=True)

    await desk.run(two)
    await opened(desk)
    shown = [(each.id, each.args.get("kind")) for each in desk.last(DANA)]
    assert [kind for _, kind in shown[1:3]] == ["fall", "silent"]
    assert shown[0][0] == "client-page"
    assert "Urgent. A fall" in render(desk.last(DANA), "en")


@pytest.mark.parametrize(("days", "shown"), [(13, True), (14, False)])
async def test_pain_is_shown_for_fourteen_days_with_today(
    desk: Desk, days: int, shown: bool
) -> None:
    day = at(12).date() - timedelta(days=days)
    body = {"score": 5}
    await desk.run(lambda tx: tx.health.report(IDS[ANN], "pain", day, desk.now, body))
    page = await opened(desk)
    assert page["client-pain"]["scores"] == ([{"day": str(day), "score": 5}] if shown else [])


async def test_a_page_without_pain_does_not_say_that_there_is_none(desk: Desk) -> None:
    await opened(desk)
    assert "That is not “no pain”." in render(desk.last(DANA), "en")


async def test_the_page_of_somebody_elses_client_is_not_there(desk: Desk) -> None:
    await desk.forge(DANA, f"c:{IDS[GIL]}")
    assert desk.ids(DANA) == ["not-yours"]
