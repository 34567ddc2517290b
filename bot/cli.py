"""The command line: `boutwise COMMAND`. Exit 0 on success, 2 on wrong use or bad input, 1 on failure."""

from __future__ import annotations

import argparse
import importlib
import os
import sys
from collections.abc import Sequence
from typing import NoReturn

COMMANDS = {
    "run": "the bot",
    "rehearse": "the real bot against a stand-in chat server, with invented people",
    "migrate": "bring the database to the current schema",
    "invite": "print a single-use invitation",
    "people": "who is in the practice",
    "digest": "one clinician's week as files",
    "export": "one client's record as a file",
    "backup": "a copy of the embedded database in one file, while the bot runs",
    "restore": "put a backup into an empty place",
    "key": "a new key for encryption at rest",
    "dose": "one day spread, and the dose table; no database",
    "understand": "what a client's text would be taken for; no database",
    "doctor": "check settings, database, token, time zones and clock; say what to do",
}
"""Every command with its help. Each is the module `bot.commands.NAME`, imported only when it is asked for."""


class _Parser(argparse.ArgumentParser):
    """Says one clear line for wrong use, without the usage block."""

    def error(self, message: str) -> NoReturn:
        self.exit(2, f"{self.prog}: {message}. See `{self.prog} --help`.\n")


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command; the exit code."""
    given = list(sys.argv[1:] if argv is None else argv)
    parser = _Parser(
        prog="boutwise", description="Carries a prescribed daily total through the day."
    )
    parser.add_argument("--version", action="version", version=_version())
    subparsers = parser.add_subparsers(dest="command", metavar="COMMAND", parser_class=_Parser)
    name = next((word for word in given if not word.startswith("-")), None)
    if name in COMMANDS:
        importlib.import_module(f"bot.commands.{name}").add(subparsers)
    for other, words in COMMANDS.items():
        if other != name:
            subparsers.add_parser(other, help=words)
    args = parser.parse_args(given)
    if name not in COMMANDS:
        parser.error("name a COMMAND")
    return _run(name, args)


def _run(name: str, args: argparse.Namespace) -> int:
    try:
        code: int = importlib.import_module(f"bot.commands.{name}").run(args)
        sys.stdout.flush()  # a reader that has gone away is met here, not when the interpreter ends
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
    except KeyboardInterrupt:
        return 130
    except Exception as error:
        code, words = _fault(error)
        if not words:
            raise
        for line in words.splitlines():
            print(f"boutwise {name}: {line}", file=sys.stderr)
    return code


def _fault(error: Exception) -> tuple[int, str]:
    """Exit code and words, a line for each fault; no words for a bug of ours."""
    from sqlalchemy.exc import DBAPIError  # noqa: PLC0415 # keeps --help fast

    from bot.settings import BadSettingError  # noqa: PLC0415
    from storage.backup import BadBackupError, NotCopiedError  # noqa: PLC0415
    from storage.keys import DamagedError, WrongKeyError  # noqa: PLC0415
    from storage.migrate import BrokenReferencesError  # noqa: PLC0415

    match error:
        case BadSettingError() | BadBackupError():
            return 2, str(error)
        case WrongKeyError():
            return 2, f"BOUTWISE_KEY cannot be used: {error}"
        case DamagedError() | BrokenReferencesError() | NotCopiedError():
            return 1, str(error)
        case DBAPIError():
            kind = type(error).__name__
            return 1, f"the database does not answer ({kind}); see BOUTWISE_DATABASE_URL."
        case OSError() if error.filename:
            return 1, f"{error.filename}: {error.strerror}."
        case _:
            return 1, ""


def _version() -> str:
    from importlib.metadata import version  # noqa: PLC0415 # keeps --help fast

    return version("boutwise")
