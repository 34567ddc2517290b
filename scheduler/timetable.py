"""APScheduler rings the bell in real time; it holds no facts and no jobs of ours.

What is due is found in the store after every ring, so a ring lost or late costs nothing but time.
"""

from __future__ import annotations

from collections.abc import Callable

from apscheduler.schedulers.asyncio import AsyncIOScheduler

EVERY_SECONDS = 1
"""A prompt may leave this much after its instant; less would only burn the battery of a small host."""


def bell(ring: Callable[[], None]) -> AsyncIOScheduler:
    """A scheduler, not yet started, that calls `ring` every second on the running event loop."""
    scheduler = AsyncIOScheduler(timezone="UTC")
    scheduler.add_job(
        ring,
        "interval",
        seconds=EVERY_SECONDS,
        coalesce=True,  # after a long pause one ring is as good as a thousand
        max_instances=1,
        misfire_grace_time=None,  # the default of 1 s would drop rings of a busy loop
    )
    return scheduler
