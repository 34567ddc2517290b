"""The platform's updates as values. Their shapes are the platform's documentation (memory)."""

from datetime import UTC, datetime
from typing import Any

import pytest

from bot.telegram.incoming import FILES, Incoming, answer_chat, incoming

NOW = datetime(2027, 3, 8, 8, tzinfo=UTC)


def message(**said: Any) -> dict[str, Any]:
    """A message of one person in her private chat."""
    return {
        "message_id": 5,
        "date": int(NOW.timestamp()),
        "chat": {"id": 7, "type": "private"},
        "from": {"id": 7, "is_bot": False, "first_name": "Ann"},
        **said,
    }


def found(key: str = "message", **said: Any) -> Incoming | None:
    return incoming({"update_id": 1, key: message(**said)}, NOW)


@pytest.mark.parametrize("kind", FILES)
def test_every_kind_of_file_is_known_by_its_name(kind: str) -> None:
    came = incoming({"update_id": 1, "message": message(**{kind: {"file_id": "x"}})}, NOW)
    assert came is not None
    assert (came.kind, came.file, came.text) == ("file", kind, "")


def test_an_animation_is_one_though_it_comes_as_a_document_too() -> None:
    came = found(animation={"file_id": "x"}, document={"file_id": "x"})
    assert came is not None
    assert came.file == "animation"


def test_the_words_below_a_picture_are_its_text() -> None:
    came = found(photo=[{"file_id": "x"}], caption="did 10", media_group_id="77")
    assert came is not None
    assert (came.kind, came.text, came.album) == ("file", "did 10", "77")


def test_words_that_were_passed_on_are_known_as_such() -> None:
    origin = {"type": "hidden_user", "sender_user_name": "Bo", "date": 1}
    came = found(text="12", forward_origin=origin)
    assert came is not None
    assert came.forwarded
    own = found(text="12")
    assert own is not None
    assert not own.forwarded


def test_what_nobody_said_is_not_answered() -> None:
    assert found(pinned_message=message(text="hello")) is None
    assert found(message_auto_delete_timer_changed={"message_auto_delete_time": 86400}) is None
    assert found("edited_message", location={"zone": "Europe/Lisbon"}) is None  # a place moves on


def test_what_is_of_a_kind_to_come_is_not_lost() -> None:
    came = found(hologram={"file_id": "x"})
    assert came is not None
    assert came.kind == "other"


def test_who_waits_for_an_answer_is_found_in_any_update() -> None:
    assert answer_chat({"message": {"chat": {"id": 7, "type": "private"}}}) == 7
    press = {"message": {"chat": {"id": 7, "type": "private"}}, "from": {"id": 7}}
    assert answer_chat({"callback_query": press}) == 7
    for nobody in (
        {},
        {"message": None},
        {"message": {"chat": {"id": 7, "type": "group"}}},
        {"message": {"chat": {"id": "7", "type": "private"}}},
        {"message": {"chat": 7}},
        {"callback_query": {"from": {"id": 7}}},
        {"my_chat_member": {"chat": {"id": 7, "type": "private"}}},
    ):
        assert answer_chat(nobody) is None
