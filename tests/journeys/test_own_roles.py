"""One account, two roles: what was said in one is not a part of the record of the other (D1, I9)."""

import json
from typing import Any

from sqlalchemy import select

from scheduler.domain.people import Role, State
from scheduler.usecases import archive, join
from storage.tables import InboxRow, table
from tests.journeys.rooms import ANN, GIL, IDS, KIM, Whole, on_both

pytest_plugins = ("tests.journeys.furniture",)


async def second_role(whole: Whole, role: Role) -> None:
    """Ann is a clinician or an admin too, on the same account."""

    def work(tx: Any) -> str:
        person = join.enrol(tx, None, role, "Ann", "qps", None, whole.now)
        return join.invite(tx, None, person.id, whole.now)

    code = await whole.run(work)
    await whole.say(ANN, f"/start {code}")


async def wrote(whole: Whole, who: int) -> str:
    def work(tx: Any) -> Any:
        return archive.record(tx, tx.people.get(IDS[who]), None, None, whole.now, own=True)

    return json.dumps((await whole.run(work))["wrote"])


@on_both
async def test_her_own_copy_holds_what_she_wrote_as_a_client_alone(whole: Whole) -> None:
    await whole.say(ANN, "did 4 before breakfast")
    await second_role(whole, Role.CLINICIAN)
    await whole.say(ANN, "/role clinician")
    await whole.say(ANN, "a word about Gil's knee")
    await whole.say(ANN, "/role client")
    await whole.say(ANN, "did 6 after lunch")
    copy = await wrote(whole, ANN)
    assert "did 4 before breakfast" in copy
    assert "did 6 after lunch" in copy
    assert "Gil's knee" not in copy
    assert "breakfast" not in await wrote(whole, GIL)


@on_both
async def test_an_admin_erases_her_own_record_as_a_client_and_stays_an_admin(whole: Whole) -> None:
    await whole.say(ANN, "did 4 before breakfast")
    await second_role(whole, Role.ADMIN)
    await whole.say(ANN, "/role admin")
    await whole.say(ANN, "/settings")
    await whole.forge(ANN, f"er:{IDS[ANN]}")
    await whole.press(ANN, f"ery:{IDS[ANN]}")
    assert whole.ids(ANN) == ["erased"]
    assert await whole.run(lambda tx: tx.people.get(IDS[ANN])) is None
    (admin,) = await whole.run(lambda tx: tx.people.of_account(ANN))
    assert (admin.role, admin.state) == (Role.ADMIN, State.READY)
    kept = await whole.store._database.run(lambda c: c.execute(select(table(InboxRow))).all())
    said = json.dumps([row.payload for row in kept])
    assert "breakfast" not in said
    assert "/settings" in said
    assert {row.state.value for row in kept} == {"done"}
    await whole.say(ANN, "/people")
    assert whole.ids(ANN) == ["people"]
    await whole.say(KIM, "/people")
    assert whole.ids(KIM) == ["people"]
