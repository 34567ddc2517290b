"""`boutwise export`: one client's record as a file. All ours, but where a source is named."""

import csv
import io
import json
import stat
from dataclasses import replace
from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader
from sqlalchemy import URL

from scheduler.domain.days import Entry
from scheduler.domain.steptest import StepTest
from scheduler.ports import Tx
from storage.engine import Database
from storage.keys import Keyring
from storage.store import SqlStore
from storage.vault import unlock
from tests.bot.commands.conftest import Boutwise, Told, plain
from tests.bot.reports.r4 import faults
from tests.conftest import on_sqlite
from tests.storage.clinic import NOW, TODAY, client, clinician, planned

pytestmark = (
    on_sqlite  # what is read is tested on both engines beside (`tests/journeys/test_leaving.py`)
)

YESTERDAY = TODAY - timedelta(days=1)


@pytest.fixture(name="export")
def export_fixture(boutwise: Boutwise, database_at: URL, tmp_path: Path) -> Any:
    """Call with a format and more words; a practice of two clients is there, the first has id 2."""
    database = Database(database_at, Keyring.parse("none"))
    unlock(database)
    SqlStore(database).run_sync(_furnish)
    database.close_sync()

    def run(form: str, *more: str, who: str = "2") -> tuple[Told, Path]:
        out = tmp_path / f"record.{form}"
        words = ("export", "--client", who, "--format", form, "--out", str(out), *more)
        return boutwise(*words, DATABASE_URL=plain(database_at)), out

    return run


def _furnish(tx: Tx) -> None:
    hers = clinician(tx).id
    ann = client(tx, hers, name="=Ann").id
    client(tx, hers, account=4712, name="Somebody Else")
    tx.people.save_client(replace(tx.people.client(ann), phone="+1 555 0142"))
    planned(tx, ann)
    for day, reps in ((YESTERDAY, 7), (TODAY, 12)):
        tx.ledger.log(Entry(0, ann, day, reps, NOW, f"u{reps}"))
    tx.health.report(ann, "fall", TODAY, NOW, {"injured": False, "words": "on the stairs"})
    tx.steptests.add(StepTest(0, ann, TODAY, NOW, (1501, None), hers), "u9")


def test_json_holds_every_section_and_nothing_about_anybody_else(export: Any) -> None:
    told, path = export("json")
    assert (told.code, told.out.strip(), told.err) == (0, str(path), "")
    record = json.loads(path.read_text(encoding="utf-8"))
    assert (record["format"], record["version"]) == ("boutwise-client-record", 1)
    assert record["person"]["name"] == "=Ann"
    assert [row["reps"] for row in record["bouts_done"]] == [7, 12]
    assert record["step_tests"][0]["trials"] == [1501, None]
    assert record["reports"][0]["body"]["words"] == "on the stairs"
    assert record["plans"][0]["body"]["daily_total"] == 40
    assert {*record} >= {
        *("audit", "bouts_asked", "breaks", "clearances", "companions", "days", "flags", "holds"),
        *("messages", "questions", "to_clinician", "weeks", "wrote"),
    }
    assert "Somebody Else" not in path.read_text(encoding="utf-8")


def test_a_file_of_health_data_can_be_read_by_its_owner_only(export: Any) -> None:
    _, path = export("json")
    assert stat.S_IMODE(path.stat().st_mode) == 0o600


def test_a_period_leaves_out_the_days_beside_it_and_keeps_the_plan(export: Any) -> None:
    _, path = export("json", "--from", str(TODAY), "--to", str(TODAY))
    record = json.loads(path.read_text(encoding="utf-8"))
    assert [row["reps"] for row in record["bouts_done"]] == [12]
    assert len(record["plans"]) == 1
    _, path = export("json", "--to", str(YESTERDAY))
    record = json.loads(path.read_text(encoding="utf-8"))
    assert [row["reps"] for row in record["bouts_done"]] == [7]
    assert record["step_tests"] == []


@pytest.mark.parametrize(
    ("first", "last", "held"),
    [(-9, -2, 0), (-9, -1, 1), (0, 0, 1), (1, 1, 1), (2, 9, 0)],
)
def test_a_hold_belongs_to_every_day_on_which_it_was_open(
    export: Any, database_at: URL, first: int, last: int, held: int
) -> None:
    def hold(tx: Tx) -> None:
        tx.health.hold(2, "pain", None, NOW - timedelta(days=1))
        tx.health.release(2, 1, NOW + timedelta(days=1))
        tx.health.hold(2, "leak", "stomp", NOW + timedelta(days=20))

    database = Database(database_at, Keyring.parse("none"))
    unlock(database)
    SqlStore(database).run_sync(hold)
    database.close_sync()
    days = [str(TODAY + timedelta(days=n)) for n in (first, last)]
    _, path = export("json", "--from", days[0], "--to", days[1])
    found = [row["reason"] for row in json.loads(path.read_text(encoding="utf-8"))["holds"]]
    assert found == [*["pain"] * held, "leak"]  # what lasts still is always there


def test_csv_has_one_value_a_line_and_carries_nothing_out(export: Any) -> None:
    _, path = export("csv")
    content = path.read_bytes().decode("utf-8-sig")
    rows = [*csv.reader(io.StringIO(content))]  # RFC 4180: the library's reader (memory)
    assert rows[0] == ["section", "row", "field", "value"]
    assert {len(row) for row in rows} == {4}
    assert ["bouts_done", "2", "reps", "12"] in rows
    assert ["person", "1", "name", "'=Ann"] in rows  # OWASP, "CSV Injection" (second-hand)
    assert ["person", "1", "phone", "'+1 555 0142"] in rows
    assert ["step_tests", "1", "trials.1", "1501"] in rows


def test_fhir_is_a_sound_bundle_with_the_figures_of_the_weeks(export: Any) -> None:
    told, path = export("fhir", "--to", str(TODAY))
    assert (told.code, told.out.strip(), told.err) == (0, str(path), "")
    bundle = json.loads(path.read_text(encoding="utf-8"))
    assert faults(bundle) == []  # HL7 FHIR R4
    codes = [
        e["resource"].get("code", {}).get("coding", [{}])[0].get("code") for e in bundle["entry"]
    ]
    assert (codes.count("bout"), codes.count("week"), codes.count("step-test")) == (2, 1, 1)
    assert "Somebody Else" not in path.read_text(encoding="utf-8")
    _, path = export("fhir", "--to", str(YESTERDAY))
    bundle = json.loads(path.read_text(encoding="utf-8"))
    assert faults(bundle) == []
    codes = [
        e["resource"].get("code", {}).get("coding", [{}])[0].get("code") for e in bundle["entry"]
    ]
    assert (codes.count("bout"), codes.count("step-test")) == (1, 0)


def test_pdf_is_the_page_about_the_client(export: Any) -> None:
    told, path = export("pdf", "--from", str(TODAY), "--to", str(TODAY))
    assert told.code == 0
    (page,) = PdfReader(path).pages
    words = page.extract_text()
    assert "=Ann" in words
    assert "15.01" in words or "15,01" in words


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("json", "--from", "8 March"), "--from must be a day like 2027-03-08"),
        (("json", "--from", "2027-03-09", "--to", "2027-03-08"), "comes after"),
    ],
)
def test_what_cannot_be_used_is_refused_in_one_line(
    export: Any, words: tuple[str, ...], said: str
) -> None:
    told, path = export(*words)
    assert told.code == 2
    assert len(told.faults) == 1
    assert said in told.faults[0]
    assert not path.exists()


@pytest.mark.parametrize("who", ["1", "99"])
def test_a_clinician_or_nobody_is_no_client(export: Any, who: str) -> None:
    told, _ = export("json", who=who)
    assert told.code == 2
    assert told.faults == [
        f"boutwise export: {who} is no client's id: `boutwise people` lists them."
    ]


def test_an_export_is_in_the_audit_trail(export: Any) -> None:
    export("json")
    _, path = export("json")
    record = json.loads(path.read_text(encoding="utf-8"))
    lines = [row for row in record["audit"] if row["action"] == "export"]
    assert [row["change"] for row in lines] == [{"format": "json"}] * 2
