"""The buttons under messages to an admin, and those that everybody has."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from bot.telegram.buttons.base import Args, Rows, button, in_rows, turns
from scheduler.domain.people import Role
from scheduler.domain.settings import NAMES


def _settings(_: Args) -> Rows:
    return in_rows([button("setting", f"s:{name}", setting=name) for name in NAMES], 2)


def _invite_role(_: Args) -> Rows:
    return [[button(f"role-{role.value}", f"ir:{role.value}") for role in Role]]


def _people(args: Args) -> Rows:
    people: Any = args["people"]
    return [
        *(
            [button("person", f"a:{each['id']}", name=each["name"], role=each["role"])]
            for each in people
        ),
        *turns(args, "an"),
    ]


def _person(args: Args) -> Rows:
    person = args["person"]
    row = [button("invite-again", f"ia:{person}")]
    if args["role"] == Role.CLIENT.value and args["state"] not in {"discharged", "left"}:
        row.append(button("discharge", f"d:{person}"))
    if args["role"] == Role.CLINICIAN.value:
        row.append(button("cover", f"cv:{person}"))
    erase = [[button("erase", f"er:{person}")]] if args["role"] == Role.CLIENT.value else []
    return [row, *erase, [button("all-people", "ap")]]


def _discharge(args: Args) -> Rows:
    back = button("cancel", f"a:{args['person']}")
    return [[back], [button("yes-discharge", f"dd:{args['person']}")]]


def _clinicians(args: Args) -> Rows:
    clinicians: Any = args["clinicians"]
    return [[button("client", f"ic:{c['id']}", name=c["name"], flags=0)] for c in clinicians]


def _languages(args: Args) -> Rows:
    languages: Any = args["languages"]
    return [[button("language", f"ln:{each}", language=each)] for each in languages]


def _roles(args: Args) -> Rows:
    roles: Any = args["roles"]
    return [[button(f"role-{role}", f"as:{role}") for role in roles]]


KEYBOARDS: dict[str, Callable[[Args], Rows]] = {
    "settings": _settings,
    "ask-invite-role": _invite_role,
    "ask-invite-clinician": _clinicians,
    "people": _people,
    "person": _person,
    "ask-discharge": _discharge,
    "ask-role": _roles,
    "ask-language": _languages,
}
