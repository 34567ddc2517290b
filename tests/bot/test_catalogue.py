"""The catalogue and the program agree: nothing unsaid, nothing unwritten, nothing without a name."""

import pytest

from bot.pictures.tiles import STATES
from bot.words.catalogue import catalogue
from bot.words.formats import FORMATS, MAY_BE_ABSENT
from bot.words.ids import DERIVED, documented, entries, spoken, table
from scheduler.domain import breaks, companions, lapses, pain, readiness
from scheduler.domain.flags import BY_ITSELF, KINDS, OUTCOMES, REASONS
from scheduler.domain.people import Role, State
from scheduler.domain.plan import MOVEMENTS, Level
from scheduler.domain.settings import NAMES
from scheduler.domain.week import Why
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
    source = "".join(path.read_text(encoding="utf-8") for path in (ROOT / "bot/words").glob("*.py"))
    named = {name for entry in BY_ID.values() for name in entry.references}
    for entry in BY_ID.values():
        if entry.id.startswith("part-") and not entry.id.startswith("part-flag-"):
            assert entry.id in named or f'"{entry.id}"' in source, entry.id


@pytest.mark.parametrize("id_", sorted(SAID))
def test_a_text_mentions_only_what_the_program_gives_it(id_: str) -> None:
    given = SAID[id_]
    if "*" not in given:
        assert spoken(id_, BY_ID) - given - MAY_BE_ABSENT.keys() == set()


@pytest.mark.parametrize("id_", sorted(SAID))
def test_the_list_of_ids_names_every_argument_that_the_program_gives(id_: str) -> None:
    assert SAID[id_] - {"*"} - DOCUMENTED[id_][1] == set()
    if "*" not in SAID[id_]:
        assert DOCUMENTED[id_][1] - SAID[id_] - MAY_BE_ABSENT.keys() == set()


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
    "weekday": range(7),
    "month": range(1, 13),
}


@pytest.mark.parametrize("family", FAMILIES)
def test_everything_that_can_be_named_has_exactly_one_name(family: str) -> None:
    named = {id_ for id_ in BY_ID if id_.startswith(f"name-{family}-")}
    assert named == {f"name-{family}-{key}" for key in FAMILIES[family]}


def test_every_kind_of_flag_has_a_name() -> None:
    assert {id_.removeprefix("name-kind-") for id_ in BY_ID if "name-kind-" in id_} == KINDS
