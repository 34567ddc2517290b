"""Pictures of a week, and of how an exercise is done.

Drawing holds the thread for some milliseconds: call these outside the event loop. Those of a week take the
JSON values of a message (see `scheduler/domain/digest.py` for what they count). All give a PNG within what
the platform takes as a photo: width + height at most 10,000, ratio at most 20, 10 MB. Nothing in them
comes from the clock. The drawing library is loaded when the first picture is drawn.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

__all__ = ["caseload_picture", "how_to_picture", "week_picture"]


def caseload_picture(digest: Mapping[str, Any], language: str) -> bytes:
    """Clients by the days of the week, those who need the clinician first, as a PNG (K3)."""
    from bot.pictures.caseload import draw  # noqa: PLC0415 # Pillow is loaded when it is needed

    return draw(digest, language)


def week_picture(line: Mapping[str, Any], language: str) -> bytes:
    """A client's own week as a PNG: large, calm, and without a verdict on any day (W7)."""
    from bot.pictures.week import draw  # noqa: PLC0415 # Pillow is loaded when it is needed

    return draw(line, language)


def how_to_picture(exercise: str, language: str) -> bytes:  # noqa: ARG001 # it holds no words
    """How an exercise is done, in two or three stages, as a PNG (C7). KeyError if it has none."""
    from bot.pictures.howto import draw  # noqa: PLC0415 # Pillow is loaded when it is needed

    return draw(exercise)
