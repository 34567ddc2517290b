"""A client's typed words: alarms first, then the open question, then what the words themselves say (P3).

A number beside pain is logged and the question follows. Nothing typed is dropped.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

from bot import answers, companions, dialogue
from bot.answers import Unclear
from bot.telegram.handlers import alarms, before_consent, breaks, own, steps, week, writing
from bot.telegram.handlers import companions as about_companions
from bot.telegram.incoming import Incoming
from bot.understand import Intent, any_language
from bot.understand.asking import asks_how
from scheduler.domain.hours import instant, local_day
from scheduler.domain.messages import text
from scheduler.domain.people import Person
from scheduler.domain.reply import Reply, reply
from scheduler.ports import Question, Tx
from scheduler.usecases import bouts, corrections, howto, join, notes, pain, putoff
from scheduler.usecases import times as own_times
from scheduler.usecases.bouts import Said
from scheduler.usecases.names import clinician_name
from scheduler.usecases.questions import harm_again

ORDER = (("pain", "fall"), ("morning",), ("confirm", "fewer"), ("join",), ("pass",))
"""Which open question typed words answer: the most pressing first, of equals the one asked last."""
PRESSING = frozenset({"pain", "fall", "morning", "confirm", "fewer"})
"""Questions that come before one about a break."""


def heard(tx: Tx, who: Person, update: Incoming, said: Said, now: datetime) -> Reply | None:
    """The reply to typed words; `None` only for an edit that changes nothing."""
    named = companions.named(update.text, who.language)
    intent = any_language.read(named.rest if named else update.text, who.language)
    if tx.people.client(who.id).consent_at is None:
        leaves = own.typed(tx, who, intent, update, now)
        return leaves or before_consent.heard(tx, who, intent, update, now)
    first = steps.answered(tx, who, _top(tx, who), update, now)
    first = first or own.typed(tx, who, intent, update, now)
    return first or _read(tx, who, named, intent, update, said, now)


def _read(  # noqa: PLR0911 # one return a thing that words can be
    tx: Tx, who: Person, named: companions.Named | None, intent: Intent, update: Incoming, said: Said,
    now: datetime,
) -> Reply | None:  # fmt: skip
    """What words mean that are no times of a test and no wish to leave: alarms first."""
    question = _top(tx, who)
    pressing = question is not None and question.kind in {"pain", "fall"}
    alarm = alarms.in_words(tx, who, named, intent, update, said, question, now)
    passed = writing.answered(tx, who, update, pressing, now)
    if alarm or passed:
        return alarm or passed
    if not pressing and not any_language.found(intent) and asks_how(update.text, who.language):
        return howto.show(tx, who.id, now, named.key if named else None)
    if named is not None and not any_language.found(intent):
        about = about_companions.about(tx, who, named, intent, update, now)
        return about or not_understood(tx, who, update.text, now)
    if update.kind == "edit":
        edited = corrections.edited(tx, who.id, alarms.about(said, intent), now)
        if edited is not None:
            return edited
    if update.reply_to is not None and (bout := _replied_bout(tx, who, update)):
        said = replace(said, bout=bout)
        question = None if intent.kind == "log" else question
    answer = _asked_for(tx, who, question, intent, update, said, now)
    if answer is not None:
        return answer
    about_week = intent.kind == "unknown" or intent.asks or week.is_declined(tx, who, intent)
    if about_week and (answer := week.answered(tx, who, update.text, now)):
        return answer
    return _plain(tx, who, intent, update, said, now)


def _asked_for(  # one message's facts
    tx: Tx, who: Person, question: Question | None, intent: Intent, update: Incoming, said: Said,
    now: datetime,
) -> Reply | None:  # fmt: skip
    """What the words answer: a question about a break, unless one that presses more is open, or that one."""
    if question is None or question.kind not in PRESSING:
        answer = breaks.answered(tx, who, intent, update.text, now)
        if answer is not None:
            return answer
    if question is None and (answer := about_companions.answered(tx, who, intent, update, now)):
        return answer
    return _answer(tx, who, question, intent, update, said, now) if question else None


def _top(tx: Tx, who: Person) -> Question | None:
    asked = tx.questions.of(who.id)
    return next((each for kinds in ORDER for each in asked if each.kind in kinds), None)


def _replied_bout(tx: Tx, who: Person, update: Incoming) -> int | None:
    bout = tx.days.bout_of_message(who.id, update.reply_to or 0)
    return bout.id if bout else None


# --- the open question ---------------------------------------------------------------------------


def _answer(  # noqa: C901, PLR0911 # one case and one return a kind of question
    tx: Tx,
    who: Person,
    question: Question,
    intent: Intent,
    update: Incoming,
    said: Said,
    now: datetime,
) -> Reply | None:
    """The reply if the words answer the open question, or if it must stay in front; else `None`."""
    if dialogue.is_mistake(question, update.text, who.language):
        return pain.by_mistake(tx, who.id, now)
    value = dialogue.read(question, update.text, who.language)
    if isinstance(value, Unclear):
        return _unclear(tx, who, question, intent, update, said, value, now)
    words = notes.shortened(update.text)
    match question.kind:
        case "pain":
            return pain.answer(tx, who.id, question.step, value, now, words)
        case "fall":
            return pain.fall_answer(tx, who.id, question.step, value, now, words)
        case "morning":
            return pain.morning_answer(tx, who.id, value, now)
        case "fewer":
            return bouts.answered(tx, who.id, question, value, said, now)
        case "confirm" if value is True:
            return bouts.answered(tx, who.id, question, int(question.body["reps"]), said, now)
        case "confirm" if value is False:
            return bouts.not_so(tx, who.id, question, now)
        case "confirm":
            return bouts.answered(tx, who.id, replace(question, kind="fewer"), value, said, now)
        case "pass":
            return notes.pass_words(tx, who.id, value, now)
        case _:
            return _join_answer(tx, who, question, value, now)


def _join_answer(tx: Tx, who: Person, question: Question, value: object, now: datetime) -> Reply:
    step = question.step
    if step == "consent":
        return join.consent(tx, who.id, value is True, now)
    if step.startswith(("screen-", "which-")):
        again = step.startswith("which-") and value in question.body.get("yes", [])
        answer = join.take_out if again else join.readiness_answer
        return answer(tx, who.id, question, str(value), now)
    if step == "usual-pain" and isinstance(value, int):
        return join.usual_pain(tx, who.id, question, value, now)
    if step == "times" and value != "keep":
        return own_times.ask_time_field(tx, who.id, str(value), now)
    if step == "times":
        return join.finish(tx, who.id, now)
    return own_times.set_time_answer(tx, who.id, step.removeprefix("times-"), value, now)


def _unclear(  # one message's facts
    tx: Tx,
    who: Person,
    question: Question,
    intent: Intent,
    update: Incoming,
    said: Said,
    fault: Unclear,
    now: datetime,
) -> Reply | None:
    """Words that do not answer: a number of reps is still logged, anything else is said in one sentence."""
    if question.kind == "morning" and _bare(update.text):
        return Reply((*dialogue.unclear(fault), text("ask-morning")))
    if question.kind in {"pass", "morning"} or _means_else(tx, who, question, intent):
        return None
    if question.kind in {"confirm", "fewer"}:
        if intent.kind in {"skip", "later", "undo", "help"}:
            return None
        return Reply((*dialogue.unclear(fault), text("ask-reps-again")))
    again = (
        (harm_again(tx, question),)
        if question.kind in {"pain", "fall"}
        else join.again(tx, who.id, question)
    )
    score = question.step == "score" and _bare(update.text)
    if question.kind in {"pain", "fall"} and intent.kind == "log" and intent.reps and not score:
        logged = bouts.log(tx, who.id, replace(said, reps=intent.reps), now)
        return Reply((*logged.message, *again))
    return Reply((*dialogue.unclear(fault), *again))


def _means_else(tx: Tx, who: Person, question: Question, intent: Intent) -> bool:
    """Words about a bout by somebody who has joined, while a screen about times or health is open."""
    joined = tx.people.client(who.id).joined_at is not None
    return question.kind == "join" and joined and intent.kind != "unknown"


def _only_yes(said: str, language: str) -> bool:
    """Whether a text is a plain yes and nothing else."""
    return not any(c.isdecimal() for c in said) and answers.yes_no(said, language) is True


def _bare(said: str) -> bool:
    """Whether a text is a number and nothing else: where a score is asked for it is meant as one."""
    return any(c.isdecimal() for c in said) and not any(c.isalpha() for c in said)


# --- plain words ---------------------------------------------------------------------------------


def _plain(  # noqa: PLR0911 # one return a kind of intent
    tx: Tx, who: Person, intent: Intent, update: Incoming, said: Said, now: datetime
) -> Reply:
    match intent.kind:
        case "log" if intent.asks:
            return _asked_back(tx, who, intent, update, said, now)
        case "log":
            return bouts.log(tx, who.id, alarms.about(said, intent), now)
        case "skip" if not intent.asks:
            return putoff.skip(tx, who.id, update.at, now, said.bout)
        case "later" if not intent.asks:
            until = wanted(tx, who, intent, now)
            return putoff.later(tx, who.id, update.at, now, until, said.bout)
        case "undo" if not intent.asks:
            return corrections.undo(tx, who.id, said.source, update.at, now, said.tried_again)
        case "break":
            return breaks.wish(tx, who, update.text, now)
        case "help":
            return help_text(tx, who)
        case _ if intent.denies:
            return notes.denied(tx, who.id)
        case _:
            return steps.unclear(tx, who, now) or not_understood(tx, who, update.text, now)


def _asked_back(
    tx: Tx, who: Person, intent: Intent, update: Incoming, said: Said, now: datetime
) -> Reply:
    """What could be two things; a yes during a hold answers whom to call, and is no report of a bout."""
    if timed := steps.unclear(tx, who, now):
        return timed
    if tx.health.holds(who.id) and _only_yes(update.text, who.language):
        return not_understood(tx, who, update.text, now)
    return bouts.ask_which_number(tx, who.id, said, intent.day == "yesterday", now)


def wanted(tx: Tx, who: Person, intent: Intent, now: datetime) -> datetime | None:
    """The instant "later" asks for (UTC), `None` without a time. Of two readings, the next one ahead."""
    if intent.minutes is not None:
        return now + timedelta(minutes=intent.minutes)
    if intent.at is None:
        return None
    zone = tx.people.client(who.id).zone
    hour, minute = map(int, intent.at.split(":"))
    day = local_day(now, zone)
    at = instant(day, hour * 60 + minute, zone)
    if at <= now and intent.at_either:
        at = instant(day, ((hour + 12) % 24) * 60 + minute, zone)
    return at


def help_text(tx: Tx, who: Person) -> Reply:
    """What a client can say, and whom to call."""
    practice = tx.book.practice()
    return reply(
        "help-client",
        clinician=clinician_name(tx, tx.people.client(who.id)),
        phone=practice.phone,
        emergency_number=practice.emergency_number,
        answer_hours=practice.answer_hours,
    )


def not_understood(tx: Tx, who: Person, words: str, now: datetime) -> Reply:
    """Nothing was logged; say so, show what works, offer to pass the words on."""
    return notes.not_understood(tx, who.id, words, now)


def resume(tx: Tx, who: Person, now: datetime) -> Reply | None:
    """The open question again after /start or /help, `None` if there is none."""
    client = tx.people.client(who.id)
    if client.consent_at is None:
        return Reply(join.ask_consent(tx, client, now))
    question = _top(tx, who)
    if question is None or question.kind not in {"pain", "fall", "join"}:
        return None
    again = (
        (harm_again(tx, question),) if question.kind != "join" else join.again(tx, who.id, question)
    )
    return Reply(again)
