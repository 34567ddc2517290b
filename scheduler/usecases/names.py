"""People by the names that others know them by."""

from __future__ import annotations

from scheduler.domain.people import Client
from scheduler.ports import Tx


def clinician_name(tx: Tx, client: Client) -> str:
    """The name by which the client knows her clinician."""
    clinician = tx.people.get(client.clinician)
    return clinician.name if clinician else ""


def name_of(tx: Tx, person_id: int) -> str:
    """A person's first name or alias; empty if there is no such person."""
    person = tx.people.get(person_id)
    return person.name if person else ""
