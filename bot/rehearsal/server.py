"""The stand-in chat server as one ASGI application: Bot API, people, clock and page."""

import asyncio
from collections.abc import AsyncIterator, Sequence
from contextlib import asynccontextmanager, suppress
from pathlib import Path

from starlette.applications import Starlette
from starlette.datastructures import Headers
from starlette.middleware import Middleware
from starlette.requests import Request
from starlette.responses import PlainTextResponse, Response
from starlette.routing import BaseRoute, Route
from starlette.types import ASGIApp, Receive, Scope, Send

from bot.rehearsal.botapi_routes import BotApi
from bot.rehearsal.contract import load_contract
from bot.rehearsal.delivery import WebhookPost
from bot.rehearsal.people import MisuseError
from bot.rehearsal.people_routes import Handler, PeopleApi, misuse
from bot.rehearsal.world import World

PAGE = {
    "/": ("page.html", "text/html"),
    "/page.js": ("page.js", "text/javascript"),
    "/page.css": ("page.css", "text/css"),
}
PAGE_HEADERS = {
    # Nothing from elsewhere, and nothing inline.
    "Content-Security-Policy": "default-src 'self'; frame-ancestors 'none'; base-uri 'none'",
    "X-Content-Type-Options": "nosniff",
    "Cache-Control": "no-store",
}


def create_app(
    world: World,
    *,
    clock: ASGIApp | None = None,
    extra_routes: Sequence[BaseRoute] = (),
    webhook_pause: float = 0.5,
) -> Starlette:
    """The application. Run it with `bot.rehearsal.serving.serving`.

    Its `state.poll.waiting` is an event, set while the bot's long poll waits for updates.

    Args:
        clock: answers GET and POST /clock, so that the page has it at its own address.
        extra_routes: more routes, after ours.
        webhook_pause: seconds before a post that the webhook did not take is tried again.
    """
    botapi = BotApi(world, load_contract())
    post = WebhookPost(world, webhook_pause)

    @asynccontextmanager
    async def lifespan(app: Starlette) -> AsyncIterator[None]:  # noqa: ARG001
        posting = asyncio.create_task(post.run())
        try:
            yield
        finally:
            posting.cancel()
            with suppress(asyncio.CancelledError):
                await posting

    clock_routes = [] if clock is None else [Route("/clock", _Whole(clock))]
    app = Starlette(
        routes=[
            *botapi.routes,
            *PeopleApi(world).routes,
            *(Route(path, _page(*what), methods=["GET"]) for path, what in PAGE.items()),
            Route("/favicon.ico", _nothing, methods=["GET"]),
            *clock_routes,
            *extra_routes,
        ],
        middleware=[Middleware(SameOrigin)],
        exception_handlers={MisuseError: misuse},
        lifespan=lifespan,
    )
    app.state.poll = botapi.poll
    return app


class SameOrigin:
    """Refuses what another site's page sends: the page here is open to this machine's browser."""

    def __init__(self, app: ASGIApp) -> None:
        self._app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] == "http":
            headers = Headers(scope=scope)
            origin = headers.get("origin")
            if origin is not None and origin != f"http://{headers.get('host')}":
                refusal = PlainTextResponse("another site's page has no say here", 403)
                await refusal(scope, receive, send)
                return
        await self._app(scope, receive, send)


class _Whole:
    """Passes a request on with its path as it is."""

    def __init__(self, app: ASGIApp) -> None:
        self._app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        await self._app(scope, receive, send)


async def _nothing(request: Request) -> Response:  # noqa: ARG001
    return Response(status_code=204)


def _page(name: str, kind: str) -> Handler:
    content = Path(__file__).with_name(name).read_bytes()

    async def handle(request: Request) -> Response:  # noqa: ARG001
        return Response(content, media_type=kind, headers=PAGE_HEADERS)

    return handle
