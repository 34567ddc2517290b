"""How fast messages leave: rule R3. Ours, and arithmetic where a number stands beside it."""

from collections.abc import AsyncIterator, Iterator
from datetime import UTC, datetime
from itertools import groupby, pairwise
from pathlib import Path
from types import SimpleNamespace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sqlalchemy import URL

from bot.telegram.pace import FORGET_AFTER, NoPace, Pace
from tests.conftest import on_sqlite
from tests.journeys.theatre import Theatre

EIGHT = datetime(2027, 3, 8, 8, tzinfo=UTC)
A_LITTLE = 1e-6  # seconds, for sums of floats


class Watch:
    """A clock moved by hand; what `Pace` would sleep is noted instead of slept."""

    def __init__(self) -> None:
        self.now = 1000.0
        self.left: list[tuple[int, float]] = []
        """Chat and second in which each message leaves."""

    async def leaves(self, pace: Pace, chat: int) -> float:
        self._waited = 0.0
        await pace.wait(chat)
        at = self.now + self._waited
        self.left.append((chat, at))
        return round(at - 1000, 6)

    async def sleep(self, seconds: float) -> None:
        self._waited = seconds


@pytest.fixture(scope="module")
def patched() -> Iterator[None]:
    """`Pace` sleeps on the watch of the moment."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("bot.telegram.pace.asyncio", SimpleNamespace(sleep=noted))
        yield


async def noted(seconds: float) -> None:
    await WATCHES[-1].sleep(seconds)


WATCHES: list[Watch] = []
pytestmark = pytest.mark.usefixtures("patched")


def at_rate(rate: float) -> tuple[Watch, Pace]:
    watch = Watch()
    WATCHES.append(watch)
    return watch, Pace(rate, lambda: watch.now)


async def test_the_first_message_leaves_at_once_and_the_others_at_the_rate() -> None:
    watch, pace = at_rate(25)
    times = [await watch.leaves(pace, chat) for chat in range(50)]
    assert times == pytest.approx([n / 25 for n in range(50)])


async def test_one_chat_gets_one_message_a_second() -> None:
    watch, pace = at_rate(25)
    assert [await watch.leaves(pace, 1) for _ in range(4)] == [0, 1, 2, 3]
    watch.now += 3.5
    assert await watch.leaves(pace, 1) == 4
    watch.now += 1.5
    assert await watch.leaves(pace, 1) == 5  # its second is over just now


async def test_a_chat_that_has_to_wait_holds_up_no_other() -> None:
    watch, pace = at_rate(25)
    for _ in range(5):
        await watch.leaves(pace, 1)
    assert await watch.leaves(pace, 2) == pytest.approx(1 / 25)


async def test_after_a_pause_no_places_have_been_saved_up() -> None:
    watch, pace = at_rate(2)
    await watch.leaves(pace, 1)
    watch.now += 60
    assert [await watch.leaves(pace, chat) for chat in (2, 3, 4)] == [60, 60.5, 61]


async def test_a_rate_below_one_a_second_holds_for_one_chat_too() -> None:
    watch, pace = at_rate(0.5)
    assert [await watch.leaves(pace, chat) for chat in (1, 1, 2)] == [0, 2, 4]


async def test_messages_that_waited_for_their_chat_count_for_the_rate_as_well() -> None:
    # Thirteen chats with two messages each, then 40 with one: the second ones fall between the 40.
    watch, pace = at_rate(25)
    twice = [chat for pair in zip(range(13), range(13), strict=True) for chat in pair]
    for chat in [*twice, *range(100, 140)]:
        await watch.leaves(pace, chat)
    fastest(watch, 25)


@given(
    st.sampled_from([0.5, 1.0, 3.0, 25.0, 1000.0]),
    st.lists(
        st.tuples(st.floats(0, 3, allow_nan=False), st.integers(1, 6)), min_size=1, max_size=60
    ),
)
async def test_whoever_writes_whenever_neither_rate_is_exceeded(
    rate: float, writing: list[tuple[float, int]]
) -> None:
    watch, pace = at_rate(rate)
    for pause, chat in writing:
        watch.now += pause
        await watch.leaves(pace, chat)
    fastest(watch, rate)


def fastest(watch: Watch, rate: float) -> None:
    """No two messages closer than the rate allows, no two to one chat within a second."""
    everyone = sorted(at for _, at in watch.left)
    assert all(b - a >= 1 / rate - A_LITTLE for a, b in pairwise(everyone))
    for _, group in groupby(sorted(watch.left), key=lambda each: each[0]):
        hers = [at for _, at in group]
        assert all(b - a >= 1 - A_LITTLE for a, b in pairwise(hers))


async def test_chats_whose_second_is_over_are_forgotten() -> None:
    watch, pace = at_rate(1000)
    for chat in range(FORGET_AFTER):
        await watch.leaves(pace, chat)
        watch.now += 0.001
    assert len(pace._chats) == FORGET_AFTER
    await watch.leaves(pace, FORGET_AFTER)
    assert len(pace._chats) <= 1001  # those of the last second


async def test_under_the_stepped_clock_nothing_waits() -> None:
    watch, _ = at_rate(1)
    pace = NoPace()
    assert [await watch.leaves(pace, 1) for _ in range(3)] == [0, 0, 0]


@pytest.fixture
async def theatre(
    database_at: URL, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> AsyncIterator[Theatre]:
    """A practice on the stepped clock."""
    monkeypatch.setenv("PTB_TIMEDELTA", "true")  # without it the library warns of a coming change
    monkeypatch.delenv("SSL_CERT_FILE", raising=False)  # loopback needs no certificates
    monkeypatch.setenv("SSL_CERT_DIR", str(tmp_path))
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
    assert isinstance(theatre.stage.house.application.work._pace, NoPace)
