"""What the bench tells can be read by a program. Nothing here depends on how fast anything is. Ours."""

import json

import pytest

from tests.bench.__main__ import main
from tests.bench.figure import Figure, in_turns, share
from tests.bench.figures import FIGURES, chosen

FIELDS = {
    "name": str, "ours": float, "peer": float, "ratio": float, "goal": float,
    "bound": str, "met": bool, "unit": str, "note": str,
}  # fmt: skip


def test_the_cheapest_figures_come_as_a_list_with_every_field(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["B8", "--small", "--json"]) == 0
    found = json.loads(capsys.readouterr().out)
    names = [each["name"] for each in found]
    assert names == ["B8 plan 5-minute grid", "B8 plan 1-minute grid", "B8 equal", "B8 cached"]
    for each in found:
        for field, kind in FIELDS.items():
            assert isinstance(each[field], (kind, int) if kind is float else kind), field
    (equal,) = (each for each in found if each["name"] == "B8 equal")
    assert equal["ours"] == 0  # days that differ from the textbook's
    assert equal["met"]


def test_a_line_a_figure_is_printed_for_people(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["B8 equal", "--small"]) == 0
    assert capsys.readouterr().out.startswith("B8 equal ")


def test_every_number_of_the_page_is_measured_and_a_name_chooses_whole_words() -> None:
    assert {name.split()[0] for name in FIGURES} == {f"B{number}" for number in range(1, 14)}
    assert chosen([]) == [*FIGURES.values()]
    assert chosen(["B1"]) == [each for name, each in FIGURES.items() if name.startswith("B1 ")]
    assert chosen(["B1 shared", "B8 equal"]) == [FIGURES["B1 shared"], FIGURES["B8 equal"]]
    assert chosen(["B"]) == []


def test_a_name_that_is_none_is_refused(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        main(["B99"])
    assert ended.value.code == 2
    assert "'B99'" in capsys.readouterr().err


def test_a_goal_is_met_on_its_edge_and_not_one_step_past() -> None:
    assert Figure("x", 40, 100, "at least", 0.4, "").met
    assert not Figure("x", 39, 100, "at least", 0.4, "").met
    assert Figure("x", 11, 10, "at most", 1.1, "").met
    assert not Figure("x", 12, 10, "at most", 1.1, "").met
    assert Figure("nothing lost", 0, 0, "at most", 0, "").met
    assert not Figure("one lost", 1, 0, "at most", 0, "").met


def test_both_sides_are_warmed_and_then_run_in_turns() -> None:
    said: list[str] = []

    def side(name: str, values: list[float]) -> float:
        said.append(name)
        return values.pop(0)

    ours, theirs = [9.0, 3.0, 1.0, 2.0], [9.0, 5.0, 6.0, 4.0]
    assert in_turns(3, lambda: side("ours", ours), lambda: side("peer", theirs)) == (2, 5)
    assert said == ["ours", "peer"] * 4


def test_ninety_nine_of_a_hundred_lie_at_or_below_the_share() -> None:
    # Source: arithmetic, nearest rank.
    assert share([float(n) for n in range(1, 101)], 0.99) == 99
    assert share([float(n) for n in range(1, 201)], 0.99) == 198
    assert share([7.0], 0.99) == 7
