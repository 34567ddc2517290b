"""Another language is one file of what we say and one of what we understand: no code knows its name (P11)."""

import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]
ASKED = """
from datetime import time
from bot import answers
from bot.dialogue import CHOICES
from bot.understand import understand
from bot.words import render
from scheduler.domain.messages import message

assert CHOICES["pt"] == "Outra", CHOICES
assert understand("hice 12", "pt").reps == 12
assert understand("me duele la cadera", "pt").mentions_pain
assert answers.span("de 8 a 8", "pt") == (time(8), time(20))
assert render(message("mistake-too-late"), "pt") == render(message("mistake-too-late"), "es")
"""


def test_a_language_that_is_added_as_two_files_is_spoken_understood_and_in_the_menu(
    tmp_path: Path,
) -> None:
    """The files are those of Spanish under another name: what is looked at is that code needs no change."""
    shutil.copytree(ROOT / "bot", tmp_path / "bot")
    texts = tmp_path / "bot" / "text"
    said = (texts / "es.ftl").read_text(encoding="utf-8")
    own = said.replace("-language = Espa\u00f1ol", "-language = Outra")
    assert own != said
    (texts / "pt.ftl").write_text(own, encoding="utf-8")
    shutil.copyfile(texts / "hear_es.ftl", texts / "hear_pt.ftl")
    path = ":".join((str(tmp_path), str(ROOT)))
    found = subprocess.run(
        [sys.executable, "-c", ASKED],
        cwd=tmp_path,
        env={"PYTHONPATH": path},
        capture_output=True,
        text=True,
        check=False,
    )
    assert found.returncode == 0, found.stderr
