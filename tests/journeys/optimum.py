"""The best times of a small day by trying them all: the truth for S2, with no code of the program's."""

import math
from functools import lru_cache
from itertools import combinations, pairwise

TAU = 360.0
"""Minutes; recovery is 1 - exp(-t/tau), Turner and Robling 2003 as `evidence.md` has it (read)."""
GRID = 5


@lru_cache
def best(
    window: str,
    bouts: int,
    *,
    gap: int = 120,
    last: float | None = None,
    quiet: str = "",
    not_before: float = 0.0,
) -> list[str]:
    """The times of so many bouts, by brute force over the 5-minute grid. Minutes of a plain 24-hour day.

    `last` is when the last bout was done, `not_before` bounds the first from below.
    """
    start, end = _span(window)
    shut = [_span(each) for each in quiet.split()]
    earliest = max(not_before, -math.inf if last is None else last + gap)
    places = [
        at
        for at in range(start, end + 1, GRID)
        if at >= earliest and not any(a < at < b for a, b in shut)
    ]
    top = -1.0
    found: tuple[int, ...] = ()
    for times in combinations(places, bouts):
        line = times if last is None else (last, *times)
        if any(b - a < gap for a, b in pairwise(line)):
            continue
        total = sum(-math.expm1((a - b) / TAU) for a, b in pairwise(line))
        if total > top + 1e-9:  # ties go to the earlier times, which come first
            top, found = total, times
    return [f"{at // 60:02}:{at % 60:02}" for at in found]


def minute(text: str) -> float:
    """`08:05` or `08:05:30` as minutes of the day."""
    hours, minutes, *seconds = map(int, text.split(":"))
    return hours * 60 + minutes + (seconds[0] / 60 if seconds else 0)


def _span(text: str) -> tuple[int, int]:
    first, _, last = text.partition("-")
    return int(minute(first)), int(minute(last))
