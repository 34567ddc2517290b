"""What can be asked of the store about messages going out and updates coming in (R1, R2)."""

from __future__ import annotations

from datetime import date, datetime, timedelta
from typing import Protocol

from scheduler.domain.messages import Message
from scheduler.ports.values import Arrived, Claim, Json, Outgoing, Pace, Turn


class Outbox(Protocol):
    def add(self, outgoing: Outgoing, now: datetime) -> bool:
        """Keep a message to be sent; False if its key is there already."""
        ...

    def cancel_prompts(self, client: int, reason: str) -> None:
        """Drop every prompt and nudge of the client that has not begun to be sent."""
        ...

    def cancel(self, key: str, reason: str) -> None:
        """Drop the message of a key if it has not begun to be sent."""
        ...

    def cancel_own(self, client: int, reason: str) -> None:
        """Drop every prompt, nudge and message of the bot's own accord that has not begun to be sent.

        One that is being sent may arrive, but is not sent again (I6).
        """
        ...

    def cancel_rest(self, person: int, reason: str) -> None:
        """Drop what waits for a person in the last lane, as above: no answer, and nothing about safety."""
        ...

    def own_on(self, client: int, day: date) -> int:
        """Messages of the bot's own accord on a local day, beside prompts, nudges and what was dropped."""
        ...

    def said(self, person: int, message_id: int) -> Message:
        """What the latest message says that a person was sent under the platform's id; empty if none was.

        An edit counts: it is the same message.
        """
        ...

    def claim_due(
        self, now: datetime, worker: str, lease: timedelta, limit: int
    ) -> tuple[Claim, ...]:
        """Claim rows that are due, first lane first, oldest first, at most one a chat.

        A row is claimed by one worker only, until its lease ends. No row is claimed while an earlier row
        of the same chat is being sent; a prompt later than the practice allows is never claimed.
        """
        ...

    def claim_paced(
        self, now: datetime, worker: str, lease: timedelta, limit: int, pace: Pace
    ) -> Turn:
        """`claim_due` at a pace that all workers of the store keep together, told when each may leave.

        No two messages are given instants closer than `pace.between`, nor two of one chat within a second.
        """
        ...

    def begin(self, claim: Claim, now: datetime, lease: timedelta) -> bool:
        """claimed -> sending. False if the claim was lost or the row was dropped meanwhile (a hold).

        A claim is lost at the end of its lease, whether another has taken the row or not. Counts the
        attempt, and a new lease begins: the request's.
        """
        ...

    def sent(self, claim: Claim, message_id: int, now: datetime) -> bool: ...

    def put_back(self, claim: Claim, due_at: datetime) -> bool:
        """sending -> due again, not before `due_at`.

        It keeps its place: until then nothing leaves to its chat but more urgent lanes, and a prompt
        is as late as it would have been. False if the claim was lost, or if it was cancelled meanwhile:
        then it is dropped.
        """
        ...

    def unknown(self, claim: Claim, now: datetime) -> bool: ...

    def drop(self, claim: Claim, reason: str) -> bool: ...

    def expire_leases(self, now: datetime) -> tuple[Claim, ...]:
        """Rows whose lease has ended: claimed becomes due; those in sending are returned, still so."""
        ...

    def next_due(self, now: datetime) -> datetime | None:
        """The next instant at which a row can be claimed or a lease ends; past if one can be already.

        Rows that wait for another of their chat, for somebody who cannot be reached, or that are
        prompts too late by `now`, are left out: at the instant told there is something to do.
        """
        ...

    def waiting(self, now: datetime) -> int:
        """Rows on their way, or due by now to somebody who can be reached and not too late.

        A row that was put back to later does not count, nor do those that wait behind it.
        """
        ...


class Inbox(Protocol):
    def keep(self, update_id: int, chat: int, payload: Json, now: datetime) -> bool:
        """Store an update before it is confirmed; False if it is there already."""
        ...

    def claim(
        self, now: datetime, worker: str, lease: timedelta, limit: int
    ) -> tuple[Arrived, ...]:
        """Claim the oldest unfinished update of each chat that has none being handled."""
        ...

    def release(self) -> int:
        """End every claim at once; how many there were. Only for the sole process of a store."""
        ...

    def finish(self, update_id: int, worker: str, said_by: int | None = None) -> bool:
        """Mark as handled, in the transaction of its effects. False if the lease was lost.

        Then another worker has finished it or is at it, and the caller raises, so that nothing is kept.
        `said_by` is the person who said it, in the role in which it was taken; `None` for a stranger.
        """
        ...

    def failed(self, update_id: int, worker: str, retry_at: datetime | None, reason: str) -> bool:
        """Try again at `retry_at`, or set aside where an admin sees it if that is `None`.

        False if the lease was lost: another worker has it, and nothing was changed.
        """
        ...

    def moved(self, before: int, after: int) -> None:
        """What was handled of one chat is another's from now on: its person has a new account (J1)."""
        ...

    def finished(self, update_id: int) -> bool:
        """Whether nothing more will be done about an update: it was handled, or set aside."""
        ...

    def next_due(self) -> datetime | None:
        """The next instant at which an update can be claimed; past if one can be already."""
        ...

    def unfinished(self) -> int: ...


class Leases(Protocol):
    """What only one process of a store may do at a time."""

    def take(self, name: str, holder: str, now: datetime, length: timedelta) -> bool:
        """Take or renew a lease for so long; False while it is another's and has not run out."""
        ...

    def give_back(self, name: str, holder: str) -> None:
        """End one's own lease at once; another's is left alone."""
        ...
