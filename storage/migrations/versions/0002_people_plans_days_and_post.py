"""People, plans, days, flags, and what goes out and comes in."""

from typing import Any

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None


def where(condition: str) -> dict[str, Any]:
    """A partial index, on both engines."""
    return {"sqlite_where": sa.text(condition), "postgresql_where": sa.text(condition)}


def upgrade() -> None:
    _audit()
    _guess()
    _inbox()
    _person()
    _setting()
    _client()
    _invitation()
    _question()
    _bout()
    _clearance()
    _flag()
    _hold()
    _plan()
    _report()
    _day()
    _ledger()
    _outbox()


def _audit() -> None:
    op.create_table(
        "audit",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("at", sa.BigInteger(), nullable=False),
        sa.Column("who", sa.Integer()),
        sa.Column("action", sa.String(), nullable=False),
        sa.Column("about", sa.Integer()),
        sa.Column("change", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_audit")),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_audit_about", "audit", ["about"])


def _guess() -> None:
    op.create_table(
        "guess",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("account_lookup", sa.Text(), nullable=False),
        sa.Column("at", sa.BigInteger(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_guess")),
    )
    op.create_index("ix_guess_account_lookup", "guess", ["account_lookup"])


def _inbox() -> None:
    op.create_table(
        "inbox",
        sa.Column("update_id", sa.BigInteger(), autoincrement=False, nullable=False),
        sa.Column("chat", sa.Text(), nullable=False),
        sa.Column("payload", sa.Text(), nullable=False),
        sa.Column("received_at", sa.BigInteger(), nullable=False),
        sa.Column("state", sa.Text(), nullable=False),
        sa.Column("attempts", sa.Integer(), nullable=False),
        sa.Column("worker", sa.String()),
        sa.Column("lease_until", sa.BigInteger()),
        sa.Column("retry_at", sa.BigInteger(), nullable=False),
        sa.Column("reason", sa.Text()),
        sa.PrimaryKeyConstraint("update_id", name=op.f("pk_inbox")),
    )
    op.create_index(
        "ix_inbox_unfinished",
        "inbox",
        ["chat", "update_id"],
        **where("state IN ('waiting', 'claimed')"),
    )


def _person() -> None:
    op.create_table(
        "person",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("role", sa.Text(), nullable=False),
        sa.Column("account_lookup", sa.Text()),
        sa.Column("account", sa.Text()),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("language", sa.String(), nullable=False),
        sa.Column("state", sa.Text(), nullable=False),
        sa.Column("clinician", sa.Integer()),
        sa.Column("acting", sa.Boolean(), nullable=False),
        sa.Column("blocked", sa.Boolean(), nullable=False),
        sa.ForeignKeyConstraint(["clinician"], ["person.id"], name=op.f("fk_person_clinician")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_person")),
        sa.UniqueConstraint("account_lookup", "role", name=op.f("uq_person_account_lookup_role")),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_person_clinician", "person", ["clinician"])


def _setting() -> None:
    op.create_table(
        "setting",
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("value", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("name", name=op.f("pk_setting")),
    )


def _client() -> None:
    op.create_table(
        "client",
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("zone", sa.String(), nullable=False),
        sa.Column("hours", sa.Text()),
        sa.Column("days", sa.Text(), nullable=False),
        sa.Column("consent_version", sa.Integer()),
        sa.Column("consent_at", sa.BigInteger()),
        sa.Column("readiness", sa.Text()),
        sa.Column("readiness_at", sa.BigInteger()),
        sa.Column("usual_pain", sa.Text()),
        sa.Column("joined_at", sa.BigInteger()),
        sa.Column("phone", sa.Text(), nullable=False),
        sa.Column("estimates_accepted", sa.Text(), nullable=False),
        sa.Column("morning_at", sa.BigInteger()),
        sa.Column("resumes_on", sa.Date()),
        sa.Column("wake_at", sa.BigInteger()),
        sa.ForeignKeyConstraint(["id"], ["person.id"], name=op.f("fk_client_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_client")),
    )
    op.create_index("ix_client_wake_at", "client", ["wake_at"], **where("wake_at IS NOT NULL"))


def _invitation() -> None:
    op.create_table(
        "invitation",
        sa.Column("code_hash", sa.String(), nullable=False),
        sa.Column("person", sa.Integer(), nullable=False),
        sa.Column("expires_at", sa.BigInteger(), nullable=False),
        sa.Column("used_at", sa.BigInteger()),
        sa.ForeignKeyConstraint(["person"], ["person.id"], name=op.f("fk_invitation_person")),
        sa.PrimaryKeyConstraint("code_hash", name=op.f("pk_invitation")),
    )
    op.create_index("ix_invitation_person", "invitation", ["person"])


def _question() -> None:
    op.create_table(
        "question",
        sa.Column("person", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("step", sa.String(), nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.Column("asked_at", sa.BigInteger()),
        sa.Column("expires_at", sa.BigInteger()),
        sa.Column("message_id", sa.BigInteger()),
        sa.ForeignKeyConstraint(["person"], ["person.id"], name=op.f("fk_question_person")),
        sa.PrimaryKeyConstraint("person", "kind", name=op.f("pk_question")),
    )


def _bout() -> None:
    op.create_table(
        "bout",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("client", sa.Integer(), nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("n", sa.Integer(), nullable=False),
        sa.Column("reps", sa.Integer(), nullable=False),
        sa.Column("due_at", sa.BigInteger(), nullable=False),
        sa.Column("expires_at", sa.BigInteger(), nullable=False),
        sa.Column("state", sa.Text(), nullable=False),
        sa.Column("asked_at", sa.BigInteger()),
        sa.Column("nudge_at", sa.BigInteger()),
        sa.Column("nudged", sa.Boolean(), nullable=False),
        sa.Column("laters", sa.Integer(), nullable=False),
        sa.Column("not_before", sa.BigInteger()),
        sa.Column("message_id", sa.BigInteger()),
        sa.ForeignKeyConstraint(["client"], ["client.id"], name=op.f("fk_bout_client")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_bout")),
        sa.UniqueConstraint("client", "day", "n", name=op.f("uq_bout_client_day_n")),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_bout_open", "bout", ["client"], **where("state IN ('waiting', 'asked')"))


def _clearance() -> None:
    op.create_table(
        "clearance",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("client", sa.Integer(), nullable=False),
        sa.Column("ceiling", sa.Integer(), nullable=False),
        sa.Column("by", sa.Integer(), nullable=False),
        sa.Column("at", sa.BigInteger(), nullable=False),
        sa.Column("lapsed_at", sa.BigInteger()),
        sa.Column("lapsed_because", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["by"], ["person.id"], name=op.f("fk_clearance_by")),
        sa.ForeignKeyConstraint(["client"], ["client.id"], name=op.f("fk_clearance_client")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_clearance")),
    )
    op.create_index("ix_clearance_client", "clearance", ["client"])


def _flag() -> None:
    op.create_table(
        "flag",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("client", sa.Integer(), nullable=False),
        sa.Column("clinician", sa.Integer(), nullable=False),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("urgent", sa.Boolean(), nullable=False),
        sa.Column("episode", sa.String(), nullable=False),
        sa.Column("opened_at", sa.BigInteger(), nullable=False),
        sa.Column("details", sa.Text(), nullable=False),
        sa.Column("closed_at", sa.BigInteger()),
        sa.Column("closed_by", sa.Integer()),
        sa.Column("outcome", sa.String(), nullable=False),
        sa.Column("note", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["client"], ["client.id"], name=op.f("fk_flag_client")),
        sa.ForeignKeyConstraint(["clinician"], ["person.id"], name=op.f("fk_flag_clinician")),
        sa.ForeignKeyConstraint(["closed_by"], ["person.id"], name=op.f("fk_flag_closed_by")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_flag")),
        sqlite_autoincrement=True,
    )
    op.create_index(
        "uq_flag_open", "flag", ["client", "episode"], unique=True, **where("closed_at IS NULL")
    )


def _hold() -> None:
    op.create_table(
        "hold",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("client", sa.Integer(), nullable=False),
        sa.Column("reason", sa.String(), nullable=False),
        sa.Column("movement", sa.String(), nullable=False),
        sa.Column("opened_at", sa.BigInteger(), nullable=False),
        sa.Column("released_at", sa.BigInteger()),
        sa.Column("released_by", sa.Integer()),
        sa.ForeignKeyConstraint(["client"], ["client.id"], name=op.f("fk_hold_client")),
        sa.ForeignKeyConstraint(["released_by"], ["person.id"], name=op.f("fk_hold_released_by")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_hold")),
        sqlite_autoincrement=True,
    )
    op.create_index(
        "uq_hold_open", "hold", ["client", "movement"], unique=True, **where("released_at IS NULL")
    )


def _plan() -> None:
    op.create_table(
        "plan",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("client", sa.Integer(), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("valid_from", sa.Date(), nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.Column("by", sa.Integer(), nullable=False),
        sa.Column("at", sa.BigInteger(), nullable=False),
        sa.ForeignKeyConstraint(["by"], ["person.id"], name=op.f("fk_plan_by")),
        sa.ForeignKeyConstraint(["client"], ["client.id"], name=op.f("fk_plan_client")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_plan")),
        sa.UniqueConstraint("client", "version", name=op.f("uq_plan_client_version")),
        sqlite_autoincrement=True,
    )


def _report() -> None:
    op.create_table(
        "report",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("client", sa.Integer(), nullable=False),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("at", sa.BigInteger(), nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["client"], ["client.id"], name=op.f("fk_report_client")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_report")),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_report_client_day", "report", ["client", "day"])


def _day() -> None:
    op.create_table(
        "day",
        sa.Column("client", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("plan", sa.Integer(), nullable=False),
        sa.Column("total", sa.Integer(), nullable=False),
        sa.Column("planned", sa.Text(), nullable=False),
        sa.Column("nudges", sa.Integer(), nullable=False),
        sa.Column("away_told", sa.Boolean(), nullable=False),
        sa.Column("shortfall", sa.Integer(), nullable=False),
        sa.Column("closed_at", sa.BigInteger()),
        sa.ForeignKeyConstraint(["client"], ["client.id"], name=op.f("fk_day_client")),
        sa.ForeignKeyConstraint(["plan"], ["plan.id"], name=op.f("fk_day_plan")),
        sa.PrimaryKeyConstraint("client", "day", name=op.f("pk_day")),
    )


def _ledger() -> None:
    op.create_table(
        "ledger",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("client", sa.Integer(), nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("reps", sa.Integer(), nullable=False),
        sa.Column("at", sa.BigInteger(), nullable=False),
        sa.Column("source", sa.String(), nullable=False),
        sa.Column("bout", sa.Integer()),
        sa.Column("message_id", sa.BigInteger()),
        sa.Column("voids", sa.Integer()),
        sa.ForeignKeyConstraint(["bout"], ["bout.id"], name=op.f("fk_ledger_bout")),
        sa.ForeignKeyConstraint(["client"], ["client.id"], name=op.f("fk_ledger_client")),
        sa.ForeignKeyConstraint(["voids"], ["ledger.id"], name=op.f("fk_ledger_voids")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_ledger")),
        sa.UniqueConstraint("client", "source", name=op.f("uq_ledger_client_source")),
        sa.UniqueConstraint("voids", name=op.f("uq_ledger_voids")),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_ledger_client_day", "ledger", ["client", "day"])
    op.create_index(
        "ix_ledger_message", "ledger", ["client", "message_id"], **where("message_id IS NOT NULL")
    )


def _outbox() -> None:
    op.create_table(
        "outbox",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("key", sa.String(), nullable=False),
        sa.Column("state", sa.Text(), nullable=False),
        sa.Column("lane", sa.Integer(), nullable=False),
        sa.Column("person", sa.Integer()),
        sa.Column("chat", sa.Text()),
        sa.Column("chat_lookup", sa.Text()),
        sa.Column("payload", sa.Text(), nullable=False),
        sa.Column("language", sa.String()),
        sa.Column("bout", sa.Integer()),
        sa.Column("nudge", sa.Boolean(), nullable=False),
        sa.Column("silent", sa.Boolean(), nullable=False),
        sa.Column("edits", sa.BigInteger()),
        sa.Column("written_at", sa.BigInteger(), nullable=False),
        sa.Column("due_at", sa.BigInteger(), nullable=False),
        sa.Column("ready_at", sa.BigInteger(), nullable=False),
        sa.Column("put_back_until", sa.BigInteger()),
        sa.Column("worker", sa.String()),
        sa.Column("lease", sa.BigInteger()),
        sa.Column("lease_until", sa.BigInteger()),
        sa.Column("attempts", sa.Integer(), nullable=False),
        sa.Column("accepted_at", sa.BigInteger()),
        sa.Column("message_id", sa.BigInteger()),
        sa.Column("unknown_at", sa.BigInteger()),
        sa.Column("reason", sa.Text()),
        sa.CheckConstraint(
            "(chat IS NULL) = (chat_lookup IS NULL)", name=op.f("ck_outbox_chat_can_be_found")
        ),
        sa.CheckConstraint(
            "(person IS NULL) <> (chat IS NULL)", name=op.f("ck_outbox_one_recipient")
        ),
        sa.ForeignKeyConstraint(["bout"], ["bout.id"], name=op.f("fk_outbox_bout")),
        sa.ForeignKeyConstraint(["person"], ["person.id"], name=op.f("fk_outbox_person")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_outbox")),
        sa.UniqueConstraint("key", name=op.f("uq_outbox_key")),
        sqlite_autoincrement=True,
    )
    op.create_index(
        "ix_outbox_at_work", "outbox", ["lease_until"], **where("state IN ('claimed', 'sending')")
    )
    op.create_index(
        "ix_outbox_prompts",
        "outbox",
        ["person"],
        **where("state IN ('due', 'claimed') AND bout IS NOT NULL"),
    )
    op.create_index(
        "ix_outbox_put_back", "outbox", ["put_back_until"], **where("put_back_until IS NOT NULL")
    )
    op.create_index("ix_outbox_ready", "outbox", ["ready_at"], **where("state = 'due'"))
