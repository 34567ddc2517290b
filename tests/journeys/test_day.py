"""Days that go as prescribed, start late, stay silent, or run past midnight.

Expected times: even gaps by arithmetic (a sum of one concave function of the gaps is largest when they are
equal), else by trying every place of the grid (`optimum.best`).
"""

from tests.conftest import briefly
from tests.journeys.optimum import best, minute
from tests.journeys.theatre import Theatre

DAY = "08:00-20:00"


async def test_a_kept_day_is_asked_at_even_times_and_ends_with_the_total(theatre: Theatre) -> None:
    ann = await theatre.client(total=40, bout=10)
    for hour in (8, 12, 16, 20):
        await ann.until(hour)
        answer = await ann.tap("all")
    await ann.until(12, day=1)
    assert ann.times() == ["08:00", "12:00", "16:00", "20:00"]
    assert [each.args["done"] for each in ann.prompted()] == [0, 10, 20, 30]
    assert ann.asked() == [10, 10, 10, 10]
    assert answer.ids == ("logged", "day-done")
    assert answer.texts[0].args["done"] == 40
    assert ann.heard()[-1] == answer
    assert ann.done() == 40


@briefly
async def test_the_first_prompt_alone_carries_the_day_and_the_cautions(theatre: Theatre) -> None:
    ann = await theatre.client(total=40, bout=10)
    await ann.until(8)
    await ann.tap("all")
    await ann.until(12)
    first, second = ann.texts("prompt")
    assert first.ids == ("day-opening", "prompt", "safety")
    opening = first.texts[0].args
    assert (opening["bouts"], opening["reps"], opening["total"]) == (4, 40, 40)
    assert (opening["first"], opening["last"]) == ("2027-03-08T08:00", "2027-03-08T20:00")
    assert second.ids == ("prompt",)
    assert not first.silent


@briefly
async def test_each_answer_says_when_the_next_bout_will_be(theatre: Theatre) -> None:
    ann = await theatre.client(total=30, bout=10)
    await ann.until(8, 17)
    told = (await ann.tap("all")).texts[0].args["next"]
    await ann.until(20)
    assert ann.texts("prompt")[1].at == ann.at(*map(int, told[-5:].split(":")))
    assert ann.times()[1:] == best(DAY, 2, last=minute("08:17"))


@briefly
async def test_a_late_start_moves_the_rest_of_the_day_to_the_best_times_left(
    theatre: Theatre,
) -> None:
    ann = await theatre.client(total=30, bout=10)
    await ann.until(10, 41)
    await ann.say("did 10")
    expected = best(DAY, 2, last=minute("10:41"))
    for at in expected:
        await ann.until(*map(int, at.split(":")))
        await ann.tap("all")
    assert ann.times() == ["08:00", *expected]
    assert ann.done() == 30


@briefly
async def test_a_bout_done_before_the_window_opens_keeps_its_gap(theatre: Theatre) -> None:
    ann = await theatre.client(total=30, bout=10)
    await ann.until(7, 12)
    answer = await ann.say("10")
    await ann.until(20)
    expected = best(DAY, 2, last=minute("07:12"))
    assert answer.texts[0].args["next"] == f"2027-03-08T{expected[0]}"
    assert ann.times()[0] == expected[0]


@briefly
async def test_a_start_too_late_for_the_rest_asks_only_for_what_fits(theatre: Theatre) -> None:
    ann = await theatre.client(total=40, bout=10)
    await ann.until(17, 59)
    await ann.say("10")
    await ann.until(23)
    # 12:00 and 16:00 were silent, 8:00 too: 10 done and 30 not answered, nothing is left to ask
    assert ann.times() == ["08:00", "12:00", "16:00", "20:00"]
    bo = await theatre.client("Bo", day=ann.first_day.replace(day=9), total=30, bout=10)
    await bo.until(8, 10)
    await bo.say("later at 6 pm")
    await bo.until(18)
    await bo.tap("all")
    await bo.until(23)
    assert bo.times() == ["08:00", "18:00", "20:00"]  # three bouts no longer fit
    assert bo.asked()[1:] == [10, 10]


@briefly
async def test_reps_that_do_not_fit_in_usual_bouts_go_in_larger_ones_up_to_the_maximum(
    theatre: Theatre,
) -> None:
    ann = await theatre.client(total=29, bout=10, bout_max=15, window="08:00-10:00")
    await ann.until(8)
    await ann.tap("all")
    await ann.until(10)
    assert ann.times() == ["08:00", "10:00"]
    assert ann.asked() == [15, 14]


@briefly
async def test_a_quiet_time_is_left_alone_but_for_its_first_minute(theatre: Theatre) -> None:
    ann = await theatre.client(total=30, bout=10, quiet="13:30-14:30")
    for hour, minutes in ((8, 0), (13, 30), (20, 0)):
        await ann.until(hour, minutes)
        await ann.tap("all")
    # 14:00 would be even; 13:30 and 14:30 give the same sum, and the earlier is taken
    assert ann.times() == ["08:00", "13:30", "20:00"]
    assert ann.times() == best(DAY, 3, quiet="13:30-14:30")


@briefly
async def test_a_silent_day_is_asked_once_a_bout_and_nudged_twice(theatre: Theatre) -> None:
    ann = await theatre.client(total=40, bout=10)
    await ann.until(12, day=1)
    assert ann.times() == ["08:00", "12:00", "16:00", "20:00"]
    assert ann.times("nudge") == ["10:00", "14:00"]  # halfway to expiry; none after two silent ones
    assert ann.times("no-answer") == ["12:00", "16:00", "20:00", "21:00"]
    assert all(line.edit for line in ann.texts("no-answer"))
    assert ann.done() == 0


@briefly
async def test_a_silent_bout_is_dropped_and_never_added_to_the_others(theatre: Theatre) -> None:
    ann = await theatre.client(total=40, bout=10, bout_max=20)
    await ann.until(12)
    await ann.tap("all")
    await ann.until(23)
    assert ann.asked() == [10, 10, 10, 10]
    assert ann.times() == ["08:00", "12:00", *best(DAY, 2, last=minute("12:00"))]


@briefly
async def test_the_last_prompt_waits_an_hour_and_not_a_second_longer(theatre: Theatre) -> None:
    ann = await theatre.client(total=20, bout=10)
    await ann.until(8)
    await ann.tap("all")
    await ann.until(20, 59, 59)
    assert ann.times("no-answer") == []
    assert ann.times("nudge") == ["20:30"]
    await ann.until(21)
    assert ann.times("no-answer") == ["21:00"]
    answer = await ann.tap("all")  # an old button still does the right thing
    assert answer.texts[0].args["done"] == 20
    assert ann.done() == 20


@briefly
async def test_a_prompt_expires_when_the_next_is_due_and_an_answer_before_that_is_for_it(
    theatre: Theatre,
) -> None:
    ann = await theatre.client(total=20, bout=10, window="08:00-12:00")
    await ann.until(11, 59, 59)
    assert ann.times() == ["08:00"]
    answer = await ann.say("10")
    assert answer.ids == ("logged", "no-more-today")  # two hours on the window is over
    bo = await theatre.client(
        "Bo", day=ann.first_day.replace(day=9), total=20, bout=10, window="08:00-12:00"
    )
    await bo.until(12)
    assert bo.times() == ["08:00", "12:00"]
    assert bo.times("no-answer") == ["12:00"]


@briefly
async def test_a_prompt_that_was_answered_is_not_nudged(theatre: Theatre) -> None:
    ann = await theatre.client(total=20, bout=10)
    await ann.until(13, 59, 59)
    assert ann.times("nudge") == []
    await ann.tap("all")
    await ann.until(19, 59)
    assert ann.times("nudge") == []


@briefly
async def test_somebody_who_answers_only_when_nudged_is_nudged_twice_a_day(
    theatre: Theatre,
) -> None:
    ann = await theatre.client(total=50, bout=10, gap=60)
    nudges = 0
    while theatre.stage.now < ann.at(21):
        await ann.next(ann.at(21))
        if len(ann.texts("nudge")) > nudges:
            nudges += 1
            await ann.tap("all")
    assert nudges == 2


@briefly
async def test_the_day_is_open_until_noon_of_the_next(theatre: Theatre) -> None:
    ann = await theatre.client(total=40, bout=10)
    await ann.until(11, 59, 59, day=1)
    taken = await ann.say("yesterday 30")
    assert taken.ids == ("logged",)
    assert taken.texts[0].args["day"] == "2027-03-08"
    assert ann.done() == 30
    await ann.until(12, day=1)
    refused = await ann.say("yesterday 10")
    assert refused.ids == ("day-over",)
    assert refused.texts[0].args["day"] == "2027-03-08"
    assert (ann.done(), ann.done(1)) == (30, 0)


async def test_after_midnight_a_button_counts_for_its_day_and_a_number_for_the_new_one(
    theatre: Theatre,
) -> None:
    ann = await theatre.client(total=20, bout=10)
    await ann.until(0, 30, day=1)
    button = await ann.tap("all")
    assert button.texts[0].args["day"] == "2027-03-08"
    number = await ann.say("did 6")
    assert number.ids == ("logged", "rest-day-noted")
    assert number.texts[0].args["day"] is None
    assert (ann.done(), ann.done(1)) == (10, 6)


@briefly
async def test_yesterdays_button_before_noon_counts_and_at_noon_says_that_the_day_is_over(
    theatre: Theatre,
) -> None:
    ann = await theatre.client(total=20, bout=10)
    await ann.until(11, 59, 59, day=1)
    first, second = (each.args["bout"] for each in ann.prompted())
    counted = await ann.tap("all", second)
    assert counted.texts[0].args["day"] == "2027-03-08"
    await ann.until(12, day=1)
    for verb in ("all", "few"):
        assert (await ann.tap(verb, first)).ids == ("day-over",)
    assert ann.done() == 10


@briefly
async def test_the_day_after_a_load_day_is_a_rest_day_whatever_the_plan_says(
    theatre: Theatre,
) -> None:
    ann = await theatre.client(total=20, bout=10, weekdays=(1, 3), rest_days=1)
    await ann.until(18)
    await ann.say("5")  # Monday: more than a fifth of a day, unplanned (P8)
    await ann.until(23, day=1)
    assert ann.times() == []
    bo = await theatre.client("Bo", day=ann.first_day.replace(day=10), total=20, bout=10,
                              weekdays=(3,), rest_days=1)  # fmt: skip
    await bo.until(18)
    await bo.say("4")  # a fifth exactly is not a load
    await bo.until(8, day=1)
    assert bo.times() == ["08:00"]


async def test_two_clients_of_one_practice_go_through_their_days_side_by_side(
    theatre: Theatre,
) -> None:
    ann = await theatre.client("Ann", total=20)
    bo = await theatre.client("Bo", total=20, bout_max=30)
    await ann.until(8)
    await ann.tap("all")
    await bo.say("20")
    await ann.until(20)
    assert (ann.times(), bo.times()) == (["08:00", "20:00"], ["08:00"])
    assert (ann.done(), bo.done()) == (10, 20)
