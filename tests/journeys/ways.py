"""How a client answers in a journey that is played by taps, in English words and in Spanish words."""

from __future__ import annotations

from dataclasses import dataclass, replace

from bot.telegram.attachments import attachment
from scheduler.domain.messages import Text
from scheduler.ports import Tx
from tests.journeys.desk import Desk
from tests.journeys.rooms import BO, IDS, data_of

WAYS = ("taps", "en", "es")
BOS = IDS[BO]


@dataclass(frozen=True, slots=True)
class Way:
    """How Bo answers: by the button that begins so, or in his words."""

    desk: Desk
    way: str

    async def does(self, tap: str, en: str, es: str, *said: str) -> None:
        """One answer; `said` are the ids of what answers it: after a tap the message that was tapped."""
        desk = self.desk
        if self.way != "taps":
            await self.types(en, es, *said)
            return
        message, data = self._shown(tap)
        await desk.press_on(BO, message, data)
        after = {tuple(each.id for each in dict(desk.chat(BO))[message]), tuple(desk.ids(BO))}
        assert said in after, (tap, after)

    def _shown(self, tap: str) -> tuple[int, str]:
        """The latest button that begins so, and its message."""
        for message, said in reversed(self.desk.chat(BO)):
            for data in data_of(said):
                if data.startswith(tap):
                    return message, data
        raise LookupError(tap)

    async def types(self, en: str, es: str, *said: str) -> None:
        """What has no button, in whichever language he reads."""
        await self.desk.say(BO, es if self.way == "es" else en)
        assert tuple(self.desk.ids(BO)) == said, (en, es)

    @property
    def speaks(self) -> str:
        return "es" if self.way == "es" else "en"

    def says(self, id_: str) -> Text:
        """The text of this id in the latest message that has one."""
        return next(each for each in reversed(self.desk.texts(BO)) if each.id == id_)

    def sees(self) -> bytes:
        """The picture that the latest message leaves as, drawn."""
        attached = attachment(self.desk.last(BO))
        assert attached is not None
        return attached.content(self.speaks)

    async def language(self) -> None:
        language = self.speaks

        def work(tx: Tx) -> None:
            person = tx.people.get(BOS)
            assert person is not None
            tx.people.save(replace(person, language=language))

        await self.desk.run(work)
