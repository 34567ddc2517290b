"""The practice's settings and its audit trail."""

from datetime import datetime
from typing import Any

from sqlalchemy import Connection, insert, select

from scheduler.domain.settings import Practice, from_rows
from storage.engine import conflict_insert
from storage.tables import AuditRow, SettingRow, table

settings = table(SettingRow)
trail = table(AuditRow)


class Book:
    """Settings and the audit trail; `scheduler.ports.Book` says what is promised."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection
        self._practice: Practice | None = None  # many rules of one transaction ask for it

    def practice(self) -> Practice:
        if self._practice is None:
            rows = self._connection.execute(select(settings.c.name, settings.c.value))
            self._practice = from_rows({row.name: row.value for row in rows})
        return self._practice

    def put(self, name: str, value: str) -> None:
        self._practice = None
        new = conflict_insert(self._connection, settings).values(name=name, value=value)
        again = new.on_conflict_do_update(index_elements=["name"], set_={"value": value})
        self._connection.execute(again)

    def read(self, name: str) -> str | None:
        query = select(settings.c.value).where(settings.c.name == name)
        value: str | None = self._connection.execute(query).scalar_one_or_none()
        return value

    def audit(
        self, who: int | None, action: str, about: int | None, now: datetime, **change: Any
    ) -> None:
        row = {"at": now, "who": who, "action": action, "about": about, "change": change}
        self._connection.execute(insert(trail).values(row))

    def audited(self, who: int, action: str, about: int, since: datetime) -> bool:
        of_her = (trail.c.about == about, trail.c.who == who, trail.c.action == action)
        found = select(trail.c.id).where(*of_her, trail.c.at >= since).limit(1)
        return self._connection.execute(found).first() is not None
