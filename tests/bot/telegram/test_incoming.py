"""The platform's updates as values. Their shapes are the platform's documentation (memory)."""

from bot.telegram.incoming import answer_chat


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
