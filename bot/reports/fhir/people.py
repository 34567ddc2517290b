"""Who the record is about, who keeps it, and what she agreed to and answered before impact."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from bot.reports.fhir.bundle import LOINC, TERMS, Bundle, Resource, concept, note, period, said_of
from scheduler.domain.movement import Level
from scheduler.domain.readiness import SCREENS

PRACTICE, CLINICIAN = "practice", "clinician"
GONE = frozenset({"left", "discharged"})


def write(to: Bundle) -> None:
    """The client, the practice and the clinician; consent, readiness and clearance."""
    record, hers = to.record, to.record["person"]
    practice = to.add(
        "Organization", PRACTICE, name=said_of(record["practice"]["name"]) or PRACTICE,
        telecom=_phone(record["practice"]["phone"]),
    )  # fmt: skip
    clinician = hers["clinician"]
    named = clinician and to.add("Practitioner", CLINICIAN, name=[{"text": clinician}])
    number = {"system": to.practice_system, "value": str(hers["id"])}
    language = concept("urn:ietf:bcp:47", hers["language"], hers["language"])
    to.client = to.to("Patient", hers["id"])
    to.add(
        "Patient", hers["id"], identifier=[number], active=hers["state"] not in GONE,
        name=[{"text": hers["name"]}], telecom=_phone(hers["phone"]),
        communication=[{"language": language, "preferred": True}],
        generalPractitioner=[named] if named else [], managingOrganization=practice,
    )  # fmt: skip
    _consent(to, hers, practice)
    _readiness(to, hers)
    for row in record["clearances"]:
        _clearance(to, row)


def _phone(number: str) -> list[Resource]:
    return [{"system": "phone", "value": number}] if number else []


def _consent(to: Bundle, hers: Resource, practice: Resource) -> None:
    """What is kept and who sees it, as the notice of that version said."""
    if not hers["consent_at"]:
        return
    to.add(
        "Consent", "notice",
        status="inactive" if hers["state"] == "left" else "active",
        scope=concept(f"{TERMS}consentscope", "patient-privacy", "Privacy Consent"),
        category=[concept(LOINC, "59284-0", "Consent Document")],
        patient=to.client, dateTime=hers["consent_at"], organization=[practice],
        policyRule={"text": f"Boutwise notice, version {hers['consent_version']}"},
    )  # fmt: skip


def _readiness(to: Bundle, hers: Resource) -> None:
    """Every question she was asked, with yes or no; and her usual pain."""
    if not hers["readiness_at"]:
        return
    to.add(
        "QuestionnaireResponse", "readiness", status="completed",
        subject=to.client, source=to.client, authored=hers["readiness_at"],
        item=[*_answers(to, hers["readiness"]), *_usual(hers["usual_pain"])],
    )  # fmt: skip


def _answers(to: Bundle, yes: list[str]) -> Iterator[Resource]:
    asked = [key for keys in SCREENS.values() for key in keys]
    for key in (*asked, *(key for key in yes if key not in asked)):
        said = to.named("ready", key)
        yield {"linkId": key, "text": said, "answer": [{"valueBoolean": key in yes}]}


def _usual(score: int | None) -> list[Resource]:
    if score is None:
        return []
    return [{"linkId": "usual-pain", "answer": [{"valueInteger": score}]}]


def _clearance(to: Bundle, row: dict[str, Any]) -> None:
    """The clinician's permission for impact, with its ceiling, for as long as it held."""
    level = Level(row["ceiling"]).name.lower()
    to.add(
        "Observation", f"clearance-{row['id']}", status="final", subject=to.client,
        code=to.local("clearance", display="clearance for impact, with a ceiling"),
        effectivePeriod=period(row["at"], row["lapsed_at"]), issued=row["at"],
        performer=[to.to("Practitioner", CLINICIAN)] if to.record["person"]["clinician"] else [],
        valueCodeableConcept=to.local(level, "ceiling"),
        note=note(f"lapsed: {row['lapsed_because']}" if row["lapsed_because"] else ""),
    )  # fmt: skip
