"""What whoever runs the bot can ask of the store: how it stands now, and what was set aside (R1, R2)."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Protocol

from scheduler.domain.messages import Lane
from scheduler.ports.values import Json

LATE = timedelta(minutes=1)
"""A message that has been due for longer is late."""
LOST_WITHIN = timedelta(days=1)
"""Unknown and dropped messages are counted if they were due so recently: older ones wake nobody."""


@dataclass(frozen=True, slots=True)
class Standing:
    """How the store stands at one instant: numbers only, so that every process tells the same.

    `due` and `late` count, by lane, messages to somebody who can be reached that should have left by now,
    or `LATE` ago; `too_late` are prompts later than the practice allows, which leave no more. `unknown`
    and `dropped` (by the reason kept with them, which may be the platform's words) were due within
    `LOST_WITHIN`. `inbox` are updates received and not yet handled, the oldest at `inbox_oldest`;
    `aside` those set aside.
    """

    due: Mapping[Lane, int]
    late: Mapping[Lane, int]
    too_late: int
    unknown: int
    dropped: Mapping[str, int]
    inbox: int
    inbox_oldest: datetime | None
    aside: int
    flags_urgent: int
    flags_other: int


class Standings(Protocol):
    def at(self, now: datetime) -> Standing:
        """How everything stands. Costs what is waiting and what was lost, not what is past."""
        ...


@dataclass(frozen=True, slots=True)
class SetAside:
    """An update that could not be handled: whose chat it came from (`None` for a stranger's), and when."""

    update_id: int
    person: int | None
    received_at: datetime


class Aside(Protocol):
    """Updates that were set aside, until an admin has them tried again or drops them."""

    def count(self, since: datetime | None = None) -> int:
        """How many there are; with `since`, of those received at that instant or later."""
        ...

    def oldest(self, limit: int) -> tuple[SetAside, ...]: ...

    def get(self, update_id: int) -> SetAside | None:
        """One of them; `None` if it is not set aside, or not any more."""
        ...

    def again(self, update_id: int, now: datetime) -> bool:
        """Put one back into its chat's order, before what came later. False if it is not set aside."""
        ...

    def all_again(self, now: datetime) -> tuple[int, ...]:
        """Put all of them back; their numbers."""
        ...

    def drop(self, update_id: int) -> bool:
        """Let one rest for good as it is. False if it is not set aside."""
        ...


class Archive(Protocol):
    """All that is kept about one client."""

    def of(self, client: int) -> Mapping[str, tuple[Mapping[str, Json], ...]]:
        """Every row about a client, by section, as it rests: instants in UTC, days, numbers, JSON.

        The sections are listed in `scheduler.usecases.archive`.
        """
        ...

    def counts(self, client: int) -> Mapping[str, int]:
        """How many bouts done, reports and step tests of hers there are, without reading them."""
        ...

    def erase(self, client: int) -> None:
        """Remove every row of the client's, messages to and from her, and her mention in those to others.

        The audit trail keeps its lines about her number, without values. The client's row is held.
        """
        ...
