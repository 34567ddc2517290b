"""What people read: every text is there, says what it is given, and is written as a person reads it."""

import json
import re
from datetime import date, timedelta
from itertools import product
from typing import Any

import pytest

from bot.pictures import canvas, caseload_picture, week_picture
from bot.pictures.tiles import STATES
from bot.telegram.buttons import rows
from bot.words import LANGUAGES, LONGEST_LABEL, MissingText, label, render
from bot.words.catalogue import Catalogue, catalogue
from bot.words.ids import documented, entries, spoken
from scheduler.domain.companions import CATALOGUE
from scheduler.domain.messages import Text, text
from scheduler.domain.plan import MOVEMENTS
from scheduler.domain.settings import NAMES
from tests.bot import weeks
from tests.bot.said import said
from tests.bot.samples import bare, sample

WORDS = catalogue("en")
BY_ID = {entry.id: entry for entry in entries(WORDS)}
DOCUMENTED = documented(WORDS)
SAID = said()


def say(id_: str, /, **args: Any) -> str:
    return render((text(id_, **args),), "en")


# --- every text can be said ----------------------------------------------------------------------


LEFT_OPEN = re.compile(r"[{}$]|: None|\[\]|\bTrue\b|\bFalse\b|  | \.|\d{4}-\d\d-\d\d|^$")
"""What no reader should see: a gap, a value of the program, an ISO date, nothing at all."""


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_text_can_be_said_and_leaves_nothing_open(language: str) -> None:
    for id_, args_of in product(sorted(DOCUMENTED), (sample, bare)):
        words = render((Text(id_, args_of(id_)),), language)
        assert not LEFT_OPEN.search(words), f"{id_}: {words}"


def test_the_pseudo_locale_says_every_text_exactly() -> None:
    for id_, args_of in product(sorted(DOCUMENTED), (sample, bare)):
        args = args_of(id_)
        expected = f"⟦{id_}|{json.dumps(args, ensure_ascii=False, sort_keys=True)}⟧"
        assert render((Text(id_, args),), "qps") == expected
        assert label(Text(id_, args), "qps") == expected


def test_texts_of_the_pseudo_locale_follow_one_another() -> None:
    shown = render((text("prompt", next="2027-03-08T14:05", reps=10), text("safety")), "qps")
    assert shown == '⟦prompt|{"next": "2027-03-08T14:05", "reps": 10}⟧⟦safety|{}⟧'


def test_the_pseudo_locale_leaves_what_people_typed_as_it_is() -> None:
    assert render((text("flag", words='é "x"\n'),), "qps") == '⟦flag|{"words": "é \\"x\\"\\n"}⟧'


def test_the_pseudo_locale_stands_in_no_menu() -> None:
    assert "qps" not in LANGUAGES


def test_a_text_that_is_missing_is_an_error_with_its_id_and_language() -> None:
    with pytest.raises(MissingText) as missing:
        say("no-such-text")
    assert (missing.value.id, missing.value.language) == ("no-such-text", "en")


def test_an_argument_that_is_missing_is_an_error_and_never_a_gap_in_the_words() -> None:
    with pytest.raises(MissingText, match="largest"):
        say("ask-reps-range")


def test_a_value_without_a_name_is_an_error() -> None:
    with pytest.raises(MissingText, match="name-outcome-lost"):
        say("flag-closed", flag=1, outcome="lost")


def test_a_catalogue_that_cannot_be_read_is_refused() -> None:
    with pytest.raises(ValueError, match="xx"):
        Catalogue("xx", "fine = yes\nnot a text\n")


def test_somebody_whose_language_we_do_not_speak_reads_english() -> None:
    assert render((text("stranger"),), "xx") == say("stranger")


# --- times, days, numbers ------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("clock", "words"),
    [
        ("00:00", "12 midnight"),
        ("00:01", "12:01 am"),
        ("00:05", "12:05 am"),
        ("00:59", "12:59 am"),
        ("01:00", "1 am"),
        ("11:59", "11:59 am"),
        ("12:00", "12 noon"),
        ("12:01", "12:01 pm"),
        ("12:59", "12:59 pm"),
        ("13:00", "1 pm"),
        ("14:05", "2:05 pm"),
        ("23:55", "11:55 pm"),
    ],
)  # the 12-hour clock: common practice, no source; noon and midnight by name, as 12 pm is read both ways
def test_times_read_on_the_twelve_hour_clock(clock: str, words: str) -> None:
    assert say("away", next=f"2027-03-08T{clock}").endswith(f" Next at {words}.")


@pytest.mark.parametrize(
    ("window", "words"),
    [
        ([480, 1200], "8 am to 8 pm"),
        ([0, 1440], "12 midnight to 12 midnight"),
        ([450, 725], "7:30 am to 12:05 pm"),
    ],
)
def test_hours_read_from_when_to_when(window: list[int], words: str) -> None:
    args = {**sample("ask-times"), "window": window}
    assert f"Hours: {words}\n" in say("ask-times", **args)


def test_quiet_times_read_one_after_the_other_or_none() -> None:
    args = sample("ask-times")
    two = say("ask-times", **{**args, "quiet": [[720, 780], [900, 930]]})
    assert "Quiet: 12 noon to 1 pm, 3 pm to 3:30 pm\n" in two
    assert "Quiet: none\n" in say("ask-times", **{**args, "quiet": []})


@pytest.mark.parametrize(
    ("day", "words"),
    [
        ("2027-03-08", "Mon 8 March"),
        ("2028-02-29", "Tue 29 February"),
        ("2027-12-31", "Fri 31 December"),
    ],
)  # the calendar: arithmetic
def test_days_read_with_weekday_and_month(day: str, words: str) -> None:
    assert say("day-over", day=day).startswith(f"{words} is closed")


def test_one_rep_is_not_many() -> None:
    args = {"bout": 1, "done": 0, "total": 40, "movement": "hop", "per_side": False}
    assert say("prompt", reps=1, **args).startswith("Now: 1 hop.")
    assert say("prompt", reps=2, **args).startswith("Now: 2 hops.")


def test_a_movement_of_each_side_says_so_wherever_its_numbers_are() -> None:
    args = sample("prompt") | {"movement": "stomp", "per_side": True}
    assert say("prompt", **args) == "Now: 10 stomps each side. Done today: 20 of 40 each side."


def test_big_numbers_that_are_names_have_no_separators() -> None:
    assert "#12345 " in say("flag-closed", flag=12345, outcome="called")


# --- Spanish: times, days, numbers ---------------------------------------------------------------


@pytest.mark.parametrize(
    ("clock", "words"),
    [
        ("00:00", "las 12 de la noche"),
        ("00:30", "las 12:30 de la noche"),
        ("01:00", "la 1 de la madrugada"),
        ("05:59", "las 5:59 de la madrugada"),
        ("06:00", "las 6 de la mañana"),
        ("11:59", "las 11:59 de la mañana"),
        ("12:00", "las 12 del mediodía"),
        ("12:59", "las 12:59 del mediodía"),
        ("13:00", "la 1 de la tarde"),
        ("13:05", "la 1:05 de la tarde"),
        ("18:59", "las 6:59 de la tarde"),
        ("19:00", "las 7 de la noche"),
        ("23:55", "las 11:55 de la noche"),
    ],
)  # the part of the day beside the hour: common practice, no source; where evening ends differs by country
def test_spanish_times_say_the_part_of_the_day(clock: str, words: str) -> None:
    shown = render((text("away", next=f"2027-03-08T{clock}"),), "es")
    assert shown.endswith(f" La próxima es a {words}.")


@pytest.mark.parametrize(
    ("clock", "words"),
    [
        ("00:00", "12 de la noche"),
        ("08:00", "8 a. m."),
        ("12:00", "12 mediodía"),
        ("12:30", "12:30 p. m."),
        ("17:00", "5 p. m."),
    ],
)  # "a. m." and "p. m." as the academies write them; noon and midnight by name (memory)
def test_spanish_times_are_short_on_a_button(clock: str, words: str) -> None:
    assert label(text("button-hour", at=f"2000-01-01T{clock}"), "es") == words


def test_spanish_says_no_more_than_is_meant() -> None:
    """The week's minimum does not fit, not so many days beside those that are done already."""
    no_room = render((text("week-no-room", needed=2, dates=[]),), "es")
    assert no_room.startswith("Esta semana no caben 2 días, porque")
    too_late = render((text("later-too-late", bout=1, next="2027-03-08T19:30"),), "es")
    assert "Lo más tarde que puede ser es a las 7:30 de la noche." in too_late


def test_spanish_days_and_lists_read_as_they_are_said() -> None:
    dates = ["2027-03-08", "2027-03-10", "2027-03-13"]
    shown = render((text("week-days-kept", dates=dates),), "es")
    assert shown.endswith(": lunes 8 de marzo, miércoles 10 de marzo y sábado 13 de marzo.")
    assert label(text("button-weekdays", days=[0, 2, 5]), "es") == "lun, mié y sáb"
    assert label(text("button-weekdays", days=[0]), "es") == "lun"
    card = {**sample("plan-card"), "quiet": [[720, 780], [900, 930]], "end": None}
    lines = render((text("plan-card", **card),), "es").split("\n")
    hours = (
        "de las 12 del mediodía a la 1 de la tarde y de las 3 de la tarde a las 3:30 de la tarde"
    )
    assert f"Horas de silencio: {hours}" in lines
    assert "Revisión: lunes 3 de mayo de 2027" in lines
    assert "Fin: ninguno" in lines


def test_spanish_numbers_have_a_decimal_comma_and_agree() -> None:
    table = render((Text("dose-table", sample("dose-table")),), "es")
    assert "1 tanda de 40: índice 3,7" in table
    amount: dict[str, Any] = {
        "bout": 1,
        "done": 0,
        "total": 40,
        "movement": "hop",
        "per_side": True,
    }
    one, two = (render((text("prompt", reps=reps, **amount),), "es") for reps in (1, 2))
    assert one == "Ahora: 1 salto en un pie por lado. Hoy lleva: 0 de 40 por lado."
    assert two.startswith("Ahora: 2 saltos en un pie por lado.")


@pytest.mark.parametrize("language", LANGUAGES)
def test_nothing_on_a_picture_is_cut(language: str, monkeypatch: pytest.MonkeyPatch) -> None:
    cut: list[str] = []
    real = canvas.fitted

    def noted(words: str, letters: Any, width: float) -> str:
        shown = real(words, letters, width)
        cut.extend([words] if shown != words else [])
        return shown

    monkeypatch.setattr(canvas, "fitted", noted)
    last = date(2027, 9, 27)  # a week over the longest month's name, in two digits
    week = {"first": str(last), "last": str(last + timedelta(6)), "made_at": "2027-10-04T12:30"}
    caseload_picture(weeks.crowd(12, 2) | week, language)
    for movement in MOVEMENTS:
        names = [{"name": key, "done": 2, "days": 3} for key in CATALOGUE]
        line = weeks.line("Ann", *weeks.KINDS[:7], first=last, movement=movement, per_side=True)
        week_picture(line | {"companions": names}, language)
    assert cut == []


# --- several texts in one message ----------------------------------------------------------------


def test_the_first_prompt_of_a_day_reads_line_by_line() -> None:
    amount: dict[str, Any] = {"total": 40, "movement": "stepping-jack", "per_side": False}
    opening = text(
        "day-opening", bouts=4, first="2027-03-08T09:00", last="2027-03-08T17:00", reps=40, **amount
    )
    prompt = text("prompt", bout=1, done=0, reps=10, **amount)
    assert render((opening, prompt, text("safety")), "en") == (
        "Today: 40 stepping jacks in 4 bouts, from about 9 am to 5 pm.\n"
        "Now: 10 stepping jacks. Done today: 0 of 40.\n"
        "First clear the floor and put on shoes. Have something firm to hold. Stop if it hurts."
    )


def test_a_text_of_several_lines_is_set_off_by_a_blank_one() -> None:
    shown = render((text("answer-score"), Text("ask-times", sample("ask-times"))), "en")
    assert shown.startswith("Please send a number from 0 to 10.\n\nThese are the times")


# --- flags ---------------------------------------------------------------------------------------

PAIN_FLAG = {
    "flag": 12, "client": 7, "name": "Ann", "since": "2027-03-08T14:05", "zone": "Europe/Berlin",
    "phone": "555 0100", "kind": "pain", "urgent": True, "sign": "sudden-back", "score": 7,
    "words": "it just went in my back",
}  # fmt: skip


def test_a_flag_says_who_what_since_when_her_words_and_her_phone() -> None:
    assert say("flag", **PAIN_FLAG) == (
        "#12 Urgent. Pain or a warning sign: Ann\n"
        "Since Mon 8 March, 2:05 pm (Europe/Berlin)\n"
        "All exercise is stopped until you release it.\n"
        "Sign: Sudden new back pain\n"
        "Pain: 7 of 10\n"
        "Own words: “it just went in my back”\n"
        "Phone: 555 0100"
    )


@pytest.mark.parametrize(
    ("detail", "line"),
    [
        (
            {"movement": "hop", "sign": "leak", "urgent": False},
            "Stopped until you release it: hops",
        ),
        ({"kind": "fall", "injured": True}, "Injured"),
        ({"kind": "fall", "injured": False}, "No injury said"),
        ({"kind": "fall", "new_pain": False, "doing": "stairs"}, "Doing: On the stairs"),
        ({"new": True, "place": "thigh"}, "A new pain"),
        ({"sharper": False}, "Not sharper than usual"),
        (
            {"kind": "question-open", "unanswered": "new_pain"},
            "No answer to: new pain since the fall",
        ),
        ({"score": 0}, "Pain: 0 of 10"),
        (
            {"kind": "too-much", "reps": 30, "done": 70, "total": 40, "day": "2027-03-08"},
            "Done on Mon 8 March: 70 of 40",
        ),
    ],
)
def test_a_flag_has_a_line_for_each_thing_that_is_known(detail: dict[str, Any], line: str) -> None:
    assert line in say("flag", **{**PAIN_FLAG, **detail}).split("\n")


def test_the_admin_never_reads_a_clients_words() -> None:
    assert spoken("flag-admin", BY_ID) == {"flag", "name", "urgent"}


# --- buttons -------------------------------------------------------------------------------------


WIDEST: dict[str, list[dict[str, Any]]] = {
    "button-judged-day": [{"day": "2027-09-29", "cell": cell} for cell in STATES],
    "button-own-day": [{"weekday": day, "chosen": True} for day in range(7)],
    "button-week-day": [{"day": "2027-09-29", "chosen": True}],
    "button-hour": [{"at": "2027-03-08T11:30"}, {"at": "2027-03-08T13:00"}],
    "button-weekdays": [{"days": [0, 2, 4]}, {"days": [1, 3, 5]}],
    "button-movement": [{"movement": name} for name in MOVEMENTS],
    "button-companion": [{"companion": name} for name in CATALOGUE],
    "button-setting": [{"setting": name} for name in NAMES],
    "button-language": [{"language": code} for code in LANGUAGES],
}
"""Labels that depend on what the practice does, not on what people typed."""


@pytest.mark.parametrize("language", LANGUAGES)
def test_labels_fit_a_phone_and_read_alone(language: str) -> None:
    said = [(id_, sample(id_)) for id_ in sorted(DOCUMENTED) if id_.startswith("button-")]
    said += [(id_, args) for id_, widest in WIDEST.items() for args in widest]
    full = {(id_, render((Text(id_, args),), language)) for id_, args in said}
    assert [each for each in full if len(each[1]) > LONGEST_LABEL or "\n" in each[1]] == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_two_buttons_of_a_message_read_the_same(language: str) -> None:
    messages = [id_ for id_ in DOCUMENTED if DOCUMENTED[id_][0] not in {"button", "command"}]
    for id_ in messages:
        shown = [each.label for row in rows((Text(id_, sample(id_)),)) for each in row]
        labels = [label(each, language) for each in shown]
        assert len({*labels}) == len(labels), id_


def test_a_long_name_is_cut_on_a_button() -> None:
    shown = label(text("button-client", name="A" * 80, flags=2), "en")
    assert shown == "2 flags: " + "A" * 22 + "…"


def test_what_is_chosen_is_said_in_words() -> None:
    assert label(text("button-ready-height", chosen=True), "en") == "Yes: Lost height"
    assert label(text("button-ready-height", chosen=False), "en") == "Lost height"


# --- what people typed ---------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("typed", "shown"),
    [
        ("<b>Ann</b> & *Bo* [x](y) {z}", "<b>Ann</b> & *Bo* [x](y) {z}"),
        ("Ann\nBo\t\r\nCy", "Ann Bo Cy"),
        ("A\x00n\x1bn\x7f", "Ann"),
        ("Ann\u202e\u2066\ufeff\u200b", "Ann"),
        ("{ $phone } { stop-emergency }", "{ $phone } { stop-emergency }"),
        ("می\u200cخواهم", "می\u200cخواهم"),
        ("A" * 65, "A" * 63 + "…"),
        ("A" * 64, "A" * 64),
    ],
)
def test_markup_and_control_characters_in_a_name_do_no_harm(typed: str, shown: str) -> None:
    assert say("clear-not-answered", name=typed).startswith(f"{shown} has not answered")


def test_a_clients_own_words_stay_within_their_quotes_and_their_length() -> None:
    shown = say("flag", **{**PAIN_FLAG, "words": "x\n" * 600})
    assert re.search(r"^Own words: “(x ){249}…”$|^Own words: “[x ]{499}…”$", shown, re.MULTILINE)


@pytest.mark.parametrize("number", ["", None])
def test_without_an_emergency_number_the_local_one_is_named(number: str | None) -> None:
    args = {"clinician": "Dana", "emergency_number": number or ""}
    assert say("stop-emergency", **args).startswith("Call your local emergency number now.")


def test_the_emergency_text_says_what_to_do_first() -> None:
    assert say("stop-emergency", clinician="Dana", emergency_number="911", phone="555 0100") == (
        "Call 911 now. Do not wait for us. Nobody reads this chat live. "
        "I have stopped all exercise and am telling Dana."
    )
