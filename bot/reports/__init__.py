"""Files with a week's or a client's values: CSV, PDF, JSON and FHIR.

They are handed out in chat only where the practice has allowed it (D5); that is the caller's to ask.
The same values give the same bytes.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from bot.reports.fhir import record_fhir
from bot.reports.table import digest_csv
from bot.reports.whole import record_csv, record_json

__all__ = ["client_pdf", "digest_csv", "record_csv", "record_fhir", "record_json"]


def client_pdf(record: Mapping[str, Any], language: str) -> bytes:
    """One client over a period, as one page of A4 (K6). The shape of `record` is in `bot/reports/page.py`."""
    from bot.reports.page import draw  # noqa: PLC0415 # the PDF library is loaded when it is needed

    return draw(record, language)
