"""Run by Alembic, on the connection and inside the transaction that `storage.migrate` opened."""

from typing import Any, Literal

import sqlalchemy as sa
from alembic import context
from alembic.autogenerate.api import AutogenContext

from storage.tables import metadata


def at_rest(kind: str, item: Any, _: AutogenContext) -> str | Literal[False]:
    """Writes our column types as what they rest as: a migration must not change with the code."""
    if kind == "type" and isinstance(item, sa.types.TypeDecorator):
        return f"sa.{item.impl_instance!r}"
    return False


context.configure(
    connection=context.config.attributes["connection"],
    target_metadata=metadata,
    render_as_batch=True,  # SQLite can alter little; Alembic copies the table instead
    render_item=at_rest,
)
with context.begin_transaction():
    context.run_migrations()
