"""Which of several choices a text means, each with the words of its button. Pure.

A choice can be named by its label, by its number in the list, or by what people say instead of the label,
which is listed in the vocabulary under the keys that begin with "say-".
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from bot import answers
from bot.answers import Unclear
from bot.understand import HEARS, understand
from bot.understand.tokens import plain, tokenise
from bot.understand.vocabulary import vocabulary
from bot.words import label as written
from scheduler.domain.messages import Text


def label(text: Text, language: str) -> str:
    """What a button says, in the language in which its reader is understood."""
    return written(text, HEARS.get(language, language))


def pick(text: str, options: Sequence[tuple[str, str]]) -> str | Unclear:
    """The value of the option that is meant; `options` are values with their labels."""
    chosen = answers.choice(text, [shown for _, shown in options])
    return named_in(text, options) if isinstance(chosen, Unclear) else options[chosen][0]


def unnumbered(text: str, options: Sequence[tuple[str, str]]) -> str | Unclear:
    """As `pick`, but a bare number names nothing: about pain it would be taken for a score or for reps."""
    if text.strip(" .!").isdecimal():
        return Unclear("answer-choice", {"options": tuple(shown for _, shown in options)})
    return pick(text, options)


def named_in(text: str, options: Sequence[tuple[str, str]]) -> str | Unclear:
    """The one option whose whole label stands in a text: "my left hip" names one of the places."""
    said = set(words_of(text))
    named = [value for value, shown in options if any(map(said.issuperset, _namings(shown)))]
    refused = Unclear("answer-choice", {"options": tuple(shown for _, shown in options)})
    return named[0] if len(named) == 1 else refused


def _namings(shown: str) -> list[list[str]]:
    """The words of a label, and of what follows its first comma: "none of these" of "no, none of these"."""
    return [words for words in (words_of(shown), words_of(shown.partition(",")[2])) if words]


def words_of(text: str) -> list[str]:
    """The words of a text, made plain."""
    return re.findall(r"[^\W_]+", plain(text))


def said_instead(text: str, language: str, groups: Mapping[str, str]) -> list[str]:
    """The values whose phrases stand in a text; `groups` are keys of the vocabulary and their values."""
    heard = vocabulary(language)
    found = heard.pick(tokenise(text, heard), set(groups))
    return list(dict.fromkeys(groups[match.group] for match in found))


def denies_pain(text: str, language: str) -> bool:
    """Whether a text says that nothing hurts: "no pain" does, "no falls" does not."""
    heard = vocabulary(language)
    named = any(token.text in heard.words("ache") for token in tokenise(text, heard))
    return named and understand(text, language).denies


def either(text: str, language: str, yes: Text, no: Text) -> bool | Unclear:
    """One of two labels, words of one of them or said instead, or a plain yes or no (yes is the first)."""
    shown = [label(yes, language), label(no, language)]
    chosen = unnumbered(text, [("1", shown[0]), ("0", shown[1])])
    if not isinstance(chosen, Unclear):
        return chosen == "1"
    said = set(words_of(text))
    within = [said.issubset(words_of(each)) for each in shown]
    if said and within[0] != within[1]:
        return within[0]  # "new" of "it is new"
    keys = [f"say-{each.id.removeprefix('button-')}" for each in (yes, no)]
    meant = said_instead(text, language, {keys[0]: "1", keys[1]: "0"})
    return meant == ["1"] if len(meant) == 1 else answers.yes_no(text, language)
