"""Holds requests against the published Bot API: names, types, what is required.

Stricter than the platform, which passes over fields it does not know.
"""

import json
import re
from collections.abc import Collection, Mapping
from pathlib import Path
from typing import Any

WHOLE_NUMBER = re.compile(r"-?[0-9]{1,19}")


class RefusalError(Exception):
    """A request that the platform would not accept.

    `code` is the HTTP status and the error code; `description` is close to the platform's own
    words; `retry_after` is in seconds.
    """

    def __init__(self, code: int, description: str, retry_after: int | None = None) -> None:
        super().__init__(description)
        self.code = code
        self.description = description
        self.retry_after = retry_after

    def answer(self) -> dict[str, Any]:
        """The body of the platform's answer."""
        body: dict[str, Any] = {
            "ok": False,
            "error_code": self.code,
            "description": self.description,
        }
        if self.retry_after is not None:
            body["parameters"] = {"retry_after": self.retry_after}
        return body


def bad_request(reason: str) -> RefusalError:
    """The usual refusal: 400."""
    return RefusalError(400, f"Bad Request: {reason}")


class Contract:
    """The extract of the Bot API (`botapi.json`), and checks against it."""

    def __init__(self, extract: Mapping[str, Any]) -> None:
        self.methods: Mapping[str, Any] = extract["methods"]
        self.types: Mapping[str, Any] = extract["types"]

    def read_request(
        self, method: str, raw: Mapping[str, object], files: Collection[str] = ()
    ) -> dict[str, Any]:
        """The arguments of one call, decoded.

        Args:
            raw: values as sent; in forms all are text, with objects and lists as JSON.
            files: names of the uploaded files.
        Raises:
            RefusalError: 404 for an unknown method, 400 for anything the contract does not know,
                lacks, or has another type for.
        """
        shape = self.methods.get(method)
        if shape is None:
            raise RefusalError(404, "Not Found: method not found")
        fields: Mapping[str, list[str]] = shape["fields"]
        for name in raw:
            if name not in fields:
                raise bad_request(f'unknown field "{name}" in {method}')
        self._check_files(fields, raw, files)
        for name in shape.get("required", ()):
            if name not in raw and name not in files:
                raise bad_request(_missing(name))
        return {name: self._decode(name, fields[name], value) for name, value in raw.items()}

    def check(self, kind: str, value: object) -> None:
        """Refuse a value that is not of a type of the Bot API, such as `Message`."""
        self._value(kind, [kind], value)

    @staticmethod
    def _check_files(
        fields: Mapping[str, list[str]], raw: Mapping[str, object], files: Collection[str]
    ) -> None:
        attached = {value for value in raw.values() if isinstance(value, str)}
        for name in files:
            if "InputFile" not in fields.get(name, ()) and f"attach://{name}" not in attached:
                raise bad_request(f'unknown file "{name}"')

    def _decode(self, name: str, kinds: list[str], value: object) -> Any:
        if not isinstance(value, str):
            return self._value(name, kinds, value)
        if "Integer" in kinds and WHOLE_NUMBER.fullmatch(value):
            return int(value)
        if "String" in kinds:
            return _well_formed(value)
        if "Boolean" in kinds and value in {"true", "false"}:
            return value == "true"
        if not {"Integer", "Boolean", "InputFile"}.isdisjoint(kinds):
            raise bad_request(f'field "{name}" must be of type {" or ".join(kinds)}')
        try:
            decoded = json.loads(value)
        except (ValueError, RecursionError):
            raise bad_request(f"can't parse {name} JSON object") from None
        return self._value(name, kinds, decoded)

    def _value(self, name: str, kinds: list[str], value: object) -> Any:
        """`value` as one of `kinds`; the refusal is that of the kind it comes nearest to."""
        refusal = bad_request(f'field "{name}" must be of type {" or ".join(kinds)}')
        for kind in self._likely(kinds, value):
            try:
                return self._one(name, kind, value)
            except RefusalError as fault:
                refusal = fault
        raise refusal

    def _likely(self, kinds: list[str], value: object) -> list[str]:
        """The kinds, subtypes included, whose required and fixed fields are those of `value`."""
        spread = [sub for kind in kinds for sub in self._subtypes(kind)]
        if not isinstance(value, dict):
            return spread
        fitting = [kind for kind in spread if self._has_fixed(kind, value)]
        return sorted(fitting, key=lambda kind: self._has_required(kind, value))

    def _subtypes(self, kind: str) -> list[str]:
        subtypes: list[str] = self.types.get(kind, {}).get("subtypes", [kind])
        return subtypes

    def _has_fixed(self, kind: str, value: dict[str, Any]) -> bool:
        fixed: Mapping[str, str] = self.types.get(kind, {}).get("fixed", {})
        return all(value.get(name) == word for name, word in fixed.items())

    def _has_required(self, kind: str, value: dict[str, Any]) -> bool:
        return all(name in value for name in self.types.get(kind, {}).get("required", ()))

    def _one(self, name: str, kind: str, value: object) -> Any:
        if kind.startswith("Array of ") and isinstance(value, list):
            inner = kind.removeprefix("Array of ")
            return [self._value(name, [inner], each) for each in value]
        if kind == "Integer" and isinstance(value, int) and not isinstance(value, bool):
            return value
        if kind == "Float" and isinstance(value, int | float) and not isinstance(value, bool):
            return value
        if kind == "Boolean" and isinstance(value, bool):
            return value
        if kind == "String" and isinstance(value, str):
            return _well_formed(value)
        if isinstance(value, dict) and kind in self.types:
            return self._object(name, kind, value)
        raise bad_request(f'field "{name}" must be of type {kind}')

    def _object(self, name: str, kind: str, value: dict[str, Any]) -> dict[str, Any]:
        shape = self.types[kind]
        for field in value:
            if field not in shape["fields"]:
                raise bad_request(f'unknown field "{field}" in {kind}')
        for field in shape.get("required", ()):
            if field not in value:
                raise bad_request(f"can't parse {name}: can't find field \"{field}\" in {kind}")
        return {
            field: self._value(field, shape["fields"][field], inner)
            for field, inner in value.items()
        }


def load_contract() -> Contract:
    """The contract kept in `botapi.json`."""
    text = Path(__file__).with_name("botapi.json").read_text(encoding="utf-8")
    return Contract(json.loads(text))


def _missing(name: str) -> str:
    words = {"text": "message text is empty", "chat_id": "chat_id is empty"}
    return words.get(name, f'parameter "{name}" is required')


def _well_formed(text: str) -> str:
    """`text` if it can be written as UTF-8: halves of surrogate pairs can't."""
    try:
        text.encode()
    except UnicodeEncodeError:
        raise bad_request("strings must be encoded in UTF-8") from None
    return text
