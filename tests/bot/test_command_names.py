"""Names of commands by language. What a name may be: BotCommand of the Bot API (`botapi.json`, read)."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from bot.telegram.handlers import language as choice
from bot.telegram.handlers.dispatch import HANDLERS, command_of
from bot.words import LANGUAGES
from bot.words.commands import canonical, command_name

COMMANDS = sorted({name for module in (*HANDLERS.values(), choice) for name in module.COMMANDS})
ALLOWED = re.compile(r"[a-z0-9_]{1,32}")
TEXTS = Path(__file__).parents[2] / "bot" / "text"
IN_A_TEXT = re.compile(r"(?<![\w/])/([a-z]{2,})")


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_command_has_a_name_that_the_platform_takes_and_that_means_it(language: str) -> None:
    for command in COMMANDS:
        name = command_name(command, language)
        assert ALLOWED.fullmatch(name), name
        assert canonical(name) == command, name


def test_no_two_commands_have_one_name_in_whatever_languages() -> None:
    meant: dict[str, set[str]] = {}
    for language in LANGUAGES:
        for command in COMMANDS:
            meant.setdefault(command_name(command, language), set()).add(command)
    assert {name: whose for name, whose in meant.items() if len(whose) > 1} == {}


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_command_that_a_text_names_is_called_so_in_its_language(language: str) -> None:
    text = "".join(
        line
        for line in (TEXTS / f"{language}.ftl")
        .read_text(encoding="utf-8")
        .splitlines(keepends=True)
        if not line.startswith("#")
    )
    named = set(IN_A_TEXT.findall(text))
    known = {command_name(command, language) for command in COMMANDS} | {"start", "role"}
    assert named
    assert named <= known, named - known


def test_an_unknown_command_and_the_name_of_the_bot_change_nothing() -> None:
    assert command_of("/semana@some_bot") == ("week", "")
    assert command_of("/teapot now") == ("teapot", "now")
    assert command_of("semana") == ("", "")
    assert command_name("week", "qps") == "week"
