"""What every table is made from."""

from typing import Any, ClassVar

from sqlalchemy import Index, MetaData, Table, text
from sqlmodel import Field, SQLModel

from storage.columns import Sealed

# Constraints need names on SQLite too, or a migration could not change them.
metadata = MetaData(
    naming_convention={
        "ix": "ix_%(table_name)s_%(column_0_N_name)s",
        "uq": "uq_%(table_name)s_%(column_0_N_name)s",
        "ck": "ck_%(table_name)s_%(constraint_name)s",
        "fk": "fk_%(table_name)s_%(column_0_N_name)s",
        "pk": "pk_%(table_name)s",
    }
)

NEVER_REUSED = {"sqlite_autoincrement": True}
"""For tables whose ids leave the database (buttons, keys, the audit trail): SQLite would otherwise
give the id of an erased newest row to the next one."""


class Row(SQLModel):
    """What every table is made from."""

    metadata: ClassVar[MetaData] = metadata


class Secret(Row, table=True):
    """Secrets of this one database, under their names; made once (see `storage.vault`)."""

    __tablename__ = "secret"

    name: str = Field(primary_key=True)
    value: Any = Field(sa_type=Sealed, nullable=False)


def table(row: type[Row]) -> Table:
    """The Core table of a declared one, for queries: `people = table(PersonRow)`, `people.c.name`."""
    return metadata.tables[str(row.__tablename__)]


def partial(name: str, *columns: str, where: str, unique: bool = False) -> Index:
    """An index over the few rows that `where` names, on both engines.

    A query uses it only if it repeats `where` with values written out: neither engine matches a
    placeholder.
    """
    condition = text(where)
    return Index(name, *columns, unique=unique, sqlite_where=condition, postgresql_where=condition)
