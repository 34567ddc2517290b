"""Rooms in which an invented practice talks with the bot, with its facts in plain sight.

`Whole` is the whole program against the stand-in server; `desk.Desk` is the same without the network.
Everybody reads the pseudo-locale, so that both hand out the same ids and arguments.
"""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Callable
from datetime import UTC, date, datetime, timedelta
from json import JSONDecoder
from typing import Any, TypeVar
from zoneinfo import ZoneInfo

import pytest

from bot.rehearsal import people
from bot.rehearsal.stage import Stage
from bot.rehearsal.world import FIRST_PERSON_ID
from bot.telegram.buttons import rows
from scheduler.domain.flags import Flag
from scheduler.domain.messages import Message, Text
from scheduler.domain.people import Role
from scheduler.ports import Tx
from storage.store import SqlStore

Result = TypeVar("Result")

KIM, DANA, EVE, ANN, BO, GIL = (FIRST_PERSON_ID + n for n in range(6))
"""Accounts: the admin; two clinicians; Ann and Bo of Dana's caseload (Bo has not joined); Gil of Eve's."""
NAMES = {KIM: "Kim", DANA: "Dana", EVE: "Eve", ANN: "Ann", BO: "Bo", GIL: "Gil"}
ROLES = {KIM: Role.ADMIN, DANA: Role.CLINICIAN, EVE: Role.CLINICIAN}
CLINICIAN_OF = {ANN: DANA, BO: DANA, GIL: EVE}
IDS = {KIM: 1, DANA: 2, EVE: 3, ANN: 4, BO: 5, GIL: 6}
"""Our person ids, in the order in which they are enrolled."""
ZONE = ZoneInfo("Europe/Lisbon")
MONDAY = date(2027, 3, 8)
START = datetime(2027, 3, 8, 5, 0, tzinfo=UTC)
PHONE, EMERGENCY, CRISIS = "555 0100", "112", "555 0199"
UPDATES = 10_000
"""More than furnishing takes."""

JOINING = ("ok:1", "r:bones:none", "r:heart:none", "r:else:none", "u:1", "t:keep")
"""From the notice to ready in six taps."""
POSTGRESQL = pytest.param("postgresql", marks=pytest.mark.postgres)
on_both = pytest.mark.parametrize("engine", ["sqlite", POSTGRESQL], indirect=True)
"""Over a test that asks for `desk` or `whole`: on both database engines."""


class Room(ABC):
    """What people do, what they read, and what the store holds."""

    store: SqlStore

    @property
    @abstractmethod
    def now(self) -> datetime: ...

    @abstractmethod
    async def say(self, who: int, text: str, reply_to: int | None = None) -> None: ...

    @abstractmethod
    async def edit(self, who: int, text: str) -> None:
        """Change the person's last message."""

    @abstractmethod
    async def forge(self, who: int, data: str) -> None:
        """Press with any data under the latest message."""

    @abstractmethod
    async def send(self, who: int, kind: str, caption: str = "") -> None:
        """Send a file: photo, voice, sticker."""

    @abstractmethod
    async def press_on(self, who: int, message_id: int, data: str) -> None: ...

    @abstractmethod
    async def step(self, to: datetime) -> None: ...

    @abstractmethod
    def chat(self, who: int) -> list[tuple[int, Message]]:
        """The bot's messages in a chat as they read now, with their ids, oldest first."""

    async def press(self, who: int, data: str) -> None:
        """Tap the latest button with these data. LookupError if the chat shows none."""
        for message_id, said in reversed(self.chat(who)):
            if data in data_of(said):
                await self.press_on(who, message_id, data)
                return
        raise LookupError(f"{NAMES.get(who, who)} sees no button {data!r}")

    def button(self, who: int, start: str) -> str:
        """The data of the latest button that begin so. LookupError if the chat shows none."""
        for _, said in reversed(self.chat(who)):
            for data in data_of(said):
                if data.startswith(start):
                    return data
        raise LookupError(f"{NAMES.get(who, who)} sees no button {start}...")

    async def later(self, **span: float) -> None:
        await self.step(self.now + timedelta(**span))

    async def run(self, work: Callable[[Tx], Result]) -> Result:
        return await self.store.run(work)

    def texts(self, who: int) -> list[Text]:
        """Every text that a person can read now, oldest first."""
        return [each for _, said in self.chat(who) for each in said]

    def last(self, who: int) -> Message:
        return self.chat(who)[-1][1]

    def ids(self, who: int) -> list[str]:
        """The ids of the latest message."""
        return [each.id for each in self.last(who)]

    def buttons(self, who: int) -> list[str]:
        return data_of(self.last(who))

    def count(self, who: int, id_: str) -> int:
        return sum(each.id == id_ for each in self.texts(who))

    def the(self, who: int, id_: str) -> Text:
        """The one text with this id that a person can read."""
        found = [each for each in self.texts(who) if each.id == id_]
        assert len(found) == 1, f"{len(found)} of {id_}"
        return found[0]

    async def flags(self, client: int = ANN) -> tuple[Flag, ...]:
        """The client's open flags."""
        return await self.run(lambda tx: tx.flags.of_client(IDS[client]))

    async def holds(self, client: int = ANN) -> list[str | None]:
        """The movements of the client's open holds; `None` is all exercise."""
        return [h.movement for h in await self.run(lambda tx: tx.health.holds(IDS[client]))]

    async def reps(self, day: date = MONDAY, client: int = ANN) -> list[int]:
        """What the ledger holds of a day."""
        entries = await self.run(lambda tx: tx.ledger.day(IDS[client], day))
        return [entry.reps for entry in entries]

    async def reports(self, client: int = ANN) -> list[tuple[str, Any]]:
        """What was kept about pain and falls, oldest first: kind and body."""
        kept = await self.run(lambda tx: tx.health.reports(IDS[client], MONDAY))
        return [(kind, body) for kind, _, _, body in kept]

    async def question(self, who: int = ANN) -> tuple[str, str] | None:
        """The latest open question to a person: kind and step."""
        asked = await self.run(lambda tx: tx.questions.of(IDS[who]))
        return (asked[0].kind, asked[0].step) if asked else None


def data_of(message: Message) -> list[str]:
    return [button.data for row in rows(message) for button in row]


def at(hour: int, minute: int = 0, day: int = 0) -> datetime:
    """An instant by the clients' wall clock, `day` days after the first Monday."""
    moment = datetime(2027, 3, 8, hour, minute, tzinfo=ZONE) + timedelta(days=day)
    return moment.astimezone(UTC)


# --- the whole program ---------------------------------------------------------------------------


class Whole(Room):
    """The stand-in server, the real bot and its poll on one stepped clock."""

    def __init__(self, behind: Stage) -> None:
        self.stage, self.store = behind, behind.house.store

    @property
    def now(self) -> datetime:
        return self.stage.now

    async def say(self, who: int, text: str, reply_to: int | None = None) -> None:
        await self.stage.say(who, text, reply_to)

    async def edit(self, who: int, text: str) -> None:
        await self.stage.edit(who, text)

    async def send(self, who: int, kind: str, caption: str = "") -> None:
        sent = people.send_file(self.stage.world, who, kind, f"invented.{kind}", caption=caption)
        await self.stage.heard(sent)

    async def press_on(self, who: int, message_id: int, data: str) -> None:
        await self.stage.press(who, data, message_id)

    async def forge(self, who: int, data: str) -> None:
        latest = self.stage.messages(who)[-1].message_id
        await self.stage.heard(people.forge(self.stage.world, who, latest, data))

    async def step(self, to: datetime) -> None:
        await self.stage.step(to)

    def chat(self, who: int) -> list[tuple[int, Message]]:
        return [(each.message_id, parts(each.text)) for each in self.stage.messages(who)]


def parts(text: str) -> Message:
    """A message in the pseudo-locale, taken apart again."""
    found, place = [], 0
    while place < len(text):
        bar = text.index("|", place)
        args, end = JSONDecoder().raw_decode(text, bar + 1)
        assert text[place] == "⟦", text
        assert text[end] == "⟧", text
        found.append(Text(text[place + 1 : bar], args))
        place = end + 1
    return tuple(found)
