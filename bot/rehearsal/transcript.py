"""A rehearsal's conversation as a reader would like to see it: one section a person, in order of time."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator
from zoneinfo import ZoneInfo

from bot.rehearsal.keyboards import rows_of
from bot.rehearsal.world import LogEntry, World

WIDTH = 88
INDENT = " " * 14
SHOWN = frozenset({"sendMessage", "editMessageText", "message", "edited_message", "callback_query"})


def transcript(world: World, who: int, zone: ZoneInfo) -> Iterator[str]:
    """The lines of one person's chat; times are wall clock in `zone`."""
    labels: dict[str, str] = {}
    for entry in world.log:
        if entry.chat_id != who or entry.method not in SHOWN:
            continue
        time = entry.at.astimezone(zone).strftime("%H:%M")
        yield from _lines(entry, time, world.people[who].name, labels)


def _lines(entry: LogEntry, time: str, name: str, labels: dict[str, str]) -> Iterator[str]:
    if entry.who == "bot":
        speaker = "Boutwise" if entry.method == "sendMessage" else "(changed)"
        yield from _wrapped(time, speaker, entry.text)
        for row in rows_of(entry.payload.get("reply_markup")):
            labels.update({each.data: each.label for each in row if each.data})
            yield INDENT + " ".join(f"[{each.label}]" for each in row)
    elif entry.method == "callback_query":
        data = str(entry.payload.get("data", ""))
        yield from _wrapped(time, name, f"taps [{labels.get(data, data)}]")
    else:
        yield from _wrapped(time, name, f"“{entry.text}”")


def _wrapped(time: str, speaker: str, text: str) -> Iterator[str]:
    first = f"{time}  {speaker:<9}"
    for number, line in enumerate(text.splitlines() or [""]):
        lead = f"{first:<{len(INDENT)}}  " if number == 0 else INDENT + "  "
        yield from textwrap.wrap(
            line, WIDTH, initial_indent=lead, subsequent_indent=INDENT + "  "
        ) or [lead.rstrip()]
