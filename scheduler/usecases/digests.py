"""Once a week, one page for each clinician: who needs her, and how every client kept the plan (K3, I8).

A digest is made once and kept as it was made; its pages, picture and file all show that.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime, timedelta
from typing import Any, cast
from zoneinfo import ZoneInfo

from scheduler.domain import week as w
from scheduler.domain.hours import instant, local_day
from scheduler.domain.messages import Argument, Lane, Message, message
from scheduler.domain.people import Person, Role, Staff, State
from scheduler.domain.reply import Reply, reply
from scheduler.domain.settings import Practice
from scheduler.domain.wall import wall
from scheduler.domain.weekdays import WEEK
from scheduler.ports import Tx
from scheduler.usecases import figures
from scheduler.usecases.post import tell

A_WEEK = timedelta(days=7)
PAGE = 12
"""Clients on one page of text: what a phone shows in two or three screens."""
ROW = frozenset(
    {
        "name",
        "days",
        "needed",
        "reps_capped",
        "per_side",
        "prescribed",
        "bouts",
        "bouts_planned",
        "pain",
        "excused",
        "open",
        "companions",
        "reasons",
        "step",
    }
)
"""What a page says of a line."""
BATCH = 10
HOURS = (0, 23)


# --- when ----------------------------------------------------------------------------------------


def next_digest(staff: Staff, practice: Practice, now: datetime) -> datetime:
    """The first instant after `now` at which the clinician's digest falls due, in the practice's zone."""
    zone = ZoneInfo(practice.zone)
    today = local_day(now, zone)
    day = today + timedelta(days=(staff.digest_weekday - today.weekday()) % WEEK)
    moment = instant(day, staff.digest_hour * 60, zone)
    return moment if moment > now else instant(day + A_WEEK, staff.digest_hour * 60, zone)


def schedule(tx: Tx, clinician: int, now: datetime) -> None:
    """Set when the clinician's next digest falls due."""
    staff = tx.staff.get(clinician)
    tx.staff.save(replace(staff, wake_at=next_digest(staff, tx.book.practice(), now)))


def schedule_all(tx: Tx, now: datetime, *, anew: bool = False) -> None:
    """Set it for every clinician who has none; for all of them where the practice's zone has changed."""
    for person in tx.people.staff():
        if person.role is Role.CLINICIAN and (anew or tx.staff.get(person.id).wake_at is None):
            schedule(tx, person.id, now)


def due(tx: Tx, now: datetime) -> tuple[int, ...]:
    """Clinicians whose digest has fallen due."""
    return tx.staff.due(now, BATCH)


def set_time(tx: Tx, clinician: int, now: datetime, *, weekday: int, hour: int) -> Reply:
    """Her own weekday and hour for the digest."""
    if not (0 <= weekday < WEEK and HOURS[0] <= hour <= HOURS[1]):
        return reply("question-over")
    before = tx.staff.get(clinician)
    tx.staff.save(replace(before, digest_weekday=weekday, digest_hour=hour))
    tx.questions.close(clinician, "digest")
    schedule(tx, clinician, now)
    return reply("digest-time-kept", weekday=weekday, at=_hour(hour))


def ask_time(tx: Tx, clinician: int) -> Reply:
    """Show when her digest comes, with other times to choose."""
    staff = tx.staff.get(clinician)
    return reply("ask-digest-time", weekday=staff.digest_weekday, at=_hour(staff.digest_hour))


def _hour(hour: int) -> str:
    return f"2000-01-01T{hour:02}:00"  # only the time of it is shown


# --- what ----------------------------------------------------------------------------------------


def make(tx: Tx, clinician_id: int, now: datetime) -> None:
    """Make the digest of the week that has ended, send it, and set when the next falls due.

    One that fell due while the bot was away is made when it is back, of the last week only.
    """
    clinician = tx.people.get(clinician_id)
    schedule(tx, clinician_id, now)
    if clinician is None or clinician.state is not State.READY:
        return
    practice = tx.book.practice()
    today = local_day(now, ZoneInfo(practice.zone))
    start = w.week_start(today, practice.first_weekday) - A_WEEK
    body = build(tx, clinician, start, now)
    number = tx.digests.keep(clinician_id, start, body, now)
    if number is None or not any(line["needed"] or line["reasons"] for line in body["lines"]):
        return  # sent before, or a week in which nobody had a plan
    key = f"digest:{number}"
    tell(tx, clinician_id, f"{key}:text", Lane.REST, page_of(number, body, 0), now)
    tell(tx, clinician_id, f"{key}:picture", Lane.REST, message("digest-picture", digest=body), now)
    if practice.files_in_chat == "yes":
        tell(tx, clinician_id, f"{key}:file", Lane.REST, message("digest-file", digest=body), now)


def build(tx: Tx, clinician: Person, start: date, now: datetime) -> dict[str, Any]:
    """The digest of a week as it stands now: those who need her first, then by name."""
    practice = tx.book.practice()
    clients = [person.id for person in tx.people.caseload(clinician.id) if person.account]
    lines = figures.lines(tx, clients, start, now)
    return {
        "week": w.week_label(start),
        "first": start.isoformat(),
        "last": (start + timedelta(days=WEEK - 1)).isoformat(),
        "made_at": wall(now, ZoneInfo(practice.zone)),
        "zone": practice.zone,
        "practice": practice.name,
        "clinician": clinician.name,
        "lines": sorted(lines, key=who_needs_her),
    }


def who_needs_her(line: figures.Line) -> tuple[bool, bool, int, str, int]:
    """Sorts the lines: those who need her, the urgent first, of equals the worst pain; then by name."""
    name, number = cast("str", line["name"]), cast("int", line["client"])
    pain = cast("int | None", line["pain"]) if line["reasons"] else None
    return not line["reasons"], not line["urgent"], -(pain or 0), name.casefold(), number


# --- pages ---------------------------------------------------------------------------------------


def page_of(number: int, body: dict[str, Any], page: int) -> Message:
    """One page of a digest in words. `number` is 0 for one that was not kept."""
    lines: list[dict[str, Argument]] = body["lines"]
    last = max(0, (len(lines) - 1) // PAGE)
    page = min(max(page, 0), last)
    shown = [row(line) for line in lines[page * PAGE : (page + 1) * PAGE]]
    return message(
        "digest",
        number=number,
        week=body["week"],
        first=body["first"],
        last=body["last"],
        count=len(lines),
        need=sum(bool(line["reasons"]) for line in lines),
        open=sum(cast("int", line["open"]) for line in lines),
        page=page + 1,
        pages=last + 1,
        digest_rows=cast("Argument", shown),
    )


def row(line: dict[str, Argument]) -> dict[str, Argument]:
    """A line's figures in whole numbers; its cells are for the picture."""
    spread = cast("float | None", line["spread"])
    over = cast("int", line["reps"]) - cast("int", line["reps_capped"])
    kept = {key: value for key, value in line.items() if key in ROW}
    return {**kept, "reps_over": over, "spread": None if spread is None else round(100 * spread)}


def page(tx: Tx, clinician: int, number: int, shown: int) -> Reply:
    """Another page of a digest that was kept, if it is hers."""
    kept = tx.digests.get(number)
    if kept is None or kept[0] != clinician:
        return reply("not-yours")
    return Reply(page_of(number, kept[2], shown))


def latest(tx: Tx, clinician_id: int, now: datetime) -> Reply:
    """The running week as it stands now; it is not kept, and its days are mostly open."""
    clinician = tx.people.get(clinician_id)
    if clinician is None:
        return reply("not-yours")
    practice = tx.book.practice()
    start = w.week_start(local_day(now, ZoneInfo(practice.zone)), practice.first_weekday)
    body = build(tx, clinician, start, now)
    return Reply(page_of(0, body, 0)) if body["lines"] else reply("digest-nobody")


def of_week(tx: Tx, clinician: Person, start: date, now: datetime) -> dict[str, Any]:
    """A week's digest as it was made, else as it stands now."""
    kept = tx.digests.of(clinician.id, start)
    return kept[1] if kept else build(tx, clinician, start, now)
