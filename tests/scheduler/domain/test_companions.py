"""Companion exercises as values: their usual form, their days, their place in a plan (C6)."""

from dataclasses import replace
from datetime import date
from itertools import pairwise

import pytest

from scheduler.domain import planjson
from scheduler.domain.companions import (
    BOUNDS,
    CATALOGUE,
    changed,
    out_of_bounds,
    spaced,
    toggled,
    with_one,
)
from scheduler.domain.hours import Hours, Span
from scheduler.domain.plan import Plan

BACK, HOVER = CATALOGUE["back-raise"], CATALOGUE["hover-hold"]
PLAN = Plan(
    "stomp", 40, 10, 10, 2, 3, (0, 3), 1, Hours(Span(480, 1200)), (), date(2027, 3, 8), None, None
)


def test_the_usual_forms_are_those_of_common_practice() -> None:
    # evidence.md, Dose: back raise 10 reps, 3 days; hover hold from 2 s, 3 rounds, twice a week
    # (common practice, no source)
    assert (BACK.unit, BACK.amount, BACK.rounds, BACK.days) == ("reps", 10, 1, 3)
    assert (HOVER.unit, HOVER.amount, HOVER.rounds, HOVER.days) == ("hold", 2, 3, 2)


def test_days_a_week_are_spaced_best() -> None:
    # The smallest distance, next week's days included, is as large as it can be: 7 // n (arithmetic)
    for days in range(1, 8):
        chosen = spaced(days)
        again = [*chosen, chosen[0] + 7]
        gaps = [after - before for before, after in pairwise(again)]
        assert len(chosen) == days
        assert min(gaps) == 7 // days


def test_a_plan_with_companions_reads_back_from_json() -> None:
    plan = replace(PLAN, companions=(BACK, replace(HOVER, amount=10)))
    assert planjson.from_json(planjson.as_json(plan)) == plan


def test_a_plan_kept_before_there_were_companions_reads_without_any() -> None:
    old = planjson.as_json(PLAN)
    del old["companions"]
    assert planjson.from_json(old) == PLAN


def test_one_is_put_in_and_taken_out_and_another_form_takes_its_place() -> None:
    assert toggled((), "back-raise") == (BACK,)
    assert toggled((BACK,), "back-raise") == ()
    assert toggled((HOVER,), "back-raise") == (BACK, HOVER)
    longer = changed(HOVER, 5, None, 3)
    assert with_one((BACK, HOVER), longer) == (BACK, longer)
    assert longer.days == 3


@pytest.mark.parametrize("name", ["hold", "rounds"])
def test_a_number_past_its_bounds_is_named(name: str) -> None:
    low, high = BOUNDS[name]
    for value, wrong in ((low - 1, name), (low, None), (high, None), (high + 1, name)):
        held = name == "hold"
        one = replace(HOVER, amount=value) if held else replace(HOVER, rounds=value)
        assert out_of_bounds(one) == wrong
