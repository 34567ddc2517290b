"""Whether an update that could not be handled may have told of pain, a fall or a sign. All ours."""

from datetime import UTC, datetime
from typing import Any

import pytest

from bot.telegram.unread import unread
from scheduler.ports import Arrived
from scheduler.usecases.unread import Unread

NOW = datetime(2027, 3, 8, 9, tzinfo=UTC)


@pytest.mark.parametrize(
    ("text", "data", "alarm"),
    [
        ("did 10", "", False),
        ("hello", "", False),
        ("no pain today", "", False),
        ("my hip hurts, did 10", "", True),
        ("i fell", "", True),
        ("me duele la cadera", "", True),
        ("me he caido", "", True),
        ("help, I can't get up", "", True),
        ("I want to die", "", True),
        ("/hurts", "", True),
        ("", "hurt", True),
        ("", "fell", True),
        ("", "p:score:8", True),
        ("", "f:injured:yes", True),
        ("", "m:7", True),
        ("", "wq:pain", True),
        ("", "wq:none", False),
        ("", "all:7", False),
        ("", "skp:7", False),
    ],
)
def test_what_may_be_about_pain_is_found_in_words_and_in_taps(
    text: str, data: str, alarm: bool
) -> None:
    """In every language, for whose it is may be the very thing that cannot be read."""
    chat, whose = {"id": 7, "type": "private"}, {"id": 7}
    said = {"message_id": 1, "date": 1, "chat": chat, "from": whose, "text": text}
    press = {"id": "1", "from": whose, "data": data, "message": {"chat": chat}}
    payload: dict[str, Any] = {"callback_query": press} if data else {"message": said}
    found = unread(Arrived(1, {"update_id": 1, **payload}, NOW, 4))
    assert (found.chat, found.alarm) == (7, alarm)
    assert found.words == (text if alarm else "")


@pytest.mark.parametrize(
    ("payload", "chat", "alarm"),
    [
        ({"message": {"chat": {"id": 7, "type": "private"}, "from": {}}}, 7, True),
        ({"message": {"chat": {"id": 7, "type": "group"}, "text": "it hurts"}}, None, False),
        ({"my_chat_member": {}}, None, False),
        ({"message": "it hurts"}, None, False),
    ],
)
def test_what_has_no_shape_counts_as_a_yes_where_somebody_waits(
    payload: dict[str, Any], chat: int | None, alarm: bool
) -> None:
    found = unread(Arrived(1, {"update_id": 1, **payload}, NOW, 4))
    assert (found.chat, found.alarm, found.words) == (chat, alarm, "")


def test_what_is_no_update_at_all_tells_of_nobody() -> None:
    assert unread(Arrived(1, ["it hurts"], NOW, 4)) == Unread(None)
