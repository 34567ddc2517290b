"""How each exercise is done: a picture that reads in grey on a phone, and words that say all of it (C7)."""

import re

import pytest

from bot.pictures import how_to_picture
from bot.pictures.howto import STAGES
from bot.rehearsal.markup import units
from bot.rehearsal.media import picture_size
from bot.telegram.attachments import LONGEST_CAPTION, attachment
from bot.words import LANGUAGES, render
from scheduler.domain.companions import CATALOGUE
from scheduler.domain.messages import Message, message
from scheduler.domain.plan import MOVEMENTS
from scheduler.usecases.cards import EXERCISES
from tests.bot.pictures.seeing import at_phone_width, contrast, difference, grey, light, opened
from tests.bot.reading import reading
from tests.bot.reading_es import reading as reading_es

UNASKED = 350  # characters (quality figure, ours)


def card(exercise: str) -> Message:
    return message("how-to", exercise=exercise, picture=None)


def caption(exercise: str, language: str) -> str:
    attached = attachment(card(exercise))
    assert attached is not None
    return render(attached.caption, language)


def test_every_movement_and_companion_has_a_card() -> None:
    assert {*EXERCISES} == {*MOVEMENTS, *CATALOGUE} == {*STAGES}


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("exercise", EXERCISES)
def test_a_card_has_three_cues_a_hold_and_a_care_and_is_short(exercise: str, language: str) -> None:
    said = caption(exercise, language).splitlines()
    assert [line[:2] for line in said[1:4]] == ["1.", "2.", "3."]
    assert len(said) == 7  # its name, the cues, hold, care, and to stop if it hurts
    assert len("\n".join(said)) <= UNASKED
    assert units("\n".join(said)) <= LONGEST_CAPTION


@pytest.mark.parametrize("exercise", EXERCISES)
def test_a_card_reads_at_grade_six_or_below_and_easily_in_spanish(exercise: str) -> None:
    assert reading(caption(exercise, "en")).grade <= 6.0  # P11
    assert reading_es(caption(exercise, "es")).inflesz > 65  # "quite easy", see `reading_es`


# What is told to people with low bone density: no bending or twisting of the spine, support at hand, stop
# at pain (general teaching, common practice, no source).
@pytest.mark.parametrize("exercise", EXERCISES)
def test_no_card_tells_to_bend_or_twist_and_each_says_to_stop_at_pain(exercise: str) -> None:
    said = caption(exercise, "en")
    cues = said.partition("Support:")[0]
    assert not re.search(
        r"\b(twist|touch your toes|bend (?!your knees)|lean)\b", cues, re.IGNORECASE
    )
    assert said.endswith("Stop if it hurts, and tell me.")
    assert re.search(r"Support: .*(counter|chair)", said)


@pytest.mark.parametrize("exercise", EXERCISES)
def test_each_cue_has_its_numbered_stage_side_by_side(exercise: str) -> None:
    assert len(STAGES[exercise]) == 3
    width, height = picture_size(how_to_picture(exercise, "en"))
    assert width == 1080
    assert height < width


@pytest.mark.parametrize("exercise", EXERCISES)
def test_a_picture_is_dark_on_white_and_has_no_hue_that_matters(exercise: str) -> None:
    image = opened(how_to_picture(exercise, "en"))
    assert contrast(image) >= 7.0  # WCAG 2.2, level AAA for text (memory)
    assert (light(image) > 0.99).mean() > 0.6
    wanted = opened(how_to_picture(exercise, "en")).convert("RGB")
    assert difference(grey(wanted), grey(wanted.convert("L").convert("RGB"))) == 0


@pytest.mark.parametrize("exercise", EXERCISES)
def test_on_a_phone_the_middle_stage_looks_other_than_the_first(exercise: str) -> None:
    (small,) = at_phone_width([opened(how_to_picture(exercise, "en")).convert("RGB")])
    third, above_the_number = small.width // 3, small.height - 50
    first, middle = (
        grey(small.crop((n * third, 0, (n + 1) * third, above_the_number))) for n in (0, 1)
    )
    assert difference(first, middle) > 0.02


def test_exercises_look_different_from_one_another() -> None:
    pictures = {exercise: how_to_picture(exercise, "en") for exercise in EXERCISES}
    assert len({*pictures.values()}) == len(EXERCISES)
    assert how_to_picture("stomp", "en") == how_to_picture("stomp", "es")  # there is no word in it
