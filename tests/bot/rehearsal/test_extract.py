"""The extract of the Bot API and the methods that are carried out."""

from typing import Any

import pytest

from bot.rehearsal.contract import RefusalError, load_contract
from bot.rehearsal.methods import METHODS

CONTRACT = load_contract()


def test_the_extract_holds_exactly_the_methods_carried_out() -> None:
    assert set(CONTRACT.methods) == set(METHODS)


@pytest.mark.parametrize("name", sorted(METHODS))
def test_every_field_heeded_is_one_of_the_platforms(name: str) -> None:
    known = set(CONTRACT.methods[name]["fields"])
    required = set(CONTRACT.methods[name].get("required", ()))
    assert required <= METHODS[name].heeds <= known


REQUESTS: list[tuple[str, dict[str, Any], int, str]] = [
    ("sendEverything", {}, 404, "Not Found: method not found"),
    ("getMe", {"x": "1"}, 400, 'unknown field "x" in getMe'),
    ("sendMessage", {"chat_id": "1"}, 400, "message text is empty"),
    ("sendMessage", {"text": "x"}, 400, "chat_id is empty"),
    ("setMyCommands", {}, 400, 'parameter "commands" is required'),
    ("sendMessage", {"chat_id": True, "text": "x"}, 400, 'field "chat_id" must be of type'),
    ("sendMessage", {"chat_id": 1, "text": 5}, 400, 'field "text" must be of type String'),
    (
        "sendMessage",
        {"chat_id": 1, "text": "x", "disable_notification": "yes"},
        400,
        'field "disable_notification" must be of type Boolean',
    ),
    ("deleteMessage", {"chat_id": 1, "message_id": "1.5"}, 400, "must be of type Integer"),
    (
        "sendMessage",
        {"chat_id": 1, "text": "x", "reply_markup": "{"},
        400,
        "can't parse reply_markup JSON object",
    ),
    ("sendMessage", {"chat_id": 1, "text": "\ud83d"}, 400, "strings must be encoded in UTF-8"),
    (
        "sendMessage",
        {"chat_id": 1, "text": "x", "reply_markup": '{"inline_keyboard":[[{"label":"x"}]]}'},
        400,
        'unknown field "label" in InlineKeyboardButton',
    ),
    (
        "sendMessage",
        {"chat_id": 1, "text": "x", "reply_markup": '{"inline_keyboard":[[{"url":"x"}]]}'},
        400,
        'can\'t find field "text" in InlineKeyboardButton',
    ),
    (
        "setMyCommands",
        {"commands": [], "scope": {"type": "chat"}},
        400,
        'can\'t find field "chat_id" in BotCommandScopeChat',
    ),
    ("getUpdates", {"allowed_updates": '["message",1]'}, 400, "must be of type String"),
]


@pytest.mark.parametrize(("method", "fields", "code", "reason"), REQUESTS)
def test_a_request_outside_the_contract_is_refused(
    method: str, fields: dict[str, Any], code: int, reason: str
) -> None:
    with pytest.raises(RefusalError) as refusal:
        CONTRACT.read_request(method, fields)
    assert refusal.value.code == code
    assert reason in refusal.value.description


def test_form_values_are_decoded_to_their_types() -> None:
    raw = {
        "chat_id": "5000000001",
        "text": "12",
        "disable_notification": "true",
        "reply_markup": '{"inline_keyboard": [[{"text": "Did all", "callback_data": "d"}]]}',
    }
    assert CONTRACT.read_request("sendMessage", raw) == {
        "chat_id": 5000000001,
        "text": "12",
        "disable_notification": True,
        "reply_markup": {"inline_keyboard": [[{"text": "Did all", "callback_data": "d"}]]},
    }


def test_a_file_that_no_field_speaks_of_is_refused() -> None:
    with pytest.raises(RefusalError, match='unknown file "stray"'):
        CONTRACT.read_request("sendPhoto", {"chat_id": 1}, ["photo", "stray"])
