"""How an argument of a message becomes words: one table, by the argument's name.

Values are those of the domain: ISO wall-clock times and dates, minutes of the day, weekdays from
Monday = 0, catalogue keys, plain numbers, and what people typed. `None`, an empty text and an empty list
read "none", for the catalogue's selectors; yes and no read "yes" and "no".
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from bot.words import times
from bot.words.catalogue import LANGUAGES, Catalogue
from bot.words.times import Value, in_line
from bot.words.typed import one_line
from bot.words.values import companion_name, setting_value
from scheduler.domain.companions import CATALOGUE

Format = Callable[[Any, Catalogue, Mapping[str, Any]], Value]
NOTHING = "none"

WHEN_EMPTY: Mapping[str, str] = {
    "emergency_number": "part-no-emergency-number",
    "clinician": "part-no-clinician",
    "practice": "part-no-practice",
}
"""What is said instead of an empty text."""
MAY_BE_ABSENT: Mapping[str, Any] = {
    "answer_hours": "",
    "emergency_number": "",
    "exact": False,
    "first": False,
    "per_side": False,
    "phone": "",
    "step": None,
    "until": None,
    "waiting": 1,
}
"""Arguments that a message may lack, for one that waits in the outbox may be older than its words."""
LONGEST: Mapping[str, int] = {"name": 64, "clinician": 64, "words": 500, "note": 300}
LONGEST_TYPED = 200
"""Characters of anything else that people type."""
SHORTENED = ("at", "day", "days", "first", "last", "made_at", "weekday")
"""Arguments that are also given in the short form of the language, as `day_short` and so on."""


def arguments(args: Mapping[str, Any], words: Catalogue) -> dict[str, Value]:
    """Every argument in words, with those derived from them."""
    given = {**MAY_BE_ABSENT, **args}
    said = {name: _word(name, value, words, given) for name, value in given.items()}
    said |= {
        f"{name}_short": _word(name, given[name], words.narrow, given)
        for name in SHORTENED
        if name in given
    }
    if not is_nothing(given.get("movement")):
        said["movement_one"] = words.say(f"name-movement-{given['movement']}", {}, "one")
    if not is_nothing(given.get("exercise")):
        said |= _card(str(given["exercise"]), words)
    if "setting" in given:
        key, value = _key("setting", given["setting"]), str(given.get("value"))
        if not is_nothing(given.get("value")):
            said["value"] = setting_value(given["setting"], said["value"], words)
        count = {"value": int(value)} if value.isdecimal() else {"value": value}
        said["does"] = words.say(key, {}, "does")
        said["unit"] = words.say(key, count, "unit")
    return said


def is_nothing(value: Any) -> bool:
    """Whether a value says nothing: `None`, an empty text or list. No and 0 do say something."""
    return value is None or (isinstance(value, str | list | tuple) and not value)


def _word(name: str, value: Any, words: Catalogue, given: Mapping[str, Any]) -> Value:
    if value == "" and name in WHEN_EMPTY:
        return words.say(WHEN_EMPTY[name], {})
    if is_nothing(value):
        return NOTHING
    if isinstance(value, bool):
        return "yes" if value else "no"
    if name in FORMATS:
        return FORMATS[name](value, words, given)
    if isinstance(value, list | tuple | dict):
        return len(value)
    return one_line(value, LONGEST.get(name, LONGEST_TYPED)) if isinstance(value, str) else value


def _card(exercise: str, words: Catalogue) -> dict[str, Value]:
    """The parts of a how-to card: the cues, where to hold on, what to take care of."""
    key = f"name-card-{exercise}"
    return {
        "steps": words.say(key, {}),
        "hold": words.say(key, {}, "hold"),
        "avoid": words.say(key, {}, "avoid"),
    }


def _exercise(value: str, words: Catalogue, _: Mapping[str, Any]) -> str:
    """The name of a movement or of a companion."""
    return (
        companion_name(value, words)
        if value in CATALOGUE
        else words.say(_key("movement", value), {})
    )


# --- catalogue keys ------------------------------------------------------------------------------


def _key(family: str, value: object) -> str:
    return f"name-{family}-{str(value).replace('_', '-')}"


def _named(family: str) -> Format:
    def name(value: Any, words: Catalogue, _: Mapping[str, Any]) -> str:
        return words.say(_key(family, value), {})

    return name


def _names(family: str) -> Format:
    def names(value: Sequence[Any], words: Catalogue, _: Mapping[str, Any]) -> str:
        return in_line([words.say(_key(family, each), {}) for each in value], words)

    return names


def _items(family: str) -> Format:
    """One name a line."""

    def items(value: Sequence[Any], words: Catalogue, _: Mapping[str, Any]) -> str:
        names = (words.say(_key(family, each), {}) for each in value)
        return "\n".join(words.say("part-item", {"item": name}) for name in names)

    return items


def _values(value: Sequence[Any], words: Catalogue, given: Mapping[str, Any]) -> str:
    """The values that would work for a plan's field: movements, weekdays, hours, dates, numbers."""
    one: dict[str, Format] = {
        "movement": _named("movement"),
        "weekdays": times.weekday,
        "window": times.typed_span,
        "start": times.dated,
        "review": times.dated,
        "end": times.dated,
    }
    form = one.get(str(given.get("field")))
    return ", ".join(str(form(each, words, given)) if form else str(each) for each in value)


# --- rows ----------------------------------------------------------------------------------------


def _rows(text: str) -> Format:
    """A list of rows, one a line; of a number of bouts, the number."""

    def rows(
        value: Sequence[Mapping[str, Any]] | int, words: Catalogue, _: Mapping[str, Any]
    ) -> Value:
        if isinstance(value, int):
            return value
        return "\n".join(words.say(text, arguments(row, words)) for row in value)

    return rows


def _listed(text: str) -> Format:
    """A list of rows in one line."""

    def listed(value: Sequence[Mapping[str, Any]], words: Catalogue, _: Mapping[str, Any]) -> str:
        return ", ".join(words.say(text, arguments(row, words)) for row in value)

    return listed


def _settings(value: Sequence[Mapping[str, Any]], words: Catalogue, _: Mapping[str, Any]) -> str:
    rows = ({"setting": row["name"], "value": row["value"]} for row in value)
    return "\n".join(words.say("part-row-setting", arguments(row, words)) for row in rows)


def _reasons(value: Sequence[Mapping[str, Any]], words: Catalogue, _: Mapping[str, Any]) -> str:
    """Why a client needs her clinician: each with what is known of it."""
    rows = (
        {"reason": row["kind"], "since": row.get("since"), "pain": row.get("pain")} for row in value
    )
    return ", ".join(words.say("part-reason", arguments(row, words)) for row in rows)


def _companions(value: Sequence[Mapping[str, Any]], words: Catalogue, _: Mapping[str, Any]) -> str:
    rows = ({**row, "companion": row["name"]} for row in value)
    return ", ".join(words.say("part-companion", arguments(row, words)) for row in rows)


def _trials(value: Sequence[float | None], words: Catalogue, _: Mapping[str, Any]) -> str:
    """The trials of a step test in their order: seconds, or that one has no time."""
    return ", ".join(words.say("part-trial", {"best": NOTHING if t is None else t}) for t in value)


def _step(value: Mapping[str, Any], words: Catalogue, _: Mapping[str, Any]) -> str:
    return words.say("part-step", arguments(value, words))


def _results(value: Sequence[Mapping[str, Any]], words: Catalogue, _: Mapping[str, Any]) -> str:
    return "; ".join(words.say("part-step", arguments(each, words)) for each in value)


def _joined(value: Sequence[str], _: Catalogue, __: Mapping[str, Any]) -> str:
    return ", ".join(one_line(each.replace("_", " "), LONGEST_TYPED) for each in value)


def _plain(value: object, _: Catalogue, __: Mapping[str, Any]) -> str:
    """A number that is a name: never written with separators."""
    return str(value)


FORMATS: Mapping[str, Format] = {
    "at": times.time, "next": times.time, "first": times.bound, "last": times.bound,
    "since": times.since, "made_at": times.moment,
    "week": times.week, "day": times.day, "until": times.day, "review": times.dated,
    "start": times.edge, "end": times.edge,
    "reason": _named("reason"), "reasons": _reasons, "digest_rows": _rows("part-row-digest"),
    "flag_rows": _rows("part-row-flag"),
    "clients": _rows("part-row-client"), "covers": _rows("part-row-cover"),
    "companions": _companions, "beside": _listed("part-beside"), "scores": _listed("part-score"),
    "exercise": _exercise,
    "companion": lambda value, words, _: companion_name(value, words),
    "stepped": times.day, "due": times.day, "trials": _trials, "tests": _rows("part-row-step"),
    "step": _step, "results": _results,
    "instead": times.day, "begins": times.day, "dates": times.dates,
    "window": times.span, "quiet": times.spans,
    "weekday": times.weekday, "weekdays": times.weekdays, "days": times.weekdays,
    "movement": _named("movement"), "movements": _names("movement"),
    "sign": _named("sign"), "place": _named("place"), "when": _named("when"), "doing": _named("doing"),
    "unanswered": _named("step"), "kind": _named("kind"), "outcome": _named("outcome"),
    "ceiling": _named("ceiling"), "level": _named("ceiling"),
    "cell": _named("cell"), "why": _named("why"), "mark": _named("mark"),
    "role": _named("role"), "state": _named("state"),
    "setting": _named("setting"), "field": _named("field"),
    "readiness": _items("ready"),
    "values": _values, "suggestions": _joined,
    "rows": _rows("part-row-dose"), "bouts": _rows("part-row-bout"), "settings": _settings,
    "language": lambda value, _, __: LANGUAGES.get(value, value),
    "away": _named("away"), "because": _named("because"),
    "flag": _plain, "version": _plain, "update": _plain,
    "zone": lambda value, _, __: one_line(value.replace("_", " "), LONGEST_TYPED),
}  # fmt: skip
"""From an argument's name to its words. What is not here: typed text as it is, a list as its length."""
