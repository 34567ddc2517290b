"""The buttons under the cards of exercises, for a clinician or an admin."""

from __future__ import annotations

from collections.abc import Callable

from bot.telegram.buttons.base import Args, Rows, button, in_rows

PICK = {"clinician": "hp", "admin": "gp"}
DRAWING = {"clinician": "hx", "admin": "gx"}
"""A button's verb says in which role it is pressed."""


def _exercises(args: Args) -> Rows:
    verb, exercises = PICK[str(args["role"])], args["exercises"]
    assert isinstance(exercises, list)  # noqa: S101 # written by pictures.screen
    return in_rows([button("exercise", f"{verb}:{each}", exercise=each) for each in exercises], 1)


def _card(args: Args) -> Rows:
    if not args.get("given", True):
        return []
    return [[button("use-drawing", f"{DRAWING[str(args['role'])]}:{args['exercise']}")]]


KEYBOARDS: dict[str, Callable[[Args], Rows]] = {
    "cards": _exercises,
    "own-card": _card,
    "own-card-kept": _card,
}
SHAPES: dict[str, str] = {"hp": "s", "hx": "s", "gp": "s", "gx": "s"}
