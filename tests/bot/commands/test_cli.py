"""What every command has in common: help, wrong use, a store that cannot be used. All ours."""

import os
import subprocess
import sys
from importlib.metadata import version
from pathlib import Path

import pytest

from bot.cli import COMMANDS, main
from tests.bot.commands.conftest import Boutwise

ROOT = Path(__file__).parents[3]
NEEDS_STORE = (["people"], ["migrate"], ["migrate", "--check"], ["run"])
INVITE = ["invite", "--role", "admin", "--name", "Kim"]
NOBODY_LISTENS = "postgresql://nobody@127.0.0.1:1/none"


def program(
    *words: str, out: int = subprocess.PIPE, **settings: str
) -> subprocess.CompletedProcess[str]:
    """`python -m bot WORDS` in a process of its own."""
    return subprocess.run(
        [sys.executable, "-m", "bot", *words],
        cwd=ROOT,
        env={"PATH": "/usr/bin:/bin", **settings},
        stdout=out,
        stderr=subprocess.PIPE,
        text=True,
        timeout=60,
        check=False,
    )


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_has_help_that_names_its_options(boutwise: Boutwise, name: str) -> None:
    told = boutwise(name, "--help")
    assert (told.code, told.err) == (0, "")
    assert told.out.startswith(f"usage: boutwise {name}")
    assert "--help" in told.out


def test_the_help_of_the_whole_lists_every_command_with_what_it_does(boutwise: Boutwise) -> None:
    told = boutwise("--help")
    assert (told.code, told.err) == (0, "")
    for name, does in COMMANDS.items():
        assert name in told.out
        assert does.split()[0] in told.out


def test_the_version_is_the_one_that_is_installed(boutwise: Boutwise) -> None:
    told = boutwise("--version")
    assert (told.code, told.out) == (0, f"{version('boutwise')}\n")


@pytest.mark.parametrize(
    "words",
    [
        [],
        ["carry"],
        ["--loud"],
        ["people", "--loud"],
        ["people", "Ann"],
        ["key", "two"],
        ["doctor", "now"],
        ["run", "--only", "dance"],
        ["migrate", "--chek", "x"],
        ["invite"],
        ["invite", "--role", "queen", "--name", "Ann"],
        ["invite", "--role", "admin"],
        ["understand"],
        ["understand", "five", "more"],
        ["rehearse", "--port", "many"],
        ["rehearse", "--port", "65536"],
        ["rehearse", "--port", "-1"],
    ],
)
def test_wrong_use_is_one_line_that_says_where_help_is(
    boutwise: Boutwise, words: list[str]
) -> None:
    told = boutwise(*words)
    assert (told.code, told.out) == (2, "")
    (line,) = told.faults
    assert line.startswith("boutwise")
    assert "help" in line or "--port" in line


@pytest.mark.parametrize("words", [*NEEDS_STORE, INVITE])
@pytest.mark.parametrize(
    ("url", "names"),
    [
        (NOBODY_LISTENS, "BOUTWISE_DATABASE_URL"),
        ("sqlite:///nowhere/clinic.db", "nowhere/clinic.db"),
        ("sqlite:///folder", "BOUTWISE_DATABASE_URL"),
        ("sqlite:///letter.txt", "BOUTWISE_DATABASE_URL"),
    ],
)
def test_a_database_that_does_not_answer_is_a_failure_in_one_line(
    boutwise: Boutwise, tmp_path: Path, words: list[str], url: str, names: str
) -> None:
    (tmp_path / "folder").mkdir()
    (tmp_path / "letter.txt").write_text("Dear Ann, this is no database at all.\n" * 50)
    told = boutwise(*words, DATABASE_URL=url, TOKEN="1:a")
    assert (told.code, told.out) == (1, "")
    (line,) = told.faults
    assert names in line


@pytest.mark.parametrize("words", [["people"], ["run"], INVITE])
def test_the_wrong_key_is_refused_by_name_and_without_the_key(
    boutwise: Boutwise, words: list[str]
) -> None:
    first, second = boutwise("key").out.strip(), boutwise("key").out.strip()
    assert boutwise("people", KEY=first).code == 0
    told = boutwise(*words, KEY=second, TOKEN="1:a")
    assert (told.code, told.out) == (2, "")
    (line,) = told.faults
    assert "BOUTWISE_KEY" in line
    assert first not in line
    assert second not in line
    assert boutwise("people", KEY=f"{second},{first}").code == 0


@pytest.mark.parametrize("words", [*NEEDS_STORE, INVITE])
def test_without_a_key_nothing_is_opened(
    boutwise: Boutwise, tmp_path: Path, words: list[str]
) -> None:
    told = boutwise(*words, KEY=None, TOKEN="1:a")
    assert (told.code, told.out) == (2, "")
    (line,) = told.faults
    assert "BOUTWISE_KEY is not set" in line
    assert not (tmp_path / "boutwise.db").exists()


def test_a_new_key_is_new_each_time_and_opens_a_database(boutwise: Boutwise) -> None:
    keys = {boutwise("key").out for _ in range(3)}
    assert len(keys) == 3
    for key in keys:
        assert key.endswith("\n")
        assert boutwise("people", KEY=key, DATABASE_URL=f"sqlite:///{key[:8]}.db").code == 0


def test_a_bug_is_not_hidden_behind_a_polite_line(monkeypatch: pytest.MonkeyPatch) -> None:
    def broken() -> str:
        raise ZeroDivisionError

    monkeypatch.setattr("bot.commands.key.new_key", broken)
    with pytest.raises(ZeroDivisionError):
        main(["key"])


def test_stopping_a_command_at_the_keyboard_ends_it_as_shells_expect(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    # Source: common practice, 128 + the number of SIGINT.
    def stopped() -> str:
        raise KeyboardInterrupt

    monkeypatch.setattr("bot.commands.key.new_key", stopped)
    assert main(["key"]) == 130


def test_the_module_is_the_program() -> None:
    ran = program("key")
    assert (ran.returncode, ran.stderr) == (0, "")
    assert len(ran.stdout.strip()) >= 43  # 32 bytes in base64 (arithmetic)


def test_the_program_refuses_with_its_exit_code_and_no_traceback() -> None:
    ran = program("people", BOUTWISE_KEY="none", BOUTWISE_CLOCK="yesterday")
    assert (ran.returncode, ran.stdout) == (2, "")
    (line,) = ran.stderr.splitlines()
    assert line.startswith("boutwise people: BOUTWISE_CLOCK must be `system` or an instant")


def test_a_reader_that_goes_away_is_no_fault() -> None:
    reader, writer = os.pipe()
    os.close(reader)
    ran = program("dose", "--total", "40", "--bout", "10", out=writer)
    os.close(writer)
    assert (ran.returncode, ran.stderr) == (0, "")
