"""The way to the platform over aiohttp: many requests at once, and a cause for every fault.

The library's own transport takes 4 to 11 ms of processor time a request and less and less a second the more
there are at once; this one takes 1 ms, however many (measured). `httpx-aiohttp` is as fast, but tells of a
connection cut in the middle as of one never made, after which a prompt would be sent twice.
"""

from __future__ import annotations

import ssl
from functools import cache
from typing import Any
from urllib.parse import urlsplit
from urllib.request import getproxies, proxy_bypass

import aiohttp
from telegram.error import NetworkError, TimedOut
from telegram.request import BaseRequest, RequestData

from bot.telegram.sender import NotConnectedError

CONNECT_SECONDS, READ_SECONDS, WRITE_SECONDS, MEDIA_SECONDS = 5.0, 5.0, 5.0, 20.0
QUEUE_SECONDS = 30.0
"""How long a request may wait for a connection."""
IDLE_SECONDS = 15.0
"""After so long an unused connection is closed by us, before the platform may."""
NEVER_CONNECTED = (
    aiohttp.ClientConnectorError,
    aiohttp.ConnectionTimeoutError,
    aiohttp.ClientHttpProxyError,
)
"""Causes after which a request has certainly not reached the platform. Not their parents, which also
stand for connections that end after a request was sent."""


class Line(BaseRequest):
    """At most so many connections to one Bot API server. The library calls `do_request`, nobody else."""

    def __init__(self, connections: int, trust: ssl.SSLContext | None) -> None:
        """`trust` holds the certificates to trust; none for plain HTTP."""
        self._connections, self._trust = connections, trust
        self._session: aiohttp.ClientSession | None = None

    @property
    def read_timeout(self) -> float:
        """Seconds that an answer may take; a long poll adds its own."""
        return READ_SECONDS

    async def initialize(self) -> None:
        """Be ready for requests."""
        if self._session is None:
            self._session = self._open()

    async def shutdown(self) -> None:
        """Close every connection."""
        session, self._session = self._session, None
        if session is not None:
            await session.close()

    async def renew(self) -> None:
        """Drop every connection, and look the address up anew."""
        await self.shutdown()
        await self.initialize()

    async def do_request(
        self,
        url: str,
        method: str,
        request_data: RequestData | None = None,
        read_timeout: Any = BaseRequest.DEFAULT_NONE,
        write_timeout: Any = BaseRequest.DEFAULT_NONE,
        connect_timeout: Any = BaseRequest.DEFAULT_NONE,
        pool_timeout: Any = BaseRequest.DEFAULT_NONE,
    ) -> tuple[int, bytes]:
        """One request; status and body. NetworkError, caused by NotConnectedError where it never left."""
        if self._session is None:
            raise RuntimeError("not initialized")
        media = bool(request_data and request_data.multipart_data)
        timeout = _timeout(
            _or(read_timeout, READ_SECONDS),
            _or(write_timeout, MEDIA_SECONDS if media else WRITE_SECONDS),
            _or(connect_timeout, CONNECT_SECONDS),
            _or(pool_timeout, QUEUE_SECONDS),
        )
        headers = {"User-Agent": self.USER_AGENT}
        try:
            async with self._session.request(
                method, url, data=_body(request_data), headers=headers, timeout=timeout,
                allow_redirects=False, proxy=_proxy(*urlsplit(url)[:2]),
            ) as answer:  # fmt: skip
                return answer.status, await answer.read()
        except NEVER_CONNECTED as error:
            raise NetworkError(type(error).__name__) from NotConnectedError(type(error).__name__)
        except TimeoutError as error:
            raise TimedOut from error
        except (aiohttp.ClientError, OSError) as error:
            raise NetworkError(type(error).__name__) from error

    def _open(self) -> aiohttp.ClientSession:
        connector = aiohttp.TCPConnector(
            limit=self._connections, ssl=self._trust or True, keepalive_timeout=IDLE_SECONDS
        )
        jar = aiohttp.DummyCookieJar()
        return aiohttp.ClientSession(connector=connector, cookie_jar=jar)


@cache
def _proxy(scheme: str, host: str) -> str | None:
    """The proxy that the environment names for a server, found once.

    aiohttp would look it up at every request, with a password file in the home folder, in two threads.
    """
    return None if proxy_bypass(host) else getproxies().get(scheme)


def _or(given: Any, default: float) -> float | None:
    """What a call asks for in seconds; `None` is no limit."""
    value = default if isinstance(given, type(BaseRequest.DEFAULT_NONE)) else given
    return None if value is None else float(value)


def _timeout(
    read: float | None, write: float | None, connect: float | None, queue: float | None
) -> aiohttp.ClientTimeout:
    """aiohttp has none for writing; one that never ends is met by the whole."""
    parts = (read, write, connect, queue)
    return aiohttp.ClientTimeout(
        total=None if None in parts else sum(part or 0.0 for part in parts),
        connect=queue,
        sock_connect=connect,
        sock_read=read,
    )


def _body(data: RequestData | None) -> aiohttp.FormData | dict[str, str] | None:
    if data is None or not data.multipart_data:
        return data.json_parameters if data else None
    form = aiohttp.FormData()
    for name, value in data.json_parameters.items():
        form.add_field(name, value)
    for name, (filename, content, kind) in data.multipart_data.items():
        form.add_field(name, content, filename=filename, content_type=kind)
    return form
