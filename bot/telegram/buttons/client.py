"""The buttons under messages to a client."""

from __future__ import annotations

from collections.abc import Callable

from bot.telegram.buttons.base import Args, Rows, button, in_rows, numbers, yes_no
from scheduler.domain import pain as p
from scheduler.domain import readiness

MOST_NUMBERS = 24
"""Number buttons under "how many": more would not fit a phone; any number can be typed."""


HURTS = button("hurts", "hurt")
"""On a row of its own wherever a bout is spoken of (P2)."""


HOW = button("how", "how")
"""How the exercise is done, wherever she looks at her day or asks for help (C7)."""


def _how_else(args: Args) -> Rows:
    others = args["others"]
    assert isinstance(others, list)  # noqa: S101 # written by howto.show
    return in_rows([button("exercise", f"hw:{each}", exercise=each) for each in others], 1)


def _prompt(args: Args) -> Rows:
    bout = args["bout"]
    return [
        [button("did-all", f"all:{bout}")],
        [
            button("fewer", f"few:{bout}"),
            button("later", f"lat:{bout}"),
            button("skip", f"skp:{bout}"),
        ],
        [HURTS],
    ]


def _late_prompt(args: Args) -> Rows:
    bout = args["bout"]
    return [[button("did-all", f"all:{bout}"), button("fewer", f"few:{bout}")], [HURTS]]


def _cannot_wait(args: Args) -> Rows:
    bout = args["bout"]
    return [
        [button("did-all", f"all:{bout}")],
        [button("fewer", f"few:{bout}"), button("skip", f"skp:{bout}")],
        [HURTS],
    ]


def _how_many(args: Args) -> Rows:
    asked = args.get("asked")
    most = min(int(asked) - 1, MOST_NUMBERS) if isinstance(asked, int) else 0
    return [*(numbers(1, most, "n") if most > 0 else []), [HURTS]]


def _sure(args: Args) -> Rows:
    yes = button("yes-number", "sure:1", number=args["reps"])
    return [[yes, button("no", "sure:0")]]


def _signs(args: Args) -> Rows:
    signs = [button(f"sign-{sign}", f"p:sign:{sign}") for sign in p.SIGN_SCREEN]
    buttons = [[button("no-sign", "p:sign:none")], *in_rows(signs, 1)]  # a cut label is a risk
    return [*buttons, [button("mistake", "oops")]] if args.get("first", True) else buttons


def _places(_: Args) -> Rows:
    return in_rows([button(f"place-{place}", f"p:place:{place}") for place in p.PLACES], 2)


def _when(_: Args) -> Rows:
    whens = ("during", "after", "next-morning", "other")
    return in_rows([button(f"when-{when}", f"p:when:{when}") for when in whens], 2)


def _new(_: Args) -> Rows:
    return [[button("new", "p:new:1"), button("known", "p:new:0")]]


def _sharper(_: Args) -> Rows:
    return [[button("sharper", "p:sharper:1"), button("as-usual", "p:sharper:0")]]


def _fall_sign(_: Args) -> Rows:
    signs = [[button(f"sign-{sign}", f"f:sign:{sign}")] for sign in p.FALL_SIGNS]
    return [*signs, [button("no-sign", "f:sign:none")]]


def _fall_when(_: Args) -> Rows:
    return [[button(f"fall-{w}", f"f:when:{w}")] for w in ("today", "yesterday", "earlier")]


def _fall_doing(_: Args) -> Rows:
    return in_rows([button(f"doing-{d}", f"f:doing:{d}") for d in p.FALL_DOING], 2)


def _screen(screen: str) -> Callable[[Args], Rows]:
    def build(_: Args) -> Rows:
        return [
            [button("none-of-these", f"r:{screen}:none")],
            [button("yes-or-unsure", f"r:{screen}:yes")],
        ]

    return build


def _which(args: Args) -> Rows:
    screen, chosen = str(args["screen"]), args["chosen"]
    assert isinstance(chosen, list)  # noqa: S101 # written by join._ask
    keys = [
        [
            button(
                f"ready-{key}",
                f"{'ro' if key in chosen else 'r'}:{screen}:{key}",
                chosen=key in chosen,
            )
        ]
        for key in readiness.SCREENS[screen]
    ]
    return [*keys, [button("that-is-all", f"r:{screen}:done")]]


def _times(args: Args) -> Rows:
    rows = [
        [button("keep", "t:keep")],
        [button("change-zone", "t:zone"), button("change-hours", "t:window")],
        [button("change-quiet", "t:quiet")],
    ]
    return [*rows, [button("change-days", "t:days")]] if args.get("flexible") else rows


def _zone_sure(args: Args) -> Rows:
    """Each names its zone: of two places that were shared, the one that was tapped is meant."""
    zone = args["zone"]
    return [[button("yes", f"zs:{zone}"), button("no", f"zn:{zone}")]]


def _agree(_: Args) -> Rows:
    return [[button("agree", "ok:1")], [button("not-agree", "ok:0")]]


def _pass_on(_: Args) -> Rows:
    return [
        [HURTS],
        [button("fell", "fell")],
        [button("pass-on", "pass:1"), button("no", "pass:0")],
    ]


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
    "ask-pain-score": lambda _: numbers(0, 10, "p:score"),
    "ask-pain-when": _when,
    "ask-pain-new": _new,
    "ask-pain-sharper": _sharper,
    "ask-fall-sign": _fall_sign,
    "ask-fall-injured": lambda _: yes_no("f:injured"),
    "ask-fall-new-pain": lambda _: yes_no("f:new_pain"),
    "ask-fall-when": _fall_when,
    "ask-fall-doing": _fall_doing,
    "ask-morning": lambda _: numbers(0, 10, "m"),
    "notice": _agree,
    "consent-declined": _agree,
    "consent-not-renewed": _agree,
    **{f"ask-screen-{screen}": _screen(screen) for screen in readiness.ORDER},
    "ask-which": _which,
    "consent-kept": lambda _: [[button("health-again", "hq")]],
    "ask-usual-pain": lambda _: numbers(0, 10, "u"),
    "ask-times": _times,
    "ask-zone-sure": _zone_sure,
    "file-hurts": lambda _: [[HURTS], [button("fell", "fell")]],
    "not-understood": _pass_on,
    "today": lambda _: [[HOW], [HURTS]],
    "today-rest": lambda _: [[HOW]],
    "help-client": lambda _: [[HOW], [HURTS]],
    "how-to-asked": _how_else,
}
