"""What an admin says and taps. Admins set up the practice; they see no health data and decide no dose."""

from __future__ import annotations

from bot.telegram.handlers.act import Act, Press
from scheduler.domain.people import Role
from scheduler.domain.reply import Reply, reply
from scheduler.domain.settings import NAMES
from scheduler.usecases import caseload, staff
from scheduler.usecases.pain import open_question


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


def person(act: Act) -> Reply:
    return staff.person(act.tx, act.number(0))


def invite_again(act: Act) -> Reply:
    return staff.invite_again(act.tx, act.who, act.number(0), act.now)


def ask_discharge(act: Act) -> Reply:
    return staff.ask_discharge(act.tx, act.number(0))


def discharge(act: Act) -> Reply:
    return caseload.discharge(act.tx, act.who.id, act.number(0), act.now)


PRESSES: dict[str, Press] = {
    "s": setting,
    "ir": invite_role,
    "ic": invite_clinician,
    "ap": people,
    "a": person,
    "ia": invite_again,
    "d": ask_discharge,
    "dd": discharge,
}
COMMANDS: tuple[str, ...] = ("people", "invite", "settings", "help")


def heard(act: Act) -> Reply | None:
    """Typed words answer the open question about a setting or an invitation; else the help."""
    if act.update.kind == "edit":
        return None
    if not act.update.text:
        return reply("cannot-see-files", file=act.update.file)
    if question := open_question(act.tx, act.who.id, "setting"):
        return caseload.set_setting(
            act.tx, act.who.id, question.step, act.update.text.strip(), act.now
        )
    if question := open_question(act.tx, act.who.id, "invite"):
        return staff.invite_answer(act.tx, act.who, question, act.update.text, act.now)
    return reply("help-admin")


def command(act: Act, name: str) -> Reply | None:
    """The commands of an admin's menu."""
    match name:
        case "people" | "start":
            return staff.people(act.tx)
        case "invite":
            act.tx.questions.close(act.who.id, "invite", "setting")
            return reply("ask-invite-role")
        case "settings":
            act.tx.questions.close(act.who.id, "invite", "setting")
            return caseload.settings(act.tx)
        case "help":
            return reply("help-admin")
        case _:
            return None
