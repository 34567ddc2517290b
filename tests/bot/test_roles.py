"""Every button works for the right person on what is theirs, and for nobody else (J5, D3)."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from bot.telegram.buttons import SHAPES
from bot.telegram.handlers import dispatch, own
from scheduler.domain.people import Role
from storage.engine import Database
from tests.bot.house import STRANGER, House, changes, furnish
from tests.bot.verbs import VERBS, Verb, carry_out
from tests.journeys.desk import Desk
from tests.journeys.rooms import ANN, BO, DANA, EVE, GIL, KIM, ROLES, on_both

pytest_plugins = ("tests.journeys.furniture",)

COLLEAGUE = {ANN: GIL, BO: ANN, DANA: EVE}
"""Somebody of the same role for whom the button is not."""
Check = Callable[[House, Verb], list[str]]
HOLDING = frozenset({"p", "m"})
"""Their cases mean a hold by themselves: taken at any time, they stop whoever taps them, and nobody else."""
EVERYBODY = frozenset({"as", "ln"})
"""The switch of roles and the choice of a language; neither gives anybody a role they do not have."""


@pytest.fixture(name="practice")
async def practice_fixture(desk: Desk, furnished_database: Database) -> Database:
    await furnish(desk)
    return furnished_database


def role_of(verb: Verb) -> Role:
    return ROLES.get(verb.by, Role.CLIENT)


def test_every_verb_of_every_role_has_its_case() -> None:
    tables = [module.PRESSES for module in dispatch.HANDLERS.values()]
    verbs = {verb for table in tables for verb in table}
    assert len(verbs) == sum(len(table) for table in tables), "two roles share a verb"
    assert {verb.name for verb in VERBS} == verbs | EVERYBODY
    assert verbs | {"ln"} == set(SHAPES)
    for verb in VERBS:
        assert verb.name in EVERYBODY or dispatch.ROLE_OF[verb.name] is role_of(verb)


@on_both
def test_the_right_person_does_it_on_what_is_hers(practice: Database) -> None:
    def check(house: House, verb: Verb) -> list[str]:
        before = house.rows()
        answer = house.press(verb.by, verb.own.format(**house.ids()))
        after = house.rows()
        changed = {name for name, *_ in changes(before, after)}
        faults = house.wrongs(verb.by, before, after)
        if verb.answers not in {each.id for each in answer}:
            faults.append(f"answered {[each.id for each in answer]}")
        if not changed >= set(verb.changes) or (changed and not verb.changes):
            faults.append(f"changed {sorted(changed)}")
        return faults

    everywhere(practice, check)


@on_both
def test_on_what_is_not_hers_nothing_happens_and_one_refusal_says_so(practice: Database) -> None:
    def check(house: House, verb: Verb) -> list[str]:
        if not verb.foreign:
            return []
        return refused(house, verb.by, verb.foreign.format(**house.ids()), {verb.refused})

    everywhere(practice, check)


@on_both
def test_a_colleague_or_another_client_changes_nothing_of_hers(practice: Database) -> None:
    def check(house: House, verb: Verb) -> list[str]:
        other, data = COLLEAGUE.get(verb.by), verb.own.format(**house.ids())
        if other is None:
            return []
        if verb.foreign:
            return refused(house, other, data, {verb.refused})
        if (verb.lead or verb.by is BO) and verb.name not in HOLDING:
            return refused(house, other, data, {"question-over"})
        before = house.rows()
        house.press(other, data)
        return house.wrongs(other, before, house.rows())

    everywhere(practice, check)


@on_both
def test_no_other_role_does_it(practice: Database) -> None:
    def check(house: House, verb: Verb) -> list[str]:
        if verb.name in EVERYBODY:
            return []
        data = verb.own.format(**house.ids())
        faults = refused(house, STRANGER, data, {"stranger"})
        for who in (KIM, DANA, EVE, ANN, GIL, BO):
            if ROLES.get(who, Role.CLIENT) is not role_of(verb):
                faults += refused(house, who, data, {"not-for-you"})
        return faults

    everywhere(practice, check)


@on_both
def test_before_consent_every_button_of_a_client_shows_the_notice(practice: Database) -> None:
    def check(house: House, verb: Verb) -> list[str]:
        if role_of(verb) is not Role.CLIENT or verb.name in {"ok", "ln", *own.PRESSES}:
            return []
        with house.taken_back():
            before = house.rows()
            answer = house.press(BO, verb.own.format(**house.ids()))
            changed = {name for name, *_ in changes(before, house.rows())}
        shown = [each.id for each in answer]
        return (
            []
            if (shown, changed <= {"question"}) == (["notice"], True)
            else [f"{shown}, {changed}"]
        )

    everywhere(practice, check, led=False)


@pytest.mark.parametrize("role", [*Role, "owner", "", "0"])
async def test_the_switch_gives_nobody_a_role_they_do_not_have(
    practice: Database, role: str
) -> None:
    def work(house: House) -> list[str]:
        faults = []
        for who in (KIM, DANA, ANN, BO, STRANGER):
            if ROLES.get(who, Role.CLIENT) != role or who == STRANGER:
                faults += refused(house, who, f"as:{role}", {"ask-role", "stranger"})
        return faults

    assert not practice.run_sync(lambda connection: work(House(connection)))


def refused(house: House, who: int, data: str, ids: set[str]) -> list[str]:
    """Press and take back; what was wrong with the refusal: one text, one message, no fact changed."""
    with house.taken_back():
        before, posted = house.rows(), house.posted()
        answer = house.press(who, data)
        faults = [f"{who} {data}: {change}" for change in changes(before, house.rows())]
        if house.posted() != posted:
            faults.append(f"{who} {data}: more messages than the answer")
        if len(answer) != 1 or answer[0].id not in ids:
            faults.append(f"{who} {data}: answered {[each.id for each in answer]}")
    return faults


def everywhere(practice: Database, check: Check, *, led: bool = True) -> None:
    """No faults of a check over every verb, each on a practice where only its lead has happened."""

    def work(house: House) -> list[str]:
        faults = []
        for verb in VERBS:
            with house.taken_back():
                if led:
                    carry_out(house, verb.lead)
                faults += [f"{verb.name}: {fault}" for fault in check(house, verb)]
        return faults

    faults = practice.run_sync(lambda connection: work(House(connection)))
    assert not faults, "\n".join(faults)
