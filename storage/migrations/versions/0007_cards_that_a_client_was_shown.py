"""Which exercises a client has been shown how to do: each card comes by itself once."""

import sqlalchemy as sa
from alembic import op

revision = "0007"
down_revision = "0006"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.add_column("client", sa.Column("cards", sa.Text()))
