"""Weeks, breaks, companions, digests, a colleague's cover; and when a flag is due again."""

from typing import Any

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None


def where(condition: str) -> dict[str, Any]:
    return {"sqlite_where": sa.text(condition), "postgresql_where": sa.text(condition)}


def upgrade() -> None:
    _columns()
    _care()
    _practice()


def _columns() -> None:
    op.create_index("ix_person_staff", "person", ["id"], **where("role <> 'client'"))
    op.add_column("client", sa.Column("heard_at", sa.BigInteger()))
    op.add_column("client", sa.Column("judged_to", sa.Date()))
    op.add_column("day", sa.Column("verdict", sa.String(), nullable=False, server_default=""))
    op.add_column("day", sa.Column("why", sa.String(), nullable=False, server_default=""))
    op.add_column("flag", sa.Column("due_at", sa.BigInteger()))
    op.add_column("flag", sa.Column("step", sa.Integer(), nullable=False, server_default="0"))
    op.create_index("ix_flag_due_at", "flag", ["due_at"], **where("due_at IS NOT NULL"))
    op.create_index("ix_flag_client", "flag", ["client"])
    op.create_index("ix_hold_client", "hold", ["client"])
    op.add_column("outbox", sa.Column("own_day", sa.Date()))
    op.create_index(
        "ix_outbox_message", "outbox", ["person", "message_id"], **where("message_id IS NOT NULL")
    )
    op.create_index(
        "ix_outbox_own", "outbox", ["person", "own_day"], **where("own_day IS NOT NULL")
    )


def _care() -> None:
    op.create_table(
        "week",
        sa.Column("client", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("start", sa.Date(), nullable=False),
        sa.Column("since", sa.Date(), nullable=False),
        sa.Column("days", sa.Text(), nullable=False),
        sa.Column("chosen", sa.Boolean(), nullable=False),
        sa.Column("made_up", sa.Text(), nullable=False),
        sa.Column("looked_at", sa.Date()),
        sa.ForeignKeyConstraint(["client"], ["client.id"], name=op.f("fk_week_client")),
        sa.PrimaryKeyConstraint("client", "start", name=op.f("pk_week")),
    )
    op.create_table(
        "pause",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("client", sa.Integer(), nullable=False),
        sa.Column("first", sa.Date(), nullable=False),
        sa.Column("last", sa.Date()),
        sa.Column("reason", sa.Text(), nullable=False),
        sa.Column("by", sa.Integer(), nullable=False),
        sa.Column("at", sa.BigInteger(), nullable=False),
        sa.Column("ended_at", sa.BigInteger()),
        sa.ForeignKeyConstraint(["by"], ["person.id"], name=op.f("fk_pause_by")),
        sa.ForeignKeyConstraint(["client"], ["client.id"], name=op.f("fk_pause_client")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_pause")),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_pause_client_first", "pause", ["client", "first"])
    op.create_table(
        "companion_entry",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("client", sa.Integer(), nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("companion", sa.String(), nullable=False),
        sa.Column("rounds", sa.Integer(), nullable=False),
        sa.Column("at", sa.BigInteger(), nullable=False),
        sa.Column("source", sa.String(), nullable=False),
        sa.ForeignKeyConstraint(["client"], ["client.id"], name=op.f("fk_companion_entry_client")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_companion_entry")),
        sa.UniqueConstraint("client", "source", name=op.f("uq_companion_entry_client_source")),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_companion_entry_client_day", "companion_entry", ["client", "day"])


def _practice() -> None:
    op.create_table(
        "staff",
        sa.Column("person", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("digest_weekday", sa.Integer(), nullable=False),
        sa.Column("digest_hour", sa.Integer(), nullable=False),
        sa.Column("wake_at", sa.BigInteger()),
        sa.ForeignKeyConstraint(["person"], ["person.id"], name=op.f("fk_staff_person")),
        sa.PrimaryKeyConstraint("person", name=op.f("pk_staff")),
    )
    op.create_index("ix_staff_wake_at", "staff", ["wake_at"], **where("wake_at IS NOT NULL"))
    op.create_table(
        "cover",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("clinician", sa.Integer(), nullable=False),
        sa.Column("colleague", sa.Integer(), nullable=False),
        sa.Column("until", sa.Date()),
        sa.Column("by", sa.Integer(), nullable=False),
        sa.Column("at", sa.BigInteger(), nullable=False),
        sa.Column("ended_at", sa.BigInteger()),
        sa.ForeignKeyConstraint(["by"], ["person.id"], name=op.f("fk_cover_by")),
        sa.ForeignKeyConstraint(["clinician"], ["person.id"], name=op.f("fk_cover_clinician")),
        sa.ForeignKeyConstraint(["colleague"], ["person.id"], name=op.f("fk_cover_colleague")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_cover")),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_cover_clinician", "cover", ["clinician"])
    op.create_index("ix_cover_colleague", "cover", ["colleague"])
    op.create_table(
        "digest",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("clinician", sa.Integer(), nullable=False),
        sa.Column("week", sa.Date(), nullable=False),
        sa.Column("made_at", sa.BigInteger(), nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["clinician"], ["person.id"], name=op.f("fk_digest_clinician")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_digest")),
        sa.UniqueConstraint("clinician", "week", name=op.f("uq_digest_clinician_week")),
        sqlite_autoincrement=True,
    )
