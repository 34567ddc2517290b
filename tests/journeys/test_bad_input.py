"""Whatever comes at an open question: one clear reply, the question stays, and the right answer still works.

Played against the stand-in server. A text over the platform's limit leaves the app in pieces: each is
answered.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import cycle

import pytest
from sqlalchemy import select

from bot.words import render
from scheduler.ports import Question
from scheduler.usecases import join
from storage.tables import InboxRow, table
from storage.tables.post import Arrival
from tests.journeys.rooms import ANN, BO, DANA, EVE, GIL, IDS, KIM, Room, Whole, at, on_both

pytest_plugins = ("tests.journeys.furniture",)

NUMBERS = ("999999999999999999999999", "-7", "3.5")
LONG = "x" * 5000
WORDS = (
    ".",
    "\u200b",
    "blue kettle",
    "🙂🙂",
    "a\0b",
    "\u202eשלום\u202c",
    "%s {} <b>",
    "/nonsense",
    LONG,
)
FILES = ("photo", "sticker", "voice")


@dataclass(frozen=True)
class Asked:
    """An open question, the answer that is right, and the id in the reply to it.

    `right` is typed, or tapped. Questions that take any short words have fewer that are bad.
    """

    kind: str
    step: str
    right: str
    then: str
    bad: tuple[str, ...] = (*NUMBERS, *WORDS)
    tapped: bool = False


def pieces(words: str) -> int:
    """Messages in which the app sends a text: the platform's limit is 4096 units (its documentation)."""
    return -(-len(words) // 4096)


async def bad_then_right(room: Whole, who: int, asked: Asked, file: str) -> None:
    """Everything bad, one after the other, then the right answer."""
    for words in asked.bad:
        before = len(room.chat(who))
        await room.say(who, words)
        await one_clear_reply(room, who, asked, before + pieces(words), words)
    before = len(room.chat(who))
    await room.send(who, file)
    await one_clear_reply(room, who, asked, before + 1, file)
    assert room.ids(who)[0] == "cannot-see-files", f"{asked.kind} {asked.step}: {file}"
    if asked.tapped:
        await room.forge(who, asked.right)
    else:
        await room.say(who, asked.right)
    said = {text.id for _, message in room.chat(who)[before:] for text in message}
    said |= {*room.ids(who)}  # the answer to a tap takes the place of its question
    assert asked.then in said, f"{asked.kind} {asked.step}: {said}"


async def one_clear_reply(room: Room, who: int, asked: Asked, messages: int, words: str) -> None:
    where = f"{asked.kind} {asked.step} {words[:20]!r}: {room.ids(who)}"
    assert len(room.chat(who)) == messages, where
    assert all(render((text,), "en").strip() for text in room.last(who)), where
    assert asked.then not in room.ids(who), where
    if asked.kind:
        questions = await room.run(lambda tx: tx.questions.of(IDS[who]))
        assert (asked.kind, asked.step) in {(each.kind, each.step) for each in questions}, where


async def chain(room: Whole, who: int, questions: Sequence[Asked]) -> None:
    """One question after the other; at the end every update was handled at the first try."""
    for asked, file in zip(questions, cycle(FILES), strict=False):
        await bad_then_right(room, who, asked, file)
    await nothing_lost(room)


async def nothing_lost(room: Room) -> None:
    rows = table(InboxRow)
    query = select(rows.c.update_id, rows.c.state, rows.c.attempts, rows.c.reason)
    kept = await room.store._database.run(lambda connection: list(connection.execute(query)))
    assert kept
    assert [row for row in kept if row[1:] != (Arrival.DONE, 1, None)] == []


async def prompted(room: Room) -> None:
    await room.step(at(8, 0))
    assert room.count(ANN, "prompt") == 1


# --- a client ------------------------------------------------------------------------------------

JOINING = (
    Asked("join", "consent", "I agree", "ask-screen-bones"),
    Asked("join", "screen-bones", "yes", "ask-which"),
    Asked("join", "which-bones", "that is all", "ask-screen-heart"),
    Asked("join", "screen-heart", "none", "ask-screen-else"),
    Asked("join", "screen-else", "none", "ask-usual-pain"),
    Asked("join", "usual-pain", "3", "ask-times"),
    Asked("join", "times", "t:zone", "ask-times-zone", tapped=True),
    Asked("join", "times-zone", "Madrid", "ask-times"),
)
OWN_TIMES = (
    Asked("join", "times", "t:window", "ask-times-window", ("blue kettle",), tapped=True),
    Asked("join", "times-window", "8:00-20:00", "ask-times"),
    Asked("join", "times", "t:quiet", "ask-times-quiet", ("blue kettle",), tapped=True),
    Asked("join", "times-quiet", "12:30-13:00", "ask-times"),
    Asked("join", "times", "keep", "ready-waiting", bad=("-7",)),
)


async def test_joining_stays_where_it_is(whole: Whole) -> None:
    code = await whole.run(lambda tx: join.invite(tx, None, IDS[BO], whole.now))
    await whole.say(BO, f"/start {code}")
    await chain(whole, BO, (*JOINING, *OWN_TIMES))


PAIN = (
    Asked("pain", "sign", "no", "ask-pain-place"),
    Asked("pain", "place", "knee", "ask-pain-score"),
    Asked("pain", "score", "4", "ask-pain-when"),
    Asked("pain", "when", "after", "ask-pain-new"),
    Asked("pain", "new", "no", "ask-pain-sharper"),
    Asked("pain", "sharper", "not sharper", "pain-caution"),
)
FALL = (
    Asked("fall", "sign", "no", "ask-fall-injured"),
    Asked("fall", "injured", "no", "ask-fall-new-pain"),
    Asked("fall", "new_pain", "no", "ask-fall-when"),
    Asked("fall", "when", "today", "ask-fall-doing"),
    Asked("fall", "doing", "walking", "fall-noted"),
)


async def test_questions_about_pain_wait_for_an_answer_and_nothing_is_logged(whole: Whole) -> None:
    await prompted(whole)
    await whole.forge(ANN, "hurt")
    await chain(whole, ANN, PAIN)
    assert await whole.reps() == []


async def test_questions_about_a_fall_wait_for_an_answer_and_nothing_is_logged(
    whole: Whole,
) -> None:
    await prompted(whole)
    await whole.forge(ANN, "fell")
    await chain(whole, ANN, FALL)
    assert await whole.reps() == []


@on_both
async def test_how_many_and_are_you_sure_log_only_what_is_a_number(whole: Whole) -> None:
    await prompted(whole)
    await whole.press(ANN, whole.button(ANN, "few:"))
    await chain(whole, ANN, [Asked("fewer", "reps", "4", "logged")])
    assert await whole.reps() == [4]
    await whole.say(ANN, "45")
    await chain(whole, ANN, [Asked("confirm", "reps", "yes", "logged", bad=WORDS)])
    assert await whole.reps() == [4, 45]


async def test_the_question_next_morning_waits_for_a_score(whole: Whole) -> None:
    question = Question(IDS[ANN], "morning", "score", asked_at=whole.now)
    await whole.run(lambda tx: tx.questions.ask(question))
    await chain(whole, ANN, [Asked("morning", "score", "2", "pain-noted")])
    assert await whole.reps() == []


async def test_words_not_understood_can_still_be_passed_on(whole: Whole) -> None:
    await whole.say(ANN, "a green lamp")
    await chain(whole, ANN, [Asked("pass", "yes-no", "yes", "passed-on", bad=WORDS)])


LATER = (
    "later in 999999999999999999 minutes", "in 99999999 hours", "later at 99:99", "later in -5 min",
    "later in 0 min", "later 🙂", "later \u202eשלום\u202c", f"later {LONG}",
)  # fmt: skip


@pytest.mark.parametrize("words", LATER)
async def test_later_with_a_time_that_is_none_loses_nothing(whole: Whole, words: str) -> None:
    await prompted(whole)
    before = len(whole.chat(ANN))
    await whole.say(ANN, words)
    assert len(whole.chat(ANN)) == before + pieces(words)
    await nothing_lost(whole)
    await whole.say(ANN, "10")
    assert await whole.reps() == [10]


# --- a clinician ---------------------------------------------------------------------------------

FIELDS = (
    Asked("plan", "movement", "marching", "plan-card"),
    Asked("plan", "daily_total", "30", "plan-card"),
    Asked("plan", "days_min", "2", "plan-card"),
    Asked("plan", "rest_days", "1", "plan-card"),
    Asked("plan", "weekdays", "Mon, Thu", "plan-card"),
    Asked("plan", "window", "9 to 18", "plan-card"),
    Asked("plan", "quiet", "12:00-13:00", "plan-card"),
    Asked("plan", "gap_minutes", "90", "plan-card"),
    Asked("plan", "start", "tomorrow", "plan-card"),
    Asked("plan", "review", "12 May", "plan-card"),
    Asked("plan", "note", "Hold the rail", "plan-card", bad=()),
)


async def test_every_field_of_a_plan_waits_for_a_value(whole: Whole) -> None:
    await whole.say(EVE, "/clients")
    await whole.forge(EVE, f"cr:{IDS[GIL]}")
    await whole.forge(EVE, f"cc:{IDS[GIL]}:moderate")
    await whole.forge(EVE, f"cp:{IDS[GIL]}")
    for field in FIELDS:
        await whole.press(EVE, f"df:{field.step}")
        await chain(whole, EVE, [field])
    await whole.press(EVE, "dp")
    await whole.press(EVE, "ds:0")
    assert await whole.run(lambda tx: tx.plans.latest(IDS[GIL])) is not None


@on_both
async def test_clearance_and_release_wait_for_the_clinician(whole: Whole) -> None:
    await whole.say(DANA, "/clients")
    await whole.forge(DANA, f"cr:{IDS[ANN]}")
    await chain(whole, DANA, [Asked("", "", f"cc:{IDS[ANN]}:high", "cleared", tapped=True)])
    await whole.forge(DANA, f"ch:{IDS[ANN]}")
    await whole.forge(DANA, f"rel:{IDS[ANN]}")
    await chain(whole, DANA, [Asked("release", "dose", "20", "ask-release-day")])
    assert await whole.holds() == [None]
    await whole.press(DANA, f"rf:{IDS[ANN]}:20:tomorrow")
    assert await whole.holds() == []


# --- an admin ------------------------------------------------------------------------------------

SETTINGS = (
    Asked("setting", "phone", "555 0150", "setting-kept", bad=(*WORDS, "1" * 5000)),
    Asked("setting", "zone", "Europe/Madrid", "setting-kept"),
    Asked("setting", "window", "8 to 20", "setting-kept"),
    Asked("setting", "late_minutes", "30", "setting-kept"),
    Asked("setting", "pain_hold", "7", "setting-kept", bad=(*NUMBERS, *WORDS, "2")),
    Asked("setting", "name", "Birch Row (invented)", "setting-kept", bad=(LONG,)),
    Asked("setting", "answer_hours", "Mon to Fri", "setting-kept", bad=(LONG,)),
)  # fmt: skip


async def test_a_setting_keeps_its_value_until_a_good_one_comes(whole: Whole) -> None:
    await whole.say(KIM, "/settings")
    for setting in SETTINGS:
        await whole.forge(KIM, f"s:{setting.step}")
        await chain(whole, KIM, [setting])


async def test_an_invitation_waits_for_a_name_that_can_be_read(whole: Whole) -> None:
    await whole.say(KIM, "/invite")
    await whole.press(KIM, "ir:client")
    await chain(whole, KIM, [
        Asked("invite", "name", "Fay", "ask-invite-clinician", bad=(LONG, "\u200b", ".", "🙂")),
        Asked("invite", "clinician", f"ic:{IDS[DANA]}", "invitation", tapped=True),
    ])  # fmt: skip
    await whole.say(EVE, "/invite")
    await chain(whole, EVE, [Asked("invite", "name", "Hal", "invitation", bad=(LONG, "\u200b"))])
