"""What can be asked of the store about weeks, breaks, companions, a clinician's times and digests."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, datetime
from typing import Protocol

from scheduler.domain.people import Cover, Pause, Staff
from scheduler.domain.steptest import StepTest
from scheduler.ports.values import ClientWeek, CompanionEntry, Json, WeekPlan


class Weeks(Protocol):
    def get(self, client: int, start: date) -> WeekPlan | None: ...

    def save(self, week: WeekPlan) -> None:
        """Insert or replace the client's week (one row a client and first day)."""
        ...

    def of_clients(self, clients: Sequence[int], first: date, last: date) -> tuple[ClientWeek, ...]:
        """What happened to these clients from the first to the last day, in the order given.

        A fixed number of queries however many they are.
        """
        ...


class Pauses(Protocol):
    def add(self, pause: Pause) -> Pause:
        """Keep a new break (its id is given here)."""
        ...

    def end(self, pause: int, last: date, now: datetime) -> None:
        """End a break early: `last` is its last day now."""
        ...

    def of(self, client: int, since: date) -> tuple[Pause, ...]:
        """Breaks with a day on or after `since`, the earliest first."""
        ...


class Companions(Protocol):
    def log(self, entry: CompanionEntry) -> bool:
        """Append; False if the same `source` is there already."""
        ...

    def between(self, client: int, first: date, last: date) -> tuple[CompanionEntry, ...]:
        """The lines that count: of each day and companion the last."""
        ...


class StepTests(Protocol):
    def add(self, test: StepTest, source: str) -> StepTest | None:
        """Keep a new test (its id is given here); `None` if the same `source` is there already."""
        ...

    def of(self, client: int) -> tuple[StepTest, ...]:
        """The client's tests that were not taken back, the oldest first."""
        ...

    def take_back(self, test: int, now: datetime) -> bool:
        """Let a test count nowhere from now on; False if it was taken back before."""
        ...


class Staffing(Protocol):
    def get(self, person: int) -> Staff:
        """A clinician's own times, the defaults if she has set none."""
        ...

    def save(self, staff: Staff) -> None: ...

    def due(self, now: datetime, limit: int) -> tuple[int, ...]:
        """Clinicians whose `wake_at` has come, the longest waiting first."""
        ...

    def next_wake(self) -> datetime | None: ...

    def cover(self, cover: Cover) -> Cover:
        """Keep a new cover (its id is given here)."""
        ...

    def covers(self, clinician: int) -> tuple[Cover, ...]:
        """Those who cover a clinician and have not been revoked, the earliest first; ended dates included."""
        ...

    def covered_by(self, colleague: int) -> tuple[Cover, ...]:
        """Whom a colleague covers, not revoked; ended dates included."""
        ...

    def cover_of(self, cover: int) -> Cover | None:
        """A cover by its number, ended ones included."""
        ...

    def end_cover(self, cover: int, now: datetime) -> bool: ...


class Digests(Protocol):
    def keep(self, clinician: int, week: date, body: Json, now: datetime) -> int | None:
        """Keep the digest of a week that begins on a day; `None` if there is one already (I8)."""
        ...

    def get(self, digest: int) -> tuple[int, date, Json] | None:
        """A digest's clinician, week and body."""
        ...

    def of(self, clinician: int, week: date) -> tuple[int, Json] | None:
        """The number and body of a clinician's digest of a week."""
        ...
