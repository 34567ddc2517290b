"""What was said: pain, signs, falls and the week's question; what followed from it; every message."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from bot.reports.fhir.bundle import (
    LOINC,
    SCORE,
    TERMS,
    Bundle,
    Resource,
    concept,
    note,
    period,
    quantity,
)
from bot.reports.fhir.people import CLINICIAN, PRACTICE

SURVEY = [concept(f"{TERMS}observation-category", "survey", "Survey")]
PAIN = concept(LOINC, "72514-3", "Pain severity - 0-10 verbal numeric rating [Score] - Reported")
RECORD = {
    "system": "http://dicom.nema.org/resources/ontology/DCM",
    "code": "110110",
    "display": "Patient Record",
}
CODED: Mapping[str, str] = {
    "sign": "sign", "place": "place", "when": "when", "doing": "doing", "unanswered": "step",
}  # fmt: skip
"""Answers that are keys of the catalogue, with the family of their words."""
YES_OR_NO = ("new", "sharper", "injured", "new_pain")


def write(to: Bundle) -> None:
    """Reports, holds, flags and breaks; the messages of both; who did what about her."""
    for row in to.record["reports"]:
        _report(to, row)
    for row in to.record["holds"]:
        movement = f"hold of {row['movement']}" if row["movement"] else "hold of all exercise"
        _flag(to, f"hold-{row['id']}", to.local(f"hold-{row['reason']}", display=movement),
              row["opened_at"], row["released_at"])  # fmt: skip
    for row in to.record["flags"]:
        kind = to.local(row["kind"], "kind")
        outcome = to.named("outcome", row["outcome"]) if row["outcome"] else ""
        words = (row["details"].get("words"), outcome, row.get("note"))
        kind["text"] = ". ".join(str(each) for each in (kind["text"], *words) if each)
        _flag(to, f"flag-{row['id']}", kind, row["opened_at"], row["closed_at"])
    for row in to.record["breaks"]:
        _flag(to, f"break-{row['id']}", to.local(row["reason"], "away"), row["first"], row["last"],
              over=row["ended_at"])  # fmt: skip
    _messages(to)
    for row in to.record["audit"]:
        _audit(to, row)


def _report(to: Bundle, row: Resource) -> None:
    """One report. The score is the value; a sign, a place and the rest are components."""
    body = row["body"] if isinstance(row["body"], dict) else {}
    score: int | None = body.get("score")
    kind = row["kind"]
    to.add(
        "Observation", f"report-{row['id']}", status="final", category=SURVEY,
        code=to.local(f"report-{kind}", display=f"report: {kind}") if score is None else PAIN,
        subject=to.client, performer=[to.client], effectiveDateTime=to.when(row["day"], row["at"]),
        issued=row["at"], valueQuantity=None if score is None else quantity(score, SCORE),
        component=[*_answers(to, body)], note=note(str(body.get("words") or "")),
    )  # fmt: skip


def _answers(to: Bundle, body: Mapping[str, Any]) -> Iterator[Resource]:
    for name, family in CODED.items():
        if body.get(name):
            yield {"code": _asked(to, name), "valueCodeableConcept": to.local(body[name], family)}
    for name in YES_OR_NO:
        if isinstance(body.get(name), bool):
            yield {"code": _asked(to, name), "valueBoolean": body[name]}
    if body.get("outcome"):
        yield {"code": _asked(to, "outcome"), "valueString": body["outcome"]}
    if "said" in body:
        said = ", ".join(body["said"]) or "none"
        yield {"code": _asked(to, "this week"), "valueString": said}


def _asked(to: Bundle, name: str) -> Resource:
    key = name.replace("_", "-").replace(" ", "-")
    return to.local(f"answer-{key}", display=name.replace("_", " "))


def _flag(
    to: Bundle, key: str, code: Resource, start: str, end: str | None, over: str | None = None
) -> None:
    """Something about her that held from then until then."""
    past = bool(over) or (end is not None and to.is_past(end))
    to.add(
        "Flag", key, status="inactive" if past else "active", code=code, subject=to.client,
        period=period(start, end and max(start, end)),  # a break ended on its first day has none
    )  # fmt: skip


def _messages(to: Bundle) -> None:
    practice = to.to("Organization", PRACTICE)
    for row in to.record["messages"]:
        _said(to, f"to-{row['id']}", row["at"], row["text"], practice, to.client)
    for row in to.record["wrote"]:
        said = row["text"] or (
            f"button {row['button']}" if row["button"] else "a message of no words"
        )
        _said(to, f"from-{row['id']}", row["at"], said, to.client, practice)
    to_her = to.to("Practitioner", CLINICIAN) if to.record["person"]["clinician"] else practice
    for row in to.record["to_clinician"]:
        _said(to, f"clinician-{row['id']}", row["at"], row["words"], to.client, to_her)


def _said(
    to: Bundle, key: str, at: str | None, words: str, sender: Resource, recipient: Resource
) -> None:
    to.add(
        "Communication", key, status="completed", subject=to.client, sent=at, sender=sender,
        recipient=[recipient], payload=[{"contentString": words}] if words else [],
    )  # fmt: skip


def _audit(to: Bundle, row: Resource) -> None:
    """Who did what about her: the role alone, as others' names are not hers to take."""
    who = {"text": row["by"] or "Boutwise"}
    to.add(
        "AuditEvent", row["id"], type=RECORD, recorded=row["at"],
        subtype=to.local(row["action"], display=row["action"].replace("-", " "))["coding"],
        agent=[{"type": who, "requestor": row["by"] is not None}],
        source={"observer": to.to("Organization", PRACTICE)}, entity=[{"what": to.client}],
    )  # fmt: skip
