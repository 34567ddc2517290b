"""`boutwise rehearse --once` as a reader of a terminal meets it."""

import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

COLUMNS = 100  # of the terminal (ours)


FILES: dict[str, bytes] = {}
"""What it wrote, by name."""


@pytest.fixture(scope="module")
def printed(tmp_path_factory: pytest.TempPathFactory) -> list[str]:
    folder = tmp_path_factory.mktemp("once")
    given = {key: os.environ[key] for key in ("PATH", "HOME") if key in os.environ}  # noqa: TID251 - what a program needs
    root = Path(__file__).parents[3]
    ran = subprocess.run(
        [sys.executable, "-m", "bot", "rehearse", "--once"],
        cwd=folder,
        env={**given, "PYTHONPATH": str(root)},
        capture_output=True,
        encoding="utf-8",
        timeout=110,
        check=False,
    )
    assert ran.returncode == 0, ran.stderr
    assert [each.name for each in folder.iterdir()] == ["rehearsal"]  # and nothing else is left
    for each in (folder / "rehearsal").iterdir():
        FILES[each.name] = each.read_bytes()
    return ran.stdout.splitlines()


def section(printed: list[str], title: str) -> str:
    """The lines from a heading to the next one."""
    start = next(n for n, line in enumerate(printed) if line.startswith(title))
    level = printed[start][:3]
    rest = printed[start + 1 :]
    end = next((n for n, line in enumerate(rest) if line[:3] in {"===", level}), len(rest))
    return "\n".join(rest[:end])


def test_it_says_first_that_all_is_invented_and_no_advice(printed: list[str]) -> None:
    head = " ".join(printed[:4])
    assert "invented" in head
    assert "not advice" in head


def test_the_three_clients_days_come_first_and_then_the_clinicians(printed: list[str]) -> None:
    headings = [line for line in printed if line.startswith("===")]
    assert [re.split(r"[ :]", each)[1] for each in headings] == [
        "Ann",
        "Bo",
        "Cy",
        "Dana",
        "Before",
    ]
    assert all(len(each.split()) > 4 for each in headings)  # each says what it shows


def test_ann_does_her_four_bouts_bo_less_and_cy_none(printed: list[str]) -> None:
    # 4 bouts of 10 are 40; 6 and 5 are 11 of 30 (arithmetic).
    assert "Done today: 40 of 40.\n" in section(printed, "=== Ann")
    assert "Done today: 11 of 30 each side.\n" in section(printed, "=== Bo")
    assert "Done today: 0 of 40 each side.\n" in section(printed, "=== Cy")


def test_cy_is_held_after_pain_and_asked_for_nothing_more(printed: list[str]) -> None:
    chat = section(printed, "=== Cy")
    monday, *_ = chat.partition("--- Thursday")
    _, stopped, after = monday.partition("I have stopped all exercise and am telling Dana.")
    assert stopped
    assert "Now: " not in after
    assert "You can start again, says Dana: 20 stomps each side a day" in after
    assert re.search(
        r"from\s+Thu 11 March", after
    )  # the next of Monday and Thursday (the calendar)


def test_dana_gets_one_urgent_flag_with_cys_words_and_closes_it(printed: list[str]) -> None:
    chat = section(printed, "=== Dana")
    assert re.findall(r"#\d+ Urgent\. .*", chat) == ["#1 Urgent. Pain or a warning sign: Cy"]
    assert "Own words: “my hip”" in chat
    assert "Flag #1 is closed: Called." in chat


def test_the_joining_is_shown_once_and_what_is_left_out_is_counted(printed: list[str]) -> None:
    all_of_it = "\n".join(printed)
    assert all_of_it.count("Do you agree?") == 1
    assert all_of_it.count("Save this plan") == 1
    for name in ("Bo", "Cy", "Kim"):
        line = next(each for each in printed if re.match(rf"{name}\b.*not shown\.$", each))
        assert int(re.findall(r"(\d+) messages and taps", line)[0]) > 10


def test_no_line_is_wider_than_the_terminal(printed: list[str]) -> None:
    assert max(map(len, printed)) <= COLUMNS


def test_no_invitation_code_is_printed_whole(printed: list[str]) -> None:
    starts = [line for line in printed if "/start " in line]
    assert starts
    assert all(re.search(r"/start [\w-]{6}\.\.\.”", line) for line in starts)


def test_bo_agrees_on_another_day_and_the_digest_says_who_needs_her(printed: list[str]) -> None:
    bo, dana = section(printed, "=== Bo"), section(printed, "=== Dana")
    assert re.search(r"Is\s+Sat\s+13\s+March\s+OK\s+instead", bo)
    assert "Week 10: Mon 8 March to Sun 14 March. 3 clients, 2 need you." in dana
    assert "Bo needs you: week out of reach" in dana
    assert "2 of 2 days, 80 of 80 reps, 8 of 8 bouts" in dana  # Ann: two days of 40 in 4 bouts


def test_picture_table_and_page_are_written_and_are_what_they_say(printed: list[str]) -> None:
    assert sorted(FILES) == [
        "bo.pdf", "digest-2027-W10.csv", "digest-2027-W10.png", "digest-2027-W10.txt",
    ]  # fmt: skip
    assert FILES["bo.pdf"].startswith(b"%PDF-")
    assert FILES["digest-2027-W10.png"].startswith(b"\x89PNG")
    assert FILES["digest-2027-W10.csv"].decode("utf-8-sig").count("\r\n") == 4
    assert all(name in "\n".join(printed) for name in FILES)
