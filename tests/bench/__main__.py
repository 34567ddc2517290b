"""`python -m tests.bench`: measure the figures that are asked for, all by default."""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Sequence

from tests.bench.bench import open_bench
from tests.bench.figure import Figure
from tests.bench.figures import chosen


def measure(names: Sequence[str], below: str | None, *, small: bool, quiet: bool) -> list[Figure]:
    """The figures whose names begin so; each is printed as it comes, unless `quiet`."""
    found: list[Figure] = []
    with open_bench(small=small, below=below) as bench:
        for one in chosen(names):
            for figure in one(bench):
                found.append(figure)
                if not quiet:
                    print(figure.line(), flush=True)
                    print(f"    {figure.note}", flush=True)
    return found


def main(argv: Sequence[str] | None = None) -> int:
    """Exit 0 when everything was measured, whatever came out; 2 for a name that is none."""
    parser = argparse.ArgumentParser(prog="python -m tests.bench", description=__doc__)
    parser.add_argument("name", nargs="*", help="figures to measure, such as B1 or 'B1 postgresql'")
    parser.add_argument("--json", action="store_true", help="a list of figures, when all are there")
    parser.add_argument("--small", action="store_true", help="sizes that end in some two minutes")
    parser.add_argument(
        "--folder",
        help="where databases lie: by default on the disk; in memory no commit waits for it",
    )
    args = parser.parse_args(argv)
    for name in args.name:
        if not chosen([name]):
            parser.error(f"there is no figure {name!r}")
    found = measure(args.name, args.folder, small=args.small, quiet=args.json)
    if args.json:
        json.dump([each.as_json() for each in found], sys.stdout, indent=1)
        print()
    return 0


if __name__ == "__main__":
    sys.exit(main())
