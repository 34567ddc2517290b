"""The store: one transaction, and everything that can be asked inside it."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime
from typing import Protocol, TypeVar

from scheduler.domain.settings import Practice
from scheduler.ports.boxes import Inbox, Leases, Outbox
from scheduler.ports.nouns import (
    Days,
    Flags,
    Health,
    Invitations,
    Ledger,
    People,
    Plans,
    Questions,
    Taps,
)
from scheduler.ports.standing import Archive, Aside, Standings
from scheduler.ports.values import Json
from scheduler.ports.week import Companions, Digests, Pauses, Staffing, StepTests, Weeks

Result = TypeVar("Result")


class Book(Protocol):
    """Settings and the audit trail."""

    def practice(self) -> Practice: ...

    def put(self, name: str, value: str) -> None: ...

    def read(self, name: str) -> str | None: ...

    def audit(
        self, who: int | None, action: str, about: int | None, now: datetime, **change: Json
    ) -> None:
        """Append who did what to whom, with `before` and `after` where something changed."""
        ...

    def audited(self, who: int, action: str, about: int, since: datetime) -> bool:
        """Whether somebody is in the trail with this action about a person, at `since` or later."""
        ...


class Tx(Protocol):
    """One open transaction with everything that can be asked of the store."""

    people: People
    invitations: Invitations
    plans: Plans
    days: Days
    ledger: Ledger
    weeks: Weeks
    pauses: Pauses
    companions: Companions
    steptests: StepTests
    health: Health
    flags: Flags
    questions: Questions
    taps: Taps
    staff: Staffing
    digests: Digests
    outbox: Outbox
    inbox: Inbox
    leases: Leases
    aside: Aside
    standing: Standings
    archive: Archive
    book: Book


class Store(Protocol):
    async def run(self, work: Callable[[Tx], Result], *, alone: bool = False) -> Result:
        """Run `work` in one transaction: all of it is kept, or nothing if it raises.

        It may be run more than once. `alone`: it takes long, so that no other shall wait for its end.
        """
        ...
