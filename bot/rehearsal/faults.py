"""Misbehaviour on demand: which call goes wrong, and how.

A fault that is delayed or late waits until it is released, its seconds are over, or the caller
hangs up, whichever comes first; the call then goes on.
"""

import asyncio
from dataclasses import dataclass, field
from typing import Any, Literal, cast, get_args

FaultKind = Literal[
    "refuse",  # refused with `status` and `description`
    "too-fast",  # 429 with `retry_after`
    "blocked",  # 403 as if the person had blocked the bot
    "delay",  # accepted late, answered then
    "late",  # accepted at once, answered late
    "drop-before",  # connection closed, nothing accepted, no answer
    "drop-after",  # accepted, then the connection is closed without an answer
    "server-error",  # `status` (5xx) with a page of HTML, nothing accepted
    "down",  # every call, polls too: connection closed, nothing accepted
    "wrong-token",  # every call, polls too: 401, as after the token was changed
    "again",  # a poll delivers the updates of the poll before once more, then the new ones
    "swap",  # a poll delivers neighbours in the wrong order
]
KINDS: tuple[str, ...] = get_args(FaultKind)
POLLING = "getUpdates"
POLLS_ONLY = frozenset({"again", "swap"})
POLLS_TOO = frozenset({"down", "wrong-token"})


@dataclass(slots=True)
class Fault:
    """One instruction: calls that match go wrong from the `nth` on, `times` times.

    Attributes:
        method: only this method. None: any but getUpdates, whose number of calls is chance; it is among
            them for "down" and "wrong-token", and alone for "again" and "swap".
        chat_id: only calls into this chat.
        nth: the first matching call that goes wrong, 1 for the very next.
        times: how many do, one after the other; None for all until the fault is removed.
        retry_after: seconds told with "too-fast".
        seconds: longest wait of "delay" and "late"; None waits for `released`.
        reached: set when the first call is hit.
        released: ends the wait of "delay" and "late".
    """

    kind: FaultKind
    method: str | None = None
    chat_id: int | None = None
    nth: int = 1
    times: int | None = 1
    status: int = 400
    description: str = "Bad Request: refused on demand"
    retry_after: int = 1
    seconds: float | None = None
    reached: asyncio.Event = field(default_factory=asyncio.Event)
    released: asyncio.Event = field(default_factory=asyncio.Event)
    seen: int = field(default=0, init=False)
    hits: int = field(default=0, init=False)

    def __post_init__(self) -> None:
        if self.kind not in KINDS:
            raise ValueError(f"kind must be one of {', '.join(KINDS)}")
        if self.nth < 1 or (self.times is not None and self.times < 1):
            raise ValueError("nth and times count from 1")
        if self.kind in POLLS_ONLY:
            self.method = POLLING
        if self.kind == "server-error" and self.status < 500:  # noqa: PLR2004 - where 5xx begins
            self.status = 502

    @property
    def spent(self) -> bool:
        """Whether it can no longer hit."""
        return self.times is not None and self.hits >= self.times

    def matches(self, method: str, chat_id: object) -> bool:
        """Whether a call is one that this fault counts. `chat_id` may be text, as in forms."""
        if self.method is None and method == POLLING and self.kind not in POLLS_TOO:
            return False
        if self.method is not None and self.method != method:
            return False
        return self.chat_id is None or str(self.chat_id) == str(chat_id)

    def as_json(self) -> dict[str, Any]:
        """What `GET /faults` shows."""
        return {
            "kind": self.kind,
            "method": self.method,
            "chat_id": self.chat_id,
            "nth": self.nth,
            "times": self.times,
            "seen": self.seen,
            "hits": self.hits,
        }


# What `POST /faults` takes beside "kind", with the types of each.
SETTABLE: dict[str, tuple[type, ...]] = {
    "method": (str,),
    "chat_id": (int,),
    "nth": (int,),
    "times": (int, type(None)),
    "status": (int,),
    "description": (str,),
    "retry_after": (int,),
    "seconds": (int, float),
}


def fault_from(given: dict[str, Any]) -> Fault:
    """A fault from a request's JSON object.

    Raises:
        ValueError: with one clear line, for an unknown kind or field, or a wrong type.
    """
    rest = {name: value for name, value in given.items() if name != "kind"}
    for name, value in rest.items():
        if name not in SETTABLE:
            raise ValueError(f'unknown field "{name}"')
        if not isinstance(value, SETTABLE[name]) or isinstance(value, bool):
            raise ValueError(f'"{name}" has the wrong type')  # noqa: TRY004 - data, not code
    return Fault(cast("FaultKind", given.get("kind")), **rest)


class Faults:
    """The instructions given, oldest first. Every one counts; the first that hits decides."""

    def __init__(self) -> None:
        self.known: list[Fault] = []

    def add(self, fault: Fault) -> Fault:
        """Put a fault in force; its counting starts now."""
        self.known.append(fault)
        return fault

    def strike(self, method: str, chat_id: object) -> Fault | None:
        """Count one call, and say what goes wrong with it."""
        struck: Fault | None = None
        for fault in self.known:
            if fault.spent or not fault.matches(method, chat_id):
                continue
            fault.seen += 1
            if struck is None and fault.seen >= fault.nth:
                struck = fault
        if struck is not None:
            struck.hits += 1
            struck.reached.set()
        return struck

    def release(self) -> None:
        """Let go of every call that is held, now and later."""
        for fault in self.known:
            fault.released.set()

    def clear(self) -> None:
        """Take all out of force; calls that are held go on."""
        self.release()
        self.known.clear()
