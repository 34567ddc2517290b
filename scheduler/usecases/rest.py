"""The rest of a client's day: what is still to be done, worked out again after every event (S4).

Called by the use cases that hold the client's row. Only the next prompt of a day is ever a row.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from functools import partial

from scheduler.domain import days as d
from scheduler.domain import permission
from scheduler.domain.days import Bout, BoutState, Day, Entry
from scheduler.domain.hours import Hours, instant, local_day
from scheduler.domain.messages import Argument, Lane, Message, Text, text
from scheduler.domain.people import Client, Pause, Person
from scheduler.domain.plan import MOVEMENTS, Plan
from scheduler.domain.settings import Practice
from scheduler.domain.spacing import DayPlan, spread_day
from scheduler.domain.wall import wall
from scheduler.domain.windows import common_hours, without_midnight
from scheduler.ports import Outgoing, PlanVersion, Tx
from scheduler.usecases import beside, cards


@dataclass(frozen=True, slots=True)
class Running:
    """A client's day with all that its rules look at."""

    person: Person
    client: Client
    practice: Practice
    version: PlanVersion | None
    today: date
    day: Day | None
    bouts: tuple[Bout, ...]
    entries: tuple[Entry, ...]

    @property
    def plan(self) -> Plan | None:
        return self.version.plan if self.version else None

    @property
    def done(self) -> int:
        return d.done(self.entries)

    def wall(self, at: datetime) -> str:
        """An instant as ISO wall-clock time in the client's zone, for a message."""
        return wall(at, self.client.zone)


def gather(tx: Tx, client: Client, today: date) -> Running:
    """Read a client's day. The client's row is locked by the caller."""
    person = tx.people.get(client.id)
    if person is None:
        raise LookupError(client.id)
    return Running(
        person=person,
        client=client,
        practice=tx.book.practice(),
        version=tx.plans.on(client.id, today),
        today=today,
        day=tx.days.get(client.id, today),
        bouts=tx.days.bouts(client.id, today),
        entries=tx.ledger.day(client.id, today),
    )


def today_of(client: Client, at: datetime) -> date:
    """The client's date at an instant."""
    return local_day(at, client.zone)


def bars(tx: Tx, running: Running) -> tuple[permission.Bar, ...]:
    """What stands against asking this client for impact now."""
    return permission.bars(
        permission.Standing(
            person=running.person,
            client=running.client,
            practice=running.practice,
            plan=running.plan,
            clearance=tx.plans.clearance(running.client.id),
            holds=tx.health.holds(running.client.id),
            questions=frozenset(q.kind for q in tx.questions.of(running.client.id)),
            today=running.today,
            on_break=on_break(tx, running.client.id, running.today) is not None,
        )
    )


def on_break(tx: Tx, client: int, day: date) -> Pause | None:
    """The break that a day of a client lies in, if it does."""
    return next((each for each in tx.pauses.of(client, day) if each.covers(day)), None)


def stopped(found: tuple[permission.Bar, ...]) -> Text:
    """What a client is told of why nothing is asked: her own break, or that she will hear."""
    own = permission.Bar.BREAK in found and permission.Bar.HOLD not in found
    return text("on-break" if own else "stopped-for-now")


def hours_of(running: Running) -> Hours | None:
    """The hours the plan and the client's own wishes have in common today; `None` if there are none."""
    return common_hours(running.plan, running.client, running.today) if running.plan else None


def spread(tx: Tx, running: Running, reps: int, not_before: datetime | None) -> DayPlan | None:
    """The exact spread of so many reps over what is left of today, or `None` without common hours."""
    hours = without_midnight(hours_of(running))
    if hours is None or running.plan is None:
        return None
    place = partial(
        spread_day,
        reps=reps,
        bout_reps=running.plan.bout_reps,
        bout_max=running.plan.bout_max,
        day=running.today,
        hours=hours,
        zone=running.client.zone,
        gap=timedelta(minutes=running.plan.gap_minutes),
        tau=running.practice.tau,
        last=max((entry.at for entry in running.entries), default=None),
        not_before=earliest(tx, running, not_before),
    )
    shifted, own = place(offset_minutes=offset(running)), place()
    # A share of the crowd's spread must not cost a tight day its last bout.
    return shifted if len(shifted.bouts) == len(own.bouts) else own


def earliest(tx: Tx, running: Running, not_before: datetime | None) -> datetime | None:
    """Nothing more of today is asked before this: the gap after every prompt that was not withdrawn."""
    gap = timedelta(minutes=running.plan.gap_minutes if running.plan else 0)
    prompted = tx.days.last_prompt_at(running.client.id, running.today)
    near = beside.not_before(tx, running.client.id, running.today, gap)
    return max((at for at in (not_before, prompted and prompted + gap, near) if at), default=None)


def offset(running: Running) -> int:
    """The client's stable share of the crowd's spread, in minutes on the 5-minute grid (S8)."""
    slots = running.practice.spread_minutes // 5 + 1
    return (running.client.id * 7919) % slots * 5  # a prime scatters neighbouring ids


def replan(
    tx: Tx,
    running: Running,
    now: datetime,
    *,
    not_before: datetime | None = None,
    laters: int = 0,
    asked_for: datetime | None = None,
) -> Bout | None:
    """Work the rest of the day out again: the next prompt as a new row, or `None` if there is none.

    `running` is read anew first, so that it may be older than the last change. An open prompt stays as
    it is and nothing waits beside it. `asked_for` is the time the client put the bout off to, or before
    which nothing more of the day is asked.
    """
    running = gather(tx, running.client, running.today)
    before = withdraw_waiting(tx, running)
    if before and before.not_before and not asked_for:
        laters, asked_for = before.laters, before.not_before
    if running.day is None or d.still_open(running.bouts) or bars(tx, running):
        return None
    reps = running.day.total - running.done - d.dropped(running.bouts)
    if reps <= 0:
        return None
    earliest = max(moment for moment in (not_before or now, asked_for) if moment)
    rest = spread(tx, running, _askable(tx, running, reps, laters), earliest)
    if rest is None:
        return None
    _note_shortfall(tx, running, reps, rest)
    return _write(tx, running, rest, now, laters, asked_for) if rest.bouts else None


def _askable(tx: Tx, running: Running, reps: int, laters: int) -> int:
    """Reps that can still be asked without more messages of the bot's own than P6 allows."""
    if running.day is None or running.plan is None:
        return 0
    return min(reps, (messages_left(tx, running) + bool(laters)) * running.plan.bout_reps)


def messages_left(tx: Tx, running: Running) -> int:
    """Messages of its own accord that the bot may still send on this day (P6)."""
    others = tx.outbox.own_on(running.client.id, running.today)
    return d.messages_left(running.day, running.bouts, others)


def bouts_to_come(tx: Tx, running: Running, now: datetime) -> int:
    """Bouts of today that are still to be asked, beside one that is open."""
    if running.day is None:
        return 0
    open_reps = sum(b.reps for b in running.bouts if b.state is BoutState.ASKED)
    reps = running.day.total - running.done - d.dropped(running.bouts) - open_reps
    rest = spread(tx, running, reps, now) if reps > 0 else None
    return len(rest.bouts) if rest else 0


def _note_shortfall(tx: Tx, running: Running, reps: int, rest: DayPlan) -> None:
    if running.day is not None:
        short = reps - sum(bout.reps for bout in rest.bouts)
        tx.days.save(replace(running.day, shortfall=short))


def withdraw_waiting(tx: Tx, running: Running) -> Bout | None:
    """Take back the prompt that waits to be sent; the one taken back, if there was one."""
    tx.outbox.cancel_prompts(running.client.id, "replanned")
    before = d.waiting(running.bouts)
    if before:
        tx.days.save_bout(replace(before, state=BoutState.WITHDRAWN))
    return before


def withdraw_all(tx: Tx, client: Client, reason: str) -> None:
    """Take back every prompt of the client, waiting or open, of any day (H1, H3), and what else was asked."""
    tx.outbox.cancel_own(client.id, reason)
    for bout in tx.days.open_bouts(client.id):
        tx.days.save_bout(replace(bout, state=BoutState.WITHDRAWN))


def _write(
    tx: Tx, running: Running, rest: DayPlan, now: datetime, laters: int, asked_for: datetime | None
) -> Bout:  # fmt: skip
    first = rest.bouts[0]
    follows = rest.bouts[1].at if len(rest.bouts) > 1 else first.at + d.LAST_PROMPT_OPEN
    bout = tx.days.add_bout(
        Bout(
            id=0,
            client=running.client.id,
            day=running.today,
            n=max((b.n for b in running.bouts), default=0) + 1,
            reps=first.reps,
            due_at=first.at,
            expires_at=follows,
            laters=laters,
            not_before=asked_for,
        )
    )
    cards.before_bout(tx, running, bout, messages_left(tx, running) - len(rest.bouts), now)
    tx.outbox.add(
        Outgoing(
            key=f"prompt:{bout.id}",
            lane=Lane.PROMPT,
            message=_prompt(running, bout, rest),
            person=running.client.id,
            due_at=bout.due_at,
            bout=bout.id,
        ),
        now,
    )
    beside.ends_with(tx, bout)
    return bout


def _prompt(running: Running, bout: Bout, rest: DayPlan) -> Message:
    """The words of a prompt; the first that is known to reach her carries the day and the cautions (P1)."""
    asked = text("prompt", bout=bout.id, done=running.done, **amount(running, bout.reps))
    if any(b.message_id is not None for b in running.bouts):
        return (asked,)
    opening = text(
        "day-opening",
        bouts=len(rest.bouts),
        first=running.wall(rest.bouts[0].at),
        last=running.wall(rest.bouts[-1].at),
        **amount(running, sum(b.reps for b in rest.bouts)),
    )
    return (opening, asked, text("safety"))


def amount(running: Running, reps: int) -> dict[str, Argument]:
    """Reps of the plan's movement with its counting unit, as arguments of a text (C3)."""
    return {"reps": reps, "total": running.day.total if running.day else 0, **unit(running.plan)}


def unit(plan: Plan | None) -> dict[str, Argument]:
    """What is counted: the movement, and whether on each side."""
    movement = MOVEMENTS[plan.movement] if plan else None
    return {
        "movement": movement.key if movement else "",
        "per_side": bool(movement and movement.per_side),
    }


def is_over(
    client: Client, day: date, practice: Practice, at: datetime, again_at: datetime | None
) -> bool:
    """Whether something said at an instant comes too late for a day: it was said after the close (P9).

    `again_at`: when something is handled that failed before. Its sender was told that it was not noted, and
    a day that was judged meanwhile stays as it was judged (Z2).
    """
    return max(at, again_at or at) >= closes_at(client, day, practice)


def closes_at(client: Client, day: date, practice: Practice) -> datetime:
    """When a day closes: noon (setting) of the next day in the client's zone (Z2)."""
    return instant(day + timedelta(days=1), practice.close_hour * 60, client.zone)
