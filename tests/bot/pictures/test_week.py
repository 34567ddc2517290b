"""A client's own week: what she did, large and calm, with no verdict on any day (W7)."""

from typing import Any

import pytest

from bot.pictures import canvas, week_picture
from bot.pictures.week import BAR, BAR_HIGH, DAY, HEAD, MARGIN, ROW, WIDTH
from bot.rehearsal.media import picture_size
from tests.bot import weeks
from tests.bot.pictures.seeing import contrast, difference, grey, light, opened
from tests.bot.pictures.test_caseload import NAMES

SIXTH = {"state": "partial", "why": "declined", "done": 10, "total": 60}
HALF = {"state": "partial", "why": "no-answer", "done": 30, "total": 60}


def bar_of(image: Any, day: int) -> Any:
    top = HEAD + day * ROW + (ROW - BAR_HIGH) // 2
    return image.crop((MARGIN + DAY, top, MARGIN + DAY + BAR, top + BAR_HIGH))


def words_of(image: Any, day: int) -> Any:
    top = HEAD + day * ROW
    return image.crop((MARGIN + DAY + BAR + 10, top + 10, WIDTH - 10, top + ROW - 10))


def written(line: dict[str, Any], monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Every word that is put on the picture."""
    said: list[str] = []
    real = canvas.one_line

    def noted(words: str) -> str:
        said.append(words)
        return real(words)

    monkeypatch.setattr(canvas, "one_line", noted)
    week_picture(line, "en")
    return said


# The share of a bar that is dark is what was done of the total (arithmetic).
@pytest.mark.parametrize(("cell", "share"), [(SIXTH, 1 / 6), (HALF, 1 / 2), (weeks.MISSED, 0.0)])
def test_a_bar_is_filled_as_far_as_the_day_came(cell: dict[str, Any], share: float) -> None:
    bar = bar_of(opened(week_picture(weeks.line("Ann", *[cell] * 7), "en")), 3)
    middle = light(bar)[BAR_HIGH // 2, 5:-5]
    assert (middle < 0.2).mean() == pytest.approx(share, abs=0.02)


def test_each_day_says_what_was_done(monkeypatch: pytest.MonkeyPatch) -> None:
    cells = (
        weeks.COUNTED, weeks.REST, weeks.PARTIAL, weeks.EXCUSED, weeks.OPEN, weeks.EXTRA, weeks.AHEAD,
    )  # fmt: skip
    said = written(weeks.line("Ann", *cells), monkeypatch)
    for words in (
        "40 of 40",
        "rest day",
        "12 of 40",
        "day off",
        "10 of 40",
        "8 done",
        "40 planned",
    ):
        assert words in said
    assert [said.index(day) for day in ("Mon", "Sun")] == sorted(map(said.index, ("Mon", "Sun")))
    assert "Days done: 2 of 3" in said
    assert "Prone upper-back raise: 2 of 3 days" in said


def test_a_day_without_an_answer_looks_like_any_day_that_came_to_nothing() -> None:
    kinds = [weeks.MISSED | {"why": why} for why in ("no-answer", "declined", "unreachable")]
    still_open = weeks.OPEN | {"done": 0}
    image = opened(week_picture(weeks.line("Ann", *kinds, still_open, *kinds), "en"))
    assert len({bar_of(image, day).tobytes() for day in range(7)}) == 1
    assert len({words_of(image, day).tobytes() for day in range(7)}) == 1


def test_a_client_reads_no_verdict_no_flag_and_no_pain(monkeypatch: pytest.MonkeyPatch) -> None:
    cells = (weeks.MISSED, weeks.PARTIAL, weeks.EXCUSED, *[weeks.REST] * 4)
    said = " ".join(written(weeks.line("Ann", *cells), monkeypatch)).lower()
    for word in ("miss", "fail", "partial", "not done", "flag", "pain", "hold", "answer", "should"):
        assert word not in said


def test_everything_has_contrast_and_is_large() -> None:
    cells = (
        weeks.COUNTED, weeks.REST, weeks.PARTIAL, weeks.EXCUSED, weeks.OPEN, weeks.EXTRA, weeks.AHEAD,
    )  # fmt: skip
    image = opened(week_picture(weeks.line("Ann", *cells), "en"))
    assert image.width == 1080
    for day in range(7):
        assert contrast(words_of(image, day)) >= 4.5
    assert contrast(image.crop((MARGIN, 100, 700, 156))) >= 4.5
    plain = [grey(bar_of(image, day)) for day in range(7)]
    for one in range(7):
        for two in range(one):
            assert difference(plain[one], plain[two]) > 0.01


@pytest.mark.parametrize("name", [name for name in NAMES if name.strip()])
@pytest.mark.parametrize("language", ["en", "qps"])
def test_no_name_of_a_companion_breaks_the_picture(name: str, language: str) -> None:
    companions = [{"name": name, "done": 0, "days": 3}] * 30
    width, height = picture_size(week_picture(weeks.line(companions=companions), language))
    assert width == 1080
    assert height < 2 * width
