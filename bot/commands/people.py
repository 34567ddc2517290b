"""`boutwise people`: who is in the practice."""

from __future__ import annotations

import argparse
import json
from typing import Any

from bot import settings
from bot.wiring import store_for_command


def add(subparsers: Any) -> None:
    """Add the command's parser."""
    parser = subparsers.add_parser("people", help="who is in the practice")
    parser.add_argument("--json", action="store_true", help="as JSON")


def run(args: argparse.Namespace) -> int:
    """Print id, role, alias, state and clinician of everybody, by id."""
    with store_for_command(settings.read()) as store:
        everyone = sorted(store.run_sync(lambda tx: tx.people.everyone()), key=lambda p: p.id)
    rows = [
        {
            "id": person.id,
            "role": person.role.value,
            "alias": person.name,
            "state": person.state.value,
            "clinician": person.clinician,
        }
        for person in everyone
    ]
    if args.json:
        print(json.dumps(rows, ensure_ascii=False))
        return 0
    if not rows:
        print("Nobody yet. Invite an admin: boutwise invite --role admin --name NAME")
    for row in rows:
        clinician = f"  clinician {row['clinician']}" if row["clinician"] else ""
        print(f"{row['id']:>6}  {row['role']:<9}  {row['state']:<10}  {row['alias']}{clinician}")
    return 0
