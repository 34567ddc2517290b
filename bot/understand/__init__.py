"""What a typed text means: `understand(text, language)` gives an `Intent`. Pure.

The order of the faults to avoid (worst first): to miss a mention of pain, a fall or a sign; to
count a number wrongly; to ask once too often. Rules made here (ours):

- `kind` is "fall" where a fall is mentioned, else "pain" where pain or any warning sign is, words
  of self-harm included; a number in the same text is still read, so it can be logged.
- `reps` is the number as said. With `per_side` it is the number for one side ("10 each side" is
  10), in a per-side plan's own counting unit.
- Soreness mentions pain and has the sign "sore", which is logged only and is no `warning`.
- A pain score is never `reps`. "5/10" without a word of pain is asked back.
- "tomorrow" is a skip that is asked back: reps are never carried to another day.
- A bare "yes" is asked back: it may answer the prompt or promise.
- In a wish for a break the numbers of days and dates count nothing: "away from the 12th for 10 days".
"""

from dataclasses import dataclass, replace

from bot.understand.alarms import CRISES, EMERGENCIES, Alarms, find_alarms
from bot.understand.counts import Counts, find_counts
from bot.understand.dates import numbers_of_days
from bot.understand.times import Times, find_times
from bot.understand.tokens import Token, tokenise
from bot.understand.vocabulary import HEARS, LanguageMissingError, Vocabulary, vocabulary

__all__ = ["HEARS", "Intent", "LanguageMissingError", "understand"]

# More words than this is no report of a count; alarms are looked for in all of it.
_LONGEST_REPORT = 300


@dataclass(frozen=True, slots=True)
class Intent:
    """What a text would be taken for. The fields up to `asks` are the outer interface.

    `kind`: log, skip, later, undo, pain, fall, break, help or unknown. `minutes`: asked wait.
    `at`: "HH:MM" wall clock in the client's zone; with kind "log" the time it was done.
    `day`: "today" or "yesterday". `score`: 0 to 10. `asks`: would be asked back before it counts;
    `reps` is then None. `signs`: keys of the warning signs found, most urgent first. `at_either`:
    `at` could be twelve hours later as well. `denies`: pain, a fall or a sign was denied and none
    mentioned.
    """

    kind: str = "unknown"
    reps: int | None = None
    per_side: bool = False
    all: bool = False
    minutes: int | None = None
    at: str | None = None
    day: str = "today"
    mentions_pain: bool = False
    score: int | None = None
    warning: bool = False
    fall: bool = False
    emergency: bool = False
    crisis: bool = False
    half: bool = False
    asks: bool = False
    signs: tuple[str, ...] = ()
    at_either: bool = False
    denies: bool = False


def understand(text: str, language: str = "en") -> Intent:
    """What `text` would be taken for in `language`. Raises for no text whatever.

    LanguageMissingError where there is no vocabulary for the language.
    """
    words = vocabulary(language)
    tokens = tokenise(text, words)
    alarms = find_alarms(tokens, words)
    if len(tokens) > _LONGEST_REPORT:
        said = Counts(asks=any(t.value is not None for t in tokens))
        return _intent(alarms, Times(), said, _Commands(tokens[:0], words))
    commands = _Commands(tokens, words)
    if commands.rest:
        when = numbers_of_days(tokens, words)
        tokens = [replace(t, value=None) if n in when else t for n, t in enumerate(tokens)]
    times = find_times(tokens, words)
    said = find_counts(tokens, times.words, alarms, words)
    return _intent(alarms, *_settled(times, said, alarms), commands)


class _Commands:
    """The plain commands a text holds."""

    def __init__(self, tokens: list[Token], words: Vocabulary) -> None:
        groups = ("skip", "later", "undo", "break", "help", "not-break", "tomorrow", "yesterday")
        found = words.find(tokens, {*groups, "other-day"})
        harmless = {i for m in found if m.group == "not-break" for i in range(m.start, m.end)}
        names = {m.group for m in found if m.group != "break" or m.start not in harmless}
        self.skip, self.later = "skip" in names, "later" in names
        self.undo, self.rest = "undo" in names, "break" in names
        self.tomorrow, self.other_day = "tomorrow" in names, "other-day" in names
        self.yesterday = "yesterday" in names
        self.done = any(t.text in words.words("done") for t in tokens)
        # "help" with words of anything else may be a call for help: not a command
        asking = [m for m in found if m.group == "help"]
        bare = {m.start for m in asking if m.end == m.start + 1}
        fitting = words.words("plain") if bare else words.known
        polite = all(t.text in fitting or i in bare for i, t in enumerate(tokens) if t.is_word)
        self.help = (bool(asking) and polite) or [t.text for t in tokens] == ["?"]


def _settled(times: Times, said: Counts, alarms: Alarms) -> tuple[Times, Counts]:
    """Times that are only times where nothing was done or hurts: otherwise asked about."""
    reported = said.reps is not None or said.asks or said.all or said.half
    if times.weak and alarms.any:
        return Times(), Counts(score=said.score, asks=True)
    if times.minutes is not None and (said.all or said.half):
        return Times(), Counts(score=said.score, asks=True)  # "10 minutes done"
    if times.minutes is not None and (reported or alarms.any):
        return Times(), said
    return times, said


def _intent(alarms: Alarms, times: Times, said: Counts, commands: _Commands) -> Intent:
    kind, asks = _kind(alarms, times, said, commands)
    asks = asks or said.asks or times.unclear
    signs = frozenset(alarms.signs)
    score_denies = said.score == 0 and not signs - {"sore"} and not alarms.fall
    return Intent(
        kind=kind,
        reps=None if asks else said.reps,
        per_side=said.per_side and not asks,
        all=said.all and not asks and kind in {"log", "pain", "fall"},
        half=said.half and not asks and kind in {"log", "pain", "fall"},
        minutes=times.minutes,
        at=times.at,
        at_either=times.either,
        day="yesterday" if commands.yesterday else "today",
        mentions_pain=alarms.pain and not score_denies,
        score=said.score,
        warning=bool(signs - {"sore"}),
        fall=alarms.fall,
        emergency=bool(signs & EMERGENCIES),
        crisis=bool(signs & CRISES),
        asks=asks,
        signs=alarms.signs,
        denies=(alarms.denies and not alarms.any) or score_denies,
    )


def _kind(alarms: Alarms, times: Times, said: Counts, commands: _Commands) -> tuple[str, bool]:
    """The kind, and whether that alone must be asked back."""
    number = said.reps is not None
    asked = commands.other_day and (number or said.all or said.half)
    if alarms.fall:
        return "fall", asked
    if alarms.signs or (alarms.pain and said.score != 0):
        return "pain", asked
    if commands.undo:
        return "undo", number or said.asks
    if commands.help and not number:
        return "help", False
    return _report_or_wish(times, said, commands, asked)


def _report_or_wish(
    times: Times, said: Counts, commands: _Commands, asked: bool
) -> tuple[str, bool]:
    number = said.reps is not None
    waits = times.any or times.unclear or commands.later
    if number and not said.firm and (waits or commands.skip or commands.tomorrow):
        return "skip" if commands.skip else "log", True
    if number or ((said.all or said.half) and not times.any and not commands.skip):
        return "log", asked
    if commands.skip or (said.nothing and not waits):
        return "skip", not commands.skip
    return _wish(said, commands, waits=waits)


def _wish(said: Counts, commands: _Commands, *, waits: bool) -> tuple[str, bool]:
    if commands.rest and not (said.asks and commands.done):
        return "break", False
    if commands.tomorrow:
        return "skip", True
    if waits:
        return "later", False
    return ("log" if said.asks else "unknown"), False
