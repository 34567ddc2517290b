"""A client's first two weeks as a text to read aloud: the real bot, an invented client, a stepped clock.

    python -m bot.rehearsal.diary en > tests/docs/two_weeks_en.txt

A test keeps the files current. Whoever changes a text reads there how it sounds among the others.
"""

from __future__ import annotations

import asyncio
import re
import sys
import tempfile
from collections.abc import Iterator, Mapping
from datetime import UTC, datetime, timedelta
from itertools import groupby

from bot.rehearsal import people, story
from bot.rehearsal.stage import Stage, stage
from bot.rehearsal.transcript import chat_of, transcript
from scheduler.domain.people import Role

START = datetime(2027, 3, 5, 9, 0, tzinfo=UTC)
"""A Friday; the plan begins on the Monday after it."""
NAME = "Ann"
LISBON = (38.72, -9.14)
"""Degrees; general geography, from memory."""
WORDS: Mapping[str, Mapping[str, str]] = {
    "en": {
        "did": "did 10",
        "later": "at 10",
        "number": "12",
        "undo": "undo",
        "right": "10",
        "how": "How do I do it?",
        "knee": "did 10, my knee is a bit sore",
        "away": "I am away tomorrow for 2 days",
        "what": "is the moon out",
        "help": "help",
        "today": "/today",
        "week": "/week",
        "practice": "Alder Lane (invented)",
        "answer_hours": "Mon to Fri, 9 to 5",
    },
    "es": {
        "did": "hice 10",
        "later": "a las 10",
        "number": "12",
        "undo": "borrar",
        "right": "10",
        "how": "¿Cómo se hace?",
        "knee": "hice 10, me duele un poco la rodilla",
        "away": "mañana me voy de viaje 2 días",
        "what": "qué bonita la luna",
        "help": "ayuda",
        "today": "/hoy",
        "week": "/semana",
        "practice": "Alder Lane (inventada)",
        "answer_hours": "de lunes a viernes, de 9 a 17",
    },
}
"""What she types, and how the practice speaks of itself."""
HEAD = """\
TWO WEEKS of an invented client, {language}. Nobody in it is real, nor is the practice. The dose is
an example, not advice: it is for a licensed clinician to decide. The bot is the real one.
[Label] is a button, a slash begins a new row. (changed): the bot wrote over its own message."""


async def play(on: Stage, language: str) -> int:
    """The two weeks, in the order of time; the client's account."""
    words = WORDS[language]
    own = {"name": words["practice"], "answer_hours": words["answer_hours"]}
    dana = (await story.open_practice(on, **own))["Dana"]
    ann = await on.invite(Role.CLIENT, NAME, clinician="Dana", language=language)
    await _join(on, ann)
    await on.step(_at(5, 15))
    await _prescribe(on, dana)
    await _first_monday(on, ann, words)
    await _rest_of_the_first_week(on, ann, words)
    await _second_week(on, ann, words)
    return ann


async def _join(on: Stage, ann: int) -> None:
    for button in ("ok:1", "r:bones:none", "r:heart:yes", "r:heart:numb-feet", "r:heart:done"):
        await on.press(ann, button)
    for button in ("r:else:none", "u:1", "t:zone"):
        await on.press(ann, button)
    await on.heard(people.share_location(on.world, ann, *LISBON))
    await on.press(ann, on.button(ann, "zs:"))
    await on.press(ann, "t:keep")


async def _prescribe(on: Stage, dana: int) -> None:
    client = on.ids[NAME]
    for button in (f"cr:{client}", f"cc:{client}:moderate", f"cp:{client}"):
        await on.press(dana, button)
    for field, value in (
        *(("movement", "gentle heel drop"), ("daily_total", "40"), ("bout_reps", "10")),
        *(("weekdays", "flexible"), ("companions", "back raise 3 days"), ("start", "8 March")),
    ):
        await on.press(dana, f"df:{field}")
        await on.say(dana, value)
    await on.press(dana, "dp")
    await on.press(dana, "ds:1")


async def _first_monday(on: Stage, ann: int, words: Mapping[str, str]) -> None:
    """All four bouts, each answered in another way."""
    await on.step(_at(8, 8, 5))
    await on.press(ann, "wk:keep")
    await _all(on, ann)
    await on.step(_at(8, 12, 20))
    await on.say(ann, words["did"])
    await on.step(_at(8, 16, 30))
    await on.press(ann, on.button(ann, "lat:"))
    await on.step(_at(8, 17, 5))
    await _all(on, ann)
    await on.step(_at(8, 20, 10))
    await on.press(ann, on.button(ann, "few:"))
    await on.press(ann, "n:6")
    await on.say(ann, words["today"])


async def _rest_of_the_first_week(on: Stage, ann: int, words: Mapping[str, str]) -> None:
    """A day half done and made up, a number taken back, a question how it is done."""
    await on.step(_at(9, 11))
    await on.say(ann, words["how"])
    await on.step(_at(10, 14, 20))
    await on.press(ann, on.button(ann, "cd:", ":1"))
    await on.step(_at(11, 8, 10))
    await on.say(ann, words["later"])
    await on.step(_at(11, 10, 5))
    await on.press(ann, on.button(ann, "few:"))
    await on.press(ann, "n:8")
    await on.step(_at(11, 14, 10))
    await on.press(ann, on.button(ann, "skp:"))
    await on.step(_at(12, 8, 20))
    await on.press(ann, "mu:1")
    for word in ("number", "undo", "right"):
        await on.say(ann, words[word])
    await _answered_until(on, ann, _at(12, 21))
    await on.step(_at(14, 18, 10))
    await on.press(ann, "wq:none")
    await on.say(ann, words["week"])


async def _second_week(on: Stage, ann: int, words: Mapping[str, str]) -> None:
    """A sore knee, the question next morning, a break of two days, and what is not understood."""
    await on.step(_at(15, 8, 15))
    await on.press(ann, "wk:keep")
    await on.say(ann, words["knee"])
    for button in (
        "p:sign:none",
        "p:place:knee",
        "p:score:3",
        "p:when:after",
        "p:new:0",
        "p:sharper:0",
    ):
        try:
            await on.press(ann, button)
        except LookupError:  # said in words before
            continue
    await _answered_until(on, ann, _at(15, 21))
    await on.step(_at(16, 8, 30))
    await on.press(ann, "m:1")
    await on.say(ann, words["away"])
    await on.step(_at(19, 9))
    await on.heard(people.send_file(on.world, ann, "voice", "invented.ogg"))
    await on.say(ann, words["what"])
    await on.press(ann, "pass:0")
    await on.say(ann, words["help"])
    await on.step(_at(21, 18, 5))
    await on.press(ann, "wq:none")
    await on.say(ann, words["week"])


async def _all(on: Stage, ann: int) -> None:
    await on.press(ann, on.button(ann, "all:"))


async def _answered_until(on: Stage, ann: int, end: datetime) -> None:
    """Time passes; she taps "did all" within a quarter of an hour of every prompt."""
    while on.now < end:
        await on.step(min(on.now + timedelta(minutes=15), end))
        if button := story.open_prompt(on, ann):
            await on.press(ann, button)


def _at(day: int, hour: int, minute: int = 0) -> datetime:
    """An instant in March by her wall clock."""
    return datetime(2027, 3, day, hour, minute, tzinfo=story.ZONE)


def written(on: Stage, ann: int, language: str) -> Iterator[str]:
    """The diary, line by line."""
    yield from HEAD.format(language=language).splitlines()
    chat = chat_of(on.world.log, ann)
    for day, said in groupby(chat, key=lambda each: each.at.astimezone(story.ZONE).date()):
        yield from ("", f"--- {day:%A} {day.day} {day:%B} ---")
        for line in transcript(said, NAME, story.ZONE):
            yield re.sub(r"(/start) \S+”", r"\1 (code)”", line)


async def diary(url: str, language: str) -> str:
    """The text for a language, played on an empty database."""
    async with stage(url, START) as on:
        ann = await play(on, language)
        return "\n".join([*written(on, ann, language), ""])


def main() -> None:
    """Print the diary for the language that is named."""
    if sys.argv[1:] not in [[name] for name in WORDS]:
        sys.exit(f"usage: python -m bot.rehearsal.diary {'|'.join(WORDS)}")
    with tempfile.TemporaryDirectory() as scratch:
        text = asyncio.run(diary(f"sqlite:///{scratch}/diary.db", sys.argv[1]))
    sys.stdout.buffer.write(text.encode())


if __name__ == "__main__":
    main()
