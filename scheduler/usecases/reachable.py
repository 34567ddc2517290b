"""People who blocked the bot, and their return (R4)."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

from scheduler.domain.messages import Lane, message
from scheduler.domain.people import Client, Person, Role
from scheduler.domain.week import Why
from scheduler.ports import Tx
from scheduler.usecases import flags, moments, weekplan
from scheduler.usecases.flags import raise_flag
from scheduler.usecases.opening import begin_day
from scheduler.usecases.post import tell, tell_admins
from scheduler.usecases.rest import today_of, withdraw_all
from scheduler.usecases.wake import changing


def lost(tx: Tx, person_id: int | None, now: datetime) -> None:
    """The platform says that a person cannot be reached: nothing more is sent until they are back."""
    person = tx.people.get(person_id) if person_id is not None else None
    if person is None or person.blocked:
        return
    tx.people.save(replace(person, blocked=True))
    if person.role is not Role.CLIENT:
        _tell_others(tx, person, now)
        return
    with changing(tx, person.id, now) as client:
        withdraw_all(tx, client, "unreachable")
        held = bool(tx.health.holds(client.id))
        raise_flag(
            tx,
            client,
            "unreachable",
            now,
            urgent=held,
            details={"phone": client.phone} if held else {},
            episode="unreachable",
        )


def _tell_others(tx: Tx, person: Person, now: datetime) -> None:
    """Admins are told, and the colleagues who cover a clinician, with her urgent flags (H6)."""
    words = message("staff-unreachable", name=person.name, role=person.role.value)
    key = f"unreachable:{person.id}:{now.isoformat()}"
    tell_admins(tx, key, Lane.FLAG, words, now, but=person.id)
    if person.role is Role.CLINICIAN:
        for colleague in flags.covering(tx, person.id, now):
            tell(tx, colleague.id, f"{key}:{colleague.id}", Lane.FLAG, words, now)
        flags.hand_on(tx, person, now)


def back(tx: Tx, person: Person, now: datetime) -> Person:
    """A person wrote, or the platform says they are back: messages flow again."""
    if not person.blocked:
        return person
    returned = replace(person, blocked=False)
    tx.people.save(returned)
    if person.role is Role.CLIENT:
        with changing(tx, person.id, now) as client:
            _note_lost_days(tx, client, now)
            for flag in tx.flags.of_client(client.id):
                if flag.kind == "unreachable":
                    tx.flags.close(flag.id, "back", person.id, "", now)
            begin_day(tx, client, now)
    return returned


def _note_lost_days(tx: Tx, client: Client, now: datetime) -> None:
    """Days whose hours ended before she was back, and that are not judged yet, say why nothing was asked."""
    judged, lost_at = client.judged_to, lost_since(tx, client.id, now)
    if judged is not None:
        before = max(judged, today_of(client, lost_at) - timedelta(days=1))
        weekplan.skipped(tx, client, before, moments.day_over(tx, client, now), Why.UNREACHABLE)


def lost_since(tx: Tx, client_id: int, now: datetime) -> datetime:
    """When a client who cannot be reached was lost: her flag of it says so, also one that was closed."""
    told = tx.flags.between(client_id, flags.EVER, now)
    return max((each.opened_at for each in told if each.kind == "unreachable"), default=now)


def take_along(tx: Tx, before: int | None, after: int) -> None:
    """What she wrote goes with her to the new account: who gets the old one must not be given it (I9).

    It stays where somebody in another role has the old account still.
    """
    if before is not None and before != after and not tx.people.of_account(before):
        tx.inbox.moved(before, after)
