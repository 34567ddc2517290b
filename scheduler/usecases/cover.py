"""A colleague covers a clinician: granted and ended by an admin, with an end date, and audited (D3)."""

from __future__ import annotations

from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

from scheduler.domain.hours import instant, local_day
from scheduler.domain.messages import Argument, Lane, message
from scheduler.domain.people import Cover, Person, Role, State
from scheduler.domain.reply import Reply, reply
from scheduler.domain.wall import iso
from scheduler.ports import Question, Tx
from scheduler.usecases.flags import hand_on
from scheduler.usecases.names import name_of
from scheduler.usecases.post import tell

LENGTHS = (7, 14, 28)
"""Days of a cover that a button offers; any date can be typed."""
SHOWN = 50
"""Colleagues on one screen of buttons."""


def practice_zone(tx: Tx) -> ZoneInfo:
    """The zone in which the practice's days begin and end."""
    return ZoneInfo(tx.book.practice().zone)


def practice_day(tx: Tx, now: datetime) -> date:
    """The practice's date: a cover holds on its last day and not on the next."""
    return local_day(now, practice_zone(tx))


# --- who may -------------------------------------------------------------------------------------


def covers(tx: Tx, colleague: int, clinician: int, now: datetime) -> bool:
    """Whether a colleague covers a clinician today."""
    today = practice_day(tx, now)
    mine = tx.staff.covered_by(colleague)
    return any(each.clinician == clinician and each.runs(today) for each in mine)


def covered(tx: Tx, colleague: int, now: datetime) -> dict[int, str]:
    """Whom a colleague covers today, with their names, by name."""
    today = practice_day(tx, now)
    ids = {each.clinician for each in tx.staff.covered_by(colleague) if each.runs(today)}
    people = [person for each in ids if (person := tx.people.get(each)) is not None]
    return {p.id: p.name for p in sorted(people, key=lambda p: (p.name.casefold(), p.id))}


def looked(tx: Tx, colleague: int, client: int, now: datetime) -> None:
    """Audit that a colleague came to a client under a cover, once a day of the practice."""
    midnight = instant(practice_day(tx, now), 0, practice_zone(tx))
    if not tx.book.audited(colleague, "cover-access", client, midnight):
        tx.book.audit(colleague, "cover-access", client, now)


# --- an admin's screens --------------------------------------------------------------------------


def screen(tx: Tx, clinician_id: int, now: datetime) -> Reply:
    """Who covers a clinician now, each with an end; and who could."""
    clinician = _clinician(tx, clinician_id)
    if clinician is None:
        return reply("no-such-person")
    running = _running(tx, clinician_id, now)
    rows: list[Argument] = [
        {"id": each.id, "name": name_of(tx, each.colleague), "until": iso(each.until)}
        for each in running
    ]
    others = [p for p in tx.people.staff() if p.id != clinician_id and _ready(p)]
    colleagues: list[Argument] = [
        {"id": each.id, "name": each.name}
        for each in sorted(others, key=lambda p: (p.name.casefold(), p.id))[:SHOWN]
    ]
    return reply(
        "cover", clinician=clinician.name, person=clinician_id, covers=rows, colleagues=colleagues
    )


def ask_until(tx: Tx, who: int, clinician_id: int, colleague_id: int, now: datetime) -> Reply:
    """Ask for the last day of a cover, by a button or typed."""
    clinician, colleague = _clinician(tx, clinician_id), _clinician(tx, colleague_id)
    if clinician is None or colleague is None or not _ready(colleague) or clinician == colleague:
        return reply("no-such-person")
    pair = {"clinician": clinician_id, "colleague": colleague_id}
    tx.questions.ask(Question(who, "cover", "until", pair, asked_at=now))
    return reply(
        "ask-cover-until",
        clinician=clinician.name,
        name=colleague.name,
        person=clinician_id,
        colleague=colleague_id,
    )


def grant(
    tx: Tx, who: int, clinician_id: int, colleague_id: int, until: date | None, now: datetime
) -> Reply:
    """Let a colleague cover a clinician to a last day (`None`: until it is ended); both are told.

    A running cover of the same two is replaced: its end is changed.
    """
    clinician, colleague = _clinician(tx, clinician_id), _clinician(tx, colleague_id)
    if clinician is None or colleague is None or not _ready(colleague) or clinician == colleague:
        return reply("no-such-person")
    if until is not None and until < practice_day(tx, now):
        return reply("cover-is-past")
    before = [each for each in _running(tx, clinician_id, now) if each.colleague == colleague_id]
    for each in before:
        tx.staff.end_cover(each.id, now)
    kept = tx.staff.cover(Cover(0, clinician_id, colleague_id, until, who, now))
    tx.questions.close(who, "cover")
    tx.book.audit(
        who,
        "cover",
        clinician_id,
        now,
        colleague=colleague_id,
        before=[iso(each.until) for each in before],
        after=iso(until),
    )
    names = {"clinician": clinician.name, "name": colleague.name, "until": iso(until)}
    for person in (clinician, colleague):
        yours = person == clinician
        told = message("cover-told", yours=yours, **names)
        tell(tx, person.id, f"cover:{kept.id}:{person.id}", Lane.REST, told, now)
    if clinician.account is None or clinician.blocked:
        hand_on(tx, clinician, now)
    return reply("cover-kept", person=clinician_id, **names)


def end(tx: Tx, who: int, cover_id: int, now: datetime) -> Reply:
    """End a cover now; both are told. Ended before: nothing changes."""
    found = tx.staff.cover_of(cover_id)
    if found is None or not tx.staff.end_cover(cover_id, now):
        return reply("question-over")
    tx.book.audit(
        who, "end-cover", found.clinician, now, colleague=found.colleague,
        before=iso(found.until),
    )  # fmt: skip
    clinician, colleague = name_of(tx, found.clinician), name_of(tx, found.colleague)
    words = message("cover-ended", clinician=clinician, name=colleague)
    for person in (found.clinician, found.colleague):
        tell(tx, person, f"cover:{cover_id}:end:{person}", Lane.REST, words, now)
    shown = screen(tx, found.clinician, now)
    return Reply((*words, *shown.message))


def _running(tx: Tx, clinician: int, now: datetime) -> list[Cover]:
    today = practice_day(tx, now)
    return [each for each in tx.staff.covers(clinician) if each.runs(today)]


def _clinician(tx: Tx, person_id: int) -> Person | None:
    person = tx.people.get(person_id)
    return person if person is not None and person.role is Role.CLINICIAN else None


def _ready(person: Person) -> bool:
    return person.role is Role.CLINICIAN and person.state is State.READY


def last_day(tx: Tx, days: int, now: datetime) -> date | None:
    """The last day of a cover of so many days from today on; 0 stands for no end."""
    return practice_day(tx, now) + timedelta(days=days) if days else None
