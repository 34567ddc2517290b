"""The list of ids with their arguments: an interface for whoever reads the pseudo-locale.

Written to `bot/text/ids.md` by `python -m bot.words`; a test keeps it current.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from fluent.syntax import ast
from fluent.syntax.visitor import Visitor

from bot.words import DETAILS
from bot.words.catalogue import Catalogue, catalogue
from bot.words.formats import SHORTENED

HEAD = """# Texts and their arguments

Made by `python -m bot.words > bot/text/ids.md`; a test keeps it current. In the language `qps` a text is
`⟦id|{json of the arguments}⟧`, keys sorted; several texts follow one another. Ids and arguments stay
stable; arguments are only added. Times are ISO wall-clock times in the zone of the client that the text is
about, days ISO dates, `window` and `quiet` minutes of the day, weekdays numbers from Monday = 0. A `flag`
carries those of its arguments that are known.

| id | arguments | read by |
|---|---|---|"""
PIECES = frozenset({"part", "name"})
"""Groups of texts that only ever stand inside others."""
DERIVED = {
    "movement_one": "movement",
    "does": "setting",
    "unit": "setting",
    **dict.fromkeys(("steps", "hold", "avoid"), "exercise"),
    **{f"{name}_short": name for name in SHORTENED},
}
"""What a text says that is worked out from an argument, and which."""
UNSPOKEN: Mapping[str, str] = {
    "answer_hours": "stop-crisis stop-emergency stop-leak stop-urgent-care",
    "at": "client-ready",
    "bout": "ask-reps later-no-more later-too-late no-answer nudge prompt",
    "chosen": "ask-which",
    "choices": "choose-days",
    "client": (
        "ask-ceiling ask-client-break-length ask-client-break-reason ask-release ask-release-day "
        "ask-verdict ask-words judged-days verdict-kept ask-client-step client-step-noted step-page "
        "clearance-waits cleared client-break-over client-held client-no-break client-on-break "
        "client-page client-ready flag flag-closed from-client plan-card plan-save plan-saved "
        "released released-not-cleared words-sent write-blocked write-not-there"
    ),
    "clinician": "consent-declined help-client mistake-noted pain-caution pain-noted",
    "clinicians": "ask-invite-clinician",
    "colleague": "ask-cover-until",
    "crisis_line": "stop-contact stop-emergency stop-leak stop-today stop-urgent-care",
    "day": "ask-companion",
    "emergency_number": (
        "ask-fall-doing ask-fall-injured ask-fall-new-pain ask-fall-when ask-pain-new "
        "ask-pain-place ask-pain-score ask-pain-sharper ask-pain-when ready-waiting stop-leak"
    ),
    "first": (
        "ask-fall-doing ask-fall-injured ask-fall-new-pain ask-fall-when ask-pain-new "
        "ask-pain-place ask-pain-score ask-pain-sharper ask-pain-when"
    ),
    "flexible": "ask-times",
    "half": "ask-release",
    "held": "flag",
    "movement": (
        "already-logged ask-release-day ask-reps ask-reps-sure client-page edit-kept "
        "more-than-planned nothing-open released released-not-cleared today today-rest"
    ),
    "movements": (
        "ask-plan-bout-max ask-plan-bout-reps ask-plan-companions ask-plan-daily-total ask-plan-days-max "
        "ask-plan-days-min ask-plan-end ask-plan-gap-minutes ask-plan-note ask-plan-quiet "
        "ask-plan-rest-days ask-plan-review ask-plan-start ask-plan-weekdays ask-plan-window"
    ),
    "languages": "ask-language",
    "number": "digest",
    "open_flags": "client-page",
    "options": "answer-choice",
    "people": "people",
    "pause": "break-ahead break-planned",
    "paused": "client-page",
    "person": "ask-cover-until ask-discharge ask-erase cover cover-kept person",
    "phone": "flag mistake-noted stop-crisis stop-emergency",
    "practice": "consent-declined ready-waiting",
    "reps": "already-logged ask-reps-range edit-kept nothing-open today",
    "exercises": "cards",
    "role": "cards own-card own-card-kept",
    "roles": "ask-role role-not-yours",
    "screen": "ask-which",
    "best": "step-noted",
    "record": "data-csv data-fhir data-json",
    "records": "data",
    "test": "client-step-noted step-noted",
    "total": "day-opening no-answer nudge put-off today-next today-open",
    "writer": "from-clinician",
    "updates": "aside",
    "values": "fault-no-common-hours fault-too-many-reps",
}
"""Arguments that a message carries and English does not say: for buttons, and for other readers."""


@dataclass(frozen=True, slots=True)
class Entry:
    """A text of the catalogue: its id, the group it stands in, what it mentions."""

    id: str
    group: str
    arguments: frozenset[str]
    references: frozenset[str]


class _Mentions(Visitor):
    """Collects the variables and the texts that a pattern mentions."""

    def __init__(self) -> None:
        self.variables: set[str] = set()
        self.messages: set[str] = set()

    def visit_VariableReference(self, node: ast.VariableReference) -> None:  # noqa: N802
        self.variables.add(node.id.name)

    def visit_MessageReference(self, node: ast.MessageReference) -> None:  # noqa: N802
        self.messages.add(node.id.name)


def entries(words: Catalogue) -> tuple[Entry, ...]:
    """Every text with its own mentions, in the order of the file."""
    return tuple(_entries(words))


def _entries(words: Catalogue) -> Iterator[Entry]:
    group = ""
    for each in words.resource.body:
        if isinstance(each, ast.GroupComment):
            group = str(each.content).partition(":")[0]
        elif isinstance(each, ast.Message):
            found = _Mentions()
            found.visit(each)
            yield Entry(each.id.name, group, frozenset(found.variables), frozenset(found.messages))


def documented(words: Catalogue) -> dict[str, tuple[str, frozenset[str]]]:
    """Every id that a message or a button can have: who reads it, and all its arguments."""
    by_id = {entry.id: entry for entry in entries(words)}
    return {
        entry.id: (entry.group, spoken(entry.id, by_id) | _unspoken(entry.id))
        for entry in by_id.values()
        if entry.group not in PIECES
    }


def spoken(id_: str, by_id: Mapping[str, Entry]) -> frozenset[str]:
    """The arguments that a text mentions, itself or through the pieces that it is made of."""
    entry = by_id[id_]
    own = frozenset(DERIVED.get(name, name) for name in entry.arguments)
    return own.union(*(spoken(each, by_id) for each in entry.references))


def _unspoken(id_: str) -> frozenset[str]:
    details = {*DETAILS, "day", "total"} if id_ == "flag" else set()
    return frozenset(details | {name for name, ids in UNSPOKEN.items() if id_ in ids.split()})


def table() -> str:
    """The list as a page of Markdown, by id."""
    rows = [
        f"| `{id_}` | {', '.join(sorted(names))} | {reader} |"
        for id_, (reader, names) in sorted(documented(catalogue("en")).items())
    ]
    return "\n".join([HEAD, *rows, ""])
