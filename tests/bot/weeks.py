"""Invented weeks, digests and records: the values that pictures and files are made of."""

from datetime import date, timedelta
from typing import Any

MONDAY = date(2027, 3, 8)
COUNTED = {"state": "counted", "why": "", "done": 40, "total": 40}
PARTIAL = {"state": "partial", "why": "declined", "done": 12, "total": 40}
MISSED = {"state": "missed", "why": "no-answer", "done": 0, "total": 40}
EXCUSED = {"state": "excused", "why": "hold", "done": 0, "total": 40}
OPEN = {"state": "open", "why": "", "done": 10, "total": 40}
AHEAD = {"state": "ahead", "why": "", "done": 0, "total": 40}
REST = {"state": "rest", "why": "", "done": 0, "total": 0}
EXTRA = {"state": "extra", "why": "", "done": 8, "total": 0}
KINDS = (COUNTED, PARTIAL, MISSED, EXCUSED, OPEN, AHEAD, REST, EXTRA)
NEED = [{"kind": "hold", "since": "2027-03-09", "pain": 7}]

Cell = dict[str, Any]


def line(name: str = "Ann", *cells: Cell, first: date = MONDAY, **changed: Any) -> dict[str, Any]:
    """One client's week. Without cells: three planned days, one of each kind."""
    chosen = cells or (COUNTED, REST, REST, PARTIAL, REST, MISSED, REST)
    days = [{"day": str(first + timedelta(number)), **cell} for number, cell in enumerate(chosen)]
    return {
        "client": 12, "name": name, "per_side": False, "movement": "gentle-heel-drop",
        "days": 2, "needed": 3, "reps": 92, "reps_capped": 80, "prescribed": 120,
        "bouts": 8, "bouts_planned": 12, "spread": 0.71, "pain": 4, "flags": 2, "urgent": 1,
        "weekly": ["pain"], "excused": 1, "open": 2,
        "companions": [{"name": "Prone upper-back raise", "done": 2, "days": 3}],
        "cells": days, "reasons": [],
    } | changed  # fmt: skip


def digest(*lines: dict[str, Any], **changed: Any) -> dict[str, Any]:
    """A clinician's week."""
    return {
        "week": "2027-W10", "first": "2027-03-08", "last": "2027-03-14",
        "made_at": "2027-03-15T08:00", "zone": "Europe/Lisbon", "practice": "Harbor House",
        "clinician": "Dana", "lines": list(lines),
    } | changed  # fmt: skip


def crowd(count: int, need: int = 0) -> dict[str, Any]:
    """A digest of so many clients, the first of whom need her; every state and reason occurs."""
    whys = ("no-answer", "declined", "unreachable")
    breaks = ("break", "hold", "bot-down", "not-asked", "travel")
    lines = []
    for number in range(count):
        kinds = [KINDS[(number + 3 * day) % len(KINDS)] for day in range(7)]
        cells = [
            each | {"why": (breaks if each is EXCUSED else whys)[number % 3]}
            if each["why"]
            else each
            for each in kinds
        ]
        reasons = NEED if number < need else []
        lines.append(line(f"Client {number + 1}", *cells, client=number + 1, reasons=reasons))
    return digest(*lines)


def record(weeks: int = 3, **changed: Any) -> dict[str, Any]:
    """One client over a period."""
    shown = []
    for number in range(weeks):
        first = MONDAY + timedelta(7 * number)
        year, week, _ = first.isocalendar()
        head = {"label": f"{year}-W{week:02}", "first": str(first)}
        shown.append(head | line(first=first, days=number % 4, reps=80 + number))
    return {
        "practice": "Harbor House", "clinician": "Dana", "zone": "Europe/Lisbon",
        "made_at": "2027-06-01T08:00", "from": "2027-03-08", "to": "2027-05-30", "name": "Ann",
        "plan": {
            "movement": "gentle-heel-drop", "per_side": False, "total": 40, "bout_reps": 10,
            "bout_max": 12, "days_min": 2, "days_max": 3, "weekdays": [0, 3, 5],
            "window": [480, 1200], "gap": 120, "start": "2027-03-08", "review": "2027-05-03",
            "end": None, "note": "Slow and soft.",
        },
        "ceiling": "moderate", "weeks": shown,
        "pain": [{"day": "2027-03-09", "score": 7, "place": "back"},
                 {"day": "2027-03-12", "score": 2, "place": "knee"}],
        "falls": [{"day": "2027-03-11", "injury": False}],
        "flags": [{"id": 12, "kind": "pain", "opened": "2027-03-09T14:05",
                   "closed": "2027-03-10T09:00", "outcome": "called"},
                  {"id": 15, "kind": "fall", "opened": "2027-03-11T10:00", "closed": None,
                   "outcome": ""}],
        "holds": [{"from": "2027-03-09", "to": "2027-03-16"}],
    } | changed  # fmt: skip
