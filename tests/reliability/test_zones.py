"""Every zone with clock changes, every change of two years, and the 48 half-hours around each (Z1, Z2, S2).

The truth is dateutil: it reads the zone files with code of its own. Links and zones that change by the same
rules are looked at once, unless `BOUTWISE_ZONES=all` asks for every name.
"""

import zoneinfo
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta, tzinfo
from itertools import pairwise
from zoneinfo import ZoneInfo

import pytest
from dateutil import tz

from scheduler.domain.hours import Hours, Span, day_hours_in_utc, instant, local_day
from scheduler.domain.spacing import spread_day
from tests.reliability.sizes import ZONES

FIRST, LAST = datetime(2027, 1, 1, tzinfo=UTC), datetime(2029, 1, 1, tzinfo=UTC)
A_WEEK, A_DAY = timedelta(days=7), timedelta(days=1)
HALF_HOUR, A_MINUTE = timedelta(minutes=30), timedelta(minutes=1)
GAP = timedelta(minutes=40)
NOON = 12 * 60


@dataclass(frozen=True)
class Change:
    """A clock change: the first instant with the new offset."""

    zone: str
    at: datetime

    @property
    def truth(self) -> tzinfo:
        return truth(self.zone)


def truth(zone: str) -> tzinfo:
    found = tz.gettz(zone)
    assert found is not None, zone
    return found


def wall(at: datetime, zone: tzinfo) -> datetime:
    """The wall clock at an instant, by dateutil."""
    return at.astimezone(zone).replace(tzinfo=None)


def offset(at: datetime, zone: tzinfo) -> timedelta:
    return wall(at, zone) - at.replace(tzinfo=None)


def changes_of(zone: str) -> Iterator[Change]:
    """Found by looking once a week, which no two changes share, and then halving; with dateutil only."""
    rules, at = truth(zone), FIRST
    while at < LAST:
        if offset(at, rules) != offset(at + A_WEEK, rules):
            before, after = at, at + A_WEEK
            while after - before > A_MINUTE:
                middle = before + (after - before) / 2
                middle -= timedelta(seconds=middle.second, microseconds=middle.microsecond)
                if offset(middle, rules) == offset(before, rules):
                    before = middle
                else:
                    after = middle
            yield Change(zone, after)
        at += A_WEEK


def changes() -> list[Change]:
    """All changes; of zones that change at the same instants between the same offsets the first by name."""
    seen: set[object] = set()
    found: list[Change] = []
    for zone in sorted(zoneinfo.available_timezones()):
        rules = truth(zone)
        hers = list(changes_of(zone))
        same = tuple((c.at, offset(c.at, rules), offset(c.at - A_MINUTE, rules)) for c in hers)
        if ZONES == "all" or same not in seen:
            found += hers
        seen.add(same)
    return found


@pytest.fixture(scope="module", name="every")
def every_fixture() -> list[Change]:
    every = changes()
    assert len({c.zone for c in every}) >= 25
    assert len(every) >= 100
    return every


def test_no_local_day_is_skipped_or_comes_twice(every: list[Change]) -> None:
    """Half an hour after half an hour the date stays or goes on by one day, as on a calendar there."""
    for change in every:
        zone = ZoneInfo(change.zone)
        moments = [change.at + n * HALF_HOUR for n in range(-48, 49)]
        dates = [local_day(each, zone) for each in moments]
        assert dates == [wall(each, change.truth).date() for each in moments], change
        steps = {after - before for before, after in pairwise(dates)}
        assert steps <= {timedelta(0), A_DAY}, (change, steps)


def test_a_day_closes_at_noon_of_the_next_day_by_the_wall_clock_there(every: list[Change]) -> None:
    for change in every:
        zone, day = ZoneInfo(change.zone), wall(change.at, change.truth).date()
        closes = [instant(day + n * A_DAY, NOON, zone) for n in (-1, 0, 1, 2)]
        for n, at in zip((-1, 0, 1, 2), closes, strict=True):
            assert wall(at, change.truth) == datetime.combine(day + n * A_DAY, time(12)), change
        lengths = {after - before for before, after in pairwise(closes)}
        jump = offset(change.at, change.truth) - offset(change.at - A_MINUTE, change.truth)
        assert lengths == {A_DAY, A_DAY - jump}, change


def test_a_wall_clock_minute_means_the_first_of_two_and_moves_on_where_it_is_skipped(
    every: list[Change],
) -> None:
    for change in every:
        zone, rules = ZoneInfo(change.zone), change.truth
        day = wall(change.at, rules).date()
        for minute in range(0, 1440, 30):
            at = instant(day, minute, zone)
            wanted = datetime.combine(day, time()) + minute * A_MINUTE
            shown = wall(at, rules)
            if tz.datetime_exists(wanted, rules):
                assert shown == wanted, (change, minute)
                assert not at.astimezone(rules).fold, (change, minute)
            else:
                there = tz.resolve_imaginary(wanted.replace(tzinfo=rules)).replace(tzinfo=None)
                assert shown == there > wanted, (change, minute)


@pytest.mark.parametrize("length", [90, 360])
def test_bouts_keep_to_the_window_the_quiet_time_and_the_real_gap(
    every: list[Change], length: int
) -> None:
    """Windows from each half-hour of the day of the change and of the day before it.

    Both as instants (a time that is skipped moves on, of two the first is meant) and as the clock shows them.
    """
    for change in every:
        noon = wall(change.at, change.truth)
        for day in {noon.date(), (noon - A_MINUTE).date()}:
            for start in range(0, 1440, 30):
                end = min(start + length, 1440)
                if end - start > 30:
                    quiet = Span(start + 30, min(start + 75, end))
                    spread_is_right(change, day, Hours(Span(start, end), (quiet,)))


def spread_is_right(change: Change, day: date, hours: Hours) -> None:
    zone, rules = ZoneInfo(change.zone), change.truth
    plan = spread_day(
        reps=50, bout_reps=10, bout_max=10, day=day, hours=hours, zone=zone, gap=GAP
    )  # fmt: skip
    where = (change, day, hours, plan)
    times = [bout.at for bout in plan.bouts]
    assert all(after - before >= GAP for before, after in pairwise(times)), where
    assert sum(bout.reps for bout in plan.bouts) + plan.shortfall == 50, where
    first, last, _ = day_hours_in_utc(day, hours, zone)
    assert bool(times) == (first <= last), where
    for at in times:
        shown = wall(at, rules)
        minute = (shown - datetime.combine(day, time())) / A_MINUTE
        assert hours.window.start <= minute <= shifted(day, hours.window.end, rules), where
        for quiet in hours.quiet:
            assert not quiet.start < minute < quiet.end, where
            assert not stands(day, quiet.start, rules) < at < stands(day, quiet.end, rules), where


def stands(day: date, minute: int, rules: tzinfo) -> datetime:
    """The instant of a wall-clock minute, by dateutil: the first of two, moved on where it is skipped."""
    at = datetime.combine(day, time(), tzinfo=rules) + minute * A_MINUTE
    return tz.resolve_imaginary(at).astimezone(UTC)


def shifted(day: date, minute: int, rules: tzinfo) -> float:
    """A minute of the day as the clock shows it, which is later where it is skipped."""
    shown = stands(day, minute, rules).astimezone(rules).replace(tzinfo=None)
    return (shown - datetime.combine(day, time())) / A_MINUTE
