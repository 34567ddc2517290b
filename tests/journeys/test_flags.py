"""Flags reach who must know, when they must: by night, past a blocked chat, in a storm, in silence (H6, H8).

Lisbon's clock shows UTC in these weeks, and the practice's hours are 9 to 5, Monday to Friday. Instants
are added up by hand from the rules (arithmetic).
"""

from dataclasses import replace
from datetime import date, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import pytest

from bot.rehearsal import people
from bot.rehearsal.faults import Fault
from scheduler.domain.flags import Flag
from scheduler.domain.people import Client, Cover, Person, Role, State
from scheduler.ports import Tx
from scheduler.usecases import flags
from tests.conftest import briefly
from tests.journeys.log import Line
from tests.journeys.test_week import released
from tests.journeys.theatre import LISBON, MONDAY, Someone, Theatre

TUESDAY = MONDAY + timedelta(days=1)
WORDS = "pressure in my chest and I feel odd"


async def setting(theatre: Theatre, name: str, value: str) -> None:
    await theatre.stage.house.store.run(lambda tx: tx.book.put(name, value))


async def eve_covers(theatre: Theatre, until: date | None = None) -> int:
    """A colleague who covers for Dana; her account."""
    account = theatre.account("Eve")
    dana, kim = theatre.stage.ids["Dana"], theatre.stage.ids["Kim"]

    def work(tx: Tx) -> None:
        eve = Person(0, Role.CLINICIAN, "Eve", "qps", State.READY, account=account)
        kept = tx.people.add(eve, None)
        tx.staff.cover(Cover(0, dana, kept.id, until, kim, theatre.stage.now))

    await theatre.stage.house.store.run(work)
    theatre.may_read[account] = {"Eve", "Dana", "Ann"}
    theatre.may_read[theatre.kim].add("Eve")
    return account


def told(theatre: Theatre, account: int, *ids: str) -> list[tuple[str, str]]:
    """When somebody was told by texts of these ids, by the practice's clock, and by which text first."""
    return [
        (f"{line.at:%a %H:%M}", line.ids[0])
        for line in heard(theatre, account)
        if not ids or {*line.ids} & {*ids}
    ]


def heard(theatre: Theatre, account: int) -> list[Line]:
    return [line for line in theatre.lines() if line.bot and line.chat == account]


def the(line: Line, id_: str) -> dict[str, Any]:
    said = line.get(id_)
    assert said is not None, line.ids
    return said.args


async def open_flags(who: Someone) -> tuple[Flag, ...]:
    run = who.theatre.stage.house.store.run
    return await run(lambda tx: tx.flags.of_client(who.facts.person))


async def alarmed(theatre: Theatre, day: int = 1) -> Someone:
    """Ann names a warning sign at two at night, when everybody sleeps."""
    ann = await theatre.client()
    await ann.until(2, day=day)
    return ann


async def dana_closes(theatre: Theatre, flag: int) -> None:
    await theatre.stage.press(theatre.dana, f"fx:{flag}")
    await theatre.stage.press(theatre.dana, f"fo:{flag}:called")


# --- urgent ones ---------------------------------------------------------------------------------


async def test_an_urgent_flag_at_two_at_night_that_nobody_closes_goes_all_the_way(
    theatre: Theatre,
) -> None:
    ann = await alarmed(theatre)
    eve = await eve_covers(theatre)
    await ann.say(WORDS)
    await ann.until(23, 59, day=2)
    (flag,) = await open_flags(ann)
    assert flag.urgent
    assert told(theatre, theatre.dana, "flag") == [
        ("Tue 02:00", "flag"),
        ("Tue 06:00", "flag-repeat"),
    ]
    assert told(theatre, eve) == [("Tue 10:00", "flag-cover")]
    assert told(theatre, theatre.kim) == [("Tue 14:00", "flag-still-open")]
    for account in (theatre.dana, eve):
        for line in heard(theatre, account):
            if said := line.get("flag"):
                assert (said.args["flag"], said.args["words"]) == (flag.id, WORDS)
    (line,) = heard(theatre, theatre.kim)
    assert the(line, "flag-still-open")["flag"] == flag.id
    assert the(line, "flag-still-open")["name"] == "Ann"
    assert "chest" not in line.words  # alias, number and urgency, not the words (H6)


@briefly
async def test_a_flag_closed_in_between_is_told_to_nobody_else(theatre: Theatre) -> None:
    ann = await alarmed(theatre)
    eve = await eve_covers(theatre)
    await ann.say(WORDS)
    (flag,) = await open_flags(ann)
    await ann.until(9, 59, day=1)
    await dana_closes(theatre, flag.id)
    await ann.until(23, 59, day=2)
    assert await open_flags(ann) == ()
    assert len(told(theatre, theatre.dana, "flag")) == 2
    assert told(theatre, eve) == []
    assert told(theatre, theatre.kim) == []


@briefly
async def test_without_a_colleague_who_covers_it_goes_straight_to_the_admin(
    theatre: Theatre,
) -> None:
    ann = await alarmed(theatre)
    await ann.say(WORDS)
    await ann.until(23, 59, day=2)
    assert told(theatre, theatre.kim) == [("Tue 10:00", "flag-still-open")]
    assert len(await open_flags(ann)) == 1


@briefly
async def test_the_hours_between_are_the_practices_own(theatre: Theatre) -> None:
    ann = await alarmed(theatre)
    await setting(theatre, "repeat_hours", "1")
    await ann.say(WORDS)
    await ann.until(2, 59, 59, day=1)
    assert told(theatre, theatre.dana, "flag-repeat") == []
    await ann.until(3, day=1)
    assert told(theatre, theatre.dana, "flag-repeat") == [("Tue 03:00", "flag-repeat")]


@pytest.mark.parametrize(("until", "covers"), [(TUESDAY, True), (MONDAY, False), (None, True)])
@briefly
async def test_cover_holds_to_the_end_of_its_last_day_and_not_beyond(
    theatre: Theatre, until: date | None, covers: bool
) -> None:
    ann = await alarmed(theatre)
    eve = await eve_covers(theatre, until)
    await ann.say(WORDS)
    await ann.until(12, day=1)
    assert told(theatre, eve) == ([("Tue 10:00", "flag-cover")] if covers else [])
    assert told(theatre, theatre.kim) == ([] if covers else [("Tue 10:00", "flag-still-open")])


@briefly
async def test_what_fell_due_while_the_bot_was_down_is_told_step_by_step_afterwards(
    theatre: Theatre,
) -> None:
    ann = await alarmed(theatre)
    eve = await eve_covers(theatre)
    await ann.say(WORDS)
    await theatre.close()
    await theatre.open(ann.at(11, day=1))
    assert told(theatre, theatre.dana, "flag-repeat") == [("Tue 11:00", "flag-repeat")]
    assert told(theatre, eve) == []
    await ann.until(15, day=1)
    assert told(theatre, eve) == [("Tue 15:00", "flag-cover")]


# --- a clinician who cannot be reached -----------------------------------------------------------


async def test_of_a_clinician_who_blocked_the_bot_backup_and_admin_learn_at_once(
    theatre: Theatre,
) -> None:
    ann = await alarmed(theatre)
    eve = await eve_covers(theatre)
    await theatre.stage.heard(people.block(theatre.stage.world, theatre.dana, on=True))
    ann.facts.clinician = eve  # it is she who must know within 5 seconds (I6)
    assert told(theatre, theatre.kim) == [("Tue 02:00", "staff-unreachable")]
    await ann.say(WORDS)
    assert told(theatre, eve, "flag") == [("Tue 02:00", "flag-cover")]
    assert told(theatre, theatre.kim, "flag-admin") == [("Tue 02:00", "flag-admin")]
    assert told(theatre, theatre.dana, "flag") == []
    assert "chest" not in heard(theatre, theatre.kim)[-1].words
    await ann.until(9, 30, day=1)
    await theatre.stage.heard(people.block(theatre.stage.world, theatre.dana, on=False))
    await ann.until(9, 31, day=1)
    assert ("Tue 09:30", "flag") in told(theatre, theatre.dana, "flag")  # nothing is lost


@pytest.mark.parametrize("held", [False, True])
@briefly
async def test_of_a_client_who_blocked_the_bot_her_clinician_learns_once_urgently_on_a_hold(
    theatre: Theatre, held: bool
) -> None:
    """R4: during a hold she has to be called, so it comes at any hour, with her number."""
    ann = await theatre.client()

    def number(tx: Tx) -> None:
        record = tx.people.client(ann.facts.person)
        tx.people.save_client(replace(record, phone="555 0142"))

    await theatre.stage.house.store.run(number)
    if held:
        await ann.say(WORDS)
    await ann.until(5, 30)
    await theatre.stage.heard(people.block(theatre.stage.world, ann.facts.account, on=True))
    (flag,) = [each for each in await open_flags(ann) if each.kind == "unreachable"]
    assert flag.urgent is held
    assert flag.details == ({"phone": "555 0142"} if held else {})
    lost = [line for line in heard(theatre, theatre.dana) if "unreachable" in line.words]
    assert len(lost) == held  # otherwise it waits for her working hours


@briefly
async def test_a_block_found_out_by_the_flag_itself_tells_backup_and_admin_of_that_flag(
    theatre: Theatre,
) -> None:
    ann = await alarmed(theatre)
    eve = await eve_covers(theatre)
    theatre.stage.world.faults.add(Fault("blocked", "sendMessage", theatre.dana))
    ann.facts.clinician = eve  # it is she who must know within 5 seconds (I6)
    await ann.say(WORDS)
    await ann.until(2, 0, 5, day=1)
    (flag,) = await open_flags(ann)
    assert the(heard(theatre, eve)[-1], "flag")["flag"] == flag.id
    (line,) = [line for line in heard(theatre, theatre.kim) if line.get("flag-admin")]
    assert the(line, "flag-admin")["flag"] == flag.id


# --- routine ones --------------------------------------------------------------------------------


async def storm(theatre: Theatre, count: int) -> list[int]:
    """So many silent clients of Dana's, flagged in one moment."""
    dana, now = theatre.stage.ids["Dana"], theatre.stage.now

    def work(tx: Tx) -> list[int]:
        return [_silent_client(tx, dana, n) for n in range(count)]

    def _silent_client(tx: Tx, clinician: int, n: int) -> int:
        person = Person(0, Role.CLIENT, f"Nr {n} (invented)", "qps", State.READY, clinician)
        kept = tx.people.add(person, Client(0, clinician, ZoneInfo(LISBON)))
        client = tx.people.client(kept.id)
        flags.raise_flag(
            tx, client, "silent", now, urgent=False, details={"silent_days": 7}, episode="silent"
        )
        return kept.id

    return await theatre.stage.house.store.run(work)


@briefly
async def test_a_storm_of_routine_flags_is_one_summary_and_an_urgent_one_comes_on_its_own(
    theatre: Theatre,
) -> None:
    ann = await theatre.client()
    await ann.until(20)
    silent = await storm(theatre, 80)
    await ann.until(2, day=1)
    assert told(theatre, theatre.dana, "flag", "flag-summary") == []
    await ann.say(WORDS)
    assert told(theatre, theatre.dana, "flag", "flag-summary") == [("Tue 02:00", "flag")]
    run = theatre.stage.house.store.run
    gone = silent[3]
    assert await run(
        lambda tx: tx.flags.close_episode(gone, "silent", "heard", gone, theatre.stage.now)
    )
    await ann.until(8, 59, 59, day=1)
    assert told(theatre, theatre.dana, "flag-summary") == []
    await ann.until(23, 59, day=2)
    assert told(theatre, theatre.dana, "flag-summary") == [("Tue 09:00", "flag-summary")]
    (line,) = [line for line in heard(theatre, theatre.dana) if line.get("flag-summary")]
    summary = the(line, "flag-summary")
    assert (summary["count"], summary["clients_count"]) == (79, 79)
    names = [row["name"] for row in summary["flag_rows"]]
    assert len(names) + summary["more"] == 79
    assert "Nr 3 (invented)" not in names
    assert {row["reason"] for row in summary["flag_rows"]} == {"silent"}


@briefly
async def test_a_flag_that_comes_up_in_working_hours_is_summed_up_the_next_working_day(
    theatre: Theatre,
) -> None:
    ann = await theatre.client()
    await ann.until(9, day=4)  # Friday, on the start itself
    await storm(theatre, 2)
    await ann.until(8, 59, 59, day=7)
    assert told(theatre, theatre.dana, "flag-summary") == []
    await ann.until(9, day=7)
    assert ("Mon 09:00", "flag-summary") in told(theatre, theatre.dana, "flag-summary")


# --- all others ----------------------------------------------------------------------------------


async def fell_without_harm(ann: Someone) -> None:
    await ann.say("fell")
    for button in ("f:sign:none", "f:injured:0", "f:new_pain:0", "f:when:today", "f:doing:walking"):
        await ann.press(button)


@pytest.mark.parametrize(
    ("day", "hour", "minute", "arrives"),
    [
        (0, 21, 0, "Tue 09:00"),
        (1, 8, 59, "Tue 09:00"),
        (1, 9, 0, "Tue 09:00"),
        (4, 16, 59, "Fri 16:59"),
        (4, 17, 0, "Mon 09:00"),
    ],
)
@briefly
async def test_a_fall_without_harm_waits_for_working_hours(
    theatre: Theatre, day: int, hour: int, minute: int, arrives: str
) -> None:
    ann = await theatre.client()
    await ann.until(hour, minute, day=day)
    await fell_without_harm(ann)
    await ann.until(9, day=7)
    falls = [
        f"{line.at:%a %H:%M}"
        for line in heard(theatre, theatre.dana)
        if (said := line.get("flag")) and said.args["kind"] == "fall"
    ]
    assert falls == [arrives]
    assert told(theatre, theatre.kim) == []


# --- silence -------------------------------------------------------------------------------------


async def silences(ann: Someone) -> list[Flag]:
    return [flag for flag in await open_flags(ann) if flag.kind == "silent"]


def summed_up(theatre: Theatre) -> list[str]:
    """When the summary named somebody silent."""
    return [
        f"{line.at:%a %H:%M}"
        for line in heard(theatre, theatre.dana)
        if (said := line.get("flag-summary"))
        and any(row["reason"] == "silent" for row in said.args["flag_rows"])
    ]


@briefly
async def test_two_silent_days_are_flagged_on_the_second_and_told_when_work_begins(
    theatre: Theatre,
) -> None:
    ann = await theatre.client()  # joined on Monday at 5:00
    await setting(theatre, "silent_days", "2")
    await ann.until(4, 59, 59, day=2)
    assert await silences(ann) == []
    await ann.until(5, day=2)
    assert len(await silences(ann)) == 1
    await ann.until(23, day=3)
    assert summed_up(theatre) == ["Wed 09:00"]
    assert len(await silences(ann)) == 1


@briefly
async def test_silence_ends_with_her_first_word_and_is_not_in_the_summary(theatre: Theatre) -> None:
    ann = await theatre.client()
    await setting(theatre, "silent_days", "2")
    await ann.until(8, 30, day=2)
    assert len(await silences(ann)) == 1
    await ann.say("good morning")
    assert await silences(ann) == []
    await ann.until(8, 29, 59, day=4)  # two days from then, less a second
    assert summed_up(theatre) == []
    assert await silences(ann) == []
    await ann.until(9, day=4)
    assert summed_up(theatre) == ["Fri 09:00"]  # a new silence, flagged at 8:30


@briefly
async def test_a_tap_on_an_old_button_ends_silence_too(theatre: Theatre) -> None:
    ann = await theatre.client()
    await setting(theatre, "silent_days", "2")
    await ann.until(6, day=2)
    assert len(await silences(ann)) == 1
    await ann.tap("all")
    assert await silences(ann) == []


@briefly
async def test_a_closed_silence_is_not_flagged_again_before_she_was_heard(theatre: Theatre) -> None:
    ann = await theatre.client()
    await setting(theatre, "silent_days", "2")
    await ann.until(6, day=2)
    (flag,) = await silences(ann)
    await theatre.stage.house.store.run(
        lambda tx: tx.flags.close(
            flag.id, "called", theatre.stage.ids["Dana"], "", theatre.stage.now
        )
    )
    await ann.until(12, day=5)
    assert await silences(ann) == []
    await ann.say("good morning")
    await ann.until(12, day=7)
    assert len(await silences(ann)) == 1


@briefly
async def test_nobody_is_called_silent_while_on_hold(theatre: Theatre) -> None:
    ann = await theatre.client()
    await setting(theatre, "silent_days", "2")
    await ann.until(9)
    await ann.say(WORDS)
    await ann.until(12, day=4)
    assert await silences(ann) == []


@briefly
async def test_silence_counts_from_the_release_of_a_hold(theatre: Theatre) -> None:
    ann = await theatre.client()
    await setting(theatre, "silent_days", "2")
    await ann.until(9)
    await ann.say(WORDS)
    await ann.until(9, day=3)
    await released(ann, 40)
    await ann.until(8, 59, 59, day=5)
    assert await silences(ann) == []
    await ann.until(9, day=5)
    assert len(await silences(ann)) == 1


@briefly
async def test_silence_counts_from_the_end_of_a_break(theatre: Theatre) -> None:
    ann = await theatre.client()
    await setting(theatre, "silent_days", "2")
    await ann.until(9)
    assert (await ann.say("on holiday till Wednesday")).get("break-started")
    await ann.until(23, 59, 59, day=4)
    assert await silences(ann) == []
    await ann.until(0, day=5)
    assert len(await silences(ann)) == 1
