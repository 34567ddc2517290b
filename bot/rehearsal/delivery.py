"""How updates reach the bot: one long poll at a time, or posts to its webhook."""

import asyncio
from dataclasses import dataclass, field
from typing import Any

import httpx
from starlette.requests import Request

from bot.rehearsal.contract import RefusalError
from bot.rehearsal.updates import Update
from bot.rehearsal.waiting import first_of, hung_up
from bot.rehearsal.world import Webhook, World

SECOND_POLLER = (
    "Conflict: terminated by other getUpdates request; "
    "make sure that only one bot instance is running"
)
WEBHOOK_ACTIVE = (
    "Conflict: can't use getUpdates method while webhook is active; "
    "use deleteWebhook to delete the webhook first"
)
SECRET_HEADER = "X-Telegram-Bot-Api-Secret-Token"  # noqa: S105 - the header's name


@dataclass(slots=True, eq=False)
class _Poll:
    wake: asyncio.Event = field(default_factory=asyncio.Event)
    ended: bool = False


class LongPoll:
    """getUpdates. A second poller ends the first one, which gets 409.

    `waiting` is set while a poll waits for news: the bot is up and listens.
    """

    def __init__(self, world: World) -> None:
        self.waiting = asyncio.Event()
        self._world = world
        self._open: _Poll | None = None
        world.updates.listeners.append(self._look)

    def _look(self) -> None:
        if self._open is not None:
            self._open.wake.set()

    async def updates(
        self, request: Request, offset: int, limit: int, seconds: float
    ) -> list[dict[str, Any]]:
        """Updates from `offset` on, waited for up to `seconds` if there are none.

        Raises:
            RefusalError: 409 if another poller came, or a webhook is set.
        """
        self._refuse_beside_webhook()
        if self._open is not None:
            self._open.ended = True
            self._open.wake.set()
        poll = self._open = _Poll()
        try:
            found = self._take(offset, limit)
            if not found and seconds > 0:
                await first_of(self._something(poll, limit), hung_up(request), seconds=seconds)
                found = [] if poll.ended else self._take(0, limit)
            if poll.ended:
                raise RefusalError(409, SECOND_POLLER)
            self._refuse_beside_webhook()
        finally:
            if self._open is poll:
                self._open = None
                self.waiting.clear()
        return [update.as_json() for update in found]

    async def _something(self, poll: _Poll, limit: int) -> None:
        self.waiting.set()
        while not (poll.ended or self._world.webhook or self._take(0, limit)):
            await poll.wake.wait()
            poll.wake.clear()

    def _take(self, offset: int, limit: int) -> list[Update]:
        return self._world.updates.take(self._world.now(), offset, limit)

    def _refuse_beside_webhook(self) -> None:
        if self._world.webhook is not None:
            raise RefusalError(409, WEBHOOK_ACTIVE)


class WebhookPost:
    """Posts updates to the webhook, one after the other, each until it is answered with 2xx.

    Args:
        pause: seconds before a failed post is tried again.
    """

    def __init__(self, world: World, pause: float) -> None:
        self._world = world
        self._pause = pause
        self._wake = asyncio.Event()
        world.updates.listeners.append(self._wake.set)

    async def run(self) -> None:
        """Go on until cancelled."""
        # Loopback only: proxies have no business here, and loading certificates would slow each start.
        async with httpx.AsyncClient(timeout=30, trust_env=False, verify=False) as client:  # noqa: S501 - as above
            while True:
                self._wake.clear()
                failed = await self._post_all(client)
                await first_of(self._wake.wait(), seconds=self._pause if failed else None)

    async def _post_all(self, client: httpx.AsyncClient) -> bool:
        """Post what waits; whether one failed."""
        world = self._world
        while (hook := world.webhook) and (waiting := world.updates.take(world.now(), 0, 1)):
            update = waiting[0]
            error = await _post(client, hook, update)
            if error:
                hook.error, hook.error_at = error, world.now()
                return True
            world.updates.take(world.now(), update.update_id + 1, 0)
        return False


async def _post(client: httpx.AsyncClient, hook: Webhook, update: Update) -> str:
    """Post one update; what went wrong, or nothing."""
    headers = {SECRET_HEADER: hook.secret} if hook.secret else {}
    try:
        answer = await client.post(hook.url, json=update.as_json(), headers=headers)
    except httpx.HTTPError as fault:
        return f"{type(fault).__name__}: {fault}"
    if answer.is_success:
        return ""
    return f"Wrong response from the webhook: {answer.status_code} {answer.reason_phrase}"
