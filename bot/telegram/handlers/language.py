"""The language in which somebody is written to: theirs to choose at any time, in every role."""

from __future__ import annotations

from bot.dialogue import CHOICES
from bot.telegram.handlers import client_text
from bot.telegram.handlers.act import Act, Press
from scheduler.domain.people import Role
from scheduler.domain.reply import Reply, reply
from scheduler.usecases import language

COMMANDS: tuple[str, ...] = ("language",)
"""For everybody, beside the commands of a role."""


def command(act: Act, wanted: str) -> Reply:
    """`/language` asks; `/language es` or `/language Español` chooses."""
    names = {code: code for code in CHOICES} | {name.casefold(): c for c, name in CHOICES.items()}
    code = names.get(wanted.casefold())
    return _choose(act, code) if code else _ask(act)


def press(act: Act) -> Reply:
    """A language of the menu has been tapped; one that is not in it is asked again."""
    return _choose(act, act.args[0]) if act.args[0] in CHOICES else _ask(act)


def _ask(act: Act) -> Reply:
    return reply("ask-language", language=act.who.language, languages=list(CHOICES))


def _choose(act: Act, code: str) -> Reply:
    """What is still open with a client, the notice too, is said again in words that can be read now."""
    chosen = language.choose(act.tx, act.who, code, act.now)
    resumed = client_text.resume(act.tx, act.who, act.now) if act.who.role is Role.CLIENT else None
    return Reply((*chosen.message, *resumed.message)) if resumed else chosen


PRESSES: dict[str, Press] = {"ln": press}
