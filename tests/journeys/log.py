"""The stand-in's log as values: who said what, where and when, with the texts of `qps` taken apart."""

import json
import re
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from bot.rehearsal.world import LogEntry, World

START = re.compile(r"⟦([a-z0-9-]+)\|")
PERSON_KINDS = ("message", "edited_message", "callback_query")
BOT_METHODS = ("sendMessage", "editMessageText", "sendPhoto", "sendDocument", "sendVideo")


@dataclass(frozen=True)
class Said:
    """One text of the bot: its catalogue id and its arguments."""

    id: str
    args: dict[str, Any]


@dataclass(frozen=True)
class Line:
    """One accepted message of the bot, or one deed of a person, in a private chat.

    `at` is UTC, `n` the place in the log. `data` are a pressed button's; `reply_to` is the
    message that a person's text answers; `edit` says that the bot wrote over a message, or that a
    person changed one.
    """

    n: int
    at: datetime
    bot: bool
    chat: int
    message_id: int
    texts: tuple[Said, ...]
    words: str
    silent: bool = False
    edit: bool = False
    update: int | None = None
    data: str = ""
    reply_to: int | None = None

    def get(self, id_: str) -> Said | None:
        """The text of this id, if the message has it."""
        return next((each for each in self.texts if each.id == id_), None)

    @property
    def ids(self) -> tuple[str, ...]:
        return tuple(each.id for each in self.texts)


def taken_apart(words: str) -> tuple[Said, ...]:
    """The texts of a message in the pseudo-locale; none in what a person or another language says."""
    return tuple(_texts(words))


def _texts(words: str) -> Iterator[Said]:
    for found in START.finditer(words):
        args, end = json.JSONDecoder().raw_decode(words, found.end())
        assert words[end] == "⟧", words
        yield Said(found[1], args)


def lines(world: World) -> list[Line]:
    """Every message and deed in private chats, in the order in which the platform took them."""
    return [
        _line(n, entry)
        for n, entry in enumerate(world.log)
        if entry.chat_id in world.people
        and entry.method in (BOT_METHODS if entry.who == "bot" else PERSON_KINDS)
    ]


def _line(n: int, entry: LogEntry) -> Line:
    assert entry.chat_id is not None
    assert entry.message_id is not None
    replied = entry.payload.get("reply_to_message") or {}
    bot = entry.who == "bot"
    return Line(
        n=n,
        at=entry.at,
        bot=bot,
        chat=entry.chat_id,
        message_id=entry.message_id,
        texts=taken_apart(entry.text) if bot else (),
        words=entry.text,
        silent=entry.silent,
        edit=entry.method in {"editMessageText", "edited_message"},
        update=entry.update.update_id if entry.update else None,
        data=str(entry.payload.get("data", "")),
        reply_to=replied.get("message_id"),
    )
