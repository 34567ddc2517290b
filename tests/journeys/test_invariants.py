"""The checker itself: a log that breaks a rule is found out, one that keeps them all is not."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from typing import Any

import pytest

from tests.journeys.everyone import strangers, twice
from tests.journeys.facts import Facts, Hours, Row
from tests.journeys.invariants import Replay
from tests.journeys.log import Line, Said

ANN, DANA = 11, 22
DAY = date(2027, 3, 8)
EARLY = datetime(2027, 3, 8, 5, tzinfo=UTC)
FACTS = Facts(
    "Ann", ANN, 7, DANA, 20, 10, 10, timedelta(hours=2), (0,), 0,
    [Hours(EARLY, "Europe/Lisbon", (480, 1200), ((720, 780),))], EARLY,
)  # fmt: skip


def at(clock: str) -> datetime:
    return datetime.combine(DAY, time.fromisoformat(clock), tzinfo=UTC)


def bot(clock: str, *texts: tuple[str, dict[str, Any]], chat: int = ANN) -> Line:
    said = tuple(Said(id_, dict(args)) for id_, args in texts)
    words = " ".join(str(each) for each in said)
    return Line(0, at(clock), True, chat, 0, said, words, silent=texts[0][0] == "nudge")


def prompt(clock: str, bout: int, done: int = 0, reps: int = 10) -> Line:
    opening = () if done else (("day-opening", {"bouts": 2, "reps": 20}),)
    return bot(clock, *opening, ("prompt", {"bout": bout, "done": done, "reps": reps}))


def nudge(clock: str, bout: int) -> Line:
    return bot(clock, ("nudge", {"bout": bout}))


def tap(clock: str, data: str, update: int) -> Line:
    return Line(0, at(clock), False, ANN, 0, (), "", update=update, data=data)


def done(clock: str, bout: int, update: int) -> list[Line]:
    return [tap(clock, f"all:{bout}", update), bot(clock, ("logged", {"reps": 10, "done": 10}))]


def no_answer(clock: str, bout: int) -> Line:
    return bot(clock, ("no-answer", {"bout": bout}))


def row(clock: str, update: int, bout: int | None = None) -> Row:
    return Row(update, DAY, 10, at(clock), f"u{update}", bout, None)


def found(log: Sequence[Line], ledger: Sequence[Row] = (), facts: Facts = FACTS) -> list[str]:
    """The rules that the checker says are broken."""
    numbered = [replace(line, n=n) for n, line in enumerate(log)]
    faults = Replay(replace(facts, unheard=set()), numbered, ledger).run()
    return sorted({fault.partition(":")[0] for fault in faults})


GOOD = [
    prompt("08:00", 1),
    *done("08:05", 1, 1),
    prompt("14:00", 2, done=10),
    no_answer("15:00", 2),
]
BOOKS = [row("08:05", 1, 1)]


def test_a_day_that_keeps_every_rule_has_no_faults() -> None:
    assert found(GOOD, BOOKS) == []


@pytest.mark.parametrize(
    ("clock", "rules"),
    [("07:59", ["I1"]), ("08:00", []), ("12:00", []), ("12:01", ["I1"]), ("12:59", ["I1"]),
     ("13:00", []), ("20:00", []), ("20:01", ["I1"])],
)  # fmt: skip
def test_a_prompt_outside_the_hours_is_found(clock: str, rules: list[str]) -> None:
    assert found([prompt(clock, 1)]) == rules


@pytest.mark.parametrize(
    "facts",
    [
        replace(FACTS, weekdays=(1,)),
        replace(FACTS, cleared_at=None),
        replace(FACTS, cleared_at=at("08:00:01")),
        replace(FACTS, discharged_at=at("08:00")),
    ],
)
def test_a_prompt_to_somebody_who_may_not_be_asked_is_found(facts: Facts) -> None:
    assert found([prompt("08:00", 1)], facts=facts) == ["I1"]


def test_a_prompt_the_day_after_a_load_day_is_found() -> None:
    resting = replace(FACTS, rest_days=1)
    said = Line(0, at("06:00"), False, ANN, 0, (), "yesterday 5", update=1)
    log = [said, bot("06:00", ("logged", {"reps": 5, "done": 5, "day": "2027-03-07"}))]
    for reps, rules in ((5, ["I1"]), (4, [])):
        log[1] = bot("06:00", ("logged", {"reps": reps, "done": reps}))
        books = [Row(1, DAY - timedelta(days=1), reps, at("06:00"), "u1", None, None)]
        assert found([*log, prompt("08:00", 1)], books, resting) == rules


def test_prompts_too_close_to_each_other_or_to_the_last_bout_are_found() -> None:
    assert found([prompt("08:00", 1), no_answer("09:59", 1), prompt("09:59", 2)]) == ["I2"]
    assert found([prompt("08:00", 1), no_answer("10:00", 1), prompt("10:00", 2)]) == []
    late = [prompt("08:00", 1), *done("09:00", 1, 1), prompt("10:59", 2, done=10)]
    assert found(late, [row("09:00", 1, 1)]) == ["I2"]


def test_a_prompt_that_asks_for_too_much_is_found() -> None:
    log = [prompt("08:00", 1), *done("08:05", 1, 1)]
    more = [tap("08:06", "n:10", 2), bot("08:06", ("logged", {"reps": 10, "done": 20}))]
    reached = [*BOOKS, row("08:06", 2)]
    assert found([*log, *more, prompt("14:00", 2, done=20)], reached) == ["I1", "I3"]
    assert found([*log, prompt("14:00", 2, done=10, reps=11)], BOOKS) == ["I3", "S1"]
    assert found([*log, prompt("14:00", 2, done=0)], BOOKS) == ["P1"]


def test_two_prompts_open_at_once_are_found() -> None:
    assert found([prompt("08:00", 1), prompt("14:00", 2), no_answer("14:01", 1)]) == ["I4"]


def test_a_fifth_asking_of_one_bout_is_found() -> None:
    log: list[Line] = []
    for n, clock in enumerate(("08:00", "08:30", "09:00", "09:30", "10:00"), start=1):
        log += [prompt(clock, n), tap(clock, f"lat:{n}", n), bot(clock, ("put-off", {}))]
    assert found(log[:-3]) == []
    assert found(log) == ["I4"]


def test_nudges_too_many_or_after_silence_are_found() -> None:
    once = [prompt("08:00", 1), nudge("09:00", 1)]
    assert found(once) == []
    assert found([*once, nudge("09:30", 1)]) == ["I4"]
    assert found([*once, no_answer("10:00", 1), nudge("10:00", 1)]) == ["I4"]
    silent = [prompt("08:00", 1), no_answer("10:00", 1), prompt("10:00", 2), no_answer("13:00", 2)]
    assert found([*silent, prompt("15:00", 3), nudge("15:30", 3)]) == ["P6"]


def test_more_messages_unasked_than_the_day_allows_are_found() -> None:
    away = [bot("16:00", ("away", {"next": None})) for _ in range(5)]
    assert found([*GOOD, *away[:2]], BOOKS) == []
    assert found([*GOOD, *away[:3]], BOOKS) == ["P6"]


def test_an_answer_without_an_entry_and_an_entry_without_an_answer_are_found() -> None:
    assert found(GOOD[:3]) == ["I5"]
    assert found([prompt("08:00", 1), tap("08:05", "all:1", 1)], BOOKS) == ["I5"]
    twice = [*BOOKS, row("08:06", 2, 1)]
    again = [tap("08:06", "all:1", 2), bot("08:06", ("already-logged", {"done": 20}))]
    assert found([*GOOD[:3], *again], twice) == ["I5"]


def test_a_prompt_accepted_twice_is_found() -> None:
    assert "R2" in found([prompt("08:00", 1), prompt("08:00", 1)])


def test_a_hold_without_its_messages_or_with_a_prompt_after_it_is_found() -> None:
    hurt = Line(0, at("08:10"), False, ANN, 0, (), "I fainted", update=1)
    stop = bot("08:10:05", ("stop-emergency", {}))
    flag = bot("08:10:05", ("flag", {"client": 7}), chat=DANA)
    start = [prompt("08:00", 1), hurt]
    assert found([*start, stop, flag]) == []
    assert found([*start, stop]) == ["I6"]
    assert found([*start, replace(stop, at=at("08:10:06")), flag]) == ["I6"]
    assert found([*start, stop, replace(flag, at=at("08:10:11"))]) == ["I6"]
    assert found([*start, stop, flag, prompt("14:00", 2)]) == ["I6"]
    released = bot("13:00", ("release-told", {}))
    assert found([*start, stop, flag, released, prompt("14:00", 2)]) == []


def test_a_prompt_while_a_question_about_pain_is_open_is_found() -> None:
    asked = [tap("08:10", "hurt", 1), bot("08:10", ("ask-pain-sign", {}))]
    assert found([prompt("08:00", 1), *asked, prompt("14:00", 2)]) == ["I1"]


def test_the_name_of_a_stranger_in_a_chat_is_found() -> None:
    line = bot("09:00", ("passed-on", {"clinician": "Eli"}))
    may_read = {ANN: {"Ann", "Dana"}, DANA: {"Dana", "Ann"}, 33: {"Eli"}}
    assert len(strangers([line], may_read)) == 1
    assert strangers([replace(line, words="passed on to Dana")], may_read) == []


def test_a_flag_or_a_digest_that_came_twice_is_found_and_a_repeat_is_none() -> None:
    flag = bot("09:00", ("flag", {"flag": 5}), chat=DANA)
    digest = bot("08:00", ("digest", {"number": 3, "page": 1}), chat=DANA)
    repeat = bot("13:00", ("flag-repeat", {"flag": 5}), ("flag", {"flag": 5}), chat=DANA)
    asked_for = bot("14:00", ("digest", {"number": 0, "page": 1}), chat=DANA)
    assert twice([flag, digest, repeat, asked_for, asked_for]) == []
    assert len(twice([flag, flag, digest, digest])) == 2
