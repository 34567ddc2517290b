"""Hours of a local day and the instants they stand for (Z1)."""

from datetime import UTC, date, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from dateutil import tz
from hypothesis import given
from hypothesis import strategies as st

from scheduler.domain.hours import (
    Hours,
    Span,
    common,
    day_hours_in_utc,
    format_minute,
    instant,
    local_day,
    parse_minute,
    parse_span,
)

NEW_YORK, LORD_HOWE = ZoneInfo("America/New_York"), ZoneInfo("Australia/Lord_Howe")


@pytest.mark.parametrize(
    ("text", "span"),
    [
        ("08:00-20:00", Span(480, 1200)),
        ("8:00-9:05", Span(480, 545)),
        ("00:00-24:00", Span(0, 1440)),
        (" 08:00 - 20:00 ", Span(480, 1200)),
        ("23:59-24:00", Span(1439, 1440)),
    ],
)
def test_hours_are_read_as_people_write_them(text: str, span: Span) -> None:
    assert parse_span(text) == span


@pytest.mark.parametrize(
    "text",
    [
        "", "8", "08:00", "20:00-08:00", "08:00-08:00", "08:60-09:00", "08:00-24:01", "25:00-26:00",
        "08:00-20:00-21:00", "-08:00-20:00", "08.00-20.00", "٠٨:٠٠-20:00", "8:0-9:0", "\0",
    ],
)  # fmt: skip
def test_hours_that_are_none_are_refused_in_one_sentence(text: str) -> None:
    with pytest.raises(ValueError, match=r"^[^\n]+\.$"):
        parse_span(text)


@pytest.mark.parametrize(("start", "end"), [(-1, 5), (5, 5), (6, 5), (0, 1441)])
def test_a_span_outside_the_day_or_without_length_cannot_be_made(start: int, end: int) -> None:
    with pytest.raises(ValueError, match="starts before it ends"):
        Span(start, end)


@given(st.integers(0, 1440))
def test_every_minute_of_the_day_is_written_and_read_alike(minute: int) -> None:
    assert parse_minute(format_minute(minute)) == minute


def test_the_last_minute_of_the_day_is_written_as_24_00() -> None:
    assert format_minute(1440) == "24:00"


def test_what_two_have_in_common_is_both_windows_and_all_quiet_times() -> None:
    plan = Hours(Span(480, 1200), (Span(720, 780),))
    client = Hours(Span(540, 1320), (Span(720, 780), Span(900, 930)))
    both = Hours(Span(540, 1200), (Span(720, 780), Span(900, 930)))
    assert common(plan, client) == common(client, plan) == both


def test_windows_that_only_touch_have_nothing_in_common() -> None:
    assert common(Hours(Span(480, 720)), Hours(Span(720, 900))) is None
    assert common(Hours(Span(480, 721)), Hours(Span(720, 900))) == Hours(Span(720, 721))


def test_the_minute_between_two_quiet_times_that_meet_stays_free() -> None:
    both = common(Hours(Span(0, 60), (Span(10, 20),)), Hours(Span(0, 60), (Span(20, 30),)))
    assert both == Hours(Span(0, 60), (Span(10, 20), Span(20, 30)))


# Source: the tz database, read through dateutil, which does not use the code under test.
@pytest.mark.parametrize(
    ("zone", "day", "minute", "utc"),
    [
        (NEW_YORK, date(2027, 3, 14), 150, "2027-03-14T07:30"),  # 02:30 is skipped: 03:30
        (NEW_YORK, date(2027, 11, 7), 90, "2027-11-07T05:30"),  # 01:30 comes twice: the first
        (NEW_YORK, date(2027, 3, 14), 1440, "2027-03-15T04:00"),
        (LORD_HOWE, date(2027, 10, 3), 135, "2027-10-02T15:45"),  # half an hour is skipped at 02:00
        (LORD_HOWE, date(2027, 4, 4), 105, "2027-04-03T14:45"),  # 01:30 to 02:00 comes twice
        (ZoneInfo("America/Santiago"), date(2027, 9, 5), 0, "2027-09-05T04:00"),  # no midnight
        (ZoneInfo("UTC"), date(2027, 1, 31), 1440, "2027-02-01T00:00"),
    ],
)
def test_a_skipped_time_moves_forward_and_one_that_comes_twice_is_the_first(
    zone: ZoneInfo, day: date, minute: int, utc: str
) -> None:
    assert instant(day, minute, zone) == datetime.fromisoformat(utc).replace(tzinfo=UTC)


ZONES = [
    "America/New_York", "Europe/Madrid", "Australia/Lord_Howe", "America/Santiago", "Africa/Cairo",
    "Asia/Beirut", "Pacific/Chatham", "Asia/Kathmandu", "Antarctica/Troll", "Africa/Casablanca",
]  # fmt: skip


@given(st.sampled_from(ZONES), st.dates(date(2026, 1, 1), date(2028, 12, 31)), st.integers(0, 1440))
def test_every_wall_clock_minute_is_the_instant_that_another_library_finds(
    name: str, day: date, minute: int
) -> None:
    there = tz.gettz(name)
    naive = datetime.combine(day, datetime.min.time()) + timedelta(minutes=minute)
    expected = tz.resolve_imaginary(naive.replace(tzinfo=there)).astimezone(UTC)
    assert instant(day, minute, ZoneInfo(name)) == expected


def test_the_local_day_changes_at_local_midnight() -> None:
    assert local_day(datetime(2027, 3, 8, 4, 59, 59, tzinfo=UTC), NEW_YORK) == date(2027, 3, 7)
    assert local_day(datetime(2027, 3, 8, 5, 0, tzinfo=UTC), NEW_YORK) == date(2027, 3, 8)


def test_a_window_over_a_clock_change_has_its_real_length() -> None:
    hours = Hours(Span(60, 480), (Span(90, 210),))
    lengths = {}
    for day in (date(2027, 3, 13), date(2027, 3, 14), date(2027, 11, 7)):
        start, end, ((quiet_start, quiet_end),) = day_hours_in_utc(day, hours, NEW_YORK)
        lengths[day.isoformat()] = (end - start, quiet_end - quiet_start)
    hour = timedelta(hours=1)
    assert lengths == {
        "2027-03-13": (7 * hour, 2 * hour),
        "2027-03-14": (6 * hour, 1 * hour),
        "2027-11-07": (8 * hour, 3 * hour),
    }
