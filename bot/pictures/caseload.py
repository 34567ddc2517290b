"""The clinician's picture of the week: a row for each client, a sign for each day (K3)."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from bot.pictures.canvas import BAND, DEEP, INK, LINE, PAPER, QUIET, Canvas
from bot.pictures.tiles import REASONS, STATES, tile
from scheduler.domain.messages import text

Line = Mapping[str, Any]

# Pixels of a picture 1080 wide, which a phone shows at about a third: 30 become 10, the least to read.
MARGIN, NAME, CELL, DAYS, PAIN = 24, 304, 78, 104, 78
PANEL = 2 * MARGIN + NAME + 7 * CELL + DAYS + PAIN
ROW, SIGN_WIDE, SIGN_HIGH = 64, 70, 48
TITLE, TEXT, SMALL = 44, 32, 30
HEAD, DAY_HEAD, LEGEND_ROW = 196, 92, 56

FULL_SIZE_ROWS = 42
"""40 clients and two headings keep the full size."""
LONGEST = 2560
"""Above it the platform shrinks photos itself (memory), and letters become smaller than was planned."""
LEAST_SCALE = 0.5
"""Below it rows stand in one more column side by side, as long as that makes them larger."""
MOST_PANELS = 12


@dataclass(frozen=True, slots=True)
class Shape:
    """How many columns of clients stand side by side, the rows of each, and the scale of everything."""

    panels: int
    rows: int
    scale: float


def shape(rows: int, legend: int) -> Shape:
    """The shape for so many rows of clients and signs in the legend."""
    if rows <= FULL_SIZE_ROWS:
        return Shape(1, rows, 1.0)
    best = Shape(1, rows, 0.0)
    for panels in range(1, MOST_PANELS + 1):
        each = math.ceil(rows / panels)
        longest = max(PANEL * panels, _height(each, panels, legend))
        scale = min(1.0, LONGEST / longest)
        if scale > best.scale:
            best = Shape(panels, each, scale)
        if scale >= LEAST_SCALE:
            break
    return best


def _height(rows: int, panels: int, legend: int) -> float:
    return HEAD + DAY_HEAD + rows * ROW + _legend_rows(legend, panels) * LEGEND_ROW + 3 * MARGIN


def _legend_rows(signs: int, panels: int) -> int:
    return math.ceil(signs / (2 * panels)) + 1  # the last says what the figures are


def draw(digest: Mapping[str, Any], language: str) -> bytes:
    """The picture of a digest as a PNG."""
    rows = _rows(digest["lines"])
    reasons = _reasons(digest["lines"])
    form = shape(len(rows), len(STATES) + len(reasons))
    height = _height(form.rows, form.panels, len(STATES) + len(reasons))
    sheet = _Sheet(Canvas(PANEL * form.panels, height, language, form.scale))
    sheet.head(digest)
    first = date.fromisoformat(digest["first"])
    for panel in range(form.panels):
        part = rows[panel * form.rows : (panel + 1) * form.rows]
        sheet.panel(panel * PANEL, first.toordinal(), part)
    sheet.legend(reasons, height, 2 * form.panels)
    return sheet.canvas.png()


def _rows(lines: Sequence[Line]) -> list[Line | int]:
    """Headings and lines; a heading is the number of clients below it, negative over those in need."""
    need = [each for each in lines if each["reasons"]]
    rest = [each for each in lines if not each["reasons"]]
    rows: list[Line | int] = [-len(need), *need] if need else []
    return [*rows, len(rest), *rest]


def _reasons(lines: Sequence[Line]) -> list[str]:
    found = {cell["why"] for line in lines for cell in line["cells"]}
    return [why for why in REASONS if why in found]


class _Sheet:
    def __init__(self, canvas: Canvas) -> None:
        self.canvas = canvas
        self._tiles: dict[tuple[str, str], Any] = {}

    def head(self, digest: Mapping[str, Any]) -> None:
        canvas, say = self.canvas, self.canvas.say
        week = {name: digest[name] for name in ("week", "first", "last")}
        who = {name: digest[name] for name in ("clinician", "practice")}
        made = {name: digest[name] for name in ("made_at", "zone")}
        still_open = sum(each["open"] for each in digest["lines"])
        width = canvas.width - 2 * MARGIN
        title = say(text("picture-title", **week))
        canvas.write(MARGIN, 48, title, TITLE, width, bold=True)
        canvas.write(MARGIN, 104, say(text("picture-by", **who)), TEXT, width)
        as_of = say(text("picture-made", open=still_open, **made))
        canvas.write(MARGIN, 152, as_of, SMALL, width, shade=QUIET)

    def panel(self, x: float, first: int, rows: Sequence[Line | int]) -> None:
        canvas, say = self.canvas, self.canvas.say
        if x:
            canvas.box(x, HEAD, 1, DAY_HEAD + len(rows) * ROW, LINE)
        for number in range(7):
            day = date.fromordinal(first + number)
            middle = x + MARGIN + NAME + (number + 0.5) * CELL
            weekday = say(text("picture-weekday", weekday=day.weekday()))
            canvas.write(middle, HEAD + 24, weekday, SMALL, CELL, anchor="mm")
            canvas.write(middle, HEAD + 62, str(day.day), SMALL, CELL, anchor="mm")
        right = x + MARGIN + NAME + 7 * CELL
        canvas.write(
            right + DAYS / 2, HEAD + 62, say(text("picture-days")), SMALL, DAYS, anchor="mm"
        )
        canvas.write(
            right + DAYS + PAIN / 2, HEAD + 62, say(text("picture-pain")), SMALL, PAIN, anchor="mm"
        )
        for number, row in enumerate(rows):
            top = HEAD + DAY_HEAD + number * ROW
            if isinstance(row, int):
                self._heading(x, top, row)
            else:
                self._line(x, top, row)

    def _heading(self, x: float, top: float, count: int) -> None:
        need = count < 0
        words = (
            text("picture-need-you", count=-count) if need else text("picture-others", count=count)
        )
        width = PANEL - 2 * MARGIN
        self.canvas.box(x + MARGIN, top + 6, width, ROW - 12, DEEP if need else BAND)
        self.canvas.write(
            x + MARGIN + 12, top + ROW / 2, self.canvas.say(words), TEXT, width - 24,
            bold=True, shade=PAPER if need else INK,
        )  # fmt: skip

    def _line(self, x: float, top: float, line: Line) -> None:
        canvas, middle = self.canvas, top + ROW / 2
        canvas.write(x + MARGIN, middle, line["name"], TEXT, NAME - 12, bold=bool(line["reasons"]))
        for number, cell in enumerate(line["cells"]):
            left = x + MARGIN + NAME + number * CELL + (CELL - SIGN_WIDE) / 2
            self.sign(left, top + (ROW - SIGN_HIGH) / 2, cell["state"], cell["why"])
        right = x + MARGIN + NAME + 7 * CELL
        days = f"{line['days']}/{line['needed']}"
        canvas.write(right + DAYS / 2, middle, days, TEXT, DAYS, bold=True, anchor="mm")
        pain = "–" if line["pain"] is None else str(line["pain"])
        canvas.write(right + DAYS + PAIN / 2, middle, pain, TEXT, PAIN, anchor="mm")
        canvas.box(x + MARGIN, top + ROW - 1, PANEL - 2 * MARGIN, 0, BAND)

    def sign(self, x: float, y: float, state: str, why: str) -> None:
        """A state's sign with the letter of its reason. Drawn once, as most days look alike."""
        canvas = self.canvas
        if (state, why) not in self._tiles:
            letter = canvas.say(text("picture-mark", mark=why))[:1] if why else ""
            size = (canvas.px(SIGN_WIDE), canvas.px(SIGN_HIGH))
            self._tiles[state, why] = tile(state, letter, *size)
        canvas.image.paste(self._tiles[state, why], (canvas.px(x), canvas.px(y)))

    def legend(self, reasons: Sequence[str], height: float, columns: int) -> None:
        canvas, say = self.canvas, self.canvas.say
        signs = len(STATES) + len(reasons)
        rows = math.ceil(signs / columns)
        top = height - (rows + 1) * LEGEND_ROW - MARGIN
        width = (canvas.width - 2 * MARGIN) / columns
        canvas.box(MARGIN, top - MARGIN / 2, canvas.width - 2 * MARGIN, 1, LINE)
        for number in range(signs):
            x = MARGIN + number // rows * width
            y = top + number % rows * LEGEND_ROW
            if number < len(STATES):
                state = STATES[number]
                self.sign(x, y + (LEGEND_ROW - SIGN_HIGH) / 2, state, "")
                words = say(text("picture-cell", cell=state))
            else:
                why = reasons[number - len(STATES)]
                mark = say(text("picture-mark", mark=why))[:1]
                middle = (x + SIGN_WIDE / 2, y + LEGEND_ROW / 2)
                canvas.write(*middle, mark, TEXT, SIGN_WIDE, bold=True, anchor="mm")
                words = say(text("picture-why", why=why))
            canvas.write(
                x + SIGN_WIDE + 14, y + LEGEND_ROW / 2, words, SMALL, width - SIGN_WIDE - 20
            )
        canvas.write(
            MARGIN, height - MARGIN - LEGEND_ROW / 2, say(text("picture-figures")),
            SMALL, canvas.width - 2 * MARGIN, shade=QUIET,
        )  # fmt: skip
