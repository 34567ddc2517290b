"""What a journey prescribed and did: all that the checker believes beside the log and the ledger."""

from dataclasses import dataclass, field
from datetime import date, datetime, timedelta

from dateutil import tz

from tests.journeys.log import Line


@dataclass(frozen=True)
class Hours:
    """A client's hours from an instant on. Minutes of the local day; zone by its IANA name."""

    since: datetime
    zone: str
    window: tuple[int, int]
    quiet: tuple[tuple[int, int], ...] = ()

    def local(self, at: datetime) -> datetime:
        """The wall clock there, by dateutil: it reads the zone files with code of its own."""
        return at.astimezone(tz.gettz(self.zone)).replace(tzinfo=None)

    def free(self, at: datetime) -> bool:
        """Whether a bout may fall there: S2 and the words "window, quiet time" of the specification."""
        wall = self.local(at)
        minute = wall.hour * 60 + wall.minute
        inside = self.window[0] <= minute <= self.window[1]
        return inside and not any(a < minute < b for a, b in self.quiet)


@dataclass
class Facts:
    """One client. Counts are reps, `gap` is a timedelta, weekdays count from Monday = 0.

    `unheard` are bouts whose prompt was accepted while the bot never heard so: the bot cannot write
    on such a prompt that its time is up. `made_up` are days agreed on instead of another (W3).
    """

    name: str
    account: int
    person: int
    clinician: int
    total: int
    bout_reps: int
    bout_max: int
    gap: timedelta
    weekdays: tuple[int, ...]
    rest_days: int
    hours: list[Hours]
    cleared_at: datetime | None
    discharged_at: datetime | None = None
    unheard: set[int] = field(default_factory=set)
    made_up: set[date] = field(default_factory=set)

    def hours_at(self, at: datetime) -> Hours:
        """The latest said by then; of two said at once, the second."""
        return next(each for each in reversed(self.hours) if each.since <= at)

    def day(self, at: datetime) -> date:
        """The client's date at an instant."""
        return self.hours_at(at).local(at).date()


@dataclass(frozen=True)
class Row:
    """A line of the ledger as it rests; `voids` names the line that it takes back."""

    id: int
    day: date
    reps: int
    at: datetime
    source: str
    bout: int | None
    voids: int | None


@dataclass
class Asked:
    """A prompt as accepted: when, for which local day, and what ended it."""

    bout: int
    n: int
    at: datetime
    day: date
    reps: int
    put_off_before: bool
    ended: Line | None = None
    ended_by: str = ""

    @property
    def withdrawn(self) -> bool:
        return self.ended_by in {"put-off", "alarm"}
