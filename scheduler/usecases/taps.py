"""Two presses of one button, one right after the other, are one answer (P5).

The second was made before the first had changed the screen. It finds its question answered, and to say so
would read as if the first had been lost; so it changes nothing and nothing is said. What was tapped is
stored: the second press may reach another process.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import timedelta

from scheduler.ports import Tap, Tx

ONE_ANSWER = timedelta(minutes=1)
"""So long a press waits for an answer that is slow to come; later, the same press is meant anew."""


def again(tx: Tx, person: int, tap: Tap) -> bool:
    """Whether this is what the person did last, and has been carried out."""
    last = tx.taps.last(person)
    if last is None or (last.message_id, last.data) != (tap.message_id, tap.data):
        return False
    return tap.at < last.at + ONE_ANSWER


def carried_out(tx: Tx, person: int, tap: Tap, *, offered: bool) -> None:
    """A press was carried out. `offered`: its message shows the same button anew, which means a new press."""
    if offered:
        tx.taps.forget(person)
    else:
        tx.taps.keep(person, tap)


def meant_anew(tx: Tx, people: Iterable[int]) -> None:
    """Something lies between their last press and the next, which has its effect though it be the same."""
    for person in people:
        tx.taps.forget(person)
