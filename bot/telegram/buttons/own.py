"""The buttons about a client's own data, and those of leaving and erasing (D1)."""

from __future__ import annotations

from collections.abc import Callable

from bot.telegram.buttons.base import Args, Rows, button


def _data(args: Args) -> Rows:
    return [[button("data-files", "mf")]] if args["records"] else []


KEYBOARDS: dict[str, Callable[[Args], Rows]] = {
    "data": _data,
    "ask-leave": lambda _: [[button("stay", "lx")], [button("leave", "lv")]],
    "ask-leave-sure": lambda _: [[button("stay", "lvx")], [button("leave-sure", "lvy")]],
    "ask-erase": lambda args: [
        [button("cancel", f"a:{args['person']}")],
        [button("yes-erase", f"ery:{args['person']}")],
    ],
    "erased": lambda _: [[button("all-people", "ap")]],
}
SHAPES: dict[str, str] = {
    "mf": "", "lv": "", "lx": "", "lvy": "", "lvx": "", "er": "i", "ery": "i",
}  # fmt: skip
