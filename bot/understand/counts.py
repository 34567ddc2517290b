"""How many repetitions a text says were done, and what pain score. Pure.

A number counts only where everything beside it in its clause is understood: "12 jacks" counts,
"12 pills" does not, and "12 zumbas" is asked back. So is whatever could be two things.
"""

from dataclasses import dataclass

from bot.understand.alarms import Alarms
from bot.understand.tokens import Token
from bot.understand.vocabulary import Match, Vocabulary

# P4: outside of these a number is asked back.
LEAST, MOST = 1, 500
WORST_PAIN = 10
_PHRASES = (
    *(
        "score-not",
        "score",
        "count-range",
        "count-of",
        "count-left-right",
        "count-label",
        "count-other",
    ),
    *(
        "count-half",
        "count-vague",
        "count-yes",
        "not-done",
        "not-all",
        "count-all",
        "count-each",
        "other-day",
    ),
)
# Marks that may stand straight before or after a count.
_HARMLESS = frozenset(".,!?;\n:+=~&@-")


@dataclass(frozen=True, slots=True)
class Counts:
    """What was said about how much was done.

    `reps`: the number as said; per side where `per_side`. `all`, `half`: of the bout asked.
    `asks`: something was said that must be asked back; `reps` is then None. `nothing`: said to be
    not done. `firm`: a word of doing stands beside the number, so that "did 10, rest later" is a
    log.
    """

    reps: int | None = None
    per_side: bool = False
    all: bool = False
    half: bool = False
    score: int | None = None
    asks: bool = False
    nothing: bool = False
    firm: bool = False


def find_counts(
    tokens: list[Token], used: frozenset[int], alarms: Alarms, vocabulary: Vocabulary
) -> Counts:
    """What `tokens` say was done. `used` are the places that told times."""
    return _Reading(tokens, used, alarms, vocabulary).counts()


class _Reading:
    """One text being read for counts."""

    def __init__(
        self, tokens: list[Token], used: frozenset[int], alarms: Alarms, words: Vocabulary
    ) -> None:
        self.tokens, self.used, self.alarmed, self.words = tokens, used, alarms.words, words
        self.meant = alarms.words if alarms.any else frozenset()
        self.clauses = words.clauses(tokens)
        self.found: dict[str, list[Match]] = {}
        taken = set(used | alarms.denials)
        matches = words.find(tokens, frozenset(_PHRASES))
        order = {group: rank for rank, group in enumerate(_PHRASES)}
        for match in sorted(matches, key=lambda m: (order[m.group], m.start, -m.end)):
            places = set(range(match.start, match.end))
            if not places & taken:
                taken |= places
                self.found.setdefault(match.group, []).append(match)
        self.taken = taken
        self.plain = words.words("plain") | words.words("unit") | words.words("done")

    def counts(self) -> Counts:
        score, score_unclear = self._score()
        if self.found.get("count-range") or self.found.get("score-not"):
            return Counts(score=score, asks=True)
        sides = self.found.get("count-left-right", [])
        if sides:
            return self._sides(sides, score)
        numbers = self._numbers()
        if not numbers:
            return self._without_number(score, asks=score_unclear)
        doubtful = self.words.find(self.tokens, {"score-doubt"})
        doubtful = [m for m in doubtful if m.end - 1 not in self.taken]
        doubtful = [m for m in doubtful if m.start in numbers and m.number("n") <= WORST_PAIN]
        if doubtful or self.found.get("count-half"):
            return Counts(score=score, asks=True)
        reps, places = self._one(numbers)
        asks = score_unclear or reps is None or not LEAST <= reps <= MOST
        if reps is None or asks or not all(self._counts(at) for at in places):
            return Counts(score=score, asks=True)
        each = bool(self.found.get("count-each"))
        return Counts(reps=reps, per_side=each, score=score, firm=self._firm(places[0]))

    def _score(self) -> tuple[int | None, bool]:
        """The pain score, and whether one was said that cannot be taken."""
        told = [m for m in self.found.get("score", []) if not self._is_pronoun(m)]
        scores = {m.numbers[0][1] for m in told}
        if not scores:
            return None, False
        score = scores.pop()
        if scores or score > WORST_PAIN or any(self._is_negative(m) for m in told):
            return None, True
        ends = {m.end for m in told}
        after = [t.text for t in self.tokens[max(ends) : max(ends) + 2]]
        fraction = len(after) == 2 and after[0] in {".", ",", "-", "/"} and after[1].isdecimal()  # noqa: PLR2004
        touching = all(t.glued for t in self.tokens[max(ends) : max(ends) + 2])
        of_ten = after == ["/", str(WORST_PAIN)]  # "my hip hurts 7/10"
        return (None, True) if fraction and touching and not of_ten else (score, False)

    def _is_pronoun(self, match: Match) -> bool:
        """Whether the number is one of "not one bit"."""
        return any(t.doubtful for t in self.tokens[match.start : match.end])

    def _is_negative(self, match: Match) -> bool:
        """Whether a minus touches the score: "pain -1"."""
        at = next(i for i in range(match.start, match.end) if self.tokens[i].value is not None)
        return at > 0 and self.tokens[at - 1].text == "-" and self.tokens[at].glued

    def _sides(self, sides: list[Match], score: int | None) -> Counts:
        numbers = {value for match in sides for _, value in match.numbers}
        reps = numbers.pop()
        if numbers or not LEAST <= reps <= MOST or self._numbers():
            return Counts(score=score, asks=True)
        return Counts(reps=reps, per_side=True, score=score, firm=True)

    def _without_number(self, score: int | None, *, asks: bool) -> Counts:
        asks = asks or bool(self.found.get("count-vague") or self.found.get("count-label"))
        if self.found.get("not-done"):
            return Counts(score=score, nothing=True, asks=asks)
        half = any(self._is_report(m) for m in self.found.get("count-half", []))
        every = any(self._is_report(m) for m in self.found.get("count-all", []))
        if asks or (half and "?" in self._marks()):
            return Counts(score=score, asks=True)
        if half:
            return Counts(half=True, score=score)
        if self.found.get("count-yes") and not every:
            return Counts(score=score, asks=True)
        return Counts(all=every, score=score, asks=every and "?" in self._marks())

    def _marks(self) -> set[str]:
        return {t.text for t in self.tokens if not t.is_word}

    def _numbers(self) -> list[int]:
        """Places of numbers that nothing else has explained."""
        places = []
        for at, token in enumerate(self.tokens):
            if token.value is None or at in self.taken:
                continue
            if token.doubtful and not self._is_surely_a_count(at):
                continue
            places.append(at)
        for match in self.found.get("count-of", []):
            done, of = (v for _, v in match.numbers)
            if of != WORST_PAIN and done <= of:
                places.append(match.start)
            else:
                places.extend((match.start, match.end - 1))
        return sorted(places)

    def _is_surely_a_count(self, at: int) -> bool:
        """Whether "one" counts here: not "that one hurts", but "did one" and "one rep"."""
        if at and self.tokens[at - 1].text in self.words.words("pointing"):
            return False
        after = self.tokens[at + 1] if at + 1 < len(self.tokens) else None
        if after is None or self.words.ends_clause(after) or at + 1 in self.used:
            return at == 0 or self.tokens[at - 1].text in self.plain or self.tokens[at - 1].breaks
        if after.text in self.words.words("part") and not self._firm(at):
            return False  # "one leg is fatter than the other"
        return after.text in self.words.words("unit") or after.text in self.words.words("plus")

    def _one(self, numbers: list[int]) -> tuple[int | None, list[int]]:
        """The one number meant, sums added up, and the places that make it; None where unclear."""
        total, last = self.tokens[numbers[0]].value or 0, numbers[0]
        summands = [numbers[0]]
        for at in numbers[1:]:
            between = [t.text for t in self.tokens[last + 1 : at]]
            value = self.tokens[at].value or 0
            if len(between) == 1 and between[0] in self.words.words("plus"):
                total, last = total + value, at
                summands.append(at)
            elif between == ["="] and value == total and len(summands) > 1:
                last = at
            else:
                return None, numbers
        return total, summands

    def _clause(self, at: int) -> range:
        return self.clauses[at]

    def _is_report(self, match: Match) -> bool:
        """Whether "all" or "half" is all that its clause says."""
        if self.alarmed.issuperset(range(match.start, match.end)) or self._doubted(match.start):
            return False
        alarmed = not self.meant.isdisjoint(self._clause(match.start))
        if alarmed and match.end == match.start + 1 and not self._firm(match.start):
            return False  # "went all faint"
        return self._understood(match.start)

    def _doubted(self, at: int) -> bool:
        doubts = self.words.words("doubt")
        return any(self.tokens[i].text in doubts for i in self._clause(at) if i not in self.taken)

    def _counts(self, at: int) -> bool:
        """Whether the number at `at` can be taken as a count, from what stands around it."""
        clause = self._clause(at)
        if self._doubted(at):
            return False
        if any(m.start in clause for m in self.found.get("not-done", [])):
            return False
        edges = (clause.start - 1, clause.stop)
        if any(self.tokens[i].text == "?" for i in edges if 0 <= i < len(self.tokens)):
            return False
        return self._beside(at) and (self._near(at) or self._understood(at))

    def _beside(self, at: int) -> bool:
        """Whether the marks and letters touching the number leave it a plain number."""
        before = self.tokens[at - 1] if at else None
        after = self.tokens[at + 1] if at + 1 < len(self.tokens) else None
        later = self.tokens[at + 2] if at + 2 < len(self.tokens) else None
        earlier = self.tokens[at - 2] if at > 1 else None
        touching = self.tokens[at].glued
        if before is not None and self._spoils(before, touching=touching):
            return False
        joined = before is not None and touching and before.glued and not before.is_word
        if before is not None and joined and earlier is not None and earlier.value is not None:
            return before.text in self.words.words("plus") or before.text == "="
        if after is None or not after.glued:
            return True
        if later is not None and later.glued and later.value is not None and not after.is_word:
            return after.text in self.words.words("plus")  # "12.5", "10/3", but "10+3"
        return not self._spoils(after, touching=True) or after.text == "-"

    def _spoils(self, mark: Token, *, touching: bool) -> bool:
        if mark.is_word:
            return touching and not self._known(mark)
        if mark.value is not None:
            return False
        return mark.text.isascii() and (
            mark.text not in _HARMLESS or (touching and mark.text == "-")
        )

    def _known(self, token: Token) -> bool:
        return token.text in self.plain or token.text in self.words.known

    def _near(self, at: int) -> bool:
        """Whether the words next to the number make it a count, however the clause goes on."""
        clause = self._clause(at)
        right = at + 1
        doer = next((i - 1 for i in clause if self.tokens[i].text in self.words.words("done")), at)
        if doer in clause and not self._explained(doer):
            return False  # "my grandson did 20"
        unit = self.words.words("unit")
        after_unit = right in clause and self.tokens[right].text in unit
        right_ok = right not in clause or self._explained(right)
        left_ok = at - 1 not in clause or self._explained(at - 1)
        return right_ok and left_ok and (after_unit or self._firm(at))

    def _firm(self, at: int) -> bool:
        """Whether a word of doing stands at most three words from the number."""
        clause = self._clause(at)
        near = self.tokens[max(clause.start, at - 3) : min(clause.stop, at + 4)]
        return any(token.text in self.words.words("done") for token in near)

    def _explained(self, at: int) -> bool:
        token = self.tokens[at]
        return (
            not token.is_word
            or token.text in self.plain
            or at in self.alarmed
            or at in self.taken
            or token.text in self.words.words("plus")
            or self._is_what_hurts(at)
        )

    def _is_what_hurts(self, at: int) -> bool:
        """Whether it is a part of the body that hurts: "10 my hip hurts", not "2 hips hurt"."""
        part = bool(self.meant) and self.tokens[at].text in self.words.words("part")
        return part and (at == 0 or self.tokens[at - 1].value is None)

    def _understood(self, at: int) -> bool:
        """Whether every word of the clause around `at` is understood."""
        return all(self._explained(i) for i in self._clause(at))
