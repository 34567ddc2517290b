"""An alarm is heard beside every command, answer and count, before it and after it (P3). Phrases are ours."""

from itertools import product

import pytest

from bot.understand import understand
from bot.understand.any_language import found

SAID = {
    "en": (
        *(
            "skip",
            "later",
            "not now",
            "not today",
            "yes",
            "ok",
            "undo",
            "help",
            "break",
            "stop",
            "10",
        ),
        *(
            "did 10",
            "all done",
            "half",
            "yesterday 20",
            "after lunch",
            "hello",
            "thanks",
            "no thanks",
        ),
        *("not this one", "maybe later", "sorry", "I'm away"),
    ),
    "es": (
        *(
            "esta no",
            "hoy no",
            "más tarde",
            "ahora no",
            "sí",
            "vale",
            "deshacer",
            "ayuda",
            "descanso",
        ),
        *("10", "hice 10", "todas", "la mitad", "ayer 20", "después de comer", "hola", "gracias"),
        *("no gracias", "no puedo", "paso", "tal vez luego", "perdón", "estoy de viaje"),
    ),
}
DENYING = {
    "en": ("no", "none", "nothing", "did none"),
    "es": ("no", "ninguna", "nada", "no hice nada"),
}
"""Straight before a word these deny it: with a pause between they do not."""
ALARMS = {
    "en": (
        *("my hip hurts", "my knee is sore", "I have pain in my foot", "I fell", "I feel dizzy"),
        *("chest pain", "I can't get up", "my calf is swollen", "leaking when I jump"),
    ),
    "es": (
        *("me duele la cadera", "tengo dolor en la rodilla", "me duele", "me caí", "estoy mareada"),
        *("dolor en el pecho", "no me puedo levantar", "tengo la pantorrilla hinchada"),
    ),
}
PAUSES = (", ", ". ", " - ", "\n")
JOINED = {"en": (" ", " and ", " but "), "es": (" ", " y ", " pero ")}
ANOTHER = frozenset({"no me puedo levantar ahora no"})
"""Taken for a wish to wait: that she cannot get up now, not yet."""


def orders(one: str, between: str, other: str) -> tuple[str, str]:
    return one + between + other, other + between + one


@pytest.mark.parametrize("language", ["en", "es"])
def test_an_alarm_is_heard_beside_whatever_else_is_said(language: str) -> None:
    plain = product(SAID[language], (*PAUSES, *JOINED[language]), ALARMS[language])
    denying = product(DENYING[language], PAUSES, ALARMS[language])
    texts = [text for parts in (*plain, *denying) for text in orders(*parts)]
    missed = [
        text for text in texts if not found(understand(text, language)) and text not in ANOTHER
    ]
    assert len(texts) > 2000
    assert missed == []


@pytest.mark.parametrize(
    ("text", "language"),
    [
        ("no pain", "en"),
        ("nothing hurts", "en"),
        ("did 10, no pain", "en"),
        ("no me duele", "es"),
        ("hoy no me duele nada", "es"),
        ("ahora no me duele nada", "es"),
        ("hice 10 y no me caí", "es"),
    ],
)
def test_what_is_plainly_denied_is_no_alarm(text: str, language: str) -> None:
    assert not found(understand(text, language))
