"""What a client answers, in buttons and in words, and what it does to her day."""

import pytest

from bot.rehearsal import people
from tests.conftest import briefly
from tests.journeys.optimum import best, minute
from tests.journeys.theatre import Someone, Theatre

DAY = "08:00-20:00"


async def at_first_prompt(theatre: Theatre, minutes: int = 0, **plan: object) -> Someone:
    """A client who was asked at 08:00, so many minutes later."""
    ann = await theatre.client(**plan)  # type: ignore[arg-type]
    await ann.until(8, minutes)
    assert ann.times() == ["08:00"]
    return ann


def flags(theatre: Theatre) -> list[tuple[str, int]]:
    """Kind and reps of the flags that reached the clinician."""
    found = [line.get("flag") for line in theatre.lines() if line.chat == theatre.dana]
    return [(each.args["kind"], each.args.get("reps", 0)) for each in found if each]


# --- fewer, more, skip ---------------------------------------------------------------------------


async def test_fewer_than_asked_are_logged_and_the_rest_is_spread_anew(theatre: Theatre) -> None:
    ann = await at_first_prompt(theatre, 5, total=30)
    question = await ann.tap("few")
    assert question.texts[0].args["asked"] == 10
    answer = await ann.press("n:6")
    assert answer.texts[0].args["reps"] == 6
    times = best(DAY, 3, last=minute("08:05"))
    for at in times:
        await ann.until(*map(int, at.split(":")))
        await ann.tap("all")
    assert ann.times()[1:] == times
    assert ann.asked() == [10, 8, 8, 8]  # 24 left in three bouts
    assert ann.done() == 30


@briefly
async def test_more_than_asked_leaves_less_for_the_rest_of_the_day(theatre: Theatre) -> None:
    ann = await at_first_prompt(theatre, 2, total=40)
    await ann.say("did 14")
    for at in best(DAY, 3, last=minute("08:02")):
        await ann.until(*map(int, at.split(":")))
        await ann.tap("all")
    assert ann.asked() == [10, 9, 9, 8]
    assert ann.done() == 40
    assert flags(theatre) == []


@briefly
async def test_a_skip_drops_its_reps_and_no_other_bout_grows(theatre: Theatre) -> None:
    ann = await at_first_prompt(theatre, 5, total=30, bout_max=20)
    answer = await ann.tap("skp")
    assert answer.ids == ("skipped",)
    for at in best(DAY, 2, not_before=minute("10:00")):  # the gap counts from the prompt
        await ann.until(*map(int, at.split(":")))
        await ann.say("done")
    assert ann.times() == ["08:00", *best(DAY, 2, not_before=minute("10:00"))]
    assert ann.asked() == [10, 10, 10]
    assert ann.done() == 20


@briefly
async def test_a_skip_of_everything_in_words_ends_the_day_quietly(theatre: Theatre) -> None:
    ann = await at_first_prompt(theatre, 5, total=10)
    assert (await ann.say("skip")).ids == ("skipped", "no-more-today")
    assert (await ann.say("skip")).ids == ("nothing-open",)
    await ann.until(12, day=1)
    assert len(ann.prompted()) == 1


@briefly
async def test_reps_beyond_the_total_are_kept_gently_noted_and_flagged_past_half_as_much(
    theatre: Theatre,
) -> None:
    ann = await at_first_prompt(theatre, total=20, bout_max=100)
    await ann.until(9)  # from now on Dana works, and such flags reach her at once
    await ann.say("20")
    assert (await ann.say("10")).ids == ("logged", "more-than-planned", "day-done")
    assert flags(theatre) == []  # 30 of 20 is 150 %, not over it
    await ann.say("1")
    assert flags(theatre) == [("too-much", 1)]
    await ann.say("1")
    assert len(flags(theatre)) == 1  # one flag an episode (I7)
    assert ann.done() == 32


@pytest.mark.parametrize(("reps", "flagged"), [(14, []), (15, [("too-much", 15)])])
@briefly
async def test_one_log_above_the_bout_maximum_by_half_flags_the_day(
    theatre: Theatre, reps: int, flagged: list[tuple[str, int]]
) -> None:
    ann = await at_first_prompt(theatre, total=40)
    await ann.until(9)
    await ann.say(f"did {reps}")
    assert flags(theatre) == flagged


@briefly
async def test_a_movement_counted_on_each_side_says_so_with_every_number(
    theatre: Theatre,
) -> None:
    ann = await at_first_prompt(theatre, total=30, movement="stomp")
    assert ann.prompted()[0].args["per_side"] is True
    assert (await ann.say("10 each side")).texts[0].args["done"] == 10
    await ann.until(14)
    answer = await ann.say("8 per side")
    assert (answer.texts[0].args["reps"], answer.texts[0].args["per_side"]) == (8, True)


@briefly
async def test_half_is_half_of_the_bout_asked_rounded_up(theatre: Theatre) -> None:
    ann = await at_first_prompt(theatre, total=21, bout=7)
    assert (await ann.say("half")).texts[0].args["reps"] == 4


# --- numbers that are asked back -----------------------------------------------------------------


@briefly
async def test_three_times_the_bout_is_logged_and_one_more_is_asked_back(
    theatre: Theatre,
) -> None:
    ann = await at_first_prompt(theatre, total=100)
    assert (await ann.say("31")).ids == ("ask-reps-sure",)
    assert ann.done() == 0
    assert (await ann.press("sure:0")).ids == ("ask-reps",)
    assert (await ann.say("30")).ids[0] == "logged"
    assert ann.done() == 30
    await ann.say("31")
    assert (await ann.say("yes")).texts[0].args["reps"] == 31
    assert ann.done() == 61


@briefly
async def test_a_number_over_500_is_never_logged_and_500_only_when_she_is_sure(
    theatre: Theatre,
) -> None:
    ann = await at_first_prompt(theatre, total=100)
    assert (await ann.say("501")).ids == ("ask-reps-unclear",)
    assert (await ann.say("501 reps")).get("logged") is None
    assert ann.done() == 0
    assert (await ann.say("500")).ids == ("ask-reps-sure",)
    await ann.press("sure:1")
    assert ann.done() == 500


@briefly
async def test_words_that_could_be_two_numbers_are_asked_back(theatre: Theatre) -> None:
    ann = await at_first_prompt(theatre, total=40)
    assert (await ann.say("10-12")).ids == ("ask-reps-unclear",)
    assert ann.done() == 0
    await ann.say("11")
    assert ann.done() == 11


# --- later ---------------------------------------------------------------------------------------


async def test_a_bout_can_be_put_off_three_times_and_the_fourth_time_stays_open(
    theatre: Theatre,
) -> None:
    ann = await at_first_prompt(theatre, total=20)
    for at in ("08:30", "09:00", "09:30"):
        answer = await ann.tap("lat")
        assert answer.ids == ("put-off",)
        assert answer.texts[0].args["next"] == f"2027-03-08T{at}"
        await ann.until(*map(int, at.split(":")))
    assert ann.times() == ["08:00", "08:30", "09:00", "09:30"]
    assert (await ann.tap("lat")).ids == ("later-no-more",)
    assert (await ann.tap("all")).texts[0].args["done"] == 10
    await ann.until(20)
    assert (await ann.tap("lat")).ids == ("later-too-late",)  # another bout, counted anew
    assert ann.asked() == [10] * 5


@pytest.mark.parametrize(
    ("words", "at"),
    [("in 20 min", "08:25"), ("at 11", "11:00"), ("later at 3 pm", "15:00"), ("later", "08:35")],
)
@briefly
async def test_later_waits_until_the_time_said(theatre: Theatre, words: str, at: str) -> None:
    ann = await at_first_prompt(theatre, 2, total=20)  # "later" alone is half an hour (ours)
    assert (await ann.say(words)).texts[0].args["next"] == f"2027-03-08T{at}"
    await ann.until(20)
    assert ann.times()[:2] == ["08:00", at]
    assert ann.asked()[:2] == [10, 10]


@briefly
async def test_later_that_no_longer_fits_is_refused_and_the_prompt_stays_open(
    theatre: Theatre,
) -> None:
    ann = await at_first_prompt(theatre, total=10)
    assert (await ann.say("later at 8:05 pm")).ids == ("later-too-late",)
    assert (await ann.say("later at 8 pm")).texts[0].args["next"] == "2027-03-08T20:00"
    await ann.until(20)
    assert (await ann.tap("lat")).ids == ("later-too-late",)
    await ann.until(20, 30)
    assert (await ann.tap("all")).texts[0].args["done"] == 10


@briefly
async def test_what_is_too_late_is_told_with_the_last_time_that_works(theatre: Theatre) -> None:
    """Also before anything was logged, and where that time is inside a quiet time or beside the gap."""
    ann = await at_first_prompt(theatre, total=10, window="08:00-20:02", quiet="19:30-20:02")
    answer = await ann.say("later at 9 pm")
    assert answer.texts[0].args["next"] == "2027-03-08T19:30"
    assert (await ann.say("later at 7:31 pm")).ids == ("later-too-late",)
    assert (await ann.say("later at 7:30 pm")).texts[0].args["next"] == "2027-03-08T19:30"


@briefly
async def test_a_bout_is_put_off_to_the_end_of_the_hours_also_within_the_gap_of_its_prompt(
    theatre: Theatre,
) -> None:
    ann = await at_first_prompt(theatre, total=10, window="08:00-09:30")  # the gap is 2 hours
    assert (await ann.say("at 9:31")).texts[0].args["next"] == "2027-03-08T09:30"
    assert (await ann.say("at 9:30")).ids == ("put-off",)
    await ann.until(9, 30)
    assert ann.times() == ["08:00", "09:30"]


@briefly
async def test_later_said_before_the_prompt_never_brings_it_nearer(theatre: Theatre) -> None:
    ann = await at_first_prompt(theatre, total=30)
    await ann.tap("all")
    await ann.until(9)
    assert (await ann.say("in 20 min")).texts[0].args["next"] == "2027-03-08T14:00"
    await ann.until(9, 30)
    assert (await ann.say("later at 4 pm")).texts[0].args["next"] == "2027-03-08T16:00"
    await ann.until(20)
    assert ann.times() == ["08:00", "16:00", "20:00"]


@pytest.mark.parametrize(
    ("verb", "said", "args"),
    [
        ("lat", "nothing-open", {"done": 0, "next": "2027-03-09T08:00"}),
        ("skp", "skipped", {"day": "2027-03-08", "done": 9}),
    ],
)
@briefly
async def test_an_old_button_of_yesterday_is_not_answered_with_yesterdays_reps_as_todays(
    theatre: Theatre, verb: str, said: str, args: dict[str, object]
) -> None:
    ann = await at_first_prompt(theatre, total=20, weekdays=(0, 1))
    await ann.say("9")
    await ann.until(7, 59, day=1)
    second = ann.prompted()[1].args["bout"]  # nobody answered it; its nudge keeps its buttons
    answer = await ann.tap(verb, second)
    assert answer.ids == (said,)
    assert args.items() <= answer.texts[0].args.items()


# --- undo ----------------------------------------------------------------------------------------


@briefly
async def test_undo_takes_the_entry_back_and_its_prompt_waits_again(theatre: Theatre) -> None:
    ann = await at_first_prompt(theatre, 5, total=20)
    await ann.tap("all")
    undone = await ann.say("undo")
    assert undone.texts[0].args["done"] == 0
    assert undone.texts[0].args["next"] is None  # the prompt of 08:00 is open again
    assert ann.done() == 0
    await ann.until(8, 9)
    assert (await ann.say("done")).texts[0].args["reps"] == 10
    await ann.until(20)
    assert ann.times() == ["08:00", *best(DAY, 1, last=minute("08:09"))]
    assert ann.done() == 10


@briefly
async def test_undo_goes_back_entry_by_entry_and_says_when_there_is_none_left(
    theatre: Theatre,
) -> None:
    ann = await at_first_prompt(theatre, total=40)
    await ann.say("10")
    await ann.say("4")
    assert (await ann.say("undo")).texts[0].args["done"] == 10
    assert (await ann.say("/undo")).texts[0].args["done"] == 0
    assert (await ann.say("undo")).ids == ("undo-nothing",)


@briefly
async def test_yesterday_can_be_undone_until_noon(theatre: Theatre) -> None:
    ann = await at_first_prompt(theatre, total=20)
    await ann.say("10")
    await ann.say("2")
    await ann.until(11, 59, 59, day=1)
    assert (await ann.say("undo")).texts[0].args["day"] == "2027-03-08"
    await ann.until(12, day=1)
    assert (await ann.say("undo")).ids == ("undo-nothing",)
    assert ann.done() == 10


@briefly
async def test_undo_takes_back_what_was_logged_last_also_where_that_was_for_yesterday(
    theatre: Theatre,
) -> None:
    ann = await at_first_prompt(theatre, total=20, weekdays=(0, 1))
    await ann.until(8, day=1)
    await ann.say("9")
    await ann.say("yesterday 12")
    assert (await ann.say("undo")).texts[0].args["day"] == "2027-03-08"
    assert (ann.done(), ann.done(1)) == (0, 9)
    assert (await ann.say("undo")).texts[0].args["done"] == 0
    assert (await ann.say("undo")).ids == ("undo-nothing",)


@briefly
async def test_what_is_told_late_of_yesterday_moves_no_bout_of_today(theatre: Theatre) -> None:
    """When it was done is not known; it was not just now (P9)."""
    ann = await at_first_prompt(theatre, total=40, weekdays=(0, 1))
    await ann.until(8, day=1)
    await ann.say("10")
    await ann.until(11, day=1)
    await ann.say("yesterday 12")
    await ann.until(12, day=1)
    assert ann.times()[-1] == "12:00" == best(DAY, 3, last=minute("08:00"))[0]


# --- replies, edits, repeats ---------------------------------------------------------------------


@briefly
async def test_a_reply_to_an_old_prompt_counts_for_it_and_leaves_the_open_one_open(
    theatre: Theatre,
) -> None:
    ann = await at_first_prompt(theatre, total=20, window="08:00-12:00")
    await ann.until(12, 1)
    first, second = ann.texts("prompt")
    await ann.say("8", reply_to=first.message_id)
    assert (await ann.tap("all")).texts[0].args["done"] == 18
    bouts = [row.bout for row in ann.ledger()]
    assert bouts == [line.texts[i].args["bout"] for line, i in ((first, 1), (second, 0))]


async def test_an_edited_message_replaces_the_reps_it_logged(theatre: Theatre) -> None:
    ann = await at_first_prompt(theatre, total=40)
    await ann.say("8")
    answer = await ann.edit("did 9")
    assert answer.ids[0] == "logged"
    assert answer.texts[0].args["done"] == 9
    assert (await ann.edit("did 9 today")).ids == ("already-logged",)
    assert (await ann.edit("did 900")).ids == ("edit-kept",)
    assert ann.done() == 9


@briefly
async def test_an_edit_to_half_or_all_of_the_bout_replaces_the_reps_too(theatre: Theatre) -> None:
    ann = await at_first_prompt(theatre, total=40)
    await ann.say("8")
    assert (await ann.edit("half")).texts[0].args["done"] == 5
    assert (await ann.edit("all of them")).texts[0].args["done"] == 10
    assert ann.done() == 10


@briefly
async def test_an_edit_that_names_another_day_changes_nothing_and_says_so(theatre: Theatre) -> None:
    ann = await at_first_prompt(theatre, total=40)
    await ann.say("8")
    assert (await ann.edit("yesterday 8")).ids == ("edit-kept",)
    assert (await ann.edit("yesterday 7")).ids == ("edit-kept",)
    assert ann.done() == 8
    await ann.say("yesterday 6")
    assert (await ann.edit("yesterday 5")).texts[0].args["done"] == 5
    assert (ann.done(-1), ann.done()) == (5, 8)


@briefly
async def test_an_edit_of_a_message_that_logged_nothing_is_read_like_a_new_one(
    theatre: Theatre,
) -> None:
    ann = await at_first_prompt(theatre, total=40)
    assert (await ann.say("zwoelf")).ids == ("not-understood",)
    assert (await ann.edit("12")).texts[0].args["done"] == 12
    assert ann.done() == 12


@briefly
async def test_an_edit_after_its_day_has_closed_changes_nothing(theatre: Theatre) -> None:
    ann = await at_first_prompt(theatre, total=40)
    await ann.say("8")
    await ann.until(11, 59, 59, day=1)
    assert (await ann.edit("9")).texts[0].args["done"] == 9
    await ann.until(12, day=1)
    assert (await ann.edit("10")).ids == ("day-over",)
    assert ann.done() == 9


async def test_a_button_pressed_twice_logs_once(theatre: Theatre) -> None:
    ann = await at_first_prompt(theatre, total=20)
    prompt = ann.texts("prompt")[0]
    data = f"all:{ann.prompted()[0].args['bout']}"
    taps = [
        people.press(theatre.stage.world, ann.facts.account, prompt.message_id, data)
        for _ in range(2)
    ]
    await theatre.stage.heard(taps)
    assert [line.ids[0] for line in ann.heard()] == ["day-opening", "logged"]
    pressed = theatre.stage.world.presses.values()
    assert [(each.answered, each.answer) for each in pressed] == [(True, "")] * len(taps)
    assert len(ann.ledger()) == 1


@briefly
async def test_an_update_delivered_twice_logs_once_and_is_answered_once(theatre: Theatre) -> None:
    ann = await at_first_prompt(theatre, total=40)
    await ann.say("7")
    before = ann.heard()
    await ann.said_twice()
    await ann.tap("skp", ann.prompted()[0].args["bout"])  # by now the repeated one has been heard
    assert ann.heard()[:-1] == before
    assert [row.reps for row in ann.ledger()] == [7]


@briefly
async def test_an_old_button_of_a_bout_that_was_done_logs_nothing_more(theatre: Theatre) -> None:
    ann = await at_first_prompt(theatre, total=20)
    prompt, bout = ann.texts("prompt")[0], ann.prompted()[0].args["bout"]
    await ann.say("10")
    for verb in ("all", "few", "lat", "skp"):
        answer = await ann.press(f"{verb}:{bout}", prompt.message_id)
        assert answer.ids == ("already-logged",), verb
        await _restore(theatre, prompt.message_id, f"{verb}:{bout}")
    assert ann.done() == 10


async def _restore(theatre: Theatre, message_id: int, data: str) -> None:
    """The next press comes by a phone that still shows the buttons."""
    buttons = [[{"text": verb, "callback_data": f"{verb}:{data.partition(':')[2]}"}]
               for verb in ("all", "few", "lat", "skp")]  # fmt: skip
    theatre.stage.world.messages[message_id].markup = {"inline_keyboard": buttons}


@briefly
async def test_what_is_not_understood_is_said_so_and_passed_on_when_she_wants(
    theatre: Theatre,
) -> None:
    ann = await at_first_prompt(theatre, total=20)
    await ann.until(9)
    assert (await ann.say("the cat sat on the mat")).ids == ("not-understood",)
    await ann.press("pass:1")
    assert flags(theatre) == [("words", 0)]
    assert ann.ledger() == []
    assert (await ann.tap("all")).texts[0].args["done"] == 10  # the prompt is still open
