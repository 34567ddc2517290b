"""One update, one transaction: who is it, what may they do, what do we say.

Runs inside the database thread; its effects, the answer in the outbox and the mark on the inbox row are
kept together or not at all (R1, R2).
"""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime
from types import ModuleType

from bot.telegram.buttons import rows, well_formed
from bot.telegram.handlers import admin, behind, client, clinician, language, own
from bot.telegram.handlers.act import Act, Press
from bot.telegram.incoming import Incoming
from bot.understand import any_language
from bot.words.commands import canonical
from scheduler.domain.leaving import GONE
from scheduler.domain.messages import text
from scheduler.domain.people import Person, Role, State
from scheduler.domain.reply import Reply, reply
from scheduler.ports import Outgoing, Tap, Tx
from scheduler.usecases import caseload, join, reachable, silence, taps

HANDLERS: dict[Role, ModuleType] = {
    Role.CLIENT: client,
    Role.CLINICIAN: clinician,
    Role.ADMIN: admin,
}
ROLE_OF: dict[str, Role] = {
    verb: role for role, module in HANDLERS.items() for verb in module.PRESSES
}
"""Which role a button's verb belongs to. A press by anybody without that role is refused."""


def handle(tx: Tx, update: Incoming, now: datetime) -> int | None:
    """Carry out one update and put its answer into the outbox; as whom it was taken."""
    who, answer = _answer(tx, update, now)
    if answer is not None:
        _say(tx, who, update, answer, now)
    return who.id if who else None


def _say(tx: Tx, who: Person | None, update: Incoming, answer: Reply, now: datetime) -> None:
    in_place = update.kind == "press" and answer.in_place
    # Several pictures at once are one message of hers: they get one answer.
    album = update.album if not update.text else ""
    tx.outbox.add(
        Outgoing(
            key=f"answer:{update.chat}:{album}" if album else f"answer:{update.update_id}",
            lane=answer.lane,
            message=answer.message,
            person=who.id if who else None,
            chat=None if who else update.chat,
            edits=update.message_id if in_place else None,
            language=update.language[:2] or None,
        ),
        now,
    )


def _answer(  # noqa: PLR0911 # one return a kind of update
    tx: Tx, update: Incoming, now: datetime
) -> tuple[Person | None, Reply | None]:
    if not update.private:
        joined = update.kind == "membership" and update.member
        return None, reply("only-private") if joined else None
    if update.is_bot:
        return None, None
    mine = tx.people.of_account(update.account)
    if update.kind == "membership":
        _membership(tx, mine, update, now)
        return None, None
    mine = tuple(reachable.back(tx, person, now) for person in mine)
    name, argument = command_of(update.text) if update.kind == "text" else ("", "")
    if name == "start" and behind.is_code(mine, argument):
        who, answer = join.redeem(tx, update.account, argument, now)
        return who or (mine[0] if mine else None), answer
    if not mine:
        return None, reply("stranger")
    for person in mine:
        if person.role is Role.CLIENT and person.state is State.READY:
            silence.heard(tx, person.id, now)
    if update.kind == "press":
        return _pressed(tx, mine, update, now)
    taps.meant_anew(tx, (person.id for person in mine))
    return mine[0], _said(tx, mine, update, name, argument, now)


def _membership(tx: Tx, mine: tuple[Person, ...], update: Incoming, now: datetime) -> None:
    """The platform says that somebody blocked the bot, or took it back (R4)."""
    for person in mine:
        if update.member:
            reachable.back(tx, person, now)
        else:
            reachable.lost(tx, person.id, now)


def command_of(text: str) -> tuple[str, str]:
    """`/start CODE` as ("start", "CODE"), `/semana` as ("week", ""); what is no command as ("", "")."""
    if not text.startswith("/"):
        return "", ""
    first, _, rest = text[1:].partition(" ")
    return canonical(first.partition("@")[0].lower()), rest.strip()


def _said(  # one message's facts
    tx: Tx, mine: tuple[Person, ...], update: Incoming, name: str, argument: str, now: datetime
) -> Reply | None:
    who = mine[0]
    here = tuple(each for each in mine if each.state not in GONE)
    if name == "role" and here and not _tells_of_harm(who, update, argument):
        return _role(tx, here, argument)
    if who.state in GONE:
        return _after_care(tx, who)
    module, act = HANDLERS[who.role], Act(tx, who, update, now)
    if _tells_of_harm(who, update, argument):
        return client.heard(act)
    if name in language.COMMANDS:
        return language.command(act, argument)
    answer: Reply | None = None
    if argument and who.role is Role.CLIENT:
        answer = behind.command(act, name, argument)
    elif name:
        answer = module.command(act, name)
    return answer or module.heard(act)


def _tells_of_harm(who: Person, update: Incoming, argument: str) -> bool:
    """Whether a client tells of pain, a fall or a sign behind a command: "/help I fell" (P3, H1)."""
    if who.role is not Role.CLIENT or not argument:
        return False
    return any_language.found(any_language.read(update.text, who.language))


def _after_care(tx: Tx, who: Person) -> Reply:
    """Somebody who left is a stranger again, who is told how to come back."""
    practice = tx.book.practice()
    if who.state is State.LEFT:
        return Reply((text("stranger"), text("come-back", phone=practice.phone)))
    return reply("care-ended", phone=practice.phone, emergency_number=practice.emergency_number)


def _role(tx: Tx, mine: tuple[Person, ...], argument: str) -> Reply:
    roles = {person.role.value: person.role for person in mine}
    if argument in roles:
        return caseload.act_as(tx, mine[0], roles[argument])
    return reply("ask-role", role=mine[0].role.value, roles=sorted(roles))


def _pressed(
    tx: Tx, mine: tuple[Person, ...], update: Incoming, now: datetime
) -> tuple[Person, Reply | None]:
    """A press acts in the role its button was made for, if the presser has that role.

    One that repeats the press before it is not answered again (P5).
    """
    verb, *args = update.data.split(":")
    anyones = verb == "as" or verb in language.PRESSES
    role = mine[0].role if anyones else ROLE_OF.get(verb)
    who = next((person for person in mine if person.role is role), None)
    if who is None:
        return mine[0], reply("not-for-you")
    tap = Tap(update.message_id or 0, update.data, update.at)
    if taps.again(tx, who.id, tap):
        return who, None
    taps.meant_anew(tx, (person.id for person in mine if person is not who))
    if verb == "as" and args:
        answer = _role(tx, mine, args[0])
    else:
        answer = _press(Act(tx, who, update, now, args), verb)
    offered = answer.in_place and any(
        each.data == tap.data for row in rows(answer.message) for each in row
    )
    taps.carried_out(tx, who.id, tap, offered=offered)
    return who, answer


def _press(act: Act, verb: str) -> Reply:
    who = act.who
    if who.state in GONE:
        in_place = verb not in own.LEAVING  # pressed later it must not wipe out what leaving means
        return replace(_after_care(act.tx, who), in_place=in_place)
    if not well_formed(verb, act.args):
        return reply("question-over")
    presses: dict[str, Press] = {**HANDLERS[who.role].PRESSES, **language.PRESSES}
    return presses[verb](act)
