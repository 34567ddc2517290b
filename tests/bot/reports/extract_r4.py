"""Makes `r4.json`: the part of HL7 FHIR R4 (4.0.1) that a client's bundle is held against.

    python -m tests.bot.reports.extract_r4 DIRECTORY > tests/bot/reports/r4.json

DIRECTORY holds the definitions as HL7 publishes them with the standard: `fhir.schema.json`,
`profiles-resources.json`, `profiles-types.json`, `valuesets.json` and `v3-codesystems.json`. They are in the
public domain (CC0 1.0). Kept are the JSON schema of the resources we write and of all that they are made of,
and of every coded element of theirs the codes that the standard allows: of required bindings, and of
extensible and preferred ones as far as the standard lists them.
"""

import json
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

RESOURCES = (
    "AuditEvent", "Bundle", "CarePlan", "CodeSystem", "Communication", "Consent", "Flag", "Goal",
    "Observation", "Organization", "Patient", "Practitioner", "QuestionnaireResponse", "ServiceRequest",
    "Task",
)  # fmt: skip
BINDINGS = {"required", "extensible", "preferred"}
MOST_CODES = 300
"""Larger lists (currencies, media types) are not kept."""
OPEN_LISTS = {"http://hl7.org/fhir/ValueSet/languages"}
"""The common ones of many: any code of BCP 47 will do."""


def extract(directory: Path) -> dict[str, Any]:
    """The schema's definitions, and the codes of each coded element by their systems."""
    whole = _read(directory, "fhir.schema.json")["definitions"]
    definitions: dict[str, Any] = {}
    waiting = [*RESOURCES]
    while waiting:
        name = waiting.pop()
        if name not in definitions and name != "ResourceList":
            definitions[name] = _shape(whole[name])
            waiting += [*_named(definitions[name])]
    definitions["ResourceList"] = {"type": "object", "required": ["resourceType"]}
    values = Values(directory)
    types = {name.split("_")[0] for name in definitions}
    bound = {path: values.codes(url) for path, url in _bound(directory, types)}
    codes = {path: found for path, found in sorted(bound.items()) if found}
    return {"version": "4.0.1", "definitions": dict(sorted(definitions.items())), "codes": codes}


def _read(directory: Path, name: str) -> dict[str, Any]:
    read: dict[str, Any] = json.loads((directory / name).read_text(encoding="utf-8"))
    return read


def _shape(definition: dict[str, Any]) -> dict[str, Any]:
    """Without descriptions, and without the companions of primitive values that we do not write."""
    fields = {
        name: {key: value for key, value in field.items() if key != "description"}
        for name, field in definition.get("properties", {}).items()
        if not name.startswith("_")
    }
    kept = {key: value for key, value in definition.items() if key != "description"}
    return {**kept, "properties": fields} if fields else kept


def _named(definition: dict[str, Any]) -> Iterator[str]:
    for field in definition.get("properties", {}).values():
        ref = field.get("$ref") or field.get("items", {}).get("$ref")
        if ref:
            yield ref.rsplit("/", 1)[-1]


def _bound(directory: Path, types: set[str]) -> Iterator[tuple[str, str]]:
    for file in ("profiles-resources.json", "profiles-types.json"):
        for entry in _read(directory, file)["entry"]:
            resource = entry["resource"]
            if resource["resourceType"] != "StructureDefinition" or resource["name"] not in types:
                continue
            for element in resource["snapshot"]["element"]:
                binding = element.get("binding", {})
                url = binding.get("valueSet", "").split("|")[0]
                if binding.get("strength") in BINDINGS and url and url not in OPEN_LISTS:
                    yield element["path"], url


class Values:
    """The value sets and code systems of the standard."""

    def __init__(self, directory: Path) -> None:
        self._found: dict[str, Any] = {}
        for file in ("valuesets.json", "v3-codesystems.json"):
            for entry in _read(directory, file)["entry"]:
                self._found[entry["resource"]["url"]] = entry["resource"]

    def codes(self, url: str) -> dict[str, list[str]]:
        """The codes of a value set by system; nothing if the standard does not list them all, or too many."""
        found: dict[str, set[str]] = {}
        try:
            for system, code in self._listed(url):
                found.setdefault(system, set()).add(code)
        except LookupError:
            return {}
        if sum(map(len, found.values())) > MOST_CODES:
            return {}
        return {system: sorted(codes) for system, codes in sorted(found.items())}

    def _listed(self, url: str) -> Iterator[tuple[str, str]]:
        compose = self._found[url]["compose"]
        for part in compose["include"]:
            if "filter" in part or "exclude" in compose:
                raise LookupError(url)
            for other in part.get("valueSet", ()):
                yield from self._listed(other)
            if "concept" in part:
                yield from ((part["system"], each["code"]) for each in part["concept"])
            elif "system" in part:
                system = self._found[part["system"]]
                yield from ((part["system"], code) for code in self._all(system["concept"]))

    def _all(self, concepts: list[dict[str, Any]]) -> Iterator[str]:
        for each in concepts:
            yield each["code"]
            yield from self._all(each.get("concept", []))


if __name__ == "__main__":
    print(json.dumps(extract(Path(sys.argv[1])), indent=None, separators=(",", ":")))
