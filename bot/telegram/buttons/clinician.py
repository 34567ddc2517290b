"""The buttons under messages to a clinician."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from bot.telegram.buttons.base import Args, Button, Rows, button, in_rows, turns
from bot.telegram.buttons.breaks import of_client
from scheduler.domain.companions import CATALOGUE
from scheduler.domain.flags import OUTCOMES
from scheduler.domain.plan import Level
from scheduler.usecases.drafts import FIELDS


def _stop(args: Args) -> Button:
    client = args["client"]
    held = args.get("held")
    return button("release", f"rel:{client}") if held else button("hold", f"ch:{client}")


def _flag(args: Args) -> Rows:
    client = args["client"]
    return [
        [button("close-flag", f"fx:{args['flag']}"), button("write", f"w:{client}")],
        [_stop(args), button("open-client", f"c:{client}")],
    ]


def _outcomes(args: Args) -> Rows:
    flag = args["flag"]
    return in_rows([button(f"outcome-{o}", f"fo:{flag}:{o}") for o in OUTCOMES], 2)


def _client_ready(args: Args) -> Rows:
    return [[button("clear", f"cr:{args['client']}"), button("open-client", f"c:{args['client']}")]]


def _ceiling(args: Args) -> Rows:
    client = args["client"]
    levels = [level.name.lower() for level in Level]
    return in_rows([button(f"ceiling-{name}", f"cc:{client}:{name}") for name in levels], 2)


def _caseload(args: Args) -> Rows:
    clients: Any = args["clients"]
    return [
        *(
            [button("client", f"c:{each['id']}", name=each["name"], flags=each["flags"])]
            for each in clients
        ),
        *turns(args, "cn"),
    ]


def _client_page(args: Args) -> Rows:
    client = args["client"]
    flags: Any = args["open_flags"]
    closes = [button("close-flag-number", f"fx:{flag}", flag=flag) for flag in flags]
    there = [
        [button("plan", f"cp:{client}"), button("clear", f"cr:{client}")],
        [_stop(args), button("write", f"w:{client}")],
    ]
    there += [[*of_client(args), button("closed-days", f"jl:{client}")]]
    gone = args["state"] in {"left", "discharged"}
    last = [button("step-tests", f"tp:{client}"), button("all-clients", "cl")]
    return [*in_rows(closes, 2), *([] if gone else there), last]


def _to_plan(args: Args) -> Rows:
    return [[button("plan", f"cp:{args['client']}"), button("open-client", f"c:{args['client']}")]]


def _to_client(args: Args) -> Rows:
    return [[button("open-client", f"c:{args['client']}")]]


def _card(_: Args) -> Rows:
    fields = [button(f"field-{name.replace('_', '-')}", f"df:{name}") for name in FIELDS]
    return [
        *in_rows(fields, 3),
        [button("preview", "dp"), button("cancel", "dx")],
    ]


def _movements(args: Args) -> Rows:
    movements: Any = args["movements"]
    keys = [button("movement", f"dv:movement:{key}", movement=key) for key in movements]
    return [*in_rows(keys, 2), [button("back", "dc")]]


def _quick(field: str, *values: int) -> Callable[[Args], Rows]:
    def build(_: Args) -> Rows:
        buttons = [button("number", f"dv:{field}:{value}", number=value) for value in values]
        return [*in_rows(buttons, 4), [button("back", "dc")]]

    return build


WEEKDAY_CHOICES = ((0, 3), (1, 4), (0, 2, 4), (1, 3, 5))


def _weekdays(_: Args) -> Rows:
    fixed = [
        button("weekdays", f"dv:weekdays:{'-'.join(map(str, days))}", days=list(days))
        for days in WEEKDAY_CHOICES
    ]
    return [
        *in_rows(fixed, 2),
        [button("flexible", "dv:weekdays:flexible"), button("back", "dc")],
    ]


def _back(_: Args) -> Rows:
    return [[button("back", "dc")]]


def _companions(_: Args) -> Rows:
    keys = [button("companion", f"dv:companions:{key}", companion=key) for key in CATALOGUE]
    return [*in_rows(keys, 1), *_none_or_back("companions")({})]


def _none_or_back(field: str) -> Callable[[Args], Rows]:
    def build(_: Args) -> Rows:
        return [[button("none", f"dv:{field}:none"), button("back", "dc")]]

    return build


def _save(args: Args) -> Rows:
    estimate = args["estimate"]
    save = button("save-with-yes", "ds:1") if estimate else button("save", "ds:0")
    return [[save], [button("change", "dc"), button("cancel", "dx")]]


def _release(args: Args) -> Rows:
    client, total, half = args["client"], args["total"], args["half"]
    return [
        [button("dose-half", f"rd:{client}:{half}", total=half)],
        [button("dose-as-before", f"rd:{client}:{total}", total=total)],
        [button("open-client", f"c:{client}")],
    ]


def _release_day(args: Args) -> Rows:
    client, total = args["client"], args["total"]
    return [
        [button("from-tomorrow", f"rf:{client}:{total}:tomorrow")],
        [button("from-today", f"rf:{client}:{total}:today")],
    ]


KEYBOARDS: dict[str, Callable[[Args], Rows]] = {
    "flag": _flag,
    "ask-outcome": _outcomes,
    "flag-closed": _to_client,
    "client-ready": _client_ready,
    "clearance-waits": _client_ready,
    "ask-ceiling": _ceiling,
    "cleared": _to_plan,
    "caseload": _caseload,
    "client-page": _client_page,
    "plan-saved": _to_client,
    "plan-card": _card,
    "ask-plan-movement": _movements,
    "ask-plan-daily-total": _quick("daily_total", 20, 30, 40, 50, 60, 80, 100),
    "ask-plan-bout-reps": _quick("bout_reps", 5, 8, 10, 12, 15, 20),
    "ask-plan-bout-max": _quick("bout_max", 5, 8, 10, 12, 15, 20),
    "ask-plan-weekdays": _weekdays,
    "ask-plan-days-min": _quick("days_min", 1, 2, 3, 4, 5, 6, 7),
    "ask-plan-days-max": _quick("days_max", 1, 2, 3, 4, 5, 6, 7),
    "ask-plan-rest-days": _quick("rest_days", 0, 1, 2, 3),
    "ask-plan-gap-minutes": _quick("gap_minutes", 60, 90, 120, 180),
    "ask-plan-quiet": _none_or_back("quiet"),
    "ask-plan-window": _back,
    "ask-plan-start": _back,
    "ask-plan-review": _none_or_back("review"),
    "ask-plan-end": _none_or_back("end"),
    "ask-plan-note": _none_or_back("note"),
    "ask-plan-companions": _companions,
    "plan-save": _save,
    "ask-release": _release,
    "ask-release-day": _release_day,
    "released": _to_client,
    "released-not-cleared": _client_ready,
    "client-held": _to_client,
}
