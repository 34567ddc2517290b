"""The stand-in's state: people, chats, messages, files, what was said and done.

Pure and synchronous: the time comes from `now`, nothing waits, nothing is sent anywhere.
"""

import secrets
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import Any, Literal

from bot.rehearsal.faults import Faults
from bot.rehearsal.rate import RateRule
from bot.rehearsal.updates import Update, Updates

BOT_ID = 7_000_000_001  # like real ones past 32 bits, so that narrow columns fail here first
FIRST_PERSON_ID = 5_000_000_001
FIRST_GROUP_ID = -1_001_000_000_001
PRESS_ANSWERABLE = timedelta(minutes=15)

ChatType = Literal["private", "group", "supergroup", "channel"]


@dataclass(slots=True)
class Person:
    """Somebody with an account. `label` is for the page only, such as "clinician"."""

    id: int
    name: str
    language: str
    label: str = ""
    username: str | None = None
    started: bool = False
    blocked: bool = False


@dataclass(slots=True, eq=False)
class Chat:
    """A private chat has the person's id. `left`: the bot is no longer in it."""

    id: int
    type: ChatType
    title: str = ""
    person: Person | None = None
    left: bool = False
    messages: list["Message"] = field(default_factory=list, repr=False)


@dataclass(frozen=True, slots=True)
class StoredFile:
    """An uploaded file; `facts` are the Bot API's fields of it, such as width and height."""

    file_id: str
    kind: str
    name: str
    mime: str
    content: bytes
    facts: Mapping[str, Any] = field(default_factory=dict)


@dataclass(slots=True, eq=False)
class Message:
    """One message. `raw` is the text before its markup was read; `sender` None is the bot."""

    message_id: int
    chat: Chat
    sender: Person | None
    at: datetime
    text: str = ""
    raw: str = ""
    entities: list[dict[str, Any]] = field(default_factory=list)
    file: StoredFile | None = None
    markup: dict[str, Any] | None = None
    extra: dict[str, Any] = field(default_factory=dict)
    reply_to: int | None = None
    silent: bool = False
    protected: bool = False
    edited_at: datetime | None = None
    deleted: bool = False


@dataclass(slots=True)
class Press:
    """A press of a button, open until answered. `answer` is what the person sees pop up."""

    id: str
    person: Person
    message_id: int
    at: datetime
    answered: bool = False
    answer: str = ""
    alert: bool = False


@dataclass(frozen=True, slots=True)
class LogEntry:
    """One accepted call of the bot, or one update of a person (`update` is then set).

    `method` is the call's, or the update's kind. `text` is plain. `payload` holds the decoded
    arguments of the call, or the update's content. Polling is not logged.
    """

    who: Literal["bot", "person"]
    method: str
    at: datetime
    chat_id: int | None
    message_id: int | None
    text: str
    silent: bool
    payload: Mapping[str, Any]
    update: Update | None = None


@dataclass(slots=True)
class Webhook:
    """Where updates are posted to, and the last thing that went wrong there."""

    url: str
    secret: str = ""
    connections: int = 40
    error: str = ""
    error_at: datetime | None = None


class World:
    """Everything the stand-in knows.

    Args:
        now: the current instant, aware, in UTC.
        token: what the bot must call with.
        first_update_id: numbers of updates start here; a bot that keeps its database over a
            restart of the stand-in needs a later start than the last one.
    """

    def __init__(
        self,
        now: Callable[[], datetime],
        bot_username: str = "boutwise_rehearsal_bot",
        token: str = "7000000001:rehearsal-token-not-a-secret",  # noqa: S107 - opens nothing real
        *,
        first_update_id: int = 1,
    ) -> None:
        self.now = now
        self.token = token
        self.bot_username = bot_username
        self.people: dict[int, Person] = {}
        self.chats: dict[int, Chat] = {}
        self.messages: dict[int, Message] = {}
        self.files: dict[str, StoredFile] = {}
        self.presses: dict[str, Press] = {}
        self.commands: dict[tuple[str, str], list[dict[str, Any]]] = {}
        self.descriptions: dict[tuple[str, str], str] = {}
        self.webhook: Webhook | None = None
        self.updates = Updates(first_update_id)
        self.faults = Faults()
        self.rate: RateRule | None = None
        self.log: list[LogEntry] = []

    def add_person(
        self, name: str, language: str = "en", *, label: str = "", username: str | None = None
    ) -> int:
        """A new person who has not written to the bot yet; the answer is their user id."""
        person = Person(FIRST_PERSON_ID + len(self.people), name, language, label, username)
        self.people[person.id] = person
        self.chats[person.id] = Chat(person.id, "private", person=person)
        return person.id

    def group(self, title: str, kind: ChatType) -> Chat:
        """The group or channel of this title, made if new."""
        for chat in self.chats.values():
            if chat.type == kind and chat.title == title:
                return chat
        groups = sum(chat.type != "private" for chat in self.chats.values())
        chat = Chat(FIRST_GROUP_ID - groups, kind, title)
        self.chats[chat.id] = chat
        return chat

    def keep_message(self, chat: Chat, sender: Person | None, **fields: Any) -> Message:
        """A new message in a chat, dated now."""
        message = Message(len(self.messages) + 1, chat, sender, self.now(), **fields)
        self.messages[message.message_id] = message
        chat.messages.append(message)
        return message

    def message_in(self, chat: Chat, message_id: int) -> Message | None:
        """A message of this chat that was not deleted."""
        message = self.messages.get(message_id)
        if message is None or message.chat is not chat or message.deleted:
            return None
        return message

    def keep_file(
        self, kind: str, name: str, mime: str, content: bytes, facts: Mapping[str, Any]
    ) -> StoredFile:
        """A new file under an id nobody can guess, as the platform's are."""
        stored = StoredFile(secrets.token_urlsafe(24), kind, name, mime, content, facts)
        self.files[stored.file_id] = stored
        return stored

    def keep_press(self, person: Person, message: Message) -> Press:
        """A new press of a button of `message`."""
        press = Press(
            str(4_000_000_000_000_001 + len(self.presses)), person, message.message_id, self.now()
        )
        self.presses[press.id] = press
        return press

    def raise_update(
        self, kind: str, content: Mapping[str, Any], chat_id: int, message: Message | None
    ) -> int | None:
        """Queue and log an update; its id, or None if the bot did not ask for this kind."""
        update = self.updates.add(kind, content, self.now())
        if update is None:
            return None
        entry = LogEntry(
            "person", kind, update.at, chat_id, message.message_id if message else None,
            message.text if message else "", False, content, update,
        )  # fmt: skip
        self.log.append(entry)
        return update.update_id
