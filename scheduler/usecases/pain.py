"""A client says that something hurts, that she fell, or names a warning sign (H1-H3, H5).

Prompts are withdrawn before the first question is asked. Every step is one tap or one short text.
"""

from __future__ import annotations

from dataclasses import asdict, replace
from datetime import datetime, timedelta
from typing import Any

from scheduler.domain import pain as p
from scheduler.domain.hours import instant, parse_span
from scheduler.domain.messages import Lane, Message, message, text
from scheduler.domain.pain import Answers, Fall, Outcome
from scheduler.domain.people import Client
from scheduler.domain.reply import Reply, reply
from scheduler.ports import Question, Tx
from scheduler.usecases import holds, join, lapses
from scheduler.usecases.flags import raise_flag
from scheduler.usecases.names import clinician_name
from scheduler.usecases.opening import begin_day
from scheduler.usecases.post import tell
from scheduler.usecases.questions import OF_HARM, open_question
from scheduler.usecases.rest import gather, hours_of, on_break, replan, today_of, withdraw_all
from scheduler.usecases.wake import changing


def hurts(
    tx: Tx, client_id: int, now: datetime, *, words: str = "", sign: str | None = None,
    score: int | None = None,
) -> Reply:  # fmt: skip
    """Something hurts: stop asking at once, then ask what it is. `words` are the client's own.

    A sign or a score already said is not asked again; one that means a hold holds here and now.
    """
    with changing(tx, client_id, now) as client:
        question = open_question(tx, client_id, "pain")
        known = Answers(**_fields(question, Answers))
        if sign == "sore" and known.sign is not None:
            sign = None  # named late it takes nothing back
        given = Answers(
            sign=sign or known.sign,
            place=known.place,
            score=known.score if score is None else score,
        )
        return _go_on(tx, client, replace(known, **_said(given)), now, _words(question, words))


def _said(answers: Answers) -> dict[str, Any]:
    return {key: value for key, value in asdict(answers).items() if value is not None}


def _fields(question: Question | None, kind: type) -> dict[str, Any]:
    body = question.body if question else {}
    return {k: v for k, v in body.items() if k in kind.__dataclass_fields__}  # type: ignore[attr-defined]


def answer(
    tx: Tx, client_id: int, step: str, value: str | int | bool, now: datetime, typed: str = ""
) -> Reply:
    """One answer to the pain question; `typed` are its words. One to a step already passed corrects it.

    Its screen may still show when it is over: then an answer that means a hold by itself is taken (P9).
    """
    with changing(tx, client_id, now) as client:
        question = open_question(tx, client_id, "pain")
        said: dict[str, Any] = {step: value}
        alone = p.decide(Answers(**said), tx.book.practice().thresholds)
        if question is None and alone not in {Outcome.HOLD, Outcome.MOVEMENT_HOLD}:
            return reply("question-over")
        answers = Answers(**{**_fields(question, Answers), **said})
        return _go_on(tx, client, answers, now, _words(question, typed))


def _words(question: Question | None, more: str) -> str:
    """What the client has typed about this so far: the clinician reads her own words (H3)."""
    before = str(question.body.get("words", "")) if question else ""
    telling = more if len(more.split()) > 1 else ""  # a bare "7" or "yes" is in the answers already
    return " / ".join(part for part in (before, telling) if part)


def _go_on(tx: Tx, client: Client, answers: Answers, now: datetime, words: str) -> Reply:
    withdraw_all(tx, client, "pain")
    outcome = _outcome(tx, client, answers)
    if outcome is None:
        return _ask(tx, client, answers, now, words)
    day = today_of(client, now)
    said = {**_said(answers), "words": words}
    tx.health.report(client.id, "pain", day, now, {**said, "outcome": outcome.value})
    tx.questions.close(client.id, "pain")
    if outcome in {Outcome.HOLD, Outcome.MOVEMENT_HOLD}:
        told = holds.stop(tx, client, now, reason="pain", sign=_sign(answers), details=said)
        if outcome is Outcome.HOLD or (answers.place is None and answers.score is None):
            return told
        more = _go_on(tx, client, replace(answers, sign="none"), now, words)  # it hurts as well
        return replace(told, message=(*told.message, *more.message))
    if outcome is Outcome.CAUTION:
        _ask_next_morning(tx, client, now)
    if answers.score is not None and open_question(tx, client.id, "morning") is not None:
        tx.questions.close(client.id, "morning")
        begin_day(tx, tx.people.client(client.id), now)
    return carry_on(tx, client, now, "pain-caution" if outcome is Outcome.CAUTION else "pain-noted")


def _outcome(tx: Tx, client: Client, answers: Answers) -> Outcome | None:
    """What follows. A score that is told while this morning's is asked for answers that too (H2)."""
    limits = tx.book.practice().thresholds
    outcome = p.decide(answers, limits)
    if answers.score is None or outcome is Outcome.MOVEMENT_HOLD:
        return outcome
    asked = open_question(tx, client.id, "morning") is not None
    held = asked and p.morning(answers.score, client.usual_pain, limits) is Outcome.HOLD
    return Outcome.HOLD if held else outcome


def _sign(answers: Answers) -> str | None:
    return answers.sign if answers.sign not in {"none", "sore"} else None


def _ask(tx: Tx, client: Client, answers: Answers, now: datetime, words: str) -> Reply:
    number = tx.book.practice().emergency_number
    step = p.next_step(answers) or p.STEPS[-1]
    before = open_question(tx, client.id, "pain")
    body = {**_said(answers), "words": words}
    expires = _expires(tx, before, step, now)
    tx.questions.ask(Question(client.id, "pain", step, body, asked_at=now, expires_at=expires))
    return reply(f"ask-pain-{step}", emergency_number=number, first=before is None)


def _expires(tx: Tx, before: Question | None, step: str, now: datetime) -> datetime:
    """When silence becomes a hold. Asking the same once more does not put it off (H1)."""
    if before is not None and before.step == step and before.expires_at is not None:
        return before.expires_at
    return now + timedelta(minutes=tx.book.practice().question_minutes)


def by_mistake(tx: Tx, client_id: int, now: datetime) -> Reply:
    """ "Tapped by mistake": only while nothing has been answered yet; the day goes on from now."""
    with changing(tx, client_id, now) as client:
        question = open_question(tx, client_id, "pain")
        if question is None:
            return reply("question-over")
        if _said(Answers(**_fields(question, Answers))) or question.body.get("words"):
            number = tx.book.practice().emergency_number
            step = text(f"ask-pain-{question.step}", emergency_number=number, first=False)
            return Reply((text("mistake-too-late"), step))
        tx.questions.close(client_id, "pain")
        return carry_on(tx, client, now, "mistake-noted")


def carry_on(tx: Tx, client: Client, now: datetime, said: str) -> Reply:
    """The day goes on as prescribed; the reply says when the next bout is, and never that all is well.

    Where this morning's pain is asked for nothing goes on before its answer, and the question is put again.
    """
    running = gather(tx, client, today_of(client, now))
    following = replan(tx, running, now)
    ahead = following if following and following.due_at > now else None  # one due now is asked now
    clinician, phone = clinician_name(tx, client), running.practice.phone
    if tx.health.holds(client.id) and said != "mistake-noted":
        number = running.practice.emergency_number
        return reply("noted-on-hold", clinician=clinician, phone=phone, emergency_number=number)
    at = running.wall(ahead.due_at) if ahead else None
    noted = text(said, next=at, clinician=clinician, phone=phone)
    return Reply((noted, *_still_asked(tx, client)))


def _still_asked(tx: Tx, client: Client) -> Message:
    """What comes before any bout: this morning's pain, or where somebody who is still joining had come to."""
    if open_question(tx, client.id, "morning") is not None:
        return message("ask-morning")
    question = open_question(tx, client.id, "join") if client.joined_at is None else None
    return join.again(tx, client.id, question) if question else ()


# --- the next morning ----------------------------------------------------------------------------


def _ask_next_morning(tx: Tx, client: Client, now: datetime) -> None:
    """Ask at the start of tomorrow's hours; no impact is asked for tomorrow before the answer (H2)."""
    tomorrow = today_of(client, now) + timedelta(days=1)
    hours = hours_of(gather(tx, client, tomorrow))
    start = hours.window.start if hours else parse_span(tx.book.practice().window).start
    at = instant(tomorrow, start, client.zone)
    tx.people.save_client(replace(tx.people.client(client.id), morning_at=at))


def morning_check(tx: Tx, client: Client, now: datetime) -> None:
    """Ask how the pain is on the morning after a caution, once its time has come."""
    client = tx.people.client(client.id)
    if client.morning_at is None or now < client.morning_at:
        return
    tx.people.save_client(replace(client, morning_at=None))
    if tx.health.holds(client.id):
        return
    if on_break(tx, client.id, today_of(client, now)):
        _ask_next_morning(tx, client, now)  # nothing is asked on a break; it waits for its end
        return
    tx.questions.ask(Question(client.id, "morning", "score", asked_at=now))
    key = f"morning:{client.id}:{client.morning_at.isoformat()}"
    tell(tx, client.id, key, Lane.REST, message("ask-morning"), now)


def morning_answer(tx: Tx, client_id: int, score: int, now: datetime) -> Reply:
    """The score of the next morning (H2). Asked no more, one that means a hold by itself is taken (P9)."""
    limits = tx.book.practice().thresholds
    if open_question(tx, client_id, "morning") is None:
        alone = p.decide(Answers(score=score), limits)
        return answer(tx, client_id, "score", score, now) if alone else reply("question-over")
    with changing(tx, client_id, now) as client:
        outcome = p.morning(score, client.usual_pain, limits)
        day = today_of(client, now)
        tx.health.report(client_id, "morning", day, now, {"score": score, "outcome": outcome.value})
        tx.questions.close(client_id, "morning")
        if outcome is Outcome.HOLD:
            said = {"score": score, "when": "next-morning"}
            return holds.stop(tx, client, now, reason="pain", details=said)
        begin_day(tx, client, now)
        return carry_on(tx, client, now, "pain-noted")


# --- falls ---------------------------------------------------------------------------------------


def fell(
    tx: Tx, client_id: int, now: datetime, *, words: str = "", sign: str | None = None
) -> Reply:
    """A fall: stop asking, then ask whether something is hurt (H5)."""
    with changing(tx, client_id, now) as client:
        question = open_question(tx, client_id, "fall")
        fall = Fall(**{**_fields(question, Fall), **({"sign": sign} if sign else {})})
        return _fall_on(tx, client, fall, now, _words(question, words))


def fall_answer(
    tx: Tx, client_id: int, step: str, value: str | bool, now: datetime, typed: str = ""
) -> Reply:
    """One answer to the questions about a fall; `typed` are its words. What means a hold is always taken."""
    with changing(tx, client_id, now) as client:
        question = open_question(tx, client_id, "fall")
        said: dict[str, Any] = {step: value}
        if question is None and p.decide_fall(Fall(**said)) is not Outcome.HOLD:
            return reply("question-over")
        fall = Fall(**{**_fields(question, Fall), **said})
        return _fall_on(tx, client, fall, now, _words(question, typed))


def _fall_on(tx: Tx, client: Client, fall: Fall, now: datetime, words: str) -> Reply:
    withdraw_all(tx, client, "fall")
    said = {k: v for k, v in asdict(fall).items() if v is not None} | {"words": words}
    outcome = p.decide_fall(fall)
    if outcome is None:
        return _ask_fall(tx, client, fall, said, now)
    tx.health.report(client.id, "fall", today_of(client, now), now, said)
    tx.questions.close(client.id, "fall")
    if outcome is Outcome.HOLD:
        sign = fall.sign if fall.sign != "none" else None
        stopped = holds.stop(tx, client, now, reason="fall", sign=sign, details=said)
        # What cannot bear weight or was knocked is hurt; the safety message says who can start it again.
        if fall.injured or sign is not None:
            lapses.lapse(tx, client, "injury", now)
        return stopped
    raise_flag(tx, client, "fall", now, urgent=False, details=said)
    return carry_on(tx, client, now, "fall-noted")


def _ask_fall(tx: Tx, client: Client, fall: Fall, said: dict[str, Any], now: datetime) -> Reply:
    practice = tx.book.practice()
    step = p.next_fall_step(fall) or p.FALL_STEPS[-1]
    before = open_question(tx, client.id, "fall")
    expires = _expires(tx, before, step, now)
    tx.questions.ask(Question(client.id, "fall", step, body=said, asked_at=now, expires_at=expires))
    id_, number = f"ask-fall-{step.replace('_', '-')}", practice.emergency_number
    return reply(id_, emergency_number=number, first=before is None)


# --- silence -------------------------------------------------------------------------------------


def questions_left_open(tx: Tx, client: Client, now: datetime) -> None:
    """A question about pain or a fall that nobody answered in time becomes a hold (H1, H5)."""
    asked = [each for each in tx.questions.of(client.id) if each.kind in OF_HARM]
    overdue = [each for each in asked if each.expires_at is not None and now >= each.expires_at]
    if not overdue:
        return
    details: dict[str, Any] = {}
    for question in asked:
        body = {k: v for k, v in question.body.items() if k != "unread"}
        body["unanswered"] = question.step
        day = today_of(client, now)
        tx.health.report(client.id, question.kind, day, now, {**body, "outcome": "hold"})
        details = {**body, **details, "words": _words(question, str(details.get("words", "")))}
    fall = any(each.kind == "fall" for each in asked)
    reason = "not-read" if all("unread" in each.body for each in asked) else "question-open"
    reason = "fall" if fall else reason  # a fall is told as one, whatever else is open
    said = holds.stop(tx, client, now, reason=reason, details=details)
    key = f"question-open:{client.id}:{overdue[0].kind}:{overdue[0].expires_at}"
    tell(tx, client.id, key, Lane.SAFETY, said.message, now)
