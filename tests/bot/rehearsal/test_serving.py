"""The loopback server that the rehearsal and the tests run on."""

import signal

import httpx
import pytest
from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import PlainTextResponse, Response
from starlette.routing import Route

from bot.rehearsal.serving import Dropped, serving


async def path(request: Request) -> Response:
    return PlainTextResponse(request.url.path)


APP = Starlette(routes=[Route("/clock", path)])


async def test_it_takes_a_free_port_and_answers() -> None:
    async with serving(APP) as first, serving(APP) as second:
        assert first != second
        async with httpx.AsyncClient(trust_env=False, verify=False) as http:
            assert (await http.get(f"{first}/clock")).text == "/clock"
            assert (await http.get(f"{second}/clock")).text == "/clock"


async def test_a_port_that_is_taken_is_told_as_an_error_to_handle() -> None:
    async with serving(APP) as url:
        with pytest.raises(OSError, match="Address already in use"):
            async with serving(APP, port=int(url.rpartition(":")[2])):
                pass


async def test_it_leaves_signals_to_the_program() -> None:
    before = signal.getsignal(signal.SIGTERM), signal.getsignal(signal.SIGINT)
    async with serving(APP):
        assert (signal.getsignal(signal.SIGTERM), signal.getsignal(signal.SIGINT)) == before


async def test_nobody_answers_after_the_end() -> None:
    async with serving(APP) as url:
        pass
    async with httpx.AsyncClient(trust_env=False, verify=False) as http:
        with pytest.raises(httpx.ConnectError):
            await http.get(url)


async def test_dropping_under_another_server_says_what_is_missing() -> None:
    transport = httpx.ASGITransport(Starlette(routes=[Route("/", lambda _: Dropped())]))
    async with httpx.AsyncClient(transport=transport, base_url="http://test") as http:
        with pytest.raises(RuntimeError, match=r"only under bot\.rehearsal\.serving"):
            await http.get("/")
