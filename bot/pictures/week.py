"""A client's own week (W7): a bar for each day, in the words of somebody who wishes her well.

What was done is shown as done of total, whatever the day came to: a client reads no verdict.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from typing import Any

from bot.pictures.canvas import BAND, DEEP, INK, LINE, PALE, PAPER, QUIET, Canvas
from scheduler.domain.messages import Text, text

# Pixels of a picture 1080 wide, which a phone shows at about a third: 42 become 14.
WIDTH, MARGIN, ROW = 1080, 48, 96
TITLE, TEXT, SMALL = 50, 42, 38
DAY, BAR, BAR_HIGH = 214, 490, 54
HEAD, FOOT_ROW = 176, 62
MOST_COMPANIONS = 6


def draw(line: Mapping[str, Any], language: str) -> bytes:
    """The picture of one client's week as a PNG."""
    companions = line["companions"][:MOST_COMPANIONS]
    height = HEAD + 7 * ROW + (1 + len(companions)) * FOOT_ROW + MARGIN
    canvas = Canvas(WIDTH, height, language)
    _head(canvas, line)
    for number, cell in enumerate(line["cells"]):
        _day(canvas, HEAD + number * ROW, cell)
    y = HEAD + 7 * ROW + FOOT_ROW * 0.75
    wide = WIDTH - 2 * MARGIN
    days = text("own-days", days=line["days"], needed=line["needed"])
    canvas.write(MARGIN, y, canvas.say(days), TEXT, wide, bold=True)
    for each in companions:
        y += FOOT_ROW
        said = text("own-companion", companion=each["name"], done=each["done"], days=each["days"])
        canvas.write(MARGIN, y, canvas.say(said), SMALL, wide)
    return canvas.png()


def _head(canvas: Canvas, line: Mapping[str, Any]) -> None:
    first, last = line["cells"][0]["day"], line["cells"][-1]["day"]
    wide = WIDTH - 2 * MARGIN
    title = canvas.say(text("own-title", first=first, last=last))
    canvas.write(MARGIN, 64, title, TITLE, wide, bold=True)
    movement = text("own-movement", movement=line["movement"], per_side=line["per_side"])
    canvas.write(MARGIN, 128, canvas.say(movement), SMALL, wide, shade=QUIET)


def _day(canvas: Canvas, top: float, cell: Mapping[str, Any]) -> None:
    day, middle = date.fromisoformat(cell["day"]), top + ROW / 2
    weekday = canvas.say(text("picture-weekday", weekday=day.weekday()))
    canvas.write(MARGIN, middle, weekday, TEXT, 120, bold=True)
    canvas.write(MARGIN + 186, middle, str(day.day), TEXT, 60, anchor="rm")
    _bar(canvas, MARGIN + DAY, middle - BAR_HIGH / 2, cell)
    x = MARGIN + DAY + BAR + 28
    quiet = cell["state"] in {"rest", "excused", "ahead"}
    canvas.write(
        x,
        middle,
        canvas.say(_words(cell)),
        TEXT,
        WIDTH - MARGIN - x,
        shade=QUIET if quiet else INK,
    )


def _words(cell: Mapping[str, Any]) -> Text:
    done, total = cell["done"], cell["total"]
    match cell["state"]:
        case "rest":
            return text("own-rest")
        case "excused" if not done:
            return text("own-off")
        case "extra":
            return text("own-extra", done=done)
        case "ahead":
            return text("own-ahead", total=total)
        case _:
            return text("own-done", done=done, total=total)


def _bar(canvas: Canvas, x: float, y: float, cell: Mapping[str, Any]) -> None:
    """Filled as far as the day came, with a tick if it counts. Thin: to come. Hatched, a line: not asked."""
    pen, state = canvas.pen, cell["state"]
    inset = 18 if state == "ahead" else 0
    box = (x, y + inset, x + BAR, y + BAR_HIGH - inset)
    if state == "rest":
        pen.line(((x, y + BAR_HIGH / 2), (x + 60, y + BAR_HIGH / 2)), fill=LINE, width=4)
        return
    if state == "extra":
        pen.rounded_rectangle((x, y, x + 60, y + BAR_HIGH), 10, fill=DEEP)
        pen.line(((x + 16, y + 27), (x + 44, y + 27)), fill=PAPER, width=7)
        pen.line(((x + 30, y + 13), (x + 30, y + 41)), fill=PAPER, width=7)
        return
    pen.rounded_rectangle(box, 10, fill=PALE if state == "excused" else PAPER)
    if state == "excused":
        for left in range(round(x), round(x + BAR) - 20, 40):
            pen.line(((left + 4, y + BAR_HIGH), (left + 30, y)), fill=LINE, width=5)
    elif state != "ahead":
        pen.rounded_rectangle(box, 10, fill=BAND)
    share = min(cell["done"] / cell["total"], 1.0) if cell["total"] else bool(cell["done"])
    if share > 0:
        pen.rounded_rectangle((x, y, x + max(BAR * share, 24), y + BAR_HIGH), 10, fill=DEEP)
    if state == "counted":
        points = [(x + 20, y + 28), (x + 32, y + 40), (x + 56, y + 14)]
        pen.line(points, fill=PAPER, width=7, joint="curve")
    pen.rounded_rectangle(box, 10, outline=LINE if state in {"ahead", "excused"} else INK, width=3)
