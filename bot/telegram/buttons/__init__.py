"""The buttons under a message, derived from its text ids and arguments; never stored, never trusted.

Button data are short and stateless: a verb and its arguments, at most 64 bytes. Who pressed and in what
state things are is looked up again when the press arrives.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from bot.telegram.buttons import (
    admin,
    breaks,
    client,
    clinician,
    companions,
    cover,
    digest,
    own,
    pictures,
    setaside,
    steps,
    verdicts,
    week,
    writing,
)
from bot.telegram.buttons.base import Args, Button, Rows
from scheduler.domain.messages import Message

__all__ = ["KEYBOARDS", "SHAPES", "Button", "Rows", "rows", "well_formed"]

KEYBOARDS: dict[str, Callable[[Args], Rows]] = {
    **client.KEYBOARDS,
    **week.KEYBOARDS,
    **breaks.KEYBOARDS,
    **companions.KEYBOARDS,
    **digest.KEYBOARDS,
    **clinician.KEYBOARDS,
    **writing.KEYBOARDS,
    **admin.KEYBOARDS,
    **cover.KEYBOARDS,
    **setaside.KEYBOARDS,
    **verdicts.KEYBOARDS,
    **pictures.KEYBOARDS,
    **steps.KEYBOARDS,
    **own.KEYBOARDS,
}
"""From the id of a text to its buttons. A message without an entry has none."""


def rows(message: Message) -> Rows:
    """The buttons of a message: those of its last text that has any."""
    for each in reversed(message):
        build = KEYBOARDS.get(each.id)
        if build is not None:
            return build(each.args)
    return []


SHAPES: dict[str, str] = {
    **week.SHAPES,
    **breaks.SHAPES,
    **companions.SHAPES,
    **digest.SHAPES,
    **writing.SHAPES,
    **cover.SHAPES,
    **setaside.SHAPES,
    **verdicts.SHAPES,
    **pictures.SHAPES,
    **steps.SHAPES,
    **own.SHAPES,
    **dict.fromkeys(("all", "few", "lat", "skp", "n", "m", "u"), "i"),
    **dict.fromkeys(
        ("c", "cn", "cr", "cp", "ch", "rel", "fx", "a", "an", "ia", "d", "dd", "ic"), "i"
    ),
    **dict.fromkeys(
        ("sure", "ok", "pass", "t", "hw", "zs", "zn", "df", "ds", "s", "ir", "ln"), "s"
    ),
    **dict.fromkeys(("hurt", "fell", "oops", "hq", "how", "cl", "dc", "dp", "dx", "ap"), ""),
    **dict.fromkeys(("p", "f", "r", "ro", "dv"), "ss"),
    "cc": "is",
    "rd": "ii",
    "rf": "iis",
    "fo": "is",
}
"""What each verb carries: `i` a whole number, `s` a word."""
LONGEST_NUMBER = 18
"""Digits of a number that still fits the database's 64 bits."""


def well_formed(verb: str, args: Sequence[str]) -> bool:
    """Whether data could come from a button of ours; what they name is checked where it is used."""
    shape = SHAPES.get(verb)
    if shape is None or len(shape) != len(args):
        return False
    return all(
        kind == "s" or (arg.isascii() and arg.isdecimal() and len(arg) <= LONGEST_NUMBER)
        for kind, arg in zip(shape, args, strict=True)
    )
