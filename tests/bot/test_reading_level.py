"""Client texts: grade 6 or below, short, without guilt, praise, diagnosis or reassurance (P11, H7, J2)."""

import re
from typing import Any

import pytest

from bot.words import render
from bot.words.catalogue import catalogue
from bot.words.ids import documented
from scheduler.domain.messages import Argument, Message, Text, text
from tests.bot.reading import Reading, reading, syllables
from tests.bot.samples import bare, sample

HIGHEST_GRADE = 6.0  # P11; "at most 6th to 8th grade", Badarudeen 2010, PMC3049622 (read)
FEWEST_WORDS = 8  # fewer make no measure: one long word decides
UNASKED = 350  # characters (quality figure, ours)
DOCUMENTED = documented(catalogue("en"))
FOR_CLIENTS = sorted(
    id_ for id_, (group, _) in DOCUMENTED.items() if group in {"client", "everyone"}
)
LABELS = sorted(id_ for id_, (group, _) in DOCUMENTED.items() if group == "button")


def shown(id_: str, args: dict[str, Any]) -> str:
    return render((Text(id_, args),), "en")


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


@pytest.mark.parametrize("args_of", [sample, bare])
@pytest.mark.parametrize("id_", FOR_CLIENTS)
def test_a_client_text_reads_at_grade_six_or_below(id_: str, args_of: Any) -> None:
    counted = reading(shown(id_, args_of(id_)))
    if counted.words >= FEWEST_WORDS:
        assert counted.grade <= HIGHEST_GRADE


def test_all_client_texts_together_read_well_below_grade_six() -> None:
    total = sum((reading(shown(id_, sample(id_))) for id_ in FOR_CLIENTS), start=Reading(0, 0, 0))
    assert total.words > 1000
    assert total.grade <= 4.0


FORBIDDEN = (
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
    r"[\U0001F300-\U0001FAFF\u2600-\u27BF]",
)


@pytest.mark.parametrize("id_", [*FOR_CLIENTS, *LABELS])
def test_a_client_reads_no_guilt_no_praise_no_verdict(id_: str) -> None:
    for args in (sample(id_), bare(id_)):
        for word in FORBIDDEN:
            assert not re.search(word, shown(id_, args), re.IGNORECASE), word


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
    **{
        id_: (Text(id_, sample(id_) | LONG),)
        for id_ in (
            *STOPS, "nudge", "no-answer", "away", "ask-morning", "held-by-clinician", "release-told",
            "plan-told",
        )
    },
}  # fmt: skip


@pytest.mark.parametrize("name", UNASKED_MESSAGES)
def test_a_message_that_nobody_asked_for_is_short(name: str) -> None:
    assert len(render(UNASKED_MESSAGES[name], "en")) <= UNASKED


def test_the_notice_is_short_and_says_what_it_must() -> None:
    notice = shown("notice", sample("notice") | LONG)
    assert len(notice) <= 900
    for what in (
        "What we keep", "can be seen by", "not end-to-end encrypted", "cannot clear them", "live",
        "911", "+1 555 010 0100", "leave at any time", "Do you agree?",
    ):  # fmt: skip
        assert what in notice


@pytest.mark.parametrize("id_", ["stop-contact", "stop-today", "stop-leak", "held-by-clinician"])
def test_a_stop_says_who_can_start_again_and_whom_to_call(id_: str) -> None:
    words = shown(id_, sample(id_))
    assert "Only Dana can start it again." in words
    assert "555 0100" in words


@pytest.mark.parametrize("id_", [id_ for id_ in STOPS if id_ != "stop-leak"])
def test_a_stop_says_that_nobody_reads_the_chat_live(id_: str) -> None:
    assert "Nobody reads this chat live." in shown(id_, sample(id_))


@pytest.mark.parametrize("id_", ["pain-noted", "pain-caution", "fall-noted"])
def test_going_on_is_the_clients_choice_and_stopping_is_named(id_: str) -> None:
    words = shown(id_, sample(id_))
    assert "If you wish" in words
    assert re.search(r"\b[Ss]top\b", words)
