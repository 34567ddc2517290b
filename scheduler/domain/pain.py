"""Something hurts: warning signs, the questions about pain and falls, and what follows (H1-H5).

Nothing here diagnoses or reassures: the outcome is to go on as prescribed, to go on with care, or to stop
and ask. Thresholds are settings of the practice; the numbers are the defaults of the pain-monitoring idea
(Silbernagel 2007, Am J Sports Med 35:897-906; zone edges from memory).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import IntEnum, StrEnum


class Urgency(IntEnum):
    """What a sign asks of the client, most pressing last."""

    LOG = 0
    MOVEMENT = 1
    CONTACT = 2
    CONTACT_TODAY = 3
    URGENT_CARE = 4
    EMERGENCY = 5
    CRISIS = 6


SIGNS: Mapping[str, Urgency] = {
    "chest": Urgency.EMERGENCY,
    "faint": Urgency.EMERGENCY,
    "breath": Urgency.EMERGENCY,
    "one-side-weak": Urgency.EMERGENCY,
    "face-speech": Urgency.EMERGENCY,
    "head-knock": Urgency.EMERGENCY,
    "no-weight": Urgency.EMERGENCY,
    "cannot-get-up": Urgency.EMERGENCY,
    "emergency": Urgency.EMERGENCY,
    "back-weak-legs": Urgency.EMERGENCY,
    "self-harm": Urgency.CRISIS,
    "calf": Urgency.URGENT_CARE,
    "eye": Urgency.URGENT_CARE,
    "sudden-back": Urgency.CONTACT_TODAY,
    "dizzy": Urgency.CONTACT_TODAY,
    "groin-thigh": Urgency.CONTACT,
    "foot-shin-spot": Urgency.CONTACT,
    "leak": Urgency.MOVEMENT,
    "sore": Urgency.LOG,
}
"""Warning signs and what they ask (general first-aid and clinical teaching; memory)."""

SIGN_SCREEN: tuple[str, ...] = (
    "chest",
    "breath",
    "faint",
    "one-side-weak",
    "face-speech",
    "head-knock",
    "no-weight",
    "back-weak-legs",
    "sudden-back",
    "groin-thigh",
    "foot-shin-spot",
    "calf",
    "dizzy",
    "eye",
    "leak",
    "sore",
)
"""The one screen of warning signs, in the order shown; other emergencies and self-harm are only typed."""

PLACES: tuple[str, ...] = (
    "back",
    "hip",
    "groin",
    "thigh",
    "knee",
    "shin",
    "foot",
    "elsewhere",
)
BONE_PLACES = frozenset({"back", "hip", "groin", "thigh", "shin", "foot"})
"""New pain here holds at any score (H2)."""


class Outcome(StrEnum):
    CARRY_ON = "carry-on"
    CAUTION = "caution"
    HOLD = "hold"
    MOVEMENT_HOLD = "movement-hold"


@dataclass(frozen=True, slots=True)
class Thresholds:
    """Edges on the 0-10 numeric rating scale, whole numbers. All are practice settings."""

    carry_on_up_to: int = 2
    hold_from: int = 6
    morning_rise: int = 2
    morning_if_unknown: int = 3


@dataclass(frozen=True, slots=True)
class Answers:
    """What has been answered so far; `None` is not asked yet."""

    sign: str | None = None
    place: str | None = None
    score: int | None = None
    when: str | None = None
    new: bool | None = None
    sharper: bool | None = None


STEPS: tuple[str, ...] = ("sign", "place", "score", "when", "new", "sharper")
"""The questions in their order; every one is one tap and can be typed."""


def decide(answers: Answers, limits: Thresholds) -> Outcome | None:
    """What follows, as soon as it is certain; `None` while a question that matters is open.

    A hold is never waited for: the first answer that means one ends the questions.
    """
    early = _certain_hold(answers, limits)
    if early is not None:
        return early
    if answers.sign == "sore":
        mild = answers.score is None or answers.score <= limits.carry_on_up_to
        return Outcome.CARRY_ON if mild else Outcome.CAUTION
    if next_step(answers) is not None:
        return None
    if answers.score is not None and answers.score <= limits.carry_on_up_to:
        return Outcome.CARRY_ON
    return Outcome.CAUTION


def _certain_hold(answers: Answers, limits: Thresholds) -> Outcome | None:
    urgency = SIGNS.get(answers.sign or "", Urgency.LOG)
    if urgency is Urgency.MOVEMENT:
        return Outcome.MOVEMENT_HOLD
    if urgency > Urgency.MOVEMENT:
        return Outcome.HOLD
    if answers.score is not None and answers.score >= limits.hold_from:
        return Outcome.HOLD
    if answers.sharper or (answers.new and answers.place in BONE_PLACES):
        return Outcome.HOLD
    return None


def next_step(answers: Answers) -> str | None:
    """The next question to ask, `None` when all are answered."""
    return next((step for step in STEPS if getattr(answers, step) is None), None)


def morning(score: int, usual: int | None, limits: Thresholds) -> Outcome:
    """The morning after a caution: hold at usual + 2 or more; with no usual known at 3 or more (H2)."""
    edge = limits.morning_if_unknown if usual is None else usual + limits.morning_rise
    return Outcome.HOLD if score >= edge else Outcome.CARRY_ON


@dataclass(frozen=True, slots=True)
class Fall:
    """What has been answered about a fall; `None` is not asked yet."""

    sign: str | None = None
    injured: bool | None = None
    new_pain: bool | None = None
    when: str | None = None
    doing: str | None = None


FALL_STEPS: tuple[str, ...] = ("sign", "injured", "new_pain", "when", "doing")
FALL_SIGNS: tuple[str, ...] = ("head-knock", "no-weight", "cannot-get-up")
FALL_DOING: tuple[str, ...] = ("exercise", "walking", "stairs", "getting-up", "other")


def decide_fall(fall: Fall) -> Outcome | None:
    """What follows a fall: injury, new pain or a sign is a hold at once; else carry on when all is told."""
    if fall.sign not in {None, "none"} or fall.injured or fall.new_pain:
        return Outcome.HOLD
    return None if next_fall_step(fall) is not None else Outcome.CARRY_ON


def next_fall_step(fall: Fall) -> str | None:
    """The next question about the fall, `None` when all are answered."""
    return next((step for step in FALL_STEPS if getattr(fall, step) is None), None)
