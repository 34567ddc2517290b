"""One button, and how buttons are laid out in rows."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from scheduler.domain.messages import Argument, Text, text

NUMBERS_A_ROW = 6


@dataclass(frozen=True, slots=True)
class Button:
    """One button: the text of its label and the data that come back when it is tapped."""

    label: Text
    data: str


Rows = list[list[Button]]
Args = Mapping[str, Argument]


def button(label: str, data: str, /, **args: Argument) -> Button:
    return Button(text(f"button-{label}", **args), data)


def in_rows(buttons: Sequence[Button], width: int) -> Rows:
    return [list(buttons[i : i + width]) for i in range(0, len(buttons), width)]


def numbers(low: int, high: int, verb: str, width: int = NUMBERS_A_ROW) -> Rows:
    return in_rows([button("number", f"{verb}:{n}", number=n) for n in range(low, high + 1)], width)


def yes_no(verb: str) -> Rows:
    return [[button("yes", f"{verb}:1"), button("no", f"{verb}:0")]]


def turns(args: Args, verb: str) -> Rows:
    """Back and on, under a list with pages; a search shows its first page only."""
    page, pages = args.get("page", 1), args.get("pages", 1)
    assert isinstance(page, int) and isinstance(pages, int)  # noqa: S101, PT018 # of our own making
    if args.get("searched"):
        return []
    row = [button("page-back", f"{verb}:{page - 2}")] if page > 1 else []
    row += [button("page-on", f"{verb}:{page}")] if page < pages else []
    return [row] if row else []
