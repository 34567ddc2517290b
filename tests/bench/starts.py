"""B3 and B12: from the start of the process to the first thing it does."""

from __future__ import annotations

import asyncio
import re
import sys
from collections.abc import Iterator
from datetime import timedelta

from scheduler.clock import SystemClock
from scheduler.usecases import digests
from tests.bench.bench import ENGINES, Bench
from tests.bench.chatserver import ChatServer, chat_server
from tests.bench.figure import Figure, in_turns_async
from tests.bench.practice import Practice, open_practice, wait_until
from tests.bench.processes import program, running, settings

OURS = ("bot", "scheduler", "storage", "tests")
IMPORTED = re.compile(r"^import time: +\d+ \| +\d+ \| *([\w.]+)$", re.MULTILINE)
BARE_IMPORTS = """
import contextlib, importlib
for name in {names!r}:
    with contextlib.suppress(ImportError):  # a library's look whether another is there
        importlib.import_module(name)
print("done", flush=True)
"""
A_WEEK = timedelta(weeks=1)


def with_many_waiting(bench: Bench) -> Iterator[Figure]:
    """Seconds from exec to the first prompt, with 100,000 clients whose next prompts wait, and with one.

    "An empty table" cannot let a prompt leave: the peer's store holds the one client whose prompt is
    due, and so does ours beside all the others. Then the most memory that the processes used.
    """
    clients = bench.size(100_000, 3_000)
    for engine in ENGINES:
        with bench.database(engine) as url, bench.database(engine) as beside:
            many, few = open_practice(url, clients), open_practice(beside, 1)
            memory: tuple[list[float], list[float]] = ([], [])
            found = asyncio.run(_first_prompts(bench, many, few, memory))
            note = f"{clients:,} clients with a waiting prompt each on {engine}; peer: one client"
            yield Figure(f"B3 start {engine}", *found, "at most", 1.1, "s", note)
            note = (
                f"peak over a start with {clients:,} clients, against one; goal ours (memory flat)"
            )
            peaks = (max(memory[0]), max(memory[1]))
            yield Figure(f"B3 start {engine} memory", *peaks, "at most", 1.1, "MB", note)


async def _first_prompts(
    bench: Bench, many: Practice, few: Practice, memory: tuple[list[float], list[float]]
) -> tuple[float, float]:
    async with chat_server() as server:

        async def first_prompt(practice: Practice, peaks: list[float]) -> float:
            _due_again(practice)
            before = len(server.sent)
            async with running(bench, practice, server) as bot:
                await server.sent_to(before + 1)
                peaks.append(bot.peak_memory())
                return server.sent[before][1] - bot.begun

        return await in_turns_async(
            3, lambda: first_prompt(many, memory[0]), lambda: first_prompt(few, memory[1])
        )


def _due_again(practice: Practice) -> None:
    """The first client's prompt is due now."""
    practice.change(
        "UPDATE outbox SET state = 'due', worker = NULL, lease = NULL, lease_until = NULL,"
        " accepted_at = NULL, message_id = NULL WHERE person = :client AND state = 'sent'",
        "UPDATE bout SET state = 'waiting', asked_at = NULL, nudge_at = NULL, message_id = NULL"
        " WHERE client = :client AND state = 'asked'",
        client=practice.clients[0],
    )
    wait_until(practice, SystemClock().now(), practice.clients[:1])


def to_first_poll(bench: Bench) -> Iterator[Figure]:
    """Seconds from exec to the first poll, against a process that imports the same packages and says so.

    The packages are the modules that are not ours and not of the standard library, as the interpreter
    tells of the running bot until its first poll. "Digest used": a practice whose clinician was sent
    digests, against one without. `--help` is the whole command, until it has ended.
    """
    with bench.database("sqlite") as url, bench.database("sqlite") as other:
        plain, used = open_practice(url, 1), open_practice(other, 1)
        _send_digests(used)
        poll, bare, digest, helped = asyncio.run(_starts(bench, plain, used))
    note = "SQLite, one client; the peer imports what is not ours nor of the standard library"
    yield Figure("B12 start first poll", *poll, "at most", 1.1, "s", note)
    note = "a practice whose digests have been sent, against one without; goal ours (no difference)"
    yield Figure("B12 start digest used", *digest, "at most", 1.05, "s", note)
    note = "`python -m bot --help` to its end, against the same bare imports"
    yield Figure("B12 start help", helped, bare, "at most", 0.8, "s", note)


def _send_digests(practice: Practice) -> None:
    database, store = practice.open()
    store.run_sync(lambda tx: digests.make(tx, practice.clinician, practice.now + A_WEEK))
    database.close_sync()
    practice.change("UPDATE outbox SET state = 'sent' WHERE bout IS NULL")


Pair = tuple[float, float]


async def _starts(bench: Bench, plain: Practice, used: Practice) -> tuple[Pair, float, Pair, float]:
    async with chat_server() as server:
        names = await _packages(bench, plain, server)
        imports = ("-c", BARE_IMPORTS.format(names=names))
        rounds = bench.size(9, 3)
        poll = await in_turns_async(
            rounds, lambda: _polled(bench, plain, server), lambda: _said(bench, *imports)
        )
        digest = await in_turns_async(
            rounds, lambda: _polled(bench, used, server), lambda: _polled(bench, plain, server)
        )
        helped, beside = await in_turns_async(
            rounds, lambda: _ended(bench, "-m", "bot", "--help"), lambda: _said(bench, *imports)
        )
    return poll, beside, digest, helped


async def _polled(bench: Bench, practice: Practice, server: ChatServer) -> float:
    before = len(server.polls)
    async with program(
        bench, "-m", "bot", "run", environment=settings(practice, server)
    ) as bot:  # fmt: skip
        await server.until(lambda: len(server.polls) > before)
        return server.polls[before] - bot.begun


async def _said(bench: Bench, *words: str) -> float:
    """Seconds until a program has said that it is done: the interpreter's own end is not counted."""
    loop = asyncio.get_running_loop()
    begun = loop.time()
    process = await asyncio.create_subprocess_exec(
        sys.executable, *words, stdout=asyncio.subprocess.PIPE
    )
    if process.stdout is None or await process.stdout.readline() != b"done\n":
        raise RuntimeError("the bare imports failed")
    taken = loop.time() - begun
    await process.wait()
    return taken


async def _ended(bench: Bench, *words: str) -> float:
    loop = asyncio.get_running_loop()
    async with program(bench, *words) as bot:
        begun = loop.time()
        if await bot.process.wait():
            raise RuntimeError(bot.words())
        return loop.time() - begun


async def _packages(bench: Bench, practice: Practice, server: ChatServer) -> list[str]:
    """Modules of others that the bot has imported by its first poll, in that order."""
    before = len(server.polls)
    environment = settings(practice, server)
    words = ("-X", "importtime", "-m", "bot", "run")
    async with program(bench, *words, environment=environment) as bot:
        await server.until(lambda: len(server.polls) > before)
        told = IMPORTED.findall(bot.words())
    return [name for name in told if _is_of_others(name)]


def _is_of_others(name: str) -> bool:
    top = name.partition(".")[0]
    known = sys.stdlib_module_names
    return top not in OURS and top not in known and not top.startswith("_")
