"""`boutwise dose`: what it prints, and what it refuses."""

import json
from argparse import ArgumentParser
from itertools import pairwise
from math import exp, log
from typing import Any

import pytest

from bot.commands import dose

Capture = pytest.CaptureFixture[str]


def boutwise(*arguments: str) -> int:
    parser = ArgumentParser(prog="boutwise")
    dose.add(parser.add_subparsers())
    args = parser.parse_args(["dose", *arguments])
    code: int = args.run(args)
    return code


def answer(capsys: Capture, *arguments: str) -> dict[str, Any]:
    assert boutwise(*arguments, "--json") == 0
    told = capsys.readouterr()
    assert told.err == ""
    value: dict[str, Any] = json.loads(told.out)
    return value


def refused(capsys: Capture, *arguments: str) -> list[str]:
    assert boutwise(*arguments) == 2
    told = capsys.readouterr()
    assert told.out == ""
    return told.err.splitlines()


def times(day: dict[str, Any]) -> list[str]:
    return [bout["at"] for bout in day["bouts"]]


def test_sixty_in_bouts_of_ten_from_eight_to_eight(capsys: Capture) -> None:
    # Source: arithmetic.
    day = answer(capsys, "--total", "60", "--bout", "10")
    assert list(day) == ["bouts", "gaps_minutes", "recovery", "shortfall", "table"]
    assert times(day) == ["08:00", "10:20", "12:45", "15:10", "17:35", "20:00"]
    assert [bout["reps"] for bout in day["bouts"]] == [10] * 6
    assert day["gaps_minutes"] == [140, 145, 145, 145, 145]
    assert day["recovery"] == pytest.approx(1.648348, abs=5e-7)
    assert day["shortfall"] == 0


def test_the_table_against_one_go(capsys: Capture) -> None:
    # Source: arithmetic; I = 1 where no movement is named.
    table = answer(capsys, "--total", "60", "--bout", "10")["table"]
    assert [row["bouts"] for row in table] == [*range(1, 13)]
    ratios = [round(row["against_one_go"], 3) for row in table[:6]]
    assert ratios == [1, 1.558, 1.677, 1.659, 1.606, 1.545]
    assert [row["gap_minutes"] for row in table[:6]] == [0, 720, 360, 240, 180, 144]
    assert table[7]["gap_minutes"] == pytest.approx(720 / 7)
    assert table[0]["index"] == pytest.approx(log(61))
    assert table[5]["reps"] == [10] * 6


def test_the_index_uses_the_movements_peak_force(capsys: Capture) -> None:
    # Source: arithmetic with I = 4.9 (IJSTS 2021;9(6):294-300, read).
    table = answer(capsys, "--total", "60", "--bout", "30", "--movement", "Firm heel drop")["table"]
    assert table[0]["index"] == pytest.approx(4.9 * log(61))
    assert table[1]["index"] == pytest.approx(4.9 * log(31) * (2 - exp(-2)))


def test_the_table_reaches_the_bouts_that_were_chosen(capsys: Capture) -> None:
    day = answer(capsys, "--total", "60", "--bout", "4", "--gap", "30")
    assert len(day["bouts"]) == 15
    assert [row["bouts"] for row in day["table"]] == [*range(1, 16)]


def test_what_is_left_after_a_bout_done_is_spread_from_it(capsys: Capture) -> None:
    day = answer(capsys, "--total", "40", "--bout", "10", "--done", "08:20=10", "--now", "08:25")
    # Three are left; 700 minutes in three gaps, the first from 08:20, on a 5-minute grid.
    assert times(day) == ["12:10", "16:05", "20:00"]
    assert day["gaps_minutes"] == [235, 235]
    expected = 3 - exp(-230 / 360) - 2 * exp(-235 / 360)
    assert day["recovery"] == pytest.approx(expected, abs=1e-12)


def test_the_gaps_between_bouts_done_do_not_count(capsys: Capture) -> None:
    done = ["--done", "12:00=10", "--done", "08:00=10"]
    day = answer(capsys, "--total", "30", "--bout", "10", *done)
    assert times(day) == ["20:00"]
    assert day["recovery"] == pytest.approx(1 - exp(-8 / 6))


def test_a_day_that_is_done_asks_nothing_more(capsys: Capture) -> None:
    day = answer(capsys, "--total", "30", "--bout", "10", "--done", "08:00=31")
    assert (day["bouts"], day["recovery"], day["shortfall"]) == ([], 0, 0)


def test_what_no_longer_fits_is_told_once_the_day_has_begun(capsys: Capture) -> None:
    day = answer(capsys, "--total", "40", "--bout", "10", "--now", "18:00")
    assert times(day) == ["18:00", "20:00"]
    assert day["shortfall"] == 20
    larger = answer(capsys, "--total", "40", "--bout", "10", "--max", "15", "--now", "18:01")
    assert [(bout["at"], bout["reps"]) for bout in larger["bouts"]] == [("18:05", 15)]
    assert larger["shortfall"] == 25


def test_what_does_not_fit_is_refused_before_the_day_with_the_nearest_values(
    capsys: Capture,
) -> None:
    (line,) = refused(capsys, "--total", "71", "--bout", "10")
    assert line == (
        "--total: 71 reps do not fit: 7 bouts of at most 10 have room for 70. "
        "Nearest that fits: --total 70 or --gap 100 or --max 11."
    )
    assert len(answer(capsys, "--total", "70", "--bout", "10")["bouts"]) == 7
    assert len(answer(capsys, "--total", "71", "--bout", "10", "--gap", "100")["bouts"]) == 8
    assert len(answer(capsys, "--total", "71", "--bout", "10", "--max", "11")["bouts"]) == 7


def test_quiet_times_stay_free_and_their_edges_may_be_used(capsys: Capture) -> None:
    quiet = ["--quiet", "08:05-12:00", "--quiet", "13:00-19:55"]
    day = answer(capsys, "--total", "40", "--bout", "10", "--gap", "60", *quiet)
    assert times(day) == ["08:00", "12:00", "13:00", "20:00"]
    (line,) = refused(capsys, "--total", "40", "--bout", "10", "--quiet", "07:59-20:01")
    assert line == "--quiet: no bout fits, as quiet times fill the window."


def test_the_whole_day_can_be_the_window(capsys: Capture) -> None:
    day = answer(capsys, "--total", "30", "--bout", "10", "--window", "00:00-24:00")
    assert times(day) == ["00:00", "12:00", "24:00"]


def test_no_two_bouts_share_a_minute_even_without_a_gap(capsys: Capture) -> None:
    window = ["--window", "08:00-08:15"]
    day = answer(capsys, "--total", "4", "--bout", "1", "--gap", "0", *window)
    assert times(day) == ["08:00", "08:05", "08:10", "08:15"]


@pytest.mark.parametrize(
    ("arguments", "options"),
    [
        ([], ["--total", "--bout"]),
        (["--total", "0", "--bout", "x"], ["--total", "--bout"]),
        (["--total", "40", "--bout", "10", "--max", "9"], ["--max"]),
        (["--total", "40", "--bout", "10", "--window", "20:00-08:00"], ["--window"]),
        (["--total", "40", "--bout", "10", "--quiet", "12-13", "--quiet", "1"], ["--quiet"] * 2),
        (["--total", "40", "--bout", "10", "--gap", "-5"], ["--gap"]),
        (["--total", "40", "--bout", "10", "--movement", "trampoline"], ["--movement"]),
        (["--total", "40", "--bout", "10", "--done", "8:00", "--done", "9:00=0"], ["--done"] * 2),
        (["--total", "40", "--bout", "10", "--now", "25:00"], ["--now"]),
        (["--total", "9" * 5000, "--bout", "١٠"], ["--total", "--bout"]),
        (["--total", "00000100000", "--bout", "1e3"], ["--total", "--bout"]),
    ],
)
def test_every_fault_has_one_line_that_names_its_option(
    capsys: Capture, arguments: list[str], options: list[str]
) -> None:
    lines = refused(capsys, *arguments)
    assert [line.split(" ")[0].rstrip(":") for line in lines] == options
    assert all(line.endswith(".") for line in lines)


def test_people_read_times_reps_and_the_table_with_its_label_and_the_cautions(
    capsys: Capture,
) -> None:
    assert boutwise("--total", "40", "--bout", "10", "--movement", "hop") == 0
    told = capsys.readouterr().out
    lines = told.splitlines()
    assert lines[0] == "Hop: 40 reps on each side in 4 bouts"
    assert lines[1:5] == ["  08:00  10", "  12:00  10", "  16:00  10", "  20:00  10"]
    assert "theoretical, from animal data, not a target" in told
    assert "Bailey 2010" in told
    assert "clinician decides" in told
    assert "Stop if it hurts" in told


def test_people_are_told_what_does_not_fit_today(capsys: Capture) -> None:
    done = ["--done", "17:00=10", "--now", "17:30"]
    assert boutwise("--total", "40", "--bout", "10", *done) == 0
    told = capsys.readouterr().out
    assert told.splitlines()[0] == "10 reps in 1 bout; 10 of 40 done before"
    assert "No room left today for 20 reps; they are not carried over." in told


def test_the_help_says_that_the_index_is_theoretical(capsys: Capture) -> None:
    with pytest.raises(SystemExit) as stopped:
        boutwise("--help")
    assert stopped.value.code == 0
    assert "theoretical, from animal data, not a target" in capsys.readouterr().out


def test_every_gap_told_is_the_difference_of_the_times_told(capsys: Capture) -> None:
    day = answer(capsys, "--total", "47", "--bout", "7", "--gap", "95", "--quiet", "11:00-13:07")
    clock = [int(at[:2]) * 60 + int(at[3:]) for at in times(day)]
    assert day["gaps_minutes"] == [b - a for a, b in pairwise(clock)]
    assert min(day["gaps_minutes"]) >= 95
    assert [bout["reps"] for bout in day["bouts"]] == [7, 7, 7, 7, 7, 6, 6]
