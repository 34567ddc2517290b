"""A stage for every journey, on each engine in turn, and the invariants after it."""

from collections.abc import AsyncIterator

import pytest
from sqlalchemy import URL

from tests.journeys.theatre import Theatre


@pytest.fixture
async def theatre(database_at: URL, loopback: None) -> AsyncIterator[Theatre]:
    """An open practice; at the end of the journey I1 to I9 are asserted over its log."""
    theatre = Theatre(database_at)
    yield theatre
    await theatre.close()
    theatre.check()
