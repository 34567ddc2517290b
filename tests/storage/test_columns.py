"""How values rest and come back, on both engines. What has no source on its line is ours."""

from datetime import UTC, date, datetime, timedelta, timezone
from enum import StrEnum
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

import pytest
from sqlalchemy import (
    Column,
    Connection,
    Integer,
    MetaData,
    Table,
    Text,
    create_engine,
    insert,
    select,
    type_coerce,
)
from sqlalchemy.exc import IntegrityError, StatementError

from storage.columns import CleanText, Day, Instant, Lookup, OneOf, Sealed
from storage.conflicts import INSERTS
from storage.engine import Database
from storage.keys import DamagedError, Keyring, WrongKeyError, new_key
from tests.conftest import on_sqlite

CANARY = "knee sore since Tuesday"
NOON = datetime(2027, 3, 8, 12, tzinfo=UTC)
TICK = timedelta(microseconds=1)


class State(StrEnum):
    OPEN = "open"
    CLOSED = "closed"


METADATA = MetaData()
ENTRY = Table(
    "one_of_each_type",
    METADATA,
    Column("id", Integer, primary_key=True),
    Column("at", Instant),
    Column("day", Day),
    Column("words", CleanText),
    Column("state", OneOf(State)),
    Column("note", Sealed),
    Column("who", Lookup, unique=True),
)


@pytest.fixture
def entries(database: Database) -> Database:
    database.run_sync(METADATA.create_all)
    return database


def keep(database: Database, **values: Any) -> None:
    database.run_sync(lambda connection: connection.execute(insert(ENTRY).values(**values)))


def kept(database: Database, name: str) -> list[Any]:
    """The values of a column, in the order in which the database sorts them."""
    query = select(ENTRY.c[name]).order_by(ENTRY.c[name])
    return database.run_sync(lambda connection: list(connection.execute(query).scalars()))


def at_rest(database: Database, name: str) -> list[str]:
    """What really stands in a text column."""
    query = select(type_coerce(ENTRY.c[name], Text)).order_by(ENTRY.c.id)
    return database.run_sync(lambda connection: list(connection.execute(query).scalars()))


@pytest.mark.parametrize(
    "instant",
    [
        NOON,
        NOON + TICK,
        NOON - TICK,
        datetime(1969, 12, 31, 23, 59, 59, 999_999, tzinfo=UTC),
        datetime.min.replace(tzinfo=UTC),
        datetime.max.replace(tzinfo=UTC),
    ],
)
def test_an_instant_comes_back_to_the_microsecond(entries: Database, instant: datetime) -> None:
    keep(entries, at=instant)
    (back,) = kept(entries, "at")
    assert back == instant
    assert back.tzinfo is UTC


def test_instants_sort_and_compare_as_time_does_in_whatever_zone_they_were_given(
    entries: Database,
) -> None:
    madrid, far_west = ZoneInfo("Europe/Madrid"), timezone(-timedelta(hours=11))
    order = [NOON - TICK, NOON, NOON + TICK, NOON + timedelta(seconds=1)]
    keep(entries, at=order[2].astimezone(far_west))
    keep(entries, at=order[3])
    keep(entries, at=order[0].astimezone(madrid))
    keep(entries, at=order[1])
    assert kept(entries, "at") == order
    due = select(ENTRY.c.at).where(ENTRY.c.at <= NOON.astimezone(madrid)).order_by(ENTRY.c.at)
    assert entries.run_sync(lambda it: list(it.execute(due).scalars())) == order[:2]


def test_the_hour_that_comes_twice_is_two_instants(entries: Database) -> None:
    # Madrid's clocks went back at 01:00 UTC on 31 October 2027: second-hand, the IANA data
    twice = datetime(2027, 10, 31, 2, 30, tzinfo=ZoneInfo("Europe/Madrid"))
    keep(entries, at=twice.replace(fold=0))
    keep(entries, at=twice.replace(fold=1))
    assert [f"{each:%H:%M}" for each in kept(entries, "at")] == ["00:30", "01:30"]


def test_an_instant_without_a_zone_is_refused(entries: Database) -> None:
    with pytest.raises(StatementError, match="has none"):
        keep(entries, at=NOON.replace(tzinfo=None))
    assert kept(entries, "at") == []


def test_a_day_is_a_date(entries: Database) -> None:
    keep(entries, day=date(2028, 2, 29))
    keep(entries, day=date(2027, 12, 31))
    assert kept(entries, "day") == [date(2027, 12, 31), date(2028, 2, 29)]


def test_an_instant_is_not_taken_for_a_day(entries: Database) -> None:
    with pytest.raises(StatementError, match="which zone"):
        keep(entries, day=NOON)


def test_words_that_one_engine_would_refuse_are_mended_on_both(entries: Database) -> None:
    keep(entries, words="did\0 12 \ud83d", note="did\0 12 \ud83d")
    assert kept(entries, "words") == kept(entries, "note") == ["did 12 \ufffd"]


def test_a_state_rests_as_its_value(entries: Database) -> None:
    keep(entries, state=State.OPEN)
    assert at_rest(entries, "state") == ["open"]
    assert kept(entries, "state") == [State.OPEN]
    assert type(kept(entries, "state")[0]) is State


def test_a_state_nobody_knows_is_refused_going_in_and_coming_out(entries: Database) -> None:
    with pytest.raises(StatementError, match="ajar"):
        keep(entries, state="ajar")
    with pytest.raises(ValueError, match="ajar"):
        entries.run_sync(_leave_ajar)


def _leave_ajar(connection: Connection) -> None:
    connection.exec_driver_sql("INSERT INTO one_of_each_type (state) VALUES ('ajar')")
    connection.execute(select(ENTRY.c.state)).all()


def test_nothing_stays_nothing(entries: Database) -> None:
    keep(entries, id=1)
    row = entries.run_sync(lambda connection: connection.execute(select(ENTRY)).one())
    assert list(row) == [1, None, None, None, None, None, None]


def test_a_note_comes_back_and_rests_sealed(entries: Database) -> None:
    note = {"words": CANARY, "score": 3, "signs": ["none"]}
    keep(entries, note=note)
    assert kept(entries, "note") == [note]
    assert at_rest(entries, "note")[0].startswith("aesgcm:")
    assert CANARY not in at_rest(entries, "note")[0]


def test_each_database_has_its_own_keys(entries: Database) -> None:
    """Two at once in one process, as a restore has them, and with the same tables."""
    keep(entries, id=1, note=CANARY)
    other = Database(entries.engine.url, Keyring.parse(new_key()))
    keep(other, id=2, note="other words")
    for mine, database in ((1, entries), (2, other)):
        query = select(ENTRY.c.note).order_by(ENTRY.c.id)
        own = query.where(ENTRY.c.id == mine)
        assert database.run_sync(lambda it, own=own: it.execute(own).scalar_one())  # type: ignore[misc]
        with pytest.raises(WrongKeyError):
            database.run_sync(lambda it, all_=query: it.execute(all_).all())  # type: ignore[misc]
    other.close_sync()


def test_a_damaged_note_is_refused(entries: Database) -> None:
    keep(entries, note=CANARY)
    cut = "UPDATE one_of_each_type SET note = substr(note, 1, length(note) - 1)"
    entries.run_sync(lambda connection: connection.exec_driver_sql(cut))
    with pytest.raises(DamagedError):
        kept(entries, "note")


def test_a_sealed_column_is_never_compared(entries: Database) -> None:
    with pytest.raises(TypeError, match="Lookup"):
        select(ENTRY).where(ENTRY.c.note == CANARY)
    empty = select(ENTRY).where(ENTRY.c.note.is_(None))
    assert entries.run_sync(lambda connection: connection.execute(empty).all()) == []


def test_a_person_is_found_by_what_is_not_stored(entries: Database) -> None:
    keep(entries, who="4711", id=1)
    keep(entries, who="4712", id=2)
    assert not any("471" in text for text in at_rest(entries, "who") if len(text) != 64)
    for query in (ENTRY.c.who == "4711", ENTRY.c.who.in_(["4711", "4713"])):
        found = select(ENTRY.c.id).where(query)
        assert entries.run_sync(lambda it, found=found: it.execute(found).scalars().all()) == [1]  # type: ignore[misc]


def test_the_same_person_twice_is_refused_by_the_database(entries: Database) -> None:
    keep(entries, who="4711")
    with pytest.raises(IntegrityError):
        keep(entries, who="4711")


def test_a_second_arrival_of_the_same_row_changes_nothing(entries: Database) -> None:
    def arrive(connection: Connection) -> int:
        row = INSERTS[connection.dialect.name](ENTRY).values(who="4711", note=CANARY)
        return connection.execute(row.on_conflict_do_nothing()).rowcount

    assert [entries.run_sync(arrive), entries.run_sync(arrive)] == [1, 0]
    assert kept(entries, "note") == [CANARY]


@on_sqlite
@pytest.mark.parametrize("keys", ["K" * 42 + "A", "none"])
def test_the_words_stand_in_the_file_only_without_a_key(entries: Database, keys: str) -> None:
    folder = Path(str(entries.engine.url.database)).parent
    database = Database(entries.engine.url, Keyring.parse(keys))
    keep(database, note={"words": CANARY}, words="not sealed")
    everything = b"".join(path.read_bytes() for path in folder.iterdir())
    database.close_sync()
    everything += b"".join(path.read_bytes() for path in folder.iterdir())
    assert b"not sealed" in everything
    assert (CANARY.encode() in everything) == (keys == "none")


def test_sealed_columns_are_of_no_use_to_a_stranger_to_the_keys() -> None:
    engine = create_engine("sqlite://")
    with engine.begin() as connection:
        METADATA.create_all(connection)
        with pytest.raises(StatementError, match="Sealed columns need"):
            connection.execute(insert(ENTRY).values(note=CANARY))
    engine.dispose()
