"""Leases, and the messages that have just left: what several processes of one store share."""

import sqlalchemy as sa
from alembic import op

revision = "0004"
down_revision = "0003"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "lease",
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("holder", sa.String(), nullable=False),
        sa.Column("until", sa.BigInteger(), nullable=False),
        sa.PrimaryKeyConstraint("name", name=op.f("pk_lease")),
    )
    op.create_table(
        "departure",
        sa.Column("chat", sa.Text(), nullable=False),
        sa.Column("leaves_at", sa.BigInteger(), autoincrement=False, nullable=False),
        sa.Column("place", sa.BigInteger(), nullable=False),
        sa.PrimaryKeyConstraint("chat", "leaves_at", name=op.f("pk_departure")),
    )
