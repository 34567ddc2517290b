"""A clinician's digest: its pages, the week as it stands, and when it comes (K3)."""

from __future__ import annotations

from bot.telegram.handlers.act import Act, Press
from scheduler.domain.reply import Reply
from scheduler.usecases import digests


def page(act: Act) -> Reply:
    return digests.page(act.tx, act.who.id, act.number(0), act.number(1))


def time(act: Act) -> Reply:
    return digests.ask_time(act.tx, act.who.id)


def weekday(act: Act) -> Reply:
    hour = act.tx.staff.get(act.who.id).digest_hour
    return digests.set_time(act.tx, act.who.id, act.now, weekday=act.number(0), hour=hour)


def hour(act: Act) -> Reply:
    day = act.tx.staff.get(act.who.id).digest_weekday
    return digests.set_time(act.tx, act.who.id, act.now, weekday=day, hour=act.number(0))


PRESSES: dict[str, Press] = {"dg": page, "dt": time, "dw": weekday, "dh": hour}
