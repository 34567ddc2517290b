"""Keyboards under messages: what the platform takes, and what a person can press."""

from dataclasses import dataclass
from typing import Any

from bot.rehearsal.contract import bad_request

DATA_BYTES = 64  # the Bot API's page on InlineKeyboardButton: 1 to 64 bytes
BUTTONS = 100  # in one inline keyboard; second-hand
DECORATION = {"text", "icon_custom_emoji_id", "style"}


@dataclass(frozen=True, slots=True)
class Button:
    """A button as a person sees it. `data` None: it opens a link, or says its label."""

    label: str
    data: str | None
    says: bool = False


def check_markup(markup: dict[str, Any] | None) -> dict[str, Any] | None:
    """The markup as it is, if the platform would take it.

    Raises:
        RefusalError: 400 for wrong data, an empty label, or not exactly one action to a button.
    """
    rows = (markup or {}).get("inline_keyboard", [])
    buttons = [button for row in rows for button in row]
    if len(buttons) > BUTTONS:
        raise bad_request("REPLY_MARKUP_TOO_LONG")
    for button in buttons:
        _check_button(button)
    for row in (markup or {}).get("keyboard", []):
        if any(not button["text"].strip() for button in row):
            raise bad_request("keyboard button text must be non-empty")
    return markup


def _check_button(button: dict[str, Any]) -> None:
    if not button["text"].strip():
        raise bad_request("inline keyboard button text must be non-empty")
    actions = button.keys() - DECORATION
    if not actions:
        raise bad_request("text buttons are unallowed in the inline keyboard")
    if len(actions) > 1:
        raise bad_request("inline keyboard button must have exactly one action")
    if "callback_data" in button and not 1 <= len(button["callback_data"].encode()) <= DATA_BYTES:
        raise bad_request("BUTTON_DATA_INVALID")


def rows_of(markup: dict[str, Any] | None) -> list[list[Button]]:
    """The buttons a person sees under a message, row by row."""
    markup = markup or {}
    if "inline_keyboard" in markup:
        return [
            [Button(button["text"], button.get("callback_data")) for button in row]
            for row in markup["inline_keyboard"]
        ]
    return [
        [Button(button["text"], None, says=True) for button in row]
        for row in markup.get("keyboard", [])
    ]
