"""What the decisions need from outside: a clock, a sender, and a store with its nouns.

Every promise here is kept on both database engines. All instants are aware UTC datetimes; days are dates
in the client's own zone. Nobody but `Store.run` begins or ends a transaction.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import date, datetime, timedelta
from enum import StrEnum
from typing import Any, Protocol, TypeVar

from scheduler.domain.days import Bout, Day, Entry
from scheduler.domain.flags import Flag
from scheduler.domain.messages import Lane, Message
from scheduler.domain.people import Clearance, Client, Hold, Invitation, Person, Role
from scheduler.domain.plan import Plan
from scheduler.domain.settings import Practice

Result = TypeVar("Result")
Json = Any
"""A JSON value, as kept in a sealed column."""


class Clock(Protocol):
    def now(self) -> datetime:
        """The present instant. Never goes back within one process."""
        ...


# --- sending -------------------------------------------------------------------------------------


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


class Sender(Protocol):
    async def send(self, letter: Letter) -> Delivery:
        """Try once, with no transaction open. Every outcome is a value; only bugs raise."""
        ...


# --- what waits ----------------------------------------------------------------------------------


class Post(StrEnum):
    """Where an outbox row stands (R2)."""

    DUE = "due"
    CLAIMED = "claimed"
    SENDING = "sending"
    SENT = "sent"
    UNKNOWN = "unknown"
    DROPPED = "dropped"


@dataclass(frozen=True, slots=True)
class Outgoing:
    """A message to put into the outbox. `key` is unique: the same key again changes nothing.

    Exactly one of `person` and `chat` is set; a person's chat is looked up when the message leaves.
    `bout` marks the prompt of a bout (or its nudge, `nudge` true): it may leave until `due_at + late`,
    and is never repeated when its fate is unknown.
    """

    key: str
    lane: Lane
    message: Message
    person: int | None = None
    chat: int | None = None
    due_at: datetime | None = None
    bout: int | None = None
    nudge: bool = False
    silent: bool = False
    edits: int | None = None
    language: str | None = None


@dataclass(frozen=True, slots=True)
class Claim:
    """One worker's right to one outbox row until its lease ends. Every closing update repeats it."""

    letter: Letter
    worker: str
    person: int | None
    lane: Lane
    bout: int | None
    nudge: bool
    attempts: int
    """How often it was begun before this claim."""


@dataclass(frozen=True, slots=True)
class Arrived:
    """An update claimed from the inbox."""

    update_id: int
    payload: Json
    received_at: datetime
    attempts: int
    """How often it was claimed, this time included."""


@dataclass(frozen=True, slots=True)
class Question:
    """An open question to one person: at most one of a kind. The latest, or the most pressing, is answered.

    `body` is what has been answered so far; `expires_at` is when silence itself becomes an answer.
    """

    person: int
    kind: str
    step: str
    body: Mapping[str, Json] = field(default_factory=dict)
    asked_at: datetime | None = None
    expires_at: datetime | None = None
    message_id: int | None = None


@dataclass(frozen=True, slots=True)
class PlanVersion:
    """One version of a client's plan; the newest whose `valid_from` has come is in force that day."""

    id: int
    client: int
    version: int
    valid_from: date
    plan: Plan
    by: int
    at: datetime


# --- the store -----------------------------------------------------------------------------------


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

    def caseload(self, clinician: int) -> tuple[Person, ...]:
        """The clinician's clients, discharged and departed ones left out, by name."""
        ...

    def lock(self, client: int) -> Client:
        """The client's record, held for this transaction. LookupError if there is none.

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

    def last_prompt_at(self, client: int, day: date) -> datetime | None:
        """When the last prompt of the day that was not withdrawn was accepted."""
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


class Questions(Protocol):
    def ask(self, question: Question) -> None:
        """Open a question, replacing an open one of the same kind to the same person."""
        ...

    def of(self, person: int) -> tuple[Question, ...]:
        """The open questions to a person, the latest asked first."""
        ...

    def close(self, person: int, *kinds: str) -> None: ...


class Outbox(Protocol):
    def add(self, outgoing: Outgoing, now: datetime) -> bool:
        """Keep a message to be sent; False if its key is there already."""
        ...

    def cancel_prompts(self, client: int, reason: str) -> None:
        """Drop every prompt and nudge of the client that has not begun to be sent."""
        ...

    def claim_due(
        self, now: datetime, worker: str, lease: timedelta, limit: int
    ) -> tuple[Claim, ...]:
        """Claim rows that are due, first lane first, oldest first, at most one a chat.

        A row is claimed by one worker only, until its lease ends. No row is claimed while an earlier row
        of the same chat is being sent; a prompt later than the practice allows is never claimed.
        """
        ...

    def begin(self, claim: Claim, now: datetime) -> bool:
        """claimed -> sending. False if the claim was lost or the row was dropped meanwhile (a hold).

        Counts the attempt, and the lease begins anew, as long as it was when the row was claimed.
        """
        ...

    def sent(self, claim: Claim, message_id: int, now: datetime) -> bool: ...

    def put_back(self, claim: Claim, due_at: datetime) -> bool:
        """sending -> due again, not before `due_at`.

        It keeps its place: until then nothing leaves to its chat but more urgent lanes, and a prompt
        is as late as it would have been.
        """
        ...

    def unknown(self, claim: Claim, now: datetime) -> bool: ...

    def drop(self, claim: Claim, reason: str) -> bool: ...

    def expire_leases(self, now: datetime) -> tuple[Claim, ...]:
        """Rows whose lease has ended: claimed becomes due; those in sending are returned, still so."""
        ...

    def next_due(self, now: datetime) -> datetime | None:
        """The next instant at which a row can be claimed or a lease ends; past if one can be already.

        Rows that wait for another of their chat, for somebody who cannot be reached, or that are
        prompts too late by `now`, are left out: at the instant told there is something to do.
        """
        ...

    def waiting(self, now: datetime) -> int:
        """Rows on their way, or due by now to somebody who can be reached and not too late.

        A row that was put back to later does not count, nor do those that wait behind it.
        """
        ...


class Inbox(Protocol):
    def keep(self, update_id: int, chat: int, payload: Json, now: datetime) -> bool:
        """Store an update before it is confirmed; False if it is there already."""
        ...

    def claim(
        self, now: datetime, worker: str, lease: timedelta, limit: int
    ) -> tuple[Arrived, ...]:
        """Claim the oldest unfinished update of each chat that has none being handled."""
        ...

    def finish(self, update_id: int, worker: str) -> bool:
        """Mark as handled, in the transaction of its effects. False if the lease was lost.

        Then another worker has finished it or is at it, and the caller raises, so that nothing is kept.
        """
        ...

    def failed(self, update_id: int, worker: str, retry_at: datetime | None, reason: str) -> None:
        """Try again at `retry_at`, or set aside where an admin sees it if that is `None`."""
        ...

    def finished(self, update_id: int) -> bool:
        """Whether nothing more will be done about an update: it was handled, or set aside."""
        ...

    def next_due(self) -> datetime | None:
        """The next instant at which an update can be claimed; past if one can be already."""
        ...

    def unfinished(self) -> int: ...


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


class Tx(Protocol):
    """One open transaction with everything that can be asked of the store."""

    people: People
    invitations: Invitations
    plans: Plans
    days: Days
    ledger: Ledger
    health: Health
    flags: Flags
    questions: Questions
    outbox: Outbox
    inbox: Inbox
    book: Book


class Store(Protocol):
    async def run(self, work: Callable[[Tx], Result]) -> Result:
        """Run `work` in one transaction: all of it is kept, or nothing if it raises."""
        ...
