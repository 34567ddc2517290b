"""I7, I8 and I9 of the specification, asserted over the message log of everybody in a journey."""

from collections import Counter
from collections.abc import Iterable, Mapping

from tests.journeys.log import Line


def strangers(lines: Iterable[Line], may_read: Mapping[int, set[str]]) -> list[str]:
    """I9: names of people in chats of those who have nothing to do with them."""
    everyone = set().union(*may_read.values())
    return [
        f"I9: {name} named in the chat of account {line.chat}: {line.words}"
        for line in lines
        if line.bot
        for name in everyone - may_read.get(line.chat, set())
        if name in line.words
    ]


def twice(lines: Iterable[Line]) -> list[str]:
    """I7 and I8 over a whole log: a flag announced, or a week's digest sent, more than once in a chat.

    A repeat says that it is one, as does what a colleague who covers gets; a digest has its number.
    """
    said: Counter[tuple[str, int, int]] = Counter()
    for line in lines:
        if not line.bot or line.edit:
            continue
        if (flag := line.get("flag")) and len(line.texts) == 1:
            said["I7: flag", line.chat, flag.args["flag"]] += 1
        digest = line.get("digest")
        if digest and digest.args["number"] and digest.args["page"] == 1:
            said["I8: digest", line.chat, digest.args["number"]] += 1
    return [
        f"{what} {n} came {count} times to {chat}"
        for (what, chat, n), count in said.items()
        if count > 1
    ]
