"""Typed answers to open questions. Phrases and defaults are ours unless said."""

from datetime import date, time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot import answers, dialogue, movements, weekly
from bot.answers import Unclear
from scheduler.ports import Question

TODAY = date(2027, 3, 10)  # a Wednesday (arithmetic)


@pytest.mark.parametrize(
    ("text", "value"),
    [("12", 12), ("twelve", 12), (" 12. ", 12), ("about 12", 12), ("١٢", 12), ("1", 1), ("20", 20)],
)
def test_a_number_is_taken_in_digits_or_words(text: str, value: int) -> None:
    assert answers.number(text, 1, 20) == value


@pytest.mark.parametrize(
    "text", ["", "0", "21", "-5", "1.5", "1,5", "10-12", "10 12", "x", "9" * 99]
)
def test_a_number_out_of_bounds_or_two_things_is_unclear(text: str) -> None:
    assert answers.number(text, 1, 20) == Unclear("answer-number", {"low": 1, "high": 20})


@pytest.mark.parametrize(
    ("text", "value"),
    [
        *(("0", 0), ("10", 10), ("5/10", 5), ("5 / 10", 5), ("10/10", 10), ("5 out of 10", 5)),
        *(("five", 5), ("about a 6", 6), ("７", 7)),
    ],
)
def test_a_score_from_0_to_10_is_taken(text: str, value: int) -> None:
    # "5/10" is 5: evidence.md, Pain (read)
    assert answers.score(text) == value


@pytest.mark.parametrize(
    "text", ["11", "-1", "5.5", "5,5", "4-5", "", "bad", "-1/10", "11/10", "5/9"]
)
def test_any_other_score_is_unclear(text: str) -> None:
    # "11" and "-1" are refused: evidence.md, Pain (read)
    assert answers.score(text) == Unclear("answer-score")


@pytest.mark.parametrize(
    ("text", "value"), [("Yes", True), ("yep!", True), ("No", False), ("NOPE", False)]
)
def test_yes_and_no_are_told_apart(text: str, value: bool) -> None:
    assert answers.yes_no(text) is value


@pytest.mark.parametrize("text", ["", "maybe", "yes and no", "not sure", "12"])
def test_neither_yes_nor_no_is_unclear(text: str) -> None:
    assert answers.yes_no(text) == Unclear("answer-yes-no")


SCREENS = [(1, "pain", "sign"), (1, "fall", "sign"), (1, "join", "screen-bones")]
"""The questions that a "no" would answer with "none of these"."""
NO = {
    "en": ["no", "No, thank you", "no not at all", "No, never", "No, I didn't", "not today"],
    "es": ["no", "No, gracias", "no, para nada", "ninguna de esas cosas", "nada de esto", "claro que no"],
}  # fmt: skip
NO_ANSWER = {
    "en": [
        *("I don't know", "no idea", "not sure", "I can not breathe", "can't breathe", "no?"),
        *("no but my chest hurts", "not all of these", "no chest pain", "no 12", "no, dizzy"),
        *("I did not understand", "dont think so", "yes?"),
    ],
    "es": [
        *(
            "no sé",
            "no se",
            "No lo sé",
            "no estoy segura",
            "no puedo respirar",
            "no me siento bien",
        ),
        *(
            "no, pero me duele el pecho",
            "no todas",
            "no me duele el pecho",
            "no entiendo",
            "no sé si",
        ),
        *("ni idea", "no, me mareo", "no 12", "¿no?", "¿sí?", "nada más me desmayé"),
    ],
}


def test_no_is_believed_only_where_nothing_else_is_said() -> None:
    # taken for "none of these" on the screen of warning signs, it would send nobody to a doctor (H1)
    for language, texts in NO.items():
        assert [t for t in texts if answers.yes_no(t, language) is not False] == []
    for language, texts in NO_ANSWER.items():
        assert [t for t in texts if answers.yes_no(t, language) != Unclear("answer-yes-no")] == []
        open_ = [Question(*a) for a in SCREENS]
        taken = [(t, q.step, dialogue.read(q, t, language)) for t in texts for q in open_]
        assert [each for each in taken if each[2] in ("none", False)] == []


def test_a_sign_is_heard_beside_the_words_for_none() -> None:
    for text, language in [
        ("none of these, but my chest hurts", "en"),
        ("nada de esto, solo me duele el pecho", "es"),
    ]:
        assert dialogue.read(Question(*SCREENS[0]), text, language) == "chest"


def test_yes_and_no_are_told_apart_in_spanish() -> None:
    for text in ("sí", "si", "SÍ", "claro", "claro que sí", "vale", "sí, por favor"):
        assert answers.yes_no(text, "es") is True, text
    assert answers.yes_no("no", "es") is False


def test_short_answers_are_taken_in_spanish() -> None:
    # what the Spanish catalogue tells people to type, and what they say instead (ours)
    day = (time(8), time(20))
    for text in (
        *("8:00 a 20:00", "8 a 20", "de 8 a 20", "desde las 8 hasta las 20", "de ocho a ocho"),
        *("entre las 8 y las 20", "8 de la mañana a 8 de la noche", "8 a. m. a 8 p. m.", "8-20h"),
    ):
        assert answers.span(text, "es") == day, text
    assert answers.span("de 8 y media a 12 y cuarto", "es") == (time(8, 30), time(12, 15))
    assert answers.spans("ninguna", "es") == answers.spans("ninguno", "es") == ()
    lunch, tea = (time(12), time(13)), (time(15), time(15, 30))
    assert answers.spans("12:00 a 13:00, 15:00 a 15:30", "es") == (lunch, tea)
    assert answers.spans("12 a 13 y 15:00 a 15:30", "es") == (lunch, tea)
    assert (
        answers.weekdays("lunes, jueves", "es")
        == answers.weekdays("jueves y lunes", "es")
        == (0, 3)
    )
    assert (
        answers.weekdays("miércoles y sábado", "es") == answers.weekdays("mie sab", "es") == (2, 5)
    )
    assert answers.weekdays("flexible", "es") == ()
    assert answers.weekdays("todos los días", "es") == tuple(range(7))
    for text in ("12 de marzo", "12 marzo", "el 12 de marzo", "viernes", "el viernes"):
        assert answers.day(text, TODAY, "es") == date(2027, 3, 12), text
    assert answers.day("mañana", TODAY, "es") == date(2027, 3, 11)
    assert answers.day("ninguno", TODAY, "es") is None
    for text in ("5", "cinco", "5 de 10", "5/10", "un 5", "5 sobre 10"):
        assert answers.score(text, "es") == 5, text
    assert answers.number("veintidós", 1, 50, "es") == 22


@pytest.mark.parametrize(
    ("text", "start", "end"),
    [
        ("8-20", time(8), time(20)),
        ("8:00 to 20:00", time(8), time(20)),
        ("08:00-20:00", time(8), time(20)),
        ("08:00 – 20:00", time(8), time(20)),
        ("8am-8pm", time(8), time(20)),
        ("8 AM to 8 p.m.", time(8), time(20)),
        ("8.30 - 19.45", time(8, 30), time(19, 45)),
        ("from 9 to 5", time(9), time(17)),
        ("12-13", time(12), time(13)),
        ("12am-11:59pm", time(0), time(23, 59)),
    ],
)
def test_a_span_of_hours_is_taken_as_people_write_it(text: str, start: time, end: time) -> None:
    assert answers.span(text) == (start, end)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "8",
        "20-8",
        "17:00-09:00",
        "13-9",
        "8-24",
        "25-26",
        "8:60-9",
        "13pm-14",
        "8-8pm-9",
        "a-b",
    ],
)
def test_what_is_no_span_of_one_day_is_unclear(text: str) -> None:
    assert answers.span(text) == Unclear("answer-span")


def test_several_quiet_times_come_back_in_the_order_of_the_day() -> None:
    expected = ((time(12), time(13)), (time(15), time(15, 30)))
    assert answers.spans("15:00-15:30, 12-13") == expected
    assert answers.spans("12:00-13:00 15:00-15:30") == expected
    assert answers.spans("12-13 and 15-15:30") == expected
    assert answers.spans("none") == answers.spans("No") == ()


def test_quiet_times_that_overlap_are_unclear_and_those_that_touch_are_not() -> None:
    assert answers.spans("12-13, 12:59-14") == Unclear("answer-spans-overlap")
    assert answers.spans("12-13, 13-14") == ((time(12), time(13)), (time(13), time(14)))
    assert answers.spans("lunch") == Unclear("answer-spans")


@pytest.mark.parametrize(
    ("text", "days"),
    [
        *(("mon wed fri", (0, 2, 4)), ("Friday and Monday", (0, 4)), ("tues, thurs", (1, 3))),
        *(("flexible", ()), ("any", ()), ("every day", tuple(range(7))), ("sun mon sun", (0, 6))),
    ],
)
def test_weekdays_are_taken_once_each_in_order(text: str, days: tuple[int, ...]) -> None:
    assert answers.weekdays(text) == days


@pytest.mark.parametrize("text", ["", "mon blursday", "and", "2"])
def test_other_words_among_weekdays_are_unclear(text: str) -> None:
    assert answers.weekdays(text) == Unclear("answer-weekdays")


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("2027-03-12", date(2027, 3, 12)),
        ("12 march", date(2027, 3, 12)),
        ("March 12", date(2027, 3, 12)),
        ("12th of March", date(2027, 3, 12)),
        ("12 mar 2028", date(2028, 3, 12)),
        ("10 march", TODAY),
        ("9 march", date(2028, 3, 9)),
        ("29 feb", date(2028, 2, 29)),
        ("today", TODAY),
        ("tomorrow", date(2027, 3, 11)),
        ("friday", date(2027, 3, 12)),
        ("wednesday", date(2027, 3, 17)),
        ("none", None),
    ],
)
def test_a_day_is_taken_as_people_write_it(text: str, expected: date | None) -> None:
    assert answers.day(text, TODAY) == expected


@pytest.mark.parametrize(
    "text", ["", "3/4", "31 june", "2027-02-29", "soon", "12", "march", "9" * 50]
)
def test_what_is_no_day_is_unclear(text: str) -> None:
    assert answers.day(text, TODAY) == Unclear("answer-day")


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("Europe/Madrid", "Europe/Madrid"),
        ("europe/madrid", "Europe/Madrid"),
        ("madrid", "Europe/Madrid"),
        ("new york", "America/New_York"),
        ("New-York", "America/New_York"),
        ("utc", "UTC"),
    ],
)
def test_a_zone_is_found_by_name_or_city(text: str, name: str) -> None:
    # names: the IANA time zone data (standard)
    assert answers.zone(text) == name


def test_a_zone_that_is_not_found_comes_with_suggestions() -> None:
    refused = answers.zone("madird")
    assert isinstance(refused, Unclear)
    assert "Europe/Madrid" in refused.args["suggestions"]  # type: ignore[operator]
    assert answers.zone("") == Unclear("answer-zone", {"suggestions": ()})


def test_a_choice_is_taken_by_number_label_or_a_clear_start() -> None:
    options = ("Heel drop", "Hop", "Stepping jack", "Café walk")
    assert answers.choice("2", options) == 1
    assert answers.choice("heel DROP", options) == 0
    assert answers.choice("cafe", options) == 3
    assert answers.choice("step", options) == 2
    for text in ("h", "0", "5", "", "jump"):
        assert answers.choice(text, options) == Unclear("answer-choice", {"options": options})


def test_a_whole_label_wins_over_one_that_only_starts_so() -> None:
    assert answers.choice("hop", ("Hop twice", "Hop")) == 1


@given(st.text(max_size=250))
@settings(max_examples=200, deadline=None)
def test_no_answer_whatever_raises(text: str) -> None:
    answers.number(text, 1, 20)
    answers.score(text)
    answers.yes_no(text)
    answers.span(text)
    answers.spans(text)
    answers.weekdays(text)
    answers.day(text, TODAY)
    answers.zone(text)
    answers.choice(text, ("a", "b"))


def test_a_very_long_answer_is_unclear_and_quickly_so() -> None:
    text = "1" * 100_000
    assert isinstance(answers.number(text, 1, 20), Unclear)
    assert isinstance(answers.span(text), Unclear)
    assert isinstance(answers.zone(text), Unclear)


@pytest.mark.parametrize("year", [9998, 9999])
def test_the_end_of_the_calendar_raises_nothing(year: int) -> None:
    answers.day("29 feb", date(year, 12, 31))
    answers.day("tomorrow", date(year, 12, 30))


@pytest.mark.parametrize(
    ("said", "language", "movement"),
    [
        ("small jumps", "en", "small-jump"),
        ("small-jump", "en", "small-jump"),
        ("saltos pequeños", "es", "small-jump"),
        ("Saltos pequenos", "es", "small-jump"),
        ("firm heel drop", "es", "firm-heel-drop"),
    ],
)
def test_a_movement_is_named_in_the_clinicians_own_words(
    said: str, language: str, movement: str
) -> None:
    assert movements.named(said, language) == movement


def test_a_name_that_two_movements_share_is_asked_back() -> None:
    assert isinstance(movements.named("heel drop", "en"), Unclear)


@pytest.mark.parametrize(
    ("said", "language", "meant"),
    [
        ("none of these", "en", "none"),
        ("no pain this week", "en", "none"),
        ("nothing", "en", "none"),
        ("pain", "en", "pain"),
        ("a fall", "en", "fall"),
        ("nada de eso", "es", "none"),
        ("sin dolor", "es", "none"),
        ("una caída", "es", "fall"),
        ("no pain, no falls", "en", "none"),
        ("sin dolor ni caídas", "es", "none"),
    ],
)
def test_the_weeks_question_is_answered_in_words(said: str, language: str, meant: str) -> None:
    asked = Question(1, "weekly", "ask")
    assert weekly.read(asked, said, language) == meant


@pytest.mark.parametrize(
    ("said", "language"), [("no falls", "en"), ("no leaks", "en"), ("ninguna caída", "es")]
)
def test_no_falls_says_nothing_about_pain(said: str, language: str) -> None:
    asked = Question(1, "weekly", "ask")
    assert isinstance(weekly.read(asked, said, language), Unclear)
