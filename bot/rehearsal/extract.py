"""Makes `botapi.json`: the part of the Bot API that requests and answers are held against.

    python -m bot.rehearsal.extract SPECIFICATION.json

SPECIFICATION.json is the whole Bot API as data, from a public machine-readable specification
(`botapi.LICENSE` names it). Only names, types and what is required are kept: of every method of
the stand-in with all that can be put into it, and of the objects that the stand-in gives out.
"""

import json
import re
import sys
from pathlib import Path
from typing import Any

from bot.rehearsal.methods import METHODS

GIVEN_OUT = [
    "Update", "Message", "User", "Chat", "ChatFullInfo", "CallbackQuery", "File", "WebhookInfo",
    "PhotoSize", "Document", "Animation", "Video", "Voice", "Sticker", "Contact", "Location",
    "MessageOrigin", "MessageOriginHiddenUser", "MessageOriginUser", "AcceptedGiftTypes",
    "ChatMemberUpdated", "ChatMember", "ChatMemberMember", "ChatMemberBanned", "ChatMemberLeft",
    "MaybeInaccessibleMessage", "BotCommand",
]  # fmt: skip
FIXED = re.compile(r"(?:must be|always) [\"“]?(\w+)[\"”]?$")


def extract(whole: dict[str, Any]) -> dict[str, Any]:
    """The part of `whole` that the stand-in needs, in the shape that `Contract` reads."""
    types = whole["types"]
    wanted = set(GIVEN_OUT)
    waiting = [name for method in METHODS for name in _named(whole["methods"][method])]
    while waiting:
        name = waiting.pop()
        if name in types and name not in wanted:
            wanted.add(name)
            waiting += _named(types[name])
    return {
        "version": whole["version"],
        "release_date": whole["release_date"],
        "methods": {name: _shape(whole["methods"][name]) for name in sorted(METHODS)},
        "types": {name: _shape(types[name]) for name in sorted(wanted)},
    }


def _named(entry: dict[str, Any]) -> list[str]:
    """Names of the types that an entry's fields and subtypes speak of."""
    fields = [
        kind.rsplit(" ", 1)[-1] for field in entry.get("fields", []) for kind in field["types"]
    ]
    return [*fields, *entry.get("subtypes", [])]


def _shape(entry: dict[str, Any]) -> dict[str, Any]:
    fields = entry.get("fields", [])
    fixed = {field["name"]: FIXED.search(field["description"]) for field in fields}
    shape = {
        "returns": entry.get("returns"),
        "subtypes": entry.get("subtypes"),
        "required": [field["name"] for field in fields if field["required"]],
        "fixed": {name: found[1] for name, found in fixed.items() if found},
        "fields": {field["name"]: field["types"] for field in fields},
    }
    return {key: value for key, value in shape.items() if value or key == "fields"}


def _one_line(found: re.Match[str]) -> str:
    """A short list on one line keeps the file readable and its diffs small."""
    return "[" + re.sub(r"\s*\n\s*", " ", found[1]) + "]"


def main(arguments: list[str]) -> None:
    """Write `botapi.json` beside this file from the specification named in `arguments`."""
    whole = json.loads(Path(arguments[0]).read_text(encoding="utf-8"))
    text = json.dumps(extract(whole), indent=1, ensure_ascii=False)
    text = re.sub(r"\[\s+([^\[\]{}]*?)\s+\]", _one_line, text)
    Path(__file__).with_name("botapi.json").write_text(text + "\n", encoding="utf-8")


if __name__ == "__main__":
    main(sys.argv[1:])
