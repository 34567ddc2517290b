"""Health, and the handle of the stepped clock, as those who run and check the bot meet them. Ours."""

import asyncio
import re
from collections.abc import AsyncIterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import httpx
import pytest
from prometheus_client.parser import text_string_to_metric_families
from sqlalchemy import URL
from sqlalchemy.exc import OperationalError

from bot import metrics, ops, settings
from bot.metrics import DROPPED, HEARD_WITHIN, KINDS, kind_of
from bot.ops import ops_app
from bot.rehearsal import people
from bot.rehearsal.faults import Fault
from bot.rehearsal.stage import stage
from bot.telegram.application import STEPPED
from bot.wiring import clock_of
from scheduler.clock import SystemClock
from scheduler.domain.messages import Lane, message
from scheduler.usecases import receipts
from scheduler.usecases.post import tell
from storage.store import SqlStore
from tests.conftest import on_sqlite
from tests.journeys.theatre import Theatre
from tests.process.life import free_port

EIGHT = datetime(2027, 3, 8, 8, tzinfo=UTC)
"""Ann's first bout: 8 am on her Monday in Lisbon, where March is UTC."""
PLAIN = {"trust_env": False, "timeout": 15}


@pytest.fixture
async def theatre(database_at: URL, loopback: None) -> AsyncIterator[Theatre]:
    """Kim and Dana at 05:00, and Ann, who is asked for 40 in four bouts from 8 to 8."""
    theatre = Theatre(database_at)
    await theatre.client()
    yield theatre
    await theatre.close()
    theatre.check()


@pytest.fixture
async def handle(theatre: Theatre) -> AsyncIterator[httpx.AsyncClient]:
    """A client of the operations server of that bot."""
    transport = httpx.ASGITransport(ops_app(theatre.stage.house, stepped=True))
    async with httpx.AsyncClient(transport=transport, base_url="http://ops") as client:
        yield client


async def moved(handle: httpx.AsyncClient, to: datetime) -> dict[str, object]:
    answer = await handle.post("/clock", json={"to": to.isoformat()})
    assert answer.status_code == 200, answer.text
    told: dict[str, object] = answer.json()
    return told


@on_sqlite
async def test_a_bot_at_work_is_healthy_and_ready(handle: httpx.AsyncClient) -> None:
    health, ready = await handle.get("/healthz"), await handle.get("/readyz")
    assert (health.status_code, health.json()) == (200, {"status": "ok"})
    assert (ready.status_code, ready.json()) == (200, {"ready": True})


@on_sqlite
async def test_without_its_database_it_is_healthy_but_not_ready(
    theatre: Theatre, handle: httpx.AsyncClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    async def away(*_: object) -> None:
        raise OperationalError("SELECT", {}, ConnectionError("gone"))

    with monkeypatch.context() as outage:
        outage.setattr(theatre.stage.house.store, "run", away)
        ready = await handle.get("/readyz")
        assert (ready.status_code, ready.json()) == (503, {"ready": False})
        assert (await handle.get("/healthz")).status_code == 200
    assert (await handle.get("/readyz")).status_code == 200


def values(page: str) -> dict[tuple[str, ...], float]:
    """Every sample of ours: name and label values, read by the library's own reader of the format."""
    return {
        (sample.name.removeprefix("boutwise_"), *sample.labels.values()): sample.value
        for family in text_string_to_metric_families(page)
        for sample in family.samples
        if sample.name.startswith("boutwise_")
    }


async def test_metrics_tell_what_waits_what_was_sent_and_how_long_it_took(
    theatre: Theatre, handle: httpx.AsyncClient
) -> None:
    ann = theatre.clients[0]
    await moved(handle, EIGHT)
    await ann.say("did 10")
    await ann.say("my hip hurts, says the canary")
    answer = await handle.get("/metrics")
    assert answer.status_code == 200
    assert answer.headers["content-type"].startswith("text/plain; version=")
    told = values(answer.text)
    sent = [told["messages_sent_total", lane.name.lower()] for lane in Lane]
    assert (told["up",], sent) == (1, [0, 0, 2, 1, 0])  # a prompt, and an answer to each text
    assert told["message_delay_seconds_count", "prompt"] == 1
    assert told["update_handling_seconds_count",] == 2
    assert told["send_seconds_count", "delivered"] == await theatre.stage.house.sent()
    assert (told["flags_open", "yes"], told["flags_open", "no"]) == (0, 0)
    assert told["last_poll_age_seconds",] == 0
    assert {name for name in told if name[0] == "messages_dropped"} == {
        ("messages_dropped", kind) for kind in DROPPED
    }
    waiting = ("messages_due", "messages_late", "messages_unknown", "prompts_too_late")
    zero = (*waiting, "inbox_waiting", "updates_set_aside", "inbox_oldest_age_seconds")
    assert {name[0] for name, value in told.items() if name[0] in zero and value} == set()
    assert "canary" not in answer.text
    assert "Ann" not in answer.text
    refused = Fault("refuse", "sendMessage", theatre.dana, description="Bad Request: no Ann here")
    theatre.stage.world.faults.add(refused)
    letter = (theatre.stage.ids["Dana"], "letter", Lane.REST, message("help-clinician"), EIGHT)
    await theatre.stage.house.store.run(lambda tx: tell(tx, *letter))
    await moved(handle, EIGHT)
    page = (await handle.get("/metrics")).text
    assert values(page)["messages_dropped", "refused"] == 1
    assert "Ann" not in page


@on_sqlite
@pytest.mark.parametrize("fault", ["refuses", "hangs"])
async def test_a_scrape_while_the_database_is_away_tells_so_at_once(
    theatre: Theatre, handle: httpx.AsyncClient, monkeypatch: pytest.MonkeyPatch, fault: str
) -> None:
    async def away(*_: object) -> None:
        if fault == "hangs":
            await asyncio.Event().wait()
        raise OperationalError("SELECT", {}, ConnectionError("gone"))

    with monkeypatch.context() as outage:
        outage.setattr(metrics, "ANSWERS_WITHIN", 0.05)
        outage.setattr(theatre.stage.house.store, "run", away)
        answer = await handle.get("/metrics")
        assert (await handle.get("/readyz")).status_code == 503
    told = values(answer.text)
    assert (answer.status_code, told["up",]) == (200, 0)
    assert ("messages_due", "prompt") not in told  # what is not known is not told as zero
    assert ("messages_sent_total", "prompt") in told
    assert values((await handle.get("/metrics")).text)["up",] == 1


@on_sqlite
async def test_it_is_ready_while_any_process_of_its_store_hears_the_platform(
    theatre: Theatre, handle: httpx.AsyncClient
) -> None:
    """The last good poll or webhook call is noted in the store, at most once a minute."""
    house = theatre.stage.house

    async def heard(ago: timedelta) -> tuple[int, float]:
        at = (theatre.stage.now - ago).isoformat()
        await house.store.run(lambda tx: tx.book.put(receipts.RECEIVED, at))
        page = values((await handle.get("/metrics")).text)
        return (await handle.get("/readyz")).status_code, page["last_poll_age_seconds",]

    assert await heard(HEARD_WITHIN) == (200, HEARD_WITHIN.total_seconds())
    assert await heard(HEARD_WITHIN + timedelta(microseconds=1)) == (503, 180.000001)
    assert await heard(timedelta(0)) == (200, 0)


def test_every_reason_to_drop_a_message_is_of_a_kind() -> None:
    """Those in the source are ours; the platform's words are known by a few of them, and never told."""
    source = "".join(
        path.read_text(encoding="utf-8")
        for path in (Path(ops.__file__).parents[1] / "scheduler/usecases").glob("*.py")
    )
    ours = set(re.findall(r'(?:withdraw_all|cancel_prompts|cancel_own)\([^)]*"([^"]+)"\)', source))
    assert {"hold", "replanned", "expired"} <= ours
    assert ours <= KINDS.keys()
    said = {
        "bug: ValueError": "bug",
        "Forbidden: bot was blocked by the user": "unreachable",
        "Bad Request: chat not found": "unreachable",
        "Chat not found": "unreachable",
        "Bad Request: Ann Example is not here": "refused",
        "": "refused",
    }
    assert {reason: kind_of(reason) for reason in said} == said
    assert {*said.values(), *KINDS.values()} == {*DROPPED}


async def test_the_clock_tells_the_time_and_what_falls_due_next(handle: httpx.AsyncClient) -> None:
    answer = await handle.get("/clock")
    assert answer.status_code == 200
    told = answer.json()
    assert told["now"] == "2027-03-08T05:00:00Z"
    assert told["waiting"] == 0
    assert datetime.fromisoformat(told["next_due"]) <= EIGHT


async def test_a_step_carries_out_everything_up_to_its_instant_each_at_its_own(
    theatre: Theatre, handle: httpx.AsyncClient
) -> None:
    before = len([line for line in theatre.lines() if line.bot])
    told = await moved(handle, EIGHT - timedelta(microseconds=1))
    assert (told["sent"], told["next_due"]) == (0, "2027-03-08T08:00:00Z")
    told = await moved(handle, EIGHT)
    assert (told["now"], told["sent"]) == ("2027-03-08T08:00:00Z", 1)
    told = await moved(handle, EIGHT + timedelta(hours=6))
    said = [line for line in theatre.lines() if line.bot][before:]
    assert told["sent"] == len(said) - 1
    assert told["waiting"] == 0
    assert [line.at for line in said] == sorted(line.at for line in said)
    assert theatre.clients[0].times() == ["08:00", "12:00"]  # 720 minutes in three gaps, unanswered


@on_sqlite
async def test_the_next_due_instant_is_when_the_next_thing_happens(
    theatre: Theatre, handle: httpx.AsyncClient
) -> None:
    told = await moved(handle, EIGHT)
    for _ in range(4):
        due = datetime.fromisoformat(str(told["next_due"]))
        now = datetime.fromisoformat(str(told["now"]))
        assert due > now
        told = await moved(handle, due)


@on_sqlite
async def test_the_clock_is_never_put_back_and_may_stand(handle: httpx.AsyncClient) -> None:
    await moved(handle, EIGHT)
    answer = await handle.post("/clock", json={"to": "2027-03-08T07:59:59.999999Z"})
    assert answer.status_code == 409
    assert list(answer.json()) == ["error"]
    assert (await handle.get("/clock")).json()["now"] == "2027-03-08T08:00:00Z"
    assert (await moved(handle, EIGHT))["sent"] == 0
    # The same instant in another zone's words; ten minutes east of it would be back.
    assert (await moved(handle, datetime.fromisoformat("2027-03-08T09:00+01:00")))["sent"] == 0
    answer = await handle.post("/clock", json={"to": "2027-03-08T09:00:00+01:10"})
    assert answer.status_code == 409


@pytest.mark.parametrize(
    "body",
    [
        "",
        "now",
        "[]",
        "null",
        "{}",
        '{"to": null}',
        '{"to": "2027-03-08T12:00:00"}',
        '{"to": "noon"}',
        '{"to": 1804507200}',
        '{"to": "9999-12-31T23:59:59-01:00"}',
        '{"to": "0001-01-01T00:00:00+01:00"}',
        '{"handled": "1"}',
        '{"handled": 1.5}',
        '{"handled": true}',
        '{"handled": 9223372036854775808}',
        '{"to": "2027-03-08T12:00:00Z", "handled": 1}',
        '{"to": "2027-03-08T12:00:00Z", "then": 1}',
        "\ud800".encode("utf-8", "surrogatepass"),
    ],
)
@on_sqlite
async def test_a_body_that_says_neither_is_refused(
    handle: httpx.AsyncClient, body: str | bytes
) -> None:
    answer = await handle.post("/clock", content=body)
    assert answer.status_code == 400
    assert list(answer.json()) == ["error"]
    assert (await handle.get("/clock")).json()["now"] == "2027-03-08T05:00:00Z"


async def test_an_update_is_handled_when_its_answer_has_been_accepted(
    theatre: Theatre, handle: httpx.AsyncClient
) -> None:
    await moved(handle, EIGHT)
    ann = theatre.clients[0]
    (deed,) = people.say(theatre.stage.world, ann.facts.account, "did 10")
    answer = await handle.post("/clock", json={"handled": deed.update_id})
    assert (answer.status_code, answer.json()["now"]) == (200, "2027-03-08T08:00:00Z")
    assert ann.texts("logged")
    assert ann.done() == 10


@on_sqlite
async def test_an_answer_put_back_counts_as_handled_and_comes_when_the_platform_allows(
    theatre: Theatre, handle: httpx.AsyncClient
) -> None:
    await moved(handle, EIGHT)
    ann = theatre.clients[0]
    ann.trouble("too-fast", retry_after=7)
    (deed,) = people.say(theatre.stage.world, ann.facts.account, "did 10")
    answer = await handle.post("/clock", json={"handled": deed.update_id})
    assert answer.status_code == 200
    assert answer.json()["next_due"] == "2027-03-08T08:00:07Z"
    assert not ann.texts("logged")
    assert (await moved(handle, EIGHT + timedelta(seconds=6)))["sent"] == 0
    assert (await moved(handle, EIGHT + timedelta(seconds=7)))["sent"] == 1


@on_sqlite
async def test_an_update_that_never_came_is_waited_for_in_vain(
    handle: httpx.AsyncClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert ops.HANDLED_WITHIN == 10
    monkeypatch.setattr(ops, "HANDLED_WITHIN", 0.01)
    answer = await handle.post("/clock", json={"handled": 4711})
    assert answer.status_code == 504
    assert "4711" in answer.json()["error"]


@on_sqlite
async def test_a_message_put_back_by_the_platform_is_sent_by_a_later_step(
    theatre: Theatre, handle: httpx.AsyncClient
) -> None:
    theatre.clients[0].trouble("too-fast", retry_after=30)
    told = await moved(handle, EIGHT)
    assert (told["sent"], told["waiting"]) == (0, 0)
    assert told["next_due"] == "2027-03-08T08:00:30Z"
    assert (await moved(handle, EIGHT + timedelta(minutes=1)))["sent"] == 1
    assert theatre.clients[0].times() == ["08:00:30"]


@on_sqlite
async def test_there_is_no_handle_while_the_clock_is_the_systems(theatre: Theatre) -> None:
    transport = httpx.ASGITransport(ops_app(theatre.stage.house, stepped=False))
    async with httpx.AsyncClient(transport=transport, base_url="http://ops") as client:
        assert (await client.get("/clock")).status_code == 404
        moving = await client.post("/clock", json={"to": EIGHT.isoformat()})
        assert moving.status_code == 404
        assert (await client.get("/healthz")).status_code == 200


@on_sqlite
async def test_what_changes_nothing_is_only_read(handle: httpx.AsyncClient) -> None:
    for path in ("/healthz", "/readyz", "/metrics"):
        assert (await handle.post(path)).status_code == 405
    assert (await handle.delete("/clock")).status_code == 405
    assert (await handle.get("/")).status_code == 404


@on_sqlite
async def test_it_is_served_where_the_setting_says(database_at: URL, loopback: None) -> None:
    url, where = database_at.render_as_string(hide_password=False), f"127.0.0.1:{free_port()}"
    async with httpx.AsyncClient(base_url=f"http://{where}", trust_env=False) as client:
        async with stage(url, EIGHT, ops=where):
            assert (await client.get("/clock")).json()["now"] == "2027-03-08T08:00:00Z"
        with pytest.raises(httpx.ConnectError):
            await client.get("/clock")


@pytest.mark.parametrize(
    ("stored", "begins"),
    [
        (None, EIGHT),
        (EIGHT - timedelta(days=1), EIGHT),
        (EIGHT + timedelta(days=1), EIGHT + timedelta(days=1)),
    ],
)
def test_a_restart_goes_on_from_the_last_instant_and_never_back(
    store: SqlStore, stored: datetime | None, begins: datetime
) -> None:
    if stored is not None:
        store.run_sync(lambda tx: tx.book.put(STEPPED, stored.isoformat()))
    given = settings.read(CLOCK=f"stepped:{EIGHT.isoformat()}", DATABASE_URL="sqlite:///unused.db")
    assert clock_of(given, store).now() == begins
    real = settings.read(CLOCK="system", DATABASE_URL="sqlite:///unused.db")
    assert isinstance(clock_of(real, store), SystemClock)
