"""Health, and the handle of the stepped clock, as those who run and check the bot meet them. Ours."""

from collections.abc import AsyncIterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import httpx
import pytest
from sqlalchemy import URL
from sqlalchemy.exc import OperationalError

from bot import ops, settings
from bot.ops import ops_app
from bot.rehearsal import people
from bot.rehearsal.stage import stage
from bot.telegram.application import STEPPED
from bot.wiring import clock_of
from scheduler.clock import SystemClock
from storage.store import SqlStore
from tests.conftest import on_sqlite
from tests.journeys.theatre import Theatre
from tests.process.life import free_port

EIGHT = datetime(2027, 3, 8, 8, tzinfo=UTC)
"""Ann's first bout: 8 am on her Monday in Lisbon, where March is UTC."""
PLAIN = {"trust_env": False, "timeout": 15}


@pytest.fixture
async def theatre(
    database_at: URL, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> AsyncIterator[Theatre]:
    """Kim and Dana at 05:00, and Ann, who is asked for 40 in four bouts from 8 to 8."""
    monkeypatch.setenv("PTB_TIMEDELTA", "true")  # without it the library warns of a coming change
    monkeypatch.delenv("SSL_CERT_FILE", raising=False)  # loopback needs no certificates
    monkeypatch.setenv("SSL_CERT_DIR", str(tmp_path))
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
    for path in ("/healthz", "/readyz"):
        assert (await handle.post(path)).status_code == 405
    assert (await handle.delete("/clock")).status_code == 405
    assert (await handle.get("/")).status_code == 404


@on_sqlite
async def test_it_is_served_where_the_setting_says(
    database_at: URL, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv("PTB_TIMEDELTA", "true")
    monkeypatch.delenv("SSL_CERT_FILE", raising=False)
    monkeypatch.setenv("SSL_CERT_DIR", str(tmp_path))
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
