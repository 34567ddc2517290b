"""Unlocking a database: are its keys the right ones, and what is the secret behind its lookups?"""

import secrets

from sqlalchemy import Connection, Text, select, type_coerce, update

from storage.conflicts import INSERTS
from storage.engine import Database
from storage.keys import Keyring
from storage.tables import Secret, table

SECRET_BYTES = 32
LOOKUP = "lookup"

secret = table(Secret)


def unlock(database: Database) -> None:
    """Makes lookups work. Called once at start, when the schema is there. Blocks.

    The first call on a new database makes its lookup secret. After a rotation the secret is sealed
    again with the newest key; it stays the same, and so do all lookups. Raises WrongKeyError if the
    database was sealed with a key that is not on the keyring: better now than at the first name.
    """
    keyring = database.keyring
    stored = database.run_sync(lambda connection: _lookup_secret(connection, keyring))
    keyring.use_lookup_secret(bytes.fromhex(keyring.open(stored)))


def _lookup_secret(connection: Connection, keyring: Keyring) -> str:
    """The stored secret as it rests, sealed with the newest key."""
    fresh = secrets.token_hex(SECRET_BYTES)
    make = INSERTS[connection.dialect.name](secret).values(name=LOOKUP, value=fresh)
    connection.execute(make.on_conflict_do_nothing())
    mine = secret.c.name == LOOKUP
    as_stored = select(type_coerce(secret.c.value, Text)).where(mine)
    stored: str = connection.execute(as_stored).scalar_one()
    if not keyring.is_current(stored):
        connection.execute(update(secret).where(mine).values(value=keyring.open(stored)))
        stored = connection.execute(as_stored).scalar_one()
    return stored
