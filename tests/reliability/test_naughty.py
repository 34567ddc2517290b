"""Whatever is typed, wherever anything can be typed: one answer, nothing thrown, nothing miscounted (P3).

The strings are ours, after kinds that are known to break programs: control and format characters, other
directions, combining marks, other planes, markup, formats, paths, numbers that are none, very long ones, and
the digits of every script (Unicode's own table, by `unicodedata`). `BOUTWISE_NAUGHTY=all` types every one in
every place. What a place does with them is not asserted here, only what must never happen;
`tests.journeys.test_bad_input` has the replies.
"""

import sys
import unicodedata
from collections.abc import Awaitable, Callable

import pytest

from scheduler.domain.settings import NAMES
from scheduler.ports import Question
from scheduler.usecases import join
from scheduler.usecases.drafts import FIELDS
from tests.journeys.desk import Desk, in_words
from tests.journeys.rooms import ANN, BO, DANA, EVE, GIL, IDS, JOINING, KIM, MONDAY, at
from tests.reliability.sizes import NAUGHTY as SIZE

pytest_plugins = ("tests.journeys.furniture",)

LONG = 100_000
EVERYTHING = SIZE == "all"
NAUGHTY = (
    *("\0", "a\0b", "\x01\x02\x1b[31m", "\x7f", "\ufeff", "\u200b\u200d\u2060", "\u00ad"),
    *(
        "\u202e12\u202c",
        "\u2067שלום 12\u2069",
        "مرحبا",
        "Z̷̢͑a̵l̴g̶o̶" + "\u0336" * 50,
        "e\u0301\u0301\u0301",
    ),
    *(
        "👩‍👩‍👧‍👦🇪🇸",
        "\U0001f469\U0001f3fd",
        "\U000e0041\U000e007f",
        "𝟙𝟚",
        "①②",
        "Ⅻ",
        "१२ १२",
        "\ud83d",
    ),
    *(
        "%s%n%d {0} {name} ${x}",
        "<b>12</b><script>alert(1)</script>",
        "⟦prompt|{}⟧",
        "{ $reps }",
        "`12`",
    ),
    *(
        "'; DROP TABLE person; --",
        "../../etc/passwd",
        "=1+1",
        "\\",
        "\r\n\r\n",
        "\u2028\u2029",
        "/",
        "/ ",
        "/@",
    ),
    *(
        "nan",
        "inf",
        "-inf",
        "1e9",
        "0x10",
        "-0",
        "+12",
        "1_000",
        "1,5",
        "9" * 400,
        "-" + "9" * 30,
        "0" * 50 + "7",
    ),
    *(
        "31.2.2027",
        "99999-01-01",
        "25:61",
        "in 10000000000 years",
        "24:00-00:00",
        "8" * 10 + "-9",
    ),
    *("x" * LONG, "12 " * (LONG // 3), "\u0301" * LONG, "(" * LONG, "in " * 20_000, "10+" * 20_000),
)
DIGITS = tuple(
    f"{chr(zero + 1)}{chr(zero + 2)}"
    for zero in range(sys.maxunicode + 1)
    if unicodedata.decimal(chr(zero), None) == 0
)
"""Twelve in every script that has decimal digits."""

Opens = Callable[[Desk], Awaitable[None]]


def pressing(who: int, *data: str) -> Opens:
    """The place opens when somebody taps these buttons."""

    async def opens(desk: Desk) -> None:
        for each in data:
            await desk.forge(who, each)

    return opens


def asking(who: int, kind: str, step: str, **body: object) -> Opens:
    """The place is an open question."""

    async def opens(desk: Desk) -> None:
        question = Question(IDS[who], kind, step, body, asked_at=desk.now)
        await desk.run(lambda tx: tx.questions.ask(question))

    return opens


async def nothing(desk: Desk) -> None:
    """The place is always open."""


async def fewer(desk: Desk) -> None:
    """Ann is asked how many of the bout she did."""
    await desk.forge(ANN, f"few:{await asked(desk)}")


async def sure(desk: Desk) -> None:
    """Ann is asked whether she means it."""
    await desk.say(ANN, "499")


async def asked(desk: Desk) -> int:
    """The latest bout of the day, open or over."""
    return (await desk.run(lambda tx: tx.days.bouts(IDS[ANN], MONDAY)))[-1].id


PAIN = ("p:sign:none", "p:place:hip", "p:score:4", "p:when:after", "p:new:0")
FALL = ("f:sign:none", "f:injured:0", "f:new_pain:0", "f:when:today")
CLIENT: dict[str, Opens] = {
    "anything": nothing,
    **{f"pain {n}": pressing(ANN, "hurt", *PAIN[:n]) for n in range(len(PAIN) + 1)},
    **{f"fall {n}": pressing(ANN, "fell", *FALL[:n]) for n in range(len(FALL) + 1)},
    **{f"times {field}": pressing(ANN, f"t:{field}") for field in ("zone", "window", "quiet")},
    "fewer": fewer,
    "confirm": sure,
    "morning": asking(ANN, "morning", "score"),
    "pass": asking(ANN, "pass", "yes-no", words="kettle"),
    "words to the clinician": asking(ANN, "reply", "words", to=IDS[DANA]),
    "week": asking(ANN, "weekly", "week", week="2027-03-08"),
}
CLINICIAN: dict[str, Opens] = {
    "search": pressing(DANA, "cl"),
    "words to a client": pressing(DANA, f"w:{IDS[ANN]}"),
    **{f"plan {field}": pressing(DANA, f"cp:{IDS[ANN]}", f"df:{field}") for field in FIELDS},
    "release": pressing(DANA, f"ch:{IDS[ANN]}", f"rel:{IDS[ANN]}"),
    "invite": asking(DANA, "invite", "name", role="client", clinician=IDS[DANA]),
}
ADMIN: dict[str, Opens] = {
    "anything": nothing,
    "invite": asking(KIM, "invite", "name", role="clinician"),
    "until": asking(KIM, "cover", "until", clinician=IDS[DANA], colleague=IDS[EVE]),
    **{f"setting {name}": asking(KIM, "setting", name) for name in NAMES},
}


async def typed_everywhere(desk: Desk, who: int, places: dict[str, Opens]) -> None:
    """Each string in some place, or every one in every place; all are answered, in both languages."""
    for n, (place, opens) in enumerate(places.items()):
        for words in NAUGHTY if EVERYTHING else NAUGHTY[n % 6 :: 6]:
            await opens(desk)
            before = heard(desk, who)
            await desk.say(who, words)
            assert heard(desk, who) > before, (place, words[:30])
    for _, said in desk.sender.sent.values():
        assert in_words(said, "es").strip()


def heard(desk: Desk, who: int) -> int:
    return len(desk.chat(who))


async def test_a_client_may_type_anything_anywhere(desk: Desk) -> None:
    await desk.step(at(8, 0))
    await typed_everywhere(desk, ANN, CLIENT)
    assert set(await desk.reps()) <= {2, 5, 7, 12}  # 1+1, half of ten, zeros and a seven, twelve


async def test_who_joins_may_type_anything_at_any_question(desk: Desk) -> None:
    code = await desk.run(lambda tx: join.invite(tx, None, IDS[BO], desk.now))
    await desk.say(BO, f"/start {code}")
    for button in (*JOINING, ""):
        for words in NAUGHTY if EVERYTHING else NAUGHTY[len(button) % 6 :: 6]:
            before = heard(desk, BO)
            await desk.say(BO, words)
            assert heard(desk, BO) > before, (button, words[:30])
        if button:
            await desk.forge(BO, button)


async def test_a_clinician_may_type_anything_anywhere(desk: Desk) -> None:
    await typed_everywhere(desk, DANA, CLINICIAN)


async def test_an_admin_may_type_anything_anywhere(desk: Desk) -> None:
    await typed_everywhere(desk, KIM, ADMIN)


async def test_codes_captions_edits_and_names_may_be_anything(desk: Desk) -> None:
    await desk.step(at(8, 0))
    for words in NAUGHTY if EVERYTHING else NAUGHTY[::3]:
        before = heard(desk, GIL)
        await desk.say(GIL, f"/start {words}")
        await desk.send(GIL, "photo", words)
        await desk.say(GIL, "hello")
        await desk.edit(GIL, words)
        await desk.forge(GIL, words.replace("\ud83d", "")[:64])
        assert heard(desk, GIL) >= before + 3, words[:30]


async def test_twelve_in_any_script_is_twelve_or_is_asked_back(desk: Desk) -> None:
    await desk.step(at(8, 0))
    assert len(DIGITS) > 50
    for words in DIGITS:
        before = await desk.reps()
        await desk.say(ANN, words)
        assert await desk.reps() in (before, [*before, 12]), words
        await fewer(desk)
        before = await desk.reps()
        await desk.say(ANN, words)
        assert await desk.reps() in (before, [*before, 12]), words


@pytest.mark.parametrize(
    "words", ["9" * 400, "501", "0", "-5", "1e9", "1_000", "10-12", "8:30", "Ⅻ", "12 " * 50]
)
async def test_a_number_that_is_none_is_never_counted(desk: Desk, words: str) -> None:
    await desk.step(at(8, 0))
    await desk.say(ANN, words)
    assert await desk.reps() == []
