"""The README and the page for developers say what is there, all of it and nothing else. All ours."""

import argparse
import importlib
import re
import shlex
import subprocess
import tomllib
from pathlib import Path

import pytest

from bot.cli import COMMANDS
from bot.settings import DEFAULTS, PREFIX

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
PAGES = {"README.md": README, "DEVELOPERS.md": DEVELOPERS}
FENCE = re.compile(r"```sh\n(.*?)```", re.DOTALL)
COMMAND = re.compile(r"`(?:export \w+=\$\()?boutwise ([a-z]+)([^`]*)`")
SHELL_SCRIPT = re.compile(r"`?sh (\S+\.sh)")
LINK = re.compile(r"\[[^]]+\]\(([^)#]+)[^)]*\)")
VARIABLE = re.compile(r"BOUTWISE_[A-Z_]+")
OPTION = re.compile(r"--[a-z]+")
ELSEWHERE = {
    f"BOUTWISE_{name}"
    for name in (
        *("REQUIRE", "KILLS", "JOURNEYS", "FORGED", "FAILURES", "STEPS", "STEPS_ON", "ZONES"),
        *("BACKLOG", "NAUGHTY", "WORKER_KILLS", "REPLIES", "CORRUPTIONS"),
    )
}
"""Variables of the test run."""


def options(command: str) -> set[str]:
    """The options that a command has, from its own parser."""
    parser = argparse.ArgumentParser()
    importlib.import_module(f"bot.commands.{command}").add(parser.add_subparsers())
    (subparsers,) = (
        each for each in parser._actions if isinstance(each, argparse._SubParsersAction)
    )
    return {
        option
        for action in subparsers.choices[command]._actions
        for option in action.option_strings
        if option.startswith("--")
    }


def rows(page: str, heading: str) -> list[str]:
    """The first cells of the table below a row that begins with `heading`."""
    lines = page.splitlines()
    start = next(n for n, line in enumerate(lines) if line.startswith(f"| {heading} "))
    cells: list[str] = []
    for line in lines[start + 2 :]:
        if not line.startswith("|"):
            return cells
        cells.append(line.split("|")[1].strip())
    return cells


def test_the_table_of_commands_has_every_command_once_and_no_other() -> None:
    named = [re.fullmatch(r"`boutwise ([a-z]+)`", cell) for cell in rows(README, "command")]
    assert sorted(found[1] for found in named if found) == sorted(COMMANDS)
    assert all(named)


def test_every_command_that_is_written_anywhere_exists_with_its_options() -> None:
    for name, page in PAGES.items():
        for command, rest in COMMAND.findall(page):
            assert command in COMMANDS, (name, command)
            assert set(OPTION.findall(rest)) <= options(command), (name, command, rest)


def test_the_options_beside_a_command_in_the_table_are_its_own() -> None:
    for line in README.splitlines():
        if found := re.match(r"\| `boutwise ([a-z]+)` \|(.*)", line):
            assert set(OPTION.findall(found[2])) <= options(found[1]), line


def test_every_setting_is_named_and_no_other() -> None:
    variables = {PREFIX + name for name in DEFAULTS}
    assert {each.removesuffix("_FILE") for each in VARIABLE.findall(README)} == variables
    assert set(VARIABLE.findall(DEVELOPERS)) <= variables | ELSEWHERE


def test_the_table_of_settings_tells_the_defaults_that_hold() -> None:
    told = {}
    for line in README.splitlines():
        cells = [cell.strip().strip("`") for cell in line.split("|")]
        if len(cells) > 3 and cells[1].startswith(PREFIX):
            told[cells[1].removeprefix(PREFIX)] = cells[2]
    assert told["BOT_API_URL"] == "the platform's own"
    told["BOT_API_URL"] = DEFAULTS["BOT_API_URL"]
    assert told == DEFAULTS


@pytest.mark.parametrize("name", PAGES)
def test_every_script_that_is_called_is_there_and_is_a_shell_script(name: str) -> None:
    scripts = set(SHELL_SCRIPT.findall(PAGES[name]))
    assert scripts
    for script in scripts:
        checked = subprocess.run(["/bin/sh", "-n", str(ROOT / script)], check=False)
        assert checked.returncode == 0, script


def test_the_lines_to_type_call_what_is_there() -> None:
    lines = [line for block in FENCE.findall(README) for line in block.splitlines() if line]
    assert len(lines) == 2  # "two commands"
    for line in lines:
        program, script, *_ = shlex.split(line, comments=True)
        assert program == "sh"
        assert (ROOT / script).is_file()


def test_the_files_that_pip_is_given_are_there() -> None:
    files = re.findall(r"-r ([\w.-]+)", README)
    assert files
    assert all((ROOT / each).is_file() for each in files)
    assert "--hash=sha256:" in (ROOT / files[0]).read_text(encoding="utf-8")


@pytest.mark.parametrize("name", PAGES)
def test_every_link_to_a_file_leads_somewhere(name: str) -> None:
    for target in LINK.findall(PAGES[name]):
        assert target.startswith("https://") or (ROOT / target).exists(), target
    assert LINK.findall(README)


def test_every_dependency_has_its_reason() -> None:
    """Each of the program's is named in the table or the sentences under it, and each for development."""
    _, _, reasons = DEVELOPERS.partition("## Why each dependency")
    reasons = plain(reasons)
    extras = PROJECT["optional-dependencies"]
    for requirement in [*PROJECT["dependencies"], *extras["dev"]]:
        found = re.match(r"[A-Za-z0-9._-]+", requirement)
        assert found is not None
        package = plain(found[0]).removeprefix("types ").removeprefix("python ")
        assert package in reasons or plain(found[0]) in reasons, requirement


def test_every_directory_of_the_tree_is_on_the_map() -> None:
    listed = subprocess.run(
        ["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=False
    )
    if listed.returncode:  # an archive without its history
        names = {path.name for path in ROOT.iterdir() if (path / "__init__.py").is_file()}
    else:
        names = {line.split("/")[0] for line in listed.stdout.splitlines() if "/" in line}
    visible = {name for name in names if not name.startswith(".")}
    assert visible >= {"bot", "scheduler", "storage", "tests"}
    for name in visible:
        assert f"{name}/" in DEVELOPERS, name


def plain(words: str) -> str:
    """Small letters, with every hyphen, dot and underscore a space."""
    return re.sub(r"[-._]", " ", words.lower())


def test_every_module_that_the_map_names_is_there() -> None:
    """The block of the map: a directory, and below it, indented, what is in it."""
    block = re.search(r"## The map.*?```\n(.*?)```", DEVELOPERS, re.DOTALL)
    assert block is not None
    top = ""
    for line in block[1].splitlines():
        indented = line.startswith("  ")
        names = re.match(r"\s*((?:[\w.]+/?\s)+?)\s", line + "  ")
        assert names is not None, line
        if not indented:
            top = names[1].strip()
            assert (ROOT / top).is_dir()
            continue
        for name in names[1].split():
            path = ROOT / top / name
            assert path.exists() or path.with_suffix(".py").exists(), line
