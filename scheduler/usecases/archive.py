"""A client's whole record as JSON: for her own copy, and for the practice's files (D1).

The record:

    {"format": "boutwise-client-record", "version": 1, "made_at": instant, "zone", "from": day | null, "to",
     "practice": {"name", "phone"},
     "person": {"id", "name", "language", "state", "clinician", "phone", "zone", "hours", "days", "consent_*",
                "readiness*", "usual_pain", "joined_at", "left_at", ...},
     "plans", "clearances", "weeks", "days", "bouts_asked", "bouts_done", "companions", "step_tests",
     "reports" (pain, signs, falls, the weekly question), "holds", "flags", "breaks", "questions",
     "messages" (to her), "wrote" (what she typed and tapped), "to_clinician" (her answers to her clinician),
     "audit" (who did what about her): a list of rows each}

The fields of a row are those of its table. Instants are ISO in UTC, days ISO dates of hers, trials of a step
test hundredths of a second. Rows of a day or an instant outside the period are left out; what lasts (holds,
flags, breaks) is in where it reaches into the period, or lasts still; plans, clearances and the person are
whole. `voids` of a bout names the line that it takes back.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from datetime import date, datetime
from enum import Enum
from typing import Any
from zoneinfo import ZoneInfo

from scheduler.domain.hours import local_day
from scheduler.domain.messages import Lane, message
from scheduler.domain.people import Person
from scheduler.domain.reply import Reply, reply
from scheduler.ports import Tx
from scheduler.usecases.names import clinician_name
from scheduler.usecases.post import tell, tell_admins

FORMAT, VERSION = "boutwise-client-record", 1
WHOLE = frozenset({"plans", "clearances", "questions"})
"""Sections of which a period leaves nothing out."""
WHEN = ("day", "at", "opened_at", "first", "start")
"""The first of these that a row has says when it was."""
UNTIL = {"holds": "released_at", "flags": "closed_at", "breaks": "last"}
"""What lasts, and when it ended: it belongs to every day from its first to its last. What has not ended is
always in: it says how she stands now."""
OF_STAFF = {"flags": frozenset({"note", "clinician", "closed_by", "episode", "step", "due_at"})}
"""What a clinician kept for herself (K5), and inner matters: not in the client's own copy."""
PICTURES = frozenset({"week-picture", "data-json", "data-csv", "data-fhir"})
"""Messages that carry a whole picture or file: only that they were sent is told."""


def record(
    tx: Tx,
    person: Person,
    first: date | None,
    last: date | None,
    now: datetime,
    *,
    own: bool = False,
) -> dict[str, Any]:
    """Everything about a client from one local day to another, `None` for no bound.

    `own`: as she herself is given it.
    """
    client, practice = tx.people.client(person.id), tx.book.practice()
    found = dict(tx.archive.of(person.id))
    (hers,) = found.pop("person")
    sections: dict[str, Any] = {
        name: [
            _row(row, OF_STAFF.get(name, frozenset()) if own else frozenset())
            for row in rows
            if name in WHOLE or _within(row, UNTIL.get(name), first, last, client.zone)
        ]
        for name, rows in sorted(found.items())
    }
    return {
        "format": FORMAT,
        "version": VERSION,
        "made_at": _json(now),
        "zone": client.zone.key,
        "from": _json(first),
        "to": _json(last),
        "practice": {"name": practice.name, "phone": practice.phone},
        "person": {**_row(hers), "clinician": clinician_name(tx, client)},
        **sections,
        "messages": [*_messages(sections["messages"])],
        "wrote": [*_wrote(sections["wrote"])],
    }


def _within(
    row: Mapping[str, Any], until: str | None, first: date | None, last: date | None, zone: ZoneInfo
) -> bool:
    moment = next((row[name] for name in WHEN if row.get(name) is not None), None)
    if moment is None:
        return True
    if until is not None and row[until] is None:
        return True
    start = _day(moment, zone)
    end = start if until is None else _day(row[until], zone)
    return (first or date.min) <= max(start, end) and start <= (last or date.max)


def _day(moment: date, zone: ZoneInfo) -> date:
    return local_day(moment, zone) if isinstance(moment, datetime) else moment


def _row(row: Mapping[str, Any], hidden: frozenset[str] = frozenset()) -> dict[str, Any]:
    return {name: _json(value) for name, value in row.items() if name not in hidden}


def _json(value: Any) -> Any:
    if isinstance(value, datetime):
        return value.isoformat().replace("+00:00", "Z")
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, Mapping):
        return {str(name): _json(each) for name, each in value.items()}
    return [_json(each) for each in value] if isinstance(value, list | tuple) else value


def _messages(rows: list[dict[str, Any]]) -> Iterator[dict[str, Any]]:
    """Messages to her as ids and arguments; whoever writes the record out says them in words."""
    for row in rows:
        texts = [
            {"id": each["id"], "args": {} if each["id"] in PICTURES else each.get("args", {})}
            for each in row["message"]
        ]
        yield {"id": row["id"], "at": row["at"], "message": texts}


def _wrote(rows: list[dict[str, Any]]) -> Iterator[dict[str, Any]]:
    """What she typed and tapped, without what the platform wraps round it."""
    for row in rows:
        update = row["update"]
        said = update.get("message") or update.get("edited_message") or {}
        pressed = update.get("callback_query") or {}
        text = said.get("text") or said.get("caption")
        yield {
            "id": row["id"],
            "at": row["at"],
            "text": text,
            "edited": "edited_message" in update,
            "button": pressed.get("data"),
        }


# --- in chat -------------------------------------------------------------------------------------


def about(tx: Tx, client_id: int) -> Reply:
    """What is kept about her, in numbers, and the way to all of it."""
    client, person = tx.people.client(client_id), tx.people.get(client_id)
    counted = tx.archive.counts(client_id)
    return reply(
        "data",
        name=person.name if person else "",
        phone=client.phone,
        clinician=clinician_name(tx, client),
        bouts=counted["bouts"],
        reports=counted["reports"],
        tests=counted["tests"],
        records=True,
    )


def files(tx: Tx, person: Person, now: datetime, source: str) -> Reply:
    """All of it as files, where the practice allows files in chat; else it is asked to give them (D5).

    The practice is asked once a day of hers, however often she taps.
    """
    practice = tx.book.practice()
    if practice.files_in_chat != "yes":
        told = message("data-wanted", name=person.name, person=person.id)
        day = local_day(now, tx.people.client(person.id).zone)
        tell_admins(tx, f"data-wanted:{person.id}:{day}", Lane.FLAG, told, now)
        return Reply(message("data-by-practice", phone=practice.phone), in_place=False)
    whole = record(tx, person, None, None, now, own=True)
    for more in (message("data-csv", record=whole), message("data-fhir", record=whole)):
        tell(tx, person.id, f"{more[0].id}:{source}", Lane.ANSWER, more, now)
    tx.book.audit(person.id, "data", person.id, now)
    return Reply(message("data-json", record=whole), in_place=False)
