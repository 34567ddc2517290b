"""The clients of an invented practice through their days, while the bot that serves them is killed."""

from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from datetime import UTC, datetime, timedelta
from pathlib import Path
from random import Random

from sqlalchemy import URL

from bot.rehearsal import people
from bot.rehearsal.keyboards import rows_of
from bot.rehearsal.server import create_app
from bot.rehearsal.serving import serving
from bot.rehearsal.world import World
from storage.keys import new_key
from tests.process.life import Life, free_port, nursery
from tests.process.practice import ZONE, Practice, open_practice
from tests.process.road import Place, Road, Waiting, new_world

START = datetime(2027, 3, 8, 7, 55, tzinfo=ZONE).astimezone(UTC)
EVENING, MORNING = 21, timedelta(hours=7, minutes=55)


class Clock:
    """The instant of the people and of the platform; the bot's own follows it."""

    def __init__(self) -> None:
        self.now = START

    def __call__(self) -> datetime:
        return self.now


class Crowd:
    """Speaks, presses and moves the time on; remembers what everybody has said."""

    def __init__(
        self, world: World, queue: Waiting, clock: Clock, life: Life, road: Road,
        practice: Practice, random: Random,
    ) -> None:  # fmt: skip
        self.world, self.life, self.road, self.practice = world, life, road, practice
        self._queue, self._clock, self._random = queue, clock, random
        self._unhurt = list(practice.hurt)
        self.written: dict[int, tuple[int, int]] = {}
        """Account and reps of what was written, by update."""
        self.pressed: dict[tuple[int, int], list[int]] = {}
        """Updates of the presses of each prompt: account and bout."""

    async def begin(self, place: Place | None = None) -> None:
        """Start the bot. One that died while its clock was moved may already stand at the later instant."""
        await self.life.begin(place)
        if not self.life.over and (told := await self.life.ask("GET", "/clock")):
            self._clock.now = max(self._clock.now, datetime.fromisoformat(told["now"]))

    async def round(self) -> None:
        """Some say something at once, and while the bot is at it the clock moves on."""
        self.speak()
        await self.life.until(self._queue.empty.wait())  # a press dies where nobody fetches it
        if not self.life.over and await self.life.step(to := self._later()):
            self._clock.now = to

    def speak(self) -> None:
        """Numbers, presses (some twice), an update delivered twice, all in the same moment."""
        for writer in self.practice.writers:
            for _ in range(self._random.choice((0, 1, 1, 2))):
                self.write(writer, self._random.randint(1, 3))
        for presser in self.practice.pressers:
            self._press_what_is_open(presser)
        if self.written and self._random.random() < 0.2:
            people.repeat(self.world, max(self.written))

    def write(self, writer: int, reps: int) -> int:
        """A client writes a number; the update's id."""
        update = people.say(self.world, writer, str(reps))[0].update_id
        assert update is not None
        self.written[update] = (writer, reps)
        return update

    def _press_what_is_open(self, presser: int) -> None:
        for message in self.world.chats[presser].messages:
            for row in rows_of(message.markup) if message.sender is None else ():
                data = row[0].data or ""
                bout = int(data.removeprefix("all:")) if data.startswith("all:") else 0
                if bout and (presser, bout) not in self.pressed:
                    self.pressed[presser, bout] = [
                        deed.update_id
                        for _ in range(self._random.choice((1, 1, 2)))
                        if (deed := people.forge(self.world, presser, message.message_id, data))
                        and deed.update_id is not None
                    ]

    def somebody_is_hurt(self) -> None:
        """One client more says that something hurts, badly."""
        if self._unhurt:
            people.say(self.world, self._unhurt.pop(), "my hip hurts, 8 of 10")

    async def settle(self) -> None:
        """Time enough for leases to end, for repeats, and for every open question."""
        for minutes in (2, 2, 2, 30, 60):
            await self.life.until(self._queue.empty.wait())
            to = self._clock.now + timedelta(minutes=minutes)
            assert await self.life.step(to)
            self._clock.now = to

    def _later(self) -> datetime:
        to = self._clock.now + timedelta(minutes=self._random.choice((1, 5, 15, 30)))
        wall = to.astimezone(ZONE)
        if wall.hour < EVENING:
            return to
        midnight = datetime(wall.year, wall.month, wall.day, tzinfo=ZONE) + timedelta(days=1)
        return (midnight + MORNING).astimezone(UTC)


@asynccontextmanager
async def crowd(
    url: URL, folder: Path, random: Random, *, clock: str = "", **sizes: int
) -> AsyncIterator[tuple[Crowd, str]]:
    """A practice, a stand-in server and a bot not yet started, with the key of its store.

    `clock` is the bot's, stepped unless told otherwise; `sizes` as in `open_practice`.
    """
    time = Clock()
    world, queue = new_world(time)
    road, key, ops = Road(create_app(world)), new_key(), free_port()
    practice = open_practice(url, key, world, START - timedelta(hours=12), **sizes)
    async with nursery() as midwife, serving(road) as address:
        settings = settings_of(url, key, world.token, address, ops)
        settings["BOUTWISE_CLOCK"] = clock or f"stepped:{START.isoformat()}"
        life = Life(midwife, road, settings, ops, folder / "bot.log")
        try:
            yield Crowd(world, queue, time, life, road, practice, random), key
        finally:
            life.kill()


def settings_of(url: URL, key: str, token: str, address: str, ops: int) -> dict[str, str]:
    """The environment of a bot."""
    return {
        "BOUTWISE_DATABASE_URL": url.render_as_string(hide_password=False),
        "BOUTWISE_KEY": key,
        "BOUTWISE_TOKEN": token,
        "BOUTWISE_BOT_API_URL": address,
        "BOUTWISE_OPS_BIND": f"127.0.0.1:{ops}",
    }
