"""What one language hears: word lists and phrases of `bot/text/hear_<language>.ftl`.

How phrases are written is told at the top of that file. Reading it is the only I/O here, once a
language.
"""

from collections.abc import Callable, Collection, Iterator
from dataclasses import dataclass
from functools import cache, cached_property
from importlib import resources
from itertools import product

from bot.understand.source import halves, lines_of, spelling_of
from bot.understand.spelling import Guesser
from bot.understand.tokens import Token

TEXT = resources.files("bot.text")
HEARD = sorted(each.name[5:-4] for each in TEXT.iterdir() if each.name.startswith("hear_"))
# The pseudo-locale hears English.
HEARS = {each: each for each in HEARD} | {"qps": "en"}
# Words in a gap, "..", of a phrase: enough for "chest feels a bit very tight".
MAX_GAP = 5
# Keys whose lines are lists of single words; all other keys hold phrases.
WORD_KEYS = frozenset(
    (
        *("innocent", "done", "unit", "plain", "doubt", "pointing", "plus", "part", "sore", "ache"),
        *(
            "verb",
            "limb",
            "well",
            "weak",
            "beating",
            "breathe",
            "bite",
            "wish",
            "none-words",
            "not-words",
            "cannot-words",
        ),
        *("none-between", "not-between", "either", "list-filler", "score-link", "ache-noun", "but"),
        *("answer-yes", "answer-no", "answer-none", "day-flexible", "day-today", "day-tomorrow"),
        *("day-every", "day-joiner"),
        *("companion-round", "companion-second", "companion-rep", "companion-none"),
        "companion-link",
        *("step-both", "step-first", "step-second", "step-ordinal", "step-point", "step-filler"),
    )
)
READ_BY_OTHERS = frozenset(("spell", "number", "number-and", "score-of"))
WORD_FAMILIES = ("month-", "weekday-", "away-")


class LanguageMissingError(ValueError):
    """No vocabulary for the language `language`."""

    def __init__(self, language: str) -> None:
        super().__init__(f"there is no vocabulary for the language {language!r} yet")
        self.language = language


@dataclass(frozen=True, slots=True)
class Match:
    """A phrase of `group` found in tokens `start` to `end` (not included), with its numbers."""

    group: str
    start: int
    end: int
    numbers: tuple[tuple[str, int], ...] = ()

    def number(self, slot: str) -> int:
        """The number in the slot `n`, `h` or `m`."""
        return dict(self.numbers)[slot]


# A phrase is a tuple of these: the words that fit, or the name of a slot, gap or edge.
Element = frozenset[str] | str
Phrase = tuple[Element, ...]
WordsOf = Callable[[str], frozenset[str]]


class Vocabulary:
    """One language's words, ready for matching. Built once, never changed."""

    def __init__(self, source: str) -> None:
        """Read Fluent `source`; ValueError names a key that cannot be read."""
        self._lines = lines_of(source)
        self._words: dict[str, frozenset[str]] = {}
        self.spelling = dict(spelling_of(self._lines["spell"]))
        self.longest_spelling = max(len(typed) for typed in self.spelling)
        self.numbers: dict[str, int] = {}
        self.multipliers: dict[str, int] = {}
        self.doubtful_numbers: set[str] = set()
        for line in self._lines["number"]:
            self._read_number(line)
        self._joiners = {word: int(size) for word, size in map(halves, self._lines["number-and"])}
        self._index: dict[str, dict[str, list[Phrase]]] = {}  # by first word, then by key
        self._telling: set[str] = set()
        words: set[str] = set()
        for key in self._lines:
            if key in WORD_KEYS or key.startswith(WORD_FAMILIES):
                words |= self.words(key)
            elif key.startswith("say-"):
                self._compile(key)
            elif key not in READ_BY_OTHERS and not key.startswith("hours-"):
                words |= self._compile(key)
        typed = {word for slip in self.spelling for word in slip}
        numbers = self.numbers.keys() | self.multipliers.keys()
        self.known = frozenset(words | typed | numbers | self._joiners.keys())
        telling = self._telling | self.words("ache")
        numbers = {w for w in self.numbers if w not in self.doubtful_numbers}
        self.guess = Guesser(self.known, self.words("innocent"), telling, numbers).guess

    def _read_number(self, line: str) -> None:
        word, value = halves(line)
        if value.startswith("*"):
            self.multipliers[word] = int(value[1:])
            return
        self.numbers[word] = int(value.rstrip("?"))
        if value.endswith("?"):
            self.doubtful_numbers.add(word)

    def _compile(self, key: str) -> set[str]:
        """Index the phrases of `key` by their first word; the words they hold."""
        words: set[str] = set()
        for line in self._lines[key]:
            for phrase in _variants(line, self.words):
                real = next(e for e in phrase if e != "^")
                for first in (real,) if isinstance(real, str) else real:
                    self._index.setdefault(first, {}).setdefault(key, []).append(phrase)
                words.update(*(e for e in phrase if isinstance(e, frozenset)))
                if isinstance(real, frozenset) and len(phrase) == 1 and not key.startswith("say-"):
                    self._telling |= real
        return words

    def words(self, key: str) -> frozenset[str]:
        """The single words listed under `key`."""
        if key not in self._words:
            self._words[key] = frozenset(w for line in self._lines[key] for w in line.split())
        return self._words[key]

    def lines(self, key: str) -> tuple[str, ...]:
        """What is listed under `key`, line by line."""
        return tuple(self._lines[key])

    @cached_property
    def keys(self) -> tuple[str, ...]:
        """Every key, in the order of the file."""
        return tuple(self._lines)

    def joins(self, word: str, total: int) -> bool:
        """Whether `word` ("and") joins a smaller number word to `total`."""
        size = self._joiners.get(word)
        return size is not None and total % size == 0

    def find(self, tokens: list[Token], groups: Collection[str]) -> list[Match]:
        """Every match of a phrase of `groups`, in the order of the text; they may overlap."""
        found: list[Match] = []
        for at, token in enumerate(tokens):
            for start in (token.text, *(_SLOTS if token.value is not None else ())):
                for group, phrases in self._index.get(start, {}).items():
                    if group in groups:
                        matches = (self._match(group, each, tokens, at) for each in phrases)
                        found.extend(match for match in matches if match)
        return found

    def pick(self, tokens: list[Token], groups: Collection[str]) -> list[Match]:
        """Matches of `groups` that do not overlap: the first, and of those the longest, win.

        Of equally long ones the group named first in the file wins.
        """
        picked: list[Match] = []
        best = sorted(self.find(tokens, groups), key=lambda m: (m.start, -m.end))
        for match in best:
            if not picked or match.start >= picked[-1].end:
                picked.append(match)
        return picked

    def _match(self, group: str, phrase: Phrase, tokens: list[Token], at: int) -> Match | None:
        if phrase[0] == "^":
            if at and not self.starts_clause(tokens, at):
                return None
            phrase = phrase[1:]
        numbers: list[tuple[str, int]] = []
        end = self._end(phrase, 0, tokens, at, numbers)
        return None if end is None else Match(group, at, end, tuple(numbers))

    def _end(
        self,
        phrase: Phrase,
        step: int,
        tokens: list[Token],
        at: int,
        numbers: list[tuple[str, int]],
    ) -> int | None:
        """Where the phrase from `step` on ends when it goes on at token `at`, or None."""
        while step < len(phrase):
            element = phrase[step]
            if element == "$":
                if at < len(tokens) and not self.ends_clause(tokens[at]):
                    return None
                step += 1
                continue
            if element == "..":
                return self._after_gap(phrase, step + 1, tokens, at, numbers)
            if at >= len(tokens):
                return None
            token = tokens[at]
            if isinstance(element, frozenset):
                if token.text not in element:
                    return None
            elif token.value is None:
                return None
            else:
                numbers.append((element, token.value))
            at, step = at + 1, step + 1
        return at

    def _after_gap(
        self,
        phrase: Phrase,
        step: int,
        tokens: list[Token],
        at: int,
        numbers: list[tuple[str, int]],
    ) -> int | None:
        for skipped in range(MAX_GAP + 1):
            taken = len(numbers)
            if (end := self._end(phrase, step, tokens, at + skipped, numbers)) is not None:
                return end
            del numbers[taken:]
            if at + skipped >= len(tokens) or tokens[at + skipped].ends_sentence:
                return None
        return None

    def starts_clause(self, tokens: list[Token], at: int) -> bool:
        """Whether a clause starts at token `at`."""
        return at == 0 or self.ends_clause(tokens[at - 1])

    def ends_clause(self, token: Token) -> bool:
        """Whether `token` stands between two clauses: punctuation or "but"."""
        return token.breaks or token.text in self.words("but")

    def clauses(self, tokens: list[Token]) -> list[range]:
        """For every token the places of its clause; of a token between two, its own."""
        found: list[range] = []
        start = 0
        for at, token in enumerate(tokens):
            if self.ends_clause(token):
                found.extend([range(start, at)] * (at - start))
                found.append(range(at, at + 1))
                start = at + 1
        found.extend([range(start, len(tokens))] * (len(tokens) - start))
        return found


_SLOTS = ("n", "h", "m")
_NO_WORDS = ("^", "$", "..")


def _variants(line: str, words: WordsOf) -> Iterator[Phrase]:
    """The phrases one line stands for: with and without each "word?"."""
    choices: list[tuple[tuple[Element, ...], ...]] = []
    for part in line.split():
        bare = part.removesuffix("?") if len(part) > 1 else part
        elements = tuple((element,) for element in _elements(bare, words))
        choices.append((*elements, ()) if bare != part else elements)
    for chosen in product(*choices):
        phrase = tuple(element for some in chosen for element in some)
        if any(e not in _NO_WORDS for e in phrase):
            yield phrase


def _elements(part: str, words: WordsOf) -> tuple[Element, ...]:
    """What may stand at one place: a slot each, and all words together."""
    if part in _NO_WORDS:
        return (part,)
    slots: list[Element] = []
    fitting: set[str] = set()
    for each in part.split("|"):
        name = each[1:-1] if each.startswith("<") and each.endswith(">") else ""
        if name in _SLOTS:
            slots.append(name)
        else:
            fitting |= words(name) if name else {each}
    return (*slots, frozenset(fitting)) if fitting else tuple(slots)


@cache
def vocabulary(language: str) -> Vocabulary:
    """The vocabulary that hears `language`; LanguageMissingError where there is none."""
    if language not in HEARS:
        raise LanguageMissingError(language)
    file = TEXT / f"hear_{HEARS[language]}.ftl"
    return Vocabulary(file.read_text(encoding="utf-8"))
