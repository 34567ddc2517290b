"""The buttons under a message, derived from its text ids and arguments; never stored, never trusted.

Button data are short and stateless: a verb and its arguments, at most 64 bytes. Who pressed and in what
state things are is looked up again when the press arrives.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from scheduler.domain import pain as p
from scheduler.domain import readiness
from scheduler.domain.flags import OUTCOMES
from scheduler.domain.messages import Argument, Message, Text, text
from scheduler.domain.people import Role
from scheduler.domain.plan import Level
from scheduler.domain.settings import NAMES
from scheduler.usecases.plans import FIELDS

MOST_NUMBERS = 24
"""Number buttons under "how many": more would not fit a phone; any number can be typed."""
NUMBERS_A_ROW = 6


@dataclass(frozen=True, slots=True)
class Button:
    """One button: the text of its label and the data that come back when it is tapped."""

    label: Text
    data: str


Rows = list[list[Button]]
Args = Mapping[str, Argument]


def rows(message: Message) -> Rows:
    """The buttons of a message: those of its last text that has any."""
    for each in reversed(message):
        build = KEYBOARDS.get(each.id)
        if build is not None:
            return build(each.args)
    return []


def _button(label: str, data: str, /, **args: Argument) -> Button:
    return Button(text(f"button-{label}", **args), data)


def _in_rows(buttons: Sequence[Button], width: int) -> Rows:
    return [list(buttons[i : i + width]) for i in range(0, len(buttons), width)]


def _numbers(low: int, high: int, verb: str, width: int = NUMBERS_A_ROW) -> Rows:
    return _in_rows(
        [_button("number", f"{verb}:{n}", number=n) for n in range(low, high + 1)], width
    )


def _yes_no(verb: str) -> Rows:
    return [[_button("yes", f"{verb}:1"), _button("no", f"{verb}:0")]]


HURTS = _button("hurts", "hurt")
"""On a row of its own wherever a bout is spoken of (P2)."""


# --- client --------------------------------------------------------------------------------------


def _prompt(args: Args) -> Rows:
    bout = args["bout"]
    return [
        [_button("did-all", f"all:{bout}")],
        [
            _button("fewer", f"few:{bout}"),
            _button("later", f"lat:{bout}"),
            _button("skip", f"skp:{bout}"),
        ],
        [HURTS],
    ]


def _late_prompt(args: Args) -> Rows:
    bout = args["bout"]
    return [[_button("did-all", f"all:{bout}"), _button("fewer", f"few:{bout}")], [HURTS]]


def _cannot_wait(args: Args) -> Rows:
    bout = args["bout"]
    return [
        [_button("did-all", f"all:{bout}")],
        [_button("fewer", f"few:{bout}"), _button("skip", f"skp:{bout}")],
        [HURTS],
    ]


def _how_many(args: Args) -> Rows:
    asked = args.get("asked")
    most = min(int(asked) - 1, MOST_NUMBERS) if isinstance(asked, int) else 0
    return [*(_numbers(1, most, "n") if most > 0 else []), [HURTS]]


def _sure(args: Args) -> Rows:
    yes = _button("yes-number", "sure:1", number=args["reps"])
    return [[yes, _button("no", "sure:0")]]


def _signs(args: Args) -> Rows:
    signs = [_button(f"sign-{sign}", f"p:sign:{sign}") for sign in p.SIGN_SCREEN]
    buttons = [[_button("no-sign", "p:sign:none")], *_in_rows(signs, 1)]  # a cut label is a risk
    return [*buttons, [_button("mistake", "oops")]] if args.get("first", True) else buttons


def _places(_: Args) -> Rows:
    return _in_rows([_button(f"place-{place}", f"p:place:{place}") for place in p.PLACES], 2)


def _when(_: Args) -> Rows:
    whens = ("during", "after", "next-morning", "other")
    return _in_rows([_button(f"when-{when}", f"p:when:{when}") for when in whens], 2)


def _new(_: Args) -> Rows:
    return [[_button("new", "p:new:1"), _button("known", "p:new:0")]]


def _sharper(_: Args) -> Rows:
    return [[_button("sharper", "p:sharper:1"), _button("as-usual", "p:sharper:0")]]


def _fall_sign(_: Args) -> Rows:
    signs = [[_button(f"sign-{sign}", f"f:sign:{sign}")] for sign in p.FALL_SIGNS]
    return [*signs, [_button("no-sign", "f:sign:none")]]


def _fall_when(_: Args) -> Rows:
    return [[_button(f"fall-{w}", f"f:when:{w}")] for w in ("today", "yesterday", "earlier")]


def _fall_doing(_: Args) -> Rows:
    return _in_rows([_button(f"doing-{d}", f"f:doing:{d}") for d in p.FALL_DOING], 2)


def _screen(screen: str) -> Callable[[Args], Rows]:
    def build(_: Args) -> Rows:
        return [
            [_button("none-of-these", f"r:{screen}:none")],
            [_button("yes-or-unsure", f"r:{screen}:yes")],
        ]

    return build


def _which(args: Args) -> Rows:
    screen, chosen = str(args["screen"]), args["chosen"]
    assert isinstance(chosen, list)  # noqa: S101 # written by join._ask
    keys = [
        [_button(f"ready-{key}", f"r:{screen}:{key}", chosen=key in chosen)]
        for key in readiness.SCREENS[screen]
    ]
    return [*keys, [_button("that-is-all", f"r:{screen}:done")]]


def _times(_: Args) -> Rows:
    return [
        [_button("keep", "t:keep")],
        [_button("change-zone", "t:zone"), _button("change-hours", "t:window")],
        [_button("change-quiet", "t:quiet")],
    ]


def _agree(_: Args) -> Rows:
    return [[_button("agree", "ok:1")], [_button("not-agree", "ok:0")]]


def _pass_on(_: Args) -> Rows:
    return [
        [HURTS],
        [_button("fell", "fell")],
        [_button("pass-on", "pass:1"), _button("no", "pass:0")],
    ]


# --- clinician -----------------------------------------------------------------------------------


def _flag(args: Args) -> Rows:
    return [
        [
            _button("close-flag", f"fx:{args['flag']}"),
            _button("open-client", f"c:{args['client']}"),
        ]
    ]


def _outcomes(args: Args) -> Rows:
    flag = args["flag"]
    return _in_rows([_button(f"outcome-{o}", f"fo:{flag}:{o}") for o in OUTCOMES], 2)


def _client_ready(args: Args) -> Rows:
    return [
        [_button("clear", f"cr:{args['client']}"), _button("open-client", f"c:{args['client']}")]
    ]


def _ceiling(args: Args) -> Rows:
    client = args["client"]
    levels = [level.name.lower() for level in Level]
    return _in_rows([_button(f"ceiling-{name}", f"cc:{client}:{name}") for name in levels], 2)


def _caseload(args: Args) -> Rows:
    clients: Any = args["clients"]
    return [
        [_button("client", f"c:{each['id']}", name=each["name"], flags=each["flags"])]
        for each in clients
    ]


def _client_page(args: Args) -> Rows:
    client = args["client"]
    stop = _button("release", f"rel:{client}") if args["held"] else _button("hold", f"ch:{client}")
    return [
        [_button("plan", f"cp:{client}"), _button("clear", f"cr:{client}")],
        [stop, _button("all-clients", "cl")],
    ]


def _to_plan(args: Args) -> Rows:
    return [
        [_button("plan", f"cp:{args['client']}"), _button("open-client", f"c:{args['client']}")]
    ]


def _to_client(args: Args) -> Rows:
    return [[_button("open-client", f"c:{args['client']}")]]


def _card(_: Args) -> Rows:
    fields = [_button(f"field-{name.replace('_', '-')}", f"df:{name}") for name in FIELDS]
    return [
        *_in_rows(fields, 3),
        [_button("preview", "dp"), _button("cancel", "dx")],
    ]


def _movements(args: Args) -> Rows:
    movements: Any = args["movements"]
    keys = [_button("movement", f"dv:movement:{key}", movement=key) for key in movements]
    return [*_in_rows(keys, 2), [_button("back", "dc")]]


def _quick(field: str, *values: int) -> Callable[[Args], Rows]:
    def build(_: Args) -> Rows:
        buttons = [_button("number", f"dv:{field}:{value}", number=value) for value in values]
        return [*_in_rows(buttons, 4), [_button("back", "dc")]]

    return build


WEEKDAY_CHOICES = ((0, 3), (1, 4), (0, 2, 4), (1, 3, 5))


def _weekdays(_: Args) -> Rows:
    fixed = [
        _button("weekdays", f"dv:weekdays:{'-'.join(map(str, days))}", days=list(days))
        for days in WEEKDAY_CHOICES
    ]
    return [
        *_in_rows(fixed, 2),
        [_button("flexible", "dv:weekdays:flexible"), _button("back", "dc")],
    ]


def _back(_: Args) -> Rows:
    return [[_button("back", "dc")]]


def _none_or_back(field: str) -> Callable[[Args], Rows]:
    def build(_: Args) -> Rows:
        return [[_button("none", f"dv:{field}:none"), _button("back", "dc")]]

    return build


def _save(args: Args) -> Rows:
    estimate = args["estimate"]
    save = _button("save-with-yes", "ds:1") if estimate else _button("save", "ds:0")
    return [[save], [_button("change", "dc"), _button("cancel", "dx")]]


def _release(args: Args) -> Rows:
    client, total, half = args["client"], args["total"], args["half"]
    return [
        [_button("dose-half", f"rd:{client}:{half}", total=half)],
        [_button("dose-as-before", f"rd:{client}:{total}", total=total)],
        [_button("open-client", f"c:{client}")],
    ]


def _release_day(args: Args) -> Rows:
    client, total = args["client"], args["total"]
    return [
        [_button("from-tomorrow", f"rf:{client}:{total}:tomorrow")],
        [_button("from-today", f"rf:{client}:{total}:today")],
    ]


# --- admin and everybody -------------------------------------------------------------------------


def _settings(_: Args) -> Rows:
    return _in_rows([_button("setting", f"s:{name}", setting=name) for name in NAMES], 2)


def _invite_role(_: Args) -> Rows:
    return [[_button(f"role-{role.value}", f"ir:{role.value}") for role in Role]]


def _people(args: Args) -> Rows:
    people: Any = args["people"]
    return [
        [_button("person", f"a:{each['id']}", name=each["name"], role=each["role"])]
        for each in people
    ]


def _person(args: Args) -> Rows:
    person = args["person"]
    row = [_button("invite-again", f"ia:{person}")]
    if args["role"] == Role.CLIENT.value and args["state"] != "discharged":
        row.append(_button("discharge", f"d:{person}"))
    return [row, [_button("all-people", "ap")]]


def _discharge(args: Args) -> Rows:
    return [[_button("yes-discharge", f"dd:{args['person']}"), _button("cancel", "ap")]]


def _clinicians(args: Args) -> Rows:
    clinicians: Any = args["clinicians"]
    return [[_button("client", f"ic:{c['id']}", name=c["name"], flags=0)] for c in clinicians]


def _roles(args: Args) -> Rows:
    roles: Any = args["roles"]
    return [[_button(f"role-{role}", f"as:{role}") for role in roles]]


KEYBOARDS: dict[str, Callable[[Args], Rows]] = {
    "prompt": _prompt,
    "nudge": _prompt,
    "no-answer": _late_prompt,
    "later-no-more": _cannot_wait,
    "later-too-late": _cannot_wait,
    "logged": lambda _: [[HURTS]],
    "skipped": lambda _: [[HURTS]],
    "put-off": lambda _: [[HURTS]],
    "ask-reps": _how_many,
    "ask-reps-range": lambda _: [[HURTS]],
    "ask-reps-sure": _sure,
    "ask-pain-sign": _signs,
    "ask-pain-place": _places,
    "ask-pain-score": lambda _: _numbers(0, 10, "p:score"),
    "ask-pain-when": _when,
    "ask-pain-new": _new,
    "ask-pain-sharper": _sharper,
    "ask-fall-sign": _fall_sign,
    "ask-fall-injured": lambda _: _yes_no("f:injured"),
    "ask-fall-new-pain": lambda _: _yes_no("f:new_pain"),
    "ask-fall-when": _fall_when,
    "ask-fall-doing": _fall_doing,
    "ask-morning": lambda _: _numbers(0, 10, "m"),
    "notice": _agree,
    "consent-declined": _agree,
    **{f"ask-screen-{screen}": _screen(screen) for screen in readiness.ORDER},
    "ask-which": _which,
    "ask-usual-pain": lambda _: _numbers(0, 10, "u"),
    "ask-times": _times,
    "not-understood": _pass_on,
    "flag": _flag,
    "ask-outcome": _outcomes,
    "flag-closed": _to_client,
    "client-ready": _client_ready,
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
    "plan-save": _save,
    "ask-release": _release,
    "ask-release-day": _release_day,
    "released": _to_client,
    "client-held": _to_client,
    "settings": _settings,
    "ask-invite-role": _invite_role,
    "ask-invite-clinician": _clinicians,
    "people": _people,
    "person": _person,
    "ask-discharge": _discharge,
    "ask-role": _roles,
}
"""From the id of a text to its buttons. A message without an entry has none."""


SHAPES: dict[str, str] = {
    **dict.fromkeys(("all", "few", "lat", "skp", "n", "m", "u"), "i"),
    **dict.fromkeys(("c", "cr", "cp", "ch", "rel", "fx", "a", "ia", "d", "dd", "ic"), "i"),
    **dict.fromkeys(("sure", "ok", "pass", "t", "df", "ds", "s", "ir"), "s"),
    **dict.fromkeys(("hurt", "fell", "oops", "cl", "dc", "dp", "dx", "ap"), ""),
    **dict.fromkeys(("p", "f", "r", "dv"), "ss"),
    "cc": "is",
    "rd": "ii",
    "rf": "iis",
    "fo": "is",
}
"""What each verb carries: `i` a whole number, `s` a word."""
LONGEST_NUMBER = 18
"""Digits of a number that still fits the database's 64 bits."""


def well_formed(verb: str, args: Sequence[str]) -> bool:
    """Whether data could come from a button of ours; what they name is checked where it is used."""
    shape = SHAPES.get(verb)
    if shape is None or len(shape) != len(args):
        return False
    return all(
        kind == "s" or (arg.isascii() and arg.isdecimal() and len(arg) <= LONGEST_NUMBER)
        for kind, arg in zip(shape, args, strict=True)
    )
