"""Words between client and clinician, and what a client can look at: today, as it stands."""

from __future__ import annotations

from datetime import datetime, timedelta

from scheduler.domain import days as d
from scheduler.domain.messages import Text, text
from scheduler.domain.reply import Reply, reply
from scheduler.ports import Question, Tx
from scheduler.usecases.figures import lines
from scheduler.usecases.flags import raise_flag
from scheduler.usecases.names import clinician_name
from scheduler.usecases.questions import open_question, standing
from scheduler.usecases.rest import amount, bars, gather, on_break, today_of, unit
from scheduler.usecases.wake import changing
from scheduler.usecases.weekplan import start_of

LONGEST_WORDS = 500
"""Characters of a client's own words that are kept and passed on."""
_CUT = " … "
BELONGS_TOGETHER = timedelta(hours=1)
"""Words not understood within this time of one another are passed on together: ours."""


def shortened(words: str) -> str:
    """A client's own words, at most `LONGEST_WORDS` long: of more, both ends, where what matters is."""
    if len(words) <= LONGEST_WORDS:
        return words
    end = (LONGEST_WORDS - len(_CUT)) // 2
    return f"{words[:end]}{_CUT}{words[-end:]}"


def not_understood(tx: Tx, client_id: int, words: str, now: datetime) -> Reply:
    """Nothing was logged; offer to pass the words on (P3). The words wait until she has chosen."""
    with changing(tx, client_id, now) as client:
        practice = tx.book.practice()
        waiting = standing(tx, client_id, "pass", BELONGS_TOGETHER, now)
        said = (str(waiting.body.get("words", "")), words) if waiting else (words,)
        body = {"words": shortened(" / ".join(said))}
        tx.questions.ask(Question(client_id, "pass", "yes-no", body, now))
        return reply(
            "not-understood",
            clinician=clinician_name(tx, client),
            emergency_number=practice.emergency_number,
        )


def denied(tx: Tx, client_id: int) -> Reply:
    """No pain, in words: nothing is logged. This morning's question wants its number still (H2)."""
    asked = open_question(tx, client_id, "morning") is not None
    noted = text("no-pain-noted")
    return Reply((noted, text("ask-morning")) if asked else (noted,))


def pass_words(tx: Tx, client_id: int, yes: bool, now: datetime) -> Reply:
    """Pass the waiting words to the clinician as a flag, or forget them."""
    with changing(tx, client_id, now) as client:
        question = open_question(tx, client_id, "pass")
        if question is None:
            return reply("question-over")
        tx.questions.close(client_id, "pass")
        if not yes:
            return reply("not-passed-on")
        words = str(question.body.get("words", ""))
        _flag_words(tx, client_id, "words", words, now)
        return reply("passed-on", clinician=clinician_name(tx, client))


def _flag_words(tx: Tx, client_id: int, kind: str, words: str, now: datetime) -> None:
    raise_flag(
        tx,
        tx.people.client(client_id),
        kind,
        now,
        urgent=False,
        details={"words": shortened(words)},
        episode=f"{kind}:{now.isoformat()}",
    )


def today(tx: Tx, client_id: int, now: datetime) -> Reply:
    """Today as it stands: done, total, the open bout or the next one, or why nothing is asked."""
    client = tx.people.client(client_id)
    running = gather(tx, client, today_of(client, now))
    if pause := on_break(tx, client_id, running.today):
        until = pause.last.isoformat() if pause.last else None
        return reply("break-on", until=until, done=running.done)
    if running.day is None:
        return reply(
            "today-rest",
            done=running.done,
            stopped=bool(bars(tx, running)),
            **unit(running.plan),
        )
    texts: list[Text] = [text("today", done=running.done, **amount(running, 0))]
    waiting, open_ = d.waiting(running.bouts), d.still_open(running.bouts)
    if open_:
        texts.append(text("today-open", **amount(running, open_.reps)))
    elif waiting:
        texts.append(
            text("today-next", next=running.wall(waiting.due_at), **amount(running, waiting.reps))
        )
    elif bars(tx, running):
        texts.append(text("stopped-for-now"))
    else:
        texts.append(text("day-done" if running.done >= running.day.total else "no-more-today"))
    return Reply(tuple(texts))


def week(tx: Tx, client_id: int, now: datetime) -> Reply:
    """The client's own week as a picture and one line of words, without what is only for staff (W7)."""
    client = tx.people.client(client_id)
    start = start_of(tx, today_of(client, now))
    (line,) = lines(tx, [client_id], start, now)
    if tx.plans.latest(client_id) is None:
        return reply("week-no-plan", clinician=clinician_name(tx, client))
    own = {key: value for key, value in line.items() if key not in {"reasons", "flags", "urgent"}}
    return Reply((text("week-picture", line=own),), in_place=False)
