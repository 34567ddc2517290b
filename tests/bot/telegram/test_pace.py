"""What rule R3 means for a running bot; `tests/storage/test_departures.py` has the pace itself."""

from collections.abc import AsyncIterator
from datetime import UTC, datetime

import pytest
from sqlalchemy import URL

from tests.conftest import on_sqlite
from tests.journeys.theatre import Theatre

EIGHT = datetime(2027, 3, 8, 8, tzinfo=UTC)


@pytest.fixture
async def theatre(database_at: URL, loopback: None) -> AsyncIterator[Theatre]:
    """A practice on the stepped clock."""
    theatre = Theatre(database_at)
    yield theatre
    await theatre.close()
    theatre.check()


@on_sqlite
async def test_when_one_chat_is_too_fast_only_that_chat_waits(theatre: Theatre) -> None:
    ann, bo = await theatre.client("Ann"), await theatre.client("Bo")
    fault = ann.trouble("too-fast", retry_after=120)
    await theatre.stage.step(EIGHT.replace(minute=10))
    assert fault.hits == 1
    late, prompt = ann.times()[0], bo.times()[0]
    assert (late[:5], prompt[:5]) == ("08:02", "08:00")


@on_sqlite
async def test_a_step_is_not_held_up_by_the_second_between_messages_to_one_chat(
    theatre: Theatre,
) -> None:
    ann = await theatre.client()
    before = len(ann.heard())
    for reps in (1, 2, 3):
        await ann.say(f"did {reps}")
    assert len(ann.heard()) == before + 3
    assert {line.at for line in ann.heard()[before:]} == {theatre.stage.now}
    assert theatre.stage.house.application.work._pace is None
