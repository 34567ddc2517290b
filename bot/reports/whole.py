"""A client's whole record as a file: JSON, or a long table with one value a line.

The shape of a record is in `scheduler.usecases.archive`; messages are told in words. The table's columns are
`section`, `row` (from 1 in each section), `field` and `value`; fields within a field are joined by a point.
It is UTF-8 with a byte order mark, commas and CRLF, as RFC 4180 says.
"""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterator, Mapping
from typing import Any

from bot.reports.table import guarded
from bot.words import MissingText, render
from scheduler.domain.messages import Message, from_json

COLUMNS = ("section", "row", "field", "value")


def record_json(record: Mapping[str, Any], language: str) -> bytes:
    """The record, indented, with letters of all scripts as they are."""
    said = in_words(record, language)
    return json.dumps(said, ensure_ascii=False, indent=1).encode() + b"\n"


def record_csv(record: Mapping[str, Any], language: str) -> bytes:
    """The record as a table, every cell guarded against being carried out by a spreadsheet."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(COLUMNS)
    for line in _lines(in_words(record, language)):
        writer.writerow([guarded(value) for value in line])
    return out.getvalue().encode("utf-8-sig")


def in_words(record: Mapping[str, Any], language: str) -> dict[str, Any]:
    """The record with what was sent to her in words."""
    messages = [
        # One that waits to be sent since an earlier version has no number.
        {
            "id": each.get("id"),
            "at": each["at"],
            "text": _words(from_json(each["message"]), language),
        }
        for each in record["messages"]
    ]
    return {**record, "messages": messages}


def _words(message: Message, language: str) -> str:
    """In her language of today; of a message that can be said no more, or was a picture, its ids."""
    try:
        return render(message, language)
    except MissingText:
        return " ".join(each.id for each in message)


def _lines(record: Mapping[str, Any]) -> Iterator[tuple[str, int, str, Any]]:
    for section, value in record.items():
        if isinstance(value, list):
            for number, row in enumerate(value, start=1):
                for field, cell in _cells(row, ""):
                    yield section, number, field, cell
        elif isinstance(value, Mapping):
            for field, cell in _cells(value, ""):
                yield section, 1, field, cell
        else:
            yield "record", 1, section, value


def _cells(value: Any, name: str) -> Iterator[tuple[str, Any]]:
    if isinstance(value, Mapping):
        for key, each in value.items():
            yield from _cells(each, f"{name}.{key}" if name else str(key))
    elif isinstance(value, list):
        for number, each in enumerate(value, start=1):
            yield from _cells(each, f"{name}.{number}" if name else str(number))
    else:
        yield name, value
