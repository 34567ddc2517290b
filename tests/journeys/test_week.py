"""A week held against its plan: made up, declined, out of reach and back, over zones and week starts."""

from datetime import date, timedelta
from typing import Any

import pytest

from bot.rehearsal import people
from scheduler.domain.flags import Flag
from scheduler.ports import Tx
from tests.conftest import briefly
from tests.journeys.theatre import MONDAY, Someone, Theatre

A_DAY = timedelta(days=1)


async def setting(theatre: Theatre, name: str, value: str) -> None:
    await theatre.stage.house.store.run(lambda tx: tx.book.put(name, value))


async def flags(who: Someone) -> tuple[Flag, ...]:
    """The client's open flags."""
    run = who.theatre.stage.house.store.run
    return await run(lambda tx: tx.flags.of_client(who.facts.person))


async def kinds(who: Someone) -> list[str]:
    return [flag.kind for flag in await flags(who)]


async def verdicts(who: Someone) -> dict[int, tuple[str, str]]:
    """By the number of the journey's day, from 0: what was judged, and why it did not count."""

    def work(tx: Tx) -> dict[int, tuple[str, str]]:
        closed = tx.days.judged(who.facts.person, 60)
        return {(day.day - who.first_day).days: (day.verdict, day.why) for day in closed}

    return await who.theatre.stage.house.store.run(work)


async def done(who: Someone, day: int, total: int = 40) -> None:
    """She does all of a day in one go, at nine."""
    await who.until(9, day=day)
    await who.say(f"did {total}")
    await who.say("yes")


async def released(who: Someone, total: int) -> None:
    """Her clinician releases the hold, from tomorrow on."""
    stage, dana, me = who.theatre.stage, who.theatre.dana, who.facts.person
    await stage.say(dana, "/clients")
    for button in (f"c:{me}", f"rel:{me}", f"rd:{me}:{total}", f"rf:{me}:{total}:tomorrow"):
        await stage.press(dana, button)


async def the_day_closes(who: Someone, day: int) -> None:
    await who.until(12, day=day + 1)


def when(who: Someone, day: int) -> date:
    return who.first_day + timedelta(days=day)


def args(who: Someone, id_: str) -> dict[str, Any]:
    """The arguments of the latest such text."""
    said = who.texts(id_)[-1].get(id_)
    assert said is not None
    return said.args


async def monday_and_thursday(theatre: Theatre, **more: Any) -> Someone:
    return await theatre.client(weekdays=(0, 3), rest_days=1, days_min=2, bout_max=40, **more)


async def test_two_days_without_an_answer_are_flagged_once_at_the_second_close(
    theatre: Theatre,
) -> None:
    ann = await monday_and_thursday(theatre)
    await the_day_closes(ann, 0)
    assert await verdicts(ann) == {0: ("missed", "no-answer")}
    assert "missed-days" not in await kinds(ann)
    await ann.until(11, 59, 59, day=4)
    assert "missed-days" not in await kinds(ann)
    await ann.until(12, day=4)
    (flag,) = [each for each in await flags(ann) if each.kind == "missed-days"]
    assert flag.details["whys"] == ["no-answer", "no-answer"]
    await the_day_closes(ann, 7)
    assert (await kinds(ann)).count("missed-days") == 1


@briefly
async def test_a_day_that_counts_closes_the_flag_of_missed_days(theatre: Theatre) -> None:
    ann = await monday_and_thursday(theatre)
    await the_day_closes(ann, 3)
    assert "missed-days" in await kinds(ann)
    await done(ann, 7)
    await the_day_closes(ann, 7)
    assert (await verdicts(ann))[7] == ("counted", "")
    assert "missed-days" not in await kinds(ann)


@briefly
async def test_the_flag_of_missed_days_stays_over_a_day_in_part_and_another_that_is_missed(
    theatre: Theatre,
) -> None:
    """Only a day that counts closes it (W5)."""
    ann = await monday_and_thursday(theatre)
    await the_day_closes(ann, 3)
    await ann.until(9, day=7)
    await ann.say("did 10")
    await the_day_closes(ann, 7)
    await the_day_closes(ann, 10)
    closed = await verdicts(ann)
    assert [closed[day][0] for day in (0, 3, 7, 10)] == ["missed", "missed", "partial", "missed"]
    assert (await kinds(ann)).count("missed-days") == 1


@briefly
async def test_a_day_is_judged_once_and_a_number_after_its_close_counts_nowhere(
    theatre: Theatre,
) -> None:
    ann = await monday_and_thursday(theatre)
    await ann.until(11, 59, day=1)
    await ann.say("yesterday 16")
    await the_day_closes(ann, 0)
    assert await verdicts(ann) == {0: ("partial", "no-answer")}
    assert (await ann.say("yesterday 30")).ids[0] == "day-over"
    await ann.until(13, day=1)
    assert await verdicts(ann) == {0: ("partial", "no-answer")}


@briefly
async def test_skipping_every_bout_is_a_day_declined(theatre: Theatre) -> None:
    ann = await theatre.client(total=20, weekdays=(0, 3), rest_days=1, days_min=2)
    await ann.until(8)
    await ann.tap("skp")
    await ann.until(10)
    await ann.tap("skp")
    await the_day_closes(ann, 0)
    assert await verdicts(ann) == {0: ("missed", "declined")}


async def test_a_day_is_made_up_on_the_day_that_is_offered(theatre: Theatre) -> None:
    ann = await monday_and_thursday(theatre)
    await ann.until(7, 59, 59, day=1)
    assert not ann.texts("make-up")
    await ann.until(8, day=1)
    assert args(ann, "make-up")["day"] == when(ann, 0).isoformat()
    assert args(ann, "make-up")["instead"] == when(ann, 1).isoformat()
    ann.facts.made_up.add(when(ann, 1))
    await ann.press("mu:1")
    assert ann.times()[-1] == "08:00"
    await done(ann, 1)
    await done(ann, 3)
    await the_day_closes(ann, 3)
    closed = await verdicts(ann)
    assert [closed[day][0] for day in (0, 1, 3)] == ["missed", "counted", "counted"]
    assert await kinds(ann) == []


@briefly
async def test_a_declined_day_is_final_and_is_offered_no_more(theatre: Theatre) -> None:
    ann = await monday_and_thursday(theatre)
    await ann.until(8, day=1)
    assert (await ann.press("mu:0")).ids == ("make-up-declined",)
    await ann.until(20, day=2)
    assert len(ann.texts("make-up")) == 1
    assert len({line.at.date() for line in ann.texts("prompt")}) == 1


@briefly
async def test_words_answer_the_offer_too(theatre: Theatre) -> None:
    ann = await monday_and_thursday(theatre)
    await ann.until(8, day=1)
    ann.facts.made_up.add(when(ann, 1))
    await ann.say("yes")
    assert args(ann, "make-up-kept")["day"] == when(ann, 1).isoformat()


@pytest.mark.parametrize("stopped", ["hold", "break", ""])
@briefly
async def test_a_day_on_a_hold_or_a_break_is_not_offered_to_be_made_up(
    theatre: Theatre, stopped: str
) -> None:
    ann = await theatre.client()
    await ann.until(8, 30)
    if stopped == "break":
        for button in ("/break", "br:travel", "bl:today"):
            await (ann.say(button) if button == "/break" else ann.press(button))
    elif stopped == "hold":
        await ann.say("chest pain")
        await released(ann, 40)
    await ann.until(20, day=1)
    assert len(ann.texts("make-up")) == (not stopped)


@pytest.mark.parametrize("stopped", ["hold", "break", ""])
@briefly
async def test_a_week_that_a_hold_or_a_break_takes_is_not_flagged_as_out_of_reach(
    theatre: Theatre, stopped: str
) -> None:
    """A hold or a break says so itself."""
    ann = await theatre.client(weekdays=(6,))
    await ann.until(9, day=5)
    if stopped:
        await ann.say("chest pain" if stopped == "hold" else "on holiday till Sunday")
    await ann.until(20, 1, day=6)
    assert ("week-out-of-reach" in await kinds(ann)) == (not stopped)


@briefly
async def test_a_late_log_makes_the_day_agreed_on_needless(theatre: Theatre) -> None:
    ann = await theatre.client(weekdays=(0, 2), rest_days=1, days_min=2, days_max=3, bout_max=40)
    await ann.until(8, day=1)
    assert args(ann, "make-up")["instead"] == when(ann, 4).isoformat()
    await ann.press("mu:1")
    answer = await ann.say("yesterday 40")
    answer = await ann.say("yes") if "logged" not in answer.ids else answer
    assert "made-up-not-needed" in answer.ids
    await ann.until(20, day=4)
    assert when(ann, 4) not in {line.at.date() for line in ann.texts("prompt")}


async def test_a_week_out_of_reach_is_flagged_when_the_days_hours_end_and_closes_by_a_late_log(
    theatre: Theatre,
) -> None:
    """Two rest days, three days a week: Monday not done leaves two at most, so it is said on Monday."""
    ann = await theatre.client(weekdays=(0, 3, 6), rest_days=2, days_min=3, bout_max=40)
    await ann.until(19, 59, 59)
    assert await kinds(ann) == []
    await ann.until(20)
    (flag,) = await flags(ann)
    assert (flag.kind, flag.urgent) == ("week-out-of-reach", False)
    assert (flag.details["counted"], flag.details["possible"]) == (0, 2)
    await ann.until(11, 30, day=1)
    await ann.say("yesterday 40")
    await ann.say("yes")
    assert await kinds(ann) == []


@briefly
async def test_no_more_days_than_the_maximum_are_asked_in_a_week(theatre: Theatre) -> None:
    ann = await theatre.client(weekdays=(0, 2, 4), rest_days=1, days_min=3)
    await done(ann, 0)
    await done(ann, 2)
    await done(ann, 4)
    await ann.until(23, day=6)
    assert {line.at.date() for line in ann.texts("prompt")} == {when(ann, n) for n in (0, 2, 4)}


@briefly
async def test_an_unplanned_load_day_needs_rest_before_a_planned_one(theatre: Theatre) -> None:
    ann = await monday_and_thursday(theatre)
    await done(ann, 0)
    await ann.until(9, day=2)
    await ann.say("did 10")
    await ann.until(21, day=3)
    assert when(ann, 3) not in {line.at.date() for line in ann.texts("prompt")}
    await the_day_closes(ann, 3)
    assert (await verdicts(ann))[3] == ("excused", "not-asked")


@briefly
async def test_a_week_that_starts_on_sunday_is_kept_from_sunday(theatre: Theatre) -> None:
    sunday = MONDAY - A_DAY
    ann = await theatre.client(day=sunday, weekdays=(6, 2), rest_days=1, days_min=2)
    await setting(theatre, "week_start", "sunday")
    await done(ann, 0)
    await ann.until(20, day=3)
    await ann.until(20, 1, day=6)
    assert len(ann.texts("ask-week")) == 1
    assert ann.texts("ask-week")[0].at == ann.at(18, day=6)  # Saturday, the week's last evening


@briefly
async def test_the_weeks_question_is_one_tap_and_no_answer_is_not_no(theatre: Theatre) -> None:
    ann = await theatre.client(weekdays=(0,), days_min=1)
    await done(ann, 0)
    await ann.until(18, day=6)
    assert ann.texts("ask-week")[0].at == ann.at(18, day=6)
    assert (await ann.press("wq:none")).ids == ("week-thanks",)
    await ann.until(18, day=13)
    assert len(ann.texts("ask-week")) == 2


@briefly
async def test_pain_on_the_weeks_question_stops_the_bouts(theatre: Theatre) -> None:
    ann = await theatre.client(weekdays=(0, 6), days_min=2)
    await ann.until(18, day=6)
    assert (await ann.press("wq:pain")).ids[0] == "ask-pain-sign"


@briefly
async def test_a_leak_on_the_weeks_question_stops_that_movement(theatre: Theatre) -> None:
    ann = await theatre.client(weekdays=(0,), days_min=1)
    await ann.until(18, day=6)
    assert "stop-leak" in (await ann.press("wq:leak")).ids


@briefly
async def test_in_a_flexible_plan_the_suggested_days_stand_without_an_answer(
    theatre: Theatre,
) -> None:
    ann = await theatre.client(weekdays=(), rest_days=1, days_min=2)
    await ann.until(8)
    suggested = args(ann, "week-days")["dates"]
    assert len(suggested) == 2
    await ann.until(23, day=6)
    assert sorted({line.at.date().isoformat() for line in ann.texts("prompt")}) == suggested


@briefly
async def test_in_a_flexible_plan_other_days_are_chosen_by_taps(theatre: Theatre) -> None:
    ann = await theatre.client(weekdays=(), rest_days=1, days_min=2)
    await ann.until(8)
    first, second = args(ann, "week-days")["dates"]
    await ann.press("wk:change")
    await ann.press(f"wo:{second}")
    wednesday, friday = when(ann, 2).isoformat(), when(ann, 4).isoformat()
    for day in {wednesday, friday} - {first, second}:
        await ann.press(f"wd:{day}")
    answer = await ann.press("wk:keep")
    if answer.ids[0] == "days-count":  # Monday has begun, so one of the two has to go
        await ann.press(f"wo:{friday}")
        answer = await ann.press("wk:keep")
    assert answer.ids == ("week-days-kept",)
    kept = args(ann, "week-days-kept")["dates"]
    await ann.until(23, day=6)
    assert sorted({line.at.date().isoformat() for line in ann.texts("prompt")}) == kept


@pytest.mark.parametrize("typed", [False, True])
@briefly
async def test_in_a_flexible_plan_her_own_weekdays_are_changed_with_her_times(
    theatre: Theatre, typed: bool
) -> None:
    """J4. They are suggested for every week from then on; a day that has begun stays."""
    ann = await theatre.client(weekdays=(), rest_days=1, days_min=2)
    await ann.until(9)
    await ann.press("wk:keep")
    await ann.say("/times")
    await (ann.say("change days") if typed else ann.press("t:days"))
    assert ann.heard()[-1].ids == ("ask-times-days",)
    assert args(ann, "ask-times")["days"] == []
    if typed:
        assert (await ann.say("Mon, Tue")).ids == ("days-rest", "ask-times-days")
        assert (await ann.say("Wed")).ids == ("days-count", "ask-times-days")
        assert args(ann, "days-count") == {"least": 2, "most": 2, "exact": True}
        assert (await ann.say("a blue kettle")).ids == ("answer-own-days", "ask-times-days")
        assert (await ann.say("Wed, Sat")).ids == ("ask-times",)
    else:
        for data in ("td:0", "td:1"):
            await ann.press(data)
        assert args(ann, "ask-times-days")["days"] == [0, 1]
        assert (await ann.press("tk")).ids == ("days-rest", "ask-times-days")
        for data in ("to:0", "to:1", "td:2"):
            await ann.press(data)
        assert (await ann.press("tk")).ids == ("days-count", "ask-times-days")
        await ann.press("td:5")
        assert (await ann.say("that is all")).ids == ("ask-times",)
    assert args(ann, "ask-times")["days"] == [2, 5]
    await ann.until(8, day=7)
    asked = {line.at.date() for line in ann.texts("prompt")}
    assert asked == {when(ann, 0), when(ann, 2), when(ann, 5)}  # Monday had begun
    assert args(ann, "week-days")["dates"] == [when(ann, n).isoformat() for n in (9, 12)]


@briefly
async def test_in_a_plan_with_fixed_weekdays_they_are_not_hers_to_change(theatre: Theatre) -> None:
    ann = await theatre.client()
    await ann.until(9)
    await ann.say("/times")
    assert (await ann.say("change days")).ids == ("ask-times",)


@briefly
async def test_days_too_near_each_other_are_refused_and_the_question_stays(
    theatre: Theatre,
) -> None:
    ann = await theatre.client(weekdays=(), rest_days=1, days_min=2)
    await ann.until(8)
    assert (await ann.say("Tuesday and Wednesday")).ids[0] in {"days-rest", "days-count"}
    assert (await ann.say("Wednesday")).ids[0] == "week-days-kept"


@briefly
async def test_travel_over_the_date_line_loses_and_doubles_no_day(theatre: Theatre) -> None:
    """From Auckland to Honolulu on Wednesday: the date goes back by one, Thursday comes once."""
    ann = await theatre.client(zone="Pacific/Auckland", weekdays=(0, 3), rest_days=1, days_min=2)
    await done(ann, 0)
    await ann.until(9, day=2)
    await _moves(ann, "Pacific/Honolulu")
    await ann.until(20, day=3)
    await the_day_closes(ann, 6)
    assert await verdicts(ann) == {0: ("counted", ""), 3: ("missed", "no-answer")}
    assert len([line for line in ann.texts("day-opening") if line.at < ann.at(0, day=7)]) == 2


@pytest.mark.parametrize(
    ("zone", "to"),
    [("Pacific/Pago_Pago", "Pacific/Kiritimati"), ("Pacific/Honolulu", "Pacific/Auckland")],
)
@briefly
async def test_a_day_that_the_date_line_swallows_is_excused(
    theatre: Theatre, zone: str, to: str
) -> None:
    """On Wednesday at 23:30: over the whole line Thursday never comes, to Auckland it comes at 22:30."""
    ann = await theatre.client(zone=zone, weekdays=(0, 3), rest_days=1, days_min=2)
    await done(ann, 0)
    await ann.until(23, 30, day=2)
    await _moves(ann, to)
    await the_day_closes(ann, 6)
    assert await verdicts(ann) == {0: ("counted", ""), 3: ("excused", "travel")}


async def _moves(who: Someone, zone: str) -> None:
    await who.say("/times")
    await who.press("t:zone")
    await who.say(zone)
    who.moved(zone)
    await who.press("t:keep")


@briefly
async def test_a_day_on_which_the_bot_was_away_is_excused(theatre: Theatre) -> None:
    ann = await monday_and_thursday(theatre)
    await done(ann, 0)
    await ann.until(22, day=2)
    await theatre.close()
    await theatre.open(ann.at(23, day=3))
    await the_day_closes(ann, 3)
    assert (await verdicts(ann))[3] == ("excused", "bot-down")


@pytest.mark.parametrize("back", [(11, 1), (21, 0), (13, 1)])
@briefly
async def test_a_day_on_which_she_could_not_be_reached_says_so_though_she_is_back(
    theatre: Theatre, back: tuple[int, int]
) -> None:
    """R4: whether she is back before the day is judged or after it, and on the evening of the day itself."""
    ann = await theatre.client()
    await ann.until(7)
    ann.trouble("blocked")
    hour, day = back
    await ann.until(hour, day=day)
    await ann.say("/today")
    await ann.until(14, day=1)
    assert await verdicts(ann) == {0: ("missed", "unreachable")}


@briefly
async def test_who_cannot_be_reached_the_morning_after_had_her_prompts(theatre: Theatre) -> None:
    ann = await theatre.client(weekdays=(0, 1))
    await ann.until(7, day=1)
    ann.trouble("blocked")
    await the_day_closes(ann, 0)
    assert await verdicts(ann) == {0: ("missed", "no-answer")}
    await the_day_closes(ann, 1)
    assert (await verdicts(ann))[1] == ("missed", "unreachable")


@briefly
async def test_a_day_on_a_break_stays_one_where_she_could_not_be_reached_either(
    theatre: Theatre,
) -> None:
    ann = await theatre.client()
    await ann.until(7)
    assert (await ann.say("on holiday till Tuesday")).get("break-started")
    for on, day in ((True, 0), (False, 1)):
        await ann.until(9, day=day)
        await theatre.stage.heard(people.block(theatre.stage.world, ann.facts.account, on=on))
    await the_day_closes(ann, 0)
    assert await verdicts(ann) == {0: ("excused", "break")}


@briefly
async def test_weeks_without_the_bot_are_judged_once_each_when_it_is_back(theatre: Theatre) -> None:
    ann = await monday_and_thursday(theatre)
    await done(ann, 0)
    await ann.until(22, day=1)
    await theatre.close()
    await theatre.open(ann.at(9, day=15))
    assert await verdicts(ann) == {
        0: ("counted", ""),
        **dict.fromkeys((3, 7, 10), ("excused", "bot-down")),
    }
    await the_day_closes(ann, 14)
    assert (await verdicts(ann))[14] == ("excused", "bot-down")


@briefly
async def test_days_on_a_hold_are_excused_and_the_week_goes_on_after_its_release(
    theatre: Theatre,
) -> None:
    """Held from Monday to Thursday: Wednesday is excused, Friday is asked at the dose she named."""
    ann = await theatre.client(weekdays=(0, 2, 4), rest_days=1, days_min=3, bout_max=40)
    await ann.until(8, 30)
    await ann.say("chest pain")
    await ann.until(9, day=3)
    await released(ann, 20)
    ann.facts.total = 20
    await ann.until(20, 30, day=4)
    await the_day_closes(ann, 4)
    closed = await verdicts(ann)
    assert closed[0] == closed[2] == ("excused", "hold")
    assert closed[4] == ("missed", "no-answer")
    days = {line.at.date() for line in ann.texts("prompt")}
    assert days == {when(ann, 0), when(ann, 4)}
    assert sum(ann.asked()[1:]) == 20
