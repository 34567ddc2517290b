"""Sends one letter through the Bot API, and tells what became of it.

The only place that knows the library's exceptions. Their order matters: most are subclasses of
NetworkError, and only the cause tells "never connected" from "cut after it may have arrived".
"""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Callable
from datetime import timedelta
from typing import Any

import httpx
import structlog
from telegram import Bot, InlineKeyboardButton, InlineKeyboardMarkup, LinkPreviewOptions, Message
from telegram.error import (
    BadRequest,
    Forbidden,
    InvalidToken,
    NetworkError,
    RetryAfter,
    TelegramError,
)

from bot.telegram import menu
from bot.telegram.attachments import (
    ANIMATION,
    LONGEST_CAPTION,
    PHOTO,
    VIDEO,
    Attachment,
    attachment,
)
from bot.telegram.buttons import rows
from bot.words import label, render
from scheduler.ports import (
    SEND_WITHIN,
    Delivered,
    Delivery,
    Letter,
    Refused,
    TryLater,
    Unknown,
    Unreachable,
)

log = structlog.get_logger()


class NotConnectedError(Exception):
    """The cause of a fault before a request left, as our own line to the platform gives it."""


NEVER_CONNECTED = (
    NotConnectedError,
    httpx.ConnectError,
    httpx.ConnectTimeout,
    httpx.PoolTimeout,
)
"""Causes after which the request has certainly not reached the platform."""
NO_NETWORK = timedelta(seconds=2)
BAD_TOKEN = timedelta(minutes=1)
"""A wrong token is mended by a person; meanwhile nothing is lost and the log is not flooded."""
MENU_WITHIN = timedelta(seconds=5)
"""For a chat's menu, which follows a message that has arrived."""
LONGEST = 4096
"""UTF-16 units of one message at the platform."""
NO_PREVIEW = LinkPreviewOptions(is_disabled=True)
CANNOT_EDIT = ("message to edit not found", "message can't be edited", "there is no text in the")
UNKNOWN_FILE = ("wrong file identifier", "wrong remote file", "can't use file of type")
GONE = ("chat not found", "user is deactivated", "peer_id_invalid")


class TelegramSender:
    """The Sender of the real platform and of the rehearsal."""

    def __init__(self, bot: Bot, within: timedelta = SEND_WITHIN - MENU_WITHIN) -> None:
        """`within` is how long the requests of one letter may take together, its menu left aside."""
        self._bot, self._within = bot, within.total_seconds()

    async def send(self, letter: Letter) -> Delivery:
        """Try once. Every outcome is a value; a bug in words or buttons raises."""
        try:
            async with asyncio.timeout(self._within):
                result = await self._try(letter)
        except TimeoutError:  # several requests, or one that waited for a connection too
            return Unknown("it took too long")
        if isinstance(result, Delivered) and letter.role and menu.changes(letter.message):
            await self._show_menu(letter)
        return result

    async def _try(self, letter: Letter) -> Delivery:
        markup = _markup(letter)
        attached = attachment(letter.message)
        try:
            if attached is not None:
                message_id = await self._send_attached(letter, attached, markup)
            else:
                text = fitted(render(letter.message, letter.language))
                message_id = await self._edit_or_send(letter, text, markup)
        except TelegramError as error:
            return outcome(error)
        return Delivered(message_id)

    async def _edit_or_send(
        self, letter: Letter, text: str, markup: InlineKeyboardMarkup | None
    ) -> int:
        if letter.edits is not None:
            try:
                await self._bot.edit_message_text(
                    text,
                    chat_id=letter.chat,
                    message_id=letter.edits,
                    reply_markup=markup,
                    link_preview_options=NO_PREVIEW,
                )
            except BadRequest as error:
                if "not modified" in error.message.lower():
                    return letter.edits  # sent before, and only its acceptance was not heard
                if not any(words in error.message.lower() for words in CANNOT_EDIT):
                    raise
            else:
                return letter.edits
        sent = await self._bot.send_message(
            letter.chat,
            text,
            reply_markup=markup,
            disable_notification=letter.silent,
            link_preview_options=NO_PREVIEW,
        )
        return sent.message_id

    async def _send_attached(
        self, letter: Letter, attached: Attachment, markup: InlineKeyboardMarkup | None
    ) -> int:
        """Send a photo or a file, always as a new message: the platform cannot turn words into one."""
        caption = fitted(render(attached.caption, letter.language), LONGEST_CAPTION)
        rest: dict[str, Any] = {
            "caption": caption,
            "reply_markup": markup,
            "disable_notification": letter.silent,
        }
        if attached.instead and (known := await self._send_known(letter.chat, attached, rest)):
            return known
        content = await asyncio.to_thread(attached.content, letter.language)
        send = self._bot.send_photo if attached.kind == PHOTO else self._bot.send_document
        sent = await send(letter.chat, content, filename=attached.filename, **rest)
        return sent.message_id

    async def _send_known(
        self, chat: int, attached: Attachment, rest: dict[str, Any]
    ) -> int | None:
        """Send a file that the platform holds; `None` where it does not know it any more."""
        send: Callable[..., Awaitable[Message]] = self._bot.send_photo
        if attached.instead_kind in {VIDEO, ANIMATION}:
            clip = attached.instead_kind == VIDEO
            send = self._bot.send_video if clip else self._bot.send_animation
        try:
            sent = await send(chat, attached.instead, **rest)
        except BadRequest as error:
            if not any(words in error.message.lower() for words in UNKNOWN_FILE):
                raise
            log.warning("a picture of the practice is gone", error=type(error).__name__)
            return None
        return sent.message_id

    async def _show_menu(self, letter: Letter) -> None:
        if letter.role is None:
            return
        try:
            async with asyncio.timeout(MENU_WITHIN.total_seconds()):
                await menu.show(self._bot, letter.chat, letter.role, letter.language)
        except (TelegramError, TimeoutError) as error:  # every command works without its menu
            log.warning("menu not shown", outbox=letter.outbox_id, error=type(error).__name__)

    async def stop_spinner(self, press_id: str) -> None:
        """Answer a tap so that its button stops turning; it may be too old, which changes nothing."""
        try:
            await self._bot.answer_callback_query(press_id)
        except TelegramError as error:
            log.info("tap not answered", error=type(error).__name__)


def outcome(error: TelegramError) -> Delivery:
    """What a failed request means for its message."""
    match error:
        case RetryAfter():
            wait = error.retry_after
            return TryLater(wait if isinstance(wait, timedelta) else timedelta(seconds=wait))
        case Forbidden():
            return Unreachable(error.message)
        case BadRequest():
            gone = any(words in error.message.lower() for words in GONE)
            return Unreachable(error.message) if gone else Refused(error.message)
        case InvalidToken():
            return TryLater(BAD_TOKEN, chat_only=False)
        case NetworkError() if isinstance(error.__cause__, NEVER_CONNECTED):
            return TryLater(NO_NETWORK, chat_only=False)
        case _:
            return Unknown(type(error).__name__)


def _markup(letter: Letter) -> InlineKeyboardMarkup | None:
    built = [
        [InlineKeyboardButton(label(b.label, letter.language), callback_data=b.data) for b in row]
        for row in rows(letter.message)
    ]
    return InlineKeyboardMarkup(built) if built else None


def fitted(text: str, longest: int = LONGEST) -> str:
    """The text cut to what one message holds, in UTF-16 units as the platform counts."""
    units = text.encode("utf-16-le")
    if len(units) <= 2 * longest:
        return text
    return units[: 2 * (longest - 1)].decode("utf-16-le", "ignore") + "…"
