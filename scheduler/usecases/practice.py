"""The practice's settings: shown to an admin, and changed within their bounds (A1, A3)."""

from __future__ import annotations

import re
from datetime import datetime
from decimal import Decimal
from zoneinfo import ZoneInfo

from scheduler.domain.hours import parse_span
from scheduler.domain.messages import Argument
from scheduler.domain.reply import Reply, reply
from scheduler.domain.settings import (
    BOUNDS,
    DECIMALS,
    NAMES,
    WEEKDAY_NAMES,
    WEEKDAYS,
    Practice,
    from_rows,
)
from scheduler.ports import Tx
from scheduler.usecases import digests

LONGEST = 100
"""Characters of a setting's text: it stands within sentences to clients."""
CALLED = frozenset({"phone", "emergency_number", "crisis_line"})


def settings(tx: Tx) -> Reply:
    """Every practice setting with its value, for an admin."""
    practice = tx.book.practice()
    values: list[Argument] = [{"name": n, "value": getattr(practice, n)} for n in NAMES]
    return reply("settings", settings=values)


def set_setting(tx: Tx, by: int, name: str, value: str, now: datetime) -> Reply:
    """Change one setting within its bounds. `value` is as it is kept: `monday`, `09:00-17:00`, `mon tue`."""
    practice = tx.book.practice()
    if name not in NAMES:
        return reply("setting-unknown", name=name)
    checked = _number(practice, name, value)
    if isinstance(checked, Reply):
        return checked
    value = checked
    if len(value) > LONGEST:
        return reply("setting-too-long", setting=name, longest=LONGEST)
    fault = _fault(name, value)
    if fault:
        return reply(fault, setting=name)
    tx.book.put(name, value)
    tx.questions.close(by, "setting")
    before = str(getattr(practice, name))
    tx.book.audit(by, "setting", None, now, setting=name, before=before, after=value)
    if name == "zone" and value != before:
        digests.schedule_all(tx, now, anew=True)
    return reply("setting-kept", setting=name, value=value)


def _number(practice: Practice, name: str, value: str) -> str | Reply:
    """A number within its bounds, as it is kept, or what is wrong with it; any other text as it is."""
    if name not in BOUNDS and name not in DECIMALS:
        return value
    low, high = {**BOUNDS, **DECIMALS}[name]
    number = _decimal(value)
    whole = name in DECIMALS or value.strip().isdecimal()
    if number is None or not whole or not low <= number <= high:
        return reply("setting-out-of-bounds", setting=name, low=low, high=high)
    kept = f"{number.normalize():f}"
    if name in BOUNDS:
        after = from_rows({**_texts(practice), name: kept})
        if after.pain_carry_on >= after.pain_hold:
            return reply("setting-pain-order", setting=name)
    return kept


def _decimal(value: str) -> Decimal | None:
    """A number with at most two digits after its point or comma; `None` if it is none."""
    found = re.fullmatch(r"\s*([0-9]{1,4})(?:[.,]([0-9]{1,2}))?\s*", value)
    return Decimal(f"{found[1]}.{found[2] or 0}") if found else None


def _texts(practice: Practice) -> dict[str, str]:
    return {name: str(getattr(practice, name)) for name in NAMES}


def _fault(name: str, value: str) -> str | None:
    """The id of the sentence that says what is wrong with a text, `None` if nothing is."""
    try:
        if name == "zone":
            ZoneInfo(value)
        if name in {"window", "work_hours"}:
            parse_span(value)
    except (ValueError, KeyError, OSError):
        return f"setting-bad-{name.replace('_', '-')}"
    if name in CALLED and not any(c.isdigit() for c in value):
        return "setting-bad-number"
    days = value.split()
    fits = {
        "week_start": value in WEEKDAY_NAMES,
        "work_days": bool(days) and days == [day for day in WEEKDAYS if day in days],
        "files_in_chat": value in {"yes", "no"},
        "erase_left": value in {"yes", "no"},
    }.get(name, True)
    return None if fits else f"setting-bad-{name.replace('_', '-')}"
