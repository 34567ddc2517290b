"""Clients who are gone, and when the record of one who left is erased (D1)."""

from __future__ import annotations

from datetime import datetime, timedelta

from scheduler.domain.people import Client, State
from scheduler.domain.settings import Practice

GONE = frozenset({State.LEFT, State.DISCHARGED})
ERASED_AFTER = timedelta(days=7)
"""Where the practice erases who left: her clinician still sees in this time that she did (ours)."""


def erase_at(client: Client, practice: Practice) -> datetime | None:
    """When the record of a client who left is to be erased by itself; `None` where it is kept."""
    if client.left_at is None or practice.erase_left != "yes":
        return None
    return client.left_at + ERASED_AFTER
