"""What clients and clinicians type as the times of a step test, and what is never taken for them."""

import pytest

from bot.steps import times
from scheduler.domain.steptest import Trial

TAKEN: list[tuple[str, str, tuple[Trial, ...]]] = [
    ("en", "14.8 16.2", (1480, 1620)),
    ("en", "14.8 and 15.2", (1480, 1520)),
    ("en", "15.01 void", (1501, None)),
    ("en", "first 14,8 second void", (1480, None)),
    ("en", "second 14.8, first void", (None, 1480)),
    ("en", "1st 14.8 2nd 15", (1480, 1500)),
    ("en", "14.8 s / 15.20 s", (1480, 1520)),
    ("en", "fourteen point eight", (1480,)),
    ("en", "15", (1500,)),
    ("en", "the first one was 15.05 seconds", (1505,)),
    ("en", "lost balance", (None,)),
    ("en", "I lost my balance", (None,)),
    ("en", "14.8, touched the tape", (1480, None)),
    ("en", "wrong order", (None,)),
    ("en", "both void", (None, None)),
    ("en", "void void", (None, None)),
    ("es", "14,8 y 15,2", (1480, 1520)),
    ("es", "primera 14,8 segunda nula", (1480, None)),
    ("es", "catorce con ocho", (1480,)),
    ("es", "perdí el equilibrio", (None,)),
    ("es", "toqué el palo", (None,)),
    ("es", "orden equivocado", (None,)),
    ("es", "las dos nulas", (None, None)),
]
NOT_TAKEN = [
    ("en", "14.8 and my knee hurts"),
    ("en", "lost balance and fell"),
    ("en", "I fell"),
    ("en", "14.8, dizzy"),
    ("en", "did 12"),
    ("en", "12 done"),
    ("en", "10 each side"),
    ("en", "14,15"),  # one time with a comma, or two
    ("en", "14.855"),
    ("en", "-5"),
    ("en", "14.8 15.2 16.1"),
    ("en", "first 14 first 15"),
    ("en", "6/10"),  # how much it hurts
    ("en", "7 / 10"),
    ("en", "at 4"),
    ("en", ""),
    ("es", "14,8 y me duele"),
    ("es", "perdí el equilibrio y me caí"),
    ("es", "hice 12 saltos"),
    ("es", "6/10"),
]


@pytest.mark.parametrize(("language", "said", "trials"), TAKEN)
def test_times_are_understood_with_point_or_comma_in_any_order(
    language: str, said: str, trials: tuple[Trial, ...]
) -> None:
    found = times(said, language)
    assert found is not None
    assert found.trials == trials


@pytest.mark.parametrize(("language", "said"), NOT_TAKEN)
def test_a_text_that_says_one_thing_more_is_no_time(language: str, said: str) -> None:
    assert times(said, language) is None


def test_a_bare_number_alone_might_be_reps() -> None:
    assert [times(said).sure for said in ("15", "15 s", "15.0", "15 16")] == [  # type: ignore[union-attr]
        False,
        False,
        True,
        True,
    ]
