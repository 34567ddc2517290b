"""A Bundle as it is written: resources that refer to each other, and the codes they use.

The codes of our own have no published system. Those that a bundle uses are defined in it, in one
CodeSystem, so that it can be read without us. Codes of others come from HL7 FHIR R4 (4.0.1), LOINC and
SNOMED CT; UCUM names the units.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from datetime import datetime
from typing import Any
from uuid import UUID, uuid5
from zoneinfo import ZoneInfo

from bot.words import MissingText, render
from scheduler.domain.hours import local_day
from scheduler.domain.messages import Text

Resource = dict[str, Any]

OURS = UUID("5b0cf4c6-5d3e-4d5e-9c55-0d2f5c1f7a61")
"""Drawn at random once; every identifier of ours follows from it."""
LOCAL = f"urn:uuid:{uuid5(OURS, 'codes')}"
"""The system of our own codes."""
TERMS = "http://terminology.hl7.org/CodeSystem/"
LOINC, SNOMED, UCUM = "http://loinc.org", "http://snomed.info/sct", "http://unitsofmeasure.org"
REPETITIONS, SECONDS, PERCENT = "{repetitions}", "s", "%"
DAYS, ROUNDS, SCORE = "{days}", "{rounds}", "{score}"
NOTHING: tuple[Any, ...] = (None, "", [], {})
SPACES = re.compile(r"[^\S \t\r\n]")
"""White space that a FHIR string does not know as such, of any script."""
UNSEEN = re.compile("[\x00-\x08\x0e-\x1f\x7f-\x9f]")
"""Control characters."""


class Bundle:
    """The resources of one client's record, in `language`; `client` is the reference to her."""

    def __init__(self, record: Mapping[str, Any], language: str) -> None:
        """`record` is that of `scheduler.usecases.archive`."""
        self.record = record
        self.zone = ZoneInfo(record["zone"])
        self.client: Resource = {}
        self._language = language
        self._practice = uuid5(OURS, record["practice"]["name"])
        self._entries: list[Resource] = []
        self._codes: dict[str, str] = {}

    @property
    def practice_system(self) -> str:
        """The namespace of the numbers that the practice gives."""
        return f"urn:uuid:{self._practice}"

    def add(self, kind: str, key: object, **fields: Any) -> Resource:
        """Keep a resource under a key of its kind, and return the reference to it.

        What says nothing (`None`, an empty text or list) is left out: FHIR knows no empty value.
        """
        said = said_of(fields)
        url = self._url(kind, key)
        resource = {"resourceType": kind, "id": url.removeprefix("urn:uuid:"), **said}
        self._entries.append({"fullUrl": url, "resource": resource})
        return {"reference": url, "type": kind}

    def to(self, kind: str, key: object) -> Resource:
        """The reference to a resource that is kept before or after."""
        return {"reference": self._url(kind, key), "type": kind}

    def _url(self, kind: str, key: object) -> str:
        person = self.record["person"]["id"]
        return f"urn:uuid:{uuid5(self._practice, f'{person}/{kind}/{key}')}"

    def local(self, code: str, family: str = "", display: str = "") -> Resource:
        """A concept of ours. Its words are those of `family` in the catalogue, else the code's own."""
        shown = display or code.replace("-", " ")
        whole = f"{family}-{code}" if family else code
        self._codes.setdefault(whole, shown)
        said = self.named(family, code) if family else ""
        coding = {"system": LOCAL, "code": whole, "display": shown}
        return {"coding": [coding], "text": said or shown}

    def named(self, family: str, code: str) -> str:
        """A key's own words in the catalogue, else the key's."""
        return self.words(Text(f"name-{family}-{code}")) or code.replace("-", " ")

    def words(self, *texts: Text) -> str:
        """Texts of the catalogue in her language; nothing where it has no such text."""
        try:
            return render(texts, self._language)
        except MissingText:
            return ""

    def when(self, day: str, at: str) -> str:
        """When something was done: the instant, or the day alone where it was told on another day."""
        return at if self.day(at) == day else day

    def day(self, at: str) -> str:
        """Her local day of an instant."""
        return local_day(datetime.fromisoformat(at), self.zone).isoformat()

    def is_past(self, end: str) -> bool:
        """Whether a day of hers or an instant, the last of something, is over."""
        made_at = self.record["made_at"]
        return end <= made_at if "T" in end else end < self.day(made_at)

    def as_json(self) -> bytes:
        """The whole bundle: a collection, with the codes of ours that it uses at its end."""
        self.add(
            "CodeSystem", "codes", url=LOCAL, version="1", name="BoutwiseCodes", status="active",
            content="fragment", caseSensitive=True,
            concept=[{"code": code, "display": said} for code, said in sorted(self._codes.items())],
        )  # fmt: skip
        whole = {
            "resourceType": "Bundle",
            "type": "collection",
            "timestamp": self.record["made_at"],
            "entry": self._entries,
        }
        return json.dumps(whole, ensure_ascii=False, indent=1).encode() + b"\n"


def said_of(value: Any) -> Any:
    """The value without what says nothing in any depth; its texts of characters that a string may have."""
    if isinstance(value, str):
        text = UNSEEN.sub("", SPACES.sub(" ", value))
        return text if text.strip() else ""
    if isinstance(value, Mapping):
        parts = {name: said_of(each) for name, each in value.items()}
        return {name: each for name, each in parts.items() if each not in NOTHING}
    if isinstance(value, list):
        return [each for each in map(said_of, value) if each not in NOTHING]
    return value


def concept(system: str, code: str, display: str) -> Resource:
    """A concept of somebody else's system."""
    return {"coding": [{"system": system, "code": code, "display": display}]}


def quantity(value: float, unit: str) -> Resource:
    """So much of a UCUM unit."""
    return {"value": value, "unit": unit.strip("{}"), "system": UCUM, "code": unit}


def period(start: str | None, end: str | None) -> Resource:
    """From one day or instant to another; no end while it goes on."""
    return {name: value for name, value in (("start", start), ("end", end)) if value}


def note(*texts: str) -> list[Resource]:
    """What was said about it, of what was said at all."""
    return [{"text": each} for each in texts if each]
