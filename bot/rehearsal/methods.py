"""The methods of the Bot API that the stand-in carries out, and how a call runs."""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from ipaddress import ip_address
from typing import Any
from urllib.parse import urlsplit

from bot.rehearsal import sending, shapes
from bot.rehearsal.contract import Contract, RefusalError, bad_request
from bot.rehearsal.media import FETCH_BYTES, Upload
from bot.rehearsal.sending import Call
from bot.rehearsal.world import LogEntry, Webhook, World

COMMAND = re.compile(r"[a-z0-9_]{1,32}")
SECRET = re.compile(r"[A-Za-z0-9_-]{0,256}")
COMMANDS = 100
DESCRIPTION_CHARACTERS = {"description": 512, "short_description": 120}


@dataclass(frozen=True, slots=True)
class Method:
    """How a method is carried out, and which fields of it the stand-in heeds.

    A field that the platform knows and the stand-in does not heed is refused, not passed over.
    """

    run: Callable[[Call], object]
    heeds: frozenset[str]
    paced: bool = False


def carry_out(
    world: World,
    contract: Contract,
    name: str,
    raw: Mapping[str, object],
    files: Mapping[str, Upload],
) -> object:
    """Check one call, carry it out, log it, and give the Bot API's result.

    Raises:
        RefusalError: nothing has changed then.
    """
    call = Call(world, name, contract.read_request(name, raw, files.keys()), files)
    _check_kinds(contract, call)
    method = METHODS[name]
    unheeded = sorted(call.args.keys() - method.heeds)
    if unheeded:
        raise bad_request(f"the stand-in does not carry out {unheeded[0]} in {name}")
    if method.paced:
        _pace(call)
    result = method.run(call)
    _log(call, result)
    return result


def _pace(call: Call) -> None:
    chat_id = call.args.get("chat_id")
    if call.world.rate is None or not isinstance(chat_id, int):
        return
    wait = call.world.rate.wait(chat_id)
    if wait is not None:
        raise RefusalError(429, f"Too Many Requests: retry after {wait}", wait)


def _log(call: Call, result: object) -> None:
    message = result if isinstance(result, dict) and "message_id" in result else {}
    chat_id = call.args.get("chat_id")
    entry = LogEntry(
        who="bot",
        method=call.method,
        at=call.world.now(),
        chat_id=chat_id if isinstance(chat_id, int) else None,
        message_id=message.get("message_id", call.args.get("message_id")),
        text=str(message.get("text") or message.get("caption") or call.args.get("text", "")),
        silent=call.args.get("disable_notification", False),
        payload=call.args,
    )
    call.world.log.append(entry)


def get_me(call: Call) -> dict[str, Any]:
    return shapes.bot_user(call.world) | {
        "can_join_groups": True,
        "can_read_all_group_messages": False,
        "supports_inline_queries": False,
        "can_connect_to_business": False,
        "has_main_web_app": False,
    }


def set_webhook(call: Call) -> bool:
    args, url = call.args, call.args["url"]
    if not url:
        return delete_webhook(call)
    if not _loopback(url):
        raise bad_request("bad webhook: the stand-in posts to loopback addresses only")
    if not SECRET.fullmatch(args.get("secret_token", "")):
        raise bad_request("secret token contains unallowed characters")
    connections = args.get("max_connections", 40)
    if not 1 <= connections <= 100:  # noqa: PLR2004 - the Bot API's page on setWebhook
        raise bad_request("max_connections must be 1 to 100")
    _allow(call)
    call.world.webhook = Webhook(url, args.get("secret_token", ""), connections)
    return _drop_and_wake(call)


def delete_webhook(call: Call) -> bool:
    call.world.webhook = None
    return _drop_and_wake(call)


def _drop_and_wake(call: Call) -> bool:
    if call.args.get("drop_pending_updates", False):
        call.world.updates.forget_all()
    call.world.updates.wake()
    return True


def _loopback(url: str) -> bool:
    parts = urlsplit(url)
    try:
        local = parts.hostname == "localhost" or ip_address(parts.hostname or "").is_loopback
    except ValueError:
        local = False
    return local and parts.scheme in {"http", "https"}


def _check_kinds(contract: Contract, call: Call) -> None:
    for kind in call.args.get("allowed_updates", ()):
        if kind not in contract.types["Update"]["fields"]:
            raise bad_request(f'unknown kind of update "{kind}"')


def _allow(call: Call) -> None:
    if "allowed_updates" in call.args:
        call.world.updates.allow(call.args["allowed_updates"])


def get_webhook_info(call: Call) -> dict[str, Any]:
    world = call.world
    hook = world.webhook
    world.updates.take(world.now(), 0, 0)  # what is too old is not pending
    info: dict[str, Any] = {
        "url": hook.url if hook else "",
        "has_custom_certificate": False,
        "pending_update_count": len(world.updates),
    }
    if hook is not None:
        info["max_connections"] = hook.connections
    if hook is not None and hook.error_at is not None:
        info |= {
            "last_error_date": int(hook.error_at.timestamp()),
            "last_error_message": hook.error,
        }
    if world.updates.allowed is not None:
        info["allowed_updates"] = world.updates.allowed
    return info


def poll_arguments(
    world: World, contract: Contract, raw: Mapping[str, object]
) -> tuple[int, int, int]:
    """Offset, limit and seconds of a getUpdates call, which also sets the kinds wanted."""
    call = Call(world, "getUpdates", contract.read_request("getUpdates", raw), {})
    _check_kinds(contract, call)
    limit, seconds = call.args.get("limit", 100), call.args.get("timeout", 0)
    if not 1 <= limit <= 100 or seconds < 0:  # noqa: PLR2004 - the Bot API's page on getUpdates
        raise bad_request("limit must be 1 to 100, timeout 0 or more")
    _allow(call)
    return call.args.get("offset", 0), limit, seconds


def _polled_elsewhere(call: Call) -> object:
    raise AssertionError(f"{call.method} waits, so that the server carries it out")


def _audience(call: Call) -> tuple[str, str]:
    scope = call.args.get("scope", {"type": "default"})
    key = ":".join(str(value) for _, value in sorted(scope.items()))
    return key, call.args.get("language_code", "")


def set_commands(call: Call) -> bool:
    commands = call.args["commands"]
    if len(commands) > COMMANDS:
        raise bad_request("BOT_COMMANDS_TOO_MUCH")
    for command in commands:
        if not COMMAND.fullmatch(command["command"].removeprefix("/")):
            raise bad_request("BOT_COMMAND_INVALID")
        if not 1 <= len(command["description"]) <= 256:  # noqa: PLR2004 - page on BotCommand
            raise bad_request("BOT_COMMAND_DESCRIPTION_INVALID")
    call.world.commands[_audience(call)] = commands
    return True


def delete_commands(call: Call) -> bool:
    call.world.commands.pop(_audience(call), None)
    return True


def get_commands(call: Call) -> list[dict[str, Any]]:
    return call.world.commands.get(_audience(call), [])


def set_description(call: Call) -> bool:
    """setMyDescription and setMyShortDescription."""
    field = "description" if call.method == "setMyDescription" else "short_description"
    text = str(call.args.get(field, ""))
    if len(text) > DESCRIPTION_CHARACTERS[field]:
        raise bad_request(f"{field} is too long")
    call.world.descriptions[field, call.args.get("language_code", "")] = text
    return True


def get_file(call: Call) -> dict[str, Any]:
    stored = call.world.files.get(call.args["file_id"])
    if stored is None:
        raise bad_request("wrong file_id or the file is temporarily unavailable")
    if len(stored.content) > FETCH_BYTES:
        raise bad_request("file is too big")
    return shapes.file(stored)


def get_chat(call: Call) -> dict[str, Any]:
    return shapes.chat(sending.known_chat(call)) | {
        "accent_color_id": 0,
        "max_reaction_count": 11,
        "accepted_gift_types": {
            "unlimited_gifts": False,
            "limited_gifts": False,
            "unique_gifts": False,
            "premium_subscription": False,
            "gifts_from_channels": False,
        },
    }


def leave_chat(call: Call) -> bool:
    chat = sending.open_chat(call)
    if chat.type == "private":
        raise bad_request("chat member status can't be changed in private chats")
    chat.left = True
    return True


def _method(run: Callable[[Call], object], fields: str = "", *, paced: bool = False) -> Method:
    return Method(run, frozenset(fields.split()), paced)


SENT = "chat_id disable_notification protect_content reply_parameters reply_markup parse_mode"
EDITED = "chat_id message_id reply_markup"
CLIP = "caption duration width height"

METHODS: dict[str, Method] = {
    "getMe": _method(get_me),
    "getUpdates": _method(_polled_elsewhere, "offset limit timeout allowed_updates"),
    "setWebhook": _method(
        set_webhook, "url max_connections allowed_updates drop_pending_updates secret_token"
    ),
    "deleteWebhook": _method(delete_webhook, "drop_pending_updates"),
    "getWebhookInfo": _method(get_webhook_info),
    "sendMessage": _method(sending.send_message, f"{SENT} text link_preview_options", paced=True),
    "sendPhoto": _method(sending.send_file, f"{SENT} photo caption", paced=True),
    "sendDocument": _method(
        sending.send_file, f"{SENT} document caption disable_content_type_detection", paced=True
    ),
    "sendAnimation": _method(sending.send_file, f"{SENT} animation {CLIP}", paced=True),
    "sendVideo": _method(sending.send_file, f"{SENT} video {CLIP} supports_streaming", paced=True),
    "sendChatAction": _method(sending.send_chat_action, "chat_id action"),
    "editMessageText": _method(
        sending.edit_text, f"{EDITED} text parse_mode link_preview_options", paced=True
    ),
    "editMessageCaption": _method(sending.edit_caption, f"{EDITED} caption parse_mode", paced=True),
    "editMessageReplyMarkup": _method(sending.edit_markup, EDITED, paced=True),
    "deleteMessage": _method(sending.delete_message, "chat_id message_id"),
    "answerCallbackQuery": _method(
        sending.answer_press, "callback_query_id text show_alert cache_time"
    ),
    "setMyCommands": _method(set_commands, "commands scope language_code"),
    "deleteMyCommands": _method(delete_commands, "scope language_code"),
    "getMyCommands": _method(get_commands, "scope language_code"),
    "setMyDescription": _method(set_description, "description language_code"),
    "setMyShortDescription": _method(set_description, "short_description language_code"),
    "getFile": _method(get_file, "file_id"),
    "getChat": _method(get_chat, "chat_id"),
    "leaveChat": _method(leave_chat, "chat_id"),
}
