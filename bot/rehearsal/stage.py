"""The stage of a rehearsal and of every journey test: the stand-in server, the real bot, one clock.

Nobody here is real. People speak through the stand-in, the bot polls it like any Bot API server.
"""

from __future__ import annotations

from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from datetime import datetime, timedelta

from bot.ops import ops_app
from bot.rehearsal import people
from bot.rehearsal.keyboards import rows_of
from bot.rehearsal.people import Deed
from bot.rehearsal.server import create_app
from bot.rehearsal.serving import serving
from bot.rehearsal.world import Message, World
from bot.settings import Settings, read
from bot.wiring import Running, running
from scheduler.clock import SteppedClock
from scheduler.domain.people import Role
from scheduler.ports import Tx
from scheduler.usecases import join


class Stage:
    """What a test or a story does: people speak and press, the clock moves."""

    def __init__(self, world: World, house: Running, clock: SteppedClock, address: str) -> None:
        self.world, self.house, self.clock, self.address = world, house, clock, address
        self.ids: dict[str, int] = {}
        """Our person ids by name, for those who joined through `invite`."""

    @property
    def now(self) -> datetime:
        """The instant at which the clock stands (UTC)."""
        return self.clock.now()

    async def step(self, to: datetime) -> None:
        """Carry out everything due up to `to`."""
        await self.house.step(to)

    async def later(self, **span: float) -> None:
        """Move the clock on, for example `minutes=20`."""
        await self.step(self.now + timedelta(**span))

    async def heard(self, deeds: Deed | list[Deed]) -> None:
        """Wait until the bot has handled what was said and has answered."""
        for deed in deeds if isinstance(deeds, list) else [deeds]:
            if deed.update_id is not None:
                await self.house.handled(deed.update_id)

    async def say(self, who: int, text: str, reply_to: int | None = None) -> None:
        """A person writes to the bot."""
        await self.heard(people.say(self.world, who, text, reply_to=reply_to))

    async def edit(self, who: int, text: str, message_id: int | None = None) -> None:
        """A person changes a message of theirs, the last one by default."""
        await self.heard(people.edit(self.world, who, message_id, text))

    async def press(self, who: int, button: str, message_id: int | None = None) -> None:
        """A person taps a button, by its label or its data, under the latest message that has it."""
        message_id = message_id or self.found(who, button)
        await self.heard(people.press(self.world, who, message_id, button))

    def found(self, who: int, button: str) -> int:
        """The latest message of the bot in a chat with this button. LookupError if there is none."""
        for message in reversed(self.messages(who)):
            for row in rows_of(message.markup):
                if any(button in {each.label, each.data} for each in row):
                    return message.message_id
        raise LookupError(f"no button {button!r} in the chat of {who}")

    def button(self, who: int, start: str, end: str = "") -> str:
        """The data of the latest button in a chat that begin and end so. LookupError if none do."""
        for message in reversed(self.messages(who)):
            for row in rows_of(message.markup):
                for each in row:
                    if each.data and each.data.startswith(start) and each.data.endswith(end):
                        return each.data
        raise LookupError(f"no button {start}...{end} in the chat of {who}")

    def messages(self, who: int) -> list[Message]:
        """The bot's messages in a chat as they read now, oldest first."""
        return [
            message
            for message in self.world.messages.values()
            if message.chat.id == who and message.sender is None and not message.deleted
        ]

    def last(self, who: int) -> str:
        """The text of the bot's latest message in a chat."""
        return self.messages(who)[-1].text

    async def invite(
        self, role: Role, name: str, *, language: str = "en", clinician: str | None = None
    ) -> int:
        """Enrol somebody, give them an account, and let them open their invitation; their account."""
        account = self.world.add_person(name, language if language != "qps" else "en")
        now = self.now

        def enrol(tx: Tx) -> tuple[int, str]:
            owner = self.ids[clinician] if clinician else None
            person = join.enrol(tx, None, role, name, language, owner, now)
            return person.id, join.invite(tx, None, person.id, now)

        self.ids[name], code = await self.house.store.run(enrol)
        await self.say(account, f"/start {code}")
        return account


@asynccontextmanager
async def stage(
    database_url: str, start: datetime, *, port: int = 0, ops: str = "", key: str = "none",
    world_start: int = 1, world: World | None = None,
) -> AsyncIterator[Stage]:  # fmt: skip
    """Everything up and running at `start`, until the block ends. Port 0 takes a free one.

    `ops` is where the operations server listens too (`HOST:PORT`, empty: only beside the page).
    `world` is one that has lived on while the bot was away; without it everybody is new.
    """
    clock = SteppedClock(start)
    world = world or World(clock.now, first_update_id=world_start)
    world.now = clock.now
    late = _Late()
    app = create_app(world, clock=late)
    async with serving(app, port=port) as address:
        settings = _settings(database_url, start, address, world.token, ops, key)
        async with running(settings, clock) as house:
            late.app = ops_app(house, stepped=True)
            yield Stage(world, house, clock, address)


def _settings(
    database_url: str, start: datetime, address: str, token: str, ops: str, key: str
) -> Settings:  # fmt: skip
    return read(
        TOKEN=token,
        BOT_API_URL=address,
        DATABASE_URL=database_url,
        OPS_BIND=ops,
        KEY=key,
        CLOCK=f"stepped:{start.isoformat()}",
    )


class _Late:
    """The clock's handle, which exists only once the bot runs."""

    app: object = None

    async def __call__(self, scope: object, receive: object, send: object) -> None:
        """Pass on to the handle."""
        await self.app(scope, receive, send)  # type: ignore[operator]
