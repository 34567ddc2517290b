"""The practice's settings and its audit trail."""

from datetime import datetime
from typing import Any

from sqlalchemy import Connection, bindparam, insert, select

from scheduler.domain.settings import Practice, from_rows
from storage.conflicts import replacing
from storage.tables import AuditRow, SettingRow, table

settings = table(SettingRow)
trail = table(AuditRow)

PRACTICE = select(settings.c.name, settings.c.value)
VALUE = select(settings.c.value).where(settings.c.name == bindparam("name"))
PUT = replacing(settings)
AUDIT = insert(trail)


class Book:
    """Settings and the audit trail; `scheduler.ports.Book` says what is promised."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection
        self._practice: Practice | None = None  # many rules of one transaction ask for it

    def practice(self) -> Practice:
        if self._practice is None:
            rows = self._connection.execute(PRACTICE)
            self._practice = from_rows({row.name: row.value for row in rows})
        return self._practice

    def put(self, name: str, value: str) -> None:
        self._practice = None
        put = PUT[self._connection.dialect.name]
        self._connection.execute(put, {"name": name, "value": value})

    def read(self, name: str) -> str | None:
        found = self._connection.execute(VALUE, {"name": name})
        value: str | None = found.scalar_one_or_none()
        return value

    def audit(
        self, who: int | None, action: str, about: int | None, now: datetime, **change: Any
    ) -> None:
        row = {"at": now, "who": who, "action": action, "about": about, "change": change}
        self._connection.execute(AUDIT, row)

    def audited(self, who: int, action: str, about: int, since: datetime) -> bool:
        of_her = (trail.c.about == about, trail.c.who == who, trail.c.action == action)
        found = select(trail.c.id).where(*of_her, trail.c.at >= since).limit(1)
        return self._connection.execute(found).first() is not None
