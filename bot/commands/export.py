"""`boutwise export`: one client's record as a file."""

from __future__ import annotations

import argparse
import os
from collections.abc import Mapping
from datetime import date, datetime, timedelta
from pathlib import Path
from typing import Any

from bot import reports, settings
from bot.settings import BadSettingError
from bot.wiring import command_clock, store_for_command
from scheduler.domain.hours import local_day
from scheduler.domain.people import Person, Role
from scheduler.ports import Tx
from scheduler.usecases import archive, records

FORMATS = ("json", "csv", "fhir", "pdf")
PAGE_DAYS = timedelta(days=83)
"""How far back a page goes by itself: twelve weeks, with today's."""


def add(subparsers: Any) -> None:
    """Add the command's parser."""
    parser = subparsers.add_parser("export", help="one client's record as a file")
    parser.add_argument("--client", type=int, required=True, metavar="ID", help="see `people`")
    parser.add_argument("--format", required=True, choices=FORMATS)
    parser.add_argument("--out", type=Path, required=True, metavar="FILE", help="where it goes")
    parser.add_argument(
        "--from", dest="first", metavar="D", help="first day, like 2027-03-08; by default all"
    )
    parser.add_argument("--to", dest="last", metavar="D", help="last day; by default all")


def run(args: argparse.Namespace) -> int:
    """Write the file, readable for its owner only, and print its name. The export is audited."""
    first, last = _day("--from", args.first), _day("--to", args.last)
    if first and last and first > last:
        raise BadSettingError(f"--from {first} comes after --to {last}.")
    with store_for_command(settings.read()) as store:
        now = command_clock(store).now()
        record, language = store.run_sync(lambda tx: _record(tx, args, first, last, now))
    write = {
        "json": reports.record_json,
        "csv": reports.record_csv,
        "fhir": reports.record_fhir,
        "pdf": reports.client_pdf,
    }[args.format]
    _write(args.out, write(record, language))
    print(args.out)
    return 0


def _record(
    tx: Tx, args: argparse.Namespace, first: date | None, last: date | None, now: datetime
) -> tuple[Mapping[str, Any], str]:
    """What goes into the file, from one local day of the client to another, and her language."""
    person = tx.people.get(args.client)
    if person is None or person.role is not Role.CLIENT:
        raise BadSettingError(f"{args.client} is no client's id: `boutwise people` lists them.")
    tx.book.audit(None, "export", person.id, now, format=args.format)
    if args.format == "pdf":
        return _page(tx, person, first, last, now), person.language
    whole = archive.record(tx, person, first, last, now)
    if args.format == "fhir":
        began = min((date.fromisoformat(row["valid_from"]) for row in whole["plans"]), default=None)
        whole["page"] = _page(tx, person, first or began, last, now)
    return whole, person.language


def _page(
    tx: Tx, person: Person, first: date | None, last: date | None, now: datetime
) -> dict[str, Any]:
    until = last or local_day(now, tx.people.client(person.id).zone)
    return records.record(tx, person, first or until - PAGE_DAYS, until, now)


def _day(option: str, given: str | None) -> date | None:
    """A day of the command line. BadSettingError with one clear sentence."""
    try:
        return date.fromisoformat(given) if given else None
    except ValueError:
        raise BadSettingError(f"{option} must be a day like 2027-03-08.") from None


def _write(path: Path, content: bytes) -> None:
    """Health data: for nobody but the owner of the file."""
    descriptor = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600)
    with os.fdopen(descriptor, "wb") as file:
        file.write(content)
