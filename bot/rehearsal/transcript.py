"""A rehearsal's conversation as a reader would like to see it in a terminal of 100 columns.

Every line is what was really said or tapped. What is left out is counted where it would stand.
"""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Iterator
from itertools import groupby, takewhile
from zoneinfo import ZoneInfo

from bot.rehearsal.keyboards import Button, rows_of
from bot.rehearsal.story import CLIENTS, PARTS, START, ZONE
from bot.rehearsal.world import LogEntry, World

WIDTH = 100
SPEAKER = 9
TEXT_AT = len("08:00  ") + SPEAKER + 2
LONG_TEXT, MANY_BUTTONS = 8, 8
"""Lines of a text, and buttons, from which what was there before is not printed again."""
FILES = {"sendPhoto": "(picture)", "sendDocument": "(file)"}
WORDLESS = {
    "voice": "sends a voice message",
    "photo": "sends a picture",
    "location": "shares a place",
}
SHOWN = frozenset(
    {"sendMessage", "editMessageText", "message", "edited_message", "callback_query", *FILES}
)
DAY = f"{START:%A} {START.day} {START:%B %Y}"
HEAD = f"""\
REHEARSAL of a week from {DAY} on. People, practice and their data are invented.
Doses and limits are examples, not advice: they are for a licensed clinician to decide.
The bot is the real one; only the chat server and the clock are stand-ins. Times: {ZONE.key}.
[Label] is a button, a slash begins a new row. (changed): the bot wrote over its own message."""


def report(world: World, who: dict[str, int]) -> Iterator[str]:
    """The whole rehearsal, line by line: the week of each person, then how the practice was set up."""
    yield from HEAD.splitlines()
    for name, shows in PARTS.items():
        week = [each for each in chat_of(world.log, who[name]) if each.at > START]
        yield from ("", f"=== {name}: {shows} ===")
        for day, said in groupby(week, key=lambda each: each.at.astimezone(ZONE).date()):
            yield from (f"--- {day:%A} {day.day} {day:%B} ---", *transcript(said, name, ZONE))
    yield from ("", "=== Before the week: how they were set up ===")
    yield from _set_up(world, who)


def _set_up(world: World, who: dict[str, int]) -> Iterator[str]:
    first, *others = CLIENTS
    until = who[others[0]]
    opening = list(takewhile(lambda each: each.chat_id != until, world.log))
    for name in (first, "Dana"):
        yield from ("", f"--- {name} ---", *transcript(chat_of(opening, who[name]), name, ZONE))
    yield ""
    for name in others:
        count = sum(each.at <= START for each in chat_of(world.log, who[name]))
        yield f"{name} joined as {first} did, Dana prescribed as above: {count} messages and taps not shown."
    count = len(chat_of(world.log, who["Kim"]))
    yield f"Kim, the admin, gave the practice its numbers and hours: {count} messages and taps not shown."


def chat_of(log: Iterable[LogEntry], who: int) -> list[LogEntry]:
    """What was said and tapped in one person's chat, oldest first."""
    return [each for each in log if each.chat_id == who and each.method in SHOWN]


def transcript(chat: Iterable[LogEntry], name: str, zone: ZoneInfo) -> Iterator[str]:
    """The lines of a chat, or a part of one, of the person with this name; wall clock in `zone`."""
    paper = _Paper()
    for entry in chat:
        time = entry.at.astimezone(zone).strftime("%H:%M")
        if entry.who == "bot":
            speaker = "(changed)" if entry.method == "editMessageText" else "Boutwise"
            yield from _wrapped(time, speaker, [*_file(entry), *paper.text(entry.text)])
            yield from paper.keyboard(rows_of(entry.payload.get("reply_markup")))
        elif entry.method == "callback_query":
            yield from _wrapped(time, name, [f"taps [{paper.label(entry)}]"])
        else:
            yield from _wrapped(time, name, [_did(entry)])


class _Paper:
    """What has been printed so far, so that a long card and its buttons are not printed again."""

    def __init__(self) -> None:
        self._labels: dict[str, str] = {}
        self._texts: dict[str, list[str]] = {}
        self._keyboards: set[str] = set()

    def text(self, text: str) -> list[str]:
        """The lines of a text; of a long one with the same first line as before only the new ones."""
        first, *rest = text.splitlines() or [""]
        before, self._texts[first] = self._texts.get(first, []), rest
        kept = [line for line in rest if line not in before]
        if len(rest) < LONG_TEXT or len(kept) == len(rest):
            return [first, *rest]
        return [first, *kept, f"({len(rest) - len(kept)} lines as before)"]

    def keyboard(self, rows: list[list[Button]]) -> Iterator[str]:
        """The buttons under a message, wrapped."""
        self._labels.update({each.data: each.label for row in rows for each in row if each.data})
        shown = " / ".join(" ".join(f"[{each.label}]" for each in row) for row in rows)
        if shown in self._keyboards and sum(map(len, rows)) >= MANY_BUTTONS:
            shown = "(buttons as before)"
        elif shown:
            self._keyboards.add(shown)
        yield from _indented(
            shown.replace(" ", "\N{NO-BREAK SPACE}").replace("]\N{NO-BREAK SPACE}", "] ")
        )

    def label(self, tap: LogEntry) -> str:
        """What stood on the button that was tapped."""
        data = str(tap.payload.get("data", ""))
        return self._labels.get(data, data)


def _file(sent: LogEntry) -> list[str]:
    """A line that stands for the picture or the file above its caption."""
    return [FILES[sent.method]] if sent.method in FILES else []


def _did(entry: LogEntry) -> str:
    """A person's words, or what was sent in their place."""
    sent = next((shown for kind, shown in WORDLESS.items() if kind in entry.payload), "")
    words = f"“{_said(entry.text)}”" if entry.text else ""
    return " ".join(filter(None, (sent, words)))


def _said(text: str) -> str:
    """A person's words; of an invitation's code only the beginning, as it is of no use to a reader."""
    command, _, code = text.partition(" ")
    return f"{command} {code[:6]}..." if command == "/start" and code else text


def _wrapped(time: str, speaker: str, lines: list[str]) -> Iterator[str]:
    lead = f"{time}  {speaker:<{SPEAKER}}".ljust(TEXT_AT)
    for number, line in enumerate(lines):
        first, *more = list(_indented(line)) or [""]
        yield (lead + first[TEXT_AT:]).rstrip() if number == 0 else first
        yield from more


def _indented(line: str) -> Iterator[str]:
    lead = " " * TEXT_AT
    wrapped = textwrap.wrap(line, WIDTH, initial_indent=lead, subsequent_indent=lead)
    yield from (each.replace("\N{NO-BREAK SPACE}", " ") for each in wrapped)
