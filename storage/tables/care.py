"""What is prescribed, what is done, what hurts, and what a clinician should know."""

from datetime import date, datetime
from typing import Any

from sqlalchemy import BigInteger, Column, Index, UniqueConstraint
from sqlmodel import Field

from scheduler.domain.days import BoutState
from storage.columns import Day, Instant, OneOf, Sealed
from storage.tables.base import NEVER_REUSED, Row, partial


class PlanRow(Row, table=True):
    """One version of a plan; a change is a new row. The body carries a note in free text."""

    __tablename__ = "plan"
    __table_args__ = (UniqueConstraint("client", "version"), NEVER_REUSED)

    id: int = Field(primary_key=True)
    client: int = Field(foreign_key="client.id")
    version: int
    valid_from: date = Field(sa_type=Day)
    body: dict[str, Any] = Field(sa_type=Sealed)
    by: int = Field(foreign_key="person.id")
    at: datetime = Field(sa_type=Instant)


class ClearanceRow(Row, table=True):
    """A permission for impact; a new one does not change the one before."""

    __tablename__ = "clearance"

    id: int = Field(primary_key=True)
    client: int = Field(foreign_key="client.id", index=True)
    ceiling: int
    by: int = Field(foreign_key="person.id")
    at: datetime = Field(sa_type=Instant)
    lapsed_at: datetime | None = Field(sa_type=Instant)
    lapsed_because: str = Field(sa_type=Sealed)


class DayRow(Row, table=True):
    """One impact day of one client."""

    __tablename__ = "day"

    client: int = Field(
        primary_key=True, foreign_key="client.id", sa_column_kwargs={"autoincrement": False}
    )
    day: date = Field(primary_key=True, sa_type=Day)
    plan: int = Field(foreign_key="plan.id")
    total: int
    planned: list[Any] = Field(sa_type=Sealed)
    nudges: int
    away_told: bool
    shortfall: int
    closed_at: datetime | None = Field(sa_type=Instant)
    verdict: str = Field(sa_column_kwargs={"server_default": ""})
    why: str = Field(sa_column_kwargs={"server_default": ""})


class WeekRow(Row, table=True):
    """The impact days planned for one client's week, and what was said about them."""

    __tablename__ = "week"

    client: int = Field(
        primary_key=True, foreign_key="client.id", sa_column_kwargs={"autoincrement": False}
    )
    start: date = Field(primary_key=True, sa_type=Day)
    since: date = Field(sa_type=Day)
    days: list[str] = Field(sa_type=Sealed)
    chosen: bool
    made_up: list[list[str | None]] = Field(sa_type=Sealed)
    looked_at: date | None = Field(sa_type=Day)


class PauseRow(Row, table=True):
    """A break. BREAK is a word of SQL's own."""

    __tablename__ = "pause"
    __table_args__ = (Index("ix_pause_client_first", "client", "first"), NEVER_REUSED)

    id: int = Field(primary_key=True)
    client: int = Field(foreign_key="client.id")
    first: date = Field(sa_type=Day)
    last: date | None = Field(sa_type=Day)
    reason: str = Field(sa_type=Sealed)
    by: int = Field(foreign_key="person.id")
    at: datetime = Field(sa_type=Instant)
    ended_at: datetime | None = Field(sa_type=Instant)


class CompanionEntryRow(Row, table=True):
    """A companion exercise that was done: only ever inserted; of a day's lines the last one counts."""

    __tablename__ = "companion_entry"
    __table_args__ = (
        UniqueConstraint("client", "source"),
        Index("ix_companion_entry_client_day", "client", "day"),
        NEVER_REUSED,
    )

    id: int = Field(primary_key=True)
    client: int = Field(foreign_key="client.id")
    day: date = Field(sa_type=Day)
    companion: str
    rounds: int
    at: datetime = Field(sa_type=Instant)
    source: str


class StepTestRow(Row, table=True):
    """A step test. One that was taken back stays, and counts nowhere."""

    __tablename__ = "step_test"
    __table_args__ = (UniqueConstraint("client", "source"), NEVER_REUSED)

    id: int = Field(primary_key=True)
    client: int = Field(foreign_key="client.id")
    day: date = Field(sa_type=Day)
    at: datetime = Field(sa_type=Instant)
    trials: list[int | None] = Field(sa_type=Sealed)
    by: int = Field(foreign_key="person.id")
    source: str
    taken_back_at: datetime | None = Field(sa_type=Instant)


class BoutRow(Row, table=True):
    """One time a bout is asked."""

    __tablename__ = "bout"
    __table_args__ = (
        UniqueConstraint("client", "day", "n"),
        partial("ix_bout_open", "client", where="state IN ('waiting', 'asked')"),
        NEVER_REUSED,
    )

    id: int = Field(primary_key=True)
    client: int = Field(foreign_key="client.id")
    day: date = Field(sa_type=Day)
    n: int
    reps: int
    due_at: datetime = Field(sa_type=Instant)
    expires_at: datetime = Field(sa_type=Instant)
    state: BoutState = Field(sa_column=Column(OneOf(BoutState), nullable=False))
    asked_at: datetime | None = Field(sa_type=Instant)
    nudge_at: datetime | None = Field(sa_type=Instant)
    nudged: bool
    laters: int
    not_before: datetime | None = Field(sa_type=Instant)
    message_id: int | None = Field(sa_type=BigInteger)


class EntryRow(Row, table=True):
    """One line of the ledger: only ever inserted. `voids` names the line that a correction takes back."""

    __tablename__ = "ledger"
    __table_args__ = (
        UniqueConstraint("client", "source"),
        UniqueConstraint("voids"),
        Index("ix_ledger_client_day", "client", "day"),
        partial("ix_ledger_message", "client", "message_id", where="message_id IS NOT NULL"),
        NEVER_REUSED,
    )

    id: int = Field(primary_key=True)
    client: int = Field(foreign_key="client.id")
    day: date = Field(sa_type=Day)
    reps: int
    at: datetime = Field(sa_type=Instant)
    source: str
    bout: int | None = Field(foreign_key="bout.id")
    message_id: int | None = Field(sa_type=BigInteger)
    voids: int | None = Field(foreign_key="ledger.id")


class ReportRow(Row, table=True):
    """What was said about pain, a sign or a fall."""

    __tablename__ = "report"
    __table_args__ = (Index("ix_report_client_day", "client", "day"), NEVER_REUSED)

    id: int = Field(primary_key=True)
    client: int = Field(foreign_key="client.id")
    kind: str
    day: date = Field(sa_type=Day)
    at: datetime = Field(sa_type=Instant)
    body: Any = Field(sa_type=Sealed, nullable=False)


class HoldRow(Row, table=True):
    """Exercise stopped. `movement` is empty where all of it is: a NULL would never be unique."""

    __tablename__ = "hold"
    __table_args__ = (
        partial("uq_hold_open", "client", "movement", where="released_at IS NULL", unique=True),
        Index("ix_hold_client", "client"),
        NEVER_REUSED,
    )

    id: int = Field(primary_key=True)
    client: int = Field(foreign_key="client.id")
    reason: str
    movement: str
    opened_at: datetime = Field(sa_type=Instant)
    released_at: datetime | None = Field(sa_type=Instant)
    released_by: int | None = Field(foreign_key="person.id")


class FlagRow(Row, table=True):
    """Something a clinician should know: one open row an episode."""

    __tablename__ = "flag"
    __table_args__ = (
        partial("uq_flag_open", "client", "episode", where="closed_at IS NULL", unique=True),
        partial("ix_flag_due_at", "due_at", where="due_at IS NOT NULL"),
        Index("ix_flag_client", "client"),
        NEVER_REUSED,
    )

    id: int = Field(primary_key=True)
    client: int = Field(foreign_key="client.id")
    clinician: int = Field(foreign_key="person.id")
    kind: str
    urgent: bool
    episode: str
    opened_at: datetime = Field(sa_type=Instant)
    details: dict[str, Any] = Field(sa_type=Sealed)
    closed_at: datetime | None = Field(sa_type=Instant)
    closed_by: int | None = Field(foreign_key="person.id")
    outcome: str
    note: str = Field(sa_type=Sealed)
    due_at: datetime | None = Field(sa_type=Instant)
    step: int = Field(sa_column_kwargs={"server_default": "0"})
