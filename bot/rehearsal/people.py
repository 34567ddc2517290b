"""What people do in their chats with the bot; each deed raises an update."""

import re
import struct
import zlib
from dataclasses import dataclass
from typing import Any

from bot.rehearsal import shapes
from bot.rehearsal.keyboards import Button, rows_of
from bot.rehearsal.markup import units
from bot.rehearsal.sending import TEXT_UNITS
from bot.rehearsal.world import Chat, ChatType, Message, Person, World

COMMAND = re.compile(r"(?:^|(?<=\s))/[A-Za-z0-9_]{1,32}(?:@\w+)?(?![\w/])")
MIME = {
    "photo": "image/png",
    "sticker": "image/webp",
    "voice": "audio/ogg",
    "video": "video/mp4",
    "animation": "video/mp4",
    "document": "application/octet-stream",
}
MIME_BY_ENDING = {"csv": "text/csv", "pdf": "application/pdf", "txt": "text/plain"}


class MisuseError(Exception):
    """A deed that a person could not do. `status` is for HTTP; the text is one clear line."""

    def __init__(self, status: int, line: str) -> None:
        super().__init__(line)
        self.status = status


@dataclass(frozen=True, slots=True)
class Deed:
    """What came of it: the update's id (None where the bot asked for no such updates) and the
    message's id, if one was written or pressed."""

    update_id: int | None
    message_id: int | None = None


def person_of(world: World, person_id: int) -> Person:
    """The person with this id.

    Raises:
        MisuseError: 404.
    """
    person = world.people.get(person_id)
    if person is None:
        raise MisuseError(404, f"nobody has the id {person_id}")
    return person


def say(
    world: World,
    person_id: int,
    text: str,
    *,
    reply_to: int | None = None,
    group: Chat | None = None,
) -> list[Deed]:
    """Write to the bot. A text over 4096 units leaves in pieces, as from the platform's apps."""
    person = person_of(world, person_id)
    if not text.strip():
        raise MisuseError(400, "the text is empty")
    if reply_to is not None:
        _seen(world, person, reply_to)
    return [
        _written(world, person, group, text=piece, entities=_commands(piece), reply_to=reply_to)
        for piece in _pieces(text)
    ]


def edit(world: World, person_id: int, message_id: int | None, text: str) -> Deed:
    """Change a message of one's own; None is the last one."""
    person = person_of(world, person_id)
    own = [
        message.message_id
        for message in world.chats[person.id].messages
        if message.sender is person and not message.deleted
    ]
    wanted = own[-1] if own and message_id is None else message_id
    if wanted not in own:
        raise MisuseError(404, f"{person.name} wrote no message {wanted}")
    if not text.strip() or units(text) > TEXT_UNITS:
        raise MisuseError(400, f"an edited text has 1 to {TEXT_UNITS} characters")
    message = world.messages[wanted]
    if message.extra or message.file is not None:
        raise MisuseError(400, f"message {wanted} has no text to edit")
    message.text, message.raw, message.entities = text, text, _commands(text)
    message.edited_at = world.now()
    content = shapes.message(world, message)
    return Deed(world.raise_update("edited_message", content, person.id, message), wanted)


def press(world: World, person_id: int, message_id: int, button: str) -> Deed:
    """Press the button with this label or these data under a message."""
    person = person_of(world, person_id)
    message = _seen(world, person, message_id)
    found = _button(message, button)
    if found is None:
        raise MisuseError(404, f'message {message_id} has no button "{button}"')
    if found.says:
        return say(world, person_id, found.label)[0]
    if found.data is None:
        raise MisuseError(400, f'button "{button}" opens a link; the bot hears nothing of it')
    return forge(world, person_id, message_id, found.data)


def forge(world: World, person_id: int, message_id: int, data: str) -> Deed:
    """Press with any data under any message of the chat, as a changed app could."""
    person = person_of(world, person_id)
    message = _seen(world, person, message_id)
    _come_back(world, person)
    pressed = world.keep_press(person, message)
    content = {
        "id": pressed.id,
        "from": shapes.user(person),
        "message": shapes.message(world, message),
        "chat_instance": str(person.id),
        "data": data,
    }
    return Deed(world.raise_update("callback_query", content, person.id, message), message_id)


def send_file(
    world: World,
    person_id: int,
    kind: str,
    name: str,
    *,
    content: bytes | None = None,
    caption: str = "",
    album: str = "",
) -> Deed:
    """Send a file; without content an invented one of its kind. Those of one `album` were sent at once."""
    person = person_of(world, person_id)
    if kind not in MIME:
        raise MisuseError(400, f"kind must be one of {', '.join(MIME)}")
    mime = MIME_BY_ENDING.get(name.rpartition(".")[2].lower(), MIME[kind])
    facts: dict[str, Any] = {}
    if kind not in {"document", "voice"}:
        facts |= {"width": 8, "height": 8}
    if kind in {"video", "animation", "voice"}:
        facts |= {"duration": 3}
    if kind == "sticker":
        facts |= {"type": "regular", "is_animated": False, "is_video": False}
    made = small_picture() if kind == "photo" else f"invented {kind} {name}".encode()
    file = world.keep_file(kind, name, mime, made if content is None else content, facts)
    extra = {"media_group_id": album} if album else {}
    return _written(world, person, None, text=caption, file=file, extra=extra)


def share_contact(world: World, person_id: int, phone: str) -> Deed:
    """Send one's own phone number."""
    person = person_of(world, person_id)
    contact = {"phone_number": phone, "first_name": person.name, "user_id": person.id}
    return _written(world, person, None, extra={"contact": contact})


def share_location(world: World, person_id: int, latitude: float, longitude: float) -> Deed:
    """Send a place, in degrees."""
    place = {"latitude": latitude, "longitude": longitude}
    return _written(world, person_of(world, person_id), None, extra={"location": place})


def forward(world: World, person_id: int, text: str, author: str) -> Deed:
    """Forward somebody else's text, whose account stays hidden."""
    origin = {
        "type": "hidden_user",
        "sender_user_name": author,
        "date": int(world.now().timestamp()),
    }
    person = person_of(world, person_id)
    return _written(
        world, person, None, text=text, entities=_commands(text), extra={"forward_origin": origin}
    )


def say_in_group(world: World, person_id: int, text: str, title: str, kind: ChatType) -> Deed:
    """Write in a group or channel that the bot is in; the first text there also adds the bot."""
    person_of(world, person_id)
    chat = world.group(title, kind)
    chat.left = False
    return say(world, person_id, text, group=chat)[0]


def block(world: World, person_id: int, *, on: bool) -> Deed:
    """Block the bot, or let it write again. No update where nothing changes."""
    person = person_of(world, person_id)
    if person.blocked == on:
        return Deed(None)
    person.blocked = on
    member = {"status": "member", "user": shapes.bot_user(world)}
    banned = {"status": "kicked", "user": shapes.bot_user(world), "until_date": 0}
    chat = world.chats[person.id]
    content = {
        "chat": shapes.chat(chat),
        "from": shapes.user(person),
        "date": int(world.now().timestamp()),
        "old_chat_member": member if on else banned,
        "new_chat_member": banned if on else member,
    }
    return Deed(world.raise_update("my_chat_member", content, person.id, None))


def repeat(world: World, update_id: int) -> Deed:
    """Deliver an update once more under its old id, as the platform may."""
    for entry in world.log:
        if entry.update is not None and entry.update.update_id == update_id:
            world.updates.repeat(entry.update)
            return Deed(update_id, entry.message_id)
    raise MisuseError(404, f"there was no update {update_id}")


def small_picture() -> bytes:
    """A grey PNG of 8 x 8 pixels (the PNG standard: signature, then IHDR, IDAT, IEND)."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        return (
            struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))
        )

    header = struct.pack(">IIBBBBB", 8, 8, 8, 0, 0, 0, 0)
    pixels = zlib.compress((b"\x00" + b"\x80" * 8) * 8)  # each row begins with its filter, none
    return (
        b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", header) + chunk(b"IDAT", pixels) + chunk(b"IEND", b"")
    )


def _written(world: World, person: Person, group: Chat | None, **fields: Any) -> Deed:
    if group is None:
        _come_back(world, person)
        person.started = True
    chat = group or world.chats[person.id]
    message = world.keep_message(chat, person, raw=fields.get("text", ""), **fields)
    kind = "channel_post" if chat.type == "channel" else "message"
    content = shapes.message(world, message)
    return Deed(world.raise_update(kind, content, chat.id, message), message.message_id)


def _come_back(world: World, person: Person) -> None:
    """Who has blocked the bot must let it write again before the app lets them write."""
    if person.blocked:
        block(world, person.id, on=False)


def _seen(world: World, person: Person, message_id: int) -> Message:
    message = world.message_in(world.chats[person.id], message_id)
    if message is None:
        raise MisuseError(404, f"{person.name} sees no message {message_id}")
    return message


def _button(message: Message, wanted: str) -> Button | None:
    buttons = [button for row in rows_of(message.markup) for button in row]
    by_label = [button for button in buttons if button.label == wanted]
    by_data = [button for button in buttons if button.data == wanted]
    return next(iter(by_label + by_data), None)


def _commands(text: str) -> list[dict[str, Any]]:
    """The entities that the platform finds in what people type, as far as bots go by them."""
    return [
        {"type": "bot_command", "offset": units(text[: found.start()]), "length": len(found[0])}
        for found in COMMAND.finditer(text)
    ]


def _pieces(text: str) -> list[str]:
    pieces = [""]
    room = TEXT_UNITS
    for char in text:
        if units(char) > room:
            pieces.append("")
            room = TEXT_UNITS
        pieces[-1] += char
        room -= units(char)
    return [piece for piece in pieces if piece.strip()]
