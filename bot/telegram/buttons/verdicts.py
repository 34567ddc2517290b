"""The buttons of a clinician's correction of a closed day."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from bot.telegram.buttons.base import Args, Rows, button
from scheduler.usecases.verdicts import CHOICES


def _days(args: Args) -> Rows:
    client = args["client"]
    closed: Any = args["closed"]
    days = [
        button("judged-day", f"jd:{client}:{each['day']}", day=each["day"], cell=each["cell"])
        for each in closed
    ]
    return [*([each] for each in days), [button("open-client", f"c:{client}")]]


def _choices(args: Args) -> Rows:
    client, day = args["client"], args["day"]
    choices = [button(f"verdict-{choice}", f"jv:{client}:{day}:{choice}") for choice in CHOICES]
    return [*([each] for each in choices), [button("back", f"jl:{client}")]]


KEYBOARDS: dict[str, Callable[[Args], Rows]] = {
    "judged-days": _days,
    "ask-verdict": _choices,
    "verdict-kept": lambda args: [
        [
            button("closed-days", f"jl:{args['client']}"),
            button("open-client", f"c:{args['client']}"),
        ]
    ],
}
SHAPES: dict[str, str] = {"jl": "i", "jd": "is", "jv": "iss"}
