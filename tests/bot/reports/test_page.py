"""One client on one page: read by another PDF library, whatever people have typed."""

import io
import logging
import subprocess
import sys
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

from bot.pictures.tiles import REASONS
from bot.reports import client_pdf, page
from bot.reports.sheet import BOTTOM, Sheet
from bot.words import LANGUAGES
from tests.bot import weeks
from tests.bot.pictures.test_caseload import NAMES

ROOT = Path(__file__).parents[3]
A4 = (595.28, 841.89)  # points: 210 x 297 mm at 72 an inch (ISO 216; arithmetic)


def reader(record: dict[str, Any], language: str = "en") -> PdfReader:
    return PdfReader(io.BytesIO(client_pdf(record, language)))


def words(record: dict[str, Any], language: str = "en") -> str:
    return " ".join(reader(record, language).pages[0].extract_text().split())


def crowded() -> dict[str, Any]:
    """As much of everything as there may be."""
    whys = [*REASONS, *REASONS]
    record = weeks.record(14)
    for number, week in enumerate(record["weeks"]):
        for day, cell in enumerate(week["cells"]):
            kind = weeks.KINDS[(number + day) % 8]
            cell |= kind | {"why": whys[(number + day) % 8] if kind["why"] else ""}  # noqa: PLW2901
    pain = [{"day": f"2027-03-{n:02}", "score": n % 11, "place": "back"} for n in range(1, 32)]
    flags = [
        {
            "id": n,
            "kind": "question-open",
            "opened": "2027-03-09T14:05",
            "closed": None,
            "outcome": "",
        }
        for n in range(1_000_000, 1_000_040)
    ]
    plan = record["plan"] | {
        "note": "Keep it slow and soft. " * 13, "total": 500, "bout_reps": 500, "bout_max": 500,
        "weekdays": [*range(7)], "window": [0, 1440], "per_side": True, "movement": "firm-heel-drop",
    }  # fmt: skip
    return record | {
        "pain": pain, "flags": flags, "plan": plan, "name": "x" * 80,
        "falls": record["falls"] * 20, "holds": record["holds"] * 20,
    }  # fmt: skip


def test_the_page_holds_every_figure_of_every_week_as_text() -> None:
    record = weeks.record(12)
    said = words(record)
    for week in record["weeks"]:
        row = f"{week['label']} "
        assert row in said
        figures = said.partition(row)[2]
        figures = figures.replace("D ", "").replace("N ", "")
        assert figures.startswith(
            f"{week['days']}/3 {week['reps']} (80)/120 8/12 71 % 4 1 2"
        )  # fmt: skip


def test_the_last_row_sums_what_is_shown() -> None:
    # 3 weeks: days 0 + 1 + 2, reps 80 + 81 + 82, everything else three times (arithmetic)
    said = words(weeks.record(3))
    assert "All shown 3/9 243 (240)/360 24/36 – 4 3 6" in said


def test_the_page_says_whose_it_is_what_was_prescribed_and_what_happened() -> None:
    said = words(weeks.record())
    for expected in (
        "Ann", "Mon 8 March 2027 to Sun 30 May 2027", "Dana, Harbor House.", "Tue 1 June, 8 am",
        "40 gentle heel drops a day, in bouts of 10, at most 12 in one go.",
        "At least 2, at most 3 days a week: Mon, Thu, Sat. Hours: 8 am to 8 pm. Gap: 120 min at least.",
        "From Mon 8 March 2027. Review: Mon 3 May 2027. End: none.",
        "Clearance: Moderate impact.", "Note to the client: Slow and soft.",
        "7 of 10, Tue 9 March, Back", "Thu 11 March: no injury said",
        "#12 Tue 9 March: Pain or a warning sign. Called.", "#15 Thu 11 March: A fall. Open.",
        "Tue 9 March to Tue 16 March",
    ):  # fmt: skip
        assert expected in said


@pytest.mark.parametrize("record", [weeks.record(0), weeks.record(), crowded()])
def test_the_cautions_are_always_there(record: dict[str, Any]) -> None:
    said = words(record)
    assert "Not a diagnosis." in said
    assert "Spread is theoretical, from animal data" in said
    assert "no answer is not “no pain”" in said
    assert "A licensed professional decides what follows from this page." in said


def test_a_full_record_stays_on_one_page_of_a4_and_says_what_was_cut() -> None:
    read = reader(crowded())
    assert len(read.pages) == 1
    box = read.pages[0].mediabox
    assert (float(box.width), float(box.height)) == pytest.approx(A4, abs=0.1)
    said = words(crowded())
    assert "… and 2 more" in said  # 14 weeks, 12 shown
    assert said.count(" more ") >= 4
    assert "2027-W10 " not in said  # the oldest is what is cut
    assert "2027-W23 " in said


def test_nothing_runs_into_the_cautions(monkeypatch: pytest.MonkeyPatch) -> None:
    ends: list[float] = []
    real = page._cautions

    def noted(sheet: Sheet) -> None:
        ends.append(sheet.y)
        real(sheet)

    monkeypatch.setattr(page, "_cautions", noted)
    for record in (weeks.record(12), crowded()):
        for language in ("en", "qps"):
            client_pdf(record, language)
    assert len(ends) == 4
    assert max(ends) <= BOTTOM


def test_the_worst_pain_and_open_flags_are_not_cut() -> None:
    pain = [{"day": f"2027-03-{n:02}", "score": 1, "place": "knee"} for n in range(1, 30)]
    closed = weeks.record()["flags"][0]
    still_open = weeks.record()["flags"][1]
    record = weeks.record(
        12,
        pain=[*pain, {"day": "2027-03-30", "score": 9, "place": "hip"}],
        flags=[still_open, *[closed | {"opened": "2027-04-09T08:00"}] * 20],
    )
    said = words(record)
    assert "9 of 10, Tue 30 March, Hip" in said
    assert "#15 Thu 11 March: A fall. Open." in said


def test_a_client_with_nothing_yet_has_a_page_too() -> None:
    record = weeks.record(0, plan=None, ceiling=None, pain=[], falls=[], flags=[], holds=[])
    said = words(record)
    assert "No plan in this period." in said
    assert said.count("none") == 4


@pytest.mark.parametrize("injury", [True, False, None])
def test_an_injury_that_is_not_known_is_not_called_none(injury: bool | None) -> None:
    said = words(weeks.record(falls=[{"day": "2027-03-11", "injury": injury}]))
    expected = {True: "injured", False: "no injury said", None: "injury not known"}[injury]
    assert f"Thu 11 March: {expected}" in said


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("language", ["en", "qps"])
def test_no_name_breaks_the_page_or_gets_into_the_log(
    name: str, language: str, caplog: pytest.LogCaptureFixture
) -> None:
    with caplog.at_level(logging.WARNING):
        assert len(reader(weeks.record(name=name, clinician=name), language).pages) == 1
    assert caplog.records == []


@pytest.mark.parametrize("name", ["Αλεξάνδρα", "Екатерина", "٠١٢٣"])
def test_names_of_other_alphabets_can_be_read_and_searched(name: str) -> None:
    assert name in words(weeks.record(name=name))


def test_the_same_record_gives_the_same_bytes_in_another_process() -> None:
    code = (
        "import hashlib; from bot.reports import client_pdf; from tests.bot.weeks import record; "
        "print(hashlib.sha256(client_pdf(record(), 'en')).hexdigest())"
    )
    digests = {
        subprocess.run(
            [sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=True,
            env={"PYTHONHASHSEED": seed},
        ).stdout
        for seed in ("1", "2")
    }  # fmt: skip
    assert len(digests) == 1
    assert len(digests.pop().strip()) == 64


def test_the_page_is_dated_by_its_record_and_not_by_the_clock() -> None:
    made = reader(weeks.record()).metadata
    assert made is not None
    # 8 am in Lisbon in summer is 7 UTC (IANA zone data; memory)
    assert made.creation_date == datetime(2027, 6, 1, 7, tzinfo=UTC)


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_heading_and_no_figure_is_cut(language: str, monkeypatch: pytest.MonkeyPatch) -> None:
    cut: list[str] = []
    real = Sheet._fitted

    def noted(sheet: Sheet, words: str, width: float) -> str:
        shown = real(sheet, words, width)
        cut.extend([words] if shown != words else [])
        return shown

    monkeypatch.setattr(Sheet, "_fitted", noted)
    record = weeks.record(4, flags=[])
    for week in record["weeks"]:
        week |= {"reps": 400, "reps_capped": 360, "prescribed": 360}
    client_pdf(record, language)
    assert cut == []
