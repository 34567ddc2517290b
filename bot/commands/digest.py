"""`boutwise digest`: one clinician's week as files."""

from __future__ import annotations

import argparse
from datetime import date
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

from bot import pictures, reports, settings
from bot.wiring import command_clock, store_for_command
from bot.words import render
from scheduler.domain import week as w
from scheduler.domain.hours import local_day
from scheduler.domain.people import Role
from scheduler.ports import Tx
from scheduler.usecases import digests


def add(subparsers: Any) -> None:
    """Add the command's parser."""
    parser = subparsers.add_parser("digest", help="one clinician's week as files")
    parser.add_argument("--clinician", type=int, required=True, metavar="ID", help="see `people`")
    parser.add_argument(
        "--week", metavar="WEEK", help="like 2027-W10; by default the last one that ended"
    )
    parser.add_argument("--out", type=Path, required=True, metavar="DIR", help="where the files go")


def run(args: argparse.Namespace) -> int:
    """Write the picture, the table and the text; print their names.

    A digest that was made is written as it was made, another week as it stands now.
    """
    with store_for_command(settings.read()) as store:
        now = command_clock(store).now()

        def ask(tx: Tx) -> tuple[dict[str, Any], str]:
            clinician = tx.people.get(args.clinician)
            if clinician is None or clinician.role is not Role.CLINICIAN:
                raise settings.BadSettingError(
                    f"{args.clinician} is no clinician's id: `boutwise people` lists them."
                )
            practice = tx.book.practice()
            today = local_day(now, ZoneInfo(practice.zone))
            start = _start(args.week, today, practice.first_weekday)
            return digests.of_week(tx, clinician, start, now), clinician.language

        body, language = store.run_sync(ask)
    for path in write(body, language, args.out):
        print(path)
    return 0


def _start(named: str | None, today: date, first_weekday: int) -> date:
    """The first day of the week that is asked for. BadSettingError with one clear sentence."""
    if named is None:
        return w.week_start(today, first_weekday) - digests.A_WEEK
    try:
        start = w.week_named(named, first_weekday)
    except ValueError as error:
        raise settings.BadSettingError(str(error)) from None
    if start > today:
        raise settings.BadSettingError(f"{named} has not begun yet.")
    return start


def write(body: dict[str, Any], language: str, out: Path) -> tuple[Path, ...]:
    """The digest's files in a folder that is made if it is not there; their paths."""
    out.mkdir(parents=True, exist_ok=True)
    stem = f"digest-{body['week']}"
    files = {
        out / f"{stem}.txt": "\n\n".join(_pages(body, language)).encode() + b"\n",
        out / f"{stem}.csv": reports.digest_csv(body, language),
        out / f"{stem}.png": pictures.caseload_picture(body, language),
    }
    for path, content in files.items():
        path.write_bytes(content)
    return tuple(files)


def _pages(body: dict[str, Any], language: str) -> list[str]:
    count = max(1, -(-len(body["lines"]) // digests.PAGE))
    return [render(digests.page_of(0, body, page), language) for page in range(count)]
