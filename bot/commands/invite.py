"""`boutwise invite`: a new person and a single-use invitation."""

from __future__ import annotations

import argparse
import sys
from typing import Any

from bot import settings
from bot.dialogue import CHOICES
from bot.settings import BadSettingError
from bot.wiring import command_clock, store_for_command
from bot.words import PSEUDO
from scheduler.domain.people import Person, Role
from scheduler.ports import Tx
from scheduler.usecases import join
from scheduler.usecases.staff import LONGEST_NAME


def add(subparsers: Any) -> None:
    """Add the command's parser."""
    parser = subparsers.add_parser("invite", help="print a single-use invitation")
    parser.add_argument("--role", required=True, choices=[role.value for role in Role])
    parser.add_argument("--name", required=True, help="first name or alias")
    parser.add_argument("--clinician", help="a client's clinician: name or id")
    parser.add_argument(
        "--language", default="en", help=f"{', '.join(CHOICES)}; %(default)s by default"
    )


def run(args: argparse.Namespace) -> int:
    """Print the link, or `/start CODE` while the bot's user name is not yet known."""
    name = " ".join(args.name.split())
    if faults := _faults(args, name):
        raise BadSettingError(*faults)
    given = settings.read()
    with store_for_command(given) as store:
        now = command_clock(store).now()

        def invite(tx: Tx) -> str:
            role = Role(args.role)
            clinician = _clinician(tx, args.clinician) if role is Role.CLIENT else None
            person = join.enrol(tx, None, role, name, args.language, clinician, now)
            code = join.invite(tx, None, person.id, now)
            bot = tx.book.read("bot_username")
            return f"https://t.me/{bot}?start={code}" if bot else f"/start {code}"

        link = store.run_sync(invite)
    print(link)
    print("Single use; give it only to the person it is for.", file=sys.stderr)
    return 0


def _faults(args: argparse.Namespace, name: str) -> list[str]:
    """One line for each that cannot be used."""
    faults = []
    if not 1 <= len(name) <= LONGEST_NAME or not _is_text(name):
        faults.append(f"--name must have 1 to {LONGEST_NAME} characters")
    if args.language not in {*CHOICES, PSEUDO}:
        faults.append(f"--language must be one of {', '.join(CHOICES)}")
    if args.clinician is not None and args.role != Role.CLIENT.value:
        faults.append(f"--clinician is for clients; this is a {args.role}")
    return faults


def _is_text(name: str) -> bool:
    """False where bytes of the command line were no text in the terminal's encoding."""
    try:
        name.encode()
    except UnicodeEncodeError:
        return False
    return True


def _clinician(tx: Tx, given: str | None) -> int:
    """The clinician meant; without a name the only one there is."""
    clinicians = [p for p in tx.people.everyone() if p.role is Role.CLINICIAN]
    found = [p for p in clinicians if given is None or _is(p, given)]
    if len(found) == 1:
        return found[0].id
    if not clinicians:
        raise BadSettingError("there is no clinician yet; invite one first with --role clinician")
    names = ", ".join(f"{p.name} ({p.id})" for p in clinicians)
    raise BadSettingError(f"--clinician must name one of: {names}")


def _is(person: Person, given: str) -> bool:
    return given == str(person.id) or given.casefold() == person.name.casefold()
