"""Practice settings: what an admin may change in chat, each with its bounds and default."""

from __future__ import annotations

from dataclasses import dataclass, fields, replace
from datetime import timedelta
from decimal import Decimal

from scheduler.domain.pain import Thresholds

WEEKDAY_NAMES: tuple[str, ...] = (
    *("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"),
)
WEEKDAYS: tuple[str, ...] = tuple(name[:3] for name in WEEKDAY_NAMES)
"""Weekdays as settings keep them, from Monday."""


@dataclass(frozen=True, slots=True)
class Practice:
    """The practice's own choices. Durations are minutes unless named otherwise; `step_cutoff` is seconds."""

    name: str = ""
    phone: str = ""
    emergency_number: str = ""
    crisis_line: str = ""
    answer_hours: str = ""
    zone: str = "UTC"
    window: str = "08:00-20:00"
    late_minutes: int = 20
    question_minutes: int = 15
    invitation_days: int = 7
    tau_hours: int = 6
    close_hour: int = 12
    count_percent: int = 80
    pain_carry_on: int = 2
    pain_hold: int = 6
    morning_rise: int = 2
    morning_if_unknown: int = 3
    spread_minutes: int = 0
    clearance_reminder_days: int = 2
    week_start: str = "monday"
    missed_limit: int = 2
    silent_days: int = 7
    repeat_hours: int = 4
    work_hours: str = "09:00-17:00"
    work_days: str = "mon tue wed thu fri"
    files_in_chat: str = "no"
    step_cutoff: str = "15"
    step_slower_percent: int = 20
    step_weeks: int = 6
    erase_left: str = "no"
    backup_days: int = 30

    @property
    def callable(self) -> bool:
        """Whether the numbers are set without which nobody is prompted (C1)."""
        return bool(self.phone and self.emergency_number)

    @property
    def thresholds(self) -> Thresholds:
        return Thresholds(
            self.pain_carry_on, self.pain_hold, self.morning_rise, self.morning_if_unknown
        )

    @property
    def first_weekday(self) -> int:
        """The weekday on which a week starts, Monday = 0 (W1)."""
        return WEEKDAYS.index(self.week_start[:3])

    @property
    def working_days(self) -> tuple[int, ...]:
        """The weekdays of the working hours, Monday = 0 (H6)."""
        return tuple(WEEKDAYS.index(day[:3]) for day in self.work_days.split())

    @property
    def step_cutoff_hundredths(self) -> int:
        """The step test's cut-off in hundredths of a second."""
        return int(Decimal(self.step_cutoff) * 100)

    @property
    def tau(self) -> timedelta:
        return timedelta(hours=self.tau_hours)


BOUNDS: dict[str, tuple[int, int]] = {
    "late_minutes": (5, 120),
    "question_minutes": (5, 60),
    "invitation_days": (1, 30),
    "tau_hours": (1, 24),
    "close_hour": (0, 23),
    "count_percent": (50, 100),
    "pain_carry_on": (0, 5),
    "pain_hold": (1, 10),
    "morning_rise": (1, 5),
    "morning_if_unknown": (1, 10),
    "spread_minutes": (0, 120),
    "clearance_reminder_days": (1, 14),
    "missed_limit": (1, 7),
    "silent_days": (2, 30),
    "repeat_hours": (1, 24),
    "step_slower_percent": (5, 100),
    "step_weeks": (1, 26),
    "backup_days": (1, 365),
}
"""Smallest and largest value of every whole-number setting."""

DECIMALS: dict[str, tuple[int, int]] = {"step_cutoff": (5, 60)}
"""The same of settings with up to two digits after the point."""

NAMES: tuple[str, ...] = tuple(field.name for field in fields(Practice))


def from_rows(rows: dict[str, str]) -> Practice:
    """The practice from stored text; unknown names of other versions are left alone."""
    values: dict[str, str | int] = {
        name: int(value) if name in BOUNDS else value
        for name, value in rows.items()
        if name in NAMES
    }
    return replace(Practice(), **values)  # type: ignore[arg-type] # names and kinds are checked above
