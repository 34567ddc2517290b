"""A client's words about a companion: what was not done is not logged, nor mixed with impact (C6, P3)."""

import pytest

from scheduler.domain.companions import CATALOGUE
from tests.conftest import briefly
from tests.journeys.test_companions import week, with_companions
from tests.journeys.theatre import Someone, Theatre

pytestmark = briefly  # the same rules; what differs by engine is tested beside

pytest_plugins = ("tests.journeys.furniture",)

BACK, HOVER = CATALOGUE["back-raise"], CATALOGUE["hover-hold"]


async def at_nine(theatre: Theatre) -> Someone:
    """A client with both exercises beside her two bouts, at nine on their day."""
    ann = await with_companions(theatre, BACK, HOVER)
    await ann.until(9)
    return ann


async def done(who: Someone) -> list[int]:
    """Days on which each was done: the back raise, the hover hold."""
    return [each["done"] for each in await week(who)]


@pytest.mark.parametrize(
    ("words", "beside", "answer"),
    [
        ("did 10 back raises, knee hurts", [1, 0], "ask-pain-sign"),
        ("all my back raises done but my hip aches", [1, 0], "ask-pain-sign"),
        ("hover hold 3 rounds and I felt dizzy", [0, 1], "stop-today"),
        ("did 10 back raises and I fell", [1, 0], "ask-fall-sign"),
        ("the back raise hurts", [0, 0], "ask-pain-sign"),
    ],
)
async def test_beside_pain_its_number_is_never_taken_for_reps_of_the_impact(
    theatre: Theatre, words: str, beside: list[int], answer: str
) -> None:
    ann = await at_nine(theatre)
    assert answer in (await ann.say(words)).ids
    assert ann.ledger() == []
    assert await done(ann) == beside


async def test_a_sign_is_found_in_all_of_her_words_the_name_of_the_exercise_too(
    theatre: Theatre,
) -> None:
    ann = await at_nine(theatre)
    await ann.say("back raise left my legs numb")
    run = theatre.stage.house.store.run
    (flag,) = await run(lambda tx: tx.flags.of_client(ann.facts.person))
    assert flag.urgent
    assert flag.details["sign"]


@pytest.mark.parametrize(
    "words",
    [
        "can't do back raise",
        "is the back raise today?",
        "when is my hover hold",
        "I did my back raises and 12 heel drops",
        "12 and my back raise",
        "back raise is boring",
    ],
)
async def test_words_that_do_not_say_that_it_was_done_log_nothing_and_say_so(
    theatre: Theatre, words: str
) -> None:
    ann = await at_nine(theatre)
    assert (await ann.say(words)).ids[0] == "not-understood"
    assert await done(ann) == [0, 0]
    assert ann.ledger() == []


@pytest.mark.parametrize(
    ("words", "beside"),
    [
        ("back raise", [1, 0]),
        ("back raise done", [1, 0]),
        ("back raises: 10 reps", [1, 0]),
        ("10 of my back raises", [1, 0]),
        ("did my back raise, no pain", [1, 0]),
        ("hover hold 3 rounds, no pain", [0, 1]),
        ("no back raise today", [0, 0]),
        ("didn't do my back raise", [0, 0]),
    ],
)
async def test_words_that_say_it_are_taken_as_said(
    theatre: Theatre, words: str, beside: list[int]
) -> None:
    ann = await at_nine(theatre)
    assert "companion-noted" in (await ann.say(words)).ids
    assert await done(ann) == beside
    assert ann.ledger() == []


async def test_yesterdays_counts_for_yesterday(theatre: Theatre) -> None:
    ann = await at_nine(theatre)
    await ann.until(9, day=1)
    noted = (await ann.say("did my back raise yesterday")).get("companion-noted")
    assert noted is not None
    assert noted.args["day"] == "2027-03-08"


@pytest.mark.parametrize(
    ("hour", "day", "asked", "words", "answer"),
    [
        (9, 1, "make-up", "no", "make-up-declined"),
        (9, 1, "make-up", "no thanks", "make-up-declined"),
        (18, 6, "ask-week", "none of these", "week-thanks"),
        (18, 6, "ask-week", "no", "week-thanks"),
        (9, 1, "make-up", "2 rounds", "companion-noted"),
    ],
)
async def test_no_to_what_was_asked_since_about_the_week_is_no_word_about_an_exercise(
    theatre: Theatre, hour: int, day: int, asked: str, words: str, answer: str
) -> None:
    ann = await with_companions(theatre, BACK, rest_days=1)
    await ann.until(hour, 1, day=day)
    assert ann.texts("ask-companion")
    assert ann.texts(asked)
    assert (await ann.say(words)).ids == (answer,)


async def test_no_to_the_exercise_that_was_asked_last_is_a_word_about_it(theatre: Theatre) -> None:
    ann = await with_companions(theatre, BACK, rest_days=1)
    await ann.until(22, day=0)  # the last bout has expired
    noted = (await ann.say("not today")).get("companion-noted")
    assert noted is not None
    assert noted.args["done"] == 0


async def test_no_thanks_skips_a_bout_that_is_open_though_a_day_was_offered_too(
    theatre: Theatre,
) -> None:
    ann = await theatre.client(total=20, weekdays=(0, 1), days_max=3)
    await ann.until(8, 1, day=1)
    assert ann.texts("make-up")
    assert (await ann.say("no thanks")).ids[0] == "skipped"
    assert (await ann.say("no thanks")).ids == ("make-up-declined",)
