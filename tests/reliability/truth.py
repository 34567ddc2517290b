"""The checker of the journeys, told which answer belongs to which update instead of taking turns.

After a fault an answer may come twice, or after that to a later update (safety messages go first): the
outbox knows which is which. What is asserted is the same.
"""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import datetime, timedelta

from sqlalchemy import Connection, select

from storage.tables import InboxRow, OutboxRow, table
from tests.journeys.facts import Facts, Row
from tests.journeys.invariants import OWN_ACCORD, Replay
from tests.journeys.log import Line, Said


class Exact(Replay):
    """`owners` names the outbox row of each of the bot's lines, `answers` the update that a row answers.

    `back` are the instants at which the bot came up: what was said before is heard then.
    """

    within = timedelta(minutes=5)
    """Where sends are refused and cut, the message and the flag each come when their turn has come again."""

    def __init__(
        self, facts: Facts, lines: Sequence[Line], ledger: Sequence[Row],
        owners: Mapping[int, int], answers: Mapping[int, int], back: Sequence[datetime] = (),
    ) -> None:  # fmt: skip
        super().__init__(facts, lines, ledger)
        self._owners, self._answers, self._back = owners, answers, back

    def run(self) -> list[str]:
        seen: set[int] = set()
        for line in self.lines:
            if not line.bot:
                self.waiting.append(line)
                continue
            row = self._owners[line.n]
            if not line.texts or row in seen:
                if line.texts and line.ids[0] == "prompt":
                    self.fault("R2", line, "a prompt was accepted twice")
                continue  # a copy of what was read before
            seen.add(row)
            update = self._answered(line, row)
            for each in line.texts:
                self.see(each, line, update)
        self.at_the_end()
        return self.faults

    def _answered(self, line: Line, row: int) -> Line | None:
        found = [each for each in self.waiting if each.update == self._answers.get(row)]
        if line.ids[0] in OWN_ACCORD and row not in self._answers:
            return None
        for each in found:
            self.waiting.remove(each)
            self.answers.append((each, line))
        return found[0] if found else None

    def prompt(self, said: Said, line: Line) -> None:
        """A day whose first prompt never arrived has no opening: its bouts are those of the plan."""
        super().prompt(said, line)
        bouts = -(-self.facts.total // self.facts.bout_reps)
        self.planned.setdefault(self.facts.day(line.at), bouts)

    def told_at_once(self, said: Said, line: Line, update: Line | None) -> None:
        back = [at for at in self._back if at <= line.at]
        if update is not None and back:
            update = replace(update, at=max(update.at, *back))
        super().told_at_once(said, line, update)


def answers(connection: Connection) -> dict[int, int]:
    """The update that each answering row of the outbox is for."""
    rows = table(OutboxRow)
    found = connection.execute(select(rows.c.id, rows.c.key))
    return {
        row.id: int(row.key.partition(":")[2]) for row in found if row.key.startswith("answer:")
    }


def unheard(connection: Connection) -> dict[int, set[int]]:
    """Bouts of each client of whose end the chat may say nothing.

    The bot never learned that the prompt arrived; or what it wrote on it when its time was up was lost, which
    is not repeated, or was held up by a fault: all that is more urgent passes it then, the next prompt too.
    """
    rows = table(OutboxRow)
    found: dict[int, set[int]] = defaultdict(set)
    for row in connection.execute(select(rows)):
        if row.state == "unknown" and row.bout is not None and not row.nudge:
            found[row.person].add(row.bout)
        if row.key.startswith("expired:") and row.accepted_at != row.written_at:
            found[row.person].add(int(row.key.partition(":")[2]))
    return found


def updates(connection: Connection) -> dict[int, str]:
    """Where each update that the bot has stored stands."""
    rows = table(InboxRow)
    return {row.update_id: row.state for row in connection.execute(select(rows))}


def letters(connection: Connection) -> dict[int, tuple[str, str, str]]:
    """Each row of the outbox: its key, where it stands, and why it was dropped."""
    rows = table(OutboxRow)
    query = select(rows.c.id, rows.c.key, rows.c.state, rows.c.reason)
    return {row.id: (row.key, row.state, row.reason or "") for row in connection.execute(query)}
