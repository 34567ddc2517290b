"""The buttons under words between a clinician and a client."""

from __future__ import annotations

from collections.abc import Callable

from bot.telegram.buttons.base import Args, Rows, button


def _from_client(args: Args) -> Rows:
    client = args["client"]
    return [[button("write", f"w:{client}"), button("open-client", f"c:{client}")]]


def _to_client(args: Args) -> Rows:
    return [[button("open-client", f"c:{args['client']}")]]


KEYBOARDS: dict[str, Callable[[Args], Rows]] = {
    "from-client": _from_client,
    "words-sent": _from_client,
    "ask-words": _to_client,
    "write-blocked": _to_client,
    "write-not-there": _to_client,
    "from-clinician": lambda args: [[button("reply", f"re:{args['writer']}")]],
}
SHAPES: dict[str, str] = {"w": "i", "re": "i"}
