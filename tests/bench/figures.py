"""All figures by their names, in the order of the page of goals."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence

from tests.bench import (
    answers,
    claims,
    digest,
    leaving,
    past,
    picture,
    rollover,
    spread,
    starts,
    workers,
)
from tests.bench.bench import Bench
from tests.bench.figure import Figure

Measure = Callable[[Bench], Iterable[Figure]]

FIGURES: dict[str, Measure] = {
    "B1 postgresql": claims.on_postgresql,
    "B1 shared": claims.shared,
    "B1 procrastinate": claims.beside_procrastinate,
    "B2 sqlite": claims.on_sqlite,
    "B3 start": starts.with_many_waiting,
    "B4 past": past.tick,
    "B5 answers": answers.at_a_slow_network,
    "B5 handler": answers.handler,
    "B5 p99": answers.at_a_fast_network,
    "B6 acknowledged": leaving.acknowledged,
    "B7 last": leaving.last_of_many,
    "B7 killed": leaving.killed,
    "B8 plan": spread.exact,
    "B8 equal": spread.equal,
    "B8 cached": spread.cached,
    "B9 rollover": rollover.rolled_over,
    "B10 digest": digest.figures_of_many,
    "B11 picture": picture.drawn,
    "B12 start": starts.to_first_poll,
    "B13 workers": workers.several,
}
"""What each measures begins its figures' names with the name it has here."""


def chosen(names: Sequence[str]) -> list[Measure]:
    """Those whose names begin with one of these, word by word: `B1` is not `B11`. All for none."""
    return [
        measure
        for name, measure in FIGURES.items()
        if not names or any(f"{name} ".startswith(f"{each.strip()} ") for each in names)
    ]
