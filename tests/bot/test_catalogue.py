"""The catalogue and the program agree: nothing unsaid, nothing unwritten, nothing without a name."""

from collections.abc import Mapping

import pytest

from bot.pictures.tiles import STATES
from bot.words.catalogue import LANGUAGES, catalogue
from bot.words.formats import FORMATS, MAY_BE_ABSENT
from bot.words.ids import DERIVED, Entry, documented, entries, spoken, table
from scheduler.domain import breaks, companions, lapses, pain, readiness
from scheduler.domain.flags import BY_ITSELF, KINDS, OUTCOMES, REASONS
from scheduler.domain.people import Role, State
from scheduler.domain.plan import MOVEMENTS, Level
from scheduler.domain.settings import NAMES
from scheduler.domain.week import Why
from scheduler.usecases import cards
from scheduler.usecases.drafts import FIELDS
from tests.bot.said import ROOT, said

WORDS = catalogue("en")
BY_ID = {entry.id: entry for entry in entries(WORDS)}
DOCUMENTED = documented(WORDS)
SAID = said()


def test_every_text_that_the_program_says_is_in_the_catalogue() -> None:
    assert len(SAID) > 200
    assert sorted(SAID.keys() - DOCUMENTED.keys()) == []


def test_every_text_of_the_catalogue_is_said_somewhere() -> None:
    assert sorted(DOCUMENTED.keys() - SAID.keys()) == []


def test_every_piece_of_the_catalogue_is_part_of_something() -> None:
    assert {id_ for id_ in BY_ID if id_.startswith("part-")} - _used(BY_ID) == set()


def test_a_text_mentions_only_what_the_program_gives_it() -> None:
    for id_, given in SAID.items():
        if "*" not in given:
            assert spoken(id_, BY_ID) - given - MAY_BE_ABSENT.keys() == set(), id_


def test_the_list_of_ids_names_every_argument_that_the_program_gives() -> None:
    for id_, given in SAID.items():
        assert given - {"*"} - DOCUMENTED[id_][1] == set(), id_
        if "*" not in given:
            assert DOCUMENTED[id_][1] - given - MAY_BE_ABSENT.keys() == set(), id_


def test_every_language_of_the_menu_is_one_file_and_every_file_is_in_the_menu() -> None:
    files = {path.stem for path in (ROOT / "bot/text").glob("*.ftl")}
    assert {name for name in files if not name.startswith("hear_")} == {*LANGUAGES}


@pytest.mark.parametrize("language", [each for each in LANGUAGES if each != "en"])
def test_another_language_says_every_text_and_all_that_english_says_of_it(language: str) -> None:
    theirs = {entry.id: entry for entry in entries(catalogue(language))}
    own = {id_ for id_ in theirs if not id_.startswith("part-")}
    assert own == {id_ for id_ in BY_ID if not id_.startswith("part-")}
    assert {id_: theirs[id_].group for id_ in own} == {id_: BY_ID[id_].group for id_ in own}
    for id_ in own:
        assert spoken(id_, theirs) == spoken(id_, BY_ID), id_
    unused = {id_ for id_ in theirs if id_.startswith("part-")} - _used(theirs)
    assert unused == set()


def _used(theirs: Mapping[str, Entry]) -> set[str]:
    """The pieces that other texts are made of, and those that the program asks for."""
    source = "".join(path.read_text(encoding="utf-8") for path in (ROOT / "bot/words").glob("*.py"))
    named = {name for entry in theirs.values() for name in entry.references}
    asked = {id_ for id_ in theirs if f'"{id_}"' in source or id_.startswith("part-flag-")}
    return named | asked


def test_the_list_of_ids_is_current() -> None:
    written = (ROOT / "bot/text/ids.md").read_text(encoding="utf-8")
    assert written == table(), "run: python -m bot.words > bot/text/ids.md"


def test_every_format_belongs_to_an_argument() -> None:
    arguments = {name for _, names in DOCUMENTED.values() for name in names}
    arguments |= {name for entry in BY_ID.values() for name in entry.arguments}
    assert FORMATS.keys() - arguments == set()
    assert {*DERIVED.values()} <= arguments


FAMILIES = {
    "movement": MOVEMENTS,
    "sign": [*pain.SIGNS, "none"],
    "place": pain.PLACES,
    "when": ["during", "after", "next-morning", "other", "today", "yesterday", "earlier"],
    "doing": pain.FALL_DOING,
    "step": [*pain.STEPS, *(step.replace("_", "-") for step in pain.FALL_STEPS)],
    "ready": [*readiness.KEYS, *(f"unsure-{screen}" for screen in readiness.ORDER)],
    "outcome": [*OUTCOMES, *BY_ITSELF],
    "ceiling": [level.name.lower() for level in Level],
    "role": [role.value for role in Role],
    "state": [state.value for state in State],
    "field": [field.replace("_", "-") for field in FIELDS],
    "setting": [name.replace("_", "-") for name in NAMES],
    "reason": [*KINDS, *REASONS],
    "cell": STATES,
    "why": [why.value for why in Why],
    "mark": [why.value for why in Why],
    "away": breaks.REASONS,
    "because": lapses.REASONS,
    "companion": companions.CATALOGUE,
    "card": cards.EXERCISES,
    "weekday": range(7),
    "month": range(1, 13),
}


@pytest.mark.parametrize("family", FAMILIES)
def test_everything_that_can_be_named_has_exactly_one_name(family: str) -> None:
    named = {id_ for id_ in BY_ID if id_.startswith(f"name-{family}-")}
    assert named == {f"name-{family}-{key}" for key in FAMILIES[family]}


def test_every_kind_of_flag_has_a_name() -> None:
    assert {id_.removeprefix("name-kind-") for id_ in BY_ID if "name-kind-" in id_} == KINDS
