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
    "fall:new_pain": {"my hip is sore now": True, "no": False},
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
