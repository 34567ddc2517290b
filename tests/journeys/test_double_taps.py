"""One button pressed twice, as by a finger that trembles: one answer, and nothing that denies it (P5).

Both presses are made under the screen as it was before the first. The words are ours.
"""

import pytest

from scheduler.domain.messages import Message
from scheduler.domain.people import Role
from scheduler.ports import Tap, Tx
from scheduler.usecases import holds, join, taps
from scheduler.usecases.taps import ONE_ANSWER
from tests.journeys.desk import Desk
from tests.journeys.planning import fill
from tests.journeys.rooms import ANN, BO, DANA, EVE, IDS, JOINING, at, data_of, on_both

pytest_plugins = ("tests.journeys.furniture",)

TWICE = 2


async def double(desk: Desk, who: int, data: str) -> tuple[list[Message], list[Message]]:
    """The latest such button pressed twice; what the chat shows after each."""
    message = next(n for n, said in reversed(desk.chat(who)) if data in data_of(said))
    shown = []
    for _ in range(TWICE):
        await desk.press_on(who, message, data)
        shown.append([said for _, said in desk.chat(who)])
    return shown[0], shown[1]


async def all_double(desk: Desk, who: int, *data: str) -> None:
    for each in data:
        once, again = await double(desk, who, each)
        assert again == once, each
    assert desk.count(who, "question-over") == 0


@on_both
async def test_joining_by_double_taps_shows_each_screen_once(desk: Desk) -> None:
    code = await desk.run(lambda tx: join.invite(tx, None, IDS[BO], desk.now))
    await desk.say(BO, f"/start {code}")
    await all_double(desk, BO, *JOINING)
    assert desk.ids(BO) == ["ready-waiting"]
    assert desk.count(DANA, "client-ready") == 1


async def test_what_is_ticked_by_a_double_tap_stays_ticked(desk: Desk) -> None:
    code = await desk.run(lambda tx: join.invite(tx, None, IDS[BO], desk.now))
    await desk.say(BO, f"/start {code}")
    await all_double(desk, BO, "ok:1", "r:bones:yes", "r:bones:broken-bone", "r:bones:surgery")
    await all_double(desk, BO, "ro:bones:surgery")
    assert desk.last(BO)[0].args["chosen"] == ["broken-bone"]
    await all_double(desk, BO, "r:bones:done")
    assert desk.ids(BO) == ["ask-screen-heart"]


@pytest.mark.parametrize(
    "data",
    [
        ("hurt", "oops"),
        ("hurt", "p:sign:none", "p:place:knee", "p:score:3", "p:when:after", "p:new:0",
         "p:sharper:0"),
        ("hurt", "p:sign:chest"),
        ("lat:1",),
        ("skp:1",),
        ("few:1", "n:4"),
        ("all:1",),
    ],
)  # fmt: skip
async def test_a_prompt_and_all_about_pain_is_answered_once(
    desk: Desk, data: tuple[str, ...]
) -> None:
    await desk.step(at(8, 1))
    bout = desk.button(ANN, "all:").partition(":")[2]
    await all_double(
        desk, ANN, *(each.replace(":1", f":{bout}", 1) for each in data[:1]), *data[1:]
    )


async def test_a_double_tap_on_pain_leaves_the_way_back(desk: Desk) -> None:
    await desk.step(at(8, 1))
    await double(desk, ANN, "hurt")
    assert "oops" in desk.buttons(ANN)


async def test_a_break_the_week_and_passing_words_on_are_answered_once(desk: Desk) -> None:
    await desk.say(ANN, "/break")
    await all_double(desk, ANN, "br:illness", "bl:3", "bb")
    await desk.say(ANN, "is the moon out")
    await all_double(desk, ANN, "pass:1")
    await desk.step(at(18, 30, day=6))
    await all_double(desk, ANN, "wq:none")
    assert desk.count(ANN, "week-thanks") == 1


async def test_days_are_chosen_by_double_taps(desk: Desk) -> None:
    await desk.forge(DANA, f"cp:{IDS[ANN]}")
    await fill(desk, DANA, [("weekdays", "flexible")])
    await all_double(desk, DANA, "dp", "ds:0")
    await desk.step(at(8, 1, day=7))
    await all_double(desk, ANN, "wk:change")
    first = desk.button(ANN, "wo:").partition(":")[2]
    await all_double(desk, ANN, f"wo:{first}", f"wd:{first}", "wk:keep")
    assert desk.ids(ANN) == ["week-days-kept"]


@pytest.mark.parametrize(("seconds", "shown"), [(-1, "logged"), (0, "already-logged")])
async def test_the_same_press_a_minute_later_is_meant_anew(
    desk: Desk, seconds: int, shown: str
) -> None:
    await desk.step(at(8, 1))
    prompt, said = desk.chat(ANN)[-1]
    data = data_of(said)[0]
    await desk.press_on(ANN, prompt, data)
    await desk.later(seconds=ONE_ANSWER.total_seconds() + seconds)
    await desk.press_on(ANN, prompt, data)
    assert dict(desk.chat(ANN))[prompt][0].id == shown


async def test_whoever_wrote_since_means_the_same_button_anew(desk: Desk) -> None:
    await desk.say(ANN, "/today")
    today = desk.chat(ANN)[-1][0]
    await desk.press_on(ANN, today, "how")
    await desk.press_on(ANN, today, "how")
    assert desk.count(ANN, "how-to-asked") == 1
    await desk.say(ANN, "/data")
    await desk.press_on(ANN, today, "how")
    assert desk.count(ANN, "how-to-asked") == TWICE


async def test_the_same_button_under_another_message_is_another(desk: Desk) -> None:
    for _ in range(TWICE):
        await desk.say(ANN, "/today")
    first, second = (n for n, said in desk.chat(ANN) if "how" in data_of(said))
    for message in (first, second):
        await desk.press_on(ANN, message, "how")
    assert desk.count(ANN, "how-to-asked") == TWICE


@on_both
async def test_a_second_press_is_known_in_another_process_too(desk: Desk) -> None:
    await desk.step(at(8, 1))
    prompt, said = desk.chat(ANN)[-1]
    await desk.press_on(ANN, prompt, data_of(said)[0])
    other = Desk(desk.store, updates=20_000)
    other.clock.move(desk.now)
    await other.press_on(ANN, prompt, data_of(said)[0])
    assert other.chat(ANN) == []
    assert await desk.reps() == [10]


@on_both
async def test_only_the_last_tap_of_each_person_is_kept(desk: Desk) -> None:
    first, second = Tap(7, "all:1", desk.now), Tap(8, "skp:2", desk.now)
    await desk.run(lambda tx: taps.carried_out(tx, IDS[ANN], first, offered=False))
    await desk.run(lambda tx: taps.carried_out(tx, IDS[ANN], second, offered=False))
    assert await desk.run(lambda tx: tx.taps.last(IDS[ANN])) == second
    assert await desk.run(lambda tx: tx.taps.last(IDS[BO])) is None
    await desk.run(lambda tx: taps.carried_out(tx, IDS[ANN], first, offered=True))
    assert await desk.run(lambda tx: tx.taps.last(IDS[ANN])) is None


async def test_a_clinician_who_stops_it_again_after_a_colleagues_release_is_heard(
    desk: Desk,
) -> None:
    stop = f"ch:{IDS[ANN]}"
    await desk.press_on(DANA, 1, stop)
    await desk.run(
        lambda tx: holds.release(tx, IDS[EVE], IDS[ANN], desk.now, daily_total=None, tomorrow=False)
    )
    assert await desk.holds() == []
    await desk.press_on(DANA, 1, stop)
    assert await desk.holds() == [None]


async def test_a_press_in_another_role_of_the_account_lies_between(desk: Desk) -> None:
    def enrolled(tx: Tx) -> str:
        person = join.enrol(tx, None, Role.CLINICIAN, "Ann", "qps", None, desk.now)
        return join.invite(tx, None, person.id, desk.now)

    await desk.say(ANN, f"/start {await desk.run(enrolled)}")
    await desk.say(ANN, "/role")
    asked = desk.chat(ANN)[-1][0]
    for role in ("client", "clinician") * TWICE:
        await desk.press_on(ANN, asked, f"as:{role}")
        acting, *_ = await desk.run(lambda tx: tx.people.of_account(ANN))
        assert acting.role.value == role
