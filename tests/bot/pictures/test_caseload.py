"""The clinician's picture of the week: who stands where, readable for everybody, at any size."""

import itertools
import json
import subprocess
import sys
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from PIL import Image, ImageFont

from bot.pictures import canvas, caseload_picture
from bot.pictures.caseload import (
    CELL,
    DAY_HEAD,
    DAYS,
    HEAD,
    MARGIN,
    NAME,
    PANEL,
    ROW,
    SIGN_HIGH,
    SIGN_WIDE,
    shape,
)
from bot.pictures.tiles import REASONS, STATES, tile
from bot.rehearsal.media import PHOTO_BYTES, picture_size
from scheduler.domain.messages import text
from scheduler.domain.week import Why
from tests.bot import weeks
from tests.bot.pictures.seeing import (
    BLINDNESS,
    as_seen,
    at_phone_width,
    contrast,
    difference,
    grey,
    opened,
)

ROOT = Path(__file__).parents[3]
LETTERS = {why: chr(ord("A") + number) for number, why in enumerate(REASONS)}


def row_box(row: int, left: float, width: float) -> tuple[int, int, int, int]:
    """Where something stands in the row, at full size."""
    top = HEAD + DAY_HEAD + row * ROW
    return (round(left), top + 2, round(left + width), top + ROW - 4)


def sign_at(image: Image.Image, row: int, day: int) -> Image.Image:
    left = MARGIN + NAME + day * CELL + (CELL - SIGN_WIDE) // 2
    top = HEAD + DAY_HEAD + row * ROW + (ROW - SIGN_HIGH) // 2
    return image.crop((left, top, left + SIGN_WIDE, top + SIGN_HIGH))


def drawn(state: str, letter: str = "") -> Image.Image:
    """A sign in its colours."""
    return canvas.tinted(tile(state, letter, SIGN_WIDE, SIGN_HIGH)).convert("RGB")


def nearest(sign: Image.Image) -> str:
    """The state whose sign, without a letter, is the most like this one."""
    return min(STATES, key=lambda state: difference(grey(sign), grey(drawn(state))))


# --- what stands where ---------------------------------------------------------------------------


def test_every_state_stands_in_its_clients_row_on_its_day() -> None:
    plain = [kind | {"why": ""} for kind in weeks.KINDS]
    lines = [weeks.line(f"C{n}", *(plain[(n + d) % 8] for d in range(7))) for n in range(8)]
    image = opened(caseload_picture(weeks.digest(*lines), "en"))
    for number, line in enumerate(lines):
        shown = [nearest(sign_at(image, number + 1, day)) for day in range(7)]
        assert shown == [cell["state"] for cell in line["cells"]]


def test_those_who_need_her_stand_first_under_a_dark_heading() -> None:
    need, calm = weeks.line("Ann", reasons=weeks.NEED), weeks.line("Bo")
    both = opened(caseload_picture(weeks.digest(need, calm), "en")).convert("L")
    headings = [both.getpixel((MARGIN + 4, HEAD + DAY_HEAD + row * ROW + 12)) for row in (0, 2)]
    assert [isinstance(each, int) and each < 128 for each in headings] == [True, False]


def test_another_figure_another_name_and_another_pain_each_change_their_own_place() -> None:
    before = opened(caseload_picture(weeks.digest(weeks.line()), "en"))
    right = MARGIN + NAME + 7 * CELL
    places: dict[str, tuple[tuple[int, int, int, int], dict[str, Any]]] = {
        "name": (row_box(1, MARGIN, NAME), {"name": "Bea"}),
        "days": (row_box(1, right, DAYS), {"days": 3}),
        "pain": (row_box(1, right + DAYS, PANEL - MARGIN - right - DAYS), {"pain": None}),
    }
    for _, changed in places.values():
        after = opened(caseload_picture(weeks.digest(weeks.line(**changed)), "en"))
        differing = [
            name
            for name, (box, _) in places.items()
            if difference(grey(before.crop(box)), grey(after.crop(box))) > 0
        ]
        assert [places[name][1] for name in differing] == [changed]


def test_every_reason_for_a_day_has_a_letter_of_its_own() -> None:
    assert set(REASONS) == {why.value for why in Why}
    sheet = canvas.Canvas(10, 10, "en")
    letters = [sheet.say(text("picture-mark", mark=why)) for why in REASONS]
    assert len({*letters}) == len(letters) == 9
    assert all(len(letter) == 1 for letter in letters)


# --- readable ------------------------------------------------------------------------------------


@pytest.mark.parametrize(("one", "two"), [*itertools.combinations(STATES, 2)])
def test_two_states_are_told_apart_in_grey_and_without_colour_vision(one: str, two: str) -> None:
    full = [drawn(state) for state in (one, two)]
    for pair in (full, at_phone_width(full)):
        assert difference(*(grey(each) for each in pair)) > 0.03
        for blindness in BLINDNESS:
            assert difference(*(as_seen(each, blindness) for each in pair)) > 0.03


@pytest.mark.parametrize("why", REASONS)
def test_states_are_told_apart_with_a_letter_beside_them(why: str) -> None:
    lettered = [drawn(state, LETTERS[why]) for state in ("partial", "missed", "excused")]
    for one, two in itertools.combinations(at_phone_width(lettered), 2):
        assert difference(grey(one), grey(two)) > 0.03


def test_everything_that_is_written_has_contrast() -> None:
    image = opened(caseload_picture(weeks.crowd(5, 2), "en"))
    right = MARGIN + NAME + 7 * CELL
    places = {
        "title": (MARGIN, 20, PANEL - MARGIN, 76),
        "by": (MARGIN, 84, 500, 124),
        "as of": (MARGIN, 134, PANEL - MARGIN, 170),
        "weekdays": (MARGIN + NAME, HEAD + 8, right, HEAD + 80),
        "heads": (right, HEAD + 44, PANEL - MARGIN, HEAD + 80),
        "need you": (MARGIN + 10, HEAD + DAY_HEAD + 10, 400, HEAD + DAY_HEAD + 52),
        "others": row_box(3, MARGIN + 10, 300),
        "name": row_box(1, MARGIN, 150),
        "figures": row_box(1, right, DAYS),
        "legend": (MARGIN + 84, image.height - 400, 480, image.height - 100),
        "last line": (MARGIN, image.height - 76, PANEL - MARGIN, image.height - 30),
    }
    faint = {n: contrast(image.crop(box)) for n, box in places.items()}
    assert {name: ratio for name, ratio in faint.items() if ratio < 4.5} == {}


@pytest.mark.parametrize("state", ["partial", "missed", "excused"])
@pytest.mark.parametrize("why", REASONS)
def test_the_letter_of_a_reason_has_contrast(state: str, why: str) -> None:
    sign = drawn(state, LETTERS[why])
    inside = (SIGN_WIDE // 2 + 2, 5, SIGN_WIDE - 6, SIGN_HIGH - 5)
    assert contrast(sign.crop(inside)) >= 4.5


def test_the_measure_of_contrast_agrees_with_known_values() -> None:
    # Black on white is 21; #767676 on white is the lightest grey at 4.5 (WCAG's own example; memory).
    for colour, ratio in (("#000000", 21.0), ("#767676", 4.54)):
        image = Image.new("RGB", (20, 20), "#ffffff")
        image.paste(colour, (0, 0, 20, 5))
        assert contrast(image) == pytest.approx(ratio, abs=0.01)


@pytest.mark.parametrize("clients", [1, 14, 40])
def test_letters_are_at_least_30_pixels_high_up_to_40_clients(
    clients: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    sizes: list[int] = []
    real = canvas.font

    def noted(size: int, bold: bool) -> ImageFont.FreeTypeFont:
        sizes.append(size)
        return real(size, bold)

    monkeypatch.setattr(canvas, "font", noted)
    image = opened(caseload_picture(weeks.crowd(clients, 2 if clients > 2 else 0), "en"))
    assert image.width == 1080
    assert len(sizes) > 20
    assert min(sizes) >= 30


# --- any number, any name ------------------------------------------------------------------------


@pytest.mark.parametrize("clients", [0, 1, 40, 41, 43, 100, 500, 1000])
def test_the_platform_takes_the_picture_of_any_caseload(clients: int) -> None:
    png = caseload_picture(weeks.crowd(clients, clients // 20), "en")
    assert len(png) <= PHOTO_BYTES
    width, height = picture_size(png)
    assert width + height <= 10_000
    assert max(width, height) <= 20 * min(width, height)


def test_500_clients_stay_large_enough_to_read_when_one_zooms_in() -> None:
    form = shape(502, 16)
    assert form.panels * form.rows >= 502
    assert 32 * form.scale >= 12  # pixels of a name's letters


@pytest.mark.parametrize("rows", [*range(1, 130), 502, 1002])
def test_every_row_has_its_place(rows: int) -> None:
    form = shape(rows, 16)
    assert form.panels * form.rows >= rows
    assert (form.panels - 1) * form.rows < rows
    assert form.scale <= 1


NAMES = (
    "Αλεξάνδρα", "Екатерина", "نادية ٢٣", "٠١٢٣٤٥٦٧٨٩", "😀👩‍👩‍👧", "x" * 80, "王小明", "a\nb\tc\0d",
    "", " ", "\u202eevil", "e\u0301" * 30, "İstanbul ﬁ",
)  # fmt: skip


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("language", ["en", "qps", "xx"])
def test_no_name_breaks_the_picture_or_runs_into_the_days(name: str, language: str) -> None:
    shown = opened(caseload_picture(weeks.digest(weeks.line(name)), language))
    plain = opened(caseload_picture(weeks.digest(weeks.line("A")), language))
    assert shown.size == plain.size
    for day in range(7):
        assert sign_at(shown, 1, day).tobytes() == sign_at(plain, 1, day).tobytes()


def test_the_same_week_gives_the_same_picture() -> None:
    digest = weeks.crowd(12, 2)
    assert caseload_picture(digest, "en") == caseload_picture(json.loads(json.dumps(digest)), "en")


def test_nothing_is_drawn_from_the_clock() -> None:
    later = weeks.digest(weeks.line(first=date(2031, 1, 6)), first="2031-01-06", last="2031-01-12")
    assert caseload_picture(later, "en") != caseload_picture(weeks.digest(weeks.line()), "en")


def test_the_drawing_libraries_are_not_loaded_before_something_is_drawn() -> None:
    code = (
        "import sys, bot.pictures, bot.reports, bot.telegram.sender; "
        "print([m for m in ('PIL', 'fpdf', 'numpy') if m in sys.modules])"
    )
    run: Any = subprocess.run(
        [sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=True
    )
    assert run.stdout.strip() == "[]"
