"""Short typed answers to an open question: each parser gives a value, or `Unclear`. Pure.

Nothing here raises on any text. `Unclear.reason` is a catalogue id that says what was wrong and
what would be taken. Hours and dates are wall clock and calendar in the client's own zone.
"""

import difflib
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date, timedelta
from functools import cache
from itertools import pairwise
from zoneinfo import available_timezones

from bot.hours import Span, parts, read_span
from bot.understand.tokens import Token, plain, tokenise
from bot.understand.vocabulary import vocabulary

WORST_PAIN = 10
_LONGEST = 200  # characters of a short answer; what is longer is none
_MONTHS = range(1, 13)
_ISO_DATE = re.compile(r"(\d{4})-(\d{1,2})-(\d{1,2})")
_SHOWN = 5  # suggestions


@dataclass(frozen=True, slots=True)
class Unclear:
    """An answer that could not be taken. `reason`: catalogue id; `args`: its arguments."""

    reason: str
    args: Mapping[str, object] = field(default_factory=dict)


def number(text: str, low: int, high: int, language: str = "en") -> int | Unclear:
    """A whole number from `low` to `high`, in digits or words: "12", "twelve", "about 12"."""
    refused = Unclear("answer-number", {"low": low, "high": high})
    tokens = _tokens(text, language)
    values = [t.value for t in tokens if t.value is not None]
    marks = {t.text for t in tokens if t.value is None and not t.is_word} - set(".!,~?")
    broken = any(
        a.text in {".", ","} and b.glued and b.value is not None for a, b in pairwise(tokens)
    )
    if len(values) != 1 or marks or broken or not low <= values[0] <= high:
        return refused
    return values[0]


def score(text: str, language: str = "en") -> int | Unclear:
    """A pain score, whole, 0 to 10; "5/10" and "5 out of 10" are 5."""
    said = " ".join(t.text if t.value is None else str(t.value) for t in _tokens(text, language))
    fraction = _fraction(language).fullmatch(said.strip(" .!"))
    found = number(fraction.group(1) if fraction else text, 0, WORST_PAIN, language)
    return Unclear("answer-score") if isinstance(found, Unclear) else found


@cache
def _fraction(language: str) -> re.Pattern[str]:
    of = "|".join(map(re.escape, ("/", *vocabulary(language).lines("score-of"))))
    return re.compile(rf"(\d{{1,2}})\s*(?:{of})\s*{WORST_PAIN}")


def yes_no(text: str, language: str = "en") -> bool | Unclear:
    """Yes is True. Text that says both, or neither, is unclear.

    "No" is believed only where nothing else is said: "no idea" and "I can not breathe" are no answer.
    """
    tokens = _tokens(text, language)
    words = {t.text for t in tokens}
    heard = vocabulary(language)
    yes = bool(words & heard.words("answer-yes"))
    no = bool(words & heard.words("answer-no"))
    if yes == no:
        return Unclear("answer-yes-no")
    harmless = {i for m in heard.find(tokens, {"answer-filler"}) for i in range(m.start, m.end)}
    harmless |= {i for i, t in enumerate(tokens) if t.text in heard.words("answer-no")}
    more = any(t.is_word or t.value is not None for i, t in enumerate(tokens) if i not in harmless)
    return Unclear("answer-yes-no") if "?" in words or (no and more) else yes


def span(text: str, language: str = "en") -> Span | Unclear:
    """Two times of one day: see `bot.hours.read_span`."""
    return read_span(plain(text[:_LONGEST]), language) or Unclear("answer-span")


def spans(text: str, language: str = "en") -> tuple[Span, ...] | Unclear:
    """Quiet times in the order of the day: "12-13, 15:00-15:30"; "none" is an empty tuple.

    Spans that overlap are unclear.
    """
    if says_none(text, language):
        return ()
    if not isinstance(only := span(text, language), Unclear):
        return (only,)
    found: list[Span] = []
    for part in parts(plain(text[:_LONGEST]).strip(), language):
        one = span(part, language)
        if isinstance(one, Unclear):
            return Unclear("answer-spans")
        found.append(one)
    found.sort()
    if any(later[0] < earlier[1] for earlier, later in pairwise(found)):
        return Unclear("answer-spans-overlap")
    return tuple(found)


def weekdays(text: str, language: str = "en") -> tuple[int, ...] | Unclear:
    """Weekdays, Monday 0, in order and once each; "flexible" is an empty tuple."""
    heard = vocabulary(language)
    names = {name: day for day in range(7) for name in heard.words(f"weekday-{day}")}
    words = [t.text for t in _tokens(text, language) if t.is_word or t.value is not None]
    words = [w for w in words if w in names or w not in heard.words("day-joiner")]
    if not words:
        return Unclear("answer-weekdays")
    if all(w in heard.words("day-flexible") for w in words):
        return ()
    if all(w in heard.words("day-every") for w in words):
        return tuple(range(7))
    if any(w not in names for w in words):
        return Unclear("answer-weekdays")
    return tuple(sorted({names[w] for w in words}))


def day(text: str, today: date, language: str = "en") -> date | Unclear | None:
    """A date: "2027-03-12", "12 march", "tomorrow", a weekday (the next one); "none" is None.

    A day and month without a year is the next such date, `today` included. "3/4" is unclear: its
    order differs between countries.
    """
    if says_none(text, language):
        return None
    if iso := _ISO_DATE.fullmatch(plain(text[:_LONGEST]).strip(" .")):
        return _date(*(int(part) for part in iso.groups())) or Unclear("answer-day")
    heard = vocabulary(language)
    tokens = [t for t in _tokens(text, language) if t.text not in heard.words("day-joiner")]
    words = [t.text for t in tokens if t.is_word]
    if len(tokens) == 1 and words:
        return _named_day(words[0], today, language)
    months = [m for m in _MONTHS for w in words if w in heard.words(f"month-{m}")]
    numbers = [t.value for t in tokens if t.value is not None]
    if len(months) != 1 or not 1 <= len(numbers) <= 2:  # noqa: PLR2004 - day, or day and year
        return Unclear("answer-day")
    if len(numbers) == 2:  # noqa: PLR2004
        return _date(numbers[1], months[0], numbers[0]) or Unclear("answer-day")
    dates = (_date(year, months[0], numbers[0]) for year in range(today.year, today.year + 9))
    return next((d for d in dates if d is not None and d >= today), Unclear("answer-day"))


def zone(text: str) -> str | Unclear:
    """A time zone of the IANA data: its name in any case, or a city in one name only."""
    wanted = _zone_key(text[:_LONGEST])
    names = _zones()
    if wanted in names:
        return names[wanted]
    cities: dict[str, list[str]] = {}
    for name in names.values():
        cities.setdefault(_zone_key(name).rpartition("/")[2], []).append(name)
    found = sorted(cities.get(wanted, []))
    if len(found) == 1:
        return found[0]
    near = difflib.get_close_matches(wanted[:40], cities, n=_SHOWN) if wanted else []
    shown = found or [name for city in near for name in sorted(cities[city])]
    return Unclear("answer-zone", {"suggestions": tuple(shown[:_SHOWN])})


def zone_sure(text: str, language: str = "en") -> str | bool | Unclear:
    """Whether a proposed time zone is right, or the name of another one."""
    said = yes_no(text, language)
    return zone(text) if isinstance(said, Unclear) else said


def choice(text: str, options: Sequence[str]) -> int | Unclear:
    """The place, from 0, of the option that is meant: its number from 1, label or a clear start.

    Case and accents do not matter. A label equal to the text wins over one that only starts so.
    """
    labels = [" ".join(plain(option).split()) for option in options]
    said = " ".join(plain(text[:_LONGEST]).split()).strip(" .!")
    refused = Unclear("answer-choice", {"options": tuple(options)})
    if not said:
        return refused
    if said in labels:
        return labels.index(said) if labels.count(said) == 1 else refused
    if said.isdecimal():
        place = int(said) - 1
        return place if 0 <= place < len(options) else refused
    starting = [i for i, label in enumerate(labels) if label.startswith(said)]
    return starting[0] if len(starting) == 1 else refused


def _tokens(text: str, language: str) -> list[Token]:
    return tokenise(text, vocabulary(language)) if len(text) <= _LONGEST else []


def says_none(text: str, language: str) -> bool:
    """Whether a text says that there is none: "none", "no", "-"."""
    words = [t.text for t in _tokens(text, language) if t.text not in {".", "!"}]
    return bool(words) and all(w in vocabulary(language).words("answer-none") for w in words)


def _date(year: int, month: int, number_of_day: int) -> date | None:
    try:
        return date(year, month, number_of_day)
    except (ValueError, OverflowError):
        return None


def _named_day(word: str, today: date, language: str) -> date | Unclear:
    heard = vocabulary(language)
    if word in heard.words("day-today"):
        return today
    if word in heard.words("day-tomorrow"):
        return today + timedelta(days=1)
    for weekday in range(7):
        if word in heard.words(f"weekday-{weekday}"):
            return today + timedelta(days=(weekday - today.weekday() - 1) % 7 + 1)
    return Unclear("answer-day")


def _zone_key(text: str) -> str:
    return "_".join(plain(text).replace("-", "_").replace("_", " ").split())


@cache
def _zones() -> dict[str, str]:
    """Name without case to name."""
    return {_zone_key(name): name for name in available_timezones()}
