"""A furnished practice inside one open transaction, and what every row of its store tells of a press."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import replace
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, select

from bot.telegram.handlers import dispatch
from bot.telegram.incoming import incoming
from scheduler.domain.messages import Message
from scheduler.domain.people import Role, State
from scheduler.ports import Outgoing, Question
from scheduler.usecases import join
from storage.outbox import Outbox
from storage.store import SqlTx
from storage.tables import OutboxRow, metadata, table
from tests.journeys.desk import Desk
from tests.journeys.rooms import ANN, BO, DANA, EVE, GIL, IDS, KIM, ROLES, UPDATES, at

STRANGER = KIM + 500
POST = {"outbox", "inbox", "secret"}
"""Tables that are not facts about people."""
APPEND_ONLY = {"ledger", "plan", "report", "audit"}
OF_CLIENT = {"day", "bout", "ledger", "report", "hold", "flag"}
OF_CLINICIAN = {"plan", "clearance", "hold", "flag", "day", "bout"}
OF_ADMIN = {"setting", "invitation", "person", "client", "question", "bout"}
"""What each role may change: a client her own facts, a clinician those of her clients, an admin no health."""

PRESCRIBED = (f"cr:{IDS[GIL]}", f"cc:{IDS[GIL]}:moderate", f"cp:{IDS[GIL]}", "dp", "ds:1")

Rows = dict[str, dict[Any, Mapping[str, Any]]]
Change = tuple[str, Mapping[str, Any] | None, Mapping[str, Any] | None]


async def furnish(desk: Desk) -> None:
    """Ann and Gil each have a prompt open at eight, Bo has opened his link and agreed to nothing yet."""
    for button in PRESCRIBED:
        await desk.forge(EVE, button)
    code = await desk.run(lambda tx: join.invite(tx, None, IDS[BO], desk.now))
    await desk.say(BO, f"/start {code}")
    await desk.step(at(8, 1))


class Post(Outbox):
    """The real outbox, but that answers are kept here as values."""

    answers: list[Outgoing]

    def add(self, outgoing: Outgoing, now: datetime) -> bool:
        if not outgoing.key.startswith("answer:"):
            return super().add(outgoing, now)
        self.answers.append(outgoing)
        return True


class House:
    """One transaction of the practice at 08:01. Presses are carried out in it, and taken back."""

    def __init__(self, connection: Connection) -> None:
        self.connection, self.tx, self.now = connection, SqlTx(connection), at(8, 1)
        self.updates = UPDATES * 2
        self.post = Post(connection, self.tx.book)
        self.post.answers = []
        self.tx.outbox = self.post
        self.tables = [t for t in metadata.sorted_tables if t.name not in POST]
        self.owner = {IDS[who]: IDS[clinician] for who, clinician in OWNERS.items()}

    # --- what people do ---

    def press(self, who: int, data: str) -> Message:
        """Press with any data; the answer."""
        return self._update(
            callback_query={
                "id": "1", **self._from(who), "data": data,
                "message": {"message_id": 1, "chat": {"id": who, "type": "private"}},
            }
        )  # fmt: skip

    def say(self, who: int, text: str) -> Message:
        said = {"message_id": 1, "date": int(self.now.timestamp()), "text": text}
        chat = {"id": who, "type": "private"}
        return self._update(message={**said, **self._from(who), "chat": chat})

    def _from(self, who: int) -> dict[str, Any]:
        return {"from": {"id": who, "is_bot": False, "language_code": "en"}}

    def _update(self, **content: Any) -> Message:
        self.updates += 1
        update = incoming({"update_id": self.updates, **content}, self.now)
        assert update is not None
        dispatch.handle(self.tx, update, self.now)
        (answer,) = self.post.answers
        self.post.answers.clear()
        return answer.message

    def asked_in_the_morning(self) -> None:
        self.tx.questions.ask(Question(IDS[ANN], "morning", "score", asked_at=self.now))

    def kim_is_a_clinician_too(self) -> None:
        person = join.enrol(self.tx, None, Role.CLINICIAN, "Kim", "qps", None, self.now)
        second = replace(person, account=KIM, state=State.READY, acting=False)
        self.tx.people.save(second)

    # --- what the store holds ---

    def ids(self) -> dict[str, int]:
        """What a case's data name: people, open prompts, flags."""
        names = {"ann": IDS[ANN], "gil": IDS[GIL], "dana": IDS[DANA], "kim": IDS[KIM]}
        for name, who in (("ann", ANN), ("gil", GIL)):
            names[f"{name}_bout"] = (
                self.tx.days.open_bouts(IDS[who])[0].id if self._open(who) else 0
            )
            flags = self.tx.flags.of_client(IDS[who])
            names[f"{name}_flag"] = flags[0].id if flags else 0
        return names

    def _open(self, who: int) -> bool:
        return bool(self.tx.days.open_bouts(IDS[who]))

    def rows(self) -> Rows:
        """Every row of every table of facts, by its key."""
        return {t.name: self._rows(t) for t in self.tables}

    def _rows(self, t: Any) -> dict[Any, Mapping[str, Any]]:
        key = [column.name for column in t.primary_key]
        found = self.connection.execute(select(t)).mappings()
        return {tuple(row[name] for name in key): dict(row) for row in found}

    def posted(self) -> list[Any]:
        """Everything on its way or sent, answers left out."""
        outbox = table(OutboxRow)
        return [tuple(row) for row in self.connection.execute(select(outbox).order_by(outbox.c.id))]

    def written(self) -> int:
        """Rows that SQLite has written on this connection so far, whatever was taken back."""
        raw: Any = self.connection.connection.driver_connection
        return int(raw.total_changes)

    @contextmanager
    def taken_back(self) -> Iterator[None]:
        """Whatever happens inside is undone."""
        savepoint = self.connection.begin_nested()
        try:
            yield
        finally:
            savepoint.rollback()

    # --- who may change what ---

    def wrongs(self, who: int, before: Rows, after: Rows) -> list[str]:
        """The changes that this person had no right to, one sentence each."""
        return [
            f"{name}: {old} -> {new}"
            for name, old, new in changes(before, after)
            if not self._may(who, name, old, new)
        ]

    def _may(
        self, who: int, name: str, old: Mapping[str, Any] | None, new: Mapping[str, Any] | None
    ) -> bool:
        row = new or old or {}
        person = IDS.get(who)
        if person is None or (name in APPEND_ONLY and old is not None):
            return False
        if name == "audit":
            return bool(row["who"] == person)
        if name == "question" and row["person"] == person:
            return True
        match ROLES.get(who, Role.CLIENT):
            case Role.CLIENT:
                return self._client_may(person, name, row)
            case Role.CLINICIAN:
                about = row.get("client", row["id"] if name == "client" else row.get("person"))
                allowed = name in OF_CLINICIAN or name in {"client", "question"}
                return allowed and self.owner.get(about) == person
            case _:
                return name in OF_ADMIN

    def _client_may(self, person: int, name: str, row: Mapping[str, Any]) -> bool:
        if row.get("released_at") or row.get("closed_at"):
            return False  # only a clinician releases a hold and closes a flag
        if name in {"client", "person"}:
            return bool(row["id"] == person)
        return name in OF_CLIENT and row["client"] == person


OWNERS = {ANN: DANA, BO: DANA, GIL: EVE}


def changes(before: Rows, after: Rows) -> list[Change]:
    """Rows that are new, gone or different."""
    return [
        (name, before[name].get(key), after[name].get(key))
        for name in before
        for key in before[name].keys() | after[name].keys()
        if before[name].get(key) != after[name].get(key)
    ]
