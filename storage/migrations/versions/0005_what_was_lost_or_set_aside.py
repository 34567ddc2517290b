"""What was set aside, dropped or of unknown fate can be found without reading all that is past."""

from typing import Any

import sqlalchemy as sa
from alembic import op

revision = "0005"
down_revision = "0004"
branch_labels = None
depends_on = None


def where(condition: str) -> dict[str, Any]:
    return {"sqlite_where": sa.text(condition), "postgresql_where": sa.text(condition)}


def upgrade() -> None:
    lost = where("state IN ('unknown', 'dropped')")
    op.create_index("ix_outbox_lost", "outbox", ["due_at"], **lost)
    op.create_index("ix_inbox_aside", "inbox", ["received_at"], **where("state = 'aside'"))
