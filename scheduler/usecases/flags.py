"""Flags on their way to whoever must know, when they must (H6, I7).

Urgent ones leave at once, at any hour, are repeated while they are open, then go to the colleagues who
cover, then to the admins. Routine ones come in one summary a working day, all others in working hours.
"""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from scheduler.domain.flags import ROUTINE, Flag
from scheduler.domain.hours import local_day, parse_span
from scheduler.domain.messages import Argument, Lane, Text, message, text
from scheduler.domain.people import Client, Person, State
from scheduler.domain.settings import Practice
from scheduler.domain.wall import wall
from scheduler.domain.working import Working
from scheduler.ports import Outgoing, Tx
from scheduler.usecases.names import clinician_name, name_of
from scheduler.usecases.post import tell, tell_admins
from scheduler.usecases.rest import today_of

BATCH = 20
"""Flags looked at between two looks at the bell."""
EVER = datetime.min.replace(tzinfo=UTC)
LISTED = 30
"""Flags that a summary names; the rest is counted."""


def working(practice: Practice) -> Working:
    """The practice's working hours."""
    hours = parse_span(practice.work_hours)
    return Working(ZoneInfo(practice.zone), hours, practice.working_days)


# --- raised --------------------------------------------------------------------------------------


def raise_flag(
    tx: Tx,
    client: Client,
    kind: str,
    now: datetime,
    *,
    urgent: bool,
    details: dict[str, Any],
    episode: str = "",
) -> Flag | None:
    """Open a flag and see to it that it arrives; nothing if its episode has one open (I7)."""
    practice = tx.book.practice()
    due_at = None
    if urgent:
        due_at = now + timedelta(hours=practice.repeat_hours)
    elif kind in ROUTINE:
        due_at = working(practice).next_start(now)
    flag = tx.flags.open(
        Flag(
            client=client.id,
            clinician=client.clinician,
            kind=kind,
            urgent=urgent,
            episode=episode or _episode(tx, client, kind, details, now),
            opened_at=now,
            details=details,
            due_at=due_at,
        )
    )
    if flag is not None and (urgent or kind not in ROUTINE):
        _tell_clinician(tx, client, flag, now, working(practice).from_now(now))
    return flag


def _episode(tx: Tx, client: Client, kind: str, details: dict[str, Any], now: datetime) -> str:
    """One a kind, sign and day; after a release what happens again is another episode."""
    released = sum(hold.released_at is not None for hold in tx.health.holds_since(client.id, EVER))
    return f"{kind}:{details.get('sign') or ''}:{today_of(client, now)}:{released}"


def _tell_clinician(tx: Tx, client: Client, flag: Flag, now: datetime, open_at: datetime) -> None:
    words = (flag_text(tx, client, flag),)
    due_at = now if flag.urgent else open_at
    key = f"flag:{flag.id}"
    tx.outbox.add(Outgoing(key, Lane.FLAG, words, person=client.clinician, due_at=due_at), now)
    if flag.urgent and not _reachable(tx.people.get(client.clinician)):
        _tell_others(tx, client, flag, now)


def _tell_others(tx: Tx, client: Client, flag: Flag, now: datetime) -> None:
    """Tell those who cover and the admins of a flag that its clinician cannot be told of in chat."""
    _tell_cover(tx, client, flag, now)
    told = message("flag-admin", flag=flag.id, name=name_of(tx, client.id), urgent=True)
    tell_admins(tx, f"flag:{flag.id}:admin", Lane.FLAG, told, now)


def flag_text(tx: Tx, client: Client, flag: Flag) -> Text:
    """A flag with what happened, since when, the client's words and phone number (K2)."""
    about: dict[str, Argument] = {
        "flag": flag.id,
        "client": client.id,
        "name": name_of(tx, client.id),
        "since": wall(flag.opened_at, client.zone),
        "zone": client.zone.key,
        "phone": client.phone,
        "kind": flag.kind,
        "urgent": flag.urgent,
        "held": bool(tx.health.holds(client.id)),
        **{key: value for key, value in flag.details.items() if value not in (None, "")},
    }
    return text("flag", **about)


def _reachable(person: Person | None) -> bool:
    return person is not None and person.account is not None and not person.blocked


# --- due again -----------------------------------------------------------------------------------


def due(tx: Tx, now: datetime) -> tuple[Flag, ...]:
    """Flags about which something has fallen due."""
    return tx.flags.due(now, BATCH)


def look(tx: Tx, flag_id: int, now: datetime) -> None:
    """Do what has fallen due about a flag, if it still is: repeat it, hand it on, or sum up."""
    flag = tx.flags.get(flag_id)
    if flag is None or flag.closed_at is not None or flag.due_at is None or flag.due_at > now:
        return
    if flag.urgent:
        _repeat(tx, flag, now)
    else:
        _sum_up(tx, flag, now)


def _repeat(tx: Tx, flag: Flag, now: datetime) -> None:
    """First to the clinician again, then to those who cover, last to the admins."""
    client = tx.people.client(flag.client)
    hours = tx.book.practice().repeat_hours
    again_at = now + timedelta(hours=hours)
    key = f"flag:{flag.id}:{flag.step + 1}"
    if flag.step == 0:
        words = (text("flag-repeat", flag=flag.id), flag_text(tx, client, flag))
        tell(tx, client.clinician, key, Lane.FLAG, words, now)
        tx.flags.postpone(flag.id, again_at, 1)
    elif flag.step == 1 and _tell_cover(tx, client, flag, now):
        tx.flags.postpone(flag.id, again_at, 2)
    else:
        told = message(
            "flag-still-open",
            flag=flag.id,
            name=name_of(tx, client.id),
            clinician=clinician_name(tx, client),
        )
        tell_admins(tx, key, Lane.FLAG, told, now)
        tx.flags.postpone(flag.id, None, 3)


def _tell_cover(tx: Tx, client: Client, flag: Flag, now: datetime) -> bool:
    """Tell the colleagues who cover the clinician; whether there was one who can be reached."""
    found = covering(tx, client.clinician, now)
    words = (
        text("flag-cover", clinician=clinician_name(tx, client)),
        flag_text(tx, client, flag),
    )
    for colleague in found:
        tell(
            tx,
            colleague.id,
            f"flag:{flag.id}:{flag.step}:cover:{colleague.id}",
            Lane.FLAG,
            words,
            now,
        )
    return bool(found)


def covering(tx: Tx, clinician: int, now: datetime) -> tuple[Person, ...]:
    """Colleagues who cover a clinician today and can be reached in chat."""
    today = local_day(now, ZoneInfo(tx.book.practice().zone))
    colleagues = (
        tx.people.get(cover.colleague) for cover in tx.staff.covers(clinician) if cover.runs(today)
    )
    found = {each.id: each for each in colleagues if each is not None and _reachable(each)}
    return tuple(each for each in found.values() if each.state is State.READY)


def hand_on(tx: Tx, clinician: Person, now: datetime) -> None:
    """A clinician cannot be reached: who covers and the admins get her open urgent flags at once (R4)."""
    for person in tx.people.caseload(clinician.id):
        for flag in tx.flags.of_client(person.id):
            if flag.urgent:
                _tell_others(tx, tx.people.client(person.id), flag, now)


def _sum_up(tx: Tx, flag: Flag, now: datetime) -> None:
    """All routine flags of the clinician in one message; what has closed by itself is not in it."""
    due = [each for each in tx.flags.due_of(flag.clinician, now) if each.kind in ROUTINE]
    rows: list[Argument] = [_summary_row(tx, each) for each in due[:LISTED]]
    people = {each.client for each in due}
    lost = sum(bool((person := tx.people.get(each)) and person.blocked) for each in people)
    words = message(
        "flag-summary",
        count=len(due),
        clients_count=len(people),
        flag_rows=rows,
        more=len(due) - len(rows),
        lost=lost,
    )
    tell(tx, flag.clinician, f"summary:{flag.clinician}:{due[-1].id}", Lane.FLAG, words, now)
    for each in due:
        tx.flags.postpone(each.id, None, 1)


def _summary_row(tx: Tx, flag: Flag) -> dict[str, Argument]:
    client = tx.people.client(flag.client)
    days = flag.details.get("days", ())
    return {
        "flag": flag.id,
        "name": name_of(tx, client.id),
        "reason": flag.kind,
        "since": local_day(flag.opened_at, client.zone).isoformat(),
        "dates": list(days),
    }
