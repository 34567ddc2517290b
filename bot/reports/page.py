"""One client over a period on one page of A4, for the practice's own record.

A `record` is JSON:

    {"practice", "clinician", "zone", "made_at": "2027-06-01T08:00", "from": day, "to": day, "name",
     "plan": {"movement", "per_side", "total", "bout_reps", "bout_max", "days_min", "days_max",
              "weekdays": [0, 3], "window": [start, end] in minutes, "gap": minutes, "start": day,
              "review": day | null, "end": day | null, "note"} | null,
     "ceiling": level | null,
     "weeks": [{"label": "2027-W10", "first": day, ...the fields of a digest's line}], the oldest first,
     "pain": [{"day", "score", "place"}], "falls": [{"day", "injury": true | false | null}],
     "flags": [{"id", "kind", "opened", "closed", "outcome"}], "holds": [{"from", "to": day | null}],
     "steps": [{"id", "day", "best": seconds | null, "positive", "slower"}], step tests, the oldest first}

Days and times are in `zone`. What does not fit is cut, and said to be cut.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from bot.pictures.tiles import REASONS, STATES
from bot.reports.plans import of_facts
from bot.reports.sheet import BOTTOM, HEADING, LEFT, ROW, SMALL_ROW, WIDTH, Sheet
from scheduler.domain.messages import Text, text

Record = Mapping[str, Any]
Week = Mapping[str, Any]

SIGN_WIDE, SIGN_HIGH = 8.8, 5.2
FIRST = 19.0
COLUMNS = (12.0, 29.0, 14.0, 15.0, 10.0, 14.4, 11.0)
MOST_WEEKS, MOST_NOTE_LINES, MOST_PLAN_LINES = 12, 3, 2
MOST_ITEMS = 6
"""Lines of each list of pain, falls, flags and holds; fewer where the page is full."""


def draw(record: Record, language: str) -> bytes:
    """The page as a PDF."""
    sheet = Sheet(language, record["made_at"], record["zone"], record["name"])
    _head(sheet, record)
    _plan(sheet, record)
    _weeks(sheet, record["weeks"])
    _legend(sheet, record["weeks"])
    _steps(sheet, record)
    _lists(sheet, record)
    _cautions(sheet)
    return sheet.pdf_bytes()


def _head(sheet: Sheet, record: Record) -> None:
    sheet.write(LEFT, record["name"], WIDTH, size=16, bold=True)
    sheet.down(8)
    period = text("report-period", start=record["from"], end=record["to"])
    sheet.write(LEFT, sheet.say(period), WIDTH, size=10, bold=True)
    sheet.down(5)
    made = text("report-by", **{k: record[k] for k in ("clinician", "practice", "made_at", "zone")})
    sheet.write(LEFT, sheet.say(made), WIDTH, size=9)
    sheet.down(7)


def _plan(sheet: Sheet, record: Record) -> None:
    plan = record["plan"]
    sheet.heading(text("report-plan"))
    if plan is None:
        sheet.paragraph(text("report-no-plan"), 1)
        return
    for said in of_facts(plan):
        sheet.paragraph(said, MOST_PLAN_LINES)
    if record["ceiling"] is not None:
        sheet.paragraph(text("report-ceiling", ceiling=record["ceiling"]), 1)
    if plan["note"]:
        sheet.paragraph(text("report-note", note=plan["note"]), MOST_NOTE_LINES)


def _weeks(sheet: Sheet, weeks: Sequence[Week]) -> None:
    sheet.down(2)
    sheet.heading(text("report-weeks"))
    shown = weeks[-MOST_WEEKS:]
    heads = (
        text("report-days-head"), text("report-reps-head"), text("report-bouts-head"),
        text("report-spread-head"), text("report-pain-head"), text("report-excused-head"),
        text("report-open-head"),
    )  # fmt: skip
    _row(sheet, sheet.say(text("report-week")), [sheet.say(each) for each in heads], bold=True)
    if shown:
        _weekdays(sheet, shown[0])
    sheet.down(ROW)
    if len(weeks) > len(shown):
        sheet.rule()
        more = text("report-more", count=len(weeks) - len(shown))
        sheet.write(LEFT, sheet.say(more), WIDTH, size=8)
        sheet.down(ROW)
    for week in shown:
        sheet.rule()
        _row(sheet, week["label"], _figures(week))
        for number, cell in enumerate(week["cells"]):
            sheet.sign(LEFT + FIRST + number * SIGN_WIDE, cell, SIGN_WIDE - 0.8, SIGN_HIGH)
        sheet.down(ROW)
    if shown:
        sheet.rule()
        _row(sheet, sheet.say(text("report-all")), _figures(_together(shown)), bold=True)
        sheet.down(ROW)


def _weekdays(sheet: Sheet, week: Week) -> None:
    for number, cell in enumerate(week["cells"]):
        x = LEFT + FIRST + number * SIGN_WIDE
        sheet.write(x, sheet.weekday(cell["day"]), SIGN_WIDE, size=8, bold=True, centre=True)


def _row(sheet: Sheet, first: str, figures: Sequence[str], *, bold: bool = False) -> None:
    sheet.write(LEFT, first, FIRST, size=8, bold=bold)
    x = LEFT + FIRST + 7 * SIGN_WIDE
    for width, figure in zip(COLUMNS, figures, strict=True):
        sheet.write(x, figure, width, size=8, bold=bold, centre=True)
        x += width


def _figures(week: Week) -> list[str]:
    """The columns of a week: four figures that are never mixed into one (W6), and what lies beside them."""
    return [
        f"{week['days']}/{week['needed']}",
        f"{week['reps']} ({week['reps_capped']})/{week['prescribed']}",
        f"{week['bouts']}/{week['bouts_planned']}",
        "–" if week["spread"] is None else f"{round(100 * week['spread'])} %",
        "–" if week["pain"] is None else str(week["pain"]),
        str(week["excused"]),
        str(week["open"]),
    ]


def _together(weeks: Sequence[Week]) -> dict[str, Any]:
    """Sums of the weeks and their worst pain. A mean of the weeks' spreads would weigh days unequally."""
    summed = (
        "days", "needed", "reps", "reps_capped", "prescribed", "bouts", "bouts_planned", "excused",
        "open",
    )  # fmt: skip
    pains = [week["pain"] for week in weeks if week["pain"] is not None]
    sums = {name: sum(week[name] for week in weeks) for name in summed}
    return sums | {"spread": None, "pain": max(pains, default=None)}


def _legend(sheet: Sheet, weeks: Sequence[Week]) -> None:
    """What the signs and letters mean, in rows of four."""
    cells = [cell for week in weeks[-MOST_WEEKS:] for cell in week["cells"]]
    states = [state for state in STATES if any(cell["state"] == state for cell in cells)]
    whys = [why for why in REASONS if any(cell["why"] == why for cell in cells)]
    width = WIDTH / 4
    sheet.down(1)
    for number, name in enumerate((*states, *whys)):
        if number and number % 4 == 0:
            sheet.down(ROW - 0.6)
        x = LEFT + number % 4 * width
        if number < len(states):
            sheet.sign(x, {"state": name, "why": ""}, SIGN_WIDE - 0.8, SIGN_HIGH - 0.6)
            words = sheet.say(text("picture-cell", cell=name))
        else:
            sheet.write(x, sheet.mark(name), SIGN_WIDE, size=8, bold=True, centre=True)
            words = sheet.say(text("picture-why", why=name))
        sheet.write(x + SIGN_WIDE + 1, words, width - SIGN_WIDE - 2, size=8)
    sheet.down(ROW)
    sheet.paragraph(text("report-legend"), 2, size=7.5)


def _lists(sheet: Sheet, record: Record) -> None:
    """Two columns: pain and falls, flags and holds. The worst, the open, the latest come first."""
    sheet.down(1.5)
    most = min(MOST_ITEMS, int(((BOTTOM - sheet.y) / 2 - HEADING - 1) / SMALL_ROW))
    worst = sorted(record["pain"], key=lambda each: (-each["score"], each["day"]))
    pain = [
        text("report-pain-row", score=each["score"], day=each["day"], place=each["place"])
        for each in worst
    ]
    falls = [
        text("report-fall-row", day=each["day"], injured=each["injury"])
        for each in _latest(record["falls"], "day")
    ]
    opened = _latest(record["flags"], "opened")
    flags = [_flag(each) for each in sorted(opened, key=lambda each: each["closed"] is not None)]
    holds = [
        text("report-hold-row", day=each["from"], until=each["to"])
        for each in _latest(record["holds"], "from")
    ]
    half, top = WIDTH / 2, sheet.y
    sheet.items(LEFT, half - 3, text("report-pain"), pain, most)
    sheet.items(LEFT, half - 3, text("report-falls"), falls, most)
    lowest, sheet.y = sheet.y, top
    sheet.items(LEFT + half, half, text("report-flags"), flags, most)
    sheet.items(LEFT + half, half, text("report-holds"), holds, most)
    sheet.y = max(lowest, sheet.y)


def _latest(rows: Sequence[Record], field: str) -> list[Record]:
    return sorted(rows, key=lambda each: str(each[field]), reverse=True)


def _steps(sheet: Sheet, record: Record) -> None:
    """Step tests in one paragraph, the latest first."""
    tests = _latest(record.get("steps", []), "day")
    if tests:
        sheet.down(1)
        sheet.paragraph(text("report-steps", results=tests), MOST_PLAN_LINES)


def _flag(flag: Mapping[str, Any]) -> Text:
    return text(
        "report-flag-row", flag=flag["id"], day=flag["opened"][:10], kind=flag["kind"],
        outcome=flag["outcome"] or "",
    )  # fmt: skip


def _cautions(sheet: Sheet) -> None:
    """At the foot, wherever the rest has ended."""
    sheet.y = BOTTOM
    sheet.rule()
    sheet.paragraph(text("report-theory"), 2, size=7.5)
    sheet.paragraph(text("report-caution"), 2, size=7.5)
