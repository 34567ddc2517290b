"""What the bot says: sending, editing and deleting messages, and answering presses."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import timedelta
from typing import Any

from bot.rehearsal import shapes
from bot.rehearsal.contract import RefusalError, bad_request
from bot.rehearsal.keyboards import check_markup
from bot.rehearsal.markup import Formatted, parse_html, trimmed, units
from bot.rehearsal.media import Upload, sent_file
from bot.rehearsal.world import PRESS_ANSWERABLE, Chat, Message, StoredFile, World

# Limits: the Bot API's pages on sendMessage, sendPhoto and answerCallbackQuery.
TEXT_UNITS = 4096
CAPTION_UNITS = 1024
POPUP_UNITS = 200
DELETABLE = timedelta(hours=48)  # the Bot API's page on deleteMessage

NOT_MODIFIED = (
    "message is not modified: specified new message content and reply markup are exactly the same "
    "as a current content and reply markup of the message"
)
TOO_OLD = "query is too old and response timeout expired or query ID is invalid"


@dataclass(frozen=True, slots=True)
class Call:
    """One call of the bot: decoded arguments and uploaded files."""

    world: World
    method: str
    args: Mapping[str, Any]
    files: Mapping[str, Upload]


def send_message(call: Call) -> dict[str, Any]:
    chat = open_chat(call)
    text = _formatted(call, "text")
    if not text.text:
        raise bad_request("message text is empty")
    if units(text.text) > TEXT_UNITS:
        raise bad_request("message is too long")
    return _send(call, chat, text, str(call.args["text"]))


def send_file(call: Call) -> dict[str, Any]:
    """sendPhoto, sendDocument, sendAnimation, sendVideo: the method's name says which field."""
    chat = open_chat(call)
    kind = call.method.removeprefix("send").lower()
    caption = _caption(call)
    stored = sent_file(call.world, kind, call.args, call.files)
    return _send(call, chat, caption, str(call.args.get("caption", "")), stored)


def send_chat_action(call: Call) -> bool:
    open_chat(call)
    if call.args["action"] not in {"typing", "upload_photo", "upload_document", "upload_video"}:
        raise bad_request("wrong parameter action in request")
    return True


def edit_text(call: Call) -> dict[str, Any]:
    message = _own_message(call)
    if "text" not in call.args:
        raise bad_request("message text is empty")
    if message.file is not None:
        raise bad_request("there is no text in the message to edit")
    text = _formatted(call, "text")
    if not text.text:
        raise bad_request("message text is empty")
    if units(text.text) > TEXT_UNITS:
        raise bad_request("message is too long")
    return _edit(call, message, text, str(call.args["text"]))


def edit_caption(call: Call) -> dict[str, Any]:
    message = _own_message(call)
    if message.file is None:
        raise bad_request("there is no caption in the message to edit")
    return _edit(call, message, _caption(call), str(call.args.get("caption", "")))


def edit_markup(call: Call) -> dict[str, Any]:
    message = _own_message(call)
    return _edit(call, message, Formatted(message.text, message.entities), message.raw)


def delete_message(call: Call) -> bool:
    chat = open_chat(call)
    message = call.world.message_in(chat, call.args["message_id"])
    if message is None:
        raise bad_request("message to delete not found")
    if call.world.now() - message.at > DELETABLE:
        raise bad_request("message can't be deleted for everyone")
    message.deleted = True
    return True


def answer_press(call: Call) -> bool:
    press = call.world.presses.get(call.args["callback_query_id"])
    if press is None or call.world.now() - press.at > PRESS_ANSWERABLE:
        raise bad_request(TOO_OLD)
    answer = str(call.args.get("text", ""))
    if units(answer) > POPUP_UNITS:
        raise bad_request("MESSAGE_TOO_LONG")
    press.answered, press.answer = True, answer
    press.alert = call.args.get("show_alert", False)
    return True


def known_chat(call: Call) -> Chat:
    """The chat that a call names.

    Raises:
        RefusalError: 400 for an unknown one.
    """
    chat = call.world.chats.get(call.args["chat_id"])
    if chat is None:
        raise bad_request("chat not found")
    return chat


def open_chat(call: Call) -> Chat:
    """The chat that a call names, if the bot may write there.

    Raises:
        RefusalError: 400 for an unknown one, 403 for a person who never wrote or has blocked the
            bot, and for a group that the bot has left.
    """
    if "chat_id" not in call.args:
        raise bad_request("chat_id is empty")
    chat = known_chat(call)
    if chat.left:
        raise RefusalError(403, f"Forbidden: bot is not a member of the {chat.type} chat")
    if chat.person is not None and not chat.person.started:
        raise RefusalError(403, "Forbidden: bot can't initiate conversation with a user")
    if chat.person is not None and chat.person.blocked:
        raise RefusalError(403, "Forbidden: bot was blocked by the user")
    return chat


def _own_message(call: Call) -> Message:
    chat = open_chat(call)
    if "message_id" not in call.args:
        raise bad_request("message identifier is not specified")
    message = call.world.message_in(chat, call.args["message_id"])
    if message is None:
        raise bad_request("message to edit not found")
    if message.sender is not None:
        raise bad_request("message can't be edited")
    return message


def _caption(call: Call) -> Formatted:
    caption = _formatted(call, "caption")
    if units(caption.text) > CAPTION_UNITS:
        raise bad_request("message caption is too long")
    return caption


def _formatted(call: Call, field: str) -> Formatted:
    source = str(call.args.get(field, ""))
    mode = str(call.args.get("parse_mode", ""))
    if mode.lower() == "html":
        return parse_html(source)
    if mode:
        raise bad_request("unsupported parse_mode: the stand-in reads HTML only")
    return trimmed(Formatted(source))


def _send(
    call: Call, chat: Chat, text: Formatted, raw: str, stored: StoredFile | None = None
) -> dict[str, Any]:
    message = call.world.keep_message(
        chat,
        None,
        text=text.text,
        raw=raw,
        entities=text.entities,
        file=stored,
        # Checked before the message is kept: a refused call leaves nothing behind.
        markup=check_markup(call.args.get("reply_markup")),
        reply_to=_replied(call, chat),
        silent=call.args.get("disable_notification", False),
        protected=call.args.get("protect_content", False),
    )
    return shapes.message(call.world, message)


def _replied(call: Call, chat: Chat) -> int | None:
    reply = call.args.get("reply_parameters")
    if reply is None:
        return None
    unknown = reply.keys() - {"message_id", "allow_sending_without_reply"}
    if unknown:
        raise bad_request(f"the stand-in does not carry out {min(unknown)} in reply_parameters")
    message_id: int = reply["message_id"]
    if call.world.message_in(chat, message_id) is not None:
        return message_id
    if reply.get("allow_sending_without_reply"):
        return None
    raise bad_request("message to be replied not found")


def _edit(call: Call, message: Message, text: Formatted, raw: str) -> dict[str, Any]:
    markup = check_markup(call.args.get("reply_markup"))
    if markup == {"inline_keyboard": []}:
        markup = None
    before = (message.text, message.entities, message.markup)
    if before == (text.text, text.entities, markup):
        raise bad_request(NOT_MODIFIED)
    message.text, message.entities, message.raw = text.text, text.entities, raw
    message.markup = markup
    message.edited_at = call.world.now()
    return shapes.message(call.world, message)
