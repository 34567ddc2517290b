"""What a clinician says and taps. Every action on a client checks that the client is hers (D3)."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime
from typing import Any

from bot import answers, choices, companions, dialogue, movements
from bot.answers import Unclear
from bot.telegram.handlers import breaks, digest, pictures, steps, verdicts, writing
from bot.telegram.handlers.act import Act, Press
from scheduler.domain.companions import CATALOGUE
from scheduler.domain.hours import local_day
from scheduler.domain.people import Person
from scheduler.domain.plan import MOVEMENTS, Level
from scheduler.domain.reply import Reply, reply
from scheduler.ports import Question, Tx
from scheduler.usecases import caseload, digests, drafts, holds, plans, staff
from scheduler.usecases.questions import open_question

NUMBERS = {
    "daily_total": (1, 500),
    "bout_reps": (1, 100),
    "bout_max": (1, 100),
    "days_min": (1, 7),
    "days_max": (1, 7),
    "rest_days": (0, 6),
    "gap_minutes": (30, 720),
}
"""Bounds of the draft's whole numbers as typed; whether they fit together is checked by the preview."""
LONGEST_NOTE = 160
"""Characters of a note to the client: the plan and the note fit one short message."""


def hers(act: Act, client: int) -> bool:
    """Whether the client is hers to decide about today."""
    return caseload.owned(act.tx, act.who.id, client, act.now) is not None


def clients(act: Act) -> Reply:
    return caseload.caseload(act.tx, act.who.id, act.now)


def turn(act: Act) -> Reply:
    return caseload.caseload(act.tx, act.who.id, act.now, page=act.number(0))


def page(act: Act) -> Reply:
    return caseload.page(act.tx, act.who.id, act.number(0), act.now)


def readiness(act: Act) -> Reply:
    return caseload.readiness(act.tx, act.who.id, act.number(0), act.now)


def ceiling(act: Act) -> Reply:
    client, name = act.number(0), act.args[1].upper()
    if not hers(act, client) or name not in Level.__members__:
        return reply("not-yours")
    return plans.clear(act.tx, act.who.id, client, Level[name], act.now)


def plan(act: Act) -> Reply:
    client = act.number(0)
    if not hers(act, client):
        return reply("not-yours")
    return drafts.draft(act.tx, act.who.id, client, act.now)


def hold(act: Act) -> Reply:
    client = act.number(0)
    if not hers(act, client):
        return reply("not-yours")
    stopped = holds.stop_by_clinician(act.tx, act.who.id, client, act.now)
    return replace(stopped, in_place=False)  # the flag above it stays readable


# --- release -------------------------------------------------------------------------------------


def release(act: Act) -> Reply:
    asked = caseload.ask_release(act.tx, act.who.id, act.number(0), act.now)
    return replace(asked, in_place=False)


def release_dose(act: Act) -> Reply:
    if not hers(act, act.number(0)):
        return reply("not-yours")
    return holds.ask_release_day(act.tx, act.who.id, act.number(0), act.number(1), act.now)


def release_from(act: Act) -> Reply:
    client_id, total = act.number(0), act.number(1)
    if not hers(act, client_id):
        return reply("not-yours")
    return holds.release(
        act.tx, act.who.id, client_id, act.now, daily_total=total, tomorrow=act.args[2] != "today"
    )


# --- the draft of a plan -------------------------------------------------------------------------


def _draft(act: Act) -> Question | None:
    """The open draft, if its client is still hers."""
    question = open_question(act.tx, act.who.id, "plan")
    if question is None or not hers(act, int(question.body["client"])):
        return None
    return question


def field(act: Act) -> Reply:
    question = _draft(act)
    return drafts.ask_field(act.tx, question, act.args[0]) if question else reply("question-over")


def value(act: Act) -> Reply:
    question = _draft(act)
    if question is None or question.step != act.args[0]:
        return reply("question-over")
    parsed = tapped(act.args[0], act.args[1])
    return (
        reply("question-over")
        if isinstance(parsed, Unclear)
        else drafts.set_field(act.tx, question, parsed)
    )


def card(act: Act) -> Reply:
    question = _draft(act)
    return drafts.card(act.tx, question) if question else reply("question-over")


def preview(act: Act) -> Reply:
    question = _draft(act)
    return drafts.preview(act.tx, question) if question else reply("question-over")


def save(act: Act) -> Reply:
    question = _draft(act)
    if question is None or question.step != "preview":
        return reply("question-over")
    return plans.save(act.tx, question, act.args[0] == "1", act.now)


def cancel(act: Act) -> Reply:
    if open_question(act.tx, act.who.id, "plan") is None:
        return reply("question-over")
    act.tx.questions.close(act.who.id, "plan")
    return reply("plan-cancelled")


def tapped(name: str, raw: str) -> Any:
    """The value of a quick button of the draft."""
    if name == "weekdays":
        return () if raw == "flexible" else _weekdays(raw)
    if name == "quiet":
        return ()
    if name in {"review", "end"}:
        return None
    if name == "companions":
        return raw if raw in CATALOGUE else None if raw == "none" else Unclear("answer-choice")
    if name == "note":
        return ""
    return (
        choices.pick(raw, [(key, key) for key in MOVEMENTS])
        if name == "movement"
        else _number(name, raw)
    )


def _weekdays(raw: str) -> tuple[int, ...] | Unclear:
    """Weekdays as a button carries them, Monday 0: "0-3"."""
    days = set(raw.split("-"))
    return tuple(sorted(map(int, days))) if days <= set("0123456") else Unclear("answer-weekdays")


def _number(name: str, raw: str) -> int | Unclear:
    return answers.number(raw, *NUMBERS[name]) if name in NUMBERS else Unclear("answer-choice")


def parse(name: str, raw: str, language: str, today: date) -> Any:  # noqa: PLR0911 # one a kind of field
    """A typed answer to one field of the draft, or why it is none."""
    if name in NUMBERS:
        return _number(name, raw)
    match name:
        case "movement":
            return movements.named(raw, language)
        case "weekdays":
            return answers.weekdays(raw, language)
        case "window":
            return dialogue.as_span(answers.span(raw, language))
        case "quiet":
            return dialogue.as_spans(answers.spans(raw, language))
        case "note":
            return "" if answers.says_none(raw, language) else raw.strip()[:LONGEST_NOTE]
        case _:
            return answers.day(raw, today, language)


_PRESSES: dict[str, Press] = {
    **breaks.OF_CLINICIAN,
    **digest.PRESSES,
    **verdicts.PRESSES,
    **writing.OF_CLINICIAN,
    **pictures.OF_CLINICIAN,
    **steps.OF_CLINICIAN,
    "cl": clients,
    "cn": turn,
    "c": page,
    "cr": readiness,
    "cc": ceiling,
    "cp": plan,
    "ch": hold,
    "rel": release,
    "rd": release_dose,
    "rf": release_from,
    "df": field,
    "dv": value,
    "dc": card,
    "dp": preview,
    "ds": save,
    "dx": cancel,
}
PRESSES: dict[str, Press] = {
    verb: writing.on_to_something_else(press) for verb, press in _PRESSES.items()
} | steps.ANSWERS
COMMANDS: tuple[str, ...] = ("clients", "digest", "invite", "cards", "help")


def heard(act: Act) -> Reply | None:  # noqa: PLR0911 # one return a kind of question
    """Typed words: the open question's answer, else a search of the caseload by name."""
    if act.update.kind == "edit":
        return None
    if (file := pictures.heard(act)) is not None:
        return file
    if (answer := writing.typed(act) or steps.typed(act)) is not None:
        return answer
    if question := open_question(act.tx, act.who.id, "invite"):
        return staff.invite_answer(act.tx, act.who, question, act.update.text, act.now)
    if question := open_question(act.tx, act.who.id, "release"):
        return _typed_dose(act, question, act.update.text)
    question = _draft(act)
    if question is not None and question.step in drafts.FIELDS:
        return _typed_field(act.tx, act.who, question, act.update.text, act.now)
    return caseload.caseload(act.tx, act.who.id, act.now, act.update.text.strip())


def _typed_field(tx: Tx, who: Person, question: Question, said: str, now: datetime) -> Reply:
    client = tx.people.client(int(question.body["client"]))
    if question.step == "companions":
        parsed = companions.read(said, drafts.plan_of(question).companions, who.language)
    else:
        parsed = parse(question.step, said, who.language, local_day(now, client.zone))
    if isinstance(parsed, Unclear):
        again = drafts.ask_field(tx, question, question.step)
        return Reply((*dialogue.unclear(parsed), *again.message))
    if parsed is None and question.step == "start":
        return drafts.ask_field(tx, question, question.step)
    return drafts.set_field(tx, question, parsed)


def _typed_dose(act: Act, question: Question, said: str) -> Reply:
    client = int(question.body["client"])
    if not hers(act, client):
        return reply("not-yours")
    if question.step == "day":
        return _typed_day(act, question, said)
    total = answers.number(said, 1, 500)
    if isinstance(total, Unclear):
        again = caseload.ask_release(act.tx, act.who.id, client, act.now)
        return Reply((*dialogue.unclear(total), *again.message))
    return holds.ask_release_day(act.tx, act.who.id, client, total, act.now)


def _typed_day(act: Act, question: Question, said: str) -> Reply:
    client, total = int(question.body["client"]), int(question.body["total"])
    day = dialogue.release_day(said, act.who.language)
    if isinstance(day, Unclear):
        again = holds.ask_release_day(act.tx, act.who.id, client, total, act.now)
        return Reply((*dialogue.unclear(Unclear("answer-choice")), *again.message))
    tomorrow = day == "tomorrow"
    return holds.release(act.tx, act.who.id, client, act.now, daily_total=total, tomorrow=tomorrow)


def command(act: Act, name: str) -> Reply | None:
    """The commands of a clinician's menu."""
    writing.put_down(act)
    if name in {"clients", "start"}:
        return caseload.caseload(act.tx, act.who.id, act.now)
    if name == "digest":
        return digests.latest(act.tx, act.who.id, act.now)
    if name == "invite":
        return staff.ask_client_name(act.tx, act.who, act.now)
    if name == "cards":
        return pictures.screen(act)
    return reply("help-clinician") if name == "help" else None
