"""Whether a client asks how it is done: questions of ordinary speech (ours), and what is none."""

import pytest

from bot.understand import understand
from bot.understand.asking import asks_how

ASKS = {
    "en": (
        *("how", "How?", "how do I do it", "How do I do it again?", "show me", "show me please"),
        *(
            "how do i do the heel drops",
            "how is it done",
            "i forgot how",
            "how to do it",
            "picture",
        ),
        "what does it look like",
    ),
    "es": (
        *("cómo", "¿Cómo?", "cómo se hace", "como lo hago", "¿cómo hago los saltos?", "muéstreme"),
        *("no sé cómo", "cómo tengo que hacerlo", "no me acuerdo cómo", "cómo es el ejercicio"),
        "ver el dibujo",
    ),
}
DOES_NOT = {
    "en": (
        *("10", "did 10", "how many", "how are you", "how much is left", "later", "skip", "help"),
        *("how do I do 12", "show up late", "how long", "undo", ""),
        *("I don't know how it happened", "don't know how I got here", "I forgot how to speak"),
    ),
    "es": (
        *("10", "hice 10", "cuántas", "cómo está", "cómo va hoy", "más tarde", "esta no", "ayuda"),
        *("cómo hago 12", "como bien", "borrar", "como siempre", ""),
        *("no sé cómo pasó", "no sé cómo llegué aquí", "no recuerdo cómo vine"),
    ),
}


@pytest.mark.parametrize(("language", "words"), [(k, w) for k, ws in ASKS.items() for w in ws])
def test_a_question_how_it_is_done_is_heard(language: str, words: str) -> None:
    assert asks_how(words, language)
    assert not understand(words, language).mentions_pain


@pytest.mark.parametrize(("language", "words"), [(k, w) for k, ws in DOES_NOT.items() for w in ws])
def test_what_asks_nothing_of_the_kind_is_not_taken_for_it(language: str, words: str) -> None:
    assert not asks_how(words, language)
