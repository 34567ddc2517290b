"""The store: one transaction with everything that can be asked of it."""

from collections.abc import Callable
from typing import TypeVar

from sqlalchemy import Connection

from scheduler import ports
from storage.archive import Archive
from storage.aside import Aside
from storage.book import Book
from storage.bouts import Ledger
from storage.breaks import Pauses
from storage.companions import Companions
from storage.days import Days
from storage.engine import Database
from storage.flags import Flags, Health
from storage.inbox import Inbox
from storage.invitations import Invitations
from storage.leases import Leases
from storage.memo import Memo
from storage.outbox import Outbox
from storage.people import People
from storage.plans import Plans
from storage.questions import Questions
from storage.staff import Digests, Staffing
from storage.standing import Standings
from storage.steptests import StepTests
from storage.taps import Taps
from storage.weeks import Weeks

Result = TypeVar("Result")


class SqlTx:
    """One open transaction, as `scheduler.ports.Tx`. It is begun and ended around it, by `SqlStore`."""

    def __init__(self, connection: Connection) -> None:
        memo = Memo()
        self.people: ports.People = People(connection, memo)
        self.invitations: ports.Invitations = Invitations(connection)
        self.plans: ports.Plans = Plans(connection, memo)
        self.days: ports.Days = Days(connection, memo)
        self.ledger: ports.Ledger = Ledger(connection, memo)
        self.weeks: ports.Weeks = Weeks(connection, memo)
        self.pauses: ports.Pauses = Pauses(connection, memo)
        self.companions: ports.Companions = Companions(connection)
        self.steptests: ports.StepTests = StepTests(connection)
        self.health: ports.Health = Health(connection, memo)
        self.flags: ports.Flags = Flags(connection, memo)
        self.questions: ports.Questions = Questions(connection, memo)
        self.taps: ports.Taps = Taps(connection)
        self.staff: ports.Staffing = Staffing(connection)
        self.digests: ports.Digests = Digests(connection)
        self.book: ports.Book = Book(connection)
        self.outbox: ports.Outbox = Outbox(connection, self.book)
        self.inbox: ports.Inbox = Inbox(connection)
        self.leases: ports.Leases = Leases(connection)
        self.aside: ports.Aside = Aside(connection)
        self.archive: ports.Archive = Archive(connection, memo)
        self.standing: ports.Standings = Standings(connection, self.book)


class SqlStore:
    """The store over one database, as `scheduler.ports.Store`."""

    def __init__(self, database: Database) -> None:
        """`database` has the current schema and is unlocked (`migrate.upgrade`, `vault.unlock`)."""
        self._database = database

    async def run(self, work: Callable[[ports.Tx], Result], *, alone: bool = False) -> Result:
        """Run `work` in one transaction: all of it is kept, or nothing if it raises.

        It may be run more than once, each time from the start (see `Database.run`).
        """
        return await self._database.run(lambda connection: work(SqlTx(connection)), alone=alone)

    def run_sync(self, work: Callable[[ports.Tx], Result]) -> Result:
        """`run` for commands, which have no event loop. Blocks."""
        return self._database.run_sync(lambda connection: work(SqlTx(connection)))
