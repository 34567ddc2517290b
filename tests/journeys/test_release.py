"""Starting again: only on the clinician's word, at a dose she chooses, never at a higher one (H4, K5, I6)."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from scheduler.domain.days import BoutState
from scheduler.ports import Letter, TryLater
from tests.journeys.desk import Desk
from tests.journeys.rooms import ANN, DANA, EVE, IDS, KIM, MONDAY, Room, Whole, at, on_both
from tests.journeys.test_pain import cautioned_the_day_before

pytest_plugins = ("tests.journeys.furniture",)

ME = IDS[ANN]
THURSDAY = MONDAY + timedelta(days=3)


async def held(room: Room) -> None:
    """Ann has done her first 10 on Monday and is on hold since 08:10."""
    await room.step(at(8, 0))
    await room.press(ANN, room.button(ANN, "all:"))
    await room.step(at(8, 10))
    await room.say(ANN, "bad pain in my hip 8/10")
    assert await room.holds() == [None]
    await room.step(at(9, 0))


async def asked_to_release(room: Room) -> None:
    await room.say(DANA, "/clients")
    await room.press(DANA, f"c:{ME}")
    await room.press(DANA, f"rel:{ME}")
    assert room.ids(DANA) == ["ask-release"]


async def total(room: Room, day: date) -> int:
    version = await room.run(lambda tx: tx.plans.on(ME, day))
    assert version is not None
    return version.plan.daily_total


async def asked_on(room: Room, day: date) -> int:
    """Reps of the day's prompts that left, plus the one that waits."""
    bouts = await room.run(lambda tx: tx.days.bouts(ME, day))
    return sum(b.reps for b in bouts if b.state is not BoutState.WITHDRAWN)


@on_both
async def test_half_from_tomorrow_asks_nothing_today_and_half_on_the_next_impact_day(
    whole: Whole,
) -> None:
    await held(whole)
    await asked_to_release(whole)
    await whole.press(DANA, f"rd:{ME}:20")
    await whole.press(DANA, f"rf:{ME}:20:tomorrow")
    assert whole.ids(DANA) == ["released"]
    told = whole.the(ANN, "release-told").args
    assert (told["total"], told["bout_reps"], told["day"]) == (20, 10, "2027-03-11")
    assert await whole.holds() == []
    prompts = whole.count(ANN, "prompt")
    await whole.step(at(23, 0))
    assert whole.count(ANN, "prompt") == prompts
    await whole.step(at(20, 30, day=3))
    day = await whole.run(lambda tx: tx.days.get(ME, THURSDAY))
    assert day is not None
    assert day.total == 20
    assert whole.count(ANN, "prompt") > prompts


async def test_from_tomorrow_holds_whatever_happens_today(desk: Desk) -> None:
    """A number logged after the release brings no bout of today back."""
    await held(desk)
    await asked_to_release(desk)
    await desk.press(DANA, f"rd:{ME}:20")
    await desk.press(DANA, f"rf:{ME}:20:tomorrow")
    await desk.say(ANN, "did 3")
    await desk.press(ANN, "hurt") if "hurt" in desk.buttons(ANN) else await desk.say(ANN, "hurts")
    await desk.press(ANN, "oops")
    assert await desk.run(lambda tx: tx.days.open_bouts(ME)) == ()
    prompts = desk.count(ANN, "prompt")
    await desk.step(at(23, 0))
    assert desk.count(ANN, "prompt") == prompts


async def test_half_from_today_goes_on_today_with_what_is_left_of_the_half(desk: Desk) -> None:
    await held(desk)
    await asked_to_release(desk)
    await desk.press(DANA, f"rd:{ME}:20")
    await desk.press(DANA, f"rf:{ME}:20:today")
    (waiting,) = await desk.run(lambda tx: tx.days.open_bouts(ME))
    assert waiting.reps == 10
    assert waiting.due_at >= at(10, 0)  # the gap from the bout logged at 08:00 holds
    day = await desk.run(lambda tx: tx.days.get(ME, MONDAY))
    assert day is not None
    assert day.total == 20
    while desk.now < at(20, 30):
        await desk.later(minutes=30)
        if "prompt" in desk.ids(ANN):
            await desk.press(ANN, desk.button(ANN, "all:"))
    assert await desk.reps() == [10, 10]


async def test_the_same_dose_goes_on_by_the_same_version(desk: Desk) -> None:
    await held(desk)
    await asked_to_release(desk)
    await desk.press(DANA, f"rd:{ME}:40")
    await desk.press(DANA, f"rf:{ME}:40:tomorrow")
    version = await desk.run(lambda tx: tx.plans.latest(ME))
    assert version is not None
    assert (version.version, version.plan.daily_total) == (1, 40)
    assert await total(desk, THURSDAY) == 40


@pytest.mark.parametrize("dose", ["41", "500"])
async def test_a_higher_dose_is_refused_and_the_hold_stays(desk: Desk, dose: str) -> None:
    await held(desk)
    await asked_to_release(desk)
    await desk.say(DANA, dose)
    assert desk.ids(DANA)[0] == "release-too-much"
    await desk.forge(DANA, f"rd:{ME}:{dose}")
    assert desk.ids(DANA)[0] == "release-too-much"
    await desk.forge(DANA, f"rf:{ME}:{dose}:today")
    assert desk.ids(DANA)[0] == "release-too-much"
    assert await desk.holds() == [None]
    assert await total(desk, THURSDAY) == 40


@pytest.mark.parametrize("dose", ["0", "-5", "abc", "40.5", "501"])
async def test_a_dose_that_is_none_is_refused_and_the_question_stays(desk: Desk, dose: str) -> None:
    await held(desk)
    await asked_to_release(desk)
    await desk.say(DANA, dose)
    assert desk.ids(DANA) == ["answer-number", "ask-release"]
    assert await desk.holds() == [None]
    await desk.say(DANA, "12")
    assert desk.ids(DANA) == ["ask-release-day"]


@pytest.mark.parametrize(
    ("words", "day"), [("from tomorrow", "2027-03-09"), ("tomorrow", "2027-03-09"), ("today", "2027-03-08")],
)  # fmt: skip
async def test_dose_and_day_can_be_typed(desk: Desk, words: str, day: str) -> None:
    await held(desk)
    await asked_to_release(desk)
    await desk.say(DANA, "15")
    assert desk.last(DANA)[-1].args["total"] == 15
    await desk.say(DANA, "when it is fine")
    assert desk.ids(DANA) == ["answer-choice", "ask-release-day"]
    await desk.say(DANA, words)
    assert desk.ids(DANA) == ["released"]
    assert desk.the(DANA, "released").args["day"] == day
    assert desk.the(ANN, "release-told").args["total"] == 15
    assert await desk.holds() == []


@pytest.mark.parametrize("who", [ANN, KIM, EVE])
@pytest.mark.parametrize("data", [f"rel:{ME}", f"rd:{ME}:20", f"rf:{ME}:20:today"])
async def test_nobody_but_her_own_clinician_can_release(desk: Desk, who: int, data: str) -> None:
    await held(desk)
    await desk.say(who, "/help")
    await desk.forge(who, data)
    assert desk.ids(who)[0] in {"not-for-you", "not-yours"}
    assert await desk.holds() == [None]
    assert desk.count(ANN, "release-told") == 0


@pytest.mark.parametrize("words", ["release me", "I am fine now", "start again", "undo", "10"])
async def test_no_words_of_the_client_release_a_hold(desk: Desk, words: str) -> None:
    await held(desk)
    await desk.say(ANN, words)
    assert await desk.holds() == [None]
    assert await desk.run(lambda tx: tx.days.open_bouts(ME)) == ()


async def test_a_release_twice_is_told_once(desk: Desk) -> None:
    await held(desk)
    await asked_to_release(desk)
    await desk.press(DANA, f"rd:{ME}:20")
    button = desk.chat(DANA)[-1][0]
    await desk.press(DANA, f"rf:{ME}:20:today")
    await desk.later(minutes=1)
    await desk.press_on(DANA, button, f"rf:{ME}:20:today")
    assert desk.count(ANN, "release-told") == 1
    assert desk.ids(DANA) == ["release-nothing"]


async def test_a_leak_hold_is_released_the_same_way(desk: Desk) -> None:
    await desk.step(at(8, 0))
    await desk.say(ANN, "I leak urine when I jump")
    assert await desk.holds() == ["stomp"]
    await asked_to_release(desk)
    await desk.press(DANA, f"rd:{ME}:20")
    await desk.press(DANA, f"rf:{ME}:20:tomorrow")
    assert await desk.holds() == []


async def test_closing_the_flag_releases_nothing(desk: Desk) -> None:
    await held(desk)
    await desk.press(DANA, desk.button(DANA, "fx:"))
    await desk.press(DANA, desk.button(DANA, "fo:"))
    assert desk.ids(DANA) == ["flag-closed"]
    assert await desk.holds() == [None]


@on_both
async def test_a_hold_by_the_clinician_stops_and_tells_the_client(whole: Whole) -> None:
    await whole.step(at(8, 0))
    await whole.say(DANA, "/clients")
    await whole.press(DANA, f"c:{ME}")
    await whole.press(DANA, f"ch:{ME}")
    assert await whole.holds() == [None]
    assert whole.count(ANN, "held-by-clinician") == 1
    prompts = whole.count(ANN, "prompt")
    await whole.step(at(20, 30, day=3))
    assert whole.count(ANN, "prompt") == prompts


# --- a hold that meets a prompt on its way (I6) --------------------------------------------------


async def test_a_hold_drops_a_prompt_that_was_claimed(desk: Desk) -> None:
    from scheduler.usecases import outbox

    await desk.step(at(7, 59))
    desk.clock.move(at(8, 0))
    (claim,) = await desk.run(lambda tx: outbox.claim_due(tx, desk.now, "another", 1))
    assert claim.bout is not None
    await desk.say(ANN, "chest pain")
    assert await outbox.deliver(desk.store, desk.sender, desk.clock, claim) is None
    assert desk.count(ANN, "prompt") == 0


async def test_after_a_hold_a_prompt_that_was_being_sent_does_not_leave_again(desk: Desk) -> None:
    """The platform says "later" to the send that was under way; by then everything is held."""

    async def meanwhile(letter: Letter) -> None:
        if letter.message[-1].id == "safety":
            desk.sender.before = None
            await desk.say(ANN, "chest pain")

    desk.sender.before = meanwhile
    desk.sender.answers = []
    first = desk.sender.send

    async def once_too_fast(letter: Letter) -> object:
        outcome = await first(letter)
        if letter.message[-1].id == "safety":
            return TryLater(timedelta(seconds=5))
        return outcome

    desk.sender.send = once_too_fast  # type: ignore[assignment,method-assign]
    await desk.step(at(8, 0))
    desk.sender.send = first  # type: ignore[method-assign]
    assert await desk.holds() == [None]
    sent = desk.count(ANN, "prompt")
    await desk.step(at(20, 30))
    assert desk.count(ANN, "prompt") == sent


async def test_a_hold_takes_a_nudge_back_that_was_put_off_by_the_platform(desk: Desk) -> None:
    await desk.step(at(8, 0))
    desk.sender.answers = [TryLater(timedelta(minutes=2))]
    await desk.step(at(9, 0))
    assert desk.count(ANN, "nudge") == 0
    await desk.say(ANN, "chest pain")
    await desk.step(at(11, 0))
    assert desk.count(ANN, "nudge") == 0


async def test_what_hurts_again_after_a_release_is_flagged_anew_while_the_first_flag_is_open(
    desk: Desk,
) -> None:
    """Another hold is another episode (I7): she must not read of the first only."""
    await held(desk)
    await asked_to_release(desk)
    await desk.press(DANA, f"rd:{ME}:20")
    await desk.press(DANA, f"rf:{ME}:20:today")
    before = desk.count(DANA, "flag")
    await desk.say(ANN, "bad pain in my hip 8/10")
    assert await desk.holds() == [None]
    assert desk.count(DANA, "flag") == before + 1
    await desk.say(ANN, "it still hurts, 9 of 10")  # the same hold: no second flag
    assert desk.count(DANA, "flag") == before + 1


async def test_a_release_answers_for_the_morning_that_was_asked_about_before_the_hold(
    desk: Desk,
) -> None:
    """She has looked; an old question about the pain of a morning does not keep the bouts from her."""
    await cautioned_the_day_before(desk)
    await desk.step(at(8, 0, day=3))
    await desk.forge(DANA, f"ch:{ME}")
    assert await desk.holds() == [None]
    await asked_to_release(desk)
    await desk.press(DANA, f"rd:{ME}:40")
    await desk.press(DANA, f"rf:{ME}:40:today")
    assert await desk.question() is None
    assert await asked_on(desk, THURSDAY) > 0
