"""The buttons of the step test."""

from __future__ import annotations

from collections.abc import Callable

from bot.telegram.buttons.base import Args, Rows, button

HURTS = [button("hurts", "hurt")]


def _page(args: Args) -> Rows:
    client = args["client"]
    home = button("step-not-home", f"th:{client}:0")
    if not args["home"]:
        home = button("step-home", f"th:{client}:1")
    return [[button("step-log", f"tl:{client}")], [home], [button("open-client", f"c:{client}")]]


def _ask_client(args: Args) -> Rows:
    client = args["client"]
    return [[button("step-no-time", f"tv:{client}")], [button("step-tests", f"tp:{client}")]]


def _kept(args: Args) -> Rows:
    client = args["client"]
    return [
        [button("step-take-back", f"tb:{client}:{args['test']}")],
        [button("step-tests", f"tp:{client}"), button("open-client", f"c:{client}")],
    ]


KEYBOARDS: dict[str, Callable[[Args], Rows]] = {
    "step-due": lambda _: [[button("step-start", "st")], [button("step-later", "sn")]],
    "step-allowed": lambda _: [[button("step-start", "st")]],
    "ask-step-ready": lambda _: [[button("step-ready", "sg")], [button("step-later", "sn")]],
    "ask-step-times": lambda _: [[button("step-later", "sn")], HURTS],
    "step-noted": lambda args: [[button("step-take-back", f"sb:{args['test']}")], HURTS],
    "step-taken-back": lambda _: [[button("step-start", "st")]],
    "step-page": _page,
    "ask-client-step": _ask_client,
    "client-step-noted": _kept,
}
SHAPES: dict[str, str] = {
    "st": "", "sg": "", "sn": "", "sb": "i", "tp": "i", "tl": "i", "tv": "i", "th": "is", "tb": "ii",
}  # fmt: skip
