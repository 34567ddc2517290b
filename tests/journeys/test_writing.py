"""Words between a clinician and a client, and back; a flag's note (K2, K5, H6, I9). The rules are ours."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest
from sqlalchemy import select

from scheduler.domain.people import State
from scheduler.ports import Tx
from scheduler.usecases.writing import LONGEST, STANDS
from storage.tables import FlagRow, table
from tests.journeys.desk import Desk
from tests.journeys.mail import mail_of, names_read, trail
from tests.journeys.rooms import ANN, BO, DANA, EVE, GIL, IDS, KIM, Room, Whole, at, on_both

pytest_plugins = ("tests.journeys.furniture",)

HELLO = "Please do only two bouts today."
BACK = "Thank you, that suits me well."


async def write(room: Room, words: str = HELLO, client: int = ANN) -> None:
    """Dana opens the client's page, taps Write, and writes."""
    await room.say(DANA, "/clients")
    await room.press(DANA, f"c:{IDS[client]}")
    await room.press(DANA, f"w:{IDS[client]}")
    assert room.ids(DANA) == ["ask-words"]
    await room.say(DANA, words)


async def tapped_reply(room: Room) -> None:
    await write(room)
    await room.press(ANN, f"re:{IDS[DANA]}")
    assert room.ids(ANN) == ["ask-reply"]


@on_both
async def test_words_go_to_the_client_and_her_answer_comes_back_marked(whole: Whole) -> None:
    await write(whole)
    assert whole.ids(DANA) == ["words-sent"]
    told = whole.the(ANN, "from-clinician").args
    assert (told["name"], told["words"], told["answer_hours"]) == (
        "Dana",
        HELLO,
        "Mon to Fri, 9 to 5",
    )
    await whole.press(ANN, f"re:{IDS[DANA]}")
    assert whole.count(ANN, "from-clinician") == 1  # her message stays to be read
    await whole.say(ANN, BACK)
    assert whole.ids(ANN) == ["reply-sent"]
    answer = whole.the(DANA, "from-client").args
    assert (answer["name"], answer["words"], answer["phone"]) == ("Ann", BACK, "555 0142")
    assert whole.buttons(DANA) == [f"w:{IDS[ANN]}", f"c:{IDS[ANN]}"]
    assert await whole.reps() == []


@on_both
async def test_writing_is_audited_without_the_words(desk: Desk) -> None:
    await write(desk)
    lines = await trail(desk, "write")
    assert lines == [(IDS[DANA], "write", IDS[ANN], {})]


async def test_a_reply_in_the_chat_counts_as_one_without_any_button(desk: Desk) -> None:
    await write(desk)
    message_id = desk.chat(ANN)[-1][0]
    await desk.say(ANN, BACK, reply_to=message_id)
    assert desk.the(DANA, "from-client").args["words"] == BACK
    await desk.say(ANN, BACK)
    assert desk.ids(ANN) == ["not-understood"]  # and only that one


async def test_a_reply_to_a_prompt_is_about_the_bout_although_an_answer_is_awaited(
    desk: Desk,
) -> None:
    await desk.step(at(8, 0))
    prompt = next(n for n, said in desk.chat(ANN) if any(each.id == "prompt" for each in said))
    await tapped_reply(desk)
    await desk.say(ANN, "10", reply_to=prompt)
    assert await desk.reps() == [10]
    assert desk.count(DANA, "from-client") == 0


async def test_a_number_in_her_answer_goes_to_the_clinician_and_she_is_told_it_was_not_logged(
    desk: Desk,
) -> None:
    await tapped_reply(desk)
    await desk.say(ANN, "10")
    assert desk.ids(ANN) == ["reply-sent"]
    assert desk.the(DANA, "from-client").args["words"] == "10"
    assert await desk.reps() == []
    await desk.say(ANN, "10")
    assert await desk.reps() == [10]


@pytest.mark.parametrize(("later", "logged"), [(-1, []), (0, [12])])
async def test_an_answer_is_awaited_for_half_an_hour(
    desk: Desk, later: int, logged: list[int]
) -> None:
    await tapped_reply(desk)
    await desk.step(desk.now + STANDS + timedelta(seconds=later))
    await desk.say(ANN, "12")
    assert await desk.reps() == logged


@on_both
async def test_pain_in_her_answer_stops_her_day_and_her_words_still_arrive(desk: Desk) -> None:
    await desk.step(at(8, 1))
    await tapped_reply(desk)
    words = "I will, but my hip hurts 8/10 and it is new"
    await desk.say(ANN, words)
    assert await desk.holds() == [None]
    assert desk.the(DANA, "from-client").args["words"] == words
    assert desk.the(DANA, "flag").args["words"] == words
    assert "reply-sent" not in desk.ids(ANN)
    assert desk.ids(ANN)[-1].startswith("stop-")


@pytest.mark.parametrize(
    ("words", "answer"),
    [
        ("help, I cannot get up", "stop-"),
        ("pressure in my chest", "stop-emergency"),
        ("I fell this morning", "ask-fall-"),
        ("I do not want to live any more", "stop-crisis"),
    ],
)
async def test_an_alarm_in_her_answer_is_answered_as_an_alarm(
    desk: Desk, words: str, answer: str
) -> None:
    await tapped_reply(desk)
    await desk.say(ANN, words)
    assert any(id_.startswith(answer) for id_ in desk.ids(ANN))
    assert desk.the(DANA, "from-client").args["words"] == words


async def test_an_open_question_about_pain_is_answered_before_the_clinician(desk: Desk) -> None:
    await tapped_reply(desk)
    await desk.forge(ANN, "hurt")
    await desk.say(ANN, "none of these")
    assert desk.count(DANA, "from-client") == 0


async def test_only_the_very_next_text_is_sent(desk: Desk) -> None:
    await write(desk)
    await desk.say(DANA, "Ann")
    assert desk.ids(DANA) == ["caseload"]
    assert desk.count(ANN, "from-clinician") == 1


@pytest.mark.parametrize("other", [f"c:{IDS[ANN]}", "cl", f"cp:{IDS[ANN]}", "dt"])
async def test_a_tap_on_something_else_puts_the_message_down(desk: Desk, other: str) -> None:
    await desk.forge(DANA, f"w:{IDS[ANN]}")
    await desk.forge(DANA, other)
    await desk.say(DANA, "30")
    assert desk.count(ANN, "from-clinician") == 0


@pytest.mark.parametrize("command", ["/clients", "/digest", "/help"])
async def test_a_command_puts_the_message_down(desk: Desk, command: str) -> None:
    await desk.forge(DANA, f"w:{IDS[ANN]}")
    await desk.say(DANA, command)
    await desk.say(DANA, "Ann")
    assert desk.count(ANN, "from-clinician") == 0


@pytest.mark.parametrize(("later", "sent"), [(-1, 1), (0, 0)])
async def test_a_message_is_waited_for_half_an_hour(desk: Desk, later: int, sent: int) -> None:
    await desk.forge(DANA, f"w:{IDS[ANN]}")
    await desk.step(desk.now + STANDS + timedelta(seconds=later))
    await desk.say(DANA, HELLO)
    assert desk.count(ANN, "from-clinician") == sent


async def test_words_that_are_too_long_are_refused_and_asked_for_again(desk: Desk) -> None:
    await desk.forge(DANA, f"w:{IDS[ANN]}")
    await desk.say(DANA, "a" * (LONGEST + 1))
    assert desk.ids(DANA) == ["words-too-long"]
    await desk.say(DANA, "a" * LONGEST)
    assert desk.the(ANN, "from-clinician").args["words"] == "a" * LONGEST


async def test_a_file_is_no_message_and_the_words_are_still_awaited(desk: Desk) -> None:
    await desk.forge(DANA, f"w:{IDS[ANN]}")
    await desk.send(DANA, "photo")
    assert desk.ids(DANA) == ["cannot-see-files"]
    await desk.say(DANA, HELLO)
    assert desk.count(ANN, "from-clinician") == 1


# --- who cannot be reached -----------------------------------------------------------------------


async def test_a_client_who_has_blocked_the_bot_is_to_be_called(desk: Desk) -> None:
    ann = await desk.run(lambda tx: tx.people.get(IDS[ANN]))
    assert ann is not None
    blocked = replace(ann, blocked=True)
    await desk.run(lambda tx: tx.people.save(blocked))
    await desk.forge(DANA, f"w:{IDS[ANN]}")
    assert desk.the(DANA, "write-blocked").args["phone"] == "555 0142"
    await desk.say(DANA, HELLO)
    assert desk.count(ANN, "from-clinician") == 0


async def test_one_who_blocks_it_meanwhile_is_named_when_the_words_come(desk: Desk) -> None:
    await desk.forge(DANA, f"w:{IDS[ANN]}")
    ann = await desk.run(lambda tx: tx.people.get(IDS[ANN]))
    assert ann is not None
    blocked = replace(ann, blocked=True)
    await desk.run(lambda tx: tx.people.save(blocked))
    await desk.say(DANA, HELLO)
    assert desk.ids(DANA) == ["write-blocked"]
    assert await trail(desk, "write") == []


@pytest.mark.parametrize("state", [State.LEFT, State.DISCHARGED, State.INVITED])
async def test_nothing_is_written_to_a_client_who_is_not_there(desk: Desk, state: State) -> None:
    ann = await desk.run(lambda tx: tx.people.get(IDS[ANN]))
    assert ann is not None
    gone = replace(ann, state=state)
    await desk.run(lambda tx: tx.people.save(gone))
    await desk.forge(DANA, f"w:{IDS[ANN]}")
    assert desk.ids(DANA) == ["write-not-there"]
    await desk.say(DANA, HELLO)
    assert desk.count(ANN, "from-clinician") == 0


async def test_nothing_is_written_to_a_client_who_was_never_there(desk: Desk) -> None:
    await desk.forge(DANA, f"w:{IDS[BO]}")
    assert desk.ids(DANA) == ["write-not-there"]


async def test_care_that_ends_closes_what_she_was_about_to_answer(desk: Desk) -> None:
    await tapped_reply(desk)
    await desk.forge(KIM, f"dd:{IDS[ANN]}")
    await desk.say(ANN, BACK)
    assert desk.ids(ANN) == ["care-ended"]
    assert desk.count(DANA, "from-client") == 0


# --- cover ---------------------------------------------------------------------------------------


async def eve_wrote(desk: Desk) -> None:
    await desk.forge(KIM, f"cvu:{IDS[DANA]}:{IDS[EVE]}:7")
    await desk.forge(EVE, f"w:{IDS[ANN]}")
    await desk.say(EVE, HELLO)
    assert desk.the(ANN, "from-clinician").args["name"] == "Eve"


async def test_an_answer_to_a_colleague_reaches_him_and_her_clinician(desk: Desk) -> None:
    await eve_wrote(desk)
    await desk.press(ANN, f"re:{IDS[EVE]}")
    assert desk.the(ANN, "ask-reply").args["clinician"] == "Eve"
    await desk.say(ANN, BACK)
    assert (desk.count(EVE, "from-client"), desk.count(DANA, "from-client")) == (1, 1)
    # In her own copy it stands once, and in nobody else's.
    for who, words in ((ANN, [BACK]), (GIL, [])):
        number = IDS[who]
        copy = await desk.run(lambda tx, number=number: tx.archive.of(number))  # type: ignore[misc]
        assert [each["words"] for each in copy["to_clinician"]] == words


@on_both
async def test_after_the_cover_her_answer_goes_to_her_clinician_only(desk: Desk) -> None:
    await eve_wrote(desk)
    await desk.press(ANN, f"re:{IDS[EVE]}")
    await desk.forge(KIM, f"cv:{IDS[DANA]}")
    await desk.press(KIM, desk.button(KIM, "cve:"))
    mail = mail_of(desk)
    await desk.say(ANN, BACK)
    assert desk.the(ANN, "reply-sent").args["clinician"] == "Dana"
    assert desk.count(DANA, "from-client") == 1
    assert names_read(mail, EVE, {"Ann"}) == set()


@pytest.mark.parametrize("writer", [GIL, KIM, EVE, 999])
async def test_a_forged_reply_goes_to_nobody_but_her_clinician(desk: Desk, writer: int) -> None:
    mail = mail_of(desk)
    await desk.forge(ANN, f"re:{IDS.get(writer, writer)}")
    await desk.say(ANN, BACK)
    assert desk.count(DANA, "from-client") == 1
    for other in (GIL, KIM, EVE):
        assert [said for chat, said in mail if chat == other] == []


# --- flags ---------------------------------------------------------------------------------------


async def test_a_flag_offers_to_close_write_release_and_open_where_all_is_held(desk: Desk) -> None:
    await desk.say(ANN, "pressure in my chest")
    (flag,) = await desk.flags()
    me = IDS[ANN]
    assert desk.buttons(DANA) == [f"fx:{flag.id}", f"w:{me}", f"rel:{me}", f"c:{me}"]


async def test_a_flag_offers_to_stop_all_where_nothing_is_held(desk: Desk) -> None:
    await desk.say(ANN, "a blue kettle")
    await desk.press(ANN, "pass:1")
    await desk.step(at(9, 0))
    (flag,) = await desk.flags()
    me = IDS[ANN]
    assert desk.buttons(DANA) == [f"fx:{flag.id}", f"w:{me}", f"ch:{me}", f"c:{me}"]
    await desk.press(DANA, f"ch:{me}")
    assert desk.count(DANA, "flag") == 1  # the flag stays to be read
    assert await desk.holds() == [None]


def kept_note(tx: Tx, flag: int) -> tuple[str, Any]:
    rows, store = table(FlagRow), tx.flags
    connection: Any = store._connection  # type: ignore[attr-defined]
    row = connection.execute(select(rows).where(rows.c.id == flag)).one()
    return row.outcome, row.note


@on_both
async def test_a_flag_is_closed_with_a_note_when_its_words_have_come(desk: Desk) -> None:
    await desk.say(ANN, "pressure in my chest")
    (flag,) = await desk.flags()
    await desk.press(DANA, f"fx:{flag.id}")
    await desk.press(DANA, f"fo:{flag.id}:note")
    assert desk.ids(DANA) == ["ask-flag-note"]
    assert len(await desk.flags()) == 1
    mail = mail_of(desk)
    await desk.say(DANA, "Went to hospital, home again.")
    assert desk.ids(DANA) == ["flag-closed"]
    assert await desk.flags() == ()
    kept = await desk.run(lambda tx: kept_note(tx, flag.id))
    assert kept == ("note", "Went to hospital, home again.")
    assert "hospital" not in json.dumps(await trail(desk, "close-flag"))
    assert [said for chat, said in mail if chat == ANN] == []


async def test_a_note_that_is_not_written_leaves_the_flag_open(desk: Desk) -> None:
    await desk.say(ANN, "pressure in my chest")
    (flag,) = await desk.flags()
    await desk.press(DANA, f"fx:{flag.id}")
    await desk.press(DANA, f"fo:{flag.id}:note")
    await desk.say(DANA, "/clients")
    await desk.say(DANA, "Ann")
    assert desk.ids(DANA) == ["caseload"]
    assert await desk.flags() == (flag,)


async def test_a_note_to_a_flag_that_was_closed_meanwhile_changes_nothing(desk: Desk) -> None:
    await desk.say(ANN, "pressure in my chest")
    (flag,) = await desk.flags()
    await desk.press(DANA, f"fx:{flag.id}")
    await desk.press(DANA, f"fo:{flag.id}:note")
    await desk.run(lambda tx: tx.flags.close(flag.id, "called", IDS[DANA], "", desk.now))
    await desk.say(DANA, "A note.")
    assert desk.ids(DANA) == ["flag-closed-before"]
    assert await desk.run(lambda tx: kept_note(tx, flag.id)) == ("called", "")
