"""What the stand-in reads as HTML, and what it refuses."""

import pytest
from telegram import MessageEntity

from bot.rehearsal.contract import RefusalError
from bot.rehearsal.markup import parse_html, units

# Source (read): TDLib, the platform's open client library, test/message_entities.cpp, parse_html.
BROKEN = [
    ("🏟 🏟&lt;<abacaba", "Unclosed start tag at byte offset 13"),
    ("🏟 🏟&lt;<abac aba>", 'Unsupported start tag "abac" at byte offset 13'),
    ("🏟 🏟&lt;<abac>", 'Unsupported start tag "abac" at byte offset 13'),
    ("🏟 🏟&lt;<i   =aba>", 'Empty attribute name in the tag "i" at byte offset 13'),
    ("🏟 🏟&lt;<i    aba>", 'Can\'t find end tag corresponding to start tag "i"'),
    ("🏟 🏟&lt;<i    aba  =  ", 'Unclosed start tag "i" at byte offset 13'),
    ('🏟 🏟&lt;<i    aba  =  "&lt;&gt;&quot;>', "Unclosed start tag at byte offset 13"),
    ("🏟 🏟&lt;<i    aba  =  '&lt;&gt;&quot;>", "Unclosed start tag at byte offset 13"),
    ("🏟 🏟&lt;</", "Unexpected end tag at byte offset 13"),
    ("🏟 🏟&lt;<b></b></", "Unexpected end tag at byte offset 20"),
    ("🏟 🏟&lt;<i>a</i   ", "Unclosed end tag at byte offset 17"),
    (
        "🏟 🏟&lt;<i>a</em   >",
        'Unmatched end tag at byte offset 17, expected "</i>", found "</em>"',
    ),
]
# Stricter than the platform, as its page on formatting asks (read): "All <, > and & symbols that
# are not a part of a tag or an HTML entity must be replaced".
BARE = ["3 > 2", "salt & pepper", "a&nbsp;b", "x < y"]


@pytest.mark.parametrize(("source", "reason"), BROKEN)
def test_broken_html_is_refused_in_the_platforms_words(source: str, reason: str) -> None:
    with pytest.raises(RefusalError) as refusal:
        parse_html(source)
    assert refusal.value.code == 400
    assert refusal.value.description == f"Bad Request: can't parse entities: {reason}"


@pytest.mark.parametrize("number", ["&#57311;", "&#xDFDF;"])  # read: the same TDLib test
def test_half_of_a_surrogate_pair_is_refused(number: str) -> None:
    with pytest.raises(RefusalError, match="unmatched surrogate code units"):
        parse_html(number)


@pytest.mark.parametrize("source", BARE)
def test_a_name_or_note_that_was_not_escaped_is_refused(source: str) -> None:
    with pytest.raises(RefusalError, match="can't parse entities"):
        parse_html(source)


def test_escaped_text_reads_as_it_was_typed() -> None:
    # The four names and numbers: the platform's page on formatting (read).
    assert parse_html("&lt;b&gt; &amp; &quot;x&quot; it&#x27;s &#39;").text == "<b> & \"x\" it's '"


def test_offsets_count_as_the_chat_library_counts() -> None:
    formatted = parse_html("😀 <b>bold <i>both</i></b> <a href='https://example.org/'>link</a>")
    entities = [MessageEntity(**entity) for entity in formatted.entities]
    # Peer: python-telegram-bot's own reading of entities.
    cut = [
        formatted.text.encode("utf-16-le")[e.offset * 2 : (e.offset + e.length) * 2]
        for e in entities
    ]
    found = [(e.type, piece.decode("utf-16-le")) for e, piece in zip(entities, cut, strict=True)]
    assert found == [("bold", "bold both"), ("italic", "both"), ("text_link", "link")]


@pytest.mark.parametrize(
    ("source", "kind"),
    [
        ("<strong>x</strong>", "bold"),
        ("<em>x</em>", "italic"),
        ("<ins>x</ins>", "underline"),
        ("<del>x</del>", "strikethrough"),
        ('<span class="tg-spoiler">x</span>', "spoiler"),
        ("<tg-spoiler>x</tg-spoiler>", "spoiler"),
        ("<code>x</code>", "code"),
        ("<pre>x</pre>", "pre"),
        ("<blockquote>x</blockquote>", "blockquote"),
        ("<blockquote expandable>x</blockquote>", "expandable_blockquote"),
    ],
)
def test_every_tag_of_the_formatting_page_is_known(source: str, kind: str) -> None:
    assert parse_html(source).entities == [{"type": kind, "offset": 0, "length": 1}]


def test_a_span_without_its_class_is_refused() -> None:
    with pytest.raises(RefusalError, match='Tag "span" must have class "tg-spoiler"'):
        parse_html("<span>x</span>")


def test_white_space_around_a_text_is_cut_and_entities_move_along() -> None:
    formatted = parse_html(" \n<b> 12 </b> <i> </i>")
    assert formatted.text == "12"
    assert formatted.entities == [{"type": "bold", "offset": 0, "length": 2}]


@pytest.mark.parametrize(("text", "length"), [("", 0), ("aé", 2), ("😀", 2), ("👩‍🦳", 5)])
def test_length_is_counted_in_utf16_units(text: str, length: int) -> None:
    # Arithmetic: a UTF-16 unit has two bytes.
    assert units(text) == length == len(text.encode("utf-16-le")) // 2
