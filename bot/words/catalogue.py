"""One language's texts, read once from its Fluent file."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from copy import copy
from functools import cache, cached_property
from importlib import resources
from types import MappingProxyType

from fluent.runtime import FluentBundle, FluentResource
from fluent.syntax import ast

OWN_NAME = re.compile(r"^-language = (.+)$", re.MULTILINE)


def _languages() -> Iterator[tuple[str, str]]:
    """Every file of what we say is a language; its own name for itself stands near the top of it."""
    files = (each for each in resources.files("bot.text").iterdir() if each.name.endswith(".ftl"))
    for file in sorted(files, key=lambda each: each.name):
        if file.name.startswith("hear_"):
            continue
        name = OWN_NAME.search(file.read_text(encoding="utf-8"))
        if name is not None:
            yield file.name.removesuffix(".ftl"), name.group(1)


LANGUAGES: Mapping[str, str] = MappingProxyType(dict(_languages()))
"""The languages of the menu, each by its own name. Somebody with another one reads English."""


class MissingText(LookupError):  # noqa: N818 # named after what is missing
    """The catalogue of `language` cannot say `id`: no such text, or an argument of it is missing."""

    def __init__(self, id_: str, language: str, why: str) -> None:
        super().__init__(f"{id_} in {language}: {why}")
        self.id = id_
        self.language = language


class Catalogue:
    """The texts of one language."""

    def __init__(self, language: str, source: str) -> None:
        """Read Fluent `source`; ValueError shows the place that cannot be read."""
        self.language = language
        self.resource = FluentResource(source)
        junk = [str(entry.content) for entry in self.resource.body if isinstance(entry, ast.Junk)]
        if junk:
            raise ValueError(f"{language}: cannot read {junk[0].strip()[:80]!r}")
        self._bundle = FluentBundle([language], use_isolating=False)
        self._bundle.add_resource(self.resource)
        self.short = False

    @cached_property
    def narrow(self) -> Catalogue:
        """The same texts for narrow places: the attribute `short` of a piece that has one."""
        narrow = copy(self)
        narrow.short = True
        return narrow

    def say(self, id_: str, args: Mapping[str, str | int | float], attribute: str = "") -> str:
        """A text, or one of its attributes, in words. MissingText if it or an argument is missing."""
        if not self._bundle.has_message(id_):
            raise MissingText(id_, self.language, "no such text")
        found = self._bundle.get_message(id_)
        if self.short and not attribute and "short" in found.attributes:
            attribute = "short"
        pattern = found.attributes.get(attribute) if attribute else found.value
        if pattern is None:
            raise MissingText(id_, self.language, f"no {attribute or 'value'}")
        said, errors = self._bundle.format_pattern(pattern, dict(args))
        if errors:
            raise MissingText(id_, self.language, "; ".join(str(error) for error in errors))
        return str(said)


@cache
def catalogue(language: str) -> Catalogue:
    """The catalogue of a language that we speak."""
    source = resources.files("bot.text").joinpath(f"{language}.ftl")
    return Catalogue(language, source.read_text(encoding="utf-8"))
