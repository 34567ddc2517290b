"""What a client says and taps."""

from __future__ import annotations

from bot import dialogue
from bot.answers import WORST_PAIN
from bot.telegram.handlers import (
    breaks,
    client_text,
    companions,
    files,
    own,
    steps,
    week,
    writing,
)
from bot.telegram.handlers.act import Act, Press
from bot.telegram.incoming import Incoming
from scheduler.domain import readiness as questions
from scheduler.domain.reply import Reply, reply
from scheduler.usecases import (
    bouts,
    corrections,
    howto,
    join,
    notes,
    pain,
    putoff,
    steptests,
    wishes,
)
from scheduler.usecases import times as own_times
from scheduler.usecases.bouts import Said
from scheduler.usecases.questions import open_question


def said(update: Incoming, **more: object) -> Said:
    """What was said about a bout, with the update as its unique source."""
    message_id = None if update.kind == "press" else update.message_id
    return Said(
        source=f"u{update.update_id}",
        at=update.at,
        message_id=message_id,
        tried_again=update.tried_again,
        **more,  # type: ignore[arg-type]
    )


# --- bouts ---------------------------------------------------------------------------------------


def _own_bout(press: Press) -> Press:
    """A press that names somebody else's bout, or none, is never taken for her own open one (J5)."""

    def guarded(act: Act) -> Reply:
        bout = act.tx.days.bout(act.number(0))
        if bout is None or bout.client != act.who.id:
            return reply("question-over")
        return press(act)

    return guarded


def did_all(act: Act) -> Reply:
    return bouts.log(
        act.tx, act.who.id, said(act.update, all=True, bout=act.number(0), sure=True), act.now
    )


def did_fewer(act: Act) -> Reply:
    return bouts.fewer(act.tx, act.who.id, act.number(0), act.now)


def later(act: Act) -> Reply:
    return putoff.later(act.tx, act.who.id, act.update.at, act.now, None, act.number(0))


def skip(act: Act) -> Reply:
    return putoff.skip(act.tx, act.who.id, act.update.at, act.now, act.number(0))


def how_many(act: Act) -> Reply:
    question = open_question(act.tx, act.who.id, "fewer")
    if question is None:
        return reply("question-over")
    return bouts.answered(act.tx, act.who.id, question, act.number(0), said(act.update), act.now)


def sure(act: Act) -> Reply:
    question = open_question(act.tx, act.who.id, "confirm")
    if question is None:
        return reply("question-over")
    if act.args[0] == "1":
        return bouts.answered(
            act.tx, act.who.id, question, int(question.body["reps"]), said(act.update), act.now
        )
    return bouts.not_so(act.tx, act.who.id, question, act.now)


# --- pain and falls ------------------------------------------------------------------------------


def hurts(act: Act) -> Reply:
    return pain.hurts(act.tx, act.who.id, act.now)


def fell(act: Act) -> Reply:
    return pain.fell(act.tx, act.who.id, act.now)


def mistake(act: Act) -> Reply:
    return pain.by_mistake(act.tx, act.who.id, act.now)


def pain_answer(act: Act) -> Reply:
    step, value = act.args
    if value not in dialogue.PAIN_VALUES.get(step, ()):
        return reply("question-over")
    return pain.answer(act.tx, act.who.id, step, dialogue.typed(step, value), act.now)


def fall_answer(act: Act) -> Reply:
    step, value = act.args
    if value not in dialogue.FALL_VALUES.get(step, ()):
        return reply("question-over")
    chosen = value == "1" if step in {"injured", "new_pain"} else value
    return pain.fall_answer(act.tx, act.who.id, step, chosen, act.now)


def morning(act: Act) -> Reply:
    score = act.number(0)
    return (
        pain.morning_answer(act.tx, act.who.id, score, act.now)
        if 0 <= score <= WORST_PAIN
        else reply("question-over")
    )


# --- joining -------------------------------------------------------------------------------------


def agree(act: Act) -> Reply:
    question = open_question(act.tx, act.who.id, "join")
    if question is None or question.step != "consent":
        return reply("question-over")
    return join.consent(act.tx, act.who.id, act.args[0] == "1", act.now)


def readiness(act: Act) -> Reply:
    screen, answer = act.args
    question = open_question(act.tx, act.who.id, "join")
    if question is None or question.step not in {f"screen-{screen}", f"which-{screen}"}:
        return reply("question-over")
    if answer not in {"none", "yes", "done"} | questions.KEYS:
        return reply("question-over")
    return join.readiness_answer(act.tx, act.who.id, question, answer, act.now)


def not_that(act: Act) -> Reply:
    """One that was ticked is taken out again, by a button of its own: a double tap takes nothing back."""
    screen, key = act.args
    question = open_question(act.tx, act.who.id, "join")
    if question is None or question.step != f"which-{screen}":
        return reply("question-over")
    return join.take_out(act.tx, act.who.id, question, key, act.now)


def usual_pain(act: Act) -> Reply:
    question, score = open_question(act.tx, act.who.id, "join"), act.number(0)
    if question is None or question.step != "usual-pain" or not 0 <= score <= WORST_PAIN:
        return reply("question-over")
    return join.usual_pain(act.tx, act.who.id, question, score, act.now)


def times(act: Act) -> Reply:
    question = open_question(act.tx, act.who.id, "join")
    if question is None or not question.step.startswith("times"):
        return reply("question-over")
    if act.args[0] == "keep":
        return join.finish(act.tx, act.who.id, act.now)
    if act.args[0] not in {"zone", "window", "quiet", "days"}:
        return reply("question-over")
    return own_times.ask_time_field(act.tx, act.who.id, act.args[0], act.now)


def pass_on(act: Act) -> Reply:
    return notes.pass_words(act.tx, act.who.id, act.args[0] == "1", act.now)


def _after_consent(press: Press) -> Press:
    """Before consent every button shows the notice: nothing about health is asked or told (J2)."""

    def guarded(act: Act) -> Reply:
        if act.tx.people.client(act.who.id).consent_at is not None:
            return press(act)
        return client_text.resume(act.tx, act.who, act.now) or reply("question-over")

    return guarded


_PRESSES: dict[str, Press] = {
    **week.PRESSES,
    **breaks.PRESSES,
    **companions.PRESSES,
    **writing.OF_CLIENT,
    **steps.OF_CLIENT,
    "all": _own_bout(did_all),
    "few": _own_bout(did_fewer),
    "lat": _own_bout(later),
    "skp": _own_bout(skip),
    "n": how_many,
    "sure": sure,
    "hurt": hurts,
    "fell": fell,
    "oops": mistake,
    "p": pain_answer,
    "f": fall_answer,
    "m": morning,
    "ok": agree,
    "r": readiness,
    "ro": not_that,
    "u": usual_pain,
    "t": times,
    "zs": files.zone_sure,
    "zn": files.zone_not,
    "pass": pass_on,
    "how": lambda act: howto.show(act.tx, act.who.id, act.now),
    "hw": lambda act: howto.show(act.tx, act.who.id, act.now, act.args[0]),
    "hq": lambda act: join.health_again(act.tx, act.who.id, act.now),
}
PRESSES: dict[str, Press] = {
    verb: press if verb == "ok" else _after_consent(press) for verb, press in _PRESSES.items()
} | own.PRESSES


def heard(act: Act) -> Reply | None:
    """A typed or edited message, or a file with or without words."""
    if not act.update.text:
        return files.without_words(act)
    if act.update.forwarded and (asked := files.forwarded(act)):
        return asked
    answer = client_text.heard(act.tx, act.who, act.update, said(act.update), act.now)
    return files.beside_words(act, answer) if answer else None


def command(act: Act, name: str) -> Reply | None:
    """The commands of a client's menu; before consent most of them show the notice."""
    if name in own.COMMANDS:
        return own.COMMANDS[name](act)
    if act.tx.people.client(act.who.id).consent_at is None:
        return client_text.resume(act.tx, act.who, act.now)
    carry_out = COMMAND_OF.get(name)
    return carry_out(act) if carry_out else None


def help_(act: Act) -> Reply:
    resumed = client_text.resume(act.tx, act.who, act.now)
    return resumed or client_text.help_text(act.tx, act.who)


def undo(act: Act) -> Reply:
    source = f"u{act.update.update_id}"
    update = act.update
    return corrections.undo(act.tx, act.who.id, source, update.at, act.now, update.tried_again)


def health_again(act: Act) -> Reply:
    return join.health_again(act.tx, act.who.id, act.now)


def take_a_break(act: Act) -> Reply:
    """Somebody who is still joining goes on with that."""
    joining = act.tx.people.client(act.who.id).joined_at is None
    resumed = client_text.resume(act.tx, act.who, act.now) if joining else None
    return resumed or wishes.ask(act.tx, act.who.id, act.now)


COMMAND_OF: dict[str, Press] = {
    "today": lambda act: notes.today(act.tx, act.who.id, act.now),
    "week": lambda act: notes.week(act.tx, act.who.id, act.now),
    "how": lambda act: howto.show(act.tx, act.who.id, act.now),
    "hurts": hurts,
    "undo": undo,
    "health": health_again,
    "break": take_a_break,
    "back": lambda act: wishes.back(act.tx, act.who.id, act.now),
    "steptest": lambda act: steptests.start(act.tx, act.who.id, act.now),
    "times": lambda act: join.change_times(act.tx, act.who.id, act.now),
    "help": help_,
    "start": help_,
}
COMMANDS: tuple[str, ...] = (
    *(name for name in COMMAND_OF if name != "start"),
    *own.COMMANDS,
)
