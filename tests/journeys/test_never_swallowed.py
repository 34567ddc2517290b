"""Whatever is being asked, pain, a fall, an emergency and words of self-harm come first (P3, H1, H5)."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest

from bot.dialogue import FALL_VALUES, PAIN_VALUES
from scheduler.domain.breaks import REASONS
from scheduler.domain.readiness import SCREENS
from scheduler.ports import Question, Tx
from scheduler.usecases import join, notes
from tests.journeys.desk import Desk
from tests.journeys.rooms import ANN, BO, CRISIS, DANA, EMERGENCY, IDS, MONDAY, PHONE, at

pytest_plugins = ("tests.journeys.furniture",)

USECASES = Path(__file__).parents[2] / "scheduler" / "usecases"
OF_STAFF = frozenset({"write", "setting", "invite", "release", "plan", "cover", "note"})
"""Kinds of questions that only staff are asked."""


@dataclass(frozen=True)
class Open:
    """An open question to a client who has joined."""

    kind: str
    step: str
    body: dict[str, Any] = field(default_factory=dict)

    def __str__(self) -> str:
        return f"{self.kind}:{self.step}"


NEXT_DAY = (MONDAY + timedelta(days=1)).isoformat()
REPS = {"at": at(8).isoformat(), "day": MONDAY.isoformat(), "bout": None, "message_id": None}
IN_TIMES = ("times", "times-zone", "times-window", "times-quiet")
QUESTIONS: tuple[Open, ...] = (
    *(Open("pain", step) for step in PAIN_VALUES),
    *(Open("fall", step) for step in FALL_VALUES),
    Open("morning", "score"),
    Open("fewer", "reps", REPS),
    Open("confirm", "reps", {**REPS, "reps": 45}),
    Open("pass", "yes-no", {"words": "zumba zumba"}),
    *(Open("join", f"screen-{screen}", {"yes": []}) for screen in SCREENS),
    *(Open("join", f"which-{screen}", {"yes": []}) for screen in SCREENS),
    Open("join", "usual-pain", {"yes": []}),
    *(Open("join", step) for step in IN_TIMES),
    Open("join", "times-sure", {"zone": "Europe/Paris", "at": "10:00"}),
    *(Open("break", step, {"reason": REASONS[0]}) for step in ("reason", "length", "first")),
    Open("companion", "rounds", {"key": "hover-hold", "day": MONDAY.isoformat()}),
    Open("week", "days", {"start": MONDAY.isoformat(), "days": [MONDAY.isoformat()]}),
    Open("make-up", "yes-no", {"day": MONDAY.isoformat(), "instead": NEXT_DAY}),
    Open("weekly", "week", {"day": MONDAY.isoformat()}),
    Open("reply", "words", {"to": IDS[DANA]}),
    Open("steptest", "ready"),
    Open("steptest", "times"),
    Open("leave", "ask"),
    Open("leave", "sure"),
)

FALLS = ("yes I fell", "7 and I fell", "I fell on my hip")
"""Each of them would answer one question or another as well."""
EMERGENCY_WORDS, SELF_HARM = "no, help, I can't get up", "4 but I would be better off dead"


async def asked(desk: Desk, what: Open) -> None:
    """Ann has a prompt at 8, and at 9 a question of this kind is open."""
    await desk.step(at(9))
    assert await desk.run(lambda tx: tx.days.open_bouts(IDS[ANN]))

    def ask(tx: Tx) -> None:
        expires = at(9, 15) if what.kind in {"pain", "fall"} else None
        tx.questions.ask(Question(IDS[ANN], what.kind, what.step, what.body, desk.now, expires))

    await desk.run(ask)


async def stopped_and_asked(desk: Desk, kinds: set[str]) -> bool:
    """Whether nothing is asked for any more, and what happened is being asked, or everything is on hold."""
    open_ = {q.kind for q in await desk.run(lambda tx: tx.questions.of(IDS[ANN]))}
    quiet = not await desk.run(lambda tx: tx.days.open_bouts(IDS[ANN]))
    return quiet and bool(open_ & kinds or None in await desk.holds())


async def urgent_words(desk: Desk) -> str:
    """The words in the one urgent flag that is open, which has reached Dana."""
    (flag,) = (each for each in await desk.flags() if each.urgent)
    (told,) = (t for t in desk.texts(DANA) if t.id == "flag" and t.args["flag"] == flag.id)
    return str(told.args["words"])


def test_every_kind_of_question_to_a_client_is_walked_through() -> None:
    """A new kind of question must be listed here, or among those that staff are asked."""
    source = "".join(path.read_text(encoding="utf-8") for path in USECASES.glob("*.py"))
    kinds = set(re.findall(r'Question\(\s*[\w.\[\]]+,\s*"([\w-]+)"', source))
    assert len(kinds) > 15
    assert kinds - OF_STAFF == {each.kind for each in QUESTIONS}


@pytest.mark.parametrize("what", QUESTIONS, ids=str)
async def test_pain_is_heard_whatever_is_asked(desk: Desk, what: Open) -> None:
    await asked(desk, what)
    await desk.say(ANN, "yes but my hip hurts")
    assert await stopped_and_asked(desk, {"pain", "fall"})
    assert desk.ids(ANN)[-1].startswith(("ask-pain-", "ask-fall-", "stop-"))


@pytest.mark.parametrize("said", FALLS)
@pytest.mark.parametrize("what", QUESTIONS, ids=str)
async def test_a_fall_is_heard_whatever_is_asked(desk: Desk, what: Open, said: str) -> None:
    await asked(desk, what)
    await desk.say(ANN, said)
    assert await stopped_and_asked(desk, {"fall"})
    flags = {(flag.kind, flag.urgent) for flag in await desk.flags()}
    fell = any(q.kind == "fall" for q in await desk.run(lambda tx: tx.questions.of(IDS[ANN])))
    assert fell or ("fall", True) in flags
    await desk.step(at(9, 30))  # silence from here on is a hold, and she is told of a fall
    assert await desk.holds() == [None]
    assert ("fall", True) in {(flag.kind, flag.urgent) for flag in await desk.flags()}


@pytest.mark.parametrize("what", QUESTIONS, ids=str)
async def test_an_emergency_is_heard_whatever_is_asked(desk: Desk, what: Open) -> None:
    await asked(desk, what)
    await desk.say(ANN, EMERGENCY_WORDS)
    assert await desk.holds() == [None]
    assert desk.the(ANN, "stop-emergency").args["emergency_number"] == EMERGENCY
    assert EMERGENCY_WORDS in await urgent_words(desk)


@pytest.mark.parametrize("what", QUESTIONS, ids=str)
async def test_self_harm_is_heard_whatever_is_asked(desk: Desk, what: Open) -> None:
    await asked(desk, what)
    await desk.say(ANN, SELF_HARM)
    assert await desk.holds() == [None]
    assert desk.the(ANN, "stop-crisis").args["crisis_line"] == CRISIS
    assert SELF_HARM in await urgent_words(desk)


# --- before she has agreed to anything -----------------------------------------------------------


async def invited(desk: Desk) -> None:
    """Bo reads the notice and has not agreed yet."""
    code = await desk.run(lambda tx: join.invite(tx, None, IDS[BO], desk.now))
    await desk.say(BO, f"/start {code}")


@pytest.mark.parametrize("said", ["my hip hurts", "yes but I fell", "dizzy", "/help I fell"])
async def test_before_consent_she_is_told_whom_to_call_and_nothing_is_kept(
    desk: Desk, said: str
) -> None:
    await invited(desk)
    await desk.say(BO, said)
    assert desk.ids(BO) == ["hurts-before-consent", "notice"]
    told = desk.the(BO, "hurts-before-consent").args
    assert (told["phone"], told["emergency_number"]) == (PHONE, EMERGENCY)
    assert await desk.question(BO) == ("join", "consent")
    assert (await desk.flags(BO), await desk.holds(BO), await desk.reports(BO)) == ((), [], [])


@pytest.mark.parametrize(
    ("said", "stop"),
    [
        ("crushing chest pain", "stop-emergency"),
        ("yes, I can't get up", "stop-emergency"),
        ("my calf is swollen and hot", "stop-urgent-care"),
        ("a curtain over my left eye", "stop-urgent-care"),
        ("I want to die", "stop-crisis"),
    ],
)
async def test_before_consent_what_cannot_wait_is_answered_and_told(
    desk: Desk, said: str, stop: str
) -> None:
    await invited(desk)
    await desk.say(BO, said)
    assert desk.ids(BO) == [stop]
    assert [flag.urgent for flag in await desk.flags(BO)] == [True]


# --- what stands beside it, and what comes after --------------------------------------------------


async def test_a_number_of_a_day_that_is_closed_is_refused_plainly_beside_pain(desk: Desk) -> None:
    await desk.step(at(12, 0, day=1))
    await desk.say(ANN, "yesterday 10 and my hip hurt")
    assert desk.ids(ANN) == ["day-over", "ask-pain-sign"]
    assert await desk.reps() == []


async def test_one_minute_earlier_it_is_logged_beside_pain(desk: Desk) -> None:
    await desk.step(at(11, 59, day=1))
    await desk.say(ANN, "yesterday 10 and my hip hurt")
    assert desk.ids(ANN) == ["noted", "ask-pain-sign"]
    assert await desk.reps() == [10]


@pytest.mark.parametrize("said", ["yes", "OK", "yes I did"])
async def test_a_yes_during_a_hold_is_not_asked_for_a_number(desk: Desk, said: str) -> None:
    """ "Call 112 now." "Yes." is no report of a bout."""
    await desk.step(at(9))
    await desk.say(ANN, "crushing chest pain")
    await desk.say(ANN, said)
    assert desk.ids(ANN) == ["not-understood"]


async def test_whoever_told_of_pain_while_joining_is_asked_on_from_there(desk: Desk) -> None:
    await invited(desk)
    await desk.press(BO, "ok:1")
    await desk.say(BO, "my knee hurts")
    for answer in ("sign:none", "place:knee", "score:2", "when:after", "new:0"):
        await desk.press(BO, f"p:{answer}")
    await desk.press(BO, "p:sharper:0")
    assert desk.ids(BO) == ["pain-noted", "ask-screen-bones"]
    await desk.press(BO, "r:bones:none")
    await desk.say(BO, "I fell")
    for words in ("no", "no", "no", "today", "walking"):
        await desk.say(BO, words)
    assert desk.ids(BO) == ["fall-noted", "ask-screen-heart"]


@pytest.mark.parametrize(
    "said", ["/start fell", "so much to tell " * 60 + "and my hip hurts", "/week I fell"]
)
async def test_behind_a_command_or_a_long_story_it_is_heard_too(desk: Desk, said: str) -> None:
    await desk.step(at(9))
    await desk.say(ANN, said)
    assert desk.ids(ANN)[-1] in {"ask-fall-sign", "ask-pain-sign"}
    await desk.step(at(9, 15))
    words = await urgent_words(desk)
    assert words.endswith(said[-20:].removeprefix("/start "))
    assert len(words) <= notes.LONGEST_WORDS


@pytest.mark.parametrize(("minutes", "both"), [(59, True), (60, False)])
async def test_words_not_understood_one_after_the_other_are_passed_on_together(
    desk: Desk, minutes: int, both: bool
) -> None:
    await desk.step(at(9))
    await desk.say(ANN, "zumba was odd")
    await desk.later(minutes=minutes)
    await desk.say(ANN, "you know how it is")
    assert desk.ids(ANN) == ["not-understood"]
    await desk.say(ANN, "yes")
    words = desk.the(DANA, "flag").args["words"]
    assert words == ("zumba was odd / you know how it is" if both else "you know how it is")


@pytest.mark.parametrize("kind", ["voice", "photo", "sticker"])
async def test_a_file_in_the_middle_of_the_questions_is_followed_by_the_open_one(
    desk: Desk, kind: str
) -> None:
    await desk.step(at(9))
    await desk.say(ANN, "my hip hurts")
    await desk.say(ANN, "none of these")
    await desk.send(ANN, kind)
    assert desk.ids(ANN) == ["cannot-see-files", "ask-pain-place"]


# --- a short answer to what was asked last --------------------------------------------------------

OLDER: tuple[Open, ...] = tuple(
    each for each in QUESTIONS if each.kind in {"weekly", "make-up", "week"}
)


@pytest.mark.parametrize("said", ["no", "none", "yes"])
@pytest.mark.parametrize("what", OLDER, ids=str)
async def test_a_bare_word_is_about_the_bout_that_was_asked_since(
    desk: Desk, what: Open, said: str
) -> None:
    """ "No" to a bout is not "no pain, no fall, no leak" to last week (W8), nor a day that is final (W3)."""

    def ask(tx: Tx) -> None:
        tx.questions.ask(Question(IDS[ANN], what.kind, what.step, what.body, desk.now))

    await desk.step(at(7))
    await desk.run(ask)
    await desk.step(at(8))
    assert "prompt" in desk.ids(ANN)
    await desk.say(ANN, said)
    assert desk.ids(ANN) in (["not-understood"], ["ask-reps-unclear"])
    assert await desk.reports() == []
    open_ = {q.kind for q in await desk.run(lambda tx: tx.questions.of(IDS[ANN]))}
    assert what.kind in open_


# --- in another language than hers ---------------------------------------------------------------


@pytest.mark.parametrize(
    ("said", "answer"),
    [
        ("me caí en la cocina", "ask-fall-sign"),
        ("hice 10 pero me duele la cadera", "ask-pain-sign"),
        ("dolor en el pecho", "stop-emergency"),
        ("quiero morirme", "stop-crisis"),
        ("/help me caí", "ask-fall-sign"),
    ],
)
async def test_whoever_reads_english_is_heard_in_spanish(
    desk: Desk, said: str, answer: str
) -> None:
    await desk.step(at(9))
    await desk.say(ANN, said)
    assert desk.ids(ANN) == [answer]
    assert not await desk.run(lambda tx: tx.days.open_bouts(IDS[ANN]))
    assert await desk.reps() == []  # a count in another language is not taken


@pytest.mark.parametrize("said", ["I fell in the kitchen", "crushing chest pain"])
async def test_whoever_reads_spanish_is_heard_in_english(desk: Desk, said: str) -> None:
    await desk.step(at(9))
    await desk.say(ANN, "/language es")
    await desk.say(ANN, said)
    assert await stopped_and_asked(desk, {"fall"})
