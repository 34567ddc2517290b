"""A value for every argument that a text can have. People, places and numbers are invented."""

from functools import cache
from typing import Any

from bot.words.catalogue import catalogue
from bot.words.ids import documented

SAMPLE: dict[str, Any] = {
    "best": 14.8,
    "erased": True,
    "record": {"made_at": "2027-03-08T08:00:00Z", "messages": []},
    "records": True,
    "reports": 4,
    "trend": "slower",
    "best_before": 13.5,
    "change": 1.3,
    "due": "2027-04-19",
    "home": True,
    "positive": True,
    "screened": "positive",
    "slower": False,
    "step": {"day": "2027-03-08", "best": 14.8, "positive": False, "slower": False},
    "stepped": "2027-01-25",
    "results": [{"day": "2027-03-08", "best": 14.8, "positive": False, "slower": False}],
    "test": 4,
    "tests": [{"day": "2027-03-08", "trials": [14.8, None], "best": 14.8, "home": True}],
    "trials": [14.8, 16.2],
    "void": True,
    "clients_count": 2,
    "colleague": 3,
    "colleagues": [{"id": 3, "name": "Eve"}],
    "covers": [{"id": 5, "name": "Eve", "until": "2027-03-22"}],
    "open_flags": [12],
    "scores": [{"day": "2027-03-08", "score": 4}],
    "searched": False,
    "whose": "Dana",
    "writer": 2,
    "yours": True,
    "flag_rows": [
        {"flag": 3, "name": "Bo", "reason": "silent", "since": "2027-03-09", "dates": []}
    ],
    "lost": 1,
    "more": 2,
    "companions": [{"name": "Prone upper-back raise", "done": 2, "days": 3}],
    "spread": 71,
    "reps_capped": 80,
    "reasons": [{"kind": "hold", "since": "2027-03-09", "pain": 7}],
    "reason": "hold",
    "prescribed": 120,
    "pain": 4,
    "pages": 2,
    "page": 1,
    "digest_rows": [
        {
            "name": "Ann",
            "days": 2,
            "needed": 3,
            "reps_capped": 80,
            "prescribed": 120,
            "reps_over": 12,
            "bouts": 8,
            "bouts_planned": 12,
            "spread": 71,
            "pain": 4,
            "excused": 1,
            "open": 2,
            "companions": [],
            "reasons": [{"kind": "hold"}],
        }
    ],
    "answer_hours": "Mon to Fri, 9 to 5",
    "asked": 10,
    "asks": True,
    "at": "2027-03-08T08:00",
    "away": "travel",
    "amount": 10,
    "beside": [
        {"companion": "hover-hold", "measure": "hold", "amount": 2, "rounds": 3, "weekdays": [0, 3]}
    ],
    "rounds": 3,
    "measure": "reps",
    "because": "break",
    "begins": "2027-03-12",
    "pause": 7,
    "paused": False,
    "too_long": True,
    "bout": 12,
    "bout_max": 12,
    "bout_reps": 10,
    "bouts": 4,
    "bouts_planned": 12,
    "ceiling": "moderate",
    "cell": "counted",
    "choices": ["2027-03-08", "2027-03-09"],
    "chosen": ["height"],
    "dates": ["2027-03-08", "2027-03-11"],
    "instead": "2027-03-11",
    "exact": False,
    "least": 2,
    "most": 3,
    "cleared": True,
    "closed": [{"day": "2027-03-08", "cell": "missed"}],
    "client": 7,
    "clients": [
        {
            "id": 7,
            "name": "Ann",
            "state": "ready",
            "flags": 1,
            "reasons": [{"kind": "hold", "since": "2027-03-09", "pain": 7}],
            "whose": "Dana",
        }
    ],
    "clinician": "Dana",
    "clinicians": [{"id": 2, "name": "Dana"}],
    "companion": "Prone upper-back raise",
    "count": 3,
    "crisis_line": "555 0199",
    "daily_total": 40,
    "day": "2027-03-08",
    "days": [0, 3],
    "days_max": 3,
    "days_min": 2,
    "doing": "stairs",
    "done": 20,
    "emergency_number": "911",
    "end": "2027-09-30",
    "estimate": True,
    "exercise": "gentle-heel-drop",
    "exercises": ["stomp", "back-raise"],
    "given": True,
    "others": ["back-raise"],
    "field": "daily_total",
    "file": "photo",
    "first": True,
    "flag": 12,
    "flags": 2,
    "flexible": True,
    "force": 1.5,
    "gap": 90,
    "gap_minutes": 120,
    "half": 20,
    "held": True,
    "high": 10,
    "injured": False,
    "joined": False,
    "kind": "pain",
    "language": "es",
    "languages": ["en", "es"],
    "largest": 500,
    "last": "2027-03-08T17:00",
    "level": "high",
    "link": "https://t.me/example_bot?start=abc",
    "longest": 60,
    "low": 1,
    "made_at": "2027-03-15T08:00",
    "mark": "hold",
    "most_force": 4.0,
    "movement": "gentle-heel-drop",
    "movements": ["marching", "stomp"],
    "name": "Ann",
    "need": 2,
    "needed": 3,
    "new": True,
    "new_pain": False,
    "next": "2027-03-08T14:05",
    "note": "Slow and soft.",
    "number": 8,
    "open": 2,
    "options": ["Keep these times"],
    "outcome": "called",
    "people": [{"id": 7, "name": "Ann", "role": "client", "state": "ready"}],
    "per_side": False,
    "person": 7,
    "phone": "555 0100",
    "place": "thigh",
    "plan": 3,
    "practice": "Harbor House",
    "quiet": [[720, 780]],
    "readiness": ["height", "steroids"],
    "reps": 10,
    "rest_days": 1,
    "review": "2027-05-03",
    "role": "client",
    "roles": ["admin", "clinician"],
    "rows": [
        {"bouts": 1, "most": 40, "gap_minutes": 0, "index": 3.7, "against_one_go": 1.0},
        {"bouts": 4, "most": 10, "gap_minutes": 240, "index": 5.9, "against_one_go": 1.59},
    ],
    "score": 7,
    "screen": "bones",
    "setting": "late_minutes",
    "settings": [{"name": "phone", "value": "555 0100"}, {"name": "late_minutes", "value": 20}],
    "sharper": True,
    "sign": "sudden-back",
    "since": "2027-03-08T14:05",
    "start": "2027-03-08",
    "state": "ready",
    "stopped": False,
    "suggestions": ["Europe/Berlin"],
    "today": True,
    "total": 40,
    "unanswered": "new_pain",
    "until": "2027-03-16",
    "update": 345,
    "urgent": True,
    "usual_pain": 2,
    "value": "20",
    "updates": [{"update": 345, "name": "Ann", "since": "2027-03-08T14:05"}],
    "values": [40],
    "waiting": 3,
    "version": 3,
    "week": "2027-W10",
    "weekday": 3,
    "weekdays": [0, 3],
    "when": "during",
    "why": "hold",
    "window": [480, 1200],
    "words": "It hurts when I land.",
    "wrote_since": True,
    "zone": "America/New_York",
}
TYPED: dict[str, dict[str, Any]] = {
    "en": {"language": "en"},
    "es": {
        "answer_hours": "de lunes a viernes, de 9 a 17",
        "companion": "back-raise",
        "emergency_number": "112",
        "note": "Despacio y suave.",
        "practice": "Casa del Puerto",
        "words": "Me duele al caer.",
    },
}
"""What people of a language type, in the place of the samples."""
BARE: dict[str, Any] = {
    "best": None, "trend": None,
    "best_before": None, "change": None, "due": None, "home": False, "positive": False,
    "erased": False, "slower": True, "step": None, "tests": [], "void": False,
    "colleagues": [], "covers": [], "open_flags": [], "scores": [], "searched": True, "yours": False,
    "too_long": False, "more": 0, "lost": 0, "flag_rows": [], "beside": [], "until": None,
    "spread": None, "pain": None, "since": None, "reasons": [], "companions": [], "excused": 0, "open": 0,
    "reps_over": 0, "pages": 1, "need": 0, "digest_rows": [], "dates": [],
    "answer_hours": "", "asked": None, "bout": None, "bouts": 1, "ceiling": None, "cleared": False,
    "asks": False,
    "clients": [], "clinicians": [], "count": 0, "day": None, "days": [], "done": 0, "end": None,
    "emergency_number": "", "estimate": False, "first": False, "flexible": False, "gap": None,
    "held": False, "joined": True, "low": None, "high": None, "most_force": None, "movement": "",
    "movements": [], "next": None, "note": "", "people": [], "per_side": True, "phone": "", "plan": None,
    "quiet": [], "readiness": [], "review": None, "stopped": True, "suggestions": [], "today": False,
    "total": 0, "urgent": False, "usual_pain": None, "values": [], "weekdays": [], "clinician": "",
    "practice": "", "crisis_line": "", "updates": [], "waiting": 1, "wrote_since": False,
}  # fmt: skip
"""The other extreme: whatever can be empty, unknown, one or no is."""
OF_ITS_OWN: dict[str, dict[str, Any]] = {
    "ask-leave": {"days": 7},
    "left": {"days": 7},
    "data": {"bouts": 31, "tests": 2},
    "digest": {"first": "2027-03-08", "last": "2027-03-14"},
    "part-companion": {"days": 3},
    "part-row-digest": {"days": 2},
    "digest-": {"first": "2027-03-08", "last": "2027-03-14"},
    "picture-made": {"open": 2},
    "picture-title": {"first": "2027-03-08", "last": "2027-03-14"},
    "report-flag-row": {"outcome": "called"},
    "own-companion": {"days": 3},
    "cards": {"role": "clinician"},
    "own-card": {"role": "admin"},
    "own-days": {"days": 2},
    "week-picture": {"first": "2027-03-08", "last": "2027-03-14", "days": 2},
    "own-title": {"first": "2027-03-08", "last": "2027-03-14"},
    "button-ready": {"chosen": True},
    "day-opening": {"first": "2027-03-08T09:00"},
    "fault-no-common-hours": {
        "start": 480,
        "end": 1200,
        "field": "window",
        "values": ["09:00-12:30"],
    },
    "invitation": {"days": 7},
    "plan-first-day": {"bouts": [{"at": "2027-03-08T08:00", "reps": 10}]},
    "setting-": {"value": "20"},
}
"""Arguments that mean something else in some texts, by the start of the id."""
CAN_BE_EMPTY = {
    "movement": (
        "logged",
        "skipped",
        "undone",
        "put-off",
        "already-logged",
        "nothing-open",
        "edit-kept",
    ),
    "day": ("logged", "skipped", "undone"),
    "next": (
        "logged",
        "skipped",
        "undone",
        "put-off",
        "already-logged",
        "nothing-open",
        "edit-kept",
        "away",
        "no-answer",
        "later-too-late",
        "pain-noted",
        "pain-caution",
        "fall-noted",
        "mistake-noted",
    ),
    "end": ("plan-card",),
    "low": ("ask-setting",),
    "high": ("ask-setting",),
    "bout": ("fault-too-many-reps",),
}
"""Arguments that are empty in these texts only."""


@cache
def _documented() -> dict[str, tuple[str, frozenset[str]]]:
    return documented(catalogue("en"))


def sample(id_: str) -> dict[str, Any]:
    """The full arguments of a text."""
    names = _documented()[id_][1]
    return {name: own_of(id_).get(name, SAMPLE[name]) for name in sorted(names)}


def typed(args: dict[str, Any], language: str) -> dict[str, Any]:
    """The arguments of a text as they are where this language is spoken."""
    return {name: args[name] and TYPED[language].get(name, args[name]) for name in args}


def own_of(id_: str) -> dict[str, Any]:
    """What `OF_ITS_OWN` says about a text."""
    return {
        k: v for start, args in OF_ITS_OWN.items() if id_.startswith(start) for k, v in args.items()
    }


def bare(id_: str) -> dict[str, Any]:
    """The same with everything empty that can be."""
    args = sample(id_)
    for name in args.keys() & BARE.keys():
        if name in own_of(id_) or id_ not in CAN_BE_EMPTY.get(name, (id_,)):
            continue
        args[name] = BARE[name]
    return args
