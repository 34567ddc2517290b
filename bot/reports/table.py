"""The digest as a table: one client a row, for a spreadsheet or a program.

RFC 4180 (CRLF, quotes doubled), UTF-8 with a byte order mark: without it a spreadsheet reads names in the
alphabet of its own country. Programs read it as `utf-8-sig`. Column names are English and stay stable,
whatever the reader's language; columns are only added. Figures are plain: a point, no separators.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Mapping
from typing import Any

HEAD = ("week", "first_day", "last_day")
FIGURES: Mapping[str, str] = {
    "client_id": "client",
    "name": "name",
    "movement": "movement",
    "per_side": "per_side",
    "days": "days",
    "days_needed": "needed",
    "reps": "reps",
    "reps_capped": "reps_capped",
    "reps_prescribed": "prescribed",
    "bouts": "bouts",
    "bouts_planned": "bouts_planned",
    "spread_theoretical": "spread",
    "worst_pain": "pain",
    "open_flags": "flags",
    "urgent_flags": "urgent",
    "excused_days": "excused",
    "open_days": "open",
}
"""Column and the field of a line that stands in it."""
LISTS = ("weekly_question", "companions", "reasons")
DAY = ("day", "state", "why", "done", "total")
DAYS = tuple(f"day{number}_{name}" for number in range(1, 8) for name in DAY)
STEP = ("day", "best", "positive", "slower")
STEPS = ("step_test_day", "step_test_seconds", "step_test_positive", "step_test_slower")
COLUMNS = (*HEAD, *FIGURES, *LISTS, *DAYS, *STEPS)

FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")
"""How a cell begins that a spreadsheet may carry out (OWASP, "CSV Injection"; second-hand)."""


def digest_csv(digest: Mapping[str, Any], language: str) -> bytes:
    """The table of a digest. It reads the same in every language."""
    del language  # part of the call, so that every attachment is made in the same way
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(COLUMNS)
    head = [digest[name] for name in ("week", "first", "last")]
    for line in digest["lines"]:
        writer.writerow([guarded(value) for value in (*head, *_row(line))])
    return out.getvalue().encode("utf-8-sig")


def _row(line: Mapping[str, Any]) -> list[Any]:
    return [
        *(line[field] for field in FIGURES.values()),
        _weekly(line["weekly"]),
        "; ".join(f"{each['name']}: {each['done']}/{each['days']}" for each in line["companions"]),
        "; ".join(_reason(each) for each in line["reasons"]),
        *(cell[name] for cell in line["cells"] for name in DAY),
        *((line.get("step") or {}).get(name) for name in STEP),
    ]


def _weekly(answer: list[str] | None) -> str:
    """What she said yes to; `none` is an answer, an empty cell is none (W8)."""
    return "" if answer is None else " ".join(answer) or "none"


def _reason(reason: Mapping[str, Any]) -> str:
    """`hold since=2027-03-09 pain=7`."""
    facts = (f"{name}={value}" for name, value in reason.items() if name != "kind")
    return " ".join([str(reason["kind"]), *facts])


def guarded(value: Any) -> str:
    """A cell: a text that could be carried out gets an apostrophe before it, as spreadsheets write texts."""
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if not isinstance(value, str):
        return str(value)
    value = value.replace("\0", "")
    return f"'{value}" if value.startswith(FORMULA) or value.lstrip().startswith(FORMULA) else value
