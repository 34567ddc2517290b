"""The card that shows how an exercise is done: once before its first prompt, and on asking (C7, P6, I1)."""

from dataclasses import replace

from bot.rehearsal import people
from scheduler.domain.companions import CATALOGUE
from scheduler.ports import Tx
from tests.conftest import briefly
from tests.journeys.theatre import MONDAY, Someone, Theatre

BACK = CATALOGUE["back-raise"]


def order(who: Someone) -> list[str]:
    """What each message of the bot begins with."""
    return [line.ids[0] for line in who.heard() if line.texts]


async def beside(theatre: Theatre, ann: Someone) -> None:
    """A companion comes into her plan."""

    def work(tx: Tx) -> None:
        version = tx.plans.latest(ann.facts.person)
        assert version is not None
        plan = replace(version.plan, companions=(BACK,))
        tx.plans.add(ann.facts.person, plan, MONDAY, theatre.stage.ids["Dana"], theatre.stage.now)

    await theatre.stage.house.store.run(work)


async def test_the_card_comes_right_before_the_first_prompt_and_not_again(theatre: Theatre) -> None:
    ann = await theatre.client(total=20, shows_cards=True, weekdays=(0, 2))
    await ann.until(8)
    assert order(ann) == ["how-to", "day-opening"]
    card = ann.heard()[0].get("how-to")
    assert card is not None
    assert card.args["exercise"] == "marching"
    assert ann.times() == ["08:00"]  # the prompt is not later for it
    await ann.tap("all")
    await ann.until(8, day=2)
    assert len(ann.prompted()) == 3
    assert len(ann.texts("how-to")) == 1


@briefly
async def test_a_prompt_that_moves_takes_its_card_along(theatre: Theatre) -> None:
    ann = await theatre.client(total=20, shows_cards=True)
    await ann.until(7)
    await ann.say("did 5")
    await ann.until(8)
    assert ann.texts("how-to") == []  # two hours after the five, the next may come
    await ann.until(20)
    first = next(n for n, id_ in enumerate(order(ann)) if id_ == "how-to")
    assert order(ann)[first + 1] == "day-opening"
    assert len(ann.texts("how-to")) == 1


async def test_pain_before_the_first_bout_stops_the_card_too(theatre: Theatre) -> None:
    ann = await theatre.client(total=20, shows_cards=True)
    await ann.until(7)
    await ann.say("my hip hurts")
    await ann.until(20)
    assert ann.texts("how-to") == []
    assert ann.prompted() == []


@briefly
async def test_a_card_takes_the_room_of_one_nudge(theatre: Theatre) -> None:
    # 2 bouts and 2 more messages (P6): the card is one of the two, so that one nudge is left.
    ann = await theatre.client(total=20, shows_cards=True)
    await ann.until(22)
    assert order(ann).count("how-to") == 1
    assert len(ann.texts("nudge")) == 1
    assert len(ann.prompted()) == 2


@briefly
async def test_a_bout_done_unasked_makes_no_room_for_another_nudge(theatre: Theatre) -> None:
    # 3 of 4 bouts are asked, so 5 messages at most (P6): 3 prompts, the card and one nudge.
    ann = await theatre.client(total=40, shows_cards=True, gap=60)
    await ann.say("10")
    await ann.until(22)
    assert len(ann.prompted()) == 3
    assert order(ann).count("how-to") == 1
    assert len(ann.texts("nudge")) == 1


@briefly
async def test_a_companion_brings_its_card_the_first_time_only(theatre: Theatre) -> None:
    ann = await theatre.client(total=20, shows_cards=True)
    await beside(theatre, ann)
    await ann.until(5, 1)
    await ann.say("/today")
    await ann.until(21, day=2)
    cards = [
        (line.texts[0].args["exercise"], ann.facts.day(line.at).day) for line in ann.texts("how-to")
    ]
    # Monday's two messages beside the bouts (P6) are the first card and the question; Wednesday has room.
    assert cards == [("marching", 8), ("back-raise", 10)]
    said = order(ann)
    assert said[-2:] == ["how-to", "ask-companion"]
    assert said.count("ask-companion") == 2
    assert (await ann.press("hw:back-raise")).texts[0].args["exercise"] == "back-raise"


async def test_she_asks_in_words_by_command_and_by_a_tap(theatre: Theatre) -> None:
    ann = await theatre.client(total=20, movement="stomp")
    for words in ("how do I do it?", "show me", "/how"):
        answer = await ann.say(words)
        assert answer.ids == ("how-to-asked",)
        assert answer.texts[0].args == {"exercise": "stomp", "others": []}
    await ann.say("/today")
    assert (await ann.press("how")).ids == ("how-to-asked",)
    await ann.say("help")
    assert (await ann.press("how")).ids == ("how-to-asked",)


@briefly
async def test_who_has_asked_before_the_first_prompt_gets_no_second_card(theatre: Theatre) -> None:
    ann = await theatre.client(total=20, shows_cards=True)
    await ann.until(7)
    await ann.say("how")
    await ann.until(8)
    assert order(ann)[-1] == "day-opening"
    assert ann.texts("how-to") == []


async def test_the_other_exercises_of_her_plan_are_one_tap_away_and_no_others(
    theatre: Theatre,
) -> None:
    ann = await theatre.client(total=20, movement="stomp")
    await beside(theatre, ann)
    answer = await ann.say("how do I do the back raise")
    assert answer.texts[0].args == {"exercise": "back-raise", "others": ["stomp"]}
    assert (await ann.press("hw:stomp")).texts[0].args["exercise"] == "stomp"
    stage = theatre.stage
    before = len(ann.heard())
    latest = ann.heard()[-1].message_id
    await stage.heard(people.forge(stage.world, ann.facts.account, latest, "hw:jumping-jack"))
    assert ann.heard()[before].ids == ("question-over",)


@briefly
async def test_on_a_hold_the_card_says_that_nothing_is_to_be_done(theatre: Theatre) -> None:
    ann = await theatre.client(total=20)
    await ann.say("I have chest pain")
    assert (await ann.say("how do I do it")).ids == ("how-to-asked", "stopped-for-now")


async def test_a_question_about_pain_stays_in_front(theatre: Theatre) -> None:
    ann = await theatre.client(total=20)
    await ann.say("it hurts")
    assert (await ann.say("how")).get("how-to-asked") is None
    assert (await ann.say("my knee hurts, how do I do it")).get("how-to-asked") is None


@briefly
async def test_a_card_that_the_platform_puts_off_is_still_before_its_prompt(
    theatre: Theatre,
) -> None:
    ann = await theatre.client(total=20, shows_cards=True)
    ann.trouble("too-fast", "sendPhoto", retry_after=30)
    await ann.until(8, 5)
    assert order(ann) == ["how-to", "day-opening"]


@briefly
async def test_a_card_that_the_platform_refuses_does_not_hold_up_the_prompt(
    theatre: Theatre,
) -> None:
    ann = await theatre.client(total=20, shows_cards=True, weekdays=(0, 1))
    ann.trouble("refuse", "sendPhoto")
    await ann.until(8, 5)
    assert order(ann) == ["day-opening"]
    await ann.until(8, 5, day=1)
    assert len(ann.texts("how-to")) == 1  # the first prompt of the next day brings it
