"""What an admin taps about updates that were set aside (R1)."""

from __future__ import annotations

from bot.telegram.handlers.act import Act, Press
from scheduler.domain.reply import Reply
from scheduler.usecases import setaside


def screen(act: Act) -> Reply:
    return setaside.screen(act.tx)


def card(act: Act) -> Reply:
    return setaside.card(act.tx, act.number(0))


def again(act: Act) -> Reply:
    return setaside.again(act.tx, act.who.id, act.number(0), act.now)


def all_again(act: Act) -> Reply:
    return setaside.all_again(act.tx, act.who.id, act.now)


def ask_drop(act: Act) -> Reply:
    return setaside.ask_drop(act.tx, act.number(0))


def drop(act: Act) -> Reply:
    return setaside.drop(act.tx, act.who.id, act.number(0), act.now)


PRESSES: dict[str, Press] = {
    "xl": screen,
    "x": card,
    "xr": again,
    "xa": all_again,
    "xd": ask_drop,
    "xx": drop,
}
