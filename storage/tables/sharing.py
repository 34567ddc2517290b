"""What the processes of one store share among them: who does what, and when messages left."""

from datetime import datetime

from sqlmodel import Field

from storage.columns import Instant, Lookup
from storage.tables.base import Row


class LeaseRow(Row, table=True):
    """One process's right to do something that only one may do at a time, until `until`."""

    __tablename__ = "lease"

    name: str = Field(primary_key=True)
    holder: str
    until: datetime = Field(sa_type=Instant)


class DepartureRow(Row, table=True):
    """A message that leaves at an instant, or left a moment ago (R3); forgotten after seconds.

    `place` is where it stands in the line, which is earlier where it was given away late.
    """

    __tablename__ = "departure"

    chat: str = Field(primary_key=True, sa_type=Lookup)
    leaves_at: datetime = Field(primary_key=True, sa_type=Instant)
    place: datetime = Field(sa_type=Instant)
