"""What goes out and what comes in. Both tables keep millions of past rows; partial indexes hold the
few that still matter, so that claiming takes the same time however many are past."""

from datetime import date, datetime
from enum import StrEnum
from typing import Any

from sqlalchemy import BigInteger, CheckConstraint, Column
from sqlmodel import Field

from scheduler.ports import Post
from storage.columns import CleanText, Day, Instant, Lookup, OneOf, Sealed
from storage.tables.base import NEVER_REUSED, Row, partial


class OutboxRow(Row, table=True):
    """A message on its way (R2).

    `due_at` is when it should leave and never changes: it gives the order and how late a prompt is.
    `ready_at` is when it may be tried, later than `due_at` once it was put back; `put_back_until` is
    the same until it is claimed again, and is there to find the few such rows by. `lease` is
    written by workers of an earlier version only, which may still run beside ours.
    """

    __tablename__ = "outbox"
    __table_args__ = (
        CheckConstraint("(person IS NULL) <> (chat IS NULL)", name="one_recipient"),
        CheckConstraint("(chat IS NULL) = (chat_lookup IS NULL)", name="chat_can_be_found"),
        partial("ix_outbox_ready", "ready_at", where="state = 'due'"),
        partial("ix_outbox_put_back", "put_back_until", where="put_back_until IS NOT NULL"),
        partial("ix_outbox_message", "person", "message_id", where="message_id IS NOT NULL"),
        partial("ix_outbox_own", "person", "own_day", where="own_day IS NOT NULL"),
        partial("ix_outbox_lost", "due_at", where="state IN ('unknown', 'dropped')"),
        partial("ix_outbox_at_work", "lease_until", where="state IN ('claimed', 'sending')"),
        partial(
            "ix_outbox_prompts", "person", where="state IN ('due', 'claimed') AND bout IS NOT NULL"
        ),
        NEVER_REUSED,
    )

    id: int = Field(primary_key=True)
    key: str = Field(unique=True)
    state: Post = Field(sa_column=Column(OneOf(Post), nullable=False))
    lane: int
    person: int | None = Field(foreign_key="person.id")
    chat: int | None = Field(sa_type=Sealed)
    chat_lookup: str | None = Field(sa_type=Lookup)
    payload: list[Any] = Field(sa_type=Sealed)
    language: str | None
    bout: int | None = Field(foreign_key="bout.id")
    nudge: bool
    silent: bool
    edits: int | None = Field(sa_type=BigInteger)
    own_day: date | None = Field(sa_type=Day)
    written_at: datetime = Field(sa_type=Instant)
    due_at: datetime = Field(sa_type=Instant)
    ready_at: datetime = Field(sa_type=Instant)
    put_back_until: datetime | None = Field(sa_type=Instant)
    worker: str | None
    lease: int | None = Field(sa_type=BigInteger)
    lease_until: datetime | None = Field(sa_type=Instant)
    attempts: int
    accepted_at: datetime | None = Field(sa_type=Instant)
    message_id: int | None = Field(sa_type=BigInteger)
    unknown_at: datetime | None = Field(sa_type=Instant)
    reason: str | None = Field(sa_type=CleanText)


class Arrival(StrEnum):
    """Where an update stands (R1)."""

    WAITING = "waiting"
    CLAIMED = "claimed"
    DONE = "done"
    ASIDE = "aside"


class InboxRow(Row, table=True):
    """An update of the platform, kept before it is confirmed. `retry_at`: not handled before.

    `said_by` is the person as whom it was handled, a number that outlives her: an account may hold several.
    """

    __tablename__ = "inbox"
    __table_args__ = (
        partial(
            "ix_inbox_unfinished", "chat", "update_id", where="state IN ('waiting', 'claimed')"
        ),
        partial("ix_inbox_aside", "received_at", where="state = 'aside'"),
    )

    update_id: int = Field(
        primary_key=True, sa_type=BigInteger, sa_column_kwargs={"autoincrement": False}
    )
    chat: str = Field(sa_type=Lookup)
    payload: Any = Field(sa_type=Sealed, nullable=False)
    received_at: datetime = Field(sa_type=Instant)
    state: Arrival = Field(sa_column=Column(OneOf(Arrival), nullable=False))
    attempts: int
    worker: str | None
    lease_until: datetime | None = Field(sa_type=Instant)
    retry_at: datetime = Field(sa_type=Instant)
    reason: str | None = Field(sa_type=CleanText)
    said_by: int | None


class TapRow(Row, table=True):
    """The last button of a person that was carried out, by which its second press is known."""

    __tablename__ = "tap"

    person: int = Field(
        primary_key=True, foreign_key="person.id", sa_column_kwargs={"autoincrement": False}
    )
    message_id: int = Field(sa_type=BigInteger)
    data: str = Field(sa_type=Sealed)
    at: datetime = Field(sa_type=Instant)
