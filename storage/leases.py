"""Rights that one process of a store holds at a time."""

from datetime import datetime, timedelta

from sqlalchemy import Connection, bindparam, delete, or_

from storage.conflicts import INSERTS
from storage.tables import LeaseRow, table

leases = table(LeaseRow)

TAKE = {
    dialect: (new := insert(leases)).on_conflict_do_update(
        index_elements=[leases.c.name],
        set_={"holder": new.excluded.holder, "until": new.excluded.until},
        where=or_(
            leases.c.holder == new.excluded.holder,
            leases.c.until < bindparam("now", type_=leases.c.until.type),
        ),
    )
    for dialect, insert in INSERTS.items()
}
"""Takes a lease that is free, has run out, or is one's own; the row count says whether."""
GIVE_BACK = delete(leases).where(
    leases.c.name == bindparam("which"), leases.c.holder == bindparam("whose")
)


class Leases:
    """Leases by name; `scheduler.ports.Leases` says what is promised."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def take(self, name: str, holder: str, now: datetime, length: timedelta) -> bool:
        row = {"name": name, "holder": holder, "until": now + length, "now": now}
        return self._connection.execute(TAKE[self._connection.dialect.name], row).rowcount == 1

    def give_back(self, name: str, holder: str) -> None:
        self._connection.execute(GIVE_BACK, {"which": name, "whose": holder})
