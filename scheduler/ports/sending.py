"""The clock and the sender, and what can become of a message."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Protocol

from scheduler.domain.messages import Message
from scheduler.domain.people import Role


class Clock(Protocol):
    def now(self) -> datetime:
        """The present instant. Never goes back within one process."""
        ...


@dataclass(frozen=True, slots=True)
class Letter:
    """One message on its way: everything the sender needs, so that it reads nothing itself."""

    outbox_id: int
    chat: int
    language: str
    role: Role | None
    message: Message
    silent: bool = False
    edits: int | None = None
    """The platform's id of the message this one replaces; if that cannot be edited, it is sent anew."""


@dataclass(frozen=True, slots=True)
class Delivered:
    message_id: int


@dataclass(frozen=True, slots=True)
class TryLater:
    """Certainly not accepted; may be tried again after so long. `chat_only`: other chats may go on."""

    after: timedelta
    chat_only: bool = True


@dataclass(frozen=True, slots=True)
class Unreachable:
    """The person has blocked the bot or no longer exists there."""

    reason: str


@dataclass(frozen=True, slots=True)
class Refused:
    """Certainly not accepted, and will not be however often it is tried."""

    reason: str


@dataclass(frozen=True, slots=True)
class Unknown:
    """The connection ended after the request may have arrived."""

    reason: str


Delivery = Delivered | TryLater | Unreachable | Refused | Unknown

SEND_WITHIN = timedelta(seconds=45)
"""No send takes longer, whatever the platform does: the lease of what is being sent rests on it."""


class Sender(Protocol):
    async def send(self, letter: Letter) -> Delivery:
        """Try once, with no transaction open, and end within `SEND_WITHIN`.

        Every outcome is a value; only bugs raise.
        """
        ...
