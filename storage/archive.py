"""Everything about one client: read for her own copy, and erased (D1)."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any

from sqlalchemy import (
    Column,
    ColumnElement,
    Connection,
    Table,
    and_,
    delete,
    exists,
    func,
    or_,
    select,
    update,
)

from scheduler.domain.people import Role
from scheduler.ports import Post
from storage.columns import EPOCH
from storage.engine import ERASED
from storage.memo import Memo
from storage.mentions import Hers, cleaned, says, strings
from storage.tables import (
    Arrival,
    AuditRow,
    BoutRow,
    ClearanceRow,
    ClientRow,
    CompanionEntryRow,
    DayRow,
    DigestRow,
    EntryRow,
    FlagRow,
    GuessRow,
    HoldRow,
    InboxRow,
    InvitationRow,
    OutboxRow,
    PauseRow,
    PersonRow,
    PlanRow,
    QuestionRow,
    ReportRow,
    StepTestRow,
    TapRow,
    WeekRow,
    table,
)

persons, clients = table(PersonRow), table(ClientRow)
outbox, inbox = table(OutboxRow), table(InboxRow)
flags, plans, digests = table(FlagRow), table(PlanRow), table(DigestRow)
questions, trail, guesses = table(QuestionRow), table(AuditRow), table(GuessRow)

READ_AT_ONCE = 500
A_DAY = timedelta(days=1)
FINAL = (Post.SENT, Post.UNKNOWN, Post.DROPPED)
NOT_HERS = frozenset({"client", "person"})
"""Columns that say only whose the row is."""


@dataclass(frozen=True, slots=True)
class Section:
    """A table of hers under the name it has in her record, in the order of its rows."""

    name: str
    table: Table
    owner: str = "client"

    @property
    def order(self) -> Column[Any]:
        key: Column[Any] = list(self.table.primary_key)[-1]
        return key


SECTIONS: tuple[Section, ...] = (
    Section("bouts_done", table(EntryRow)),
    Section("bouts_asked", table(BoutRow)),
    Section("companions", table(CompanionEntryRow)),
    Section("step_tests", table(StepTestRow)),
    Section("reports", table(ReportRow)),
    Section("holds", table(HoldRow)),
    Section("flags", flags),
    Section("breaks", table(PauseRow)),
    Section("weeks", table(WeekRow)),
    Section("days", table(DayRow)),
    Section("plans", plans),
    Section("clearances", table(ClearanceRow)),
    Section("questions", questions, "person"),
)
"""Those that refer to others come first: in this order they can be erased."""


class Archive:
    """All about one client; `scheduler.ports.Archive` says what is promised."""

    def __init__(self, connection: Connection, memo: Memo) -> None:
        self._connection, self._memo = connection, memo

    # --- read ---

    def of(self, client: int) -> Mapping[str, tuple[Mapping[str, Any], ...]]:
        found = {section.name: tuple(self._rows(section, client)) for section in SECTIONS}
        found["person"] = (self._person(client),)
        found["audit"] = tuple(self._audit(client))
        found["messages"] = tuple(self._messages(client))
        found["to_clinician"] = tuple(self._to_clinician(client))
        found["wrote"] = tuple(self._wrote(client))
        return found

    def counts(self, client: int) -> Mapping[str, int]:
        ledger, reports, tests = (table(row) for row in (EntryRow, ReportRow, StepTestRow))
        found = {
            "bouts": select(func.count()).where(
                ledger.c.client == client, ledger.c.voids.is_(None)
            ),
            "reports": select(func.count()).where(reports.c.client == client),
            "tests": select(func.count()).where(
                tests.c.client == client, tests.c.taken_back_at.is_(None)
            ),
        }
        counted = {name: self._connection.execute(query) for name, query in found.items()}
        return {name: int(each.scalar_one()) for name, each in counted.items()}

    def _rows(self, section: Section, client: int) -> Iterator[Mapping[str, Any]]:
        hers = section.table.c[section.owner] == client
        for row in self._all(select(section.table).where(hers).order_by(section.order)):
            yield {name: value for name, value in row.items() if name not in NOT_HERS}

    def _person(self, client: int) -> Mapping[str, Any]:
        both = select(clients, *(each for each in persons.c if each.name != "id"))
        one = both.join(persons, persons.c.id == clients.c.id).where(clients.c.id == client)
        row = dict(self._connection.execute(one).mappings().one())
        return {name: value for name, value in row.items() if name != "account_lookup"}

    def _audit(self, client: int) -> Iterator[Mapping[str, Any]]:
        roles = select(trail, persons.c.role.label("by")).outerjoin(
            persons, persons.c.id == trail.c.who
        )
        for row in self._all(roles.where(trail.c.about == client).order_by(trail.c.id)):
            yield {name: row[name] for name in ("id", "at", "action", "by", "change")}

    def _messages(self, client: int) -> Iterator[Mapping[str, Any]]:
        sent = outbox.c.state.in_([Post.SENT, Post.UNKNOWN])
        hers = select(outbox).where(outbox.c.person == client, sent).order_by(outbox.c.id)
        for row in self._all(hers):
            at = row["accepted_at"] or row["unknown_at"]
            yield {"id": row["id"], "at": at, "message": row["payload"]}

    def _to_clinician(self, client: int) -> Iterator[Mapping[str, Any]]:
        answers = outbox.c.key.startswith(f"from-client:{client}:", autoescape=True)
        told: set[str] = set()
        for row in self._all(select(outbox).where(answers).order_by(outbox.c.id)):
            answer, _, _ = row["key"].rpartition(":")
            if answer not in told:  # it may have gone to several readers
                told.add(answer)
                words = row["payload"][0]["args"].get("words", "")
                yield {"id": row["id"], "at": row["written_at"], "words": words}

    def _wrote(self, client: int) -> Iterator[Mapping[str, Any]]:
        hers = select(inbox).where(self._said_by(client)).order_by(inbox.c.update_id)
        for row in self._all(hers):
            yield {"id": row["update_id"], "at": row["received_at"], "update": row["payload"]}

    def _said_by(self, client: int) -> ColumnElement[bool]:
        """Updates of hers; those of which nothing says whose they are, if the account is hers alone."""
        chat = self._own_chat(client)
        return or_(inbox.c.said_by == client, and_(inbox.c.said_by.is_(None), inbox.c.chat == chat))

    def _own_chat(self, client: int) -> str | None:
        """The chat in which she has no other role than that of a client; `None` if there is none."""
        other = persons.alias("other")
        another = exists().where(
            other.c.account_lookup == persons.c.account_lookup, other.c.id != client
        )
        found = select(persons.c.account).where(persons.c.id == client, ~another)
        account: int | None = self._connection.execute(found).scalar_one_or_none()
        return None if account is None else str(account)

    def _all(self, query: Any) -> Iterator[Mapping[str, Any]]:
        for row in self._connection.execute(query).mappings():
            yield dict(row)

    # --- erased ---

    def erase(self, client: int) -> None:
        chat = self._own_chat(client)
        hers = self._hers(client)
        self._clean_outbox(hers)
        self._clean_inbox(hers)
        self._clean_digests(hers)
        self._clean_questions(hers)
        self._run(delete(inbox).where(self._said_by(client)))
        if chat is not None:
            self._run(delete(outbox).where(outbox.c.chat_lookup == chat))
            self._run(delete(guesses).where(guesses.c.account_lookup == chat))
        self._run(delete(SECTIONS[0].table).where(SECTIONS[0].table.c.client == client))
        self._run(delete(outbox).where(outbox.c.person == client))
        for section in SECTIONS[1:]:
            self._run(delete(section.table).where(section.table.c[section.owner] == client))
        for hers_alone in (table(InvitationRow), table(TapRow)):
            self._run(delete(hers_alone).where(hers_alone.c.person == client))
        about = or_(trail.c.about == client, trail.c.who == client)
        self._run(update(trail).where(about).values(change={}))
        self._run(delete(clients).where(clients.c.id == client))
        self._run(delete(persons).where(persons.c.id == client))
        self._memo.forget_all()
        self._connection.info[ERASED] = True

    def _run(self, statement: Any) -> None:
        self._connection.execute(statement)

    def _hers(self, client: int) -> Hers:
        """What tells her: her number, her flags' numbers, and all that was typed by or about her."""
        person = self._person(client)
        numbers = select(flags.c.id).where(flags.c.client == client)
        typed = {str(person["name"]), str(person["phone"])}
        for section in SECTIONS:
            for row in self._rows(section, client):
                typed |= set(strings(row))
        for message in self._messages(client):
            typed |= set(strings(message))
        shared = self._connection.execute(select(persons.c.name).where(persons.c.id != client))
        return Hers(
            client=client,
            name=str(person["name"]),
            flags=frozenset(self._connection.execute(numbers).scalars()),
            typed=frozenset(typed - set(shared.scalars()) - {""}),
            since=self._known_since(client),
        )

    def _known_since(self, client: int) -> datetime:
        """The day before she was enrolled: nothing older mentions her, and it need not be read."""
        first = select(func.min(trail.c.at)).where(trail.c.about == client)
        at: datetime | None = self._connection.execute(first).scalar_one()
        return at - A_DAY if at else EPOCH

    def _clean_outbox(self, hers: Hers) -> None:
        """Messages to others about her go; of a message about several, what is about her."""
        staff = select(persons.c.id).where(persons.c.role != Role.CLIENT)
        theirs = select(outbox.c.id, outbox.c.state, outbox.c.payload).where(
            outbox.c.person.in_(staff), outbox.c.written_at >= hers.since
        )
        for number, after in self._changed(
            theirs, lambda row: cleaned(row["payload"], hers, final=row["state"] in FINAL)
        ):
            mine = outbox.c.id == number
            if after:
                self._run(update(outbox).where(mine).values(payload=after))
            else:
                self._run(delete(outbox).where(mine))

    def _clean_digests(self, hers: Hers) -> None:
        bodies = select(digests.c.id, digests.c.body.label("payload"))
        for number, after in self._changed(
            bodies, lambda row: cleaned(row["payload"], hers, final=True)
        ):
            self._run(update(digests).where(digests.c.id == number).values(body=after))

    def _changed(
        self, query: Any, clean: Callable[[Mapping[str, Any]], Any]
    ) -> list[tuple[int, Any]]:
        found = self._connection.execute(query.execution_options(yield_per=READ_AT_ONCE))
        cleaned_rows = ((row["id"], row["payload"], clean(dict(row))) for row in found.mappings())
        return [(number, after) for number, before, after in cleaned_rows if after != before]

    def _clean_inbox(self, hers: Hers) -> None:
        """Updates of the staff's that were handled and hold what was typed about her."""
        accounts = select(persons.c.account_lookup).where(persons.c.role != Role.CLIENT)
        over = inbox.c.state.in_([Arrival.DONE, Arrival.ASIDE])
        theirs = select(inbox.c.update_id, inbox.c.payload).where(
            inbox.c.chat.in_(accounts), over, inbox.c.received_at >= hers.since
        )
        found = self._connection.execute(theirs.execution_options(yield_per=READ_AT_ONCE))
        these = [row.update_id for row in found if says(row.payload, hers)]
        for number in these:
            self._run(delete(inbox).where(inbox.c.update_id == number))

    def _clean_questions(self, hers: Hers) -> None:
        """What staff were about to do about her."""
        found = self._connection.execute(select(questions)).all()
        for row in found:
            body = row.body if isinstance(row.body, dict) else {}
            about = body.get("client") == hers.client or body.get("flag") in hers.flags
            if row.person != hers.client and about:
                mine = (questions.c.person == row.person, questions.c.kind == row.kind)
                self._run(delete(questions).where(*mine))
