"""The digest as CSV: read back by another reader it says the same, and carries out nothing."""

import csv
import io
from typing import Any

import pytest

from bot.reports import digest_csv
from bot.reports.table import COLUMNS
from tests.bot import weeks


def read(content: bytes) -> list[dict[str, str]]:
    """By the standard library's reader, as the table's own docstring says."""
    return list(csv.DictReader(io.StringIO(content.decode("utf-8-sig"), newline="")))


def number(value: str) -> float | None:
    return float(value) if value else None


def test_every_figure_and_every_day_is_read_back_as_it_was() -> None:
    digest = weeks.crowd(16, 3)
    digest["lines"][4] |= {"spread": None, "pain": None, "weekly": None, "companions": []}
    digest["lines"][5] |= {"weekly": [], "spread": 1.0}
    rows = read(digest_csv(digest, "en"))
    assert len(rows) == 16
    for row, line in zip(rows, digest["lines"], strict=True):
        assert (row["week"], row["first_day"], row["last_day"]) == (
            digest["week"], digest["first"], digest["last"],
        )  # fmt: skip
        assert (row["name"], row["movement"]) == (line["name"], line["movement"])
        assert row["per_side"] == {True: "yes", False: "no"}[line["per_side"]]
        for column, field in {
            "client_id": "client", "days": "days", "days_needed": "needed", "reps": "reps",
            "reps_capped": "reps_capped", "reps_prescribed": "prescribed", "bouts": "bouts",
            "bouts_planned": "bouts_planned", "spread_theoretical": "spread", "worst_pain": "pain",
            "open_flags": "flags", "urgent_flags": "urgent", "excused_days": "excused",
            "open_days": "open",
        }.items():  # fmt: skip
            assert number(row[column]) == line[field], column
        days = [
            {
                "day": row[f"day{n}_day"], "state": row[f"day{n}_state"], "why": row[f"day{n}_why"],
                "done": int(row[f"day{n}_done"]), "total": int(row[f"day{n}_total"]),
            }
            for n in range(1, 8)
        ]  # fmt: skip
        assert days == line["cells"]


@pytest.mark.parametrize(
    ("weekly", "cell"),
    [(None, ""), ([], "none"), (["pain"], "pain"), (["fall", "leak"], "fall leak")],
)
def test_no_answer_to_the_weekly_question_is_not_a_no(weekly: list[str] | None, cell: str) -> None:
    (row,) = read(digest_csv(weeks.digest(weeks.line(weekly=weekly)), "en"))
    assert row["weekly_question"] == cell


def test_reasons_say_their_kind_and_their_facts() -> None:
    reasons = [*weeks.NEED, {"kind": "fall"}]
    (row,) = read(digest_csv(weeks.digest(weeks.line(reasons=reasons)), "en"))
    assert row["reasons"] == "hold since=2027-03-09 pain=7; fall"


# What a spreadsheet may carry out: OWASP, "CSV Injection" (second-hand); the rest ours.
FORMULAS = (
    "=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "\n=1", " =1", "=cmd|' /C calc'!A0",
    "=HYPERLINK(\"http://example.org\")", "＝1+1", "＋1", "－1", "＠A1", "\0=1", "+1 555 0100",
)  # fmt: skip


@pytest.mark.parametrize("typed", FORMULAS)
def test_what_people_typed_is_never_carried_out_by_a_spreadsheet(typed: str) -> None:
    companions = [{"name": typed, "done": 1, "days": 2}]
    line = weeks.line(typed, companions=companions)
    (row,) = read(digest_csv(weeks.digest(line), "en"))
    for cell in (row["name"], row["companions"]):
        assert cell.startswith("'")
    assert row["name"] == "'" + typed.replace("\0", "")


@pytest.mark.parametrize(
    "name",
    ['Ann "A", B.', "a\r\nb", "Αλεξάνδρα", "Екатерина", "نادية ٢٣", "😀", "x" * 80, "; drop"],
)
def test_any_name_is_read_back(name: str) -> None:
    (row,) = read(digest_csv(weeks.digest(weeks.line(name)), "en"))
    assert row["name"] == name


def test_the_file_is_as_the_standard_wants_it() -> None:
    content = digest_csv(weeks.digest(weeks.line('Ann "A"'), weeks.line("Bo")), "en")
    # RFC 4180, 2.1 to 2.7 (memory): CRLF after every record, as many fields in each, quotes doubled.
    assert content.startswith(b"\xef\xbb\xbfweek,")
    assert content.endswith(b"\r\n")
    assert content.count(b"\n") == content.count(b"\r\n") == 3
    assert b'"Ann ""A"""' in content
    rows = list(csv.reader(io.StringIO(content.decode("utf-8-sig"), newline=""), strict=True))
    assert {len(row) for row in rows} == {len(COLUMNS)}
    assert len({*COLUMNS}) == len(COLUMNS)


def test_the_columns_read_the_same_in_every_language() -> None:
    digest: dict[str, Any] = weeks.crowd(3)
    assert digest_csv(digest, "en") == digest_csv(digest, "qps") == digest_csv(digest, "es")


def test_a_clinician_without_clients_gets_the_head_alone() -> None:
    assert digest_csv(weeks.digest(), "en").decode("utf-8-sig").split("\r\n") == [
        ",".join(COLUMNS),
        "",
    ]
