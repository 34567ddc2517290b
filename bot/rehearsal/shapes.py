"""People, chats, messages and files as the Bot API shapes them."""

from typing import Any

from bot.rehearsal.world import BOT_ID, Chat, Message, Person, StoredFile, World


def bot_user(world: World) -> dict[str, Any]:
    """The bot as a User, without what only getMe tells."""
    return {
        "id": BOT_ID,
        "is_bot": True,
        "first_name": "Boutwise rehearsal",
        "username": world.bot_username,
    }


def user(person: Person) -> dict[str, Any]:
    """A person as a User."""
    shape = {
        "id": person.id,
        "is_bot": False,
        "first_name": person.name,
        "language_code": person.language,
    }
    return shape | ({"username": person.username} if person.username else {})


def chat(it: Chat) -> dict[str, Any]:
    """A chat as a Chat."""
    if it.person is None:
        return {"id": it.id, "type": it.type, "title": it.title}
    shape = {"id": it.id, "type": it.type, "first_name": it.person.name}
    return shape | ({"username": it.person.username} if it.person.username else {})


def message(world: World, it: Message, *, nested: bool = False) -> dict[str, Any]:
    """A message as a Message; `nested` leaves out what it replies to."""
    sender = bot_user(world) if it.sender is None else user(it.sender)
    shape = {
        "message_id": it.message_id,
        "chat": chat(it.chat),
        "date": int(it.at.timestamp()),
        **it.extra,
        **_content(it),
    }
    if it.chat.type != "channel":
        shape["from"] = sender
    if it.edited_at is not None:
        shape["edit_date"] = int(it.edited_at.timestamp())
    if it.protected:
        shape["has_protected_content"] = True
    if it.markup is not None and "inline_keyboard" in it.markup:
        shape["reply_markup"] = it.markup
    replied = world.messages.get(it.reply_to or 0)
    if replied is not None and not nested:
        shape["reply_to_message"] = message(world, replied, nested=True)
    return shape


def file(it: StoredFile) -> dict[str, Any]:
    """A file as a File, with the path it can be fetched from."""
    return _common(it) | {"file_path": f"{it.kind}s/{it.file_id}"}


def _content(it: Message) -> dict[str, Any]:
    text, entities = ("caption", "caption_entities") if it.file else ("text", "entities")
    shape: dict[str, Any] = {} if it.file is None else _media(it.file)
    if it.text:
        shape[text] = it.text
        if it.entities:
            shape[entities] = it.entities
    return shape


def _common(it: StoredFile) -> dict[str, Any]:
    # The second id names the content and is the same for ever; here each upload is its own.
    return {
        "file_id": it.file_id,
        "file_unique_id": it.file_id[:12],
        "file_size": len(it.content),
    }


def _media(it: StoredFile) -> dict[str, Any]:
    shape = _common(it) | dict(it.facts)
    if it.kind == "photo":
        return {"photo": [shape]}
    if it.kind in {"document", "animation", "video"}:
        shape |= {"file_name": it.name, "mime_type": it.mime}
    media = {it.kind: shape}
    if it.kind == "animation":  # "for backward compatibility": the Bot API's page on Message
        media["document"] = _common(it) | {"file_name": it.name, "mime_type": it.mime}
    return media
