"""Whatever people, the platform, the database and the process do, in any order: I1 to I9 hold.

A state machine of hypothesis over the inbox, dispatch, use cases, store and outbox; only the network is
left out. The same steps at every run. `BOUTWISE_STEPS=10000` (or 1000000) takes so many,
`BOUTWISE_STEPS_ON=postgresql` takes them there.
"""

from __future__ import annotations

import asyncio
import shutil
from collections import Counter
from collections.abc import Callable, Coroutine, Iterator
from contextlib import contextmanager
from datetime import timedelta
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

import pytest
from hypothesis import HealthCheck, Phase, settings
from hypothesis import strategies as st
from hypothesis.stateful import (
    RuleBasedStateMachine,
    initialize,
    precondition,
    rule,
    run_state_machine_as_test,
)

from storage.engine import Database, database_url
from storage.keys import Keyring
from storage.vault import unlock
from tests.reliability.breaking import HOWS, How, Trouble, install
from tests.reliability.practice import DANA, Fate, Practice, Prescribed
from tests.reliability.sizes import STEPS, STEPS_ON

STEPS_A_RUN = 50
MOST_CLIENTS = 3
CITIES = {
    "New York": "America/New_York",
    "Madrid": "Europe/Madrid",
    "Auckland": "Pacific/Auckland",
    "Honolulu": "Pacific/Honolulu",
    "Kathmandu": "Asia/Kathmandu",
}
WORDS = (
    *(
        "10",
        "5",
        "did 3",
        "12",
        "45",
        "all",
        "half",
        "done",
        "skip",
        "later",
        "in 20 min",
        "in 3 hours",
    ),
    *("undo", "yesterday 4", "/today", "/week", "blue kettle", "10-12", "yes", "no", "4"),
)
ACHES = (
    "my hip hurts, 8 of 10",
    "my knee hurts",
    "something hurts",
    "I fell",
    "my shoulder is sore",
)
FATES: tuple[Fate, ...] = (
    *("unknown-taken", "unknown-lost", "too-fast", "refused", "die-before", "die-after"),
)
PLANS = st.builds(
    Prescribed,
    zone=st.sampled_from(["Europe/Lisbon", *CITIES.values()]),
    total=st.sampled_from([10, 20, 40]),
    gap=st.sampled_from([60, 120]),
    window=st.sampled_from(["08:00-20:00", "09:30-18:00", "06:00-22:00"]),
    quiet=st.sampled_from([(), ("12:00-13:00",)]),
    weekdays=st.sampled_from([(0, 1, 2, 3, 4, 5, 6), (0, 2, 4), ()]),
    rest_days=st.just(0),
    bout_max=st.sampled_from([10, 20]),
)
WHO = st.integers(0, MOST_CLIENTS - 1)
NTH = st.integers(0, 3)


class Life(RuleBasedStateMachine):
    """One practice through one history. `fresh` gives an empty database for it."""

    fresh: Callable[[], Database]
    trouble: Trouble
    taken: Counter[str]

    def __init__(self) -> None:
        super().__init__()
        self.runner = asyncio.Runner()
        self.trouble.set()
        self.practice = Practice(type(self).fresh(), self.trouble)
        self.accounts: list[int] = []

    def do(self, step: Coroutine[Any, Any, object]) -> None:
        self.taken[getattr(step, "__name__", "")] += 1
        self.runner.run(step)

    def who(self, n: int) -> int:
        return self.accounts[n % len(self.accounts)]

    @initialize(plan=PLANS)
    def opens(self, plan: Prescribed) -> None:
        self.accounts.append(self.practice.enrol(plan))

    @precondition(lambda self: len(self.accounts) < MOST_CLIENTS and not self.trouble.armed)
    @rule(plan=PLANS)
    def enrols(self, plan: Prescribed) -> None:
        self.accounts.append(self.practice.enrol(plan))

    # --- time ---

    @rule(minutes=st.sampled_from([1, 7, 25, 70, 240]))
    def waits(self, minutes: int) -> None:
        self.do(self.practice.step(self.practice.now + timedelta(minutes=minutes)))

    @rule(n=WHO)
    def until_she_is_asked(self, n: int) -> None:
        seen, limit = len(self.practice.prompts[self.who(n)]), self.practice.now + timedelta(days=1)
        while len(self.practice.prompts[self.who(n)]) == seen and self.practice.now < limit:
            self.do(self.practice.step(self.practice.now + timedelta(minutes=30)))

    @rule(n=WHO)
    def until_the_day_closes(self, n: int) -> None:
        zone = ZoneInfo(self.practice.facts[self.who(n)].hours[-1].zone)
        noon = self.practice.now.astimezone(zone).replace(hour=12, minute=1) + timedelta(days=1)
        self.do(self.practice.step(noon))

    # --- people ---

    @rule(n=WHO, verb=st.sampled_from(["all", "few", "lat", "skp"]), back=NTH)
    def taps(self, n: int, verb: str, back: int) -> None:
        prompts = self.practice.prompts[self.who(n)]
        if prompts:
            message, bout = prompts[-1 - back % len(prompts)]
            self.do(self.practice.press(self.who(n), message, f"{verb}:{bout}"))

    @rule(n=WHO, back=NTH, nth=st.integers(0, 12))
    def taps_what_she_sees(self, n: int, back: int, nth: int) -> None:
        shown = [(m, data) for m, data in self.practice.buttons[self.who(n)].items() if data]
        if shown:
            message, data = sorted(shown)[-1 - back % len(shown)]
            self.do(self.practice.press(self.who(n), message, data[nth % len(data)]))

    @rule(n=WHO, words=st.sampled_from(WORDS))
    def says(self, n: int, words: str) -> None:
        self.do(self.practice.say(self.who(n), words))

    @rule(n=WHO, back=NTH, reps=st.integers(1, 12))
    def replies(self, n: int, back: int, reps: int) -> None:
        prompts = self.practice.prompts[self.who(n)]
        if prompts:
            message, _ = prompts[-1 - back % len(prompts)]
            self.do(self.practice.say(self.who(n), str(reps), message))

    @rule(n=WHO, words=st.sampled_from(["3", "did 11", "10-12", "kettle"]))
    def edits(self, n: int, words: str) -> None:
        self.do(self.practice.edit(self.who(n), words))

    @rule(n=WHO, words=st.sampled_from(ACHES))
    def hurts(self, n: int, words: str) -> None:
        self.do(self.practice.say(self.who(n), words))

    @rule(n=WHO, whole=st.booleans())
    def is_released(self, n: int, whole: bool) -> None:
        facts = self.practice.facts[self.who(n)]
        total = facts.total
        for data in (
            f"rd:{facts.person}:{total}",
            f"rf:{facts.person}:{total}:{'today' if whole else 'tomorrow'}",
        ):
            self.do(self.practice.press(DANA, 1, data))

    @rule(n=WHO, city=st.sampled_from(sorted(CITIES)))
    def changes_zone(self, n: int, city: str) -> None:
        # Past the minute: what is asked on the minute before is asked in the zone of before.
        self.do(self.practice.step(self.practice.now + timedelta(seconds=61)))
        self.do(self.practice.say(self.who(n), "/times"))
        self.do(self.practice.press(self.who(n), 1, "t:zone"))
        self.do(self.practice.say(self.who(n), city))
        self.do(self.practice.press(self.who(n), 1, "t:keep"))

    # --- what goes wrong ---

    @rule(back=NTH)
    def an_update_comes_again(self, back: int) -> None:
        known = len(self.practice.payloads)
        if known:
            self.do(self.practice.arrives(known - back % known))

    @rule(fates=st.lists(st.sampled_from(FATES), min_size=1, max_size=3))
    def sends_will_fail(self, fates: list[Fate]) -> None:
        """At most one refusal at a time: a message refused again and again is poison, and dropped."""
        seldom = [fate for n, fate in enumerate(fates) if fate != "refused" or n == 0]
        self.practice.fates = seldom

    @rule(how=st.sampled_from(HOWS), nth=st.integers(1, 40))
    def the_database_will_fail(self, how: How, nth: int) -> None:
        if not self.trouble.armed:
            self.trouble.set(nth, how, armed=True)

    @rule()
    def crashes(self) -> None:
        self.practice.crash()

    @rule()
    def restarts(self) -> None:
        self.practice.fates.clear()
        self.trouble.set()
        self.do(self.practice.restart())

    # --- the end ---

    @rule()
    def all_is_well(self) -> None:
        """Nothing goes wrong for a while: everything that must arrive has arrived, and all rules held."""
        self.practice.fates.clear()
        self.trouble.set()
        self.do(self.practice.step(self.practice.now + timedelta(minutes=3)))
        assert not (faults := self.practice.faults()), "\n".join(faults)

    def teardown(self) -> None:
        try:
            self.all_is_well()
            self.until_the_day_closes(0)
            self.all_is_well()
        finally:
            self.runner.close()


@pytest.fixture(name="machine")
def machine_fixture(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[type[Life]]:
    """The machine over databases of one engine."""
    trouble = Trouble()
    with _databases(request, tmp_path, trouble) as fresh:
        members = {"fresh": staticmethod(fresh), "trouble": trouble, "taken": Counter()}
        yield type("Life", (Life,), members)


@contextmanager
def _databases(
    request: pytest.FixtureRequest, folder: Path, trouble: Trouble
) -> Iterator[Callable[[], Database]]:
    """One database object whose content is replaced for every history: its SQL is compiled once."""
    if STEPS_ON == "postgresql":
        server = request.getfixturevalue("server")
        url = server.create()
    else:
        template: Path = request.getfixturevalue("sqlite_template")
        url = database_url(f"sqlite:///{folder / 'practice.db'}")
    database = Database(url, Keyring.parse("none"))

    def fresh() -> Database:
        nonlocal database
        while database._held:
            database._held.pop().close()
        database.engine.dispose()
        if STEPS_ON == "postgresql":
            server.drop(url)
            server.execute(f"CREATE DATABASE {url.database} TEMPLATE template_migrated")
        else:
            for end in ("", "-wal", "-shm"):
                Path(f"{url.database}{end}").unlink(missing_ok=True)
            shutil.copyfile(template, str(url.database))
        unlock(database)
        return database

    install(database, trouble)
    yield fresh
    database.close_sync()


@pytest.mark.parametrize(
    ("home", "city"), [("Pacific/Auckland", "Honolulu"), ("America/New_York", "Auckland")]
)
def test_a_flight_over_the_date_line_brings_no_second_prompt_at_once(
    machine: type[Life], home: str, city: str
) -> None:
    """Asked where it is Tuesday, she says that she is where it is still Monday; and the other way."""
    life = machine()
    plan = Prescribed(
        zone=home,
        total=10,
        gap=60,
        window="08:00-20:00",
        quiet=(),
        weekdays=(0, 1, 2, 3, 4, 5, 6),
        rest_days=0,
        bout_max=10,
    )
    life.opens(plan)
    life.changes_zone(n=0, city=city)
    life.all_is_well()
    life.teardown()


def test_every_promise_is_kept_through_any_history(machine: type[Life]) -> None:
    run_state_machine_as_test(
        machine,
        settings=settings(
            max_examples=max(1, STEPS // STEPS_A_RUN),
            stateful_step_count=STEPS_A_RUN,
            derandomize=True,
            database=None,
            deadline=None,
            phases=[Phase.generate, Phase.shrink],
            suppress_health_check=list(HealthCheck),
        ),
    )
    print(dict(machine.taken))
    assert machine.taken.total() > STEPS / 2
