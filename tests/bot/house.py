"""A furnished practice inside one open transaction, and what every row of its store tells of a press."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any

from sqlalchemy import Connection, select

from bot.telegram.handlers import dispatch
from bot.telegram.incoming import incoming
from scheduler.domain.companions import CATALOGUE
from scheduler.domain.days import Day
from scheduler.domain.messages import Message
from scheduler.domain.people import Role, State
from scheduler.domain.steptest import StepTest
from scheduler.ports import Outgoing, Question
from scheduler.usecases import digests, join, times
from storage.outbox import Outbox
from storage.store import SqlTx
from storage.tables import OutboxRow, metadata, table
from tests.journeys.desk import Desk
from tests.journeys.rooms import ANN, BO, DANA, EVE, GIL, IDS, KIM, MONDAY, ROLES, UPDATES, at

STRANGER = KIM + 500
ASIDE = 7
"""The number of an update that was set aside."""
POST = {"outbox", "inbox", "secret", "tap"}
"""Tables that are not facts about people."""
HEARD = "heard_at"
"""When anything last came from a client: every press of hers says that, whatever comes of it (H8)."""
APPEND_ONLY = {"ledger", "plan", "report", "audit"}
OF_CLIENT = {
    *("week", "day", "bout", "ledger", "report", "hold", "flag", "pause", "companion_entry"),
    "step_test",
}
OF_CLINICIAN = {"plan", "clearance", "hold", "pause", "flag", "day", "bout", "step_test"}
OF_ADMIN = {"setting", "cover", "invitation", "person", "client", "question", "bout"}
ERASE = "ery"
"""The verb by which an admin removes every row of a client's, of whatever table."""
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
        self.erasing = False
        self.tx.outbox = self.post
        self.tables = [t for t in metadata.sorted_tables if t.name not in POST]
        self.owner = {IDS[who]: IDS[clinician] for who, clinician in OWNERS.items()}

    # --- what people do ---

    def press(self, who: int, data: str) -> Message:
        """Press with any data, each time under another message; the answer."""
        self.erasing = data.startswith(f"{ERASE}:")
        return self._update(
            callback_query={
                "id": "1", **self._from(who), "data": data,
                "message": {"message_id": self.updates, "chat": {"id": who, "type": "private"}},
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

    def shared_her_place(self) -> None:
        times.propose_zone(self.tx, IDS[ANN], "Europe/Madrid", self.now)

    def ann_has_a_companion(self) -> None:
        self._replan(companions=(CATALOGUE["back-raise"],))

    def ann_picks_her_days(self) -> None:
        self._replan(weekdays=())
        asked = Question(IDS[ANN], "join", "times-days", {"days": [0, 3]}, self.now)
        self.tx.questions.ask(asked)

    def _replan(self, **changes: Any) -> None:
        version = self.tx.plans.latest(IDS[ANN])
        assert version is not None
        plan = replace(version.plan, **changes)
        self.tx.plans.add(IDS[ANN], plan, MONDAY, IDS[DANA], self.now)

    def tested(self) -> None:
        """Ann, who may do it at home, and Gil have logged a step test each, Dana and Eve others."""
        for who, clinician in ((ANN, DANA), (GIL, EVE)):
            client = self.tx.people.client(IDS[who])
            client = replace(client, step_home=who == ANN, stepped_on=MONDAY)
            self.tx.people.save_client(client)
            for by in (clinician, who):
                test = StepTest(0, IDS[who], MONDAY, self.now, (1480, 1620), IDS[by])
                self.tx.steptests.add(test, f"house:{by}")

    def tested_by_the_clinician(self) -> None:
        """The latest tests of Ann and of Gil are those that Dana and Eve logged."""
        self.tested()
        for who in (ANN, GIL):
            self.tx.steptests.take_back(self.tx.steptests.of(IDS[who])[-1].id, self.now)

    def asked_about_the_week(self) -> None:
        monday, tuesday, thursday = (str(MONDAY + timedelta(days=n)) for n in (0, 1, 3))
        bodies: dict[str, dict[str, Any]] = {
            "week": {"start": monday, "days": [monday, thursday]},
            "make-up": {"day": monday, "instead": tuesday},
            "weekly": {"day": monday},
        }
        for kind, body in bodies.items():
            self.tx.questions.ask(Question(IDS[ANN], kind, "asked", body, self.now))

    def digests_were_made(self) -> None:
        """One of Dana's, number 1, and one of Eve's, number 2."""
        for who in (DANA, EVE):
            clinician = self.tx.people.get(IDS[who])
            assert clinician is not None
            body = digests.build(self.tx, clinician, MONDAY, self.now)
            self.tx.digests.keep(clinician.id, MONDAY, body, self.now)

    def days_were_judged(self) -> None:
        """One closed day each of Ann's and Gil's."""
        for who in (ANN, GIL):
            version = self.tx.plans.latest(IDS[who])
            assert version is not None
            day = Day(IDS[who], MONDAY - timedelta(days=4), version.id, 40, ())
            closed = replace(day, closed_at=self.now, verdict="missed", why="no-answer")
            self.tx.days.save(closed)

    def an_update_was_set_aside(self) -> None:
        """One of Ann's: number 7."""
        self.tx.inbox.keep(ASIDE, ANN, {"message": {"text": "it hurts"}}, self.now)
        self.tx.inbox.claim(self.now, "house", timedelta(minutes=1), 1)
        assert self.tx.inbox.failed(ASIDE, "house", None, "ValueError at heard:1")

    def kim_is_a_clinician_too(self) -> None:
        person = join.enrol(self.tx, None, Role.CLINICIAN, "Kim", "qps", None, self.now)
        second = replace(person, account=KIM, state=State.READY, acting=False)
        self.tx.people.save(second)

    # --- what the store holds ---

    def ids(self) -> dict[str, int]:
        """What a case's data name: people, open prompts, flags."""
        names = {"ann": IDS[ANN], "gil": IDS[GIL], "dana": IDS[DANA], "kim": IDS[KIM]}
        covers = self.tx.staff.covers(IDS[DANA])
        names |= {"eve": IDS[EVE], "cover": covers[0].id if covers else 0}
        for name, who in (("ann", ANN), ("gil", GIL)):
            names[f"{name}_bout"] = (
                self.tx.days.open_bouts(IDS[who])[0].id if self._open(who) else 0
            )
            flags = self.tx.flags.of_client(IDS[who])
            names[f"{name}_flag"] = flags[0].id if flags else 0
            tests = self.tx.steptests.of(IDS[who])
            names[f"{name}_test"] = tests[-1].id if tests else 0
            pauses = self.tx.pauses.of(IDS[who], MONDAY)
            names[f"{name}_break"] = pauses[-1].id if pauses else 0
        return names

    def _open(self, who: int) -> bool:
        return bool(self.tx.days.open_bouts(IDS[who]))

    def rows(self) -> Rows:
        """Every row of every table of facts, by its key."""
        return {t.name: self._rows(t) for t in self.tables}

    def _rows(self, t: Any) -> dict[Any, Mapping[str, Any]]:
        key = [column.name for column in t.primary_key]
        found = self.connection.execute(select(t)).mappings()
        return {
            tuple(row[name] for name in key): {k: v for k, v in row.items() if k != HEARD}
            for row in found
        }

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
            self.afresh()

    def afresh(self) -> None:
        """After something was taken back: nothing that was read of it is remembered."""
        self.tx = SqlTx(self.connection)
        self.tx.outbox = self.post

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
        erased = self.erasing and ROLES.get(who) is Role.ADMIN
        if person is None or (name in APPEND_ONLY and old is not None and not erased):
            return False
        if name == "audit":
            by_itself = (
                row["who"] is None and row["about"] == person
            )  # a clearance that lapses (C2)
            return bool(row["who"] == person or by_itself or (erased and new and not new["change"]))
        own = name in {"question", "staff"} and row["person"] == person
        if name == "setting" and ROLES.get(who) is Role.CLINICIAN:
            own = str(row["name"]).startswith("card:")  # how an exercise is shown (C7)
        if own or (name == "person" and row["id"] == person and _only_language(old, new)):
            return True
        match ROLES.get(who, Role.CLIENT):
            case Role.CLIENT:
                return self._client_may(person, name, row)
            case Role.CLINICIAN:
                about = row.get("client", row["id"] if name == "client" else row.get("person"))
                allowed = name in OF_CLINICIAN or name in {"client", "question"}
                return allowed and self.owner.get(about) == person
            case _:
                gone = self.erasing and (new is None or name == "digest")
                return name in OF_ADMIN or gone or _told_of_discharge(name, old, row)

    def _client_may(self, person: int, name: str, row: Mapping[str, Any]) -> bool:
        own = (
            name == "flag" and row["kind"] == "break"
        )  # she ends her own break, and its flag with it
        if row.get("released_at") or (row.get("closed_at") and not own):
            return False  # only a clinician releases a hold and closes another flag
        if name in {"client", "person"}:
            return bool(row["id"] == person)
        if name == "clearance":
            return bool(row["client"] == person and row["lapsed_at"])
        return name in OF_CLIENT and row["client"] == person


def _told_of_discharge(name: str, old: Mapping[str, Any] | None, row: Mapping[str, Any]) -> bool:
    """Whether it is new, and says what was open when an admin discharged a client: her clinician is told."""
    if old is not None:
        return False
    if name == "flag":
        return bool(row["kind"] == "question-open")
    return name == "report" and bool(row["body"].get("outcome") == State.DISCHARGED.value)


def _only_language(old: Mapping[str, Any] | None, new: Mapping[str, Any] | None) -> bool:
    """Whether a person's row differs in the language alone: everybody's own to choose."""
    return bool(old and new) and {**(old or {}), "language": ""} == {**(new or {}), "language": ""}


OWNERS = {ANN: DANA, BO: DANA, GIL: EVE}


def changes(before: Rows, after: Rows) -> list[Change]:
    """Rows that are new, gone or different."""
    return [
        (name, before[name].get(key), after[name].get(key))
        for name in before
        for key in before[name].keys() | after[name].keys()
        if before[name].get(key) != after[name].get(key)
    ]
