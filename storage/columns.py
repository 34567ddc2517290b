"""Column types: what a value looks like in Python and how it rests, the same on both engines."""
# ruff: noqa: ARG002 - the signatures are SQLAlchemy's

from datetime import UTC, date, datetime, timedelta
from enum import StrEnum
from typing import Any, TypeVar

from sqlalchemy import BigInteger, Date, Dialect, Engine, Text
from sqlalchemy.sql.operators import OperatorType
from sqlalchemy.types import TypeDecorator, TypeEngine

from storage.keys import Keyring, clean

EPOCH = datetime(1970, 1, 1, tzinfo=UTC)
MICROSECOND = timedelta(microseconds=1)

Member = TypeVar("Member", bound=StrEnum)


class Instant(TypeDecorator[datetime]):
    """An aware datetime in, one in UTC out; rests as whole microseconds since 1970 (64 bits).

    An integer sorts, compares and keeps its microseconds alike on both engines, which SQLite's text
    timestamps do not. Refuses naive datetimes. Sums with a timedelta are made in Python.
    """

    impl = BigInteger
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> int | None:
        if value is None:
            return None
        if value.tzinfo is None:
            raise ValueError("An instant has a zone; this datetime has none.")
        return (value - EPOCH) // MICROSECOND

    def process_result_value(self, value: int | None, dialect: Dialect) -> datetime | None:
        return None if value is None else EPOCH + timedelta(microseconds=value)


class Day(TypeDecorator[date]):
    """A calendar day. Refuses a datetime, which Python takes for a date."""

    impl = Date
    cache_ok = True

    def process_bind_param(self, value: date | None, dialect: Dialect) -> date | None:
        if isinstance(value, datetime):
            raise TypeError("A day is a date, not an instant: which zone would it be in?")
        return value


class CleanText(TypeDecorator[str]):
    """Unsealed text that people or the network may have written, without what engines refuse."""

    impl = Text
    cache_ok = True

    def process_bind_param(self, value: str | None, dialect: Dialect) -> str | None:
        return None if value is None else clean(value)


class OneOf(TypeDecorator[Member]):
    """A member of a StrEnum; rests as its value, so that a new member needs no migration.

    Refuses what is no member, on the way in and on the way out.
    """

    impl = Text
    cache_ok = True

    def __init__(self, members: type[Member]) -> None:
        super().__init__()
        self.members = members

    def process_bind_param(self, value: Member | str | None, dialect: Dialect) -> str | None:
        return None if value is None else self.members(value).value

    def process_result_value(self, value: str | None, dialect: Dialect) -> Member | None:
        return None if value is None else self.members(value)


class Sealed(TypeDecorator[Any]):
    """A JSON value that rests encrypted (D4) with the database's keyring; NULL stays NULL.

    It is never the same text twice, so it cannot be compared, sorted or unique in the database:
    `Lookup` stands beside what must be found again, and names are sorted in Python.
    """

    impl = Text
    cache_ok = True

    def process_bind_param(self, value: Any, dialect: Dialect) -> str | None:
        return None if value is None else _keyring(dialect).seal(value)

    def process_result_value(self, value: str | None, dialect: Dialect) -> Any:
        return None if value is None else _keyring(dialect).open(value)

    def coerce_compared_value(self, op: OperatorType | None, value: Any) -> TypeEngine[Any]:
        raise TypeError("A sealed column equals nothing: compare a Lookup column beside it.")


class Lookup(TypeDecorator[str]):
    """Text in, its keyed hash at rest: equal for equal text, so it can be unique and found.

    `where(people.c.user_lookup == "4711")` hashes "4711" on the way. What comes out is the hash.
    """

    impl = Text
    cache_ok = True

    def process_bind_param(self, value: str | None, dialect: Dialect) -> str | None:
        return None if value is None else _keyring(dialect).lookup(value)


def give_keyring(engine: Engine, keyring: Keyring) -> None:
    """Lets the `Sealed` and `Lookup` columns of this engine's connections use `keyring`.

    A column type is shared by all databases of a process and is handed only the dialect object at
    work, of which each engine has its own; so that is where the keyring hangs.
    """
    engine.dialect.keyring = keyring  # type: ignore[attr-defined]


def _keyring(dialect: Dialect) -> Keyring:
    try:
        keyring: Keyring = dialect.keyring  # type: ignore[attr-defined]
    except AttributeError:
        raise RuntimeError("Sealed columns need an engine of storage.engine.Database.") from None
    return keyring
