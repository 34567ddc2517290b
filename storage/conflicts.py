"""INSERTs that know what to do when the row is there already.

SQLAlchemy offers ON CONFLICT per dialect only, so each statement is built for both, once, and picked by
the name of the connection's dialect: `connection.execute(SAVE[connection.dialect.name], row)`.
"""

from collections.abc import Callable, Mapping
from typing import Any

from sqlalchemy import ColumnElement, Executable, Table
from sqlalchemy.dialects import postgresql, sqlite

Insert = sqlite.Insert | postgresql.Insert
ByDialect = Mapping[str, Executable]

INSERTS: dict[str, Callable[[Table], Insert]] = {
    "sqlite": sqlite.insert,
    "postgresql": postgresql.insert,
}


def replacing(table: Table) -> ByDialect:
    """Inserts a row that names every column, or replaces the one with the same primary key."""
    statements: dict[str, Executable] = {}
    for dialect, insert in INSERTS.items():
        new = insert(table)
        rest = {each.name: new.excluded[each.name] for each in table.c if not each.primary_key}
        keys = list(table.primary_key)
        statements[dialect] = new.on_conflict_do_update(index_elements=keys, set_=rest)
    return statements


def unless_there(
    table: Table, *unique: str, returning: ColumnElement[Any] | None = None
) -> ByDialect:
    """Inserts a row if there is none with the same `unique` columns, or, without any, none that it
    would conflict with. The row count says whether it was; so does what is `returning`.
    """
    statements: dict[str, Executable] = {}
    for dialect, insert in INSERTS.items():
        new = insert(table).on_conflict_do_nothing(index_elements=unique or None)
        statements[dialect] = new if returning is None else new.returning(returning)
    return statements
