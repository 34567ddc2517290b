"""What the decisions need from outside: a clock, a sender, and a store with its nouns.

Every promise here is kept on both database engines. All instants are aware UTC datetimes; days are dates
in the client's own zone. Nobody but `Store.run` begins or ends a transaction.
"""

from __future__ import annotations

from scheduler.ports.boxes import Inbox, Leases, Outbox
from scheduler.ports.nouns import (
    Days,
    Flags,
    GoneError,
    Health,
    Invitations,
    Ledger,
    People,
    Plans,
    Questions,
    Taps,
)
from scheduler.ports.sending import (
    SEND_WITHIN,
    Clock,
    Delivered,
    Delivery,
    Letter,
    Refused,
    Sender,
    TryLater,
    Unknown,
    Unreachable,
)
from scheduler.ports.standing import Archive, Aside, SetAside, Standing, Standings
from scheduler.ports.store import Book, Store, Tx
from scheduler.ports.values import (
    Arrived,
    Claim,
    ClientWeek,
    CompanionEntry,
    Json,
    Outgoing,
    Pace,
    PlanVersion,
    Post,
    Question,
    Tap,
    Turn,
    WeekPlan,
)
from scheduler.ports.week import Companions, Digests, Pauses, Staffing, StepTests, Weeks

__all__ = [
    "SEND_WITHIN",
    "Archive",
    "Arrived",
    "Aside",
    "Book",
    "Claim",
    "ClientWeek",
    "Clock",
    "CompanionEntry",
    "Companions",
    "Days",
    "Delivered",
    "Delivery",
    "Digests",
    "Flags",
    "GoneError",
    "Health",
    "Inbox",
    "Invitations",
    "Json",
    "Leases",
    "Ledger",
    "Letter",
    "Outbox",
    "Outgoing",
    "Pace",
    "Pauses",
    "People",
    "PlanVersion",
    "Plans",
    "Post",
    "Question",
    "Questions",
    "Refused",
    "Sender",
    "SetAside",
    "Staffing",
    "Standing",
    "Standings",
    "StepTests",
    "Store",
    "Tap",
    "Taps",
    "TryLater",
    "Turn",
    "Tx",
    "Unknown",
    "Unreachable",
    "WeekPlan",
    "Weeks",
]
