"""The buttons of a break: a client's own, and the one a clinician gives her."""

from __future__ import annotations

from collections.abc import Callable

from bot.telegram.buttons.base import Args, Button, Rows, button, in_rows
from scheduler.domain.breaks import LENGTHS, REASONS

BACK = button("back-from-break", "bb")


def _reasons(_: Args) -> Rows:
    return [
        [button(f"away-{reason}", f"br:{reason}") for reason in REASONS],
        [button("no-break", "bn")],
    ]


def _lengths(_: Args) -> Rows:
    lengths = [button(f"break-{length}", f"bl:{length}") for length in LENGTHS]
    return [*in_rows(lengths, 2), [button("no-break", "bn")]]


def _lengths_from(_: Args) -> Rows:
    """From a later day on."""
    first = [button("break-one-day", "bl:today")]
    lengths = [button(f"break-{length}", f"bl:{length}") for length in LENGTHS if length != "today"]
    return [*in_rows([*first, *lengths], 2), [button("no-break", "bn")]]


def _cancel(args: Args) -> Rows:
    return [[button("cancel-break", f"bx:{args['pause']}")]]


def _ahead(args: Args) -> Rows:
    return [*_cancel(args), [button("another-break", "bs")]]


def _going_on(_: Args) -> Rows:
    return [[BACK], [button("change-break", "bm")]]


def _client_reasons(args: Args) -> Rows:
    client = args["client"]
    return [
        [button(f"away-{reason}", f"kr:{client}:{reason}") for reason in REASONS],
        [button("open-client", f"c:{client}")],
    ]


def _client_lengths(args: Args) -> Rows:
    client, reason = args["client"], args["away"]
    lengths = [button(f"break-{length}", f"kl:{client}:{reason}:{length}") for length in LENGTHS]
    return [*in_rows(lengths, 2), [button("open-client", f"c:{client}")]]


def _to_client(args: Args) -> Rows:
    return [[button("open-client", f"c:{args['client']}")]]


def of_client(args: Args) -> list[Button]:
    """On a client's page: give her a break, or end it."""
    client = args["client"]
    if args.get("paused"):
        return [button("end-break", f"ke:{client}")]
    return [button("break", f"kb:{client}")]


KEYBOARDS: dict[str, Callable[[Args], Rows]] = {
    "ask-break-reason": _reasons,
    "ask-break-first": lambda _: [[button("no-break", "bn")]],
    "ask-break-length": _lengths,
    "ask-break-length-from": _lengths_from,
    "break-planned": _cancel,
    "break-ahead": _ahead,
    "break-started": lambda _: [[BACK]],
    "break-on": _going_on,
    "on-break": lambda _: [[BACK]],
    "break-by-clinician": lambda _: [[BACK]],
    "ask-client-break-reason": _client_reasons,
    "ask-client-break-length": _client_lengths,
    "client-on-break": _to_client,
    "client-no-break": _to_client,
    "client-break-over": _to_client,
}
SHAPES: dict[str, str] = {
    "br": "s", "bl": "s", "bn": "", "bb": "", "bm": "", "bx": "i", "bs": "",
    "kb": "i", "kr": "is", "kl": "iss", "ke": "i",
}  # fmt: skip
