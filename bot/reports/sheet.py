"""A sheet of A4 that is written from top to bottom and has no second page. Lengths are millimetres."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date, datetime
from pathlib import Path
from typing import Any, cast
from zoneinfo import ZoneInfo

from fpdf import FPDF
from fpdf.fonts import TTFFont

from bot.pictures.canvas import INK, LINE, MORE, TINTS, one_line, tinted
from bot.pictures.tiles import tile
from bot.words import render
from scheduler.domain.messages import Text, text

FONTS = Path(__file__).parents[1] / "fonts"
LEFT, TOP, WIDTH, BOTTOM = 12.0, 12.0, 186.0, 268.0
ROW, SMALL_ROW, HEADING = 6.0, 4.4, 5.0
NO_LETTER = "□"
"""Stands for a character that the font does not have."""
SIGN_PIXELS = 20
"""Of a sign, a millimetre: about 500 an inch."""


class Sheet:
    """The sheet, and the height at which the next line is written."""

    def __init__(self, language: str, made_at: str, zone: str, title: str) -> None:
        self.language = language
        self.y = TOP
        self._pdf = FPDF(unit="mm", format="A4")
        self._pdf.set_auto_page_break(False)
        self._pdf.c_margin = 0.3
        self._pdf.set_creation_date(datetime.fromisoformat(made_at).replace(tzinfo=ZoneInfo(zone)))
        self._pdf.set_title(one_line(title))
        self._pdf.set_lang("en" if language == "qps" else language)
        self._pdf.add_font("DejaVu", "", FONTS / "DejaVuSans.ttf")
        self._pdf.add_font("DejaVu", "B", FONTS / "DejaVuSans-Bold.ttf")
        self._pdf.set_font("DejaVu", size=9)
        regular = self._pdf.fonts["dejavu"]
        self._letters = set(regular.cmap) if isinstance(regular, TTFFont) else set()
        self._pdf.set_text_color(*TINTS[INK])
        self._pdf.set_draw_color(*TINTS[LINE])
        self._pdf.set_line_width(0.15)
        self._pdf.add_page()
        self._tiles: dict[tuple[str, str, float], Any] = {}

    def say(self, said: Text) -> str:
        """A text of the catalogue."""
        return render((said,), self.language)

    def weekday(self, day: str) -> str:
        return self.say(text("picture-weekday", weekday=date.fromisoformat(day).weekday()))

    def mark(self, why: str) -> str:
        """The letter of the reason why a day did not count."""
        return self.say(text("picture-mark", mark=why))[:1] if why else ""

    def down(self, by: float) -> None:
        self.y += by

    def rule(self) -> None:
        self._pdf.line(LEFT, self.y, LEFT + WIDTH, self.y)

    def write(
        self, x: float, words: str, width: float,
        *, size: float, bold: bool = False, centre: bool = False,
    ) -> None:  # fmt: skip
        """One line, cut at its width. It does not move the height."""
        self._font(size, bold)
        self._pdf.set_xy(x, self.y)
        shown = self._fitted(self._printable(words), width)
        self._pdf.cell(width, ROW, shown, align="C" if centre else "L")

    def heading(self, words: Text, x: float = LEFT, width: float = WIDTH) -> None:
        self.write(x, self.say(words), width, size=9.5, bold=True)
        self.down(HEADING)

    def paragraph(self, words: Text, most: int, size: float = 8.5) -> None:
        """So many lines at most."""
        self._font(size, False)
        shown = self._printable(self.say(words))
        lines = cast(
            list[str], self._pdf.multi_cell(WIDTH, text=shown, dry_run=True, output="LINES")
        )
        for number, line in enumerate(lines[:most]):
            cut = number == most - 1 and len(lines) > most
            self.write(LEFT, f"{line}{MORE}" if cut else line, WIDTH, size=size)
            self.down(SMALL_ROW)

    def items(self, x: float, width: float, title: Text, items: Sequence[Text], most: int) -> None:
        """A titled list. Of a longer one than `most` the last line says how many more there are."""
        self.heading(title, x, width)
        shown = items if len(items) <= most else items[: most - 1]
        lines = [*shown] or [text("report-none")]
        if len(shown) < len(items):
            lines.append(text("report-more", count=len(items) - len(shown)))
        for each in lines:
            self.write(x, self.say(each), width, size=8.5)
            self.down(SMALL_ROW)
        self.down(1)

    def sign(self, x: float, cell: Mapping[str, Any], width: float, height: float) -> None:
        """The sign of a day, in the middle of a row."""
        key = (cell["state"], cell["why"], height)
        if key not in self._tiles:
            pixels = (round(width * SIGN_PIXELS), round(height * SIGN_PIXELS))
            sign = tile(cell["state"], self.mark(cell["why"]), *pixels)
            self._tiles[key] = tinted(sign).convert("RGB")
        self._pdf.image(self._tiles[key], x, self.y + (ROW - height) / 2, width, height)

    def pdf_bytes(self) -> bytes:
        return bytes(self._pdf.output())

    def _font(self, size: float, bold: bool) -> None:
        self._pdf.set_font("DejaVu", "B" if bold else "", size)

    def _printable(self, words: str) -> str:
        """Without characters that the font lacks: they would print as gaps and be named in the log."""
        return "".join(c if ord(c) in self._letters else NO_LETTER for c in one_line(words))

    def _fitted(self, words: str, width: float) -> str:
        room = width - 2 * self._pdf.c_margin
        if self._pdf.get_string_width(words) <= room:
            return words
        while words and self._pdf.get_string_width(words + MORE) > room:
            words = words[:-1]
        return words.rstrip() + MORE
