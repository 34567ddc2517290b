"""An update that cannot be handled: tried again, then set aside where an admin sees it (R1)."""

from __future__ import annotations

from datetime import datetime, timedelta

from scheduler.domain.messages import Lane, message
from scheduler.ports import Arrived, Tx
from scheduler.usecases.post import tell_admins


def failed(  # one failure's facts
    tx: Tx, row: Arrived, worker: str, again: timedelta | None, reason: str, now: datetime
) -> None:
    """Note a failure. After the last try the admins are told its number; the chat's next updates go on."""
    tx.inbox.failed(row.update_id, worker, now + again if again else None, reason)
    if again:
        return
    words = message("set-aside", update=row.update_id)
    tell_admins(tx, f"aside:{row.update_id}", Lane.FLAG, words, now)
