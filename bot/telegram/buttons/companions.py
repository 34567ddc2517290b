"""The buttons under a companion exercise that is asked for."""

from __future__ import annotations

from collections.abc import Callable

from bot.telegram.buttons.base import Args, Rows, button, in_rows


def _asked(args: Args) -> Rows:
    key, day, rounds = args["companion"], args["day"], args["rounds"]
    assert isinstance(rounds, int)  # noqa: S101 # written by companions.ask
    some = [button("some-rounds", f"cd:{key}:{day}:{n}", done=n) for n in range(1, rounds)]
    return [
        [button("did-companion", f"cd:{key}:{day}:{rounds}", rounds=rounds)],
        *in_rows(some, 3),
        [button("not-today", f"cd:{key}:{day}:0"), button("how", f"hw:{key}")],
        [button("hurts", "hurt")],
    ]


KEYBOARDS: dict[str, Callable[[Args], Rows]] = {
    "ask-companion": _asked,
    "companion-noted": lambda _: [[button("hurts", "hurt")]],
}
SHAPES: dict[str, str] = {"cd": "ssi"}
