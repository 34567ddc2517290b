"""A long list in chat, page by page."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TypeVar

from scheduler.domain.messages import Argument

Row = TypeVar("Row")

PAGE = 12
"""Rows of one page: what a phone shows in two or three screens."""


def on_page(rows: Sequence[Row], page: int) -> list[Row]:
    """The rows of a page, the first being 0; of the last one where there are not so many."""
    first = min(page, _last(rows)) * PAGE
    return [*rows[first : first + PAGE]]


def place(rows: Sequence[object], page: int) -> Mapping[str, Argument]:
    """Which page that is, from 1, and how many there are."""
    return {"page": min(page, _last(rows)) + 1, "pages": _last(rows) + 1}


def _last(rows: Sequence[object]) -> int:
    return max(0, (len(rows) - 1) // PAGE)
