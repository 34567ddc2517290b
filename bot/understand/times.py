"""Times of day and waits in a text: "at four", "half past 4", "after lunch", "in 20 min". Pure.

A bare hour of 1 to 12 is read as the first of its two readings that lies from 06:00 to 21:59:
"at 4" is 16:00, "at 9" is 09:00. `either` says that the other one lies there too, so that the
reader who knows the time of day can choose the next one ahead.
"""

from dataclasses import dataclass

from bot.understand.tokens import Token
from bot.understand.vocabulary import Match, Vocabulary

_MINUTES_A_DAY = 24 * 60
_NOON = 12 * 60
_DAY_STARTS, _DAY_ENDS = 6 * 60, 22 * 60
_HALF_DAY_HOURS = 12
# Clock phrases: minutes to add to the hour.
_CLOCKS = {
    "clock-plain": 0,
    "clock-weak": 0,
    "clock-exact": 0,
    "clock-bare": 0,
    "clock-range": 0,
    "clock-half": 30,
    "clock-quarter": 15,
    "clock-less-quarter": -15,
    "clock-past": 0,
    "clock-to": 0,
}
_HALVES = ("clock-am", "clock-pm", "clock-am-mark", "clock-pm-mark")
_SPANS = (
    *("span-minutes", "span-hours", "span-bare-minutes", "span-bare-hours"),
    *("span-15", "span-30", "span-45", "span-60", "span-90"),
)


@dataclass(frozen=True, slots=True)
class Times:
    """What was said about when.

    `minutes`: a wait. `at`: "HH:MM", wall clock. `either`: `at` could be twelve hours later as
    well. `unclear`: more than one time, or one that does not exist. `weak`: only phrases that
    could be about a count ("pain after 10"). `words`: places of the tokens that said it.
    """

    minutes: int | None = None
    at: str | None = None
    either: bool = False
    unclear: bool = False
    weak: bool = False
    words: frozenset[int] = frozenset()

    @property
    def any(self) -> bool:
        """Whether a time or wait was said."""
        return self.at is not None or self.minutes is not None


def find_times(tokens: list[Token], vocabulary: Vocabulary) -> Times:
    """All times and waits in `tokens`."""
    at_keys = [k for k in vocabulary.keys if k.startswith("at-")]
    halves = vocabulary.pick(tokens, set(_HALVES))
    picked = vocabulary.pick(tokens, {*_CLOCKS, *_SPANS, *at_keys, "clock-not"})
    found = [
        m for m in picked if m.group not in {"clock-not", "clock-bare"} or _has_mark(m, halves)
    ]
    if not found:
        return Times()
    used = {i for m in found for i in range(m.start, m.end)}
    clocks, waits = [], set()
    for match in found:
        if match.group.startswith("span-"):
            waits.add(_wait(match))
        elif match.group in _CLOCKS:
            half = _half_after(match, halves)
            if half is not None:
                used |= set(range(half.start, half.end))
            clocks.append(_clock(match, half))
        elif not any(m.group in _CLOCKS and _half_after(m, halves) for m in found):
            hours, minutes = int(match.group[3:5]), int(match.group[5:7])
            clocks.append((hours * 60 + minutes, False))
    weak = all(m.group == "clock-weak" for m in found)
    return _told(set(clocks), waits, weak, frozenset(used))


def _told(
    clocks: set[tuple[int | None, bool]], waits: set[int], weak: bool, words: frozenset[int]
) -> Times:
    if len(clocks) + len(waits) != 1 or None in {minute for minute, _ in clocks}:
        return Times(unclear=True, weak=weak, words=words)
    if waits:
        minutes = waits.pop()
        if not 0 < minutes < _MINUTES_A_DAY:
            return Times(unclear=True, weak=weak, words=words)
        return Times(minutes=minutes, weak=weak, words=words)
    minute, either = clocks.pop()
    at = f"{(minute or 0) // 60:02}:{(minute or 0) % 60:02}"
    return Times(at=at, either=either, weak=weak, words=words)


def _half_after(match: Match, halves: list[Match], *, bare: bool = False) -> Match | None:
    """The "pm" or "in the morning" in or after a clock phrase; after a bare number only "pm" will do."""
    last = match.end if bare else match.end + 1
    near = (h for h in halves if match.start < h.start <= last and (not bare or h.start == last))
    return next((h for h in near if not bare or h.group.endswith("-mark")), None)


def _has_mark(match: Match, halves: list[Match]) -> bool:
    """Whether a bare number is made a time by am or pm."""
    return match.group == "clock-bare" and _half_after(match, halves, bare=True) is not None


def _wait(match: Match) -> int:
    if match.group == "span-90" and match.numbers:
        return match.number("n") * 60 + 30
    if match.numbers:
        return match.number("n") * (60 if "hours" in match.group else 1)
    return int(match.group.removeprefix("span-"))


def _clock(match: Match, half: Match | None) -> tuple[int | None, bool]:
    """Minute of the day and whether twelve hours later would do too; None where there is none."""
    if match.group == "clock-range":
        return None, False
    slots = dict(match.numbers)
    hour, more = slots["h"], slots.get("m", 0)
    if hour > 24 or more > 59:  # noqa: PLR2004 - hours and minutes of a clock
        return None, False
    if match.group == "clock-to":
        more = -more
    base = hour % 24 * 60 + more + _CLOCKS[match.group]
    if hour > _HALF_DAY_HOURS or hour == 0:
        return base % _MINUTES_A_DAY, False
    base %= _NOON
    if half is not None:
        return base + (_NOON if half.group.startswith("clock-pm") else 0), False
    fits = [m for m in (base, base + _NOON) if _DAY_STARTS <= m < _DAY_ENDS]
    return fits[0], len(fits) > 1
