"""`boutwise key`: a new key for encryption at rest."""

from __future__ import annotations

import argparse
from typing import Any

from storage.keys import new_key


def add(subparsers: Any) -> None:
    """Add the command's parser."""
    subparsers.add_parser(
        "key",
        help="a new key for encryption at rest",
        description="Print a new key. Keep it apart from the database: without it the data cannot be read.",
    )


def run(_: argparse.Namespace) -> int:
    """Print the key."""
    print(new_key())
    return 0
