"""Waiting for the first of several things, a caller's hanging up among them."""

import asyncio
from collections.abc import Coroutine
from typing import Any

from starlette.requests import Request


async def hung_up(request: Request) -> None:
    """Return when the caller's connection is gone. The body must have been read before."""
    while (await request.receive())["type"] != "http.disconnect":
        pass


async def first_of(*waits: Coroutine[Any, Any, object], seconds: float | None = None) -> None:
    """Return when one of `waits` ends or `seconds` have passed; the others are cancelled."""
    tasks = [asyncio.ensure_future(wait) for wait in waits]
    try:
        await asyncio.wait(tasks, timeout=seconds, return_when=asyncio.FIRST_COMPLETED)
    finally:
        for task in tasks:
            task.cancel()
        await asyncio.gather(*tasks, return_exceptions=True)
