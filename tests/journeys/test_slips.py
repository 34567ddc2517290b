"""Slips and unlucky moments: nothing said of pain is lost, nothing is asked after a stop (P3, H1, I6, I9)."""

from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from scheduler.domain.companions import CATALOGUE
from scheduler.domain.days import BoutState
from scheduler.domain.people import Role, State
from scheduler.ports import Letter, TryLater, Tx
from scheduler.usecases import archive, holds, join, leaving
from tests.journeys.desk import Desk
from tests.journeys.rooms import ANN, BO, DANA, EVE, GIL, IDS, JOINING, MONDAY, at
from tests.journeys.test_leaving import leave, received
from tests.journeys.test_steptest import at_home, times_asked

pytest_plugins = ("tests.journeys.furniture",)

NEW_PHONE = 990_001
"""An account that nobody had before."""


async def speaks(desk: Desk, language: str) -> None:
    ann = await desk.run(lambda tx: tx.people.get(IDS[ANN]))
    assert ann is not None
    after = replace(ann, language=language)
    await desk.run(lambda tx: tx.people.save(after))


# --- words behind a command ----------------------------------------------------------------------


@pytest.mark.parametrize(
    ("language", "words", "asked"),
    [
        ("en", "/help I fell", ("fall", "sign")),
        ("es", "/ayuda me caí", ("fall", "sign")),
        ("en", "/today my hip hurts", ("pain", "sign")),
        ("es", "/hoy me duele la cadera", ("pain", "sign")),
        ("en", "/role my hip hurts", ("pain", "sign")),
        ("en", "/language my hip hurts", ("pain", "sign")),
        ("en", "/start my hip hurts", ("pain", "sign")),
        ("en", "/leave my hip hurts", ("pain", "sign")),
    ],
)
async def test_pain_or_a_fall_behind_a_command_is_heard(
    desk: Desk, language: str, words: str, asked: tuple[str, str]
) -> None:
    await speaks(desk, language)
    await desk.say(ANN, words)
    assert await desk.question() == asked


async def test_a_call_for_help_behind_the_command_for_help_is_an_emergency(desk: Desk) -> None:
    await desk.say(ANN, "/help I can't get up")
    assert desk.ids(ANN) == ["stop-emergency"]
    assert await desk.holds() == [None]


@pytest.mark.parametrize("words", ["/today please", "/times 8 to 6", "/break 12", "/undo 12"])
async def test_words_behind_a_command_that_were_not_taken_are_said_so(
    desk: Desk, words: str
) -> None:
    await desk.step(at(8, 1))
    await desk.say(ANN, words.partition(" ")[0])
    alone = desk.ids(ANN)
    await desk.later(seconds=5)
    await desk.say(ANN, words)
    assert desk.ids(ANN) == [*alone, "only-command-read"]
    assert await desk.reps() == []


@pytest.mark.parametrize(
    ("language", "words", "logged"),
    [
        ("en", "/today 12", 12),
        ("en", "/today did twelve", 12),
        ("en", "/start 12", 12),
        ("en", "/start twelve", 12),
        ("en", "/help 12", 12),
        ("en", "/today all", 10),
        ("es", "/hoy 12", 12),
        ("es", "/hoy doce", 12),
        ("es", "/start doce", 12),
    ],
)
async def test_a_count_behind_a_command_is_logged(
    desk: Desk, language: str, words: str, logged: int
) -> None:
    await speaks(desk, language)
    await desk.step(at(8, 1))
    await desk.say(ANN, words)
    assert desk.ids(ANN)[0] == "logged"
    assert await desk.reps() == [logged]


async def test_a_number_that_could_be_two_things_is_asked_back_behind_a_command_too(
    desk: Desk,
) -> None:
    await desk.step(at(8, 1))
    await desk.say(ANN, "/today 10-12")
    assert desk.ids(ANN) == ["ask-reps-unclear"]
    await desk.say(ANN, "/start 10-12")
    assert desk.ids(ANN)[-1] == "ask-reps-again"
    assert await desk.reps() == []


@pytest.mark.parametrize("word", ["invented", "12345678901234567890"])
async def test_a_wrong_code_of_a_client_is_refused_still(desk: Desk, word: str) -> None:
    await desk.say(ANN, f"/start {word}")
    assert desk.ids(ANN) == ["invitation-refused"]


# --- a step test that is open --------------------------------------------------------------------


async def test_a_score_of_ten_is_no_pair_of_times(desk: Desk) -> None:
    await times_asked(desk)
    await desk.say(ANN, "6/10")
    assert desk.ids(ANN) == ["step-unclear"]
    assert await desk.run(lambda tx: tx.steptests.of(IDS[ANN])) == ()


async def test_a_lost_balance_during_a_hold_is_taken_for_a_fall(desk: Desk) -> None:
    await times_asked(desk)
    await desk.say(ANN, "my chest hurts")
    await desk.say(ANN, "lost balance")
    assert await desk.question() == ("fall", "sign")


async def test_a_yes_answers_what_was_asked_last(desk: Desk) -> None:
    await at_home(desk)
    await desk.say(ANN, "/steptest")
    await desk.later(seconds=20)
    await desk.say(ANN, "/leave")
    await desk.say(ANN, "yes")
    assert desk.ids(ANN) == ["ask-leave-sure"]


async def test_a_score_that_was_asked_for_since_is_no_time(desk: Desk) -> None:
    await times_asked(desk)
    await desk.later(seconds=20)
    await desk.say(ANN, "/health")
    for button in ("r:bones:none", "r:heart:none", "r:else:none"):
        await desk.press(ANN, button)
    await desk.say(ANN, "4")
    assert desk.ids(ANN) == ["readiness-kept"]


@pytest.mark.parametrize(("language", "yes"), [("en", "yes"), ("es", "sí")])
async def test_a_plain_yes_to_the_weekly_question_is_asked_which(
    desk: Desk, language: str, yes: str
) -> None:
    await speaks(desk, language)
    await at_home(desk)
    await desk.step(at(17, 50, day=6))
    await desk.say(ANN, "/steptest")
    await desk.step(at(18, 1, day=6))
    await desk.say(ANN, yes)
    assert desk.ids(ANN) == ["ask-week"]
    await desk.press(ANN, "wq:pain")
    assert await desk.question() == ("pain", "sign")


# --- leaving -------------------------------------------------------------------------------------


async def test_what_was_said_of_pain_before_leaving_is_kept_and_told_in_her_words(
    desk: Desk,
) -> None:
    await desk.say(ANN, "my left hip really hurts")
    await leave(desk)
    flag = desk.the(DANA, "flag").args
    assert (flag["kind"], flag["urgent"]) == ("left", True)
    assert (flag["words"], flag["unanswered"]) == ("my left hip really hurts", "sign")
    ((kind, body),) = await desk.reports()
    assert (kind, body["outcome"]) == ("pain", "left")


async def test_double_taps_leave_each_screen_as_it_is(desk: Desk) -> None:
    await desk.say(ANN, "/leave")
    screen = desk.chat(ANN)[-1][0]
    for button, said in (("lv", "ask-leave-sure"), ("lvy", "left")):
        for _ in range(2):
            await desk.press_on(ANN, screen, button)
        assert dict(desk.chat(ANN))[screen][0].id == said


async def test_a_clinician_who_left_as_a_client_can_still_switch_to_her_work(desk: Desk) -> None:
    def invite(tx: Tx) -> str:
        person = join.enrol(tx, None, Role.CLIENT, "Dana", "qps", IDS[EVE], desk.now)
        return join.invite(tx, None, person.id, desk.now)

    await desk.say(DANA, f"/start {await desk.run(invite)}")
    await desk.say(DANA, "/leave")
    await desk.press(DANA, "lv")
    await desk.press(DANA, "lvy")
    await desk.say(DANA, "/role client")
    await desk.say(DANA, "/clients")
    assert desk.ids(DANA) == ["caseload"]


# --- a stop, and what is said of the times after it ----------------------------------------------


async def test_whoever_keeps_her_times_during_a_hold_is_told_of_no_bouts(desk: Desk) -> None:
    await desk.step(at(8, 1))
    await desk.say(ANN, "my chest hurts")
    await desk.say(ANN, "/times")
    await desk.press(ANN, "t:keep")
    assert desk.ids(ANN) == ["stopped-for-now"]


async def test_whoever_comes_back_on_the_same_day_waits_for_her_clearance(desk: Desk) -> None:
    await desk.step(at(8, 1))
    await leave(desk)
    code = await desk.run(lambda tx: join.invite(tx, None, IDS[ANN], desk.now))
    await desk.say(ANN, f"/start {code}")
    for button in JOINING:
        await desk.press(ANN, button)
    assert desk.ids(ANN) == ["ready-waiting"]


# --- a stop while something is on its way --------------------------------------------------------


def _hold(tx: Tx, desk: Desk) -> None:
    holds.stop(tx, tx.people.lock(IDS[ANN]), desk.now, reason="pain", sign="chest", details={})


def _gone(tx: Tx, desk: Desk) -> None:
    leaving.ask(tx, IDS[ANN], desk.now)
    for step in ("ask", "sure"):
        leaving.answer(tx, IDS[ANN], True, step, desk.now)


@pytest.mark.parametrize("stop", [_hold, _gone])
async def test_a_companion_that_the_platform_puts_off_is_not_asked_for_after_a_stop(
    desk: Desk, stop: Any
) -> None:
    def prescribed(tx: Tx) -> None:
        version = tx.plans.latest(IDS[ANN])
        assert version is not None
        plan = replace(version.plan, companions=(CATALOGUE["back-raise"],))
        tx.plans.add(IDS[ANN], plan, MONDAY, IDS[DANA], desk.now)

    tried: list[str] = []

    async def meanwhile(letter: Letter) -> None:
        if letter.message[0].id != "ask-companion":
            return
        tried.append(letter.message[0].id)
        desk.sender.answers.append(TryLater(timedelta(seconds=20)))
        await desk.run(lambda tx: stop(tx, desk))

    await desk.run(prescribed)
    await desk.say(ANN, "/today")
    desk.sender.before = meanwhile
    await desk.step(at(20))
    assert len(tried) == 1
    assert desk.count(ANN, "ask-companion") == 0


# --- accounts that change hands ------------------------------------------------------------------


async def test_whoever_gets_an_old_account_is_given_nothing_of_the_one_before(desk: Desk) -> None:
    await received(desk, GIL, "my hip hurts")
    code = await desk.run(lambda tx: join.invite(tx, None, IDS[GIL], desk.now))
    await desk.say(NEW_PHONE, f"/start {code}")
    code = await desk.run(lambda tx: join.invite(tx, None, IDS[BO], desk.now))
    await desk.say(GIL, f"/start {code}")

    def wrote(tx: Tx) -> dict[int, list[str]]:
        found = {}
        for who in (GIL, BO):
            person = tx.people.get(IDS[who])
            assert person is not None
            assert person.state in {State.READY, State.JOINING}
            whole = archive.record(tx, person, None, None, desk.now, own=True)
            found[who] = [each["text"] for each in whole["wrote"]]
        return found

    assert await desk.run(wrote) == {GIL: ["my hip hurts"], BO: []}


@pytest.mark.parametrize(
    ("hour", "day", "answer", "state"),
    [
        (22, 0, "skipped", BoutState.SKIPPED),
        (11, 1, "skipped", BoutState.SKIPPED),
        (12, 1, "day-over", BoutState.EXPIRED),
    ],
)
async def test_a_bout_that_is_skipped_after_it_expired_was_declined_while_its_day_is_open(
    desk: Desk, hour: int, day: int, answer: str, state: BoutState
) -> None:
    await desk.step(at(8, 1))
    (bout,) = await desk.run(lambda tx: tx.days.open_bouts(IDS[ANN]))
    await desk.step(at(hour, day=day))
    await desk.forge(ANN, f"skp:{bout.id}")
    assert desk.ids(ANN)[0] == answer
    after = await desk.run(lambda tx: tx.days.bout(bout.id))
    assert after is not None
    assert after.state is state
