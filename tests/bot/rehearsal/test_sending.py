"""What the bot says, through the chat library: taken as the platform takes it, or refused."""

from datetime import timedelta
from typing import Any

import pytest
from telegram import (
    BotCommand,
    BotCommandScopeChat,
    InlineKeyboardButton,
    InlineKeyboardMarkup,
    KeyboardButton,
    ReplyKeyboardMarkup,
    ReplyParameters,
)
from telegram.constants import ParseMode
from telegram.error import BadRequest, Forbidden, InvalidToken, RetryAfter

from bot.rehearsal.contract import load_contract
from bot.rehearsal.people import small_picture
from bot.rehearsal.rate import RateRule

from .conftest import Stand

CONTRACT = load_contract()
MARKUP = InlineKeyboardMarkup([[InlineKeyboardButton("Did all", callback_data="d:1")]])


async def test_a_message_arrives_with_its_markup_buttons_and_silence(stand: Stand) -> None:
    bot, ann = await stand.bot(), await stand.person()
    sent = await bot.send_message(
        ann,
        "Now: <b>10</b> heel drops &amp; rest",
        parse_mode=ParseMode.HTML,
        reply_markup=MARKUP,
        disable_notification=True,
    )
    assert sent.text == "Now: 10 heel drops & rest"
    assert sent.parse_entities() == {sent.entities[0]: "10"}
    assert sent.date == stand.clock.now
    seen = (await stand.chat(ann))[-1]
    assert seen["from"] == "bot"
    assert seen["text"] == "Now: 10 heel drops & rest"
    assert seen["html"] == "Now: <b>10</b> heel drops &amp; rest"
    assert seen["buttons"] == [[{"label": "Did all", "data": "d:1"}]]
    assert seen["silent"] is True
    assert seen["date"] == "2027-03-08T05:00:00Z"


async def test_every_accepted_call_is_in_the_log_and_no_refused_one(stand: Stand) -> None:
    bot, ann = await stand.bot(), await stand.person()
    before = len(stand.world.log)
    await bot.send_message(ann, "hello")
    with pytest.raises(BadRequest):
        await bot.send_message(ann, "")
    (entry,) = stand.world.log[before:]
    assert (entry.who, entry.method, entry.chat_id, entry.text) == (
        "bot", "sendMessage", ann, "hello",
    )  # fmt: skip
    assert entry.at == stand.clock.now


# Limits of text, caption, button data: the Bot API's pages (read), "after entities parsing".
@pytest.mark.parametrize(("text", "fits"), [("a" * 4096, True), ("a" * 4097, False)])
async def test_a_text_has_at_most_4096_units(stand: Stand, text: str, fits: bool) -> None:
    ann = await stand.person()
    answer = await stand.call("sendMessage", chat_id=ann, text=text)
    assert answer.json()["ok"] is fits
    if not fits:
        assert answer.json()["description"] == "Bad Request: message is too long"


async def test_tags_do_not_count_and_astral_characters_count_twice(stand: Stand) -> None:
    ann = await stand.person()
    tagged = f"<b>{'a' * 4096}</b>"
    assert (await stand.call("sendMessage", chat_id=ann, text=tagged, parse_mode="HTML")).is_success
    assert (await stand.call("sendMessage", chat_id=ann, text="😀" * 2048)).is_success
    assert not (await stand.call("sendMessage", chat_id=ann, text="😀" * 2049)).is_success


@pytest.mark.parametrize(("length", "fits"), [(1024, True), (1025, False)])
async def test_a_caption_has_at_most_1024_units(stand: Stand, length: int, fits: bool) -> None:
    bot, ann = await stand.bot(), await stand.person()
    if fits:
        await bot.send_photo(ann, small_picture(), caption="c" * length)
    else:
        with pytest.raises(BadRequest, match="Message caption is too long"):
            await bot.send_photo(ann, small_picture(), caption="c" * length)


@pytest.mark.parametrize(("data", "fits"), [("é" * 32, True), ("é" * 32 + "x", False), ("", False)])
async def test_button_data_have_1_to_64_bytes(stand: Stand, data: str, fits: bool) -> None:
    ann = await stand.person()
    markup = {"inline_keyboard": [[{"text": "x", "callback_data": data}]]}
    answer = await stand.call("sendMessage", chat_id=ann, text="x", reply_markup=markup)
    assert answer.json()["ok"] is fits
    if not fits:
        assert answer.json()["description"] == "Bad Request: BUTTON_DATA_INVALID"


@pytest.mark.parametrize(
    ("fields", "reason"),
    [
        ({"text": ""}, "message text is empty"),
        ({"text": " \n "}, "message text is empty"),
        ({"text": "<b>x", "parse_mode": "HTML"}, "can't parse entities: Can't find end tag"),
        ({"text": "x", "parse_mode": "MarkdownV2"}, "unsupported parse_mode"),
        ({"text": "x", "colour": "red"}, 'unknown field "colour" in sendMessage'),
        ({"text": "x", "message_effect_id": "1"}, "the stand-in does not carry out"),
        ({"text": "x", "reply_parameters": {"message_id": 99}}, "message to be replied not found"),
        ({"text": "x", "reply_markup": {"inline_keyboard": [[{"text": "x"}]]}}, "text buttons are"),
        (
            {
                "text": "x",
                "reply_markup": {
                    "inline_keyboard": [[{"text": "x", "callback_data": "d", "url": "http://x"}]]
                },
            },
            "exactly one action",
        ),
        (
            {
                "text": "x",
                "reply_markup": {"inline_keyboard": [[{"text": " ", "callback_data": "d"}]]},
            },
            "button text must be non-empty",
        ),
        (
            {
                "text": "x",
                "reply_markup": {"inline_keyboard": [[{"text": "x", "callback_data": "d"}] * 101]},
            },
            "REPLY_MARKUP_TOO_LONG",
        ),
    ],
)
async def test_a_message_the_platform_would_not_take_is_refused_and_leaves_nothing(
    stand: Stand, fields: dict[str, Any], reason: str
) -> None:
    ann = await stand.person()
    before = await stand.chat(ann)
    code, description = await stand.refusal("sendMessage", chat_id=ann, **fields)
    assert code == 400
    assert reason in description
    assert await stand.chat(ann) == before


async def test_nobody_gets_a_message_who_never_wrote_or_has_blocked_the_bot(stand: Stand) -> None:
    bot, ann = await stand.bot(), await stand.person()
    stranger = stand.world.add_person("Bo Invented")
    with pytest.raises(Forbidden, match="bot can't initiate conversation with a user"):
        await bot.send_message(stranger, "hello")
    await stand.deed(ann, "block", on=True)
    with pytest.raises(Forbidden, match="bot was blocked by the user"):
        await bot.send_message(ann, "hello")
    await stand.deed(ann, "text", text="I am back")
    await bot.send_message(ann, "hello")
    with pytest.raises(BadRequest, match="Chat not found"):
        await bot.send_message(123, "hello")


async def test_an_edit_must_change_something(stand: Stand) -> None:
    bot, ann = await stand.bot(), await stand.person()
    sent = await bot.send_message(ann, "10 heel drops", reply_markup=MARKUP)
    with pytest.raises(BadRequest, match="Message is not modified: specified new message content"):
        await bot.edit_message_text("10 heel drops", ann, sent.message_id, reply_markup=MARKUP)
    edited = await bot.edit_message_text("Done: 10 of 40", ann, sent.message_id)
    assert not isinstance(edited, bool)
    assert edited.edit_date == stand.clock.now
    seen = (await stand.chat(ann))[-1]
    assert (seen["text"], seen["buttons"], seen["edited"]) == ("Done: 10 of 40", [], True)
    with pytest.raises(BadRequest, match="Message is not modified"):
        await bot.edit_message_reply_markup(ann, sent.message_id)
    await bot.edit_message_reply_markup(ann, sent.message_id, reply_markup=MARKUP)
    assert (await stand.chat(ann))[-1]["buttons"]


async def test_only_the_bots_own_standing_messages_can_be_edited(stand: Stand) -> None:
    bot, ann, bo = await stand.bot(), await stand.person(), await stand.person("Bo Invented")
    theirs = (await stand.chat(ann))[0]["message_id"]
    with pytest.raises(BadRequest, match="Message can't be edited"):
        await bot.edit_message_text("x", ann, theirs)
    sent = await bot.send_message(ann, "x")
    with pytest.raises(BadRequest, match="Message to edit not found"):
        await bot.edit_message_text("y", bo, sent.message_id)
    assert await bot.delete_message(ann, sent.message_id)
    with pytest.raises(BadRequest, match="Message to edit not found"):
        await bot.edit_message_text("y", ann, sent.message_id)
    with pytest.raises(BadRequest, match="Message to delete not found"):
        await bot.delete_message(ann, sent.message_id)
    assert (await stand.chat(ann))[-1]["deleted"] is True


# 48 hours: the Bot API's page on deleteMessage (read).
@pytest.mark.parametrize(("seconds", "gone"), [(48 * 3600, True), (48 * 3600 + 1, False)])
async def test_a_message_can_be_deleted_for_48_hours(
    stand: Stand, seconds: int, gone: bool
) -> None:
    ann = await stand.person()
    sent = (await stand.call("sendMessage", chat_id=ann, text="x")).json()["result"]
    stand.clock.move(seconds=seconds)
    answer = await stand.call("deleteMessage", chat_id=ann, message_id=sent["message_id"])
    assert answer.json()["ok"] is gone


async def test_files_arrive_and_can_be_fetched_again(stand: Stand) -> None:
    bot, ann = await stand.bot(), await stand.person()
    photo = await bot.send_photo(ann, small_picture(), caption="<i>Week</i> 10", parse_mode="HTML")
    table = await bot.send_document(ann, b"ref,name\n", filename="week.csv", caption="The table")
    clip = await bot.send_animation(ann, b"invented clip", width=8, height=8, duration=3)
    video = await bot.send_video(ann, b"invented video", width=8, height=8, duration=3)
    assert (photo.photo[0].width, photo.photo[0].height) == (8, 8)
    assert photo.caption == "Week 10"
    assert table.document is not None
    assert table.document.file_name == "week.csv"
    assert clip.animation is not None
    assert video.video is not None
    fetched = await bot.get_file(table.document.file_id)
    assert bytes(await fetched.download_as_bytearray()) == b"ref,name\n"
    again = await bot.send_photo(ann, photo.photo[0].file_id)
    assert again.photo[0].file_id == photo.photo[0].file_id
    kinds = [message["files"][0]["kind"] for message in (await stand.chat(ann))[1:]]
    assert kinds == ["photo", "document", "animation", "video", "photo"]
    await bot.edit_message_caption(ann, table.message_id, caption="Week 10")
    with pytest.raises(BadRequest, match="There is no text in the message to edit"):
        await bot.edit_message_text("x", ann, table.message_id)


async def test_files_the_platform_would_not_take_are_refused(stand: Stand) -> None:
    bot, ann = await stand.bot(), await stand.person()
    with pytest.raises(BadRequest, match=r"(?i)IMAGE_PROCESS_FAILED"):
        await bot.send_photo(ann, b"no picture")
    with pytest.raises(BadRequest, match="File must be non-empty"):
        await bot.send_document(ann, b"", filename="empty.csv")
    with pytest.raises(BadRequest, match="Wrong file identifier/http url specified"):
        await bot.send_document(ann, "https://example.org/x.pdf")
    with pytest.raises(BadRequest, match="Wrong file_id or the file is temporarily unavailable"):
        await bot.get_file("unknown")
    sent = await bot.send_message(ann, "x")
    with pytest.raises(BadRequest, match="There is no caption in the message to edit"):
        await bot.edit_message_caption(ann, sent.message_id, caption="x")


async def test_a_press_is_answered_until_fifteen_minutes_have_passed(stand: Stand) -> None:
    bot, ann = await stand.bot(), await stand.person()
    sent = await bot.send_message(ann, "10 heel drops", reply_markup=MARKUP)
    await stand.deed(ann, "press", message_id=sent.message_id, button="Did all")
    update = (await bot.get_updates())[-1]
    query = update.callback_query
    assert query is not None
    stand.clock.move(minutes=15)
    assert await query.answer("Logged")
    (notice,) = (await stand.http.get(f"/people/{ann}/notices")).json()
    assert (notice["text"], notice["answered"]) == ("Logged", True)
    with pytest.raises(BadRequest, match=r"(?i)MESSAGE_TOO_LONG"):
        await stand.bots[0].answer_callback_query(query.id, "x" * 201)
    stand.clock.move(seconds=1)
    with pytest.raises(BadRequest, match="Query is too old and response timeout expired"):
        await query.answer()
    with pytest.raises(BadRequest, match="Query is too old"):
        await bot.answer_callback_query("1")


async def test_the_bot_sets_its_commands_and_descriptions(stand: Stand) -> None:
    bot, ann = await stand.bot(), await stand.person()
    scope = BotCommandScopeChat(ann)
    await bot.set_my_commands([BotCommand("week", "Your week")], scope=scope, language_code="en")
    assert await bot.get_my_commands(scope, "en") == (BotCommand("week", "Your week"),)
    assert await bot.get_my_commands() == ()
    await bot.delete_my_commands(scope, "en")
    assert await bot.get_my_commands(scope, "en") == ()
    await bot.set_my_description("For people invited by their practice")
    await bot.set_my_short_description("By invitation")
    assert stand.world.descriptions["description", ""] == "For people invited by their practice"
    with pytest.raises(BadRequest, match=r"(?i)BOT_COMMAND_INVALID"):
        await bot.set_my_commands([BotCommand("Weeks!", "x")])


async def test_chats_can_be_looked_up_and_groups_left(stand: Stand) -> None:
    bot, ann = await stand.bot(), await stand.person()
    assert (await bot.get_chat(ann)).first_name == "Ann Invented"
    await bot.send_chat_action(ann, "typing")
    await stand.deed(ann, "group", text="hello all", title="Invented club", kind="supergroup")
    group = (await bot.get_updates())[-1].message
    assert group is not None
    assert group.chat.type == "supergroup"
    assert await bot.leave_chat(group.chat.id)
    with pytest.raises(Forbidden, match="bot is not a member of the supergroup chat"):
        await bot.send_message(group.chat.id, "x")
    with pytest.raises(BadRequest, match="Chat member status can't be changed in private chats"):
        await bot.leave_chat(ann)


async def test_replies_and_reply_keyboards_are_shown(stand: Stand) -> None:
    bot, ann = await stand.bot(), await stand.person()
    first = (await stand.chat(ann))[0]["message_id"]
    keyboard = ReplyKeyboardMarkup([[KeyboardButton("Skip")]])
    sent = await bot.send_message(
        ann, "x", reply_parameters=ReplyParameters(first), reply_markup=keyboard
    )
    assert sent.reply_to_message is not None
    assert sent.reply_to_message.message_id == first
    await stand.deed(ann, "press", message_id=sent.message_id, button="Skip")
    assert (await stand.chat(ann))[-1]["text"] == "Skip"


async def test_every_message_given_out_is_one_of_the_platforms(stand: Stand) -> None:
    ann = await stand.person()
    for kind in ["photo", "document", "voice", "video", "animation", "sticker"]:
        await stand.deed(ann, "file", kind=kind, name=f"invented.{kind}")
    await stand.deed(ann, "contact", phone="555 0100")
    await stand.deed(ann, "location", latitude=1.5, longitude=2)
    await stand.deed(ann, "forward", text="hello", author="Somebody Else")
    await stand.deed(ann, "text", text="changed", edit=1)
    await stand.deed(ann, "group", text="hello", kind="channel")
    await stand.deed(ann, "block", on=True)
    sent = (await stand.call("getUpdates")).json()["result"]
    assert len(sent) == 13
    for update in sent:
        CONTRACT.check("Update", update)
    await stand.deed(ann, "block", on=False)
    CONTRACT.check("ChatFullInfo", (await stand.call("getChat", chat_id=ann)).json()["result"])
    CONTRACT.check("User", (await stand.call("getMe")).json()["result"])
    CONTRACT.check("WebhookInfo", (await stand.call("getWebhookInfo")).json()["result"])
    answer = await stand.call("sendMessage", chat_id=ann, text="x", protect_content=True)
    CONTRACT.check("Message", answer.json()["result"])


async def test_a_wrong_token_opens_nothing(stand: Stand) -> None:
    answer = await stand.http.post("/bot123:wrong/getMe")
    assert answer.status_code == 401
    assert answer.json() == {"ok": False, "error_code": 401, "description": "Unauthorized"}
    assert (await stand.http.get("/file/bot123:wrong/photos/x")).status_code == 401
    bot = await stand.bot()
    stand.world.token = "7:changed"
    with pytest.raises(InvalidToken):
        await bot.get_me()


async def test_an_unknown_method_is_not_found(stand: Stand) -> None:
    assert await stand.refusal("sendEverything") == (404, "Not Found: method not found")


async def test_arguments_may_come_in_the_address_a_form_or_json(stand: Stand) -> None:
    ann = await stand.person()
    path = f"/bot{stand.world.token}/sendMessage"
    fields = {"chat_id": str(ann), "text": "x"}
    assert (await stand.http.get(path, params=fields)).is_success
    assert (await stand.http.post(path, data=fields)).is_success
    assert (await stand.http.post(path, json=fields)).is_success
    twice = await stand.http.post(path, params={"text": "y"}, data=fields)
    assert twice.json()["description"] == 'Bad Request: field "text" is given twice'
    broken = await stand.http.post(path, content=b"{", headers={"content-type": "application/json"})
    assert broken.json()["description"] == "Bad Request: can't parse JSON"


async def test_more_than_one_message_a_second_into_one_chat_is_too_fast(stand: Stand) -> None:
    real = [100.0]
    stand.world.rate = RateRule(lambda: real[0])
    bot, ann, bo = await stand.bot(), await stand.person(), await stand.person("Bo Invented")
    await bot.send_message(ann, "one")
    with pytest.raises(RetryAfter) as fault:
        await bot.send_message(ann, "two")
    assert fault.value.retry_after == timedelta(seconds=1)
    await bot.send_message(bo, "the other chat goes on")
    real[0] += 0.999
    with pytest.raises(RetryAfter):
        await bot.send_message(ann, "two")
    real[0] += 0.001
    await bot.send_message(ann, "two")


def test_more_than_thirty_a_second_over_all_chats_is_too_fast() -> None:
    real = [100.0]
    rule = RateRule(lambda: real[0])
    waits = [rule.wait(chat) for chat in range(32)]
    # 30 a second (the platform's page of frequent questions, read), and one under way.
    assert waits[:30] == [None] * 30
    assert waits[-1] == 1
    real[0] += 1
    assert rule.wait(99) is None
