"""How long a client has been on a break, and when that ends the clearance (C2). Days are local dates."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from types import MappingProxyType

from scheduler.domain.people import Pause

A_DAY = timedelta(days=1)
REASONS: tuple[str, ...] = ("travel", "illness", "other")
LENGTHS: Mapping[str, int | None] = MappingProxyType(
    {"today": 1, "3": 3, "7": 7, "14": 14, "unsure": None}
)
"""The lengths that have a button, in days with the first one counted; `None`: nobody knows yet."""
LONGEST = 366
"""Days of the longest break that can be agreed on; one without an end goes on until somebody ends it."""
LAPSE_DAYS = 14
"""A break of so many days ends the clearance, whatever its reason (C2)."""
LAPSE_DAYS_ILL = 8
"""One for illness over 7 days does, so its 8th day is the first (C2)."""


@dataclass(frozen=True, slots=True)
class Wish:
    """A break as far as it was said. Days are local dates.

    `first` `None`: it begins today, or with `later` on a later day that was not named. `days` counts from
    the first day, both included, where no `last` was named; `unsure`: nobody knows its end yet.
    """

    reason: str | None = None
    first: date | None = None
    last: date | None = None
    days: int | None = None
    unsure: bool = False
    later: bool = False

    @property
    def says_how_long(self) -> bool:
        return self.last is not None or self.days is not None or self.unsure

    def dates(self, today: date) -> tuple[date, date | None]:
        """The first and the last day of a break asked for today, once both are said."""
        first = self.first or today
        return first, self.last if self.days is None else first + (self.days - 1) * A_DAY


def last_day(first: date, length: str) -> date | None:
    """The last day of a break of one of the `LENGTHS` that begins on `first`."""
    days = LENGTHS[length]
    return None if days is None else first + timedelta(days=days - 1)


def most_days(
    pauses: Collection[Pause], first: date, last: date, reason: str | None = None
) -> int:  # fmt: skip
    """Most days in a row from `first` to `last`, both included, on a break; of one reason if that is named.

    One break that follows on another without a day between goes on with its count.
    """
    counted = [pause for pause in pauses if reason in {None, pause.reason}]
    most = run = 0
    for n in range((last - first).days + 1 if counted else 0):
        run = run + 1 if any(pause.covers(first + n * A_DAY) for pause in counted) else 0
        most = max(most, run)
    return most


def ends_clearance(pauses: Collection[Pause], cleared: date, today: date) -> bool:
    """Whether breaks have become so long that the clinician must clear the client again (C2).

    A break that is over by now counts too, whenever this is asked; days before the clearance do not:
    she knew of them. The day of the clearance itself counts.
    """
    ill = most_days(pauses, cleared, today, "illness")
    return most_days(pauses, cleared, today) >= LAPSE_DAYS or ill >= LAPSE_DAYS_ILL
