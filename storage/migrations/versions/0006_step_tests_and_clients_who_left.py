"""Step tests, where they may be done, and when a client left."""

import sqlalchemy as sa
from alembic import op

revision = "0006"
down_revision = "0005"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "step_test",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("client", sa.Integer(), nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("at", sa.BigInteger(), nullable=False),
        sa.Column("trials", sa.Text(), nullable=False),
        sa.Column("by", sa.Integer(), nullable=False),
        sa.Column("source", sa.String(), nullable=False),
        sa.Column("taken_back_at", sa.BigInteger(), nullable=True),
        sa.ForeignKeyConstraint(["by"], ["person.id"], name=op.f("fk_step_test_by")),
        sa.ForeignKeyConstraint(["client"], ["client.id"], name=op.f("fk_step_test_client")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_step_test")),
        sa.UniqueConstraint("client", "source", name=op.f("uq_step_test_client_source")),
        sqlite_autoincrement=True,
    )
    op.add_column(
        "client",
        sa.Column("step_home", sa.Boolean(), nullable=False, server_default=sa.false()),
    )
    op.add_column("client", sa.Column("stepped_on", sa.Date()))
    op.add_column("client", sa.Column("left_at", sa.BigInteger()))
