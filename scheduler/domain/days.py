"""One client's day as it runs: what was planned, asked, done and dropped.

Days are dates in the client's own zone; instants are aware UTC datetimes.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime, timedelta
from enum import StrEnum

from scheduler.domain.spacing import Placed

LAST_PROMPT_OPEN = timedelta(minutes=60)
"""How long the last prompt of a day waits for its answer (P6)."""
LATERS_PER_BOUT = 3
"""How often one bout can be put off (P10)."""
NUDGES_PER_DAY = 2
SPARE_MESSAGES = 2
"""Messages of the bot's own accord on one day: the planned bouts and this many more (P6)."""
LOAD_DAY_SHARE = 0.2
"""A day with more than this share of a daily total done needs rest after it."""


class BoutState(StrEnum):
    WAITING = "waiting"
    ASKED = "asked"
    DONE = "done"
    SKIPPED = "skipped"
    EXPIRED = "expired"
    LATER = "later"
    WITHDRAWN = "withdrawn"


@dataclass(frozen=True, slots=True)
class Day:
    """One impact day: the total in force, and the bouts as first worked out (kept for the spread, S7).

    `verdict` and `why` (see `domain.week`) are set when the day closes, at `closed_at`, and stay (Z2).
    """

    client: int
    day: date
    plan: int
    total: int
    planned: tuple[Placed, ...]
    nudges: int = 0
    away_told: bool = False
    shortfall: int = 0
    closed_at: datetime | None = None
    verdict: str = ""
    why: str = ""


@dataclass(frozen=True, slots=True)
class Bout:
    """One time a bout is asked: the `n`-th of its day (from 1).

    `asked_at` is when the platform accepted the prompt; gaps count from it (R2). `laters` says how often
    this bout had been put off before; such a prompt is not of the bot's own accord. `not_before` is the time
    it was put off to, or before which the day must not go on.
    """

    id: int
    client: int
    day: date
    n: int
    reps: int
    due_at: datetime
    expires_at: datetime
    state: BoutState = BoutState.WAITING
    asked_at: datetime | None = None
    nudge_at: datetime | None = None
    nudged: bool = False
    laters: int = 0
    not_before: datetime | None = None
    message_id: int | None = None

    @property
    def own_accord(self) -> bool:
        return self.laters == 0


@dataclass(frozen=True, slots=True)
class Entry:
    """One line of the ledger. Never changed; a correction is a new line that voids this one.

    `source` is unique: the update (and its part) that said so. `bout` is the prompt it answered, if any.
    """

    id: int
    client: int
    day: date
    reps: int
    at: datetime
    source: str
    bout: int | None = None
    message_id: int | None = None


def done(entries: tuple[Entry, ...]) -> int:
    """Reps done by the entries that stand."""
    return sum(entry.reps for entry in entries)


def dropped(bouts: tuple[Bout, ...]) -> int:
    """Reps that were declined or not answered: they are not asked again (S4)."""
    return sum(b.reps for b in bouts if b.state in {BoutState.SKIPPED, BoutState.EXPIRED})


def still_open(bouts: tuple[Bout, ...]) -> Bout | None:
    """The prompt that waits for its answer, if there is one."""
    return next((b for b in bouts if b.state is BoutState.ASKED), None)


def waiting(bouts: tuple[Bout, ...]) -> Bout | None:
    """The prompt that is to be sent next, if there is one."""
    return next((b for b in bouts if b.state is BoutState.WAITING), None)


def silent_in_a_row(bouts: tuple[Bout, ...]) -> int:
    """How many of the latest prompts of the day had no answer, counted back from the last (P6)."""
    asked = [b for b in sorted(bouts, key=lambda b: b.n) if b.asked_at is not None]
    run = 0
    for bout in reversed(asked):
        if bout.state is BoutState.ASKED:
            continue
        if bout.state is not BoutState.EXPIRED:
            break
        run += 1
    return run


def messages_left(day: Day | None, bouts: tuple[Bout, ...], others: int = 0) -> int:
    """How many more messages of its own accord the bot may send on this day (P6).

    `others` counts those that were neither prompts nor nudges. On a day without impact `day` is `None`.
    """
    sent = sum(1 for b in bouts if b.asked_at is not None and b.own_accord) + others
    if day is None:
        return max(0, SPARE_MESSAGES - sent)
    return max(0, len(day.planned) + SPARE_MESSAGES - sent - day.nudges - day.away_told)


def is_load(reps: int, total: int) -> bool:
    """Whether a day's reps need rest after them: more than 20 % of a daily total."""
    return reps > LOAD_DAY_SHARE * total
