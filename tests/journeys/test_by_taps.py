"""One practice opened and one day kept with nothing but what people can do in their chats."""

from datetime import UTC, datetime, timedelta

from bot.rehearsal import story
from scheduler.domain.people import Role
from tests.journeys.facts import Facts, Hours
from tests.journeys.theatre import LISBON, MONDAY, Theatre

TAPS_TO_READY = 8
"""J4."""


async def test_from_an_empty_database_to_a_kept_day_by_taps_and_short_answers(
    theatre: Theatre,
) -> None:
    await theatre.open(datetime(2027, 3, 8, 5, tzinfo=UTC), practice=False)
    stage = theatre.stage
    theatre.kim = await stage.invite(Role.ADMIN, "Kim", language="qps")
    for name, value in story.PRACTICE.items():
        await stage.say(theatre.kim, "/settings")
        await stage.press(theatre.kim, f"s:{name}")
        await stage.say(theatre.kim, value)
    theatre.dana = await stage.invite(Role.CLINICIAN, "Dana", language="qps")
    account = await stage.invite(Role.CLIENT, "Ann", language="qps", clinician="Dana")
    theatre.may_read = {theatre.kim: {"Kim", "Dana"}, theatre.dana: {"Dana"}}
    facts = Facts(
        "Ann", account, stage.ids["Ann"], theatre.dana, 40, 10, 10, timedelta(hours=2), (0, 3), 1,
        [Hours(stage.now, LISBON, (480, 1200))], None,
    )  # fmt: skip
    ann = theatre.knows(facts, MONDAY)

    await story.join(stage, account)
    taps = [line for line in ann.chat() if line.data]
    typed = [line for line in ann.chat() if not line.bot and not line.data]
    assert len(taps) <= TAPS_TO_READY
    assert len(typed) == 1  # the link itself
    assert ann.heard()[-1].ids == ("ready-waiting",)
    await ann.until(5, 30)
    assert ann.times() == []

    await story.prescribe(stage, theatre.dana, stage.ids["Ann"], "stomp", 40, 10)
    facts.cleared_at = stage.now
    for hour in (8, 12, 16, 20):
        await ann.until(hour)
        answer = await ann.tap("all")
    assert answer.ids == ("logged", "day-done")
    assert ann.times() == ["08:00", "12:00", "16:00", "20:00"]
    await ann.until(23, day=2)
    assert len(ann.prompted()) == 4  # Tuesday and Wednesday are rest days
    await ann.until(8, day=3)
    assert ann.times()[4:] == ["08:00"]
    assert ann.texts("prompt")[-1].at == ann.at(8, day=3)
