"""What is said to a person, as a value: catalogue ids with arguments, never words.

The same value is the outbox payload, the key into the catalogue and the text of the pseudo-locale.
Wording, language and buttons are chosen when the message leaves.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from enum import IntEnum

_Scalar = str | int | float | bool | None
Argument = _Scalar | Sequence["Argument"] | Mapping[str, "Argument"]
"""JSON values. Times are ISO wall-clock text in the reader's own zone; days are ISO dates."""


class Lane(IntEnum):
    """The order in which waiting messages leave (R3): the smallest first."""

    SAFETY = 0
    FLAG = 1
    ANSWER = 2
    PROMPT = 3
    REST = 4


@dataclass(frozen=True, slots=True)
class Text:
    """One catalogue text: its id and its arguments."""

    id: str
    args: Mapping[str, Argument] = field(default_factory=dict)


Message = tuple[Text, ...]
"""Texts that leave together, one after the other, in one chat message."""


def text(id_: str, /, **args: Argument) -> Text:
    """A catalogue text with its arguments as keywords."""
    return Text(id_, args)


def message(id_: str, /, **args: Argument) -> Message:
    """A message of one text."""
    return (text(id_, **args),)


def as_json(value: Message) -> list[dict[str, Argument]]:
    """The payload form: `[{"id": ..., "args": {...}}, ...]`."""
    return [{"id": each.id, "args": dict(each.args)} for each in value]


def from_json(payload: list[dict[str, Argument]]) -> Message:
    """The message back from its payload; unknown keys of later versions are ignored."""
    texts = []
    for each in payload:
        args = each.get("args", {})
        texts.append(Text(str(each["id"]), args if isinstance(args, dict) else {}))
    return tuple(texts)
