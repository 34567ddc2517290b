"""Receiving by webhook: the platform posts each update to us, and repeats it until we have answered 200.

Plain HTTP on an address of our own, behind whatever holds the certificate.
"""

from __future__ import annotations

import hmac
import json
from collections.abc import Awaitable, Callable
from typing import Any

from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route
from telegram import Bot, Update

from bot.telegram.inbox import Inbox, NotKeptError

SECRET_HEADER = "X-Telegram-Bot-Api-Secret-Token"  # noqa: S105 # the header's name
LARGEST = 1_000_000
"""Bytes of a body; updates have a few thousand."""
WIDEST = 2**63
"""Ids are below this, as wide as what the store keeps."""

Keep = Callable[[Update], Awaitable[None]]


class NotAnUpdateError(Exception):
    """A body that is no update; the argument says why, without repeating it."""


class TooLargeError(Exception):
    """A body larger than any update; it was not read to its end."""


def webhook_app(path: str, secret: str, bot: Bot, inbox: Inbox) -> Starlette:
    """Takes updates at `path` from whoever knows `secret`; 200 once an update is committed."""

    async def take(request: Request) -> Response:
        if not _knows(request, secret):
            return Response(status_code=403)
        if request.headers.get("content-type", "").partition(";")[0].strip() != "application/json":
            return Response(status_code=415)
        try:
            update = _update(await _body(request), bot)
            await inbox.keep([update])
        except TooLargeError:
            return Response(status_code=413)
        except NotAnUpdateError:
            return Response(status_code=400)
        except NotKeptError:  # the platform repeats it
            return Response(status_code=503)
        await inbox.heard()
        return Response(status_code=200)

    return Starlette(routes=[Route(path, take, methods=["POST"])])


def _knows(request: Request, secret: str) -> bool:
    given = request.headers.get(SECRET_HEADER, "")
    return hmac.compare_digest(given.encode("latin-1", "replace"), secret.encode())


async def _body(request: Request) -> bytes:
    """The body. TooLargeError as soon as that is known."""
    told = request.headers.get("content-length", "")
    if told.isdecimal() and len(told) < 20 and int(told) > LARGEST:  # noqa: PLR2004 # no larger number is read
        raise TooLargeError
    body = bytearray()
    async for chunk in request.stream():
        body += chunk
        if len(body) > LARGEST:
            raise TooLargeError
    return bytes(body)


def _update(body: bytes, bot: Bot) -> Update:
    """NotAnUpdateError for anything else than an update."""
    try:
        given: Any = json.loads(body)
    except (ValueError, RecursionError) as error:
        raise NotAnUpdateError("not JSON") from error
    number = given.get("update_id") if isinstance(given, dict) else None
    if not isinstance(number, int) or isinstance(number, bool) or not 0 <= number < WIDEST:
        raise NotAnUpdateError("no update_id")
    try:
        update = Update.de_json(given, bot)
    except Exception as error:  # the library raises whatever its types do
        raise NotAnUpdateError(type(error).__name__) from error
    return update
