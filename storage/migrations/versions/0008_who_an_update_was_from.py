"""In which role an update was written: one account may hold several."""

import sqlalchemy as sa
from alembic import op

revision = "0008"
down_revision = "0007"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.add_column("inbox", sa.Column("said_by", sa.Integer()))
