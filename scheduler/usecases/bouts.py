"""A client's answers about bouts: done, fewer, later, skip, undo, an edited message (P2-P10).

Each is one transaction that holds the client's row, appends to the ledger, works the rest of the day out
again and returns one reply. `source` names the update; the same source again changes nothing.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta

from scheduler.domain import days as d
from scheduler.domain.days import Bout, BoutState, Entry
from scheduler.domain.hours import instant
from scheduler.domain.messages import Argument, Text, text
from scheduler.domain.people import Client
from scheduler.domain.reply import Reply, reply
from scheduler.ports import Question, Tx
from scheduler.usecases import beside, excess, opening, reach
from scheduler.usecases.rest import (
    Running,
    amount,
    bars,
    closes_at,
    gather,
    is_over,
    replan,
    stopped,
    today_of,
    unit,
)
from scheduler.usecases.wake import changing

LARGEST = 500
"""A larger number is asked back before it is logged (P4)."""
TIMES_THE_BOUT = 3


@dataclass(frozen=True, slots=True)
class Said:
    """What a client said about a bout, and when (UTC).

    `bout` is the prompt that was tapped or replied to; without it the open prompt of the day is meant.
    Exactly one of `reps`, `all` and `half` is given. `sure` skips asking back.
    """

    source: str
    at: datetime
    reps: int | None = None
    all: bool = False
    half: bool = False
    yesterday: bool = False
    bout: int | None = None
    message_id: int | None = None
    sure: bool = False
    tried_again: bool = False
    """It could not be handled before, perhaps long ago."""


def log(tx: Tx, client_id: int, said: Said, now: datetime) -> Reply:
    """Log reps. Asked back first where the number is odd; refused plainly once the day is over."""
    with changing(tx, client_id, now) as client:
        day, bout = _what(tx, client, said)
        running = gather(tx, client, day)
        if is_over(client, day, running.practice, said.at, now if said.tried_again else None):
            return reply("day-over", day=day.isoformat())
        if bout is not None and bout.state is BoutState.DONE:
            return as_it_stands(running, "already-logged")
        reps = reps_meant(running, bout, said)
        if reps is None:
            return ask_fewer(tx, client, bout, now)
        if not said.sure and is_odd(running, bout, reps):
            return _ask_back(tx, client, said, day, bout, reps, now)
        return keep(tx, running, said, bout, reps, now)


def _what(tx: Tx, client: Client, said: Said) -> tuple[date, Bout | None]:
    """The day that is meant, and the prompt if one is."""
    if said.bout is not None:
        bout = tx.days.bout(said.bout)
        if bout is not None and bout.client == client.id:
            return bout.day, bout
    today = today_of(client, said.at)
    if said.yesterday:
        return today - timedelta(days=1), None
    bout = beside.open_prompt(tx, client.id, today, said.at)
    return (bout.day if bout else today), bout


def reps_meant(running: Running, bout: Bout | None, said: Said) -> int | None:
    """How many reps were said, of "all" and "half" those of the bout; `None` where none is known."""
    asked = bout or _last_unanswered(running)
    if said.reps is not None:
        return said.reps
    if asked is None:
        return None
    return asked.reps if said.all else (asked.reps + 1) // 2


def _last_unanswered(running: Running) -> Bout | None:
    """The day's latest prompt if nobody answered it: "done" typed a little late means that one."""
    asked = [bout for bout in running.bouts if bout.asked_at is not None]
    latest = max(asked, key=lambda bout: bout.n, default=None)
    return latest if latest and latest.state is BoutState.EXPIRED else None


def is_odd(running: Running, bout: Bout | None, reps: int) -> bool:
    size = bout.reps if bout else (running.plan.bout_reps if running.plan else None)
    return not 1 <= reps <= LARGEST or (size is not None and reps > TIMES_THE_BOUT * size)


def _ask_back(  # one question's facts
    tx: Tx, client: Client, said: Said, day: date, bout: Bout | None, reps: int, now: datetime
) -> Reply:
    if not 1 <= reps <= LARGEST:
        tx.questions.ask(Question(client.id, "fewer", "reps", _body(said, day, bout), now))
        return reply("ask-reps-range", reps=reps, largest=LARGEST)
    body = {**_body(said, day, bout), "reps": reps}
    tx.questions.ask(Question(client.id, "confirm", "reps", body, now))
    plan = tx.plans.on(client.id, day)
    return reply("ask-reps-sure", reps=reps, **unit(plan.plan if plan else None))


def _body(said: Said, day: date, bout: Bout | None) -> dict[str, Argument]:
    return {
        "at": said.at.isoformat(),
        "day": day.isoformat(),
        "bout": bout.id if bout else None,
        "message_id": said.message_id,
    }


def ask_fewer(tx: Tx, client: Client, bout: Bout | None, now: datetime) -> Reply:
    """Ask how many it was; the numbers below the bout are buttons, any number can be typed."""
    day = bout.day if bout else today_of(client, now)
    body: dict[str, Argument] = {
        "at": now.isoformat(), "day": day.isoformat(), "bout": bout.id if bout else None,
        "message_id": None,
    }  # fmt: skip
    tx.questions.ask(Question(client.id, "fewer", "reps", body, now))
    plan = tx.plans.on(client.id, day)
    return reply(
        "ask-reps",
        bout=bout.id if bout else None,
        asked=bout.reps if bout else None,
        **unit(plan.plan if plan else None),
    )


def fewer(tx: Tx, client_id: int, bout_id: int, now: datetime) -> Reply:
    """ "Did fewer" was tapped: ask how many."""
    with changing(tx, client_id, now) as client:
        bout = tx.days.bout(bout_id)
        if bout is None or bout.client != client_id:
            return reply("question-over")
        running = gather(tx, client, bout.day)
        if now >= closes_at(client, bout.day, running.practice):
            return reply("day-over", day=bout.day.isoformat())
        if bout.state is BoutState.DONE:
            return as_it_stands(running, "already-logged")
        return ask_fewer(tx, client, bout, now)


def ask_which_number(
    tx: Tx, client_id: int, said: Said, yesterday: bool, now: datetime
) -> Reply:  # fmt: skip
    """A number that could be two things ("10-12") is asked back; nothing is logged yet (P4)."""
    with changing(tx, client_id, now) as client:
        day, bout = _what(tx, client, replace(said, yesterday=yesterday))
        tx.questions.ask(Question(client_id, "fewer", "reps", _body(said, day, bout), now))
        return reply("ask-reps-unclear")


def not_so(tx: Tx, client_id: int, question: Question, now: datetime) -> Reply:
    """ "No" to "are you sure": the number is not logged, and asked for again."""
    tx.questions.close(client_id, question.kind)
    body = {key: value for key, value in question.body.items() if key != "reps"}
    tx.questions.ask(Question(client_id, "fewer", "reps", body, now))
    plan = tx.plans.on(client_id, date.fromisoformat(str(question.body["day"])))
    return reply("ask-reps", bout=None, asked=None, **unit(plan.plan if plan else None))


def answered(
    tx: Tx, client_id: int, question: Question, reps: int, said: Said, now: datetime
) -> Reply:
    """The number for an open "how many" or "are you sure": it counts for the bout first meant."""
    tx.questions.close(client_id, question.kind)
    first = replace(
        said,
        reps=reps,
        at=datetime.fromisoformat(str(question.body["at"])),
        bout=question.body.get("bout"),
        message_id=said.message_id or question.body.get("message_id"),
        yesterday=_means_yesterday(tx, client_id, question),
        sure=question.kind == "confirm",
    )
    return log(tx, client_id, first, now)


def _means_yesterday(tx: Tx, client_id: int, question: Question) -> bool:
    at = datetime.fromisoformat(str(question.body["at"]))
    return str(question.body["day"]) != today_of(tx.people.client(client_id), at).isoformat()


def keep(
    tx: Tx, running: Running, said: Said, bout: Bout | None, reps: int, now: datetime
) -> Reply:
    client = running.client
    entry = tx.ledger.log(
        Entry(
            id=0,
            client=client.id,
            day=running.today,
            reps=reps,
            at=_done_at(client, running.today, said.at),
            source=said.source,
            bout=bout.id if bout else None,
            message_id=said.message_id,
        )
    )
    tx.questions.close(client.id, "fewer", "confirm")
    if entry is None:
        return as_it_stands(running, "already-logged")
    if bout is not None:
        tx.days.save_bout(replace(bout, state=BoutState.DONE))
    after = gather(tx, client, running.today)
    excess.look(tx, after, reps, now)
    return what_next(tx, after, "logged", now, reps)


def _done_at(client: Client, day: date, at: datetime) -> datetime:
    """When a late entry was done is not known; it never moves a later day's bouts, so its own day's
    last instant stands for it."""
    end = instant(day + timedelta(days=1), 0, client.zone) - timedelta(seconds=1)
    return min(at, end)


def what_next(tx: Tx, running: Running, said: str, now: datetime, reps: int) -> Reply:
    """The rest of the day worked out again, and the reply that says what is done and what is next."""
    following = None
    today = running.today == today_of(running.client, now)
    if today:
        following = replan(tx, running, now)
    else:
        opening.keep_the_gap(tx, running.client, now)
    texts: list[Text] = [
        text(
            said,
            done=running.done,
            day=None if today else running.today.isoformat(),
            next=running.wall(following.due_at) if following else None,
            **amount(running, reps),
        )
    ]
    if running.day and running.done > running.day.total:
        texts.append(text("more-than-planned", total=running.day.total, **unit(running.plan)))
    if running.day is None and running.plan is not None:
        if found := bars(tx, running):
            texts.append(stopped(found))
        elif running.done:  # nothing of it stands after an undo
            texts.append(text("rest-day-noted"))
    if today and not following and not d.still_open(running.bouts) and running.day:
        texts.append(_why_nothing_next(tx, running))
    texts += reach.after_log(tx, running.client, running.today, now)
    return Reply(tuple(texts))


def _why_nothing_next(tx: Tx, running: Running) -> Text:
    if running.day is not None and running.done >= running.day.total:
        return text("day-done")
    if found := bars(tx, running):
        return stopped(found)
    return text("no-more-today")


def as_it_stands(running: Running, id_: str) -> Reply:
    following = d.waiting(running.bouts)
    return reply(
        id_,
        done=running.done,
        next=running.wall(following.due_at) if following else None,
        **amount(running, 0),
    )
