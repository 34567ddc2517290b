"""The buttons of an admin's screens about updates that were set aside."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from bot.telegram.buttons.base import Args, Button, Rows, button


def _all() -> Button:
    return button("set-aside", "xl")


def _list(args: Args) -> Rows:
    updates: Any = args["updates"]
    each = [
        [button("aside", f"x:{row['update']}", name=row["name"], update=row["update"])]
        for row in updates
    ]
    return [*each, [button("try-all", "xa")]] if each else []


def _one(args: Args) -> Rows:
    update = args["update"]
    return [[button("try-again", f"xr:{update}"), button("drop", f"xd:{update}")], [_all()]]


def _drop(args: Args) -> Rows:
    update = args["update"]
    return [[button("yes-drop", f"xx:{update}"), button("cancel", f"x:{update}")]]


KEYBOARDS: dict[str, Callable[[Args], Rows]] = {
    "set-aside": lambda _: [[_all()]],
    "aside": _list,
    "aside-one": _one,
    "ask-drop": _drop,
    "aside-again": lambda _: [[_all()]],
    "aside-dropped": lambda _: [[_all()]],
    "aside-over": lambda _: [[_all()]],
}
SHAPES: dict[str, str] = {"xl": "", "xa": "", "x": "i", "xr": "i", "xd": "i", "xx": "i"}
