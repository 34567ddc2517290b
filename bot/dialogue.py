"""What a typed text answers to an open question. Pure: a question and a text in, a value or `Unclear` out.

Every question that has buttons can be answered in words: by the label, by its number in the list, or by
what people say instead.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import time
from typing import Any
from zoneinfo import ZoneInfo

from bot import answers
from bot.answers import Unclear
from bot.choices import (
    denies_pain,
    either,
    label,
    named_in,
    pick,
    said_instead,
    unnumbered,
    words_of,
)
from bot.understand import HEARS, understand
from bot.words import LANGUAGES
from scheduler.domain import pain as p
from scheduler.domain import readiness
from scheduler.domain.breaks import LENGTHS, REASONS
from scheduler.domain.hours import Span
from scheduler.domain.messages import Message
from scheduler.domain.messages import text as catalogue
from scheduler.ports import Question

CHOICES: Mapping[str, str] = {code: name for code, name in LANGUAGES.items() if code in HEARS}
"""The languages that people can choose, each by its own name: those that we both speak and understand."""
SCORES: tuple[str, ...] = tuple(str(n) for n in range(11))
PAIN_VALUES: Mapping[str, Sequence[str]] = {
    "sign": ("none", *p.SIGN_SCREEN),
    "place": p.PLACES,
    "score": SCORES,
    "when": ("during", "after", "next-morning", "other"),
    "new": ("1", "0"),
    "sharper": ("1", "0"),
}
"""Every value a pain button can carry, by step."""
FALL_VALUES: Mapping[str, Sequence[str]] = {
    "sign": ("none", *p.FALL_SIGNS),
    "injured": ("1", "0"),
    "new_pain": ("1", "0"),
    "when": ("today", "yesterday", "earlier"),
    "doing": p.FALL_DOING,
}
LABELS: Mapping[str, str] = {
    "pain:sign": "sign",
    "pain:place": "place",
    "pain:when": "when",
    "fall:sign": "sign",
    "fall:when": "fall",
    "fall:doing": "doing",
}
"""The catalogue's prefix of a step's button labels."""
TIMES: Mapping[str, str] = {
    "keep": "button-keep",
    "zone": "button-change-zone",
    "window": "button-change-hours",
    "quiet": "button-change-quiet",
    "days": "button-change-days",
}
"""What can be done on the screen of times, and the button for it."""


def typed(step: str, value: str) -> str | int | bool:
    """A pain button's value in the type of its step."""
    if step == "score":
        return int(value)
    return value == "1" if step in {"new", "sharper"} else value


def as_span(found: tuple[time, time] | Unclear) -> Span | Unclear:
    """Two wall-clock times as minutes of the day."""
    if isinstance(found, Unclear):
        return found
    start, end = found
    return Span(start.hour * 60 + start.minute, end.hour * 60 + end.minute)


def as_spans(found: tuple[tuple[time, time], ...] | Unclear) -> tuple[Span, ...] | Unclear:
    """Several pairs of wall-clock times as minutes of the day."""
    if isinstance(found, Unclear):
        return found
    return tuple(Span(a.hour * 60 + a.minute, b.hour * 60 + b.minute) for a, b in found)


def is_mistake(question: Question, text: str, language: str) -> bool:
    """Whether the words are those of "tapped by mistake", while that is still a choice (P2)."""
    if question.kind != "pain" or question.step != "sign":
        return False
    said, shown = words_of(text), words_of(label(catalogue("button-mistake"), language))
    labelled = said[-1:] == shown[-1:] and set(said) <= set(shown)
    return labelled or bool(said_instead(text, language, {"say-mistake": ""}))


def unclear(fault: Unclear) -> Message:
    """One clear sentence: what is wrong with an answer and what would work."""
    args: dict[str, Any] = {
        key: list(value) if isinstance(value, tuple) else value for key, value in fault.args.items()
    }
    return (catalogue(fault.reason, **args),)


def agrees(text: str, language: str) -> bool | None:
    """Whether the notice is agreed to: a button's words or a plain yes or no; `None` if it is neither."""
    said = either(text, language, catalogue("button-agree"), catalogue("button-not-agree"))
    return None if isinstance(said, Unclear) else said


def release_day(text: str, language: str) -> str | Unclear:
    """From when a release holds: "today" or "tomorrow", or the words of one of the two buttons."""
    shown = {
        "today": label(catalogue("button-from-today"), language),
        "tomorrow": label(catalogue("button-from-tomorrow"), language),
    }
    said = unnumbered(text, [*shown.items()])
    named = [day for day, words in shown.items() if {*words_of(text)} <= {*words_of(words)}]
    return named[0] if isinstance(said, Unclear) and len(named) == 1 else said


def read(question: Question, text: str, language: str) -> Any:  # noqa: PLR0911 # one a kind
    """The value that a text gives to a client's open question, or why it gives none (`Unclear`)."""
    step = question.step
    match question.kind:
        case "pain":
            return _pain(step, text, language)
        case "fall":
            return _fall(step, text, language)
        case "morning":
            return answers.score(text, language)
        case "fewer":
            return _count(text, language)
        case "confirm":
            said = answers.yes_no(text, language)
            return _count(text, language) if isinstance(said, Unclear) else said
        case "pass":
            return answers.yes_no(text, language)
        case _:
            return _join(step, text, language)


def break_reason(text: str, language: str) -> str | Unclear:
    """Why a break, by the words of a button."""
    return unnumbered(
        text, [(why, label(catalogue(f"button-away-{why}"), language)) for why in REASONS]
    )


def break_length(text: str, language: str) -> str | Unclear:
    """How long a break, by the words of a button."""
    return unnumbered(
        text, [(key, label(catalogue(f"button-break-{key}"), language)) for key in LENGTHS]
    )


def _count(text: str, language: str) -> int | Unclear:
    """Reps as an answer to "how many": also in words, "about" and "none" included."""
    intent = understand(text, language)
    if intent.kind == "log" and intent.reps is not None:
        return intent.reps
    return answers.number(text, 1, 500, language)


def _pain(step: str, text: str, language: str) -> Any:
    if step == "score":
        return answers.score(text, language)
    if step == "new":
        return either(text, language, catalogue("button-new"), catalogue("button-known"))
    if step == "sharper":
        return either(text, language, catalogue("button-sharper"), catalogue("button-as-usual"))
    return _labelled("pain", step, PAIN_VALUES[step], text, language)


def _fall(step: str, text: str, language: str) -> Any:
    if step == "new_pain" and denies_pain(text, language):
        return False
    if step in {"injured", "new_pain"}:  # "just a bruise" is a yes
        return understand(text, language).mentions_pain or answers.yes_no(text, language)
    return _labelled("fall", step, FALL_VALUES[step], text, language)


def _sign(text: str, options: Sequence[tuple[str, str]], language: str) -> str | Unclear:
    """A sign by its whole label or by words that tell of it: "back" is none, though a label starts so."""
    chosen = named_in(text, options)
    if not isinstance(chosen, Unclear) and chosen != "none":
        return chosen
    values = [value for value, _ in options]
    found = [sign for sign in understand(text, language).signs if sign in values]
    named = (sign for sign in found if sign != "sore" or not names_a_place(text, language))
    return next(named, chosen)


def names_a_place(text: str, language: str) -> bool:
    """Whether one of the places that the pain question lists is named, one or several ("hip", "knees")."""
    said = {word.removesuffix("s") for word in words_of(text)}
    places = [label(catalogue(f"button-place-{place}"), language) for place in p.PLACES[:-1]]
    return any(said.issuperset(words_of(place)) for place in places)


def _labelled(kind: str, step: str, values: Sequence[str], text: str, language: str) -> Any:
    no = answers.yes_no(text, language) is False or answers.says_none(text, language)
    if "none" in values and no and not text.strip(" .").isdecimal():
        return "none"
    prefix = LABELS[f"{kind}:{step}"]
    ids = {value: f"button-{prefix}-{value}" for value in values} | {"none": "button-no-sign"}
    options = [(value, label(catalogue(ids[value]), language)) for value in values]
    chosen = unnumbered(text, options) if step != "sign" else _sign(text, options, language)
    if not isinstance(chosen, Unclear):
        return chosen
    meant = said_instead(text, language, {f"say-{prefix}-{value}": value for value in values})
    if step == "place":  # of several, one where new pain stops everything (H2)
        meant = sorted(meant, key=lambda place: place not in p.BONE_PLACES)[:1]
    return meant[0] if len(meant) == 1 else chosen


def _join(step: str, text: str, language: str) -> Any:  # noqa: PLR0911 # one a step
    if step == "usual-pain":
        return answers.score(text, language)
    if step.startswith("screen-"):
        return _screen(text, language)
    if step.startswith("which-"):
        return _which(step.removeprefix("which-"), text, language)
    if step in {"times-zone", "times-sure"}:
        name = answers.zone(text) if step == "times-zone" else answers.zone_sure(text, language)
        return ZoneInfo(name) if isinstance(name, str) else name
    if step == "times-window":
        return as_span(answers.span(text, language))
    if step == "times-quiet":
        return as_spans(answers.spans(text, language))
    if step == "times-days":
        return _own_days(text, language)
    if step == "times":
        said = answers.yes_no(text, language)
        shown = [(key, label(catalogue(id_), language)) for key, id_ in TIMES.items()]
        return "keep" if said is True else pick(text, shown)
    return answers.yes_no(text, language)


def _own_days(text: str, language: str) -> tuple[int, ...] | str | Unclear:
    """Weekdays by their names, or that those on the screen are all."""
    days = answers.weekdays(text, language)
    if not isinstance(days, Unclear) and days:
        return days
    shown = pick(text, [("keep", label(catalogue("button-that-is-all"), language))])
    return Unclear("answer-own-days") if isinstance(shown, Unclear) else shown


def _screen(text: str, language: str) -> Any:
    """Yes or no, or words of one of the two buttons: "none", "not sure"."""
    said = set(words_of(text))
    agreed = answers.yes_no(text, language)
    if len(said) == 1 and not isinstance(agreed, Unclear):  # "no", also of "no, or not sure"
        return "yes" if agreed else "none"
    for value, id_ in (("yes", "button-yes-or-unsure"), ("none", "button-none-of-these")):
        if said and said.issubset(words_of(label(catalogue(id_), language))):
            return value
    return agreed if isinstance(agreed, Unclear) else ("yes" if agreed else "none")


def _which(screen: str, text: str, language: str) -> Any:
    options = [("done", label(catalogue("button-that-is-all"), language))]
    options += [
        (key, label(catalogue(f"button-ready-{key}", chosen=False), language))
        for key in readiness.SCREENS[screen]
    ]
    return pick(text, options)
