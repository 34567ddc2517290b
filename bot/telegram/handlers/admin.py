"""What an admin says and taps. Admins set up the practice; they see no health data and decide no dose."""

from __future__ import annotations

from bot import answers
from bot.telegram.handlers import cover, pictures, setaside
from bot.telegram.handlers.act import Act, Press
from scheduler.domain.people import Role
from scheduler.domain.reply import Reply, reply
from scheduler.domain.settings import BOUNDS, NAMES, WEEKDAY_NAMES, WEEKDAYS
from scheduler.usecases import caseload, erasing, practice, staff


def setting(act: Act) -> Reply:
    if act.args[0] not in NAMES:
        return reply("question-over")
    return staff.ask_setting(act.tx, act.who, act.args[0], act.now)


def invite_role(act: Act) -> Reply:
    if act.args[0] not in {role.value for role in Role}:
        return reply("question-over")
    return staff.ask_invite_name(act.tx, act.who, Role(act.args[0]), act.now)


def invite_clinician(act: Act) -> Reply:
    return staff.invite_for(act.tx, act.who, act.number(0), act.now)


def people(act: Act) -> Reply:
    return staff.people(act.tx)


def turn(act: Act) -> Reply:
    return staff.people(act.tx, page=act.number(0))


def person(act: Act) -> Reply:
    return staff.person(act.tx, act.number(0))


def invite_again(act: Act) -> Reply:
    return staff.invite_again(act.tx, act.who, act.number(0), act.now)


def ask_discharge(act: Act) -> Reply:
    return staff.ask_discharge(act.tx, act.number(0))


def discharge(act: Act) -> Reply:
    return caseload.discharge(act.tx, act.who.id, act.number(0), act.now)


PRESSES: dict[str, Press] = {
    **cover.PRESSES,
    **setaside.PRESSES,
    **pictures.OF_ADMIN,
    "s": setting,
    "ir": invite_role,
    "ic": invite_clinician,
    "ap": people,
    "an": turn,
    "a": person,
    "ia": invite_again,
    "d": ask_discharge,
    "dd": discharge,
    "er": lambda act: erasing.ask(act.tx, act.number(0)),
    "ery": lambda act: erasing.erase(act.tx, act.who.id, act.number(0), act.now),
}
COMMANDS: tuple[str, ...] = ("people", "invite", "settings", "cards", "aside", "help")
YES_NO = frozenset({"files_in_chat", "erase_left"})
"""Settings that are yes or no."""
ASKED = ("setting", "invite", "cover")
"""The questions that typed words answer."""


def heard(act: Act) -> Reply | None:
    """Typed words answer the latest open question (setting, invitation, cover), else they name people."""
    if act.update.kind == "edit":
        return None
    said = act.update.text.strip()
    if (file := pictures.heard(act)) is not None:
        return file
    for question in act.tx.questions.of(act.who.id):
        match question.kind:
            case "setting":
                value = _as_kept(question.step, said, act.who.language)
                return practice.set_setting(act.tx, act.who.id, question.step, value, act.now)
            case "invite":
                return staff.invite_answer(act.tx, act.who, question, act.update.text, act.now)
            case "cover":
                return cover.answered(act, question)
    found = staff.people(act.tx, said)
    return found if found.message[0].args["count"] else reply("help-admin")


def _as_kept(name: str, said: str, language: str) -> str:
    """A setting as it is kept, from how people write it: "8 am to 8 pm", "Lisbon", "Mon and Tue".

    What cannot be read is left as it was typed, and refused where it is kept.
    """
    if name in {"week_start", "work_days"}:
        return _days(name, said, language)
    value: object = said
    if name == "zone":
        value = answers.zone(said)
    elif name in {"window", "work_hours"}:
        value = answers.span(said, language)
    elif name in YES_NO:
        agreed = answers.yes_no(said, language)
        value = agreed if isinstance(agreed, answers.Unclear) else ("yes" if agreed else "no")
    elif name in BOUNDS:
        value = answers.number(said, *BOUNDS[name], language)
    if isinstance(value, tuple):
        return "-".join(f"{at:%H:%M}" for at in value)
    return said if isinstance(value, answers.Unclear) else str(value)


def _days(name: str, said: str, language: str) -> str:
    """One weekday as "monday", or several as "mon tue wed"."""
    days = answers.weekdays(said, language)
    if isinstance(days, answers.Unclear) or (name == "week_start" and len(days) != 1):
        return said
    if name == "week_start":
        return WEEKDAY_NAMES[days[0]]
    return " ".join(WEEKDAYS[day] for day in days)


def command(act: Act, name: str) -> Reply | None:  # noqa: PLR0911 # one return a command
    """The commands of an admin's menu."""
    match name:
        case "people" | "start":
            return staff.people(act.tx)
        case "invite":
            act.tx.questions.close(act.who.id, *ASKED)
            return reply("ask-invite-role")
        case "settings":
            act.tx.questions.close(act.who.id, *ASKED)
            return practice.settings(act.tx)
        case "cards":
            return pictures.screen(act)
        case "aside":
            return setaside.screen(act)
        case "help":
            return reply("help-admin")
        case _:
            return None
