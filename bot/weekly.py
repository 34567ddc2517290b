"""What a typed text answers to the questions about a week. Pure."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from bot import answers
from bot.answers import Unclear
from bot.choices import denies_pain, label, unnumbered
from scheduler.domain.messages import text as catalogue
from scheduler.ports import Question

WEEK: Mapping[str, str] = {
    "none": "button-week-none",
    "pain": "button-week-pain",
    "fall": "button-week-fall",
    "leak": "button-week-leak",
}
"""What can be said about a week that was, and the button for it."""


def read(question: Question, text: str, language: str) -> Any:
    """What a text answers about a week: weekdays or "keep", yes or no, or a word of the week's question."""
    if question.kind == "make-up":
        return answers.yes_no(text, language)
    if question.kind == "weekly":
        return _of_the_week(text, language)
    named = answers.weekdays(text, language)
    if not isinstance(named, Unclear) and named:
        return named
    keep = unnumbered(text, [("keep", label(catalogue("button-keep-days"), language))])
    return "keep" if answers.yes_no(text, language) is True else keep


def _of_the_week(text: str, language: str) -> str | Unclear:
    """ "None", also as "no pain", or one of the buttons. "No falls" says nothing about pain."""
    no = answers.yes_no(text, language) is False or answers.says_none(text, language)
    if no or denies_pain(text, language):
        return "none"
    return unnumbered(text, [(key, label(catalogue(id_), language)) for key, id_ in WEEK.items()])
