"""Much more at once, or on a day, than was prescribed (P8)."""

from __future__ import annotations

from datetime import datetime

from scheduler.ports import Tx
from scheduler.usecases.flags import raise_flag
from scheduler.usecases.rest import Running, unit


def look(tx: Tx, running: Running, reps: int, now: datetime) -> None:
    """One log above the bout maximum by half or more, or a day over 150 %, flags that day."""
    plan = running.plan
    if plan is None:
        return
    total = running.day.total if running.day else plan.daily_total
    if reps * 2 < plan.bout_max * 3 and running.done * 2 <= total * 3:
        return
    raise_flag(
        tx,
        running.client,
        "too-much",
        now,
        urgent=False,
        details={
            "reps": reps,
            "done": running.done,
            "total": total,
            "day": str(running.today),
            "per_side": unit(plan)["per_side"],
        },
        episode=f"too-much:{running.today}",
    )
