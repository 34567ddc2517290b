"""Reports, holds, flags, questions, settings and the audit trail, on both engines. All ours."""

from dataclasses import replace
from datetime import timedelta

from sqlalchemy import select

from scheduler.domain.flags import Flag
from scheduler.domain.people import Hold
from scheduler.domain.settings import Practice
from scheduler.ports import Question, Tx
from storage.book import trail
from storage.engine import Database
from storage.store import SqlStore
from tests.storage.clinic import (
    HOUR,
    LARGE,
    NOW,
    SECOND,
    TODAY,
    client,
    clinician,
    one_client,
    while_open,
)

DETAILS = {"words": "it hurts, «here»", "score": 7, "sign": None}


def clinician_of(store: SqlStore, who: int) -> int:
    return store.run_sync(lambda tx: tx.people.client(who).clinician)


def flag_of(store: SqlStore, who: int, episode: str = "pain:1", **more: object) -> Flag:
    flag = Flag(who, clinician_of(store, who), "pain", True, episode, NOW, DETAILS)
    return replace(flag, **more)  # type: ignore[arg-type]


# --- reports and holds ---------------------------------------------------------------------------


def test_reports_come_back_from_a_day_on_the_oldest_first(store: SqlStore) -> None:
    who = one_client(store)
    other = store.run_sync(lambda tx: client(tx, clinician(tx, 7002).id, 99).id)
    days = [TODAY + timedelta(days=n) for n in (-1, 0, 1)]

    def say(tx: Tx) -> None:
        for n, day in enumerate(days):
            tx.health.report(who, "pain", day, NOW - n * HOUR, [n])

    store.run_sync(say)
    store.run_sync(lambda tx: tx.health.report(other, "fall", TODAY, NOW, {}))
    found = store.run_sync(lambda tx: tx.health.reports(who, TODAY))
    assert found == (
        ("pain", days[2], NOW - 2 * HOUR, [2]),
        ("pain", days[1], NOW - HOUR, [1]),
    )


def test_a_hold_is_open_once_and_holds_of_movements_stand_beside_it(store: SqlStore) -> None:
    who = one_client(store)
    wanted = ((None, True), (None, False), ("hop", True), ("hop", False), ("stomp", True))
    for movement, opened in wanted:
        hold = store.run_sync(lambda tx, it=movement: tx.health.hold(who, "pain", it, NOW))  # type: ignore[misc]
        assert hold is opened
    found = store.run_sync(lambda tx: tx.health.holds(who))
    assert [each.movement for each in found] == [None, "hop", "stomp"]
    assert found[0] == Hold(found[0].id, who, "pain", NOW)


def test_release_ends_every_open_hold_and_a_new_one_can_follow(store: SqlStore) -> None:
    who = one_client(store)
    hers = clinician_of(store, who)
    store.run_sync(lambda tx: tx.health.hold(who, "pain", None, NOW))
    store.run_sync(lambda tx: tx.health.hold(who, "leak", "hop", NOW))
    assert store.run_sync(lambda tx: tx.health.release(who, hers, NOW + HOUR)) == 2
    assert store.run_sync(lambda tx: tx.health.holds(who)) == ()
    assert store.run_sync(lambda tx: tx.health.release(who, hers, NOW + HOUR)) == 0
    assert store.run_sync(lambda tx: tx.health.hold(who, "pain", None, NOW + 2 * HOUR))


async def test_two_holds_at_once_are_one(store: SqlStore, database: Database) -> None:
    who = one_client(store)
    opened = await while_open(
        store,
        database,
        lambda tx: tx.health.hold(who, "pain", None, NOW),
        lambda tx: tx.health.hold(who, "fall", None, NOW),
    )
    assert opened == (True, False)


# --- flags ---------------------------------------------------------------------------------------


def test_a_flag_comes_back_as_it_was_raised_with_its_number(store: SqlStore) -> None:
    who = one_client(store)
    flag = flag_of(store, who)
    kept = store.run_sync(lambda tx: tx.flags.open(flag))
    assert kept
    assert kept == replace(flag, id=kept.id)
    assert store.run_sync(lambda tx: tx.flags.get(kept.id)) == kept
    assert store.run_sync(lambda tx: tx.flags.get(kept.id + 1)) is None


def test_an_episode_is_flagged_once_while_open_and_again_after_closing(store: SqlStore) -> None:
    who = one_client(store)
    hers, flag = clinician_of(store, who), flag_of(store, who)
    first = store.run_sync(lambda tx: tx.flags.open(flag))
    assert first
    assert store.run_sync(lambda tx: tx.flags.open(replace(flag, kind="fall"))) is None
    assert store.run_sync(lambda tx: tx.flags.close(first.id, "called", hers, "spoke", NOW))
    again = store.run_sync(lambda tx: tx.flags.open(flag))
    assert again
    assert again.id > first.id


async def test_an_episode_flagged_by_two_at_once_is_flagged_once(
    store: SqlStore, database: Database
) -> None:
    flag = flag_of(store, one_client(store))
    first, second = await while_open(
        store, database, lambda tx: tx.flags.open(flag), lambda tx: tx.flags.open(flag)
    )
    assert first
    assert second is None


def test_a_flag_is_closed_once_with_its_outcome(store: SqlStore) -> None:
    who = one_client(store)
    hers, flag = clinician_of(store, who), flag_of(store, who)
    kept = store.run_sync(lambda tx: tx.flags.open(flag))
    assert kept
    later = NOW + HOUR
    assert store.run_sync(lambda tx: tx.flags.close(kept.id, "advised", hers, "", later))
    assert not store.run_sync(lambda tx: tx.flags.close(kept.id, "called", hers, "", later))
    closed = replace(kept, closed_at=later, outcome="advised")
    assert store.run_sync(lambda tx: tx.flags.get(kept.id)) == closed
    assert not store.run_sync(lambda tx: tx.flags.close(99, "called", hers, "", later))


def test_a_clients_open_flags_come_oldest_first(store: SqlStore) -> None:
    who = one_client(store)
    hers = clinician_of(store, who)
    for episode, opened_at in (("b", NOW), ("a", NOW - SECOND), ("c", NOW)):
        flag = flag_of(store, who, episode, opened_at=opened_at)
        store.run_sync(lambda tx, flag=flag: tx.flags.open(flag))  # type: ignore[misc]
    first, second, third = store.run_sync(lambda tx: tx.flags.of_client(who))
    assert [first.episode, second.episode, third.episode] == ["a", "b", "c"]
    store.run_sync(lambda tx: tx.flags.close(second.id, "called", hers, "", NOW))
    assert store.run_sync(lambda tx: tx.flags.of_client(who)) == (first, third)
    assert store.run_sync(lambda tx: tx.flags.of_client(hers)) == ()


# --- questions -----------------------------------------------------------------------------------


def test_a_question_comes_back_as_it_was_asked(store: SqlStore) -> None:
    who = one_client(store)
    question = Question(who, "pain", "score", {"sign": "sore"}, NOW, NOW + HOUR, LARGE)
    store.run_sync(lambda tx: tx.questions.ask(question))
    assert store.run_sync(lambda tx: tx.questions.of(who)) == (question,)


def test_a_question_replaces_the_open_one_of_its_kind_whole(store: SqlStore) -> None:
    who = one_client(store)
    store.run_sync(
        lambda tx: tx.questions.ask(Question(who, "pain", "score", {"a": 1}, NOW, NOW, 7))
    )
    second = Question(who, "pain", "place", {}, NOW + SECOND)
    store.run_sync(lambda tx: tx.questions.ask(second))
    assert store.run_sync(lambda tx: tx.questions.of(who)) == (second,)


def test_open_questions_come_the_latest_asked_first(store: SqlStore) -> None:
    who = one_client(store)
    asked = {"join": None, "pain": NOW, "fall": NOW + SECOND, "pass": NOW - SECOND}
    for kind, at in asked.items():
        question = Question(who, kind, "step", {}, at)
        store.run_sync(lambda tx, it=question: tx.questions.ask(it))  # type: ignore[misc]
    found = store.run_sync(lambda tx: tx.questions.of(who))
    assert [question.kind for question in found] == ["fall", "pain", "pass", "join"]


def test_closing_takes_the_kinds_named_of_that_person(store: SqlStore) -> None:
    who = one_client(store)
    hers = clinician_of(store, who)
    for person, kind in ((who, "pain"), (who, "fall"), (who, "join"), (hers, "pain")):
        question = Question(person, kind, "step", asked_at=NOW)
        store.run_sync(lambda tx, it=question: tx.questions.ask(it))  # type: ignore[misc]
    store.run_sync(lambda tx: tx.questions.close(who, "pain", "fall", "never-asked"))
    assert [q.kind for q in store.run_sync(lambda tx: tx.questions.of(who))] == ["join"]
    assert len(store.run_sync(lambda tx: tx.questions.of(hers))) == 1
    store.run_sync(lambda tx: tx.questions.close(who))
    assert len(store.run_sync(lambda tx: tx.questions.of(who))) == 1


# --- settings and the audit trail ----------------------------------------------------------------


def test_settings_are_the_defaults_until_they_are_put(store: SqlStore) -> None:
    assert store.run_sync(lambda tx: tx.book.practice()) == Practice()
    assert store.run_sync(lambda tx: tx.book.read("late_minutes")) is None
    store.run_sync(lambda tx: tx.book.put("late_minutes", "30"))
    store.run_sync(lambda tx: tx.book.put("late_minutes", "45"))
    store.run_sync(lambda tx: tx.book.put("phone", "+34 000"))
    store.run_sync(lambda tx: tx.book.put("not_a_setting_of_the_practice", "kept"))
    expected = Practice(late_minutes=45, phone="+34 000")
    assert store.run_sync(lambda tx: tx.book.practice()) == expected
    assert store.run_sync(lambda tx: tx.book.read("late_minutes")) == "45"
    assert store.run_sync(lambda tx: tx.book.read("not_a_setting_of_the_practice")) == "kept"


def test_a_setting_counts_at_once_in_the_transaction_that_puts_it(store: SqlStore) -> None:
    def work(tx: Tx) -> tuple[int, int]:
        before = tx.book.practice().late_minutes
        tx.book.put("late_minutes", "30")
        return before, tx.book.practice().late_minutes

    assert store.run_sync(work) == (20, 30)


def test_the_audit_trail_keeps_every_line(store: SqlStore, database: Database) -> None:
    store.run_sync(lambda tx: tx.book.audit(1, "plan", 2, NOW, before=None, after={"total": 40}))
    store.run_sync(lambda tx: tx.book.audit(None, "enrol", 99, NOW + SECOND))
    lines = database.run_sync(lambda it: it.execute(select(trail).order_by(trail.c.id)).all())
    assert [(r.at, r.who, r.action, r.about, r.change) for r in lines] == [
        (NOW, 1, "plan", 2, {"before": None, "after": {"total": 40}}),
        (NOW + SECOND, None, "enrol", 99, {}),
    ]
