"""From the invitation to leaving, three times: by taps, in English words only, and in Spanish words only.

The same answers are meant, so the same is said and kept; what a text is called is the same in every
language. The words are ours.
"""

from __future__ import annotations

import pytest

from scheduler.domain.people import State
from scheduler.usecases import join
from tests.journeys.desk import Desk
from tests.journeys.planning import fill
from tests.journeys.rooms import BO, DANA, MONDAY, at
from tests.journeys.ways import BOS, WAYS, Way

pytest_plugins = ("tests.journeys.furniture",)

LISBON = (38.72, -9.14)
"""Degrees; from memory."""
PNG = b"\x89PNG"
"""How a picture of that format begins (PNG specification, section 5.2; from memory)."""


@pytest.fixture(name="bo", params=WAYS)
def bo_fixture(desk: Desk, request: pytest.FixtureRequest) -> Way:
    return Way(desk, request.param)


async def joins(bo: Way) -> None:
    code = await bo.desk.run(lambda tx: join.invite(tx, None, BOS, bo.desk.now))
    await bo.language()
    await bo.desk.say(BO, f"/start {code}")
    await bo.does("ok:1", "I agree", "estoy de acuerdo", "ask-screen-bones")
    await bo.does("r:bones:none", "none of these", "ninguna de estas", "ask-screen-heart")
    await bo.does("r:heart:none", "none", "ninguna", "ask-screen-else")
    await bo.does("r:else:none", "no", "no", "ask-usual-pain")
    await bo.does("u:2", "two", "dos", "ask-times")
    await bo.does("t:quiet", "change quiet times", "cambiar horas de silencio", "ask-times-quiet")
    await bo.types("12 to 1 pm", "de 12 a 13", "ask-times")
    await bo.does("t:zone", "change zone", "cambiar zona", "ask-times-zone")
    await bo.types("Madrid", "Madrid", "ask-times")
    assert bo.says("ask-times").args["zone"] == "Europe/Madrid"
    await bo.desk.share(BO, *LISBON)
    assert bo.desk.ids(BO) == ["ask-zone-sure"]
    await bo.does("zs:", "yes", "sí", "ask-times")
    assert bo.says("ask-times").args["zone"] == "Europe/Lisbon"
    await bo.does("t:window", "change hours", "cambiar horas", "ask-times-window")
    await bo.types("8 am to 8 pm", "de 8 a 20", "ask-times")
    times = bo.says("ask-times").args
    assert (times["window"], times["quiet"]) == ([480, 1200], [[720, 780]])
    await bo.does("t:keep", "keep these times", "sí, me van bien", "ready-waiting")


async def is_prescribed(bo: Way) -> None:
    """Forty stomps on two days of his choice, and a raise of the back on three."""
    desk = bo.desk
    for button in (f"cr:{BOS}", f"cc:{BOS}:moderate", f"cp:{BOS}"):
        await desk.forge(DANA, button)
    await fill(desk, DANA, [("movement", "stomp"), ("weekdays", "flexible")])
    await fill(desk, DANA, [("companions", "back raise 10, 2 rounds, 3 days")])
    await desk.press(DANA, "dp")
    await desk.press(DANA, "ds:0")


async def test_the_same_is_meant_by_taps_and_in_the_words_of_two_languages(bo: Way) -> None:
    await joins(bo)
    await is_prescribed(bo)
    desk = bo.desk
    await desk.step(at(8, 1))
    await bo.does("wk:keep", "keep these days", "me van bien", "week-days-kept")
    await asks_how(bo)
    await answers_bouts(bo)
    await makes_up_and_tells_of_the_week(bo)
    await goes_away_and_comes_back(bo)
    await talks_with_the_practice(bo)
    await asks_for_help_and_for_another_language(bo)
    await does_the_step_test(bo)
    await is_in_pain(bo)
    await leaves(bo)


async def asks_how(bo: Way) -> None:
    if bo.way == "taps":
        await bo.desk.say(BO, "/today")
    await bo.does("how", "how do I do it?", "¿cómo se hace?", "how-to-asked")
    assert bo.says("how-to-asked").args["exercise"] == "stomp"
    assert bo.sees().startswith(PNG)
    words = ("how do I do the back raise?", "¿cómo se hace subir la espalda?")
    await bo.does("hw:back-raise", *words, "how-to-asked")
    assert bo.says("how-to-asked").args["exercise"] == "back-raise"
    assert bo.sees().startswith(PNG)


async def answers_bouts(bo: Way) -> None:
    """All of it, put off, in part, not this one; a number taken back."""
    desk = bo.desk
    await bo.does("all:", "all done", "todas hechas", "logged")
    await desk.step(at(12, 1))
    await bo.does("lat:", "later", "luego", "put-off")
    await desk.step(at(13, 30))
    if bo.way == "taps":  # who types says how many at once
        await bo.does("few:", "", "", "ask-reps")
    await bo.does("n:6", "did six", "hice seis", "logged")
    await bo.types("undo", "borrar", "undone")
    await bo.types("7", "7", "logged")
    await desk.step(at(17, 0))
    await bo.does("skp:", "skip", "esta no", "skipped")
    assert await desk.reps(MONDAY, BO) == [10, 7]


async def does_what_is_beside_the_impact(bo: Way) -> None:
    """Asked in the middle of the hours, logged apart from the impact (C6).

    Not on Monday: with the card and the question about days that day had no room for it (P6).
    """
    assert bo.desk.count(BO, "ask-companion") == 0
    await bo.desk.step(at(14, 1, day=2))
    assert bo.says("ask-companion").args["rounds"] == 2
    words = ("did two rounds of back raises", "hice dos series de subir la espalda")
    await bo.does("cd:back-raise:2027-03-10:2", *words, "companion-noted")
    noted = bo.says("companion-noted").args
    assert (noted["companion"], noted["done"]) == ("back-raise", 2)


async def makes_up_and_tells_of_the_week(bo: Way) -> None:
    desk = bo.desk
    await desk.step(at(9, 0, day=1))
    await bo.types("yesterday 3", "ayer 3", "logged")
    await bo.does("mu:1", "yes", "sí", "make-up-kept")
    await does_what_is_beside_the_impact(bo)
    await desk.step(at(18, 30, day=6))
    await bo.does("wq:none", "none of these", "nada de eso", "week-thanks")
    await bo.types("/today", "/hoy", "today-rest")
    await bo.types("/week", "/semana", "week-picture")
    line = bo.says("week-picture").args["line"]
    assert isinstance(line, dict)
    assert line["companions"] == [{"name": "back-raise", "done": 1, "days": 3}]
    assert bo.sees().startswith(PNG)


async def goes_away_and_comes_back(bo: Way) -> None:
    desk = bo.desk
    await desk.step(at(10, 0, day=7))
    if bo.way == "taps":
        await desk.say(BO, "/break")
        await bo.does("br:illness", "", "", "ask-break-length")
        await bo.does("bl:3", "", "", "break-started")
    else:
        await bo.types("I am ill for 2 days", "estoy enfermo 2 días", "break-started")
    await desk.step(at(10, 0, day=8))
    await bo.types("/back", "ya estoy de vuelta", "break-over")


async def talks_with_the_practice(bo: Way) -> None:
    desk = bo.desk
    await desk.forge(DANA, f"w:{BOS}")
    await desk.say(DANA, "How are you?")
    message, said = desk.chat(BO)[-1]
    assert [each.id for each in said] == ["from-clinician"]
    if bo.way == "taps":
        await bo.does("re:", "", "", "ask-reply")
    to = None if bo.way == "taps" else message
    await desk.say(BO, "bien, gracias" if bo.way == "es" else "fine, thank you", to)
    assert desk.ids(BO) == ["reply-sent"]
    await bo.types("is the moon out", "qué bonita la luna", "not-understood")
    await bo.does("pass:1", "yes", "sí", "passed-on")


async def asks_for_help_and_for_another_language(bo: Way) -> None:
    """When the practice answers, and the menu of languages there and back."""
    await bo.types("/help", "/ayuda", "help-client")
    hours = (await bo.desk.run(lambda tx: tx.book.practice())).answer_hours
    assert bo.says("help-client").args["answer_hours"] == hours != ""
    names = {"en": "English", "es": "Español"}
    for chosen in ("en" if bo.way == "es" else "es", bo.speaks):
        if bo.way == "taps":
            await bo.desk.say(BO, "/language")
        words = (f"/language {names[chosen]}", f"/idioma {names[chosen]}")
        await bo.does(f"ln:{chosen}", *words, "language-kept")
        person = await bo.desk.run(lambda tx: tx.people.get(BOS))
        assert person is not None
        assert person.language == chosen


async def does_the_step_test(bo: Way) -> None:
    desk = bo.desk
    await desk.say(DANA, "/clients")
    for button in (f"c:{BOS}", f"tp:{BOS}", f"th:{BOS}:1"):
        await desk.forge(DANA, button)
    await bo.types("/steptest", "/prueba", "step-how", "step-order", "ask-step-ready")
    await bo.does("sg", "yes", "sí", "ask-step-times")
    await bo.types("14.8 and 16.2", "14,8 y 16,2", "step-noted")


async def is_in_pain(bo: Way) -> None:
    await bo.does("hurt", "something hurts", "me duele algo", "ask-pain-sign")
    await bo.does("p:sign:none", "none of these", "ninguno de estos", "ask-pain-place")
    await bo.does("p:place:knee", "my knee", "la rodilla", "ask-pain-score")
    await bo.does("p:score:3", "three", "tres", "ask-pain-when")
    await bo.does("p:when:after", "after it", "después", "ask-pain-new")
    await bo.does("p:new:0", "I know it", "ya lo conozco", "ask-pain-sharper")
    await bo.does("p:sharper:0", "not sharper", "no más agudo", "pain-caution")


async def leaves(bo: Way) -> None:
    desk = bo.desk
    await bo.types("/data", "/datos", "data")
    if bo.way == "taps":
        await desk.say(BO, "/leave")
        await desk.press(BO, "lv")
    else:
        await bo.types("I want to leave for good", "quiero darme de baja", "ask-leave")
        await bo.types("yes", "sí", "ask-leave-sure")
    await bo.does("lvy", "yes", "sí", "left")
    person = await desk.run(lambda tx: tx.people.get(BOS))
    assert person is not None
    assert person.state is State.LEFT
    before = len(desk.chat(BO))
    await desk.later(days=3)
    assert len(desk.chat(BO)) == before
