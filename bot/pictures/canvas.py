"""Paper, ink and letters: what every picture is drawn with."""

from __future__ import annotations

import io
from functools import cache
from importlib import resources
from itertools import pairwise
from time import sleep

from PIL import Image, ImageDraw, ImageFont

from bot.words import render
from bot.words.typed import JOINERS
from scheduler.domain.messages import Text

INK, DEEP, QUIET, LINE, PALE, BAND, PAPER = 33, 66, 82, 105, 208, 232, 255
TINTS: dict[int, tuple[int, int, int]] = {
    0: (0, 0, 0),
    INK: (28, 35, 41),
    DEEP: (20, 80, 110),
    QUIET: (74, 84, 92),
    LINE: (95, 106, 114),
    PALE: (201, 210, 216),
    BAND: (228, 233, 236),
    PAPER: (255, 255, 255),
}
"""Drawn is in grey, 0 to 255, and each grey gets its tint at the end: nothing can hang on a hue."""
MORE = "…"
GIVE_WAY = 0.0001
"""Seconds between two words: without them the event loop waits up to 5 ms for the interpreter's lock."""


@cache
def font(size: int, bold: bool) -> ImageFont.FreeTypeFont:
    """The project's font; `size` in pixels."""
    name = "DejaVuSans-Bold.ttf" if bold else "DejaVuSans.ttf"
    content = resources.files("bot").joinpath("fonts", name).read_bytes()
    return ImageFont.truetype(io.BytesIO(content), size)


def tinted(image: Image.Image) -> Image.Image:
    """A grey picture in our colours."""
    coloured = image.copy()
    coloured.putpalette(_palette())
    return coloured


@cache
def _palette() -> bytes:
    """Red, green and blue of each grey, in a straight line between the tints."""
    colours = []
    for (low, start), (high, end) in pairwise(sorted(TINTS.items())):
        for grey in range(low, high):
            share = (grey - low) / (high - low)
            colours += [round(a + (b - a) * share) for a, b in zip(start, end, strict=True)]
    return bytes([*colours, *TINTS[PAPER]])


def one_line(typed: str) -> str:
    """What a person typed, without line ends and characters that are not letters on paper."""
    return "".join(c for c in " ".join(typed.split()) if c.isprintable() or c in JOINERS)


def fitted(words: str, letters: ImageFont.FreeTypeFont, width: float) -> str:
    """The words, cut to so many pixels."""
    if letters.getlength(words) <= width:
        return words
    fits, too_long = 0, len(words)
    while too_long - fits > 1:
        middle = (fits + too_long) // 2
        if letters.getlength(words[:middle].rstrip() + MORE) <= width:
            fits = middle
        else:
            too_long = middle
    return words[:fits].rstrip() + MORE


class Canvas:
    """A white sheet in one language. Lengths are given as for a phone's width and drawn times `scale`."""

    def __init__(self, width: float, height: float, language: str, scale: float = 1.0) -> None:
        self.scale = scale
        self.width, self.height = width, height
        self.language = language
        self.image = Image.new("L", (self.px(width), self.px(height)), PAPER)
        self.pen = ImageDraw.Draw(self.image)

    def px(self, length: float) -> int:
        return round(length * self.scale)

    def say(self, text: Text) -> str:
        """A text of the catalogue."""
        return render((text,), self.language)

    def write(
        self, x: float, y: float, words: str, size: float, width: float,
        *, bold: bool = False, anchor: str = "lm", shade: int = INK,
    ) -> None:  # fmt: skip
        """Words of at most `width`, cut where they are longer; `anchor` as Pillow names it."""
        letters = font(max(self.px(size), 8), bold)
        shown = fitted(one_line(words), letters, width * self.scale)
        sleep(GIVE_WAY)
        self.pen.text((self.px(x), self.px(y)), shown, fill=shade, font=letters, anchor=anchor)

    def box(self, x: float, y: float, width: float, height: float, shade: int) -> None:
        corner = (self.px(x + width), self.px(y + height))
        self.pen.rectangle(((self.px(x), self.px(y)), corner), fill=shade)

    def png(self) -> bytes:
        out = io.BytesIO()
        tinted(self.image).save(out, "PNG")
        return out.getvalue()
