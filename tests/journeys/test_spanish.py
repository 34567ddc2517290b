"""A day in Spanish, in typed words only: a bout is logged, then pain stops all exercise (P3, H1-H3)."""

from __future__ import annotations

from tests.journeys.rooms import ANN, DANA, Whole, at

pytest_plugins = ("tests.journeys.furniture",)

WORDS = {
    "sign": "nada de esto",
    "place": "la cadera",
    "score": "4 de 10",
    "when": "después",
    "new": "es nuevo",
    "sharper": "más agudo",
}
"""What she writes to each question about pain."""


def told(whole: Whole) -> str:
    """The latest message to her, as she reads it."""
    return whole.stage.messages(ANN)[-1].text


async def test_in_spanish_a_bout_is_logged_and_a_pain_of_eight_stops_everything(
    whole: Whole,
) -> None:
    await whole.say(ANN, "/language es")
    await whole.step(at(8, 1))
    assert "Hoy lleva: 0 de " in told(whole)
    await whole.say(ANN, "hice 6")
    assert told(whole).startswith("Anotado: 6 ")
    await whole.say(ANN, "me duele la cadera, 8 de 10")
    assert told(whole).startswith("Me dijo 8 de 10.\nHe parado todo el ejercicio")
    assert await whole.holds() == [None]
    flag = whole.the(DANA, "flag").args
    assert (flag["urgent"], flag["score"]) == (True, 8)
    assert await whole.reps() == [6]
    quiet = len(whole.stage.messages(ANN))
    await whole.step(at(20, 30))
    assert len(whole.stage.messages(ANN)) == quiet


async def test_in_spanish_every_question_about_pain_can_be_answered_in_words(whole: Whole) -> None:
    await whole.say(ANN, "/language es")
    await whole.step(at(8, 1))
    await whole.say(ANN, "hice 6, me duele la cadera")
    assert await whole.reps() == [6]
    await whole.say(ANN, "no sé")  # not "none of these": the question stays open
    assert await whole.question() == ("pain", "sign")
    steps = []
    while (asked := await whole.question()) is not None and asked[0] == "pain":
        steps.append(asked[1])
        await whole.say(ANN, WORDS[asked[1]])
        assert await whole.question() != asked, f"{asked[1]} was not taken: {told(whole)}"
    assert steps[0] == "sign"
    assert await whole.holds() == [None]
    assert "He parado todo el ejercicio" in told(whole)
