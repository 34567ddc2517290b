"""How an argument of a message becomes words: one table, by the argument's name.

Values are those of the domain: ISO wall-clock times and dates, minutes of the day, weekdays from
Monday = 0, catalogue keys, plain numbers, and what people typed. `None`, an empty text and an empty list
read "none", for the catalogue's selectors; yes and no read "yes" and "no".
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from datetime import date, datetime
from typing import Any

from bot.words.catalogue import Catalogue
from bot.words.typed import one_line
from bot.words.values import companion_name, setting_value
from scheduler.domain.hours import parse_span

Value = str | int | float
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
    "first": False,
    "per_side": False,
    "phone": "",
}
"""Arguments that a message may lack, for one that waits in the outbox may be older than its words."""
LONGEST: Mapping[str, int] = {"name": 64, "clinician": 64, "words": 500, "note": 300}
LONGEST_TYPED = 200
"""Characters of anything else that people type."""
NOON, DAY = 720, 1440  # minutes


def arguments(args: Mapping[str, Any], words: Catalogue) -> dict[str, Value]:
    """Every argument in words, with those derived from them."""
    given = {**MAY_BE_ABSENT, **args}
    said = {name: _word(name, value, words, given) for name, value in given.items()}
    if not is_nothing(given.get("movement")):
        said["movement_one"] = words.say(f"name-movement-{given['movement']}", {}, "one")
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


# --- times ---------------------------------------------------------------------------------------


def _clock(minute: int, words: Catalogue) -> str:
    """A minute of the day, 0 to 1440, on the 12-hour clock."""
    if minute % DAY == 0:
        return words.say("part-midnight", {})
    if minute == NOON:
        return words.say("part-noon", {})
    half = words.say("part-am" if minute < NOON else "part-pm", {})
    hour, rest = divmod(minute, 60)
    said: dict[str, Value] = {"hour": hour % 12 or 12, "minute": f"{rest:02}", "half": half}
    return words.say("part-time" if rest else "part-hour", said)


def _time(value: str, words: Catalogue, _: Mapping[str, Any]) -> str:
    """The time of `2027-03-08T14:05`; the reader knows the day."""
    at = datetime.fromisoformat(value)
    return _clock(at.hour * 60 + at.minute, words)


def _bound(value: str, words: Catalogue, given: Mapping[str, Any]) -> str:
    """The first or last of something: of bouts the time of day, of days the date."""
    return (_time if "T" in value else _day)(value, words, given)


def _week(value: str, _: Catalogue, __: Mapping[str, Any]) -> str:
    """The number of an ISO week, `2027-W03`."""
    return str(int(value.rpartition("W")[2]))


def _moment(value: str, words: Catalogue, _: Mapping[str, Any]) -> str:
    """Day and time of `2027-03-08T14:05`."""
    day = _date(date.fromisoformat(value[:10]), words)
    return words.say("part-moment", {"date": day, "time": _time(value, words, {})})


def _since(value: str, words: Catalogue, given: Mapping[str, Any]) -> str:
    """A moment, or a day where the time of it does not matter."""
    return (_moment if "T" in value else _day)(value, words, given)


def _date(day: date, words: Catalogue) -> str:
    return words.say(
        "part-date",
        {
            "weekday": _weekday(day.weekday(), words, {}),
            "number": day.day,
            "month": words.say(f"name-month-{day.month}", {}),
        },
    )


def _day(value: str, words: Catalogue, _: Mapping[str, Any]) -> str:
    return _date(date.fromisoformat(value), words)


def _dates(value: Sequence[str], words: Catalogue, given: Mapping[str, Any]) -> str:
    return ", ".join(_day(each, words, given) for each in value)


def _dated(value: str, words: Catalogue, _: Mapping[str, Any]) -> str:
    """A day with its year: a plan may begin or end in another one."""
    day = date.fromisoformat(value)
    return words.say("part-date-year", {"date": _date(day, words), "year": str(day.year)})


def _edge(value: str | int, words: Catalogue, given: Mapping[str, Any]) -> str:
    """The start or end of a plan (a date) or of its hours (a minute of the day)."""
    return _clock(value, words) if isinstance(value, int) else _dated(value, words, given)


def _span(value: Sequence[int], words: Catalogue, _: Mapping[str, Any]) -> str:
    start, end = (_clock(minute, words) for minute in value)
    return words.say("part-span", {"start": start, "end": end})


def _typed_span(value: str, words: Catalogue, given: Mapping[str, Any]) -> str:
    """`08:00-20:00`."""
    span = parse_span(value)
    return _span([span.start, span.end], words, given)


def _spans(value: Sequence[Sequence[int]], words: Catalogue, given: Mapping[str, Any]) -> str:
    return ", ".join(_span(each, words, given) for each in value)


def _weekday(value: int, words: Catalogue, _: Mapping[str, Any]) -> str:
    return words.say(f"name-weekday-{value}", {})


def _weekdays(value: Sequence[int] | int, words: Catalogue, given: Mapping[str, Any]) -> Value:
    """Weekdays by name; of a number of days, the number."""
    if isinstance(value, int):
        return value
    return ", ".join(_weekday(day, words, given) for day in value)


# --- catalogue keys ------------------------------------------------------------------------------


def _key(family: str, value: object) -> str:
    return f"name-{family}-{str(value).replace('_', '-')}"


def _named(family: str) -> Format:
    def name(value: Any, words: Catalogue, _: Mapping[str, Any]) -> str:
        return words.say(_key(family, value), {})

    return name


def _names(family: str) -> Format:
    def names(value: Sequence[Any], words: Catalogue, _: Mapping[str, Any]) -> str:
        return ", ".join(words.say(_key(family, each), {}) for each in value)

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
        "weekdays": _weekday,
        "window": _typed_span,
        "start": _dated,
        "review": _dated,
        "end": _dated,
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


def _joined(value: Sequence[str], _: Catalogue, __: Mapping[str, Any]) -> str:
    return ", ".join(one_line(each.replace("_", " "), LONGEST_TYPED) for each in value)


def _plain(value: object, _: Catalogue, __: Mapping[str, Any]) -> str:
    """A number that is a name: never written with separators."""
    return str(value)


FORMATS: Mapping[str, Format] = {
    "at": _time, "next": _time, "first": _bound, "last": _bound,
    "since": _since, "made_at": _moment,
    "week": _week, "day": _day, "until": _day, "review": _dated, "start": _edge, "end": _edge,
    "reason": _named("reason"), "reasons": _reasons, "digest_rows": _rows("part-row-digest"),
    "flag_rows": _rows("part-row-flag"),
    "clients": _rows("part-row-client"), "covers": _rows("part-row-cover"),
    "companions": _companions, "beside": _listed("part-beside"), "scores": _listed("part-score"),
    "companion": lambda value, words, _: companion_name(value, words),
    "instead": _day, "dates": _dates,
    "window": _span, "quiet": _spans,
    "weekday": _weekday, "weekdays": _weekdays, "days": _weekdays,
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
    "away": _named("away"), "because": _named("because"),
    "flag": _plain, "version": _plain, "update": _plain,
    "zone": lambda value, _, __: one_line(value.replace("_", " "), LONGEST_TYPED),
}  # fmt: skip
"""From an argument's name to its words. What is not here: typed text as it is, a list as its length."""
