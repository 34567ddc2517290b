"""A season of an invented practice: 50 clients, 8 zones, both clock changes (I1 to I9)."""

from collections import Counter
from datetime import UTC, datetime, time, timedelta

import pytest

from scheduler.ports import Tx
from storage.engine import Database
from storage.store import SqlStore
from tests.conftest import on_sqlite
from tests.journeys.everyone import strangers, twice
from tests.journeys.invariants import Replay
from tests.journeys.log import Line
from tests.journeys.season import FIRST_DAY, WEEKS, OneThread, Season, ledgers

DIGESTS = WEEKS
"""One a week, on the Monday after it."""


@on_sqlite
@pytest.mark.parametrize("seed", [20270301, 20270302])
async def test_a_season_keeps_every_promise(database: Database, seed: int) -> None:
    """Half of the practice each, so that two processors share the work."""
    season = Season(OneThread(database), clients=25, clinicians=3, seed=seed)
    end = FIRST_DAY + timedelta(weeks=WEEKS)
    await season.play(datetime.combine(end, time(23), tzinfo=UTC))
    chats, books = season.by_chat(), ledgers(database)
    faults = [*strangers(season.lines, season.may_read), *twice(season.lines)]
    for account, facts in season.facts.items():
        lines = chats[account] + chats[facts.clinician]
        faults += Replay(facts, sorted(lines, key=lambda line: line.n), books[facts.person]).run()
    assert not faults, "\n".join(faults)
    something_happened(season, chats)
    one_digest_a_week_came_to_each_clinician(season, chats)
    every_day_was_judged_once(season, database)


def something_happened(season: Season, chats: dict[int, list[Line]]) -> None:
    """A season in which nobody is ever hurt, away or late would prove little."""
    said = Counter(each.id for line in season.lines for each in line.texts)
    for id_ in (
        *(
            "prompt",
            "logged",
            "skipped",
            "put-off",
            "no-answer",
            "nudge",
            "stop-today",
            "release-told",
        ),
        *(
            "break-started",
            "make-up-kept",
            "week-days",
            "ask-week",
            "flag",
            "flag-summary",
            "digest",
        ),
    ):
        assert said[id_] > 0, id_
    assert all(chats[account] for account in season.facts)


def one_digest_a_week_came_to_each_clinician(season: Season, chats: dict[int, list[Line]]) -> None:
    """I8: by number, and none left out."""
    for clinician in {facts.clinician for facts in season.facts.values()}:
        pages = [page for line in chats[clinician] if (page := line.get("digest"))]
        numbers = {page.args["number"] for page in pages}
        assert len(numbers) == DIGESTS


def every_day_was_judged_once(season: Season, database: Database) -> None:
    """Z2, Z3: no planned day of the season is left open, whatever the clocks did."""

    def unjudged(tx: Tx) -> list[str]:
        last = FIRST_DAY + timedelta(weeks=WEEKS, days=-2)
        return [
            f"{facts.name} on {day.day}"
            for facts in season.facts.values()
            for day in tx.days.between(facts.person, FIRST_DAY, last)
            if not day.verdict and day.day <= last
        ]

    assert SqlStore(database).run_sync(unjudged) == []
