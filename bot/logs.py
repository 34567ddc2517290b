"""What libraries may write into a log: where and what kind, never a word of what passes through them (D2).

One of them logs the token with each address, another the texts, and a traceback holds whatever was at hand;
an operator who turns everything to DEBUG must not find them. Our own lines are written by structlog.
"""

from __future__ import annotations

import logging
from typing import Any


def bare_record(*args: Any, **options: Any) -> logging.LogRecord:
    """A record that says the line of the program, and the kind of an exception, instead of its message."""
    record = logging.LogRecord(*args, **options)
    fault = record.exc_info[0] if record.exc_info else None
    kind = f" {fault.__name__}" if fault else ""
    record.msg, record.args = f"{record.module}:{record.lineno}{kind}", None
    record.exc_info = record.exc_text = record.stack_info = None
    return record
