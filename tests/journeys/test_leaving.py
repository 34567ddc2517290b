"""A client sees all that is kept, takes it along, leaves, comes back, and is erased (D1, D5)."""

import json
import zlib
from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest
from sqlalchemy import select
from sqlalchemy import text as sql

from bot import reports
from bot.telegram.attachments import attachment
from scheduler.domain.messages import Lane, message
from scheduler.domain.people import State
from scheduler.ports import Outgoing
from scheduler.usecases import archive, days, digests, erasing
from storage.engine import Database
from storage.tables import AuditRow, InboxRow, metadata, table
from tests.bot.reports.r4 import faults
from tests.journeys.desk import Desk
from tests.journeys.rooms import (
    ANN,
    DANA,
    EVE,
    GIL,
    IDS,
    JOINING,
    KIM,
    MONDAY,
    Whole,
    at,
    on_both,
)

pytest_plugins = ("tests.journeys.furniture",)

CANARY = "xanthochroid"
"""A rare word: wherever it is found, it was typed here."""


async def received(desk: Desk, who: int, words: str) -> None:
    """An update as the inbox keeps it after it was handled; the desk itself has no inbox."""
    number = zlib.crc32(f"{who} {words}".encode())

    def work(tx: Any) -> None:
        said = {"message_id": 1, "text": words, "from": {"id": who}}
        assert tx.inbox.keep(number, who, {"update_id": number, "message": said}, desk.now)
        tx.inbox.claim(desk.now, "test", timedelta(minutes=1), 5)
        assert tx.inbox.finish(number, "test")

    await desk.run(work)


async def leave(desk: Desk) -> None:
    await desk.say(ANN, "/leave")
    await desk.press(ANN, "lv")
    await desk.press(ANN, "lvy")


async def state(desk: Desk, who: int = ANN) -> State | None:
    person = await desk.run(lambda tx: tx.people.get(IDS[who]))
    return person.state if person else None


async def put(desk: Desk, name: str, value: str) -> None:
    await desk.run(lambda tx: tx.book.put(name, value))


# --- leaving -------------------------------------------------------------------------------------


@on_both
async def test_two_taps_close_the_record_and_stop_every_message_at_once(desk: Desk) -> None:
    await desk.step(at(8, 1))
    assert desk.count(ANN, "prompt") == 1
    await desk.say(ANN, "/leave")
    assert desk.ids(ANN) == ["ask-leave"]
    assert desk.last(ANN)[0].args["erased"] is False
    assert await state(desk) is State.READY
    await desk.press(ANN, "lv")
    assert desk.ids(ANN) == ["ask-leave-sure"]
    assert await state(desk) is State.READY
    await desk.press(ANN, "lvy")
    assert desk.ids(ANN) == ["left"]
    assert await state(desk) is State.LEFT
    assert await desk.run(lambda tx: tx.days.open_bouts(IDS[ANN])) == ()
    before = len(desk.chat(ANN))
    await desk.step(at(12, day=4))
    assert len(desk.chat(ANN)) == before
    flag = desk.the(DANA, "flag").args
    assert (flag["kind"], flag["urgent"]) == ("left", False)
    assert [each.kind for each in await desk.flags()] == ["left"]  # none about her days after that


@pytest.mark.parametrize(
    "words",
    ["I want to leave", "stop for good", "delete my data", "unsubscribe"],
)
async def test_plain_words_lead_to_the_question_and_a_plain_answer_is_enough(
    desk: Desk, words: str
) -> None:
    await desk.say(ANN, words)
    assert desk.ids(ANN) == ["ask-leave"]
    await desk.say(ANN, "yes")
    assert desk.ids(ANN) == ["ask-leave-sure"]
    await desk.say(ANN, "no")
    assert desk.ids(ANN) == ["leave-not"]
    assert await state(desk) is State.READY


@pytest.mark.parametrize("words", ["quiero irme", "darme de baja", "me doy de baja"])
async def test_plain_words_of_spanish_lead_to_the_question(desk: Desk, words: str) -> None:
    ann = await desk.run(lambda tx: tx.people.get(IDS[ANN]))
    assert ann is not None
    spanish = replace(ann, language="es")
    await desk.run(lambda tx: tx.people.save(spanish))
    await desk.say(ANN, words)
    assert desk.ids(ANN) == ["ask-leave"]
    await desk.say(ANN, "sí")
    await desk.say(ANN, "sí")
    assert await state(desk) is State.LEFT


@pytest.mark.parametrize(
    ("words", "answer"),
    [
        ("I want to leave, my chest hurts", "stop-emergency"),
        ("away tomorrow for 3 days", "break-planned"),
        ("I don't want to leave", "not-understood"),
    ],
)
async def test_words_about_something_else_do_not(desk: Desk, words: str, answer: str) -> None:
    await desk.say(ANN, words)
    assert answer in desk.ids(ANN)
    assert await state(desk) is State.READY


async def test_an_old_button_or_a_late_yes_never_makes_her_leave(desk: Desk) -> None:
    await desk.forge(ANN, "lvy")
    assert desk.ids(ANN) == ["question-over"]
    await desk.say(ANN, "/leave")
    await desk.forge(ANN, "lvy")  # one screen is left out
    assert desk.ids(ANN) == ["question-over"]
    await desk.forge(ANN, "lv")
    await desk.step(desk.now + timedelta(minutes=30))
    await desk.press(ANN, "lvy")
    assert desk.ids(ANN) == ["question-over"]
    assert await state(desk) is State.READY


async def test_who_leaves_in_the_middle_of_pain_is_an_urgent_flag_at_once(desk: Desk) -> None:
    await desk.say(ANN, "hurts")
    await desk.say(ANN, "/leave")
    await desk.press(ANN, "lv")
    await desk.press(ANN, "lvy")
    (flag,) = await desk.flags()
    assert (flag.kind, flag.urgent, flag.details["unanswered"]) == ("left", True, "sign")
    assert desk.the(DANA, "flag").args["phone"] == "555 0142"  # at 05:00


async def test_who_left_is_a_stranger_until_a_new_invitation_and_then_begins_anew(
    desk: Desk,
) -> None:
    await desk.step(at(8, 1))
    await leave(desk)
    await desk.say(ANN, "10")
    assert desk.ids(ANN) == ["stranger", "come-back"]
    await desk.forge(ANN, "hurt")
    assert desk.ids(ANN) == ["stranger", "come-back"]
    assert await desk.reps() == []
    await desk.say(KIM, "/people")
    await desk.press(KIM, f"a:{IDS[ANN]}")
    await desk.press(KIM, f"ia:{IDS[ANN]}")
    link = str(desk.the(KIM, "invitation").args["link"])
    await desk.say(ANN, f"/start {link.rpartition('=')[2].removeprefix('/start ')}")
    assert desk.ids(ANN) == ["notice"]
    assert await state(desk) is State.JOINING
    client = await desk.run(lambda tx: tx.people.client(IDS[ANN]))
    assert (client.consent_at, client.readiness, client.left_at) == (None, None, None)
    clearance = await desk.run(lambda tx: tx.plans.clearance(IDS[ANN]))
    assert clearance is not None
    assert clearance.lapsed_at is not None
    assert await desk.flags() == ()
    await desk.step(at(20))
    assert desk.count(ANN, "prompt") == 1  # the one of before
    for button in JOINING:
        await desk.press(ANN, button)
    assert desk.ids(ANN) == ["ready-waiting"]
    await desk.later(days=2)  # her clinician is reminded of this clearance too (J6)
    assert desk.the(DANA, "clearance-waits").args["name"] == "Ann"
    assert desk.count(ANN, "prompt") == 1


async def test_an_invitation_from_before_brings_nobody_back(desk: Desk) -> None:
    await desk.say(KIM, "/people")
    await desk.press(KIM, f"a:{IDS[ANN]}")
    await desk.press(KIM, f"ia:{IDS[ANN]}")
    link = str(desk.the(KIM, "invitation").args["link"])
    await leave(desk)
    await desk.say(ANN, f"/start {link.rpartition('=')[2].removeprefix('/start ')}")
    assert desk.ids(ANN) == ["invitation-refused"]


async def test_one_who_never_agreed_can_leave_and_see_what_is_kept(desk: Desk) -> None:
    gil = await desk.run(lambda tx: tx.people.client(IDS[GIL]))
    never = replace(gil, consent_at=None, consent_version=None)
    await desk.run(lambda tx: tx.people.save_client(never))
    await desk.say(GIL, "/data")
    assert desk.ids(GIL) == ["data"]
    await desk.say(GIL, "I want to leave")
    await desk.press(GIL, "lv")
    await desk.say(GIL, "yes")  # no yes to the notice
    assert await state(desk, GIL) is State.LEFT


async def test_a_discharged_client_is_looked_at_no_more(desk: Desk) -> None:
    await desk.step(at(8, 1))
    await desk.forge(KIM, f"dd:{IDS[ANN]}")
    before = len(desk.chat(ANN))
    await desk.step(at(12, day=8))
    assert (len(desk.chat(ANN)), await desk.flags()) == (before, ())


# --- own data ------------------------------------------------------------------------------------


async def test_she_sees_what_is_kept_and_the_practice_gives_it_where_files_are_not_sent(
    desk: Desk,
) -> None:
    await desk.step(at(8, 1))
    await desk.say(ANN, "10")
    await desk.say(ANN, "/data")
    assert desk.the(ANN, "data").args["bouts"] == 1
    await desk.press(ANN, "mf")
    assert desk.ids(ANN) == ["data-by-practice"]
    assert desk.the(KIM, "data-wanted").args["person"] == IDS[ANN]


async def test_admins_are_told_once_a_day_that_she_wants_her_data(desk: Desk) -> None:
    told = []
    for moment in (at(8, 1), at(23, 59), at(0, 0, day=1), at(0, 1, day=1)):  # her own midnight
        await desk.step(moment)
        await desk.say(ANN, "/data")
        for _ in range(2):
            await desk.press(ANN, "mf")
        assert desk.ids(ANN) == ["data-by-practice"]
        told.append(desk.count(KIM, "data-wanted"))
    assert told == [1, 1, 2, 2]


async def test_two_taps_give_the_files_once(desk: Desk) -> None:
    await put(desk, "files_in_chat", "yes")
    await desk.say(ANN, "/data")
    for _ in range(2):
        await desk.press(ANN, "mf")
    await desk.step(at(5, 10))
    assert (desk.count(ANN, "data-json"), desk.count(ANN, "data-csv")) == (1, 1)


async def test_where_files_are_sent_she_gets_all_of_it_and_nothing_of_others(desk: Desk) -> None:
    await put(desk, "files_in_chat", "yes")
    await desk.step(at(8, 1))
    await desk.say(ANN, "10")
    await desk.say(ANN, "my hip hurts")
    await received(desk, ANN, f"my hip hurts {CANARY}")
    await received(desk, GIL, "a secret of another")
    await desk.say(ANN, "/data")
    await desk.press(ANN, "mf")
    await desk.step(at(8, 2))
    files = {a.filename: a for _, said in desk.chat(ANN) if (a := attachment(said))}
    assert {*files} >= {"record-2027-03-08.csv", "record-2027-03-08.json"}
    content = files["record-2027-03-08.json"].content("qps")
    record = json.loads(content)
    assert record["person"]["name"] == "Ann"
    assert [row["reps"] for row in record["bouts_done"]] == [10]
    assert CANARY in json.dumps(record["wrote"])
    assert record["plans"][0]["body"]["movement"] == "stomp"
    assert {row["action"] for row in record["audit"]} >= {"enrol", "consent"}
    assert any(row["text"].startswith("⟦day-opening") for row in record["messages"])
    assert b"secret of another" not in content
    table = files["record-2027-03-08.csv"].content("en").decode("utf-8-sig")
    assert "bouts_done,1,reps,10\r\n" in table
    bundle = json.loads(files["record-2027-03-08.fhir.json"].content("en"))
    assert faults(bundle) == []  # HL7 FHIR R4
    assert "Ann" in json.dumps(bundle)
    assert "secret of another" not in json.dumps(bundle)


async def test_the_whole_program_takes_a_test_sends_the_files_and_lets_her_go(whole: Whole) -> None:
    def allowed(tx: Any) -> None:
        tx.book.put("files_in_chat", "yes")
        tx.people.save_client(replace(tx.people.client(IDS[ANN]), step_home=True))

    await whole.run(allowed)
    await whole.say(ANN, "/steptest")
    await whole.press(ANN, "sg")
    await whole.say(ANN, "lost balance")
    await whole.say(ANN, "15.01")
    assert whole.the(ANN, "step-noted").args["trials"] == [None, 15.01]
    await whole.say(ANN, "/data")
    await whole.press(ANN, "mf")
    await whole.step(at(5, 10))
    assert [whole.count(ANN, f"data-{form}") for form in ("json", "csv", "fhir")] == [1, 1, 1]
    await whole.say(ANN, "I want to leave")
    await whole.press(ANN, "lv")
    await whole.press(ANN, "lvy")
    assert whole.ids(ANN) == ["left"]
    await whole.step(at(9, 1))
    flags = [each.args["kind"] for each in whole.texts(DANA) if each.id == "flag"]
    assert flags == ["step-test", "left"]
    assert whole.count(ANN, "prompt") == 0


async def test_a_cell_that_a_spreadsheet_would_carry_out_is_a_text(desk: Desk) -> None:
    await received(desk, ANN, "=1+1 @cmd")  # OWASP, "CSV Injection" (second-hand)
    person = await desk.run(lambda tx: tx.people.get(IDS[ANN]))
    assert person is not None
    whole = await desk.run(
        lambda tx: archive.record(tx, person, MONDAY, MONDAY, desk.now, own=True)
    )
    table = reports.record_csv(whole, "en").decode("utf-8-sig")
    assert "'=1+1 @cmd" in table
    assert ",=1" not in table


async def test_what_her_clinician_noted_for_herself_is_in_the_practices_copy_only(
    desk: Desk,
) -> None:
    await desk.say(ANN, "my knee hurts 7")
    await desk.step(at(6))
    (flag, *_) = await desk.flags()
    await desk.run(lambda tx: tx.flags.close(flag.id, "note", IDS[DANA], CANARY, desk.now))
    person = await desk.run(lambda tx: tx.people.get(IDS[ANN]))
    assert person is not None
    for own in (True, False):
        whole = await desk.run(
            lambda tx, own=own: archive.record(tx, person, MONDAY, MONDAY, desk.now, own=own)  # type: ignore[misc]
        )
        assert (CANARY in json.dumps(whole)) is not own


# --- erased --------------------------------------------------------------------------------------


async def mentioned(desk: Desk) -> None:
    """Ann's canary is in every place: her words, a flag, a note, a message each way, names, a digest."""

    def rename(tx: Any) -> None:
        person, client = tx.people.get(IDS[ANN]), tx.people.client(IDS[ANN])
        tx.people.save(replace(person, name=f"{CANARY} Ann"))
        tx.people.save_client(replace(client, phone=f"555 {CANARY}"))

    await desk.run(rename)
    await desk.step(at(8, 1))
    await desk.say(ANN, "10")
    await desk.say(ANN, f"{CANARY} what is this")
    await desk.press(ANN, "pass:1")
    await desk.say(DANA, "/clients")
    await desk.press(DANA, f"c:{IDS[ANN]}")
    await desk.press(DANA, f"w:{IDS[ANN]}")
    await desk.say(DANA, f"hello {CANARY}")
    await desk.press(ANN, f"re:{IDS[DANA]}")
    await desk.say(ANN, f"back {CANARY}")
    await desk.step(at(9, 30))
    (flag,) = await desk.flags()
    await desk.press(DANA, f"fx:{flag.id}")
    await desk.press(DANA, f"fo:{flag.id}:note")
    await desk.say(DANA, f"noted {CANARY}")
    await desk.say(ANN, f"my hip hurts, {CANARY}")
    await desk.say(KIM, "/people")
    await desk.press(KIM, f"a:{IDS[ANN]}")
    await desk.say(ANN, f"/start {CANARY}")
    for who, words in (
        (ANN, f"{CANARY} what is this"),
        (DANA, f"hello {CANARY}"),
        (DANA, f"noted {CANARY}"),
        (KIM, f"{CANARY} Ann"),
    ):
        await received(desk, who, words)
    await received(desk, DANA, "about somebody else")

    def digest(tx: Any) -> None:
        body = digests.build(tx, tx.people.get(IDS[DANA]), MONDAY, desk.now)
        tx.digests.keep(IDS[DANA], MONDAY, body, desk.now)
        tx.book.audit(IDS[DANA], "plan", IDS[ANN], desk.now, after={"note": CANARY})

    await desk.run(digest)


@on_both
async def test_after_erasing_nothing_of_hers_is_in_any_table_nor_in_the_file(
    desk: Desk, furnished_database: Database
) -> None:
    await mentioned(desk)
    assert found(furnished_database)  # the canary sings
    others = await desk.run(lambda tx: tx.plans.latest(IDS[GIL]))
    await desk.press(KIM, f"er:{IDS[ANN]}")
    await desk.press(KIM, f"ery:{IDS[ANN]}")
    assert desk.ids(KIM) == ["erased"]
    await desk.step(at(12))
    assert found(furnished_database) == []
    assert await state(desk) is None
    lines = trail_of(furnished_database)
    assert lines[-1] == ("erase", {})
    assert {change == {} for _, change in lines} == {True}
    assert ("plan", {}) in lines
    assert await desk.run(lambda tx: tx.plans.latest(IDS[GIL])) == others
    kept = furnished_database.run_sync(lambda c: c.execute(select(table(InboxRow))).all())
    assert [row.payload["message"]["text"] for row in kept] == ["about somebody else"]
    if furnished_database.dialect == "sqlite":
        path = str(furnished_database.engine.url.database)
        for end in ("", "-wal"):
            with open(path + end, "rb") as file:  # noqa: ASYNC230, PTH123 # a test may wait
                assert CANARY.encode() not in file.read()
    await desk.say(ANN, "10")
    assert desk.ids(ANN) == ["stranger"]


def trail_of(database: Database) -> list[tuple[str, Any]]:
    """The lines of the audit trail about Ann's number: what was done, and what it changed."""
    lines = table(AuditRow)
    query = select(lines).where(lines.c.about == IDS[ANN]).order_by(lines.c.id)
    return database.run_sync(lambda c: [(row.action, row.change) for row in c.execute(query)])


def found(database: Database) -> list[str]:
    """Tables that hold the canary anywhere, as they rest."""

    def look(connection: Any) -> list[str]:
        names = []
        for each in metadata.sorted_tables:
            rows = connection.execute(sql(f'SELECT * FROM "{each.name}"')).all()
            if any(CANARY in str(value) for row in rows for value in row):
                names.append(each.name)
        return names

    return database.run_sync(look)


async def test_of_a_message_about_several_that_still_waits_only_she_is_taken_out(
    desk: Desk,
) -> None:
    rows: list[Any] = [
        {"flag": 1, "name": "Ann", "reason": "silent", "since": "2027-03-08", "dates": []},
        {"flag": 99, "name": "Bo", "reason": "silent", "since": "2027-03-08", "dates": []},
    ]
    await desk.say(ANN, "a blue kettle")
    await desk.press(ANN, "pass:1")
    (flag,) = await desk.flags()
    rows[0]["flag"] = flag.id

    def work(tx: Any) -> Any:
        words = message("flag-summary", count=2, clients_count=2, flag_rows=rows, more=0, lost=0)
        tx.outbox.add(
            Outgoing("summary:x", Lane.FLAG, words, person=IDS[DANA], due_at=at(9)), desk.now
        )

    await desk.run(work)
    await desk.forge(KIM, f"ery:{IDS[ANN]}")
    await desk.step(at(9, 1))
    (summary,) = [each for each in desk.texts(DANA) if each.id == "flag-summary"]
    assert [row["name"] for row in summary.args["flag_rows"]] == ["Bo"]  # type: ignore[union-attr, index, call-overload]
    assert desk.count(DANA, "flag") == 0


@on_both
async def test_a_message_under_way_when_its_client_is_erased_is_let_go(desk: Desk) -> None:
    desk.clock.move(at(8))
    lease = timedelta(seconds=30)
    (claim,) = await desk.run(lambda tx: tx.outbox.claim_due(desk.now, "worker", lease, 1))
    assert claim.bout is not None
    assert await desk.run(lambda tx: days.begins(tx, claim, desk.now, lease))
    await desk.run(lambda tx: erasing.erase(tx, IDS[KIM], IDS[ANN], desk.now))
    await desk.run(lambda tx: days.accepted(tx, claim, 7, desk.now))
    await desk.run(lambda tx: days.not_accepted(tx, claim, None, "refused", desk.now))
    assert not await desk.run(lambda tx: days.begins(tx, claim, desk.now, lease))
    await desk.run(lambda tx: days.advance(tx, IDS[ANN], desk.now))


async def test_only_an_admin_erases_and_only_clients(desk: Desk) -> None:
    for who, data in ((DANA, "ery:{ann}"), (ANN, "ery:{ann}"), (KIM, "ery:{eve}")):
        await desk.forge(who, data.format(ann=IDS[ANN], eve=IDS[EVE]))
        assert desk.ids(who)[0] in {"not-for-you", "no-such-person"}
    assert await state(desk) is State.READY


async def test_where_the_practice_erases_who_left_it_happens_a_week_later_and_was_said(
    desk: Desk,
) -> None:
    await put(desk, "erase_left", "yes")
    await leave(desk)
    assert desk.the(ANN, "left").args["erased"] is True
    left_at = desk.now
    await look_at(desk, left_at + timedelta(days=7, seconds=-1))
    assert await state(desk) is State.LEFT
    await look_at(desk, left_at + timedelta(days=7))
    assert await state(desk) is None


async def look_at(desk: Desk, moment: Any) -> None:
    desk.clock.move(moment)
    await desk.run(lambda tx: days.advance(tx, IDS[ANN], moment))


async def test_the_record_of_who_left_is_kept_unless_the_practice_says_otherwise(
    desk: Desk,
) -> None:
    await leave(desk)
    await look_at(desk, desk.now + timedelta(days=400))
    assert await state(desk) is State.LEFT
