"""Runs an ASGI application on loopback with uvicorn, for the rehearsal and for tests."""

import asyncio
import socket
from collections.abc import AsyncIterator, Iterator
from contextlib import asynccontextmanager, contextmanager

from starlette.responses import Response
from starlette.types import ASGIApp, Receive, Scope, Send
from uvicorn import Config, Server
from uvicorn.protocols.http.h11_impl import H11Protocol

ABORT = "abort_connection"  # where in the scope's state a connection keeps its way to break off
IDLE_SECONDS = 3600  # a client that reuses an idle connection never meets one just closed


class _Connection(H11Protocol):
    """A connection that an application can break off, and that never holds up the end."""

    def connection_made(self, transport: asyncio.Transport) -> None:  # type: ignore[override]
        super().connection_made(transport)
        self.app_state = {**self.app_state, ABORT: transport.abort}

    def shutdown(self) -> None:
        self.transport.abort()


class Dropped(Response):
    """No answer at all: the connection is closed. Needs the server of this module."""

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:  # noqa: ARG002
        abort = scope.get("state", {}).get(ABORT)
        if abort is None:
            raise RuntimeError("only under bot.rehearsal.serving can a connection be dropped")
        abort()
        while (await receive())["type"] != "http.disconnect":
            pass


class _Server(Server):
    """Says when it listens, stops when told to, and leaves signals to the program."""

    def __init__(self, config: Config) -> None:
        super().__init__(config)
        self.listening = asyncio.Event()
        self.stopping = asyncio.Event()

    @contextmanager
    def capture_signals(self) -> Iterator[None]:
        yield

    async def startup(self, sockets: list[socket.socket] | None = None) -> None:
        await super().startup(sockets)
        self.listening.set()

    async def main_loop(self) -> None:
        await self.stopping.wait()


@asynccontextmanager
async def serving(app: ASGIApp, *, host: str = "127.0.0.1", port: int = 0) -> AsyncIterator[str]:
    """Serve `app` within the block; gives its address, like "http://127.0.0.1:40123".

    Port 0 takes a free one. At the end open requests are cut off, not waited for.

    Raises:
        OSError: the port can't be had.
    """
    listener = socket.create_server((host, port))
    # Accepted connections inherit it: else the second write of each answer waits 40 ms for the first's
    # acknowledgement, as asyncio sets it only on sockets that name their protocol.
    listener.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
    config = Config(
        app,
        http=_Connection,
        ws="none",
        lifespan="on",
        log_config=None,
        access_log=False,
        server_header=False,
        date_header=False,
        timeout_keep_alive=IDLE_SECONDS,
        timeout_graceful_shutdown=5,
    )
    server = _Server(config)
    running = asyncio.create_task(server.serve(sockets=[listener]))
    listening = asyncio.create_task(server.listening.wait())
    try:
        await asyncio.wait({running, listening}, return_when=asyncio.FIRST_COMPLETED)
        if not server.started:
            raise RuntimeError("the application did not start")
        yield f"http://{host}:{listener.getsockname()[1]}"
    finally:
        listening.cancel()
        server.stopping.set()
        await running
        listener.close()
