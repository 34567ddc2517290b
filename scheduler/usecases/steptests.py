"""The step test: kept and judged, at home where that is allowed, and when it is due again (T1-T3)."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta

from scheduler.domain import steptest as s
from scheduler.domain.messages import Argument, Lane, message, text
from scheduler.domain.people import Client
from scheduler.domain.permission import Bar
from scheduler.domain.plan import Level
from scheduler.domain.reply import Reply, reply
from scheduler.domain.steptest import StepTest, Trial, Verdict
from scheduler.ports import Outgoing, Question, Tx
from scheduler.usecases import companions, moments, mornings
from scheduler.usecases.flags import raise_flag
from scheduler.usecases.lapses import valid_clearance
from scheduler.usecases.names import clinician_name
from scheduler.usecases.questions import open_question as question_of
from scheduler.usecases.questions import standing
from scheduler.usecases.rest import (
    bars,
    bouts_to_come,
    gather,
    messages_left,
    stopped,
    today_of,
)
from scheduler.usecases.wake import changing

STANDS = timedelta(hours=2)
"""So long typed times answer the question about them; later they may mean something else again."""
OF_THE_IMPACT = frozenset({Bar.ABOVE_CEILING, Bar.ESTIMATE})
"""What stands against the plan's movement only."""
FLAG = "step-test"
"""Kind of the flag, and its episode: while one is open there is no second."""


@dataclass(frozen=True, slots=True)
class Timed:
    """What was said of the trials: one of them, or both. `source` names the update."""

    trials: tuple[Trial, ...]
    source: str
    at: datetime


# --- kept and judged -----------------------------------------------------------------------------


def keep(
    tx: Tx, client: Client, by: int, trials: tuple[Trial, ...], timed: Timed, now: datetime
) -> tuple[StepTest, Verdict] | None:
    """Keep a whole test and flag it where it must be; `None` if it is kept already. The row is held."""
    practice, day = tx.book.practice(), today_of(client, timed.at)
    before = tx.steptests.of(client.id)
    kept = tx.steptests.add(StepTest(0, client.id, day, timed.at, trials, by), timed.source)
    if kept is None:
        return None
    verdict = s.judge(trials, before, practice.step_cutoff_hundredths, practice.step_slower_percent)
    _stepped(tx, client)
    _end(tx, client, "step-due", "tested", by, now)
    if verdict.flagged:
        details = {
            "screened": _screen(kept, verdict),
            "trials": [s.seconds(each) for each in trials],
            "best_before": s.seconds(verdict.best_before),
        }
        raise_flag(tx, client, FLAG, now, urgent=False, details=details, episode=FLAG)
    return kept, verdict


def _screen(test: StepTest, verdict: Verdict) -> str:
    if test.best is None:
        return "no-time"
    if verdict.positive:
        return "positive-slower" if verdict.slower else "positive"
    return "slower"


def _stepped(tx: Tx, client: Client) -> None:
    """Write down on the client's row when she was last tested: her retest is due so long after it."""
    tests = tx.steptests.of(client.id)
    last = max((test.day for test in tests), default=None)
    after = tx.people.client(client.id)
    tx.people.save_client(replace(after, stepped_on=last))


def _end(tx: Tx, client: Client, kind: str, outcome: str, by: int, now: datetime) -> None:
    for flag in tx.flags.of_client(client.id):
        if flag.kind == kind:
            tx.flags.close(flag.id, outcome, by, "", now)


def withdraw(tx: Tx, client: Client, by: int, test_id: int, now: datetime) -> bool:
    """Take the latest test back if this person logged it on the client's same day.

    Its flag ends by itself; one about an earlier test stays. False where it is no such test.
    """
    tests = tx.steptests.of(client.id)
    last = tests[-1] if tests else None
    if last is None or last.id != test_id or last.by != by or last.day != today_of(client, now):
        return False
    if not tx.steptests.take_back(test_id, now):
        return False
    _stepped(tx, client)
    for flag in tx.flags.of_client(client.id):
        if flag.kind == FLAG and flag.opened_at >= last.at:
            tx.flags.close(flag.id, "taken-back", by, "", now)
    return True


def noted(test: StepTest) -> Mapping[str, Argument]:
    """A test as arguments of a text: seconds, `None` for what has no time."""
    return {
        "test": test.id,
        "trials": [s.seconds(each) for each in test.trials],
        "best": s.seconds(test.best),
    }


# --- at home -------------------------------------------------------------------------------------


def against(tx: Tx, client: Client, now: datetime) -> tuple[Bar, ...]:
    """What stands against the test at home: no valid clearance, any hold, and what stops all else (T2)."""
    found = [*bars(tx, gather(tx, client, today_of(client, now)))]
    clearance = valid_clearance(tx, client.id)
    if clearance is not None and clearance.ceiling is Level.NONE:
        found.append(Bar.NO_CLEARANCE)
    if tx.health.holds(client.id):
        found.append(Bar.HOLD)
    return tuple(bar for bar in found if bar not in OF_THE_IMPACT)


def stands_against(tx: Tx, client_id: int, now: datetime) -> bool:
    """Whether anything stands against her test at home now."""
    return _refusal(tx, tx.people.client(client_id), now) is not None


def _refusal(tx: Tx, client: Client, now: datetime) -> Reply | None:
    if not client.step_home:
        return reply("step-not-here", clinician=clinician_name(tx, client))
    found = against(tx, client, now)
    return Reply((text("step-not-now"), stopped(found))) if found else None


def start(tx: Tx, client_id: int, now: datetime) -> Reply:
    """How it is done, before anything else: never alone, the cross flat on the floor (T2)."""
    with changing(tx, client_id, now) as client:
        if refusal := _refusal(tx, client, now):
            return refusal
        tx.questions.ask(Question(client_id, "steptest", "ready", {}, now))
        return Reply((text("step-how"), text("step-order"), text("ask-step-ready")))


def ready(tx: Tx, client_id: int, now: datetime) -> Reply:
    """Somebody is with her: the times."""
    with changing(tx, client_id, now) as client:
        if open_question(tx, client_id, now) is None:
            return reply("question-over")
        if refusal := _refusal(tx, client, now):
            return refusal
        tx.questions.ask(Question(client_id, "steptest", "times", {}, now))
        return reply("ask-step-times")


def open_question(tx: Tx, person: int, now: datetime) -> Question | None:
    """The open question about a test, while it stands."""
    return standing(tx, person, "steptest", STANDS, now)


def awaited(tx: Tx, person: int, now: datetime) -> Question | None:
    """The open question that typed times answer."""
    question = open_question(tx, person, now)
    return question if question is not None and question.step == "times" else None


def not_now(tx: Tx, client_id: int, now: datetime) -> Reply:
    """She leaves it for another time."""
    with changing(tx, client_id, now):
        if question_of(tx, client_id, "steptest") is None:
            return reply("question-over")
        tx.questions.close(client_id, "steptest")
        return reply("step-left")


def answer(tx: Tx, client_id: int, timed: Timed, now: datetime) -> Reply:
    """Her times, one after the other or both at once. Refused once something stands against it."""
    with changing(tx, client_id, now) as client:
        question = awaited(tx, client_id, now)
        if question is None:
            return reply("question-over")
        if refusal := _refusal(tx, client, now):
            tx.questions.close(client_id, "steptest")
            return refusal
        kept = keep_whole(tx, client, question, timed, now)
        if isinstance(kept, Reply):
            return kept
        test, _ = kept
        return reply(
            "step-noted",
            clinician=clinician_name(tx, client),
            void=None in test.trials,
            **noted(test),
        )


def keep_whole(
    tx: Tx, client: Client, question: Question, timed: Timed, now: datetime
) -> Reply | tuple[StepTest, Verdict]:
    """Keep the test once both trials are told, else say what is missing. The row is held."""
    trials = _so_far(question, timed)
    if more := _ask_more(tx, question, trials, now):
        return more
    tx.questions.close(question.person, "steptest")
    return keep(tx, client, question.person, trials, timed, now) or reply("question-over")


def _so_far(question: Question, timed: Timed) -> tuple[Trial, ...]:
    """What has been said of the trials, with what was said now."""
    return (*question.body.get("said", ()), *timed.trials)[: s.TRIALS]


def left(question: Question) -> int:
    """Trials of which nothing has been said yet."""
    return s.TRIALS - len(question.body.get("said", ()))


def _ask_more(
    tx: Tx, question: Question, trials: tuple[Trial, ...], now: datetime
) -> Reply | None:  # fmt: skip
    """Ask for the second trial, or again for what can be no time; `None` where both are there."""
    if not all(s.is_time(each) for each in trials):
        return reply("step-range", low=s.SHORTEST // s.SECOND, high=s.LONGEST // s.SECOND)
    if len(trials) == s.TRIALS:
        return None
    body = {**question.body, "said": [*trials]}
    tx.questions.ask(Question(question.person, "steptest", "times", body, now))
    return reply("ask-step-second", trials=[s.seconds(each) for each in trials])


def take_back(tx: Tx, client_id: int, test_id: int, now: datetime) -> Reply:
    """She takes back what she has just logged; the test can be logged again."""
    with changing(tx, client_id, now) as client:
        if not withdraw(tx, client, client_id, test_id, now):
            return reply("question-over")
        return reply("step-taken-back")


# --- due again -----------------------------------------------------------------------------------


def look(tx: Tx, client: Client, now: datetime) -> None:
    """A retest that is due: asked of the client at home, else the clinician is reminded, once (T3).

    On a hold, a break or without clearance nothing is said, until that is over. A client who was asked and
    did not do it within `GRACE` is her clinician's again. The client's row is held.
    """
    if client.stepped_on is None:
        return
    today, due = today_of(client, now), due_on(tx, client)
    if due is None or today < due or against(tx, client, now):
        return
    if client.step_home and today < due + s.GRACE:
        _ask(tx, client, now)
        return
    episode = f"step-due:{client.stepped_on}"
    if not tx.flags.had(client.id, episode):
        details = {"stepped": client.stepped_on.isoformat()}
        raise_flag(tx, client, "step-due", now, urgent=False, details=details, episode=episode)


def due_on(tx: Tx, client: Client) -> date | None:
    """When her retest is due; `None` if she was never tested."""
    if client.stepped_on is None:
        return None
    return s.due_on(client.stepped_on, tx.book.practice().step_weeks)


def _ask(tx: Tx, client: Client, now: datetime) -> None:
    """Ask once, in the middle of a day that has room for one more message (P6)."""
    running = gather(tx, client, today_of(client, now))
    moment = moments.halfway(tx, client, running.today)
    late = timedelta(minutes=running.practice.late_minutes)
    if moment is None or not moment <= now <= moment + late:
        return
    reserved = bouts_to_come(tx, running, now) + mornings.to_come(tx, running, now)
    if messages_left(tx, running) <= reserved + companions.to_come(tx, running, now):
        return
    words = message("step-due", clinician=clinician_name(tx, client))
    key = f"step-due:{client.id}:{client.stepped_on}"
    if tx.outbox.add(Outgoing(key, Lane.REST, words, person=client.id, own_day=running.today), now):
        tx.questions.ask(Question(client.id, "steptest", "ready", {}, now))
