"""What whoever runs the bot can watch, in the text format of Prometheus: numbers, never who or what (D2).

Facts of the store are read from it at each scrape, so that several processes tell the same and a restart
forgets nothing. What one process measures of its own work begins anew with the process.
"""

from __future__ import annotations

import asyncio
from collections import Counter as Tally
from collections.abc import Callable, Iterator
from datetime import datetime, timedelta
from typing import TypeVar

from prometheus_client import CollectorRegistry, Counter, Histogram, generate_latest
from prometheus_client.core import GaugeMetricFamily, Metric
from prometheus_client.process_collector import ProcessCollector
from prometheus_client.registry import Collector
from sqlalchemy.exc import SQLAlchemyError

from scheduler.domain.messages import Lane
from scheduler.ports import Clock, Delivery, Letter, Sender, Standing, Store, Tx
from scheduler.usecases import receipts

ANSWERS_WITHIN = 5.0
"""Seconds that a scrape or a check waits for the database; after that it is away."""
HEARD_WITHIN = timedelta(minutes=3)
"""Longer than the minute between two notes that the platform was heard, and the two of R5 together."""
BUCKETS = (0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10, 30, 60, 300, 1200)
"""Seconds, up to the 20 minutes after which a prompt is usually too late."""

KINDS = {
    "hold": "stopped", "pain": "stopped", "fall": "stopped", "break": "break",
    "lapsed": "clearance", "clearance": "clearance", "discharged": "ended",
    "expired": "expired", "unreachable": "unreachable",
    "replanned": "replanned", "another day": "replanned", "withdrawn": "replanned",
}  # fmt: skip
"""Our own reasons for dropping a message, by kind."""
CANNOT_BE_REACHED = ("forbidden", "blocked", "chat not found", "deactivated", "peer_id_invalid")
"""In the platform's words, which are no label: they may name people."""
DROPPED = (*sorted({*KINDS.values()}), "bug", "refused")


Answer = TypeVar("Answer")


class Away:
    """The database does not answer."""


def kind_of(reason: str) -> str:
    """The kind of a reason for which a message was dropped: one of `DROPPED`."""
    if reason in KINDS:
        return KINDS[reason]
    if reason.startswith("bug:"):
        return "bug"
    said = reason.casefold()
    return "unreachable" if any(words in said for words in CANNOT_BE_REACHED) else "refused"


class Measures:
    """What one process measures of its own work, since it started."""

    def __init__(self) -> None:
        self.registry = CollectorRegistry()
        ProcessCollector(registry=self.registry)
        self._handling = Histogram(
            "boutwise_update_handling_seconds",
            "From the arrival of an update until its effects are committed.",
            buckets=BUCKETS, registry=self.registry,
        )  # fmt: skip
        self._failures = Counter(
            "boutwise_update_failures", "Attempts to handle an update that failed.",
            registry=self.registry,
        )  # fmt: skip
        self._sent = Counter(
            "boutwise_messages_sent", "Messages that the platform accepted.", ["lane"],
            registry=self.registry,
        )  # fmt: skip
        self._delay = Histogram(
            "boutwise_message_delay_seconds",
            "From the instant a message was due until the platform accepted it.", ["lane"],
            buckets=BUCKETS, registry=self.registry,
        )  # fmt: skip
        self.sending = Histogram(
            "boutwise_send_seconds", "One try to send a message, by what became of it.", ["outcome"],
            buckets=BUCKETS, registry=self.registry,
        )  # fmt: skip
        for lane in Lane:  # so that a lane without messages is told as zero
            self._sent.labels(_label(lane))
            self._delay.labels(_label(lane))

    def handled(self, took: timedelta) -> None:
        self._handling.observe(took.total_seconds())

    def failed(self) -> None:
        self._failures.inc()

    def accepted(self, lane: Lane, took: timedelta) -> None:
        self._sent.labels(_label(lane)).inc()
        self._delay.labels(_label(lane)).observe(took.total_seconds())


class Timed:
    """A sender that measures how long each try takes."""

    def __init__(self, sender: Sender, measures: Measures) -> None:
        self._sender, self._measures = sender, measures

    async def send(self, letter: Letter) -> Delivery:
        """As the sender itself. A bug in one message's words is measured as such and raised."""
        outcome = "bug"
        begun = asyncio.get_running_loop().time()
        try:
            delivery = await self._sender.send(letter)
            outcome = type(delivery).__name__.lower()
        finally:
            took = asyncio.get_running_loop().time() - begun
            self._measures.sending.labels(outcome).observe(took)
        return delivery


class Exposition:
    """The page that a scrape reads, and whether all is well."""

    def __init__(self, store: Store, clock: Clock, measures: Measures) -> None:
        self._store, self._clock, self._measures = store, clock, measures
        self._since = clock.now()

    async def ready(self) -> bool:
        """Whether the database answers, and the platform was lately heard by any process of this store.

        A store that has never heard it gives its process the same time.
        """
        heard_at = await self._asked(receipts.heard_at)
        if isinstance(heard_at, Away):
            return False
        return self._clock.now() - (heard_at or self._since) <= HEARD_WITHIN

    async def page(self) -> bytes:
        """Everything; without the store's facts, and with `boutwise_up 0`, while the database is away."""
        now = self._clock.now()
        found = await self._asked(lambda tx: (tx.standing.at(now), receipts.heard_at(tx)))
        facts = CollectorRegistry()
        facts.register(_Facts(found, now))
        return generate_latest(facts) + generate_latest(self._measures.registry)

    async def _asked(self, question: Callable[[Tx], Answer]) -> Answer | Away:
        """What the store answers, within `ANSWERS_WITHIN`."""
        try:
            async with asyncio.timeout(ANSWERS_WITHIN):
                return await self._store.run(question)
        except (SQLAlchemyError, OSError, TimeoutError):
            return Away()


class _Facts(Collector):
    """One look at the store."""

    def __init__(self, found: tuple[Standing, datetime | None] | Away, now: datetime) -> None:
        self._found, self._now = found, now

    def collect(self) -> Iterator[Metric]:
        found = self._found
        yield _gauge("up", "Whether the database answers.", int(not isinstance(found, Away)))
        if isinstance(found, Away):
            return
        standing, heard_at = found
        if heard_at is not None:
            age = (self._now - heard_at).total_seconds()
            words = "Since the last good poll or webhook call of any process, noted once a minute."
            yield _gauge("last_poll_age_seconds", words, age)
        yield from _post(standing)
        yield from _inbox(standing, self._now)


def _post(standing: Standing) -> Iterator[Metric]:
    lanes = {_label(lane): lane for lane in Lane}
    due = {name: standing.due.get(lane, 0) for name, lane in lanes.items()}
    late = {name: standing.late.get(lane, 0) for name, lane in lanes.items()}
    yield _labelled("messages_due", "Messages that should have left by now.", "lane", due)
    yield _labelled("messages_late", "Of these, due for over a minute.", "lane", late)
    words = "Prompts later than the practice allows, which are not sent any more."
    yield _gauge("prompts_too_late", words, standing.too_late)
    words = "Messages of unknown fate, due within the last day."
    yield _gauge("messages_unknown", words, standing.unknown)
    dropped = Tally(dict.fromkeys(DROPPED, 0))
    for reason, count in standing.dropped.items():
        dropped[kind_of(reason)] += count
    words = "Messages dropped, due within the last day."
    yield _labelled("messages_dropped", words, "kind", dropped)


def _inbox(standing: Standing, now: datetime) -> Iterator[Metric]:
    yield _gauge("inbox_waiting", "Updates received and not yet handled.", standing.inbox)
    oldest = standing.inbox_oldest or now
    age = max((now - oldest).total_seconds(), 0.0)
    yield _gauge("inbox_oldest_age_seconds", "Age of the oldest of them.", age)
    yield _gauge("updates_set_aside", "Updates that could not be handled.", standing.aside)
    flags = {"yes": standing.flags_urgent, "no": standing.flags_other}
    yield _labelled("flags_open", "Open flags.", "urgent", flags)


def _gauge(name: str, words: str, value: float) -> Metric:
    return GaugeMetricFamily(f"boutwise_{name}", words, value=value)


def _labelled(name: str, words: str, label: str, values: dict[str, int]) -> Metric:
    family = GaugeMetricFamily(f"boutwise_{name}", words, labels=[label])
    for key, value in values.items():
        family.add_metric([key], value)
    return family


def _label(lane: Lane) -> str:
    return lane.name.lower()
