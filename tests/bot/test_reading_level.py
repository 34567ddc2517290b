"""Client texts: easy to read, short, without guilt, praise, diagnosis or reassurance (P11, H7, J2)."""

import re
from collections.abc import Iterator
from typing import Any

import pytest

from bot.words import LANGUAGES, render
from bot.words.catalogue import catalogue
from bot.words.ids import documented
from scheduler.domain.messages import Argument, Message, Text, text
from tests.bot.reading import Reading, reading, syllables
from tests.bot.reading_es import Reading as Spanish
from tests.bot.reading_es import reading as reading_es
from tests.bot.reading_es import syllables as syllables_es
from tests.bot.samples import bare, sample, typed

HIGHEST_GRADE = 6.0  # P11; "at most 6th to 8th grade", Badarudeen 2010, PMC3049622 (read)
QUITE_EASY, VERY_EASY = 65.0, 90.0
"""INFLESZ "quite easy" for each text, Fernández-Huerta "very easy" for all together: see `reading_es`."""
FEWEST_WORDS = 8  # fewer make no measure: one long word decides
UNASKED = 350  # characters (quality figure, ours)
DOCUMENTED = documented(catalogue("en"))
FOR_CLIENTS = sorted(
    id_ for id_, (group, _) in DOCUMENTED.items() if group in {"client", "everyone"}
)
LABELS = sorted(id_ for id_, (group, _) in DOCUMENTED.items() if group == "button")


def shown(id_: str, args: dict[str, Any], language: str = "en") -> str:
    return render((Text(id_, typed(args, language)),), language)


def for_clients(language: str) -> Iterator[tuple[str, str]]:
    """Every client text, in full and as empty as it can be."""
    for id_ in FOR_CLIENTS:
        yield id_, shown(id_, sample(id_), language)
        yield id_, shown(id_, bare(id_), language)


def test_the_formula_gives_the_grade_that_is_worked_out_by_hand() -> None:
    # 8 words, 2 sentences, 8 syllables: 0.39 * 4 + 11.8 * 1 - 15.59 = -2.23 (arithmetic)
    assert reading("The cat sat down. I see the dog.").grade == pytest.approx(-2.23)
    # 6 words, 1 sentence, 13 syllables: 0.39 * 6 + 11.8 * 13 / 6 - 15.59 = 12.3167 (arithmetic)
    hard = reading("Every medication requires professional supervision today.")
    assert (hard.words, hard.sentences) == (6, 1)
    assert hard.syllables == sum(map(syllables, ["every"])) + 4 + 3 + 4 + 4 + 2


def test_numerals_count_as_they_are_read_aloud() -> None:
    assert reading("21").words == 2
    assert reading("911").words == 3
    assert reading("Done: 7 of 40").syllables == 1 + 2 + 1 + 2


def test_a_client_text_reads_at_grade_six_or_below() -> None:
    for id_, words in for_clients("en"):
        counted = reading(words)
        assert counted.words < FEWEST_WORDS or counted.grade <= HIGHEST_GRADE, id_


def test_all_client_texts_together_read_well_below_grade_six() -> None:
    total = sum((reading(shown(id_, sample(id_))) for id_ in FOR_CLIENTS), start=Reading(0, 0, 0))
    assert total.words > 1000
    assert total.grade <= 4.0


@pytest.mark.parametrize(
    ("word", "count"),
    [
        ("sol", 1),
        ("muy", 1),
        ("hoy", 1),
        ("quien", 1),
        ("que", 1),
        ("y", 1),
        ("seis", 1),
        ("lunes", 2),
        ("país", 2),
        ("ciudad", 2),
        ("días", 2),
        ("leer", 2),
        ("oír", 2),
        ("playa", 2),
        ("guía", 2),
        ("cayó", 2),
        ("auto", 2),
        ("miércoles", 3),
        ("ahora", 3),
        ("caída", 3),
        ("búho", 2),
        ("pingüino", 3),
        ("cuidado", 3),
        ("continuáis", 3),
        ("dieciséis", 3),
        ("terapeuta", 4),
        ("aéreo", 4),
        ("anotado", 4),
        ("escribía", 4),
        ("emergencia", 4),
        ("repeticiones", 5),
    ],
)  # the rules of Spanish spelling: memory; the counts: by hand
def test_spanish_syllables_are_counted_by_the_spelling(word: str, count: int) -> None:
    assert syllables_es(word) == count


def test_the_spanish_formulas_give_what_is_worked_out_by_hand() -> None:
    # "El sol sale hoy. Pare si le duele." 8 words, 2 sentences; 1+1+2+1 + 2+1+1+2 = 11 syllables
    # 206.84 - 60 * 11 / 8 - 1.02 * 4 = 120.26; 206.835 - 62.3 * 11 / 8 - 4 = 117.1725 (arithmetic)
    easy = reading_es("El sol sale hoy. Pare si le duele.")
    assert (easy.words, easy.sentences, easy.syllables) == (8, 2, 11)
    assert easy.fernandez_huerta == pytest.approx(120.26)
    assert easy.inflesz == pytest.approx(117.1725)
    # treinta y uno; uno uno dos; veintiuno
    assert [reading_es(numeral).words for numeral in ("31", "112", "21")] == [3, 3, 1]


def test_a_spanish_client_text_reads_quite_easily() -> None:
    for id_, words in for_clients("es"):
        counted = reading_es(words)
        assert counted.words < FEWEST_WORDS or counted.inflesz > QUITE_EASY, id_


def test_all_spanish_client_texts_together_read_very_easily() -> None:
    said = [shown(id_, sample(id_), "es") for id_ in FOR_CLIENTS]
    total = sum((reading_es(words) for words in said), start=Spanish(0, 0, 0))
    assert total.words > 1000
    assert total.fernandez_huerta >= VERY_EASY
    assert total.inflesz > 80  # "very easy"


EMOJI = r"[\U0001F300-\U0001FAFF\u2600-\u27BF]"
FORBIDDEN_ENGLISH = (
    r"!",
    r"\bmiss(ed|ing)?\b",
    r"\bfail",
    r"\bpartial",
    r"\bshould have\b",
    r"\bgreat\b|\bwell done\b|\bgood job\b|\bawesome\b|\bcongrat|\bproud\b|\bamazing\b",
    r"\bsafe",
    r"\bdo not worry\b|\bnothing serious\b|\bnormal\b|\bharmless\b",
    r"\bfracture\b|\bosteopor|\bsprain|\bdiagnos",
    r"\bsession\b|\bworkout\b",
    EMOJI,
)
FORBIDDEN_SPANISH = (
    r"[!¡]",
    r"\bfall(ó|ado|aste|a|os?)\b|\bfaltó\b|\bperdió\b|\bse saltó\b|\bolvid|\bincumpl",
    r"\bparcial|\ba medias\b|\bdebería|\bdebió\b|\btendría que\b|\bculpa\b|\blástima\b",
    r"\bbravo\b|\bgenial\b|\benhorabuena\b|\bfelici|\borgullo|\bmuy bien\b|\bbuen trabajo\b|\bánimo\b",
    r"\bsegur[oa]s?\b|\bsin peligro\b|\bno pasa nada\b|\bno se preocupe\b|\bno es grave\b|\btranquil",
    r"\binofensiv|\bnormal\b(?! *,)",
    r"\bfractura|\bosteopor|\besguince|\bdiagn|\binfarto|\bictus",
    r"\bsesi[oó]n|\bentrenamiento\b|\brutina\b",
    r"\bt[uú]s?\b|\bte\b|\bcontigo\b|\bvosotros\b|\bvos\b",  # usted throughout
    r"\bsaltar\b(?! se)",  # to skip and to jump are one word
    EMOJI,
)
FORBIDDEN = {"en": FORBIDDEN_ENGLISH, "es": FORBIDDEN_SPANISH}


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_client_reads_no_guilt_no_praise_no_verdict(language: str) -> None:
    forbidden = re.compile("|".join(FORBIDDEN[language]), re.IGNORECASE)
    said = [*for_clients(language), *((id_, shown(id_, sample(id_), language)) for id_ in LABELS)]
    assert [(id_, words) for id_, words in said if forbidden.search(words)] == []


@pytest.mark.parametrize(
    ("language", "words"),
    [
        ("en", "You missed a bout."), ("en", "Well done."), ("en", "This is safe."),
        ("es", "Falló una tanda."), ("es", "Muy bien."), ("es", "Es seguro."), ("es", "Toca tu tanda."),
    ],
)  # fmt: skip
def test_what_is_forbidden_is_found(language: str, words: str) -> None:
    assert re.search("|".join(FORBIDDEN[language]), words, re.IGNORECASE)


def _first_prompt(movement: str) -> Message:
    amount: dict[str, Argument] = {"total": 120, "movement": movement, "per_side": True}
    return (
        text(
            "day-opening", bouts=12, first="2027-03-08T08:05", last="2027-03-08T20:55", reps=120, **amount
        ),
        text("prompt", bout=1, done=0, reps=12, **amount),
        text("safety"),
    )  # fmt: skip


STOPS = (
    "stop-contact",
    "stop-today",
    "stop-urgent-care",
    "stop-emergency",
    "stop-crisis",
    "stop-leak",
)
LONG = {
    "clinician": "Dana Example-Smith",
    "phone": "+1 555 010 0100",
    "answer_hours": "Mon to Fri, 9 am to 5 pm",
}
UNASKED_MESSAGES: dict[str, Message] = {
    "first-prompt": _first_prompt("gentle-heel-drop"),
    "question-open": (
        text("no-answer-so-stopped"),
        text("you-said-score", score=10),
        Text("stop-today", sample("stop-today") | LONG),
    ),
    "unread": (
        Text("not-handled-paused", sample("not-handled-paused") | LONG),
        Text("ask-pain-sign", sample("ask-pain-sign") | LONG),
    ),
    **{
        id_: (Text(id_, sample(id_) | LONG),)
        for id_ in (
            *STOPS, "nudge", "no-answer", "away", "ask-morning", "held-by-clinician", "release-told",
            "plan-told",
        )
    },
}  # fmt: skip


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_message_that_nobody_asked_for_is_short(language: str) -> None:
    for name, message in UNASKED_MESSAGES.items():
        said = tuple(Text(each.id, typed(dict(each.args), language)) for each in message)
        assert len(render(said, language)) <= UNASKED, name


NOTICE = {
    "en": (
        "What we keep", "can be seen by", "not end-to-end encrypted", "cannot clear them", "live",
        "911", "+1 555 010 0100", "leave at any time", "Do you agree?",
    ),
    "es": (
        "Qué guardamos", "Lo puede ver", "No van cifrados de extremo a extremo", "no los podemos borrar",
        "al momento", "112", "+1 555 010 0100", "dejarlo cuando quiera", "¿Acepta?",
    ),
}  # fmt: skip
ONLY_SHE = {"en": "Only Dana can start it again.", "es": "Solo Dana le puede decir que siga."}
NOT_LIVE = {"en": "Nobody reads this chat live.", "es": "Nadie lee este chat al momento."}
IF_YOU_WISH = {"en": "If you wish", "es": "Si quiere"}
STOP = {"en": r"\b[Ss]top\b", "es": r"\b[Pp]are\b"}


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_notice_is_short_and_says_what_it_must(language: str) -> None:
    notice = shown("notice", sample("notice") | LONG, language)
    assert len(notice) <= 900
    assert [what for what in NOTICE[language] if what not in notice] == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_stop_says_who_can_start_again_and_whom_to_call(language: str) -> None:
    for id_ in ("stop-contact", "stop-today", "stop-leak", "held-by-clinician"):
        words = shown(id_, sample(id_), language)
        assert ONLY_SHE[language] in words, id_
        assert "555 0100" in words, id_


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_stop_says_that_nobody_reads_the_chat_live(language: str) -> None:
    for id_ in STOPS:
        if id_ != "stop-leak":
            assert NOT_LIVE[language] in shown(id_, sample(id_), language), id_


@pytest.mark.parametrize("language", LANGUAGES)
def test_going_on_is_the_clients_choice_and_stopping_is_named(language: str) -> None:
    for id_ in ("pain-noted", "pain-caution", "fall-noted"):
        words = shown(id_, sample(id_), language)
        assert IF_YOU_WISH[language] in words, id_
        assert re.search(STOP[language], words), id_
