"""A figure: ours beside something else's, with the goal; and how both are measured in turns."""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from dataclasses import dataclass
from statistics import median
from typing import Literal

Bound = Literal["at least", "at most"]


@dataclass(frozen=True, slots=True)
class Figure:
    """`ours` and `peer` are in `unit`. Where the goal is a fixed number, that number is the peer.

    The goal is for the ratio of ours to the peer's. Where nothing at all is wanted (messages lost) the
    peer is 0 and the ratio is the number itself.
    """

    name: str
    ours: float
    peer: float
    bound: Bound
    goal: float
    unit: str
    note: str = ""

    @property
    def ratio(self) -> float:
        return self.ours / self.peer if self.peer else self.ours

    @property
    def met(self) -> bool:
        return self.ratio >= self.goal if self.bound == "at least" else self.ratio <= self.goal

    def as_json(self) -> dict[str, object]:
        """The fields that outside checks read, and which way the goal is meant."""
        return {
            "name": self.name,
            "ours": self.ours,
            "peer": self.peer,
            "ratio": self.ratio,
            "goal": self.goal,
            "bound": self.bound,
            "met": self.met,
            "unit": self.unit,
            "note": self.note,
        }

    def line(self) -> str:
        """One line for people."""
        return (
            f"{self.name:<30} ours {_short(self.ours):>9}  peer {_short(self.peer):>9} {self.unit:<11}"
            f" ratio {_short(self.ratio):>8}  goal {self.bound} {_short(self.goal)}"
            f"  {'met' if self.met else 'NOT MET'}"
        )


def _short(number: float) -> str:
    return f"{number:,.0f}" if abs(number) >= 1000 else f"{number:.3g}"


def in_turns(
    rounds: int, ours: Callable[[], float], peer: Callable[[], float]
) -> tuple[float, float]:
    """The medians of both, measured in turns so many times after each was run once to warm up."""
    ours(), peer()
    both = [(ours(), peer()) for _ in range(rounds)]
    return median(a for a, _ in both), median(b for _, b in both)


async def in_turns_async(
    rounds: int, ours: Callable[[], Awaitable[float]], peer: Callable[[], Awaitable[float]]
) -> tuple[float, float]:
    """`in_turns` for what is awaited."""
    await ours(), await peer()
    both = [(await ours(), await peer()) for _ in range(rounds)]
    return median(a for a, _ in both), median(b for _, b in both)


def share(values: list[float], part: float) -> float:
    """The value below which `part` of them lie, by the nearest rank: 0.99 of 200 is the 198th."""
    ranked = sorted(values)
    return ranked[max(0, -(-len(ranked) * round(part * 1000) // 1000) - 1)]
