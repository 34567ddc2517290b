"""The last button of a person that was carried out: its second press does nothing, and says nothing."""

import sqlalchemy as sa
from alembic import op

revision = "0009"
down_revision = "0008"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "tap",
        sa.Column("person", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("message_id", sa.BigInteger(), nullable=False),
        sa.Column("data", sa.Text(), nullable=False),
        sa.Column("at", sa.BigInteger(), nullable=False),
        sa.ForeignKeyConstraint(["person"], ["person.id"], name=op.f("fk_tap_person")),
        sa.PrimaryKeyConstraint("person", name=op.f("pk_tap")),
    )
