"""The names of commands: each has one in every language (`command-x` with its attribute `name`).

The program knows a command by its English name; a person may type that of any language.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from fluent.syntax import ast

from bot.words.catalogue import LANGUAGES, catalogue

PREFIX = "command-"


def command_name(command: str, language: str) -> str:
    """What a command is called in a language; its own name in a language that we do not speak."""
    return _names(language).get(command, command) if language in LANGUAGES else command


def canonical(typed: str) -> str:
    """The command that is called so in any language; what no command is called comes back as it is."""
    return _by_name().get(typed, typed)


@cache
def _names(language: str) -> Mapping[str, str]:
    words = catalogue(language)
    return {
        entry.id.name.removeprefix(PREFIX): words.say(entry.id.name, {}, "name")
        for entry in words.resource.body
        if isinstance(entry, ast.Message)
        and entry.id.name.startswith(PREFIX)
        and any(each.id.name == "name" for each in entry.attributes)
    }


@cache
def _by_name() -> Mapping[str, str]:
    return {name: own for each in LANGUAGES for own, name in _names(each).items()}
