"""Messages that leave as a photo or a file: which they are, what is drawn, and what stands below it.

A message's first text decides. Its big argument becomes the picture or the file; the caption says the
text with a few facts of it instead, as a caption holds 1,024 units and a digest much more.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import partial
from typing import Any

from bot.pictures import caseload_picture, how_to_picture, week_picture
from bot.reports import digest_csv, record_csv, record_fhir, record_json
from scheduler.domain.messages import Message, Text, text

LONGEST_CAPTION = 1024
"""UTF-16 units of a caption at the platform."""
PHOTO, DOCUMENT, VIDEO, ANIMATION = "photo", "document", "video", "animation"


@dataclass(frozen=True, slots=True)
class Attachment:
    """What leaves: the platform's kind of it, its file name, and the message that is its caption.

    `instead` is a file that the platform holds already, of kind `instead_kind`: it is sent in the place of
    what would be made, for as long as the platform knows it.
    """

    kind: str
    filename: str
    caption: Message
    _make: Callable[[Any, str], bytes]
    _value: Any
    instead: str = ""
    instead_kind: str = PHOTO

    def content(self, language: str) -> bytes:
        """Draw or write it. It takes a while: call it outside the event loop."""
        return self._make(self._value, language)


Maker = Callable[[Mapping[str, Any], tuple[Text, ...]], Attachment]


def attachment(message: Message) -> Attachment | None:
    """What a message leaves as, or `None` if it is words only."""
    if not message or message[0].id not in MAKERS:
        return None
    first, *others = message
    return MAKERS[first.id](first.args, tuple(others))


def _digest_picture(args: Mapping[str, Any], others: tuple[Text, ...]) -> Attachment:
    digest = args["digest"]
    caption = text(
        "digest-picture", week=digest["week"], first=digest["first"], last=digest["last"],
        count=len(digest["lines"]), need=sum(bool(each["reasons"]) for each in digest["lines"]),
    )  # fmt: skip
    name = f"digest-{digest['week']}.png"
    return Attachment(PHOTO, name, (caption, *others), caseload_picture, digest)


def _digest_file(args: Mapping[str, Any], others: tuple[Text, ...]) -> Attachment:
    digest = args["digest"]
    caption = text(
        "digest-file", week=digest["week"], first=digest["first"], last=digest["last"],
        count=len(digest["lines"]),
    )  # fmt: skip
    name = f"digest-{digest['week']}.csv"
    return Attachment(DOCUMENT, name, (caption, *others), digest_csv, digest)


def _week_picture(args: Mapping[str, Any], others: tuple[Text, ...]) -> Attachment:
    line = args["line"]
    first, last = line["cells"][0]["day"], line["cells"][-1]["day"]
    caption = text("week-picture", first=first, last=last, days=line["days"], needed=line["needed"])
    return Attachment(PHOTO, f"week-{first}.png", (caption, *others), week_picture, line)


def _how_to(id_: str, args: Mapping[str, Any], others: tuple[Text, ...]) -> Attachment:
    """The practice's own picture or clip of an exercise, else our drawing; the words say all of it."""
    exercise, own = str(args["exercise"]), args.get("picture") or {}
    caption = Text(id_, {key: value for key, value in args.items() if key != "picture"})
    return Attachment(
        PHOTO, f"{exercise}.png", (caption, *others), how_to_picture, exercise,
        str(own.get("file", "")), str(own.get("kind", PHOTO)),
    )  # fmt: skip


def _record(kind: str, make: Callable[[Any, str], bytes], ending: str = "") -> Maker:
    def attach(args: Mapping[str, Any], others: tuple[Text, ...]) -> Attachment:
        record = args["record"]
        name = f"record-{record['made_at'][:10]}{ending or f'.{kind}'}"
        return Attachment(DOCUMENT, name, (text(f"data-{kind}"), *others), make, record)

    return attach


MAKERS: Mapping[str, Maker] = {
    "digest-picture": _digest_picture,
    "digest-file": _digest_file,
    "week-picture": _week_picture,
    "data-json": _record("json", record_json),
    "data-csv": _record("csv", record_csv),
    "data-fhir": _record("fhir", record_fhir, ".fhir.json"),
    **{
        id_: partial(_how_to, id_)
        for id_ in ("how-to", "how-to-asked", "own-card", "own-card-kept")
    },
}
"""The texts that leave as a photo or a file."""
