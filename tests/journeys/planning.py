"""How a clinician fills in a plan in a journey, and what is kept of it."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import timedelta
from typing import Any

from sqlalchemy import select

from scheduler.domain.messages import Text
from scheduler.domain.plan import Plan
from scheduler.ports import PlanVersion
from storage.tables import AuditRow, table
from tests.journeys.rooms import ANN, EVE, GIL, IDS, MONDAY, Room

ANNS, GILS = IDS[ANN], IDS[GIL]
TUESDAY, THURSDAY = MONDAY + timedelta(days=1), MONDAY + timedelta(days=3)
Answers = Sequence[tuple[str, str]]


async def fill(room: Room, who: int, answers: Answers) -> None:
    """Each field tapped on the card and answered in words."""
    for field, words in answers:
        await room.press(who, f"df:{field}")
        assert room.ids(who) == [f"ask-plan-{field.replace('_', '-')}"]
        await room.say(who, words)
        assert room.ids(who) == ["plan-card"], f"{field}: {words}"


async def draft_for_gil(room: Room, level: str = "moderate") -> None:
    """Gil is cleared; his draft is open on a movement with a published force."""
    for button in (f"cr:{GILS}", f"cc:{GILS}:{level}", f"cp:{GILS}"):
        await room.forge(EVE, button)
    await fill(room, EVE, [("movement", "marching")])


async def latest(room: Room, client: int = GILS) -> PlanVersion | None:
    return await room.run(lambda tx: tx.plans.latest(client))


async def plan_of(room: Room, client: int) -> Plan:
    version = await latest(room, client)
    assert version is not None
    return version.plan


async def audited(room: Room, action: str) -> list[Any]:
    """The lines of the audit trail about one kind of change."""
    rows = table(AuditRow)
    query = select(rows).where(rows.c.action == action).order_by(rows.c.id)
    return await room.store._database.run(lambda connection: list(connection.execute(query)))


def fault(room: Room, who: int) -> Text:
    """The one refusal above the card."""
    first, card = room.last(who)
    assert (first.id.partition("-")[0], card.id) == ("fault", "plan-card")
    return first
