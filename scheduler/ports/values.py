"""The values that pass between the decisions and the store."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, datetime, timedelta
from enum import StrEnum
from typing import Any

from scheduler.domain.days import Day, Entry
from scheduler.domain.flags import Flag
from scheduler.domain.messages import Lane, Message
from scheduler.domain.people import Clearance, Client, Hold, Pause, Person
from scheduler.domain.plan import Plan
from scheduler.domain.steptest import StepTest
from scheduler.ports.sending import Letter

Json = Any
"""A JSON value, as kept in a sealed column."""


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
    `bout` marks the prompt of a bout (or, `nudge` true, its nudge or the card before it): it may leave until
    `due_at + late`, and is never repeated when its fate is unknown. `own_day` is the client's local day on
    which the bot says this of its own accord (P6); such a message is taken back like a prompt when a hold
    begins.
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
    own_day: date | None = None


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
    due_at: datetime
    """When it should have left."""
    leaves_at: datetime | None = None
    """When the pace lets it leave; at once where there is none."""


@dataclass(frozen=True, slots=True)
class Pace:
    """How fast messages leave over all workers of a store: one every `between` (R3).

    `ahead` is how long before its instant a place is given away: long enough for a claim to be made, and
    short, for what is more urgent and comes meanwhile has to wait for the next place.
    """

    between: timedelta
    ahead: timedelta


@dataclass(frozen=True, slots=True)
class Turn:
    """What a worker has got of the messages that are due."""

    claims: tuple[Claim, ...]
    no_place_before: datetime | None = None
    """When the pace has the next place to give, where it has given all there were."""
    held_until: datetime | None = None
    """When the first message may leave that waits for nothing but the second after its chat's last one."""


@dataclass(frozen=True, slots=True)
class Arrived:
    """An update claimed from the inbox."""

    update_id: int
    payload: Json
    received_at: datetime
    attempts: int
    """How often it was claimed, this time included."""
    tried_again: bool = False
    """Whether it has failed before, perhaps long ago: its sender may have been told that it was not noted."""


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
class Tap:
    """A button that was carried out: its data, the message it was under, and when it was received (UTC)."""

    message_id: int
    data: str
    at: datetime


@dataclass(frozen=True, slots=True)
class WeekPlan:
    """The impact days planned for a client's week that begins on `start` (local dates).

    `since` is the first of its days on which impact could be asked for when the week was planned.
    `chosen`: by the client, not only suggested. `made_up` are days that were not done with the day
    agreed on instead, `None` where that was declined (W3). `looked_at` is the last day at whose end the
    reach was looked at (W4).
    """

    client: int
    start: date
    since: date
    days: tuple[date, ...]
    chosen: bool = False
    made_up: tuple[tuple[date, date | None], ...] = ()
    looked_at: date | None = None


@dataclass(frozen=True, slots=True)
class CompanionEntry:
    """A companion exercise as logged: so many rounds (or sets) of what the plan says, 0 for none."""

    client: int
    day: date
    companion: str
    rounds: int
    at: datetime
    source: str


@dataclass(frozen=True, slots=True)
class ClientWeek:
    """All that a client's page, week and line of the digest are made of, over a span of local days.

    `plans` are all versions valid by the last day, newest first; `days`, `entries` (those that stand),
    `companions` and `reports` (kind, day, instant, body) lie within the span; `weeks` are those that
    begin in it or in the six days before; `holds` were open and `pauses` cover days at some time within
    it or later; `flags` are the open ones. `steps` are all step tests by the last day, the oldest first.
    """

    person: Person
    client: Client
    clearance: Clearance | None
    plans: tuple[PlanVersion, ...]
    weeks: tuple[WeekPlan, ...]
    days: tuple[Day, ...]
    entries: tuple[Entry, ...]
    companions: tuple[CompanionEntry, ...]
    reports: tuple[tuple[str, date, datetime, Json], ...]
    holds: tuple[Hold, ...]
    pauses: tuple[Pause, ...]
    flags: tuple[Flag, ...]
    steps: tuple[StepTest, ...] = ()


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
