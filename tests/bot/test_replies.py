"""Replies by the thousand: no unhandled error, no wrong count, no pain missed (P3, P4).

`BOUTWISE_REPLIES=1000000` makes it a million.
"""

from __future__ import annotations

from collections import Counter

from bot.understand import understand
from tests.bot.replies import ZEROS, Generated, replies
from tests.reliability.sizes import asked_for

REPLIES = int(asked_for("BOUTWISE_REPLIES", "3000"))
ASKED_BACK_AT_MOST = 0.1
"""Of plain counts: asking once too often is the least fault, but one."""


def test_every_script_with_digits_is_among_the_generated() -> None:
    """Unicode 14 or newer, which Python 3.11 comes with, has more than 60 of them."""
    assert {"0", "\u0660", "\u06f0", "\u0966", "\uff10"} <= set(ZEROS)
    assert len(ZEROS) > 60


def test_no_generated_reply_is_counted_wrongly_or_hides_pain() -> None:
    faults: list[tuple[Generated, str]] = []
    counted: Counter[str] = Counter()
    for one in replies(20271, REPLIES):
        heard = understand(one.text, one.language)
        faults += ((one, fault) for fault in one.faults(heard))
        counted[one.kind, heard.reps is not None] += 1  # type: ignore[index]
    assert not faults, f"{len(faults)} of {REPLIES}, first {faults[:5]}"
    plain, asked = counted["count", True], counted["count", False]  # type: ignore[index]
    assert asked <= ASKED_BACK_AT_MOST * (plain + asked), f"{asked} of {plain + asked} asked back"
