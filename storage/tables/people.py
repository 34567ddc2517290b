"""People, how they join, and what is recorded about the practice as a whole."""

from datetime import date, datetime
from typing import Any

from sqlalchemy import BigInteger, Column, Index, UniqueConstraint, false
from sqlmodel import Field

from scheduler.domain.people import Role, State
from storage.columns import Day, Instant, Lookup, OneOf, Sealed
from storage.tables.base import NEVER_REUSED, Row, partial


class PersonRow(Row, table=True):
    """One role of one human being. `account_lookup` finds what `account` keeps."""

    __tablename__ = "person"
    __table_args__ = (
        UniqueConstraint("account_lookup", "role"),
        partial("ix_person_staff", "id", where="role <> 'client'"),
        NEVER_REUSED,
    )

    id: int = Field(primary_key=True)
    role: Role = Field(sa_column=Column(OneOf(Role), nullable=False))
    account_lookup: str | None = Field(sa_type=Lookup)
    account: int | None = Field(sa_type=Sealed)
    name: str = Field(sa_type=Sealed)
    language: str
    state: State = Field(sa_column=Column(OneOf(State), nullable=False))
    clinician: int | None = Field(foreign_key="person.id", index=True)
    acting: bool
    blocked: bool


class ClientRow(Row, table=True):
    """What is kept about a client beside the person. Her clinician is the person's."""

    __tablename__ = "client"
    __table_args__ = (partial("ix_client_wake_at", "wake_at", where="wake_at IS NOT NULL"),)

    id: int = Field(
        primary_key=True, foreign_key="person.id", sa_column_kwargs={"autoincrement": False}
    )
    zone: str
    hours: dict[str, Any] | None = Field(sa_type=Sealed)
    days: list[int] = Field(sa_type=Sealed)
    consent_version: int | None
    consent_at: datetime | None = Field(sa_type=Instant)
    readiness: list[str] | None = Field(sa_type=Sealed)
    readiness_at: datetime | None = Field(sa_type=Instant)
    usual_pain: int | None = Field(sa_type=Sealed)
    joined_at: datetime | None = Field(sa_type=Instant)
    phone: str = Field(sa_type=Sealed)
    estimates_accepted: list[str] = Field(sa_type=Sealed)
    morning_at: datetime | None = Field(sa_type=Instant)
    resumes_on: date | None = Field(sa_type=Day)
    heard_at: datetime | None = Field(sa_type=Instant)
    judged_to: date | None = Field(sa_type=Day)
    cards: list[str] | None = Field(sa_type=Sealed)
    step_home: bool = Field(sa_column_kwargs={"server_default": false()})
    stepped_on: date | None = Field(sa_type=Day)
    left_at: datetime | None = Field(sa_type=Instant)
    wake_at: datetime | None = Field(sa_type=Instant)


class StaffRow(Row, table=True):
    """A clinician's own times."""

    __tablename__ = "staff"
    __table_args__ = (partial("ix_staff_wake_at", "wake_at", where="wake_at IS NOT NULL"),)

    person: int = Field(
        primary_key=True, foreign_key="person.id", sa_column_kwargs={"autoincrement": False}
    )
    digest_weekday: int
    digest_hour: int
    wake_at: datetime | None = Field(sa_type=Instant)


class CoverRow(Row, table=True):
    """A colleague's right to see a clinician's caseload."""

    __tablename__ = "cover"
    __table_args__ = (Index("ix_cover_clinician", "clinician"), NEVER_REUSED)

    id: int = Field(primary_key=True)
    clinician: int = Field(foreign_key="person.id")
    colleague: int = Field(foreign_key="person.id", index=True)
    until: date | None = Field(sa_type=Day)
    by: int = Field(foreign_key="person.id")
    at: datetime = Field(sa_type=Instant)
    ended_at: datetime | None = Field(sa_type=Instant)


class DigestRow(Row, table=True):
    """One clinician's digest of one week, as it was made."""

    __tablename__ = "digest"
    __table_args__ = (UniqueConstraint("clinician", "week"), NEVER_REUSED)

    id: int = Field(primary_key=True)
    clinician: int = Field(foreign_key="person.id")
    week: date = Field(sa_type=Day)
    made_at: datetime = Field(sa_type=Instant)
    body: dict[str, Any] = Field(sa_type=Sealed)


class InvitationRow(Row, table=True):
    """A single-use permission to join; only the hash of its code is kept."""

    __tablename__ = "invitation"

    code_hash: str = Field(primary_key=True)
    person: int = Field(foreign_key="person.id", index=True)
    expires_at: datetime = Field(sa_type=Instant)
    used_at: datetime | None = Field(sa_type=Instant)


class GuessRow(Row, table=True):
    """One code that somebody entered; kept for an hour or until the account's next one."""

    __tablename__ = "guess"

    id: int = Field(primary_key=True)
    account_lookup: str = Field(sa_type=Lookup, index=True)
    at: datetime = Field(sa_type=Instant)


class QuestionRow(Row, table=True):
    """An open question; closing deletes it."""

    __tablename__ = "question"

    person: int = Field(
        primary_key=True, foreign_key="person.id", sa_column_kwargs={"autoincrement": False}
    )
    kind: str = Field(primary_key=True)
    step: str
    body: dict[str, Any] = Field(sa_type=Sealed)
    asked_at: datetime | None = Field(sa_type=Instant)
    expires_at: datetime | None = Field(sa_type=Instant)
    message_id: int | None = Field(sa_type=BigInteger)


class SettingRow(Row, table=True):
    """A practice setting that differs from its default."""

    __tablename__ = "setting"

    name: str = Field(primary_key=True)
    value: str = Field(sa_type=Sealed)


class AuditRow(Row, table=True):
    """Who did what to whom. No references: the line outlives the people it names by number."""

    __tablename__ = "audit"
    __table_args__ = NEVER_REUSED

    id: int = Field(primary_key=True)
    at: datetime = Field(sa_type=Instant)
    who: int | None
    action: str
    about: int | None = Field(index=True)
    change: dict[str, Any] = Field(sa_type=Sealed)
