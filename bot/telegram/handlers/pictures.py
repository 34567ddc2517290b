"""The practice's own picture or clip of an exercise, given in chat by a clinician or an admin (C7).

Only the platform's id of the file is kept; the file itself stays where it was sent.
"""

from __future__ import annotations

from bot import choices
from bot.answers import Unclear
from bot.telegram.handlers.act import Act, Press
from scheduler.domain.messages import text
from scheduler.domain.reply import Reply, reply
from scheduler.ports import Question
from scheduler.usecases import cards

QUESTION = "card"


def screen(act: Act) -> Reply:
    """Every exercise, to look at its card or to give it a picture."""
    act.tx.questions.close(act.who.id, QUESTION)
    exercises = list(cards.EXERCISES)
    return reply("cards", exercises=exercises, role=act.who.role.value)


def card(act: Act) -> Reply:
    """The card as clients see it; the next picture or clip takes the place of the one in it."""
    exercise = act.args[0]
    if exercise not in cards.EXERCISES:
        return reply("question-over")
    act.tx.questions.ask(Question(act.who.id, QUESTION, exercise, asked_at=act.now))
    return _own_card(act, exercise)


def drawing(act: Act) -> Reply:
    """Back to our drawing."""
    exercise = act.args[0]
    if exercise not in cards.EXERCISES:
        return reply("question-over")
    cards.keep_picture(act.tx, act.who.id, exercise, None, act.now)
    return _own_card(act, exercise)


def _own_card(act: Act, exercise: str) -> Reply:
    role, picture = act.who.role.value, cards.picture(act.tx, exercise)
    card = text(
        "own-card", exercise=exercise, picture=picture, given=picture is not None, role=role
    )
    return Reply((card,), in_place=False)


OF_CLINICIAN: dict[str, Press] = {"hp": card, "hx": drawing}
OF_ADMIN: dict[str, Press] = {"gp": card, "gx": drawing}


def heard(act: Act) -> Reply | None:
    """The answer to a file, or to what has no words in it; `None` where there are words to be read."""
    answer = given(act)
    if answer is not None or act.update.text.strip():
        return answer
    return reply("cannot-see-files", file=act.update.file or "other")


def given(act: Act) -> Reply | None:
    """A picture or clip, after its exercise was tapped or with its name below; `None` for any other file."""
    update = act.update
    if not update.file:
        return None
    exercise = _named(act) if update.text else _tapped(act)
    if exercise is None:
        return None
    if update.file not in cards.KINDS or not update.file_id:
        return reply("own-card-wrong-kind")
    found = {"kind": update.file, "file": update.file_id}
    cards.keep_picture(act.tx, act.who.id, exercise, found, act.now)
    act.tx.questions.close(act.who.id, QUESTION)
    role = act.who.role.value
    return reply("own-card-kept", exercise=exercise, picture=found, role=role)


def _tapped(act: Act) -> str | None:
    asked = (q for q in act.tx.questions.of(act.who.id) if q.kind == QUESTION)
    return next((q.step for q in asked if q.step in cards.EXERCISES), None)


def _named(act: Act) -> str | None:
    if not any(c.isalpha() for c in act.update.text):
        return None
    language = act.who.language
    names = [
        (key, choices.label(text("button-exercise", exercise=key), language))
        for key in cards.EXERCISES
    ]
    said = choices.pick(act.update.text, names)
    return None if isinstance(said, Unclear) else said
