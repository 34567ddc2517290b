"""Everybody is written to in a language of their own, and can change it in chat (J4, P11)."""

from __future__ import annotations

from dataclasses import replace

import pytest

from bot.dialogue import CHOICES
from bot.telegram.handlers import language as handler
from bot.understand import HEARS
from bot.words import LANGUAGES, PSEUDO
from scheduler.domain.people import Role, State
from scheduler.ports import Tx
from scheduler.usecases import join
from tests.journeys.desk import Desk
from tests.journeys.rooms import ANN, BO, DANA, IDS, KIM, Room, Whole, at

pytest_plugins = ("tests.journeys.furniture",)

SPOKEN = {"en": "English", "es": "Español"}


async def languages(room: Room, *people: int) -> list[str]:
    everyone = await room.run(lambda tx: tx.people.everyone())
    of = {person.id: person.language for person in everyone}
    return [of[IDS[who]] for who in people]


def test_what_can_be_chosen_is_both_spoken_and_understood() -> None:
    assert {*CHOICES} == {*LANGUAGES} & {*HEARS}
    assert PSEUDO not in CHOICES


@pytest.mark.parametrize("who", [ANN, DANA, KIM])
async def test_the_language_is_asked_and_kept_with_one_tap(
    desk: Desk, who: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(handler, "CHOICES", SPOKEN)
    await desk.say(who, "/language")
    assert desk.last(who)[0].args == {"language": PSEUDO, "languages": ["en", "es"]}
    await desk.press(who, "ln:es")
    assert desk.ids(who) == ["language-kept"]
    assert await languages(desk, ANN, DANA, KIM) == [
        "es" if each == who else PSEUDO for each in (ANN, DANA, KIM)
    ]


@pytest.mark.parametrize("said", ["es", "ES", "Español", "español"])
async def test_the_language_can_be_named_at_once(
    desk: Desk, said: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(handler, "CHOICES", SPOKEN)
    await desk.say(ANN, f"/language {said}")
    assert desk.ids(ANN) == ["language-kept"]
    assert await languages(desk, ANN) == ["es"]


async def test_commands_have_names_in_every_language_and_each_is_understood_by_everybody(
    desk: Desk,
) -> None:
    for said in ("/today", "/hoy", "/HOY"):
        await desk.say(ANN, said)
        assert desk.ids(ANN)[0] not in {"not-understood", "stranger"}, said
    await desk.say(DANA, "/pacientes")
    assert desk.ids(DANA) == ["caseload"]
    await desk.say(DANA, "/personas")  # an admin's, by whatever name
    assert desk.ids(DANA) != ["people"]


@pytest.mark.parametrize("said", ["", "xx", "qps", "klingon"])
async def test_a_language_that_is_not_offered_is_asked_again(desk: Desk, said: str) -> None:
    await desk.say(ANN, f"/language {said}")
    assert desk.ids(ANN) == ["ask-language"]
    await desk.forge(ANN, f"ln:{said or 'xx'}")
    assert desk.ids(ANN) == ["ask-language"]
    assert await languages(desk, ANN) == [PSEUDO]


async def test_the_notice_is_said_again_in_the_language_that_was_chosen(
    desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(handler, "CHOICES", SPOKEN)
    code = await desk.run(lambda tx: join.invite(tx, None, IDS[BO], desk.now))
    await desk.say(BO, f"/start {code}")
    await desk.say(BO, "/language es")
    assert desk.ids(BO) == ["language-kept", "notice"]
    await desk.press(BO, "ok:1")
    assert desk.ids(BO) == ["ask-screen-bones"]


async def test_a_question_about_pain_stays_open_and_is_asked_again(
    desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(handler, "CHOICES", SPOKEN)
    await desk.step(at(8, 1))
    await desk.press(ANN, "hurt")
    await desk.say(ANN, "/language es")
    assert desk.ids(ANN) == ["language-kept", "ask-pain-sign"]
    assert await desk.question() == ("pain", "sign")


async def test_all_roles_of_an_account_are_written_to_in_one_language(
    desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(handler, "CHOICES", SPOKEN)

    def second(tx: Tx) -> int:
        person = join.enrol(tx, None, Role.CLINICIAN, "Kim", PSEUDO, None, desk.now)
        tx.people.save(replace(person, account=KIM, state=State.READY, acting=False))
        return person.id

    other = await desk.run(second)
    await desk.say(KIM, "/language es")
    person = await desk.run(lambda tx: tx.people.get(other))
    assert person is not None
    assert person.language == "es"


async def test_what_comes_next_is_in_the_language_that_was_chosen(
    whole: Whole, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(handler, "CHOICES", SPOKEN)
    await whole.say(ANN, "/language es")
    assert whole.stage.messages(ANN)[-1].text == "Desde ahora le escribo en: Español."
    await whole.step(at(8, 1))
    prompt = whole.stage.messages(ANN)[-1].text
    assert prompt.startswith("Hoy: ")
    assert " de la mañana a " in prompt
    assert "Hoy lleva: 0 de " in prompt
