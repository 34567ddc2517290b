"""A client's record as a Bundle of HL7 FHIR R4 (4.0.1), for her own copy and the practice's files (D1, K6).

    Patient, Organization, Practitioner   she, the practice, her clinician
    Consent, QuestionnaireResponse        the notice she agreed to; readiness and her usual pain
    CarePlan, Goal, ServiceRequest        a version of the plan, its goal, each exercise of it
    Task                                  a bout that was asked
    Observation                           a bout or a companion done, a day, a week, a step test, a clearance,
                                          a report of pain, a sign, a fall or the week's question
    Flag                                  a flag, a hold, a break
    Communication, AuditEvent             a message of either side; who did what about her
    CodeSystem                            the codes of ours that the bundle uses

The shape of a record is in `scheduler.usecases.archive`. `page`, if it has one, is that of
`scheduler.usecases.records`: with it the bundle has the weeks' figures, and how step tests screened. The days
picked for a week and open questions have no resource: they are in the JSON form.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from bot.reports.fhir import care, done, people, told
from bot.reports.fhir.bundle import Bundle
from bot.reports.whole import in_words


def record_fhir(record: Mapping[str, Any], language: str) -> bytes:
    """The bundle as indented JSON, in UTF-8. The same record gives the same bytes."""
    bundle = Bundle(in_words(record, language), language)
    for part in (people, care, done, told):
        part.write(bundle)
    return bundle.as_json()
