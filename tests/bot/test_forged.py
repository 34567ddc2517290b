"""Button data are whatever a changed app sends: none raises or does what its sender may not do (J5)."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from random import Random
from typing import Any

import pytest

from bot import dialogue
from bot.telegram.buttons import KEYBOARDS, SHAPES, rows
from bot.telegram.handlers import dispatch
from bot.words import label, render
from scheduler.domain.flags import OUTCOMES
from scheduler.domain.messages import Message
from scheduler.domain.people import Role
from scheduler.domain.plan import MOVEMENTS, Level
from scheduler.domain.readiness import KEYS, SCREENS
from scheduler.domain.settings import NAMES
from scheduler.usecases.drafts import FIELDS
from storage.engine import Database
from tests.bot.house import STRANGER, House, furnish
from tests.bot.verbs import AGREED, HELD, NAMED, RELEASE, SIGNS, VERBS, Step, carry_out
from tests.bot.verbs import SCREENS as SCREENED
from tests.journeys.desk import Desk
from tests.journeys.rooms import ANN, BO, DANA, EVE, GIL, KIM, ROLES

pytest_plugins = ("tests.journeys.furniture",)

FITTING = 0.7
"""The share of forgeries whose sender has the role that the verb is for."""
SEED = 20270308
HOW_MANY = int(os.environ.get("BOUTWISE_FORGED", "6000"))  # noqa: TID251 # a switch of the test run
SENDERS = (STRANGER, KIM, DANA, EVE, ANN, GIL, BO)
QUESTIONS = ("ask-plan-", "ask-pain-", "ask-fall-", "ask-screen-")
HUGE = (
    "9" * 17,
    "9" * 18,
    "9" * 19,
    "9" * 30,
    str(2**31),
    str(2**63),
    "-1",
    "0",
    "00004",
    "1e9",
    "4.0",
)
ODD = (
    "",
    " ",
    "\0",
    "٤",
    "²",
    "Ⅳ",
    "é",
    "𝟜",
    "\u202e4",
    "None",
    "True",
    "%s",
    "{ann}",
    "'",
    "a" * 50,
)
WORDS: tuple[str, ...] = (
    *FIELDS, *NAMES, *MOVEMENTS, *sorted(KEYS), *SCREENS, *OUTCOMES, *dialogue.PAIN_VALUES,
    *dialogue.FALL_VALUES, *(level.name.lower() for level in Level), *Role,
    "none", "done", "yes", "keep", "flexible", "today", "0-3",
    "0-x", "9", "-", "0-0", "7-8", "tomorrow", "1", "12", "50",
)  # fmt: skip


def fields(who: int, client: str, field: str) -> tuple[Step, ...]:
    return ((who, f"cp:{{{client}}}"), (who, f"df:{field}"))


SCENES: tuple[tuple[Step, ...], ...] = (
    (),
    ((ANN, "hurt"), (GIL, "few:{gil_bout}"), *fields(DANA, "ann", "weekdays"), *NAMED),
    ((GIL, '"31'), *RELEASE, *fields(EVE, "gil", "movement"), (KIM, "s:phone"), *AGREED),
    (*AGREED, (BO, "r:bones:yes"), (ANN, '"a blue kettle'),
     *fields(DANA, "ann", "daily_total"), (DANA, "dp")),
    (*SIGNS, *SCREENED, *HELD, *fields(EVE, "gil", "quiet"), (KIM, "ir:admin")),
    (House.asked_in_the_morning, (GIL, "fell"),
     *fields(DANA, "ann", "note"), *fields(EVE, "gil", "gap_minutes")),
)  # fmt: skip
"""Starting points in which between them every kind of question is open."""


@pytest.fixture(name="practice")
async def practice_fixture(desk: Desk, furnished_database: Database) -> Database:
    await furnish(desk)
    return furnished_database


def forgeries(rng: Random, known: list[str]) -> Iterator[str]:
    """Endless button data that no button of ours carries, and some that one could."""

    def argument() -> str:
        small: str = str(rng.randint(0, 20))
        return rng.choice((small, rng.choice(WORDS), rng.choice(HUGE), rng.choice(ODD)))

    def mutated() -> str:
        text: list[str] = list(rng.choice(known))
        for _ in range(rng.randint(1, 3)):
            place = rng.randrange(len(text) + 1)
            text[place : place + rng.randint(0, 1)] = rng.choice(
                ("", ":", rng.choice("0123456789abz-\0é"))
            )
        return "".join(text)

    def other_arguments() -> str:
        verb, *args = rng.choice(known).split(":")
        return ":".join([verb, *(rng.choice((each, argument())) for each in args)])

    def shaped() -> str:
        verb = rng.choice(list(SHAPES))
        number = [str(rng.randint(0, 20)), *HUGE]
        return ":".join(
            [verb, *(rng.choice(WORDS if kind == "s" else number) for kind in SHAPES[verb])]
        )

    def other_arity() -> str:
        return ":".join(
            [rng.choice([*SHAPES, "as"]), *(argument() for _ in range(rng.randint(0, 5)))]
        )

    def noise() -> str:
        return rng.randbytes(rng.randint(0, 64)).decode(
            rng.choice(("latin-1", "utf-16")), "replace"
        )

    kinds: tuple[Callable[[], str], ...] = (mutated, other_arguments, shaped, other_arity, noise)
    while True:
        yield rng.choice(kinds)()


@pytest.mark.parametrize("scene", range(len(SCENES)))
def test_forged_buttons_do_nothing_that_their_sender_may_not(
    practice: Database, scene: int
) -> None:
    def work(connection: Any) -> list[str]:
        house = House(connection)
        carry_out(house, SCENES[scene])
        return forged(house, Random(SEED + scene), HOW_MANY // len(SCENES) + 1)

    faults = practice.run_sync(work)
    assert not faults, "\n".join(faults[:20])


def forged(house: House, rng: Random, count: int) -> list[str]:
    """So many forged presses on one scene, each taken back if it changed a thing; what went wrong."""
    before, names, faults = house.rows(), house.ids(), []
    known = [data.format(**names) for verb in VERBS for data in (verb.own, verb.foreign) if data]
    made = forgeries(rng, known + shown())
    savepoint = house.connection.begin_nested()
    for _ in range(count):
        data, written = next(made), house.written()
        who = rng.choice(likely(data) if rng.random() < FITTING else SENDERS)
        try:
            readable(house.press(who, data))
        except Exception as error:  # noqa: BLE001 # whatever it is, it is named below
            faults.append(f"{who} {data!r}: {error!r}")
        else:
            if house.written() == written:
                continue
            faults += [
                f"{who} {data!r}: {each}" for each in house.wrongs(who, before, house.rows())
            ]
        savepoint.rollback()
        house.afresh()
        savepoint = house.connection.begin_nested()
    return faults


def likely(data: str) -> tuple[int, ...]:
    """Those for whom such a button is."""
    role = dispatch.ROLE_OF.get(data.partition(":")[0])
    return tuple(who for who in SENDERS[1:] if ROLES.get(who, Role.CLIENT) is role) or SENDERS


def shown() -> list[str]:
    """The data of the buttons under every question that has the same ones each time."""
    texts = [id_ for id_ in KEYBOARDS if id_.startswith(QUESTIONS) and id_ != "ask-plan-movement"]
    return [button.data for id_ in texts for row in KEYBOARDS[id_]({}) for button in row]


def readable(answer: Message) -> None:
    """The answer and its buttons can be said in English."""
    assert render(answer, "en")
    assert all(label(button.label, "en") for row in rows(answer) for button in row)
