"""Movements: how hard each lands, and by what evidence."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import IntEnum
from types import MappingProxyType


class Level(IntEnum):
    """How hard a movement lands, and the ceiling up to which a client is cleared."""

    NONE = 0
    LOW = 1
    MODERATE = 2
    HIGH = 3


FORCE_LIMITS: Mapping[Level, float] = MappingProxyType(
    {Level.NONE: 0.0, Level.LOW: 2.0, Level.MODERATE: 4.0, Level.HIGH: float("inf")}
)
"""Largest peak force in body weights at each level (ours)."""


@dataclass(frozen=True, slots=True)
class Movement:
    """An exercise. `peak_force` is the vertical ground reaction in body weights, shown with its
    `source`; an `estimate` has no published value behind it. `per_side`: reps count on each side.
    """

    key: str
    level: Level
    peak_force: float
    estimate: bool
    per_side: bool
    source: str


_DEFAULTS = (
    Movement("marching", Level.LOW, 1.4, False, False, "step exercise 1.40, PMC2465063"),
    Movement("stepping-jack", Level.LOW, 1.5, True, False, "an estimate: no published value"),
    Movement("gentle-heel-drop", Level.LOW, 2.0, True, False, "an estimate: no published value"),
    Movement(
        "stomp", Level.MODERATE, 2.9, False, True,
        "2.89 to 3.08 at effort 5 of 10, Ryan 2021, doi:10.29011/2576-9596.100068",
    ),
    Movement(
        "small-jump", Level.MODERATE, 4.0, False, False,
        "4.0 in older women, 3.0 in young ones, Bassey 1998",
    ),
    Movement(
        "hop", Level.HIGH, 2.6, False, True,
        "2.5 to 2.8, Bailey 2010; high because one leg takes it all",
    ),
    Movement(
        "jumping-jack", Level.HIGH, 4.5, False, False,
        "3.9 to 5.4 in women about 43, Clissold 2019, doi:10.1016/j.clinbiomech.2019.12.025",
    ),
    Movement("firm-heel-drop", Level.HIGH, 4.9, False, False, "IJSTS 2021;9(6):294-300"),
)  # fmt: skip
MOVEMENTS: Mapping[str, Movement] = MappingProxyType({each.key: each for each in _DEFAULTS})
"""The movements a practice starts with, from the gentlest to the hardest."""


def within(movement: Movement, ceiling: Level, ceiling_force: float | None = None) -> bool:
    """Whether a movement is at or below a ceiling in level and in peak force (C1)."""
    force = FORCE_LIMITS[ceiling] if ceiling_force is None else ceiling_force
    return movement.level <= ceiling and movement.peak_force <= force


def hardness(movement: Movement) -> tuple[Level, float]:
    """What movements are ordered by, the gentlest first: level, then peak force."""
    return movement.level, movement.peak_force
