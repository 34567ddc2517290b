"""Health for whoever runs the bot, and the handle of the stepped clock. Loopback by default."""

from __future__ import annotations

import asyncio
from datetime import UTC, datetime
from typing import Protocol, Self

from prometheus_client import CONTENT_TYPE_LATEST
from pydantic import (
    AwareDatetime,
    BaseModel,
    ConfigDict,
    Field,
    ValidationError,
    field_validator,
    model_validator,
)
from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import JSONResponse, Response
from starlette.routing import Route

HANDLED_WITHIN = 10.0
"""Seconds after which `handled` answers 504."""


class Asked(BaseModel):
    """The body of `POST /clock`: exactly one of the two."""

    model_config = ConfigDict(strict=True, extra="forbid")

    to: AwareDatetime | None = None
    handled: int | None = Field(None, ge=0, lt=2**63)
    """As wide as what the store keeps."""

    @field_validator("to")
    @classmethod
    def _in_utc(cls, to: datetime | None) -> datetime | None:
        """ValueError for an instant outside the years 1 to 9999 of UTC."""
        try:
            return to and to.astimezone(UTC)
        except OverflowError as error:
            raise ValueError("outside the calendar") from error

    @model_validator(mode="after")
    def _one(self) -> Self:
        if (self.to is None) == (self.handled is None):
            raise ValueError("either to or handled")
        return self

    @property
    def instant(self) -> datetime:
        """Where the clock is to be moved."""
        assert self.to is not None  # noqa: S101 # one of the two is there, and `handled` is not
        return self.to


class Steps(Protocol):
    """What the clock's handle needs of the running bot."""

    async def step(self, to: datetime) -> datetime | None: ...
    async def handled(self, update_id: int) -> None: ...
    async def look(self) -> dict[str, object]:
        """`now`, `waiting` and `next_due`, as JSON values."""
        ...

    async def sent(self) -> int:
        """How many messages the platform has accepted so far."""
        ...

    async def ready(self) -> bool: ...
    async def metrics(self) -> bytes:
        """The page of `GET /metrics`, whether or not the database answers."""
        ...


def ops_app(bot: Steps, *, stepped: bool) -> Starlette:
    """`/healthz`, `/readyz` and `/metrics`; with the stepped clock also `/clock`."""

    async def healthz(_: Request) -> Response:
        return JSONResponse({"status": "ok"})

    async def readyz(_: Request) -> Response:
        ready = await bot.ready()
        return JSONResponse({"ready": ready}, status_code=200 if ready else 503)

    async def metrics(_: Request) -> Response:
        return Response(await bot.metrics(), media_type=CONTENT_TYPE_LATEST)

    async def clock_now(_: Request) -> Response:
        return JSONResponse(await bot.look())

    async def clock_move(request: Request) -> Response:
        try:
            asked = Asked.model_validate_json(await request.body())
        except ValidationError:
            return _fault(
                'Send {"to": an ISO instant with its zone} or {"handled": an update id}.', 400
            )
        if asked.handled is not None:
            return await _handled(bot, asked.handled)
        before = await bot.sent()
        try:
            await bot.step(asked.instant)
        except ValueError as error:
            return _fault(str(error), 409)
        return JSONResponse({**await bot.look(), "sent": await bot.sent() - before})

    routes = [Route("/healthz", healthz), Route("/readyz", readyz), Route("/metrics", metrics)]
    if stepped:
        routes += [
            Route("/clock", clock_now, methods=["GET"]),
            Route("/clock", clock_move, methods=["POST"]),
        ]
    return Starlette(routes=routes)


async def _handled(bot: Steps, update_id: int) -> Response:
    try:
        async with asyncio.timeout(HANDLED_WITHIN):
            await bot.handled(update_id)
    except TimeoutError:
        return _fault(
            f"Update {update_id} has not been handled within {HANDLED_WITHIN:.0f} s.", 504
        )
    return JSONResponse(await bot.look())


def _fault(words: str, status: int) -> Response:
    return JSONResponse({"error": words}, status_code=status)
