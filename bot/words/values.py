"""Values that read otherwise than they are kept: settings (`mon tue`: "Mon, Tue") and companions."""

from __future__ import annotations

from typing import Any

from bot.words.catalogue import Catalogue
from bot.words.typed import one_line
from scheduler.domain.companions import CATALOGUE
from scheduler.domain.settings import WEEKDAYS

LONGEST_NAME = 200
"""Characters."""
OF_DAYS = frozenset({"week_start", "work_days"})
OF_YES_NO = frozenset({"files_in_chat", "erase_left"})
YES_NO = {"yes": "part-yes", "no": "part-no"}


def setting_value(name: str, value: Any, words: Catalogue) -> Any:
    """The value in words; what needs none, as it is."""
    if name in OF_DAYS:
        days = (WEEKDAYS.index(day[:3]) for day in str(value).split())
        return ", ".join(words.say(f"name-weekday-{day}", {}) for day in days)
    if name in OF_YES_NO and value in YES_NO:
        return words.say(YES_NO[value], {})
    return value


def companion_name(value: str, words: Catalogue) -> str:
    """The name of a companion; one that the catalogue does not know, as it was written."""
    known = value in CATALOGUE
    return words.say(f"name-companion-{value}", {}) if known else one_line(value, LONGEST_NAME)
