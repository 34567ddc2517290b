"""What people type in the place of a button's words, in the questions about pain and falls (H1, H5).

Answers are ours, in the manner of clients over 60 on a phone.
"""

from __future__ import annotations

from typing import Any

import pytest

from bot import dialogue
from bot.answers import Unclear
from bot.dialogue import FALL_VALUES, LABELS, PAIN_VALUES
from bot.understand.vocabulary import vocabulary
from bot.words import label
from scheduler.domain.messages import text
from scheduler.ports import Question

UNCLEAR = "unclear"
ENGLISH: dict[str, dict[str, Any]] = {
    "pain:place": {
        "both knees": "knee",
        "my bum": "hip",
        "heel": "foot",
        "feet": "foot",
        "the back of my knee": "knee",
        "hip and knee": "hip",
        "knee and then my shin": "shin",
        "shoulder": "elsewhere",
        "all over": "elsewhere",
        "I don't know": UNCLEAR,
        "2": UNCLEAR,
    },
    "pain:score": {
        "7 out of ten": 7,
        "seven out of 10": 7,
        "4 or 5": UNCLEAR,
        "3.5": UNCLEAR,
        "7 out of eight": UNCLEAR,
    },
    "pain:when": {
        "while jumping": "during",
        "every time": "during",
        "afterwards": "after",
        "next day": "next-morning",
        "all the time": "other",
        "at night": "other",
    },
    "pain:new": {
        "never had this before": True,
        "not like the old one": True,
        "had it before": False,
        "it's my old trouble": False,
        "same as always": False,
        "nothing new": False,
        "hard to say": UNCLEAR,
    },
    "pain:sharper": {
        "worse": True,
        "a bit worse": True,
        "worse than usual": True,
        "not the same": True,
        "same": False,
        "about the same": False,
        "not worse than usual": False,
        "no worse": False,
        "hard to say": UNCLEAR,
    },
    "fall:injured": {
        "just a bruise": True,
        "my wrist is sore": True,
        "cut my knee": True,
        "no": False,
        "not really": UNCLEAR,
    },
    "fall:new_pain": {
        "my hip is sore now": True,
        "no": False,
        "no pain": False,
        "nothing hurts": False,
        "no falls": UNCLEAR,
        "no pain but my hip hurts": True,
    },
    "fall:when": {
        "this morning": "today",
        "an hour ago": "today",
        "last night": "yesterday",
        "last week": "earlier",
    },
    "fall:doing": {
        "doing the jacks": "exercise",
        "out with the dog": "walking",
        "getting out of bed": "getting-up",
        "in the shower": "other",
    },
}
SPANISH: dict[str, dict[str, Any]] = {
    "pain:place": {
        "las dos rodillas": "knee",
        "tal\u00f3n": "foot",
        "canilla": "shin",
        "rodilla y cadera": "hip",
        "el hombro": "elsewhere",
        "no s\u00e9": UNCLEAR,
    },
    "pain:score": {"siete sobre diez": 7, "4 o 5": UNCLEAR},
    "pain:when": {
        "al saltar": "during",
        "siempre": "other",
        "al d\u00eda siguiente": "next-morning",
    },
    "pain:new": {
        "nunca lo hab\u00eda tenido": True,
        "no es el mismo": True,
        "ya lo ten\u00eda": False,
        "de siempre": False,
    },
    "pain:sharper": {
        "peor": True,
        "m\u00e1s fuerte que antes": True,
        "no es igual": True,
        "igual": False,
        "como siempre": False,
        "no es peor": False,
    },
    "fall:injured": {"solo un morado": True, "no": False},
    "fall:new_pain": {"sin dolor": False, "no, pero me duele la cadera": True},
    "fall:when": {
        "esta ma\u00f1ana": "today",
        "anoche": "yesterday",
        "la semana pasada": "earlier",
    },
    "fall:doing": {"paseando al perro": "walking", "saliendo de la cama": "getting-up"},
}


def _cases() -> list[tuple[str, str, str, Any]]:
    tables = {"en": ENGLISH, "es": SPANISH}
    return [
        (language, asked, said, value)
        for language, table in tables.items()
        for asked, answers in table.items()
        for said, value in answers.items()
    ]


@pytest.mark.parametrize(("language", "asked", "said", "value"), _cases())
def test_an_answer_in_her_own_words_is_taken(
    language: str, asked: str, said: str, value: Any
) -> None:
    kind, _, step = asked.partition(":")
    found = dialogue.read(Question(1, kind, step), said, language)
    assert (UNCLEAR if isinstance(found, Unclear) else found) == value


@pytest.mark.parametrize("language", ["en", "es"])
def test_every_choice_with_a_label_can_be_said_otherwise(language: str) -> None:
    keys = set(vocabulary(language).keys)
    for asked, prefix in LABELS.items():
        kind, _, step = asked.partition(":")
        values = {"pain": PAIN_VALUES, "fall": FALL_VALUES}[kind][step]
        missing = [v for v in values if step != "sign" and f"say-{prefix}-{v}" not in keys]
        assert missing == []


@pytest.mark.parametrize(
    ("language", "asked", "said", "value"),
    [
        # the first words of a label are said of much that is no such sign
        *(
            ("en", "pain:sign", said, UNCLEAR)
            for said in ("fell", "back", "back pain", "hard", "new")
        ),
        *(("en", "fall:sign", said, UNCLEAR) for said in ("fell", "cannot", "no head injury")),
        *(("es", "pain:sign", said, UNCLEAR) for said in ("caída", "duele", "dolor de espalda")),
        *(("en", "pain:sign", said, "none") for said in ("none", "nothing", "no", "None.")),
        *(("es", "pain:sign", said, "none") for said in ("ninguna", "nada", "no")),
        ("en", "fall:sign", "none", "none"),
        ("en", "pain:sign", "0", UNCLEAR),
        ("en", "pain:sign", "sore", "sore"),
        ("en", "pain:sign", "chest", "chest"),
        ("en", "pain:sign", "my eye", "eye"),
        ("en", "pain:sign", "back pain, weak legs or bladder", "back-weak-legs"),
        ("en", "pain:sign", "sudden new back pain", "sudden-back"),
        ("en", "fall:sign", "my head", "head-knock"),
        ("en", "fall:sign", "Fell and hit the head", "head-knock"),
        ("es", "pain:sign", "el pecho", "chest"),
        ("es", "fall:sign", "la cabeza", "head-knock"),
    ],
)
def test_a_sign_is_its_whole_label_or_words_that_tell_of_it(
    language: str, asked: str, said: str, value: str
) -> None:
    kind, _, step = asked.partition(":")
    found = dialogue.read(Question(1, kind, step), said, language)
    assert (UNCLEAR if isinstance(found, Unclear) else found) == value


@pytest.mark.parametrize("language", ["en", "es"])
def test_the_label_of_every_sign_is_taken_as_that_sign(language: str) -> None:
    for kind, values in (("pain", PAIN_VALUES["sign"]), ("fall", FALL_VALUES["sign"])):
        for value in values:
            shown = label(
                text(f"button-{'no-sign' if value == 'none' else f'sign-{value}'}"), language
            )
            assert dialogue.read(Question(1, kind, "sign"), shown, language) == value


@pytest.mark.parametrize(
    ("language", "said", "mistake"),
    [
        *(
            ("en", said, True)
            for said in ("it was a mistake", "oops", "wrong button", "by accident")
        ),
        *(("en", said, True) for said in ("sorry I pressed the wrong button", "undo", "cancel")),
        *(("es", said, True) for said in ("me equivoqué", "fue sin querer", "botón equivocado")),
        ("en", "no", False),
        ("en", "I had an accident", False),
        ("en", "I don't want to make a mistake so I stopped as it went numb", False),
        ("es", "no", False),
    ],
)
def test_tapped_by_mistake_can_be_said_in_her_own_words(
    language: str, said: str, mistake: bool
) -> None:
    assert dialogue.is_mistake(Question(1, "pain", "sign"), said, language) is mistake
    assert not dialogue.is_mistake(Question(1, "pain", "place"), said, language)
