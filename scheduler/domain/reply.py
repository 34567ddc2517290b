"""What a use case answers to the person who acted."""

from __future__ import annotations

from dataclasses import dataclass

from scheduler.domain.messages import Argument, Lane, Message, text


@dataclass(frozen=True, slots=True)
class Reply:
    """An answer as a value: its message, the lane it leaves by, and whether it replaces what was tapped.

    What a person can get wrong is a Reply too, never an exception.
    """

    message: Message
    lane: Lane = Lane.ANSWER
    in_place: bool = True
    """Whether the answer to a tap is written over the message that was tapped."""


def reply(id_: str, /, **args: Argument) -> Reply:
    """A reply of one text."""
    return Reply((text(id_, **args),))
