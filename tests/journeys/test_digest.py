"""One digest a clinician and week, at her hour, as the ledger stands then (K3, I8)."""

from collections.abc import Mapping
from datetime import timedelta
from functools import partial
from typing import Any

from scheduler.domain.people import Person, Role, State
from scheduler.ports import Tx
from scheduler.usecases import digests as usecase
from scheduler.usecases import figures
from tests.conftest import briefly
from tests.journeys.log import Line
from tests.journeys.theatre import MONDAY, Someone, Theatre


def digests(theatre: Theatre, account: int | None = None) -> list[Line]:
    """The digests that a clinician got, as their first page."""
    chat = account or theatre.dana
    return [
        each for each in theatre.lines() if each.bot and each.chat == chat and each.get("digest")
    ]


def rows(line: Line) -> dict[str, dict[str, Any]]:
    """The rows of a page by name."""
    said = line.get("digest")
    assert said is not None
    return {row["name"]: row for row in said.args["digest_rows"]}


async def scheduled(theatre: Theatre) -> None:
    """Dana's digest is due as for every clinician who joins."""
    now = theatre.stage.now
    await theatre.stage.house.store.run(lambda tx: usecase.schedule_all(tx, now))


async def a_week(theatre: Theatre, **more: Any) -> Someone:
    ann = await theatre.client(weekdays=(0, 6), rest_days=0, days_min=2, bout_max=40, **more)
    await scheduled(theatre)
    await ann.until(9)
    await ann.say("did 40")
    await ann.say("yes")
    return ann


async def test_the_digest_comes_once_on_monday_at_eight_with_days_still_open_marked(
    theatre: Theatre,
) -> None:
    ann = await a_week(theatre)
    await ann.until(9, day=6)
    await ann.say("did 12")
    await ann.until(7, 59, 59, day=7)
    assert digests(theatre) == []
    await ann.until(8, day=7)
    (page,) = digests(theatre)
    row = rows(page)["Ann"]
    assert (row["days"], row["needed"], row["open"]) == (1, 2, 1)  # Sunday closes at noon
    assert (row["reps_capped"], row["prescribed"]) == (52, 80)
    picture = [each for each in theatre.lines() if each.get("digest-picture")]
    assert len(picture) == 1
    await ann.until(8, day=13)
    assert len(digests(theatre)) == 1
    await ann.until(8, day=14)
    assert len(digests(theatre)) == 2


@briefly
async def test_after_a_monday_without_the_bot_the_digest_comes_late_and_once(
    theatre: Theatre,
) -> None:
    ann = await a_week(theatre)
    await ann.until(20, day=6)
    await theatre.close()
    await theatre.open(ann.at(15, day=7))
    assert [each.at for each in digests(theatre)] == [ann.at(15, day=7)]
    await ann.until(20, day=8)
    assert len(digests(theatre)) == 1


@briefly
async def test_her_own_day_and_hour_move_the_digest(theatre: Theatre) -> None:
    ann = await a_week(theatre)
    stage = theatre.stage
    await stage.say(theatre.dana, "/digest")
    await stage.press(theatre.dana, "dt")
    await stage.press(theatre.dana, "dw:2")
    await stage.press(theatre.dana, "dh:17")
    shown = len(digests(theatre))
    await ann.until(16, 59, 59, day=9)
    assert len(digests(theatre)) == shown
    await ann.until(17, day=9)
    assert len(digests(theatre)) == shown + 1


@briefly
async def test_the_file_comes_only_where_the_practice_allows_files(theatre: Theatre) -> None:
    ann = await a_week(theatre)
    await ann.until(8, day=7)
    assert not [each for each in theatre.lines() if each.get("digest-file")]
    await theatre.stage.house.store.run(lambda tx: tx.book.put("files_in_chat", "yes"))
    await ann.until(8, day=14)
    assert len([each for each in theatre.lines() if each.get("digest-file")]) == 1


@briefly
async def test_who_needs_her_stands_first_with_the_reason(theatre: Theatre) -> None:
    ann = await a_week(theatre)
    bo = await theatre.client("Bo", weekdays=(0,), days_min=1)
    await bo.say("chest pain")
    await ann.until(8, day=7)
    said = digests(theatre)[0].get("digest")
    assert said is not None
    first, *_ = said.args["digest_rows"]
    assert first["name"] == "Bo"
    assert first["reasons"][0]["kind"] == "hold"
    assert said.args["need"] == 1 + bool(rows(digests(theatre)[0])["Ann"]["reasons"])


def test_of_those_who_need_her_alike_the_worst_pain_stands_first_and_the_others_by_name() -> None:
    def line(name: str, pain: int | None, *reasons: str, urgent: bool = False) -> dict[str, Any]:
        return {"name": name, "client": 1, "pain": pain, "reasons": [*reasons], "urgent": urgent}

    lines = [
        line("Zoe", 9),
        line("Gil", None, "fall", urgent=True),
        line("Flo", 2, "silent"),
        line("Cy", 7, "silent"),
        line("Bo", None, "silent"),
        line("Ann", None),
    ]
    ordered = sorted(lines, key=usecase.who_needs_her)
    assert [each["name"] for each in ordered] == ["Gil", "Cy", "Flo", "Bo", "Ann", "Zoe"]


@briefly
async def test_a_clinician_reads_of_her_own_clients_only(theatre: Theatre) -> None:
    ann = await a_week(theatre)
    account = theatre.account("Eve")

    def eve(tx: Tx) -> int:
        person = Person(0, Role.CLINICIAN, "Eve", "qps", State.READY, account=account)
        return tx.people.add(person, None).id

    theatre.stage.ids["Eve"] = await theatre.stage.house.store.run(eve)
    theatre.may_read[account] = {"Eve"}
    await scheduled(theatre)
    await ann.until(8, day=7)
    assert digests(theatre, account) == []
    number = digests(theatre)[0].get("digest")
    assert number is not None
    forged = await theatre.stage.house.store.run(
        partial(_page, clinician=theatre.stage.ids["Eve"], number=number.args["number"], page=0)
    )
    assert forged == {}
    await theatre.stage.say(account, "/digest")
    assert digests(theatre, account) == []
    assert theatre.lines()[-1].ids == ("digest-nobody",)


@briefly
async def test_a_digest_of_five_hundred_clients_is_paged_and_stays_as_it_was_made(
    theatre: Theatre,
) -> None:
    ann = await a_week(theatre)
    run, dana, now = theatre.stage.house.store.run, theatre.stage.ids["Dana"], theatre.stage.now

    def many(tx: Tx) -> int | None:
        (line,) = figures.lines(tx, [ann.facts.person], MONDAY, now)
        lines = [{**line, "name": f"Client {n}"} for n in range(500)]
        body = {"week": "2027-W10", "first": "2027-03-08", "last": "2027-03-14", "lines": lines}
        return tx.digests.keep(dana, MONDAY + timedelta(days=70), body, now)

    number = await run(many)
    assert number is not None
    seen: list[str] = []
    for page in range(-(-500 // usecase.PAGE)):
        said = await run(partial(_page, clinician=dana, number=number, page=page))
        seen += [row["name"] for row in said["digest_rows"]]
        assert said["page"] == page + 1
    assert seen == [f"Client {n}" for n in range(500)]
    assert await run(partial(_page, clinician=dana + 999, number=number, page=0)) == {}


def _page(tx: Tx, clinician: int, number: int, page: int) -> Mapping[str, Any]:
    return usecase.page(tx, clinician, number, page).message[0].args
