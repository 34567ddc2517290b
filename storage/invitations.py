"""Single-use permissions to join, and who guesses at them."""

from datetime import datetime, timedelta

from sqlalchemy import Connection, delete, func, insert, select, update

from scheduler.domain.people import Invitation
from storage.tables import GuessRow, InvitationRow, table

invitations = table(InvitationRow)
guesses = table(GuessRow)

GUESSES_COUNT_FOR = timedelta(hours=1)


class Invitations:
    """Single-use permissions to join; `scheduler.ports.Invitations` says what is promised."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def add(self, code_hash: str, invitation: Invitation) -> None:
        row = {
            "code_hash": code_hash,
            "person": invitation.person,
            "expires_at": invitation.expires_at,
            "used_at": invitation.used_at,
        }
        self._connection.execute(insert(invitations).values(row))

    def find(self, code_hash: str) -> Invitation | None:
        query = select(invitations).where(invitations.c.code_hash == code_hash)
        row = self._connection.execute(query).one_or_none()
        return Invitation(row.person, row.expires_at, row.used_at) if row else None

    def use(self, code_hash: str, now: datetime) -> bool:
        unused = (
            invitations.c.code_hash == code_hash,
            invitations.c.used_at.is_(None),
            invitations.c.expires_at > now,
        )
        used = update(invitations).where(*unused).values(used_at=now)
        return self._connection.execute(used).rowcount == 1

    def withdraw(self, person: int) -> None:
        unused = (invitations.c.person == person, invitations.c.used_at.is_(None))
        self._connection.execute(delete(invitations).where(*unused))

    def guessed(self, account: int, now: datetime) -> int:
        mine = guesses.c.account_lookup == str(account)
        old = guesses.c.at <= now - GUESSES_COUNT_FOR
        self._connection.execute(delete(guesses).where(mine, old))
        made = insert(guesses).values(account_lookup=str(account), at=now)
        self._connection.execute(made)
        count = select(func.count()).select_from(guesses).where(mine)
        return int(self._connection.execute(count).scalar_one())
