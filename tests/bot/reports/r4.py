"""A bundle held against HL7 FHIR R4 (4.0.1): the standard's own JSON schema, codes and rules of references.

`extract_r4.py` says where `r4.json` comes from. Of the standard's invariants only those are looked at that a
bundle of ours could break; they are quoted where they are.
"""

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from jsonschema import Draft6Validator

STANDARD = json.loads((Path(__file__).parent / "r4.json").read_text(encoding="utf-8"))
DEFINITIONS, CODES = STANDARD["definitions"], STANDARD["codes"]
UCUM = "http://unitsofmeasure.org"
UNITS = {"s", "%", "{repetitions}", "{score}", "{days}", "{rounds}"}
"""UCUM: second, percent, and annotations of the unit 1 (section 2.4.2; units of `evidence`, memory)."""


def faults(bundle: dict[str, Any]) -> list[str]:
    """What the standard says against a bundle, one line each; nothing if it is sound."""
    resources = [entry["resource"] for entry in bundle["entry"]]
    found = [*_shape(bundle), *_references(bundle)]
    for resource in resources:
        found += [*_shape(resource), *_coded(resource, resource["resourceType"])]
        found += [*_invariants(resource)]
    return found


def _shape(resource: dict[str, Any]) -> Iterator[str]:
    kind = resource["resourceType"]
    if kind not in DEFINITIONS:
        yield f"{kind} is not among the resources of the extract"
        return
    schema = {"$ref": f"#/definitions/{kind}", "definitions": DEFINITIONS}
    for error in Draft6Validator(schema).iter_errors(resource):
        yield f"{kind}.{'.'.join(map(str, error.path))}: {error.message[:200]}"


def _coded(value: Any, kind: str, path: str = "") -> Iterator[str]:
    """Every coded element: its code is one of the standard's for that element."""
    path = path or kind
    for name, each in value.items():
        field = DEFINITIONS[kind].get("properties", {}).get(name, {})
        ref = field.get("$ref") or field.get("items", {}).get("$ref") or ""
        inner, here = ref.rsplit("/", 1)[-1], f"{path}.{name}"
        for one in each if isinstance(each, list) else [each]:
            yield from _one(one, inner, here)


def _one(value: Any, kind: str, path: str) -> Iterator[str]:
    allowed = CODES.get(path, {})
    if isinstance(value, str):
        if allowed and not any(value in codes for codes in allowed.values()):
            yield f"{path}: {value!r} is no code of it"
        return
    if not isinstance(value, dict):
        return
    for coding in value.get("coding", [value] if "system" in value and "code" in value else []):
        codes = allowed.get(coding.get("system"))
        if codes is not None and coding["code"] not in codes:
            yield f"{path}: {coding['code']!r} is no code of {coding['system']}"
    backbone = "_" in kind  # a part of its resource or type has no paths of its own
    yield from _coded(value, kind, path if backbone else kind) if kind in DEFINITIONS else ()


def _references(bundle: dict[str, Any]) -> Iterator[str]:
    """Every reference is to a resource of the bundle, and of the type that it says."""
    urls = {entry["fullUrl"]: entry["resource"] for entry in bundle["entry"]}
    if len(urls) != len(bundle["entry"]):
        yield "bdl-7: FullUrl must be unique in a bundle"
    for entry in bundle["entry"]:
        if entry["fullUrl"] != f"urn:uuid:{entry['resource']['id']}":
            yield f"{entry['fullUrl']} is not the id {entry['resource']['id']}"
        for reference in _within(entry["resource"], "reference"):
            if not isinstance(reference["reference"], str):
                continue
            there = urls.get(reference["reference"])
            if there is None or there["resourceType"] != reference["type"]:
                yield f"{reference} of {entry['resource']['resourceType']} leads nowhere"


def _within(value: Any, key: str) -> Iterator[dict[str, Any]]:
    if isinstance(value, list):
        for each in value:
            yield from _within(each, key)
    elif isinstance(value, dict):
        if key in value:
            yield value
        for each in value.values():
            yield from _within(each, key)


def _invariants(resource: dict[str, Any]) -> Iterator[str]:
    kind = resource["resourceType"]
    for span in _within(resource, "start"):
        if "end" in span and span["end"][: len(span["start"])] < span["start"][: len(span["end"])]:
            yield f"{kind}: per-1: If present, start SHALL have a lower value than end: {span}"
    for amount in _within(resource, "value"):
        if amount.get("system") == UCUM and amount["code"] not in UNITS:
            yield f"{kind}: {amount['code']} is no unit of ours"
    yield from _valued(resource)
    if kind == "Consent" and not {"policy", "policyRule"} & {*resource}:
        yield "ppc-1: Either a Policy or PolicyRule"
    if kind == "Organization" and not {"name", "identifier"} & {*resource}:
        yield "org-1: The organization SHALL at least have a name or an identifier"


def _valued(resource: dict[str, Any]) -> Iterator[str]:
    for part in (resource, *resource.get("component", [])):
        valued = [name for name in part if name.startswith("value")]
        if "dataAbsentReason" in part and valued:
            yield "obs-6: dataAbsentReason SHALL only be present if Observation.value[x] is not present"
        if len(valued) > 1:
            yield f"{resource['resourceType']}: more than one value[x]: {valued}"
