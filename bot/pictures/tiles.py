"""One day of one client as a small sign. Each state has a form of its own; colour only goes along.

counted: full, with a tick. partial: half full. missed: empty, with a cross. excused: hatched. open: a
ring with a dot. ahead: a ring. rest: a dash. extra: a plus. Beside the form of a day that did not count
stands the letter of its reason.
"""

from __future__ import annotations

import math
from collections.abc import Callable

from PIL import Image, ImageDraw

from bot.pictures.canvas import DEEP, INK, LINE, PALE, PAPER, font

STATES = ("counted", "partial", "missed", "excused", "open", "ahead", "rest", "extra")
REASONS = (
    "no-answer", "declined", "break", "hold", "unreachable", "bot-down", "not-asked", "travel",
    "clinician",
)  # fmt: skip
FINER = 4
"""Drawn so many times larger and shrunk, for smooth edges."""
Box = tuple[float, float, float, float]
Pen = ImageDraw.ImageDraw


def tile(state: str, letter: str, width: int, height: int) -> Image.Image:
    """The sign of a state in grey, `width` x `height` pixels; `letter`, if any, stands at its right."""
    image = Image.new("L", (width * FINER, height * FINER), PAPER)
    pen = ImageDraw.Draw(image)
    wide, high = image.size
    thick = max(high // 14, FINER)
    FORMS[state](pen, (thick / 2, thick / 2, wide - thick, high - thick), thick, bool(letter))
    if letter:
        letters = font(round(high * 0.56), True)
        place = (wide * 0.72, high * 0.5)
        if state == "excused":  # a letter on a hatching is hard to read
            pen.rectangle((wide * 0.5, thick, wide - 1.5 * thick, high - 1.5 * thick), fill=PAPER)
        pen.text(place, letter, fill=INK, font=letters, anchor="mm")
    return image.reduce(FINER)


def _counted(pen: Pen, box: Box, thick: int, _: bool) -> None:
    pen.rectangle(box, fill=DEEP)
    _tick(pen, box, thick)


def _tick(pen: Pen, box: Box, thick: int) -> None:
    x, y, size = (box[0] + box[2]) / 2, (box[1] + box[3]) / 2, (box[3] - box[1]) / 4
    points = [(x - size, y), (x - size * 0.25, y + size * 0.8), (x + size * 1.1, y - size * 0.9)]
    pen.line(points, fill=PAPER, width=2 * thick, joint="curve")


def _partial(pen: Pen, box: Box, thick: int, lettered: bool) -> None:
    pen.rectangle(box, fill=PAPER, outline=INK, width=thick)
    share = 0.44 if lettered else 0.5
    pen.rectangle((box[0], box[1], box[0] + (box[2] - box[0]) * share, box[3]), fill=DEEP)


def _missed(pen: Pen, box: Box, thick: int, lettered: bool) -> None:
    pen.rectangle(box, fill=PAPER, outline=INK, width=thick)
    x = box[0] + (box[2] - box[0]) * (0.27 if lettered else 0.5)
    y, size = (box[1] + box[3]) / 2, (box[3] - box[1]) * 0.2
    for rise in (size, -size):
        pen.line(((x - size, y - rise), (x + size, y + rise)), fill=INK, width=round(1.5 * thick))


def _excused(pen: Pen, box: Box, thick: int, _: bool) -> None:
    pen.rectangle(box, fill=PALE)
    left, top, right, bottom = box
    high = bottom - top
    for number in range(-2, math.ceil((right - left) / high * 3)):
        start, end = left + number * high / 3, left + (number + 3) * high / 3
        low, far = max(start, left), min(end, right)  # cut at the box
        pen.line(((low, bottom - low + start), (far, top + end - far)), fill=LINE, width=thick)
    pen.rectangle(box, outline=LINE, width=thick)


def _open(pen: Pen, box: Box, thick: int, lettered: bool) -> None:
    _ahead(pen, box, thick, lettered)
    pen.ellipse(_round(box, 0.18), fill=INK)


def _ahead(pen: Pen, box: Box, thick: int, _: bool) -> None:
    pen.ellipse(_round(box, 0.4), outline=INK, width=thick)


def _round(box: Box, part: float) -> Box:
    x, y, size = (box[0] + box[2]) / 2, (box[1] + box[3]) / 2, (box[3] - box[1]) * part
    return (x - size, y - size, x + size, y + size)


def _rest(pen: Pen, box: Box, thick: int, _: bool) -> None:
    left, _top, right, _bottom = _round(box, 0.2)
    y = (box[1] + box[3]) / 2
    pen.line(((left, y), (right, y)), fill=LINE, width=thick)


def _extra(pen: Pen, box: Box, thick: int, _: bool) -> None:
    left, top, right, bottom = _round(box, 0.28)
    x, y = (left + right) / 2, (top + bottom) / 2
    pen.line(((left, y), (right, y)), fill=DEEP, width=2 * thick)
    pen.line(((x, top), (x, bottom)), fill=DEEP, width=2 * thick)


FORMS: dict[str, Callable[[Pen, Box, int, bool], None]] = {
    "counted": _counted, "partial": _partial, "missed": _missed, "excused": _excused,
    "open": _open, "ahead": _ahead, "rest": _rest, "extra": _extra,
}  # fmt: skip
