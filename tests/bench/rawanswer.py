"""The raw peer of an answer: the statements that change the same rows, on one connection, nothing read."""

from __future__ import annotations

import sqlite3
from time import perf_counter

from storage.engine import SQLITE_PRAGMAS
from tests.bench.practice import LATER, Practice, micro

ARRIVED = (
    "INSERT INTO inbox (update_id, chat, payload, received_at, state, attempts, worker, retry_at)"
    " VALUES (?1, 'chat', 'plain:{}', ?2, 'claimed', 1, 'raw', ?2)"
)
LETTER = (
    "INSERT INTO outbox (key, state, lane, person, payload, bout, nudge, silent, written_at, due_at,"
    " ready_at, attempts) VALUES (?1, 'due', ?2, ?3, ?4, ?5, 0, 0, ?6, ?7, ?7, 0)"
    " ON CONFLICT (key) DO NOTHING"
)
NEXT_BOUT = (
    "INSERT INTO bout (client, day, n, reps, due_at, expires_at, state, nudged, laters)"
    " VALUES (?1, ?2, 2, 10, ?3, ?4, 'waiting', 0, 0)"
)
DONE = (
    "INSERT INTO ledger (client, day, reps, at, source, message_id) VALUES (?1, ?2, 3, ?3, ?4, ?5)"
    " ON CONFLICT (client, source) DO NOTHING"
)
PAYLOAD = "plain:" + "x" * 500
"""As long as a prompt that rests encrypted."""


class RawHandler:
    """Changes what the handler of a logged number changes, for one client after the other."""

    def __init__(self, practice: Practice) -> None:
        self._raw = sqlite3.connect(str(practice.url.database), isolation_level=None)
        for pragma in SQLITE_PRAGMAS:
            self._raw.execute(pragma)
        self._now, self._later = micro(practice.now), micro(practice.now + LATER)
        self._day = practice.now.astimezone(practice.zone).date().isoformat()

    def answer(self, client: int) -> float:
        """Milliseconds of one transaction; the update was there before."""
        self._raw.execute(ARRIVED, [client, self._now])
        (bout,) = self._raw.execute("SELECT id FROM bout WHERE client = ?", [client]).fetchone()
        begun = perf_counter()
        self._change(client, bout)
        return 1000 * (perf_counter() - begun)

    def _change(self, client: int, bout: int) -> None:
        raw, now, later = self._raw, self._now, self._later
        raw.execute("BEGIN IMMEDIATE")
        raw.execute("UPDATE client SET heard_at = ?2 WHERE id = ?1", [client, now])
        raw.execute(DONE, [client, self._day, now, f"u{client}", client])
        raw.execute("DELETE FROM question WHERE person = ? AND kind IN ('fewer')", [client])
        raw.execute(
            "UPDATE outbox SET state = 'dropped', reason = 'replanned'"
            " WHERE person = ? AND state IN ('due', 'claimed') AND bout IS NOT NULL",
            [client],
        )
        raw.execute("UPDATE bout SET state = 'withdrawn' WHERE id = ?", [bout])
        values = [client, self._day, later, later + 1]
        following = raw.execute(NEXT_BOUT, values).lastrowid
        prompt = [f"prompt:{following}", 3, client, PAYLOAD, following, now, later]
        raw.execute(LETTER, prompt)
        raw.execute("UPDATE client SET wake_at = ?2 WHERE id = ?1", [client, later])
        raw.execute(LETTER, [f"answer:{client}", 2, client, PAYLOAD[:250], None, now, now])
        raw.execute(
            "UPDATE inbox SET state = 'done', worker = NULL, lease_until = NULL"
            " WHERE update_id = ? AND worker = 'raw' AND state = 'claimed'",
            [client],
        )
        raw.execute("COMMIT")

    def close(self) -> None:
        self._raw.close()
