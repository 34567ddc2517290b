"""An update of the platform as a value of ours: what came, from whom, when.

The only place that takes the platform's update apart. Unknown kinds become `other` and are not lost.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any

KINDS = ("text", "edit", "press", "file", "membership", "other")
FILES = (
    *("photo", "voice", "audio", "video", "video_note", "sticker", "animation", "document"),
    *("contact", "location", "poll", "dice", "story", "game", "paid_media", "checklist", "invoice"),
    *("giveaway", "giveaway_winners"),
)
"""What a message can be beside text; an animation comes as a document too, for old programs."""
SERVICE = frozenset(
    {
        *("pinned_message", "message_auto_delete_timer_changed", "chat_background_set"),
        *("write_access_allowed", "boost_added", "passport_data", "web_app_data", "users_shared"),
        *("chat_shared", "successful_payment", "refunded_payment", "giveaway_created"),
        *("giveaway_completed", "proximity_alert_triggered", "connected_website", "gift"),
        *("unique_gift", "paid_message_price_changed", "direct_message_price_changed"),
        *("checklist_tasks_done", "checklist_tasks_added", "gift_upgrade_sent"),
    }
)
"""What the app notes in the chat when something was set or done there: nobody said anything to us."""
LONGEST_TEXT = 4096
"""The platform's own limit; a longer text can only come from something that is not the platform."""


@dataclass(frozen=True, slots=True)
class Incoming:
    """One update. `at` is the message's own time; a press has none, so the time it was received (Z1).

    `forwarded`: the words are somebody else's, or of another time. `album`: several files that were sent
    at once share it. `file_id`: the platform's id of a file. `zone`: the time zone of a shared location,
    empty where it has none.
    """

    update_id: int
    kind: str
    account: int
    chat: int
    private: bool
    at: datetime
    text: str = ""
    data: str = ""
    file: str = ""
    message_id: int | None = None
    reply_to: int | None = None
    press_id: str | None = None
    language: str = ""
    member: bool = True
    is_bot: bool = False
    forwarded: bool = False
    album: str = ""
    file_id: str = ""
    zone: str = ""
    tried_again: bool = False
    """It has failed before; see `scheduler.ports.Arrived`."""


def incoming(update: dict[str, Any], received_at: datetime) -> Incoming | None:
    """The update as a value; `None` where there is no sender to answer (a channel post, a service note)."""
    if press := update.get("callback_query"):
        return _press(update, press, received_at)
    if membership := update.get("my_chat_member"):
        return _membership(update, membership)
    for key, kind in (("message", "text"), ("edited_message", "edit")):
        if said := update.get(key):
            return _message(update, said, kind)
    return None


def answer_chat(update: Mapping[str, Any]) -> int | None:
    """The private chat in which somebody waits for an answer to an update; `None` where nobody does.

    For an update that nothing else could be made of: it is not trusted to have its usual shape.
    """
    for key in ("message", "edited_message", "callback_query"):
        said = update.get(key)
        if not isinstance(said, dict):
            continue
        place = said.get("message") if key == "callback_query" else said
        chat = place.get("chat") if isinstance(place, dict) else None
        if isinstance(chat, dict) and chat.get("type") == "private":
            number = chat.get("id")
            return number if isinstance(number, int) else None
    return None


def _message(update: dict[str, Any], said: dict[str, Any], kind: str) -> Incoming | None:
    sender, chat = said.get("from"), said["chat"]
    if sender is None:
        return None
    text = str(said.get("text") or said.get("caption") or "").replace("\0", "")[:LONGEST_TEXT]
    file = next((name for name in FILES if name in said), "")
    if not text and (kind == "edit" or SERVICE & said.keys()):
        return None  # a location that moves on, or a note of the app: it answers nothing
    if file and kind == "text":
        kind = "file"
    elif not text:
        kind = "other"
    reply = said.get("reply_to_message")
    return Incoming(
        update_id=update["update_id"],
        kind=kind,
        account=sender["id"],
        chat=chat["id"],
        private=chat["type"] == "private",
        at=datetime.fromtimestamp(said["date"], UTC),
        text=text,
        file=file,
        message_id=said["message_id"],
        reply_to=reply["message_id"] if reply else None,
        language=str(sender.get("language_code", "")),
        is_bot=bool(sender.get("is_bot")),
        forwarded="forward_origin" in said,
        album=str(said.get("media_group_id", "")),
        file_id=_file_id(said.get(file)),
        zone=str((said.get("location") or {}).get("zone", "")),
    )


def _file_id(sent: Any) -> str:
    """The platform's id of a file; of a picture's sizes the last, which is the largest."""
    largest = sent[-1] if isinstance(sent, list) and sent else sent
    return str(largest.get("file_id", "")) if isinstance(largest, dict) else ""


def _press(update: dict[str, Any], press: dict[str, Any], received_at: datetime) -> Incoming:
    message = press.get("message") or {}
    chat = message.get("chat") or {"id": press["from"]["id"], "type": "private"}
    return Incoming(
        update_id=update["update_id"],
        kind="press",
        account=press["from"]["id"],
        chat=chat["id"],
        private=chat.get("type") == "private",
        at=received_at,
        data=str(press.get("data", ""))[:64],
        message_id=message.get("message_id"),
        press_id=press["id"],
        language=str(press["from"].get("language_code", "")),
    )


def _membership(update: dict[str, Any], change: dict[str, Any]) -> Incoming:
    status = change["new_chat_member"]["status"]
    return Incoming(
        update_id=update["update_id"],
        kind="membership",
        account=change["from"]["id"],
        chat=change["chat"]["id"],
        private=change["chat"]["type"] == "private",
        at=datetime.fromtimestamp(change["date"], UTC),
        member=status not in {"kicked", "left"},
    )
