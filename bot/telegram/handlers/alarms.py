"""Pain, a fall or a warning sign in a client's typed words: it comes before everything else (P3, H1)."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

from bot import dialogue
from bot.answers import Unclear
from bot.companions import Named
from bot.telegram.handlers import companions
from bot.telegram.incoming import Incoming
from bot.understand import Intent
from bot.understand.any_language import found, read
from scheduler.domain.messages import Message, text
from scheduler.domain.people import Person
from scheduler.domain.reply import Reply
from scheduler.ports import Question, Tx
from scheduler.usecases import bouts, corrections, notes, pain
from scheduler.usecases.bouts import Said
from scheduler.usecases.questions import OF_HARM, open_question


def in_words(  # one message's facts
    tx: Tx, who: Person, named: Named | None, intent: Intent, update: Incoming, said: Said,
    question: Question | None, now: datetime,
) -> Reply | None:  # fmt: skip
    """Pain, a fall or a sign; a count beside the name of a companion is logged as one of it."""
    if named is None or not found(intent):
        return heard(tx, who, intent, update, said, question, now)
    whole = _in_all_words(intent, update.text, who.language)
    alarm = heard(tx, who, whole, update, said, question, now)
    if alarm is None:
        return None
    noted = companions.beside(tx, who, named, intent, update, now)
    return replace(alarm, message=(*noted, *alarm.message))


def heard(  # one message's facts
    tx: Tx,
    who: Person,
    intent: Intent,
    update: Incoming,
    said: Said,
    question: Question | None,
    now: datetime,
) -> Reply | None:
    """Pain, a fall, a sign: the number beside it is logged first, the question follows."""
    if not found(intent):
        return None
    if question is not None and _answers(question, intent, update.text, who.language):
        return None
    noted = _log_beside(tx, who, intent, said, update.kind == "edit", now)
    words = notes.shortened(update.text)
    named = sign(intent, update.text, who.language)
    of_a_fall = intent.fall or (question is not None and question.kind == "fall")
    if of_a_fall and named != "leak":
        answer = pain.fell(tx, who.id, now, words=words, sign=named)
    elif named == "leak":
        answer = _leak_and_more(tx, who, intent, words, now)
    else:
        answer = pain.hurts(tx, who.id, now, words=words, sign=named, score=intent.score)
    return replace(answer, message=(*noted, *answer.message))


def _leak_and_more(tx: Tx, who: Person, intent: Intent, words: str, now: datetime) -> Reply:
    """A leak stops its movement only: a fall or pain that is told with it is asked about as well."""
    answer = pain.hurts(tx, who.id, now, words=words, sign="leak")
    if intent.fall:
        more = pain.fell(tx, who.id, now, words=words)
    elif intent.mentions_pain and open_question(tx, who.id, "pain") is None:
        more = pain.hurts(tx, who.id, now, words=words, score=intent.score)
    else:
        return answer
    return replace(answer, message=(*answer.message, *more.message))


def _answers(question: Question, intent: Intent, said: str, language: str) -> bool:
    """Whether words about harm answer the open question about it, and tell of nothing that it does not ask.

    A sign is never only an answer, nor is a fall where pain was asked about: "7 and I fell".
    """
    if question.kind not in OF_HARM or intent.warning:
        return False
    if intent.fall and question.kind != "fall":
        return False
    return not isinstance(dialogue.read(question, said, language), Unclear)


def _in_all_words(intent: Intent, said: str, language: str) -> Intent:
    """Beside the name of a companion: the signs of all that was said, and no count, which is not of bouts."""
    whole = read(said, language)
    return replace(whole if found(whole) else intent, reps=None, all=False, half=False)


def sign(intent: Intent, said: str, language: str) -> str | None:
    """The sign that decides what is said: words of self-harm get the crisis line beside any other sign.

    Soreness of a hip or a back is not taken for that of a muscle: the questions about it follow.
    """
    if intent.crisis:
        return "self-harm"
    asks = intent.fall or dialogue.names_a_place(said, language)
    return next((each for each in intent.signs if each != "sore" or not asks), None)


def _log_beside(  # one message's facts
    tx: Tx, who: Person, intent: Intent, said: Said, edited: bool, now: datetime
) -> Message:
    """Log the number as said, and say so, or that its day is over; one outside 1..500 stays in the words."""
    if not (intent.all or intent.half or (intent.reps and 1 <= intent.reps <= bouts.LARGEST)):
        return ()
    meant = replace(about(said, intent), sure=True)
    answer = corrections.edited(tx, who.id, meant, now) if edited else None
    answer = answer or bouts.log(tx, who.id, meant, now)
    logged = next((each for each in answer.message if each.id == "logged"), None)
    if logged is None:
        return tuple(each for each in answer.message if each.id == "day-over")
    return (text("noted", **{key: logged.args[key] for key in ("reps", "movement", "per_side")}),)


def about(said: Said, intent: Intent) -> Said:
    """What was said about a bout, as it was understood."""
    return replace(
        said,
        reps=intent.reps,
        all=intent.all,
        half=intent.half,
        yesterday=intent.day == "yesterday",
    )
