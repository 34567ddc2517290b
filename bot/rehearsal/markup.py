"""Reads the platform's HTML: text and entities, or a refusal in the platform's words.

Sources: the Bot API's page on formatting (which tags, which nest) and the behaviour of the
platform's open client library, TDLib, whose own test cases are among the tests. Two things are
stricter here, as that page asks: a bare `&` or `>` is refused, and so is a named entity other
than the four.
"""

import re
from dataclasses import dataclass, field
from typing import Any

from bot.rehearsal.contract import RefusalError, bad_request

NAMED = {"lt": "<", "gt": ">", "amp": "&", "quot": '"'}
TAGS = {
    "b": "bold", "strong": "bold", "i": "italic", "em": "italic", "u": "underline",
    "ins": "underline", "s": "strikethrough", "strike": "strikethrough", "del": "strikethrough",
    "span": "spoiler", "tg-spoiler": "spoiler", "a": "text_link", "code": "code", "pre": "pre",
    "blockquote": "blockquote",
}  # fmt: skip
ENTITY = re.compile(r"&(?:#x([0-9a-fA-F]+)|#([0-9]+)|([A-Za-z]+));?")
START = re.compile(r"<([^\s>/][^\s>]*|)")
SPACES = re.compile(r"\s*")
ATTRIBUTE = re.compile(r"([^\s=>]*)\s*(=)?\s*")
VALUE = re.compile(r"\"([^\"]*)\"|'([^']*)'|([A-Za-z0-9.\-]+)(?=[\s>])")
END = re.compile(r"</([^\s>]*)\s*(>)?")
LAST_CHARACTER = 0x10FFFF
SURROGATES = range(0xD800, 0xE000)
LONGEST_REFERENCE = 10  # characters of a numeric reference; longer ones are plain text


def units(text: str) -> int:
    """Length in UTF-16 code units, as the platform counts."""
    return len(text) + sum(char > "\uffff" for char in text)


@dataclass(frozen=True, slots=True)
class Formatted:
    """A text after parsing: what a person sees, and its entities as the Bot API shapes them."""

    text: str
    entities: list[dict[str, Any]] = field(default_factory=list)


def parse_html(source: str) -> Formatted:
    """Text and entities of `source`, without the white space around it.

    Raises:
        RefusalError: 400 "can't parse entities: ...", with the byte offset where it went wrong.
    """
    return trimmed(_Reader(source).read())


def trimmed(formatted: Formatted) -> Formatted:
    """Without white space at both ends; entities that covered only that are dropped."""
    start = len(formatted.text) - len(formatted.text.lstrip())
    text = formatted.text.strip()
    length = units(text)
    kept = []
    for entity in formatted.entities:
        begin = max(entity["offset"] - units(formatted.text[:start]), 0)
        stop = min(entity["offset"] + entity["length"] - units(formatted.text[:start]), length)
        if stop > begin:
            kept.append(entity | {"offset": begin, "length": stop - begin})
    return Formatted(text, sorted(kept, key=lambda each: (each["offset"], -each["length"])))


@dataclass(slots=True)
class _Open:
    tag: str
    offset: int
    attributes: dict[str, str]


class _Reader:
    """One pass over a source. `at` is the position reached, in characters."""

    def __init__(self, source: str) -> None:
        self.source = source
        self.at = 0
        self.parts: list[str] = []
        self.length = 0
        self.open: list[_Open] = []
        self.entities: list[dict[str, Any]] = []

    def read(self) -> Formatted:
        while self.at < len(self.source):
            char = self.source[self.at]
            if char == "<":
                self._end() if self.source.startswith("</", self.at) else self._start()
            elif char == "&":
                self._reference()
            elif char == ">":
                raise self._fault('Unescaped character ">"', self.at)
            else:
                self._take(char, 1)
        if self.open:
            tag = self.open[-1].tag
            raise self._fault(f'Can\'t find end tag corresponding to start tag "{tag}"')
        return Formatted("".join(self.parts), self.entities)

    def _take(self, text: str, width: int) -> None:
        self.parts.append(text)
        self.length += units(text)
        self.at += width

    def _reference(self) -> None:
        found = ENTITY.match(self.source, self.at)
        if found is None:
            raise self._fault('Unescaped character "&"', self.at)
        hexadecimal, decimal, name = found.groups()
        if name is not None:
            if name not in NAMED:
                raise self._fault(f'Unsupported entity "&{name};"', self.at)
            self._take(NAMED[name], len(found[0]))
            return
        code = int(hexadecimal, 16) if hexadecimal else int(decimal[:LONGEST_REFERENCE])
        if len(found[0].rstrip(";")) >= LONGEST_REFERENCE or not 0 < code < LAST_CHARACTER:
            self._take(found[0], len(found[0]))
        elif code in SURROGATES:
            raise self._fault(
                "Text contains invalid Unicode characters after decoding HTML entities, "
                "check for unmatched surrogate code units"
            )
        else:
            self._take(chr(code), len(found[0]))

    def _start(self) -> None:
        begin = self.at
        found = START.match(self.source, begin)
        word = found[1] if found else ""
        tag = word.lower()
        self.at = begin + 1 + len(word)
        if self.at >= len(self.source):
            raise self._fault("Unclosed start tag", begin)
        if tag not in TAGS:
            raise self._fault(f'Unsupported start tag "{tag}"', begin)
        attributes = self._attributes(tag, begin)
        if tag == "span" and attributes.get("class") != "tg-spoiler":
            raise self._fault('Tag "span" must have class "tg-spoiler"', begin)
        self.open.append(_Open(tag, self.length, attributes))

    def _attributes(self, tag: str, begin: int) -> dict[str, str]:
        attributes: dict[str, str] = {}
        while True:
            self._skip(SPACES)
            if self.source.startswith(">", self.at):
                self.at += 1
                return attributes
            found = ATTRIBUTE.match(self.source, self.at)
            self.at = found.end() if found else self.at
            if self.at >= len(self.source):
                raise self._fault(f'Unclosed start tag "{tag}"', begin)
            if found is None or not found[1]:
                raise self._fault(f'Empty attribute name in the tag "{tag}"', begin)
            attributes[found[1].lower()] = self._attribute_value(begin) if found[2] else ""

    def _attribute_value(self, begin: int) -> str:
        found = VALUE.match(self.source, self.at)
        if found is None and self.source[self.at] in "\"'":
            raise self._fault("Unclosed start tag", begin)
        if found is None:
            token = re.compile(r"[A-Za-z0-9.\-]*").match(self.source, self.at)
            raise self._fault("Unexpected end of name token", self.at if token else begin)
        self.at = found.end()
        if self.at >= len(self.source):
            raise self._fault("Unclosed start tag", begin)
        quoted = found[1] if found[1] is not None else found[2]
        return _decoded(quoted) if quoted is not None else found[3].lower()

    def _skip(self, pattern: re.Pattern[str]) -> None:
        found = pattern.match(self.source, self.at)
        self.at = found.end() if found else self.at

    def _end(self) -> None:
        begin = self.at
        if not self.open:
            raise self._fault("Unexpected end tag", begin)
        found = END.match(self.source, begin)
        if found is None or not found[2]:
            raise self._fault("Unclosed end tag", begin)
        tag, expected = found[1].lower(), self.open[-1].tag
        if tag not in {"", expected}:
            raise self._fault(
                "Unmatched end tag", begin, f', expected "</{expected}>", found "</{found[1]}>"'
            )
        self.at = found.end()
        self._close(self.open.pop())

    def _close(self, opened: _Open) -> None:
        if self.length == opened.offset:
            return
        place = {"offset": opened.offset, "length": self.length - opened.offset}
        language = opened.attributes.get("class", "").removeprefix("language-")
        if opened.tag == "a":
            url = opened.attributes.get("href", "")
            if url:
                self.entities.append({"type": "text_link", **place, "url": url})
        elif opened.tag == "blockquote" and "expandable" in opened.attributes:
            self.entities.append({"type": "expandable_blockquote", **place})
        elif opened.tag == "pre" and language:
            self.entities.append({"type": "pre", **place, "language": language})
        else:
            self.entities.append({"type": TAGS[opened.tag], **place})

    def _fault(self, reason: str, at: int | None = None, more: str = "") -> RefusalError:
        where = "" if at is None else f" at byte offset {len(self.source[:at].encode())}"
        return bad_request(f"can't parse entities: {reason}{where}{more}")


def _decoded(value: str) -> str:
    """An attribute's value with its four named references read."""
    return re.sub(r"&(lt|gt|amp|quot);?", lambda found: NAMED[found[1]], value)
