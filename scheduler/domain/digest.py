"""One page a week for a clinician: who needs her, and how each client kept the plan (W6, K3).

Figures are computed from days, ledger and reports by pure functions, so that independent code can
check them. Days are dates in the client's own zone.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime, timedelta

from scheduler.domain.index import spread_of_day
from scheduler.domain.plan import Plan
from scheduler.domain.week import Verdict, counts

OPEN = "open"
"""A day of the week that is not judged yet: its figures may still change."""


@dataclass(frozen=True, slots=True)
class Kept:
    """One day of a client as it stands: what was planned and what the ledger says.

    `verdict` is empty while the day is open; `planned_at` are the day's bouts as first worked out
    (UTC), none if it never began. `bouts` are the entries that stand: instant (UTC) and reps.
    """

    day: date
    plan: Plan
    total: int
    planned: bool
    verdict: str
    why: str
    planned_at: tuple[datetime, ...]
    bouts: tuple[tuple[datetime, int], ...]

    @property
    def done(self) -> int:
        return sum(reps for _, reps in self.bouts)

    @property
    def excused(self) -> bool:
        return self.verdict == Verdict.EXCUSED

    @property
    def bouts_planned(self) -> int:
        """Bouts of the day as it began, else the daily total in bouts of the plan's size (S1)."""
        return len(self.planned_at) or -(-self.total // self.plan.bout_reps)


@dataclass(frozen=True, slots=True)
class Figures:
    """A client's week in four separate figures (W6), as counts; a `None` is shown as a dash.

    `days` of `days_needed` counted; `reps_capped` leaves out what a day had beyond its total; `spread`
    is the mean of the days that have one, 0 to 1. `excused` days are in no denominator; `still_open`
    are in all of them as far as they have come.
    """

    days: int
    days_needed: int
    reps: int
    reps_capped: int
    reps_prescribed: int
    bouts: int
    bouts_planned: int
    spread: float | None
    excused: int
    still_open: int


def figures(
    days: tuple[Kept, ...], *, needed: int, percent: int, tau: timedelta, today: date
) -> Figures:
    """The figures of one client's week. `needed` is the plan's minimum, less what was excused.

    A day not planned that reached the threshold counts as an impact day; other extra reps are in no
    figure. Days after `today` are not yet due and in no figure either.
    """
    reached = [each for each in days if _counted(each, percent)]
    impact = [
        each
        for each in days
        if not each.excused and (each.planned or each in reached) and each.day <= today
    ]
    spreads = [
        spread
        for each in impact
        if each.done
        and (
            spread := spread_of_day(
                each.bouts, each.planned_at, each.plan.bout_max, tau
            )
        ) is not None
    ]  # fmt: skip
    return Figures(
        days=len(reached),
        days_needed=needed,
        reps=sum(each.done for each in impact),
        reps_capped=sum(min(each.done, each.total) for each in impact),
        reps_prescribed=sum(each.total for each in impact),
        bouts=sum(len(each.bouts) for each in impact),
        bouts_planned=sum(each.bouts_planned for each in impact),
        spread=sum(spreads) / len(spreads) if spreads else None,
        excused=sum(1 for each in days if each.excused),
        still_open=sum(1 for each in impact if not each.verdict),
    )


def _counted(kept: Kept, percent: int) -> bool:
    """As judged; an open day, or one that was never planned, by its reps."""
    if kept.verdict:
        return kept.verdict == Verdict.COUNTED
    return counts(kept.done, kept.total, percent)
