"""`boutwise understand TEXT`: what a client's text would be taken for. No database."""

import argparse
import json
import sys
from dataclasses import asdict

from bot.understand import Intent, LanguageMissingError, understand


def add(subparsers: "argparse._SubParsersAction[argparse.ArgumentParser]") -> None:
    """Add the command to the parser."""
    parser = subparsers.add_parser(
        "understand", help="what a client's text would be taken for; no database"
    )
    parser.add_argument("text", metavar="TEXT")
    parser.add_argument("--language", default="en", metavar="en|es")
    parser.add_argument("--json", action="store_true", help="print JSON")
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Print what `args.text` would be taken for. 0, or 2 where the language is not there."""
    try:
        intent = understand(args.text, args.language)
    except LanguageMissingError as fault:
        print(f"boutwise understand: {fault}", file=sys.stderr)
        return 2
    print(json.dumps(asdict(intent)) if args.json else _line(intent))
    return 0


def _line(intent: Intent) -> str:
    """The kind and whatever else was found, on one line."""
    plain = asdict(Intent())
    told = {k: v for k, v in asdict(intent).items() if k != "kind" and v != plain[k]}
    shown = (
        (k.replace("_", " "), ", ".join(v) if isinstance(v, tuple) else v) for k, v in told.items()
    )
    found = (name if value is True else f"{name}: {value}" for name, value in shown)
    return "; ".join([f"Taken as {intent.kind}", *found])
