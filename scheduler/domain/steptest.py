"""The four square step test: two trials against the clock, the better time counts (T1, T3).

Dite W, Temple VA. Arch Phys Med Rehabil 2002;83:1566-71, doi:10.1053/apmr.2002.35469 (abstract read). It
screens and tells nothing certain: its results are "screen positive" or not, never what will happen.
Times are whole hundredths of a second, so that what lies on an edge is exact.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from datetime import date, datetime, timedelta

Trial = int | None
"""The time of one trial in hundredths of a second; `None` if it was void.

Void: balance was lost, a marker was touched, or the squares came in a wrong order.
"""
SECOND = 100
SHORTEST, LONGEST = 2 * SECOND, 300 * SECOND
"""Times outside are taken for slips of the keyboard (ours)."""
TRIALS = 2
GRACE = timedelta(days=7)
"""So long after a client was asked for a retest at home her clinician is reminded of it (ours)."""


@dataclass(frozen=True, slots=True)
class StepTest:
    """One test as logged by a person (`by`), on a local day of the client."""

    id: int
    client: int
    day: date
    at: datetime
    trials: tuple[Trial, ...]
    by: int

    @property
    def best(self) -> Trial:
        """The better time; `None` where both trials were void: the test could not be completed."""
        return better(self.trials)


@dataclass(frozen=True, slots=True)
class Verdict:
    """What a test says beside the earlier ones. `best_before`: the best before it, if any."""

    positive: bool
    slower: bool
    best_before: Trial

    @property
    def flagged(self) -> bool:
        return self.positive or self.slower


def better(trials: Collection[Trial]) -> Trial:
    """The shortest time of the trials that were not void."""
    return min((trial for trial in trials if trial is not None), default=None)


def judge(
    trials: Collection[Trial], before: Collection[StepTest], cutoff: int, slower_percent: int
) -> Verdict:
    """Screen positive: over `cutoff` hundredths, or no time. Slower: by more than so much than her best.

    Both strictly: a time on the edge is neither. Cut-off 15 s: common practice, and from memory for the
    paper; other groups have others, so it is a setting. 20 % slower: ours.
    """
    best, best_before = better(trials), better([test.best for test in before])
    if best is None:
        return Verdict(positive=True, slower=False, best_before=best_before)
    slower = best_before is not None and best * 100 > best_before * (100 + slower_percent)
    return Verdict(best > cutoff, slower, best_before)


def is_time(trial: Trial) -> bool:
    """Whether it can be the time of a trial, or is none."""
    return trial is None or SHORTEST <= trial <= LONGEST


def due_on(stepped_on: date, weeks: int) -> date:
    """The local day on which a retest is due, counted from the last test."""
    return stepped_on + timedelta(weeks=weeks)


def seconds(trial: Trial) -> float | None:
    """A time in seconds, for a message or a file."""
    return None if trial is None else trial / SECOND
