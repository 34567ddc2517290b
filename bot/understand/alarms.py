"""Pain, falls, warning signs and words of self-harm in a text, and denials of them. Pure.

Decides on the side of asking: a denial counts only where it stands straight before the word it
denies and nothing after takes it back. Words of self-harm count even where denied.
"""

from bisect import bisect_left
from dataclasses import dataclass

from bot.understand.tokens import Token
from bot.understand.vocabulary import Match, Vocabulary

# Keys of the warning signs (H1), and what follows from them. "emergency" is a call for help that
# names no sign; "sore" is logged only.
EMERGENCIES = frozenset(
    (
        *("chest", "faint", "breath", "one-side-weak", "head-knock", "no-weight"),
        *("back-weak-legs", "face-speech", "cannot-get-up", "emergency"),
    )
)
CRISES = frozenset({"self-harm"})
SIGNS = (
    *("chest", "faint", "breath", "one-side-weak", "face-speech", "head-knock", "no-weight"),
    *("back-weak-legs", "cannot-get-up", "emergency", "self-harm", "sudden-back", "groin-thigh"),
    *("foot-shin-spot", "calf", "dizzy", "leak", "eye"),
)
_GROUPS = frozenset({"pain", "fall", *(f"sign-{sign}" for sign in SIGNS)})
_CALM = ("pain", "fall", "body", *SIGNS)
# How far back from a word its denial is looked for, and how far from a part of the body the word
# that all is well with it, in tokens.
_REACH = 6


@dataclass(frozen=True, slots=True)
class Alarms:
    """What was found. `denies`: pain, a fall or a sign was denied ("no pain today").

    `words` are the places of the tokens that spoke of it, `denials` those from the denying word up
    to what it denies.
    """

    pain: bool
    fall: bool
    signs: tuple[str, ...]
    denies: bool
    words: frozenset[int]
    denials: frozenset[int]

    @property
    def any(self) -> bool:
        """Whether something must be asked or done."""
        return self.pain or self.fall or bool(self.signs)


def find_alarms(tokens: list[Token], vocabulary: Vocabulary) -> Alarms:
    """All mentions of pain, falls and signs in `tokens`."""
    found = _uncalmed(tokens, vocabulary)
    denied, denials = _denied(found, tokens, vocabulary)
    meant = [m for m in found if m not in denied]
    groups = {m.group for m in meant}
    signs = [sign for sign in SIGNS if f"sign-{sign}" in groups]
    sore, ache = vocabulary.words("sore"), vocabulary.words("ache")
    body = _speaks_of_the_body(tokens, denied, vocabulary)
    hurting = {t.text for m in meant for t in tokens[m.start : m.end]}
    if hurting & sore:
        signs.append("sore")
    return Alarms(
        pain="pain" in groups or bool(hurting & ache) or body,
        fall=bool(groups & {"fall", "sign-cannot-get-up"}),
        signs=tuple(signs),
        denies=bool(denied),
        words=frozenset(i for m in found for i in range(m.start, m.end)),
        denials=frozenset(denials),
    )


def _uncalmed(tokens: list[Token], vocabulary: Vocabulary) -> list[Match]:
    """Mentions that do not lie inside a harmless turn of phrase ("fell asleep")."""
    groups = frozenset(k for c in _CALM if (k := f"calm-{c}") in vocabulary.keys)
    calm: dict[str, list[Match]] = {}
    for match in vocabulary.find(tokens, groups):
        calm.setdefault(match.group.removeprefix("calm-"), []).append(match)
    covered = {
        kind: {i for m in matches for i in range(m.start, m.end)} for kind, matches in calm.items()
    }
    return [
        m
        for m in vocabulary.find(tokens, _GROUPS)
        if not covered.get(m.group.removeprefix("sign-"), set()).issuperset(range(m.start, m.end))
    ]


def _speaks_of_the_body(tokens: list[Token], denied: set[Match], vocabulary: Vocabulary) -> bool:
    """Whether a part of the body is spoken of otherwise than as well or in a plain count.

    A net for what the phrases do not know: "it went through my hip like a knife".
    """
    calm = {i for m in vocabulary.find(tokens, {"calm-body"}) for i in range(m.start, m.end)}
    greetings = {m.start for m in vocabulary.find(tokens, {"greeting"})}
    well = {i for i, t in enumerate(tokens) if t.text in vocabulary.words("well")} - greetings
    clauses = vocabulary.clauses(tokens)
    denying = {clauses[m.start] for m in denied}
    plain = vocabulary.words("plain") | vocabulary.words("unit") | vocabulary.words("part")
    counts: set[range] = set()
    for match in vocabulary.find(tokens, {"body"}):
        clause = clauses[match.start]
        if match.start in calm or clause in denying or clause in counts:
            continue
        if not well.isdisjoint(_near(match, clause)):
            continue
        if not _is_count(tokens[clause.start : clause.stop], plain):
            return True
        counts.add(clause)
    return False


def _near(match: Match, clause: range) -> range:
    """The places in its clause that are near enough to a part of the body to be about it.

    Dictation has no commas: "a knife through my hip and then we had a lovely lunch" is one clause.
    """
    return range(max(clause.start, match.start - _REACH), min(clause.stop, match.end + _REACH))


def _is_count(clause: list[Token], plain: frozenset[str]) -> bool:
    """Whether a clause that speaks of the body is a plain count: "10 heel drops"."""
    counted = any(t.value is not None for t in clause)
    return counted and all(t.value is not None or t.text in plain for t in clause)


def _denied(
    found: list[Match], tokens: list[Token], vocabulary: Vocabulary
) -> tuple[set[Match], set[int]]:
    """The mentions that are denied, lists ("no pain, falls or leaks") included; and by what."""
    denied: set[Match] = set()
    denials: set[int] = set()
    lifts = [m.start for m in vocabulary.find(tokens, {"lift"})]
    next_lifts = {m.start for m in vocabulary.find(tokens, {"lift-next"})}
    stops = [i for i, token in enumerate(tokens) if token.ends_sentence]
    commands = {
        m.end - 1 for m in vocabulary.find(tokens, {"skip", "later"}) if m.end > m.start + 1
    }
    for chain in _chains(found, tokens, vocabulary):
        first = chain[0]
        denial = _denial_before(first, tokens, vocabulary)
        if denial in commands:  # "hoy no me caí" may be two sentences
            continue
        end = chain[-1].end
        if denial is None or end in next_lifts or _lifted(end, lifts, stops):
            continue
        denials |= set(range(denial, first.start))
        joined = any(
            t.text in vocabulary.words("either") for t in tokens[first.start : chain[-1].end]
        )
        last = chain[-1].end if joined else first.end
        denied |= {m for m in chain if m.start < last and m.group != "sign-self-harm"}
    return denied, denials


def _chains(found: list[Match], tokens: list[Token], vocabulary: Vocabulary) -> list[list[Match]]:
    """Mentions grouped into lists: overlapping, or with only commas, "or" and the like between."""
    between = vocabulary.words("either") | vocabulary.words("list-filler")
    chains: list[list[Match]] = []
    reached = -1
    for match in sorted(found, key=lambda m: (m.start, m.end)):
        gap = tokens[reached : match.start] if reached >= 0 else []
        if reached >= 0 and all(t.text in between for t in gap):
            chains[-1].append(match)
        else:
            chains.append([match])
        reached = max(reached, match.end)
    return chains


def _denial_before(match: Match, tokens: list[Token], vocabulary: Vocabulary) -> int | None:
    """The place of the word that denies `match`, or None. What begins with "cannot" is not denied."""
    if tokens[match.start].text in vocabulary.words("cannot-words"):
        return None
    nouns = not any(t.text in vocabulary.words("verb") for t in tokens[match.start : match.end])
    none, none_between = vocabulary.words("none-words"), vocabulary.words("none-between")
    denials, between = vocabulary.words("not-words"), vocabulary.words("not-between")
    through_none = through_not = True
    for at in range(match.start - 1, max(0, match.start - _REACH) - 1, -1):
        token = tokens[at]
        if token.breaks:
            return None
        is_none = token.text in none or (token.value == 0 and not token.glued)
        if (through_none and nouns and is_none) or (through_not and token.text in denials):
            return at
        through_none = through_none and token.text in none_between
        through_not = through_not and token.text in between
        if not through_none and not through_not:
            return None
    return None


def _lifted(end: int, lifts: list[int], stops: list[int]) -> bool:
    """Whether the sentence goes on after `end` with what takes a denial back ("except my hip")."""
    lift, stop = bisect_left(lifts, end), bisect_left(stops, end)
    return lift < len(lifts) and (stop == len(stops) or lifts[lift] < stops[stop])
