"""The buttons of an admin's screens about cover."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from bot.telegram.buttons.base import Args, Rows, button, in_rows
from scheduler.usecases.cover import LENGTHS


def _cover(args: Args) -> Rows:
    covers: Any = args["covers"]
    colleagues: Any = args["colleagues"]
    person = args["person"]
    return [
        *([button("end-cover", f"cve:{each['id']}", name=each["name"])] for each in covers),
        *(
            [button("cover-by", f"cvc:{person}:{each['id']}", name=each["name"])]
            for each in colleagues
        ),
        [button("to-person", f"a:{person}"), button("all-people", "ap")],
    ]


def _until(args: Args) -> Rows:
    verb = f"cvu:{args['person']}:{args['colleague']}"
    weeks = [button("weeks", f"{verb}:{days}", number=days // 7) for days in LENGTHS]
    return [
        [button("no-end", f"{verb}:0")],
        *in_rows(weeks, 3),
        [button("cancel", f"cv:{args['person']}")],
    ]


def _to_cover(args: Args) -> Rows:
    return [[button("cover", f"cv:{args['person']}"), button("all-people", "ap")]]


KEYBOARDS: dict[str, Callable[[Args], Rows]] = {
    "cover": _cover,
    "ask-cover-until": _until,
    "cover-kept": _to_cover,
}
SHAPES: dict[str, str] = {"cv": "i", "cvc": "ii", "cvu": "iii", "cve": "i"}
