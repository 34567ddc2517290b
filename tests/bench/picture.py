"""B11: the digest's picture against a figure of the same by matplotlib, and what drawing holds up."""

from __future__ import annotations

import asyncio
import io
from collections.abc import Callable, Iterator, Mapping
from time import perf_counter
from typing import Any

from PIL import Image

from bot.pictures import caseload_picture
from tests.bench.bench import Bench
from tests.bench.figure import Figure, in_turns, share
from tests.bot.weeks import crowd

CLIENTS, IN_NEED = 40, 5
DIGEST = crowd(CLIENTS, IN_NEED)
LIMIT = 2.0
"""Milliseconds by which the event loop may be late."""
A_TICK = 0.001
GREYS = {
    "counted": "0.25", "partial": "0.6", "missed": "1.0", "excused": "0.8",
    "open": "0.9", "ahead": "0.95", "rest": "0.98", "extra": "0.4",
}  # fmt: skip
HATCHES = {"excused": "///", "missed": "x", "partial": "\\\\"}
DOTS_PER_INCH = 100


def drawn(bench: Bench) -> Iterator[Figure]:
    """Milliseconds of the picture of 40 clients, 5 of whom need her; then how late the event loop is.

    The peer has the same names, days, signs, figures and legend on as many pixels; it shades and hatches
    the days instead of drawing their forms, which is less work. Late is what a timer of a millisecond
    rings too late, its 99th percentile, while one picture after the other is drawn in a thread.
    """
    ours, theirs = _ours, _matplotlib(_size(_ours()))
    found = in_turns(bench.rounds, _timed(ours), _timed(theirs))
    note = f"{CLIENTS} clients, PNG; the peer is a matplotlib Figure with Agg on as many pixels"
    yield Figure("B11 picture", *found, "at most", 1 / 8, "ms", note)
    pictures = bench.size(200, 30)
    late = asyncio.run(_lateness(ours, pictures))
    peer = asyncio.run(_lateness(theirs, max(3, pictures // 10)))
    idle = asyncio.run(_lateness(None, 0))
    note = f"the peer is the limit itself; matplotlib in a thread {peer:.1f} ms, idle {idle:.2f} ms"
    yield Figure("B11 picture lag p99", late, LIMIT, "at most", 1, "ms", note)


def _ours() -> bytes:
    return caseload_picture(DIGEST, "en")


def _timed(draw: Callable[[], bytes]) -> Callable[[], float]:
    def measure() -> float:
        begun = perf_counter()
        draw()
        return 1000 * (perf_counter() - begun)

    return measure


def _size(picture: bytes) -> tuple[int, int]:
    return Image.open(io.BytesIO(picture)).size


async def _lateness(draw: Callable[[], bytes] | None, times: int) -> float:
    """Milliseconds, the 99th percentile; idle for a second if nothing is drawn."""
    late: list[float] = []

    async def tick() -> None:
        while True:
            begun = perf_counter()
            await asyncio.sleep(A_TICK)
            late.append(1000 * (perf_counter() - begun - A_TICK))

    ticking = asyncio.create_task(tick())
    if draw is None:
        await asyncio.sleep(1)
    for _ in range(times):
        await asyncio.to_thread(draw)  # type: ignore[arg-type]
    ticking.cancel()
    return share(late, 0.99)


def _matplotlib(size: tuple[int, int]) -> Callable[[], bytes]:
    """Draws the digest in as many pixels."""
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.figure import Figure as Sheet

    def draw() -> bytes:
        inches = (size[0] / DOTS_PER_INCH, size[1] / DOTS_PER_INCH)
        sheet = Sheet(figsize=inches, dpi=DOTS_PER_INCH)
        FigureCanvasAgg(sheet)
        axes = sheet.add_axes((0, 0, 1, 1))
        axes.set_axis_off()
        axes.set_xlim(0, 14)
        axes.set_ylim(CLIENTS + 16, -4)
        axes.text(0.3, -3, f"{DIGEST['week']} {DIGEST['clinician']}", fontsize=24, weight="bold")
        axes.text(0.3, -2, f"{DIGEST['first']} {DIGEST['last']} {DIGEST['practice']}", fontsize=14)
        for day in range(7):
            axes.text(4.5 + day, -0.6, f"D{day + 1}", fontsize=14, ha="center")
        for row, line in enumerate(DIGEST["lines"]):
            _row(axes, row, line)
        _legend(axes)
        out = io.BytesIO()
        sheet.savefig(out, format="png")
        return out.getvalue()

    return draw


def _row(axes: Any, row: int, line: Mapping[str, Any]) -> None:
    weight = "bold" if line["reasons"] else "normal"
    axes.text(0.3, row + 0.5, line["name"], fontsize=14, va="center", weight=weight)
    for number, cell in enumerate(line["cells"]):
        _sign(axes, 4 + number, row, cell["state"], cell["why"][:1].upper())
    axes.text(11.8, row + 0.5, f"{line['days']}/{line['needed']}", fontsize=14, va="center")
    axes.text(13, row + 0.5, str(line["pain"]), fontsize=14, va="center")


def _sign(axes: Any, x: float, y: float, state: str, letter: str) -> None:
    from matplotlib.patches import Rectangle

    face, hatch = GREYS[state], HATCHES.get(state)
    axes.add_patch(
        Rectangle((x + 0.05, y + 0.1), 0.9, 0.8, facecolor=face, hatch=hatch, edgecolor="0.2")
    )
    if letter:
        axes.text(x + 0.7, y + 0.5, letter, fontsize=12, ha="center", va="center")


def _legend(axes: Any) -> None:
    for number, state in enumerate(GREYS):
        _sign(axes, 0.3 + number // 4 * 6, CLIENTS + 2 + number % 4, state, "")
        axes.text(1.5 + number // 4 * 6, CLIENTS + 2.5 + number % 4, state, fontsize=12)
