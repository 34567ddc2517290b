"""Who is in the practice, and what each client has agreed to and answered."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum
from zoneinfo import ZoneInfo

from scheduler.domain.hours import Hours
from scheduler.domain.plan import Level

NOTICE_VERSION = 2
"""The consent notice in force. A changed notice gets the next number, and everybody is asked again (J2)."""


class Role(StrEnum):
    CLIENT = "client"
    CLINICIAN = "clinician"
    ADMIN = "admin"


class State(StrEnum):
    """Where a person stands: `invited` has no account yet, `ready` has finished joining."""

    INVITED = "invited"
    JOINING = "joining"
    READY = "ready"
    LEFT = "left"
    DISCHARGED = "discharged"


@dataclass(frozen=True, slots=True)
class Person:
    """One role of one human being. Somebody with two roles is two of these on one account (`account`).

    `account` is the platform's user id, which in a private chat is the chat id too; `None` until joined.
    `acting` says which of an account's persons the chat speaks for (the role switch).
    """

    id: int
    role: Role
    name: str
    language: str
    state: State
    clinician: int | None = None
    account: int | None = None
    acting: bool = True
    blocked: bool = False


@dataclass(frozen=True, slots=True)
class Client:
    """What is kept about a client beside the person.

    `hours` and `days` are the client's own wishes within the plan (J4); `readiness` lists the questions
    answered "yes or not sure", `None` until answered; `wake_at` is the next instant (UTC) at which
    something about this client falls due, found again after every event. `morning_at` is when the
    pain is asked about next morning (H2); no impact is asked before `resumes_on`, the day a clinician
    named when she released a hold (H4). `heard_at` is when anything last came from the client (H8),
    `judged_to` the last day that was closed (Z2), `cards` the exercises she was
    shown how to do (C7). `step_home`: she may do the step test at home (T1); `stepped_on` is the day of her
    last one. `left_at` is when she left.
    """

    id: int
    clinician: int
    zone: ZoneInfo
    hours: Hours | None = None
    days: tuple[int, ...] = ()
    consent_version: int | None = None
    consent_at: datetime | None = None
    readiness: tuple[str, ...] | None = None
    readiness_at: datetime | None = None
    usual_pain: int | None = None
    joined_at: datetime | None = None
    phone: str = ""
    estimates_accepted: tuple[str, ...] = ()
    morning_at: datetime | None = None
    resumes_on: date | None = None
    heard_at: datetime | None = None
    judged_to: date | None = None
    cards: tuple[str, ...] = ()
    step_home: bool = False
    stepped_on: date | None = None
    left_at: datetime | None = None
    wake_at: datetime | None = None


@dataclass(frozen=True, slots=True)
class Clearance:
    """A clinician's recorded permission for impact up to a ceiling (C1). Lapsed ones are kept."""

    client: int
    ceiling: Level
    by: int
    at: datetime
    lapsed_at: datetime | None = None
    lapsed_because: str = ""


@dataclass(frozen=True, slots=True)
class Hold:
    """Exercise stopped until a clinician releases it (H3); `movement` set: that movement only."""

    id: int
    client: int
    reason: str
    opened_at: datetime
    movement: str | None = None
    released_at: datetime | None = None

    def stopped(self, movement: str | None, start: datetime, end: datetime) -> bool:
        """Whether this movement was stopped by it at some time from `start` to before `end` (UTC)."""
        open_then = self.opened_at < end and (self.released_at is None or self.released_at >= start)
        return open_then and self.movement in {None, movement}


@dataclass(frozen=True, slots=True)
class Pause:
    """A break (product word): exercise stopped for a while from `first` to `last`, both included.

    Local dates. `last` is `None` while nobody has said when it ends. A break that was ended on its first
    day has its `last` before its `first`: no day is on it. `by` is the person who asked for it.
    """

    id: int
    client: int
    first: date
    last: date | None
    reason: str
    by: int
    at: datetime
    ended_at: datetime | None = None

    def covers(self, day: date) -> bool:
        return self.first <= day and (self.last is None or day <= self.last)


@dataclass(frozen=True, slots=True)
class Staff:
    """A clinician's own times: the weekly digest falls on a weekday (Monday = 0) at a local hour.

    `wake_at` is the next instant (UTC) at which something falls due for her.
    """

    person: int
    digest_weekday: int = 0
    digest_hour: int = 8
    wake_at: datetime | None = None


@dataclass(frozen=True, slots=True)
class Cover:
    """A colleague who sees a clinician's caseload until a day of the practice, or until revoked (D3)."""

    id: int
    clinician: int
    colleague: int
    until: date | None
    by: int
    at: datetime
    ended_at: datetime | None = None

    def runs(self, today: date) -> bool:
        """Whether it holds on a day of the practice: on `until` it does, the day after it does not."""
        return self.ended_at is None and (self.until is None or today <= self.until)


@dataclass(frozen=True, slots=True)
class Invitation:
    """A single-use permission to join as one person; only the hash of its code is kept (J1)."""

    person: int
    expires_at: datetime
    used_at: datetime | None = None
