"""Something a clinician should know: open until it is closed with an outcome."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from typing import Any

OUTCOMES: tuple[str, ...] = ("called", "referred", "advised", "no-action", "note")
"""How a flag can be closed (H6); never by being seen."""

BY_ITSELF: tuple[str, ...] = (
    "restored",
    "heard",
    "back",
    "over",
    "cleared",
    "planned",
    "tested",
    "taken-back",
)
"""How a flag ends by itself: what it was about is no longer so."""
KINDS: frozenset[str] = frozenset(
    {
        "pain",
        "fall",
        "question-open",
        "not-read",
        "too-much",
        "unreachable",
        "words",
        "week-out-of-reach",
        "missed-days",
        "silent",
        "break",
        "lapsed",
        "review-due",
        "plan-ended",
        "step-test",
        "step-due",
        "left",
    }
)
"""What a flag can be about; each has a name in the catalogue."""
ROUTINE: frozenset[str] = frozenset({"week-out-of-reach", "missed-days", "silent", "step-due"})
"""Kinds that come in one summary a working day."""
REASONS: tuple[str, ...] = ("hold", "no-clearance")
"""Why a client needs her clinician beside the kinds of open flags."""


@dataclass(frozen=True, slots=True)
class Flag:
    """One flag. `episode` names what it is about: while a flag of an episode is open there is no second.

    `id` is the number shown, so that a copy sent twice is recognisable. `details` holds what happened and
    the client's own words, as arguments of the flag's text. `due_at` is when something must be done about
    the flag by itself (repeat it, tell somebody else, put it into the summary), `step` how often that was.
    """

    client: int
    clinician: int
    kind: str
    urgent: bool
    episode: str
    opened_at: datetime
    details: Mapping[str, Any] = field(default_factory=dict)
    id: int = 0
    closed_at: datetime | None = None
    outcome: str = ""
    due_at: datetime | None = None
    step: int = 0

    def __post_init__(self) -> None:
        if self.kind not in KINDS:
            raise ValueError(f"{self.kind!r} is no kind of flag.")
