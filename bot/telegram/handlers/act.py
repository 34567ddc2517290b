"""What a person did, with everything a handler needs to answer it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import datetime

from bot.telegram.incoming import Incoming
from scheduler.domain.people import Person
from scheduler.domain.reply import Reply
from scheduler.ports import Tx


@dataclass(frozen=True, slots=True)
class Act:
    """One press or message, by one person in the role it is meant for, inside one open transaction.

    `args` are the arguments of a press (see `buttons.SHAPES`); `now` is the instant it is handled (UTC).
    """

    tx: Tx
    who: Person
    update: Incoming
    now: datetime
    args: Sequence[str] = ()

    def number(self, place: int) -> int:
        """A numeric argument of the press."""
        return int(self.args[place])


Press = Callable[[Act], Reply]
