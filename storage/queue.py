"""Which outbox rows may leave now, in SQL: the conditions, the order, and the claiming query.

Of a chat's rows one leaves at a time. The chat of a row is the person's account, or for somebody who
is nobody yet the chat itself; `chat` below is the lookup of either, which are the same for the same
chat. Values of `state` are written out, so that the partial indexes are used. Statements are run with
`now` and `oldest`: a prompt due before `oldest` is too late (`now` less what the practice allows).
"""

from typing import Any

from sqlalchemy import (
    ColumnElement,
    CompoundSelect,
    Connection,
    FromClause,
    Integer,
    Select,
    and_,
    bindparam,
    func,
    literal_column,
    or_,
    select,
)

from storage.tables import DepartureRow, OutboxRow, PersonRow, table

Rows = Select[*tuple[Any, ...]]
CLAIMING = 0x706F7374  # "post"; an advisory lock, see `one_at_a_time`

outbox = table(OutboxRow)
persons = table(PersonRow)
departures = table(DepartureRow)

ADDRESSED = outbox.outerjoin(persons, persons.c.id == outbox.c.person)
CHAT = func.coalesce(persons.c.account_lookup, outbox.c.chat_lookup)
DUE = outbox.c.state == literal_column("'due'")
UNSENT = outbox.c.state.in_([literal_column("'due'"), literal_column("'claimed'")])
AT_WORK = outbox.c.state.in_([literal_column("'claimed'"), literal_column("'sending'")])
REACHABLE = or_(
    outbox.c.chat_lookup.is_not(None),
    and_(persons.c.account_lookup.is_not(None), ~persons.c.blocked),
)
IN_TIME = or_(outbox.c.bout.is_(None), outbox.c.due_at >= bindparam("oldest"))
COULD_LEAVE = (DUE, REACHABLE, IN_TIME)
"""Due now or later, to somebody who can be reached, and no prompt that is too late."""
READY = outbox.c.ready_at <= bindparam("now")
ORDER = (outbox.c.lane, outbox.c.due_at, outbox.c.id)
OVER = outbox.c.lease_until < bindparam("now")
EVERY_LANE = literal_column("-1", Integer)

ON_THEIR_WAY = (
    select(CHAT.label("chat"), EVERY_LANE.label("lane"))
    .select_from(ADDRESSED)
    .where(AT_WORK, outbox.c.lease_until >= bindparam("now"))
)
"""Chats with a row that somebody is sending: every lane waits."""
PUT_BACK = (
    select(CHAT.label("chat"), outbox.c.lane)
    .select_from(ADDRESSED)
    .where(outbox.c.put_back_until.is_not(None), outbox.c.put_back_until > bindparam("now"))
)
"""Chats with a row that was put back until later, and its lane.

It is still before the rows written after it: only more urgent lanes may pass.
"""
LATELY = select(departures.c.chat, EVERY_LANE.label("lane")).where(
    departures.c.leaves_at > bindparam("lately")
)
"""Chats whose last message left less than their pace ago (R3): every lane waits."""
LETTERS = select(
    outbox,
    persons.c.account,
    persons.c.role,
    persons.c.language.label("person_language"),
).select_from(ADDRESSED)
"""Outbox rows with what their letters need of the recipient."""


def one_at_a_time(connection: Connection) -> None:
    """On PostgreSQL, let one transaction after the other choose rows to claim.

    Row locks alone keep two workers from one row, but not from two rows of one chat, when the second
    worker's view is a moment older. SQLite has one writer at a time anyway.
    """
    if connection.dialect.name == "postgresql":
        connection.execute(select(func.pg_advisory_xact_lock(CLAIMING)))


def _beside_busy_chats(
    busy: CompoundSelect[*tuple[Any, ...]] | Rows,
) -> tuple[FromClause, ColumnElement[bool]]:
    """The outbox with `busy` beside it, and the condition that a row waits for none of `busy`.

    The few busy chats are worked out once, and not for every row that is due.
    """
    before = busy.cte("busy").prefix_with("MATERIALIZED")
    is_before = and_(before.c.chat == CHAT, before.c.lane <= outbox.c.lane)
    return ADDRESSED.outerjoin(before, is_before), before.c.chat.is_(None)


def _next_ids() -> Rows:
    turn = func.row_number().over(partition_by=CHAT, order_by=ORDER).label("turn")
    beside, free = _beside_busy_chats(ON_THEIR_WAY.union_all(PUT_BACK, LATELY))
    rows = select(*ORDER, turn).select_from(beside).where(*COULD_LEAVE, READY, free).subquery()
    order = (rows.c.lane, rows.c.due_at, rows.c.id)
    return select(rows.c.id).where(rows.c.turn == 1).order_by(*order).limit(bindparam("most"))


def _first_ready() -> Rows:
    beside, free = _beside_busy_chats(ON_THEIR_WAY.union_all(PUT_BACK))
    return (
        select(outbox.c.ready_at)
        .select_from(beside)
        .where(*COULD_LEAVE, or_(~READY, free))
        .order_by(outbox.c.ready_at)
        .limit(1)
    )


def _count_waiting() -> Rows:
    beside, free = _beside_busy_chats(PUT_BACK)
    at_once = select(outbox.c.id).select_from(beside).where(*COULD_LEAVE, READY, free)
    begun = select(outbox.c.id).where(AT_WORK)
    return select(func.count()).select_from(at_once.union_all(begun).subquery())


ANY_READY = select(outbox.c.id).where(DUE, READY).limit(1)
"""A look whether there may be anything to claim; mostly there is not."""
NEXT_IDS = _next_ids()
"""The rows to claim: the first of each chat that may go on, in the order of leaving, at `most` so many."""
STILL_DUE = (
    LETTERS.where(outbox.c.id.in_(bindparam("these", expanding=True)), DUE)
    .order_by(*ORDER)
    .with_for_update(of=outbox, skip_locked=True)
)
"""Of `these` rows, those that nobody else has got hold of: locked, with all their letters need.

A statement of its own. In one with the choice PostgreSQL, which takes the due rows of a table of past
ones for a single one, made that choice again for each of them: a second for 1,000.
"""
ANY_OVER = select(outbox.c.id).where(AT_WORK, OVER).limit(1)
"""A look whether any lease has ended; hardly ever one has."""
NEXT = select(
    _first_ready().scalar_subquery(),
    select(func.min(outbox.c.lease_until)).where(AT_WORK).scalar_subquery(),
)
"""When the next row can be looked at (in the past only if it can leave at once), and the first lease ends."""
COUNT_WAITING = _count_waiting()
"""How many rows are on their way, or will be without any time going by."""
