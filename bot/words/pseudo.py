"""The pseudo-locale: each text as its id and its arguments, so that a reader can take it apart."""

from __future__ import annotations

import json

from scheduler.domain.messages import Text

PSEUDO = "qps"
"""The usual code for pseudo-localisation. It stands in no menu."""


def pseudo(text: Text) -> str:
    """`⟦id|{json of the arguments}⟧`, keys sorted, values as they are: ISO times, plain numbers."""
    return f"⟦{text.id}|{json.dumps(dict(text.args), ensure_ascii=False, sort_keys=True)}⟧"
