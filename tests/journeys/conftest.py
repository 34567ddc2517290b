"""A stage for every journey, on each engine in turn, and the invariants after it."""

from collections.abc import AsyncIterator
from pathlib import Path

import pytest
from sqlalchemy import URL

from tests.journeys.theatre import Theatre


@pytest.fixture
async def theatre(
    database_at: URL, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> AsyncIterator[Theatre]:
    """An open practice; at the end of the journey I1 to I9 are asserted over its log."""
    monkeypatch.setenv("PTB_TIMEDELTA", "true")  # without it the library warns of a coming change
    # Loopback needs no certificates; loading the usual ones takes longer than a journey's day.
    monkeypatch.delenv("SSL_CERT_FILE", raising=False)
    monkeypatch.setenv("SSL_CERT_DIR", str(tmp_path))
    theatre = Theatre(database_at)
    yield theatre
    await theatre.close()
    theatre.check()
