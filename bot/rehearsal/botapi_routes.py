"""The Bot API over HTTP: `/bot<token>/<method>` and `/file/bot<token>/<path>`."""

from typing import Any

from starlette.requests import Request
from starlette.responses import HTMLResponse, JSONResponse, Response
from starlette.routing import Route

from bot.rehearsal.contract import Contract, RefusalError
from bot.rehearsal.delivery import LongPoll
from bot.rehearsal.faults import POLLING, Fault
from bot.rehearsal.methods import carry_out, poll_arguments
from bot.rehearsal.reading import arguments
from bot.rehearsal.serving import Dropped
from bot.rehearsal.waiting import first_of, hung_up
from bot.rehearsal.world import World

Json = dict[str, Any]

UNAUTHORIZED = RefusalError(401, "Unauthorized")
NOT_FOUND = RefusalError(404, "Not Found")
BLOCKED = RefusalError(403, "Forbidden: bot was blocked by the user")
GATEWAY_PAGE = "<html><head><title>{0}</title></head><body><h1>{0} Bad Gateway</h1></body></html>"


class BotApi:
    """Answers the bot's calls, or misbehaves as told."""

    def __init__(self, world: World, contract: Contract) -> None:
        self._world = world
        self._contract = contract
        self.poll = LongPoll(world)
        self._delivered: list[Json] = []
        self.routes = [
            Route("/bot{token}/{method}", self.call, methods=["GET", "POST"]),
            Route("/file/bot{token}/{path:path}", self.fetch, methods=["GET"]),
        ]

    async def call(self, request: Request) -> Response:
        """One call of a method."""
        if request.path_params["token"] != self._world.token:
            return refused(UNAUTHORIZED)
        method: str = request.path_params["method"]
        try:
            raw, files = await arguments(request)
            fault = self._world.faults.strike(method, raw.get("chat_id"))
            if fault is not None:
                await self._before(request, fault)
                if fault.kind in {"drop-before", "down", "server-error"}:
                    return _unanswered(fault)
            if method == POLLING:
                offset, limit, seconds = poll_arguments(self._world, self._contract, raw)
                found = await self.poll.updates(request, offset, limit, seconds)
                result: object = self._disordered(fault, found)
            else:
                result = carry_out(self._world, self._contract, method, raw, files)
        except RefusalError as refusal:
            return refused(refusal)
        if fault is not None and fault.kind == "late":
            await _held(request, fault)
        if fault is not None and fault.kind == "drop-after":
            return Dropped()
        return JSONResponse({"ok": True, "result": result})

    def _disordered(self, fault: Fault | None, found: list[Json]) -> list[Json]:
        """What a poll found as it is delivered: as it is, once more, or in the wrong order."""
        before, self._delivered = self._delivered, found
        if fault is not None and fault.kind == "again":
            return [*before, *found]
        if fault is not None and fault.kind == "swap":
            pairs = [found[at : at + 2] for at in range(0, len(found), 2)]
            return [each for pair in pairs for each in reversed(pair)]
        return found

    async def _before(self, request: Request, fault: Fault) -> None:
        """Refuse or hold a call before anything of it is accepted."""
        if fault.kind == "refuse":
            raise RefusalError(fault.status, fault.description)
        if fault.kind == "too-fast":
            wait = fault.retry_after
            raise RefusalError(429, f"Too Many Requests: retry after {wait}", wait)
        if fault.kind == "blocked":
            raise BLOCKED
        if fault.kind == "wrong-token":
            raise UNAUTHORIZED
        if fault.kind == "delay":
            await _held(request, fault)

    async def fetch(self, request: Request) -> Response:
        """The content of a file that getFile has told the path of."""
        if request.path_params["token"] != self._world.token:
            return refused(UNAUTHORIZED)
        kinds, _, file_id = request.path_params["path"].partition("/")
        file = self._world.files.get(file_id)
        if file is None or kinds != f"{file.kind}s":
            return refused(NOT_FOUND)
        return Response(file.content, media_type="application/octet-stream")


def refused(refusal: RefusalError) -> Response:
    """The platform's answer to what it does not accept."""
    return JSONResponse(refusal.answer(), status_code=refusal.code)


def _unanswered(fault: Fault) -> Response:
    if fault.kind != "server-error":
        return Dropped()
    return HTMLResponse(GATEWAY_PAGE.format(fault.status), status_code=fault.status)


async def _held(request: Request, fault: Fault) -> None:
    await first_of(fault.released.wait(), hung_up(request), seconds=fault.seconds)
