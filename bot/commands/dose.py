"""`boutwise dose`: one day spread, and the dose table; no database, no client."""

from __future__ import annotations

import json
import re
import sys
from argparse import ArgumentParser, Namespace, RawDescriptionHelpFormatter
from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from itertools import pairwise
from typing import TYPE_CHECKING, Any, TypeVar
from zoneinfo import ZoneInfo

from scheduler.domain.hours import Hours, Span, format_minute, instant, parse_minute, parse_span
from scheduler.domain.index import Split, dose_table
from scheduler.domain.plan import MOVEMENTS, Movement
from scheduler.domain.spacing import DayPlan, Room, capacity, room_for, spread_day

if TYPE_CHECKING:
    from argparse import _SubParsersAction

T = TypeVar("T")

DAY, ZONE = date(2001, 1, 1), ZoneInfo("UTC")
"""Any day without a clock change: only the hours matter here."""
MOST_REPS = 10_000
MOST_GAP = 1440
_DIGITS = re.compile("[0-9]{1,9}")
THEORETICAL = "theoretical, from animal data, not a target"
INDEX_SOURCE = (
    "Index: peak force x ln(reps + 1), later bouts x (1 - exp(-gap / 6 h)).\nAfter Turner and "
    "Robling, Exerc Sport Sci Rev 2003;31(1):45-50."
)
CAUTIONS = (
    "A sum, not advice. The treating clinician decides on movement, dose and bouts; local guidance "
    "comes first.\n"
    "At each bout: clear floor, shoes, support in reach. Stop if it hurts and tell the practice."
)
EPILOG = f"The index in the table is {THEORETICAL}.\n\n{CAUTIONS}"


@dataclass(frozen=True, slots=True)
class Dose:
    """What was asked. `gap` is in minutes; `done` are minutes of the day with reps."""

    total: int
    bout: int
    most: int
    hours: Hours
    gap: int
    movement: Movement | None
    done: tuple[tuple[int, int], ...]
    now: int | None

    @property
    def running(self) -> bool:
        """Whether the day has begun: then what does not fit is told, not refused."""
        return bool(self.done) or self.now is not None

    @property
    def left(self) -> int:
        return max(0, self.total - sum(reps for _, reps in self.done))


def add(subparsers: _SubParsersAction[ArgumentParser]) -> None:
    """Add the command to the program's parser. Values stay text: `run` tells every fault."""
    parser = subparsers.add_parser(
        "dose",
        help="spread one day's reps, and show ways to split them",
        description="Spread one day's reps over its hours, and show ways to split them.",
        epilog=EPILOG,
        formatter_class=RawDescriptionHelpFormatter,
    )
    parser.add_argument("--total", metavar="N", help="reps for the day (needed)")
    parser.add_argument("--bout", metavar="N", help="reps of one bout (needed)")
    parser.add_argument("--max", metavar="N", help="most reps of one bout (default: --bout)")
    parser.add_argument(
        "--window",
        default="08:00-20:00",
        metavar="HH:MM-HH:MM",
        help="hours of the day (%(default)s)",
    )
    parser.add_argument(
        "--quiet",
        action="append",
        default=[],
        metavar="HH:MM-HH:MM",
        help="hours in which no bout falls; can be repeated",
    )
    parser.add_argument(
        "--gap", default="120", metavar="MIN", help="least minutes between bouts (%(default)s)"
    )
    parser.add_argument("--movement", metavar="NAME", help=", ".join(MOVEMENTS))
    parser.add_argument(
        "--done",
        action="append",
        default=[],
        metavar="HH:MM=REPS",
        help="a bout that was done; can be repeated",
    )
    parser.add_argument("--now", metavar="HH:MM", help="spread what is left from this time on")
    parser.add_argument("--json", action="store_true", help="one JSON object")
    parser.set_defaults(run=run)


def run(args: Namespace) -> int:
    """Print the day and the table and return 0; or one line per fault on stderr and return 2."""
    faults: list[str] = []
    dose = _read(args, faults)
    if dose is not None and not dose.running:
        faults += _too_many(dose)
    if dose is None or faults:
        print("\n".join(faults), file=sys.stderr)
        return 2
    day = _spread(dose)
    table = dose_table(
        total=dose.total,
        window=dose.hours.window,
        peak_force=dose.movement.peak_force if dose.movement else 1.0,
        up_to=max(12, len(day.bouts)),
    )
    if args.json:
        print(json.dumps(_as_json(day, table)))
    else:
        print("\n".join([*_day_lines(dose, day), "", *_table_lines(dose, table), "", CAUTIONS]))
    return 0


# --- reading -------------------------------------------------------------------------------------


def _read(args: Namespace, faults: list[str]) -> Dose | None:
    """The dose that was asked for, or `None` with a line for each fault."""

    def tried(option: str, parse: Callable[[str], T], text: str, fallback: T) -> T:
        try:
            return parse(text)
        except ValueError as fault:
            faults.append(f"{option}: {fault}")
            return fallback

    def reps(option: str, text: str | None) -> int:
        if text is None:
            faults.append(f"{option} is needed.")
            return 1
        return tried(option, _number(1, MOST_REPS), text, 1)

    total, bout = reps("--total", args.total), reps("--bout", args.bout)
    most = bout if args.max is None else reps("--max", args.max)
    if not faults and most < bout:
        faults.append(f"--max: {most} is less than the {bout} of one bout.")
    day = Span(0, 1440)
    window = tried("--window", parse_span, args.window, day)
    quiet = tuple(tried("--quiet", parse_span, text, day) for text in args.quiet)
    gap = tried("--gap", _number(0, MOST_GAP), args.gap, 0)
    movement = tried("--movement", _movement, args.movement, None) if args.movement else None
    done = tuple(tried("--done", _bout_done, text, (0, 0)) for text in args.done)
    now = None if args.now is None else tried("--now", parse_minute, args.now, 0)
    if faults:
        return None
    return Dose(total, bout, most, Hours(window, quiet), gap, movement, done, now)


def _number(low: int, high: int) -> Callable[[str], int]:
    def parse(text: str) -> int:
        if not (_DIGITS.fullmatch(text) and low <= int(text) <= high):
            raise ValueError(f"{text!r} is not a whole number from {low} to {high}.")
        return int(text)

    return parse


def _movement(text: str) -> Movement | None:
    found = MOVEMENTS.get("-".join(text.lower().split()))
    if found is None:
        raise ValueError(f"{text!r} is not known. Known are: {', '.join(MOVEMENTS)}.")
    return found


def _bout_done(text: str) -> tuple[int, int]:
    at, equals, reps = text.partition("=")
    if not equals:
        raise ValueError(f"{text!r} is not a bout done like 08:00=10.")
    return parse_minute(at), _number(1, MOST_REPS)(reps.strip())


# --- working out ---------------------------------------------------------------------------------


def _spread(dose: Dose) -> DayPlan:
    last = max((minute for minute, _ in dose.done), default=None)
    begun = [minute for minute in (last, dose.now) if minute is not None]
    return spread_day(
        reps=dose.left,
        bout_reps=dose.bout,
        bout_max=dose.most,
        day=DAY,
        hours=dose.hours,
        zone=ZONE,
        gap=timedelta(minutes=dose.gap),
        last=None if last is None else instant(DAY, last, ZONE),
        not_before=instant(DAY, max(begun), ZONE) if begun else None,
    )


def _too_many(dose: Dose) -> list[str]:
    """One line if a whole day has no room for the dose, with the nearest values that work."""

    def bouts_at(gap: int) -> int:
        return capacity(day=DAY, hours=dose.hours, zone=ZONE, gap=timedelta(minutes=gap))

    room = room_for(dose.total, dose.most, dose.gap, bouts_at)
    return [] if room.total >= dose.total else [_refusal(dose, room)]


def _refusal(dose: Dose, room: Room) -> str:
    if room.bout is None:
        return "--quiet: no bout fits, as quiet times fill the window."
    nearest = [f"--total {room.total}"]
    nearest += [f"--gap {room.gap}"] if room.gap else []
    nearest += [f"--max {room.bout}"] if room.bout <= MOST_REPS else []
    return (
        f"--total: {dose.total} reps do not fit: {room.bouts} bouts of at most {dose.most} have "
        f"room for {room.total}. Nearest that fits: {' or '.join(nearest)}."
    )


# --- telling -------------------------------------------------------------------------------------


def _minute(at: datetime) -> int:
    return int((at - datetime(DAY.year, DAY.month, DAY.day, tzinfo=UTC)) / timedelta(minutes=1))


def _gaps(day: DayPlan) -> list[int]:
    """Minutes between the bouts planned."""
    return [_minute(b.at) - _minute(a.at) for a, b in pairwise(day.bouts)]


def _as_json(day: DayPlan, table: tuple[Split, ...]) -> dict[str, Any]:
    return {
        "bouts": [{"at": format_minute(_minute(b.at)), "reps": b.reps} for b in day.bouts],
        "gaps_minutes": _gaps(day),
        "recovery": day.recovery,
        "shortfall": day.shortfall,
        "table": [
            {
                "bouts": row.bouts,
                "reps": list(row.reps),
                "gap_minutes": int(row.gap_minutes)
                if row.gap_minutes.is_integer()
                else row.gap_minutes,
                "index": row.index,
                "against_one_go": row.against_one_go,
            }
            for row in table
        ],
    }


def _day_lines(dose: Dose, day: DayPlan) -> list[str]:
    unit = "reps on each side" if dose.movement and dose.movement.per_side else "reps"
    what = f"{dose.movement.key.replace('-', ' ').capitalize()}: " if dose.movement else ""
    done = f"; {dose.total - dose.left} of {dose.total} done before" if dose.done else ""
    asked = sum(bout.reps for bout in day.bouts)
    bouts = "1 bout" if len(day.bouts) == 1 else f"{len(day.bouts)} bouts"
    lines = [f"{what}{asked} {unit} in {bouts}{done}"]
    lines += [f"  {format_minute(_minute(bout.at))}  {bout.reps}" for bout in day.bouts]
    if len(day.bouts) > 1:
        lines.append(
            f"Shortest gap: {min(_gaps(day))} min. Sum of recovery between bouts: {day.recovery:.3f}"
        )
    if day.shortfall:
        lines.append(f"No room left today for {day.shortfall} {unit}; they are not carried over.")
    return lines


def _table_lines(dose: Dose, table: tuple[Split, ...]) -> list[str]:
    window = dose.hours.window
    hours = f"{format_minute(window.start)}-{format_minute(window.end)}"
    lines = [
        f"Ways to split {dose.total} evenly over {hours} ({THEORETICAL})",
        "  bouts      reps  gap min   index     times one go",
    ]
    for row in table:
        few, many = row.reps[-1], row.reps[0]
        reps = f"{many}" if few == many else f"{few}-{many}"
        gap = f"{row.gap_minutes:.0f}" if row.bouts > 1 else "-"
        lines.append(
            f"  {row.bouts:5} {reps:>9} {gap:>8} {row.index:7.2f} {row.against_one_go:15.3f}"
        )
    force = dose.movement
    lines.append(
        f"Peak force of {force.key}: {force.peak_force} body weights ({force.source})."
        if force
        else "No movement named: index for a peak force of 1 body weight."
    )
    return [*lines, INDEX_SOURCE]
