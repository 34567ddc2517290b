"""The buttons of a digest: its pages, and when it comes."""

from __future__ import annotations

from collections.abc import Callable

from bot.telegram.buttons.base import Args, Rows, button, in_rows

HOURS = (6, 7, 8, 9, 12, 17)


def _pages(args: Args) -> Rows:
    number, page, pages = args["number"], args["page"], args["pages"]
    assert isinstance(page, int)  # noqa: S101 # written by digests.page_of
    assert isinstance(pages, int)  # noqa: S101 # written by digests.page_of
    turns = []
    if number and page > 1:
        turns.append(button("page-back", f"dg:{number}:{page - 2}"))
    if number and page < pages:
        turns.append(button("page-on", f"dg:{number}:{page}"))
    return [*([turns] if turns else []), [button("digest-time", "dt")]]


def _times(_: Args) -> Rows:
    days = [button("weekday", f"dw:{day}", weekday=day) for day in range(7)]
    hours = [button("hour", f"dh:{hour}", at=f"2000-01-01T{hour:02}:00") for hour in HOURS]
    return [*in_rows(days, 4), *in_rows(hours, 3)]


KEYBOARDS: dict[str, Callable[[Args], Rows]] = {
    "digest": _pages,
    "ask-digest-time": _times,
    "digest-time-kept": _times,
}
SHAPES: dict[str, str] = {"dg": "ii", "dt": "", "dw": "i", "dh": "i"}
