"""A practice's working hours: when a flag that is not urgent reaches a clinician (H6).

Working hours run from their first minute to before their last on working weekdays (Monday = 0), by the
wall clock of the practice's zone, whatever a clock change does to them.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from scheduler.domain.hours import Span, instant, local_day
from scheduler.domain.weekdays import WEEK


@dataclass(frozen=True, slots=True)
class Working:
    """Hours and weekdays in a zone; at least one weekday."""

    zone: ZoneInfo
    hours: Span
    weekdays: tuple[int, ...]

    def is_open(self, now: datetime) -> bool:
        """Whether an instant (UTC) lies within working hours."""
        day = local_day(now, self.zone)
        start, end = (instant(day, m, self.zone) for m in (self.hours.start, self.hours.end))
        return day.weekday() in self.weekdays and start <= now < end

    def next_start(self, now: datetime) -> datetime:
        """The first start of working hours (UTC) after an instant."""
        day = local_day(now, self.zone)
        for _ in range(WEEK + 1):
            start = instant(day, self.hours.start, self.zone)
            if day.weekday() in self.weekdays and start > now:
                return start
            day += timedelta(days=1)
        raise ValueError("Working hours need a weekday.")

    def from_now(self, now: datetime) -> datetime:
        """Now within working hours, else their next start."""
        return now if self.is_open(now) else self.next_start(now)
