"""A client's record as a bundle of HL7 FHIR R4. The standard judges its form (`r4`); all else is ours."""

import copy
import json
from collections import Counter
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from typing import Any

import pytest

from bot.reports import record_fhir
from scheduler.domain.companions import CATALOGUE
from scheduler.domain.days import BoutState, Entry
from scheduler.domain.flags import Flag
from scheduler.domain.messages import Lane, message
from scheduler.domain.movement import Level
from scheduler.domain.people import Clearance, Pause, State
from scheduler.domain.steptest import StepTest
from scheduler.ports import CompanionEntry, Outgoing, Tx
from scheduler.usecases import archive, records
from storage.store import SqlStore
from tests.bot.reports.r4 import faults
from tests.conftest import on_sqlite
from tests.storage.clinic import HOUR, NOW, PLAN, TODAY, bout_of, client, clinician, planned

pytestmark = on_sqlite  # rows come out the same from both engines (`tests/storage`)

A_DAY = timedelta(days=1)
LATER = NOW + 3 * A_DAY
Bundle = dict[str, Any]


def _furnish(tx: Tx) -> int:
    """A client of whom everything is kept that a record can hold. All invented."""
    tx.book.put("name", "Alder Lane (invented)")
    dana = clinician(tx, name="Dana (invented)").id
    ann = client(tx, dana, name="Ann (invented)").id
    tx.people.save_client(
        replace(
            tx.people.client(ann), phone="555 0142", consent_version=2, consent_at=NOW - A_DAY,
            readiness=("two-falls", "unsure-heart"), readiness_at=NOW - A_DAY, usual_pain=2, joined_at=NOW,
        )
    )  # fmt: skip
    tx.book.audit(dana, "invite", ann, NOW - A_DAY)
    tx.book.audit(dana, "plan", ann, NOW)
    tx.plans.clear(Clearance(ann, Level.LOW, dana, NOW))
    _prescribed(tx, ann)
    _done(tx, ann, dana)
    _told(tx, ann, dana)
    return ann


def _prescribed(tx: Tx, ann: int) -> None:
    planned(tx, ann, valid_from=TODAY)
    stomps = replace(
        PLAN, movement="stomp", weekdays=(), days_max=3, companions=tuple(CATALOGUE.values())
    )
    planned(tx, ann, stomps, TODAY + 2 * A_DAY)


def _done(tx: Tx, ann: int, dana: int) -> None:
    bout = bout_of(tx, ann)
    tx.days.save_bout(replace(bout, state=BoutState.DONE, asked_at=NOW))
    for n, state in enumerate(BoutState, start=2):
        kept = bout_of(tx, ann, n, due_at=NOW + n * HOUR)
        tx.days.save_bout(replace(kept, state=state))
    tx.ledger.log(Entry(0, ann, TODAY, 7, NOW, "u1", bout=bout.id))
    wrong = tx.ledger.log(Entry(0, ann, TODAY, 70, NOW, "u2"))
    assert wrong is not None
    tx.ledger.void(wrong.id, "u3", NOW)
    tx.ledger.log(Entry(0, ann, TODAY, 9, NOW + A_DAY, "u4"))  # told on the day after
    tx.ledger.log(Entry(0, ann, TODAY - A_DAY, 5, NOW - A_DAY, "u5"))  # before there was a plan
    tx.companions.log(CompanionEntry(ann, TODAY + 2 * A_DAY, "hover-hold", 3, NOW, "u6"))
    tx.companions.log(CompanionEntry(ann, TODAY, "back-raise", 1, NOW, "u7"))  # not prescribed
    for source, trials in (("u8", (1501, None)), ("u9", (None, None)), ("u10", (900, 1000))):
        tx.steptests.add(StepTest(0, ann, TODAY, NOW, trials, dana), source)
    (*_, last) = tx.steptests.of(ann)
    tx.steptests.take_back(last.id, NOW)


def _told(tx: Tx, ann: int, dana: int) -> None:
    said = {
        "sign": "none",
        "place": "hip",
        "score": 7,
        "new": True,
        "words": "my <hip>",
        "outcome": "hold",
    }
    tx.health.report(ann, "pain", TODAY, NOW, said)
    tx.health.report(ann, "morning", TODAY, NOW, {"score": 0, "outcome": "carry-on"})
    tx.health.report(
        ann, "fall", TODAY, NOW, {"injured": False, "doing": "stairs", "words": "fell"}
    )
    tx.health.report(ann, "weekly", TODAY, NOW, {"said": []})
    tx.health.hold(ann, "pain", None, NOW)
    tx.health.hold(ann, "leak", "stomp", NOW)
    details = {"words": "my <hip>", "score": 7}
    flag = tx.flags.open(Flag(ann, dana, "pain", True, "pain:1", NOW, details))
    assert flag is not None
    tx.flags.close(flag.id, "called", dana, "asked her to rest", NOW + HOUR)
    tx.flags.open(Flag(ann, dana, "silent", False, "silent", NOW))
    pause = tx.pauses.add(Pause(0, ann, TODAY, None, "travel", dana, NOW))
    tx.pauses.end(pause.id, TODAY - A_DAY, NOW)  # ended before its first day was over
    tx.outbox.add(Outgoing("one", Lane.ANSWER, message("help"), person=ann), NOW)


@pytest.fixture(name="record")
def record_fixture(store: SqlStore) -> Any:
    """Call for the record as the practice exports it, or as her own copy."""
    ann = store.run_sync(_furnish)

    def read(*, own: bool = False, now: datetime = LATER) -> dict[str, Any]:
        def work(tx: Tx) -> dict[str, Any]:
            person = tx.people.get(ann)
            assert person is not None
            whole = archive.record(tx, person, None, None, now, own=own)
            page = records.record(tx, person, TODAY, TODAY + A_DAY, now)
            return whole if own else {**whole, "page": page}

        return store.run_sync(work)

    return read


def bundle_of(record: dict[str, Any], language: str = "en") -> Bundle:
    bundle: Bundle = json.loads(record_fhir(record, language))
    return bundle


def all_of(bundle: Bundle, kind: str) -> list[dict[str, Any]]:
    return [e["resource"] for e in bundle["entry"] if e["resource"]["resourceType"] == kind]


def code(resource: dict[str, Any]) -> str:
    said: str = resource["code"]["coding"][0]["code"]
    return said


@pytest.mark.parametrize("own", [False, True])
@pytest.mark.parametrize("language", ["en", "es", "qps"])
def test_the_standard_has_nothing_against_it(record: Any, own: bool, language: str) -> None:
    bundle = bundle_of(record(own=own), language)
    assert faults(bundle) == []
    assert {*Counter(e["resource"]["resourceType"] for e in bundle["entry"])} >= {
        *(
            "Patient",
            "Organization",
            "Practitioner",
            "Consent",
            "QuestionnaireResponse",
            "CarePlan",
        ),
        *("Goal", "ServiceRequest", "Task", "Observation", "Flag", "AuditEvent", "CodeSystem"),
    }


SPOILT: list[tuple[str, str, Any, str]] = [
    ("CarePlan", "status", "banana", "CarePlan.status: 'banana' is no code"),
    ("Task", "status", "declined", "Task.status: 'declined' is no code"),
    ("Observation", "reps", 7, "Additional properties are not allowed"),
    ("Observation", "issued", "8 March 2027", "does not match"),
    ("Flag", "subject", {"reference": "urn:uuid:none", "type": "Patient"}, "leads nowhere"),
    ("Goal", "subject", None, "'subject' is a required property"),
    ("Flag", "period", {"start": "2027-03-08", "end": "2027-03-07"}, "per-1"),
    ("Consent", "policyRule", None, "ppc-1"),
    (
        "Consent", "scope",
        {"coding": [{"system": "http://terminology.hl7.org/CodeSystem/consentscope", "code": "all"}]},
        "'all' is no code of",
    ),
]  # fmt: skip
"""A field with a wrong value, or left out, and what is said of it: what judges can fail."""


@pytest.mark.parametrize(("kind", "field", "value", "said"), SPOILT)
def test_the_judge_finds_what_is_wrong(
    record: Any, kind: str, field: str, value: Any, said: str
) -> None:
    bundle = copy.deepcopy(bundle_of(record()))
    spoilt = all_of(bundle, kind)[0]
    if value is None:
        del spoilt[field]
    else:
        spoilt[field] = value
    assert any(said in each for each in faults(bundle)), faults(bundle)


def test_the_same_record_gives_the_same_bytes_and_anothers_other_identifiers(record: Any) -> None:
    whole = record()
    assert record_fhir(whole, "en") == record_fhir(whole, "en")
    ids = {entry["fullUrl"] for entry in bundle_of(whole)["entry"]}
    elsewhere = {**whole, "practice": {"name": "Another (invented)", "phone": ""}}
    assert not ids & {entry["fullUrl"] for entry in bundle_of(elsewhere)["entry"]}
    next_one = {**whole, "person": {**whole["person"], "id": whole["person"]["id"] + 1}}
    assert not ids & {entry["fullUrl"] for entry in bundle_of(next_one)["entry"]}


def test_a_resource_of_a_part_of_the_record_has_the_name_that_it_has_in_the_whole(
    record: Any,
) -> None:
    whole = record()
    part = {**whole, "audit": whole["audit"][1:]}
    found = [
        {e["fullUrl"]: e["resource"] for e in bundle_of(each)["entry"]} for each in (whole, part)
    ]
    events = [
        {url for url, each in urls.items() if each["resourceType"] == "AuditEvent"}
        for urls in found
    ]
    assert len(events[0] - events[1]) == 1
    assert all(found[0][url] == found[1][url] for url in events[1])


def test_every_line_of_the_ledger_is_there_once_and_what_was_taken_back_is_an_error(
    record: Any,
) -> None:
    bouts = [each for each in all_of(bundle_of(record()), "Observation") if code(each) == "bout"]
    told = [
        (each["valueQuantity"]["value"], each["status"], each["effectiveDateTime"])
        for each in bouts
    ]
    assert told == [
        (7, "final", "2027-03-08T09:00:00.123456Z"),
        (70, "entered-in-error", "2027-03-08T09:00:00.123456Z"),
        (9, "final", "2027-03-08"),  # told a day later: the day is known, the time of day is not
        (5, "final", "2027-03-07T09:00:00.123456Z"),
    ]
    assert {each["valueQuantity"]["code"] for each in bouts} == {"{repetitions}"}
    assert ["basedOn" in each for each in bouts] == [True, True, True, False]


def test_each_version_of_the_plan_takes_the_place_of_the_one_before(record: Any) -> None:
    bundle = bundle_of(record())
    first, second = all_of(bundle, "CarePlan")
    assert first["period"] == {"start": "2027-03-08", "end": "2027-03-09"}
    assert second["period"] == {"start": "2027-03-10"}
    assert (first["status"], second["status"]) == ("revoked", "on-hold")
    assert second["replaces"] == [{"reference": f"urn:uuid:{first['id']}", "type": "CarePlan"}]
    assert len(second["activity"]) == 3  # the impact and two companions
    jacks, stomps, raises, holds = all_of(bundle, "ServiceRequest")
    assert [code(each) for each in (jacks, stomps)] == ["movement-stepping-jack", "movement-stomp"]
    assert [each["quantityQuantity"]["value"] for each in (jacks, raises, holds)] == [40, 1, 3]
    repeat = jacks["occurrenceTiming"]["repeat"]
    assert (repeat["frequency"], repeat["periodUnit"], repeat["dayOfWeek"]) == (
        2,
        "wk",
        ["mon", "thu"],
    )
    flexible = stomps["occurrenceTiming"]["repeat"]
    assert (flexible["frequency"], flexible["frequencyMax"]) == (2, 3)
    assert "dayOfWeek" not in flexible
    assert code({"code": stomps["orderDetail"][0]}) == "per-side"
    assert jacks["patientInstruction"] == "beside the kitchen counter"


def test_a_day_is_that_of_the_newest_version_also_where_an_older_one_begins_later(
    store: SqlStore,
) -> None:
    def work(tx: Tx) -> dict[str, Any]:
        ann = client(tx, clinician(tx).id)
        planned(tx, ann.id, valid_from=TODAY - A_DAY)
        planned(tx, ann.id, valid_from=TODAY + 9 * A_DAY)
        newest = planned(tx, ann.id, replace(PLAN, movement="stomp"), TODAY)
        assert tx.plans.on(ann.id, TODAY + 9 * A_DAY) == newest
        tx.ledger.log(Entry(0, ann.id, TODAY + 9 * A_DAY, 7, NOW + 9 * A_DAY, "u1"))
        return archive.record(tx, ann, None, None, LATER)

    bundle = bundle_of(store.run_sync(work))
    (bout,) = (each for each in all_of(bundle, "Observation") if code(each) == "bout")
    stomps = all_of(bundle, "ServiceRequest")[-1]
    assert code(stomps) == "movement-stomp"
    assert bout["basedOn"][0]["reference"] == f"urn:uuid:{stomps['id']}"
    plans = all_of(bundle, "CarePlan")
    assert [each["status"] for each in plans] == ["revoked", "revoked", "active"]
    assert plans[0]["period"] == {"start": "2027-03-07", "end": "2027-03-07"}
    assert faults(bundle) == []


@pytest.mark.parametrize(
    ("end", "status"), [(TODAY + 3 * A_DAY, "on-hold"), (TODAY + 2 * A_DAY, "completed")]
)
def test_a_plan_is_completed_the_day_after_its_end(record: Any, end: date, status: str) -> None:
    whole = record()
    whole["plans"][1]["body"]["end"] = end.isoformat()
    assert all_of(bundle_of(whole), "CarePlan")[1]["status"] == status


@pytest.mark.parametrize(
    ("first", "last"),
    [(TODAY + A_DAY, None), (None, TODAY - A_DAY), (TODAY + A_DAY, TODAY + A_DAY)],
)
def test_a_period_leaves_out_nothing_that_lasts_still(
    store: SqlStore, first: date | None, last: date | None
) -> None:
    """What stops her now says how the plan stands."""

    def work(tx: Tx) -> dict[str, Any]:
        ann = tx.people.get(_furnish(tx))
        assert ann is not None
        return archive.record(tx, ann, first, last, LATER)

    bundle = bundle_of(store.run_sync(work))
    assert [each["status"] for each in all_of(bundle, "CarePlan")] == ["revoked", "on-hold"]
    codes = [code(each) for each in all_of(bundle, "Flag")]
    assert codes == [
        "hold-pain",
        "hold-leak",
        "kind-silent",
    ]  # the other flag and the break are over
    assert faults(bundle) == []


def test_who_left_has_no_plan_in_force_and_withdrew_her_consent(record: Any) -> None:
    whole = record()
    whole["person"]["state"] = State.LEFT.value
    bundle = bundle_of(whole)
    assert {each["status"] for each in all_of(bundle, "CarePlan")} == {"revoked"}
    assert all_of(bundle, "Consent")[0]["status"] == "inactive"
    assert all_of(bundle, "Patient")[0]["active"] is False


def test_pain_is_the_score_she_gave_with_her_words_and_a_score_of_none_is_none(record: Any) -> None:
    found = all_of(bundle_of(record()), "Observation")
    # LOINC 72514-3, pain 0-10 reported: evidence, "Codes for FHIR R4" (read)
    scores = [each for each in found if code(each) == "72514-3"]
    assert [each["valueQuantity"]["value"] for each in scores] == [7, 0]
    assert scores[0]["note"] == [{"text": "my <hip>"}]
    places = [each for each in scores[0]["component"] if code(each) == "answer-place"]
    assert places[0]["valueCodeableConcept"]["coding"][0]["code"] == "place-hip"
    (fall,) = (each for each in found if code(each) == "report-fall")
    assert "valueQuantity" not in fall
    (weekly,) = (each for each in found if code(each) == "report-weekly")
    assert weekly["component"][0]["valueString"] == "none"


def test_a_step_test_has_its_better_time_and_a_void_one_none(record: Any) -> None:
    for own, screened in ((False, True), (True, False)):
        found = all_of(bundle_of(record(own=own)), "Observation")
        first, void, back = (each for each in found if code(each) == "step-test")
        assert first["valueQuantity"] == {
            "value": 15.01, "unit": "s", "system": "http://unitsofmeasure.org", "code": "s",
        }  # fmt: skip
        assert [("valueQuantity" in each) for each in first["component"]] == [True, False]
        assert "valueQuantity" not in void
        assert void["dataAbsentReason"]["coding"][0]["code"] == "not-performed"
        assert back["status"] == "entered-in-error"
        assert [("interpretation" in each) for each in (first, void, back)] == [
            screened,
            screened,
            False,
        ]


def test_her_own_copy_has_no_figures_of_weeks_and_no_notes_of_her_clinicians(record: Any) -> None:
    theirs, hers = (bundle_of(record(own=own)) for own in (False, True))
    weeks = [
        [code(each) for each in all_of(b, "Observation")].count("week") for b in (theirs, hers)
    ]
    assert weeks == [1, 0]
    assert "asked her to rest" in json.dumps(theirs)
    assert "asked her to rest" not in json.dumps(hers)


def test_a_flag_a_hold_and_a_break_say_from_when_until_when(record: Any) -> None:
    flags = all_of(bundle_of(record()), "Flag")
    assert [(code(each), each["status"], each["period"].get("end")) for each in flags] == [
        ("hold-pain", "active", None),
        ("hold-leak", "active", None),
        ("kind-pain", "inactive", "2027-03-08T10:00:00.123456Z"),
        ("kind-silent", "active", None),
        ("away-travel", "inactive", "2027-03-08"),
    ]


ODD = (
    "",
    " ",
    "\u00a0",
    "\u2028",
    "\0",
    "a\u00a0b",
    "x\x0by",
    "x\x1fy\x85z",
    "\u202eabc\u202c",
    "w" * 9_999,
)
"""What a phone's keyboard or a copied text puts into a name or a message."""


@pytest.mark.parametrize("odd", ODD, ids=ascii)
def test_odd_texts_are_told_as_the_standard_allows_or_left_out(record: Any, odd: str) -> None:
    """FHIR R4, datatypes: a string has no code points below 32 but tab and line ends, and is never empty."""
    whole = record()
    whole["practice"] = {"name": odd, "phone": odd}
    whole["person"] |= {"name": odd, "phone": odd, "clinician": odd}
    whole["reports"][0]["body"]["words"] = odd
    said = {"text": odd, "edited": False, "button": None}
    whole["wrote"] = [{"id": 1, "at": "2027-03-08T09:00:00Z", **said}]
    whole["plans"][0]["body"] |= {"note": odd}
    bundle = bundle_of(whole)
    assert faults(bundle) == []
    written = str(bundle)
    assert not [each for each in ("\\x00", "\\x0b", "\\x1f", "\\u2028") if each in written]
    visible = odd.strip(" \0\u00a0\u2028")
    assert len(all_of(bundle, "Patient")[0].get("name", [])) == bool(visible)
    if visible.isascii() and visible.isprintable() and visible:
        assert all_of(bundle, "Patient")[0]["name"] == [{"text": odd}]


def test_every_code_of_ours_is_defined_in_the_bundle_itself(record: Any) -> None:
    bundle = bundle_of(record())
    (system,) = all_of(bundle, "CodeSystem")
    defined = {each["code"] for each in system["concept"]}
    used = set()

    def look(value: Any) -> None:
        for each in value.values() if isinstance(value, dict) else value:
            if isinstance(each, dict) and each.get("system") == system["url"]:
                used.add(each["code"])
            if isinstance(each, dict | list):
                look(each)

    look(bundle)
    assert used == defined


def test_an_empty_record_is_a_sound_bundle_too(store: SqlStore) -> None:
    def work(tx: Tx) -> dict[str, Any]:
        person = client(tx, clinician(tx).id, account=None, name="Demo")
        return archive.record(tx, person, None, None, datetime(2027, 3, 8, tzinfo=UTC))

    assert faults(bundle_of(store.run_sync(work))) == []
