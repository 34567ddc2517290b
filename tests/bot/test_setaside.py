"""An update that cannot be handled, from its failing to an admin's decision (R1). All ours."""

from collections.abc import AsyncIterator
from datetime import timedelta
from typing import Any

import pytest
from sqlalchemy import URL, select

from bot.rehearsal import people
from bot.telegram.handlers import dispatch
from bot.telegram.incoming import Incoming
from bot.telegram.work import TAKEN_AT_MOST
from bot.words import render
from scheduler.domain.messages import Lane, message
from scheduler.domain.people import Person, Role, State
from scheduler.ports import Tx
from scheduler.usecases import setaside
from scheduler.usecases.unread import Unread
from storage.store import SqlStore
from storage.tables import AuditRow, table
from tests.conftest import briefly
from tests.journeys.log import Line
from tests.journeys.theatre import Theatre
from tests.storage.clinic import LEASE, NOW

pytestmark = briefly

BROKEN = ("did 10", "yesterday 10", "my hip hurts", "hello")
PATIENCE = timedelta(seconds=5)
"""Within so much an update is tried for the last time: pain never waits behind poison."""


class Broken:
    """A fault in every text of `BROKEN`, until it is repaired. Its exception repeats the words."""

    def __init__(self, patch: pytest.MonkeyPatch) -> None:
        self.texts = set(BROKEN)
        whole = dispatch.handle

        def handle(tx: Tx, update: Incoming, now: Any) -> None:
            whole(tx, update, now)  # whatever it did is taken back
            if update.text in self.texts:
                raise ValueError(update.text)

        patch.setattr(dispatch, "handle", handle)


@pytest.fixture
async def theatre(database_at: URL, loopback: None) -> AsyncIterator[Theatre]:
    """Kim, Dana, and Ann, who is asked for 40 in four bouts from 8 to 8."""
    theatre = Theatre(database_at)
    await theatre.client()
    yield theatre
    await theatre.close()


def unreadable(*_: object) -> None:
    raise ValueError("my hip hurts")


async def breaks(theatre: Theatre, account: int, *texts: str) -> list[int]:
    """Somebody writes; each is tried until it is handled or set aside. The updates' numbers."""
    world = theatre.stage.world
    numbers = [deed.update_id for text in texts for deed in people.say(world, account, text)]
    await theatre.stage.say(theatre.dana, "/help")  # it comes after, so they have arrived
    await theatre.stage.later(seconds=PATIENCE.total_seconds())
    return [number for number in numbers if number is not None]


async def taps(theatre: Theatre, *buttons: str) -> None:
    """The admin taps one after the other."""
    for button in buttons:
        await theatre.stage.press(theatre.kim, button)


def heard(theatre: Theatre, account: int, id_: str) -> list[Line]:
    return [line for line in theatre.lines() if line.bot and line.chat == account and line.get(id_)]


def audited(theatre: Theatre) -> list[tuple[str, int | None, Any]]:
    trail = table(AuditRow)
    query = select(trail.c.action, trail.c.about, trail.c.change).order_by(trail.c.id)
    theatre.ledger(0)  # opens the books
    assert theatre._books is not None
    rows = theatre._books.run_sync(lambda it: it.execute(query).all())
    return [tuple(row) for row in rows if row.action.startswith("aside")]


async def test_she_is_told_whom_to_call_and_pain_does_not_wait_behind_poison(
    theatre: Theatre, monkeypatch: pytest.MonkeyPatch
) -> None:
    ann = theatre.clients[0]
    Broken(monkeypatch)
    await ann.until(8)
    poison, _ = await breaks(theatre, ann.facts.account, "hello", "something hurts")
    (told,) = ann.texts("not-handled")
    said = told.get("not-handled")
    assert said
    assert said.args == {"phone": "555 0100", "emergency_number": "112"}
    (asked,) = ann.texts("ask-pain-sign")  # the next message was read
    assert max(told.at, asked.at) <= ann.at(8) + PATIENCE
    (line,) = heard(theatre, theatre.kim, "set-aside")
    assert line.at <= ann.at(8) + PATIENCE
    await taps(theatre, "xl", f"x:{poison}")
    (card,) = heard(theatre, theatre.kim, "aside-one")
    one = card.get("aside-one")
    assert one
    assert one.args == {
        "update": poison, "name": "Ann", "since": "2027-03-08T08:00", "wrote_since": True,
    }  # fmt: skip
    theirs = [each.words for each in theatre.lines() if each.chat in {theatre.kim, theatre.dana}]
    assert not any("hello" in words for words in theirs)  # who it was, never the words


async def test_after_a_repair_each_counts_for_the_time_it_was_sent(
    theatre: Theatre, monkeypatch: pytest.MonkeyPatch
) -> None:
    ann, kim = theatre.clients[0], theatre.kim
    fault = Broken(monkeypatch)
    await ann.until(8)
    (first,) = await breaks(theatre, ann.facts.account, "did 10")
    await taps(theatre, "xl", f"x:{first}", f"xr:{first}")
    await theatre.stage.later(seconds=5)  # it fails again: the admin is told again, Ann is not
    assert (len(heard(theatre, kim, "set-aside")), len(ann.texts("not-handled"))) == (2, 1)
    assert ann.done() == 0
    fault.texts.clear()
    await taps(theatre, "xl", f"x:{first}", f"xr:{first}")
    await theatre.stage.later(seconds=1)
    assert ann.done() == 10
    fault.texts |= {"did 10", "yesterday 10"}
    (second,) = await breaks(theatre, ann.facts.account, "did 10")
    await ann.until(12, 1, day=1)  # the day has closed
    (third,) = await breaks(theatre, ann.facts.account, "yesterday 10")
    fault.texts.clear()
    await theatre.stage.say(kim, "/aside")
    await taps(theatre, "xa")
    await theatre.stage.later(seconds=1)
    assert (ann.done(), ann.done(day=1)) == (
        10,
        0,
    )  # said while it was open; it was judged meanwhile
    assert [line.ids for line in ann.heard()[-2:]] == [("day-over",)] * 2
    await theatre.stage.say(kim, "/aside")
    (last, *_) = heard(theatre, kim, "aside")[::-1]
    count = last.get("aside")
    assert count
    assert count.args["count"] == 0
    person = ann.facts.person
    again = ("aside-again", person, {"update": first})
    assert audited(theatre) == [
        again,
        again,
        ("aside-all-again", None, {"updates": [second, third]}),
    ]


async def test_one_is_dropped_after_a_question_and_never_read(
    theatre: Theatre, monkeypatch: pytest.MonkeyPatch
) -> None:
    fault = Broken(monkeypatch)
    stranger = theatre.account("Zoe")
    (number,) = await breaks(theatre, stranger, "hello")
    answers = [line.words for line in theatre.lines() if line.bot and line.chat == stranger]
    assert answers == [render(message("not-handled-now"), "en")]
    await taps(theatre, "xl", f"x:{number}", f"xd:{number}", f"xx:{number}")
    fault.texts.clear()
    await theatre.stage.later(minutes=1)
    assert [line.words for line in theatre.lines() if line.bot and line.chat == stranger] == answers
    assert audited(theatre) == [("aside-drop", None, {"update": number})]
    old = theatre.stage.messages(theatre.kim)[-1].message_id
    await theatre.stage.heard(people.forge(theatre.stage.world, theatre.kim, old, f"xr:{number}"))
    assert heard(theatre, theatre.kim, "aside-over")


async def test_what_ends_its_worker_each_time_is_set_aside_too(
    theatre: Theatre, monkeypatch: pytest.MonkeyPatch
) -> None:
    """It is claimed, the worker dies, its lease ends: after so many times nobody takes it up again."""
    ann, store = theatre.clients[0], theatre.stage.house.store
    now = theatre.stage.now
    private = {"id": ann.facts.account, "type": "private"}
    payload = {"update_id": 1, "message": {"chat": private, "text": "did 10"}}

    def died(tx: Tx) -> None:
        tx.inbox.keep(1, ann.facts.account, payload, now - timedelta(days=1))
        for n in range(TAKEN_AT_MOST):
            tx.inbox.claim(now - timedelta(days=1) + n * 2 * LEASE, "dead", LEASE, 20)
        tx.inbox.release()

    await store.run(died)
    await theatre.stage.later(seconds=1)
    assert await store.run(lambda tx: tx.aside.count()) == 1
    assert ann.texts("not-handled")


def test_admins_are_told_of_the_first_few_then_less_and_less_often(store: SqlStore) -> None:
    """A fault in every message of a practice must not bury them."""

    def fails(tx: Tx, number: int) -> None:
        tx.inbox.keep(number, number, {}, NOW)
        (row,) = tx.inbox.claim(NOW, "one", LEASE, 1)
        setaside.failed(tx, row, Unread(None), "one", None, "ValueError", NOW)
        setaside.failed(tx, row, Unread(None), "one", None, "ValueError", NOW)  # its lease is lost

    def work(tx: Tx) -> list[Any]:
        tx.people.add(Person(0, Role.ADMIN, "Kim", "qps", State.READY, account=1), None)
        for number in range(1, 41):
            fails(tx, number)
        told = []
        while claims := tx.outbox.claim_due(NOW, "one", LEASE, 20):
            for claim in claims:
                assert claim.lane is Lane.FLAG
                told.append(claim.letter.message[0].args["waiting"])
                assert tx.outbox.begin(claim, NOW, LEASE)
                assert tx.outbox.sent(claim, 1, NOW)
        return told

    assert store.run_sync(work) == [1, 2, 3, 4, 5, 8, 16, 32]


async def test_where_nobody_can_be_told_the_others_still_go_on(
    theatre: Theatre, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What is broken may be the person's own row: then the mark alone is kept."""
    ann = theatre.clients[0]
    Broken(monkeypatch)
    await ann.until(8)
    with monkeypatch.context() as broken:
        broken.setattr(setaside, "failed", unreadable)
        await breaks(theatre, ann.facts.account, "my hip hurts", "something hurts")
    assert ann.texts("ask-pain-sign")
    assert await theatre.stage.house.store.run(lambda tx: tx.aside.count()) == 1


async def test_what_is_tried_again_before_its_day_closes_counts_and_one_step_later_does_not(
    theatre: Theatre, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The day of the message's own time; it closes at noon of the next (P9, Z2)."""
    ann = theatre.clients[0]
    fault = Broken(monkeypatch)
    await ann.until(9)
    first, second = await breaks(theatre, ann.facts.account, "did 10", "did 10")
    await theatre.stage.later(seconds=PATIENCE.total_seconds())  # one after the other
    fault.texts.clear()
    await ann.until(11, 59, 58, day=1)
    await taps(theatre, "xl", f"x:{first}", f"xr:{first}")
    await ann.until(11, 59, 59, day=1)
    assert (ann.done(), ann.done(day=1)) == (10, 0)
    await ann.until(12, day=1)
    await taps(theatre, "xl", f"x:{second}", f"xr:{second}")
    await theatre.stage.later(seconds=1)
    assert (ann.done(), ann.done(day=1)) == (10, 0)
    assert ann.heard()[-1].ids == ("day-over",)


async def test_an_undo_that_is_tried_again_takes_nothing_from_a_day_that_was_judged(
    theatre: Theatre, monkeypatch: pytest.MonkeyPatch
) -> None:
    ann = theatre.clients[0]
    fault = Broken(monkeypatch)
    fault.texts = {"undo"}
    await ann.until(8)
    await ann.tap("all")
    (undo,) = await breaks(theatre, ann.facts.account, "undo")
    fault.texts.clear()
    await ann.until(12, day=1)
    await taps(theatre, "xl", f"x:{undo}", f"xr:{undo}")
    await theatre.stage.later(seconds=1)
    assert ann.done() == 10
    assert ann.heard()[-1].ids == ("undo-nothing",)


async def test_pain_that_is_tried_again_is_asked_about_however_late(
    theatre: Theatre, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Only the reps beside it come too late (P9)."""
    ann = theatre.clients[0]
    fault = Broken(monkeypatch)
    fault.texts = {"did 10 but my hip hurts"}
    await ann.until(9)
    (poison,) = await breaks(theatre, ann.facts.account, "did 10 but my hip hurts")
    fault.texts.clear()
    await ann.until(12, day=3)
    await taps(theatre, "xl", f"x:{poison}", f"xr:{poison}")
    await theatre.stage.later(seconds=1)
    assert ann.done() == 0
    assert ann.heard()[-1].ids == ("day-over", "ask-pain-sign")
