"""Text to tokens: characters made plain, spelling put right, number words made numbers. Pure.

Work is linear in the length of the text, and capped, whatever a person or a machine sends.
"""

import re
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from bot.understand.vocabulary import Vocabulary

# A chat message has at most 4096 characters, so at most as many tokens. Of anything longer both
# ends are read, which is where people put what matters.
MAX_TOKENS = 5_000
MAX_CHARACTERS = 20_000  # one character can stand for eighteen once made plain
# Longer runs of digits are no count; int() of thousands of digits is slow and then refused.
MAX_DIGITS = 9

_IGNORED = {"Mn", "Me", "Cf", "Cc", "Cs", "Co", "Cn", "Lm", "Sk"}
_SAME = str.maketrans(
    {
        "’": "'", "‘": "'", "ʼ": "'", "´": "'", "`": "'", "′": "'",
        "–": "-", "—": "-", "‑": "-", "‒": "-", "―": "-", "−": "-", "﹣": "-", "-": "-",
        "½": " half ", "×": " x ", "÷": "/", "⁄": "/", "∕": "/", "∶": ":", "٫": ".", "٬": ",",
        "،": ",", "؟": "?", "。": ".", "、": ",", "¡": " ", "¿": " ", "…": ".", "\r": "\n",
        "\t": " ", "\u2028": "\n", "\u2029": "\n", "\x0b": " ", "\x0c": "\n", "\x85": "\n",
    }
)  # fmt: skip
_TOKEN = re.compile(r"\d+|[^\W\d_]+(?:'[^\W\d_]+)*|\n|[^\w\s]")
# "w/o" and "1/2" are words; the slash is a separator everywhere else.
_ENDS = frozenset(".!?;\n")
_BREAKS = _ENDS | {","}
_DROPPED = frozenset("'\"()[]{}*_«»“”„<>|\\")


@dataclass(frozen=True, slots=True)
class Token:
    """One word, number or mark. `value` is set for numbers only.

    `glued`: nothing stood between it and the token before. `doubtful`: a number word that is often
    no count, as in "that one hurts". `digits`: written in digits.
    """

    text: str
    value: int | None = None
    glued: bool = False
    doubtful: bool = False
    digits: bool = False

    @property
    def ends_sentence(self) -> bool:
        """Whether no phrase goes on past it."""
        return self.text in _ENDS

    @property
    def breaks(self) -> bool:
        """Whether it ends a clause: sentence ends and commas."""
        return self.text in _BREAKS

    @property
    def is_word(self) -> bool:
        """Whether it is made of letters."""
        return self.value is None and self.text[:1].isalpha()


def plain(text: str) -> str:
    """`text` with digits of every script as 0-9, lower case, no accents, no invisible characters.

    Marks are removed before they are normalised: sorting a long run of them is not linear.
    """
    kept: list[str] = []
    for char in text:
        if char.isascii():
            kept.append(char if char >= " " or char in "\n\r\t\x0b\x0c" else "")
            continue
        if (digit := unicodedata.decimal(char, None)) is not None:
            kept.append(str(digit))
        elif unicodedata.category(char) == "No" and char != "½":
            kept.append("^" + char)  # "10²" is not 102
        elif char in "½\u2028\u2029\x85´" or unicodedata.category(char) not in _IGNORED:
            kept.append(char)
    folded = unicodedata.normalize("NFKD", "".join(kept).translate(_SAME)).casefold()
    return "".join(c for c in folded if not unicodedata.combining(c)).translate(_SAME)


def tokenise(text: str, vocabulary: "Vocabulary") -> list[Token]:
    """The tokens of `text`, spelling put right and number words turned into numbers."""
    if len(text) > MAX_CHARACTERS:
        text = text[: MAX_CHARACTERS // 2] + " . " + text[-MAX_CHARACTERS // 2 :]
    tokens = list(_cut(plain(text), vocabulary))
    if len(tokens) > MAX_TOKENS:
        half = MAX_TOKENS // 2
        tokens = [*tokens[:half], Token("."), *tokens[-half:]]
    return _numbers(_respell(tokens, vocabulary), vocabulary)


def _cut(text: str, vocabulary: "Vocabulary") -> Iterator[Token]:
    end = -1
    for found in _TOKEN.finditer(text):
        raw, glued = found.group(), found.start() == end
        end = found.end()
        if raw.isdecimal():
            value = int(raw) if len(raw) <= MAX_DIGITS else 10**MAX_DIGITS
            yield Token(raw[:MAX_DIGITS], value, glued, digits=True)
        elif raw[0].isalpha():
            word = raw if (raw,) in vocabulary.spelling else raw.replace("'", "")
            yield Token(word, glued=glued)
        elif raw in _DROPPED:
            # "5*5" and "(12)" : not one number with what stands beside it, not a word either
            continue
        elif (
            raw.isascii()
            or raw in vocabulary.known
            or len(raw) > 1
            or unicodedata.category(raw) != "So"
        ):
            yield Token(raw, glued=glued)


def _respell(tokens: list[Token], vocabulary: "Vocabulary") -> list[Token]:
    """Known slips replaced, then guesses: swapped letters, one letter off, words run together."""
    guesses: dict[str, tuple[str, ...]] = {}
    first: list[Token] = []
    for token in tokens:
        if not token.is_word or token.text in vocabulary.known:
            first.append(token)
            continue
        if token.text not in guesses:
            guesses[token.text] = vocabulary.guess(token.text)
        words = guesses[token.text]
        first.append(replace(token, text=words[0]))
        first.extend(Token(word) for word in words[1:])
    return list(_replaced(first, vocabulary))


def _replaced(tokens: list[Token], vocabulary: "Vocabulary") -> Iterator[Token]:
    """Several words that stand for one: "can not" is "cant". Longest first."""
    at = 0
    while at < len(tokens):
        for size in range(min(vocabulary.longest_spelling, len(tokens) - at), 0, -1):
            meant = vocabulary.spelling.get(tuple(t.text for t in tokens[at : at + size]))
            if meant is not None:
                yield replace(tokens[at], text=meant[0])
                yield from (Token(word) for word in meant[1:])
                at += size
                break
        else:
            yield tokens[at]
            at += 1


def _numbers(tokens: list[Token], vocabulary: "Vocabulary") -> list[Token]:
    """Number words put together: "a hundred and twenty" is one token of value 120."""
    found: list[Token] = []
    at = 0
    while at < len(tokens):
        value, after = _number_at(tokens, at, vocabulary)
        if value is None:
            found.append(tokens[at])
        else:
            doubtful = after == at + 1 and tokens[at].text in vocabulary.doubtful_numbers
            found.append(Token(tokens[at].text, value, tokens[at].glued, doubtful))
        at = after
    return found


def _number_at(tokens: list[Token], at: int, vocabulary: "Vocabulary") -> tuple[int | None, int]:
    """The value of the number words from `at`, and where they end."""
    total: int | None = None
    while at < len(tokens):
        step = at
        if total is not None and tokens[step].text == "-" and step + 1 < len(tokens):
            step += 1  # twenty-five
        elif total is not None and vocabulary.joins(tokens[step].text, total):
            step += 1  # a hundred and five
        if step >= len(tokens) or (joined := _join(total, tokens[step].text, vocabulary)) is None:
            break
        total, at = joined, step + 1
    return total, at if total is not None else at + 1


def _join(total: int | None, word: str, vocabulary: "Vocabulary") -> int | None:
    """`total` with one more number word, or None where the word does not belong to it."""
    if word in vocabulary.multipliers:
        by = vocabulary.multipliers[word]
        return by if total is None else total * by if 0 < total < 10 else None  # noqa: PLR2004
    value = vocabulary.numbers.get(word)
    if value is None or total is None:
        return value
    if total >= 100 and total % 100 == 0 and 0 < value < 100:  # noqa: PLR2004
        return total + value
    if total % 100 >= 20 and total % 10 == 0 and 0 < value < 10:  # noqa: PLR2004
        return total + value
    return None
