"""Names, phones, notes and free text rest encrypted (D4). All ours."""

from dataclasses import replace
from pathlib import Path

import pytest
from sqlalchemy import URL, Connection

from scheduler.domain.flags import Flag
from scheduler.domain.messages import Lane, message
from scheduler.domain.people import Clearance
from scheduler.domain.plan import Level
from scheduler.ports import Outgoing, Question, Tx
from storage.engine import Database
from storage.keys import Keyring, new_key
from storage.store import SqlStore
from storage.tables import metadata
from storage.vault import unlock
from tests.storage.clinic import NOW, PLAN, TODAY, begun, client, clinician, day_of, planned

CANARY, ACCOUNT = "Canary Ümlaut", 2**52 - 12345


def tell_everything(tx: Tx) -> None:
    """The canary in every place that a name, a phone, a note or a free word can come to."""
    hers = clinician(tx, name=CANARY).id
    who = client(tx, hers, ACCOUNT, CANARY).id
    tx.people.save_client(replace(tx.people.client(who), phone=CANARY, readiness=(CANARY,)))
    planned(tx, who, replace(PLAN, note=CANARY))
    day_of(tx, who)
    tx.plans.clear(Clearance(who, Level.LOW, hers, NOW))
    tx.plans.lapse(who, CANARY, NOW)
    tx.health.report(who, "pain", TODAY, NOW, {"words": CANARY})
    details = {"words": CANARY, "account": ACCOUNT}
    flag = tx.flags.open(Flag(who, hers, "pain", True, "pain:1", NOW, details))
    assert flag
    tx.flags.close(flag.id, "note", hers, CANARY, NOW)
    tx.questions.ask(Question(who, "pass", "yes-no", {"words": CANARY}, NOW))
    tx.outbox.add(Outgoing("a", Lane.FLAG, message("flag", name=CANARY), person=hers), NOW)
    tx.outbox.add(Outgoing("b", Lane.ANSWER, message("x", words=CANARY), chat=ACCOUNT), NOW)
    tx.inbox.keep(1, ACCOUNT, {"text": CANARY, "chat": {"id": ACCOUNT}}, NOW)
    tx.invitations.guessed(ACCOUNT, NOW)
    tx.book.put("phone", CANARY)
    tx.book.audit(hers, "phone", who, NOW, before=None, after=CANARY)


def at_rest(database: Database) -> str:
    """Every stored value as the engine has it; on SQLite the files too."""

    def dump(connection: Connection) -> str:
        tables = [connection.exec_driver_sql(f"SELECT * FROM {name}") for name in metadata.tables]
        return repr([tuple(row) for rows in tables for row in rows])

    text = database.run_sync(dump)
    if database.dialect == "sqlite":
        path = Path(str(database.engine.url.database))
        files = sorted(path.parent.glob(f"{path.name}*"))
        assert [file.name.removeprefix(path.name) for file in files] == ["", "-shm", "-wal"]
        text += "".join(file.read_bytes().decode("utf-8", "replace") for file in files)
    return text


@pytest.mark.parametrize("key", ["none", "a key"])
def test_names_words_phones_and_accounts_are_at_rest_only_without_a_key(
    database_at: URL, key: str
) -> None:
    database = Database(database_at, Keyring.parse(new_key() if key == "a key" else key))
    unlock(database)
    store = SqlStore(database)
    store.run_sync(tell_everything)
    begun(store)
    readable = key == "none"
    text = at_rest(database)
    assert [word in text for word in (CANARY, str(ACCOUNT))] == [readable, readable]
    assert (text.count(CANARY) >= 14) is readable  # it has been to all those places
    assert [person.name for person in store.run_sync(lambda tx: tx.people.everyone())] == [
        CANARY
    ] * 2
    database.close_sync()
