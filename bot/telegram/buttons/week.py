"""The buttons of what a client is asked about a week."""

from __future__ import annotations

from collections.abc import Callable

from bot.telegram.buttons.base import Args, Rows, button, in_rows, yes_no
from scheduler.domain.weekdays import WEEK


def _days(_: Args) -> Rows:
    return [[button("keep-days", "wk:keep")], [button("other-days", "wk:change")]]


def _choose(args: Args) -> Rows:
    choices, chosen = args["choices"], args["dates"]
    assert isinstance(choices, list)  # noqa: S101 # written by mornings
    assert isinstance(chosen, list)  # noqa: S101 # written by mornings
    days = [
        button(
            "week-day",
            f"{'wo' if day in chosen else 'wd'}:{day}",
            day=str(day),
            chosen=day in chosen,
        )
        for day in choices
    ]
    return [*in_rows(days, 2), [button("that-is-all", "wk:keep")]]


def _own_days(args: Args) -> Rows:
    chosen = args["days"]
    assert isinstance(chosen, list)  # noqa: S101 # written by times
    days = [
        button(
            "own-day", f"{'to' if day in chosen else 'td'}:{day}", weekday=day, chosen=day in chosen
        )
        for day in range(WEEK)
    ]
    return [*in_rows(days, 2), [button("that-is-all", "tk")]]


def _week(_: Args) -> Rows:
    return [
        [button("week-none", "wq:none")],
        [button("week-pain", "wq:pain"), button("week-fall", "wq:fall")],
        [button("week-leak", "wq:leak")],
    ]


KEYBOARDS: dict[str, Callable[[Args], Rows]] = {
    "week-days": _days,
    "choose-days": _choose,
    "ask-times-days": _own_days,
    "make-up": lambda _: yes_no("mu"),
    "ask-week": _week,
}
SHAPES: dict[str, str] = {
    **dict.fromkeys(("wk", "wd", "wo", "mu", "wq"), "s"),
    **dict.fromkeys(("td", "to"), "i"),
    "tk": "",
}
