"""A person as a few thick strokes, and the little that stands round her: floor, counter, arrows.

Lengths are in units of a stage, `STAGE` wide, with the floor at y = `FLOOR`; y grows downwards.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from PIL import Image, ImageDraw

from bot.pictures.canvas import BAND, INK, PALE, PAPER, font

Point = tuple[float, float]
STAGE, FLOOR, HIGH = 100.0, 136.0, 176.0
"""Width of a stage, height of its floor, and its whole height with the number below the floor."""
LIMB, HEAD, THIN, ARROW = 5.4, 10.5, 2.6, 4.2
"""Thickness of limbs, radius of the head, thickness of things and of arrows."""
FINER = 2
"""Drawn so many times larger and shrunk, for smooth edges."""


@dataclass(frozen=True, slots=True)
class Pose:
    """Where the head is, and the strokes of body, arms and legs, each from joint to joint.

    `far` are the strokes on the side turned away; they are paler, so that near and far stay apart.
    """

    head: Point
    near: tuple[tuple[Point, ...], ...]
    far: tuple[tuple[Point, ...], ...] = ()

    def moved(self, right: float, down: float) -> Pose:
        """The same pose elsewhere."""

        def at(stroke: Sequence[Point]) -> tuple[Point, ...]:
            return tuple((x + right, y + down) for x, y in stroke)

        return Pose(at([self.head])[0], tuple(map(at, self.near)), tuple(map(at, self.far)))


class Paper:
    """A strip of stages side by side. `unit` is the number of pixels of a unit in the finished picture."""

    def __init__(self, stages: int, unit: float) -> None:
        self.unit = unit * FINER
        size = (round(stages * STAGE * self.unit), round(HIGH * self.unit))
        self.image = Image.new("L", size, PAPER)
        self.pen = ImageDraw.Draw(self.image)
        self.left = 0.0

    def finished(self, top: float = 0.0) -> Image.Image:
        """The strip without its upper `top` units."""
        wide, high = self.image.size
        return self.image.crop((0, round(top * self.unit), wide, high)).reduce(FINER)

    # --- strokes -------------------------------------------------------------------------------

    def _px(self, point: Point) -> Point:
        return ((point[0] + self.left) * self.unit, point[1] * self.unit)

    def stroke(self, points: Sequence[Point], thick: float, shade: int = INK) -> None:
        """A line through the points, with round joints and ends."""
        on_paper = [self._px(each) for each in points]
        self.pen.line(on_paper, fill=shade, width=round(thick * self.unit), joint="curve")
        for each in on_paper:
            self._disc(each, thick * self.unit / 2, shade)

    def _disc(self, at: Point, radius: float, shade: int) -> None:
        (x, y), r = at, radius
        self.pen.ellipse((x - r, y - r, x + r, y + r), fill=shade)

    def person(self, pose: Pose) -> None:
        """The far side first, so that the near one lies over it."""
        for each in pose.far:
            self.stroke(each, LIMB, 150)
        for each in pose.near:
            self.stroke(each, LIMB)
        self._disc(self._px(pose.head), HEAD * self.unit, INK)
        self._disc(self._px(pose.head), (HEAD - 3.2) * self.unit, PAPER)

    # --- things --------------------------------------------------------------------------------

    def floor(self) -> None:
        self.stroke(((4, FLOOR + 3.6), (STAGE - 4, FLOOR + 3.6)), THIN)

    def counter(self, left: float, top: float) -> None:
        """A kitchen counter from `left` to the edge of the stage."""
        box = (*self._px((left + 4, top)), *self._px((STAGE - 2, FLOOR + 3)))
        self.pen.rectangle(box, fill=BAND)
        self.stroke(((left + 4, top), (left + 4, FLOOR + 3)), THIN, 120)
        self.stroke(((left, top), (STAGE - 2, top)), THIN * 1.7)

    def pillow(self, left: float, right: float, top: float) -> None:
        box = (*self._px((left, top)), *self._px((right, FLOOR + 1)))
        self.pen.rounded_rectangle(
            box, radius=4 * self.unit, fill=PALE, outline=INK, width=round(1.6 * self.unit)
        )

    def arrow(self, points: Sequence[Point]) -> None:
        """An arrow along the points; its head is at the last one."""
        (x1, y1), (x2, y2) = points[-2], points[-1]
        turn = math.atan2(y2 - y1, x2 - x1)
        size = ARROW * 2.6
        foot = (x2 - size * 0.8 * math.cos(turn), y2 - size * 0.8 * math.sin(turn))
        self.stroke((*points[:-1], foot), ARROW, 90)
        wings = [
            (x2 - size * math.cos(turn + side), y2 - size * math.sin(turn + side))
            for side in (0.55, -0.55)
        ]
        self.pen.polygon([self._px(each) for each in ((x2, y2), *wings)], fill=90)

    def thud(self, x: float) -> None:
        """Short strokes on both sides of a foot that lands firmly."""
        for side in (-1, 1):
            for rise, far in ((1.0, 9.0), (7.0, 7.0)):
                start = (x + side * (11.0 - rise * 0.3), FLOOR - rise)
                self.stroke((start, (start[0] + side * far, start[1] - rise * 0.7)), THIN)

    def number(self, number: int) -> None:
        """The number of the stage, as it stands before its cue in the words below the picture."""
        at = self._px((STAGE / 2, FLOOR + 22))
        self._disc(at, 12 * self.unit, INK)
        letters = font(round(16 * self.unit), True)
        self.pen.text(at, str(number), fill=PAPER, font=letters, anchor="mm")
