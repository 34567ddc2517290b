"""A client's first two weeks as a text that can be read aloud: it is what the bot says today."""

import shutil
from pathlib import Path

import pytest

from bot.rehearsal.diary import WORDS, diary
from bot.words import LANGUAGES
from tests.conftest import MEMORY


@pytest.mark.parametrize("language", WORDS)
async def test_the_two_weeks_are_current(
    language: str, sqlite_template: Path, tmp_path: Path, loopback: None
) -> None:
    path = Path(MEMORY or tmp_path) / f"{tmp_path.name}-{language}.db"
    shutil.copyfile(sqlite_template, path)
    try:
        played = await diary(f"sqlite:///{path}", language)
    finally:
        for each in path.parent.glob(f"{path.name}*"):
            each.unlink()
    kept = Path(__file__).with_name(f"two_weeks_{language}.txt").read_text(encoding="utf-8")
    assert played == kept, f"run: python -m bot.rehearsal.diary {language}"


def test_there_is_one_for_every_language() -> None:
    assert {*WORDS} == {*LANGUAGES}


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_code_and_no_address_of_this_machine_is_in_it(language: str) -> None:
    kept = Path(__file__).with_name(f"two_weeks_{language}.txt").read_text(encoding="utf-8")
    assert kept.count("/start ") == kept.count("/start (code)”") == 1
    assert "http" not in kept
