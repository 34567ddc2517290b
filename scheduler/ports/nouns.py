"""What can be asked of the store about people, plans, days and health: one class a noun."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, datetime
from typing import Protocol

from scheduler.domain.days import Bout, Day, Entry
from scheduler.domain.flags import Flag
from scheduler.domain.people import Clearance, Client, Hold, Invitation, Person
from scheduler.domain.plan import Plan
from scheduler.ports.values import Json, PlanVersion, Question, Tap


class GoneError(LookupError):
    """There is no such client, or not any more: the record was erased."""


class People(Protocol):
    def add(self, person: Person, client: Client | None) -> Person:
        """Keep a new person (its id is given here), with the client's record for a client."""
        ...

    def get(self, person: int) -> Person | None: ...

    def save(self, person: Person) -> None: ...

    def of_account(self, account: int) -> tuple[Person, ...]:
        """The persons that speak through this account, the acting one first."""
        ...

    def everyone(self) -> tuple[Person, ...]: ...

    def staff(self) -> tuple[Person, ...]:
        """Everybody but the clients: few, however many clients there are."""
        ...

    def caseload(self, clinician: int) -> tuple[Person, ...]:
        """The clinician's clients, discharged and departed ones left out, by name."""
        ...

    def lock(self, client: int) -> Client:
        """The client's record, held for this transaction. GoneError if there is none.

        Every use case that changes a client calls this first, so that a clinician's hold and the
        client's own answer never overtake each other.
        """
        ...

    def client(self, client: int) -> Client: ...

    def save_client(self, client: Client) -> None:
        """Keep the record. The clinician is the person's: `save` changes her, here she is left alone."""
        ...

    def due(self, now: datetime, limit: int) -> tuple[int, ...]:
        """Clients whose `wake_at` has come, the longest waiting first."""
        ...

    def next_wake(self) -> datetime | None:
        """The earliest `wake_at` of all clients."""
        ...


class Invitations(Protocol):
    def add(self, code_hash: str, invitation: Invitation) -> None: ...

    def find(self, code_hash: str) -> Invitation | None: ...

    def use(self, code_hash: str, now: datetime) -> bool:
        """True for exactly one caller, and only before the invitation expires."""
        ...

    def withdraw(self, person: int) -> None:
        """End the person's unused invitations."""
        ...

    def guessed(self, account: int, now: datetime) -> int:
        """Count a guess, right or wrong; how many from this account in the last hour, this one included."""
        ...


class Plans(Protocol):
    def add(
        self, client: int, plan: Plan, valid_from: date, by: int, at: datetime
    ) -> PlanVersion: ...

    def on(self, client: int, day: date) -> PlanVersion | None:
        """The version in force on a day: the newest of those whose `valid_from` has come by then.

        So a smaller dose that was prescribed last is not undone by an older version dated later.
        """
        ...

    def latest(self, client: int) -> PlanVersion | None: ...

    def version(self, plan: int) -> PlanVersion: ...

    def clear(self, clearance: Clearance) -> None: ...

    def clearance(self, client: int) -> Clearance | None:
        """The newest clearance, lapsed or not."""
        ...

    def lapse(self, client: int, reason: str, now: datetime) -> None: ...


class Days(Protocol):
    def get(self, client: int, day: date) -> Day | None: ...

    def save(self, day: Day) -> None:
        """Insert or replace the client's day (one row a client and day)."""
        ...

    def bouts(self, client: int, day: date) -> tuple[Bout, ...]:
        """Every prompt of the day, asked or waiting, by `n`."""
        ...

    def bout(self, bout: int) -> Bout | None: ...

    def add_bout(self, bout: Bout) -> Bout:
        """Keep a new prompt (its id is given here); (client, day, n) is unique."""
        ...

    def save_bout(self, bout: Bout) -> None: ...

    def open_bouts(self, client: int) -> tuple[Bout, ...]:
        """Prompts of any day that are waiting or asked."""
        ...

    def bout_of_message(self, client: int, message_id: int) -> Bout | None:
        """The client's prompt that the platform accepted under this message id."""
        ...

    def between(self, client: int, first: date, last: date) -> tuple[Day, ...]:
        """The client's days that began, from the first to the last, in order."""
        ...

    def judged(self, client: int, last: int) -> tuple[Day, ...]:
        """The client's latest closed days, at most so many, newest first."""
        ...

    def last_prompt_at(self, client: int, day: date) -> datetime | None:
        """When the last prompt of the day that was not withdrawn was accepted."""
        ...

    def last_beside(self, client: int, day: date) -> datetime | None:
        """When something of a day within two of this one, but not of it, was last asked or done.

        Prompts that were withdrawn and entries that were voided do not count.
        """
        ...


class Ledger(Protocol):
    def log(self, entry: Entry) -> Entry | None:
        """Append; `None` if the same `source` is in the ledger already."""
        ...

    def void(self, entry: int, source: str, at: datetime) -> bool:
        """Append the correction that voids an entry; False if it was voided before."""
        ...

    def day(self, client: int, day: date) -> tuple[Entry, ...]:
        """The entries of a day that stand, oldest first."""
        ...

    def between(self, client: int, first: date, last: date) -> Mapping[date, int]:
        """Reps that stand on each day from first to last that has any."""
        ...

    def of_message(self, client: int, message_id: int) -> tuple[Entry, ...]:
        """The entries that stand and were logged by this chat message."""
        ...

    def latest(self, client: int, day: date) -> Entry | None:
        """Of the entries of a day that stand, the one that was logged last."""
        ...


class Health(Protocol):
    def report(self, client: int, kind: str, day: date, at: datetime, body: Json) -> int:
        """Keep what was said about pain, a sign or a fall. Only the clinician corrects it."""
        ...

    def holds_since(self, client: int, since: datetime) -> tuple[Hold, ...]:
        """The holds that are open, or were released at `since` or later."""
        ...

    def reports(self, client: int, since: date) -> tuple[tuple[str, date, datetime, Json], ...]: ...

    def hold(self, client: int, reason: str, movement: str | None, now: datetime) -> bool:
        """Open a hold; False if the same one (all exercise, or this movement) is open already."""
        ...

    def holds(self, client: int) -> tuple[Hold, ...]:
        """The open holds."""
        ...

    def release(self, client: int, by: int, now: datetime) -> int:
        """Release every open hold; how many there were."""
        ...


class Flags(Protocol):
    def open(self, flag: Flag) -> Flag | None:
        """Keep a new flag (its number is given here); `None` if its episode has one open already."""
        ...

    def get(self, flag: int) -> Flag | None: ...

    def of_client(self, client: int) -> tuple[Flag, ...]:
        """The client's open flags, oldest first."""
        ...

    def close(self, flag: int, outcome: str, by: int, note: str, now: datetime) -> bool: ...

    def close_episode(
        self, client: int, episode: str, outcome: str, by: int, now: datetime
    ) -> int | None:
        """Close the open flag of an episode by itself; its number, `None` if none was open."""
        ...

    def had(self, client: int, episode: str) -> bool:
        """Whether an episode ever had a flag, open or closed."""
        ...

    def between(self, client: int, since: datetime, until: datetime) -> tuple[Flag, ...]:
        """The client's flags, open or closed, that were opened from `since` to before `until`."""
        ...

    def postpone(self, flag: int, due_at: datetime | None, step: int) -> None:
        """When something must be done about the flag next, and how often that was."""
        ...

    def due(self, now: datetime, limit: int) -> tuple[Flag, ...]:
        """Open flags whose `due_at` has come, the urgent first, then the longest waiting."""
        ...

    def due_of(self, clinician: int, now: datetime) -> tuple[Flag, ...]:
        """The open flags that are not urgent of a clinician's clients whose `due_at` has come, by number."""
        ...

    def next_due(self) -> datetime | None: ...


class Questions(Protocol):
    def ask(self, question: Question) -> None:
        """Open a question, replacing an open one of the same kind to the same person."""
        ...

    def of(self, person: int) -> tuple[Question, ...]:
        """The open questions to a person, the latest asked first."""
        ...

    def close(self, person: int, *kinds: str) -> None: ...


class Taps(Protocol):
    """The last thing a person did, if it was a tap that the message has no button for any more."""

    def last(self, person: int) -> Tap | None: ...

    def keep(self, person: int, tap: Tap) -> None:
        """In place of the one before."""
        ...

    def forget(self, person: int) -> None: ...
