"""Starts the bot again and again without paying for its imports each time: a program of its own.

It imports what `boutwise run` imports and waits. For every line on its standard input it forks; the child
is the bot, a process with its own memory, ended by signals like any other. The settings come with the
line. Answers with the child's number, and when it has ended with its exit code.
"""

import json
import os
import sys
from pathlib import Path

import bot.commands.run
from bot.cli import main


def child(settings: dict[str, str], log: str) -> int:
    """Be `boutwise run` with these settings and nothing of the parent's, its words in `log`."""
    os.environ.update(settings)  # noqa: TID251 # before anything has read it
    with Path(log).open("ab", buffering=0) as words:
        for stream in (1, 2):
            os.dup2(words.fileno(), stream)
    os.close(0)
    return main(["run"])


def serve() -> None:
    """One child after the other until the input ends."""
    for line in sys.stdin:
        asked = json.loads(line)
        number = os.fork()
        if number == 0:
            os._exit(child(asked["settings"], asked["log"]))
        print(number, flush=True)
        print(os.waitstatus_to_exitcode(os.waitpid(number, 0)[1]), flush=True)


if __name__ == "__main__":
    assert bot.commands.run is not None
    serve()
