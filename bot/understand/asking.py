"""Whether a text asks how an exercise is done. Pure.

It is looked for only where the text tells of no pain, fall or sign; a text with a number reports something
and asks nothing.
"""

from bot.understand.tokens import tokenise
from bot.understand.vocabulary import vocabulary

LONGEST = 20
"""Words; who writes more wants to tell something."""


def asks_how(text: str, language: str = "en") -> bool:
    """Whether `text` asks to be shown how it is done: "how do I do it", "show me".

    LanguageMissingError where there is no vocabulary for the language.
    """
    heard = vocabulary(language)
    tokens = tokenise(text, heard)
    if len(tokens) > LONGEST or any(each.value is not None for each in tokens):
        return False
    return bool(heard.find(tokens, {"how-to"}))
