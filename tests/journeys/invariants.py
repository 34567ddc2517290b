"""I1 to I6 of the specification, asserted over the message log of a journey.

A second implementation of the rules, on purpose simple: it replays what the platform took, believes what
the test says it did, and reads nothing of the program's but the ledger.
"""

from collections import Counter, defaultdict
from collections.abc import Sequence
from datetime import date, datetime, time, timedelta
from itertools import pairwise
from math import ceil

from scheduler.domain.companions import CATALOGUE
from tests.journeys.facts import Asked, Facts, Row
from tests.journeys.log import Line, Said

OWN_ACCORD = {
    *("prompt", "day-opening", "safety", "nudge", "no-answer", "away", "plan-told", "how-to"),
    *("release-told", "held-by-clinician", "ask-morning", "no-answer-so-stopped"),
    *("week-days", "make-up", "week-no-room", "ask-week", "ask-companion"),
    *("break-by-clinician", "break-ended-by-clinician", "lapsed", "plan-ended", "cleared-told"),
}
"""What the bot says unasked to a client; everything else answers something she did."""
ONE_TAP = timedelta(minutes=1)
ON_ITS_WAY = timedelta(seconds=5)
"""I6: the client's safety message and the clinician's flag."""
ASKS_A_BOUT = 4
NUDGES_A_DAY = 2
SPARE_MESSAGES = 2
LOAD = 0.2


def _same_tap(before: Line, line: Line) -> bool:
    """Whether one button was pressed twice with nothing between."""
    pressed = (before.message_id, before.data) == (line.message_id, line.data)
    return bool(line.data) and pressed and line.at < before.at + ONE_TAP


class Replay:
    """One client's chat from the first line to the last; `faults` are the sentences of what is wrong."""

    within = ON_ITS_WAY

    def __init__(self, facts: Facts, lines: Sequence[Line], ledger: Sequence[Row]) -> None:
        self.facts, self.ledger = facts, ledger
        self.lines = [line for line in lines if line.chat == facts.account]
        self.flags = [line for line in lines if line.chat == facts.clinician and line.get("flag")]
        self.said = {f"u{line.update}": line.n for line in self.lines if not line.bot}
        self.faults: list[str] = []
        self.asked: dict[int, Asked] = {}
        self.bout_of_message: dict[int, int] = {}
        self.logged: dict[int, int | None] = {}
        """The bout, if any, that a message of hers logged."""
        hers = [line for line in self.lines if not line.bot]
        self.repeats = {after.n for before, after in pairwise(hers) if _same_tap(before, after)}
        """Lines that get no second answer (P5)."""
        self.waiting: list[Line] = []
        self.answers: list[tuple[Line, Line]] = []
        self.reopened: set[int] = set()
        self.asks = 1
        self.put_off = False
        self.question: int | None = None
        self.held_since: datetime | None = None
        self.held_all = False
        self.alarm = False
        self.away_until: date | None = None
        self.ahead: dict[str, str] = {}
        """Breaks told for a later day: first day to last day."""
        self.own: Counter[date] = Counter()
        self.nudged: Counter[int] = Counter()
        self.nudges: Counter[date] = Counter()
        self.planned: dict[date, int] = {}

    def fault(self, rule: str, line: Line, what: str) -> None:
        self.faults.append(f"{rule}: {self.facts.name}, {line.at.isoformat()}: {what}")

    def run(self) -> list[str]:
        for line in self.lines:
            if not line.bot:
                if line.n not in self.repeats:
                    self.waiting.append(line)
                continue
            if not line.texts:
                continue
            update = None
            if line.ids[0] not in OWN_ACCORD and self.waiting:
                update = self.waiting.pop(0)
                self.answers.append((update, line))
            for each in line.texts:
                self.see(each, line, update)
        self.at_the_end()
        return self.faults

    # --- what each text changes ---

    def see(self, said: Said, line: Line, update: Line | None) -> None:
        match said.id:
            case "day-opening":
                self.opening(said.args["bouts"], said.args["reps"], line)
            case "prompt":
                self.prompt(said, line)
            case "nudge":
                self.nudge(said, line)
            case (
                "week-days" | "make-up" | "week-no-room" | "ask-week" | "ask-companion" | "how-to"
            ) if update is None:
                self.own[self.facts.day(line.at)] += line.texts[0] is said and not line.edit
                of_companion = said.args.get("exercise") in CATALOGUE
                self.may_ask(line, of_movement=said.id != "ask-companion" and not of_companion)
            case "away":
                self.own[self.facts.day(line.at)] += 1
            case "no-answer":
                self.end(said.args["bout"], line, "no-answer")
            case "undone":  # the prompt whose answer was taken back may be open again
                self.reopened |= {a.bout for a in self.asked.values() if a.ended_by == "logged"}
            case "ask-reps" | "ask-reps-sure" | "ask-reps-range" | "ask-reps-unclear":
                self.question = self.meant(update)
            case "logged" | "skipped" | "put-off":
                self.answered(said, line, update)
                self.put_off = said.id == "put-off" or (self.put_off and said.id == "logged")
                self.asks = self.asks + 1 if said.id == "put-off" else self.asks
            case _:
                self.breaks(said, line)
                self.alarms(said, line, update)

    def answered(self, said: Said, line: Line, update: Line | None) -> None:
        bout = self.meant(update)
        self.end(bout, line, said.id)
        if update is not None and said.id == "logged" and not update.data:
            self.logged.setdefault(update.message_id, bout)

    def breaks(self, said: Said, line: Line) -> None:
        """A break withdraws what is open; until its last day, or until it is ended, nothing is asked."""
        if said.id in {"break-started", "break-by-clinician"}:
            self.end(self.open(), line, "alarm")
            until = said.args["until"]
            self.away_until = date.fromisoformat(until) if until else date.max
        elif said.id == "break-planned":
            first, last = said.args["day"], said.args["until"]
            self.ahead[first] = last or date.max.isoformat()
        elif said.id == "break-cancelled":
            del self.ahead[said.args["day"]]
        elif said.id in {"break-over", "break-ended-by-clinician"}:
            self.away_until = None
            today = self.facts.day(line.at).isoformat()
            self.ahead = {first: last for first, last in self.ahead.items() if first > today}

    def alarms(self, said: Said, line: Line, update: Line | None) -> None:
        if said.id.startswith(("ask-pain", "ask-fall", "ask-morning")):
            self.alarm = True
            self.end(self.open(), line, "alarm")
        elif said.id.startswith(("pain-", "fall-noted", "mistake-noted")):
            self.alarm = False  # and what was open when she spoke of it has been withdrawn
            self.end(self.open(), line, "alarm")
        elif said.id.startswith(("stop-", "held-by-clinician")):
            self.alarm = False
            self.held_since = self.held_since or line.at
            self.held_all = self.held_all or said.id != "stop-leak"
            self.end(self.open(), line, "alarm")
            self.told_at_once(said, line, update)
        elif said.id == "release-told":
            self.held_since, self.held_all = None, False

    def meant(self, update: Line | None) -> int | None:
        """The bout that an answer is about: its button's, the replied one's, the question's, the open one."""
        if update is None:
            return self.open()
        if update.edit and update.message_id in self.logged:
            return self.logged[update.message_id]  # it changes what that message said, nothing else
        verb, _, rest = update.data.partition(":")
        if verb in {"all", "few", "lat", "skp"}:
            return int(rest)
        if verb in {"n", "sure"}:
            return self.question
        return self.bout_of_message.get(update.reply_to or 0) or self.open()

    def open(self) -> int | None:
        return next((a.bout for a in self.asked.values() if a.ended is None), None)

    def end(self, bout: int | None, line: Line, by: str) -> None:
        asked = self.asked.get(bout or 0)
        if asked is not None and asked.ended is None:
            asked.ended, asked.ended_by = line, by

    def opening(self, bouts: int, reps: int, line: Line) -> None:
        """Bouts that were planned for the day: those to come, and those done before anything was asked."""
        day = self.facts.day(line.at)
        planned = bouts + ceil(self.done(day, line.n) / ceil(reps / bouts))
        self.planned[day] = max(self.planned.get(day, 0), planned)

    # --- what must hold when a prompt leaves ---

    def prompt(self, said: Said, line: Line) -> None:
        bout, reps, day = said.args["bout"], said.args["reps"], self.facts.day(line.at)
        if bout in self.asked:
            self.fault("R2", line, f"the prompt of bout {bout} was accepted twice")
        self.may_ask(line)
        self.in_hours(line, day)
        done = self.done(day, line.n)
        if said.args["done"] != done:
            self.fault("P1", line, f"says {said.args['done']} done, the ledger {done}")
        if done >= self.facts.total:
            self.fault("I1", line, "the total was reached")
        if done + reps > self.facts.total:
            self.fault("I3", line, f"asks {reps} with {done} done of {self.facts.total}")
        if reps > self.facts.bout_max:
            self.fault("S1", line, f"asks {reps} at once")
        self.asks = self.asks if self.put_off else 1
        if self.asks > ASKS_A_BOUT:
            self.fault("I4", line, f"asked {self.asks} times")
        self.own[day] += not self.put_off
        self.asked[bout] = Asked(bout, line.n, line.at, day, reps, self.put_off)
        self.put_off = False
        self.bout_of_message[line.message_id] = bout

    def nudge(self, said: Said, line: Line) -> None:
        bout = said.args["bout"]
        asked = self.asked.get(bout)
        day = asked.day if asked else self.facts.day(line.at)  # she may have flown to another one
        self.bout_of_message[line.message_id] = bout
        self.own[day] += 1
        self.nudged[bout] += 1
        self.nudges[day] += 1
        self.may_ask(line)
        if not line.silent:
            self.fault("P6", line, "a nudge that rings")
        if self.nudged[bout] > 1 or self.nudges[day] > NUDGES_A_DAY:
            self.fault("I4", line, "one nudge too many")
        if asked is None or (asked.ended is not None and bout not in self.reopened):
            self.fault("I4", line, f"a nudge for bout {bout}, which is not open")
        before = [a for a in self.asked.values() if a.day == day and a.bout != bout]
        if [a.ended_by for a in before[-2:]] == ["no-answer"] * 2:
            self.fault("P6", line, "a nudge after two silent prompts in a row")

    def may_ask(self, line: Line, *, of_movement: bool = True) -> None:
        """Whether anything may be asked; a leak stops the movement of the impact only (H3)."""
        facts = self.facts
        if facts.cleared_at is None or line.at < facts.cleared_at:
            self.fault("I1", line, "before clearance")
        if facts.discharged_at is not None and line.at >= facts.discharged_at:
            self.fault("I1", line, "after discharge")
        if self.held_since is not None and (self.held_all or of_movement):
            self.fault("I6", line, "during a hold")
        if self.away_until is not None and facts.day(line.at) <= self.away_until:
            self.fault("I1", line, "on a break")
        day = facts.day(line.at).isoformat()
        if any(first <= day <= last for first, last in self.ahead.items()):
            self.fault("I1", line, "on a break that was planned")
        if self.alarm:
            self.fault("I1", line, "while a question about pain or a fall is open")

    def in_hours(self, line: Line, day: date) -> None:
        facts = self.facts
        if not facts.hours_at(line.at).free(line.at):
            self.fault("I1", line, "outside the window, or in quiet time")
        if day.weekday() not in facts.weekdays and day not in facts.made_up:
            self.fault("I1", line, "on a rest day")
        for back in range(1, facts.rest_days + 1):
            if self.done(day - timedelta(days=back), line.n) > LOAD * facts.total:
                self.fault("I1", line, f"{back} days after a load day")

    # --- the ledger ---

    def standing(self, n: int) -> list[Row]:
        """The rows that had been said before the n-th line and not been taken back."""
        known = [row for row in self.ledger if self.said_before(row, n)]
        void = {row.voids for row in known}
        return [row for row in known if row.voids is None and row.id not in void]

    def said_before(self, row: Row, n: int) -> bool:
        return self.said.get(row.source.removesuffix(":void"), n) < n

    def done(self, day: date, n: int) -> int:
        return sum(row.reps for row in self.standing(n) if row.day == day)

    # --- over the whole log ---

    def told_at_once(self, said: Said, line: Line, update: Line | None) -> None:
        """I6: the safety message within 5 seconds of what caused it, and the flag of the episode."""
        if update is not None and line.at - update.at > self.within:
            self.fault("I6", line, "the safety message came late")
        since = (self.held_since or line.at) - self.within
        flagged = any(
            flag.args["client"] == self.facts.person and since <= each.at <= line.at + self.within
            for each in self.flags
            if (flag := each.get("flag"))
        )
        if (
            said.id not in {"held-by-clinician", "stop-leak"} and not flagged
        ):  # a leak is no hold (H1)
            self.fault("I6", line, "no flag on its way to the clinician")

    def at_the_end(self) -> None:
        for before, after in pairwise(self.asked.values()):
            ended = before.ended
            late = ended is None or ended.at > after.at
            if late and before.bout not in self.facts.unheard and not self.over(before, after.at):
                self.faults.append(f"I4: bouts {before.bout} and {after.bout} were open at once")
        self.gaps()
        for day, count in self.own.items():
            most = self.planned.get(day, 0) + SPARE_MESSAGES
            if count > most:
                self.faults.append(f"P6: {count} messages unasked on {day}, at most {most}")
        self.entries()

    def over(self, asked: Asked, at: datetime) -> bool:
        """Whether the day of a prompt has closed (Z2): after a flight east that may be within the hour."""
        noon = datetime.combine(asked.day + timedelta(days=1), time(12))
        return self.facts.hours_at(at).local(at).replace(tzinfo=None) >= noon

    def gaps(self) -> None:
        """I2, by the instants at which the platform took the prompts, also those of two days."""
        kept = [each for each in self.asked.values() if not each.withdrawn]
        for before, after in pairwise(kept):
            if after.at - before.at < self.facts.gap:
                self.faults.append(f"I2: {after.at - before.at} between two prompts")
        for each in kept:
            done = [row.at for row in self.standing(each.n)]
            if done and each.at - max(done) < self.facts.gap:
                self.faults.append(f"I2: a prompt {each.at - max(done)} after the last bout")

    def entries(self) -> None:
        """I5: an entry for each answer that says so, by that update, once; and nobody unanswered."""
        for update in [each for each in self.waiting if each.n not in self.repeats]:
            self.fault("I5", update, f"no answer to {update.words or update.data!r}")
        rows: dict[str, list[Row]] = defaultdict(list)
        for row in self.ledger:
            if row.voids is None:
                rows[row.source].append(row)
        for update, answer in self.answers:
            logged = answer.get("logged")
            found = [row.reps for row in rows[f"u{update.update}"]]
            if logged and found != [logged.args["reps"]]:
                self.fault("I5", answer, f"says {logged.args['reps']}, the ledger {found}")
        for source in rows:
            if source not in {f"u{update.update}" for update, _ in self.answers}:
                self.faults.append(f"I5: an entry by {source}, which was not answered")
        end = self.lines[-1].n + 1 if self.lines else 0
        for bout, count in Counter(row.bout for row in self.standing(end)).items():
            if bout is not None and count > 1:
                self.faults.append(f"I5: bout {bout} was logged {count} times")
