"""What an admin says and taps. Admins set up the practice; they see no health data and decide no dose."""

from __future__ import annotations

from bot import answers
from bot.telegram.handlers.act import Act, Press
from scheduler.domain.people import Role
from scheduler.domain.reply import Reply, reply
from scheduler.domain.settings import BOUNDS, NAMES
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
        value = _as_kept(question.step, act.update.text.strip())
        return caseload.set_setting(act.tx, act.who.id, question.step, value, act.now)
    if question := open_question(act.tx, act.who.id, "invite"):
        return staff.invite_answer(act.tx, act.who, question, act.update.text, act.now)
    return reply("help-admin")


def _as_kept(name: str, said: str) -> str:
    """A setting as it is kept, from how people write it: "8 am to 8 pm", "Lisbon", "20 minutes"."""
    value: object = said
    if name == "zone":
        value = answers.zone(said)
    elif name == "window":
        value = answers.span(said)
    elif name in BOUNDS:
        value = answers.number(said, *BOUNDS[name])
    if isinstance(value, tuple):
        return "-".join(f"{at:%H:%M}" for at in value)
    return said if isinstance(value, answers.Unclear) else str(value)


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
