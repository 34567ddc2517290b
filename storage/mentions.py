"""Where a client is mentioned in what was sent to others, and what is left without her. Pure."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from typing import Any

SHORTEST = 3
"""Characters of what was typed that are looked for; a name is looked for as a whole word, however short."""
TYPED = frozenset({"words", "note", "name", "phone"})
"""Under these names stands what people typed."""
TEXT = frozenset({"id", "args"})
"""A catalogue text as it rests."""


@dataclass(frozen=True, slots=True)
class Hers:
    """What tells a client: her number, her name, her flags' numbers, and what was typed by or about her.

    `since`: nothing older (UTC) mentions her.
    """

    client: int
    name: str
    flags: frozenset[int]
    typed: frozenset[str]
    since: datetime


def cleaned(value: Any, hers: Hers, *, final: bool) -> Any:
    """A payload without what is about her; empty where one of its texts is about her alone.

    `final`: nobody waits for it any more, so that a name alone is enough to let it go; another client
    may have the same name.
    """
    if isinstance(value, list) and any(_is_text_about(each, hers, final) for each in value):
        return []
    return _without(value, hers, final)


def _is_text_about(value: Any, hers: Hers, final: bool) -> bool:
    return (
        isinstance(value, dict)
        and value.keys() <= TEXT
        and isinstance(value.get("args"), dict)
        and _is_about(value["args"], hers, final)
    )


def _is_about(args: dict[str, Any], hers: Hers, final: bool) -> bool:
    """Whether the arguments of a text, or a row of a list, name her."""
    if _number(args.get("client")) == hers.client or _number(args.get("person")) == hers.client:
        return True
    if _number(args.get("flag")) in hers.flags:
        return True
    named = args.get("name") == hers.name
    return named and (final or _number(args.get("id")) == hers.client)


def _number(value: Any) -> int | None:
    return value if isinstance(value, int) and not isinstance(value, bool) else None


def _without(value: Any, hers: Hers, final: bool) -> Any:
    if isinstance(value, list):
        kept = [
            each for each in value if not (isinstance(each, dict) and _is_about(each, hers, final))
        ]
        return [_without(each, hers, final) for each in kept]
    if isinstance(value, dict):
        return {name: _without(each, hers, final) for name, each in value.items()}
    return value


def strings(value: Any, name: str = "") -> Iterator[str]:
    """What people typed anywhere in a value: the texts under the names of `TYPED`."""
    if isinstance(value, dict):
        for key, each in value.items():
            yield from strings(each, key)
    elif isinstance(value, list | tuple):
        for each in value:
            yield from strings(each, name)
    elif isinstance(value, str) and name in TYPED and len(value) >= SHORTEST:
        yield value


def says(value: Any, hers: Hers) -> bool:
    """Whether a platform's update holds her name as a word, or something typed by or about her."""
    named = re.compile(rf"\b{re.escape(hers.name)}\b") if hers.name in hers.typed else None
    for text in _texts(value):
        if named is not None and named.search(text):
            return True
        if any(each in text for each in hers.typed if each != hers.name):
            return True
    return False


def _texts(value: Any) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        for each in value.values():
            yield from _texts(each)
    elif isinstance(value, list):
        for each in value:
            yield from _texts(each)
