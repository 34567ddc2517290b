"""What people typed, as it may stand in a message of ours."""

from __future__ import annotations

import unicodedata

JOINERS = "\u200c\u200d"
"""Invisible letters without which some scripts and emoji are spelt wrong."""


def one_line(value: str, longest: int) -> str:
    """In one line, without control and invisible characters, and not too long."""
    visible = "".join(c for c in " ".join(value.split()) if not _is_control(c))
    return visible if len(visible) <= longest else visible[: longest - 1] + "…"


def _is_control(character: str) -> bool:
    return unicodedata.category(character) in {"Cc", "Cf", "Cs"} and character not in JOINERS
