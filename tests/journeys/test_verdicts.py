"""A judgement is final except by the clinician's correction (Z2); what follows from it is looked at again."""

from datetime import timedelta

from tests.conftest import briefly
from tests.journeys.test_week import (
    args,
    done,
    flags,
    kinds,
    monday_and_thursday,
    the_day_closes,
    verdicts,
    when,
)
from tests.journeys.theatre import Someone, Theatre


async def corrected(who: Someone, day: int, choice: str) -> str:
    """Dana corrects a day by taps; the id of the answer."""
    stage, dana, client = who.theatre.stage, who.theatre.dana, who.facts.person
    date = when(who, day).isoformat()
    await stage.say(dana, "/clients")
    await stage.press(dana, f"c:{client}")
    await stage.press(dana, f"jl:{client}")
    await stage.press(dana, f"jd:{client}:{date}")
    await stage.press(dana, f"jv:{client}:{date}:{choice}")
    latest = [line for line in who.theatre.lines() if line.bot and line.chat == dana][-1]
    return latest.ids[0]


async def test_a_day_excused_by_the_clinician_closes_the_flag_of_missed_days_and_is_audited(
    theatre: Theatre,
) -> None:
    ann = await monday_and_thursday(theatre)
    await the_day_closes(ann, 3)
    assert "missed-days" in await kinds(ann)
    assert await corrected(ann, 3, "excused") == "verdict-kept"
    assert await verdicts(ann) == {0: ("missed", "no-answer"), 3: ("excused", "clinician")}
    assert "missed-days" not in await kinds(ann)
    await the_day_closes(ann, 5)
    assert (await verdicts(ann))[3] == ("excused", "clinician")  # judged once: it stays
    assert await corrected(ann, 3, "not") == "verdict-kept"
    assert (await verdicts(ann))[3] == ("missed", "clinician")


@briefly
async def test_a_day_that_is_said_to_count_brings_the_week_back_into_reach(
    theatre: Theatre,
) -> None:
    ann = await monday_and_thursday(theatre)
    await done(ann, 3)
    await the_day_closes(ann, 6)
    assert "week-out-of-reach" in await kinds(ann)
    assert await corrected(ann, 0, "counted") == "verdict-kept"
    assert (await verdicts(ann))[0] == ("counted", "")
    assert "week-out-of-reach" not in await kinds(ann)


@briefly
async def test_a_day_said_not_to_count_puts_the_week_out_of_reach_at_once(
    theatre: Theatre,
) -> None:
    ann = await monday_and_thursday(theatre)
    await done(ann, 0)
    await done(ann, 3)
    await the_day_closes(ann, 6)
    assert "week-out-of-reach" not in await kinds(ann)
    assert await corrected(ann, 0, "not") == "verdict-kept"
    assert (await verdicts(ann))[0] == ("partial", "clinician")
    (flag,) = [each for each in await flags(ann) if each.kind == "week-out-of-reach"]
    assert flag.details["counted"] == 1
    assert ann.done(0) == 40  # the record of what she did is not touched


@briefly
async def test_a_day_still_open_is_not_there_to_be_corrected(theatre: Theatre) -> None:
    ann = await monday_and_thursday(theatre)
    await ann.until(11, 59, 59, day=1)
    stage, client = theatre.stage, ann.facts.person
    await stage.say(theatre.dana, "/clients")
    await stage.press(theatre.dana, f"c:{client}")
    await stage.press(theatre.dana, f"jl:{client}")
    latest = [line for line in theatre.lines() if line.bot and line.chat == theatre.dana][-1]
    said = latest.get("judged-days")
    assert said is not None
    assert said.args["closed"] == []
    await stage.step(stage.now + timedelta(seconds=1))
    await stage.press(theatre.dana, f"c:{client}")
    await stage.press(theatre.dana, f"jl:{client}")
    latest = [line for line in theatre.lines() if line.bot and line.chat == theatre.dana][-1]
    said = latest.get("judged-days")
    assert said is not None
    assert said.args["closed"] == [{"day": "2027-03-08", "cell": "missed"}]


@briefly
async def test_a_day_made_up_is_free_again_when_the_day_itself_counts_after_all(
    theatre: Theatre,
) -> None:
    ann = await theatre.client(weekdays=(0, 2), rest_days=1, days_min=2, bout_max=40)
    await ann.until(8, day=1)
    friday = when(ann, 4).isoformat()
    assert args(ann, "make-up")["instead"] == friday
    await ann.press("mu:1")
    await the_day_closes(ann, 0)
    assert await corrected(ann, 0, "counted") == "verdict-kept"
    assert args(ann, "made-up-not-needed")["day"] == friday
    await done(ann, 2)
    await ann.until(21, day=4)
    assert not [line for line in ann.texts("prompt") if ann.facts.day(line.at) == when(ann, 4)]
