"""What a clinician does about a client's step tests: history, logging, whether they may be done at home."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

from scheduler.domain import steptest as s
from scheduler.domain.messages import Argument, Lane, Text, message, text
from scheduler.domain.people import Client, State
from scheduler.domain.reply import Reply, reply
from scheduler.domain.steptest import StepTest
from scheduler.ports import Question, Tx
from scheduler.usecases.names import clinician_name, name_of
from scheduler.usecases.post import tell
from scheduler.usecases.steptests import (
    Timed,
    awaited,
    due_on,
    keep_whole,
    noted,
    withdraw,
)
from scheduler.usecases.wake import changing

SHOWN = 10
"""Tests of a history: the latest; over a year of them every 6 weeks."""


def summary(tx: Tx, client: Client) -> Text | None:
    """The last test in a line of the client's page; `None` if there was none."""
    tests = tx.steptests.of(client.id)
    return text("client-step", **_last(tx, client, tests)) if tests else None


def _last(tx: Tx, client: Client, tests: tuple[StepTest, ...]) -> dict[str, Argument]:
    """The last test, how it stands beside the one before and the best, and when the next is due."""
    practice, last, before = tx.book.practice(), tests[-1], tests[:-1]
    verdict = s.judge(
        last.trials, before, practice.step_cutoff_hundredths, practice.step_slower_percent
    )
    due = due_on(tx, client)
    return {
        "day": last.day.isoformat(),
        "best": s.seconds(last.best),
        "positive": verdict.positive,
        "slower": verdict.slower,
        "best_before": s.seconds(verdict.best_before),
        **_change(last, before[-1] if before else None),
        "due": due.isoformat() if due else None,
    }


def _change(last: StepTest, before: StepTest | None) -> dict[str, Argument]:
    """Whether it took longer than the test before, and by how many seconds; `None` without both times."""
    if before is None or last.best is None or before.best is None:
        return {"trend": None, "change": None}
    more = last.best - before.best
    trend = "slower" if more > 0 else "faster" if more else "same"
    return {"trend": trend, "change": abs(more) / s.SECOND}


def page(tx: Tx, client: Client) -> Reply:
    """History and trend, the latest first, and whether she may do it at home."""
    tests = tx.steptests.of(client.id)
    rows: list[Argument] = [
        {
            "day": test.day.isoformat(),
            "trials": [s.seconds(each) for each in test.trials],
            "best": s.seconds(test.best),
            "home": test.by == client.id,
        }
        for test in reversed(tests[-SHOWN:])
    ]
    head = text(
        "step-page",
        client=client.id,
        name=name_of(tx, client.id),
        tests=rows,
        count=len(tests),
        home=client.step_home,
    )
    return Reply((head, text("client-step", **_last(tx, client, tests))) if tests else (head,))


def ask(tx: Tx, by: int, client: Client, now: datetime) -> Reply:
    """Ask for the times of a test that she has taken with the client."""
    tx.questions.ask(Question(by, "steptest", "times", {"client": client.id}, now))
    return reply("ask-client-step", client=client.id, name=name_of(tx, client.id))


def answer(tx: Tx, question: Question, timed: Timed, now: datetime) -> Reply:
    """The typed times of her client."""
    client_id = int(question.body["client"])
    with changing(tx, client_id, now) as client:
        kept = keep_whole(tx, client, question, timed, now)
        if isinstance(kept, Reply):
            return kept
        test, verdict = kept
        return reply(
            "client-step-noted",
            client=client_id,
            name=name_of(tx, client_id),
            positive=verdict.positive,
            slower=verdict.slower,
            **noted(test),
        )


def no_time(tx: Tx, by: int, client_id: int, source: str, now: datetime) -> Reply:
    """Both trials were void, by a button; the question about this client's test must be open."""
    question = awaited(tx, by, now)
    if question is None or question.body.get("client") != client_id:
        return reply("question-over")
    void = Timed((None,) * s.TRIALS, source, now)
    return answer(tx, replace(question, body={"client": client_id}), void, now)


def allow(tx: Tx, by: int, client_id: int, home: bool, now: datetime) -> Reply:
    """Let the client do the test at home, or no longer; she is told how to begin (T1)."""
    with changing(tx, client_id, now) as client:
        if client.step_home != home:
            tx.people.save_client(replace(client, step_home=home))
            tx.questions.close(client_id, "steptest")
            tx.book.audit(by, "step-home", client_id, now, before=client.step_home, after=home)
            person = tx.people.get(client_id)
            if home and person and person.state is State.READY and client.consent_at:
                words = message("step-allowed", clinician=clinician_name(tx, client))
                tell(
                    tx, client_id, f"step-home:{client_id}:{now.isoformat()}", Lane.REST, words, now
                )
        return page(tx, tx.people.client(client_id))


def take_back(tx: Tx, by: int, client_id: int, test_id: int, now: datetime) -> Reply:
    """She takes back what she has just logged."""
    with changing(tx, client_id, now) as client:
        if not withdraw(tx, client, by, test_id, now):
            return reply("question-over")
        return page(tx, tx.people.client(client_id))
