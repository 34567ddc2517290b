"""How fast messages leave: no more than the send rate over all chats and workers (R3).

The places themselves are handed out by the store, to whoever claims (`Outbox.claim_paced`).
"""

from __future__ import annotations

from datetime import timedelta

from scheduler.ports import Pace

AHEAD = timedelta(milliseconds=15)
"""Longer than a claim takes, so that no place goes by unused; an answer may have to wait so long."""


def pace_of(rate: float) -> Pace:
    """The pace of so many messages a second."""
    return Pace(timedelta(seconds=1) / rate, AHEAD)
