"""From an invitation to ready, and every way it can go wrong (J1-J6, C1)."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest

from scheduler.domain.people import Role, State
from scheduler.domain.plan import Level
from scheduler.ports import Tx
from scheduler.usecases import join
from tests.journeys.desk import Desk
from tests.journeys.rooms import (
    ANN,
    BO,
    DANA,
    EMERGENCY,
    EVE,
    GIL,
    IDS,
    JOINING,
    KIM,
    MONDAY,
    PHONE,
    Room,
    Whole,
    at,
    on_both,
)

pytest_plugins = ("tests.journeys.furniture",)

STRANGER, NEW_PHONE, NEWER_PHONE = (BO + n for n in (100, 101, 102))
LINK_LIFE = timedelta(days=7)


async def invited(room: Room, who: int = BO) -> str:
    return await room.run(lambda tx: join.invite(tx, None, IDS[who], room.now))


async def state_of(room: Room, who: int = BO) -> State:
    person = await room.run(lambda tx: tx.people.get(IDS[who]))
    assert person is not None
    return person.state


# --- the straight way ----------------------------------------------------------------------------


@on_both
async def test_from_the_link_to_ready_in_at_most_eight_taps_and_no_typing(whole: Whole) -> None:
    code = await invited(whole)
    await whole.say(BO, f"/start {code}")
    assert whole.ids(BO) == ["notice"]
    taps = 0
    for button in JOINING:
        await whole.press(BO, button)
        taps += 1
    assert taps <= 8
    assert whole.ids(BO) == ["ready-waiting"]
    assert await state_of(whole) is State.READY
    ready = whole.the(DANA, "client-ready") if whole.count(DANA, "client-ready") == 1 else None
    assert ready is not None
    assert (ready.args["name"], ready.args["usual_pain"], ready.args["readiness"]) == ("Bo", 1, [])


async def test_the_notice_says_what_it_must_before_anything_is_asked(desk: Desk) -> None:
    code = await invited(desk)
    await desk.say(BO, f"/start {code}")
    notice = desk.the(BO, "notice").args
    assert (notice["phone"], notice["emergency_number"]) == (PHONE, EMERGENCY)
    assert notice["clinician"] == "Dana"
    assert desk.buttons(BO) == ["ok:1", "ok:0"]


async def test_joining_can_be_done_in_words_only(desk: Desk) -> None:
    code = await invited(desk)
    await desk.say(BO, f"/start {code}")
    for words in ("I agree", "none", "no", "None of these", "three", "Keep these times"):
        await desk.say(BO, words)
    assert desk.ids(BO) == ["ready-waiting"]
    client = await desk.run(lambda tx: tx.people.client(IDS[BO]))
    assert (client.readiness, client.usual_pain) == ((), 3)


async def test_declining_keeps_the_chat_quiet_and_can_be_thought_over(desk: Desk) -> None:
    code = await invited(desk)
    await desk.say(BO, f"/start {code}")
    await desk.press(BO, "ok:0")
    assert desk.ids(BO) == ["consent-declined"]
    told = len(desk.chat(BO))
    await desk.step(at(23, 0, day=3))
    assert len(desk.chat(BO)) == told
    await desk.press(BO, "ok:1")
    assert desk.ids(BO) == ["ask-screen-bones"]


async def agreed_to_an_older_notice(desk: Desk) -> None:
    """Ann's consent is to the version before this one."""

    def work(tx: Tx) -> None:
        tx.people.save_client(replace(tx.people.client(IDS[ANN]), consent_version=1))

    await desk.run(work)


async def test_a_changed_notice_asks_again_once_and_nothing_is_asked_before_its_answer(
    desk: Desk,
) -> None:
    await desk.step(at(21, 30))
    before = desk.count(ANN, "prompt")
    await agreed_to_an_older_notice(desk)
    await desk.step(at(7, 59, day=1))  # not before her hours
    assert desk.count(ANN, "notice") == 0
    await desk.step(at(8, 0, day=1))
    assert desk.count(ANN, "notice") == 1
    await desk.step(at(12, 0, day=2))
    assert (desk.count(ANN, "notice"), desk.count(ANN, "prompt")) == (1, before)
    await desk.press(ANN, "ok:1")
    assert desk.ids(ANN) == ["consent-kept"]
    await desk.step(at(8, 0, day=3))
    assert desk.count(ANN, "prompt") == before + 1
    assert desk.count(ANN, "notice") == 0  # the answer is written over it


async def test_who_declines_a_changed_notice_is_not_told_that_nothing_is_kept(desk: Desk) -> None:
    """Her record stays, pain is heard, and her clinician learns that nothing comes from her (H8)."""
    await agreed_to_an_older_notice(desk)
    await desk.step(at(9, 0))
    await desk.press(ANN, "ok:0")
    assert desk.ids(ANN) == ["consent-not-renewed"]
    await desk.step(at(8, 59, day=7))
    assert "silent" not in [flag.kind for flag in await desk.flags()]
    await desk.step(at(9, 0, day=7))
    assert "silent" in [flag.kind for flag in await desk.flags()]
    assert desk.count(ANN, "prompt") == 0
    await desk.say(ANN, "my hip hurts")
    assert desk.ids(ANN) == ["ask-pain-sign"]


async def test_which_of_the_screen_is_chosen_and_reaches_the_clinician(desk: Desk) -> None:
    await desk.say(BO, f"/start {await invited(desk)}")
    for button in ("ok:1", "r:bones:yes", "r:bones:two-falls", "r:bones:height", "ro:bones:height"):
        await desk.press(BO, button)
    assert desk.last(BO)[-1].args["chosen"] == ["two-falls"]
    for button in ("r:bones:done", "r:heart:yes", "r:heart:done", "r:else:none", "u:0", "t:keep"):
        await desk.press(BO, button)
    ready = [each for each in desk.texts(DANA) if each.id == "client-ready"][-1].args
    assert ready["readiness"] == ["two-falls", "unsure-heart"]  # "not sure" without a name is a yes


async def test_a_button_of_a_past_screen_is_never_taken_for_none(desk: Desk) -> None:
    """An old keyboard pressed once the same screen is asked anew: what it names is a yes."""
    await desk.say(BO, f"/start {await invited(desk)}")
    await desk.press(BO, "ok:1")
    await desk.press(BO, "r:bones:yes")
    old = desk.chat(BO)[-1][0]
    await desk.say(BO, f"/start {await invited(desk)}")
    await desk.press(BO, "ok:1")
    assert desk.ids(BO) == ["ask-screen-bones"]
    await desk.press_on(BO, old, "r:bones:broken-bone")
    assert [t.args["chosen"] for t in desk.texts(BO) if t.id == "ask-which"][-1] == ["broken-bone"]
    assert await desk.question(BO) == ("join", "which-bones")


@pytest.mark.parametrize("words", ["/start", "/help"])
async def test_joining_is_taken_up_where_it_was_left(desk: Desk, words: str) -> None:
    await desk.say(BO, f"/start {await invited(desk)}")
    await desk.press(BO, "ok:1")
    await desk.press(BO, "r:bones:none")
    await desk.step(at(12, 0, day=1))
    await desk.say(BO, words)
    assert desk.ids(BO) == ["ask-screen-heart"]


# --- the invitation ------------------------------------------------------------------------------


async def test_an_invitation_works_once(desk: Desk) -> None:
    code = await invited(desk)
    await desk.say(BO, f"/start {code}")
    await desk.say(STRANGER, f"/start {code}")
    assert desk.ids(STRANGER) == ["invitation-refused"]
    person = await desk.run(lambda tx: tx.people.get(IDS[BO]))
    assert person is not None
    assert person.account == BO


@pytest.mark.parametrize(
    ("after", "good"),
    [
        (LINK_LIFE - timedelta(seconds=1), True),
        (LINK_LIFE, False),
        (LINK_LIFE + timedelta(seconds=1), False),
    ],
)
async def test_an_invitation_ends_after_seven_days(
    desk: Desk, after: timedelta, good: bool
) -> None:
    code = await invited(desk)
    desk.clock.move(desk.now + after)
    await desk.say(BO, f"/start {code}")
    assert desk.ids(BO) == (["notice"] if good else ["invitation-refused"])


async def test_every_refusal_is_the_same(desk: Desk) -> None:
    used, replaced, expired = await invited(desk), await invited(desk, GIL), ""
    await desk.say(BO, f"/start {await invited(desk)}")
    await invited(desk, GIL)
    await desk.run(lambda tx: tx.book.put("invitation_days", "1"))
    expired = await invited(desk, EVE)
    desk.clock.move(desk.now + timedelta(days=2))
    said = []
    for n, code in enumerate((used, replaced, expired, "guess", "x" * 500, "🙂", "ANN", "4")):
        who = STRANGER + 10 + n
        await desk.say(who, f"/start {code}")
        said.append(desk.last(who))
    assert set(map(str, said)) == {str(said[0])}
    assert said[0][0].id == "invitation-refused"


async def test_guesses_are_slowed_down_and_then_even_a_right_code_waits(desk: Desk) -> None:
    for n in range(5):
        await desk.say(BO, f"/start wrong{n}")
    code = await invited(desk)
    await desk.say(BO, f"/start {code}")
    assert desk.ids(BO) == ["invitation-refused"]
    await desk.later(hours=1)
    await desk.say(BO, f"/start {code}")
    assert desk.ids(BO) == ["notice"]


async def test_one_accounts_guesses_do_not_slow_another(desk: Desk) -> None:
    for n in range(8):
        await desk.say(STRANGER, f"/start wrong{n}")
    await desk.say(BO, f"/start {await invited(desk)}")
    assert desk.ids(BO) == ["notice"]


@on_both
async def test_a_new_account_moves_the_person_over_and_cuts_the_old_one_off(desk: Desk) -> None:
    await desk.step(at(8, 0))
    code = await invited(desk, ANN)
    await desk.say(NEW_PHONE, f"/start {code}")
    assert desk.ids(NEW_PHONE) == ["moved-over"]
    old = len(desk.chat(ANN))
    await desk.say(ANN, "10")
    assert desk.ids(ANN) == ["stranger"]
    await desk.press(ANN, desk.button(ANN, "all:"))
    assert desk.ids(ANN)[0] == "stranger"
    assert await desk.reps() == []
    await desk.say(NEW_PHONE, "10")
    assert await desk.reps() == [10]
    await desk.step(at(20, 30))
    assert desk.count(NEW_PHONE, "prompt") > 0
    assert len(desk.chat(ANN)) <= old + 2  # the two refusals, and nothing about her


@pytest.mark.parametrize(
    ("words", "asked", "kind"),
    [
        ("my hip hurts", "ask-pain-sign", "pain"),
        ("I fell", "ask-fall-sign", "fall"),
    ],
)
async def test_a_question_about_pain_or_a_fall_moves_with_her(
    desk: Desk, words: str, asked: str, kind: str
) -> None:
    await desk.step(at(8, 1))
    await desk.say(ANN, words)
    await desk.later(minutes=10)
    await desk.say(NEW_PHONE, f"/start {await invited(desk, ANN)}")
    assert desk.ids(NEW_PHONE) == ["moved-over", asked]
    await desk.later(minutes=4, seconds=59)
    assert (await desk.holds(), await desk.question()) == ([], (kind, "sign"))
    await desk.later(seconds=1)  # 15 minutes after it was asked first (H1)
    assert await desk.holds() == [None]
    assert desk.ids(NEW_PHONE)[0].startswith("no-answer-so-stopped")
    assert desk.count(NEW_PHONE, "prompt") == 0


async def test_what_is_asked_again_is_answered_in_the_new_chat(desk: Desk) -> None:
    await desk.step(at(8, 1))
    for button in ("hurt", "p:sign:none", "p:place:knee"):
        await desk.press(ANN, button)
    await desk.say(NEW_PHONE, f"/start {await invited(desk, ANN)}")
    assert desk.ids(NEW_PHONE) == ["moved-over", "ask-pain-score"]
    for button in ("p:score:3", "p:when:after", "p:new:0", "p:sharper:0"):
        await desk.press(NEW_PHONE, button)
    assert desk.ids(NEW_PHONE) == ["pain-caution"]
    await desk.step(
        at(8, 1, day=1)
    )  # the morning after is asked there, and moves with her too (H2)
    assert desk.ids(NEW_PHONE) == ["ask-morning"]
    await desk.say(NEWER_PHONE, f"/start {await invited(desk, ANN)}")
    assert desk.ids(NEWER_PHONE) == ["moved-over", "ask-morning"]
    await desk.press(NEWER_PHONE, "m:1")
    assert desk.ids(NEWER_PHONE) == ["pain-noted"]


async def test_moving_during_a_hold_keeps_the_hold(desk: Desk) -> None:
    await desk.say(ANN, "chest pain")
    await desk.say(NEW_PHONE, f"/start {await invited(desk, ANN)}")
    assert await desk.holds() == [None]
    assert desk.ids(NEW_PHONE) == ["moved-over", "stopped-for-now"]
    await desk.step(at(20, 30))
    assert desk.count(NEW_PHONE, "prompt") == 0


@pytest.mark.parametrize("end", ["discharge"])
async def test_a_discharged_client_cannot_come_back_by_an_old_link(desk: Desk, end: str) -> None:
    code = await invited(desk, GIL)
    await desk.say(KIM, "/people")
    await desk.press(KIM, f"a:{IDS[GIL]}")
    await desk.press(KIM, f"d:{IDS[GIL]}")
    await desk.press(KIM, f"dd:{IDS[GIL]}")
    await desk.say(NEW_PHONE, f"/start {code}")
    assert desk.ids(NEW_PHONE) == ["invitation-refused"]
    await desk.say(GIL, "10")
    assert desk.ids(GIL) == ["care-ended"]


# --- several roles, strangers, groups ------------------------------------------------------------


async def second_role(desk: Desk) -> None:
    """Dana is an admin too, on the same account."""

    def work(tx: object) -> str:
        person = join.enrol(tx, None, Role.ADMIN, "Dana", "qps", None, desk.now)  # type: ignore[arg-type]
        return join.invite(tx, None, person.id, desk.now)  # type: ignore[arg-type]

    await desk.say(DANA, f"/start {await desk.run(work)}")


async def test_a_second_role_on_one_account_is_switched_in_sight(desk: Desk) -> None:
    await second_role(desk)
    await desk.say(DANA, "/settings")
    assert desk.ids(DANA) == ["settings"]
    await desk.say(DANA, "/role")
    assert desk.last(DANA)[0].args == {"role": "admin", "roles": ["admin", "clinician"]}
    await desk.press(DANA, "as:clinician")
    assert desk.ids(DANA)[-1] == "acting-as"
    await desk.say(DANA, "/clients")
    assert desk.ids(DANA) == ["caseload"]
    await desk.say(DANA, "/settings")
    assert desk.ids(DANA) != ["settings"]


async def test_flags_reach_a_clinician_who_acts_as_admin(desk: Desk) -> None:
    await second_role(desk)
    await desk.say(ANN, "chest pain")
    assert desk.count(DANA, "flag") == 1


@pytest.mark.parametrize("role", ["admin", "clinician", "nonsense", ""])
async def test_a_role_that_is_not_hers_cannot_be_taken(desk: Desk, role: str) -> None:
    await desk.say(ANN, f"/role {role}")
    await desk.forge(ANN, f"as:{role}")
    people = await desk.run(lambda tx: tx.people.of_account(ANN))
    assert [(p.role, p.acting) for p in people] == [(Role.CLIENT, True)]


async def test_a_second_person_of_the_same_role_cannot_share_an_account(desk: Desk) -> None:
    await desk.say(ANN, f"/start {await invited(desk)}")
    assert desk.ids(ANN) == ["invitation-refused"]


@pytest.mark.parametrize("words", ["hello", "/start", "/help", "10", "chest pain", "/clients"])
async def test_a_stranger_gets_one_explanation_and_nothing_else(desk: Desk, words: str) -> None:
    await desk.say(STRANGER, words)
    assert desk.ids(STRANGER) == ["stranger"]
    assert await desk.flags() == ()


@pytest.mark.parametrize("data", ["hurt", f"c:{IDS[ANN]}", "cl", "ap", "as:admin", "ok:1"])
async def test_a_strangers_forged_button_does_nothing(desk: Desk, data: str) -> None:
    await desk.say(STRANGER, "hello")
    await desk.forge(STRANGER, data)
    assert {each.id for each in desk.texts(STRANGER)} == {"stranger"}


@pytest.mark.parametrize("kind", ["group", "supergroup", "channel"])
async def test_in_a_group_nothing_is_said_about_anybody(desk: Desk, kind: str) -> None:
    group = {"id": -100123, "type": kind}
    sender = {"id": ANN, "is_bot": False, "language_code": "en"}
    for text in ("10", "chest pain", "/today"):
        content = {"message_id": 900, "date": int(desk.now.timestamp()), "text": text}
        await desk.update({"message": {**content, "from": sender, "chat": group}})
    assert [chat for chat, _ in desk.sender.sent.values() if chat == -100123] == []
    assert await desk.reps() == []
    assert await desk.holds() == []


# --- clearance -----------------------------------------------------------------------------------


async def bo_ready(room: Room) -> None:
    await room.say(BO, f"/start {await invited(room)}")
    for button in JOINING:
        await room.press(BO, button)


async def planned(room: Room, who: int = BO) -> None:
    for button in (f"cp:{IDS[who]}", "df:movement", "dv:movement:stomp", "dp"):
        await room.forge(DANA, button)
    await room.forge(DANA, "ds:0")
    assert room.ids(DANA)[-1] == "plan-saved" or room.count(DANA, "plan-saved")


async def cleared(room: Room, level: str, who: int = BO) -> None:
    await room.forge(DANA, f"cr:{IDS[who]}")
    await room.forge(DANA, f"cc:{IDS[who]}:{level}")


async def prompts_by_evening(room: Room, who: int = BO) -> int:
    await room.step(at(20, 30))
    return room.count(who, "prompt")


async def test_ready_but_not_cleared_is_told_once_and_asked_for_nothing(desk: Desk) -> None:
    await bo_ready(desk)
    await planned(desk)
    assert desk.count(BO, "ready-waiting") == 1
    assert await prompts_by_evening(desk) == 0


async def test_after_two_days_without_clearance_the_clinician_is_reminded_once(desk: Desk) -> None:
    await bo_ready(desk)
    joined = desk.now
    await desk.step(joined + timedelta(days=2) - timedelta(seconds=1))
    assert desk.count(DANA, "clearance-waits") == 0
    await desk.step(joined + timedelta(days=2))
    assert desk.the(DANA, "clearance-waits").args["name"] == "Bo"
    await desk.step(joined + timedelta(days=9))
    assert desk.count(DANA, "clearance-waits") == 1


async def test_who_is_cleared_in_time_is_no_reminder(desk: Desk) -> None:
    await bo_ready(desk)
    await desk.later(days=1)
    await cleared(desk, "low")
    await desk.later(days=8)
    assert desk.count(DANA, "clearance-waits") == 0


@pytest.mark.parametrize("first", ["clearance", "plan"])
async def test_cleared_then_planned_or_planned_then_cleared_both_lead_to_bouts(
    desk: Desk, first: str
) -> None:
    await bo_ready(desk)
    if first == "clearance":
        await cleared(desk, "moderate")
        await planned(desk)
    else:
        await planned(desk)
        await cleared(desk, "moderate")
    assert await prompts_by_evening(desk) > 0


@pytest.mark.parametrize("level", ["none", "low"])
async def test_a_ceiling_below_the_movement_asks_for_nothing(desk: Desk, level: str) -> None:
    """A stomp is moderate: 2.9 body weights (Ryan 2021, doi:10.29011/2576-9596.100068, read)."""
    await bo_ready(desk)
    await planned(desk)
    await cleared(desk, level)
    assert await prompts_by_evening(desk) == 0


@pytest.mark.parametrize("level", ["none", "low"])
async def test_a_clearance_taken_back_stops_the_bout_that_was_waiting(
    desk: Desk, level: str
) -> None:
    await desk.step(at(8, 0))
    await desk.press(ANN, desk.button(ANN, "all:"))
    assert await desk.run(lambda tx: tx.days.open_bouts(IDS[ANN]))
    prompts = desk.count(ANN, "prompt")
    await cleared(desk, level, ANN)
    assert await prompts_by_evening(desk, ANN) == prompts


async def test_there_is_no_clearance_before_the_answers(desk: Desk) -> None:
    await desk.say(DANA, "/clients")
    await desk.forge(DANA, f"cr:{IDS[BO]}")
    assert desk.ids(DANA) == ["clear-not-answered"]
    await desk.forge(DANA, f"cc:{IDS[BO]}:high")
    assert await desk.run(lambda tx: tx.plans.clearance(IDS[BO])) is None


@pytest.mark.parametrize("who", [KIM, EVE, ANN])
async def test_nobody_but_her_own_clinician_clears(desk: Desk, who: int) -> None:
    await desk.say(who, "/help")
    await desk.forge(who, f"cc:{IDS[ANN]}:high")
    clearance = await desk.run(lambda tx: tx.plans.clearance(IDS[ANN]))
    assert clearance is not None
    assert clearance.ceiling is Level.MODERATE


async def test_without_phone_and_emergency_number_nobody_is_asked(desk: Desk) -> None:
    await desk.run(lambda tx: tx.book.put("phone", ""))
    await desk.step(at(20, 30))
    assert desk.count(ANN, "prompt") == 0


# --- times ---------------------------------------------------------------------------------------


async def test_times_that_make_the_plan_impossible_are_refused(desk: Desk) -> None:
    await desk.say(ANN, "/times")
    await desk.press(ANN, "t:window")
    await desk.say(ANN, "8:00-9:00")
    assert desk.ids(ANN) == ["times-do-not-fit", "ask-times"]
    assert desk.last(ANN)[-1].args["window"] == [480, 1200]
    client = await desk.run(lambda tx: tx.people.client(IDS[ANN]))
    assert client.hours is None


async def test_times_that_fit_are_kept_and_the_day_is_worked_out_anew(desk: Desk) -> None:
    await desk.say(ANN, "/times")
    await desk.press(ANN, "t:window")
    await desk.say(ANN, "10:00-20:00")
    assert desk.last(ANN)[-1].args["window"] == [600, 1200]
    await desk.press(ANN, "t:keep")
    await desk.step(at(9, 59))
    assert desk.count(ANN, "prompt") == 0
    await desk.step(at(10, 0))
    assert desk.count(ANN, "prompt") == 1
    assert (await desk.run(lambda tx: tx.days.bouts(IDS[ANN], MONDAY)))[-1].reps == 10


async def test_other_times_within_a_day_are_answered_with_the_time_that_has_moved(
    desk: Desk,
) -> None:
    """S4. "Your first bouts are today" is for who has just joined."""
    await desk.step(at(8, 0))
    await desk.say(ANN, "10")
    assert desk.last(ANN)[0].args["next"] == "2027-03-08T12:00"
    await desk.say(ANN, "/times")
    await desk.press(ANN, "t:quiet")
    await desk.say(ANN, "11:00-13:30")
    await desk.press(ANN, "t:keep")
    assert desk.ids(ANN) == ["today", "today-next"]
    assert desk.last(ANN)[1].args["next"] == "2027-03-08T11:00"
    assert desk.last(ANN)[0].args["done"] == 10
