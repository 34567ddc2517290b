"""An update that cannot be handled: tried again, then set aside where an admin sees it (R1)."""

from __future__ import annotations

from datetime import datetime, timedelta

from scheduler.domain.messages import Lane, message
from scheduler.domain.people import Role
from scheduler.ports import Arrived, Outgoing, Tx


def failed(  # one failure's facts
    tx: Tx, row: Arrived, worker: str, again: timedelta | None, reason: str, now: datetime
) -> None:
    """Note a failure. After the last try the admins are told its number; the chat's next updates go on."""
    tx.inbox.failed(row.update_id, worker, now + again if again else None, reason)
    if again:
        return
    for admin in tx.people.everyone():
        if admin.role is Role.ADMIN and admin.account is not None:
            tx.outbox.add(
                Outgoing(
                    key=f"aside:{row.update_id}:{admin.id}",
                    lane=Lane.FLAG,
                    message=message("set-aside", update=row.update_id),
                    person=admin.id,
                ),
                now,
            )
