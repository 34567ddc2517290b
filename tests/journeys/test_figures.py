"""The figures of a digest against those worked out again from the raw rows, by code of its own (W6, S7).

Source of the formulas: the osteogenic index after Turner and Robling 2003 (memory) and the rules of W6
(ours), written here a second time from their text, without anything of the program's but its tables.
"""

import math
from collections import defaultdict
from collections.abc import Sequence
from datetime import UTC, date, datetime, timedelta
from functools import partial
from random import Random
from typing import Any
from zoneinfo import ZoneInfo

import pytest
from sqlalchemy import Connection, select

from scheduler.domain.days import Day, Entry
from scheduler.domain.hours import Hours, Span
from scheduler.domain.people import NOTICE_VERSION, Clearance, Client, Person, Role, State
from scheduler.domain.plan import Level, Plan
from scheduler.domain.spacing import Placed
from scheduler.ports import Tx, WeekPlan
from scheduler.usecases import digests
from storage.engine import Database
from storage.store import SqlStore
from storage.tables import DayRow, EntryRow, ReportRow, WeekRow, table

MONDAY = date(2027, 3, 8)
SUNDAY = MONDAY + timedelta(days=6)
NOW = datetime(2027, 3, 15, 8, 0, tzinfo=UTC)
CLIENTS = 500
TAU = timedelta(hours=6)
ZONES = ("Europe/Lisbon", "America/New_York", "Pacific/Auckland", "Asia/Kolkata")
VERDICTS = ("counted", "partial", "missed", "excused")


def fill(tx: Tx, random: Random) -> Person:
    """A clinician with so many clients, each with a week of her own: late, doubled, voided, excused."""
    for name, value in (("phone", "555 0100"), ("emergency_number", "112")):
        tx.book.put(name, value)
    clinician = tx.people.add(Person(0, Role.CLINICIAN, "Dana", "en", State.READY, account=1), None)
    for n in range(CLIENTS):
        one_client(tx, clinician.id, n, random)
    return clinician


def one_client(tx: Tx, clinician: int, n: int, random: Random) -> None:
    zone = ZoneInfo(random.choice(ZONES))
    record = Client(
        0, clinician, zone, consent_version=NOTICE_VERSION, consent_at=NOW, readiness=(),
        readiness_at=NOW, joined_at=NOW - timedelta(days=30),
    )  # fmt: skip
    person = Person(0, Role.CLIENT, f"Client {n}", "en", State.READY, clinician, 1000 + n)
    client = tx.people.add(person, record).id
    bout = random.choice((5, 8, 10))
    total = bout * random.randint(1, 6)
    planned = sorted(random.sample(range(7), random.randint(0, 3)))
    plan = Plan(
        "marching", total, bout, bout + random.choice((0, 5)), random.randint(1, 3), 3,
        tuple(planned), 0, Hours(Span(480, 1200)), (), MONDAY - timedelta(days=20), None, None,
    )  # fmt: skip
    version = tx.plans.add(client, plan, plan.start, clinician, NOW)
    tx.plans.clear(Clearance(client, Level.MODERATE, clinician, NOW))
    days = tuple(MONDAY + timedelta(days=d) for d in planned)
    tx.weeks.save(WeekPlan(client, MONDAY, MONDAY, days))
    for day in (MONDAY + timedelta(days=d) for d in range(-3, 9)):
        one_day(tx, client, version.id, plan, zone, day, day in days, random)
    if random.random() < 0.4:
        score = random.randint(0, 10)
        tx.health.report(client, "pain", MONDAY + timedelta(days=2), NOW, {"score": score})


def one_day(
    tx: Tx, client: int, plan_id: int, plan: Plan, zone: ZoneInfo, day: date, planned: bool,
    random: Random,
) -> None:  # fmt: skip
    midnight = datetime.combine(day, datetime.min.time(), zone)
    if planned and random.random() < 0.9:
        count = -(-plan.daily_total // plan.bout_reps)
        minutes = sorted(random.sample(range(480, 1201, 5), count))
        at = tuple(
            Placed((midnight + timedelta(minutes=m)).astimezone(UTC), plan.bout_reps)
            for m in minutes
        )
        verdict = random.choice((*VERDICTS, ""))
        closed = NOW if verdict else None
        tx.days.save(
            Day(client, day, plan_id, plan.daily_total, at, closed_at=closed, verdict=verdict)
        )
    for k in range(random.choice((0, 0, 1, 2, 4, 6)) if planned else random.choice((0, 0, 0, 2))):
        moment = (midnight + timedelta(minutes=random.randint(400, 1300))).astimezone(UTC)
        entry = tx.ledger.log(Entry(0, client, day, random.randint(1, 15), moment, f"{day}:{k}"))
        if entry is not None and random.random() < 0.2:
            tx.ledger.void(entry.id, f"{day}:{k}:void", moment)


# --- the second implementation -------------------------------------------------------------------


def index(bouts: Sequence[tuple[datetime, int]], largest: int | None = None) -> float:
    """OI with I = 1: ln(N + 1), later bouts times 1 - exp(-t/tau); under half an hour is one bout."""
    merged: list[list[Any]] = []
    for at, reps in sorted(bouts):
        if merged and at - merged[-1][0] < timedelta(minutes=30):
            merged[-1][1] += reps
        else:
            merged.append([at, reps])
    total, before = 0.0, None
    for at, reps in merged:
        taken = reps if largest is None else min(reps, largest)
        share = 1.0 if before is None else 1 - math.exp(-((at - before) / TAU))
        total += share * math.log(taken + 1)
        before = at
    return total


def spread(done: Sequence[tuple[datetime, int]], at: Sequence[datetime], most: int) -> float | None:
    """S7; `None` is the dash."""
    total = sum(reps for _, reps in done)
    if len(at) < 2 or total == 0:
        return None
    base, extra = divmod(total, len(at))
    even = [base + (n < extra) for n in range(len(at))]
    once = math.log(total + 1)
    best = index(list(zip(sorted(at), even, strict=True))) - once
    return None if best <= 0 else min(1.0, max(0.0, (index(done, most) - once) / best))


def recomputed(connection: Connection, client: int, plan: Plan) -> dict[str, Any]:
    """W6 for one client and week, from the rows as they rest."""
    ledger, days, weeks = table(EntryRow), table(DayRow), table(WeekRow)
    rows = connection.execute(select(ledger).where(ledger.c.client == client)).all()
    void = {row.voids for row in rows}
    done: dict[date, list[tuple[datetime, int]]] = defaultdict(list)
    for row in rows:
        if row.voids is None and row.id not in void and MONDAY <= row.day <= SUNDAY:
            done[row.day].append((row.at, row.reps))
    began = {
        row.day: row for row in connection.execute(select(days).where(days.c.client == client))
    }
    week = connection.execute(select(weeks).where(weeks.c.client == client)).one()
    planned = {date.fromisoformat(day) for day in week.days}
    found: dict[str, Any] = defaultdict(int)
    spreads, keepable = [], 0
    for day in (MONDAY + timedelta(days=n) for n in range(7)):
        kept, reps = began.get(day), sum(reps for _, reps in done[day])
        verdict = kept.verdict if kept else ""
        counted = verdict == "counted" or (not verdict and reps * 100 >= plan.daily_total * 80)
        found["days"] += counted
        found["excused"] += verdict == "excused"
        if verdict == "excused" or not (day in planned or kept or counted):
            continue
        keepable += day in planned or bool(kept)
        at = [datetime.fromisoformat(moment) for moment, _ in kept.planned] if kept else []
        found["reps"] += reps
        found["reps_capped"] += min(reps, plan.daily_total)
        found["prescribed"] += plan.daily_total
        found["bouts"] += len(done[day])
        found["bouts_planned"] += len(at) or math.ceil(plan.daily_total / plan.bout_reps)
        found["open"] += not verdict
        if (one := spread(done[day], at, plan.bout_max)) is not None:
            spreads.append(one)
    found["needed"] = min(plan.days_min, keepable)
    found["spread"] = sum(spreads) / len(spreads) if spreads else None
    reports = table(ReportRow)
    said = connection.execute(select(reports).where(reports.c.client == client)).all()
    found["pain"] = max((row.body["score"] for row in said), default=None)
    return found


def test_the_figures_of_five_hundred_clients_equal_those_worked_out_from_the_raw_rows(
    database: Database,
) -> None:
    store = SqlStore(database)
    clinician = store.run_sync(lambda tx: fill(tx, Random(20270315)))
    body = store.run_sync(lambda tx: digests.build(tx, clinician, MONDAY, NOW))
    assert len(body["lines"]) == CLIENTS
    plans = store.run_sync(
        lambda tx: {line["client"]: tx.plans.on(line["client"], MONDAY) for line in body["lines"]}
    )
    for line in body["lines"]:
        version = plans[line["client"]]
        assert version is not None
        expected = database.run_sync(partial(recomputed, client=line["client"], plan=version.plan))
        for name in ("days", "needed", "reps", "reps_capped", "prescribed", "bouts", "pain"):
            assert line[name] == expected[name], (line["client"], name)
        for name in ("bouts_planned", "excused", "open"):
            assert line[name] == expected[name], (line["client"], name)
        assert line["spread"] == (
            expected["spread"] if expected["spread"] is None else pytest.approx(expected["spread"], abs=1e-9)
        )  # fmt: skip
