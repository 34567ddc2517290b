"""What a client's words say of a break: why, from when, how long. Phrases are ours, said on a Monday."""

from datetime import date

import pytest

from bot.away import away, says_back, says_none
from scheduler.domain.breaks import Wish

MONDAY = date(2027, 3, 8)


def march(day: int) -> date:
    return date(2027, 3, day)


@pytest.mark.parametrize(
    ("said", "meant"),
    [
        # why
        ("I'm ill", Wish("illness")),
        ("down with the flu", Wish("illness")),
        ("i need a break", Wish()),
        # how long
        ("sick till Friday", Wish("illness", last=march(12))),
        ("have a cold until Sunday", Wish("illness", last=march(14))),
        ("ill for 8 days", Wish("illness", days=8)),
        ("on holiday until the 20th", Wish("travel", last=march(20))),
        ("on holiday until 3 April", Wish("travel", last=date(2027, 4, 3))),
        ("travelling for a week", Wish("travel", days=7)),
        ("a fortnight", Wish(days=14)),
        ("two weeks", Wish(days=14)),
        ("for 10 days", Wish(days=10)),
        ("away for a couple of days", Wish("travel", days=2)),
        ("away for the next 3 days", Wish("travel", days=3)),
        ("I'm sick today", Wish("illness", last=MONDAY)),
        ("away today and tomorrow", Wish("travel", last=march(9))),
        ("ill, not sure how long", Wish("illness", unsure=True)),
        # back on a day: the day before is the last
        ("away, back on Monday", Wish("travel", last=march(14))),
        ("away, back tomorrow", Wish("travel", last=MONDAY)),
        ("away, back on the 20th", Wish("travel", last=march(19))),
        # it begins later
        ("going away tomorrow for 3 days", Wish("travel", march(9), days=3)),
        ("from Friday till Monday", Wish(None, march(12), march(15))),
        ("away from Friday to Monday", Wish("travel", march(12), march(15))),
        ("on holiday 15-20 March", Wish("travel", march(15), march(20))),
        ("away from the 15th to the 20th of April", Wish("travel", date(2027, 4, 15), date(2027, 4, 20))),
        ("away from Friday the 12th to Monday the 15th", Wish("travel", march(12), march(15))),
        ("away from the 12th for 10 days", Wish("travel", march(12), days=10)),
        ("vacation starting Friday for two weeks", Wish("travel", march(12), days=14)),
        ("going away in 3 days", Wish("travel", march(11))),
        ("away this weekend", Wish("travel", march(13), march(14))),
        ("away Saturday and Sunday", Wish("travel", march(13), march(14))),
        ("away from today till Friday", Wish("travel", last=march(12))),
        # it begins later, on a day that could be two: asked back
        ("away next week", Wish("travel", later=True)),
        ("away next Friday", Wish("travel", later=True)),
        ("away from Monday till Thursday", Wish("travel", later=True)),
        ("away Friday week", Wish("travel", later=True)),
        ("away a week on Friday", Wish("travel", days=7, later=True)),
        ("away from 12/3 to 15/3", Wish("travel", later=True)),
        ("holiday in March", Wish("travel", later=True)),
        # what has been, and what names no day
        ("sick since Monday", Wish("illness")),
        ("I've been ill for 3 days", Wish("illness")),
        ("on holiday in the sun for 5 days", Wish("travel", days=5)),
        ("we are away until Friday", Wish("travel", last=march(12))),
        ("away until next Friday", Wish("travel")),
        ("away for a few days", Wish("travel")),
    ],
)  # fmt: skip
def test_a_break_is_heard_as_it_is_said(said: str, meant: Wish) -> None:
    assert away(said, MONDAY) == meant


@pytest.mark.parametrize(("day", "first"), [(5, 13), (6, 14)])
def test_this_weekend_said_on_the_weekend_begins_today(day: int, first: int) -> None:
    today = march(8 + day)
    assert today == march(first)
    assert away("away this weekend", today) == Wish("travel", last=march(14))


def test_with_the_first_day_known_a_weekday_is_the_one_after_it() -> None:
    assert away("till Sunday", MONDAY, base=march(12)).last == march(14)
    assert away("till Sunday", MONDAY, base=march(15)).last == march(21)


def test_a_last_day_before_the_first_is_asked_again() -> None:
    assert away("away from 20 March till 12 March 2027", MONDAY).last is None


def test_being_back_and_wanting_none_are_told_from_a_wish() -> None:
    assert says_back("back from my holiday")
    assert not says_back("back on Monday")
    assert says_none("no break today")
    assert says_none("cancel my holiday")
    assert not says_none("I need a break")
