"""The lines of a vocabulary file `bot/text/hear_<language>.ftl`. Pure."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product


def lines_of(source: str) -> dict[str, list[str]]:
    """Key to its lines.

    Only what these files use of Fluent: reading them with the full parser costs 0.1 s. That they
    are good Fluent is tested with it.
    """
    lines: dict[str, list[str]] = {}
    key = ""
    for row in source.splitlines():
        if row.startswith("    "):
            lines[key].append(row.strip())
        elif row and not row.startswith("#"):
            key, equals, rest = row.partition(" =")
            if not equals or rest or key in lines:
                raise ValueError(f"cannot read this line, or its key stands twice: {row!r}")
            lines[key] = []
    return lines


def halves(line: str) -> tuple[str, str]:
    """What stands before and after the equals sign of a line."""
    left, _, right = line.partition(" = ")
    return left.strip(), right.strip()


def spelling_of(lines: list[str]) -> Iterator[tuple[tuple[str, ...], tuple[str, ...]]]:
    """What may be typed, and what it means, of lines like `cant|cannt = can not`."""
    for typed, meant in map(halves, lines):
        for words in product(*(part.split("|") for part in typed.split())):
            yield words, tuple(meant.split())
