"""The readiness questions (J3): asked before impact, shown to the clinician, never a diagnosis.

Ours, built on general practice. The keys are catalogue ids; the wording is in the catalogue.
"""

from __future__ import annotations

from collections.abc import Mapping

SCREENS: Mapping[str, tuple[str, ...]] = {
    "bones": ("broken-bone", "spine-fracture", "surgery", "two-falls", "bone-injections", "height"),
    "heart": ("heart", "dizzy-spells", "numb-feet", "eye", "blood-thinners"),
    "else": ("new-pain", "joint", "leaking", "pregnant", "replacement", "steroids"),
}
"""The three screens in their order, each with its questions."""

ORDER: tuple[str, ...] = tuple(SCREENS)
KEYS: frozenset[str] = frozenset(key for keys in SCREENS.values() for key in keys)


def next_screen(screen: str) -> str | None:
    """The screen after one, `None` after the last."""
    after = ORDER.index(screen) + 1
    return ORDER[after] if after < len(ORDER) else None
