"""The room without the network: an update goes from the platform's shape straight into its transaction, and
what leaves the outbox is kept as values. Dispatch, use cases, store and outbox are the real ones.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import datetime
from typing import Any

from bot.telegram.attachments import attachment
from bot.telegram.buttons import rows
from bot.telegram.handlers import dispatch
from bot.telegram.incoming import incoming
from bot.telegram.places import without_places
from bot.telegram.sender import TelegramSender
from bot.telegram.work import Work
from bot.words import label, render
from scheduler.clock import SteppedClock
from scheduler.domain.messages import Message
from scheduler.ports import Delivered, Delivery, Letter
from storage.store import SqlStore
from tests.journeys.rooms import START, Room, data_of


def in_words(message: Message, language: str) -> str:
    """What can be read of a message: all of it, or the words below what is drawn."""
    attached = attachment(message)
    return render(attached.caption if attached else message, language)


@dataclass
class Recorder(TelegramSender):
    """Keeps what is sent, as values. `answers` are outcomes for the next sends, first to last."""

    sent: dict[int, tuple[int, Message]] = field(default_factory=dict)
    answers: list[Delivery] = field(default_factory=list)
    before: Callable[[Letter], Any] | None = None
    number: int = 0

    async def send(self, letter: Letter) -> Delivery:
        """Everything that leaves has words and labels in English too; what is drawn is not drawn here."""
        assert in_words(letter.message, "en")
        assert all(label(button.label, "en") for row in rows(letter.message) for button in row)
        assert all(len(data.encode()) <= 64 for data in data_of(letter.message))
        if self.before is not None:
            await self.before(letter)
        outcome = self.answers.pop(0) if self.answers else None
        if outcome is not None:
            return outcome
        message_id = letter.edits if letter.edits in self.sent else self.new_id()
        assert message_id is not None
        self.sent[message_id] = (letter.chat, letter.message)
        return Delivered(message_id)

    def new_id(self) -> int:
        self.number += 1
        return self.number

    async def stop_spinner(self, press_id: str) -> None:
        """Nothing turns here."""


class Desk(Room):
    """Inbox, dispatch, use cases, store and outbox at work; only the network is left out."""

    def __init__(self, store: SqlStore, updates: int = 0) -> None:
        """`updates` is the number of the last update that the store may have."""
        self.store, self.clock, self.sender = store, SteppedClock(START), Recorder()
        self.work = Work(store, self.sender, self.clock, None, "desk")
        self._updates = updates
        self._mine: dict[int, int] = {}

    @property
    def now(self) -> datetime:
        return self.clock.now()

    def chat(self, who: int) -> list[tuple[int, Message]]:
        return [(n, said) for n, (chat, said) in self.sender.sent.items() if chat == who]

    async def say(self, who: int, text: str, reply_to: int | None = None) -> None:
        answers = {"reply_to_message": {"message_id": reply_to}} if reply_to else {}
        self._mine[who] = self.sender.new_id()
        await self._message(who, "message", text=text, **answers)

    async def edit(self, who: int, text: str) -> None:
        await self._message(who, "edited_message", text=text)

    async def send(self, who: int, kind: str, caption: str = "") -> None:
        self._mine[who] = self.sender.new_id()
        more = {"caption": caption} if caption else {}
        await self._message(who, "message", **{kind: {"file_id": "invented"}}, **more)

    async def share(self, who: int, latitude: float, longitude: float) -> None:
        """Share a place, in degrees; as the door lets it in."""
        self._mine[who] = self.sender.new_id()
        place = {"latitude": latitude, "longitude": longitude}
        await self._message(who, "message", location=without_places(place))

    async def _message(self, who: int, kind: str, **content: Any) -> None:
        date_ = int(self.now.timestamp())
        await self.update(
            {kind: {"message_id": self._mine[who], "date": date_, **self._from(who), **content}}
        )

    def _from(self, who: int) -> dict[str, Any]:
        sender = {"id": who, "is_bot": False, "language_code": "en"}
        return {"from": sender, "chat": {"id": who, "type": "private"}}

    async def press_on(self, who: int, message_id: int, data: str) -> None:
        self._updates += 1
        whose = self._from(who)
        message = {"message_id": message_id, "chat": whose["chat"]}
        pressed = {"id": str(self._updates), "from": whose["from"], "message": message}
        await self.update({"callback_query": {**pressed, "data": data}})

    async def forge(self, who: int, data: str) -> None:
        chat = self.chat(who)
        await self.press_on(who, chat[-1][0] if chat else 1, data)

    async def update(self, content: dict[str, Any]) -> None:
        """Hand in one update of the platform and do all that follows from it."""
        self._updates += 1
        update = incoming({"update_id": self._updates, **content}, self.now)
        if update is not None:
            await self.run(lambda tx: dispatch.handle(tx, update, self.now))
        while await self.work.messages():
            pass

    async def step(self, to: datetime) -> None:
        await self.work.drain()
        while (due := await self.work.next_due()) is not None and due <= to:
            self.clock.move(max(due, self.now))
            await self.work.drain()
        self.clock.move(to)
        await self.work.drain()
