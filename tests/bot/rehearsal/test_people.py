"""What people do, over HTTP."""

import base64
from typing import Any

import pytest

from .conftest import Stand


async def test_people_are_listed_and_can_be_added(stand: Stand) -> None:
    ann = stand.world.add_person("Ann Invented", "es", label="client")
    answer = await stand.http.post("/people", json={"name": "Bo Invented"})
    assert answer.status_code == 201
    listed = (await stand.http.get("/people")).json()
    assert [(each["id"], each["name"], each["language"]) for each in listed] == [
        (ann, "Ann Invented", "es"),
        (answer.json()["id"], "Bo Invented", "en"),
    ]
    assert ann > 2**32  # as real ids: narrower columns fail


async def test_a_person_writes_replies_and_edits(stand: Stand) -> None:
    bot, ann = await stand.bot(), await stand.person()
    asked = await bot.send_message(ann, "How many?")
    said = await stand.deed(ann, "text", text="12", reply_to=asked.message_id)
    changed = await stand.deed(ann, "text", text="10", edit=said["message_id"])
    again = await stand.deed(ann, "text", text="11", edit=True)
    updates = {each.update_id: each for each in await bot.get_updates()}
    reply = updates[said["update_id"]].message
    assert reply is not None
    assert reply.reply_to_message is not None
    assert reply.reply_to_message.message_id == asked.message_id
    edited = updates[changed["update_id"]].edited_message
    assert edited is not None
    assert (edited.message_id, edited.text) == (said["message_id"], "10")
    assert again["message_id"] == said["message_id"]
    assert (await stand.chat(ann))[-1]["edited"] is True


async def test_a_press_carries_the_data_of_the_button(stand: Stand) -> None:
    bot, ann = await stand.bot(), await stand.person()
    markup = {
        "inline_keyboard": [
            [{"text": "Did all", "callback_data": "d"}, {"text": "Skip", "callback_data": "s"}],
            [{"text": "Card", "url": "https://example.org/"}],
        ]
    }
    sent = (await stand.call("sendMessage", chat_id=ann, text="x", reply_markup=markup)).json()
    message_id = sent["result"]["message_id"]
    by_label = await stand.deed(ann, "press", message_id=message_id, button="Did all")
    by_data = await stand.deed(ann, "press", message_id=message_id, button="s")
    forged = await stand.deed(ann, "press", message_id=message_id, forged="admin:erase")
    queries = {each.update_id: each.callback_query for each in await bot.get_updates()}
    wanted = {
        by_label["update_id"]: "d",
        by_data["update_id"]: "s",
        forged["update_id"]: "admin:erase",
    }
    for update_id, data in wanted.items():
        query = queries[update_id]
        assert query is not None
        assert (query.data, query.from_user.id) == (data, ann)
        assert query.message is not None
        assert query.message.message_id == message_id


@pytest.mark.parametrize(
    ("path", "body", "status"),
    [
        ("{ann}/press", {"message_id": 1, "button": "Did all"}, 404),
        ("{ann}/press", {"message_id": 99, "button": "Did all"}, 404),
        ("{ann}/press", {"message_id": "1", "button": "x"}, 400),
        ("{ann}/text", {}, 400),
        ("{ann}/text", {"text": " "}, 400),
        ("{ann}/text", {"text": "x", "edit": 99}, 404),
        ("{ann}/text", {"text": "x", "reply_to": 99}, 404),
        ("{ann}/file", {"kind": "hologram", "name": "x"}, 400),
        ("{ann}/file", {"kind": "document", "name": "x", "base64": "%"}, 400),
        ("{ann}/block", {"on": 1}, 400),
        ("{ann}/group", {"text": "x", "kind": "private"}, 400),
        ("123/text", {"text": "x"}, 404),
    ],
)
async def test_what_a_person_could_not_do_is_refused_with_one_line(
    stand: Stand, path: str, body: dict[str, Any], status: int
) -> None:
    ann = await stand.person()
    before = len(stand.world.log)
    answer = await stand.http.post(f"/people/{path.format(ann=ann)}", json=body)
    assert answer.status_code == status
    assert answer.json()["error"]
    assert "\n" not in answer.json()["error"]
    assert len(stand.world.log) == before


async def test_words_that_are_not_utf8_are_refused(stand: Stand) -> None:
    ann = await stand.person()
    headers = {"content-type": "application/json"}
    for body in (b'{"text": "\\ud83d"}', b"{", b"[]", b'{"text": "\xff"}'):
        answer = await stand.http.post(f"/people/{ann}/text", content=body, headers=headers)
        assert answer.status_code == 400


async def test_a_very_long_text_leaves_in_pieces_as_from_the_platforms_apps(stand: Stand) -> None:
    bot, ann = await stand.bot(), await stand.person()
    last = (await stand.deed(ann, "text", text="😀" * 50_000))["update_id"]
    updates = (await bot.get_updates())[1:]
    texts = [each.message.text or "" for each in updates if each.message]
    assert "".join(texts) == "😀" * 50_000
    assert max(len(text.encode("utf-16-le")) // 2 for text in texts) == 4096
    assert updates[-1].update_id == last


async def test_blocking_and_coming_back_are_told_to_the_bot(stand: Stand) -> None:
    bot, ann = await stand.bot(), await stand.person()
    blocked = await stand.deed(ann, "block", on=True)
    assert (await stand.deed(ann, "block", on=True))["update_id"] is None
    wrote = await stand.deed(ann, "text", text="I am back")
    updates = await bot.get_updates(offset=blocked["update_id"])
    changes = [
        each.my_chat_member.difference()["status"] for each in updates if each.my_chat_member
    ]
    assert changes == [("member", "kicked"), ("kicked", "member")]
    assert updates[-1].update_id == wrote["update_id"]


async def test_a_file_comes_with_the_content_given(stand: Stand) -> None:
    bot, ann = await stand.bot(), await stand.person()
    table = "ref,name\n1,Ann\n"
    await stand.deed(ann, "file", kind="document", name="clients.csv", text=table, caption="list")
    raw = base64.b64encode(b"\x00\xff").decode()
    await stand.deed(ann, "file", kind="voice", name="note.ogg", base64=raw)
    documents = [each.message for each in await bot.get_updates() if each.message]
    document, voice = documents[-2].document, documents[-1].voice
    assert document is not None
    assert (document.file_name, document.mime_type) == ("clients.csv", "text/csv")
    assert documents[-2].caption == "list"
    assert voice is not None
    file = await bot.get_file(document.file_id)
    assert bytes(await file.download_as_bytearray()) == table.encode()
    assert bytes(await (await bot.get_file(voice.file_id)).download_as_bytearray()) == b"\x00\xff"


async def test_a_file_of_one_chat_is_not_shown_in_another(stand: Stand) -> None:
    ann, bo = await stand.person(), await stand.person("Bo Invented")
    await stand.deed(ann, "file", kind="photo", name="foot.png")
    file_id = (await stand.chat(ann))[-1]["files"][0]["file_id"]
    mine = await stand.http.get(f"/people/{ann}/files/{file_id}")
    assert mine.headers["content-type"] == "image/png"
    assert (await stand.http.get(f"/people/{bo}/files/{file_id}")).status_code == 404


async def test_groups_channels_and_forwards_are_told_apart(stand: Stand) -> None:
    bot, ann = await stand.bot(), await stand.person()
    await stand.deed(ann, "group", text="hi", title="Invented club")
    await stand.deed(ann, "group", text="hi", title="Invented news", kind="channel")
    await stand.deed(ann, "forward", text="12", author="Somebody Else")
    group, channel, forward = (await bot.get_updates())[-3:]
    assert group.message is not None
    assert group.message.chat.type == "group"
    assert group.message.chat_id < 0
    assert channel.channel_post is not None
    assert channel.channel_post.from_user is None
    assert forward.message is not None
    assert forward.message.forward_origin is not None
    assert len(await stand.chat(ann)) == 2


async def test_another_sites_page_has_no_say(stand: Stand) -> None:
    ann = await stand.person()
    body = {"text": "12"}
    foreign = {"Origin": "https://example.org"}
    answer = await stand.http.post(f"/people/{ann}/text", json=body, headers=foreign)
    assert answer.status_code == 403
    own = {"Origin": stand.url}
    assert (await stand.http.post(f"/people/{ann}/text", json=body, headers=own)).is_success
