"""The opening story: one week of three invented clients. Nobody in it is real, nor is the practice.

Ann keeps her week, Bo does less and agrees on another day, Cy says that something hurts. Everything is
said and tapped through the stand-in server; nothing is written behind the bot's back.
"""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

from bot.rehearsal.stage import Stage
from scheduler.domain.people import Role

START = datetime(2027, 3, 8, 5, 0, tzinfo=UTC)
"""A Monday, before the working day of the invented practice begins."""
ZONE = ZoneInfo("Europe/Lisbon")
PRACTICE = {
    "name": "Alder Lane (invented)",
    "phone": "555 0100",
    "emergency_number": "112",
    "answer_hours": "Mon to Fri, 9 to 5",
    "zone": ZONE.key,
    "window": "08:00-20:00",
    "files_in_chat": "yes",
}
PLANS = {"Ann": ("gentle-heel-drop", 40, 10), "Bo": ("stomp", 30, 10), "Cy": ("stomp", 40, 10)}
"""Movement, daily total and reps per bout. Doses are examples of common practice, no source."""
CLIENTS = tuple(PLANS)
PARTS = {
    "Ann": "keeps her week. Four bouts a day, one tap each",
    "Bo": "answers late and does less, agrees on another day, and is silent on Thursday",
    "Cy": "says that something hurts. All stops at once, and only Dana starts it again, with less",
    "Dana": "the clinician. What reached her that week, what she did about it, and her digest",
}
"""Whose week is printed, and what it shows."""


async def set_up(stage: Stage) -> dict[str, int]:
    """Open the practice: admin, clinician, three clients with clearance and plan; accounts by name."""
    who = await open_practice(stage)
    for name in CLIENTS:
        who[name] = await enrol(stage, name, who["Dana"])
    return who


async def open_practice(stage: Stage, **own: str) -> dict[str, int]:
    """Kim, the admin, sets the practice up; Dana, the clinician, joins. Their accounts by name.

    `own`: settings that are not those of `PRACTICE`.
    """
    kim = await stage.invite(Role.ADMIN, "Kim")
    stage.world.people[kim].label = "admin"
    for name, value in {**PRACTICE, **own}.items():
        await stage.say(kim, "/settings")
        await stage.press(kim, f"s:{name}")
        await stage.say(kim, value)
    dana = await stage.invite(Role.CLINICIAN, "Dana")
    stage.world.people[dana].label = "clinician"
    return {"Kim": kim, "Dana": dana}


async def enrol(stage: Stage, name: str, clinician: int) -> int:
    """One of the clients joins, and is cleared and prescribed for; the account."""
    account = await stage.invite(Role.CLIENT, name, clinician="Dana")
    stage.world.people[account].label = "client"
    await join(stage, account)
    await prescribe(stage, clinician, stage.ids[name], *PLANS[name])
    return account


async def join(stage: Stage, client: int) -> None:
    """Six taps from the link to ready: agree, three screens, usual pain, times."""
    for button in ("ok:1", "r:bones:none", "r:heart:none", "r:else:none", "u:1", "t:keep"):
        await stage.press(client, button)


async def prescribe(
    stage: Stage, clinician: int, client: int, movement: str, total: int, bout: int
) -> None:
    """Clear a client and save a plan for Monday and Thursday, by buttons and short answers."""
    await stage.press(clinician, f"cr:{client}")
    await stage.press(clinician, f"cc:{client}:moderate")
    await stage.press(clinician, f"cp:{client}")
    for field, value in (("movement", movement), ("daily_total", total), ("bout_reps", bout)):
        await stage.press(clinician, f"df:{field}")
        await stage.say(clinician, str(value))
    await stage.press(clinician, "dp")
    await stage.press(clinician, "ds:1" if movement == "gentle-heel-drop" else "ds:0")


def at(hour: int, minute: int = 0, *, day: int = 8) -> datetime:
    """An instant of a day in March by the clients' wall clock; the story begins on Monday the 8th."""
    return datetime(2027, 3, day, hour, minute, tzinfo=ZONE)


async def play(stage: Stage, who: dict[str, int]) -> None:
    """The week, in the order of time, up to the Monday after it."""
    await _monday(stage, who)
    await stage.step(at(8, 30, day=9))
    await stage.press(who["Bo"], "mu:1")
    await _answered_until(stage, at(20, 30, day=11), who["Ann"], who["Cy"])
    await _answered_until(stage, at(20, 30, day=13), who["Bo"])
    await stage.step(at(18, 5, day=14))
    await stage.press(who["Ann"], "wq:none")
    await stage.press(who["Cy"], "wq:none")
    await stage.say(who["Ann"], "/week")
    await stage.step(at(9, 5, day=15))


async def _monday(stage: Stage, who: dict[str, int]) -> None:
    ann, bo, cy, dana = who["Ann"], who["Bo"], who["Cy"], who["Dana"]
    await stage.step(at(8, 6))
    await stage.press(ann, _did_all(stage, ann))
    await stage.step(at(8, 20))
    await stage.press(cy, "hurt")
    await stage.step(at(8, 22))
    await stage.press(cy, "p:sign:none")
    await stage.say(cy, "my hip")
    await stage.press(cy, "p:score:7")
    await stage.step(at(9, 45))
    await stage.say(bo, "did 6, then the phone rang")
    await stage.step(at(10, 30))
    await stage.press(dana, stage.button(dana, "fx:"))
    await stage.press(dana, stage.button(dana, "fo:", ":called"))
    await _answered_until(stage, at(20, 30), ann)
    await stage.say(bo, "5")
    await stage.press(dana, f"c:{stage.ids['Cy']}")
    await stage.press(dana, f"rel:{stage.ids['Cy']}")
    await stage.press(dana, stage.button(dana, f"rd:{stage.ids['Cy']}:20"))
    await stage.press(dana, stage.button(dana, f"rf:{stage.ids['Cy']}:20:tomorrow"))


async def _answered_until(stage: Stage, end: datetime, *people: int) -> None:
    """Time passes; these people tap "did all" within some minutes of every prompt."""
    while stage.now < end:
        await stage.step(min(stage.now + timedelta(minutes=15), end))
        for person in people:
            if button := open_prompt(stage, person):
                await stage.press(person, button)


def _did_all(stage: Stage, who: int) -> str:
    return stage.button(who, "all:")


def open_prompt(stage: Stage, who: int) -> str | None:
    """The "did all" of the chat's last message if it is a prompt."""
    try:
        button = _did_all(stage, who)
    except LookupError:
        return None
    return button if stage.found(who, button) == stage.messages(who)[-1].message_id else None
