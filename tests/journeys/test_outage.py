"""The bot, the network or the platform is away: nothing twice, nothing late, no flood (P7, R2, R4)."""

from datetime import datetime

import pytest

from tests.conftest import briefly
from tests.journeys.optimum import best, minute
from tests.journeys.theatre import Someone, Theatre


async def away(theatre: Theatre, until: datetime) -> None:
    """The bot goes down now and comes back on the same database, before the same people."""
    await theatre.close()
    await theatre.open(until)


async def test_after_noon_without_the_bot_the_day_goes_on_and_one_message_says_so(
    theatre: Theatre,
) -> None:
    ann = await theatre.client(total=40)
    await ann.until(8)
    await ann.tap("all")
    await ann.until(11)
    await away(theatre, ann.at(14, 3))
    assert ann.texts("away")[0].at == ann.at(14, 3)
    rest = best("08:00-20:00", 3, last=minute("08:00"), not_before=minute("14:03"))
    assert ann.texts("away")[0].texts[0].args["next"] == f"2027-03-08T{rest[0]}"
    for at in rest:
        await ann.until(*map(int, at.split(":")))
        await ann.tap("all")
    assert ann.times() == ["08:00", *rest]
    assert len(ann.texts("away")) == 1
    assert ann.done() == 40


@pytest.mark.parametrize(("second", "sent"), [(0, ["08:00", "12:20"]), (1, ["08:00", "12:25"])])
@briefly
async def test_a_prompt_is_sent_twenty_minutes_late_and_not_a_second_later(
    theatre: Theatre, second: int, sent: list[str]
) -> None:
    ann = await theatre.client(total=30, window="08:00-16:00")
    await ann.until(8)
    await ann.tap("all")
    await away(theatre, ann.at(12, 20, second))
    await ann.until(12, 30)
    assert ann.times() == sent
    assert len(ann.texts("away")) == second


@briefly
async def test_a_bot_away_twice_a_day_says_so_once(theatre: Theatre) -> None:
    ann = await theatre.client(total=40, gap=60)
    await away(theatre, ann.at(8, 30))
    await ann.until(8, 31)
    await away(theatre, ann.at(17))
    await ann.until(12, day=1)
    assert len(ann.texts("away")) == 1


async def test_a_bot_away_all_day_and_night_floods_nobody(theatre: Theatre) -> None:
    ann = await theatre.client(total=40, weekdays=(0, 1, 2))
    await ann.until(7)
    before = len(ann.heard())
    await away(theatre, ann.at(6, day=2))
    assert len(ann.heard()) - before <= 1
    await ann.until(8, day=2)
    assert ann.times() == ["08:00"]
    assert ann.texts("prompt")[0].at == ann.at(8, day=2)


@briefly
async def test_a_prompt_left_open_over_the_outage_can_still_be_answered(theatre: Theatre) -> None:
    ann = await theatre.client(total=20)
    await ann.until(8)
    await away(theatre, ann.at(9, 30))
    assert (await ann.tap("all")).texts[0].args["done"] == 10
    await ann.until(20)
    assert ann.times() == ["08:00", "20:00"]


@briefly
async def test_what_she_wrote_while_the_bot_was_away_counts_for_the_time_she_wrote_it(
    theatre: Theatre,
) -> None:
    ann = await theatre.client(total=30)
    await ann.until(8)
    await ann.tap("all")
    await ann.until(12)
    await theatre.close()
    theatre.meanwhile(ann, "10", ann.at(13, 30))
    await theatre.open(ann.at(15))
    await theatre.all_heard()
    assert [row.at for row in ann.ledger()] == [ann.at(8), ann.at(13, 30)]
    await ann.until(20)
    assert ann.times()[-1] == "20:00"
    assert ann.done() == 20


# --- faults of the platform ----------------------------------------------------------------------


async def ready(theatre: Theatre) -> Someone:
    ann = await theatre.client(total=20)
    await ann.until(7, 59)
    return ann


@briefly
async def test_too_fast_puts_the_prompt_off_by_what_the_platform_says(theatre: Theatre) -> None:
    ann = await ready(theatre)
    ann.trouble("too-fast", retry_after=30)
    await ann.until(20)
    assert ann.times() == ["08:00:30", "20:00"]


@briefly
async def test_too_fast_for_longer_than_a_prompt_may_be_late_plans_the_day_anew(
    theatre: Theatre,
) -> None:
    ann = await ready(theatre)
    ann.trouble("too-fast", retry_after=1500)
    await ann.until(12)
    assert ann.times() == ["08:25"]
    assert len(ann.texts("away")) == 1


@briefly
async def test_a_prompt_cut_off_before_it_arrived_is_not_sent_again(theatre: Theatre) -> None:
    ann = await ready(theatre)
    ann.trouble("drop-before")
    await ann.until(9)
    assert ann.times() == []
    assert (await ann.say("done")).texts[0].args["reps"] == 10  # it may have arrived: it is open
    await ann.until(20)
    assert ann.times() == ["20:00"]


@briefly
async def test_a_prompt_cut_off_after_it_arrived_is_accepted_once_and_its_buttons_work(
    theatre: Theatre,
) -> None:
    ann = await ready(theatre)
    ann.trouble("drop-after")
    await ann.until(9)
    assert ann.times() == ["08:00"]
    assert (await ann.tap("all")).texts[0].args["done"] == 10
    await ann.until(20)
    assert ann.times() == ["08:00", "20:00"]


@briefly
async def test_a_prompt_of_unknown_fate_that_nobody_answers_expires_like_any_other(
    theatre: Theatre,
) -> None:
    ann = await ready(theatre)
    ann.trouble("drop-after")
    await ann.until(8)
    ann.facts.unheard.add(ann.prompted()[0].args["bout"])
    await ann.until(20)
    assert ann.times() == ["08:00", "20:00"]
    assert (await ann.tap("all")).texts[0].args["done"] == 10


@pytest.mark.parametrize(("kind", "copies"), [("drop-before", 1), ("drop-after", 2)])
async def test_an_answer_of_unknown_fate_is_repeated_and_logs_once(
    theatre: Theatre, kind: str, copies: int
) -> None:
    ann = await ready(theatre)
    await ann.until(8)
    ann.trouble(kind)  # type: ignore[arg-type]
    await ann.say("10")
    await theatre.stage.later(seconds=5)
    assert len(ann.texts("logged")) == copies
    assert [row.reps for row in ann.ledger()] == [10]


@pytest.mark.parametrize("kind", ["drop-before", "drop-after", "too-fast"])
@briefly
async def test_the_answer_to_a_tap_arrives_whatever_happens_to_its_first_sending(
    theatre: Theatre, kind: str
) -> None:
    ann = await ready(theatre)
    await ann.until(8)
    ann.trouble(kind, "editMessageText")  # type: ignore[arg-type]
    await ann.tap("all")
    await theatre.stage.later(seconds=5)
    assert len(ann.texts("logged")) == 1  # written over the prompt: a copy shows nowhere
    assert ann.done() == 10


@briefly
async def test_who_blocked_the_bot_gets_nothing_until_she_is_back(theatre: Theatre) -> None:
    ann = await ready(theatre)
    ann.trouble("blocked")
    await ann.until(16)
    assert ann.heard() == []
    flags = [line for line in theatre.lines() if line.chat == theatre.dana and line.get("flag")]
    assert [each.texts[0].args["kind"] for each in flags] == ["unreachable"]
    await ann.say("10")
    await ann.until(20)
    assert ann.times() == ["20:00"]
    assert ann.done() == 10


@briefly
async def test_a_prompt_held_up_at_the_end_of_the_window_is_not_sent_after_it(
    theatre: Theatre,
) -> None:
    ann = await ready(theatre)
    await ann.until(8)
    await ann.tap("all")
    ann.trouble("too-fast", retry_after=300)
    await ann.until(23)
    assert ann.times() == ["08:00"]


@briefly
async def test_a_quiet_time_is_kept_by_a_prompt_that_was_held_up(theatre: Theatre) -> None:
    ann = await theatre.client(total=30, quiet="14:00-15:00")
    await ann.until(8)
    await ann.tap("all")
    ann.trouble("too-fast", retry_after=90)
    await ann.until(15)
    assert ann.times() == ["08:00", "15:00"]


@briefly
async def test_the_word_that_the_bot_was_away_is_one_of_the_days_messages(
    theatre: Theatre,
) -> None:
    ann = await theatre.client(total=40)
    await ann.until(11)  # asked and nudged, and still silent
    await away(theatre, ann.at(14, 3))
    await ann.until(12, day=1)
    own = len(ann.texts("prompt")) + len(ann.texts("nudge")) + len(ann.texts("away"))
    assert own == 6  # four bouts and two more (P6): the nudges give way


@briefly
async def test_pain_told_while_the_bot_was_away_stops_what_would_be_asked_on_its_return(
    theatre: Theatre,
) -> None:
    ann = await theatre.client(total=30)
    await ann.until(8)
    await ann.tap("all")
    await theatre.close()
    theatre.meanwhile(ann, "10 but my hip hurts", ann.at(13, 50))
    await theatre.open(ann.at(14, 5))
    await theatre.all_heard()
    assert ann.times() == ["08:00"]
    assert any(id_.startswith("ask-pain") for id_ in ann.heard()[-1].ids)
    assert ann.done() == 20
    await ann.until(14, 21)  # the question stayed open for a quarter of an hour (H1)
    assert ann.heard()[-1].ids[0] == "no-answer-so-stopped"
